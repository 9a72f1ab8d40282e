package port_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// area works the areas out or ends the test.
func area(t *testing.T, p port.Port, w port.Wall, l port.Load, s port.Strengths) port.AreaReport {
	t.Helper()
	r, err := p.Area(w, l, s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// of returns a number of a result by its symbol and a part of its name, or ends the test.
func of(t *testing.T, r check.Result, symbol, name string) float64 {
	t.Helper()
	for _, q := range append(r.Inputs, r.Demand, r.Capacity) {
		if q.Symbol == symbol && strings.Contains(q.Name, name) {
			return q.Value
		}
	}
	t.Fatalf("%s shows no %s, %s: %v", r.ID, symbol, name, r.Inputs)
	return 0
}

var soft = port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, Pad: 60 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}

// Walls that are no surface, and what is not known of a port, by the name of the value.
func TestWallsRefused(t *testing.T) {
	dish := port.Wall{Surface: port.Torisphere, Thickness: 3 * mm, Radius: 150 * mm, Crown: 300 * mm, Knuckle: 30 * mm}
	flat, steep := dish, dish
	flat.Crown, steep.Knuckle = 150*mm, 150*mm
	edge := cone(45, 3)
	edge.Edge = 1.1
	lost, set := tube(25.4, 2, 60), tube(25.4, 2, 60)
	lost.Station = math.Inf(1)
	set.Inside, set.InsideWall, set.Fit = 5*mm, 2*mm, port.Flush
	for _, row := range []struct {
		name string
		p    port.Port
		w    port.Wall
		want string
	}{
		{"crown as the cylinder", tube(25.4, 2, 60), flat, "a torisphere needs"},
		{"knuckle as the cylinder", tube(25.4, 2, 60), steep, "a torisphere needs"},
		{"ends beyond its rim", tube(25.4, 2, 60), edge, "beyond its radius"},
		{"no station", lost, cone(45, 3), "station"},
		{"inside of a flush tube", set, cone(45, 3), "fit through"},
	} {
		c, err := row.p.Chords(row.w)
		checktest.Refused(t, row.name, err, row.want)
		if !math.IsNaN(c.Meridional) {
			t.Errorf("%s: chord %g", row.name, c.Meridional)
		}
		if r, _ := row.p.Area(row.w, port.Load{Pressure: mpa}, soft); r.Check("p").Status() != check.NotAssessed || r.CheckWeldAtProof("p").Status() != check.NotAssessed {
			t.Errorf("%s: %v", row.name, r.Check("p").Status())
		}
	}
	if (port.Flat+1).String() != "unknown surface" || port.Surface(-1).String() != "unknown surface" || port.Flat.String() != "flat" {
		t.Error("names of surfaces")
	}
	tr, _, err := tube(25.4, 2, 60).RequiredWall(port.Wall{Surface: port.Flat, Thickness: 0.02, Radius: 0.2}, 1e5, 80e6)
	checktest.Refused(t, "flat", err, "it must be given")
	if !math.IsNaN(tr) {
		t.Errorf("a flat head asks for %g m", tr)
	}
}

// A head from elsewhere.
type foreign struct {
	heads.Head
	kind string
}

func (f foreign) Kind() string { return f.kind }

// The mid-surface of an inward cone lies half a wall towards the axis, that of a tip is cut by its plane.
func TestOnHeadElsewhere(t *testing.T) {
	s, _ := heads.FindShape("cone")
	made := func(inward bool) port.Wall {
		h, err := s.New(heads.Geometry{InsideDiameter: 0.4, HalfAngle: 30 * deg, TipDiameter: 0.1, Thickness: 4 * mm, Inward: inward})
		if err != nil {
			t.Fatal(err)
		}
		w, err := port.OnHead(h, 4*mm)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	cos := math.Cos(30 * deg)
	for _, row := range []struct {
		inward bool
		half   float64
	}{{false, 2 * mm}, {true, -2 * mm}} {
		w := made(row.inward)
		checktest.Close(t, "tip", w.Tip, 50*mm+row.half/cos, 1e-12)
		checktest.Close(t, "rim", w.Radius, 200*mm+row.half*cos, 1e-12)
		if w.Inward != row.inward {
			t.Error("inward")
		}
	}
	ball, _ := heads.FindShape("hemisphere")
	h, err := ball.New(heads.Geometry{InsideDiameter: 0.4, Thickness: 4 * mm})
	if err != nil {
		t.Fatal(err)
	}
	_, err = port.OnHead(foreign{h, "bowl"}, 4*mm)
	checktest.Refused(t, "a shape of no name", err, "ports on a bowl")
	_, err = port.OnHead(foreign{h, "cone"}, 4*mm)
	checktest.Refused(t, "a cone without an angle", err, "no wall for a port")
}

// Templates: beside a cylinder of R 100 at 30 ± 10 mm, √(100² − 20²) − √(100² − 40²) = 6.3281 mm; none of a flat one, none
// of a tube normal to a dome, and no flat blank but a cone's.
func TestTemplates(t *testing.T) {
	p, w := hill(100, 2, 20, 2, 30)
	z, err := p.TubeEnd(w, 0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "beside the radius", z/mm, "6.3281")
	if z, _ = p.TubeEnd(w, math.Pi); z != 0 {
		t.Errorf("on the side of the radius: %g", z)
	}
	plate := port.Wall{Surface: port.Flat, Thickness: 10 * mm, Radius: 200 * mm}
	if z, err := tube(20, 2, 60).TubeEnd(plate, 1); z != 0 || err != nil {
		t.Errorf("in a flat head: %g, %v", z, err)
	}
	dome := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	normal := tube(20, 2, 60)
	normal.Parallel = false
	z, err = normal.TubeEnd(dome, 0)
	checktest.Refused(t, "normal", err, "no end template")
	cut, err2 := normal.CutOut(dome)
	if !math.IsNaN(z) || err2 != nil {
		t.Errorf("normal: %g, %v", z, err2)
	}
	checktest.Close(t, "a round hole, perimeter", cut.Perimeter, math.Pi*20*mm, 1e-12)
	checktest.Close(t, "a round hole, area", cut.Area, math.Pi*1e-4, 1e-12)
	u, v, err := normal.Flat(dome, 0)
	checktest.Refused(t, "a dome laid flat", err, "only a cone")
	lost := tube(math.NaN(), 2, 60)
	a, b, err4 := lost.Flat(cone(45, 3), 0)
	checktest.Refused(t, "flat", err4, "outside diameter")
	z, err = lost.TubeEnd(cone(45, 3), 0)
	checktest.Refused(t, "template", err, "outside diameter")
	cut, err = lost.CutOut(cone(45, 3))
	checktest.Refused(t, "cut-out", err, "outside diameter")
	for _, x := range []float64{u, v, a, b, z, cut.Area, cut.Perimeter} {
		if !math.IsNaN(x) {
			t.Errorf("a number %g of a port that is refused", x)
		}
	}
}

// What reaches furthest: the tube, the pad in its longer direction, or the insert.
func TestReach(t *testing.T) {
	p := tube(20, 2, 60)
	for _, row := range []struct {
		pad    *port.Pad
		insert *port.Insert
		want   float64
	}{
		{nil, nil, 10}, {&port.Pad{OutsideDiameter: 50 * mm}, nil, 25}, {&port.Pad{OutsideDiameter: 50 * mm, Length: 80 * mm}, nil, 40},
		{&port.Pad{Lip: 12 * mm}, nil, 22}, {nil, &port.Insert{OutsideDiameter: 90 * mm}, 45},
	} {
		p.Pad, p.Insert = row.pad, row.insert
		checktest.Close(t, "reach", p.Reach(10*mm), row.want*mm, 1e-12)
	}
}

// The welds of a pad by hand, on TC-D with partial welds: throat 4/√2 mm round a pad of 2.4 mm in a wall of 3: ½ · 2.4 = 1.2. The
// fillet round it is as long as its least diameter: (π/2) D · 4 mm · 0.49 · 60 MPa, D 80 of a round one, 25.4 + 2·20 of a lip, 70 of
// an ellipse of 70 by 90; wall and tube have 80 MPa.
func TestWeldsOfAPad(t *testing.T) {
	p, w, load, _ := areaCase(30, 75, 3, 1.65, 1, 3, 0)
	p.FullGroove, p.Groove = false, 2*mm
	for _, row := range []struct {
		pad  port.Pad
		D    float64
		name string
	}{
		{port.Pad{OutsideDiameter: 80 * mm}, 80, "round"}, {port.Pad{Lip: 20 * mm}, 65.4, "lip"}, {port.Pad{OutsideDiameter: 70 * mm, Length: 90 * mm}, 70, "ellipse"},
	} {
		pad := row.pad
		pad.Thickness, pad.Leg = 2.4*mm, 4*mm
		p.Pad = &pad
		r := area(t, p, w, load, soft)
		paths, err := r.WeldPaths(r.Meridional)
		if err != nil {
			t.Fatal(err)
		}
		neck := math.Pi / 2 * (25.4 - 1.65) * 1.65 * mm * mm * 0.70 * 80e6
		checktest.Close(t, row.name+", path 1-1", paths[0].Strength, neck+math.Pi/2*row.D*mm*4*mm*0.49*60e6, 1e-12)
		got := r.CheckWeld("p")
		checktest.Close(t, row.name+", throat asked", of(t, got, "t_e", "pad's edge"), 1.2*mm, 1e-12)
		checktest.Close(t, row.name+", throat", of(t, got, "t_p", "pad's edge"), 4*mm/math.Sqrt2, 1e-12)
	}
	// 60 degrees off the normal: the joint closes to 30.
	if got := area(t, p, w, load, soft).CheckWeld("p"); !strings.Contains(got.Note, "closes to 30 deg") {
		t.Errorf("%q", got.Note)
	}
	p.FullGroove = true
	if got := area(t, p, w, load, soft).CheckWeld("p"); strings.Contains(got.Note, "closes to") {
		t.Errorf("%q", got.Note)
	}
}

// With the pressure on the convex side the neck is asked for the wall that the vacuum wants, 1.2 mm here, under 1/16 in: that stays the least.
func TestNeckOfAConvexWall(t *testing.T) {
	p, w, _, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	for asked, want := range map[float64]float64{1.2: 25.4 / 16, 2.5: 2.5} {
		got := area(t, p, w, port.Load{Pressure: 0.1 * mpa, Convex: true, Required: asked * mm}, s).CheckNeck("p")
		checktest.Close(t, "from outside", of(t, got, "t_b2", ""), asked*mm, 1e-12)
		checktest.Close(t, "from inside", of(t, got, "t_b1", ""), inch/16, 1e-12)
		checktest.Close(t, "asked", got.Demand.Value, want*mm, 1e-9)
	}
}

// A hole that takes more than half of a dome's diameter is said: 160 mm of bore in R 150.
func TestLargeHoleIsSaid(t *testing.T) {
	dome := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	for od, said := range map[float64]bool{160: true, 150: false} {
		p := tube(od, 4, 0)
		p.Parallel, p.OutsideLeg, p.FullGroove = false, 3*mm, true
		r, err := p.Area(dome, port.Load{Pressure: 0.1 * mpa}, soft)
		if strings.Contains(strings.Join(r.Cautions, "; "), "half of the head's diameter") != said {
			t.Errorf("%g mm: %q, %v", od, r.Cautions, err)
		}
	}
}

// Room beside a hole: 3 t in a flat head; round an insert the insert's; in a knuckle out to its end.
func TestPlacementByHand(t *testing.T) {
	plate := port.Wall{Surface: port.Flat, Thickness: 10 * mm, Radius: 200 * mm}
	p := tube(20, 2, 100)
	got := p.CheckPlacement(plate)
	checktest.Close(t, "flat, need", got.Demand.Value, 40*mm, 1e-12)
	checktest.Close(t, "flat, room", got.Capacity.Value, 100*mm, 1e-12)
	p.Insert = &port.Insert{OutsideDiameter: 50 * mm, Thickness: 12 * mm, Efficiency: 1}
	checktest.Close(t, "insert", p.CheckPlacement(plate).Demand.Value, 55*mm, 1e-12)

	_, w := toricone(t) // mid-surface: centre of the knuckle at 140, ρ 62 mm, R 202 mm
	in := tube(20, 2, 180)
	end := 62 * mm * (math.Pi/2 - 45*deg)
	room := (140+62*math.Cos(45*deg)-180)/math.Sin(45*deg)*mm + end
	checktest.Close(t, "across a knuckle", of(t, in.CheckPlacement(w), "L", "outboard"), room, 1e-9)
}

// Metal counts up to the tip of a dome that is cut off: R [asin(e/R) − asin(tip/R)], and in the knuckle of a toricone, where the
// whole hole stands in it, up to the tangent: ρ [asin((e − c)/ρ) − 45 deg].
func TestLimitsAtATip(t *testing.T) {
	dome := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 300 * mm, Tip: 40 * mm, InboardZone: 2 * mm}
	p := tube(20, 2, 60)
	p.OutsideLeg, p.FullGroove = 3*mm, true
	r := area(t, p, dome, port.Load{Pressure: 0.1 * mpa}, soft)
	want := 300 * mm * (math.Asin(0.2) - math.Asin(40.0/300)) // 20.3 mm, over the 16 mm of the rule
	if want -= 2 * mm; want < r.Meridional.Inboard.Limit {
		t.Errorf("limit %g beyond the tip's zone %g", r.Meridional.Inboard.Limit, want)
	}
	dome.Tip = 49 * mm
	r = area(t, p, dome, port.Load{Pressure: 0.1 * mpa}, soft)
	checktest.Close(t, "tip", r.Meridional.Inboard.Limit, 300*mm*(math.Asin(0.2)-math.Asin(49.0/300))-2*mm, 1e-12)

	_, w := toricone(t)
	in := tube(6, 1, 188)
	in.OutsideLeg, in.FullGroove = 2*mm, true
	in.Parallel = false
	r = area(t, in, w, port.Load{Pressure: 0.1 * mpa}, soft)
	checktest.Close(t, "in the knuckle", r.Meridional.Inboard.Limit, 62*mm*(math.Asin(48.0/62)-45*deg), 1e-9)
}

// The general membrane stress of a flat head is not one.
func TestGeneralMembraneOfAPlate(t *testing.T) {
	plate := port.Wall{Surface: port.Flat, Thickness: 10 * mm, Radius: 200 * mm}
	p := tube(20, 2, 100)
	p.OutsideLeg, p.FullGroove = 3*mm, true
	r := area(t, p, plate, port.Load{Pressure: 0.1 * mpa, Required: 5 * mm}, soft)
	σ, err := r.GeneralMembrane()
	checktest.Refused(t, "flat", err, "flat wall is not covered")
	if !math.IsNaN(σ) {
		t.Errorf("%g Pa", σ)
	}
	// Two holes side by side there: area replacement alone speaks, and the pair touches at 20 mm and two legs of 3.
	q := p
	q.Name, q.Clock = "q", 10*deg // 2 · 100 sin 5° = 17.4 mm
	pair := []port.Member{{Port: p, Load: port.Load{Pressure: 0.1 * mpa, Required: 5 * mm}, Strengths: soft}, {Port: q, Load: port.Load{Pressure: 0.1 * mpa, Required: 5 * mm}, Strengths: soft}}
	got := port.CheckSpacing(plate, pair, 0)
	if got.Status() != check.NotSatisfied {
		t.Errorf("%v, %s", got.Status(), got.Note)
	}
	checktest.Close(t, "need", of(t, got, "need", "half outside chords"), 26*mm, 1e-12)
	if strings.Contains(got.Note, "pressure-area") {
		t.Error(got.Note)
	}
}

// Ports beside the cylinder's radius, along the axis: the wall cuts their bore square, so that they are asked what radial ones are.
func TestHillsideNeighbours(t *testing.T) {
	p, w := hill(100, 2, 20, 2, 30)
	q := p
	q.Name, q.Station = "q", p.Station+0.025
	load := port.Load{Pressure: 0.1 * mpa}
	pair := []port.Member{{Port: p, Load: load, Strengths: soft}, {Port: q, Load: load, Strengths: soft}}
	got := port.CheckSpacing(w, pair, 0)
	for i := range pair {
		pair[i].Port.Offset = 0
	}
	radial := port.CheckSpacing(w, pair, 0)
	checktest.Close(t, "need", of(t, got, "need", "half outside chords"), 28*mm, 1e-12)
	checktest.Close(t, "as radial ones", of(t, got, "need", "mean bore"), of(t, radial, "need", "mean bore"), 1e-12)
	checktest.Close(t, "4/3 of the bore", of(t, got, "need", "mean bore"), 4.0/3*16*mm, 1e-12)
	if got.Status() != check.NotSatisfied {
		t.Errorf("25 mm apart: %v", got.Status())
	}
	// Side by side round the cylinder it is the long chord: R [asin] parts in the plane of centres.
	pair[0].Port.Offset, pair[1].Port.Offset = 30*mm, 30*mm
	pair[1].Port.Station, pair[1].Port.Clock = pair[0].Port.Station, 20*deg
	c, err := p.Chords(w)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "across", of(t, port.CheckSpacing(w, pair, 0), "need", "half outside chords"), c.OutsideTransverse+8*mm, 1e-9)
}

// A tube projecting from the concave outside of an inward dome, or beside the radius of a cylinder: what sticks out is measured
// normal to the wall at its far edge. R 100, x0 30 + 10: cos asin 0.4 times the projection counts, in the insert's case of 3 mm of it.
func TestShortProjection(t *testing.T) {
	p, w := hill(100, 4, 20, 4, 30)
	p.Fit, p.Inside, p.InsideWall = port.Through, 3*mm, 4*mm
	r := area(t, p, w, port.Load{Pressure: 0.5 * mpa}, soft)
	checktest.Close(t, "inside", r.Meridional.InsideLimit, 3*mm*math.Cos(math.Asin(0.4)), 1e-12)

	dome := port.Wall{Surface: port.Sphere, Thickness: 4 * mm, Radius: 300 * mm, Inward: true}
	q := tube(20, 4, 140)
	q.Outside, q.OutsideLeg, q.FullGroove, q.Fit = 3*mm, 2*mm, true, port.Flush
	r = area(t, q, dome, port.Load{Pressure: 0.1 * mpa, Convex: true, Required: 1 * mm}, soft)
	checktest.Close(t, "outside", r.Meridional.NormalLimit, 3*mm*math.Cos(math.Asin(0.5)), 1e-12)
}

// Paths through the welds of a port that is not there.
func TestWeldPathsRefused(t *testing.T) {
	paths, err := (port.AreaReport{}).WeldPaths(port.Plane{})
	checktest.Refused(t, "no port", err, "not described")
	if len(paths) != 0 {
		t.Errorf("%v", paths)
	}
}

// The example of stressarea_test.go just under the pressure that its stress method carries: that method governs, with its source.
func TestStressMethodGoverns(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 1.6875 * inch, Radius: (75.125 + 1.6875/2) * inch, Length: 500 * inch}
	p := port.Port{Name: "n", OutsideDiameter: 2 * 12.75 * inch, TubeWall: 4.625 * inch, Station: 250 * inch, Outside: 20 * inch, OutsideLeg: 0.375 * inch, Fit: port.Flush, FullGroove: true}
	most := 356 * 22400.0 / 16026
	got := area(t, p, w, port.Load{Pressure: 0.99 * most * psi}, strengths(22400, 22400)).Check("n")
	if got.Status() != check.Satisfied || !strings.Contains(got.Note, "governs: stress method") || !strings.Contains(got.Source.Where, "stress at an opening") {
		t.Errorf("%v, %s, %s", got.Status(), got.Note, got.Source.Where)
	}
	checktest.Close(t, "p_max", got.Capacity.Value/psi, most, 1e-4)
	// General membrane there, by hand p R/t of the mid-surface; of a crown of 300 mm half that.
	σ, err := area(t, p, w, port.Load{Pressure: mpa}, strengths(22400, 22400)).GeneralMembrane()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "cylinder", σ/mpa, (75.125+1.6875/2)/1.6875, 1e-12)
	dish := port.Wall{Surface: port.Torisphere, Thickness: 3 * mm, Radius: 150 * mm, Crown: 300 * mm, Knuckle: 30 * mm}
	small := tube(20, 2, 60)
	small.OutsideLeg, small.FullGroove = 3*mm, true
	if σ, err = area(t, small, dish, port.Load{Pressure: 0.1 * mpa}, soft).GeneralMembrane(); err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "crown", σ/mpa, 0.1*300/(2*3), 1e-12)
	// The tables of local stress end at r/√(R T) = 0.1: 1 mm of radius on R 300, T 3 mm is 0.033.
	tiny := tube(2, 0.5, 60)
	tiny.OutsideLeg, tiny.FullGroove = 3*mm, true
	got = area(t, tiny, dish, port.Load{Pressure: 0.1 * mpa}, soft).CheckThrust("p", port.External{Force: 1, Range: 3 * soft.Wall, RangeFormula: "3 S"})
	if got.Status() != check.NotAssessed {
		t.Errorf("out of the table: %v", got.Status())
	}
	checktest.Refused(t, "out of the table", got.Err, "tube radius over √(R T)")
}

// The pressure-area method ends at 0.6 of a head's outside diameter: 0.6 · 303 = 181.8 mm.
func TestPressureAreaEnds(t *testing.T) {
	dome := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	for od, taken := range map[float64]bool{181.7: true, 181.9: false} {
		p := tube(od, 4, 0)
		p.Parallel, p.OutsideLeg, p.FullGroove = false, 3*mm, true
		r, err := p.Area(dome, port.Load{Pressure: 0.1 * mpa}, soft)
		if taken != (err == nil) || !taken && r.Check("p").Status() != check.NotAssessed {
			t.Errorf("%g mm: %v, %v", od, err, r.Check("p").Status())
		}
	}
}

// The weld round a tube is of the weakest metal it joins, pad included: π OD · 60/80 of what it carries without one.
func TestRingOfAPad(t *testing.T) {
	p, w, load, _ := areaCase(45, 60, 4, 3, 1, 4, 6)
	plain := area(t, p, w, load, soft).CheckThrust("p", port.External{})
	p.Pad = &port.Pad{OutsideDiameter: 80 * mm, Thickness: 3 * mm, Leg: 3 * mm}
	padded := area(t, p, w, load, soft).CheckThrust("p", port.External{})
	checktest.Close(t, "ring", of(t, padded, "R", ""), of(t, plain, "R", "")*60/80, 1e-12)
}

// Neighbours in the knuckle of a toricone stand through space, 2 e sin(Δθ/2) apart; inserts touch by their own edges.
func TestNeighboursInAKnuckle(t *testing.T) {
	_, w := toricone(t)
	p, q := tube(6, 1, 188), tube(6, 1, 188)
	q.Clock = 30 * deg
	dist, _, _ := port.CentreDistance(w, p, q)
	checktest.Close(t, "apart", dist, 2*188*mm*math.Sin(15*deg), 1e-12)
	plate := port.Wall{Surface: port.Flat, Thickness: 10 * mm, Radius: 200 * mm}
	a := tube(20, 2, 100)
	a.OutsideLeg, a.FullGroove, a.Insert = 3*mm, true, &port.Insert{OutsideDiameter: 60 * mm, Thickness: 12 * mm, Efficiency: 1}
	b := a
	b.Name, b.Clock = "q", 90*deg
	load := port.Load{Pressure: 0.1 * mpa, Required: 5 * mm}
	pair := []port.Member{{Port: a, Load: load, Strengths: soft}, {Port: b, Load: load, Strengths: soft}}
	checktest.Close(t, "inserts", of(t, port.CheckSpacing(plate, pair, 0), "need", "half outside chords"), 60*mm, 1e-12)
	for i := range pair { // pads of 50 mm with legs of 3
		pair[i].Port.Insert, pair[i].Port.Pad = nil, &port.Pad{OutsideDiameter: 50 * mm, Thickness: 8 * mm, Leg: 3 * mm}
	}
	checktest.Close(t, "pads", of(t, port.CheckSpacing(plate, pair, 0), "need", "half outside chords"), 56*mm, 1e-12)
	pair[0].Load.Pressure = math.NaN()
	if got := port.CheckSpacing(plate, pair, 0); got.Status() != check.NotAssessed {
		t.Errorf("a pressure that is not a number: %v", got.Status())
	}
}

// Spacing of a port that is not there, and advice where none can be given.
func TestSpacingRefused(t *testing.T) {
	w, all := members(4, 0, 24)
	for _, at := range []int{-1, 2} {
		got := port.Among(w, all).CheckSpacing(at)
		if got.Status() != check.NotAssessed {
			t.Errorf("port %d of two: %v", at, got.Status())
		}
		checktest.Refused(t, "index", got.Err, "among 2")
	}
	touching := port.CheckSpacing(w, all, 0)
	if touching.Status() != check.NotSatisfied {
		t.Fatal(touching.Status())
	}
	all[0].Load.Pressure = math.NaN()
	if got := port.Advise(touching, w, all, 0); got.Note != touching.Note {
		t.Errorf("advice without areas: %q", got.Note)
	}
}

// One port at the apex of a dome and one beside it: no clock parts them, and they share no circle.
func TestNothingPartsThem(t *testing.T) {
	dome := port.Wall{Surface: port.Sphere, Thickness: 4 * mm, Radius: 300 * mm}
	p, q := tube(40, 4, 0), tube(40, 4, 46)
	p.OutsideLeg, p.FullGroove, p.Fit = 4*mm, true, port.Flush
	q.OutsideLeg, q.FullGroove, q.Fit, q.Name = 4*mm, true, port.Flush, "q"
	load := port.Load{Pressure: 0.1 * mpa}
	pair := []port.Member{{Port: p, Load: load, Strengths: soft}, {Port: q, Load: load, Strengths: soft}}
	got := advised(dome, pair)
	if got.Status() != check.NotSatisfied {
		t.Errorf("46 mm apart where 2·(20 + 4) are wanted: %v, %s", got.Status(), got.Advice)
	}
	if !strings.Contains(got.Advice, "nothing but smaller tubes") {
		t.Errorf("%v, %q", got.Status(), got.Advice)
	}
}

// On a cylinder too short to part two ports along it only their clocks are told, and on a cone too short to part them by their circle.
func TestNoRoomToPart(t *testing.T) {
	p := port.Port{Name: "p", OutsideDiameter: 40 * mm, TubeWall: 4 * mm, Station: 45 * mm, Outside: 0.1, Fit: port.Flush, FullGroove: true, OutsideLeg: 4 * mm}
	q := p
	q.Name, q.Station = "q", 50*mm
	load := port.Load{Pressure: 0.1 * mpa}
	pair := []port.Member{{Port: p, Load: load, Strengths: soft}, {Port: q, Load: load, Strengths: soft}}
	short := port.Wall{Surface: port.Cylinder, Thickness: 4 * mm, Radius: 200 * mm, Length: 90 * mm}
	got := advised(short, pair)
	if !strings.Contains(got.Advice, "clocks") || strings.Contains(got.Advice, "stations") {
		t.Errorf("%q", got.Advice)
	}
	a := tube(20, 3, 190)
	a.OutsideLeg, a.FullGroove, a.Fit = 4*mm, true, port.Flush
	b := a
	b.Name, b.Clock = "q", 3*deg
	small := cone(45, 4)
	small.Radius = 202 * mm
	pair = []port.Member{{Port: a, Load: load, Strengths: soft}, {Port: b, Load: load, Strengths: soft}}
	got = advised(small, pair)
	if !strings.Contains(got.Advice, "clocks") || strings.Contains(got.Advice, "radius") {
		t.Errorf("%q", got.Advice)
	}
}
