package port

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// steepestStep is the ratio of walls T/t at which [InsertBending] is largest [-]: there
// (T/t)^1.5 − 3 (T/t)^0.5 = 2.
const steepestStep = 4

// InsertBending returns the bending stress over the membrane stress across it [-] at the
// butt weld between a wall t [m] and a plate T [m] let into it flush on one face, in the
// wall, with Poisson's ratio ν [-]:
//
//	3 (T/t − 1)/[1 + (T/t)^1.5]/(1 − ν²)
//
// It is largest at T/t = 4, and of a thicker plate that value is taken. A plate that
// stands out alike on both faces bends the wall less. T from t up.
//
// Source: butt joint of unequal walls, mid-lines (T − t)/2 apart, form of BS 7910 Annex D
// (recalled).
func InsertBending(t, T, ν float64) (float64, error) {
	const fn, why = "port.InsertBending", "plate let into a wall"
	if err := errors.Join(
		check.Within(fn, "wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "plate over wall", T/t, 1-1e-9, math.MaxFloat64, why),
		check.Within(fn, "Poisson's ratio", ν, 0, 0.5, "an isotropic solid"),
	); err != nil {
		return math.NaN(), err
	}
	x := math.Min(math.Max(T/t, 1), steepestStep)
	return 3 * (x - 1) / (1 + x*math.Sqrt(x)) / (1 - ν*ν), nil
}
