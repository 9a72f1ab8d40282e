package port_test

// PO-10, PO-11, PO-12: UG-45 and table UW-16.1 worked in an engineering forum (read), in
// mm. PO-33: slides on UG-45, 2010 edition (read); their wall of 1219 mm shell at 9.766243
// on 138 MPa, 3.18 corroded.

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
		{"PO-33, without corrosion", 2.96, 45.28, 0, 4.80, "4.80"},
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

// PO-33: the shell's 45.28 mm.
func TestNeckOfSlides(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 50 * mm, Radius: (1219.0/2 + 3.18 + 25) * mm, Length: 5}
	tr, _, err := port.Port{}.RequiredWall(w, 9.766243*mpa, 138*mpa)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "tb1", tr/mm, "45.28")
	checktest.Printed(t, "with corrosion", port.NeckWall(2.96, tr/mm, 0, 4.80)+3.18, "7.98")
}

// PO-12: a fitting of 27.15 by 4.05 mm held by one fillet needs 4.2 mm by table UW-16.1,
// 2.51 mm by UG-45.
func TestFilletOnlyNeck(t *testing.T) {
	wall, ok := port.FilletOnlyNeck(27.15 * mm)
	if !ok {
		t.Fatal("no row for 27.15 mm")
	}
	checktest.Printed(t, "PO-12", wall/mm, "5.5") // next larger size; the source's fitting is called 3/4 in
	wall, _ = port.FilletOnlyNeck(26.7 * mm)
	checktest.Printed(t, "NPS 3/4", wall/mm, "4.2")
	if v, ok := port.FilletOnlyNeck(90 * mm); ok || !math.IsNaN(v) {
		t.Errorf("over NPS 3: %g", v)
	}
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 0)
	p.FullGroove = false
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.CheckNeck("p"); got.Status() != check.NotSatisfied || math.Abs(got.Demand.Value-4.2*mm) > 1e-9 {
		t.Errorf("one fillet round 25.4 mm by 3 mm: %v, %g", got.Status(), got.Demand.Value)
	}
	p.Groove = 2 * mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckNeck("p").Status(); got != check.Satisfied {
		t.Errorf("with a groove the table does not ask: %v", got)
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
