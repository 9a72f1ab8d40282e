package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The oxygen tank is full up into its forward head at meop, its wall warm and its
// liquid cold. The change of temperature is added to the largest stress of the shell;
// a step in place of the ramp of its cases is too much, and a little passes by.
func TestLevelInAHead(t *testing.T) {
	s := sheet(t, read(t, "oxygen"))
	r := find(t, s, "cylinder/thermal@meop")
	if r.Status() != check.Satisfied {
		t.Fatalf("%v: %s", r.Status(), r.Reason())
	}
	checktest.Close(t, "sum", r.Demand.Value, input(t, r, "σ_T")+input(t, r, "σ_peak"), 1e-12)
	if peak := quantity(t, s, "shell.peak_equivalent@meop"); input(t, r, "σ_peak") < peak*(1-1e-9) {
		t.Errorf("peak %g, the shell's own %g Pa", input(t, r, "σ_peak"), peak)
	}
	// In the cylinder the same change over the same length is less.
	if boost := find(t, s, "cylinder/thermal@boost"); !(input(t, r, "σ_T") > input(t, boost, "σ_h")) || input(t, r, "l") != 0.060 {
		t.Errorf("in the head %g Pa over %g m, in the cylinder %g", input(t, r, "σ_T"), input(t, r, "l"), input(t, boost, "σ_h"))
	}
	step := find(t, sheet(t, changed(t, "oxygen", "temperature_ramp = \"60 mm\"\n", "")), "cylinder/thermal@meop")
	if step.Status() != check.NotAssessed || !strings.Contains(step.Reason(), "lies in head.forward") {
		t.Errorf("a step: %v, %s", step.Status(), step.Reason())
	}
	slight := find(t, sheet(t, changed(t, "oxygen", "temperature = \"90 K\"\nleast", "temperature = \"12 degC\"\nleast", "fluid = \"LOX\"", "fluid = \"water\"",
		"temperature = \"90 K\"\nground", "ground")), "cylinder/thermal@meop")
	if slight.Status() != check.NotApplicable || !strings.Contains(slight.Reason()+slight.Note, "a tenth of its limit") {
		t.Errorf("8 K: %v, %s %s", slight.Status(), slight.Reason(), slight.Note)
	}
}
