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
}

// Cycles returns the cycles to failure N [-] at the total strain range Δε [-], from peak to peak, without the scatter factor:
//
//	Δε/2 = (σ_f'/E) (2N)^b + ε_f' (2N)^c
//
// It holds for 2N from 2 to 10⁷ reversals; a range that lies outside is an error and NaN.
//
// Source: Basquin, Coffin and Manson; a rocket course's worked problem (read).
func (s StrainLife) Cycles(Δε float64) (float64, error) {
	const fn, why = "life.StrainLife.Cycles", "a strain-life curve"
	if err := errors.Join(
		check.Within(fn, "fatigue strength coefficient (Pa)", s.Strength, 1, math.MaxFloat64, why),
		check.Within(fn, "elastic modulus (Pa)", s.ElasticModulus, 1, math.MaxFloat64, why),
		check.Within(fn, "fatigue strength exponent", s.StrengthExponent, -0.5, -0.01, why),
		check.Within(fn, "fatigue ductility coefficient", s.Ductility, 1e-3, 10, why),
		check.Within(fn, "fatigue ductility exponent", s.DuctilityExponent, -1.5, s.StrengthExponent, why),
	); err != nil {
		return math.NaN(), err
	}
	const least, most = 2, 1e7 // reversals
	at := func(n float64) float64 {
		return s.Strength/s.ElasticModulus*math.Pow(n, s.StrengthExponent) + s.Ductility*math.Pow(n, s.DuctilityExponent)
	}
	if err := check.Within(fn, "strain range", Δε, 2*at(most), 2*at(least), "1 to 5 million cycles"); err != nil {
		return math.NaN(), err
	}
	lo, hi := math.Log(least), math.Log(most)
	for range 100 {
		if mid := (lo + hi) / 2; at(math.Exp(mid)) > Δε/2 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Exp(lo) / 2, nil
}
