package bolting

// Ligaments between bolt holes: UG-53 by a published row, UG-34's rim moment by hand.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// PO-13: Indian Boiler Regulations 215 (a) (read): pitch 5.25, holes 3 9/32: 0.375.
func TestLigamentOfPublishedRow(t *testing.T) {
	j := joint(t)
	j.Bolts.Circle, j.Bolts.Hole = 5.25*mm/math.Sin(math.Pi/24)*10, (3+9.0/32)*mm*10
	got, err := j.Bolts.Ligament()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "E", got, "0.375")
}

// By hand: 24 holes of 11 on 240 mm: p 240 sin 7.5° = 31.326, E 0.64886; G 0.2, h_G 0.02 m,
// W the preload of 600 kN: √[1.9·6e5·0.02/(0.64886·115e6·0.2)] = 39.087 mm. Without a
// preload W is the seated (84.82 + 188.23)/2 = 136.53 kN: 18.65 mm.
func TestCheckLigament(t *testing.T) {
	j := joint(t)
	j.Bolts.Hole = 11 * mm
	e, err := j.Bolts.Ligament()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "E", e, "0.64886")
	got := j.CheckLigament("port.hatch/ligament", 2.5e6, 39.1*mm, 115e6, 150e6)
	checktest.Printed(t, "tightened", got.Demand.Value/mm, "39.087")
	if got.Status() != check.Satisfied {
		t.Errorf("39.1 mm: %v, %s", got.Status(), got.Reason())
	}
	σ, err := j.RimBending(2.5e6, got.Demand.Value, 150e6)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "its stress is the allowable", σ, 115e6, 1e-12)
	j.Bolts.Preload = math.NaN()
	got = j.CheckLigament("port.hatch/ligament", 2.5e6, 18.6*mm, 115e6, 150e6)
	checktest.Printed(t, "seated", got.Demand.Value/mm, "18.65")
	if got.Status() != check.NotSatisfied {
		t.Errorf("18.6 mm: %v", got.Status())
	}
	// The same cover in another unit of length: E stays.
	k := j
	k.Bolts.Circle, k.Bolts.Hole = 7*j.Bolts.Circle, 7*j.Bolts.Hole
	wide, err := k.Bolts.Ligament()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "E in another unit", wide, e, 1e-12)
}

func TestLigamentRefused(t *testing.T) {
	for _, hole := range []float64{0, 9.99 * mm, 31.4 * mm, math.NaN()} {
		j := joint(t)
		j.Bolts.Hole = hole
		if e, err := j.Bolts.Ligament(); err == nil || !math.IsNaN(e) || !strings.Contains(err.Error(), "bolts.hole") {
			t.Errorf("hole %g: %g, %v", hole, e, err)
		}
		if r := j.CheckLigament("x/ligament", 2.5e6, 40*mm, 115e6, 150e6); r.Status() != check.NotAssessed {
			t.Errorf("hole %g: %v", hole, r.Status())
		}
	}
	j := joint(t)
	j.Bolts.Hole = 11 * mm
	if r := j.CheckLigament("x/ligament", 2.5e6, 40*mm, math.NaN(), 150e6); r.Status() != check.NotAssessed {
		t.Errorf("no allowable: %v", r.Status())
	}
	if _, err := j.RimBending(math.NaN(), 40*mm, 150e6); err == nil {
		t.Error("no pressure has a stress")
	}
}
