package proof

import (
	"cmp"
	"math"
	"slices"

	"proofsheet/report/check"
)

// Shares of the setting by which the rows of a log are told apart [-]. Practice.
const (
	steadyShare    = 0.005 // rows this near to the first belong to one stop
	referenceReach = 0.02  // this near to the reference pressure a row is read as there
	onTheWay       = 0.3   // the way up to the steps begins above it
	endedShare     = 0.2   // and has ended under it: noise about one of them is no way up
	plateauShare   = 0.9   // the hold has ended below it
	secondShare    = 0.99  // a second cycle goes at least so high
	zeroShare      = 0.04  // under it a lowest reading is that of the open tank, over it that of the reference pressure
	begunShare     = 0.02  // a way up begins where the pressure was last so low
)

// segments finds the ways up, the hold and the reference readings. Judged in full
// is the way up that led to the hold.
func (r *record) segments() {
	rows := r.l.Rows
	r.reach, r.before, r.after, r.second = 0, -1, -1, -1
	last := math.NaN()
	for _, row := range rows {
		if !math.IsNaN(row.Volume) {
			last = row.Volume
		}
		r.shut = append(r.shut, last)
	}
	r.out.Hold = r.hold()
	r.climbed = r.climbs()
	r.main = r.mainClimb()
	if r.main < 0 { // it never went over 0.3 of the setting
		for i, row := range rows {
			if row.Pressure > rows[r.reach].Pressure {
				r.reach = i
			}
		}
		r.begun = r.beginning(0, r.reach)
		r.before = r.stop(r.begun, r.reach, r.atReference)
		r.points = r.wayUp(climb{begun: r.begun, top: r.reach, down: len(rows)}, r.reach)
		return
	}
	c := r.climbed[r.main]
	r.reach, r.begun, r.before, r.after = c.top, c.begun, c.before, c.after
	for _, c := range r.climbed[r.main+1:] {
		if rows[c.top].Pressure >= secondShare*r.set {
			r.second = c.after
			break
		}
	}
	r.points = r.wayUp(c, max(r.out.Hold.To, c.top))
}

func (r *record) atReference(row LogRow) bool {
	return math.Abs(row.Pressure-referenceShare*r.set) <= referenceReach*r.set && r.read(row)
}

// next returns the first row from i on whose pressure is as asked; the number
// of rows where none is.
func (r *record) next(i int, is func(p float64) bool) int {
	for i = max(i, 0); i < len(r.l.Rows); i++ {
		if is(r.l.Rows[i].Pressure) {
			return i
		}
	}
	return len(r.l.Rows)
}

// hold returns the first stretch at the setting that is long enough; else the
// longest.
func (r *record) hold() Span {
	best := Span{0, -1}
	length := func(s Span) float64 {
		if s.To < s.From {
			return -1
		}
		return r.l.Rows[s.To].Time - r.l.Rows[s.From].Time
	}
	from := -1
	for i := 0; i <= len(r.l.Rows); i++ {
		if i < len(r.l.Rows) && r.l.Rows[i].Pressure >= r.set {
			if from < 0 {
				from = i
			}
			continue
		}
		if from < 0 {
			continue
		}
		if s := (Span{from, i - 1}); length(s) > length(best) {
			best = s
		}
		if length(best) >= r.t.Plan.Hold {
			return best
		}
		from = -1
	}
	return best
}

// stop returns the last row of the longest stop at one pressure among rows
// from up to (not with) to which are as asked; -1 where none is.
func (r *record) stop(from, to int, is func(LogRow) bool) int {
	best, longest := -1, -1.0
	start, last := -1, -1
	for i := max(from, 0); i < min(to, len(r.l.Rows)); i++ {
		row := r.l.Rows[i]
		if !is(row) {
			continue
		}
		if last < 0 || math.Abs(row.Pressure-r.l.Rows[start].Pressure) > steadyShare*r.set || i != last+1 {
			start = i
		}
		last = i
		if d := row.Time - r.l.Rows[start].Time; d >= longest {
			best, longest = i, d
		}
	}
	return best
}

// wayUp returns a row for each pressure at which a way up stopped: by
// twentieths of the setting below 0.45 of it, by tenths above, where the row is
// the last of the longest stop; and the top of the pump's last stroke, which
// ends at the row held at the latest.
func (r *record) wayUp(c climb, held int) []int {
	bin := func(p float64) int {
		if share := p / r.set; share >= 0.45 {
			return 100 + int(math.Round(10*share))
		}
		return int(math.Round(20 * p / r.set))
	}
	top := c.top
	for top+1 < len(r.l.Rows) && r.l.Rows[top+1].Pressure > r.l.Rows[top].Pressure && r.l.Rows[top+1].Volume > r.l.Rows[top].Volume {
		top++
	}
	for top < held && !r.read(r.l.Rows[top]) {
		top++
	}
	var points []int
	seen := map[int]bool{}
	for i := c.begun; i < c.top; i++ {
		b := bin(r.l.Rows[i].Pressure)
		if seen[b] || r.l.Rows[i].Pressure < 0 {
			continue
		}
		seen[b] = true
		at := r.stop(c.begun, c.top, func(row LogRow) bool { return r.read(row) && bin(row.Pressure) == b })
		if at >= 0 && b != bin(r.l.Rows[top].Pressure) {
			points = append(points, at)
		}
	}
	if r.read(r.l.Rows[top]) {
		points = append(points, top)
	}
	slices.SortStableFunc(points, func(a, b int) int { return cmp.Compare(r.l.Rows[a].Pressure, r.l.Rows[b].Pressure) })
	return points
}

// pressure asks whether a gauge ever showed more than the plan allows, or the tank
// drawn under the atmosphere, and whether the gauges agree.
func (r *record) pressure() Finding {
	f := Finding{Title: "pressure within the plan", Outcome: Passed, Reason: "never over the setting and its overshoot"}
	u := r.t.Plan.GaugeUncertainty
	most, least, apart := math.Inf(-1), math.Inf(1), math.NaN()
	for _, row := range r.l.Rows {
		most, least = math.Max(most, row.Pressure), math.Min(least, row.Pressure)
		for _, p := range row.Others {
			if math.IsNaN(p) {
				continue
			}
			most, least = math.Max(most, p), math.Min(least, p)
			if d := math.Abs(p - row.Pressure); !(d <= apart) {
				apart = d
			}
		}
	}
	limit, drawn := r.set+r.t.Plan.Overshoot, -math.Max(u, suction)
	f.Values = []Measured{atMost(check.Pa("p_max", "highest pressure shown", most), limit, u)}
	if !math.IsNaN(apart) {
		f.Values = append(f.Values, atMost(check.Pa("", "largest difference of two gauges", apart), 2*u, math.NaN()))
	}
	switch {
	case most > limit*(1+1e-9): // a conversion is no overshoot
		f.Outcome = Failed
		f.Reason = "FAULT: OVER-PRESSURE. The tank saw more than the plan allows and is not passed until it is checked for that pressure"
		high := r.t.Plan.Top + 2*u + r.t.Plan.Overshoot
		use := r.t.Use * (high + most - limit) / high // at the top, where the share is the largest
		f.Values = append(f.Values, atMost(check.Num("σ/limit", "worst stress over its limit at that pressure", use), 1, math.NaN()))
	case least < drawn:
		f.Outcome, f.Reason = Inconclusive, "the gauge shows the tank drawn under the atmosphere: a vent shut while it drained, or a gauge that is off; look for a collapse"
		f.Values = append(f.Values, atLeast(check.Pa("p_min", "lowest pressure shown", least), drawn, u))
	case apart > 2*u:
		f.Outcome, f.Reason = Inconclusive, "two gauges differ by more than both may be off: find out which is right"
	}
	return f
}

// suction is how far under the atmosphere a gauge may read before a vent was
// shut in draining [Pa]; practice.
const suction = 5e3

// zero asks whether the gauge shows zero with the tank open, before the way up: one
// that is off, or counts from a vacuum, leaves the test short.
func (r *record) zero() Finding {
	f := Finding{Title: "zero of the gauge", Outcome: Passed, Reason: "shown with the tank open, within the uncertainty of the gauge"}
	at := 0
	for i := range r.reach + 1 {
		if math.Abs(r.l.Rows[i].Pressure) < math.Abs(r.l.Rows[at].Pressure) {
			at = i
		}
	}
	least, u := r.l.Rows[at].Pressure, r.t.Plan.GaugeUncertainty
	f.Values = []Measured{within(check.Pa("p_0", "pressure shown nearest to zero", least), 0, u, math.NaN())}
	switch {
	case math.Abs(least) <= u:
	case least < zeroShare*r.set:
		f.Outcome, f.Reason = Inconclusive, "the gauge never shows zero before the way up: it is off, or counts from a vacuum"
	default:
		f.Outcome, f.Reason = NotRead, "no reading with the tank open before the way up: a gauge that is off would not have been seen"
	}
	return f
}

// reached asks whether the setting was held without a break.
func (r *record) reached() Finding {
	f := Finding{Title: "setting reached and held", Outcome: Passed, Reason: "held without a break for the whole time"}
	held, gap := 0.0, 0.0
	if h := r.out.Hold; h.To >= h.From {
		held = r.l.Rows[h.To].Time - r.l.Rows[h.From].Time
		for i := h.From + 1; i <= h.To; i++ {
			gap = math.Max(gap, r.l.Rows[i].Time-r.l.Rows[i-1].Time)
		}
	}
	f.Values = []Measured{atLeast(check.S("", "time at the setting without a break", held), r.t.Plan.Hold, math.NaN()),
		{Quantity: check.Pa("", "raised in a minute, above half the setting", 60*r.fastest()), Predicted: 60 * r.t.Plan.Rate, Bound: "planned", Band: math.NaN(), Uncertainty: math.NaN()}}
	switch {
	case r.out.Hold.To < 0:
		f.Outcome, f.Reason = Inconclusive, "the setting was never reached: this was no proof test"
		f.Values = append(f.Values, atLeast(check.Pa("", "highest pressure shown", r.l.Rows[r.reach].Pressure), r.set, math.NaN()))
	case held < r.t.Plan.Hold*(1-1e-9):
		f.Outcome, f.Reason = Inconclusive, "not held at the setting without a break for the whole time: raise to it and hold again"
	case gap > HoldReadings(r.t.Plan.Hold)*(1+1e-9):
		f.Outcome, f.Reason = Inconclusive, "too few readings in the hold to show that it had no break"
		f.Values = append(f.Values, atMost(check.S("", "longest time between readings of the hold", gap), HoldReadings(r.t.Plan.Hold), math.NaN()))
	}
	f.Notes = r.asPlanned()
	return f
}

// asPlanned notes steps left out and a pressure raised too fast.
func (r *record) asPlanned() (notes []string) {
	missing := ""
	for _, share := range StepShares()[:len(StepShares())-1] {
		near := slices.ContainsFunc(r.points, func(i int) bool {
			return math.Abs(r.l.Rows[i].Pressure-share*r.set) <= 0.03*r.set
		})
		if !near && share*r.set < r.l.Rows[r.reach].Pressure {
			missing += " " + percent(share)
		}
	}
	if missing != "" {
		notes = append(notes, "No reading at these steps of the plan, in % of the setting:"+missing+".")
	}
	for _, row := range r.l.Rows[:r.begun] {
		if row.Pressure > onTheWay*r.set {
			notes = append(notes, "The tank was pressurised before and let down; the way up is judged from its last beginning.")
			break
		}
	}
	if passed := r.passedBy(); passed != "" {
		notes = append(notes, "The log leaves no time for a stop of 2 min at these steps, in % of the setting:"+passed+".")
	}
	if r.fastest() > 1.1*r.t.Plan.Rate {
		notes = append(notes, "Above half the setting the pressure was raised faster than the plan says.")
	}
	return notes
}

// passedBy lists the steps between whose neighbouring readings there was no time for
// the stop that the plan asks for.
func (r *record) passedBy() (steps string) {
	for _, share := range StepShares()[:len(StepShares())-1] {
		under, over := -1, -1
		for i := r.begun; i <= r.reach && over < 0; i++ {
			switch p := r.l.Rows[i].Pressure; {
			case p < (share-stepReach)*r.set:
				under = i
			case p > (share+stepReach)*r.set:
				over = i
			}
		}
		if under >= 0 && over >= 0 && r.l.Rows[over].Time-r.l.Rows[under].Time < stepStop {
			steps += " " + percent(share)
		}
	}
	return steps
}

// fastest returns the highest rate of the main way up over half the setting, over
// a minute at least where the log is read more often [Pa/s]; 0 where none is known.
func (r *record) fastest() (most float64) {
	for i, j := r.begun, r.begun; i < r.reach; i++ {
		for j = max(j, i+1); j < r.reach && r.l.Rows[j].Time-r.l.Rows[i].Time < rateOver; {
			j++
		}
		a, b := r.l.Rows[i], r.l.Rows[j]
		if a.Pressure > 0.5*r.set {
			most = math.Max(most, (b.Pressure-a.Pressure)/(b.Time-a.Time))
		}
	}
	return most
}

// How near to a step a reading counts as there [share of the setting], how long the
// plan stops there, and over what time a rate is told [s].
const stepReach, stepStop, rateOver = 0.02, settle, 60

func percent(share float64) string {
	return string([]byte{'0' + byte(math.Round(10*share)), '0'})
}

// reference asks for readings at the reference pressure before and after.
func (r *record) reference() Finding {
	f := Finding{Title: "reference readings", Outcome: Passed, Reason: "read before and after the hold"}
	what := "strain"
	if !r.gas() {
		what = "volume"
		f.Notes = []string{"Volumes are of the tank alone: what pump, hose and gauge line take is to be off them."}
	}
	switch {
	case r.before < 0 && r.after < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure, neither before nor after the hold"
	case r.before < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure on the way up"
	case r.after < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure after the hold"
	}
	for _, q := range []struct {
		row  int
		name string
	}{{r.before, "pressure of the reading before"}, {r.after, "pressure of the reading after"}} {
		if q.row >= 0 {
			v := within(check.Pa("", q.name, r.l.Rows[q.row].Pressure), referenceShare*r.set, referenceReach*r.set, math.NaN())
			v.Bound = "planned"
			f.Values = append(f.Values, v)
		}
	}
	return f
}
