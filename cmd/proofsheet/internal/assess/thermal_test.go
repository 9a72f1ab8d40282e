package assess_test

import (
	"math"
	"strings"
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
	made := 293.15
	held := thermal(t, func(in *tank.Tank, _ *tank.Case) { in.Support.At, in.Support.AssemblyTemperature = "both", &made })
	warmer := thermal(t, func(_ *tank.Tank, c *tank.Case) { T := 323.15; c.Temperature = &T })
	if !(ramp.Demand.Value < step.Demand.Value) || !(held.Demand.Value > step.Demand.Value) || !(warmer.Demand.Value > step.Demand.Value) {
		t.Errorf("demands: step %g, ramp %g, held %g, warmer %g", step.Demand.Value, ramp.Demand.Value, held.Demand.Value, warmer.Demand.Value)
	}
	checktest.Close(t, "between held ends", input(t, held, "σ_r"), E*α*ΔT, 0.01) // α at 5 degC in place of that at 20 degC
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

// Both ends held, by hand (computed): E 69 GPa, α 2e-5, made fast at 0 degC. At 40 degC
// σ = 69 GPa × 2e-5 × 40 = 55.2 MPa presses, liquid or none; FS σ t = 1.5 × 55.2 MPa × 1.5 mm
// = 124.2 N/mm along the wall without weight, 1.5 × 55.2 MPa × 2π 200 mm × 1.5 mm = 156 074 N on
// the column. At −30 degC 69 GPa × 2e-5 × 30 = 41.4 MPa pulls and nothing presses. Made
// fast at 40 degC, no stress. Not knowing how warm, nothing is said.
func TestHeldEndsByHand(t *testing.T) {
	p := soft
	const bare = "axial_load_factor = 0\nullage_pressure = \"0 bar\"\n"
	p.cases = ""
	for name, lines := range map[string]string{
		"warm":     "liquid_mass = \"0 kg\"\ntemperature = \"40 degC\"",
		"warm-wet": "fill = 0.5\ntemperature = \"40 degC\"",
		"cold":     "liquid_mass = \"0 kg\"\ntemperature = \"-30 degC\"",
	} {
		p.cases += "[[case]]\nname = \"" + name + "\"\npeople = \"clear\"\n" + bare + lines + "\n"
	}
	held := func(made string) func(name, id string) check.Result {
		p.support = "[support]\nat = \"both\"\n" + made
		s := sheet(t, parse(t, "plain.toml", p.text()))
		return func(name, id string) check.Result { return byID(s, name)[id] }
	}
	at := held("assembly_temperature = \"0 degC\"\n")
	for _, name := range []string{"warm", "warm-wet"} {
		checktest.Close(t, name+", along the wall", at(name, "cylinder/compression").Demand.Value, 124200, 1e-9)
		checktest.Close(t, name+", column", at(name, "cylinder/column").Demand.Value, 156074.3, 1e-6)
		checktest.Close(t, name+", stress", input(t, at(name, "cylinder/thermal"), "σ_r"), 55.2e6, 1e-9)
	}
	checktest.Close(t, "cold, stress", input(t, at("cold", "cylinder/thermal"), "σ_r"), 41.4e6, 1e-9)
	checktest.Close(t, "cold, demand", at("cold", "cylinder/thermal").Demand.Value, 41.4e6, 1e-9)
	if got := at("cold", "cylinder/compression").Demand.Value; got > 1e-6 {
		t.Errorf("cold: %g N/m", got)
	}
	at = held("assembly_temperature = \"40 degC\"\n")
	checktest.Close(t, "made fast as warm as it is", at("warm", "cylinder/compression").Demand.Value+1, 1, 1e-9)
	at = held("")
	for _, id := range []string{"cylinder/compression", "cylinder/column", "cylinder/thermal"} {
		if r := at("warm", id); r.Status() != check.NotAssessed || r.Err == nil || !strings.Contains(r.Err.Error(), "support.assembly_temperature") {
			t.Errorf("%s: %v, %v", id, r.Status(), r.Err)
		}
	}
}

// A history that cools is judged by the cold it reaches, not by the warmest of its band
// (computed): 40 degC down to −125 degC with the liquid at 20 degC; the last row as a
// case of its own has no lesser margin than the history.
func TestHistoryOfAColdWall(t *testing.T) {
	in := read(t, "flight")
	in.Contents.Coldest, in.Contents.Warmest = 293.15, 293.15
	fill := 0.5
	in.Flight.States = nil
	for i, T := range []float64{313.15, 303.15, 293.15, 148.15} {
		in.Flight.States = append(in.Flight.States, tank.State{Time: float64(10 * i), UllagePressure: 11e5, AxialLoadFactor: 2, Fill: &fill, Temperature: &T})
	}
	p, T := 11e5, 148.15
	in.Case = []tank.Case{{Name: "last", People: "clear", UllagePressure: &p, AxialLoadFactor: 2, Fill: &fill, Temperature: &T}}
	s := sheet(t, in)
	flown, last := byID(s, "flight")["cylinder/thermal"], byID(s, "last")["cylinder/thermal"]
	checktest.Close(t, "ΔT", input(t, flown, "ΔT"), 145, 1e-9)
	if !(flown.Margin() <= last.Margin()) {
		t.Errorf("margin of the history %g, of its last row %g", flown.Margin(), last.Margin())
	}
}

// Weightless, the liquid may end anywhere on the wall (computed): the step is judged as under
// the least of weights.
func TestThermalOfAWeightlessLiquid(t *testing.T) {
	at := func(n float64) check.Result {
		return thermal(t, func(_ *tank.Tank, c *tank.Case) { half := 0.5; c.Fill, c.AxialLoadFactor = &half, n })
	}
	coast, almost := at(0), at(1e-9)
	if coast.Status() == check.NotApplicable {
		t.Fatal(coast.Reason())
	}
	checktest.Close(t, "coast", coast.Demand.Value, almost.Demand.Value, 1e-6)
}

// The level comes into the cylinder within a step, and the pressure falls with it (computed):
// aft head with flange π R² (R/3 + 20 mm), of two heads and 0.9 m of cylinder, R 150 mm, 0.067 of the
// tank, from 0.06 to 0.39 reached after 0.022 of the step, at 8 − 0.022 × 5 = 7.89 bar. Half a step
// on it is 5.5 bar.
func TestLevelComesIntoTheCylinder(t *testing.T) {
	in := read(t, "flight")
	low, high, warm := 0.06, 0.39, 303.15
	in.Flight.States = []tank.State{
		{Time: 0, UllagePressure: 8e5, AxialLoadFactor: 2, Fill: &low, Temperature: &warm},
		{Time: 10, UllagePressure: 3e5, AxialLoadFactor: 2, Fill: &high, Temperature: &warm},
	}
	p := input(t, byID(sheet(t, in), "flight")["cylinder/thermal"], "p")
	if !(p > 7.8e5 && p < 8e5) {
		t.Errorf("%.4g bar, want 7.8 to 8", p/1e5)
	}
}
