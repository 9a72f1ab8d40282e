package buckling_test

// Rings on a cylinder: values worked apart from this code (computed, by bisection
// where the code has a closed form), limits, the numerical shell with its rings,
// change of units, and what must hold for every cylinder.

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
	"proofsheet/shell/revolution"
)

// ringed is a cylinder of R 300 mm, t 1.5 mm, L 1.5 m in 304 with rings every 0.3 m,
// 4 mm wide and 30 mm high, outside.
func ringed() buckling.Cylinder {
	return buckling.Cylinder{InsideRadius: 0.3 - 0.00075, Thickness: 0.0015, Length: 1.5,
		Rings: &buckling.Rings{Stations: []float64{0.3, 0.6, 0.9, 1.2}, Width: 0.004, Height: 0.03, Modulus: 193e9, Yield: 205e6}}
}

// insideRinged is one of R 500 mm, t 4 mm, L 2 m in aluminium, rings every 0.5 m, inside.
func insideRinged() buckling.Cylinder {
	return buckling.Cylinder{InsideRadius: 0.498, Thickness: 0.004, Length: 2,
		Rings: &buckling.Rings{Stations: []float64{0.5, 1, 1.5}, Width: 0.008, Height: 0.05, Inside: true, Modulus: 68.9e9, Yield: 240e6}}
}

func TestRingsComputed(t *testing.T) {
	for _, row := range []struct {
		c                          buckling.Cylinder
		m                          buckling.Metal
		overall, yields, ug        string // Pa
		inertia, strip             string // m4, m, without waves
		waves, wavesYield, carried float64
	}{
		{ringed(), metal(193, 0.3, 205, 5, "austenitic"), "3.2082e6", "528292", "287290", "1.77101e-8", "0.0330412", 3, 3, 0.3},
		{insideRinged(), metal(68.9, 0.33, 240, 20, "aluminium"), "2.04525e6", "832108", "201330", "2.03482e-7", "0.0697091", 3, 3, 0.5},
	} {
		g, n, err := row.c.RingOverall(row.m)
		must(t, g, err)
		checktest.Printed(t, "p_g", g, row.overall)
		y, ny, err := row.c.RingYield(row.m)
		must(t, y, err)
		checktest.Printed(t, "p_y", y, row.yields)
		u, err := row.c.RingUG29(row.m)
		checktest.Printed(t, "UG-29", must(t, u, err), row.ug)
		s := row.c.Section(row.carried, 0)
		checktest.Printed(t, "I_e", s.Inertia, row.inertia)
		checktest.Printed(t, "L_e", s.Strip, row.strip)
		if float64(n) != row.waves || float64(ny) != row.wavesYield {
			t.Errorf("%d and %d waves", n, ny)
		}
	}
}

// numerically returns the elastic pressure at which the numerical shell of the same
// cylinder buckles, simply supported at both ends, rings as bars off its mid-surface.
func numerically(t *testing.T, c buckling.Cylinder, m buckling.Metal) (p float64, waves int) {
	t.Helper()
	R := c.MidRadius()
	var s revolution.Structure
	at := append(append([]float64{0}, c.Rings.Stations...), c.Length)
	for i := 1; i < len(at); i++ {
		s.Segments = append(s.Segments, revolution.Segment{Name: "wall", Curve: revolution.Line{From: revolution.Point{R: R, Z: at[i-1]}, To: revolution.Point{R: R, Z: at[i]}},
			Thickness: c.Thickness, Modulus: m.Modulus, Poisson: m.Poisson})
	}
	r := c.Rings
	off := (c.Thickness + r.Height) / 2
	if r.Inside {
		off = -off
	}
	for i := range r.Stations {
		s.Rings = append(s.Rings, revolution.Ring{Node: i + 1, Area: r.Width * r.Height, Radial: r.Width * math.Pow(r.Height, 3) / 12, Axial: r.Height * math.Pow(r.Width, 3) / 12,
			Torsion: r.Height * math.Pow(r.Width, 3) / 3, Modulus: r.Modulus, Poisson: m.Poisson, Offset: revolution.Point{R: off}})
	}
	last := len(s.Segments)
	s.Supports = []revolution.Support{{Node: 0, Axial: true, Radial: true, Waves: true}, {Node: last, Radial: true, Waves: true}}
	model, err := revolution.New(s)
	must(t, model, err)
	const p0 = 1e5
	l := revolution.Uniform(-p0)
	l.Forces = []revolution.Force{{Node: last, Axial: -p0 * math.Pi * R * R}}
	b, err := model.Bifurcation(revolution.Load{}, l)
	must(t, b.Factor, err)
	return p0 * b.Factor, b.Waves
}

// Whether rings and wall give way together (bars up to 8 mm high) or the wall between
// them goes first, the lower of Bryant's form and the elastic pressure of a bay is below
// the numerical shell's, by up to a half where the bars are weakest.
func TestRingsAgainstTheNumericalShell(t *testing.T) {
	m := metal(193, 0.3, 205, 5, "austenitic")
	bay := buckling.Tube{Radius: 0.3, Thickness: 0.0015, Length: 0.3}
	e, err := bay.PressureEN13445(m)
	must(t, e, err)
	for _, row := range []struct {
		height   float64
		inside   bool
		together bool
	}{{0.004, false, true}, {0.004, true, true}, {0.006, false, true}, {0.006, true, true}, {0.008, false, true}, {0.010, false, false}, {0.030, true, false}} {
		c := ringed()
		c.Rings.Height, c.Rings.Inside = row.height, row.inside
		g, n, err := c.RingOverall(m)
		must(t, g, err)
		p, waves := numerically(t, c, m)
		ratio := math.Min(g, e.Elastic) / p
		t.Logf("height %g mm, inside %v: Bryant %.4g kPa n %d, bay %.4g, shell %.4g kPa n %d, ratio %.3f", row.height*1e3, row.inside, g/1e3, n, e.Elastic/1e3, p/1e3, waves, ratio)
		if !(ratio > 0.5 && ratio < 1) || row.together != (n == waves) {
			t.Errorf("height %g mm: ratio %.3f, %d and %d waves", row.height*1e3, ratio, n, waves)
		}
	}
}

// A bar without stiffness leaves the wall's own term; on a long cylinder the ring alone
// is left, 3 E I/(R³ L_s) (Bresse).
func TestRingLimits(t *testing.T) {
	m := metal(193, 0.3, 205, 5, "austenitic")
	long := ringed()
	long.Length, long.Rings.Stations = 400.2, nil
	for i := 1; i < 1334; i++ {
		long.Rings.Stations = append(long.Rings.Stations, 0.3*float64(i))
	}
	g, n, err := long.RingOverall(m)
	must(t, g, err)
	s := long.Section(0.3, 2)
	if n != 2 {
		t.Errorf("%d waves", n)
	}
	checktest.Close(t, "a ring", g, 3*193e9*s.Inertia/(math.Pow(s.Radius, 3)*0.3), 1e-3)
	soft := ringed()
	soft.Rings.Modulus, soft.Rings.Yield = 1e-3, 1e-6
	g, n, err = soft.RingOverall(m)
	must(t, g, err)
	n2, λ2 := float64(n*n), math.Pow(math.Pi*0.3/1.5, 2)
	checktest.Close(t, "the wall", g, 193e9/200*λ2*λ2/((n2-1+λ2/2)*math.Pow(n2+λ2, 2)), 1e-2)
	bay, carried, err := ringed().Bay()
	checktest.Close(t, "bay", must(t, bay, err), 0.3, 1e-12)
	checktest.Close(t, "carried", carried, 0.3, 1e-12)
	c := ringed()
	c.Ends[0] = buckling.End{Kind: buckling.Dished, Depth: 0.15}
	bay, carried, err = c.Bay()
	checktest.Close(t, "bay to a dished head", must(t, bay, err), 0.36, 1e-12)
	checktest.Close(t, "carried beside it", carried, 0.33, 1e-12)
}

// Lengths times seven and stresses times three: pressures times three.
func TestRingUnits(t *testing.T) {
	big := ringed()
	big.InsideRadius, big.Thickness, big.Length = 7*big.InsideRadius, 7*big.Thickness, 7*big.Length
	r := *big.Rings
	r.Width, r.Height, r.Modulus, r.Yield = 7*r.Width, 7*r.Height, 3*r.Modulus, 3*r.Yield
	r.Stations = nil
	for _, z := range ringed().Rings.Stations {
		r.Stations = append(r.Stations, 7*z)
	}
	big.Rings = &r
	m, stiff := metal(193, 0.3, 205, 5, "austenitic"), metal(3*193, 0.3, 3*205, 5, "austenitic")
	g, _, _ := ringed().RingOverall(m)
	G, _, err := big.RingOverall(stiff)
	checktest.Close(t, "overall", must(t, G, err), 3*g, 1e-12)
	y, _, _ := ringed().RingYield(m)
	Y, _, err := big.RingYield(stiff)
	checktest.Close(t, "yield", must(t, Y, err), 3*y, 1e-12)
	u, _ := ringed().RingUG29(m)
	U, err := big.RingUG29(stiff)
	checktest.Close(t, "UG-29", must(t, U, err), 3*u, 1e-12)
}

// Rings raise what the cylinder stands, named by its method; weak or unfit ones leave it
// at its full length, and say so. Compression takes no notice of them.
func TestCheckExternalWithRings(t *testing.T) {
	m := metal(193, 0.3, 205, 5, "austenitic")
	o := buckling.Options{Factor: 1.5}
	plain := ringed()
	plain.Rings = nil
	bare := allowable(plain, m)
	r := ringed().Resistance(m, o)
	_, low, err := r.External()
	must(t, low, err)
	if !(low.Allowable > 3*bare) || math.Abs(low.Length-0.3) > 1e-12 {
		t.Errorf("%g Pa with rings by %s, %g without", low.Allowable, low.Name, bare)
	}
	status(t, r.CheckExternal(low.Allowable*0.999), check.Satisfied, "without rings", "Bryant", "UG-29", "between rings", "rings: 4 outside")
	status(t, r.CheckExternal(low.Allowable*1.001), check.NotSatisfied)
	if a, b := r.CheckCompression(buckling.Station{Compression: 50e3}, true), plain.Resistance(m, o).CheckCompression(buckling.Station{Compression: 50e3}, true); a.Capacity.Value != b.Capacity.Value {
		t.Errorf("rings change compression from %g to %g", b.Capacity.Value, a.Capacity.Value)
	}
	for name, edit := range map[string]func(r *buckling.Rings){
		"weak":          func(r *buckling.Rings) { r.Height = 0.001 },
		"trips":         func(r *buckling.Rings) { r.Width = r.Height / (r.Slenderness() * 1.001) },
		"tall":          func(r *buckling.Rings) { r.Height, r.Width = 0.0601, 0.01 },
		"wide":          func(r *buckling.Rings) { r.Width = math.Sqrt(0.3*0.0015) * 1.001 },
		"no width":      func(r *buckling.Rings) { r.Width = 0 },
		"not a number":  func(r *buckling.Rings) { r.Height = math.NaN() },
		"no modulus":    func(r *buckling.Rings) { r.Modulus = math.NaN() },
		"falling":       func(r *buckling.Rings) { r.Stations = []float64{0.6, 0.3} },
		"beyond":        func(r *buckling.Rings) { r.Stations = []float64{0.6, 1.5} },
		"none":          func(r *buckling.Rings) { r.Stations = nil },
		"not countable": func(r *buckling.Rings) { r.Err = check.Within("", "", 2, 0, 1, "") },
	} {
		c := ringed()
		edit(c.Rings)
		if got := allowable(c, m); got != bare {
			t.Errorf("%s: %g Pa, the plain cylinder stands %g", name, got, bare)
		}
	}
	edge := ringed()
	edge.Rings.Width = edge.Rings.Height / edge.Rings.Slenderness() * (1 + 1e-9)
	if !(allowable(edge, m) > bare) {
		t.Error("a bar at the limit of tripping is refused")
	}
}

// A ring more, wherever it stands, never lowers the allowable, and neither do rings at all.
func TestARingMoreIsNeverWeaker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, m := anyTube(t)
		bare := allowable(c, m)
		root := math.Sqrt(c.MidRadius() * c.Thickness)
		w := root * rapid.Float64Range(0.05, 1).Draw(t, "width")
		c.Rings = &buckling.Rings{Width: w, Height: w * rapid.Float64Range(0.2, 8).Draw(t, "height"), Inside: rapid.Bool().Draw(t, "inside"), Modulus: m.Modulus, Yield: m.Yield}
		last := bare
		n := rapid.IntRange(1, 6).Draw(t, "rings")
		for range n {
			z := c.Length * rapid.Float64Range(0.05, 0.95).Draw(t, "at")
			if slices.ContainsFunc(c.Rings.Stations, func(q float64) bool { return math.Abs(q-z) < 0.01*c.Length }) {
				continue // one ring on another is refused
			}
			next := *c.Rings
			next.Stations = append(append([]float64(nil), c.Rings.Stations...), z)
			slices.Sort(next.Stations)
			c.Rings = &next
			got := allowable(c, m)
			if !(got >= bare*(1-1e-12) && got >= last*(1-1e-9)) {
				t.Fatalf("%g Pa after %g, bare %g, at %v", got, last, bare, next.Stations)
			}
			last = got
		}
	})
}
