package main

import (
	"fmt"
	"math"

	"proofsheet/material"
)

// ruleNames are the rule sets in the order they are listed.
var ruleNames = []material.Rule{material.Vessel, material.VesselEU, material.Flight}

// rulesListing returns the factors of every rule set, or of the one named.
func rulesListing(name string) (heading []string, rows [][]string, err error) {
	for _, r := range ruleNames {
		if name != "" && name != string(r) {
			continue
		}
		f, err := material.DefaultFactors(r)
		if err != nil {
			return nil, nil, err
		}
		for _, row := range []struct {
			key, what string
			value     float64 // [-]
		}{
			{"yield_factor", "on yield strength", f.YieldFactor},
			{"ultimate_factor", "on ultimate strength", f.UltimateFactor},
			{"load_yield_factor", "on yield strength, stress from line loads", f.LoadYieldFactor},
			{"load_ultimate_factor", "on ultimate strength, stress from line loads", f.LoadUltimateFactor},
			{"buckling_factor", "on line loads and external pressure", f.BucklingFactor},
			{"proof_factor", "proof pressure on MEOP", f.ProofFactor},
			{"burst_factor", "burst pressure on MEOP", f.BurstFactor},
			{"proof_limit", "membrane stress at proof, share of yield", f.ProofLimit},
		} {
			if !math.IsNaN(row.value) {
				rows = append(rows, []string{string(r), row.key, fmt.Sprintf("%.3f", row.value), row.what})
			}
		}
	}
	if len(rows) == 0 {
		_, err = material.DefaultFactors(material.Rule(name))
	}
	return []string{"rule", "key", "factor", "applies to"}, rows, err
}
