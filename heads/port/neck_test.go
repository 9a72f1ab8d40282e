package port_test

// PO-10, PO-11: UG-45 worked in an engineering forum (read), in mm.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func TestNeckWall(t *testing.T) {
	for _, row := range []struct {
		id                string
		ta, tb1, tb2, tb3 float64
		want              string
	}{
		{"PO-10", 0.132, 1.57, 8.6, 5.27, "5.27"},
		{"PO-11", 5.88, 12.95, 11.33, 11.33, "11.33"},
		{"own pressure governs", 6, 1, 2, 5, "6"},
	} {
		checktest.Printed(t, row.id, port.NeckWall(row.ta, row.tb1, row.tb2, row.tb3), row.want)
	}
	if !math.IsNaN(port.NeckWall(math.NaN(), 1, 2, 3)) || !math.IsNaN(port.NeckWall(1, math.NaN(), 2, 3)) {
		t.Error("a NaN must not vanish in the choices")
	}
	// PO-10: 0.875 × 6.02 mm = 5.2675 mm is supplied and passes the unrounded table.
	if got := port.StandardNeck(114.3 * mm); got > 0.875*6.02*mm {
		t.Errorf("NPS 4: %g mm asked, 5.2675 supplied", got/mm)
	}
	if ta := 0.03 * 51.13 / (11.64 - 0.6*0.03); math.Abs(ta-0.132) > 0.0005 {
		t.Errorf("PO-10 ta %g", ta)
	}
}

// Table UG-45 (recalled; 3/4 and 4 in read as 2.51 and 5.27 mm), in inches.
func TestStandardNecks(t *testing.T) {
	for od, want := range map[float64]string{0.405: ".060", 0.54: ".077", 0.675: ".080", 0.84: ".095", 1.05: ".099", 1.315: ".116", 1.66: ".123",
		1.9: ".127", 2.375: ".135", 2.875: ".178", 3.5: ".189", 4: ".198", 4.5: ".207", 5.563: ".226", 6.625: ".245", 8.625: ".282", 10.75: ".319", 12.75: ".328", 20: ".328", 1.7: ".127"} {
		// the table rounds half digits up
		checktest.Printed(t, "table", math.Floor(port.StandardNeck(od*inch)/inch*1000+0.5)/1000, want)
	}
	checktest.Printed(t, "NPS 3/4", port.StandardNeck(26.7*mm)/mm, "2.51")
	checktest.Printed(t, "NPS 4", port.StandardNeck(114.3*mm)/mm, "5.27")
	if !math.IsNaN(port.StandardNeck(math.NaN())) || !math.IsNaN(port.StandardNeck(0)) {
		t.Error("no diameter, no wall")
	}
}

func TestCheckNeck(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.CheckNeck("p"); got.Status() != check.Satisfied || got.Demand.Value != r.RequiredWall {
		t.Errorf("%v, demand %g: want satisfied by tr %g", got.Status(), got.Demand.Value, r.RequiredWall)
	}
	p.TubeWall, p.InsideWall = 1.65*mm, 1.65*mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckNeck("p").Status(); got != check.NotSatisfied {
		t.Errorf("1.65 mm against 2.15: %v", got)
	}
}
