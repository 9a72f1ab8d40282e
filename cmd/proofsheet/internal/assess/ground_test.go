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

// A load written for a pad does not still the wind (computed, the tank of the wind above):
// 80.97 N m at the aft seam from the wind alone, 500 N m more with a moment written at the
// forward seam, 3 kN m more with one in a list.
func TestPadWindStaysBesideLoads(t *testing.T) {
	moment := func(edit func(c *tank.Case)) float64 {
		in := read(t, "flight")
		for i := range in.Case {
			if in.Case[i].Kind == "pad" {
				in.Case[i].AxialForce, in.Case[i].AxialCompression = nil, nil
				edit(&in.Case[i])
			}
		}
		return input(t, byID(sheet(t, in), "pad")["cylinder/compression"], "M")
	}
	v := func(x float64) *float64 { return &x }
	forward := read(t, "flight").Cylinder.Length
	for _, row := range []struct {
		what string
		want float64
		edit func(c *tank.Case)
	}{
		{"nothing", 80.97, func(*tank.Case) {}},
		{"a moment of none", 80.97, func(c *tank.Case) { c.BendingMoment = v(0) }},
		{"a moment", 580.97, func(c *tank.Case) { c.BendingMoment = v(-500) }},
		{"a list", 3080.97, func(c *tank.Case) { c.Loads = []tank.LineLoad{{Station: forward, BendingMoment: v(3000)}} }},
	} {
		checktest.Close(t, row.what, moment(row.edit), row.want, 2e-3)
	}
}

// The wind presses on the wall of a vented pad and counts in the sum beside compression and
// bending (computed): 0.5 × 1.225 kg/m3 × (20 m/s)² = 245 Pa.
func TestGustInTheInteraction(t *testing.T) {
	r := byID(sheet(t, read(t, "flight")), "pad")["cylinder/compression"]
	checktest.Close(t, "outside pressure in the sum", input(t, r, "p_ext"), 245, 1e-9)
}
