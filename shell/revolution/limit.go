package revolution

import (
	"fmt"
	"math"
)

// A Snap is the first limit point of the axisymmetric path.
type Snap struct {
	Factor float64 // load factor at which no more can be carried; +Inf where none was met [-]
	Moves  float64 // greatest displacement there [m]
}

// Snapthrough follows the axisymmetric path under base + λ vary with moderate
// rotations, past its limit point if there is one below the factor most [-], and
// returns the greatest λ [-] on the way: a perfect wall, elastic. Waves around
// the axis usually come first: Buckling.
//
// The path is followed by steps of that displacement which moves most; at the
// top they are made smaller until the greatest λ stands still to 1e-4.
func (m *Model) Snapthrough(base, vary Load, most float64) (Snap, error) {
	none := Snap{Factor: math.NaN(), Moves: math.NaN()}
	if !(most > 0) || math.IsInf(most, 0) {
		return none, fmt.Errorf("the greatest load factor is %.4g, must be above 0 and finite", most)
	}
	p, u, err := m.start(base, vary)
	if err != nil {
		return none, err
	}
	return p.climb(walker{u: u, step: most / 50}, most)
}

// A walker is a place on the path.
type walker struct {
	u    []float64
	λ    float64
	last []float64 // the step that led there
	step float64   // of λ where last is nil, else of the displacement at [m]
	at   int
}

// climb walks to the first maximum of λ.
func (p *path) climb(w walker, most float64) (Snap, error) {
	trail, top := []walker{w}, math.Inf(-1)
	for range 2000 {
		next, turns, err := p.pace(w)
		if err != nil {
			return Snap{Factor: math.NaN(), Moves: math.NaN()}, err
		}
		if next.λ > w.λ {
			if next.λ > most {
				return Snap{Factor: math.Inf(1), Moves: p.m.size(next.u)}, nil
			}
			if turns <= 4 {
				next.step *= 1.2
			}
			w, trail = next, append(trail, next)
			continue
		}
		if w.λ-top < 1e-4*math.Abs(w.λ) && len(trail) > 2 && top > math.Inf(-1) {
			return Snap{Factor: w.λ, Moves: p.m.size(w.u)}, nil
		}
		top = w.λ
		w = trail[max(0, len(trail)-2)]
		trail = trail[:max(1, len(trail)-1)]
		w.step /= 4
	}
	// not reached: every path tried had an end long before
	return Snap{Factor: math.NaN(), Moves: math.NaN()}, fmt.Errorf("no limit point and no end of the path in 2000 steps")
}

// pace takes one step along the path, a smaller one where Newton's method does
// not find back to it.
func (p *path) pace(w walker) (next walker, turns int, err error) {
	for range 12 {
		if next, turns, err = p.stride(w); err == nil {
			return next, turns, nil
		}
		w.step /= 2
	}
	return next, turns, err
}

// stride takes one step: along the tangent, then back to the path by Newton's
// method with the displacement at held.
func (p *path) stride(w walker) (next walker, turns int, err error) {
	m := p.m
	v := make([]float64, m.n)
	p.factored(w.u, w.λ)
	p.pull(w.u, v)
	p.back(v)
	next = walker{u: append([]float64(nil), w.u...), λ: w.λ, step: w.step, at: m.mover(v)}
	rise := w.step
	if w.last != nil {
		rise = w.step / math.Abs(v[next.at])
		if dot(v, w.last) < 0 {
			rise = -rise
		}
	}
	for i := range v {
		next.u[i] += rise * v[i]
	}
	next.λ += rise
	if w.last == nil {
		next.step = math.Abs(rise * v[next.at])
	}
	if turns, err = p.regain(&next); err != nil {
		return w, 0, err
	}
	next.last = v
	for i := range v {
		v[i] = next.u[i] - w.u[i]
	}
	return next, turns, nil
}

// regain brings w to the path by changing λ and all but its displacement at.
func (p *path) regain(w *walker) (turns int, err error) {
	m := p.m
	d, q, moved := make([]float64, m.n), make([]float64, m.n), math.Inf(1)
	for turn := 1; turn <= 10; turn++ {
		p.factored(w.u, w.λ)
		copy(d, p.r)
		rest := m.norm(d) / (p.full * math.Max(1, math.Abs(w.λ)))
		if rest < 1e-8 || rest < 1e-6 && moved < 1e-9*m.size(w.u) {
			return turn, nil
		}
		if math.IsNaN(rest) || rest > 1e6 {
			break
		}
		p.back(d)
		p.pull(w.u, q)
		p.back(q)
		δ := -d[w.at] / q[w.at]
		for i := range d {
			d[i] += δ * q[i]
			w.u[i] += d[i]
		}
		w.λ += δ
		moved = m.size(d)
	}
	return 0, ErrLimit
}

// mover is the displacement, not a rotation or strain, that moves most.
func (m *Model) mover(v []float64) (at int) {
	most := -1.0
	for i := range m.elements {
		for _, j := range [2]int{m.elements[i].dof, m.elements[i].dof + 1} {
			if x := math.Abs(v[j]); x > most && m.scale[j] > 0 {
				most, at = x, j
			}
		}
	}
	return at
}

func dot(x, y []float64) (sum float64) {
	for i := range x {
		sum += x[i] * y[i]
	}
	return sum
}
