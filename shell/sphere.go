package shell

import (
	"math"

	"proofsheet/report/check"
)

// A Sphere is a plain spherical shell, or the part of a hemisphere clear of its
// seam.
type Sphere struct {
	InsideRadius float64 // R, with the corrosion gone [m]
	Thickness    float64 // t, least wall [m]
}

func (s Sphere) cylinder() Cylinder {
	return Cylinder{InsideRadius: s.InsideRadius, Thickness: s.Thickness}
}

// Stress returns the membrane stress [Pa], the same in every direction, tension
// positive, under the pressure across the wall p [Pa]:
//
//	σ = p R_m/(2 t)
//
// It holds from R_m/t = 10 up; otherwise the error is a [*check.RangeError].
//
// Source: equilibrium; Hibbeler, Mechanics of Materials, sec. 8.1 (read by way
// of a textbook companion).
func (s Sphere) Stress(p float64) (float64, error) {
	if err := s.cylinder().isThin("shell.Sphere.Stress"); err != nil {
		return math.NaN(), err
	}
	return p * (s.InsideRadius + s.Thickness/2) / (2 * s.Thickness), nil
}

// LameStress returns hoop and radial stress [Pa] in the wall of a thick sphere
// at radius r [m], p inside and po outside [Pa]:
//
//	σ_θ = A + B/r³, σ_r = A − 2 B/r³
//	A = (p R³ − p_o R_o³)/(R_o³ − R³), B = (p − p_o) R³ R_o³/[2 (R_o³ − R³)]
//
// It holds for any wall, R ≤ r ≤ R_o.
//
// Source: Lamé, as on solved exercise pages (read).
func (s Sphere) LameStress(p, po, r float64) (hoop, radial float64, err error) {
	if err := s.cylinder().Valid(); err != nil {
		return math.NaN(), math.NaN(), err
	}
	R, Ro := s.InsideRadius, s.InsideRadius+s.Thickness
	if err := check.Within("shell.Sphere.LameStress", "radius [m]", r, R, Ro, "the wall"); err != nil {
		return math.NaN(), math.NaN(), err
	}
	R3, Ro3 := R*R*R, Ro*Ro*Ro
	A := (p*R3 - po*Ro3) / (Ro3 - R3)
	B := (p - po) * R3 * Ro3 / (2 * (Ro3 - R3)) / (r * r * r)
	return A + B, A - 2*B, nil
}

// RequiredThickness returns the wall [m] that the pressure p [Pa] asks for, S
// being the allowable stress [Pa] and E the joint efficiency [-]:
//
//	t = p R/(2 S E − 0.2 p)               t ≤ 0.356 R, p ≤ 0.665 S E
//	t = R (Y^(1/3) − 1), Y = 2 (S E + p)/(2 S E − p)   beyond
//
// At 2 S E no wall is enough and the error is a [*check.RangeError].
//
// Source: ASME VIII-1 UG-27(d) (read; validity memory), App. 1-3, older edition
// (memory), which is Lamé's stress at the bore.
func (s Sphere) RequiredThickness(p, S, E float64) (float64, error) {
	SE, err := allowed("shell.Sphere.RequiredThickness", S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := positive("shell.Sphere.RequiredThickness", "inside radius [m]", s.InsideRadius); err != nil {
		return math.NaN(), err
	}
	if err := check.Within("shell.Sphere.RequiredThickness", "p/(S E)", p/SE, 0, 2*(1-1e-9), "above it no wall is enough"); err != nil {
		return math.NaN(), err
	}
	if p <= 0.665*SE {
		return p * s.InsideRadius / (2*SE - 0.2*p), nil
	}
	return s.InsideRadius * (math.Cbrt(2*(SE+p)/(2*SE-p)) - 1), nil
}

// AllowablePressure returns the pressure [Pa] that the wall may carry:
//
//	p = 2 S E t/(R + 0.2 t)                 t ≤ 0.356 R
//	p = 2 S E (Y − 1)/(Y + 2), Y = (R_o/R)³  beyond
//
// Source: as [Sphere.RequiredThickness].
func (s Sphere) AllowablePressure(S, E float64) (float64, error) {
	SE, err := allowed("shell.Sphere.AllowablePressure", S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := s.cylinder().Valid(); err != nil {
		return math.NaN(), err
	}
	R, t := s.InsideRadius, s.Thickness
	if t <= 0.356*R {
		return 2 * SE * t / (R + 0.2*t), nil
	}
	Y := math.Pow(1+t/R, 3)
	return 2 * SE * (Y - 1) / (Y + 2), nil
}

// SphereThicknessOutside is [Sphere.RequiredThickness] from the outside radius ro [m]:
//
//	t = p R_o/(2 S E + 0.8 p), p ≤ 0.665 S E
//
// Source: ASME VIII-1 App. 1-1(a)(2) (read; validity memory).
func SphereThicknessOutside(ro, p, S, E float64) (float64, error) {
	const fn = "shell.SphereThicknessOutside"
	SE, err := allowed(fn, S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := positive(fn, "outside radius [m]", ro); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "p/(S E)", p/SE, 0, 0.665, "thin sphere"); err != nil {
		return math.NaN(), err
	}
	return p * ro / (2*SE + 0.8*p), nil
}

// RequiredThicknessEU returns the wall [m] by the European method:
//
//	e = p D_i/(4 f z − p), e/D_e ≤ 0.16
//
// f is the allowable stress [Pa], z the joint coefficient [-].
//
// Source: EN 13445-3, 7.4.3 (memory).
func (s Sphere) RequiredThicknessEU(p, f, z float64) (float64, error) {
	return requiredEU("shell.Sphere.RequiredThicknessEU", s.InsideRadius, p, 0, f, z, 4)
}
