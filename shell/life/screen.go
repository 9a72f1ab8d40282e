package life

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// lefm is the share of yield up to which linear fracture mechanics speak [-]. Source: common practice.
const lefm = 0.8

// Screened returns the depth [m] of the largest surface flaw that a proof test may leave behind, of shape a/c [-] in a wall t [m], at the
// proof stress σ_p [Pa] and the yield strength of the zone [Pa]:
//
//	(F/√Q)(a_p/t) σ_p √(π a_p) = K_c(T_test)
//
// K_c [Pa m½] is an upper bound at the test's temperature: a metal tougher than its minimum lets a larger flaw through. Without one (0 or not
// a number), above 0.8 of yield, or beyond a = 0.8 t the proof screens nothing, which is an error: the start is then what the
// examination finds.
//
// Source: [SurfaceCrack.Shape] at the deepest point, turned round.
func Screened(shape, t, σp, yield, Kc float64) (float64, error) {
	const fn = "life.Screened"
	if !(Kc > 0) {
		return math.NaN(), errors.New("the proof screens no flaw: no upper bound of the toughness at the test is known")
	}
	if err := errors.Join(
		check.Within(fn, "wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, "a wall"),
		check.Within(fn, "yield strength (Pa)", yield, 1, math.MaxFloat64, "a metal"),
		check.Within(fn, "proof stress over yield of the zone", σp/yield, math.SmallestNonzeroFloat64, lefm, "linear fracture mechanics"),
	); err != nil {
		return math.NaN(), err
	}
	at := func(a float64) (float64, error) {
		return SurfaceCrack{a, a / shape, t, math.Inf(1)}.Intensity(σp, AtDeepest)
	}
	lo, hi := 0.0, deepest*t
	k, err := at(hi)
	if err != nil {
		return math.NaN(), err
	}
	if k < Kc {
		return math.NaN(), fmt.Errorf("the proof screens no flaw: at 0.8 of the wall K is %.4g MPa m^0.5, below the toughness of %.4g", k/mpa, Kc/mpa)
	}
	for range 100 {
		if mid := (lo + hi) / 2; func() bool { k, _ := at(mid); return k < Kc }() {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi, nil
}

// ProofFactor returns the proof factor [-] at which the flaws left behind stay below a threshold in service: allowed intensity over
// toughness [-], below 1, and toughness at the test over that in service [-]:
//
//	1/(K_allow/K_Ic) · K_c(test)/K_c(service)
//
// Source: proof-test logic of NASA SP-8040 (recalled).
func ProofFactor(allowed, testOverService float64) (float64, error) {
	const fn = "life.ProofFactor"
	if err := errors.Join(check.Within(fn, "allowed intensity over toughness", allowed, 0.05, 1, "a threshold"),
		check.Within(fn, "toughness at test over service", testOverService, 0.1, 10, "a metal")); err != nil {
		return math.NaN(), err
	}
	return testOverService / allowed, nil
}

// LeastRatio is the toughness over yield of the low-risk class [m^0.5]: 0.33 in^0.5, 1.66 mm^0.5.
// Source: NASA-STD-5019A 6.2.5.a(2), change log (read).
const LeastRatio = 0.0525933

// ToughnessRatio returns toughness over yield strength [m^0.5], from K [Pa m½] and F_ty [Pa]; NaN without both. Source: as [LeastRatio].
func ToughnessRatio(K, yield float64) float64 {
	if !(K > 0 && yield > 0) {
		return math.NaN()
	}
	return K / yield
}
