package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// inserted is the tank with a life, its outlet in a plate of 9 mm with a weld of its own.
func inserted(t testing.TB, joint string, pairs ...string) *report.Sheet {
	t.Helper()
	const fit = "fit = \"through\"\n"
	return sheet(t, changed(t, lived, append([]string{"[joint.girth]\n", "[joint.round]\nkind = \"double butt\"\nexamination = \"full\"\n" + joint + "\n[joint.girth]\n",
		fit, fit + "insert = { outside_diameter = \"80 mm\", thickness = \"9 mm\", under_tolerance = \"0.3 mm\", seam = \"round\" }\n"}, pairs...)...))
}

// The weld round an inserted plate crosses the largest stress: its life counts, with its hi-lo and peaking, by its own
// class, and without them nothing of the tank's life is assessed.
func TestLifeOfAnInsertsWeld(t *testing.T) {
	use := func(joint string) check.Result { return find(t, inserted(t, joint), "tank/life") }
	fine, rough := use("hi_lo = \"0 mm\"\npeaking = \"0 mm\"\n"), use("hi_lo = \"2 mm\"\npeaking = \"2 mm\"\n")
	if rough.Status() != check.Satisfied || !(rough.Demand.Value > 2*fine.Demand.Value) || !strings.Contains(rough.Demand.Name, "insert of port outlet (round)") {
		t.Errorf("2 mm out of line: usage %g (%s), in line %g", rough.Demand.Value, rough.Demand.Name, fine.Demand.Value)
	}
	for _, joint := range []string{"", "hi_lo = \"0 mm\"\n", "peaking = \"0 mm\"\n"} {
		if r := use(joint); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "insert of port outlet (round): how far the walls are out of line") {
			t.Errorf("%q: %v, %s", joint, r.Status(), r.Reason())
		}
	}
	s := inserted(t, "hi_lo = \"0 mm\"\npeaking = \"0 mm\"\nflaw = \"1.5 mm\"\n", "examination = \"full\"\nhi_lo = \"0 mm\"", "examination = \"spot\"\nhi_lo = \"0 mm\"")
	if r := find(t, s, "tank/flaw-growth"); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "insert of port outlet (round)") {
		t.Errorf("a flaw in its weld: %v, %s", r.Status(), r.Reason())
	}
}

// By hand, in the wall of (5 − 0.3) × 0.9 = 4.23 mm with ν 0.27: a hi-lo of 1 mm bends 3 × 1/4.23/0.9271 = 0.764988 of the stress
// across; a plate of 8.7 mm flush on one face, T/t = 2.056738, 3 × 1.056738/(1 + 2.949633)/0.9271 = 0.865775. At the apex p R/2t with
// the 1.2085 MPa at its depth and R 152.115 mm is 21.73 MPa, and the wall is in line but for those.
func TestInsertsWeldIsBent(t *testing.T) {
	r := find(t, inserted(t, "hi_lo = \"1 mm\"\n"), "port.outlet/misalignment@meop")
	checktest.Close(t, "hi-lo", input(t, r, "k_e"), 0.764988, 1e-5)
	checktest.Close(t, "step", input(t, r, "k_s"), 0.865775, 1e-5)
	checktest.Close(t, "across the weld", input(t, r, "σ_m")/21.73e6, 1, 0.02)
	checktest.Close(t, "membrane and bending", r.Demand.Value/(21.73e6*(1+0.764988+0.865775)), 1, 0.03)
	plain := find(t, inserted(t, ""), "port.outlet/misalignment@meop")
	checktest.Close(t, "the plate alone", plain.Demand.Value/(21.73e6*1.865775), 1, 0.03)
	if got := find(t, inserted(t, "", "ullage_pressure = \"2 bar\"", "ullage_pressure = \"-0.3 bar\""), "port.outlet/misalignment@meop"); !(got.Demand.Value > plain.Demand.Value) {
		t.Errorf("with a case that draws the tank in %g Pa, without %g Pa", got.Demand.Value, plain.Demand.Value)
	}
}
