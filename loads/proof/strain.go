package proof

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// Strains are what gauges and a tape show on a plain part of the wall.
type Strains struct {
	Hoop           float64 // around [-]
	Axial          float64 // along [-]
	DiameterGrowth float64 // ΔD [m]
}

// CylinderStrains returns the strains of a closed cylinder of mid-surface
// radius r [m] under the pressure p [Pa], at least 2.5 √(R t) from a junction:
//
//	ε_h = (p R/E t)(1 − ν/2),  ε_a = (p R/E t)(1/2 − ν),  ΔD = 2 R ε_h
//
// R/t from 10 up. The axial strain is small and hangs on ν: no check by itself.
// One kelvin that the gauge does not compensate shows as 12 to 24 microstrain.
// Source: membrane stresses and Hooke, computed.
func (w Wall) CylinderStrains(p, r float64) (Strains, error) {
	const fn = "proof.Wall.CylinderStrains"
	if err := errors.Join(w.valid(fn, r), check.Within(fn, "pressure [Pa]", p, 0, 1e9, "a pressure across the wall")); err != nil {
		return noStrains(), err
	}
	f := p * w.flexibility(r)
	hoop := f * (1 - w.Poisson/2)
	return Strains{hoop, f * (0.5 - w.Poisson), 2 * r * hoop}, nil
}

// ThickCylinderStrains returns the strains on the outside of a closed cylinder
// of inside radius r [m], at any wall, under the pressure p [Pa]:
//
//	ε_h = p r_i² (2 − ν) / [E (r_o² − r_i²)],  ε_a with (1 − 2ν)
//
// ΔD is that of the outside. r_o/r_i from 1.0001 to 10. Source: Lamé, exact;
// computed.
func (w Wall) ThickCylinderStrains(p, r float64) (Strains, error) {
	const fn = "proof.Wall.ThickCylinderStrains"
	ro := r + w.Thickness
	err := errors.Join(
		check.Within(fn, "modulus of elasticity [Pa]", w.ElasticModulus, 1e6, 1e13, "a metal"),
		check.Within(fn, "Poisson's ratio", w.Poisson, 0, 0.5, "an isotropic metal"),
		check.Within(fn, "inside radius [m]", r, 1e-6, 1e3, "a radius"),
		check.Within(fn, "outside over inside radius", ro/r, 1.0001, 10, "a wall"),
		check.Within(fn, "pressure [Pa]", p, 0, 1e9, "a pressure across the wall"))
	if err != nil {
		return noStrains(), err
	}
	f := p * r * r / (w.ElasticModulus * (ro*ro - r*r))
	hoop := f * (2 - w.Poisson)
	return Strains{hoop, f * (1 - 2*w.Poisson), 2 * ro * hoop}, nil
}

// SphereStrains returns the strain of a sphere of mid-surface radius r [m]
// under the pressure p [Pa], the same in every direction:
//
//	ε = p R (1 − ν) / (2 E t)
//
// R/t from 10 up. Source: membrane stress and Hooke, computed.
func (w Wall) SphereStrains(p, r float64) (Strains, error) {
	const fn = "proof.Wall.SphereStrains"
	if err := errors.Join(w.valid(fn, r), check.Within(fn, "pressure [Pa]", p, 0, 1e9, "a pressure across the wall")); err != nil {
		return noStrains(), err
	}
	ε := p * w.flexibility(r) * (1 - w.Poisson) / 2
	return Strains{ε, ε, 2 * r * ε}, nil
}

func noStrains() Strains { return Strains{math.NaN(), math.NaN(), math.NaN()} }
