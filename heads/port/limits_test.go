package port_test

// Limits, balances, changes of unit, edges of ranges.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// A tube normal to the wall and one parallel to the axis meet in the cone that
// is nearly flat; the arcs of a very large sphere are those of a plane.
func TestRadialLimit(t *testing.T) {
	p, _, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	p.Inside = 6 * mm
	w := cone(90-1e-7, 4)
	oblique, err := p.Chords(w)
	if err != nil {
		t.Fatal(err)
	}
	p.Parallel = false
	radial, err := p.Chords(w)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "chord", oblique.Meridional, radial.Meridional, 1e-12)
	w = port.Wall{Surface: port.Sphere, Thickness: 4 * mm, Radius: 0.5}
	p.Radius = 0
	a, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	p.Parallel = true
	b, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "central port on a sphere, both axes", b.Meridional.Whole.Available(), a.Meridional.Whole.Available(), 1e-3)
	checktest.Close(t, "sides alike", b.Meridional.Outboard.Ratio(), b.Meridional.Inboard.Ratio(), 1e-12)
}

// A torisphere whose crown is the whole head is the sphere.
func TestCrownIsASphere(t *testing.T) {
	p, _, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	p.Radius = 50 * mm
	sphere, err := p.Area(port.Wall{Surface: port.Sphere, Thickness: 4 * mm, Radius: 0.3, Edge: 0.2}, load, s)
	if err != nil {
		t.Fatal(err)
	}
	tori, err := p.Area(port.Wall{Surface: port.Torisphere, Thickness: 4 * mm, Radius: 0.28, Crown: 0.3, Knuckle: 0.02}, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "tr", tori.RequiredWall, sphere.RequiredWall, 1e-12)
	checktest.Close(t, "pressure area", tori.Pressure[0].Capacity, sphere.Pressure[0].Capacity, 1e-12)
	checktest.Close(t, "available", tori.Meridional.Outboard.Available(), sphere.Meridional.Outboard.Available(), 1e-9)
}

// With nothing cut off, both sides with an even tr make the whole section.
func TestSidesMakeTheWhole(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	s.Tube = 60 * mpa
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	m := r.Meridional
	checktest.Close(t, "required", m.Outboard.Required+m.Inboard.Required, m.Whole.Required, 1e-12)
	// the growth of tr takes from one side what it gives the other
	checktest.Close(t, "available", m.Outboard.Available()+m.Inboard.Available(), m.Whole.Available(), 1e-12)
	// 1.2 of the rule: A1 = max[d, 2(t + tn)](E1 t − F tr) − 2 tn′(E1 t − F tr)(1 − fr1)
	excess := w.Thickness - m.Strip
	checktest.Close(t, "A1", m.Whole.A1, math.Max(m.Bore, 2*(w.Thickness+p.TubeWall))*excess-2*m.TubeAlong*excess*(1-0.75), 1e-12)
}

// Force × 3 and length × 7: areas × 49, pressures × 3/49.
func TestChangeOfUnits(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 3, 2, 0.85, 3, 6)
	load.Hoop, load.Meridional = 90e3, 150e3
	a, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	const l, f = 7, 3.0 / 49
	q := p
	for _, v := range []*float64{&q.OutsideDiameter, &q.TubeWall, &q.InsideWall, &q.Radius, &q.Outside, &q.Inside, &q.OutsideLeg, &q.InsideLeg, &w.Thickness, &w.Radius} {
		*v *= l
	}
	for _, v := range []*float64{&load.Pressure, &s.Wall, &s.Tube} {
		*v *= f
	}
	load.Hoop, load.Meridional = load.Hoop*3/7, load.Meridional*3/7
	b, err := q.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "available", b.Meridional.Outboard.Available(), 49*a.Meridional.Outboard.Available(), 1e-12)
	checktest.Close(t, "transverse required", b.Transverse.Whole.Required, 49*a.Transverse.Whole.Required, 1e-12)
	checktest.Close(t, "pressure area", b.Pressure[0].Capacity, f*a.Pressure[0].Capacity, 1e-12)
	checktest.Close(t, "margin", b.Check("p").Margin(), a.Check("p").Margin(), 1e-9)
}

// N/S floors F tr in the plane that N crosses, also without pressure.
func TestLineLoadFloor(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	load.Meridional = 240e3 // N/S = 3 mm
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "transverse", r.Transverse.Strip, 3*mm, 1e-12)
	checktest.Close(t, "meridional untouched", r.Meridional.Strip, r.RequiredWall, 1e-12)
	load.Pressure = 0
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "without pressure", r.Transverse.Whole.Required, 3*mm*r.Transverse.Bore, 1e-12)
}

// A seam that leaves less than tr keeps its negative area; t under tr fails
// whatever the tube brings.
func TestShortWall(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 2.5, 6, 0.7, 4, 6)
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	if r.Meridional.Whole.A1 >= 0 {
		t.Errorf("E1 t = 1.75 mm under tr = 2.15 mm: A1 %g, want it negative", r.Meridional.Whole.A1)
	}
	w.Thickness = 2.1 * mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := r.Check("p"); got.Status() != check.NotSatisfied || len(r.Faults) == 0 {
		t.Errorf("2.1 mm where 2.15 is needed: %v", got.Status())
	}
	s.EfficiencyMeridional, p.TubeWall, p.InsideWall, p.OutsideLeg, p.InsideLeg, w.Thickness = 0.3, 0.6*mm, 0.6*mm, 0, 0, 2.5*mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := r.Check("p"); got.Status() != check.NotSatisfied {
		t.Errorf("no metal left at all: %v, %s", got.Status(), got.Reason())
	}
}

// A side on which every gain is eaten up, though the wall is thick enough at the
// tube axis: t_r grows outboard past it, and the tube is under its own need.
func TestNothingLeftOnOneSide(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 2.2, 0.3, 1, 0, 0)
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	if m := r.Meridional; m.Outboard.Available() >= 0 || m.Strip >= w.Thickness {
		t.Fatalf("outboard %g, F tr %g: not the case meant", m.Outboard.Available(), m.Strip)
	}
	if got := r.Check("p"); got.Status() == check.Satisfied {
		t.Errorf("%v: %s", got.Status(), got.Note)
	}
	// The same with a little weld, so that there is something to print.
	p.OutsideLeg = 0.5 * mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got := r.Check("p"); got.Status() != check.NotSatisfied {
		t.Errorf("%v: %s %s", got.Status(), got.Note, got.Reason())
	}
}

// The pad: F = 1 in both planes, A5 from the outside chord on; TC-D's outboard
// side needs 67.520 mm of pad at te = 3 mm and the whole section 60.363 mm, A5
// counted with a pad fillet of 3 mm.
func TestSmallestPad(t *testing.T) {
	p, w, load, s := areaCase(30, 75, 3, 1.65, 1, 3, 0)
	s.Pad = 80 * mpa
	for _, row := range []struct{ te, whole, outboard float64 }{{1.5, 72.666, 86.980}, {2, 66.515, 77.250}, {3, 60.363, 67.520}} {
		p.Pad = &port.Pad{Thickness: row.te * mm, Leg: 3 * mm, OutsideDiameter: row.whole * mm}
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "whole section just covered", r.Meridional.Whole.Ratio(), 1, 3e-5)
		if r.Check("p").Status() != check.NotSatisfied {
			t.Error("a pad sized on the whole section must fail by its outboard side")
		}
		p.Pad.OutsideDiameter = row.outboard * mm
		if r, err = p.Area(w, load, s); err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "outboard side just covered", r.Meridional.Outboard.Ratio(), 1, 3e-5)
		if r.Transverse.Factor != 1 {
			t.Errorf("F %g with a pad, want 1", r.Transverse.Factor)
		}
	}
}
