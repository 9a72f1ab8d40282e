package material

import (
	"errors"

	"proofsheet/report/check"
)

// A Rule is a rule set of allowable stress.
type Rule string

// The rule sets.
const (
	Vessel   Rule = "vessel"
	VesselEU Rule = "vessel-eu"
	Flight   Rule = "flight"
)

// Factors are the factors of a rule set [-], with the overrides among them.
type Factors struct {
	YieldFactor, UltimateFactor         float64           // on pressure [-]
	LoadYieldFactor, LoadUltimateFactor float64           // on line loads, flight only [-]
	BucklingFactor                      float64           // [-]
	ProofFactor, BurstFactor            float64           // on MEOP [-]
	ProofLimit                          float64           // membrane at proof, share of yield [-]
	Austenitic90                        bool              // the higher set of austenitic allowables
	Overrides                           map[string]string // key -> source
}

// DefaultFactors returns the factors of a rule set.
func DefaultFactors(r Rule) (Factors, error) { return Factors{}, errors.New("not assessed") }

// Override replaces one factor by the key of the tank file.
func (f *Factors) Override(r Rule, key string, value float64, source string) error {
	return errors.New("not assessed")
}

// A Term is one term of an allowable stress.
type Term struct {
	Symbol, Name string
	Value        float64 // [Pa]
}

// Limits are the allowable stresses of one material by one rule set.
type Limits struct {
	Rule                                Rule
	S                                   float64 // allowable on pressure alone [Pa]
	Terms                               []Term
	Governs                             string
	Yield, Ultimate                     float64 // [Pa]
	YieldOnPressure, UltimateOnPressure float64 // flight [-]
	YieldOnLoad, UltimateOnLoad         float64 // flight [-]
	Source                              check.Source
	Note                                string
}

// LimitOptions are what else bears on an allowable.
type LimitOptions struct {
	Group4       bool    // vessel-eu without examination
	AllowableCap float64 // [Pa]; 0 or NaN: none
}

// Limits returns the allowable stresses by rule r.
func (p Properties) Limits(r Rule, f Factors, o LimitOptions) (Limits, error) {
	return Limits{}, errors.New("not assessed")
}

// Lower returns the lower of two limits of one rule set, for a seam.
func (l Limits) Lower(o Limits) (Limits, error) { return Limits{}, errors.New("not assessed") }

// Stress is the membrane stress at a point, by origin, tension positive.
type Stress struct {
	HoopPressure, MeridionalPressure        float64 // [Pa]
	MeridionalLoadMost, MeridionalLoadLeast float64 // [Pa]
	PressureLeast                           float64 // smallest simultaneous pressure / pressure [-]
	Present                                 bool    // the least values are certain: 0 is not tried
}

// Judged is one comparison ready for a check.Result.
type Judged struct {
	Formula          string
	Demand, Capacity check.Quantity
	Factor           float64 // [-]
	Inputs           []check.Quantity
	Note             string
	Err              error
}

// Normal compares the stress across a seam [Pa] of efficiency [-].
func (l Limits) Normal(pressure, loadMost, loadLeast, efficiency float64) Judged {
	return Judged{Err: errors.New("not assessed")}
}

// Equivalent compares the membrane stress at a point.
func (l Limits) Equivalent(s Stress) Judged { return Judged{Err: errors.New("not assessed")} }
