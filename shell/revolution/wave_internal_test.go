package revolution

import (
	"math"
	"testing"
)

// A rigid motion across the axis or about one leaves every strain of one wave
// at nothing, on any meridian; so does a shift along and a turn about the axis
// without waves.
func TestRigidRipples(t *testing.T) {
	for _, c := range []Curve{Ellipse{Center: Point{R: 0.3, Z: 0.2}, A: 2, B: 1, To: π}, Line{From: Point{R: 1}, To: Point{R: 2, Z: 3}}} {
		for i := 1; i < 10; i++ {
			f := c.at(float64(i) / 10)
			r2, z2 := -f.k*f.tz, f.k*f.tr // r″, z″
			for _, row := range []struct {
				what string
				u    ripple
				n    float64
			}{
				{"across", ripple{field: field{r: 1}, v: -1}, 1},
				{"about", ripple{field: field{r: f.z, r1: f.tz, r2: z2, z: -f.r, z1: -f.tr, z2: -r2}, v: -f.z, v1: -f.tz}, 1},
				{"along", ripple{field: field{z: 1}}, 0},
				{"round", ripple{v: f.r, v1: f.tr}, 0},
			} {
				x := f.ripples(row.u, row.n)
				for _, y := range []float64{x.s, x.θ, x.γ, x.κs, x.κθ, x.τ} {
					if row.what == "round" {
						continue
					}
					if !(math.Abs(y) < 1e-12) {
						t.Errorf("%s at %d of %T: %+v", row.what, i, c, x)
						break
					}
				}
			}
		}
	}
}

// A ring alone: rigid motions cost nothing, also off its node, and without
// extension n waves cost E I (n² − 1)²/r³ against N (n − 1/n)²/r of its force:
// q = n² E I/r³ for a load that keeps its direction.
func TestRingWaves(t *testing.T) {
	s := Structure{
		Segments: []Segment{
			{Name: "a", Curve: Line{From: Point{R: 2, Z: -1}, To: Point{R: 2}}, Thickness: 0.1, Modulus: 1, Poisson: 0.3},
			{Name: "b", Curve: Line{From: Point{R: 2}, To: Point{R: 2, Z: 1}}, Thickness: 0.1, Modulus: 1, Poisson: 0.3},
		},
		Supports: []Support{{Axial: true}},
	}
	m, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	w := m.waves()
	g := Ring{Node: 1, Area: 0.3, Radial: 0.05, Axial: 0.07, Torsion: 0.04, Modulus: 5, Poisson: 0.25, Offset: Point{R: 0.4, Z: 0.3}}
	cost := func(n, force float64, elastic bool, u ...float64) float64 {
		b, x := newBand(w.n, waveWidth), make([]float64, w.n)
		copy(x[w.nodes[1]:], u)
		w.ring(g, n, force, elastic, b)
		return b.times(x, x)
	}
	if c := cost(1, 0, true, 1, 0, 0, -1); !(math.Abs(c) < 1e-12) {
		t.Errorf("a shift across costs %g", c)
	}
	if c := cost(1, 0, true, 0, -2, 1, 0); !(math.Abs(c) < 1e-12) {
		t.Errorf("a tilt costs %g", c)
	}
	if c := cost(0, 0, true, 0, 1, 0, 0); !(math.Abs(c) < 1e-12) {
		t.Errorf("a shift along costs %g", c)
	}
	g.Offset = Point{}
	for _, n := range []float64{2, 3, 7} {
		stiff, force := cost(n, 0, true, 1, 0, 0, -1/n), cost(n, -1, false, 1, 0, 0, -1/n)
		if got, want := -stiff/force/2, n*n*5*0.05/8; !(math.Abs(got-want) < 1e-12) {
			t.Errorf("%g waves: line load %g, want %g", n, got, want)
		}
	}
}

// The expansion in n is what fill makes, rigid arms, rings, an axis and an open
// end among it.
func TestExpansion(t *testing.T) {
	m, err := New(Structure{
		Segments: []Segment{
			{Name: "cap", Curve: Arc(Point{}, 2, 0, 1.2), Thickness: 0.05, Modulus: 100, Poisson: 0.3},
			{Name: "cone", Curve: Line{From: Point{R: 2*math.Sin(1.2) + 0.02, Z: -2 * math.Cos(1.2)}, To: Point{R: 2, Z: 1}}, Thickness: 0.08, Modulus: 100, Poisson: 0.3, Linked: true},
		},
		Rings:    []Ring{{Node: 1, Area: 0.01, Radial: 1e-4, Axial: 1e-4, Torsion: 1e-4, Modulus: 100, Offset: Point{Z: 0.1}}},
		Supports: []Support{{Node: 0, Axial: true}},
		Mesh:     Mesh{Elements: 8},
	})
	if err != nil {
		t.Fatal(err)
	}
	u, err := m.Solve(Uniform(0.3))
	if err != nil {
		t.Fatal(err)
	}
	w := m.waves()
	pre, vary := m.prestress(u.u, m.following(Uniform(0.3)), true), m.prestress(u.u, m.following(Uniform(-1)), false)
	x := w.expand(pre, vary)
	for _, n := range []int{0, 1, 2, 3, 17, 60} {
		k, g, a, b := newBand(w.n, waveWidth), newBand(w.n, waveWidth), newBand(w.n, waveWidth), newBand(w.n, waveWidth)
		w.fill(k, g, n, pre, vary)
		x.fill(a, b, n)
		for _, pair := range [2][2]*band{{k, a}, {g, b}} {
			most, off := 0.0, 0.0
			for i, v := range pair[0].a {
				most, off = math.Max(most, math.Abs(v)), math.Max(off, math.Abs(v-pair[1].a[i]))
			}
			if !(off < 1e-11*most) || most == 0 {
				t.Errorf("%d waves: off by %.2g of %.2g", n, off, most)
			}
		}
	}
}
