package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report/check"
)

// A weld of aluminium or titanium to steel is never passed, whatever the numbers;
// one of two steels is, and a tank of one metal says nothing of it.
func TestMetalsThatDoNotFuse(t *testing.T) {
	const second = "[material.other]\nalloy = \"ALLOY\"\n\n[joint.long]"
	for name, row := range map[string]struct {
		alloy  string
		change [2]string
		says   string
	}{
		"tube":     {"5083-O", [2]string{`under_tolerance = "0.4 mm", material = "plate"`, `under_tolerance = "0.4 mm", material = "other"`}, "port.outlet of other (aluminium) is welded to head.aft of plate (austenitic)"},
		"pad":      {"5083-O", [2]string{`outside = "40 mm"`, "pad = { outside_diameter = \"60 mm\", thickness = \"5 mm\", leg = \"3 mm\", material = \"other\" }\noutside = \"40 mm\""}, "the pad of port.outlet of other"},
		"head":     {"5083-O", [2]string{"forming = \"pressed\"\nmaterial = \"plate\"", "forming = \"pressed\"\nmaterial = \"other\""}, "head.aft of other (aluminium) is welded to the cylinder of plate"},
		"titanium": {"Ti-6Al-4V", [2]string{`under_tolerance = "0.4 mm", material = "plate"`, `under_tolerance = "0.4 mm", material = "other"`}, "port.outlet of other (titanium)"},
		"steel":    {"316L", [2]string{`under_tolerance = "0.4 mm", material = "plate"`, `under_tolerance = "0.4 mm", material = "other"`}, ""},
		"one":      {"316L", [2]string{"", ""}, ""},
	} {
		pairs := []string{"[joint.long]", strings.Replace(second, "ALLOY", row.alloy, 1)}
		if row.change[0] != "" {
			pairs = append(pairs, row.change[0], row.change[1])
		}
		s, said := sheet(t, changed(t, lived, pairs...)), false
		for _, r := range s.Checks {
			if r.ID == "tank/weld-metals" {
				said = true
				if r.Status() != check.NotAssessed || row.says == "" || !strings.Contains(r.Reason(), row.says) {
					t.Errorf("%s: %v, %s", name, r.Status(), r.Reason())
				}
			}
		}
		if said != (row.says != "") {
			t.Errorf("%s: the sheet speaks of the metals: %t", name, said)
		}
		if said && s.Verdict == check.Satisfied {
			t.Errorf("%s: satisfied", name)
		}
	}
}
