package buckling

import (
	"math"

	"proofsheet/report/check"
)

// A Dome is a dished head loaded on its convex side: a head under vacuum, or an
// inward head under the tank's pressure. Its radii come from [NewHemisphere],
// [NewCap], [NewEllipsoid] or [NewTorisphere].
type Dome struct {
	CrownRadius    float64 // R_c, mid-wall [m]
	VesselRadius   float64 // R_o of UG-33, outside [m]
	EuropeanRadius float64 // R of EN 13445-3 [m]
	Thickness      float64 // t, wall for strength [m]
	HalfOpening    float64 // φ of a spherical cap, crown to edge; 0: not a sphere [rad]
	Deviation      float64 // measured deviation of the shape, share of the crown radius; 0: not measured [-]
	err            error
}

// NewHemisphere returns the hemisphere of inside radius R [m] and wall t [m].
func NewHemisphere(insideRadius, t float64) Dome { return NewCap(insideRadius, t, math.Pi/2) }

// NewCap returns the spherical cap of inside sphere radius [m], wall t [m] and
// half opening [rad], clamped at its edge.
func NewCap(insideRadius, t, halfOpening float64) Dome {
	return Dome{
		CrownRadius: insideRadius + t/2, VesselRadius: insideRadius + t, EuropeanRadius: insideRadius + t/2,
		Thickness: t, HalfOpening: halfOpening,
		err: check.Within("buckling.NewCap", "half opening [rad]", halfOpening, math.SmallestNonzeroFloat64, math.Pi/2*(1+1e-12), "a spherical cap"),
	}
}

// NewTorisphere returns the torisphere of inside crown radius [m] and wall t [m].
func NewTorisphere(crownRadius, t float64) Dome {
	return Dome{CrownRadius: crownRadius + t/2, VesselRadius: crownRadius + t, EuropeanRadius: crownRadius + t/2, Thickness: t}
}

// ellipsoidFactors is K_1 of UG-33, R_o = K_1 D_o, over D/2h (memory); the
// inside ratio is the larger one, the safe side.
var ellipsoidFactors = []curvePoint{
	{1, 0.50}, {1.2, 0.57}, {1.4, 0.65}, {1.6, 0.73}, {1.8, 0.81}, {2, 0.90}, {2.2, 0.99}, {2.4, 1.08}, {2.6, 1.18}, {2.8, 1.27}, {3, 1.36},
}

// NewEllipsoid returns the oblate ellipsoid of inside radius [m], inside depth
// without flange [m] and wall t [m]:
//
//	R_c = R²/h at mid-wall; UG-33 R_o = K_1 D_o (2:1: 0.9 D_o); EN R = D_e²/(4 h), outside
//
// It holds for D/2h from 1 to 3.
func NewEllipsoid(insideRadius, depth, t float64) Dome {
	r, h := insideRadius+t/2, depth+t/2
	ro, ho := insideRadius+t, depth+t
	return Dome{
		CrownRadius: r * r / h, VesselRadius: 2 * ro * collapse(ellipsoidFactors, insideRadius/depth), EuropeanRadius: ro * ro / ho, Thickness: t,
		err: check.Within("buckling.NewEllipsoid", "D/2h", insideRadius/depth, 1-1e-9, 3*(1+1e-9), "the table of the equivalent radius"),
	}
}

func (d Dome) valid(m Metal) error {
	const fn = "buckling.Dome"
	if d.err != nil {
		return d.err
	}
	if err := positive(fn, "wall [m]", d.Thickness); err != nil {
		return err
	}
	if err := check.Within(fn, "R_c/t", d.CrownRadius/d.Thickness, 10, math.MaxFloat64, "a thin shell"); err != nil {
		return err
	}
	if err := check.Within(fn, "deviation of the shape, share of the radius", d.Deviation, 0, 0.01, "the shape that the methods assume"); err != nil {
		return err
	}
	return m.valid()
}

// ClassicalPressure returns the pressure [Pa] at which the perfect sphere of
// mid-wall radius R [m] and wall t [m] buckles:
//
//	p_cl = 2 E (t/R)²/√(3(1−ν²))
//
// Source: Zoelly, as given by Hutchinson 2016 (read).
func ClassicalPressure(m Metal, radius, t float64) float64 {
	return 2 * m.Modulus * math.Pow(t/radius, 2) / math.Sqrt(3*(1-m.Poisson*m.Poisson))
}

// CapParameter returns λ = [12(1−ν²)]^¼ √(R/t) 2 sin(φ/2) [-] of a spherical
// cap, and +Inf for a dome that is no cap.
func (d Dome) CapParameter(m Metal) float64 {
	if d.HalfOpening == 0 {
		return math.Inf(1)
	}
	return math.Pow(12*(1-m.Poisson*m.Poisson), 0.25) * math.Sqrt(d.CrownRadius/d.Thickness) * 2 * math.Sin(d.HalfOpening/2)
}

// PressureSP8032 returns the critical pressure on the convex side [Pa] before
// any factor:
//
//	p_cr = p_cl (0.14 + 3.2/λ²), ellipsoid and torisphere p_cl 0.14
//
// not above σ_y t/R, where the wall stress is half the yield strength. A cap
// must have λ above 2.
//
// Source: NASA SP-8032 (memory).
func (d Dome) PressureSP8032(m Metal) (float64, error) {
	if err := d.valid(m); err != nil {
		return math.NaN(), err
	}
	λ := d.CapParameter(m)
	if err := check.Within("buckling.Dome.PressureSP8032", "λ", λ, math.Nextafter(2, 3), math.Inf(1), "a cap of SP-8032"); err != nil {
		return math.NaN(), err
	}
	p := ClassicalPressure(m, d.CrownRadius, d.Thickness) * math.Min(1, 0.14+3.2/(λ*λ))
	return math.Min(p, m.Yield*d.Thickness/d.CrownRadius), nil
}

// PressureUG33 returns the allowable pressure on the convex side [Pa], the
// factor inside:
//
//	p = min(0.125 E t/R_o, 0.55 S_y)/(2 R_o/t)
//
// that is 0.0625 E/(R_o/t)² to the knee of the material chart. Beyond it the stress of
// the knee is kept: the chart is not at hand and rises there, and a form that ended at its
// knee would let a weaker or thicker wall bear by the other methods what the stronger or
// thinner one may not.
//
// Source: ASME VIII-1 UG-33 (memory); the stress kept beyond the knee practice.
func (d Dome) PressureUG33(m Metal) (float64, error) {
	if err := d.valid(m); err != nil {
		return math.NaN(), err
	}
	thin := d.Thickness / d.VesselRadius
	return math.Min(0.125*m.Modulus*thin, 0.55*m.Yield) * thin / 2, nil
}

// PressureEN13445 returns the pressure on the convex side by EN 13445-3, its
// factor 1.5 inside, for a shape within 1 % of R:
//
//	P_y = 2 σ_e t/R, P_m = 1.21 E (t/R)², P ≤ P_r/1.5, P_r/P_y from the curve
//
// Source: EN 13445-3 8.8 (P_y, P_m and shape read in a published calculation,
// the curve recalled).
func (d Dome) PressureEN13445(m Metal) (Collapse, error) {
	if err := d.valid(m); err != nil {
		return Collapse{Allowable: math.NaN()}, err
	}
	thin := d.Thickness / d.EuropeanRadius
	r := Collapse{Yield: 2 * m.europeanYield() * thin, Elastic: 1.21 * m.Modulus * thin * thin}
	r.Lower = r.Yield * collapse(sphereCurve, r.Elastic/r.Yield)
	r.Allowable = r.Lower / 1.5
	return r, nil
}

// External returns every method for the dome under pressure on its convex
// side, factor the buckling factor [-].
func (d Dome) External(m Metal, factor float64) []Method {
	none := math.NaN()
	p, err := d.PressureSP8032(m)
	sp := divided("SP-8032", p, factor, err, check.Source{Doc: "NASA SP-8032, Buckling of Thin-Walled Doubly Curved Shells", Where: "spherical caps; crown sphere", How: check.Memory}, "knock-down 0.14 + 3.2/λ², at most σ_y t/R")
	if d.HalfOpening == 0 {
		sp.Detail = "crown sphere, knock-down 0.14, at most σ_y t/R"
	}
	sp.Formula = "p_a = p_cr/FS, p_cr = p_cl (0.14 + 3.2/λ²) ≤ σ_y t/R_c, p_cl = 2 E (t/R_c)²/√(3(1−ν²)); without 3.2/λ² where the head is no sphere"
	sp.Steps = append(sp.Steps, check.Pa("p_cl", "classical pressure of the crown sphere", ClassicalPressure(m, d.CrownRadius, d.Thickness)))
	if d.HalfOpening > 0 {
		sp.Steps = append(sp.Steps, check.Num("λ", "cap parameter", d.CapParameter(m)))
	}
	sp.Required = true
	ug, err := d.PressureUG33(m)
	en, bad := d.PressureEN13445(m)
	return []Method{sp,
		{Name: "UG-33, elastic form", Critical: none, Factor: 4, Allowable: ug, Err: err, Detail: "0.25 E (t/R_o)² by 4, the stress at most 0.55 σ_y",
			Formula: "p_a = min(0.125 E t/R_o, 0.55 σ_y) t/(2 R_o)", Source: check.Source{Doc: "ASME VIII-1 UG-33, closed form", Where: "convex side", How: check.Memory}},
		{Name: "EN 13445-3", Critical: none, Factor: 1.5, Allowable: en.Allowable, Err: bad, Detail: "lower bound of collapse, " + m.europeanWords(),
			Formula: collapseFormula + "P_y = 2 σ_e t/R_EN, P_m = 1.21 E (t/R_EN)²", Steps: en.steps(), Source: check.Source{Doc: "EN 13445-3 clause 8, curve recalled", Where: "spheres and dished ends", How: check.Memory}}}
}

// Describe returns the dome's numbers and the shape its verdict assumes.
func (d Dome) Describe() ([]check.Quantity, string) {
	q := []check.Quantity{
		check.M("R_c", "crown radius, mid-wall", d.CrownRadius), check.M("R_o", "equivalent radius of UG-33", d.VesselRadius),
		check.M("R_EN", "equivalent radius of EN 13445-3", d.EuropeanRadius), check.M("t", "wall for strength", d.Thickness),
	}
	if d.HalfOpening > 0 {
		q = append(q, check.Rad("φ", "half opening of the cap", d.HalfOpening))
	}
	return q, "crown sphere within 1 % of its radius, edge clamped"
}
