package proof

import (
	"cmp"
	"fmt"
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
		r.before = r.referenceIn(r.begun, r.reach)
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

// referenceIn returns the row of the reference reading among rows from up to to: of
// those with a temperature, where any has one; -1 where none is.
func (r *record) referenceIn(from, to int) int {
	full := func(row LogRow) bool { return r.atReference(row) && !math.IsNaN(row.Temperature) }
	is := full
	at := r.stop(from, to, is)
	if at < 0 {
		is = r.atReference
		at = r.stop(from, to, is)
	}
	if at < 0 {
		return at
	}
	for middle := r.middle(from, at, is); at > from && r.l.Rows[at].Pressure-middle > 2*r.uPressure() && is(r.l.Rows[at-1]); {
		at-- // pumping had begun again
	}
	return at
}

// middle returns the median pressure of the rows before one, and it, that are as asked
// without a break [Pa].
func (r *record) middle(from, row int, is func(LogRow) bool) float64 {
	var ps []float64
	for i := row; i >= from && is(r.l.Rows[i]); i-- {
		ps = append(ps, r.l.Rows[i].Pressure)
	}
	slices.Sort(ps)
	return ps[len(ps)/2]
}

// stopFrom returns the first row of the stop to which a row belongs.
func (r *record) stopFrom(row int) int {
	rows, from := r.l.Rows, row
	for from > 0 && math.Abs(rows[from-1].Pressure-rows[row].Pressure) <= steadyShare*r.set {
		from--
	}
	return from
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
	limit, drawn := r.set+r.t.Plan.Overshoot, math.Min(0, r.t.Plan.OpenShown())-math.Max(u, suction)
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
	case r.dropout() >= 0:
		f.Outcome = Inconclusive
		f.Reason = fmt.Sprintf("the gauge drops out at %g s, with pressure before and after: look at it, and leave such a row out only where the gauge is known to have failed", r.l.Rows[r.dropout()].Time)
	case apart > 2*u:
		f.Outcome, f.Reason = Inconclusive, "two gauges differ by more than both may be off: find out which is right"
	}
	return f
}

// dropout returns a row that shows nothing between two that show pressure; -1 for none.
func (r *record) dropout() int {
	rows, high := r.l.Rows, onTheWay*r.set
	for i := 1; i+1 < len(rows); i++ {
		if r.open(rows[i].Pressure) && rows[i-1].Pressure > high && rows[i+1].Pressure > high {
			return i
		}
	}
	return -1
}

// suction is how far under the atmosphere a gauge may read before a vent was
// shut in draining [Pa]; practice.
const suction = 5e3

// zero asks whether the gauge shows the open tank before the way up and after it: one
// that is off, or counts from a vacuum, leaves the test short.
func (r *record) zero() Finding {
	f := Finding{Title: "zero of the gauge", Outcome: Passed, Reason: "shown with the tank open, within the uncertainty of the gauge"}
	due, u := r.t.Plan.OpenShown(), r.t.Plan.GaugeUncertainty
	nearest := func(from, to int) int {
		at := -1
		for i := from; i < to; i++ {
			if at < 0 || math.Abs(r.l.Rows[i].Pressure-due) < math.Abs(r.l.Rows[at].Pressure-due) {
				at = i
			}
		}
		return at
	}
	at := nearest(0, r.reach+1)
	least := r.l.Rows[at].Pressure
	f.Values = []Measured{within(check.Pa("p_0", "shown nearest to the open tank", least), due, u, math.NaN())}
	switch {
	case math.Abs(least-due) <= u:
	case least < zeroShare*r.set || at == 0 && least < (referenceShare+referenceReach)*r.set:
		f.Outcome, f.Reason = Inconclusive, "the gauge never shows the open tank before the way up: it is off, or counts from a vacuum"
	default:
		f.Outcome, f.Reason = NotRead, "no reading with the tank open before the way up: a gauge that is off would not have been seen"
	}
	if first := r.l.Rows[0]; !r.gas() && first.Pressure-due > u && math.Abs(first.Volume) <= 2*r.uVolume(0) {
		f.Outcome, f.Reason = Inconclusive, "the gauge shows pressure before anything has gone in: it is off, or counts from a vacuum"
	}
	if r.shownWhenEmpty(due, u) {
		f.worsen(Inconclusive, "the gauge shows pressure when all has come back: it drifted, or was off")
	}
	down := 0
	if n := len(r.climbed); n > 0 {
		down = r.climbed[n-1].down
	}
	if at = nearest(down, len(r.l.Rows)); down > 0 && at >= 0 && r.l.Rows[at].Pressure < zeroShare*r.set {
		shown := r.l.Rows[at].Pressure
		f.Values = append(f.Values, within(check.Pa("p_1", "and afterwards", shown), due, u, math.NaN()))
		if math.Abs(shown-due) > u {
			f.worsen(Inconclusive, "the gauge does not come back to the open tank after the test: it drifted, or was off")
		}
	}
	return f
}

// shownWhenEmpty reports whether the last reading shows pressure though all that went
// into the open tank has come back, warmth taken off.
func (r *record) shownWhenEmpty(due, u float64) bool {
	last := len(r.l.Rows) - 1
	a, b := r.l.Rows[0], r.l.Rows[last]
	if r.gas() || math.Abs(a.Pressure-due) > u || !(b.Pressure-due > u) {
		return false
	}
	came := r.left(0, last).value + r.stiffnessAt(0)*(b.Pressure-a.Pressure)
	return came <= 2*r.uVolume(0)
}

// reached asks whether the setting was held without a break.
func (r *record) reached() Finding {
	f := Finding{Title: "setting reached and held", Outcome: Passed, Reason: "held without a break for the whole time"}
	held, gap := 0.0, 0.0
	if h := r.out.Hold; h.To >= h.From {
		held = r.l.Rows[h.To].Time - r.l.Rows[h.From].Time
		gap = r.heldGap()
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

// heldGap returns the longest time between two readings of the hold; 0 where some stretch
// of it as long as planned has none over the plan's.
func (r *record) heldGap() (gap float64) {
	h, rows := r.out.Hold, r.l.Rows
	from := h.From
	for i := h.From + 1; i <= h.To; i++ {
		d := rows[i].Time - rows[i-1].Time
		if gap = math.Max(gap, d); d > HoldReadings(r.t.Plan.Hold)*(1+1e-9) {
			from = i
		}
		if rows[i].Time-rows[from].Time >= r.t.Plan.Hold*(1-1e-9) {
			return 0
		}
	}
	return gap
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
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure after the hold, before the tank is opened"
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
