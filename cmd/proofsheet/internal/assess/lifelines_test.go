package assess_test

import (
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// burnedOut writes one more case into the tank of testdata, with what else is to change.
func burnedOut(t *testing.T, text string, change ...string) *tank.Tank {
	t.Helper()
	return changed(t, lived, append([]string{"[proof]\nmethod", "[[case]]\nname = \"burnout\"\n" + text + "\n[proof]\nmethod",
		"hi_lo = \"0.5 mm\"\npeaking = \"0.5 mm\"", "hi_lo = \"0 mm\"\npeaking = \"0 mm\""}, change...)...)
}

// outlet is the port of the tank in testdata.
const outlet = "[[port]]\nname = \"outlet\"\non = \"aft\"\naxis = \"parallel\"\nradius = \"0 mm\"\ntube = { outside_diameter = \"26.9 mm\", wall = \"3.6 mm\", under_tolerance = \"0.4 mm\", material = \"plate\", seam = \"none\" }\n" +
	"fit = \"through\"\noutside = \"40 mm\"\ninside = \"8 mm\"\nweld = { outside_leg = \"5 mm\", inside_leg = \"4 mm\", groove = \"full\", joint = \"girth\" }\n"

// rangeOf returns the stress range that the governing detail shows for a kind of cycle [Pa].
func rangeOf(r check.Result, of string) float64 {
	for _, q := range r.Inputs {
		if q.Symbol == "Δσ" && q.Name == of+": stress range" {
			return q.Value
		}
	}
	return 0
}

// A seam in the middle of the tank takes the moment there, not those at the ends, which are
// nothing. By hand, R 152.35 mm, t 4.7 mm: 30 bar make 3 × 152.35/(2 × 4.7) = 48.62 MPa,
// 10 kN m make 10⁷/(π 152.35² 4.7) = 29.18 MPa, and a hi-lo of 0.5 mm adds 3 × 0.5/4.7 = 0.3191
// of it: (48.62 + 29.18) × 1.3191 = 102.63 MPa. The stations of the shell stand up to 13 mm from
// the seam, where the free body sees 22.2 kN × 13 mm more: up to 2 %.
func TestLifeTakesTheMomentWhereTheSeamIs(t *testing.T) {
	loads := "loads = ["
	for _, q := range [][2]string{{"0", "0"}, {"20", "0.444"}, {"450", "10"}, {"880", "0.444"}, {"900", "0"}} {
		loads += "{ station = \"" + q[0] + " mm\", axial_force = \"0 N\", bending_moment = \"" + q[1] + " kN m\", shear_force = \"22.222 kN\" }, "
	}
	loads += "]\n"
	bent := func(at string) check.Result {
		return find(t, sheet(t, burnedOut(t, "ullage_pressure = \"30 bar\"\naxial_load_factor = 1.0\nfill = 0.0\ncycles = 120000\npresent = true\n"+loads,
			outlet, "", "meop = \"12 bar\"", "meop = \"30 bar\"", "relief = \"10.5 bar\"", "relief = \"27 bar\"",
			"long_seam = \"long\"", "girth_seam = \"girth\"\ngirth_stations = [\""+at+"\"]\nlong_seam = \"long\"")), "tank/life")
	}
	r := bent("450 mm")
	if got := rangeOf(r, "burnout") / 1e6; !strings.Contains(r.Demand.Name, "girth seam") || !(got > 102.63 && got < 102.63*1.02) {
		t.Errorf("%s: range %g MPa, by hand 102.63", r.Demand.Name, got)
	}
	// 2·10⁶ (63/102.63)³ = 462 600 cycles, a quarter of which 120 000 are more than.
	if r.Status() != check.NotSatisfied {
		t.Errorf("%v with a usage of %g", r.Status(), r.Demand.Value)
	}
	if end := bent("10 mm"); strings.Contains(end.Demand.Name, "girth seam") {
		t.Errorf("a seam beside the end takes the moment of the middle: %g Pa", rangeOf(end, "burnout"))
	}
}
