package port_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// On TC-A (half outside chord 17.961 mm, t 4) the bare wall asked beside the hole
// is 3 t = 12 mm, over 0.2 √[(2·84.85 + 4)·4] = 5.27: 29.961 mm along the wall,
// 21.186 mm in radius.
func TestCheckPlacement(t *testing.T) {
	p, w, _, _ := areaCase(45, 60, 4, 3, 1, 4, 6)
	for _, row := range []struct {
		name string
		rim  float64 // mm
		pad  float64 // mm
		want check.Status
	}{
		{"just enough", 81.19, 0, check.Satisfied},
		{"just short", 81.18, 0, check.NotSatisfied},
		{"pad over the rim", 90, 82, check.NotSatisfied},
		{"pad inside", 90, 70, check.Satisfied},
		{"hole over the rim", 72, 0, check.NotAssessed},
	} {
		w.Radius = row.rim * mm
		p.Pad = nil
		if row.pad > 0 {
			p.Pad = &port.Pad{OutsideDiameter: row.pad * mm, Thickness: 3 * mm, Leg: 3 * mm}
		}
		if got := p.CheckPlacement(w); got.Status() != row.want {
			t.Errorf("%s: %v, %s", row.name, got.Status(), got.Reason())
		}
	}
	w.Radius, w.Tip, p.Pad = 1, 40*mm, nil
	if got := p.CheckPlacement(w).Status(); got != check.NotSatisfied {
		t.Errorf("20 mm from the tip's radius: %v", got)
	}
	barrel := port.Wall{Surface: port.Cylinder, Thickness: 4 * mm, Radius: 0.2, Length: 1}
	p.Parallel, p.Station = false, 20*mm
	if got := p.CheckPlacement(barrel).Status(); got != check.NotSatisfied {
		t.Errorf("at the cylinder's end: %v", got)
	}
	p.Station = 0.5
	if got := p.CheckPlacement(barrel).Status(); got != check.Satisfied {
		t.Errorf("in the cylinder's middle: %v", got)
	}
}

// In a bolted cover, whose plate goes on past the bore, the port keeps from the seal: by
// hand, tube 21.3 x 2.7 in a plate of 24.7 at radius 50, bore 200, seal 210, leg 4:
// C/2 + leg + t = 10.65 + 4 + 24.7 = 39.35 mm of 55. A bore wider than that asks for
// itself: 60.3 x 2 in a plate of 5, d 56.3 over 30.15 + 4 + 5 = 39.15.
func TestPlacementInABoltedCover(t *testing.T) {
	p := port.Port{Name: "fill", Radius: 50 * mm, Parallel: true, OutsideDiameter: 21.3 * mm, TubeWall: 2.7 * mm, OutsideLeg: 4 * mm}
	w := port.Wall{Surface: port.Flat, Thickness: 24.7 * mm, Radius: 100 * mm}
	if r := p.CheckPlacement(w); r.Status() != check.NotSatisfied || !strings.Contains(r.Note, "caution") || strings.Contains(r.Note, "five") {
		t.Errorf("welded in at its rim, 3 t beside the hole: %v, %s", r.Status(), r.Note)
	}
	w.Seal = 105 * mm
	r := p.CheckPlacement(w)
	checktest.Close(t, "need", r.Demand.Value, 39.35*mm, 1e-9)
	checktest.Close(t, "L", r.Capacity.Value, 55*mm, 1e-9)
	if r.Status() != check.Satisfied || r.Note != "" {
		t.Errorf("%v: %s %s", r.Status(), r.Note, r.Reason())
	}
	p.Radius = 66 * mm // 39 mm
	if r := p.CheckPlacement(w); r.Status() != check.NotSatisfied {
		t.Errorf("its weld less than a wall from the seal: %v", r.Status())
	}
	p.Radius, p.Insert = 50*mm, &port.Insert{OutsideDiameter: 60 * mm, Thickness: 30 * mm, Efficiency: 1}
	checktest.Close(t, "insert", p.CheckPlacement(w).Demand.Value, (30+3*24.7)*mm, 1e-9)
	wide := port.Port{Name: "hatch", Parallel: true, OutsideDiameter: 60.3 * mm, TubeWall: 2 * mm, OutsideLeg: 4 * mm}
	checktest.Close(t, "wide", wide.CheckPlacement(port.Wall{Surface: port.Flat, Thickness: 5 * mm, Radius: 100 * mm, Seal: 105 * mm}).Demand.Value, 56.3*mm, 1e-9)
	wide.Pad = &port.Pad{OutsideDiameter: 130 * mm, Thickness: 5 * mm, Leg: 3 * mm}
	checktest.Close(t, "pad", wide.CheckPlacement(port.Wall{Surface: port.Flat, Thickness: 5 * mm, Radius: 100 * mm, Seal: 105 * mm}).Demand.Value, 68*mm, 1e-9)
}

func TestSeamDistance(t *testing.T) {
	p := tube(25.4, 2, 60)
	p.Clock = 350 * deg
	checktest.Close(t, "cylinder", p.SeamDistance(port.Wall{Surface: port.Cylinder, Radius: 0.2}, 20*deg), 0.2*30*deg, 1e-12)
	// Opposite on a cone of 30 degrees: flat angle 90, the slant distance itself.
	checktest.Close(t, "cone, opposite", p.SeamDistance(cone(30, 3), 170*deg), 120*mm, 1e-12)
	checktest.Close(t, "dome", p.SeamDistance(port.Wall{Surface: port.Sphere, Radius: 0.2}, 20*deg), 30*mm, 1e-12)
	if !math.IsNaN(p.SeamDistance(cone(30, 3), math.NaN())) {
		t.Error("a seam at no clock has no distance")
	}
}

// Walls taken from heads: every mid-surface lies half a wall off the inside face.
func TestOnHead(t *testing.T) {
	const d, wall = 0.4, 4 * mm
	for _, row := range []struct {
		shape string
		g     heads.Geometry
		r     float64 // where to compare [m]
	}{
		{"hemisphere", heads.Geometry{InsideDiameter: d, Thickness: wall}, 0.1},
		{"ellipsoid", heads.Geometry{InsideDiameter: d, Aspect: 2, Thickness: wall}, 0},
		{"torisphere", heads.Geometry{InsideDiameter: d, CrownRadius: 0.4, KnuckleRadius: 0.04, Thickness: wall}, 0.1},
		{"cone", heads.Geometry{InsideDiameter: d, HalfAngle: 30 * deg, Thickness: wall}, 0.1},
		{"toricone", heads.Geometry{InsideDiameter: d, HalfAngle: 30 * deg, KnuckleRadius: 0.04, Thickness: wall}, 0.1},
		{"flat", heads.Geometry{InsideDiameter: d, Thickness: wall}, 0.1},
	} {
		s, ok := heads.FindShape(row.shape)
		if !ok {
			t.Fatalf("no shape %s", row.shape)
		}
		h, err := s.New(row.g)
		if err != nil {
			t.Errorf("%s: %v", row.shape, err)
			continue
		}
		w, err := port.OnHead(h, wall)
		if err != nil {
			t.Errorf("%s: %v", row.shape, err)
			continue
		}
		// The port's obliquity is the head's own normal angle at mid-wall.
		pt, err := h.PointAt(row.r, wall/2)
		if err != nil {
			t.Errorf("%s: %v", row.shape, err)
			continue
		}
		p := tube(20, 2, row.r/mm)
		c, err := p.Chords(w)
		if err != nil {
			t.Errorf("%s: %v", row.shape, err)
			continue
		}
		if math.Abs(c.Obliquity-pt.Phi) > 1e-9 {
			t.Errorf("%s: obliquity %.9g, head's normal %.9g", row.shape, c.Obliquity, pt.Phi)
		}
	}
	w, err := port.OnCylinder(shell.Cylinder{InsideRadius: 0.2, Thickness: wall, Length: 1})
	if err != nil || math.Abs(w.Radius-0.202) > 1e-12 {
		t.Errorf("cylinder: %g, %v", w.Radius, err)
	}
}
