package proof

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Wall is the elastic wall of one part. Growth readings use the nominal
// thickness: it is the metal that is there.
type Wall struct {
	Thickness      float64 // nominal: t [m]
	ElasticModulus float64 // E [Pa]
	Poisson        float64 // ν [-]
}

const (
	thinWall    = 10 // least R/t of the membrane formulas [-]
	thinReason  = "thin-wall membrane theory"
	slenderMost = 5000 // R/t beyond which nothing here was checked [-]
)

// valid reports whether the wall is elastic and thin at the radius r [m].
func (w Wall) valid(fn string, r float64) error {
	return errors.Join(
		check.Within(fn, "modulus of elasticity [Pa]", w.ElasticModulus, 1e6, 1e13, "a metal"),
		check.Within(fn, "Poisson's ratio", w.Poisson, 0, 0.5, "an isotropic metal"),
		check.Within(fn, "radius [m]", r, 1e-6, 1e3, "a radius"),
		check.Within(fn, "radius over thickness", r/w.Thickness, thinWall, slenderMost, thinReason),
	)
}

// flexibility returns R/(E t) [1/Pa], the strain per pressure of a ring.
func (w Wall) flexibility(r float64) float64 { return r / (w.ElasticModulus * w.Thickness) }

// CylinderGrowth returns what a closed cylinder of mid-surface radius r [m] and
// length l [m] grows in volume per pressure [m3/Pa]:
//
//	dV/p = π R² L R/(E t) (5/2 − 2ν)
//
// R/t from 10 up; otherwise NaN and a [*check.RangeError]. Edge effects are
// left out. Source: membrane strains of the closed cylinder, computed.
func (w Wall) CylinderGrowth(r, l float64) (float64, error) {
	const fn = "proof.Wall.CylinderGrowth"
	if err := errors.Join(w.valid(fn, r), check.Within(fn, "length [m]", l, 0, 1e4, "a length")); err != nil {
		return math.NaN(), err
	}
	return math.Pi * r * r * l * w.flexibility(r) * (2.5 - 2*w.Poisson), nil
}

// ThickCylinderGrowth returns the growth in volume over volume, per pressure
// [1/Pa], of a closed cylinder of any wall with inside radius r [m]:
//
//	dV/(V p) = [3(1 − 2ν) + 2(1 + ν) k²] / [E (k² − 1)],  k = r_o/r_i
//
// k from 1.0001 to 10. Source: Lamé, exact; computed.
func (w Wall) ThickCylinderGrowth(r float64) (float64, error) {
	const fn = "proof.Wall.ThickCylinderGrowth"
	k := 1 + w.Thickness/r
	err := errors.Join(
		check.Within(fn, "modulus of elasticity [Pa]", w.ElasticModulus, 1e6, 1e13, "a metal"),
		check.Within(fn, "Poisson's ratio", w.Poisson, 0, 0.5, "an isotropic metal"),
		check.Within(fn, "inside radius [m]", r, 1e-6, 1e3, "a radius"),
		check.Within(fn, "outside over inside radius", k, 1.0001, 10, "a wall"))
	if err != nil {
		return math.NaN(), err
	}
	k2 := k * k
	return (3*(1-2*w.Poisson) + 2*(1+w.Poisson)*k2) / (w.ElasticModulus * (k2 - 1)), nil
}

// SphereGrowth returns the growth in volume over volume, per pressure [1/Pa],
// of a sphere of mid-surface radius r [m]:
//
//	dV/(V p) = 3 R (1 − ν) / (2 E t)
//
// R/t from 10 up. Source: membrane strain of the sphere, computed.
func (w Wall) SphereGrowth(r float64) (float64, error) {
	if err := w.valid("proof.Wall.SphereGrowth", r); err != nil {
		return math.NaN(), err
	}
	return 1.5 * w.flexibility(r) * (1 - w.Poisson), nil
}

// HemisphereGrowth returns what a hemisphere of mid-surface radius r [m] grows
// in volume per pressure [m3/Pa]:
//
//	dV/p = π R⁴ (1 − ν) / (E t)
//
// R/t from 10 up. Joined to a cylinder of its own wall it grows up to 3 % less
// at R/t 25. Source: half of [Wall.SphereGrowth], computed.
func (w Wall) HemisphereGrowth(r float64) (float64, error) {
	if err := w.valid("proof.Wall.HemisphereGrowth", r); err != nil {
		return math.NaN(), err
	}
	return math.Pi * r * r * r * w.flexibility(r) * (1 - w.Poisson), nil
}

// EllipsoidGrowth returns what a semi-ellipsoid of mid-surface radius a [m] and
// height b [m] grows in volume per pressure [m3/Pa]:
//
//	dV/p = 2π a⁶/(E t b²) [(5/4 − ν) J3 − (1 − ν/2) J1 + Jm/4]
//	Jm = asinh(e/B)/e,  J1 = (1 + B² Jm)/2,  J3 = (1 + 3 B² J1)/4
//
// with B = b/a and e = √(1 − B²). At B = 1 it is the hemisphere. B from 0.5 to
// 1 and a/t from 10 up; otherwise NaN and a [*check.RangeError]. The membrane
// leaves out the rim: a 2:1 end joined to a cylinder of its own wall grows 10 %
// (a/t 200) to 32 % (a/t 25) less, so the value is an upper bound.
//
// Source: membrane stresses of the ellipsoid by the energy theorem, computed.
func (w Wall) EllipsoidGrowth(a, b float64) (float64, error) {
	const fn = "proof.Wall.EllipsoidGrowth"
	B := b / a
	err := errors.Join(w.valid(fn, a), check.Within(fn, "height over radius", B, 0.5, 1, "checked for these only"))
	if err != nil {
		return math.NaN(), err
	}
	jm, e := 1.0, math.Sqrt(1-B*B)
	if e > 0 {
		jm = math.Asinh(e/B) / e
	}
	j1 := (1 + B*B*jm) / 2
	j3 := (1 + 3*B*B*j1) / 4
	ν := w.Poisson
	shape := (1.25-ν)*j3 - (1-ν/2)*j1 + jm/4
	return 2 * math.Pi * a * a * a * w.flexibility(a) / (B * B) * shape, nil
}

// A Cone is a conical end with a sharp junction and no knuckle.
type Cone struct {
	Radius            float64 // at the base, mid-surface: R [m]
	TipRadius         float64 // at the small end: r1 [m]
	HalfAngle         float64 // wall to axis: α [rad]
	CylinderThickness float64 // of the cylinder it is joined to [m]
}

// ConeGrowth returns what a conical end joined to a long cylinder of the same
// wall grows in volume per pressure [m3/Pa], the bent junction included:
//
//	dV/p = π R⁴/(E t) { (5/4 − ν)(1 − (r1/R)⁴)/(2 sin α cos² α)
//	       − tan α (1 − ν/2)(1 + 1/cos α)
//	       + [3(1 − ν²)]^¼ √(R/t) (tan² α/4) 2√cos α/(1 + √cos α) }
//
// The first term alone, the membrane of the cone, is wrong by up to 4.6 times:
// the thrust p R tan α/2 bends the junction. α from 15 to 60 degrees, R/t from
// 25 to 200, walls equal within 1 %; otherwise NaN and a [*check.RangeError].
// Against finite elements it is up to 7.1 % off at R/t 25, 3.5 % from 50 up.
//
// Source: reciprocity, computed, and checked by finite elements.
func (w Wall) ConeGrowth(c Cone) (float64, error) {
	const fn = "proof.Wall.ConeGrowth"
	err := errors.Join(w.valid(fn, c.Radius),
		check.Within(fn, "half angle [deg]", c.HalfAngle*180/math.Pi, 15-1e-9, 60+1e-9, "checked for these only; flatter needs the numerical shell"),
		check.Within(fn, "radius over thickness", c.Radius/w.Thickness, 25, 200, "checked for these only"),
		check.Within(fn, "tip radius over base radius", c.TipRadius/c.Radius, 0, 0.9, "a cone"),
		check.Within(fn, "cylinder's wall over cone's wall", c.CylinderThickness/w.Thickness, 0.99, 1.01, "unequal walls need the numerical shell"))
	if err != nil {
		return math.NaN(), err
	}
	ν, R := w.Poisson, c.Radius
	sin, cos := math.Sincos(c.HalfAngle)
	tan, root := sin/cos, math.Sqrt(cos)
	membrane := (1.25 - ν) * (1 - math.Pow(c.TipRadius/R, 4)) / (2 * sin * cos * cos)
	thrust := tan * (1 - ν/2) * (1 + 1/cos)
	bent := math.Pow(3*(1-ν*ν), 0.25) * math.Sqrt(R/w.Thickness) * tan * tan / 4 * 2 * root / (1 + root)
	return math.Pi * R * R * R * w.flexibility(R) * (membrane - thrust + bent), nil
}

// PlateGrowth returns what a flat round end of radius a [m] to its edge grows
// in volume per pressure [m3/Pa], its edge clamped or simply supported:
//
//	dV/p = π a⁶/(192 D),  (7 + ν)/(1 + ν) times that on a simple support
//	D = E t³ / [12 (1 − ν²)]
//
// It holds for a deflection under half the thickness, which the caller checks
// by [Wall.PlateDeflection], and a/t from 5 to 100. Source: small deflection of
// the round plate, computed.
func (w Wall) PlateGrowth(a float64, clamped bool) (float64, error) {
	if err := w.plate("proof.Wall.PlateGrowth", a); err != nil {
		return math.NaN(), err
	}
	growth := math.Pi * math.Pow(a, 6) / (192 * w.plateStiffness())
	if !clamped {
		growth *= (7 + w.Poisson) / (1 + w.Poisson)
	}
	return growth, nil
}

// PlateDeflection returns the deflection at the middle per pressure [m/Pa] of
// the same plate of radius a [m]: a⁴/(64 D), (5 + ν)/(1 + ν) times that on a
// simple support.
// Source: small deflection of the round plate, computed.
func (w Wall) PlateDeflection(a float64, clamped bool) (float64, error) {
	if err := w.plate("proof.Wall.PlateDeflection", a); err != nil {
		return math.NaN(), err
	}
	δ := math.Pow(a, 4) / (64 * w.plateStiffness())
	if !clamped {
		δ *= (5 + w.Poisson) / (1 + w.Poisson)
	}
	return δ, nil
}

func (w Wall) plateStiffness() float64 {
	return w.ElasticModulus * w.Thickness * w.Thickness * w.Thickness / (12 * (1 - w.Poisson*w.Poisson))
}

func (w Wall) plate(fn string, a float64) error {
	return errors.Join(
		check.Within(fn, "modulus of elasticity [Pa]", w.ElasticModulus, 1e6, 1e13, "a metal"),
		check.Within(fn, "Poisson's ratio", w.Poisson, 0, 0.5, "an isotropic metal"),
		check.Within(fn, "radius [m]", a, 1e-6, 1e3, "a radius"),
		check.Within(fn, "radius over thickness", a/w.Thickness, 5, 100, "a thin plate with small deflections"))
}
