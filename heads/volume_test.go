package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check/checktest"
)

// D. Jones, "Calculating Tank Volume" and "Compute Fluid Volumes in Vertical
// Tanks" (Chemical Processing, December 2003), as quoted in the formula texts of
// a fluids library: read. Inches and US gallons of 231 cubic inches.
const (
	inch   = 0.0254
	gallon = 231 * inch * inch * inch
	deg    = math.Pi / 180
)

// head makes a head or ends the test.
func head(t testing.TB, shape string, g heads.Geometry) heads.Head {
	t.Helper()
	s, ok := heads.FindShape(shape)
	if !ok {
		t.Fatalf("no shape %q", shape)
	}
	if g.Thickness == 0 {
		g.Thickness = 0.01 * g.InsideDiameter
	}
	h, err := s.New(g)
	if err != nil {
		t.Fatalf("%s: %v", shape, err)
	}
	return h
}

// liquid is the volume [m3] up to the level [m] above the lowest point of a
// standing tank with this head as its bottom; inward heads stand in the liquid.
func liquid(h heads.Head, level float64) float64 {
	R, a := h.Geometry().InsideDiameter/2, h.Depth()
	switch over := math.Max(0, level-a); {
	case h.Geometry().Inward && level >= a:
		return math.Pi*R*R*level - h.Volume()
	case h.Geometry().Inward:
		return math.Pi*R*R*level - (h.Volume() - h.VolumeFromApex(a-level))
	default:
		return h.VolumeFromApex(math.Min(level, a)) + math.Pi*R*R*over
	}
}

func TestVolumesJones(t *testing.T) {
	for _, row := range []struct {
		where, shape string
		g            heads.Geometry // inches
		level        []float64      // in
		want         []string       // gal
	}{
		{"cone bottom", "cone", heads.Geometry{InsideDiameter: 132, Depth: 33}, []float64{24, 60}, []string{"250.674614", "2251.175536"}},
		{"ellipsoid bottom", "ellipsoid", heads.Geometry{InsideDiameter: 132, Depth: 33}, []float64{24, 60}, []string{"783.358168", "2902.831612"}},
		{"torisphere bottom f 1 k 0.06", "torisphere", heads.Geometry{InsideDiameter: 132, CrownRadius: 132, KnuckleRadius: 0.06 * 132},
			[]float64{1, 22, 24, 60}, []string{"1.790662", "785.587561", "904.068828", "3036.761441"}},
		{"inward cone", "cone", heads.Geometry{InsideDiameter: 113, Depth: 33, Inward: true}, []float64{15, 25, 50}, []string{"251.158256", "614.606843", "1693.165441"}},
		{"inward ellipsoid", "ellipsoid", heads.Geometry{InsideDiameter: 113, Depth: 33, Inward: true}, []float64{15, 25, 50}, []string{"44.849689", "207.637447", "1215.605957"}},
	} {
		g := row.g
		for _, v := range []*float64{&g.InsideDiameter, &g.Depth, &g.CrownRadius, &g.KnuckleRadius} {
			*v *= inch
		}
		h := head(t, row.shape, g)
		for i, level := range row.level {
			checktest.Printed(t, row.where, liquid(h, level*inch)/gallon, row.want[i])
		}
	}
}

// A spherical cap is the crown of a torisphere taken alone; no shape of ours ends
// at a corner like it, so the crown of a torisphere of the cap's radius is compared:
// printed for D 132 in, depth 33 in, level 24 in, inside the cap.
func TestCapJones(t *testing.T) {
	const D, a = 132 * inch, 33 * inch
	rs := (a*a + D*D/4) / (2 * a)
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: D, CrownRadius: rs, KnuckleRadius: 0.01 * inch})
	checktest.Printed(t, "cap bottom, level 24 in", liquid(h, 24*inch)/gallon, "583.601835")
}

func TestTorisphereDepthJones(t *testing.T) {
	for _, row := range []struct {
		where   string
		D, f, k float64
		want    string // in
	}{
		{"D 96 f 0.9 k 0.2", 96, 0.9, 0.2, "25.684269"},
		{"D 108 f 1 k 0.06", 108, 1, 0.06, "18.288462"},
	} {
		h := head(t, "torisphere", heads.Geometry{InsideDiameter: row.D * inch, CrownRadius: row.f * row.D * inch, KnuckleRadius: row.k * row.D * inch})
		checktest.Printed(t, row.where, h.Depth()/inch, row.want)
	}
}

// Whole tanks and heads worked by numerical integration of the profile besides
// the closed form: computed. Metres.
func TestVolumesComputed(t *testing.T) {
	two := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2})
	checktest.Printed(t, "2:1 both ends, cylinder 1.2", 2*two.Volume()+math.Pi*0.04*1.2, "0.16755161")
	cone := head(t, "cone", heads.Geometry{InsideDiameter: 0.3, HalfAngle: 45 * deg})
	top := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.3, Aspect: 2})
	checktest.Printed(t, "cone 45 deg, cylinder 0.9, 2:1 top", cone.Volume()+math.Pi*0.0225*0.9+top.Volume(), "0.07068583")
	tori := head(t, "torisphere", heads.Geometry{InsideDiameter: 0.5, CrownRadius: 0.5, KnuckleRadius: 0.05})
	checktest.Printed(t, "torisphere depth", tori.Depth(), "0.09688711")
	checktest.Printed(t, "torisphere volume", tori.Volume(), "0.01237075")
	checktest.Printed(t, "torisphere both ends, cylinder 1.0", 2*tori.Volume()+math.Pi*0.0625, "0.22109104")
	// Inward 2:1, level at the crown: mass of oxygen left in the annulus.
	inward := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Inward: true})
	checktest.Printed(t, "annulus to the crown", 1141*liquid(inward, 0.1), "4.7794")
	checktest.Close(t, "annulus of 2.5 kg", 1141*liquid(inward, 0.08057282), 2.5, 1e-6)
	checktest.Close(t, "60 kg over an inward head", 1141*liquid(inward, 0.48512839), 60, 1e-7)
}

// The torisphere depths of D = 200 printed for L 200, r 12; L 200, r 20; L 160, r 30.8: computed.
func TestTorisphereDepthComputed(t *testing.T) {
	for _, row := range []struct {
		L, r float64
		want string
	}{{200, 12, "33.868"}, {200, 20, "38.755"}, {160, 30.8, "50.895"}} {
		h := head(t, "torisphere", heads.Geometry{InsideDiameter: 200, CrownRadius: row.L, KnuckleRadius: row.r})
		checktest.Printed(t, "D 200", h.Depth(), row.want)
	}
}

// every head that the tests of all shapes share, in metres.
func every(t testing.TB) map[string]heads.Head {
	return map[string]heads.Head{
		"hemisphere": head(t, "hemisphere", heads.Geometry{InsideDiameter: 1}),
		"ellipsoid":  head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 2}),
		"torisphere": head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 0.9, KnuckleRadius: 0.12}),
		"cone":       head(t, "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: 40 * deg, TipDiameter: 0.2}),
		"whole cone": head(t, "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: 25 * deg}),
		"toricone":   head(t, "toricone", heads.Geometry{InsideDiameter: 1, HalfAngle: 40 * deg, KnuckleRadius: 0.15, TipDiameter: 0.2}),
	}
}

// Balance: the closed volume is the integral of π r(x)² of the same meridian, from
// the apex to any depth, by a midpoint rule in x = h sin u, which is smooth at the ends.
func TestVolumeIsIntegralOfRadius(t *testing.T) {
	for name, h := range every(t) {
		for _, part := range []float64{0.03, 0.4, 0.85, 1} {
			to := part * h.Depth()
			const n = 20000
			var v float64
			for i := range n {
				u := (float64(i) + 0.5) / n * math.Pi
				depth := to * (1 - math.Cos(u)) / 2
				r := h.Radius(h.Depth() - depth)
				v += math.Pi * r * r * to * math.Sin(u) / 2 * math.Pi / n
			}
			checktest.Close(t, name, h.VolumeFromApex(to), v, 1e-6) // midpoint rule across a jump of curvature
		}
	}
}

func TestVolumeRange(t *testing.T) {
	for name, h := range every(t) {
		if v := h.VolumeFromApex(0); v != 0 {
			t.Errorf("%s: volume of nothing is %g", name, v)
		}
		if v := h.VolumeFromApex(h.Depth()); v != h.Volume() {
			t.Errorf("%s: %g is not the whole volume %g", name, v, h.Volume())
		}
		for _, out := range []float64{-1e-6, h.Depth() + 1e-6, math.NaN()} {
			if v := h.VolumeFromApex(out); !math.IsNaN(v) {
				t.Errorf("%s: VolumeFromApex(%g) = %g, want NaN", name, out, v)
			}
			if r := h.Radius(out); !math.IsNaN(r) {
				t.Errorf("%s: Radius(%g) = %g, want NaN", name, out, r)
			}
		}
	}
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 1})
	if flat.Volume() != 0 || flat.Depth() != 0 || flat.Radius(0) != 0.5 {
		t.Errorf("flat head: volume %g, depth %g, radius %g", flat.Volume(), flat.Depth(), flat.Radius(0))
	}
}

// Units: with lengths times 7 a volume is 343 times as large.
func TestVolumeScales(t *testing.T) {
	for name, h := range every(t) {
		g := h.Geometry()
		for _, v := range []*float64{&g.InsideDiameter, &g.Depth, &g.CrownRadius, &g.KnuckleRadius, &g.TipDiameter, &g.Thickness} {
			*v *= 7
		}
		big := head(t, h.Kind(), g)
		checktest.Close(t, name, big.Volume(), 343*h.Volume(), 1e-12)
		checktest.Close(t, name, big.VolumeFromApex(big.Depth()/3), 343*h.VolumeFromApex(h.Depth()/3), 1e-11)
	}
}

// Limits: the ellipsoid 1:1 and the torisphere of L = D/2 are the hemisphere.
func TestVolumeLimits(t *testing.T) {
	want := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	for _, h := range []heads.Head{
		head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 1}),
		head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 0.5, KnuckleRadius: 0.1}),
	} {
		for _, part := range []float64{0.1, 0.5, 1} {
			checktest.Close(t, h.Kind(), h.VolumeFromApex(part/2), want.VolumeFromApex(part/2), 1e-12)
		}
	}
	round := head(t, "hemisphere", heads.Geometry{InsideDiameter: 2})
	checktest.Close(t, "2 π R³/3", round.Volume(), 2*math.Pi/3, 1e-15)
}
