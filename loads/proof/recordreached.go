package proof

import (
	"math"
	"slices"

	"proofsheet/report/check"
)

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
