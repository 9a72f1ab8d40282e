package revolution

import (
	"errors"
	"fmt"
	"math"
)

// ErrLimit says that the wall snaps through, or that the path could not be
// followed, before the load is reached.
var ErrLimit = errors.New("the wall snaps through, or its state cannot be followed, before the full load")

// A path follows the axisymmetric state under base + λ vary with moderate
// rotations. It is not for two at a time.
type path struct {
	m    *Model
	l    loading
	k    *band
	r    []float64
	full float64 // greatest scaled load, for the test of equilibrium
}

func (m *Model) path(base, vary Load) (*path, error) {
	l, err := m.loading(base, vary)
	if err != nil {
		return nil, err
	}
	return &path{m: m, l: l, k: newBand(m.n, width), r: make([]float64, m.n),
		full: math.Max(m.norm(l.base), m.norm(l.vary))}, nil
}

// factored fills r and leaves the factors of the held tangent in k; negative is
// the number of its negative eigenvalues.
func (p *path) factored(u []float64, λ float64) (negative int) {
	p.m.tangent(u, λ, &p.l, p.k, p.r)
	p.k.hold(p.m.scale)
	return p.k.ldl()
}

// back solves with the factors in place; x is a load before and a displacement
// after.
func (p *path) back(x []float64) {
	for i, s := range p.m.scale {
		x[i] *= s
	}
	p.k.solve(x)
	for i, s := range p.m.scale {
		x[i] *= s
	}
}

// settle brings u into equilibrium at λ by Newton's method and returns the
// number of negative eigenvalues of its tangent, or an error. On a very fine mesh
// rounding leaves a rest; there a last step of 1e-9 of the displacement will do.
func (p *path) settle(u []float64, λ float64) (negative int, err error) {
	d, moved := make([]float64, p.m.n), math.Inf(1)
	for range 12 {
		negative = p.factored(u, λ)
		rest := p.m.norm(p.r) / (p.full * math.Max(1, math.Abs(λ)))
		if p.full == 0 || rest < 1e-9 || rest < 1e-6 && moved < 1e-9*p.m.size(u) {
			return negative, nil
		}
		if math.IsNaN(rest) || rest > 1e6 {
			break
		}
		copy(d, p.r)
		p.back(d)
		for i := range u {
			u[i] += d[i]
		}
		moved = p.m.size(d)
	}
	return negative, ErrLimit
}

// advance goes from the state u at λ0 to λ1 in as many steps as it takes and
// fails where a step of 1e-8 of the way does: it does not leave the branch, for a
// step that moves the wall much farther than its tangent says is taken in halves.
func (p *path) advance(u []float64, λ0, λ1 float64) (negative int, err error) {
	λ, step := λ0, λ1-λ0
	least := math.Abs(step) * 1e-8
	q, try := make([]float64, p.m.n), make([]float64, p.m.n)
	for λ != λ1 {
		next := λ + step
		if (next-λ1)*(λ1-λ0) > 0 || math.Abs(next-λ1) < least/2 {
			next = λ1
		}
		p.factored(u, λ)
		p.pull(u, q)
		p.back(q)
		for i := range try {
			try[i] = u[i] + (next-λ)*q[i]
		}
		guess := math.Abs(next-λ) * p.m.size(q)
		negative, err = p.settle(try, next)
		for i := range q {
			q[i] = try[i] - u[i]
		}
		if err != nil || p.m.size(q) > 3*guess {
			if step /= 2; math.Abs(step) < least {
				return negative, ErrLimit
			}
			continue
		}
		copy(u, try)
		λ = next
		step *= 2
	}
	return negative, nil
}

// pull sets q to the load that one more of λ puts on the state u.
func (p *path) pull(u, q []float64) {
	copy(q, p.l.vary)
	m := p.m
	for end := range 2 {
		node, arm := m.rim(end)
		at, f := m.nodes[node], arm*p.l.pVary[len(m.points)+end]
		q[at] += f * u[at+1]
		q[at+1] += f * u[at]
	}
	for i := range m.elements {
		e := &m.elements[i]
		c := m.shapes[i].course(u[e.dof : e.dof+span])
		for g := range gauss {
			if p.l.pVary[i*gauss+g] == 0 {
				continue
			}
			at := &m.points[i*gauss+g]
			h := bases[g].along(at.j, at.dj)
			v := c.at(&h)
			ε := at.strains(v)
			w, t, f := at.tz*v.r-at.tr*v.z, at.tr*v.r+at.tz*v.z, p.l.pVary[i*gauss+g]*at.w/2
			for a := range span {
				x := m.shapes[i].unknown(a, &h)
				εa := at.strains(x)
				q[e.dof+a] += f * ((at.tz*x.r-at.tr*x.z)*(ε.s+ε.θ) + w*(εa.s+εa.θ) - (at.tr*x.r+at.tz*x.z)*ε.β - t*εa.β)
			}
		}
	}
}

// SolveModerate returns the state under the load with moderate rotations,
// beside the linear one of Solve: a knuckle under pressure stiffens, a dome
// under outside pressure softens. It fails with ErrLimit where the wall snaps
// through on the way. Residual is the unbalanced load left by Newton's method.
func (m *Model) SolveModerate(l Load) (*Solution, error) {
	p, err := m.path(Load{}, l)
	if err != nil {
		return nil, err
	}
	u := make([]float64, m.n)
	if _, err = p.advance(u, 0, 1); err != nil {
		return nil, fmt.Errorf("%s to %s: %w", m.s.Segments[0].Name, m.s.Segments[len(m.s.Segments)-1].Name, err)
	}
	m.tangent(u, 1, &p.l, p.k, p.r)
	s := &Solution{m: m, u: u}
	if p.full > 0 {
		s.Residual = m.norm(p.r) / p.full
	}
	f := make([]float64, m.n)
	copy(f, p.l.vary)
	p.pull(u, f)
	s.react(p.r, f)
	for i, v := range m.volume {
		s.VolumeGrowth += 2 * π * v * u[i]
	}
	s.Stations = m.stations(u, true)
	return s, nil
}
