package proof

import (
	"math"

	"proofsheet/report/check"
)

const (
	stiffnessShare = 0.10  // of the predicted stiffness: further off asks for an explanation [-], practice
	airMost        = 0.005 // of the volume: more is bled first [-], practice
	departureFrom  = 0.55  // of the setting: departures are told from here on [-]
	straightFrom   = 3     // earlier readings for a line of their own [-]
)

// water returns what water does at the mean temperature of some rows and the
// pressure p [Pa]; the plan's where no temperature was read, and false.
func (r *record) water(p float64, rows ...int) (w Water, known bool) {
	var sum float64
	for _, i := range rows {
		sum += r.l.Rows[i].Temperature
	}
	w, err := WaterAt(sum/float64(len(rows)), math.Max(0, p))
	if err != nil || len(rows) == 0 {
		return Water{math.NaN(), r.t.Full.Expansion, r.t.Full.Compressibility}, false
	}
	return w, true
}

// predicted returns the stiffness of wall and water that the plan predicts, at
// the temperature read at a row [m3/Pa]; NaN where it predicts none.
func (r *record) predicted(row int) float64 {
	w, _ := r.water(r.set, row)
	return r.t.Full.Growth + w.Compressibility*r.t.Full.Volume
}

// volumes judges the readings of the way up one after the other, then the line
// through those before the first departure.
func (r *record) volumes() (stiffness, departure Finding) {
	departure = Finding{Title: "departure from the line", Outcome: Passed, Reason: "every reading of the way up lies within the plan's band round the line of the earlier ones"}
	stiffness = Finding{Title: "stiffness and air"}
	if len(r.points) == 0 {
		stiffness.Reason, departure.Outcome, departure.Reason = "no volumes read", Inconclusive, "no volumes read"
		r.out.Line = unfitted(0)
		return stiffness, departure
	}
	w := r.walk(r.points)
	departure.Outcome, departure.Values, r.out.Readings = w.outcome, w.values, w.readings
	if w.reason != "" {
		departure.Reason = w.reason
	}
	r.out.Line = r.fitted(w.kept)
	if w.told == 0 && departure.Outcome == Passed {
		departure.Outcome, departure.Reason = Inconclusive, "no reading between half the setting and the setting to tell a departure by"
	}
	r.otherClimbs(&departure)
	r.measured()
	return r.stiffness(stiffness), departure
}

// fitted returns the line through rows of the log.
func (r *record) fitted(rows []int) Line {
	var ps, vs []float64
	u := 0.0
	for _, i := range rows {
		ps, vs = append(ps, r.l.Rows[i].Pressure), append(vs, r.l.Rows[i].Volume)
		u = math.Max(u, r.uVolume(r.l.Rows[i].Volume-r.l.Rows[rows[0]].Volume))
	}
	return FitLine(ps, vs, r.set, u)
}

// walked is what the readings of a way up told.
type walked struct {
	kept     []int         // rows before the first departure
	told     int           // readings that were held against a line
	outcome  Outcome       // passed where none departs
	reason   string        // of another outcome
	values   []Measured    // the largest departure
	readings []StepReading // up to the first departure
	airKnown bool          // the last line had readings enough to tell air
}

// walk goes up the readings. Each above half the setting is held against the
// line through the earlier ones, or, where that cannot tell half the band,
// against the predicted slope from the last one, and ends at the first departure.
func (r *record) walk(points []int) walked {
	w := walked{outcome: Passed}
	for n, i := range points {
		row := r.l.Rows[i]
		read := StepReading{Row: i, Pressure: row.Pressure, Line: math.NaN(), Band: math.NaN()}
		if row.Pressure >= departureFrom*r.set && n > 0 {
			var own float64
			read.Line, own, w.airKnown = r.expected(w.kept, row.Pressure)
			read.Band = StopBand(own)
		}
		w.readings = append(w.readings, read)
		off := row.Volume - read.Line
		if math.IsNaN(off) {
			w.kept = append(w.kept, i)
			continue
		}
		w.told++
		u := r.uVolume(row.Volume - r.l.Rows[points[0]].Volume)
		if w.values == nil || math.Abs(off) > math.Abs(w.values[0].Value) {
			w.values = []Measured{within(check.M3("", "largest departure from the line", off), 0, read.Band, 2*u)}
		}
		switch {
		case off > read.Band:
			w.outcome, w.reason = Failed, "yield: the tank took more volume than the line of the earlier readings allows; the test stops there"
			return w
		case off < -read.Band:
			w.outcome, w.reason = Inconclusive, "less volume than the line of the earlier readings: an instrument or a blocked line; find out which"
			return w
		case 2*u > read.Band*(1+1e-9):
			w.outcome, w.reason = Inconclusive, "the volume is not read well enough to tell a departure of the plan's band"
		}
		w.kept = append(w.kept, i)
	}
	return w
}

// expected returns the volume to expect at p [Pa] from rows read before, that of
// it which wall and water take, without air [m3], and whether those rows tell the
// air; NaN where nothing can be expected. The band is a share of what wall and
// water take, which air does not widen.
func (r *record) expected(rows []int, p float64) (v, own float64, airKnown bool) {
	if len(rows) == 0 { // not reached: the first reading is always kept
		return math.NaN(), math.NaN(), false
	}
	l := r.fitted(rows)
	last := r.l.Rows[rows[len(rows)-1]]
	c := r.predicted(rows[len(rows)-1])
	v, u := l.At(p)
	own = math.Max(0, l.Slope*p)
	sure := 2*u <= StopBand(own)
	if l.Points >= straightFrom && !math.IsNaN(v) && (sure || math.IsNaN(c)) {
		return v, own, true
	}
	air, airKnown := l.Air, !math.IsNaN(l.Air)
	if first := r.l.Rows[rows[0]]; !airKnown && first.Pressure < lowShare*r.set && len(rows) > 1 {
		air, airKnown = (last.Volume-first.Volume-c*(last.Pressure-first.Pressure))/(airShare(last.Pressure)-airShare(first.Pressure)), true
	}
	v = last.Volume + c*(p-last.Pressure)
	if air > 0 && !math.IsInf(air, 0) {
		v += air * (airShare(p) - airShare(last.Pressure))
	}
	return v, math.Max(0, c*p), airKnown
}

// measured lays the readings beside the prediction, from the zero of the line.
func (r *record) measured() {
	zero := r.out.Line.Zero
	if math.IsNaN(zero) {
		zero = r.l.Rows[r.points[0]].Volume
	}
	for k := range r.out.Readings {
		q := &r.out.Readings[k]
		q.Volume, q.Line = r.l.Rows[q.Row].Volume-zero, q.Line-zero
		q.Predicted = r.predicted(q.Row) * q.Pressure
	}
}

// stiffness judges the line: its slope against the predicted one, and the air
// that bends its start.
func (r *record) stiffness(f Finding) Finding {
	l := r.out.Line
	c := r.predicted(r.points[len(r.points)-1])
	// The gauge's own error and the meter's scale stand beside the scatter.
	u := 2 * math.Sqrt(l.SlopeU*l.SlopeU+math.Pow(l.Slope*r.t.Plan.GaugeUncertainty/r.set, 2)+math.Pow(volumeUncertaintyShare*l.Slope, 2))
	slope := check.Quantity{Symbol: "C", Name: "stiffness dV/dp of wall and water", Value: l.Slope, Unit: "m3/Pa"}
	most := airMost * r.t.Full.Volume
	f.Values = []Measured{within(slope, c, stiffnessShare*c, u), atMost(check.M3("V_a0", "trapped air, at the atmosphere", l.Air), most, 2*l.AirU)}
	switch {
	case math.IsNaN(l.Slope):
		f.Reason = "too few readings of volume for a line"
	case math.IsNaN(c):
		f.Reason = "no stiffness is predicted for this tank to lay the measured one beside"
	case !l.AirFitted:
		f.Reason = "no reading below 0.4 of the setting, or too few above: the air in the tank cannot be told"
	case l.Air+2*l.AirU > most && l.Air <= most:
		f.Reason = "the air in the tank is not known well enough to tell that it is within 0.5 % of the volume"
	case l.Air > most:
		f.Reason = "trapped air: more than 0.5 % of the volume; bleed and begin again"
	case u > stiffnessShare*c:
		f.Reason = "the stiffness is not known well enough to lay beside the predicted one"
	case l.Slope > (1+stiffnessShare)*c:
		f.Reason = "softer than predicted by more than 10 %: a thinner wall, yielding or another volume; explain before going on"
	case l.Slope < (1-stiffnessShare)*c:
		f.Reason = "stiffer than predicted by more than 10 %: a blocked line, a shut valve or wrong units; explain before going on"
	default:
		f.Outcome, f.Reason = Passed, "stiffness within 10 % of the predicted one, air within 0.5 % of the volume"
	}
	return f
}
