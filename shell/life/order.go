package life

import (
	"cmp"
	"math"
	"slices"
)

// An Event is one kind of cycle by the stresses at the detail that it runs through, empty among them.
type Event struct {
	Name        string
	Least, Most float64 // bending and misalignment in it [Pa]
	Count       float64 // in the whole life [-]
}

// WorstOrder returns the cycles of the order of all events that does most harm: the largest stress of any is followed by the least of any, as
// often as both come, then the next ones. A cycle of one event keeps its name; one from the most of A to the least of B is "A down to B".
// No other pairing of the same ends has a larger sum of a power above 1 of its ranges: exchanging the lower ends of two pairs that lie in order
// only makes the larger range smaller and the smaller one larger by as much. What is not a number, comes less than no times or leaves out empty is left as it
// is, for [Detail.Usage] to refuse.
//
// Source: rainflow counting of the sorted extremes (computed).
func WorstOrder(events []Event) (out []Cycle) {
	sound := true
	var come []int // that come at all
	for i, e := range events {
		sound = sound && e.Count >= 0 && e.Count <= math.MaxFloat64 && e.Least <= 0 && e.Most >= 0
		if e.Count != 0 {
			come = append(come, i)
		}
	}
	var pairs []pair
	if sound {
		pairs = paired(events, come)
	}
	for i, e := range events {
		if !sound || e.Count == 0 {
			pairs = append(pairs, pair{i, i, e.Count})
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Or(a.top-b.top, a.bottom-b.bottom) })
	for _, p := range pairs {
		name := events[p.top].Name
		if p.top != p.bottom {
			name += " down to " + events[p.bottom].Name
		}
		out = append(out, Cycle{name, events[p.top].Most - events[p.bottom].Least, p.count})
	}
	return out
}

// A pair goes from the most of one event to the least of another.
type pair struct {
	top, bottom int
	count       float64 // [-]
}

// paired pairs the ends of the events that come; where two ends are alike, those of one event.
func paired(events []Event, come []int) (out []pair) {
	tops, bottoms := slices.Clone(come), slices.Clone(come)
	slices.SortStableFunc(tops, func(i, j int) int {
		return cmp.Or(cmp.Compare(events[j].Most, events[i].Most), cmp.Compare(events[i].Least, events[j].Least))
	})
	slices.SortStableFunc(bottoms, func(i, j int) int {
		return cmp.Or(cmp.Compare(events[i].Least, events[j].Least), cmp.Compare(events[j].Most, events[i].Most))
	})
	up, down := make([]float64, len(events)), make([]float64, len(events)) // that are left
	for i, e := range events {
		up[i], down[i] = e.Count, e.Count
	}
	for len(tops) > 0 && len(bottoms) > 0 {
		i, j := tops[0], bottoms[0]
		n := math.Min(up[i], down[j])
		out = append(out, pair{i, j, n})
		up[i], down[j] = up[i]-n, down[j]-n
		if up[i] == 0 {
			tops = tops[1:]
		}
		if down[j] == 0 {
			bottoms = bottoms[1:]
		}
	}
	return out
}
