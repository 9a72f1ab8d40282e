package bolting

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// At little pressure the cover is bent most as it is seated, and the note says so; a gasket shows its factors.
func TestSeatedCover(t *testing.T) {
	j := joint(t)
	j.Bolts.Preload = math.NaN()
	for p, governs := range map[float64]string{0.1e6: "seated, no pressure", 2.5e6: "in operation"} {
		if r := j.CheckCover("port.hatch/cover", p, 0.03, 115e6, 150e6); r.Status() != check.Satisfied || !strings.Contains(r.Note, "governs: "+governs) {
			t.Errorf("%g Pa: %v, %s", p, r.Status(), r.Note)
		}
	}
	j.Seal = Seal{Gasket: true, Diameter: 0.2, Width: 0.012, Factor: 2.75, Seating: 26e6}
	shown := map[string]float64{}
	for _, q := range j.CheckCover("port.hatch/cover", 0.1e6, 0.03, 115e6, 150e6).Inputs {
		shown[q.Symbol] = q.Value
	}
	for symbol, want := range map[string]float64{"G": 0.2, "N": 0.012, "b": 0.006, "m": 2.75, "y": 26e6} {
		if shown[symbol] != want {
			t.Errorf("%s = %g, want %g", symbol, shown[symbol], want)
		}
	}
}

func TestBendingRefused(t *testing.T) {
	j, nan := joint(t), math.NaN()
	for _, row := range []struct{ p, t, bolts float64 }{{nan, 0.02, 150e6}, {1e6, nan, 150e6}, {1e6, 0, 150e6}, {1e6, 0.02, nan}} {
		if σ, err := j.ProofBending(row.p, row.t, row.bolts); err == nil || !math.IsNaN(σ) {
			t.Errorf("cover %+v: %g, %v", row, σ, err)
		}
		if σ, err := j.RimBending(row.p, row.t, row.bolts); err == nil || !math.IsNaN(σ) {
			t.Errorf("rim %+v: %g, %v", row, σ, err)
		}
	}
}

// A pitch that is in no table, and one whose flanks no longer meet, have no areas to strip.
func TestStripRefused(t *testing.T) {
	for want, th := range map[string]Thread{
		"pitch of 0.3 mm":       {Name: "M3x0.3", Major: 3 * mm, Pitch: 0.3 * mm},
		"flanks do not overlap": {Name: "M3x6", Major: 3 * mm, Pitch: 6 * mm},
	} {
		if s, err := th.Strip(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %+v, %v", th.Name, s, err)
		}
	}
}

// Preferred numbers by steps of 1/40 decade; of nothing there is none.
func TestPreferred(t *testing.T) {
	for v, want := range map[float64]float64{100: 100, 103.1: 106, 0.98: 1, 1010: 1000, 315: 315} {
		checktest.Close(t, "preferred", preferred(v), want, 1e-12)
	}
	for _, v := range []float64{0, -1, math.NaN()} {
		if got := preferred(v); !math.IsNaN(got) {
			t.Errorf("%g: %g", v, got)
		}
	}
}
