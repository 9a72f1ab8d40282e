package life

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A StrainLife is the strain-life curve of a metal, for places that yield in every cycle, beside ports.
type StrainLife struct {
	Strength          float64 // σ_f', fatigue strength coefficient [Pa]
	ElasticModulus    float64 // E [Pa]
	StrengthExponent  float64 // b, below 0 [-]
	Ductility         float64 // ε_f', fatigue ductility coefficient [-]
	DuctilityExponent float64 // c, below b [-]
	Source            string  // of the four constants
}

// strainSource says where the method comes from; the constants are the tank file's.
var strainSource = check.Source{Doc: "Coffin, Manson, Basquin; rule of Neuber", Where: "strain-life of plain metal", How: check.Memory}

// inputs lists the constants.
func (s StrainLife) inputs() []check.Quantity {
	return []check.Quantity{check.Pa("σ_f'", "fatigue strength coefficient", s.Strength), check.Num("b", "fatigue strength exponent", s.StrengthExponent),
		check.Num("ε_f'", "fatigue ductility coefficient", s.Ductility), check.Num("c", "fatigue ductility exponent", s.DuctilityExponent),
		check.Pa("E", "elastic modulus", s.ElasticModulus)}
}

// Cycles returns the cycles to failure N [-] at the total strain range Δε [-], from peak to peak, without the scatter factor:
//
//	Δε/2 = (σ_f'/E) (2N)^b + ε_f' (2N)^c
//
// It holds for 2N from 2 to 10⁷ reversals; a range that lies outside is an error and NaN. The strain swings evenly about
// zero: a mean tension, which shortens a long life by more than the scatter factor, is not in it.
//
// Source: Basquin, Coffin and Manson; a rocket course's worked problem (read).
func (s StrainLife) Cycles(Δε float64) (float64, error) {
	const fn, why = "life.StrainLife.Cycles", "a strain-life curve"
	if err := s.valid(fn, why); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "strain range", Δε, s.span(mostReversals), s.span(leastReversals), "1 to 5 million cycles"); err != nil {
		return math.NaN(), err
	}
	lo, hi := math.Log(leastReversals), math.Log(mostReversals)
	for range 100 {
		if mid := (lo + hi) / 2; s.span(math.Exp(mid)) > Δε {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Exp(lo) / 2, nil
}

// The curve is used between these [-].
const leastReversals, mostReversals = 2, 1e7

// span returns the strain range that lasts for n reversals [-].
func (s StrainLife) span(n float64) float64 {
	return 2 * (s.Strength/s.ElasticModulus*math.Pow(n, s.StrengthExponent) + s.Ductility*math.Pow(n, s.DuctilityExponent))
}

func (s StrainLife) valid(fn, why string) error {
	return errors.Join(
		check.Within(fn, "fatigue strength coefficient (Pa)", s.Strength, 1, math.MaxFloat64, why),
		check.Within(fn, "elastic modulus (Pa)", s.ElasticModulus, 1, math.MaxFloat64, why),
		check.Within(fn, "fatigue strength exponent", s.StrengthExponent, -0.5, -0.01, why),
		check.Within(fn, "fatigue ductility coefficient", s.Ductility, 1e-3, 10, why),
		check.Within(fn, "fatigue ductility exponent", s.DuctilityExponent, -1.5, s.StrengthExponent, why),
	)
}

// Range returns the local strain range Δε [-] at a notch where elastic theory has the stress range Δσ_e [Pa], by the
// rule of Neuber on the cyclic curve that belongs to the strain-life curve, doubled for a range:
//
//	Δσ Δε = Δσ_e²/E
//	Δε = Δσ/E + 2 (Δσ/(2 K'))^(1/n'),  K' = σ_f'/ε_f'^(b/c),  n' = b/c
//
// It is never below Δσ_e/E. Δσ_e from 0 up to where the strain leaves the strain-life curve; beyond, NaN and an error. The wall
// around the notch must stay elastic, which the checks of its membrane ask.
//
// Source: Neuber 1961; Masing's doubling; K' and n' from the four constants (all recalled).
func (s StrainLife) Range(Δσe float64) (float64, error) {
	const fn = "life.StrainLife.Range"
	if err := errors.Join(s.valid(fn, "a strain-life curve"), check.Within(fn, "elastic stress range (Pa)", Δσe, 0, math.MaxFloat64, "a stress range")); err != nil {
		return math.NaN(), err
	}
	n := s.StrengthExponent / s.DuctilityExponent
	K := s.Strength / math.Pow(s.Ductility, n)
	strain := func(Δσ float64) float64 { return Δσ/s.ElasticModulus + 2*math.Pow(Δσ/(2*K), 1/n) }
	lo, hi := 0.0, Δσe // the true stress range lies below the elastic one
	for range 200 {
		if mid := (lo + hi) / 2; mid*strain(mid) < Δσe*(Δσe/s.ElasticModulus) {
			lo = mid
		} else {
			hi = mid
		}
	}
	Δε := strain(hi)
	if err := check.Within(fn, "local strain range", Δε, 0, s.span(leastReversals), "strain that lasts one cycle"); err != nil {
		return math.NaN(), err
	}
	return Δε, nil
}

// CyclesAt returns the cycles to failure N [-], without the scatter factor, at a notch where elastic theory has the stress range
// Δσ_e [Pa] > 0: [StrainLife.Range] and [StrainLife.Cycles]. A strain below the end of the curve is given the
// 5·10⁶ cycles of its end and never more.
func (s StrainLife) CyclesAt(Δσe float64) (float64, error) {
	Δε, err := s.Range(Δσe)
	if err != nil {
		return math.NaN(), err
	}
	return s.Cycles(math.Max(Δε, s.span(mostReversals)))
}
