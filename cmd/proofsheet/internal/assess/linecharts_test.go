package assess_test

import (
	"math"
	"testing"

	"proofsheet/report"
)

// The diagram of the demonstration tank holds both sides of its cases with line
// loads; bending parts them, and both end where the check of the cylinder looks.
func TestLineLoadDiagram(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	var chart *report.Chart
	for i, c := range s.Charts {
		if c.Name == "line-loads" {
			chart = &s.Charts[i]
		}
	}
	if chart == nil || len(chart.Series) != 4 {
		t.Fatalf("chart %+v", chart)
	}
	least := math.Inf(1)
	for i := 0; i < len(chart.Series); i += 2 {
		pulled, pressed := chart.Series[i], chart.Series[i+1]
		for k := range pulled.X {
			if !(pulled.Y[k] >= pressed.Y[k]) {
				t.Errorf("%s at z = %g m: %g N/m, pressed side %g N/m", pulled.Name, pulled.X[k], pulled.Y[k], pressed.Y[k])
			}
			least = math.Min(least, pressed.Y[k])
		}
		if pulled.X[0] != 0 || pulled.X[len(pulled.X)-1] != 1.2 {
			t.Errorf("%s from %g to %g m", pulled.Name, pulled.X[0], pulled.X[len(pulled.X)-1])
		}
	}
	if !(least < 25e5*0.2/2) {
		t.Errorf("the pressed side never falls below the pull of the ullage: %g N/m", least)
	}
	for _, c := range sheet(t, read(t, "port-at-rim")).Charts {
		if c.Name == "line-loads" && len(c.Series) == 0 {
			t.Error("an empty diagram")
		}
	}
}
