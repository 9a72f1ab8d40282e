package proof

import (
	"fmt"
	"math"
	"slices"
)

// A climb is one way up over 0.3 of the setting, and down again under 0.2 of it.
type climb struct {
	begun  int // row from which it is judged
	over   int // first row over 0.3 of the setting
	top    int // first row at the setting; the first of the highest where it was not reached
	down   int // first row under 0.2 of the setting again; the number of rows where none is
	before int // row of the reference reading on its way up; -1: none
	after  int // and of the one after it, before the tank is opened or the next climb; -1: none
}

// climbs returns those of the log in their order.
func (r *record) climbs() (out []climb) {
	rows := r.l.Rows
	over := func(p float64) bool { return p > onTheWay*r.set }
	under := func(p float64) bool { return p < endedShare*r.set }
	ended := 0
	for at := r.next(0, over); at < len(rows); {
		c := climb{over: at, top: at, down: r.next(at, under)}
		for i := at; i < c.down && rows[c.top].Pressure < r.set; i++ {
			if rows[i].Pressure > rows[c.top].Pressure {
				c.top = i
			}
		}
		c.begun = r.beginning(ended, at)
		c.before = r.referenceIn(c.begun, c.over)
		ended, at = c.down, r.next(c.down, over)
		c.after = r.referenceIn(c.down, min(at, r.next(c.down, r.open)))
		out = append(out, c)
	}
	return out
}

// open reports whether a pressure is that of the open tank.
func (r *record) open(p float64) bool { return p <= begunShare*r.set }

// beginning returns the row at which a way up begins between the end of the one
// before and the row at which it is well under way: where the tank was last open;
// else the first row, or after another climb the lowest stop.
func (r *record) beginning(from, over int) int {
	for i := over - 1; i >= from; i-- {
		if r.open(r.l.Rows[i].Pressure) {
			return i
		}
	}
	if from == 0 {
		return 0
	}
	lowest := math.Inf(1)
	for _, row := range r.l.Rows[from:over] {
		lowest = math.Min(lowest, row.Pressure)
	}
	return r.next(from, func(p float64) bool { return p <= lowest+steadyShare*r.set })
}

// mainClimb returns the index of the climb that is judged in full: that of the
// hold, else the highest; -1 where the log has none.
func (r *record) mainClimb() int {
	best := -1
	for k, c := range r.climbed {
		if h := r.out.Hold; h.To >= h.From && h.From >= c.over && h.From < c.down {
			return k
		}
		if best < 0 || r.l.Rows[c.top].Pressure > r.l.Rows[r.climbed[best].top].Pressure {
			best = k
		}
	}
	return best
}

// others returns the climbs beside the main one that went high enough to yield
// something, those before it and those after.
func (r *record) others() (earlier, later []climb) {
	for k, c := range r.climbed {
		switch {
		case k == r.main || r.l.Rows[c.top].Pressure < departureFrom*r.set:
		case k < r.main:
			earlier = append(earlier, c)
		default:
			later = append(later, c)
		}
	}
	return earlier, later
}

// along says of which way up beside the main one a reason is told.
func (r *record) along(c climb, reason string) string {
	return fmt.Sprintf("on the way up from %.0f s on, to %.0f %% of the setting: %s", r.l.Rows[c.begun].Time, 100*r.l.Rows[c.top].Pressure/r.set, reason)
}

// otherClimbs judges the ways up beside the main one by their own readings: a
// departure fails the test as on the main one; where too few earlier readings tell
// air from a yield, or none tell anything, it is open.
func (r *record) otherClimbs(f *Finding) {
	earlier, later := r.others()
	for _, c := range slices.Concat(earlier, later) {
		points := r.wayUp(c, c.down-1)
		w := r.walk(points)
		o, reason := w.outcome, w.reason
		switch {
		case o == Failed && !w.airKnown:
			o, reason = Inconclusive, "more volume than predicted, with too few earlier readings to tell air from a yield"
		case o == Passed && w.told == 0:
			o, reason = Inconclusive, "no reading over half the setting to tell a departure by"
		}
		f.worsen(o, r.along(c, reason))
	}
}

// laterClimbs judges what the ways up after the main one left: each comes back to the
// reference pressure, and leaves no more than 1 % of the growth or 2 u.
func (r *record) laterClimbs(f *Finding, te float64) {
	_, later := r.others()
	for _, c := range later {
		o, reason := Passed, ""
		pe := volumeChange{math.NaN(), math.NaN()}
		if c.before >= 0 && c.after >= 0 {
			pe = r.left(c.before, c.after)
		}
		switch {
		case c.after < 0:
			o, reason = Inconclusive, "the log shows no reference reading after it: what it left, and whether the tank held it, is not known"
		case math.IsNaN(pe.value + pe.uncertainty + te):
			o, reason = Inconclusive, "what it left is not known without reference readings and temperature before and after it"
		case pe.value > math.Max(setAgain*te, 2*pe.uncertainty):
			o, reason = Failed, "water stayed in the tank: permanent growth again, or a leak"
		}
		f.worsen(o, r.along(c, reason))
	}
}

// earlierClimbs asks whether a way up before the main one left water in the tank:
// a fitting that let go, or a yield.
func (r *record) earlierClimbs(f *Finding, te float64) {
	earlier, _ := r.others()
	for _, c := range earlier {
		if c.before < 0 || c.after < 0 {
			f.worsen(Inconclusive, r.along(c, "what it left is not known without reference readings before and after it: log the next test by itself"))
			continue
		}
		if pe := r.left(c.before, c.after); pe.value > math.Max(setPass*te, 2*pe.uncertainty) {
			f.worsen(Inconclusive, r.along(c, "it left water in the tank: a fitting that let go, or a yield; find out which and test again"))
		}
	}
}

// worsen sets an answer over a better one.
func (f *Finding) worsen(o Outcome, reason string) {
	if worseThan(o, f.Outcome) {
		f.Outcome, f.Reason = o, reason
	}
}
