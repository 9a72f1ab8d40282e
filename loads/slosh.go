package loads

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Slosh is liquid that swings in its first mode in an upright round tank with
// a flat bottom. A curved bottom takes the depth V/(π R²) of its liquid, fair
// while that is above R.
//
// Source of its methods: linear potential theory, first root of J1′ at ξ =
// 1.841; NASA SP-106, ch. 2, recalled. Smooth walls damp it hardly at all.
type Slosh struct {
	Radius       float64 // R, inside [m]
	Depth        float64 // h, of the liquid at rest [m]
	Acceleration float64 // a_x, sensed, pressing the liquid aft [m/s2]
	Density      float64 // ρ [kg/m3]
}

// FirstSloshRoot is ξ, the first zero of the derivative of J1 [-].
const FirstSloshRoot = 1.8411837813406593

const firstRoot = FirstSloshRoot

// tanh returns tanh(ξ h/R) [-], or why there is no first mode.
func (s Slosh) tanh() (float64, error) {
	for _, q := range []struct {
		name  string
		value float64
	}{{"radius [m]", s.Radius}, {"depth [m]", s.Depth}, {"axial acceleration [m/s2]", s.Acceleration}, {"density [kg/m3]", s.Density}} {
		if !(q.value > 0) || math.IsInf(q.value, 0) {
			return math.NaN(), fmt.Errorf("no slosh mode: the %s is %g, must be above zero", q.name, q.value)
		}
	}
	return math.Tanh(firstRoot * s.Depth / s.Radius), nil
}

// Frequency returns the frequency of the first mode [1/s], Hz:
//
//	ω² = (ξ a_x/R) tanh(ξ h/R), f = ω/(2 π)
func (s Slosh) Frequency() (float64, error) {
	th, err := s.tanh()
	return math.Sqrt(firstRoot*s.Acceleration/s.Radius*th) / (2 * math.Pi), err
}

// Mass returns the liquid's mass that swings, as a pendulum's [kg], and the
// length of that pendulum [m]:
//
//	m_1 = m 2 R tanh(ξ h/R)/(ξ (ξ² − 1) h), m = ρ π R² h
//	L_1 = a_x/ω² = R/(ξ tanh(ξ h/R))
func (s Slosh) Mass() (mass, length float64, err error) {
	th, err := s.tanh()
	const ξ = firstRoot
	m := s.Density * math.Pi * s.Radius * s.Radius * s.Depth
	return m * 2 * s.Radius * th / (ξ * (ξ*ξ - 1) * s.Depth), s.Radius / (ξ * th), err
}

// LargestAmplitude returns how high the liquid can rise on the wall [m]: its
// surface cannot fall faster than it is pressed down,
//
//	η ≤ a_x/ω²
func (s Slosh) LargestAmplitude() (float64, error) {
	_, length, err := s.Mass()
	return length, err
}

// UsualAmplitude returns the rise taken where no spectrum of the motion is
// known [m], η = 0.25 R: common practice, and the end of the linear range.
func (s Slosh) UsualAmplitude() float64 { return 0.25 * s.Radius }

// linear refuses an amplitude η [m] that the linear mode does not hold for.
func (s Slosh) linear(η float64) error {
	return check.Within("loads.Slosh", "amplitude over radius [-]", η/s.Radius, 0, 0.25, "linear first mode")
}

// WallPressure returns the pressure that sloshing adds on the wall [Pa], on the
// side where it rises by η [m], at the height z above the flat bottom [m]:
//
//	p = ρ a_x η cosh(ξ z/R)/cosh(ξ h/R), and above h: ρ a_x (h + η − z), not below 0
//
// On the other side it is taken away, but never more than the liquid head there.
// It holds for η up to 0.25 R.
func (s Slosh) WallPressure(z, η float64) (float64, error) {
	if _, err := s.tanh(); err != nil {
		return math.NaN(), err
	}
	if err := s.linear(η); err != nil {
		return math.NaN(), err
	}
	if err := check.Within("loads.Slosh.WallPressure", "height above the bottom [m]", z, 0, math.MaxFloat64, "on the wall"); err != nil {
		return math.NaN(), err
	}
	if z > s.Depth {
		return s.Density * s.Acceleration * math.Max(0, s.Depth+η-z), nil
	}
	k := firstRoot / s.Radius // cosh(k z)/cosh(k h) without overflow
	return s.Density * s.Acceleration * η * math.Exp(k*(z-s.Depth)) * (1 + math.Exp(-2*k*z)) / (1 + math.Exp(-2*k*s.Depth)), nil
}

// Force returns the lateral force on the wall [N] and its moment about the
// bottom [N m], the pressure on the bottom itself left out, for a rise η [m]:
//
//	F = ρ a_x η π R² tanh(ξ h/R)/ξ
//	M = ρ a_x η π R [(h R/ξ) tanh(ξ h/R) − (R/ξ)² (1 − 1/cosh(ξ h/R))]
//
// It holds for η up to 0.25 R.
func (s Slosh) Force(η float64) (force, moment float64, err error) {
	th, err := s.tanh()
	if err == nil {
		err = s.linear(η)
	}
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	b, q := s.Radius/firstRoot, s.Density*s.Acceleration*η*math.Pi*s.Radius
	return q * b * th, q * (s.Depth*b*th - b*b*(1-1/math.Cosh(s.Depth/b))), nil
}
