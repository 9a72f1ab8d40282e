package weld_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/material/weld"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// EN 1999-1-1 6.1.6.3: MIG 20, 30, 35, 40 mm for walls to 6, 12, 25 mm and
// above; TIG 30 mm to 6 mm (20 and 30 read in an engineering article, the rest
// recalled); thicker TIG the MIG width + 10 (practice).
func TestZoneWidth(t *testing.T) {
	for _, row := range []struct {
		process, family string
		t, want         float64 // mm
		how             check.How
	}{
		{"mig", "aluminium", 6, 20, check.Read}, {"mig", "aluminium", 6.01, 30, check.Memory}, {"mig", "aluminium", 12, 30, check.Memory},
		{"mig", "aluminium", 25, 35, check.Memory}, {"mig", "aluminium", 26, 40, check.Memory},
		{"tig", "aluminium", 6, 30, check.Read}, {"", "aluminium", 3, 30, check.Read}, {"tig", "aluminium", 10, 40, check.Practice},
		{"tig", "austenitic", 3, 25.4, check.Practice}, {"mig", "titanium", 10, 30, check.Practice},
	} {
		got, src, err := weld.ZoneWidth(row.process, row.family, row.t/1000)
		if err != nil || src.How != row.how {
			t.Errorf("%+v: %v, %v", row, src, err)
		}
		checktest.Close(t, row.process+" "+row.family, got*1000, row.want, 1e-12)
	}
	for _, thickness := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if w, _, err := weld.ZoneWidth("tig", "aluminium", thickness); err == nil || !math.IsNaN(w) {
			t.Errorf("%g: %g", thickness, w)
		}
	}
	if _, _, err := weld.ZoneWidth("laser", "aluminium", 0.003); err == nil {
		t.Error("an unknown process was taken")
	}
	if _, _, err := weld.ZoneWidth("tig", "wood", 0.003); err == nil {
		t.Error("an unknown family was taken")
	}
}

func ExampleZoneWidth() {
	w, _, _ := weld.ZoneWidth("tig", "aluminium", 0.003)
	fmt.Printf("%.0f mm each side\n", w*1000)
	// Output: 30 mm each side
}
