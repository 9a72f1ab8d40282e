package heads_test

import (
	"errors"
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const psi = 6894.757

// Megyesy, Pressure Vessel Handbook, example set: p 100 psi, D 96 in, S 17500
// psi; the results recalled. The handbook rounds, so the tolerance is one unit
// of the last digit it prints.
func TestThicknessMegyesy(t *testing.T) {
	for _, row := range []struct {
		where, shape string
		g            heads.Geometry
		E            float64
		want         float64 // in
	}{
		{"hemisphere, E 0.85", "hemisphere", heads.Geometry{InsideDiameter: 96}, 0.85, 0.1615},
		{"ellipsoid 2:1, E 1", "ellipsoid", heads.Geometry{InsideDiameter: 96, Aspect: 2}, 1, 0.2745},
		{"torisphere 6 %, E 1", "torisphere", heads.Geometry{InsideDiameter: 96, CrownRadius: 96, KnuckleRadius: 5.76}, 1, 0.486},
	} {
		row.g.Thickness = 0.25
		if row.shape == "torisphere" {
			row.g.Thickness = 0.4 // the handbook takes 6 % of the inside; a thicker nominal wall would leave the 1 % grace
		}
		g := row.g
		for _, v := range []*float64{&g.InsideDiameter, &g.CrownRadius, &g.KnuckleRadius, &g.Thickness} {
			*v *= inch
		}
		got, _, _, err := heads.RequiredThickness(head(t, row.shape, g), material.Vessel, 100*psi, 17500*psi, row.E, 1, heads.RuleOptions{})
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		checktest.Close(t, row.where, got/inch, row.want, 0.0012)
	}
}

// Shape factors of ASME VIII-1 Appendix 1-4, tables of K and M (recalled): at a
// pressure far below S, t is p D K/(2 S) and p L M/(2 S).
func TestFactorTables(t *testing.T) {
	const S, p = 1e8, 1.0
	for _, row := range []struct {
		aspect float64
		K      string
	}{{1, "0.50"}, {1.2, "0.57"}, {1.4, "0.66"}, {1.6, "0.76"}, {1.8, "0.87"}, {2, "1.00"}, {2.2, "1.14"}, {2.4, "1.29"}, {2.6, "1.46"}, {2.8, "1.64"}, {3, "1.83"}} {
		h := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: row.aspect})
		got, _, _, err := heads.RequiredThickness(h, material.Flight, p, S, 1, 1, heads.RuleOptions{})
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "K", got*2*S/p, row.K)
	}
	for _, row := range []struct {
		ratio float64
		M     string
	}{{4, "1.25"}, {9, "1.50"}, {16, "1.75"}, {50.0 / 3, "1.77"}} {
		h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 1 / row.ratio, Thickness: 0.001})
		got, _, _, err := heads.RequiredThickness(h, material.Flight, p, S, 1, 1, heads.RuleOptions{})
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "M", got*2*S/p, row.M)
	}
}

// A nearly round head on a poor seam: D/2h 1.2, E_g 0.70 asks for 0.714 of
// p D/(2 S), not for the 0.573 of its own factor: computed. The floor is the vessel rule's.
func TestSeamlessFloor(t *testing.T) {
	const S, p = 1e8, 1.0
	h := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 1.2})
	got, governs, src, err := heads.RequiredThickness(h, material.Vessel, p, S, 1, 0.7, heads.RuleOptions{})
	if err != nil || src.How != check.Memory {
		t.Fatal(governs, src, err)
	}
	checktest.Printed(t, "floor", got*2*S/p, "0.714")
	got, _, _, _ = heads.RequiredThickness(h, material.Flight, p, S, 1, 0.7, heads.RuleOptions{})
	checktest.Printed(t, "no floor", got*2*S/p, "0.573")
}

// The European factor β: computed from the formulas that were read in a published
// clause calculation.
func TestBeta(t *testing.T) {
	for _, row := range []struct {
		x, eR float64
		want  string
	}{{0.06, 0.01, "1.0679"}, {0.1, 0.01, "0.8044"}, {0.1, 0.005, "0.9499"}, {0.1, 0.002, "1.1010"}, {0.154, 0.005, "0.7182"}, {0.2, 0.01, "0.5057"}} {
		got, err := heads.Beta(row.eR, row.x)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "β", got, row.want)
	}
	held, _ := heads.Beta(0.3, 0.1)
	edge, _ := heads.Beta(0.04, 0.1)
	if held != edge {
		t.Errorf("β above e/R 0.04 is %g, want %g", held, edge)
	}
	for _, out := range [][2]float64{{0.01, 0.0599}, {0.01, 0.2001}, {0, 0.1}, {math.NaN(), 0.1}, {0.01, math.NaN()}} {
		if b, err := heads.Beta(out[0], out[1]); err == nil || !math.IsNaN(b) {
			t.Errorf("Beta(%g, %g) = %g, %v", out[0], out[1], b, err)
		}
	}
}

// A cone closed to no angle is the cylinder of UG-27(c): (1) along and (2) round, read.
func TestConeLimitIsCylinder(t *testing.T) {
	const S, p, R = 100e6, 4e6, 0.5
	h := head(t, "cone", heads.Geometry{InsideDiameter: 2 * R, HalfAngle: 1e-7, TipDiameter: 0.5})
	got, _, _, err := heads.RequiredThickness(h, material.Vessel, p, S, 0.85, 0.85, heads.RuleOptions{})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "hoop", got, p*R/(S*0.85-0.6*p), 1e-10)
	got, governs, _, err := heads.RequiredThickness(h, material.Vessel, p, S, 1, 0.3, heads.RuleOptions{})
	if err != nil || governs != "cone, across its girth seam" {
		t.Fatal(governs, err)
	}
	checktest.Close(t, "girth", got, p*R/(2*S*0.3+0.4*p), 1e-10)
}

// Round heads meet: the ellipsoid 1:1, K = 1/2, and the torisphere of L = D/2, r = D/2, M = 1,
// ask what the hemisphere asks, in both families where they hold.
func TestThicknessLimits(t *testing.T) {
	const S, p = 100e6, 3e6
	sphere, _, _, err := heads.RequiredThickness(head(t, "hemisphere", heads.Geometry{InsideDiameter: 1}), material.Flight, p, S, 0.9, 0.9, heads.RuleOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range []heads.Head{
		head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 1}),
		head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 0.5 + 1e-9, KnuckleRadius: 0.5}),
	} {
		got, _, _, err := heads.RequiredThickness(h, material.Flight, p, S, 0.9, 0.9, heads.RuleOptions{})
		if err != nil {
			t.Fatal(err)
		}
		want := sphere
		if h.Kind() == "ellipsoid" { // p D/2/(2 S E − 0.2 p): D K = R
			checktest.Close(t, "ellipsoid", got, want, 1e-12)
		} else {
			checktest.Close(t, "torisphere", got, want, 1e-6)
		}
	}
}

// rules are heads with options inside the ranges of both families.
func rules(t testing.TB) map[string]heads.Head {
	m := every(t)
	m["flat"] = head(t, "flat", heads.Geometry{InsideDiameter: 1})
	return m
}

// The permissible pressure at the required thickness is the pressure again, and
// both scale: force ×3, length ×7.
func TestPressureThicknessRoundTripAndUnits(t *testing.T) {
	const p, S = 2.1e6, 120e6
	for name, h := range rules(t) {
		for _, r := range []material.Rule{material.Vessel, material.VesselEU, material.Flight} {
			if name == "flat" && r == material.VesselEU {
				continue
			}
			o := heads.RuleOptions{Proof: 200e6, CornerFactor: 0.33, LineLoad: 5e4, GirthS: 110e6, Wall: heads.Wall{Corrosion: 0.001}}
			need, _, _, err := heads.RequiredThickness(h, r, p, S, 0.85, 0.8, o)
			if err != nil {
				t.Errorf("%s %s: %v", name, r, err)
				continue
			}
			o.Wall.Thickness = need
			back, governs, src, err := heads.AllowablePressure(h, r, S, 0.85, 0.8, o)
			if err != nil || governs == "" || src.How == check.Unstated {
				t.Errorf("%s %s: %q %v %v", name, r, governs, src, err)
				continue
			}
			checktest.Close(t, name+" "+string(r), back, p, 1e-9)

			g := h.Geometry()
			for _, v := range []*float64{&g.InsideDiameter, &g.Depth, &g.CrownRadius, &g.KnuckleRadius, &g.TipDiameter, &g.Thickness} {
				*v *= 7
			}
			stress, line := 3.0/49, 3.0/7
			scaled := heads.RuleOptions{Proof: 200e6 * stress, CornerFactor: 0.33, LineLoad: 5e4 * line, GirthS: 110e6 * stress, Wall: heads.Wall{Corrosion: 0.007}}
			big, _, _, err := heads.RequiredThickness(head(t, h.Kind(), g), r, p*stress, S*stress, 0.85, 0.8, scaled)
			if err != nil {
				t.Errorf("%s %s scaled: %v", name, r, err)
				continue
			}
			checktest.Close(t, name+" scaled", big, 7*need, 1e-9)
		}
	}
}

// Corrosion enters the radii: the same as a head whose inside is larger by it.
func TestCorrosionEntersRadii(t *testing.T) {
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1, Thickness: 0.012})
	big := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1.004, Thickness: 0.01})
	a, _, _, _ := heads.RequiredThickness(h, material.Vessel, 2e6, 1e8, 1, 1, heads.RuleOptions{Wall: heads.Wall{Corrosion: 0.002}})
	b, _, _, _ := heads.RequiredThickness(big, material.Vessel, 2e6, 1e8, 1, 1, heads.RuleOptions{})
	checktest.Close(t, "hemisphere", a, b, 1e-12)
}

// Dished heads of strong metal: S is held to 138 MPa by the vessel rule, not by flight.
func TestStrengthCap(t *testing.T) {
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1})
	at := func(r material.Rule, S float64) float64 {
		v, _, _, err := heads.RequiredThickness(h, r, 2e6, S, 1, 1, heads.RuleOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if at(material.Vessel, 200e6) != at(material.Vessel, 138e6) {
		t.Error("the vessel rule took S above 138 MPa")
	}
	if !(at(material.Flight, 200e6) < at(material.Flight, 138e6)) {
		t.Error("flight was capped")
	}
}

func TestRuleRanges(t *testing.T) {
	ok := heads.RuleOptions{Proof: 200e6, CornerFactor: 0.33}
	for _, row := range []struct {
		where, shape string
		g            heads.Geometry
		rule         material.Rule
		p, S, E      float64
		o            heads.RuleOptions
	}{
		{"no such rule", "hemisphere", heads.Geometry{}, "house", 1e6, 1e8, 1, ok},
		{"pressure NaN", "hemisphere", heads.Geometry{}, material.Vessel, math.NaN(), 1e8, 1, ok},
		{"pressure from outside", "hemisphere", heads.Geometry{}, material.Vessel, -1, 1e8, 1, ok},
		{"S NaN", "hemisphere", heads.Geometry{}, material.Vessel, 1e6, math.NaN(), 1, ok},
		{"E above one", "hemisphere", heads.Geometry{}, material.Vessel, 1e6, 1e8, 1.01, ok},
		{"E NaN", "hemisphere", heads.Geometry{}, material.Vessel, 1e6, 1e8, math.NaN(), ok},
		{"inward", "hemisphere", heads.Geometry{Inward: true}, material.Vessel, 1e6, 1e8, 1, ok},
		{"thick sphere", "hemisphere", heads.Geometry{}, material.Vessel, 0.67e8, 1e8, 1, ok},
		{"thick European sphere", "hemisphere", heads.Geometry{}, material.VesselEU, 1.5e8, 1e8, 1, ok},
		{"aspect over 3", "ellipsoid", heads.Geometry{Aspect: 3.01}, material.Vessel, 1e6, 1e8, 1, ok},
		{"European aspect over 2.2", "ellipsoid", heads.Geometry{Aspect: 2.21}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"European aspect under 1.7", "ellipsoid", heads.Geometry{Aspect: 1.69}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"European proof strength missing", "ellipsoid", heads.Geometry{Aspect: 2}, material.VesselEU, 1e6, 1e8, 1, heads.RuleOptions{}},
		{"crown over the outside", "torisphere", heads.Geometry{CrownRadius: 1.05, KnuckleRadius: 0.1}, material.Vessel, 1e6, 1e8, 1, ok},
		{"knuckle under 6 %", "torisphere", heads.Geometry{CrownRadius: 0.9, KnuckleRadius: 0.058}, material.Vessel, 1e6, 1e8, 1, ok},
		{"knuckle under three walls", "torisphere", heads.Geometry{CrownRadius: 1, KnuckleRadius: 0.07}, material.Vessel, 5e6, 1e8, 1, ok},
		{"European knuckle over 20 %", "torisphere", heads.Geometry{CrownRadius: 0.9, KnuckleRadius: 0.21}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"European wall under 0.001", "torisphere", heads.Geometry{CrownRadius: 0.9, KnuckleRadius: 0.1}, material.VesselEU, 1e4, 1e8, 1, ok},
		{"cone over 60 deg", "cone", heads.Geometry{HalfAngle: 61 * deg}, material.Vessel, 1e6, 1e8, 1, ok},
		{"thick cone", "cone", heads.Geometry{HalfAngle: 30 * deg}, material.Vessel, 0.39e8, 1e8, 1, ok},
		{"European cone over 75 deg", "cone", heads.Geometry{HalfAngle: 76 * deg}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"toricone knuckle under 6 %", "toricone", heads.Geometry{HalfAngle: 30 * deg, KnuckleRadius: 0.05}, material.Vessel, 1e6, 1e8, 1, ok},
		{"European toricone knuckle over 0.3", "toricone", heads.Geometry{HalfAngle: 30 * deg, KnuckleRadius: 0.31}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"flat without corner factor", "flat", heads.Geometry{}, material.Vessel, 1e6, 1e8, 1, heads.RuleOptions{}},
		{"flat corner factor under 0.20", "flat", heads.Geometry{}, material.Vessel, 1e6, 1e8, 1, heads.RuleOptions{CornerFactor: 0.19}},
		{"flat European", "flat", heads.Geometry{}, material.VesselEU, 1e6, 1e8, 1, ok},
		{"corrosion through the wall", "hemisphere", heads.Geometry{}, material.Vessel, 1e6, 1e8, 1, heads.RuleOptions{Wall: heads.Wall{Corrosion: 0.02}}},
	} {
		row.g.InsideDiameter = 1
		h := head(t, row.shape, row.g)
		got, _, _, err := heads.RequiredThickness(h, row.rule, row.p, row.S, row.E, 1, row.o)
		if err == nil || !math.IsNaN(got) {
			t.Errorf("%s: %g, %v; want an error", row.where, got, err)
		}
	}
	// One step inside each proportion of a dished head holds.
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.0613})
	if _, _, _, err := heads.RequiredThickness(h, material.Vessel, 1e6, 1e8, 1, 1, ok); err != nil {
		t.Error(err)
	}
	// A range error can be told from other errors.
	var re *check.RangeError
	_, _, _, err := heads.RequiredThickness(h, material.Vessel, -1, 1e8, 1, 1, ok)
	if !errors.As(err, &re) {
		t.Errorf("%v is no RangeError", err)
	}
	for _, wall := range []float64{0, math.NaN(), -1} {
		if _, _, _, err := heads.AllowablePressure(h, material.Vessel, 1e8, 1, 1, heads.RuleOptions{Wall: heads.Wall{Thickness: wall}}); err == nil {
			t.Errorf("a permissible pressure at a wall of %g", wall)
		}
	}
	if _, _, _, err := heads.AllowablePressure(head(t, "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: 0.5}), material.Vessel, 1e8, 1, 1,
		heads.RuleOptions{LineLoad: 1e9, Wall: heads.Wall{Thickness: 0.01}}); err == nil {
		t.Error("a permissible pressure where the line load alone is too much")
	}
}
