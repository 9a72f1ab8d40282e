package assess_test

import (
	"testing"

	"proofsheet/report/check"
)

// joined is the tank of testdata in two aluminium alloys, one of the cylinder and one of the heads, with a flaw in
// the seams between them.
func joined(t *testing.T, cylinder, heads string) check.Result {
	t.Helper()
	metal := func(name, alloy string) string {
		return "[material." + name + "]\nalloy = \"" + alloy + "\"\ntoughness = \"20 MPa m^0.5\"\ntoughness_source = \"test\"\n\n"
	}
	return find(t, sheet(t, changed(t, lived, outlet, "", "material = \"plate\"\nseam", "material = \"dish\"\nseam", "[joint.long]", metal("sheet", cylinder)+metal("dish", heads)+"[joint.long]",
		"forming = \"pressed\"", "forming = \"pressed\"\nheat_treated = \"certificate 1\"", "material = \"plate\"\nlong_seam", "material = \"sheet\"\nlong_seam", "12 bar", "6 bar", "10.5 bar", "5.4 bar", "flaw = \"1.5 mm\"\n", "",
		"process = \"tig\"\nhi_lo = \"0.5 mm\"\n\n[cylinder]", "process = \"tig\"\nhi_lo = \"0.5 mm\"\nflaw = \"0.5 mm\"\n\n[cylinder]")), "tank/flaw-growth")
}

// A crack between two metals grows by the faster law of both, whichever is written first. By hand, at the ΔK of 10 MPa √m and
// R 0.5: 6061-T6 sheet 2.27e-7 × 10^1.66/(0.5 × 60.1 − 10) = 5.2e-7 m a cycle, the upper bound of the family, all that is known
// of 5083-O, 4.46e-10 × 10³ = 4.5e-7; at 3 MPa √m 5.2e-8 against 1.2e-8. So the seam may not live the longer for its order.
func TestFlawBetweenTwoMetals(t *testing.T) {
	one, other := joined(t, "5083-O", "6061-T6"), joined(t, "6061-T6", "5083-O")
	if a, b := one.Demand.Value, other.Demand.Value; !(a > 0.5*b && a < 2*b) {
		t.Errorf("usage %g (%s), the other way round %g (%s)", a, one.Reason(), b, other.Reason())
	}
}
