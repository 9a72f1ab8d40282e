package revolution

import "math"

// A prestress is what an axisymmetric state does to waves at one point.
type prestress struct {
	ns, nθ   float64 // [N/m]
	β        float64 // rotation, 0 for a linear state [rad]
	pressure float64 // that follows the wall [Pa]
}

// prestress evaluates the state u, linear or with moderate rotations, at every
// point of integration, after them the force of every ring [N], and the
// pressure at both ends; p is the pressure that follows.
func (m *Model) prestress(u, p []float64, moderate bool) []prestress {
	out := make([]prestress, len(m.points)+len(m.s.Rings)+2)
	for end := range 2 {
		out[len(out)-2+end].pressure = p[len(m.points)+end]
	}
	for i, g := range m.s.Rings {
		at := m.nodes[g.Node]
		out[len(m.points)+i].nθ = g.Modulus * g.Area * (u[at] + g.Offset.Z*u[at+2]) / (m.s.node(g.Node).R + g.Offset.R)
	}
	for i := range m.elements {
		e := &m.elements[i]
		c := m.shapes[i].course(u[e.dof : e.dof+span])
		for g := range gauss {
			q := &m.points[i*gauss+g]
			h := bases[g].along(q.j, q.dj)
			ε := q.strains(c.at(&h))
			o := &out[i*gauss+g]
			if moderate {
				o.β = ε.β
				ε.s += ε.β * ε.β / 2
			}
			o.ns, o.nθ, _, _ = m.walls[e.segment].resultants(ε)
			o.pressure = p[i*gauss+g]
		}
	}
	return out
}

// waves is the model with waves around the axis.
type waves struct {
	m     *Model
	n     int   // unknowns
	dofs  []int // first unknown of each element
	nodes []int // of each node's displacements
}

func (m *Model) waves() *waves {
	w := &waves{m: m, dofs: make([]int, len(m.elements)), nodes: make([]int, len(m.nodes))}
	dof, node := 0, 1
	for i := range m.elements {
		w.dofs[i] = dof
		dof += waveHalf
		if m.elements[i].joint {
			dof += waveHalf - waveShared
			w.nodes[node] = dof
			node++
		}
	}
	w.nodes[len(w.nodes)-1] = dof
	w.n = dof + waveHalf
	return w
}

// held marks the unknowns that do not move with n waves: those of the supports
// that hold waves, v of a state without waves, and on the axis all but a whole
// motion of one wave and the slope it needs.
func (w *waves) held(n int) []bool {
	h := make([]bool, w.n)
	hold := func(at int, which ...bool) {
		for i, x := range which {
			h[at+i] = h[at+i] || x
		}
	}
	for _, p := range w.m.s.Supports {
		if p.Waves || n == 0 {
			hold(w.nodes[p.Node], p.Radial, p.Axial, p.Rotation, true)
		}
	}
	for _, node := range [2]int{0, len(w.nodes) - 1} {
		if w.m.s.node(node).R == 0 {
			hold(w.nodes[node], n != 1, n != 0, n != 1, true)
		}
	}
	if n == 0 {
		for i := range w.m.elements {
			for p := range waveSpan {
				local := p % waveHalf
				if p >= waveHalf && w.m.elements[i].joint {
					local = waveAtJoint[local]
				}
				if local == 3 || local >= 7 {
					h[w.dofs[i]+p] = true
				}
			}
		}
	}
	return h
}

// steady reports whether the supports leave the wall no motion as a whole across
// the axis: waves are held at two places along it, or at one that holds the
// tilt as well.
func (m *Model) steady() bool {
	first := math.NaN()
	for _, p := range m.s.Supports {
		if !p.Waves {
			continue
		}
		at := m.s.node(p.Node)
		if p.Rotation || p.Axial && at.R > 0 || math.Abs(at.Z-first) > 0 {
			return true
		}
		first = at.Z
	}
	return false
}

// fill sets k to the second variation with n waves, per radian over what cos²
// gives: of the elastic energy, with the rotation of the prestress pre in the
// strains, plus that of the prestress,
//
//	N_φ (β_φ² + ψ²) + N_θ (β_θ² + ψ²) − p [w (ε_φ + ε_θ) − u_t β_φ − v β_θ]
//	∓ p r u_z (u_r + n v) at open ends
//
// and g, unless nil, to the same of the prestress vary without the elastic energy.
//
// Source: Sanders 1963, nonlinear theory of thin shells (memory); the terms in p
// are the second variation of the volume.
func (w *waves) fill(k, g *band, n int, pre, vary []prestress) {
	k.clear()
	if g != nil {
		g.clear()
	}
	for i := range w.m.elements {
		w.element(i, float64(n), w.m.waveShapeOf(i, n), k, g, pre, vary)
	}
	w.edges(k, float64(n), pre, true)
	if g != nil {
		w.edges(g, float64(n), vary, false)
	}
}

// element adds element i.
func (w *waves) element(i int, n float64, s waveShape, k, g *band, pre, vary []prestress) {
	from, to := w.dofs[i]*waveStride, (w.dofs[i]+waveSpan)*waveStride
	for p := range gauss {
		at := &w.m.points[i*gauss+p]
		h := bases[p].along(at.j, at.dj)
		var x [waveSpan]waveStrain
		for a := range x {
			x[a] = at.ripples(s.unknown(a, &h), n)
		}
		var q prestress
		if pre != nil {
			q = pre[i*gauss+p]
			q.work(&x, at.w, k.a[from:to])
		}
		w.m.walls[w.m.elements[i].segment].elastic(&x, q.β, at.w, k.a[from:to])
		if g != nil {
			vary[i*gauss+p].work(&x, at.w, g.a[from:to])
		}
	}
}

// edges adds rings and open ends.
func (w *waves) edges(b *band, n float64, pre []prestress, elastic bool) {
	for i, g := range w.m.s.Rings {
		force := 0.0
		if pre != nil {
			force = pre[len(w.m.points)+i].nθ
		}
		w.ring(g, n, force, elastic, b)
	}
	for end := 0; end < 2 && pre != nil; end++ {
		node, arm := w.m.rim(end)
		row, p := b.a[w.nodes[node]*waveStride:], arm*pre[len(pre)-2+end].pressure
		row[1] -= p
		row[waveStride+2] -= p * n
	}
}

// elastic adds the elastic energy of strains at a point of the weight w, turned
// by β before.
func (s stiff) elastic(xs *[waveSpan]waveStrain, β, w float64, rows []float64) {
	var b, d [waveSpan][6]float64
	shear, c, e := (1-s.ν)/2, s.c*w, s.d*w
	for a := range xs {
		x := &xs[a]
		es, γ := x.s+β*x.βs, x.γ+β*x.βθ
		b[a] = [6]float64{es, x.θ, γ, x.κs, x.κθ, x.τ}
		d[a] = [6]float64{
			c * (es + s.ν*x.θ), c * (x.θ + s.ν*es), c * shear * γ,
			e * (x.κs + s.ν*x.κθ), e * (x.κθ + s.ν*x.κs), e * shear * x.τ,
		}
	}
	for a := range xs {
		row, x := rows[a*waveStride:a*waveStride+waveSpan-a], &d[a]
		for j := range row {
			y := &b[a+j]
			row[j] += x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3] + x[4]*y[4] + x[5]*y[5]
		}
	}
}

// work adds what the prestress does at a point of the weight w.
func (q prestress) work(xs *[waveSpan]waveStrain, w float64, rows []float64) {
	if q.ns == 0 && q.nθ == 0 && q.pressure == 0 {
		return
	}
	var b, d [waveSpan][7]float64
	half := q.pressure / 2 * w
	for a := range xs {
		x := &xs[a]
		b[a] = [7]float64{x.βs, x.βθ, x.ψ, x.w, x.t, x.v, x.e}
		d[a] = [7]float64{
			w*q.ns*x.βs + half*x.t, w*q.nθ*x.βθ + half*x.v, w * (q.ns + q.nθ) * x.ψ,
			-half * x.e, half * x.βs, half * x.βθ, -half * x.w,
		}
	}
	for a := range xs {
		row, x := rows[a*waveStride:a*waveStride+waveSpan-a], &d[a]
		for j := range row {
			y := &b[a+j]
			row[j] += x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3] + x[4]*y[4] + x[5]*y[5] + x[6]*y[6]
		}
	}
}

// ripples evaluates the unknowns x of n waves at the stations of every element,
// the greatest normal displacement made 1.
func (w *waves) ripples(x []float64, n int) []Ripple {
	var out []Ripple
	most := 0.0
	for i := range w.m.elements {
		e, s := &w.m.elements[i], w.m.waveShapeOf(i, n)
		c := w.m.s.Segments[e.segment].Curve
		for k := range perElement {
			f := c.at(e.τ0 + (e.τ1-e.τ0)*float64(k)/perElement)
			r := Ripple{Segment: e.segment, R: f.r, Z: f.z}
			for a := range waveSpan {
				u := s.unknown(a, &stationBases[k])
				r.Normal += x[w.dofs[i]+a] * (f.tz*u.r - f.tr*u.z)
			}
			if math.Abs(r.Normal) > math.Abs(most) {
				most = r.Normal
			}
			out = append(out, r)
		}
	}
	for i := range out {
		out[i].Normal /= most
	}
	return out
}
