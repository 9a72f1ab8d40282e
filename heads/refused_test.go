package heads_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

// Shapes that cannot be built name the key that is wrong.
func TestShapesRefused(t *testing.T) {
	for _, row := range []struct {
		shape string
		g     heads.Geometry
		want  string
	}{
		{"hemisphere", heads.Geometry{InsideDiameter: 1, Thickness: math.NaN()}, "thickness"},
		{"flat", heads.Geometry{InsideDiameter: 1}, "thickness"},
		{"toricone", heads.Geometry{InsideDiameter: 1, Thickness: 0.01, KnuckleRadius: 0.1}, "half_angle or depth"},
		{"toricone", heads.Geometry{InsideDiameter: 1, Thickness: 0.01, KnuckleRadius: 0.1, HalfAngle: 0.5, TipDiameter: 1}, "tip"},
		{"toricone", heads.Geometry{InsideDiameter: 1, Thickness: 0.01, KnuckleRadius: 0.1, HalfAngle: 45 * deg, Depth: 0.3}, "disagree"},
	} {
		s, _ := heads.FindShape(row.shape)
		_, err := s.New(row.g)
		checktest.Refused(t, row.shape, err, row.want)
	}
}

// A torisphere whose knuckle is as large as the cylinder is a hemisphere: x = sqrt(R² − r²).
func TestTorisphereWithoutACrown(t *testing.T) {
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 0.8, KnuckleRadius: 0.5})
	for _, r := range []float64{0, 0.1, 0.3, 0.4, 0.5} {
		x, err := h.AxialAt(r, 0)
		if err != nil {
			t.Fatal(err)
		}
		if want := math.Sqrt(0.25 - r*r); math.Abs(x-want) > 1e-9 {
			t.Errorf("r %g: x %g, want %g", r, x, want)
		}
		if got := h.Radius(x); math.Abs(got-r) > 1e-7 {
			t.Errorf("x %g: radius %g, want %g", x, got, r)
		}
	}
}

// A cone whose tip is a hair inside the knuckle's end has no length, and still a radius at its tip.
func TestToriconeOfNoCone(t *testing.T) {
	joint := 0.5 - 0.45*(1-math.Cos(80*deg))
	h := head(t, "toricone", heads.Geometry{InsideDiameter: 1, HalfAngle: 80 * deg, KnuckleRadius: 0.45, TipDiameter: 2 * math.Nextafter(joint, 0)})
	checktest.Close(t, "radius at the tip", h.Radius(h.Depth()), joint, 1e-12)
}

// A surface deeper inside than a radius of the meridian has no points, and the error names the piece.
func TestNoParallelSurface(t *testing.T) {
	for _, row := range []struct {
		shape, piece string
		g            heads.Geometry
		offset       float64
	}{
		{"ellipsoid", "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 2}, -0.126}, // b²/a = 0.125
		{"torisphere", "knuckle", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1}, -0.1},
		{"hemisphere", "sphere", heads.Geometry{InsideDiameter: 1}, math.NaN()},
		{"cone", "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: 0.5}, math.NaN()},
		{"flat", "flat", heads.Geometry{InsideDiameter: 1}, math.NaN()},
	} {
		h := head(t, row.shape, row.g)
		p, err := h.PointAt(0.1, row.offset)
		checktest.Refused(t, row.shape, err, "its "+row.piece)
		if !math.IsNaN(p.X) || h.Points(10, row.offset) != nil {
			t.Errorf("%s: a point %+v beyond the centre", row.shape, p)
		}
	}
}

// A flat head is a disc: its outside face lies a wall from its inside, and it holds nothing.
func TestFlatIsADisc(t *testing.T) {
	h := head(t, "flat", heads.Geometry{InsideDiameter: 1, Thickness: 0.02})
	p, err := h.PointAt(0.3, 0.02)
	if err != nil || p.X != 0.02 || p.R != 0.3 || p.Piece != "flat" || !math.IsInf(p.R1, 1) {
		t.Errorf("%+v, %v", p, err)
	}
	if h.Volume() != 0 || h.Radius(0) != 0.5 {
		t.Errorf("volume %g, radius %g", h.Volume(), h.Radius(0))
	}
	if _, err := h.PointAt(0.51, 0); err == nil {
		t.Error("a point beyond the rim")
	}
}

// An inward head loses metal on its convex face, the one in the tank: every dimension of it shrinks.
func TestCorrodedInward(t *testing.T) {
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 0.9, KnuckleRadius: 0.15, Thickness: 0.01, Inward: true})
	worn, err := heads.Corroded(h, 0.002)
	if err != nil {
		t.Fatal(err)
	}
	g := worn.Geometry()
	for _, row := range []struct {
		what      string
		got, want float64
	}{{"diameter", g.InsideDiameter, 0.996}, {"crown", g.CrownRadius, 0.898}, {"knuckle", g.KnuckleRadius, 0.148}, {"wall", g.Thickness, 0.008}} {
		checktest.Close(t, row.what, row.got, row.want, 1e-12)
	}
}

// What a thickness check says beside its numbers, and what it refuses.
func TestCheckThicknessNotes(t *testing.T) {
	thin := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1, Thickness: 0.0019})
	seams := heads.Seams{Segment: 1, Girth: 1, SegmentJoint: "butt, both sides", GirthJoint: "butt, one side"}
	r := heads.CheckThickness(thin, "", heads.Demand{Pressure: 1e5}, heads.Wall{Thickness: 0.0019}, vessel(120e6), seams)
	for _, want := range []string{"welds in the head: butt, both sides", "joint to the shell: butt, one side", "the knuckle check is part of the rule"} {
		if !strings.Contains(r.Note, want) {
			t.Errorf("%q lacks %q", r.Note, want)
		}
	}
	if r.Title != "thickness by the rule set" {
		t.Errorf("a head at no end is called %q", r.Title)
	}
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 0.2, Thickness: 0.02})
	r = heads.CheckThickness(flat, "aft", heads.Demand{Pressure: 1e5, CornerFactor: 0.33, CornerSource: "drawn corner"}, heads.Wall{Thickness: 0.02}, vessel(120e6), sound)
	if status(t, "flat", r, check.Satisfied); !strings.Contains(r.Note, "corner factor: drawn corner") {
		t.Error(r.Note)
	}
	l := material.Limits{Rule: material.Flight, Yield: 240e6, Ultimate: 300e6, S: 144e6, YieldOnPressure: 1.5 / 0.9, YieldOnLoad: 1.25, UltimateOnPressure: 2, UltimateOnLoad: 1.5}
	cone := head(t, "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: 30 * deg})
	r = heads.CheckThickness(cone, "aft", heads.Demand{Pressure: 300e6, LineLoad: 1e5}, heads.Wall{Thickness: 0.01}, heads.Allowables{Parent: l, Zone: l, SeamSegment: l, SeamGirth: l}, sound)
	status(t, "flight, a pressure over the strength", r, check.NotAssessed)
	checktest.Refused(t, "flight", r.Err, "no thickness carries 300 MPa")
}

// The formulas have an end: beyond it no wall, or no pressure, is given.
func TestRulesEnd(t *testing.T) {
	const S = 100e6
	dome := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1})
	steep := head(t, "toricone", heads.Geometry{InsideDiameter: 1, HalfAngle: 61 * deg, KnuckleRadius: 0.1})
	for _, row := range []struct {
		name string
		h    heads.Head
		rule material.Rule
		p    float64
		want string
	}{
		{"the knuckle's wall would pass the crown's radius", dome, material.VesselEU, 3.9 * S, "knuckle, yield: no thickness carries"},
		{"a toricone over 60 deg", steep, material.Vessel, 1e5, "half angle"},
		{"a toricone over 60 deg", steep, material.VesselEU, 1e5, "half angle"},
	} {
		got, _, _, err := heads.RequiredThickness(row.h, row.rule, row.p, S, 1, 1, heads.RuleOptions{Proof: 1.5 * S})
		checktest.Refused(t, row.name, err, row.want)
		if !math.IsNaN(got) {
			t.Errorf("%s: %g", row.name, got)
		}
	}
	if e, err := heads.EuropeanLargeEnd(100*S, 1, 60*deg, S); err == nil || !math.IsNaN(e) {
		t.Errorf("a corner under a hundred times its strength: %g, %v", e, err)
	}
	for _, row := range []struct {
		name  string
		S, tw float64
		want  string
	}{{"no strength", math.NaN(), 0.01, "allowable stress"}, {"a wall of a third of the radius", S, 0.2, "wall over inside radius"}} {
		cone := head(t, "cone", heads.Geometry{InsideDiameter: 0.6, HalfAngle: 30 * deg, Thickness: row.tw})
		got, _, _, err := heads.AllowablePressure(cone, material.Vessel, row.S, 1, 1, heads.RuleOptions{Wall: heads.Wall{Thickness: row.tw}})
		checktest.Refused(t, row.name, err, row.want)
		if !math.IsNaN(got) {
			t.Errorf("%s: %g", row.name, got)
		}
	}
}

// Pressure on the convex side: what has none, what is missing, and whose concept it is.
func TestConvexRefused(t *testing.T) {
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 1})
	_, _, _, err := heads.RequiredThicknessConvex(flat, material.Vessel, 1e5, 100e6, heads.RuleOptions{})
	checktest.Refused(t, "flat", err, "no convex side")
	dome := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	w, a := heads.Wall{Thickness: 0.01}, vessel(100e6)
	unknown := a
	unknown.ZoneKnown = errors.New("no value for the weld zone")
	nan := a
	nan.SeamGirth.S = math.NaN()
	for name, r := range map[string]check.Result{
		"weld zone":    heads.CheckThicknessConvex(dome, "aft", 1e5, heads.Demand{}, w, unknown),
		"allowable":    heads.CheckThicknessConvex(dome, "aft", 1e5, heads.Demand{}, w, nan),
		"or the wall":  heads.CheckThicknessConvex(dome, "aft", 1e5, heads.Demand{}, heads.Wall{}, a),
		"concave side": heads.CheckThicknessConvex(dome, "aft", math.NaN(), heads.Demand{}, w, a),
	} {
		status(t, name, r, check.NotAssessed)
		checktest.Refused(t, name, r.Err, name)
	}
	_, _, src, err := heads.RequiredThicknessConvex(dome, material.VesselEU, 1e5, 100e6, heads.RuleOptions{Proof: 150e6})
	if err != nil || src.How != check.Practice || !strings.Contains(src.Doc, "European") {
		t.Errorf("%+v, %v", src, err)
	}
}

// An elastic buckling pressure under the yield pressure leaves 0.6 of it. The table of TestThinKnuckle has pe 0.7121 and, at
// ten times its strength, py 1.320 MPa at D/t 1000.
func TestThinKnuckleElastic(t *testing.T) {
	_, _, pck, err := heads.Dish{D: 1, L: 1, R: 0.1, T: 1e-3}.ThinKnuckle(200e9, 2500e6)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "pck", pck/1e6, 0.6*0.7121, 1e-4)
}

func TestKnuckleRefused(t *testing.T) {
	dome := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1, Thickness: 0.01})
	ball := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	m := heads.KnuckleMetal{Yield: 200e6, ElasticModulus: 200e9, Factor: 1.5}
	_, err := heads.KnuckleLimits(dome, heads.Wall{Thickness: 0.01, Corrosion: 0.02}, m)
	checktest.Refused(t, "corrosion through the wall", err, "corrosion")
	_, err = heads.KnuckleLimits(ball, heads.Wall{Thickness: 0.01}, m)
	checktest.Refused(t, "hemisphere", err, "no knuckle")
	a := vessel(100e6)
	a.ZoneKnown = errors.New("no value for the weld zone")
	r := heads.CheckKnuckle(dome, "aft", 1e4, heads.Wall{Thickness: 0.01}, 200e9, false, a, sound)
	status(t, "weld zone unknown", r, check.NotAssessed)
	checktest.Refused(t, "weld zone unknown", r.Err, "weld zone")
}

// Where the knuckle begins, or where a port's zone ends, is not known: the welded strength counts.
func TestKnuckleInZoneUnknown(t *testing.T) {
	w := heads.Wall{Thickness: 0.002}
	port := heads.Seams{ZoneWidth: 0.03, PortZones: [][2]float64{{0.1, 0.2}}}
	flange := func(shape string, g heads.Geometry) heads.Head {
		g.InsideDiameter, g.StraightFlange = 1, 0.1
		return head(t, shape, g)
	}
	known := flange("torisphere", heads.Geometry{CrownRadius: 1, KnuckleRadius: 0.1})
	if port.KnuckleInZone(known, w) {
		t.Error("a zone that ends at 0.2 m reaches a knuckle that begins at 0.44 m")
	}
	for name, h := range map[string]heads.Head{
		"hemisphere": flange("hemisphere", heads.Geometry{}), "an ellipsoid out of range": flange("ellipsoid", heads.Geometry{Aspect: 3}),
	} {
		if !port.KnuckleInZone(h, w) {
			t.Errorf("%s: the welded strength does not count", name)
		}
	}
	if !(heads.Seams{ZoneWidth: 0.03, PortZones: [][2]float64{{0.1, math.NaN()}}}).KnuckleInZone(known, w) {
		t.Error("a zone of no known end is taken as clear of the knuckle")
	}
}

// A corner under a stress that cannot be divided by, and the names of both ends.
func TestCornerRefused(t *testing.T) {
	c := corner()
	c.Pressure, c.S = 1e6, 1e-310
	if _, err := c.Reinforcement(); err == nil || !strings.Contains(err.Error(), "p/(Ss E1)") {
		t.Errorf("an infinite p/(Ss E1): %v", err)
	}
	status(t, "an infinite p/(Ss E1)", c.Check("aft"), check.NotAssessed)
	c = corner()
	c.Small = true
	if r := c.Check("aft"); r.ID != "head.aft/tip-corner" || !strings.Contains(r.Title, "tip") {
		t.Errorf("%s, %s", r.ID, r.Title)
	}
}

// The flange of a head of the cylinder's own wall is more cylinder: the joint is that of a head without one.
func TestFlangeOfTheSameWall(t *testing.T) {
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 0.398, Thickness: 0.002})
	with := head(t, "hemisphere", heads.Geometry{InsideDiameter: 0.398, Thickness: 0.002, StraightFlange: 0.01})
	w, load := heads.Wall{Thickness: 0.002}, edge.Gas(1e6, 0.2)
	a, err := heads.SeamJoint(h, w, modulus, 0.3, heads.Neighbour{Wall: steel(0.002), Radius: 0.2, Free: 0.31}, load)
	if err != nil {
		t.Fatal(err)
	}
	b, err := heads.SeamJoint(with, w, modulus, 0.3, heads.Neighbour{Wall: steel(0.002), Radius: 0.2, Free: 0.3}, load)
	if err != nil || a != b {
		t.Errorf("%+v, without a flange %+v, %v", b, a, err)
	}
}

// The tip of a toricone is that of the cone it is made of.
func TestTipOfToricone(t *testing.T) {
	wall, cos := 0.002, math.Cos(30*deg)
	tip := 0.2 - wall/cos // mid-lines cross at 0.1 m
	w, n, load := heads.Wall{Thickness: wall}, heads.Neighbour{Wall: steel(wall), Radius: 0.1, Free: 1}, edge.Gas(1e6, 0.1)
	var joints [2]edge.Joint
	for i, h := range []heads.Head{
		head(t, "cone", heads.Geometry{InsideDiameter: 0.6, HalfAngle: 30 * deg, Thickness: wall, TipDiameter: tip}),
		head(t, "toricone", heads.Geometry{InsideDiameter: 0.6, HalfAngle: 30 * deg, Thickness: wall, TipDiameter: tip, KnuckleRadius: 0.06}),
	} {
		var err error
		if joints[i], err = heads.TipJoint(h, w, modulus, 0.3, n, load); err != nil {
			t.Fatal(err)
		}
		_, err = heads.TipJoint(h, w, modulus, 0.3, heads.Neighbour{Wall: steel(wall)}, load)
		checktest.Refused(t, "no radius", err, "radius of the cylinder")
		_, err = heads.TipJoint(h, heads.Wall{Thickness: wall, Corrosion: 1}, modulus, 0.3, n, load)
		checktest.Refused(t, "corrosion through the wall", err, "corrosion")
		_, err = heads.SeamJoint(h, heads.Wall{Thickness: wall, Corrosion: 1}, modulus, 0.3, n, load)
		checktest.Refused(t, "corrosion through the wall", err, "corrosion")
		g := h.Geometry()
		g.Inward, g.Depth = true, 0
		_, err = heads.TipJoint(head(t, h.Kind(), g), w, modulus, 0.3, n, load)
		checktest.Refused(t, "inward", err, "inward")
	}
	checktest.Close(t, "hoop", joints[1].Shell.Hoop, joints[0].Shell.Hoop, 1e-12)
	// The cone between knuckle and tip ends before the bending does: no corner of its own.
	short := head(t, "toricone", heads.Geometry{InsideDiameter: 0.22, HalfAngle: 30 * deg, Thickness: wall, TipDiameter: tip, KnuckleRadius: 0.06})
	if _, err := heads.TipJoint(short, w, modulus, 0.3, n, load); err == nil {
		t.Error("a cone of a few millimetres has a joint at its tip")
	}
}

// A head from elsewhere: only the methods of the interface are known of it.
type foreign struct{ heads.Head }

func TestMembraneOfAForeignHead(t *testing.T) {
	h, w := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1}), heads.Wall{Thickness: 0.01}
	a := heads.CheckMembrane(h, "aft", w, gas(1e6), vessel(150e6), sound)
	b := heads.CheckMembrane(foreign{h}, "aft", w, gas(1e6), vessel(150e6), sound)
	status(t, "torisphere", a, check.Satisfied)
	if a.Demand != b.Demand || a.Status() != b.Status() {
		t.Errorf("%v, as a foreign head %v", a.Demand, b.Demand)
	}
}

func TestMembraneRefused(t *testing.T) {
	ball, w := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1}), heads.Wall{Thickness: 0.01}
	folded := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.004, Thickness: 0.01, Inward: true})
	over := gas(1e6)
	over.PressureLeast = 1.1
	everywhere := heads.Zone{Everywhere: true}
	limits := vessel(150e6)
	for name, r := range map[string]check.Result{
		"no mid-surface":                heads.CheckMembrane(folded, "aft", w, gas(1e6), limits, sound),
		"the wall is too thick":         heads.CheckZone(folded, "aft", w, gas(1e6), limits.Zone, everywhere),
		"must not exceed the pressure":  heads.CheckMembrane(ball, "aft", w, over, limits, sound),
		"smallest simultaneous":         heads.CheckZone(ball, "aft", w, over, limits.Zone, everywhere),
		"wall, pressure or axial force": heads.CheckZone(ball, "aft", heads.Wall{}, gas(1e6), limits.Zone, everywhere),
	} {
		status(t, name, r, check.NotAssessed)
		checktest.Refused(t, name, r.Err, name)
	}
	noted := limits
	noted.Parent.Note, noted.Zone.Note, noted.SeamGirth.Note = "as welded", "as welded", "as welded"
	noted.SeamSegment.Note = "as welded"
	if r := heads.CheckMembrane(ball, "aft", w, gas(1e6), noted, sound); !strings.Contains(r.Note, "as welded") {
		t.Errorf("%q", r.Note)
	}
}

// Places that are passed over at first are not passed over when one of them has no pressure: a sphere under one
// pressure has the same use everywhere, so that every stretch may hide more.
func TestMembraneOfAGap(t *testing.T) {
	h, w := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1}), heads.Wall{Thickness: 0.01}
	at := math.Cos(100.0 / 192 * math.Pi / 2) // between two of the places looked at first
	l := gas(1e6)
	l.Pressure = func(x float64) float64 {
		if math.Abs(x/0.505-at) < 0.003 {
			return math.NaN()
		}
		return 1e6
	}
	status(t, "a gap of three millimetres", heads.CheckMembrane(h, "aft", w, l, vessel(150e6), sound), check.NotAssessed)
}
