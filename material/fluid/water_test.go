package fluid_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/material/fluid"
	"proofsheet/report/check/checktest"
)

// Water at 1 atm by the formulas of Kell 1975 (recalled, worked apart from the
// equation of state that the data come from): β and κ.
func TestWaterAgainstKell(t *testing.T) {
	water, _ := fluid.Find("water")
	for _, row := range []struct{ celsius, β, κ float64 }{
		{5, 1.60e-5, 4.917e-10}, {10, 8.80e-5, 4.781e-10}, {15, 1.509e-4, 4.673e-10}, {20, 2.068e-4, 4.589e-10}, {25, 2.572e-4, 4.525e-10}, {30, 3.032e-4, 4.477e-10},
	} {
		T := row.celsius + 273.15
		β, err := water.Expansion(T, 0)
		if err != nil {
			t.Fatal(err)
		}
		κ, err := water.Compressibility(T)
		if err != nil {
			t.Fatal(err)
		}
		// The two formulations differ by 0.1 %.
		checktest.Close(t, fmt.Sprintf("β at %g °C", row.celsius), β.Value, row.β, 2e-3)
		checktest.Close(t, fmt.Sprintf("κ at %g °C", row.celsius), κ.Value, row.κ, 2e-3)
	}
}

// TestExpansionBalance: by equality of mixed derivatives the slope of β in
// pressure is −dκ/dT, here taken from neighbouring points of κ; the curve bends,
// so the chord is good to a tenth.
func TestExpansionBalance(t *testing.T) {
	water, _ := fluid.Find("water")
	p := 45e5
	for _, T := range []float64{283.15, 288.15, 293.15, 298.15} {
		low, _ := water.Compressibility(T - 5)
		high, _ := water.Compressibility(T + 5)
		at0, err0 := water.Expansion(T, 0)
		atP, errP := water.Expansion(T, p)
		if err0 != nil || errP != nil {
			t.Fatal(err0, errP)
		}
		checktest.Close(t, fmt.Sprintf("dβ/dp at %g K", T), (atP.Value-at0.Value)/p, -(high.Value-low.Value)/10, 0.1)
	}
}

func TestWaterEdges(t *testing.T) {
	water, _ := fluid.Find("water")
	for _, row := range []struct{ T, p float64 }{{278.1, 1e5}, {303.2, 1e5}, {293.15, -1}, {293.15, 151e5}, {math.NaN(), 0}, {293.15, math.NaN()}, {314, 0}} {
		if v, err := water.Expansion(row.T, row.p); err == nil {
			t.Errorf("%+v: %g", row, v.Value)
		}
	}
	lox, _ := fluid.Find("LOX")
	if _, err := lox.Expansion(90, 0); err == nil {
		t.Error("no expansion of LOX is carried")
	}
	if v, err := lox.Compressibility(90); err == nil || !math.IsNaN(v.Value) {
		t.Errorf("compressibility of LOX: %g", v.Value)
	}
}

func ExampleFluid_Expansion() {
	f, _ := fluid.Find("water")
	β, _ := f.Expansion(293.15, 45e5)
	fmt.Printf("%.4g per kelvin\n", β.Value)
	// Output: 0.0002135 per kelvin
}
