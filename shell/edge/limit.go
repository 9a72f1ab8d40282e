package edge

import (
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// RangeLimit returns what the range of membrane and bending stress, secondary included, is held to [Pa], with
// its formula: min(3 S, 2 Rp0.2), by flight 2 F_ty. An error when a strength is missing.
//
// Source: ASME VIII-2 form of the shakedown limit (recalled); common practice.
func RangeLimit(l material.Limits) (limit float64, formula string, err error) {
	switch {
	case !(l.Yield > 0) || math.IsInf(l.Yield, 1):
		return math.NaN(), "", fmt.Errorf("the yield strength at the joint is not known")
	case l.Rule == material.Flight:
		return 2 * l.Yield, "2 F_ty", nil
	case !(l.S > 0) || math.IsInf(l.S, 1):
		return math.NaN(), "", fmt.Errorf("the allowable stress at the joint is not known")
	}
	return math.Min(3*l.S, 2*l.Yield), "min(3 S, 2 Rp0.2)", nil
}

// PrimaryAtProof returns what primary membrane and bending stress together are held to at proof [Pa], for the
// general membrane stress Pm [Pa] ≥ 0 and the yield strength Rp [Pa]:
//
//	1.35 Rp while Pm ≤ 0.67 Rp, else 2.35 Rp − 1.5 Pm
//
// Pm up to Rp; outside NaN and an error. It is for bending that carries pressure, as in a flat head.
//
// Source: test condition of ASME VIII-2 (recalled).
func PrimaryAtProof(Pm, Rp float64) (float64, error) {
	if err := check.Within("edge.PrimaryAtProof", "yield strength (Pa)", Rp, math.SmallestNonzeroFloat64, math.MaxFloat64, "a metal"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within("edge.PrimaryAtProof", "general membrane over yield", Pm/Rp, 0, 1, "membrane below yield"); err != nil {
		return math.NaN(), err
	}
	if Pm <= 0.67*Rp {
		return 1.35 * Rp, nil
	}
	return 2.35*Rp - 1.5*Pm, nil
}

// A criterion is one limit of membrane stress with the factors of its parts.
type criterion struct {
	symbol         string
	strength       float64 // [Pa]
	pressure, load float64 // factors on the two parts [-]
}

// criteria returns what local membrane stress is held to, before the 1.5.
func criteria(l material.Limits) ([]criterion, error) {
	all := []criterion{{"S", l.S, 1, 1}}
	if l.Rule == material.Flight {
		all = []criterion{{"F_ty", l.Yield, l.YieldOnPressure, l.YieldOnLoad}, {"F_tu", l.Ultimate, l.UltimateOnPressure, l.UltimateOnLoad}}
	}
	for _, c := range all {
		if !(c.strength > 0 && c.pressure >= 1 && c.load >= 1) || math.IsInf(c.strength+c.pressure+c.load, 1) {
			return nil, fmt.Errorf("%s at the joint or its factor is not known", c.symbol)
		}
	}
	return all, nil
}
