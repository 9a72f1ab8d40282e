package port_test

import (
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// A tube of 4 mm that is counted with 3.6 asks for the fillet of a tube of 4 mm,
// 0.7 · 4 = 2.8 mm of throat, by hand; its pad of 5 mm counted with 4.6 for half of 5 at its edge.
func TestWeldsAreSizedByNominalWalls(t *testing.T) {
	p := tube(42, 3.6, 100)
	p.OutsideLeg, p.FullGroove, p.Fit = 8*mm, true, port.Flush
	asked := func(p port.Port, symbol string) float64 {
		r, err := p.Area(cone(30, 9.6), port.Load{Pressure: 1 * mpa}, soft)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range r.CheckWeld("p").Inputs {
			if q.Symbol == symbol {
				return q.Value / mm
			}
		}
		t.Fatalf("no %s", symbol)
		return 0
	}
	checktest.Printed(t, "by the least wall, where no other is known", asked(p, "t_c"), "2.52")
	p.Sizes = port.Sizes{Tube: 4 * mm, Wall: 10 * mm, Pad: 5 * mm}
	checktest.Printed(t, "by the nominal wall", asked(p, "t_c"), "2.80")
	p.Pad = &port.Pad{OutsideDiameter: 90 * mm, Thickness: 4.6 * mm, Leg: 5 * mm}
	checktest.Printed(t, "at the pad's edge", asked(p, "t_e"), "2.50")
}
