package material

import (
	"errors"
	"fmt"
	"maps"
	"math"

	"proofsheet/report/check"
)

// A Rule is a rule set of allowable stress.
type Rule string

// The rule sets. They are never mixed in one check.
const (
	Vessel   Rule = "vessel"    // stationary vessel, people may be near
	VesselEU Rule = "vessel-eu" // the European one
	Flight   Rule = "flight"    // flown or fired, nobody near
)

// Factors are the factors of a rule set [-], with the overrides among them.
type Factors struct {
	YieldFactor, UltimateFactor         float64           // on stress, in flight on that from pressure [-]
	LoadYieldFactor, LoadUltimateFactor float64           // flight, on stress from line loads [-]
	BucklingFactor                      float64           // on line loads and external pressure [-]
	ProofFactor, BurstFactor            float64           // on MEOP [-]; burst in flight only, else NaN
	ProofLimit                          float64           // membrane at proof, share of yield [-]
	Austenitic90                        bool              // the higher set for austenitic steel
	Overrides                           map[string]string // key of the tank file -> source
}

// ruleSources says where the factors of a rule set stand.
var ruleSources = map[Rule]check.Source{
	Vessel:   {Doc: "ASME BPVC II-D, Mandatory Appendix 1, 1-100 (2021, metric)", How: check.Read},
	VesselEU: {Doc: "EN 13445-3 clause 6, Table 6-1; factors also PED 2014/68/EU annex I 7.1.2", How: check.Memory},
	Flight:   {Doc: "proof 1.5 and burst 2.0 on MEOP by event rules for flown tanks; load factors 1.25 and 1.5", How: check.Practice},
}

// proofSources and limitSources say where proof factors and the limit of the
// membrane stress at proof stand.
var (
	proofSources = map[Rule]check.Source{
		Vessel:   {Doc: "ASME BPVC VIII-1 UG-99", How: check.Read},
		VesselEU: {Doc: "EN 13445-5 10.2.3.3", How: check.Memory},
		Flight:   {Doc: "event rules for flown tanks: proof 1.5, burst 2.0", How: check.Read},
	}
	limitSources = map[Rule]check.Source{
		Vessel:   {Doc: "46 CFR 54.10", How: check.Read},
		VesselEU: {Doc: "EN 13445-3 Table 6-1, test column", How: check.Memory},
		Flight:   {Doc: "46 CFR 54.10, taken for flight too", How: check.Practice},
	}
)

// DefaultFactors returns the factors of a rule set:
//
//	             yield      ultimate  on loads    buckling  proof  proof limit
//	vessel       1.5        3.5       -           1.5       1.3    0.90
//	vessel-eu    1.5        2.4       -           1.5       1.25   1/1.05
//	flight       proof/lim  burst 2   1.25, 1.5   1.5       1.5    0.90
//
// The proof factor of vessel-eu is only the first of its rules; the others are
// in the proof plan. Where a rule set has no such factor it is NaN.
//
// Source: II-D Appendix 1, UG-99 and 46 CFR 54.10 (read); EN 13445-3 clause 6
// and EN 13445-5 10.2.3.3 (recalled); flight: common practice.
func DefaultFactors(r Rule) (Factors, error) {
	none := math.NaN()
	f := Factors{LoadYieldFactor: none, LoadUltimateFactor: none, BucklingFactor: 1.5, BurstFactor: none, Overrides: map[string]string{}}
	switch r {
	case Vessel:
		f.YieldFactor, f.UltimateFactor, f.ProofFactor, f.ProofLimit = 1.5, 3.5, 1.3, 0.90
	case VesselEU:
		f.YieldFactor, f.UltimateFactor, f.ProofFactor, f.ProofLimit = 1.5, 2.4, 1.25, 1/1.05
	case Flight:
		f.LoadYieldFactor, f.LoadUltimateFactor, f.ProofFactor, f.BurstFactor, f.ProofLimit = 1.25, 1.5, 1.5, 2.0, 0.90
		f.follow()
	default:
		return Factors{}, fmt.Errorf("unknown rule %q: vessel, vessel-eu or flight", r)
	}
	return f, nil
}

// follow sets the factors on pressure of flight from proof and burst, unless
// they were overridden themselves.
func (f *Factors) follow() {
	if _, set := f.Overrides["yield_factor"]; !set {
		f.YieldFactor = f.ProofFactor / f.ProofLimit
	}
	if _, set := f.Overrides["ultimate_factor"]; !set {
		f.UltimateFactor = f.BurstFactor
	}
}

// Override replaces one factor [-] of rule r by its key in the tank file, with
// its source. proof_limit lies above 0 and at most 1, every other factor from
// 1 up. The vessel rules have no load or burst factors.
func (f *Factors) Override(r Rule, key string, value float64, source string) error {
	if source == "" {
		return fmt.Errorf("%s overrides the rule set and needs a source", key)
	}
	field, ok := map[string]*float64{
		"yield_factor": &f.YieldFactor, "ultimate_factor": &f.UltimateFactor,
		"load_yield_factor": &f.LoadYieldFactor, "load_ultimate_factor": &f.LoadUltimateFactor,
		"buckling_factor": &f.BucklingFactor, "proof_factor": &f.ProofFactor,
		"burst_factor": &f.BurstFactor, "proof_limit": &f.ProofLimit,
	}[key]
	if !ok {
		return fmt.Errorf("unknown factor %q", key)
	}
	if math.IsNaN(*field) {
		return fmt.Errorf("rule %s has no %s", r, key)
	}
	low, high := 1.0, 20.0
	if key == "proof_limit" {
		low, high = math.SmallestNonzeroFloat64, 1
	}
	if err := check.Within("material.Factors.Override", key, value, low, high, "factors of safety"); err != nil {
		return err
	}
	f.Overrides = maps.Clone(f.Overrides)
	if f.Overrides == nil {
		f.Overrides = map[string]string{}
	}
	*field, f.Overrides[key] = value, source
	if r == Flight {
		f.follow()
	}
	return nil
}

// sane reports a factor that a rule set needs and that is missing or below 1.
func (f Factors) sane(r Rule) error {
	need := []float64{f.YieldFactor, f.UltimateFactor}
	if r == Flight {
		need = append(need, f.LoadYieldFactor, f.LoadUltimateFactor)
	}
	for _, v := range need {
		if !(v >= 1) || math.IsInf(v, 0) {
			return errors.New("a factor of the rule set is missing or below 1")
		}
	}
	return nil
}
