package assess_test

import (
	"math"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// thermal returns the thermal check of one case of the demonstration tank.
func thermal(t *testing.T, edit func(in *tank.Tank, c *tank.Case)) check.Result {
	t.Helper()
	in := read(t, "demo")
	for i := range in.Case {
		if in.Case[i].Name == "pad" {
			edit(in, &in.Case[i])
		}
	}
	return byID(sheet(t, in), "pad")["cylinder/thermal"]
}

// input returns an input of a check by its symbol, in its own unit.
func input(t *testing.T, r check.Result, symbol string) float64 {
	t.Helper()
	for _, q := range r.Inputs {
		if q.Symbol == symbol {
			return q.Value
		}
	}
	t.Fatalf("%s has no input %s", r.ID, symbol)
	return math.NaN()
}

// From what the sheet prints: the step's hoop is E α ΔT/2, its bending 0.2792/√(1 − ν²)
// of E α ΔT, and the worse face carries at least hoop and half of it (computed). A
// ramp does less, no difference nothing, ends that hold more.
func TestThermalFromTheSheet(t *testing.T) {
	step := thermal(t, func(*tank.Tank, *tank.Case) {})
	E, α, ΔT, ν := input(t, step, "E_y"), input(t, step, "α"), input(t, step, "ΔT"), input(t, step, "ν")
	checktest.Close(t, "ΔT between 5 and 20 degC", ΔT, 15, 1e-9)
	checktest.Close(t, "hoop", input(t, step, "σ_h"), E*α*ΔT/2, 1e-12)
	checktest.Close(t, "bending", input(t, step, "σ_b"), 0.2792*E*α*ΔT/math.Sqrt(1-ν*ν), 2e-4)
	hoop := input(t, step, "p")*input(t, step, "r")/input(t, step, "t") + input(t, step, "σ_h")
	if s := step.Demand.Value; s < hoop || s > 1.3*hoop {
		t.Errorf("demand %g, hoop alone %g", s, hoop)
	}
	ramp := thermal(t, func(_ *tank.Tank, c *tank.Case) { l := 0.1; c.TemperatureRamp = &l })
	held := thermal(t, func(in *tank.Tank, _ *tank.Case) { in.Support.At = "both" })
	warmer := thermal(t, func(_ *tank.Tank, c *tank.Case) { T := 323.15; c.Temperature = &T })
	if !(ramp.Demand.Value < step.Demand.Value) || !(held.Demand.Value > step.Demand.Value) || !(warmer.Demand.Value > step.Demand.Value) {
		t.Errorf("demands: step %g, ramp %g, held %g, warmer %g", step.Demand.Value, ramp.Demand.Value, held.Demand.Value, warmer.Demand.Value)
	}
	checktest.Close(t, "between held ends", input(t, held, "σ_r"), E*α*ΔT, 1e-9)
	even := thermal(t, func(in *tank.Tank, _ *tank.Case) { in.Contents.Coldest, in.Contents.Warmest = 293.15, 293.15 })
	empty := thermal(t, func(_ *tank.Tank, c *tank.Case) { none := 0.0; c.Fill = &none })
	for name, r := range map[string]check.Result{"even": even, "empty": empty} {
		if r.Status() != check.NotApplicable {
			t.Errorf("%s: %v", name, r.Status())
		}
	}
}

// Without an expansion the check is not made.
func TestThermalWithoutExpansion(t *testing.T) {
	r := thermal(t, func(in *tank.Tank, _ *tank.Case) {
		v := func(x float64) *float64 { return &x }
		for i, m := range in.Material {
			in.Material[i] = tank.Material{Name: m.Name, Family: "austenitic", Source: "a test", Yield: v(170e6), Ultimate: v(485e6),
				ElasticModulus: v(193e9), Poisson: v(0.3), Density: v(7900), Elongation: v(0.4)}
		}
	})
	if r.Status() != check.NotAssessed {
		t.Errorf("%v without an expansion", r.Status())
	}
}
