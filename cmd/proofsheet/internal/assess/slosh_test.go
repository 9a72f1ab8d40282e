package assess_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/loads"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The demonstration tank on the pad has 400 mm of bore: by hand
// (computed), deep liquid swings at √(ξ g0/R)/(2 π), and at 5.5 g0 √5.5 times that;
// a dry tank has no mode.
func TestSloshFrequencyOfTheDemo(t *testing.T) {
	q := map[string]float64{}
	for _, n := range sheet(t, read(t, "demo")).Quantities {
		q[n.Key] = n.Value
	}
	deep := math.Sqrt(1.8412*9.80665/0.2) / (2 * math.Pi)
	checktest.Close(t, "pad", q["slosh.frequency@pad"], deep, 1e-3)
	if f := q["slosh.frequency@burnout"]; !(f < math.Sqrt(5.5)*deep && f > 0.9*math.Sqrt(5.5)*deep) {
		t.Errorf("burnout %g Hz, deep liquid %g Hz", f, math.Sqrt(5.5)*deep)
	}
	for _, n := range sheet(t, read(t, "flight")).Quantities {
		if n.Key == "slosh.frequency@road" && (!math.IsNaN(n.Value) || n.Note == "") {
			t.Errorf("dry tank: %g Hz, %q", n.Value, n.Note)
		}
	}
}

// sloshing returns the demonstration tank with lines put in place of others.
func sloshing(t *testing.T, pairs ...string) *report.Sheet {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(tanks, "demo.toml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("no %q in the tank", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return sheet(t, parse(t, "demo.toml", text))
}

// Slosh of 50 mm at burnout adds ρ a_x η at the level (by hand), its force by the
// closed form of the mode, and the moment of it to the wall at the aft seam; cases
// without the key keep their numbers.
func TestSloshInTheLoads(t *testing.T) {
	still, with := sheet(t, read(t, "demo")), sloshing(t, "axial_load_factor = 5.5", "axial_load_factor = 5.5\nslosh_amplitude = \"50 mm\"")
	row := find(t, with, "tank/slosh@burnout")
	if row.Status() != check.Satisfied {
		t.Fatal(row.Reason())
	}
	ρ := 0.0
	for _, q := range row.Inputs {
		if q.Symbol == "ρ" {
			ρ = q.Value
		}
	}
	a := 5.5 * 9.80665
	checktest.Close(t, "pressure at the level", quantity(t, with, "slosh.wall_pressure@burnout"), ρ*a*0.05, 1e-12)
	h := quantity(t, with, "liquid_mass@burnout") / ρ / (math.Pi * 0.04)
	F, M, err := loads.Slosh{Radius: 0.2, Depth: h, Acceleration: a, Density: ρ}.Force(0.05)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "force", quantity(t, with, "slosh.force@burnout"), F, 1e-9)
	if m := quantity(t, with, "slosh.mass@burnout"); m != quantity(t, still, "slosh.mass@burnout") || !(m > 0 && m < quantity(t, with, "liquid_mass@burnout")) {
		t.Errorf("%g kg swing", m)
	}
	if !(M > 0) || !math.IsNaN(quantity(t, still, "slosh.force@burnout")) {
		t.Errorf("force at rest %g N", quantity(t, still, "slosh.force@burnout"))
	}
	for _, r := range still.Checks {
		if r.ID == "tank/life" || r.ID == "tank/leak-before-burst" || !strings.HasPrefix(r.ID, "cylinder/") {
			continue
		}
		now := find(t, with, report.FullID(r))
		if r.Case != "burnout" && now.Demand.Value != r.Demand.Value {
			t.Errorf("%s: %g, was %g", report.FullID(r), now.Demand.Value, r.Demand.Value)
		}
		if r.Case == "burnout" && now.Demand.Value < r.Demand.Value {
			t.Errorf("%s: slosh lowers the demand from %g to %g", report.FullID(r), r.Demand.Value, now.Demand.Value)
		}
	}
	if a, b := find(t, still, "cylinder/compression@burnout"), find(t, with, "cylinder/compression@burnout"); !(b.Demand.Value > a.Demand.Value) {
		t.Errorf("use in compression %g with slosh, %g at rest", b.Demand.Value, a.Demand.Value)
	}
	named := func(s *report.Sheet) bool {
		return strings.Contains(strings.Join(s.Notes, "\n"), `write slosh_amplitude = "50 mm"`)
	}
	if !named(still) || named(with) {
		t.Errorf("note of slosh: %v at rest, %v with it", named(still), named(with))
	}
}

// Where the first mode ends the case is not assessed, and its loads are those at
// rest; a dry tank does not slosh.
func TestSloshWithoutFormula(t *testing.T) {
	const key = "axial_load_factor = 5.5"
	for name, pairs := range map[string][]string{
		"beyond the linear range":   {key, key + "\nslosh_amplitude = \"51 mm\""},
		"beyond free fall":          {key, key + "\nslosh_amplitude = \"120 mm\""},
		"pressed forward":           {key, "axial_load_factor = -5.5\nslosh_amplitude = \"20 mm\""},
		"level in the head":         {key, key + "\nslosh_amplitude = \"20 mm\"", "fill = 0.25", "fill = 0.05"},
		"wave into the head":        {key, key + "\nslosh_amplitude = \"50 mm\"", "fill = 0.25", "fill = 0.083"},
		"tilt takes it to the head": {key, key + "\nslosh_amplitude = \"50 mm\"", "lateral_load_factor = 0.3", "lateral_load_factor = 8"},
	} {
		s := sloshing(t, pairs...)
		r := find(t, s, "tank/slosh@burnout")
		if r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "slosh is not in the loads") || s.Verdict == check.Satisfied {
			t.Errorf("%s: %v, %s", name, r.Status(), r.Reason())
		}
		if f := quantity(t, s, "slosh.force@burnout"); !math.IsNaN(f) {
			t.Errorf("%s: %g N", name, f)
		}
	}
	dry := sloshing(t, key, key+"\nslosh_amplitude = \"20 mm\"", "fill = 0.25", "fill = 0")
	if r := find(t, dry, "tank/slosh@burnout"); r.Status() != check.NotApplicable {
		t.Errorf("dry: %v", r.Status())
	}
}

// A history sloshes all along, with one height; an instant without formula keeps the
// flight from being assessed, and its time is named.
func TestSloshOfAHistory(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(tanks, "flight.toml"))
	if err != nil {
		t.Fatal(err)
	}
	s := sheet(t, parse(t, "flight.toml", strings.Replace(string(src), `acceleration = "vertical"`, "acceleration = \"vertical\"\nslosh_amplitude = \"20 mm\"", 1)))
	r := find(t, s, "tank/slosh@flight")
	if r.Status() != check.NotAssessed || r.Time == nil {
		t.Errorf("history that runs dry: %v at %v", r.Status(), r.Time)
	}
	still := sheet(t, read(t, "flight"))
	if a, b := find(t, still, "cylinder/compression@flight").Demand.Value, find(t, s, "cylinder/compression@flight").Demand.Value; !(b > a) {
		t.Errorf("use in compression %g with slosh, %g at rest", b, a)
	}
	if f := quantity(t, s, "slosh.force@flight"); !(f > 0) {
		t.Errorf("force %g N", f)
	}
}
