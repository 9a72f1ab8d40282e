package shell

import (
	"math"

	"proofsheet/report/check"
)

// RestrainedStress returns the stress [Pa] of a bar or wall that wants to grow by
// the strain ε = ∫α dT [-] and is held at both ends by what gives way, tension
// positive:
//
//	σ = −E ε/(1 + E A/(k L))
//
// give is E A/(k L), the stiffness of the wall over that of its ends: 0 for ends
// that do not give [-]. A gap takes its share of ε first. For a wall held along
// two directions the stress is 1/(1 − ν) of that.
//
// It holds below yield; take the mean α over the range, not that at one end: from
// 293 to 77 K metals shrink a third less than their α at 293 K says.
//
// Source: compatibility; ENGN0310 and Bhandari, ex. 4.22 (read).
func (m Elastic) RestrainedStress(ε, give float64) (float64, error) {
	if err := positive("shell.Elastic.RestrainedStress", "elastic modulus [Pa]", m.Modulus); err != nil {
		return math.NaN(), err
	}
	if err := check.Within("shell.Elastic.RestrainedStress", "stiffness of the wall over its ends", give, 0, math.Inf(1), "ends that hold"); err != nil {
		return math.NaN(), err
	}
	return -m.Modulus * ε / (1 + give), nil
}

// GradientStress returns the bending stress on the faces [Pa] of a wall whose faces
// differ by the thermal strain ε = α ΔT [-], held against bending, either sign:
//
//	σ = E ε/(2 (1 − ν))
//
// It holds for a thin wall, straight gradient, clear of edges.
//
// Source: theory of plates, recalled.
func (m Elastic) GradientStress(ε float64) (float64, error) {
	if _, err := m.Strain(0, 0); err != nil {
		return math.NaN(), err
	}
	return math.Abs(m.Modulus * ε / (2 * (1 - m.Poisson))), nil
}

// A StepStress is what a change of temperature along a cylinder does to it, as
// magnitudes.
type StepStress struct {
	Hoop    float64 // membrane along the hoop, tension on the cold side [Pa]
	Bending float64 // along the axis, on the faces; ν times that along the hoop [Pa]
	At      float64 // of the bending, from the middle of the change [m]
}

// TemperatureStep returns the stress where the temperature of a long cylinder
// changes along its axis by the thermal strain ε = α ΔT [-] over a length l [m],
// evenly, 0 for a step as at the level of a cold liquid:
//
//	step: σ_θ = E ε/2 at the step, σ_x = 0.2792/√(1 − ν²) E ε at x = π/(4 β)
//	over l: the mean of the step's stress over the ramp, β⁴ = 3 (1 − ν²)/(R t)²
//
// with σ_θ(x) = (E ε/2) e^(−βx) cos βx and σ_x(x) = √3/(2 √(1 − ν²)) E ε e^(−βx) sin βx beside a step.
//
// It holds below yield, farther than 3/β from ends and joints.
//
// Source: beam on an elastic foundation; a finite-difference solution
// (computed).
func (c Cylinder) TemperatureStep(m Elastic, ε, l float64) (StepStress, error) {
	if err := c.Valid(); err != nil {
		return StepStress{}, err
	}
	if _, err := m.Strain(0, 0); err != nil {
		return StepStress{}, err
	}
	if err := check.Within("shell.Cylinder.TemperatureStep", "length of the change [m]", l, 0, math.MaxFloat64, "a length"); err != nil {
		return StepStress{}, err
	}
	if math.IsNaN(ε) || math.IsInf(ε, 0) {
		return StepStress{}, &check.RangeError{Func: "shell.Cylinder.TemperatureStep", Param: "thermal strain [-]", Got: ε, Least: -1, Most: 1, Why: "a strain"}
	}
	ν := m.Poisson
	β := math.Pow(3*(1-ν*ν), 0.25) / math.Sqrt(c.MidRadius()*c.Thickness)
	unit := math.Abs(m.Modulus * ε)
	peak := math.Sqrt(3) / (2 * math.Sqrt(1-ν*ν))
	if l == 0 {
		return StepStress{unit / 2, peak * math.Exp(-math.Pi/4) * math.Sin(math.Pi/4) * unit, math.Pi / (4 * β)}, nil
	}
	s := β * l
	hoop := (1 + math.Exp(-s)*(math.Sin(s)-math.Cos(s))) / (4 * s) // mean of e^(−u) cos u /2, at the end of the ramp
	at, most := 0.0, 0.0
	for i := range 4000 { // β x from 0 to s/2 + 2, past the only hill
		x := (s/2 + 2) * float64(i) / 4000
		if v := swing(x-s/2) - swing(x+s/2); math.Abs(v) > most {
			at, most = x, math.Abs(v)
		}
	}
	return StepStress{hoop * unit, peak * most / s * unit, at / β}, nil
}

// swing returns −∫ e^(−|u|) sin u du up to y, even in y [-].
func swing(y float64) float64 {
	y = math.Abs(y)
	return math.Exp(-y) * (math.Sin(y) + math.Cos(y)) / 2
}
