package proof

import (
	"math"
	"slices"
	"sort"

	"proofsheet/report/check"
)

const (
	decayShare    = 0.005     // of the setting, over the hold: A [-], practice
	warmingMost   = 1.0       // change of the water's temperature beyond which nothing is told [K], practice
	driftShare    = 0.10      // uncertainty of the drift [-], practice
	betaShare     = 0.05      // and of the water's expansion in it [-], practice
	settledAfter  = 10 * 60   // warmth of pumping has gone [s], practice
	letDownRate   = 0.05 / 60 // of the setting in a second: faster is let down, not lost [1/s], practice
	stuckReadings = 12        // of one temperature, from which a thermometer is not believed [-], practice
	stuckStep     = 0.02      // and the step in which it is read, less than this [K], practice
	leastOfHold   = 0.5       // share of the hold over which a fall must be seen [-]
	noVolumeMoved = 1e-12     // two volumes read the same [m3]
)

// A Decay is the fall of pressure of the closed tank. What is not known is NaN.
type Decay struct {
	Span        Span    // rows over which it was judged
	Change      float64 // of the pressure as read [Pa]
	Start       float64 // temperature of the water [K]
	End         float64 // and at the end [K]
	Warming     float64 // of the water [K]
	Drift       float64 // dp/dT [Pa/K]
	Explained   float64 // change that temperature accounts for [Pa]
	Pumped      float64 // volume put in, less returned [m3]
	Residual    float64 // change that nothing accounts for [Pa]
	Uncertainty float64 // of the residual, k = 2 [Pa]
	Allowed     float64 // over the span [Pa]
	Leak        float64 // volume that the residual stands for [m3]
	moving      float64 // part of the uncertainty that the change of temperature makes, k = 2 [Pa]
}

// decay judges the fall of pressure over the hold:
//
//	Δp_res = Δp − (β ΔT_water − 3 α_v ΔT_wall) V/C − V_pumped/C
//	U = 2 √[(D u_dT)² + (ΔT u_D)² + u_dp² + (u_V/C)²],  u_D² = (0.1 D)² + (0.05 β V/C)²
//
// where the wall has a thermometer of its own its error does not follow the
// water's: in place of D u_dT stands √[(β V/C)² + (3 α_v V/C)²] u_dT, which does not
// vanish where the drift changes sign.
//
// pass where |Δp_res| + U ≤ A, fail where |Δp_res| − U > A, else inconclusive; A
// is 0.5 % of the setting over the planned hold, and its share over a shorter
// one. Without temperature, or over 1 K of warming: inconclusive. u_V counts
// only where the log shows that volume was moved. The clock starts when the
// pressure has settled, or 10 min after the setting was reached. Gas is accounted
// for by [record.gasBalance].
//
// Source: volume balance, computed; limits, practice.
func (r *record) decay() Finding {
	f := r.holdDecay()
	r.otherDecays(&f)
	return f
}

// remedy says what would make the uncertainty of a decay smaller.
func (d Decay) remedy() string {
	if d.moving > d.Uncertainty/math.Sqrt2 {
		return "wait until the temperature is still and hold again"
	}
	return "read temperature and pressure better and hold again"
}

// otherDecays asks of every way up whether the closed tank lost more than the allowance
// of the whole hold, until water is let out: in the hold and after it that fails,
// before it a leak was there and is gone, and nothing tells where. Over more than 1 K of
// warming, or where a fall has no temperature beside it, it is open.
func (r *record) otherDecays(f *Finding) {
	if r.gas() {
		return // no volume tells whether it was let out slowly
	}
	earlier, later := r.others()
	if r.main >= 0 {
		later = append(later, r.climbed[r.main])
	}
	for k, c := range slices.Concat(earlier, later) {
		to := c.top
		for i := c.top + 1; i < len(r.l.Rows) && !(r.l.Rows[i].Volume < r.shut[c.top]-noVolumeMoved) && !r.letDown(i); i++ {
			to = i
		}
		if to == c.top {
			continue
		}
		d := r.balance(c.top, to)
		untold := math.IsNaN(d.Residual + d.Uncertainty)
		if untold && !(d.Change < -decayShare*r.set) || !untold && !(d.Residual+d.Uncertainty < -decayShare*r.set) {
			continue
		}
		o, reason := Failed, "the closed tank lost pressure: a leak, or worse"
		switch {
		case untold:
			o, reason = Inconclusive, "the closed tank lost pressure, and no temperature tells why"
		case math.Abs(d.Warming) > warmingMost:
			o, reason = Inconclusive, "the closed tank did not follow its warmth, over more than 1 K: a leak could hide in that, or water was let out that the log does not say"
		case k < len(earlier):
			o, reason = Inconclusive, "the closed tank lost pressure, which it no longer did in the hold: find what leaked, and test the mended tank by a log of its own"
		}
		f.worsen(o, r.along(c, reason))
	}
}

// letDown reports whether the pressure falls to a row faster than any leak that is
// worth telling from letting water out.
func (r *record) letDown(i int) bool {
	return r.moves(i) && r.l.Rows[i].Pressure < r.l.Rows[i-1].Pressure
}

// moves reports whether the pressure moves to a row as fast as by pumping or letting
// down.
func (r *record) moves(i int) bool {
	a, b := r.l.Rows[i-1], r.l.Rows[i]
	return math.Abs(a.Pressure-b.Pressure) > letDownRate*r.set*(b.Time-a.Time)
}

// holdDecay judges the hold: all of it, and where that leaves the question open
// because it went on for longer than planned, its planned part.
func (r *record) holdDecay() Finding {
	whole := r.closed()
	f := r.decayIn(whole)
	if f.Outcome != Inconclusive || whole.To <= whole.From {
		return f
	}
	part := Span{whole.From, whole.From}
	for part.To < whole.To && r.l.Rows[part.To].Time-r.l.Rows[part.From].Time < r.t.Plan.Hold*(1-1e-9) {
		part.To++
	}
	over := r.out.Decay
	if g := r.decayIn(part); g.Outcome == Passed {
		g.Notes = append(g.Notes, "Judged over the planned hold; what came after it leaves the question open.")
		return g
	}
	r.out.Decay = over
	return f
}

// decayIn judges a stretch of the log.
func (r *record) decayIn(w Span) Finding {
	f := Finding{Title: "decay of the pressure"}
	r.out.Decay = r.noDecay()
	if w.To <= w.From {
		f.Reason = "no stretch of the log near the setting long enough to see a fall"
		if !r.gas() {
			f.Reason = "no stretch of the log near the setting, with volumes read, long enough to see a fall"
		}
		return f
	}
	start, settled := r.settled(w)
	d := r.balance(start, w.To)
	r.out.Decay = d
	f.Values = r.decayValues(d)
	rows := r.l.Rows
	lasted := rows[w.To].Time - rows[start].Time
	leaks := d.Residual+d.Uncertainty < -d.Allowed
	switch {
	case r.stuck():
		f.Reason = "the thermometer shows the same to a hundredth of a degree from first to last: one that is stuck, or was read once, hides a leak"
	case math.IsNaN(d.Warming):
		f.Reason = "no " + r.fluid() + " temperature: a fall cannot be told from cooling"
	case math.Abs(d.Warming) > warmingMost:
		f.Reason = "the " + r.fluid() + " changed by more than 1 K: wait until it is still and hold again"
	case math.IsNaN(d.Residual + d.Uncertainty):
		f.Reason = "without a stiffness, predicted or measured, the fall cannot be corrected"
	case leaks:
		f.Outcome, f.Reason = Failed, "leak: the pressure falls by more than temperature explains"
	case d.Residual-d.Uncertainty > d.Allowed:
		f.Outcome, f.Reason = Failed, "the pressure rises by more than temperature explains: not understood, and no pass"
	case r.letIn(start, w.To):
		f.Reason = r.fluid() + " was let in while the tank was watched, which the log does not say: shut the valve and hold again"
	case lasted < leastOfHold*r.t.Plan.Hold:
		f.Reason = "the closed tank was not watched long enough"
	case !settled:
		f.Reason = "the pressure had not settled: hold longer"
	case d.Residual > d.Uncertainty:
		f.Reason = "the pressure rises by more than temperature explains: not understood, and no pass"
	case math.Abs(d.Residual)+d.Uncertainty <= d.Allowed:
		f.Outcome, f.Reason = Passed, "what temperature does not explain stays within the allowance, uncertainty included"
	case math.Abs(d.Change) > d.Allowed && math.Abs(d.Residual) <= d.Uncertainty:
		f.Reason = r.fluid() + " temperature explains the change of pressure within the uncertainty, and a leak could hide in that: " + d.remedy()
	default:
		f.Reason = "a leak of the allowance cannot be told from the uncertainty: " + d.remedy()
	}
	return f
}

func (r *record) noDecay() Decay {
	n := math.NaN()
	return Decay{Span{0, -1}, n, n, n, n, n, n, n, n, n, n, n, n}
}

// stuck reports whether the thermometer never moved though it is read finely
// enough to see that pumping warms water and gas.
func (r *record) stuck() bool {
	lo, hi, n := math.Inf(1), math.Inf(-1), 0
	for _, row := range r.l.Rows {
		if !math.IsNaN(row.Temperature) {
			lo, hi, n = math.Min(lo, row.Temperature), math.Max(hi, row.Temperature), n+1
		}
	}
	return n >= stuckReadings && lo == hi && r.l.TemperatureStep > 0 && r.l.TemperatureStep < stuckStep
}

// decayValues returns the numbers of a decay as printed.
func (r *record) decayValues(d Decay) []Measured {
	values := []Measured{
		number(check.Pa("Δp", "change of pressure as read", d.Change), math.NaN()),
		number(check.K("T₁", r.fluid()+" at its start", d.Start), math.NaN()), number(check.K("T₂", r.fluid()+" at its end", d.End), math.NaN()),
		number(check.Quantity{Symbol: "D", Name: "drift dp/dT", Value: d.Drift, Unit: "Pa/K"}, math.NaN()),
		number(check.Pa("", "change that temperature explains", d.Explained), math.NaN()),
		number(check.M3("", "volume put in meanwhile", d.Pumped), math.NaN()),
		within(check.Pa("Δp_res", "change that nothing explains", d.Residual), 0, d.Allowed, d.Uncertainty),
		number(check.M3("", "volume lost that it stands for", d.Leak), math.NaN()),
	}
	if r.gas() {
		const pumped = 5
		values = slices.Delete(values, pumped, pumped+1)
		lasted := r.l.Rows[d.Span.To].Time - r.l.Rows[d.Span.From].Time
		last := &values[len(values)-1]
		last.Name = "gas lost that it stands for, at the atmosphere"
		values = append(values, number(check.Quantity{Symbol: "Q", Name: "leak rate", Value: d.Leak * Atmosphere / lasted, Unit: "Pa m3/s"}, math.NaN()))
	}
	return values
}

// closed returns the stretch of the log over which the tank stood closed: the
// hold, or where that was broken the time from the setting down to 0.9 of it,
// without the pumping at its beginning and the letting out at its end. It
// begins and ends with a volume that was read.
func (r *record) closed() Span {
	w := r.out.Hold
	if w.To < 0 {
		return w
	}
	rows := r.l.Rows
	if rows[w.To].Time-rows[w.From].Time < r.t.Plan.Hold*(1-1e-9) {
		w = Span{r.reach, r.reach}
		for w.To+1 < len(rows) && rows[w.To+1].Pressure >= plateauShare*r.set {
			w.To++
		}
	}
	for w.From < w.To && r.letDown(w.To) {
		w.To--
	}
	if r.gas() { // it has settled where the clock starts
		return w
	}
	for w.From < w.To && (math.IsNaN(rows[w.From].Volume) || rows[w.From+1].Volume > rows[w.From].Volume+noVolumeMoved) {
		w.From++
	}
	for w.From < w.To && (math.IsNaN(rows[w.To].Volume) || rows[w.To].Volume < rows[w.To-1].Volume-noVolumeMoved) {
		w.To--
	}
	return w
}

// settled returns the first row from which the pressure, temperature taken off,
// goes as fast in the first half of the remaining time as in the second; else
// the first one 10 min after the setting was reached. At least half the hold
// must remain.
func (r *record) settled(w Span) (int, bool) {
	rows := r.l.Rows
	for s := w.From; s < w.To && rows[w.To].Time-rows[s].Time >= leastOfHold*r.t.Plan.Hold*(1-1e-9); s++ {
		half := (rows[s].Time + rows[w.To].Time) / 2
		m := s + 1 + sort.Search(w.To-s-1, func(k int) bool { return rows[s+1+k].Time >= half })
		if m >= w.To {
			break
		}
		first, second := r.balance(s, m), r.balance(m, w.To)
		ratio := (rows[m].Time - rows[s].Time) / (rows[w.To].Time - rows[m].Time)
		if math.Abs(first.Residual-ratio*second.Residual) <= 2*r.uPressure() || rows[s].Time-rows[r.reach].Time >= settledAfter {
			return s, true
		}
	}
	return w.From, false
}

// balance accounts for the change of pressure between two rows.
func (r *record) balance(from, to int) Decay {
	a, b := r.l.Rows[from], r.l.Rows[to]
	if r.gas() {
		return r.gasBalance(from, to)
	}
	d := r.noDecay()
	d.Span, d.Start, d.End = Span{from, to}, a.Temperature, b.Temperature
	d.Change, d.Warming, d.Pumped = b.Pressure-a.Pressure, b.Temperature-a.Temperature, r.shut[to]-r.shut[from]
	d.Allowed = decayShare * r.set * math.Min(1, (b.Time-a.Time)/r.t.Plan.Hold)
	water, known := r.water((a.Pressure+b.Pressure)/2, from, to)
	if !known {
		return d
	}
	wall, apart := d.Warming, !math.IsNaN(b.Wall-a.Wall)
	if apart {
		wall = b.Wall - a.Wall
	}
	c, v, α := r.stiffnessAt((a.Pressure+b.Pressure)/2), r.t.Full.Volume, r.t.Full.WallExpansion
	d.Drift = (water.Expansion - 3*α) * v / c
	d.Explained = (water.Expansion*d.Warming - 3*α*wall) * v / c
	d.Residual = d.Change - d.Explained
	uT := math.Abs(d.Drift) * r.uTemperature()
	if apart {
		uT = math.Hypot(water.Expansion, 3*α) * v / c * r.uTemperature()
	}
	uV := 0.0
	if math.Abs(d.Pumped) > noVolumeMoved {
		d.Residual -= d.Pumped / c
		uV = r.uVolume(d.Pumped) / c
	}
	uD := math.Hypot(driftShare*d.Drift, betaShare*water.Expansion*v/c)
	most := math.Max(math.Abs(d.Warming), math.Abs(wall))
	d.moving = 2 * most * uD
	d.Uncertainty = 2 * math.Sqrt(uT*uT+math.Pow(most*uD, 2)+math.Pow(r.uPressure(), 2)+uV*uV)
	d.Leak = -d.Residual * c
	return d
}

// stiffnessAt returns dV/dp of the tank with its air at p [m3/Pa], p in [Pa]: the
// measured one where it is near the predicted one, else the predicted; the
// measured one where none was predicted.
func (r *record) stiffnessAt(p float64) float64 {
	l, c := r.out.Line, r.predicted(r.reach)
	switch near := math.Abs(l.Slope-c) <= stiffnessShare*c; {
	case near || math.IsNaN(c):
		return l.Stiffness(p)
	case l.Air > 0:
		return c + l.Air*Atmosphere/((p+Atmosphere)*(p+Atmosphere))
	}
	return c
}
