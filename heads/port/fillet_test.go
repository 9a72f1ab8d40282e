package port_test

import (
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// ASME VIII-1 UG-40: no metal further off the wall than 2.5 t or 2.5 tn + te, or further
// along it than the limit, counts, fillets included. A sphere of wall 2 mm, tube 40 mm
// by 1 mm: H = 2.5 mm, Ls = max(38, 22) = 38 mm, so 18 mm of wall beside the tube. By
// hand, both sides: leg 2 mm 4; leg 4 mm 16 − 1.5²; leg 12 mm 144 − 9.5².
func TestFilletWithinTheLimits(t *testing.T) {
	area := func(leg float64, pad *port.Pad) port.AreaReport {
		w := port.Wall{Surface: port.Sphere, Thickness: 2 * mm, Radius: 150 * mm}
		p := port.Port{Name: "n", OutsideDiameter: 40 * mm, TubeWall: 1 * mm, Outside: 40 * mm, OutsideLeg: leg * mm, Fit: port.Flush, FullGroove: true, Pad: pad}
		s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, Pad: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
		r, err := p.Area(w, port.Load{Pressure: 1 * mpa}, s)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	const mm2 = mm * mm
	for _, row := range []struct{ leg, want float64 }{{2, 4}, {2.5, 6.25}, {4, 13.75}, {12, 53.75}} {
		checktest.Close(t, "A41", area(row.leg, nil).Meridional.Whole.A41/mm2, row.want, 1e-9)
	}
	// With a pad of 2 mm H = min(5, 4.5) mm, of which the pad takes 2: 2.5 mm again.
	checktest.Close(t, "A41 over a pad", area(4, &port.Pad{OutsideDiameter: 70 * mm, Thickness: 2 * mm, Leg: 2 * mm}).Meridional.Whole.A41/mm2, 13.75, 1e-9)
	// The pressure-area method counts √(39 × 1) = 6.245 mm of tube: of a leg of 12 mm
	// 72 − 5.755²/2 of each side, √(300 × 2) = 24.5 mm of wall being enough.
	checktest.Close(t, "Afw", area(12, nil).Pressure[0].WeldArea/mm2, 55.4400, 1e-5)
	// A tube that ends below its fillet has none, in the areas or in the weld paths.
	r := area(4, nil)
	r.Port.Outside, r.Port.FullGroove = 3*mm, false
	r, err := r.Port.Area(r.Wall, r.Load, r.Strengths)
	if err != nil {
		t.Fatal(err)
	}
	paths, err := r.WeldPaths(r.Meridional)
	if err != nil {
		t.Fatal(err)
	}
	if r.Meridional.Whole.A41 != 0 || paths[1].Strength != 0 {
		t.Errorf("A41 %g, path 2-2 %g N without a fillet", r.Meridional.Whole.A41, paths[1].Strength)
	}
}
