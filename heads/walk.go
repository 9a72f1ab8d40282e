package heads

import (
	"math"

	"proofsheet/material"
)

// A walk looks along a head for the place with the least margin.
type walk struct {
	l         Loading
	g         Geometry
	wall      float64 // [m]
	track     *track
	apart     []bool                                     // what a place is judged by changes where this does
	due       func(all []trial, i int, p *place) []trial // appends the comparisons of a place
	uses      []float64                                  // demand over capacity of the places looked at [-]
	held      []bool                                     // the hoop stress is held there
	pull      []float64                                  // axial force of the line loads, over π t [N/m]
	line      []float64                                  // their larger stress [Pa]
	perPascal []float64                                  // use over the larger stress from pressure [1/Pa]
	trials    []trial                                    // of the place just looked at
	most      float64                                    // largest use so far [-]
	best      trial
	at        int // place of the largest use
	place     place
}

// stride is how many places are passed over at first. Between two places looked at the
// membrane stress is smooth, or has the one kink of the liquid's level.
const stride = 8

// worst returns the place with the least margin. It looks at every stride-th place,
// at the ends of pieces and on both sides of a border first, then at all
// places of a stretch that may hide more than has been found: by no more than
// the second difference of what its ends and their neighbours show, which
// is eight times what a parabola rises over its chord, and no less than what a kink does.
// A hoop stress that begins to be held in between has the stretch looked at too, and so has
// the one beside the axis, where the line load is largest and the apex itself has none. Where a
// mass hangs in between, the line load jumps and falls with the square of the radius: the
// most that it can be there, four times over, stands on top of what the stretch shows.
func (w *walk) worst() (material.Judged, place, error) {
	n := len(w.track.points)
	room := make([]float64, 4*n)
	w.uses, w.pull, w.line, w.perPascal = room[:n], room[n:2*n], room[2*n:3*n], room[3*n:]
	w.most, w.at, w.held = math.Inf(-1), -1, make([]bool, n)
	marks := w.marks()
	for _, i := range marks {
		if err := w.look(i); err != nil {
			return material.Judged{}, place{}, err
		}
	}
	for k := 1; k < len(marks); k++ {
		if i, j := marks[k-1], marks[k]; j > i+1 && w.mayHide(marks, k) {
			for m := i + 1; m < j; m++ {
				if err := w.look(m); err != nil {
					return material.Judged{}, place{}, err
				}
			}
		}
	}
	if w.at < 0 {
		return material.Judged{}, place{}, nil
	}
	w.place.where = w.best.where
	j := w.best.judged()
	return j, w.place, j.Err
}

// marks returns the places to look at first, in their order.
func (w *walk) marks() (out []int) {
	last := len(w.track.points) - 1
	out = make([]int, 0, last/stride+8)
	for i := range w.track.points {
		end := i == 0 || i == last || w.track.piece[i-1] != w.track.piece[i] || w.track.piece[i+1] != w.track.piece[i]
		border := !end && (w.apart[i-1] != w.apart[i] || w.apart[i+1] != w.apart[i])
		if end || border || i%stride == 0 {
			out = append(out, i)
		}
	}
	return out
}

// look judges one place.
func (w *walk) look(i int) error {
	p := place{Point: w.track.points[i], from: w.track.from[i]}
	if err := w.l.stress(&p, w.g, w.wall); err != nil {
		return err
	}
	w.uses[i], w.held[i] = math.Inf(-1), p.hoopHeld(w.g.Inward)
	w.pull[i] = (p.loadMost + p.loadLeast) * p.R * math.Sin(p.Phi)
	w.line[i] = max(math.Abs(p.loadMost), math.Abs(p.loadLeast))
	w.trials = w.due(w.trials[:0], i, &p)
	for k := range w.trials {
		t := &w.trials[k]
		use := t.use()
		if !(use >= 0) {
			return notCompared(t.judged().Err, p.X)
		}
		w.uses[i] = max(w.uses[i], use)
		if use > w.most || use == w.most && i < w.at {
			w.most, w.best, w.at, w.place = use, *t, i, p
		}
	}
	w.perPascal[i] = w.uses[i] / max(math.Abs(p.mer), math.Abs(p.hoop))
	return nil
}

// mayHide reports whether the stretch before mark k may hide a larger use than the
// largest so far.
func (w *walk) mayHide(marks []int, k int) bool {
	i, j := marks[k-1], marks[k]
	a, b := w.uses[i], w.uses[j]
	if math.IsInf(a, -1) && math.IsInf(b, -1) { // not judged at either end, nor between
		return false
	}
	if w.held[i] != w.held[j] || w.track.points[i].R == 0 {
		return true
	}
	bend, known := 0.0, false
	for _, m := range [2]int{k - 1, k} { // the mark at either end with its neighbours
		if m == 0 || m == len(marks)-1 {
			continue
		}
		l, c, r := marks[m-1], marks[m], marks[m+1]
		if of := w.track.piece; of[l] != of[c] || of[r] != of[c] || w.apart[l] != w.apart[c] || w.apart[r] != w.apart[c] {
			continue
		}
		left, right := (w.uses[c]-w.uses[l])/float64(c-l), (w.uses[r]-w.uses[c])/float64(r-c)
		bend, known = max(bend, math.Abs(right-left)*float64(j-i)), true
	}
	return !known || !(max(a, b)+bend+w.step(i, j) < w.most) // also where that is not a number
}

// steady is how far the axial force of line loads may differ between two places without a mass
// between them [-]: their radius is not quite that of the mid-surface.
const steady = 0.01

// step returns what a mass between places i and j can add to the use [-]: nothing where
// none hangs there, not a number where nothing is known of it.
func (w *walk) step(i, j int) float64 {
	a, b := w.pull[i], w.pull[j]
	if math.Abs(a-b) <= steady*max(math.Abs(a), math.Abs(b)) {
		return 0
	}
	from, to := w.track.points[i], w.track.points[j]
	ri, rj := from.R*math.Sin(from.Phi), to.R*math.Sin(to.Phi)
	line := max(w.line[i]*ri, w.line[j]*rj) / min(ri, rj) // the load of either side at the least radius [Pa]
	return 4 * line * max(w.perPascal[i], w.perPascal[j])
}
