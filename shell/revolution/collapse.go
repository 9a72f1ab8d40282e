package revolution

import (
	"fmt"
	"math"
)

// A Collapse is the plastic limit load of a wall that does not harden, its shape
// unchanged.
type Collapse struct {
	Factor float64 // the limit load over vary, made smaller by what the mesh is known to add [-]
	Mesh   float64 // by how much of itself it fell when every element was halved [-]
	Bound  float64 // λ of the mechanism of the halved mesh: the kinematic theorem's bound from above [-]
	Moves  float64 // greatest displacement when it was reached [m]
}

// LimitLoad returns the plastic limit load of base + λ vary: elastic, perfectly
// plastic walls with the yield condition of von Mises in layers through the
// thickness, small displacements. It pushes the wall on, by steps of that
// displacement which moves most, until the mechanism's bound from above stands
// within 0.05 per cent of the load carried, or 2 per cent at the end of 400 steps;
// a wider gap is an error.
//
// The displacement method comes from above as the mesh is made finer, and where a
// hinge forms at a joint no faster than the element's length. The load of the
// model and that on halved elements are therefore carried on to elements of no
// length, 2 λ(h/2) − λ(h), and where they differ by more than 5 per cent there is
// no answer.
//
// The change of shape, which helps a sharp junction and harms a flat crown, is
// left out, and so is buckling.
//
// Source: limit analysis, Drucker, Prager and Greenberg 1952 (memory).
func (m *Model) LimitLoad(base, vary Load) (Collapse, error) {
	none := Collapse{Factor: math.NaN(), Mesh: math.NaN(), Bound: math.NaN(), Moves: math.NaN()}
	fine, err := m.Refined()
	if err != nil { // not reached: the same structure made the coarse model
		return none, err
	}
	coarse, err := m.limitLoad(base, vary)
	if err != nil {
		return none, err
	}
	out, err := fine.limitLoad(base, vary)
	if err != nil { // not reached: what the coarse mesh carries the finer one does, of every structure tried
		return none, err
	}
	out.Mesh = (coarse.Factor - out.Factor) / out.Factor
	if !(math.Abs(out.Mesh) <= 0.05) {
		return none, fmt.Errorf("the mesh is too coarse for a limit load: halving it changes %.4g to %.4g", coarse.Factor, out.Factor)
	}
	out.Factor -= math.Max(0, coarse.Factor-out.Factor)
	return out, nil
}

// limitLoad is the load that this mesh carries.
func (m *Model) limitLoad(base, vary Load) (Collapse, error) {
	p, err := m.plasticity(base, vary)
	if err != nil {
		return Collapse{}, err
	}
	u := make([]float64, m.n)
	if err := p.rest(u); err != nil {
		return Collapse{}, err
	}
	first, err := p.firstYield(vary)
	if err != nil {
		return Collapse{}, err
	}
	return p.push(u, 0.9*first)
}

// rest brings u under the base load.
func (p *plasticity) rest(u []float64) error {
	if p.m.norm(p.base) == 0 {
		return nil
	}
	d := make([]float64, p.m.n)
	for range 40 {
		p.evaluate(u, 0)
		if p.m.norm(p.r) < 1e-9*p.m.norm(p.base) {
			p.settle()
			return nil
		}
		copy(d, p.r)
		p.back(d)
		for i := range u {
			u[i] += d[i]
		}
	}
	return fmt.Errorf("the base load alone is beyond the limit load")
}

// firstYield is the factor at which vary alone reaches yield.
func (p *plasticity) firstYield(vary Load) (float64, error) {
	s, err := p.m.Solve(vary)
	if err != nil { // not reached: vary is finite by now, and its linear state exists
		return math.NaN(), err
	}
	most := 0.0
	for _, x := range s.Stations {
		σy := p.m.s.Segments[x.Segment].Yield
		most = math.Max(most, math.Max(x.Inside.Equivalent(), x.Outside.Equivalent())/σy)
	}
	if !(most > 0) {
		return math.NaN(), fmt.Errorf("the load does not stress the wall")
	}
	return 1 / most, nil
}

// back factors the held tangent and solves in place.
func (p *plasticity) back(xs ...[]float64) {
	p.k.hold(p.m.scale)
	p.k.ldl()
	for _, x := range xs {
		for i, s := range p.m.scale {
			x[i] *= s
		}
		p.k.solve(x)
		for i, s := range p.m.scale {
			x[i] *= s
		}
	}
}

// push goes on from the state u until the bound from above is near.
func (p *plasticity) push(u []float64, first float64) (Collapse, error) {
	m := p.m
	v := make([]float64, m.n)
	out, step := Collapse{Bound: math.Inf(1)}, first
	p.evaluate(u, 0)
	for turn := range 400 {
		next, turns := p.stride(u, v, out.Factor, step, turn == 0)
		if turns == 0 {
			// not reached: Newton's method found back from every step tried
			if step /= 3; step < 1e-12*first {
				break
			}
			p.evaluate(u, out.Factor)
			continue
		}
		if cost, base, vary := p.power(u, v); turn > 0 && vary > 0 {
			out.Bound = math.Min(out.Bound, (cost-base)/vary)
		}
		p.settle()
		copy(u, v)
		if turn == 0 {
			step = m.size(u)
		}
		if out.Factor, out.Moves = math.Max(out.Factor, next), m.size(u); out.Bound-out.Factor < 5e-4*out.Factor {
			return out, nil
		}
		if turns < 6 {
			step *= 1.5
		}
	}
	// not reached: every structure tried closed in within the steps
	if out.Bound-out.Factor > 0.02*out.Factor || !(out.Factor > 0) {
		return out, fmt.Errorf("the limit load was not closed in: between %.4g and %.4g of the load", out.Factor, out.Bound)
	}
	return out, nil // not reached: as above
}

// stride steps from u at λ to v: the first step by λ itself, those after it by the
// displacement that moves most. It returns the new λ and the turns of Newton's
// method, 0 where it did not find back.
func (p *plasticity) stride(u, v []float64, λ, step float64, first bool) (float64, int) {
	m := p.m
	d, q := make([]float64, m.n), append([]float64(nil), p.vary...)
	p.back(q)
	at := m.mover(q)
	rise := step
	if !first {
		rise = step / math.Abs(q[at])
	}
	start := λ
	for i := range v {
		v[i] = u[i] + rise*q[i]
	}
	λ += rise
	for turn := 1; turn <= 25; turn++ {
		p.evaluate(v, λ)
		rest := m.norm(p.r) / (m.norm(p.vary)*math.Abs(λ) + m.norm(p.base))
		if rest < 1e-6 {
			if λ < start*(1-1e-9) { // not reached: no step tried came back unloaded
				break // unloaded: without a change of shape the load only grows
			}
			return λ, turn
		}
		if math.IsNaN(rest) || rest > 1e6 {
			break
		}
		copy(d, p.r)
		copy(q, p.vary)
		p.back(d, q)
		δ := -d[at] / q[at]
		for i := range v {
			d[i] += δ * q[i]
			v[i] += d[i]
		}
		λ += δ
	}
	return λ, 0
}
