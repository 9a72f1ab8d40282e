package revolution

import (
	"fmt"
	"math"
)

// BifurcationModerate returns the lowest factor λ up to most [-] at which the
// state of base + λ vary, followed with moderate rotations, buckles into waves or
// snaps through. The wall is followed in steps, all numbers of waves counted at
// each, and the step where the first loses its stability halved until λ is known
// to 1e-4. Factor is +Inf where the wall is stable up to most.
func (m *Model) BifurcationModerate(base, vary Load, most float64) (Buckling, error) {
	none := Buckling{Factor: math.NaN(), Highest: math.NaN(), Moderate: true}
	if !(most > 0) || math.IsInf(most, 0) {
		return none, fmt.Errorf("the greatest load factor is %.4g, must be above 0 and finite", most)
	}
	g, err := m.guard(base, vary)
	if err != nil {
		return none, err
	}
	linear, err := m.Bifurcation(base, vary)
	if err != nil {
		return none, err
	}
	step := math.Min(most, linear.Factor) / 8
	low, λ := append([]float64(nil), g.u...), 0.0
	for {
		next := math.Min(most, λ+step)
		bad, err := g.unstable(low, λ, next, nil)
		if err != nil { // not reached: as in unstable
			return none, err
		}
		if len(bad) > 0 {
			return g.narrow(low, λ, next, bad)
		}
		copy(low, g.u)
		if λ = next; λ == most {
			return Buckling{Factor: math.Inf(1), Most: g.most, OneWave: g.one, Highest: most, Moderate: true}, nil
		}
	}
}

// A guard tells which waves a state on the path is unstable to.
type guard struct {
	p    *path
	w    *waves
	a    *pencil
	x    *expansion // of the state looked at, or nil
	u    []float64  // the state looked at last
	most int
	one  bool
}

func (m *Model) guard(base, vary Load) (*guard, error) {
	p, u, err := m.start(base, vary)
	if err != nil {
		return nil, err
	}
	w := m.waves()
	return &guard{p: p, w: w, a: newPencil(w.n, waveWidth), u: u, one: m.steady()}, nil
}

// start returns the path of base + λ vary with the state at λ = 0.
func (m *Model) start(base, vary Load) (*path, []float64, error) {
	first, err := m.path(Load{}, base)
	if err != nil {
		return nil, nil, err
	}
	u := make([]float64, m.n)
	if first.full > 0 {
		if _, err = first.advance(u, 0, 1); err != nil {
			return nil, nil, fmt.Errorf("the base load: %w", err)
		}
	}
	p, err := m.path(base, vary)
	return p, u, err
}

// unstable goes from the state low at λ0 to λ1 and returns the waves of which ns,
// or of all if that is nil, the state there is unstable; 0 also where the path
// ends in between.
func (g *guard) unstable(low []float64, λ0, λ1 float64, ns []int) (bad []int, err error) {
	copy(g.u, low)
	negative, err := g.p.advance(g.u, λ0, λ1)
	if err != nil || negative > 0 {
		return []int{0}, nil
	}
	pre := g.prestress(λ1)
	if ns == nil {
		for n := 1; n <= g.cut(pre); n++ {
			ns = append(ns, n)
		}
		g.most = max(g.most, g.cut(pre))
	}
	g.x = nil
	if len(ns) > 6 { // what it takes to have all at once
		g.x = g.w.expand(pre, nil)
	}
	for _, n := range ns {
		if n == 0 || n == 1 && !g.one {
			continue
		}
		if n > waveMost { // not reached: the linear search before it has refused so thin a wall
			return nil, fmt.Errorf("more than %d waves around the axis would have to be counted", waveMost)
		}
		if g.count(n, pre) > 0 {
			bad = append(bad, n)
		}
	}
	return bad, nil
}

// prestress is that of the state g.u at λ.
func (g *guard) prestress(λ float64) []prestress {
	p := make([]float64, len(g.p.l.pBase))
	for i := range p {
		p[i] = g.p.l.pBase[i] + λ*g.p.l.pVary[i]
	}
	return g.p.m.prestress(g.u, p, true)
}

// cut is the number of waves from which on the state cannot buckle.
func (g *guard) cut(pre []prestress) int {
	s := search{m: g.p.m, base: pre, vary: make([]prestress, len(pre))}
	return s.cut()
}

// count returns the number of negative eigenvalues with n waves.
func (g *guard) count(n int, pre []prestress) int {
	if g.x != nil {
		g.x.fill(g.a.k, nil, n)
	} else {
		g.w.fill(g.a.k, nil, n, pre, nil)
	}
	if g.a.hold(g.w.held(n)) != nil { // not reached: waves lose their stability in steps too small for it
		return 1 // a diagonal below 0 is unstable by itself
	}
	return g.a.negative()
}

// narrow halves the step from λ0, stable with the state low, to λ1, unstable to
// the waves bad, and finds the mode.
func (g *guard) narrow(low []float64, λ0, λ1 float64, bad []int) (Buckling, error) {
	for λ1-λ0 > 1e-4*λ1 {
		mid := (λ0 + λ1) / 2
		if mid == λ0 || mid == λ1 { // not reached: the range ends at 1e-4, far above rounding
			break
		}
		// A path that ends hides what the state beyond its end is unstable to.
		ns := bad
		if bad[0] == 0 {
			ns = nil
		}
		worse, err := g.unstable(low, λ0, mid, ns)
		if err != nil { // not reached: as in unstable
			return Buckling{Factor: math.NaN(), Highest: math.NaN(), Moderate: true}, err
		}
		if len(worse) > 0 {
			λ1, bad = mid, worse
		} else {
			λ0 = mid
			copy(low, g.u)
		}
	}
	out := Buckling{Factor: λ1, Waves: bad[0], Most: g.most, OneWave: g.one, Highest: λ1, Moderate: true}
	copy(g.u, low)
	if bad[0] > 0 {
		out.Waves, out.Mode = g.softest(bad, λ0)
	}
	return out, nil
}

// softest returns, of the waves that lose their stability just above λ, the one
// nearest to it at λ, with its mode.
func (g *guard) softest(ns []int, λ float64) (waves int, mode []Ripple) {
	pre, least := g.prestress(λ), math.Inf(1)
	for _, n := range ns {
		g.w.fill(g.a.k, nil, n, pre, nil)
		if g.a.hold(g.w.held(n)) != nil { // not reached: at λ the state is stable still
			return n, nil
		}
		g.a.identity()
		μ, x := g.a.iterate(0)
		if μ = math.Abs(μ); μ < least {
			waves, least, mode = n, μ, g.w.ripples(g.a.unscaled(x), n)
		}
	}
	return waves, mode
}

// identity sets G to one where nothing is held, for the eigenvalues of K alone.
func (p *pencil) identity() {
	p.g.clear()
	for i, s := range p.s {
		if s > 0 {
			p.g.a[i*(p.g.k+1)] = 1
		}
	}
}
