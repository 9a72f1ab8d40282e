package heads_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check/checktest"
)

// Oblique port cases worked by two methods: computed. The angle between tube
// axis and wall normal where the tube, parallel to the tank axis, meets the
// mid-surface at radius e, and the meridional chord of the tube of diameter d:
// hypot(d, g(e − d/2) − g(e + d/2)). Millimetres; radii of the mid-surface.
func TestObliquityAndChord(t *testing.T) {
	for _, row := range []struct {
		where, shape string
		g            heads.Geometry
		d, e         float64
		φ, chord     string
	}{
		{"sphere 150", "hemisphere", heads.Geometry{InsideDiameter: 290}, 38.1, 60, "23.5782", "41.6485"},
		{"sphere 200", "hemisphere", heads.Geometry{InsideDiameter: 390}, 50.8, 100, "30.0000", "58.8765"},
		{"ellipsoid 150/75", "ellipsoid", heads.Geometry{InsideDiameter: 300, Depth: 75}, 38.1, 60, "12.3100", "39.0174"},
		{"cone 45 deg", "cone", heads.Geometry{InsideDiameter: 300, HalfAngle: 45 * deg}, 25.4, 60, "45.0000", "35.9210"},
		{"cone 60 deg", "cone", heads.Geometry{InsideDiameter: 300, HalfAngle: 60 * deg}, 38.1, 80, "30.0000", "43.9941"},
	} {
		h := head(t, row.shape, row.g)
		offset := 0.0
		if row.shape == "hemisphere" {
			offset = 5
		}
		p, err := h.PointAt(row.e, offset)
		near, err1 := h.AxialAt(row.e-row.d/2, offset)
		far, err2 := h.AxialAt(row.e+row.d/2, offset)
		if err != nil || err1 != nil || err2 != nil {
			t.Fatal(row.where, err, err1, err2)
		}
		checktest.Printed(t, row.where+", angle", p.Phi/deg, row.φ)
		checktest.Printed(t, row.where+", chord", math.Hypot(row.d, near-far), row.chord)
	}
	// Across crown and knuckle: D 200, L 160, rk 30.8, a 12.7, e 80: chord 30.096.
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 200, CrownRadius: 160, KnuckleRadius: 30.8})
	near, _ := h.AxialAt(80-12.7, 0)
	far, _ := h.AxialAt(80+12.7, 0)
	checktest.Printed(t, "across crown and knuckle", math.Hypot(25.4, near-far), "30.096")
}

// A parallel surface stands off the inside face by the offset, square to it, and
// PointAt, AxialAt and Points agree on it.
func TestParallelSurface(t *testing.T) {
	all := every(t)
	for name, h := range every(t) {
		g := h.Geometry()
		g.Inward = true
		all["inward "+name] = head(t, h.Kind(), g)
	}
	for name, h := range all {
		const o = 0.006
		way := o
		if h.Geometry().Inward {
			way = -o
		}
		for i, p := range h.Points(60, o) {
			if p.Piece == "" || p.R1 <= 0 || p.R < 0 {
				t.Fatalf("%s: point %d is %+v", name, i, p)
			}
			x, err := h.AxialAt(p.R, o)
			if err != nil || math.Abs(x-p.X) > 1e-7 { // near a rim x falls steeply with r
				t.Errorf("%s: AxialAt(%g) = %g, %v; point has %g", name, p.R, x, err, p.X)
			}
			foot := heads.Point{X: p.X - way*math.Cos(p.Phi), R: p.R - way*math.Sin(p.Phi)}
			if foot.X < 0 || foot.X > h.Depth() {
				continue // a cone's parallel face runs on to the planes of seam and tip
			}
			checktest.Close(t, name+", foot of the normal", foot.R, h.Radius(foot.X), 1e-6)
		}
		if _, err := h.PointAt(2, 0); err == nil {
			t.Errorf("%s: a point at twice the diameter", name)
		}
		if _, err := h.PointAt(math.NaN(), 0); err == nil {
			t.Errorf("%s: a point at radius NaN", name)
		}
	}
}

// Between pieces the meridian is continuous in place and direction, and Breaks
// says where; toricone and torisphere end square to the seam plane.
func TestPiecesJoin(t *testing.T) {
	for _, shape := range []string{"torisphere", "toricone"} {
		h := every(t)[shape]
		for _, o := range []float64{0, 0.005} {
			ps := h.Pieces(20, o)
			a, b := ps[0][len(ps[0])-1], ps[1][0]
			checktest.Close(t, shape+" x", a.X, b.X, 1e-12)
			checktest.Close(t, shape+" r", a.R, b.R, 1e-12)
			checktest.Close(t, shape+" φ", a.Phi, b.Phi, 1e-12)
			checktest.Close(t, shape+" r2", a.R2, b.R2, 1e-12)
			if o == 0 {
				checktest.Close(t, shape+" break", h.Breaks()[0], b.X, 1e-12)
			}
			end := ps[1][len(ps[1])-1]
			if end.X != 0 || end.Phi != math.Pi/2 {
				t.Errorf("%s ends at %+v", shape, end)
			}
		}
	}
}

// Principal radii: r2 = r/sin φ everywhere and r1 = ds/dφ along curved pieces.
func TestPrincipalRadii(t *testing.T) {
	for name, h := range every(t) {
		for _, piece := range h.Pieces(4000, 0.004) {
			for i := 1; i+1 < len(piece); i++ {
				a, p, b := piece[i-1], piece[i], piece[i+1]
				checktest.Close(t, name+" r2", p.R2*math.Sin(p.Phi), p.R, 1e-12)
				if b.Phi == a.Phi {
					if !math.IsInf(p.R1, 1) {
						t.Fatalf("%s: straight piece with r1 %g", name, p.R1)
					}
					continue
				}
				checktest.Close(t, name+" r1", p.R1, math.Hypot(b.X-a.X, b.R-a.R)/(b.Phi-a.Phi), 1e-5) // central difference
			}
		}
	}
	// Rim of an ellipsoid: r1 = h²/R, r2 = R (Moss, Pressure Vessel Design Manual, procedure 2-4: read).
	ps := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 2, Aspect: 2}).Points(10, 0)
	rim, crown := ps[len(ps)-1], ps[0]
	checktest.Close(t, "r1 at the rim", rim.R1, 0.25, 1e-12)
	checktest.Close(t, "r2 at the rim", rim.R2, 1, 1e-12)
	// The true crown radius of a 2:1 head is 1.00 D, not the 0.90 D of the table for openings.
	checktest.Close(t, "crown radius", crown.R1, 2, 1e-12)
}

// Depth and half angle are two ways to say the same cone; each gives the other.
func TestAngleFromDepth(t *testing.T) {
	for _, shape := range []string{"cone", "toricone"} {
		for _, tip := range []float64{0, 0.3, 0.95} {
			g := heads.Geometry{InsideDiameter: 1, HalfAngle: 35 * deg, TipDiameter: tip}
			if shape == "toricone" {
				g.KnuckleRadius = 0.1
			}
			h := head(t, shape, g)
			g.HalfAngle, g.Depth = 0, h.Depth()
			checktest.Close(t, shape, head(t, shape, g).Geometry().HalfAngle, 35*deg, 1e-9)
		}
	}
}

func TestImpossibleHeads(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		shape string
		g     heads.Geometry
		want  string // words that the refusal must hold
	}{
		{"hemisphere", heads.Geometry{Depth: 0.4}, "disagree"},
		{"hemisphere", heads.Geometry{KnuckleRadius: 0.1}, "knuckle_radius: a hemisphere has none"},
		{"ellipsoid", heads.Geometry{}, "needs aspect or depth"},
		{"ellipsoid", heads.Geometry{Aspect: 0.9}, "deeper than a hemisphere"},
		{"ellipsoid", heads.Geometry{Aspect: 2, Depth: 0.2}, "disagree"},
		{"ellipsoid", heads.Geometry{Aspect: nan}, "aspect must be greater than zero"},
		{"torisphere", heads.Geometry{KnuckleRadius: 0.1}, "needs crown_radius"},
		{"torisphere", heads.Geometry{CrownRadius: 1}, "needs knuckle_radius"},
		{"torisphere", heads.Geometry{CrownRadius: 0.49, KnuckleRadius: 0.1}, "under half the inside diameter"},
		{"torisphere", heads.Geometry{CrownRadius: 1, KnuckleRadius: 0.51}, "larger than the cylinder"},
		{"torisphere", heads.Geometry{CrownRadius: 0.5, KnuckleRadius: 0.5}, "must be smaller than the crown_radius"},
		{"torisphere", heads.Geometry{CrownRadius: 1, KnuckleRadius: 0.1, Depth: 0.25}, "disagree"},
		{"cone", heads.Geometry{}, "needs half_angle or depth"},
		{"cone", heads.Geometry{HalfAngle: 95 * deg}, "below 90 deg"},
		{"cone", heads.Geometry{HalfAngle: -0.1}, "half_angle must be greater than zero"},
		{"cone", heads.Geometry{HalfAngle: 45 * deg, Depth: 0.4}, "disagree"},
		{"cone", heads.Geometry{HalfAngle: 45 * deg, Depth: 0.6, TipDiameter: 0.1}, "closes at 0.5 m, before its depth"},
		{"cone", heads.Geometry{HalfAngle: 45 * deg, TipDiameter: 1}, "must be smaller than the cylinder"},
		{"cone", heads.Geometry{HalfAngle: 45 * deg, StraightFlange: 0.02}, "straight_flange: a cone has none"},
		{"toricone", heads.Geometry{HalfAngle: 45 * deg}, "needs knuckle_radius"},
		{"toricone", heads.Geometry{HalfAngle: 45 * deg, KnuckleRadius: 0.6}, "larger than the cylinder"},
		{"toricone", heads.Geometry{HalfAngle: 80 * deg, KnuckleRadius: 0.4, TipDiameter: 0.5}, "no cone is left"},
		{"toricone", heads.Geometry{Depth: 0.05, KnuckleRadius: 0.1}, "too shallow"},
		{"toricone", heads.Geometry{HalfAngle: 45 * deg, KnuckleRadius: 0.1, Depth: 0.9}, "before its depth"},
		{"flat", heads.Geometry{Depth: 0.1}, "depth: a flat head has none"},
		{"flat", heads.Geometry{Inward: true, StraightFlange: nan}, "straight_flange must not be negative"},
	} {
		row.g.InsideDiameter, row.g.Thickness = 1, 0.01
		s, _ := heads.FindShape(row.shape)
		if h, err := s.New(row.g); err == nil {
			t.Errorf("%s %+v: accepted with depth %g, want %q", row.shape, row.g, h.Depth(), row.want)
		} else if !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s %+v: %v; want %q", row.shape, row.g, err, row.want)
		}
	}
	for _, s := range heads.Shapes {
		for _, D := range []float64{0, -1, nan, math.Inf(1)} {
			if _, err := s.New(heads.Geometry{InsideDiameter: D, Thickness: 0.01, HalfAngle: 0.5, Depth: 0}); err == nil {
				t.Errorf("%s of diameter %g accepted", s.Name, D)
			}
		}
	}
	if _, ok := heads.FindShape("dome"); ok {
		t.Error("a shape that is not there was found")
	}
}

// Corrosion moves the inside face outwards along its normals.
func TestCorrodedIsParallel(t *testing.T) {
	for name, h := range every(t) {
		worn, err := heads.Corroded(h, 0.002)
		if err != nil {
			t.Fatal(name, err)
		}
		g, w := h.Geometry(), worn.Geometry()
		checktest.Close(t, name+" diameter", w.InsideDiameter, g.InsideDiameter+0.004, 1e-15)
		checktest.Close(t, name+" wall", w.Thickness, g.Thickness-0.002, 1e-12)
		if h.Kind() == "torisphere" {
			checktest.Close(t, name+" depth", w.Depth, g.Depth+0.002, 1e-12)
		}
		for _, out := range []float64{-0.001, g.Thickness, math.NaN()} {
			if _, err := heads.Corroded(h, out); err == nil {
				t.Errorf("%s: corrosion %g accepted", name, out)
			}
		}
	}
}
