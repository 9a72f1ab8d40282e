package material

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// RuleListing returns the heading and the rows of the factors of the rule sets;
// with a name only that one's.
func RuleListing(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"rule", "factor", "value", "source", "how"}
	for _, r := range []Rule{Vessel, VesselEU, Flight} {
		if name != "" && name != string(r) {
			continue
		}
		f, err := DefaultFactors(r)
		if err != nil {
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
