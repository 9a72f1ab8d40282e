package assess

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check/checktest"
)

const (
	inch   = 0.0254
	gallon = 231 * inch * inch * inch
)

// tankOf returns an interior of a shape of head at both ends.
func tankOf(t *testing.T, shape string, g heads.Geometry, length float64, aftInward, fwdInward bool) *interior {
	t.Helper()
	s, ok := heads.FindShape(shape)
	if !ok {
		t.Fatalf("no shape %q", shape)
	}
	build := func(inward bool) end {
		g := g
		g.Inward = inward
		h, err := s.New(g)
		if err != nil {
			t.Fatal(err)
		}
		return end{head: h, radius: g.InsideDiameter / 2, flange: g.StraightFlange, inward: inward}
	}
	return &interior{radius: g.InsideDiameter / 2, length: length, aft: build(aftInward), fwd: build(fwdInward)}
}

// Inverted bottom heads: D. Jones, "Calculating Tank Volume", as given in the
// docstrings of the open general fluids library "fluids", module geometry
// (read): D 113 in, a 33 in, level above the rim, US gallons.
func TestInwardHeadPartialVolumes(t *testing.T) {
	for _, row := range []struct {
		shape string
		h     float64 // [in]
		want  string
	}{
		{"cone", 15, "251.158256"}, {"cone", 25, "614.606843"}, {"cone", 50, "1693.165441"},
		{"ellipsoid", 15, "44.849689"}, {"ellipsoid", 25, "207.637447"}, {"ellipsoid", 50, "1215.605957"},
	} {
		in := tankOf(t, row.shape, heads.Geometry{InsideDiameter: 113 * inch, Depth: 33 * inch, Thickness: inch}, 120*inch, true, false)
		checktest.Printed(t, row.shape, in.VolumeBelow(row.h*inch)/gallon, row.want)
	}
}

// Both formulas of the volume agree, and the volume below rises with the area of
// the section: a balance over the whole interior, straight flanges included.
func TestVolumeBelowAgreesWithSections(t *testing.T) {
	g := heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 0.004, StraightFlange: 0.02}
	for _, inward := range [][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
		in := tankOf(t, "ellipsoid", g, 1.2, inward[0], inward[1])
		lo, hi := in.Bounds()
		checktest.Close(t, "whole", in.VolumeBelow(hi), in.Volume(), 1e-12)
		if v := in.VolumeBelow(lo); math.Abs(v) > 1e-12 {
			t.Errorf("%v: %g m3 below the lowest point", inward, v)
		}
		const n = 20000
		sum := 0.0
		for i := range n {
			z := lo + (hi-lo)*(float64(i)+0.5)/n
			inner, outer := in.Radii(z)
			sum += math.Pi * (outer*outer - inner*inner) * (hi - lo) / n
		}
		checktest.Close(t, "sum of sections (midpoint rule, edges of the heads)", sum, in.Volume(), 1e-4)
	}
}

// The published volume of a tank with 2:1 heads, worked by hand: cylinder of
// radius 200 mm and 1200 mm, both heads 2/3 π R² a.
func TestWholeVolume(t *testing.T) {
	in := tankOf(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 0.004}, 1.2, false, false)
	checktest.Printed(t, "R .200, L 1.200, 2:1 heads", in.Volume(), "0.16755161")
}
