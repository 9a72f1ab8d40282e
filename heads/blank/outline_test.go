package blank_test

// Holes of the oblique cases PC-01 to PC-05: computed by two methods, closed form
// and an unrolling by a fan of triangles, in mm. Slot lengths by direct
// construction of both faces.

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

const (
	deg = math.Pi / 180
	mm  = 1e-3
)

// wall returns a cone with a rim at 1 m; all in mm and degrees.
func wall(α, t float64) port.Wall {
	return port.Wall{Surface: port.Cone, Thickness: t * mm, Radius: 1, HalfApex: α * deg}
}

// tube returns a parallel tube; all in mm.
func tube(od, e float64) port.Port {
	return port.Port{Name: "p", OutsideDiameter: od * mm, TubeWall: 2 * mm, Radius: e * mm, Parallel: true}
}

func measured(ps []blank.Point) (long, wide, round, area float64) {
	path := blank.Path{Closed: true}
	for _, p := range ps {
		path.Vertices = append(path.Vertices, blank.Vertex{Point: p})
	}
	least, most := path.Bounds()
	return most.X - least.X, most.Y - least.Y, path.Length(), path.Area()
}

func TestOutlineOfAThinCone(t *testing.T) {
	for _, row := range []struct {
		id                           string
		α, od, e                     float64
		major, wide, perimeter, area string
		u, v                         [3]float64 // at ψ 45, 90 and 135 degrees
	}{
		{"PC-01", 30, 25.4, 60, "50.8000", "25.5388", "123.0433", "1013.415", [3]float64{18.8334, 1.9922, -16.7848}, [3]float64{8.9991, 12.7694, 9.0144}},
		{"PC-02", 45, 25.4, 60, "35.9210", "25.4925", "97.0330", "716.593", [3]float64{13.1113, 0.9383, -12.1461}, [3]float64{8.9928, 12.7462, 9.0030}},
		{"PC-03", 45, 50.8, 60, "71.8420", "51.4917", "194.0660", "2866.370", [3]float64{26.8409, 3.6206, -22.8185}, [3]float64{18.0376, 25.7445, 18.2082}},
		{"PC-04", 60, 38.1, 80, "43.9941", "38.1872", "129.1193", "1316.465", [3]float64{15.8327, 0.6435, -15.1655}, [3]float64{13.4819, 19.0936, 13.4929}},
		{"PC-05", 60, 50.8, 100, "58.6588", "50.9316", "172.1591", "2340.382", [3]float64{21.1309, 0.9131, -20.1797}, [3]float64{17.9776, 25.4658, 17.9954}},
	} {
		ps, err := blank.Outline(wall(row.α, 1e-9), tube(row.od, row.e), row.od/2*mm, 60000)
		if err != nil {
			t.Fatalf("%s: %v", row.id, err)
		}
		long, wide, round, area := measured(ps)
		checktest.Printed(t, row.id+" length", long/mm, row.major)
		checktest.Printed(t, row.id+" width", wide/mm, row.wide)
		checktest.Printed(t, row.id+" perimeter", round/mm, row.perimeter)
		checktest.Printed(t, row.id+" area", area/mm/mm, row.area)
		for i := range row.u {
			least := math.Inf(1)
			for _, p := range ps {
				least = math.Min(least, math.Hypot(p.X/mm-row.u[i], p.Y/mm-row.v[i]))
			}
			if least > 0.003 { // half a step between the points, and half a digit
				t.Errorf("%s: the outline passes %g mm from (%g, %g)", row.id, least, row.u[i], row.v[i])
			}
		}
	}
}

func TestOutlineIsLongerByTheWall(t *testing.T) {
	for _, row := range []struct {
		α, od, t float64
		want     string
	}{{30, 25.4, 2, "54.264"}, {45, 25.4, 3, "38.921"}, {60, 38.1, 3, "45.726"}, {45, 50.8, 2.5, "74.342"}} {
		ps, err := blank.Outline(wall(row.α, row.t), tube(row.od, 100), row.od/2*mm, 1000)
		if err != nil {
			t.Fatal(err)
		}
		long, _, _, _ := measured(ps)
		checktest.Printed(t, "slot", long/mm, row.want)
	}
}

// The area of the hole through a thick cone is that of the thin one and a strip
// of t cot α between the generators that touch the tube: half the difference of
// two sectors.
func TestOutlineArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		α := rapid.Float64Range(30, 80).Draw(t, "α") * deg
		e := rapid.Float64Range(50, 300).Draw(t, "e")
		a := e * rapid.Float64Range(0.05, 0.5).Draw(t, "a/e")
		w := rapid.Float64Range(1, 10).Draw(t, "t")
		cone := port.Wall{Surface: port.Cone, Thickness: w, Radius: 1000, HalfApex: α}
		ps, err := blank.Outline(cone, port.Port{Name: "p", Radius: e, Parallel: true}, a, 8000)
		if err != nil {
			t.Fatal(err)
		}
		_, _, _, got := measured(ps)
		// ∫ ½[(s_o + δ)² − (s_i − δ)²] dω, with s_o + s_i = 2 e cos θ/sin α, dω = sin α dθ.
		δ, θ := w/2/math.Tan(α), math.Asin(a/e)
		want := math.Pi*a*a/math.Sin(α) + δ*4*e*math.Sin(θ)
		if math.Abs(got-want) > 1e-6*want {
			t.Fatalf("area %.9g, want %.9g", got, want)
		}
	})
}

// rolled puts a point of the flat blank of a cone, s from the apex and ω from the
// port's generator, back on the face at n outside of the mid-surface, by turning
// the generator and its normal round the axis.
func rolled(α, s, ω, n float64) (x, y, z float64) {
	θ := ω / math.Sin(α)
	r, z := s*math.Sin(α)+n*math.Cos(α), s*math.Cos(α)-n*math.Sin(α)
	return r * math.Cos(θ), r * math.Sin(θ), z
}

// At every depth of the wall the edge of the hole lies on the tube or clear of it,
// and at one depth it touches.
func touches(t *rapid.T, a, w float64, distance func(n float64) float64) {
	least := math.Inf(1)
	for i := range 401 {
		least = math.Min(least, distance(w*(float64(i)/400-0.5)))
	}
	if math.Abs(least-a) > 2e-6*a { // the depth of touch lies between two of the steps on slanting walls
		t.Fatalf("the edge comes within %.12g of the tube's axis, radius %.12g", least, a)
	}
}

func TestObliqueHoleRolledUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		α := rapid.Float64Range(30, 85).Draw(t, "α") * deg
		e := rapid.Float64Range(50, 300).Draw(t, "e")
		a := e * rapid.Float64Range(0.05, 0.8).Draw(t, "a/e")
		w := a * rapid.Float64Range(0.01, 0.5).Draw(t, "t/a")
		ps, err := blank.Outline(port.Wall{Surface: port.Cone, Thickness: w, Radius: 1000, HalfApex: α}, port.Port{Name: "p", Radius: e, Parallel: true}, a, 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range ps {
			u := p.X + e/math.Sin(α)
			touches(t, a, w, func(n float64) float64 {
				x, y, _ := rolled(α, math.Hypot(u, p.Y), math.Atan2(p.Y, u), n)
				return math.Hypot(x-e, y)
			})
		}
	})
}

func TestNormalHoleRolledUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		α := rapid.Float64Range(10, 85).Draw(t, "α") * deg
		e := rapid.Float64Range(100, 300).Draw(t, "e")
		a := e * rapid.Float64Range(0.05, 0.4).Draw(t, "a/e")
		w := a * rapid.Float64Range(0.01, 0.2).Draw(t, "t/a")
		ps, err := blank.Outline(port.Wall{Surface: port.Cone, Thickness: w, Radius: 1000, HalfApex: α}, port.Port{Name: "p", Radius: e}, a, 64)
		if err != nil {
			t.Fatal(err)
		}
		sin, cos := math.Sincos(α)
		for _, p := range ps {
			u := p.X + e/sin
			least := math.Inf(1)
			for i := range 5 {
				x, y, z := rolled(α, math.Hypot(u, p.Y), math.Atan2(p.Y, u), w*(float64(i)/4-0.5))
				dx, dz := x-e, z-e/sin*cos // square to the tube: less the part along the normal
				along := dx*cos - dz*sin
				least = math.Min(least, math.Sqrt(dx*dx+dz*dz+y*y-along*along))
			}
			if math.Abs(least-a) > 1e-6*a {
				t.Fatalf("the edge comes within %.12g of the tube's axis, radius %.12g", least, a)
			}
		}
	})
}

func TestCylinderHoleRolledUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		R := rapid.Float64Range(50, 500).Draw(t, "R")
		w := R * rapid.Float64Range(0.002, 0.1).Draw(t, "t/R")
		a := (R - w/2) * rapid.Float64Range(0.05, 0.9).Draw(t, "a/R")
		ps, err := blank.Outline(port.Wall{Surface: port.Cylinder, Thickness: w, Radius: R, Length: 1}, port.Port{Name: "p"}, a, 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range ps {
			touches(t, a, w, func(n float64) float64 { return math.Hypot(p.X, (R+n)*math.Sin(p.Y/R)) })
		}
	})
}

// With every length seven times as long the outline is seven times as long.
func TestOutlineScales(t *testing.T) {
	p, w := tube(25.4, 60), wall(45, 3)
	small, err := blank.Outline(w, p, 12.7*mm, 90)
	p.Radius, w.Thickness, w.Radius = 7*p.Radius, 7*w.Thickness, 7*w.Radius
	large, err2 := blank.Outline(w, p, 7*12.7*mm, 90)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	for i := range small {
		if math.Hypot(large[i].X-7*small[i].X, large[i].Y-7*small[i].Y) > 1e-15 {
			t.Errorf("point %d: %v, seven times %v", i, large[i], small[i])
		}
	}
}

func TestOutlineRefuses(t *testing.T) {
	for name, row := range map[string]struct {
		w port.Wall
		p port.Port
		a float64
	}{
		"apex":          {wall(45, 3), tube(25.4, 12), 12.7 * mm},
		"apex, touched": {wall(45, 3), tube(25.4, 12.7), 12.7 * mm},
		"no radius":     {wall(45, 3), tube(25.4, 60), math.NaN()},
		"no place":      {wall(45, 3), tube(25.4, math.NaN()), 12.7 * mm},
		"dome":          {port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 0.2}, tube(25.4, 60), 12.7 * mm},
		"cylinder":      {port.Wall{Surface: port.Cylinder, Thickness: 3 * mm, Radius: 0.02, Length: 1}, port.Port{Name: "p"}, 18.5 * mm},
	} {
		if ps, err := blank.Outline(row.w, row.p, row.a, 64); err == nil || ps != nil {
			t.Errorf("%s: laid flat", name)
		}
	}
}

// Rolled up, the line on the outside face lies on the tube, on that face.
func TestFaceLineRolledUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		α := rapid.Float64Range(30, 85).Draw(t, "α") * deg
		e := rapid.Float64Range(50, 300).Draw(t, "e")
		a := e * rapid.Float64Range(0.05, 0.8).Draw(t, "a/e")
		w := port.Wall{Surface: port.Cone, Thickness: a * rapid.Float64Range(0.01, 0.5).Draw(t, "t/a"), Radius: 1000, HalfApex: α, Inward: rapid.Bool().Draw(t, "inward")}
		ps, err := blank.FaceLine(w, port.Port{Name: "p", Radius: e, Parallel: true}, a, 64)
		if err != nil {
			t.Fatal(err)
		}
		face := w.Thickness / 2 // away from the contents: the concave face of an inward cone
		if w.Inward {
			face = -face
		}
		for _, p := range ps {
			u := p.X + e/math.Sin(α)
			x, y, _ := rolled(α, math.Hypot(u, p.Y), math.Atan2(p.Y, u), face)
			if off := math.Hypot(x-e, y) - a; math.Abs(off) > 1e-9*a {
				t.Fatalf("%g off the tube", off)
			}
		}
	})
	if _, err := blank.FaceLine(wall(45, 3), tube(25.4, 12), 12.7*mm, 64); err == nil {
		t.Error("a line round the apex")
	}
}
