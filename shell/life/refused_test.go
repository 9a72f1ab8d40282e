package life_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/shell/life"
)

// A flaw whose shape no formula holds for, a cylinder that is none, and a law beyond its range give no life.
func TestGrowthRefused(t *testing.T) {
	good := life.Flaw{Depth: 0.5e-3, Shape: 0.4, Thickness: 3e-3, Radius: 0.150}
	paris := life.Paris{C: 1e-11, M: 3}
	for _, row := range []struct {
		name, want string
		f          life.Flaw
		R          float64
	}{
		{"no shape", "crack", life.Flaw{Depth: good.Depth, Thickness: good.Thickness, Radius: good.Radius}, 0},
		{"thick", "radius over wall", life.Flaw{Depth: good.Depth, Shape: 0.4, Thickness: 3e-3, Radius: 0.0149}, 0},
		{"no radius", "radius over wall", life.Flaw{Depth: good.Depth, Shape: 0.4, Thickness: 3e-3, Radius: math.NaN()}, 0},
		{"ratio", "stress ratio", good, 0.71},
	} {
		g, err := row.f.Grow(150*MPa, row.R, paris, 29*MPa, 240*MPa)
		if err == nil || !strings.Contains(err.Error(), row.want) || !math.IsNaN(g.Cycles) {
			t.Errorf("%s: %g cycles, %v", row.name, g.Cycles, err)
		}
	}
	if g, err := good.Grow(150*MPa, 0.7, paris, 29*MPa, 240*MPa); err != nil || !(g.Cycles > 0) {
		t.Errorf("at the end of the range: %g, %v", g.Cycles, err)
	}
	service := life.Wall{Where: "cylinder", Hoop: 150 * MPa, Local: 150 * MPa, Range: 150 * MPa, Pressure: 3 * MPa, Radius: 0.150, Thickness: 3e-3, Yield: 240 * MPa, Ultimate: 290 * MPa, Toughness: 29 * MPa}
	noted := []life.Record{{Alloy: "sheet", Welded: true, Law: paris, Note: "constants put right"}}
	if r := life.CheckFlaw("tank/flaw-growth", "Flaw", service, service, good, noted, 1, 1); r.Status() == check.NotAssessed || !strings.Contains(r.Note, "constants put right") {
		t.Errorf("%v, %q, %v", r.Status(), r.Note, r.Err)
	}
}
