package heads

import (
	"math"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check/checktest"
)

// Hand calculation of the head rules from the formula as read or recalled: each row was
// worked apart from this package, in mm, N and MPa, step by step with the numbers that stand beside it.
// How each formula came to hand: UG-34, and e_s, e_y and β of the European dished head, read;
// the toricone and the other European formulas recalled.

// A handRow is one requirement of one head: the wall at a pressure and the
// pressure at a wall, by hand.
type handRow struct {
	shape string
	g     Geometry // lengths [mm]
	rule  material.Rule
	S     float64 // allowable stress [MPa]
	E, Eg float64 // joint efficiencies [-]
	o     RuleOptions
	what  string  // requirement
	p     float64 // [MPa]
	need  string  // wall at p [mm], "" not asked
	t     float64 // [mm]
	bear  string  // pressure at t [MPa]
}

// metres returns the geometry, given in [mm], in [m].
func (g Geometry) metres() Geometry {
	for _, v := range []*float64{&g.InsideDiameter, &g.Depth, &g.CrownRadius, &g.KnuckleRadius, &g.TipDiameter, &g.Thickness} {
		*v /= 1000
	}
	return g
}

func (r handRow) head(t *testing.T) Head {
	t.Helper()
	s, _ := FindShape(r.shape)
	h, err := s.New(r.g.metres())
	if err != nil {
		t.Fatal(r.shape, err)
	}
	return h
}

// term returns the requirement of that name.
func (r handRow) term(t *testing.T) term {
	t.Helper()
	ts, err := terms(r.head(t), r.rule, r.S*1e6, r.E, r.Eg, r.o)
	for _, m := range ts {
		if m.what == r.what {
			return m
		}
	}
	t.Fatalf("%s has no requirement %q: %v", r.shape, r.what, err)
	return term{}
}

// check compares the requirement with both numbers, whatever else the head asks.
func (r handRow) check(t *testing.T) {
	t.Helper()
	m := r.term(t)
	if r.need != "" {
		checktest.Printed(t, r.shape+", "+r.what+", wall in mm", m.need(r.p*1e6)*1000, r.need)
	}
	checktest.Printed(t, r.shape+", "+r.what+", pressure in MPa", m.bear(r.t/1000)/1e6, r.bear)
}

// ASME VIII-1 UG-34 (read), t = d sqrt(C p/(S E)), p = S E t²/(C d²):
//
//	d 500, C 0.33, p 1.2, S E = 120·0.85 = 102: C p/(S E) 0.0038824, root 0.062309, t 31.154;
//	t 25: 102·625/(0.33·250000) = 0.77273
//	d 600 + 2·2 = 604, C 0.20, p 2.5, S E 138: 0.0036232, root 0.060193, t 36.356 (36.3565);
//	t 30: 138·900/(0.20·364816) = 1.7022
func TestFlatByHand(t *testing.T) {
	worn := RuleOptions{CornerFactor: 0.20, Wall: Wall{Corrosion: 0.002}}
	for _, row := range []handRow{
		{"flat", Geometry{InsideDiameter: 500, Thickness: 40}, material.Vessel, 120, 0.85, 1, RuleOptions{CornerFactor: 0.33}, "flat head", 1.2, "31.154", 25, "0.77273"},
		{"flat", Geometry{InsideDiameter: 600, Thickness: 45}, material.Vessel, 138, 1, 0.7, worn, "flat head", 2.5, "36.3565", 30, "1.7022"},
	} {
		row.governs(t)
	}
	plate := handRow{shape: "flat", g: Geometry{InsideDiameter: 500, Thickness: 40}, rule: material.Vessel, S: 120, E: 0.85, Eg: 1, o: RuleOptions{CornerFactor: 0.33}, what: "flat head"}
	checktest.Printed(t, "pressure at the wall by hand", plate.term(t).bear(31.154e-3)/1e6, "1.2000")
}

// ASME VIII-1 UG-32 toricone (recalled), D1 = D − 2 r (1 − cos α), L = D1/(2 cos α), M = [3 + sqrt(L/r)]/4:
//
//	D 1000, α 40, r 120, p 1, S 120, E 0.85, E_g 0.70: cos 0.76604, D1 943.85, L 616.05, L/r 5.1338, M 1.3164;
//	cone 1·943.85/[2·0.76604 (102 − 0.6)] = 6.0755, girth 943.85/[4·0.76604 (84 + 0.2)] = 3.6583,
//	knuckle 616.05·1.3164/(204 − 0.2) = 3.9794
//	D 1200, α 60, r 100, p 0.6, S 100, E 1, E_g 0.85: cos 0.5, D1 1100, L 1100, L/r 11, M 1.5792;
//	cone 660/[1·(100 − 0.36)] = 6.6238, girth 660/[2 (85 + 0.12)] = 3.8769, knuckle 1042.2/(200 − 0.12) = 5.2143
//
// and turned round at 10 and 12 mm. The cone governs both.
func TestToriconeVesselByHand(t *testing.T) {
	a := Geometry{InsideDiameter: 1000, HalfAngle: 40 * math.Pi / 180, KnuckleRadius: 120, Thickness: 10}
	b := Geometry{InsideDiameter: 1200, HalfAngle: 60 * math.Pi / 180, KnuckleRadius: 100, Thickness: 12}
	checktest.Printed(t, "D1", rule{g: a}.large(), "943.85")
	checktest.Printed(t, "D1", rule{g: b}.large(), "1100.0")
	const long, girth, knuckle = "cone, across its long seam", "cone, across its girth seam", "knuckle of the toricone"
	for _, row := range []handRow{
		{"toricone", a, material.Vessel, 120, 0.85, 0.70, RuleOptions{}, long, 1, "6.0755", 10, "1.6397"},
		{"toricone", a, material.Vessel, 120, 0.85, 0.70, RuleOptions{}, girth, 1, "3.6583", 10, "2.7449"},
		{"toricone", a, material.Vessel, 120, 0.85, 0.70, RuleOptions{}, knuckle, 1, "3.9794", 10, "2.5092"},
		{"toricone", b, material.Vessel, 100, 1, 0.85, RuleOptions{}, long, 0.6, "6.6238", 12, "1.0838"},
		{"toricone", b, material.Vessel, 100, 1, 0.85, RuleOptions{}, girth, 0.6, "3.8769", 12, "1.8627"},
		{"toricone", b, material.Vessel, 100, 1, 0.85, RuleOptions{}, knuckle, 0.6, "5.2143", 12, "1.3797"},
	} {
		row.check(t)
		if row.what == long {
			row.governs(t)
		}
	}
}

// governs asks the exported functions for the same two numbers.
func (r handRow) governs(t *testing.T) {
	t.Helper()
	need, what, _, err := RequiredThickness(r.head(t), r.rule, r.p*1e6, r.S*1e6, r.E, r.Eg, r.o)
	if err != nil || what != r.what {
		t.Errorf("%s: %q governs, want %q: %v", r.shape, what, r.what, err)
	}
	checktest.Printed(t, r.shape+", "+r.what+", required in mm", need*1000, r.need)
	r.o.Wall.Thickness = r.t / 1000
	p, what, _, err := AllowablePressure(r.head(t), r.rule, r.S*1e6, r.E, r.Eg, r.o)
	if err != nil || what != r.what {
		t.Errorf("%s: %q governs the pressure, want %q: %v", r.shape, what, r.what, err)
	}
	checktest.Printed(t, r.shape+", "+r.what+", permitted in MPa", p/1e6, r.bear)
}
