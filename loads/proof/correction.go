package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Ratio is one material's property at the test temperature over the same at
// the service temperature; a weld zone is a material of its own.
type Ratio struct {
	Material string  // "plate", "plate, weld zone"
	Value    float64 // test over service [-]
}

// NewRatio returns the ratio of the property that sets the allowable, yield or
// ultimate strength, at the test temperature [Pa] to that at the service
// temperature [Pa]:
//
//	ratio = property(T_test) / property(T_service)
//
// A part that is hotter in service than in the test has a ratio above one, and
// the cold wall must be loaded harder. Both properties are above zero;
// otherwise the ratio is NaN, and a plan made from it is an error.
//
// Source: ASME VIII-1 UG-99(b), S at test over S at design, read.
func NewRatio(material string, test, service float64) (Ratio, error) {
	err := errors.Join(
		check.Within("proof.NewRatio", material+": strength at the test temperature [Pa]", test, 1, 1e11, "a strength"),
		check.Within("proof.NewRatio", material+": strength at the service temperature [Pa]", service, 1, 1e11, "a strength"))
	if err != nil {
		return Ratio{material, math.NaN()}, err
	}
	return Ratio{material, test / service}, nil
}

// ErrNoRatio says that a point has no material to correct for: the correction
// is then unknown, not one.
var ErrNoRatio = errors.New("the ratio of strengths at test and in service is not known")

// CorrectionFactor returns the temperature correction of one place [-] from
// the ratios of its parent metals and weld zones:
//
//	CF = max(1, ratios)
//
// The largest ratio governs, because each material must be shown; a tank that
// is cold in service and proofed warm gets no relief from a ratio under one.
// Ratios lie between 0.05 and 20; no ratio at all is [ErrNoRatio].
//
// Source: 46 CFR 54.10-10 (no ratio below 1), read.
func CorrectionFactor(ratios []Ratio) (float64, error) {
	if len(ratios) == 0 {
		return math.NaN(), ErrNoRatio
	}
	cf := 1.0
	for _, r := range ratios {
		if err := validRatio(r); err != nil {
			return math.NaN(), err
		}
		cf = math.Max(cf, r.Value)
	}
	return cf, nil
}

// lowestRatio returns the lowest ratio over all materials of the tank [-], not
// under one: the single correction of a rule with one ratio.
func lowestRatio(points []Point) (float64, error) {
	lowest := math.Inf(1)
	for _, pt := range points {
		if len(pt.Ratios) == 0 {
			return math.NaN(), fmt.Errorf("%s: %w", pt.Name, ErrNoRatio)
		}
		for _, r := range pt.Ratios {
			if err := validRatio(r); err != nil {
				return math.NaN(), fmt.Errorf("%s: %w", pt.Name, err)
			}
			lowest = math.Min(lowest, r.Value)
		}
	}
	return math.Max(1, lowest), nil
}

func validRatio(r Ratio) error {
	return check.Within("proof.CorrectionFactor", r.Material+": strength at test over strength in service",
		r.Value, 0.05, 20, "beyond it the material is not fit for one of the two")
}
