package revolution

const (
	waveHalf   = 9 // unknowns of one end with waves: u_r, u_z, β, v, ε, β′, ε′, v′, v″
	waveShared = 4
	waveSpan   = 2 * waveHalf
	waveWidth  = waveSpan - 1
	waveStride = waveSpan
)

// A ripple is the amplitude of a displacement with n waves around the axis and
// its derivatives along the arc: u_r, u_z and what comes from them go with
// cos nθ, v around the axis with sin nθ.
type ripple struct {
	field
	v, v1 float64
}

// A waveStrain holds the strains of a ripple, its rotations, and the parts of
// its displacement along normal and tangent.
type waveStrain struct {
	s, θ, γ    float64 // mid-surface [-]
	κs, κθ, τ  float64 // changes of curvature; τ is twice the twist [1/m]
	βs, βθ, ψ  float64 // rotations about the hoop, the meridian and the normal [rad]
	w, t, v, e float64 // n·u, t·u, v [m]; ε_φ + ε_θ before rotations are added [-]
}

// ripples gives the linear strains of a ripple with n waves:
//
//	ε_φ = t·u′, ε_θ = (u_r + n v)/r, γ = v′ − v r′/r − n u_t/r
//	β_φ = n·u′, β_θ = (−n w − v z′)/r, ψ = (v′ + v r′/r + n u_t/r)/2
//	κ_φ = −β_φ′, κ_θ = −(n β_θ + β_φ r′)/r
//	2κ_φθ = −(β_θ′ − β_θ r′/r − n β_φ/r) − (k − z′/r) ψ
//
// with w = z′u_r − r′u_z, u_t = r′u_r + z′u_z. Rigid motions give nothing.
//
// Source: Sanders 1959; Koiter 1960 (memory).
func (f *frame) ripples(u ripple, n float64) (x waveStrain) {
	i := 1 / f.r
	x.s = f.tr*u.r1 + f.tz*u.z1
	x.θ = (u.r + n*u.v) * i
	x.e = x.s + x.θ
	x.w, x.t, x.v = f.tz*u.r-f.tr*u.z, f.tr*u.r+f.tz*u.z, u.v
	x.γ = u.v1 - (u.v*f.tr+n*x.t)*i
	x.βs = f.tz*u.r1 - f.tr*u.z1
	x.βθ = -(n*x.w + u.v*f.tz) * i
	x.ψ = (u.v1 + (u.v*f.tr+n*x.t)*i) / 2
	w1 := x.βs + f.k*x.t // w′ = n·u′ + n′·u
	slope := -(n*w1+u.v1*f.tz+u.v*f.k*f.tr)*i - x.βθ*f.tr*i
	x.κs = -(f.k*x.s + f.tz*u.r2 - f.tr*u.z2)
	x.κθ = -(n*x.βθ + x.βs*f.tr) * i
	x.τ = -(slope - (x.βθ*f.tr+n*x.βs)*i) - (f.k-f.tz*i)*x.ψ
	return x
}

// A waveShape is a shape with waves.
type waveShape struct {
	r, z, v [waveSpan][3]float64
}

// local unknowns of one end that are those of a shape, in the order of unit.
var (
	waveLocal   = [waveHalf]int{0, 1, 2, -1, 3, 4, 5, -1, -1}
	waveAtJoint = [waveHalf]int{4, 5, 6, 7, 8, 0, 1, 2, 3}
)

// waveShapeOf prepares element i for n waves. On the axis one wave moves as a
// whole, v = −u_r.
func (m *Model) waveShapeOf(i, n int) (s waveShape) {
	e := &m.elements[i]
	c := m.s.Segments[e.segment].Curve
	Δ := e.τ1 - e.τ0
	for end, f := range [2]frame{c.at(e.τ0), c.at(e.τ1)} {
		link := arm{}
		if end == 0 {
			link = e.arm
		}
		j, dj := f.j*Δ, f.dj*Δ*Δ
		for p := range waveHalf {
			local, at := p, end*waveHalf+p
			if end == 1 && e.joint {
				local = waveAtJoint[p]
			}
			if l := waveLocal[local]; l >= 0 {
				s.r[at], s.z[at] = unit(l, f, link, j, dj)
			}
			s.v[at] = around(local, n, f, link, j, dj)
		}
	}
	return s
}

// around returns what one unit of a local unknown makes of v and its first two
// derivatives along the element; a rigid arm keeps normal to the ring it stands
// on: v + (d_r v + n (d_r u_r + d_z u_z))/r at the node's r.
func around(local, n int, f frame, link arm, j, dj float64) (v [3]float64) {
	r := f.r - link.r
	switch {
	case r == 0 && n == 1 && local == 0:
		v[0] = -1
	case r == 0:
	case local == 0:
		v[0] = float64(n) * link.r / r
	case local == 1:
		v[0] = float64(n) * link.z / r
	case local == 3:
		v[0] = 1 + link.r/r
	}
	switch local {
	case 7:
		v[1], v[2] = j, dj
	case 8:
		v[2] = j * j
	}
	return v
}

// unknown returns what one unit of unknown i makes at a place.
func (s *waveShape) unknown(i int, b *basis) (u ripple) {
	o := 0
	if i >= waveHalf {
		o = 3
	}
	for k := range 3 {
		h, d, dd := b.h[o+k], b.d[o+k], b.dd[o+k]
		cr, cz, cv := s.r[i][k], s.z[i][k], s.v[i][k]
		u.r += cr * h
		u.r1 += cr * d
		u.r2 += cr * dd
		u.z += cz * h
		u.z1 += cz * d
		u.z2 += cz * dd
		u.v += cv * h
		u.v1 += cv * d
	}
	return u
}
