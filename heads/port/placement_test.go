package port_test

import (
	"math"
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
