package port_test

// What changes from wall to wall: rules of thickness by hand, cut-offs, fits.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// Required walls by hand with p 2, S 80 MPa, inside dimensions in mm: the
// formulas of UG-27, UG-32, UG-37(a).
func TestRequiredWall(t *testing.T) {
	ellipsoid := port.Wall{Surface: port.Ellipsoid, Thickness: 4 * mm, Radius: 202 * mm, Depth: 102 * mm}
	torisphere := port.Wall{Surface: port.Torisphere, Thickness: 4 * mm, Radius: 202 * mm, Crown: 402 * mm, Knuckle: 42 * mm}
	for _, row := range []struct {
		name string
		w    port.Wall
		e    float64
		want float64
	}{
		{"cylinder", port.Wall{Surface: port.Cylinder, Thickness: 4 * mm, Radius: 202 * mm, Length: 1}, 0, 2 * 200 / (80 - 1.2)},
		{"cone", cone(60, 4), 100, 2 * 100 / (0.5 * (80 - 1.2))},
		{"sphere", port.Wall{Surface: port.Sphere, Thickness: 4 * mm, Radius: 202 * mm}, 50, 2 * 200 / (160 - 0.4)},
		{"ellipsoid inside 0.8 D", ellipsoid, 100, 2 * 0.9 * 400 / (160 - 0.4)},
		{"ellipsoid, hole to 0.8 D", ellipsoid, 149.9, 2 * 0.9 * 400 / (160 - 0.4)},
		{"ellipsoid outside 0.8 D", ellipsoid, 150.1, 2 * 400 * 1 / (160 - 0.4)},
		{"torisphere, crown", torisphere, 100, 2 * 400 / (160 - 0.4)},
		{"torisphere, knuckle", torisphere, 175, 2 * 400 * (3 + math.Sqrt(10)) / 4 / (160 - 0.4)},
	} {
		p := port.Port{Name: "p", OutsideDiameter: 20 * mm, TubeWall: 2 * mm, Radius: row.e * mm, Parallel: true}
		got, formula, err := p.RequiredWall(row.w, 2*mpa, 80*mpa)
		if err != nil || formula == "" {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		checktest.Close(t, row.name, got/mm, row.want, 1e-12)
	}
	for _, high := range []float64{0.386 * 80, -1, math.NaN()} {
		if got, _, err := (port.Port{}).RequiredWall(cone(45, 3), high*mpa, 80*mpa); err == nil || !math.IsNaN(got) {
			t.Errorf("p %g MPa: %g, %v", high, got, err)
		}
	}
}

// A flat head and pressure on the convex side ask for half the area, of a wall
// whose required thickness is given.
func TestHalfArea(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	load.Required = 3 * mm
	load.Convex = true
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "convex", r.Meridional.Whole.Required, 0.5*3*mm*r.Meridional.Bore, 1e-12)
	if len(r.Pressure) != 0 || len(r.Cautions) == 0 {
		t.Errorf("the second opinion does not reach the convex side: %d sides, cautions %v", len(r.Pressure), r.Cautions)
	}
	load.Convex = false
	flat := port.Wall{Surface: port.Flat, Thickness: 8 * mm, Radius: 0.1}
	s.Tube = 40 * mpa
	if r, err = p.Area(flat, load, s); err != nil {
		t.Fatal(err)
	}
	// UG-39: 0.5 d tr + tn tr (1 − fr1)
	checktest.Close(t, "flat", r.Meridional.Whole.Required, (0.5*19.4+3*0.5)*3*mm*mm, 1e-12)
	flat.Radius = 19.3 * mm
	p.Radius = 0
	if _, err = p.Area(flat, load, s); err == nil {
		t.Error("a bore over half the flat head's diameter must be refused")
	}
}

// The zone a joint has claimed cuts the limit on its side only and leaves the
// required area alone; a hole that reaches into it is not satisfied.
func TestClaimedZone(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	w.Radius = 85 * mm
	free, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	w.OutboardZone = 15 * mm
	cut, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	want := 25/math.Sin(45*deg) - 15
	checktest.Close(t, "limit", cut.Meridional.Outboard.Limit/mm, want, 1e-12)
	checktest.Close(t, "other side", cut.Meridional.Inboard.A1, free.Meridional.Inboard.A1, 1e-12)
	checktest.Close(t, "required", cut.Meridional.Whole.Required, free.Meridional.Whole.Required, 1e-12)
	if !(cut.Meridional.Outboard.A1 < free.Meridional.Outboard.A1) {
		t.Error("metal in the claimed zone still counts")
	}
	w.OutboardZone = 18 * mm
	if cut, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := cut.Check("p").Status(); got != check.NotSatisfied {
		t.Errorf("hole in the claimed zone: %v", got)
	}
}

// A short boss counts no higher than it is; a set-on tube brings nothing inside
// and, at 45 degrees, needs full penetration.
func TestFits(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 0)
	p.Outside = 5 * mm
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "height normal to the wall", r.Meridional.NormalLimit/mm, 5*math.Sin(45*deg), 1e-12)
	if r.Meridional.Whole.A41 != 0 {
		t.Error("a fillet taller than the tube stands out does not count")
	}
	p.Fit, p.Outside = port.On, 0.1
	s.Tube = 40 * mpa
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if r.Ratios.FR1 != 1 || r.Ratios.FR2 != 0.5 || r.Meridional.Whole.A3 != 0 {
		t.Errorf("set-on: fr1 %g, fr2 %g, A3 %g", r.Ratios.FR1, r.Ratios.FR2, r.Meridional.Whole.A3)
	}
	p.FullGroove = false
	if _, err = p.Area(w, load, s); err == nil {
		t.Error("set on at 45 degrees without full penetration must be refused")
	}
}

// Size of an opening in a cylinder: UG-36(b)(1), both sides of 60 in of diameter.
func TestCylinderSize(t *testing.T) {
	for _, row := range []struct {
		inside, bore float64 // in
		ok           bool
	}{{30, 14.99, true}, {30, 15.01, false}, {60, 20, true}, {60, 20.01, false}, {61, 20.3, true}, {61, 20.4, false}, {150, 39.9, true}, {150, 40.1, false}} {
		w := port.Wall{Surface: port.Cylinder, Thickness: inch, Radius: (row.inside/2 + 0.5) * inch, Length: 300 * inch}
		p := port.Port{Name: "p", OutsideDiameter: (row.bore + 2) * inch, TubeWall: inch, Station: 150 * inch}
		if _, err := p.Chords(w); (err == nil) != row.ok {
			t.Errorf("bore %g in %g in: %v", row.bore, row.inside, err)
		}
	}
}
