package assess_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// The order of the cases changes no result, and neither does the number of
// processors that share them.
func TestOrderOfCases(t *testing.T) {
	in := read(t, "demo")
	var cases []tank.Case
	for i := range 40 {
		c := in.Case[i%len(in.Case)]
		c.Name = fmt.Sprintf("case-%d", i)
		p := 25e5 - 2e4*float64(i)
		c.UllagePressure = &p
		cases = append(cases, c)
	}
	results := func(cs []tank.Case) map[string]check.Result {
		in.Case = cs
		out := map[string]check.Result{}
		for _, r := range sheet(t, in).Checks {
			out[r.ID+"@"+r.Case] = r
		}
		return out
	}
	all := results(cases)
	backward := slices.Clone(cases)
	slices.Reverse(backward)
	turned := results(backward)
	if len(all) != len(turned) || len(all) < 40*20 {
		t.Fatalf("%d and %d results", len(all), len(turned))
	}
	same := func(where string, a, b check.Result) {
		if a.Status() != b.Status() || a.Demand != b.Demand || a.Capacity != b.Capacity || a.Note != b.Note {
			t.Errorf("%s %s@%s: %v against %v; %v, %v", where, a.ID, a.Case, a.Demand, b.Demand, a.Err, b.Err)
		}
	}
	for key, r := range all {
		if r.Case != "meop" && r.Case != "proof" {
			same("turned", r, turned[key])
		}
	}
	for _, i := range []int{0, 17, 39} {
		for key, r := range results(cases[i : i+1]) {
			ranges := strings.HasPrefix(r.Formula, "Δ") // of a joint, between all cases
			if r.Case == cases[i].Name && !ranges {
				same("alone", r, all[key])
			}
		}
	}
}
