package life

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A SurfaceCrack is a half ellipse on one face of a plate under tension.
type SurfaceCrack struct {
	Depth      float64 // a [m]
	HalfLength float64 // c, on the face [m]
	Thickness  float64 // t, of the plate [m]
	HalfWidth  float64 // b, of the plate; +Inf: wide [m]
}

// Where on the crack: the angle of the ellipse's parameter. Some codes count it the other way round.
const (
	AtFace    = 0           // where the crack meets the face [rad]
	AtDeepest = math.Pi / 2 // its deepest point [rad]
)

// deepest is the depth over the wall up to which the formula holds [-].
const deepest = 0.8

// Shape returns F/√Q [-] at the angle φ [rad], 0 at the face and π/2 at the deepest point:
//
//	Q   = 1 + 1.464 (a/c)^1.65
//	F   = [M1 + M2 (a/t)² + M3 (a/t)⁴] f_φ g f_w
//	M1  = 1.13 − 0.09 a/c    M2 = −0.54 + 0.89/(0.2 + a/c)    M3 = 0.5 − 1/(0.65 + a/c) + 14 (1 − a/c)²⁴
//	f_φ = [(a/c)² cos²φ + sin²φ]^¼    g = 1 + [0.1 + 0.35 (a/t)²] (1 − sin φ)²
//	f_w = √sec(π c/(2 b) √(a/t))
//
// For a/c from 0.2 to 1, a/t up to 0.8, c/b below 0.5, within 5 % of finite elements; outside NaN and a
// [*check.RangeError]. a/t = 0 is the crack in a half space.
//
// Source: Newman and Raju, Engineering Fracture Mechanics 15 (1981), tension (recalled; unit values read in an open
// crack-growth code).
func (s SurfaceCrack) Shape(φ float64) (float64, error) {
	const fn = "life.SurfaceCrack.Shape"
	x, y := s.Depth/s.HalfLength, s.Depth/s.Thickness
	if s.Thickness == math.Inf(1) {
		y = 0
	}
	if err := errors.Join(
		check.Within(fn, "crack depth (m)", s.Depth, math.SmallestNonzeroFloat64, math.MaxFloat64, "a crack"),
		check.Within(fn, "crack depth over half length", x, 0.2*(1-1e-9), 1+1e-9, "shape of the crack"),
		check.Within(fn, "crack depth over wall", y, 0, deepest*(1+1e-9), "fit of the finite elements"),
		check.Within(fn, "half length over half width", s.HalfLength/s.HalfWidth, 0, 0.5*(1-1e-9), "fit of the finite elements"),
		check.Within(fn, "angle on the crack (rad)", φ, 0, math.Pi, "the half ellipse"),
	); err != nil {
		return math.NaN(), err
	}
	sin, cos := math.Sin(φ), math.Cos(φ)
	q := 1 + 1.464*math.Pow(x, 1.65)
	m1, m2 := 1.13-0.09*x, -0.54+0.89/(0.2+x)
	m3 := 0.5 - 1/(0.65+x) + 14*math.Pow(math.Max(0, 1-x), 24)
	fφ := math.Pow(x*x*cos*cos+sin*sin, 0.25)
	g := 1 + (0.1+0.35*y*y)*(1-sin)*(1-sin)
	fw := 1.0
	if !math.IsInf(s.HalfWidth, 1) {
		fw = math.Sqrt(1 / math.Cos(math.Pi*s.HalfLength/(2*s.HalfWidth)*math.Sqrt(y)))
	}
	return (m1 + m2*y*y + m3*y*y*y*y) * fφ * g * fw / math.Sqrt(q), nil
}

// Intensity returns the stress intensity K [Pa m½] at the angle φ [rad], under the stress σ [Pa] ≥ 0, membrane and
// bending at the place taken as membrane; for a crack on the inside face the pressure is part of it:
//
//	K = σ √(π a) F/√Q
//
// Source and range: as [SurfaceCrack.Shape].
func (s SurfaceCrack) Intensity(σ, φ float64) (float64, error) {
	f, err := s.Shape(φ)
	if err = errors.Join(err, check.Within("life.SurfaceCrack.Intensity", "stress (Pa)", σ, 0, math.MaxFloat64, "tension")); err != nil {
		return math.NaN(), err
	}
	return f * σ * math.Sqrt(math.Pi*s.Depth), nil
}

// Worst returns the larger stress intensity of face and deepest point [Pa m½] under the stress σ [Pa]. Source: [SurfaceCrack.Intensity].
func (s SurfaceCrack) Worst(σ float64) (float64, error) {
	face, err1 := s.Intensity(σ, AtFace)
	deep, err2 := s.Intensity(σ, AtDeepest)
	if err := errors.Join(err1, err2); err != nil {
		return math.NaN(), err
	}
	return math.Max(face, deep), nil
}
