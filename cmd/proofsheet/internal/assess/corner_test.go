package assess_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// coneTank is a cylinder of mid-wall radius 100 mm, wall 2 mm, between cones of 30
// degrees and the same wall with the given keys, S = 128.57 MPa, under 10 bar of gas.
func coneTank(t *testing.T, keys string, pairs ...string) *report.Sheet {
	t.Helper()
	src := shellTank(2, 2, "shape = \"cone\"\nhalf_angle = \"30 deg\"\nforming = \"rolled\"\nsegment_seam = \"j\"\n"+keys)
	pairs = append([]string{"yield = \"5 GPa\"\nultimate = \"20 GPa\"", "yield = \"250 MPa\"\nultimate = \"450 MPa\""}, pairs...)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(src, pairs[i]) {
			t.Fatalf("%q is not in the tank", pairs[i])
		}
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return sheet(t, parse(t, "cone.toml", src))
}

const plateTip = "tip = { diameter = \"60 mm\", close = \"plate\", thickness = \"8 mm\", under_tolerance = \"0 mm\" }\n"

// The area that the vessel rule asks for at a corner, by hand: p/(Ss E1) = 1/128.571,
// Δ = 27 + 1.5 · 0.7778 = 28.167 deg, Q = 49.5 N/mm,
// A_r = 49.5 · 99/128.571 · (1 − 28.167/30) tan 30° = 1.3447 mm² (form read in Farr and Jawad).
// A ring counts with its section up to 2 sqrt(R t) = 28.14 mm, a strip with what stands beyond the wall.
func TestCornerByTheVesselRule(t *testing.T) {
	for _, row := range []struct {
		keys  string
		added float64 // [mm2]
	}{
		{"", 0},
		{"ring = { width = \"20 mm\", thickness = \"5 mm\" }\n", 100},
		{"ring = { width = \"40 mm\", thickness = \"5 mm\" }\n", 5 * 2 * math.Sqrt(99*2)},
		{"seam_thickness = \"5 mm\"\nseam_width = \"20 mm\"\n", 60},
	} {
		r := find(t, coneTank(t, plateTip+row.keys), "head.aft/corner@meop")
		checktest.Close(t, row.keys+"required", r.Demand.Value*1e6, 1.3447, 1e-3)
		if got := input(t, r, "A_added") * 1e6; math.Abs(got-row.added) > 1e-6 {
			t.Errorf("%q: %g mm2 added, want %g", row.keys, got, row.added)
		}
	}
	s := coneTank(t, plateTip)
	if r := find(t, s, "head.aft/tip-corner@meop"); r.Status() != check.NotApplicable {
		t.Errorf("corner at a plate: %v", r.Status())
	}
	if r := find(t, coneTank(t, plateTip, "half_angle = \"30 deg\"", "half_angle = \"31 deg\""), "head.aft/corner@meop"); r.Status() != check.NotApplicable {
		t.Errorf("beyond 30 degrees: %v", r.Status())
	}
}

// At Dc/e = 100 and 30 degrees b is 0.778 (computed for the page): f = p Dc b/(2 e) = 38.9 MPa asks for
// e_j of 2 mm, as the wall is.
func TestCornerByTheEuropeanRule(t *testing.T) {
	r := find(t, coneTank(t, plateTip, "[pressure]", "[basis]\nrule = \"vessel-eu\"\n[pressure]", "poisson = 0.3", "poisson = 0.3\nallowable = \"38.9 MPa\""), "head.aft/corner@meop")
	checktest.Close(t, "e_j", r.Demand.Value*1e3, 2, 1e-3)
	checktest.Close(t, "e_a", r.Capacity.Value*1e3, 2, 1e-9)
}

// The small end of a cone of 30 degrees at R/t 25: hoop 2.021, meridional 2.048 p R/t
// (computed by another thin-shell finite element), the neck the head's wall. The neck's own thickness by
// hand, 0.85 for a seam of which nothing is said: p R/(S E − 0.6 p) with R = 49 mm.
func TestConeToNeck(t *testing.T) {
	neck := fmt.Sprintf("tip = { diameter = \"%.6f mm\", close = \"neck\" }\n", 2*(50-1/math.Cos(math.Pi/6)))
	s := coneTank(t, neck)
	r := find(t, s, "head.aft/tip-junction@meop")
	checktest.Close(t, "local membrane over p R/t", r.Demand.Value/25e6, 2.021, 0.01)
	var mer float64
	for _, q := range r.Inputs {
		if q.Symbol == "σ_mb,n" {
			mer = math.Max(mer, q.Value)
		}
	}
	if !(mer/25e6 > 2.04) {
		t.Errorf("membrane and bending %g p R/t", mer/25e6)
	}
	w := find(t, s, "head.aft/tip@meop")
	checktest.Close(t, "thickness of the neck", w.Demand.Value*1e3, 49/(450/3.5*0.85-0.6), 1e-3)
	if c := find(t, s, "head.aft/tip-corner@meop"); c.Status() != check.NotApplicable && !(input(t, c, "E1") == 0.85) {
		t.Errorf("corner: %v", c.Status())
	}
}

// A plate at a tip by UG-34 with C = 0.33: d sqrt(C p/S) = 60 sqrt(0.33/128.571) = 3.0397 mm.
func TestTipPlate(t *testing.T) {
	r := find(t, coneTank(t, plateTip), "head.aft/tip@meop")
	checktest.Close(t, "thickness", r.Demand.Value*1e3, 3.0397, 1e-4)
	thin := coneTank(t, strings.Replace(plateTip, "8 mm", "3 mm", 1))
	if r := find(t, thin, "head.aft/tip@meop"); r.Status() != check.NotSatisfied {
		t.Errorf("a plate of 3 mm: %v", r.Status())
	}
	if thin.Proof != nil {
		t.Error("a plan is issued though the tip's plate does not hold")
	}
}

// The weld of a segment reaches the tip, where the hoop stress is largest: without
// examination the tip junction is held to 0.70 across it.
func TestTipTakesTheSegmentSeam(t *testing.T) {
	neck := fmt.Sprintf("tip = { diameter = \"%.6f mm\", close = \"neck\" }\n", 2*(50-1/math.Cos(math.Pi/6)))
	full := find(t, coneTank(t, neck), "head.aft/tip-junction@meop")
	none := find(t, coneTank(t, neck, "[cylinder]\n", "[joint.k]\nkind = \"double butt\"\nexamination = \"none\"\n[cylinder]\n", "segment_seam = \"j\"", "segment_seam = \"k\""), "head.aft/tip-junction@meop")
	checktest.Close(t, "capacity", none.Capacity.Value/full.Capacity.Value, 0.70/0.85, 0.001)
}

// A ring of a stiffened corner is held as a place of the joint: its hoop stress is
// E times the joint's movement over its radius, and less with more ring.
func TestRingOfACorner(t *testing.T) {
	with := func(w string) (*report.Sheet, check.Result) {
		s := coneTank(t, plateTip+"ring = { width = \""+w+"\", thickness = \"5 mm\" }\n")
		return s, find(t, s, "head.aft/ring@meop")
	}
	s, narrow := with("10 mm")
	_, wide := with("20 mm")
	at := input(t, narrow, "σ_φm")
	checktest.Close(t, "E w/R", at, 200e9*quantity(t, s, "head.aft.junction_displacement@meop")/0.1, 1e-3)
	if wider := input(t, wide, "σ_φm"); !(at < 0 && math.Abs(wider) < math.Abs(at)) {
		t.Errorf("%g Pa in a ring of 10 mm, %g in one of 20", at, wider)
	}
}

// A ring stands for a bar that moves with the joint: R 100 mm and t 2 mm, up to
// 2 √(R t) = 28.3 mm wide, half of it where the ring is thinner than the wall. A sheet
// wrapped 60 mm along the tank does not stiffen its joint as a bar does.
func TestRingIsNarrow(t *testing.T) {
	for ring, want := range map[string]check.Status{
		`{ width = "28 mm", thickness = "5 mm" }`: check.Satisfied, `{ width = "29 mm", thickness = "5 mm" }`: check.NotAssessed,
		`{ width = "14 mm", thickness = "1 mm" }`: check.Satisfied, `{ width = "15 mm", thickness = "1 mm" }`: check.NotAssessed,
		`{ width = "60 mm", thickness = "1 mm" }`: check.NotAssessed,
	} {
		s := coneTank(t, plateTip+"ring = "+ring+"\n")
		for _, id := range []string{"head.aft/junction@meop", "head.aft/ring@meop", "head.aft/junction@proof"} {
			r := find(t, s, id)
			if refused := r.Status() == check.NotAssessed && strings.Contains(r.Reason(), "as one bar"); refused != (want == check.NotAssessed) {
				t.Errorf("%s, %s: %v, %s", ring, id, r.Status(), r.Reason())
			}
		}
	}
}

// Pressure on the convex side, strength by the concave formula at 1.67 p and E = 1:
// p R/(2 S − 0.2 p) on the convex face of a hemisphere.
func TestInwardHead(t *testing.T) {
	src := shellTank(2, 3, "shape = \"hemisphere\"\nforming = \"pressed\"\nforming_thinning = 0.0\nsegment_seam = \"none\"\nbulge = \"inward\"")
	src = strings.Replace(src, "yield = \"5 GPa\"\nultimate = \"20 GPa\"", "yield = \"250 MPa\"\nultimate = \"450 MPa\"", 1)
	src = strings.ReplaceAll(src, "align = \"middle\"", "align = \"inside\"")
	s := sheet(t, parse(t, "inward.toml", src))
	r := find(t, s, "head.aft/convex@meop")
	checktest.Close(t, "thickness", r.Demand.Value*1e3, 1.67*99/(2*450/3.5-0.2*1.67), 1e-3)
	if j := find(t, s, "head.aft/junction@meop"); j.Status() == check.NotAssessed {
		t.Errorf("junction: %s", j.Reason())
	}
}

// An inward head that is lapped to the cylinder hangs in its fillets: by hand, 1 MPa on a
// radius of 99 mm, legs of the thinner wall of 2 mm, S 450/3.5 MPa. A butt weld has no
// such check, and each is cautioned as it is.
func TestLappedInwardHead(t *testing.T) {
	src := shellTank(2, 3, "shape = \"ellipsoid\"\naspect = 2.0\nforming = \"pressed\"\nforming_thinning = 0.0\nsegment_seam = \"none\"\nbulge = \"inward\"")
	src = strings.Replace(src, "yield = \"5 GPa\"\nultimate = \"20 GPa\"", "yield = \"250 MPa\"\nultimate = \"450 MPa\"", 1)
	src = strings.ReplaceAll(src, "align = \"middle\"", "align = \"inside\"")
	butt := sheet(t, parse(t, "inward.toml", src))
	for _, r := range butt.Checks {
		if strings.HasSuffix(r.ID, "/rim-weld") {
			t.Errorf("a butt weld: %s", r.ID)
		}
	}
	lapped := strings.Replace(strings.ReplaceAll(src, "align = \"inside\"\nmaterial = \"m\"\nseam = \"j\"", "align = \"inside\"\nmaterial = \"m\"\nseam = \"lap\""),
		"[cylinder]", "[joint.lap]\nkind = \"single lap\"\n[cylinder]", 1)
	s := sheet(t, parse(t, "lapped.toml", lapped))
	for _, id := range []string{"head.aft/rim-weld@meop", "head.aft/rim-weld@proof"} {
		r := find(t, s, id)
		if r.Status() == check.NotAssessed {
			t.Fatalf("%s: %s", id, r.Reason())
		}
	}
	r := find(t, s, "head.aft/rim-weld@meop")
	checktest.Close(t, "fillets", r.Capacity.Value, 2*math.Pi*0.099*2e-3*0.49*450e6/3.5, 1e-3)
	checktest.Close(t, "thrust", r.Demand.Value, 1.5*r.Inputs[0].Value*math.Pi*0.099*0.099, 1e-6)
	if !strings.Contains(strings.Join(s.Cautions, "\n"), "Its fillets are held in shear") || !strings.Contains(strings.Join(butt.Cautions, "\n"), "Write the kind of lap") {
		t.Error("the cautions do not say what is held")
	}
}
