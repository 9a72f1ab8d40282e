package proof

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

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
