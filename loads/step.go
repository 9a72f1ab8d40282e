package loads

import (
	"math"

	"proofsheet/report/check"
)

// StepFactor returns the load factor at the peak of a sudden step from one sensed
// load factor to another [-]: at ignition, release or cut-off the stack swings
// beyond the new value,
//
//	n = n_before + D (n_after − n_before)
//
// D is the dynamic factor [-]: 2 for a step on an undamped single mode, 1.2 to 1.6
// measured (practice), 1 for a slow change. It multiplies the step and never the
// whole. At a cut-off the sign may turn. It holds for D from 1 to 2.
//
// Source: response of a single mode to a step; textbook, recalled, and a march in
// time (computed).
func StepFactor(before, after, D float64) (float64, error) {
	if err := check.Within("loads.StepFactor", "dynamic factor", D, 1, 2, "a step on a single mode"); err != nil {
		return math.NaN(), err
	}
	for _, n := range []float64{before, after} {
		if err := check.Within("loads.StepFactor", "load factor", n, -math.MaxFloat64, math.MaxFloat64, "a load factor"); err != nil {
			return math.NaN(), err
		}
	}
	return before + D*(after-before), nil
}
