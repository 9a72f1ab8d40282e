package assess_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check/checktest"
)

// The wind on a pad by hand (computed): 245 Pa × 1.2 on 305 mm over the forward head
// (20 mm flange, 75 mm deep, 3 mm thick) bend the forward seam with 0.4307 N m; the
// whole 998 mm above the aft seam pull 89.49 N, so the aft seam sees 80.97 N m.
func TestPadWindBends(t *testing.T) {
	with := read(t, "flight")
	for i, c := range with.Case {
		if c.Kind == "pad" {
			zero := 0.0
			with.Case[i].UllagePressure, with.Case[i].Fill, with.Case[i].Fullest = &zero, &zero, false
			with.Case[i].AxialForce, with.Case[i].AxialLoadFactor = nil, 0
		}
	}
	r := byID(sheet(t, with), "pad")["cylinder/longitudinal"]
	const R, wall = 0.15115, 0.0023 // mid-wall radius and wall for strength
	checktest.Close(t, "stress of the wind at the aft seam", r.Demand.Value, 80.97/(math.Pi*R*R*wall), 2e-3)
}

// An empty ready-made case does not empty the tank at meop, and the fullest liquid
// of a pad still leaves its ullage at the warmest.
func TestGroundCasesAndFullest(t *testing.T) {
	in := read(t, "flight")
	in.Flight = nil
	in.Contents.Coldest, in.Contents.Warmest = 278.15, 308.15
	keep := func(kind string) {
		var out []tank.Case
		for _, c := range read(t, "flight").Case {
			if c.Kind == kind {
				out = append(out, c)
			}
		}
		in.Case = out
	}
	for _, kind := range []string{"landing", "pad"} {
		keep(kind)
		for id, r := range byID(sheet(t, in), "meop") {
			if id == "tank/capacity" && (math.Abs(r.Margin()) > 1e-6 || r.Margin() < 0) {
				t.Errorf("%s only: margin of the capacity at meop %g, want a hair above 0", kind, r.Margin())
			}
		}
	}
}

// A missing drain or pad case is named, a written one is not.
func TestMissingGroundCasesAreNamed(t *testing.T) {
	find := func(notes []string, word string) bool { return strings.Contains(strings.Join(notes, "\n"), word) }
	with, without := sheet(t, read(t, "flight")).Notes, sheet(t, read(t, "oxygen")).Notes
	for _, word := range []string{`kind = "drain"`, `kind = "pad"`} {
		if find(with, word) || !find(without, word) {
			t.Errorf("%s: named with the case %v, without %v", word, find(with, word), find(without, word))
		}
	}
}
