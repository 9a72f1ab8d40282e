package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Wall is one of the walls that meet at a joint.
type Wall struct {
	Thickness      float64 // t, the wall for strength [m]
	ElasticModulus float64 // E at temperature [Pa]
	Poisson        float64 // ν [-]
}

// valid refuses a wall without thickness or stiffness, at the joint radius R [m].
func (w Wall) valid(fn, name string, R float64) error {
	return errors.Join(
		check.Within(fn, name+" thickness (m)", w.Thickness, math.SmallestNonzeroFloat64, math.MaxFloat64, "a wall"),
		check.Within(fn, name+" Young's modulus (Pa)", w.ElasticModulus, math.SmallestNonzeroFloat64, math.MaxFloat64, "an elastic wall"),
		check.Within(fn, name+" Poisson's ratio", w.Poisson, 0, 0.5, "an isotropic solid"),
		check.Within(fn, "radius over "+name+" thickness", R/w.Thickness, thinnest, math.MaxFloat64, "thin-wall edge theory"),
	)
}

// thinnest is the least mid-wall radius over wall [-] of the edge theory.
const thinnest = 10

// bending returns the bending stiffness D = E t³/[12 (1 − ν²)] [N m].
func (w Wall) bending() float64 {
	t := w.Thickness
	return w.ElasticModulus * t * t * t / (12 * (1 - w.Poisson*w.Poisson))
}

// decay returns β [1/m] where the second principal radius is r2 [m].
func (w Wall) decay(r2 float64) float64 {
	return math.Pow(3*(1-w.Poisson*w.Poisson), 0.25) / math.Sqrt(r2*w.Thickness)
}

// DecayLength returns 1/β [m], the length over which every edge effect on a cylinder of
// mid-wall radius R [m], wall t [m] and Poisson's ratio ν [-] falls by e:
//
//	1/β = sqrt(R t)/[3 (1 − ν²)]^(1/4)
//
// NaN for a radius or wall that is not above zero, or ν outside 0 to 1/2.
//
// Source: beam on elastic foundation (computed); 0.778 sqrt(R t) at ν = 0.3.
func DecayLength(R, t, ν float64) float64 {
	if !(R > 0 && t > 0 && ν >= 0 && ν <= 0.5) {
		return math.NaN()
	}
	return math.Sqrt(R*t) / math.Pow(3*(1-ν*ν), 0.25)
}

// Clear returns the length of wall [m] that must be free on each side of a joint for it to
// stand alone, of second principal radius R [m] and wall t [m]:
//
//	2.5 sqrt(R t)
//
// where 4 % of the edge effect is left. NaN for a radius or wall not above zero.
//
// Source: common practice; π/β = 2.44 sqrt(R t) at ν = 0.3.
func Clear(R, t float64) float64 {
	if !(R > 0 && t > 0) {
		return math.NaN()
	}
	return 2.5 * math.Sqrt(R*t)
}

// Interact reports whether two joints, distance [m] apart on a wall of second principal radius
// R [m] and thickness t [m], disturb each other: closer than [Clear]. What is not a number interacts.
func Interact(distance, R, t float64) bool { return !(distance >= Clear(R, t)) }

// free refuses a length of wall [m] within which another joint disturbs this one.
func free(fn, name string, length, r2, t float64) error {
	if !Interact(length, r2, t) {
		return nil
	}
	return &check.RangeError{Func: fn, Param: name + " free of other joints (m)", Got: length, Least: Clear(r2, t), Most: math.Inf(1),
		Why: "closer than 2.5 sqrt(R t) two joints interact, and the closed form does not hold"}
}
