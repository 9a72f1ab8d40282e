package study

import (
	"math"
	"slices"

	"proofsheet/report/check"
)

// seen is what assessed tanks show of each check, within the range of surfaces.
type seen struct {
	points [][]float64 // inputs from -1 to 1, those that are no samples first
	ids    []string    // of checks, sorted
	rows   map[string]*row
	faulty bool // some tank could not be assessed
}

// A row is one check at the points.
type row struct {
	met         int // at how many points there is one
	status      map[check.Status]int
	logarithms  []float64 // of capacity over factored demand [-]
	least, most float64   // margin [-]
}

// newSeen sorts tanks by check; those outside of the range are left out.
func newSeen(widths []float64, sets ...[]tried) *seen {
	s := &seen{rows: map[string]*row{}}
	for _, d := range slices.Concat(sets...) {
		x := make([]float64, len(widths))
		if !inside(d.scores, widths, x) {
			continue
		}
		s.faulty = s.faulty || d.err != nil
		s.points = append(s.points, x)
		for _, a := range d.answers {
			r := s.rows[a.id]
			if r == nil {
				r = &row{status: map[check.Status]int{}, least: math.Inf(1), most: math.Inf(-1)}
				s.rows[a.id] = r
				s.ids = append(s.ids, a.id)
			}
			r.met++
			r.status[a.status]++
			r.logarithms = append(r.logarithms, math.Log1p(a.margin))
			r.least, r.most = math.Min(r.least, a.margin), math.Max(r.most, a.margin)
		}
	}
	slices.Sort(s.ids)
	return s
}

// still returns the answer of a check that is the same at all n points. A margin that
// is nothing but for rounding may fall to either side and must be the same to the
// last digit.
func (r *row) still(n int) (answer, bool) {
	if r.met != n || len(r.status) != 1 {
		return answer{}, false
	}
	for status := range r.status {
		if status == check.NotAssessed || status == check.NotApplicable {
			return answer{status: status, margin: math.NaN()}, true
		}
		if moves := r.most - r.least; r.least == r.most || moves <= still*(1+math.Abs(r.least)) && math.Abs(r.least) > leastBand {
			return answer{status: status, margin: r.least}, true
		}
	}
	return answer{}, false
}

// smooth reports whether a check was made at all n points, with a demand: only then
// may a surface stand for it.
func (r *row) smooth(n int) bool {
	return r.met == n && r.status[check.Satisfied]+r.status[check.NotSatisfied] == n && !math.IsInf(r.most, 0)
}
