package blank_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// says fails the test unless nothing is drawn and the error names what is wrong.
func says(t *testing.T, where string, b blank.Blank, want string) {
	t.Helper()
	if b.Err == nil || !strings.Contains(b.Err.Error(), want) || len(b.Cut) != 0 {
		t.Errorf("%s: %v with %d cuts, want %q", where, b.Err, len(b.Cut), want)
	}
}

// warns fails the test unless a caution of a drawn blank says so.
func warns(t *testing.T, where string, b blank.Blank, want string) {
	t.Helper()
	if b.Err != nil || !strings.Contains(strings.Join(b.Cautions, "\n"), want) {
		t.Errorf("%s: %v, %q, want %q", where, b.Err, b.Cautions, want)
	}
}

var wide = blank.Options{Kerf: 20 * mm} // a cut wider than the holes below

// A cut wider than the hole, an allowance that is none, and a part that is no such part.
func TestPartsRefused(t *testing.T) {
	small := tube(18, 110)
	small.TubeWall = 2 * mm
	round := radial(90, 300)
	round.OutsideDiameter = 18 * mm
	c := sector(45)
	c.Ports = []port.Port{small}
	says(t, "sector", c.Blank(wide), "too small for a cut 20 mm wide")
	s := sheet(round)
	says(t, "sheet", s.Blank(wide), "too small for a cut 20 mm wide")
	says(t, "sheet", s.Blank(blank.Options{Kerf: math.NaN()}), "kerf")
	s.Wall.Thickness = math.NaN()
	says(t, "sheet", s.Blank(blank.Options{}), "no cylinder with a wall")
	s = sheet()
	s.Wall.Radius = math.Inf(1)
	says(t, "sheet", s.Blank(blank.Options{}), "is not a number")
	s = sheet()
	s.Wall.Surface = port.Cone
	says(t, "sheet", s.Blank(blank.Options{}), "no cylinder with a wall")

	for _, clock := range []float64{math.NaN(), math.Inf(1)} {
		s, c = sheet(), sector(45)
		s.Seam, c.Seam = clock, clock
		says(t, "sheet", s.Blank(blank.Options{}), "clock of its seam")
		says(t, "sector", c.Blank(blank.Options{}), "clock of its seam")
	}

	flat := shaped(t, "flat", heads.Geometry{InsideDiameter: 0.2, Thickness: 10 * mm})
	w, err := port.OnHead(flat, 10*mm)
	if err != nil {
		t.Fatal(err)
	}
	d := blank.Disc{Name: "head", Head: flat, Wall: w, Ports: []port.Port{tube(18, 50)}}
	says(t, "flat", d.Blank(wide), "too small for a cut 20 mm wide")
	says(t, "flat", d.Blank(blank.Options{Gap: -1}), "gap")
	a, b := tube(20, 50), tube(20, 55)
	b.Name = "q"
	d.Ports = []port.Port{a, b}
	says(t, "flat", d.Blank(blank.Options{}), "p and q run into each other")
	far := tube(20, 50)
	far.Clock = 40 * deg // 2·50·sin 20° = 34.2 mm apart, 14.2 mm between the holes
	far.Name = "q"
	d.Ports = []port.Port{a, far}
	warns(t, "flat", d.Blank(blank.Options{}), "between the holes of ports p and q stand 14.2 mm")
	padded := tube(20, 50)
	padded.Pad = &port.Pad{Thickness: 4 * mm, OutsideDiameter: 90 * mm, Leg: 6 * mm} // 50 mm to the edge, 51 to the toe
	d.Ports = []port.Port{padded}
	warns(t, "flat", d.Blank(blank.Options{}), "the pad of port p lies over the edge")
	padded.Pad.Leg = 4 * mm
	if b := d.Blank(blank.Options{}); strings.Contains(strings.Join(b.Cautions, "\n"), "the pad of port p") {
		t.Errorf("%q", b.Cautions)
	}
}

func TestDiscRefused(t *testing.T) {
	cone := shaped(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 0.5, TipDiameter: 0.1, Thickness: mm})
	w, err := port.OnHead(cone, mm)
	if err != nil {
		t.Fatal(err)
	}
	d := blank.Disc{Name: "head-aft", Head: cone, Wall: w}
	says(t, "a cone with a tip", d.Blank(blank.Options{}), "no disc for a head of this shape")
	beyond := tube(30, 300)
	d.Ports = []port.Port{beyond}
	says(t, "a port beyond the rim", d.Plan(blank.Options{}), "p")
	normal := tube(30, 120)
	normal.Parallel = false
	d.Ports = []port.Port{normal}
	plan := d.Plan(blank.Options{})
	if plan.Err != nil || !strings.Contains(strings.Join(plan.Notes, "\n"), "port p is normal to the wall") {
		t.Errorf("%v, %q", plan.Err, plan.Notes)
	}
}

// An inward head has its mid-surface half a wall inside its convex face.
func TestDiametersInward(t *testing.T) {
	h := shaped(t, "hemisphere", heads.Geometry{InsideDiameter: 0.404, Thickness: 4 * mm, StraightFlange: 0.02, Inward: true})
	area, length := blank.Diameters(h, 4*mm)
	checktest.Close(t, "area", area, math.Sqrt(4*(2*0.2*0.2+2*0.2*0.02)), 1e-6)
	checktest.Close(t, "meridian", length, math.Pi*0.2+0.04, 1e-6)
}

// An elliptical pad: its area is π a b, and the kerf lies outside of it.
func TestEllipticalPad(t *testing.T) {
	d := doubler(wall(45, 8), tube(42.4, 110))
	d.Length = 140 * mm
	b := d.Blank(blank.Options{Kerf: 2 * mm})
	if b.Err != nil {
		t.Fatal(b.Err)
	}
	checktest.Close(t, "area", value(t, b, "F")+value(t, b, "hole of p: area"), math.Pi*0.055*0.070, 1e-4) // 360 straight steps
	checktest.Close(t, "length", value(t, b, "length of the pad along the meridian, before it is bent to the wall"), 0.14, 1e-12)
	checktest.Close(t, "width", value(t, b, "width of the pad across it"), 0.11, 1e-12)
	least, most := b.Cut[0].Bounds()
	checktest.Close(t, "cut, high", most.Y-least.Y, 0.142, 1e-4)
	checktest.Close(t, "cut, wide", most.X-least.X, 0.112, 1e-4)
}

// The pad of an inward cone lies on its concave side, nearer to the axis; that of a sphere lies nowhere flat.
func TestPadElsewhere(t *testing.T) {
	in := wall(45, 8)
	in.Inward = true
	lip := func(w port.Wall) blank.Blank {
		d := doubler(w, tube(42.4, 110))
		d.Diameter, d.Lip = 0, 20*mm
		return d.Blank(blank.Options{})
	}
	a, b := lip(wall(45, 8)), lip(in)
	if a.Err != nil || b.Err != nil {
		t.Fatal(a.Err, b.Err)
	}
	checktest.Close(t, "a parallel tube meets both alike", value(t, b, "hole of p: area"), value(t, a, "hole of p: area"), 1e-9)
	h := shaped(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 4 * mm})
	w, err := port.OnHead(h, 4*mm)
	if err != nil {
		t.Fatal(err)
	}
	says(t, "ellipsoid", doubler(w, tube(30, 60)).Blank(blank.Options{}), "cannot be laid flat")
}

// A tube normal to a cone and as wide as its distance from the axis takes the apex away.
func TestNormalHoleAtTheApex(t *testing.T) {
	p := tube(60, 29)
	p.Parallel = false
	if _, err := blank.Outline(wall(45, 8), p, 30*mm, 360); err == nil || !strings.Contains(err.Error(), "apex") {
		t.Errorf("%v", err)
	}
}

// A path without an end to its last side has one point more than it has sides.
func TestOpenPath(t *testing.T) {
	p := blank.Path{Vertices: []blank.Vertex{{Point: blank.Point{X: 0, Y: 0}}, {Point: blank.Point{X: 3, Y: 0}}, {Point: blank.Point{X: 3, Y: 4}}}}
	if n := len(p.Points(0.1)); n != 3 || p.Length() != 7 {
		t.Errorf("%d points, length %g", n, p.Length())
	}
	p.Closed = true
	if n := len(p.Points(0.1)); n != 3 || p.Length() != 12 {
		t.Errorf("closed: %d points, length %g", n, p.Length())
	}
}

// The template of a tube parallel to the axis of an inward head is that of the outward one upside down, and a tube that
// stands off a cylinder has none.
func TestTubeElsewhere(t *testing.T) {
	g := heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 1e-9}
	out := shaped(t, "ellipsoid", g)
	g.Inward = true
	in := shaped(t, "ellipsoid", g)
	p := tube(30, 60)
	a := blank.Tube{Port: p, Head: out}
	b := blank.Tube{Port: p, Head: in}
	b.Wall.Inward = true
	for _, ψ := range []float64{0, 1, 3} {
		x, err := a.End(ψ, 0)
		y, bad := b.End(ψ, 0)
		if err != nil || bad != nil || math.Abs(x+y) > 1e-12 {
			t.Errorf("ψ %g: %g and %g, %v, %v", ψ, x, y, err, bad)
		}
	}
	beside := port.Wall{Surface: port.Cylinder, Thickness: 8 * mm, Radius: 204 * mm, Length: 1.2}
	off := radial(90, 300)
	off.Offset = 195 * mm // and 20 mm of tube: beyond the inside face at 200 mm
	says(t, "beside the cylinder", blank.Tube{Port: off, Wall: beside}.Blank(blank.Options{}), "misses the wall")
	normal := p
	normal.Parallel = false
	if h, err := (blank.Tube{Port: normal, Head: in, Wall: b.Wall}).End(0, 0); err == nil || !math.IsNaN(h) || !strings.Contains(err.Error(), "no template") {
		t.Errorf("%g, %v", h, err)
	}
}

// A seam 30.04 mm beside a tube of 40 mm lies within its limit of reinforcement, one bore; its hole is clear of it.
func TestSeamBesideAPort(t *testing.T) {
	p := radial(90, 300)
	s := sheet(p)
	s.Seam = 90*deg - 30.04*mm/s.Wall.Radius
	warns(t, "30 mm", s.Blank(blank.Options{}), "the seam passes 30 mm")
	s.Seam = 90*deg - 45*mm/s.Wall.Radius
	if b := s.Blank(blank.Options{}); b.Err != nil || strings.Contains(strings.Join(b.Cautions, "\n"), "the seam passes") {
		t.Errorf("45 mm: %v, %q", b.Err, b.Cautions)
	}
}
