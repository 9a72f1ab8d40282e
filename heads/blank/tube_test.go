package blank_test

// Tube ends of PC-01 to PC-09: computed by two methods each, in mm.

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/heads"
	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

func shaped(t testing.TB, shape string, g heads.Geometry) heads.Head {
	t.Helper()
	s, ok := heads.FindShape(shape)
	if !ok {
		t.Fatal(shape)
	}
	h, err := s.New(g)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func TestTubeEnds(t *testing.T) {
	cone := func(α float64) heads.Head {
		return shaped(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: α * deg, Thickness: 3 * mm})
	}
	sphere := func(R float64) heads.Head { // mid-surface R, at 1.5 mm
		return shaped(t, "hemisphere", heads.Geometry{InsideDiameter: 2 * (R - 1.5) * mm, Thickness: 3 * mm})
	}
	for _, row := range []struct {
		id    string
		h     heads.Head
		n     float64 // of the surface in the source [mm]
		od, e float64
		drop  [4]string // below ψ 180 at ψ 0, 45, 90, 135
	}{
		{"PC-01", cone(30), 1.5, 25.4, 60, [4]string{"43.9941", "38.5595", "24.2996", "7.8012"}},
		{"PC-02", cone(45), 1.5, 25.4, 60, [4]string{"25.4000", "22.2624", "14.0294", "4.5040"}},
		{"PC-04", cone(60), 1.5, 38.1, 80, [4]string{"21.9970", "19.3332", "12.2900", "4.0008"}},
		{"PC-07", sphere(150), 1.5, 38.1, 60, [4]string{"16.8223", "14.2227", "8.1511", "2.3389"}},
		{"PC-08", sphere(200), 1.5, 50.8, 100, [4]string{"29.7624", "25.0585", "14.2337", "4.0533"}},
		{"PC-09", shaped(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.3, Aspect: 2, Thickness: 3 * mm}), 0, 38.1, 60, [4]string{"8.4112", "7.1114", "4.0756", "1.1695"}},
	} {
		w, err := port.OnHead(row.h, 3*mm)
		if err != nil {
			t.Fatal(err)
		}
		tb := blank.Tube{Port: tube(row.od, row.e), Wall: w, Head: row.h, Forward: true}
		near, err := tb.End(math.Pi, row.n*mm)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range row.drop {
			h, err := tb.End(float64(i)*45*deg, row.n*mm)
			if err != nil {
				t.Fatal(err)
			}
			// The source's heights are rounded once each: their difference to a whole digit.
			checktest.Close(t, row.id+" "+want, (near-h)/mm, number(t, want), 1e-4/number(t, want)*1.001)
		}
	}
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	var v, scale float64 = 0, 1
	seen := false
	for _, c := range text {
		if c == '.' {
			seen = true
			continue
		}
		v = 10*v + float64(c-'0')
		if seen {
			scale *= 10
		}
	}
	return v / scale
}

// On the mid-surface the end is that of the port's own geometry, and the faces of
// a cone stand t/sin α apart along the tube.
func TestTubeEndOnACone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		α := rapid.Float64Range(30, 80).Draw(rt, "α")
		e := rapid.Float64Range(40, 150).Draw(rt, "e")
		od := e * rapid.Float64Range(0.2, 0.6).Draw(rt, "od/e")
		ψ := rapid.Float64Range(-math.Pi, math.Pi).Draw(rt, "ψ")
		h := shaped(t, "cone", heads.Geometry{InsideDiameter: 0.5, HalfAngle: α * deg, Thickness: 4 * mm})
		w, err := port.OnHead(h, 4*mm)
		tb := blank.Tube{Port: tube(od, e), Wall: w, Head: h}
		want, err2 := tb.Port.TubeEnd(w, ψ)
		near, err3 := tb.End(math.Pi, 2*mm)
		got, err4 := tb.End(ψ, 2*mm)
		in, err5 := tb.End(ψ, 0)
		out, err6 := tb.End(ψ, 4*mm)
		for _, err := range []error{err, err2, err3, err4, err5, err6} {
			if err != nil {
				rt.Fatal(err)
			}
		}
		if math.Abs(near-got-want) > 1e-12 || math.Abs(out-in-4*mm/math.Sin(α*deg)) > 1e-12 {
			rt.Fatalf("%.12g below the nearest point, want %.12g; wall %.12g", near-got, want, out-in)
		}
	})
}

// A radial tube on the cylinder: the end lies on the circle of the face. A normal one
// on a cone: put back in space it lies on the face.
func TestTubeEndLiesOnTheFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ψ := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "ψ")
		n := rapid.Float64Range(0, 4).Draw(t, "n")
		a := rapid.Float64Range(5, 40).Draw(t, "a")
		p := port.Port{Name: "p", OutsideDiameter: 2 * a, Radius: 100}
		c := blank.Tube{Port: p, Wall: port.Wall{Surface: port.Cylinder, Radius: 102, Thickness: 4, Length: 1}}
		h, err := c.End(ψ, n)
		if err != nil || math.Abs(math.Hypot(102+h, a*math.Sin(ψ))-(100+n)) > 1e-9 {
			t.Fatalf("cylinder: %v %v", h, err)
		}
		α := rapid.Float64Range(20, 80).Draw(t, "α") * deg
		k := blank.Tube{Port: p, Wall: port.Wall{Surface: port.Cone, Radius: 300, Thickness: 4, HalfApex: α}}
		if h, err = k.End(ψ, n); err != nil {
			t.Fatal(err)
		}
		sin, cos := math.Sincos(α)
		x := 100 + a*math.Cos(ψ)*sin + h*cos
		z := 100/sin*cos + a*math.Cos(ψ)*cos - h*sin
		off := math.Hypot(x, a*math.Sin(ψ))*cos - z*sin // from the mid-surface
		if math.Abs(off-(n-2)) > 1e-9 {
			t.Fatalf("cone: %g outside of the mid-surface, want %g", off, n-2)
		}
	})
}

// Beside the cylinder's radius, towards rising clock: who looks aft at the tube has rising
// clock on the left, so that the template's left side reaches down further there. Both
// sides lie on the face.
func TestTubeEndBesideTheRadius(t *testing.T) {
	p := port.Port{Name: "p", OutsideDiameter: 40 * mm, TubeWall: 2 * mm, Offset: 50 * mm, Station: 100 * mm}
	c := blank.Tube{Port: p, Wall: port.Wall{Surface: port.Cylinder, Radius: 102 * mm, Thickness: 4 * mm, Length: 200 * mm}, Forward: true}
	for ψ, y := range map[float64]float64{-math.Pi / 2: 70, 0: 50, math.Pi / 2: 30, math.Pi: 50} {
		for _, n := range []float64{0, 4} {
			h, err := c.End(ψ, n*mm)
			if err != nil {
				t.Fatal(err)
			}
			checktest.Close(t, "face", math.Hypot(102+h/mm, y), 100+n, 1e-12)
		}
	}
	b := c.Blank(blank.Options{})
	if b.Err != nil {
		t.Fatal(b.Err)
	}
	for _, l := range b.Labels {
		if l.Text == "rising clock" && l.At.X >= 0 {
			t.Errorf("rising clock stands at %g, to the right", l.At.X)
		}
	}
}

// Cone of 45°, wall 12, tube 42.4 at 110 mm, projecting 40 outside and 8 inside: by
// hand, length 40 + 42.4 + 12√2 + 8.
func TestTubeTemplateByHand(t *testing.T) {
	h := shaped(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 45 * deg, Thickness: 12 * mm})
	w, err := port.OnHead(h, 12*mm)
	if err != nil {
		t.Fatal(err)
	}
	p := tube(42.4, 110)
	p.Outside, p.Inside, p.InsideWall = 40*mm, 8*mm, 2*mm
	tb := blank.Tube{Name: "tube-p", Port: p, Wall: w, Head: h}
	b := tb.Blank(blank.Options{})
	checktest.Printed(t, "round", value(t, b, "W")/mm, "133.204")
	checktest.Printed(t, "length", value(t, b, "H")/mm, "107.371")
	for at, want := range map[string]string{"middle line": "82.4", "ends": "40"} {
		checktest.Printed(t, at, value(t, b, "upper edge to the outside face's line at the "+at)/mm, want)
	}
	checktest.Close(t, "sheet", b.Cut[0].Area(), value(t, b, "W")*value(t, b, "H"), 1e-12)
	tb.Port.Fit, tb.Port.Inside = port.Flush, 0
	flush := tb.Blank(blank.Options{})
	checktest.Printed(t, "flush: length", value(t, flush, "H")/mm, "99.371")
	tb.Port.Fit = port.On
	checktest.Printed(t, "on: length", value(t, tb.Blank(blank.Options{}), "H")/mm, "82.4")
	tb.Port.Radius = 195 * mm
	if b := tb.Blank(blank.Options{}); b.Err == nil || !strings.Contains(b.Err.Error(), "over the rim") || len(b.Cut) > 0 {
		t.Errorf("over the rim: %v", b.Err)
	}
	tb.Port.Radius = math.NaN()
	if b := tb.Blank(blank.Options{}); b.Err == nil {
		t.Error("drawn without a place")
	}
}
