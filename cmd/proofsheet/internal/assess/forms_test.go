package assess_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const ellipsoids = "shape = \"ellipsoid\"\naspect = 2\nthickness = \"1.5 mm\"\nforming_thinning = 0\n"

// A step down is judged before it, settled and beyond (computed): from 6 to 3 with factor 2
// the swing reaches 0, and before it 40 kg in the cylinder of inside radius 199.25 mm press with
// 6 × 9.80665 × 40 / (π 0.19925²) = 18 871 Pa on its foot, over 2 bar.
func TestStepIsJudgedBeforeIt(t *testing.T) {
	p := soft
	p.cases = caseOf("cutoff", "liquid_mass = \"40 kg\"\naxial_load_factor = 3\naxial_load_factor_before = 6\ndynamic_factor = 2")
	hoop := byID(sheet(t, parse(t, "plain.toml", p.text())), "cutoff")["cylinder/hoop"]
	checktest.Close(t, "pressure", input(t, hoop, "p"), 200e3+6*9.80665*40/(math.Pi*0.19925*0.19925), 1e-9)
	checktest.Close(t, "by hand", input(t, hoop, "p"), 218871, 1e-5)
	if !strings.Contains(hoop.Note, "before the step, load factor 6") {
		t.Error(hoop.Note)
	}
}

// A tank that is the same fore and aft, landing on either end (computed): whether its aft
// or its forward seam is held, as much of it presses, and turned round it is the same tank.
func TestLandingEitherWay(t *testing.T) {
	p := soft
	demand := func(kind, at string) float64 {
		p.cases = fmt.Sprintf("[[case]]\nname = \"it\"\nkind = %q\n", kind)
		p.support = fmt.Sprintf("[support]\nat = %q\n", at)
		r := byID(sheet(t, parse(t, "plain.toml", p.text())), "it")["cylinder/column"]
		if r.Status() == check.NotApplicable {
			t.Errorf("%s on %s: %s", kind, at, r.Reason())
		}
		return r.Demand.Value
	}
	for _, kind := range []string{"landing", "transport", "lift"} {
		checktest.Close(t, kind, demand(kind, "forward"), demand(kind, "aft"), 1e-9)
	}
}

// A least ullage pressure below the pressure outside is suction on all parts, as a case with
// that ullage pressure is (computed); the liquid's head, 1.2 m of it, relieves a head from
// none of the 20 kPa.
func TestLeastUllageBelowOutside(t *testing.T) {
	p := soft
	p.heads = ellipsoids
	const liquid = "axial_load_factor = 1\nfill = 0.99\n"
	p.cases = caseOf("least", liquid+"least_ullage_pressure = \"-0.2 bar\"") +
		strings.Replace(caseOf("direct", liquid), "\"2 bar\"", "\"-0.2 bar\"", 1)
	s := sheet(t, parse(t, "plain.toml", p.text()))
	least, direct := byID(s, "least"), byID(s, "direct")
	for _, id := range []string{"head.aft/convex", "head.forward/convex", "head.aft/external", "cylinder/external"} {
		if least[id].Status() == check.NotApplicable {
			t.Errorf("%s: %s", id, least[id].Reason())
		}
		checktest.Close(t, id, least[id].Demand.Value, direct[id].Demand.Value, 1e-12)
	}
	checktest.Close(t, "pressure on the convex side", input(t, least["head.aft/convex"], "p"), 20e3, 1e-12)
	if a, b := least["cylinder/equivalent"].Margin(), direct["cylinder/equivalent"].Margin(); a > b {
		t.Errorf("equivalent stress: margin %g, of the suction alone %g", a, b)
	}
}

// Saturated oxygen between 80 and 96 K: its pressure at 80 K, 0.0301 MPa absolute (tables,
// recalled), may stand with the same loads, 71.2 kPa under the one atmosphere outside.
func TestVapourAtItsColdest(t *testing.T) {
	in := read(t, "oxygen")
	in.Contents.Coldest, in.Contents.Warmest = 80, 96
	in.Case = in.Case[:1]
	in.Case[0].UllagePressure, in.Case[0].Vapour = nil, true
	r := byID(sheet(t, in), in.Case[0].Name)["cylinder/external"]
	checktest.Close(t, "pressure from outside", r.Demand.Value, 71.2e3, 2e-3)
}
