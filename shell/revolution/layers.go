package revolution

import (
	"fmt"
	"math"
)

// layers is how many the wall is cut into. The stress is even over each: forces
// and moments are those of a stress within yield everywhere, and ten carry all of
// the full plastic moment and 99 per cent of the elastic stiffness in bending.
const layers = 10

// A plasticity is the model with yielding walls and its state.
type plasticity struct {
	m       *Model
	walls   []yielding
	flowed  []plane   // plastic strain of each layer of each point, in equilibrium
	next    []plane   // the same of the state last evaluated
	rings   []float64 // plastic strain of each ring
	nextR   []float64
	k       *band
	r       []float64
	bent    []strain // of every point, of the state last evaluated
	base    []float64
	vary    []float64
	bentOld []strain
}

func (m *Model) plasticity(base, vary Load) (*plasticity, error) {
	p := &plasticity{m: m, k: newBand(m.n, width), r: make([]float64, m.n)}
	for _, g := range m.s.Segments {
		if !(g.Yield > 0) || math.IsInf(g.Yield, 0) {
			return nil, fmt.Errorf("%s: its yield stress is %.4g Pa, must be above 0", g.Name, g.Yield)
		}
		p.walls = append(p.walls, yielding{e: g.Modulus, ν: g.Poisson, σy: g.Yield})
	}
	for _, g := range m.s.Rings {
		if !(g.Yield > 0) || math.IsInf(g.Yield, 0) {
			return nil, fmt.Errorf("a ring's yield stress is %.4g Pa, must be above 0", g.Yield)
		}
	}
	var err error
	if p.base, err = m.vector(base); err != nil {
		return nil, err
	}
	if p.vary, err = m.vector(vary); err != nil {
		return nil, err
	}
	n := len(m.points)
	p.flowed, p.next = make([]plane, n*layers), make([]plane, n*layers)
	p.rings, p.nextR = make([]float64, len(m.s.Rings)), make([]float64, len(m.s.Rings))
	p.bent, p.bentOld = make([]strain, n), make([]strain, n)
	return p, nil
}

// height is where layer i stands in a wall of t, outward from its middle.
func height(i int, t float64) float64 { return t * ((float64(i)+0.5)/layers - 0.5) }

// evaluate fills the tangent k and the unbalanced load r of the state u under
// base + λ vary, displacements small.
func (p *plasticity) evaluate(u []float64, λ float64) {
	m := p.m
	p.k.clear()
	for i := range p.r {
		p.r[i] = p.base[i] + λ*p.vary[i]
	}
	for i := range m.elements {
		e := &m.elements[i]
		c := m.shapes[i].course(u[e.dof : e.dof+span])
		for g := range gauss {
			p.point(i, g, &c)
		}
	}
	for i, g := range m.s.Rings {
		p.ring(i, g, u)
	}
}

// point adds one point of integration.
func (p *plasticity) point(i, g int, c *course) {
	m, e := p.m, &p.m.elements[i]
	at := &m.points[i*gauss+g]
	h := bases[g].along(at.j, at.dj)
	ε := at.strains(c.at(&h))
	p.bent[i*gauss+g] = ε
	f, d := p.section(i*gauss+g, e.segment, ε)
	var b, db [span][4]float64
	r := p.r[e.dof : e.dof+span]
	for a := range span {
		x := at.strains(m.shapes[i].unknown(a, &h))
		b[a] = [4]float64{x.s, x.θ, x.κs, x.κθ}
		for k := range 4 {
			db[a][k] = at.w * (d[k][0]*x.s + d[k][1]*x.θ + d[k][2]*x.κs + d[k][3]*x.κθ)
			r[a] -= at.w * f[k] * b[a][k]
		}
	}
	for a := range span {
		row, x := p.k.a[(e.dof+a)*stride:(e.dof+a)*stride+span-a], &db[a]
		for j := range row {
			y := &b[a+j]
			row[j] += x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3]
		}
	}
}

// section sums the layers at a point: forces and moments, and their tangent to
// the strains ε_φ, ε_θ, κ_φ, κ_θ.
func (p *plasticity) section(at, segment int, ε strain) (f [4]float64, d [4][4]float64) {
	t, y := p.m.walls[segment].t, p.walls[segment]
	thick := t / layers
	for i := range layers {
		ζ, was := height(i, t), p.flowed[at*layers+i]
		σ, flow, ss, sθ, θθ := y.stress(plane{ε.s + ζ*ε.κs - was[0], ε.θ + ζ*ε.κθ - was[1]})
		p.next[at*layers+i] = plane{was[0] + flow[0], was[1] + flow[1]}
		f[0] += thick * σ[0]
		f[1] += thick * σ[1]
		f[2] += thick * ζ * σ[0]
		f[3] += thick * ζ * σ[1]
		for k, arm := range [3]float64{thick, thick * ζ, thick * ζ * ζ} {
			// force to strain, force to curvature, moment to curvature
			row, col := [3]int{0, 0, 2}[k], [3]int{0, 2, 2}[k]
			d[row][col] += arm * ss
			d[row][col+1] += arm * sθ
			d[row+1][col] += arm * sθ
			d[row+1][col+1] += arm * θθ
		}
	}
	for k := range 2 {
		for l := range 2 {
			d[2+k][l] = d[l][2+k]
		}
	}
	return f, d
}

// ring adds a ring that yields in hoop over its whole section and has no
// stiffness against twist, which is on the safe side.
func (p *plasticity) ring(i int, g Ring, u []float64) {
	rc := p.m.s.node(g.Node).R + g.Offset.R
	at, z := p.m.nodes[g.Node], g.Offset.Z
	σ := g.Modulus * ((u[at]+z*u[at+2])/rc - p.rings[i])
	p.nextR[i] = p.rings[i]
	if math.Abs(σ) > g.Yield {
		over := σ - math.Copysign(g.Yield, σ)
		p.nextR[i] += over / g.Modulus
		σ -= over
	} else {
		stiff := g.Modulus * g.Area / rc
		p.k.a[at*stride] += stiff
		p.k.a[at*stride+2] += stiff * z
		p.k.a[(at+2)*stride] += stiff * z * z
	}
	p.r[at] -= σ * g.Area
	p.r[at+2] -= σ * g.Area * z
}

// settle takes the state last evaluated as in equilibrium.
func (p *plasticity) settle() {
	copy(p.flowed, p.next)
	copy(p.rings, p.nextR)
	copy(p.bentOld, p.bent)
}

// power returns what the step from the state u to v costs in yielding and what
// base and vary do on it, per radian: the kinematic bound of its mechanism is
// (cost − base)/vary.
func (p *plasticity) power(u, v []float64) (cost, base, vary float64) {
	for i := range p.bent {
		a, b := &p.bentOld[i], &p.bent[i]
		segment := p.m.elements[i/gauss].segment
		t := p.m.walls[segment].t
		for l := range layers {
			ζ := height(l, t)
			cost += p.m.points[i].w * t / layers * p.walls[segment].dissipation(
				plane{b.s - a.s + ζ*(b.κs-a.κs), b.θ - a.θ + ζ*(b.κθ-a.κθ)})
		}
	}
	for _, g := range p.m.s.Rings {
		at := p.m.nodes[g.Node]
		cost += g.Area * g.Yield * math.Abs(v[at]-u[at]+g.Offset.Z*(v[at+2]-u[at+2]))
	}
	for i := range u {
		base += p.base[i] * (v[i] - u[i])
		vary += p.vary[i] * (v[i] - u[i])
	}
	return cost, base, vary
}
