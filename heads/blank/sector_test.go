package blank_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// value returns a dimension of the blank by its symbol or name.
func value(t testing.TB, b blank.Blank, name string) float64 {
	t.Helper()
	for _, q := range b.Measures {
		if q.Symbol == name || q.Name == name {
			return q.Value
		}
	}
	t.Fatalf("%s has no dimension %q: %v", b.Name, name, b.Err)
	return math.NaN()
}

func sector(α float64) blank.Sector {
	w := port.Wall{Surface: port.Cone, Thickness: 3 * mm, Radius: 200 * mm, HalfApex: α * deg, Tip: 30 * mm}
	return blank.Sector{Name: "head-forward", Title: "Forward head, sector", Wall: w, Rim: w.Radius, Tip: w.Tip, Forward: true, RimIsWelded: true}
}

// Rolled up, the sector is the frustum: area π (r1 + r2) l, rims 2πr.
func TestSectorIsTheFrustum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		α := rapid.Float64Range(2, 88).Draw(t, "α") * deg
		R := rapid.Float64Range(0.05, 2).Draw(t, "R")
		r := R * rapid.Float64Range(0.05, 0.95).Draw(t, "r/R")
		w := port.Wall{Surface: port.Cone, Thickness: R / 500, Radius: R, HalfApex: α, Tip: r}
		b := blank.Sector{Name: "s", Wall: w, Rim: R, Tip: r, Forward: rapid.Bool().Draw(t, "forward")}.Blank(blank.Options{})
		if b.Err != nil {
			t.Fatal(b.Err)
		}
		l := (R - r) / math.Sin(α)
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-6*want {
				t.Fatalf("%s: %.9g, want %.9g", what, got, want)
			}
		}
		get := func(symbol string) float64 {
			for _, q := range b.Measures {
				if q.Symbol == symbol {
					return q.Value
				}
			}
			return math.NaN()
		}
		same("area", get("F"), math.Pi*(R+r)*l)
		same("rim", get("a_AB"), 2*math.Pi*R)
		same("tip", get("a_CD"), 2*math.Pi*r)
		same("edge", get("A–D"), l)
		same("round", get("U"), 2*math.Pi*(R+r)+2*l)
		same("drawn round", b.Cut[0].Length(), 2*math.Pi*(R+r)+2*l)
		same("drawn area", math.Abs(b.Cut[0].Area()), math.Pi*(R+r)*l)
	})
}

// Half angle 30°, rim 200, tip 30 mm: a half disc with radii 400 and 60, by hand.
func TestSectorByHand(t *testing.T) {
	b := sector(30).Blank(blank.Options{})
	for symbol, want := range map[string]string{"R": "400", "r": "60", "A–B": "800", "C–D": "120", "A–D": "340", "A–C": "460",
		"W": "800", "H": "400", "a_AB": "1256.64", "a_CD": "188.496"} {
		checktest.Printed(t, symbol, value(t, b, symbol)/mm, want)
	}
	// A gap of 2 mm takes 1 mm off every edge: chord 2√(399² − 1²), edge √(399²−1) − √(61²−1).
	b = sector(30).Blank(blank.Options{Gap: 2 * mm})
	for symbol, want := range map[string]string{"R": "399", "r": "61", "A–B": "797.997", "C–D": "121.984", "A–D": "338.007"} {
		checktest.Printed(t, "gap: "+symbol, value(t, b, symbol)/mm, want)
	}
	// A kerf of 1 mm changes what is cut along, not what is measured.
	k := sector(30).Blank(blank.Options{Gap: 2 * mm, Kerf: 1 * mm})
	// The plate under it takes the whole kerf beside the part, and so the line that is cut.
	least, most := k.Cut[0].Bounds()
	if plate := value(t, k, "W_p"); math.Abs(plate-value(t, k, "W")-2*mm) > 1e-12 || plate < most.X-least.X || value(t, k, "H_p") < most.Y-least.Y {
		t.Errorf("a plate %g m wide for a line %g m wide", plate, most.X-least.X)
	}
	checktest.Printed(t, "kerf: A–B", value(t, k, "A–B")/mm, "797.997")
	grown := math.Abs(k.Cut[0].Area()) - math.Abs(b.Cut[0].Area())
	checktest.Close(t, "kerf: area", grown, b.Cut[0].Length()*0.5*mm, 2e-3) // first order in the kerf
}

// A full cone ends in a point where both edges, inset by half a gap, meet.
func TestFullCone(t *testing.T) {
	s := sector(30)
	s.Tip, s.Wall.Tip = 0, 0
	b := s.Blank(blank.Options{Gap: 2 * mm})
	checktest.Printed(t, "edge of the half disc", value(t, b, "A–C")/mm, "398.999") // √(399² − 1²)
	checktest.Close(t, "area", value(t, b, "F"), math.Abs(b.Cut[0].Area()), 1e-12)
}

func TestSectorHolesAreWhereTheyBelong(t *testing.T) {
	s := sector(30)
	s.Seam = 10 * deg
	p := tube(25.4, 100)
	p.Clock = 100 * deg // 90° after the seam: in the half disc 45° from the edge A
	s.Ports = []port.Port{p}
	b := s.Blank(blank.Options{})
	checktest.Printed(t, "compass", value(t, b, "centre of p from the apex, by compass")/mm, "200")
	checktest.Printed(t, "from A", value(t, b, "centre of p from A")/mm, "294.725") // √(400² + 200² − 2·400·200 cos 45°)
	checktest.Printed(t, "from B", value(t, b, "centre of p from B")/mm, "559.587")
	if len(b.Cut) != 2 {
		t.Fatalf("%d cuts", len(b.Cut))
	}
	checktest.Close(t, "area", value(t, b, "F"), math.Pi*0.23*0.34-value(t, b, "hole of p: area"), 1e-9)
	// A kerf of 1 mm makes the hole's path smaller by half of it all round.
	k := s.Blank(blank.Options{Kerf: 1 * mm})
	checktest.Close(t, "kerf", b.Cut[1].Area()-k.Cut[1].Area(), (b.Cut[1].Length()+k.Cut[1].Length())/2*0.5*mm, 1e-6)
	// A clearance is a wider tube; a tube that abuts takes its bore.
	p.OutsideDiameter += 1 * mm
	s.Ports[0] = p
	wide := s.Blank(blank.Options{})
	s.Ports[0].OutsideDiameter -= 1 * mm
	checktest.Close(t, "clearance", value(t, s.Blank(blank.Options{Clearance: 0.5 * mm}), "hole of p: area"), value(t, wide, "hole of p: area"), 1e-12)
	s.Ports[0].Fit = port.On
	checktest.Close(t, "bore", value(t, s.Blank(blank.Options{Clearance: 0.5 * mm}), "hole of p: length along the generator"), (21.4/math.Sin(30*deg)+3/math.Tan(30*deg))*mm, 1e-9)
}

// The face that is up is the one away from the contents: rolled up, a turn
// that is anticlockwise on the blank is anticlockwise to one who stands outside.
func TestOutsideIsUp(t *testing.T) {
	for _, row := range []struct{ forward, inward bool }{{true, false}, {false, false}, {true, true}, {false, true}} {
		s := sector(40)
		s.Forward, s.Wall.Inward = row.forward, row.inward
		for _, clock := range []float64{90, 100} {
			p := tube(20, 100)
			p.Clock = clock * deg
			s.Ports = append(s.Ports, p)
		}
		q := tube(20, 150)
		q.Clock = 90 * deg
		s.Ports[1].Name, q.Name = "clockwards", "q"
		s.Ports[1].Radius = 101 * mm
		s.Ports = []port.Port{s.Ports[0], q}
		b := s.Blank(blank.Options{})
		r := s
		r.Ports = []port.Port{tube(20, 100)}
		r.Ports[0].Clock = 130 * deg
		c := r.Blank(blank.Options{})
		if b.Err != nil || c.Err != nil {
			t.Fatal(b.Err, c.Err)
		}
		middle := func(path blank.Path) (x, y float64) {
			for _, v := range path.Vertices {
				x, y = x+v.X/float64(len(path.Vertices)), y+v.Y/float64(len(path.Vertices))
			}
			return x, y
		}
		x0, y0 := middle(b.Cut[1]) // at clock 90, 100 mm from the axis
		x1, y1 := middle(b.Cut[2]) // outboard of it
		x2, y2 := middle(c.Cut[1]) // at a later clock
		flat := (x1-x0)*(y2-y0) - (x2-x0)*(y1-y0)
		// In space at clock 90 (y axis, z forward): outboard is y and, on the forward
		// head, aft; a later clock is −x. The normal of the two, against the
		// direction out of the tank, which is ±z on the ends.
		aft := -1.0 // z per step outboard, sign
		if row.forward == row.inward {
			aft = 1
		}
		out := [3]float64{0, 1, aft}
		later := [3]float64{-1, 0, 0}
		nz := out[0]*later[1] - out[1]*later[0]
		away := 1.0
		if !row.forward {
			away = -1
		}
		if flat*nz*away <= 0 {
			t.Errorf("forward %v, inward %v: the inside face is up", row.forward, row.inward)
		}
	}
}

func TestSectorRefusesAndWarns(t *testing.T) {
	at := func(clock, e float64) blank.Blank {
		s := sector(45)
		p := tube(25.4, e)
		p.Clock, p.OutsideLeg = clock*deg, 3*mm
		s.Ports = []port.Port{p}
		return s.Blank(blank.Options{})
	}
	for name, row := range map[string]struct {
		b    blank.Blank
		want string
	}{
		"across the seam": {at(5, 110), "crosses the seam of the cone"},
		"on the seam":     {at(0, 110), "crosses the seam of the cone"},
		"over the rim":    {at(90, 190), "over the rim"},
		"over the tip":    {at(90, 42), "over the tip"},
	} {
		if row.b.Err == nil || !strings.Contains(row.b.Err.Error(), row.want) || len(row.b.Cut) > 0 {
			t.Errorf("%s: %v, %d cuts", name, row.b.Err, len(row.b.Cut))
		}
	}
	near := at(14, 110)
	if near.Err != nil || !strings.Contains(strings.Join(near.Cautions, "\n"), "to the seam of the cone") {
		t.Errorf("near the seam: %v, %v", near.Err, near.Cautions)
	}
	if clear := at(90, 110); clear.Err != nil || len(clear.Cautions) > 0 {
		t.Errorf("clear of everything: %v, %v", clear.Err, clear.Cautions)
	}
	thick := sector(45)
	thick.Wall.Thickness = 6 * mm
	thick.Ports = []port.Port{tube(25.4, 110)}
	thick.Ports[0].Clock = 90 * deg
	if b := thick.Blank(blank.Options{}); !strings.Contains(strings.Join(b.Cautions, ""), "up to 6 mm off the tube") || len(b.Mark) != 6 {
		t.Errorf("a wide wedge: %v, %d marks", b.Cautions, len(b.Mark))
	}
	s := sector(45)
	s.Ports = []port.Port{tube(40, 110), tube(40, 110)}
	s.Ports[0].Clock, s.Ports[1].Clock = 100*deg, 118*deg
	if b := s.Blank(blank.Options{}); b.Err == nil || !strings.Contains(b.Err.Error(), "run into each other") {
		t.Errorf("two holes in one: %v", b.Err)
	}
	for _, bad := range []blank.Sector{{Name: "none"}, {Name: "nan", Wall: port.Wall{Surface: port.Cone, HalfApex: 1, Thickness: math.NaN(), Radius: 1}, Rim: 1},
		{Name: "tip", Wall: sector(45).Wall, Rim: 0.1, Tip: 0.2}} {
		if b := bad.Blank(blank.Options{}); b.Err == nil || len(b.Cut) > 0 {
			t.Errorf("%s: drawn", bad.Name)
		}
	}
	for _, o := range []blank.Options{{Gap: math.NaN()}, {Kerf: -1 * mm}, {Clearance: 0.021}, {Gap: math.Inf(1)}} {
		if b := sector(45).Blank(o); b.Err == nil {
			t.Errorf("drawn with %+v", o)
		}
	}
}

// Whatever the cone, port and allowances: a part that is drawn has every hole
// within its plate and clear of the others, and one that is refused has nothing to
// cut.
func TestDrawnHolesLieInThePlate(t *testing.T) {
	refused, drawn := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, least, most float64) float64 {
			return rapid.Float64Range(least, most).Draw(t, name) * mm
		}
		s := blank.Sector{Name: "s", Rim: length("rim", 150, 300), Tip: length("tip", 20, 60), RimIsWelded: true,
			Seam: rapid.Float64Range(-7, 7).Draw(t, "seam"), Forward: rapid.Bool().Draw(t, "forward")}
		s.Wall = port.Wall{Surface: port.Cone, Thickness: length("wall", 1, 8), Radius: s.Rim, Tip: s.Tip,
			HalfApex: rapid.Float64Range(20, 85).Draw(t, "α") * deg, Inward: rapid.Bool().Draw(t, "inward")}
		for range rapid.IntRange(0, 3).Draw(t, "ports") {
			p := port.Port{Name: "p", OutsideDiameter: length("od", 10, 60), TubeWall: 1 * mm, Radius: length("e", 20, 300),
				Clock: rapid.Float64Range(-7, 7).Draw(t, "clock"), Parallel: rapid.Bool().Draw(t, "parallel"), Fit: port.Fit(rapid.IntRange(0, 2).Draw(t, "fit"))}
			s.Ports = append(s.Ports, p)
		}
		b := s.Blank(blank.Options{Gap: length("gap", 0, 4), Kerf: length("kerf", 0, 2), Clearance: length("clearance", 0, 1)})
		if b.Err != nil {
			refused++
			if len(b.Cut)+len(b.Mark)+len(b.Measures) > 0 {
				t.Fatalf("refused and drawn: %v", b.Err)
			}
			return
		}
		drawn++
		if len(b.Cut) != 1+len(s.Ports) {
			t.Fatalf("%d cuts for %d ports", len(b.Cut), len(s.Ports))
		}
		plate := b.Cut[0].Points(0.01)
		for _, hole := range b.Cut[1:] {
			for _, v := range hole.Vertices {
				if !inside(v.Point, plate) {
					t.Fatalf("a hole leaves the plate at %v", v.Point)
				}
			}
		}
	})
	if refused == 0 || drawn == 0 {
		t.Errorf("%d refused, %d drawn: one of the two was not tried", refused, drawn)
	}
}

// inside counts how often the polygon winds round a point.
func inside(p blank.Point, ps []blank.Point) bool {
	sum := 0.0
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		sum += math.Remainder(math.Atan2(b.Y-p.Y, b.X-p.X)-math.Atan2(a.Y-p.Y, a.X-p.X), 2*math.Pi)
	}
	return math.Abs(sum) > math.Pi
}
