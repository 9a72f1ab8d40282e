package blank_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// sheet is a course of 600 mm of a cylinder of 400 mm inside and a wall of 8 mm.
func sheet(ports ...port.Port) blank.Sheet {
	w := port.Wall{Surface: port.Cylinder, Thickness: 8 * mm, Radius: 204 * mm, Length: 1200 * mm}
	return blank.Sheet{Name: "cylinder-1", Title: "Cylinder, sheet", Wall: w, From: 0, To: 600 * mm, Seam: 180 * deg, Ports: ports}
}

func radial(clock, station float64) port.Port {
	return port.Port{Name: "drain", OutsideDiameter: 40 * mm, TubeWall: 3 * mm, Clock: clock * deg, Station: station * mm}
}

// By hand: 2π 204 = 1281.770 mm; a port at clock 90° stands three quarters along from a
// seam at 180°.
func TestSheetByHand(t *testing.T) {
	b := sheet(radial(90, 200)).Blank(blank.Options{})
	for name, want := range map[string]string{
		"A–B": "1281.770", "A–D": "600", "A–C": "1415.250", "U": "3763.540",
		"centre of drain from the edge A–D": "961.327", "centre of drain from the edge A–B": "200",
		"hole of drain: length along the generator": "40", "hole of drain: largest width across it": "40.868", // 2·204·asin(20/200)
	} {
		checktest.Printed(t, name, value(t, b, name)/mm, want)
	}
	checktest.Close(t, "area", value(t, b, "F")+value(t, b, "hole of drain: area"), 2*math.Pi*0.204*0.6, 1e-12)
	// A gap of 2 mm: all of it off the length, half of it off before the hole.
	b = sheet(radial(90, 200)).Blank(blank.Options{Gap: 2 * mm, Kerf: 1 * mm})
	for name, want := range map[string]string{"A–B": "1279.770", "A–D": "598",
		"centre of drain from the edge A–D": "960.327", "centre of drain from the edge A–B": "199"} {
		checktest.Printed(t, "gap: "+name, value(t, b, name)/mm, want)
	}
	checktest.Close(t, "kerf", b.Cut[0].Area(), 1.280769803*0.599, 1e-9)
}

// The area of a hole in a thin cylinder is ∬ dx dy/√(1 − y²/R²) over the circle:
// πa² (1 + q²/8 + 3q⁴/64 + …), q = a/R.
func TestHoleInAThinCylinder(t *testing.T) {
	s := sheet(radial(90, 200))
	s.Wall.Thickness = 1e-9
	s.Ports[0].TubeWall = 1 * mm
	got := value(t, s.Blank(blank.Options{}), "hole of drain: area")
	q := 20.0 / 204
	checktest.Close(t, "area", got, math.Pi*0.02*0.02*(1+q*q/8+3*q*q*q*q/64), 1e-6)
}

// The sheet of a cylinder is the limit of the sector of a slender cone.
func TestSlenderConeIsTheCylinder(t *testing.T) {
	s := blank.Sector{Name: "s", Rim: 0.2, Tip: 0.2 - 1e-5, Wall: port.Wall{Surface: port.Cone, HalfApex: 1e-4, Thickness: 2 * mm, Radius: 0.2}}
	b := s.Blank(blank.Options{})
	checktest.Close(t, "edge", value(t, b, "A–D"), 0.1, 1e-6)
	checktest.Close(t, "chord is the girth", value(t, b, "A–B"), 2*math.Pi*0.2, 1e-6)
	checktest.Close(t, "area", value(t, b, "F"), 2*math.Pi*0.2*0.1, 1e-4)
}

// The zero mark is scribed, or named at the edge where the seam stands on it.
func TestZeroMark(t *testing.T) {
	for _, seam := range []float64{180, 0, 90, 45} {
		s := sheet()
		s.Seam = seam * deg
		c := sector(30)
		c.Seam = seam * deg
		for _, b := range []blank.Blank{s.Blank(blank.Options{}), c.Blank(blank.Options{})} {
			want := 4
			if seam != 45 {
				want = 3 // one of the four is the edge
			}
			found := 0
			for _, l := range b.Labels {
				if l.Text == "clock 0°" {
					found++
				}
			}
			if found != 1 || len(b.Mark) != want {
				t.Errorf("%s, seam at %g: %d zero marks, %d lines", b.Name, seam, found, len(b.Mark))
			}
		}
	}
	b := sheet().Blank(blank.Options{}) // seam at 180°: zero is half way, to the right of 270°
	if x := b.Mark[0].Vertices[0].X; math.Abs(x-math.Pi*0.204) > 1e-12 {
		t.Errorf("clock 0° at %g m", x)
	}
	if x := b.Mark[2].Vertices[0].X; math.Abs(x-math.Pi*0.102) > 1e-12 { // 90°, 270°: the line of 180° is the seam
		t.Errorf("270° at %g m", x)
	}
}

func TestSheetRefusesAndWarns(t *testing.T) {
	for name, row := range map[string]struct {
		p    port.Port
		want string
	}{
		"long seam":          {radial(180, 200), "crosses the long seam"},
		"long seam, touched": {radial(174.5, 200), "crosses the long seam"},
		"girth seam":         {radial(90, 590), "crosses the girth seam forward of it"},
		"aft end":            {radial(90, 10), "over a seam"},
	} {
		b := sheet(row.p).Blank(blank.Options{})
		if b.Err == nil || !strings.Contains(b.Err.Error(), row.want) || len(b.Cut) > 0 || len(b.Measures) > 0 {
			t.Errorf("%s: %v, %d cuts", name, b.Err, len(b.Cut))
		}
	}
	near := sheet(radial(168, 200)).Blank(blank.Options{})
	text := strings.Join(near.Cautions, "\n")
	if near.Err != nil || !strings.Contains(text, "to the long seam") || !strings.Contains(text, "limit of reinforcement of 34 mm") == (math.Pi*204*12/180 < 34) {
		t.Errorf("near: %v, %s", near.Err, text)
	}
	if b := sheet(radial(90, 900)).Blank(blank.Options{}); b.Err != nil || len(b.Cut) != 1 {
		t.Errorf("a port of another course: %v, %d cuts", b.Err, len(b.Cut))
	}
	s := sheet()
	s.From = math.NaN()
	if b := s.Blank(blank.Options{}); b.Err == nil {
		t.Error("a course without a beginning is drawn")
	}
	s = sheet()
	s.Wall.Radius, s.Wall.Thickness = 30*mm, 8*mm
	if b := s.Blank(blank.Options{}); !strings.Contains(strings.Join(b.Cautions, ""), "under 5 walls") {
		t.Errorf("a tight bend: %v", b.Cautions)
	}
}

// A wall of 400 mm inside and 8 mm, 600 mm high, with a root gap of 2 mm.
func ExampleSheet_Blank() {
	b := sheet().Blank(blank.Options{Gap: 2 * mm})
	for _, q := range b.Measures[:3] {
		fmt.Printf("%s %.1f mm\n", q.Symbol, q.Value*1e3)
	}
	// Output:
	// A–B 1279.8 mm
	// A–D 598.0 mm
	// A–C 1412.6 mm
}

// A tube beside the radius, by hand: R 204, wall 8, OD 40, offset 80 towards rising clock
// from 90°: the axis pierces at 90° + asin(80/204); the hole reaches from asin(60/208), on
// the outside face, to asin(100/200), on the inside one. Offset 10: over the radius, both
// edges on the inside face.
func TestHillsideSheet(t *testing.T) {
	p := radial(90, 200)
	p.Offset = 80 * mm
	b := sheet(p).Blank(blank.Options{})
	for name, want := range map[string]string{"centre of drain from the edge A–D": "1043.53", "centre of drain from the edge A–B": "200",
		"hole of drain: length along the generator": "40", "hole of drain: largest width across it": "47.120",
		"line of drain on the outside face: width across the generator": "42.618"} {
		checktest.Printed(t, name, value(t, b, name)/mm, want)
	}
	if text := strings.Join(b.Cautions, "\n"); !strings.Contains(text, "stands up to 4.5 mm off the tube") {
		t.Errorf("no word of the wedge of 4.499 mm: %s", text)
	}
	p.Offset = 10 * mm
	b = sheet(p).Blank(blank.Options{})
	checktest.Printed(t, "over the radius", value(t, b, "hole of drain: largest width across it")/mm, "40.920")
	p.Offset = -10 * mm // mirrored
	m := sheet(p).Blank(blank.Options{})
	checktest.Close(t, "mirror, area", value(t, m, "hole of drain: area"), value(t, b, "hole of drain: area"), 1e-9)
}

// Rolled up again, no point of the tube on any face lies outside of the hole, and every
// point of its edge touches the tube on one of the faces.
func TestHillsideHoleRolledUp(t *testing.T) {
	w := sheet().Wall
	for _, x0 := range []float64{15, 80, -120} {
		p := radial(90, 200)
		p.Offset = x0 * mm
		const a = 20 * mm
		ps, err := blank.Outline(w, p, a, 7200)
		if err != nil {
			t.Fatal(err)
		}
		pierce := math.Asin(p.Offset / w.Radius)
		low, top := math.Inf(1), math.Inf(-1)
		for _, q := range ps {
			θ, touched := q.Y/w.Radius+pierce, false
			for _, face := range []float64{200 * mm, 208 * mm} {
				touched = touched || math.Abs(math.Hypot(q.X, face*math.Sin(θ)-p.Offset)-a) < 1e-12
			}
			if !touched {
				t.Fatalf("offset %g: a point of the edge does not touch the tube", x0)
			}
			low, top = math.Min(low, q.Y), math.Max(top, q.Y)
		}
		for _, face := range []float64{200, 202, 204, 206, 208} {
			for _, side := range []float64{-a, a} {
				y := w.Radius * (math.Asin((p.Offset+side)/(face*mm)) - pierce)
				if y < low-1e-9 || y > top+1e-9 {
					t.Errorf("offset %g: the tube on the face of %g lies outside of its hole", x0, face)
				}
			}
		}
	}
}
