package port_test

// Published openings. PO-01: Jawad and Farr, Structural Analysis and Design of
// Process Equipment, example 11.6, read to its step 5, the areas computed from
// its data. PO-24: ASME PTB-4 E4.5.1; PO-25: Megyesy, Pressure Vessel Handbook,
// opening example 1; PO-26: PTB-4 E4.5.2; these three recalled and
// self-consistent. In inches, psi and pounds.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const (
	inch = 0.0254
	psi  = 6894.757293168361
	in2  = inch * inch
)

func strengths(wall, tube float64) port.Strengths {
	return port.Strengths{Wall: wall * psi, Tube: tube * psi, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
}

func TestEllipsoidExample(t *testing.T) {
	const d = 41.75
	w := port.Wall{Surface: port.Ellipsoid, Thickness: inch, Radius: (d/2 + 0.5) * inch, Depth: (d/4 + 0.5) * inch}
	p := port.Port{Name: "manhole", OutsideDiameter: 10.25 * inch, TubeWall: 1.125 * inch, Parallel: true, Outside: inch * 6, Fit: port.Flush, FullGroove: true}
	r, err := p.Area(w, port.Load{Pressure: 700 * psi}, strengths(17500, 17500))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "tr", r.RequiredWall/inch, "0.755")
	checktest.Printed(t, "trn", r.RequiredTube/inch, "0.164")
	checktest.Printed(t, "limit X", r.Meridional.ParallelLimit/inch, "8")
	checktest.Printed(t, "normal limit", r.Meridional.NormalLimit/inch, "2.5")
	// The source rounds tr to 0.755 midway: half of its last digit, times d, is 0.004.
	checktest.Close(t, "A", r.Meridional.Whole.Required/in2, 6.040, 0.004/6.040)
	checktest.Close(t, "A1", r.Meridional.Whole.A1/in2, 1.960, 0.004/1.960)
	checktest.Printed(t, "A2", r.Meridional.Whole.A2/in2, "4.805")
	checktest.Close(t, "sum", r.Meridional.Whole.Available()/in2, 6.765, 0.0045/6.765)
	checktest.Printed(t, "pressure area", r.Pressure[0].Capacity/psi, "839")
	got := r.Check("manhole")
	if got.Status() != check.Satisfied {
		t.Errorf("the source finds it sufficient: %v, %s", got.Status(), got.Reason())
	}
	checktest.Close(t, "the least margin is the one reported", got.Margin(), r.Meridional.Whole.Ratio()-1, 1e-9)
}

// The table of equivalent spheres, Jawad and Farr table 11.3, and a value
// between two rows.
func TestSphereFactor(t *testing.T) {
	for _, row := range []struct{ aspect, want float64 }{{3, 1.36}, {2.8, 1.27}, {2.6, 1.18}, {2.4, 1.08}, {2.2, 0.99}, {2, 0.9}, {1.8, 0.81}, {1.6, 0.73}, {1.4, 0.65}, {1.2, 0.57}, {1, 0.5}, {2.1, 0.945}} {
		got, err := port.SphereFactor(row.aspect)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "K1", got, row.want, 1e-12)
	}
	for _, outside := range []float64{math.Nextafter(1, 0), math.Nextafter(3, 4), math.NaN()} {
		if got, err := port.SphereFactor(outside); err == nil || !math.IsNaN(got) {
			t.Errorf("K1 at aspect %g: %g, %v", outside, got, err)
		}
	}
}

func TestThickBarrelExample(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 1.6875 * inch, Radius: (75.125 + 1.6875/2) * inch, Length: 500 * inch}
	p := port.Port{Name: "n", OutsideDiameter: 2 * 12.75 * inch, TubeWall: 4.625 * inch, Station: 250 * inch, Outside: 20 * inch, OutsideLeg: 0.375 * inch, Fit: port.Flush, FullGroove: true}
	r, err := p.Area(w, port.Load{Pressure: 356 * psi}, strengths(20000, 20000))
	if err != nil {
		t.Fatal(err)
	}
	m := r.Meridional.Whole
	checktest.Printed(t, "tr", r.RequiredWall/inch, "1.3517")
	checktest.Printed(t, "trn", r.RequiredTube/inch, "0.1462")
	checktest.Printed(t, "A", m.Required/in2, "21.964")
	checktest.Printed(t, "A1", m.A1/in2, "5.457")
	checktest.Printed(t, "A2", m.A2/in2, "37.790")
	checktest.Printed(t, "A41", m.A41/in2, "0.141")
	checktest.Printed(t, "available", m.Available()/in2, "43.39")
}

// megyesy is PO-25 with the strength ratios of later editions.
func megyesy() (port.Port, port.Wall, port.Load, port.Strengths) {
	return port.Port{Name: "n", OutsideDiameter: 6.625 * inch, TubeWall: 0.432 * inch, InsideWall: 0.432 * inch, Station: 100 * inch,
			Outside: 8 * inch, Inside: 2 * inch, OutsideLeg: 0.5 * inch},
		port.Wall{Surface: port.Cylinder, Thickness: 0.5 * inch, Radius: 24.25 * inch, Length: 200 * inch},
		port.Load{Pressure: 250 * psi}, strengths(17500, 15000)
}

func TestHandbookExample(t *testing.T) {
	p, w, load, s := megyesy()
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	m := r.Meridional.Whole
	checktest.Printed(t, "tr", r.RequiredWall/inch, "0.346")
	checktest.Printed(t, "trn", r.RequiredTube/inch, "0.048")
	checktest.Printed(t, "A", m.Required/in2, "2.035")
	checktest.Printed(t, "A1", m.A1/in2, "0.869")
	checktest.Printed(t, "A2", m.A2/in2, "0.710")
	checktest.Printed(t, "A3", m.A3/in2, "0.800")
	checktest.Printed(t, "A41", m.A41/in2, "0.214")
	checktest.Printed(t, "available", m.Available()/in2, "2.593")
	checktest.Printed(t, "pressure area", r.Pressure[0].Capacity/psi, "313.0")
	if got := r.Check("n"); got.Status() != check.Satisfied {
		t.Errorf("the source finds it sufficient: %v, %s", got.Status(), got.Reason())
	}
	p.OutsideLeg = 0
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "pressure area without weld", r.Pressure[0].Capacity/psi, "302.5")
}

// PO-26: a hillside opening's chord; a sphere of the same radius has the same
// chord in its meridional plane.
func TestHillsideChord(t *testing.T) {
	w := port.Wall{Surface: port.Sphere, Thickness: 1.6875 * inch, Radius: 75.969 * inch}
	p := port.Port{Name: "n", OutsideDiameter: 9 * inch, TubeWall: (9 - 7.87) / 2 * inch, Radius: 34.875 * inch, Parallel: true}
	c, err := p.Chords(w)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "chord", c.Meridional/inch, "8.8627")
	checktest.Printed(t, "ID/cos φ", 7.87/math.Cos(c.Obliquity), "8.859")
	checktest.Printed(t, "φ", c.Obliquity/deg, "27.33")
}

// PO-09: entranceway of UFC 4-159-01N (read): d 40.0, tr 2.72, wall 2.75 in: required
// 108.8 in2, half of it 54.4; limit off the wall 2.5 · 2.75 = 6.875 (printed 6.85).
func TestEntranceway(t *testing.T) {
	const s, p = 20000.0, 500.0
	radius := 2.72 * (s - 0.6*p) / p // so that tr is the source's
	w := port.Wall{Surface: port.Cylinder, Thickness: 2.75 * inch, Radius: (radius + 2.75/2) * inch, Length: 500 * inch}
	n := port.Port{Name: "n", OutsideDiameter: 48 * inch, TubeWall: 4 * inch, Station: 250 * inch, Outside: 20 * inch, Fit: port.Flush, FullGroove: true}
	r, err := n.Area(w, port.Load{Pressure: p * psi}, strengths(s, s))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "required", r.Meridional.Whole.Required/in2, "108.8")
	checktest.Printed(t, "half", r.Meridional.Outboard.Required/in2, "54.4")
	checktest.Printed(t, "limit off the wall", r.Meridional.NormalLimit/inch, "6.875")
}
