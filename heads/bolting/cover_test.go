package bolting

// Covers: UG-34 worked by hand, and its two terms against plate theory.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// By hand: G 0.2 m, C 0.24 m, h_G 0.02 m. In operation W is the largest preload,
// 24 · 25 kN = 600 kN: 0.3 · 2.5e6 + 1.9 · 6e5 · 0.02/0.008 = 0.75e6 + 2.85e6 = 3.6e6,
// so t = 0.2 √(3.6e6/115e6) = 35.39 mm. Without a preload W_m1 = 84.82 kN gives
// 0.75e6 + 0.4029e6, t = 20.03 mm; seated (84.82 + 188.23)/2 kN gives 0.6485e6.
func TestCoverByHand(t *testing.T) {
	j := joint(t)
	got, err := j.CoverThickness(2.5e6, 115e6, 150e6)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "t [mm], tightened", got/mm, "35.39")
	j.Bolts.Preload = math.NaN()
	if got, err = j.CoverThickness(2.5e6, 115e6, 150e6); err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "t [mm], operating", got/mm, "20.03")
	for thick, want := range map[float64]check.Status{20.1e-3: check.Satisfied, 19.9e-3: check.NotSatisfied} {
		if r := j.CheckCover("port.hatch/cover", 2.5e6, thick, 115e6, 150e6); r.Status() != want {
			t.Errorf("%g m: %v, %s", thick, r.Status(), r.Reason())
		}
	}
}

// From outside the pressure bends a cover as much, and the formula says so.
func TestCoverFromOutside(t *testing.T) {
	r := joint(t).CheckCover("port.hatch/cover", -1e5, 0.05, 115e6, 150e6)
	if r.Status() != check.Satisfied || !strings.Contains(r.Formula, "|p|") {
		t.Errorf("%v: %s", r.Status(), r.Formula)
	}
}

// The pressure term stands for a plate supported at its rim, 3 (3 + ν)/32 p G²/t² · 4/4
// at ν 0.2 to 0.3, and the lever term for an even rim moment M = W h_G/(π G), 6 M/t².
func TestPlateTheory(t *testing.T) {
	checktest.Close(t, "C", plateFactor, 3*(3+0.2)/32, 1e-12)
	checktest.Close(t, "C at ν 0.3", plateFactor, 3*(3+0.3)/32, 0.031) // the rule's own, 3 % below
	checktest.Close(t, "lever", leverFactor, 6/math.Pi, 0.006)
}

// At proof the stress is that which the thickness is made for.
func TestProofBending(t *testing.T) {
	j := joint(t)
	need, err := j.CoverThickness(2.5e6, 115e6, 150e6)
	if err != nil {
		t.Fatal(err)
	}
	σ, err := j.ProofBending(2.5e6, need, 150e6)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "σ_b", σ, 115e6, 1e-12)
	if _, err := j.ProofBending(2.5e6, math.NaN(), 150e6); err == nil {
		t.Error("a cover without thickness has a stress")
	}
}

// Pressure from outside bends the cover as much as pressure from inside.
func TestVacuum(t *testing.T) {
	j := joint(t)
	j.Bolts.Preload = math.NaN()
	a, _ := j.covers(-1e5, 150e6)
	if a.p != 1e5 {
		t.Errorf("pressure of the cover %g Pa", a.p)
	}
}
