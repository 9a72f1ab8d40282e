// Package weld holds joint kinds and their efficiencies.
package weld

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Joint is one named weld joint.
type Joint struct {
	Kind, Examination string
	Root              string  // how the root was seen
	Efficiency        float64 // [-]; NaN or 0: by the table
	EfficiencySource  string
	Process           string
}

// A Place is where a joint is used.
type Place struct {
	Category        string // A, B, C or D
	Longitudinal    bool
	Convex          bool    // head convex to pressure
	Thickness       float64 // [m]
	OutsideDiameter float64 // [m]
}

// A Kind is one kind of joint.
type Kind struct {
	Name, Letter, Limits string
	Full, Spot, None     float64 // efficiency by examination [-]; NaN: not given
	Source               check.Source
}

// EfficiencyAt returns the joint efficiency [-] at a place.
func (j Joint) EfficiencyAt(rule string, at Place) (float64, check.Source, error) {
	return math.NaN(), check.Source{}, errors.New("not assessed")
}

// SeamlessEfficiency returns the efficiency [-] of a seamless part.
func SeamlessEfficiency(joining ...Joint) (float64, check.Source) {
	return math.NaN(), check.Source{}
}

// Kinds returns all kinds of joint.
func Kinds() []Kind { return nil }

// ZoneWidth returns the width [m] of the weld zone at thickness [m].
func ZoneWidth(process, family string, thickness float64) (float64, check.Source, error) {
	return math.NaN(), check.Source{}, errors.New("not assessed")
}
