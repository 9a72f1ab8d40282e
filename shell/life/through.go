package life

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A ThroughCrack is an axial crack through the wall of a cylinder.
type ThroughCrack struct {
	HalfLength float64 // c [m]
	Radius     float64 // R, mid-wall [m]
	Thickness  float64 // t [m]
}

// Folias returns the bulging factor M [-] of an axial through crack in a cylinder, of x = c²/(R t) [-], c half its length:
//
//	M = √(1 + 1.255 x − 0.0135 x²)   x ≤ 25
//	M = 0.064 x + 3.3                 above
//
// The argument is c²/(R t): with L²/(D t), L = 2c, it is half of that. x from 0 to 400; outside NaN and an error.
//
// Source: Folias, in two open texts (read). Two bad copies are about: 0.064 √x at large x, and √(1 + 0.4 z) for all.
func Folias(x float64) (float64, error) {
	if err := check.Within("life.Folias", "c²/(R t)", x, 0, 400, "bulging of a cylinder"); err != nil {
		return math.NaN(), err
	}
	if x <= 25 {
		return math.Sqrt(1 + 1.255*x - 0.0135*x*x), nil
	}
	return 0.064*x + 3.3, nil
}

// FoliasUpper returns the more cautious bulging factor [-]:
//
//	M = √(1 + 1.61 x)
//
// with x = c²/(R t) [-] from 0 to 400. Source: Folias, early form (recalled).
func FoliasUpper(x float64) (float64, error) {
	if err := check.Within("life.FoliasUpper", "c²/(R t)", x, 0, 400, "bulging of a cylinder"); err != nil {
		return math.NaN(), err
	}
	return math.Sqrt(1 + 1.61*x), nil
}

// Bulging returns both bulging factors of the crack [-]. The cylinder is thin: R/t from 5 up. Source: [Folias], [FoliasUpper].
func (c ThroughCrack) Bulging() (folias, upper float64, err error) {
	const fn = "life.ThroughCrack.Bulging"
	if err = errors.Join(
		check.Within(fn, "half length (m)", c.HalfLength, 0, math.MaxFloat64, "a crack"),
		check.Within(fn, "wall (m)", c.Thickness, math.SmallestNonzeroFloat64, math.MaxFloat64, "a wall"),
		check.Within(fn, "radius over wall", c.Radius/c.Thickness, 5, math.MaxFloat64, "a thin cylinder"),
	); err != nil {
		return math.NaN(), math.NaN(), err
	}
	x := c.HalfLength * c.HalfLength / (c.Radius * c.Thickness)
	folias, err1 := Folias(x)
	upper, err2 := FoliasUpper(x)
	return folias, upper, errors.Join(err1, err2)
}

// Bulged returns M σ [Pa], by which places of a wall are compared, of a crack 10 t long under the membrane stress σ [Pa] at the second
// principal radius R [m] of a wall t [m], M the larger of both bulging factors, that of c²/(R t) = 400 beyond it: which place
// is worst is also asked where the formulas do not hold, as beside the apex of a cone. Whether they hold where it is, [Wall.Leak] says.
// Source: [Folias], [FoliasUpper].
func Bulged(σ, R, t float64) float64 {
	x := math.Min(25*t/R, 400)
	a, err1 := Folias(x)
	b, err2 := FoliasUpper(x)
	if errors.Join(err1, err2) != nil {
		return math.NaN()
	}
	return σ * math.Max(a, b)
}

// Intensity returns the stress intensity [Pa m½] under the hoop stress σ [Pa] ≥ 0, with [Folias]:
//
//	K = M σ √(π c)
//
// Source: Folias, in two open texts (read).
func (c ThroughCrack) Intensity(σ float64) (float64, error) {
	m, _, err := c.Bulging()
	if err = errors.Join(err, check.Within("life.ThroughCrack.Intensity", "hoop stress (Pa)", σ, 0, math.MaxFloat64, "tension")); err != nil {
		return math.NaN(), err
	}
	return m * σ * math.Sqrt(math.Pi*c.HalfLength), nil
}

// CriticalHalfLength returns the half length [m] at which an axial through crack runs, in a cylinder of mid-wall radius R and
// wall t [m], under the hoop stress σ [Pa] at the toughness K_c [Pa m½]:
//
//	M(c²/(R t)) σ √(π c) = K_c
//
// An error where no crack within the range of [Folias] runs. Source: as [ThroughCrack.Intensity].
func CriticalHalfLength(R, t, σ, Kc float64) (float64, error) {
	const fn = "life.CriticalHalfLength"
	if err := errors.Join(
		check.Within(fn, "hoop stress (Pa)", σ, math.SmallestNonzeroFloat64, math.MaxFloat64, "tension"),
		check.Within(fn, "toughness (Pa m^0.5)", Kc, math.SmallestNonzeroFloat64, math.MaxFloat64, "a metal"),
	); err != nil {
		return math.NaN(), err
	}
	lo, hi := 0.0, math.Sqrt(400*R*t)*(1-1e-12)
	k, err := ThroughCrack{hi, R, t}.Intensity(σ)
	if err == nil {
		err = check.Within(fn, "toughness (Pa m^0.5)", Kc, 0, k, "the longest crack of the formula does not run")
	}
	if err != nil {
		return math.NaN(), err
	}
	for range 200 {
		mid := (lo + hi) / 2
		if k, _ = (ThroughCrack{mid, R, t}).Intensity(σ); k < Kc {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, nil
}

// FlowStress returns the flow stress [Pa] of the zone a crack lies in, from its yield and tensile strength [Pa]:
//
//	min((F_ty + F_tu)/2, 1.15 F_ty)
//
// Source: common practice. The tensile strength is not below yield.
func FlowStress(yield, ultimate float64) (float64, error) {
	if err := errors.Join(
		check.Within("life.FlowStress", "yield strength (Pa)", yield, 1, math.MaxFloat64, "a metal"),
		check.Within("life.FlowStress", "tensile strength (Pa)", ultimate, yield, math.MaxFloat64, "not below yield"),
	); err != nil {
		return math.NaN(), err
	}
	return math.Min((yield+ultimate)/2, 1.15*yield), nil
}
