package material

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// RulePage returns the heading and the rows of the rule sets as a person reads
// them: what the allowable stress is the least of, the factors with their keys
// in the tank file, what is tested; with a name only that one's.
func RulePage(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"part", "value", "how", "source"}
	_, factors, err := RuleListing(name)
	if err != nil {
		return nil, nil, err
	}
	for _, r := range []Rule{Vessel, VesselEU, Flight} {
		if name != "" && name != string(r) {
			continue
		}
		rows = append(rows, []string{string(r) + ": " + ruleIdeas[r]})
		for _, t := range ruleTexts[r] {
			rows = append(rows, []string{t.part, t.text, t.source.How.String(), t.source.Doc})
		}
		for _, f := range factors {
			if f[0] == string(r) {
				rows = append(rows, []string{f[1], f[2], f[4], f[3]})
			}
		}
	}
	return heading, append(rows, []string{"Every factor may be written in [basis] by its name, with a source; it is printed beside the one it replaces. austenitic_90 = true takes the higher set of vessel for austenitic steel."}), nil
}

// ruleIdeas says what a rule set is for.
var ruleIdeas = map[Rule]string{
	Vessel:   "stationary pressure vessel, people may be near",
	VesselEU: "the European rule for stationary vessels, people may be near",
	Flight:   "flown or fired, nobody near while pressurised",
}

// A ruleText is one part of a rule set that is no single factor.
type ruleText struct {
	part, text string
	source     check.Source
}

// ruleTexts are the formulas of Limits and the rules of proof, as printed.
var ruleTexts = map[Rule][]ruleText{
	Vessel: {
		{"allowable", "S = min(Rm/3.5, 1.1 Rm(T)/3.5, Rp0.2/1.5, Rp0.2(T)/1.5); with austenitic_90 the last term is 0.9 Rp0.2(T) where Rp0.2/Rm < 0.625", ruleSources[Vessel]},
		{"efficiency", "Table UW-12 by kind of joint and examination; seamless head 1.00 or 0.85", check.Source{Doc: "ASME BPVC VIII-1 UW-12", How: check.Read}},
		{"pneumatic test", "factor 1.1, membrane to 0.80 Rp0.2", check.Source{Doc: "ASME BPVC VIII-1 UG-100", How: check.Memory}},
	},
	VesselEU: {
		{"allowable", "f = min(Rp0.2(T)/1.5, Rm/2.4); austenitic from 30 % elongation Rp1.0(T)/1.5, from 35 % the larger of that and min(Rp1.0(T)/1.2, Rm(T)/3); no titanium", ruleSources[VesselEU]},
		{"not examined", "0.9 f, aluminium refused, test at 2.2 MEOP", check.Source{Doc: "EN 13445-3 clause 6, EN 13445-5, testing group 4", How: check.Memory}},
		{"efficiency", "z = 1, 0.85, 0.7 for full, spot and no examination of full-penetration butts; 1 at proof", check.Source{Doc: "EN 13445-3 5.6", How: check.Memory}},
		{"proof", "the larger of 1.25 MEOP f(test)/f(T) and 1.43 MEOP", proofSources[VesselEU]},
	},
	Flight: {
		{"allowable", "pressure alone: min(Fty/(proof factor/proof limit), Ftu/burst factor) = min(0.600 Fty, 0.500 Ftu)", ruleSources[Flight]},
		{"corners", "both factored; pressure factored with the line load at its smallest; line load factored with the pressure at its smallest: the worst counts", ruleSources[Flight]},
		{"people near", "a case with people near is assessed by vessel, under basis vessel-eu by that", check.Source{Doc: "common practice", How: check.Practice}},
		{"efficiency", "as vessel", check.Source{Doc: "ASME BPVC VIII-1 UW-12", How: check.Read}},
	},
}

// RuleListing returns the heading and the rows of the factors of the rule sets;
// with a name only that one's.
func RuleListing(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"rule", "factor", "value", "source", "how"}
	for _, r := range []Rule{Vessel, VesselEU, Flight} {
		if name != "" && name != string(r) {
			continue
		}
		f, err := DefaultFactors(r)
		if err != nil { // not reached: the three rules are known
			return nil, nil, err
		}
		for _, v := range []struct {
			key    string
			value  float64 // [-]
			source check.Source
		}{
			{"yield_factor", f.YieldFactor, ruleSources[r]}, {"ultimate_factor", f.UltimateFactor, ruleSources[r]},
			{"load_yield_factor", f.LoadYieldFactor, ruleSources[r]}, {"load_ultimate_factor", f.LoadUltimateFactor, ruleSources[r]},
			{"buckling_factor", f.BucklingFactor, check.Source{Doc: "factor on line loads and external pressure", How: check.Practice}},
			{"proof_factor", f.ProofFactor, proofSources[r]}, {"burst_factor", f.BurstFactor, proofSources[r]}, {"proof_limit", f.ProofLimit, limitSources[r]},
		} {
			if !math.IsNaN(v.value) {
				rows = append(rows, []string{string(r), v.key, fmt.Sprintf("%.4g", v.value), v.source.Doc, v.source.How.String()})
			}
		}
	}
	if len(rows) == 0 {
		return nil, nil, fmt.Errorf("unknown rule %q: vessel, vessel-eu or flight", name)
	}
	return heading, rows, nil
}
