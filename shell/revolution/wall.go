package revolution

// A stiff is the elastic stiffness of a wall, with E its modulus and ν its
// Poisson ratio: C = E t/(1 − ν²) [N/m], D = E t³/(12 (1 − ν²)) [N m].
type stiff struct{ t, c, d, ν float64 }

func (g Segment) stiff() stiff {
	c := g.Modulus * g.Thickness / (1 - g.Poisson*g.Poisson)
	return stiff{t: g.Thickness, c: c, d: c * g.Thickness * g.Thickness / 12, ν: g.Poisson}
}

// strain holds the four strains of a state with no waves around the axis.
type strain struct {
	s, θ   float64 // of the mid-surface, meridional and hoop [-]
	κs, κθ float64 // changes of curvature, positive where the outside stretches [1/m]
	β      float64 // rotation of the normal, n·u′ [rad]
}

// strains is linear in the displacement:
//
//	ε_φ = t·u′, ε_θ = u_r/r, κ_φ = −β′, κ_θ = −β r′/r
//	β = n·u′, β′ = k ε_φ + n·u″
//
// with the exact t, n, r and k of the place. On the axis, where a smooth or
// conical tip has u_r = β = 0, hoop and meridional strains are equal.
//
// Source: Sanders 1959, linear theory of thin shells (memory); rigid motions
// and the uniform growth of a sphere give exactly no bending.
func (f *frame) strains(u field) strain {
	ε := f.tr*u.r1 + f.tz*u.z1
	β := f.tz*u.r1 - f.tr*u.z1
	κ := -(f.k*ε + f.tz*u.r2 - f.tr*u.z2)
	if f.r == 0 {
		return strain{s: ε, θ: ε, κs: κ, κθ: κ, β: β}
	}
	return strain{s: ε, θ: u.r / f.r, κs: κ, κθ: -β * f.tr / f.r, β: β}
}

// stress resultants of a strain [N/m] and [N m/m].
func (w stiff) resultants(e strain) (ns, nθ, ms, mθ float64) {
	return w.c * (e.s + w.ν*e.θ), w.c * (e.θ + w.ν*e.s),
		w.d * (e.κs + w.ν*e.κθ), w.d * (e.κθ + w.ν*e.κs)
}
