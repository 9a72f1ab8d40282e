package revolution

import "math"

// A loading is base + λ vary, prepared: the work on each unknown, per radian,
// and the pressure at each point of integration where it follows the wall.
type loading struct {
	base, vary   []float64
	pBase, pVary []float64 // [Pa]; 0 where the pressure keeps its direction
}

func (m *Model) loading(base, vary Load) (l loading, err error) {
	if l.base, err = m.vector(base); err != nil { // not reached: start has followed the base load by itself
		return l, err
	}
	if l.vary, err = m.vector(vary); err != nil {
		return l, err
	}
	l.pBase, l.pVary = m.following(base), m.following(vary)
	return l, nil
}

// following returns the pressure at every point of integration and then at both
// ends, vector having seen that it is finite.
func (m *Model) following(l Load) []float64 {
	p := make([]float64, len(m.points)+2)
	if l.Pressure == nil || l.Dead {
		return p
	}
	for i := range m.points {
		q := &m.points[i]
		p[i] = l.Pressure(Place{Segment: m.elements[i/gauss].segment, R: q.r, Z: q.z})
	}
	last := len(m.s.Segments)
	for i, node := range [2]int{0, last} {
		at := m.s.node(node)
		p[len(m.points)+i] = l.Pressure(Place{Segment: max(0, node-1), R: at.R, Z: at.Z})
	}
	return p
}

// rim returns the node of an end and half its radius, positive at the last: what
// a pressure there does to u_z (u_r + n v), the second order of the volume under
// a lid that moves with the rim.
func (m *Model) rim(end int) (node int, arm float64) {
	if end == 0 {
		return 0, -m.s.node(0).R / 2
	}
	return len(m.s.Segments), m.s.node(len(m.s.Segments)).R / 2
}

// tangent fills k with the tangent stiffness and r with the unbalanced load of
// the state u under base + λ vary, the free structure's, per radian. The strains
// are those of strains with
//
//	ε_φ = t·u′ + β²/2
//
// the rotation small beside one, its square not beside the strain. A pressure
// that follows the wall works on the volume swept, to the second order
//
//	∫ p [w + (w (ε_φ + ε_θ) − u_t β)/2] r ds ± p r u_r u_z/2 at open ends
//
// with w = n·u, u_t = t·u: exact where it is uniform, the lids of open ends
// moving with their rims.
//
// Source: Reissner 1950; Sanders 1963, moderate rotations (memory).
func (m *Model) tangent(u []float64, λ float64, l *loading, k *band, r []float64) {
	k.clear()
	for i := range r {
		r[i] = l.base[i] + λ*l.vary[i]
	}
	for i := range m.elements {
		e := &m.elements[i]
		c := m.shapes[i].course(u[e.dof : e.dof+span])
		for g := range gauss {
			at := i*gauss + g
			m.pointTangent(i, g, l.pBase[at]+λ*l.pVary[at], &c, k.a[e.dof*stride:(e.dof+span)*stride], r[e.dof:e.dof+span])
		}
	}
	for end := range 2 {
		node, arm := m.rim(end)
		at := m.nodes[node]
		p := arm * (l.pBase[len(m.points)+end] + λ*l.pVary[len(m.points)+end])
		k.a[at*stride+1] -= p
		r[at] += p * u[at+1]
		r[at+1] += p * u[at]
	}
	for _, g := range m.s.Rings {
		m.ring(g, k.a)
		m.ringForce(g, u, r)
	}
}

// pointTangent adds one point of integration.
func (m *Model) pointTangent(i, g int, pressure float64, c *course, rows, r []float64) {
	p, wall := &m.points[i*gauss+g], m.walls[m.elements[i].segment]
	h := bases[g].along(p.j, p.dj)
	u := c.at(&h)
	ε := p.strains(u)
	w, t, e, β := p.tz*u.r-p.tr*u.z, p.tr*u.r+p.tz*u.z, ε.s+ε.θ, ε.β
	ε.s += β * β / 2
	ns, nθ, ms, mθ := wall.resultants(ε)
	q := pressure * p.w / 2
	var b, d [span][8]float64 // strains, rotation, w, u_t, ε_φ + ε_θ and what they meet
	for a := range span {
		v := m.shapes[i].unknown(a, &h)
		x := p.strains(v)
		wa, ta, ea := p.tz*v.r-p.tr*v.z, p.tr*v.r+p.tz*v.z, x.s+x.θ
		x.s += β * x.β
		na, nb, ma, mb := wall.resultants(x)
		b[a] = [8]float64{x.s, x.θ, x.κs, x.κθ, x.β, wa, ta, ea}
		d[a] = [8]float64{p.w * na, p.w * nb, p.w * ma, p.w * mb, p.w*ns*x.β + q*ta, -q * ea, q * x.β, -q * wa}
		r[a] += q*(wa*e+w*ea-ta*β-t*x.β) - p.w*(ns*x.s+nθ*x.θ+ms*x.κs+mθ*x.κθ)
	}
	for a := range span {
		row, x := rows[a*stride:a*stride+span-a], &d[a]
		for j := range row {
			y := &b[a+j]
			row[j] += x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3] + x[4]*y[4] + x[5]*y[5] + x[6]*y[6] + x[7]*y[7]
		}
	}
}

// ringForce takes the force of a ring from r.
func (m *Model) ringForce(g Ring, u, r []float64) {
	rc := m.s.node(g.Node).R + g.Offset.R
	ea, ei, z, at := g.Modulus*g.Area/rc, g.Modulus*g.Axial/rc, g.Offset.Z, m.nodes[g.Node]
	n := ea * (u[at] + z*u[at+2])
	r[at] -= n
	r[at+2] -= n*z + ei*u[at+2]
}

// norm is the greatest component in the scaled unknowns, held ones left out.
func (m *Model) norm(r []float64) (most float64) {
	for i, s := range m.scale {
		if x := math.Abs(r[i] * s); !(x <= most) {
			most = x // NaN too
		}
	}
	return most
}

// size is the greatest displacement of a state [m].
func (m *Model) size(u []float64) (most float64) {
	for i := range m.elements {
		at := m.elements[i].dof
		most = math.Max(most, math.Max(math.Abs(u[at]), math.Abs(u[at+1])))
	}
	return most
}
