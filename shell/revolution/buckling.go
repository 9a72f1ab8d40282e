package revolution

import (
	"fmt"
	"math"
)

// A Buckling is the lowest load factor of a perfect, elastic wall: no allowance
// for its imperfections, which cost a shell a large part of it, and none for
// yield, which usually comes first in a knuckle. The allowable is the caller's
// to make, with a stated knock-down.
type Buckling struct {
	Factor   float64  // λ of base + λ vary [-]; +Inf where nothing buckles below Highest
	Waves    int      // n around the axis; 0 is axisymmetric
	Mode     []Ripple // amplitudes along the meridian, the greatest 1
	Most     int      // every n from 0, or but 1, to here was counted; 0 where nothing is compressed
	OneWave  bool     // n = 1 was counted too: the supports hold the tank as a whole
	Highest  float64  // the greatest factor looked at [-]
	Moderate bool     // from the state with moderate rotations
}

// A Ripple is the mode at one place.
type Ripple struct {
	Segment int     // from 0
	R       float64 // radius of the mid-surface [m]
	Z       float64 // along the axis [m]
	Normal  float64 // displacement along the outward normal, times cos nθ [-]
}

// Bifurcation returns the lowest factor λ at which the linear state of
// base + λ vary buckles, over all numbers of waves around the axis: the lowest
// eigenvalue of each, none missed, by Sturm's count. Pressure follows the wall
// unless it is Dead. Rotations before buckling are left out.
//
// A point whose compression N stays below D n²/r² cannot buckle with n waves or
// more, to terms of the order t/R, so that counting ends a little above.
func (m *Model) Bifurcation(base, vary Load) (Buckling, error) {
	s, err := m.search(base, vary)
	if err != nil {
		return Buckling{Factor: math.NaN(), Highest: math.NaN()}, err
	}
	for range 6 {
		if err := s.sweep(); err != nil {
			return Buckling{Factor: math.NaN(), Highest: math.NaN()}, err
		}
		if s.found || math.IsInf(s.high, 1) {
			break
		}
		s.high *= 8
	}
	out := Buckling{Factor: math.Inf(1), OneWave: s.one, Highest: s.high}
	if !math.IsInf(s.high, 1) {
		out.Most = s.cut()
	}
	if s.found {
		out.Factor, out.Waves, out.Mode, out.Highest = s.high, s.waves, s.w.ripples(s.mode, s.waves), s.high
	}
	return out, nil
}

// A search looks for the lowest factor below high.
type search struct {
	m          *Model
	w          *waves
	p          *pencil
	x          *expansion
	base, vary []prestress
	high       float64
	waves      int
	mode       []float64
	found, one bool
}

func (m *Model) search(base, vary Load) (*search, error) {
	b, err := m.Solve(base)
	if err != nil {
		return nil, err
	}
	v, err := m.Solve(vary)
	if err != nil {
		return nil, err
	}
	w := m.waves()
	s := &search{m: m, w: w, p: newPencil(w.n, waveWidth),
		base: m.prestress(b.u, m.following(base), false), vary: m.prestress(v.u, m.following(vary), false)}
	s.x, s.one = w.expand(s.base, s.vary), m.steady()
	s.high = 4 * s.classical()
	return s, nil
}

// classical is where the largest compression of vary alone meets that at which
// a sphere or a cylinder of the place's r₂ buckles, E t²/(r₂ √(3(1 − ν²))), or
// +Inf without compression, but for rounding.
func (s *search) classical() float64 {
	least, most := math.Inf(1), 0.0
	for _, q := range s.vary[:len(s.m.points)] {
		most = math.Max(most, math.Max(math.Abs(q.ns), math.Abs(q.nθ)))
	}
	for i, q := range s.vary[:len(s.m.points)] {
		p := &s.m.points[i]
		wall := s.m.walls[s.m.elements[i/gauss].segment]
		n := -math.Min(q.ns, q.nθ)
		if n <= rounding*most {
			continue
		}
		r2 := math.Max(p.r/math.Max(math.Abs(p.tz), 1e-3), wall.t)
		least = math.Min(least, wall.c*wall.t*(1-wall.ν*wall.ν)/(r2*math.Sqrt(3*(1-wall.ν*wall.ν)))/n)
	}
	return least
}

// cut is the number of waves from which on nothing can buckle below high, with
// 15 per cent over for what the argument of Bifurcation leaves out.
func (s *search) cut() int {
	most := 3.0
	for i := range s.m.points {
		p, a, b := &s.m.points[i], s.base[i], s.vary[i]
		n := -math.Min(a.ns+s.high*b.ns, a.nθ+s.high*b.nθ)
		if n > 0 {
			most = math.Max(most, 1.15*p.r*math.Sqrt(n/s.m.walls[s.m.elements[i/gauss].segment].d))
		}
	}
	return int(math.Ceil(most)) + 1
}

// sweep counts every number of waves below high, a few first to bring high
// down.
func (s *search) sweep() error {
	if math.IsInf(s.high, 1) {
		return nil
	}
	seen := map[int]bool{}
	for n := 2; n <= s.cut(); n += max(1, n/3) {
		seen[n] = true
		if err := s.try(n); err != nil {
			return err
		}
	}
	for n := 0; n <= s.cut(); n++ {
		if seen[n] {
			continue
		}
		if err := s.try(n); err != nil { // not reached: a base that buckles by itself was found so with the few before
			return err
		}
	}
	return nil
}

// try looks for a factor of n waves below high. One wave around the axis is
// left out where the supports let the tank move as a whole.
func (s *search) try(n int) error {
	if n > waveMost {
		return fmt.Errorf("more than %d waves around the axis would have to be counted", waveMost)
	}
	if n == 1 && !s.one {
		return nil
	}
	s.x.fill(s.p.k, s.p.g, n)
	if err := s.p.hold(s.w.held(n)); err != nil {
		return fmt.Errorf("%d waves around the axis: %w", n, err)
	}
	λ, mode, ok, err := s.p.lowest(s.high)
	if err != nil {
		return fmt.Errorf("%d waves around the axis: %w", n, err)
	}
	if ok && λ < s.high {
		s.high, s.waves, s.found, s.mode = λ, n, true, s.p.unscaled(mode)
	}
	return nil
}

const waveMost = 1000
