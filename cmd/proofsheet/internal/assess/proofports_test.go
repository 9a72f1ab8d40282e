package assess_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
)

// The metal round a hole is held at the test too. The methods are all but linear
// in strength and pressure: with S at 20 °C and 0.90 of 170 MPa at proof the highest
// pressures stand as the strengths do.
func TestPortsAtProof(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	service, test := find(t, s, "port.outlet-1/area@burnout"), find(t, s, "port.outlet-1/area@proof")
	if test.Status() != check.Satisfied || !strings.Contains(test.Note, "share of yield allowed at proof") {
		t.Fatalf("%v: %s", test.Status(), test.Reason())
	}
	const S = 170e6 * 2 / 3 // of 304L by the vessel rule [Pa]
	want := 0.9 * 170e6 / S
	if got := test.Capacity.Value / service.Capacity.Value; math.Abs(got/want-1) > 0.03 {
		t.Errorf("highest pressure at proof over service %.3f, strengths %.3f", got, want)
	}
}

// A port that does not hold at the test withholds the plan; one that cannot be
// judged there is named in it.
func TestPortFailsAtProof(t *testing.T) {
	src := strings.Replace(text(t, "demo"), `rule = "vessel"`, "rule = \"vessel\"\nproof_factor = 3.0\nsource = \"for a test of the check\"", 1)
	s := assessed(src)
	if s == nil {
		t.Fatal("the tank is refused")
	}
	if r := find(t, s, "port.outlet-1/area@proof"); r.Status() != check.NotSatisfied {
		t.Errorf("%v, margin %.3f", r.Status(), r.Margin())
	}
	if s.Proof != nil {
		t.Error("a plan is issued")
	}
}
