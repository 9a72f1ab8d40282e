package assess_test

import (
	"regexp"
	"strings"
	"testing"

	"proofsheet/report/check"
)

// A round head under a tank nearly full that is pushed aft and to one side: its shoulder, where
// the gas stands, is drawn from outside, its rim and its apex are not. Before, both ends
// of the head alone were looked at and the check did not apply.
func TestConvexAtTheShoulder(t *testing.T) {
	src := text(t, "rings")
	burnout := regexp.MustCompile(`(?s)ullage_pressure = "8 bar".*?cycles = 10\n`)
	src = burnout.ReplaceAllString(src, "ullage_pressure = \"-0.02 bar\"\naxial_load_factor = 10\nlateral_load_factor = 10\nfill = 0.999\ncycles = 10\n")
	from, to := strings.Index(src, "[head.forward]"), strings.Index(src, "[[case]]")
	head := strings.Replace(src[from:to], "shape = \"ellipsoid\"\naspect = 2.0\n", "shape = \"hemisphere\"\n", 1)
	head = strings.Replace(head, "straight_flange = \"20 mm\"\n", "", 1)
	_, checks := bare(src[:from] + head + src[to:])
	r, ok := checks["head.forward/convex@burnout"]
	if !ok {
		t.Fatal("no such check")
	}
	if r.Status() != check.Satisfied {
		t.Errorf("%v: %s", r.Status(), r.Reason())
	}
	for _, q := range r.Inputs {
		if q.Symbol == "p" && !(q.Value >= 2e3*(1-1e-9)) {
			t.Errorf("p %.5g Pa, the gas is 2 kPa below the air", q.Value)
		}
	}
}
