package revolution_test

import (
	"fmt"
	"testing"

	"proofsheet/shell/revolution"
)

// A tank of torispherical and conical end, its cylinder between.
func tank(tb testing.TB, elements int) revolution.Structure {
	tb.Helper()
	aft, err := revolution.Cone(1, 30*deg, 0.1)
	if err != nil {
		tb.Fatal(err)
	}
	body, err := revolution.Cylinder(1, 0, 3)
	if err != nil {
		tb.Fatal(err)
	}
	forward, err := revolution.Torisphere(1, 1.8, 0.2)
	if err != nil {
		tb.Fatal(err)
	}
	tip, err := revolution.Flat(0, 0.1)
	if err != nil {
		tb.Fatal(err)
	}
	s := revolution.Structure{Mesh: revolution.Mesh{Elements: elements}}
	z := -0.9 / 0.5773502691896257
	for _, q := range append(append(append(revolution.Moved(tip, z), aft...), body...), revolution.Forward(forward, 3)...) {
		wall := 0.01
		if q.Name == "flat" {
			wall = 0.02
		}
		s.Segments = append(s.Segments, revolution.Segment{Name: q.Name, Curve: q.Curve, Thickness: wall, Modulus: modulus, Poisson: poisson})
	}
	s.Supports = []revolution.Support{{Node: 2, Axial: true}}
	return s
}

// The cost of a model and one case, and of each case after it.
func BenchmarkRevolution(b *testing.B) {
	for _, n := range []int{300, 500, 2000, 10000} {
		s, load := tank(b, n), revolution.Uniform(1)
		b.Run(fmt.Sprintf("model and case/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m, err := revolution.New(s)
				if err != nil {
					b.Fatal(err)
				}
				if _, err = m.Solve(load); err != nil {
					b.Fatal(err)
				}
			}
		})
		m, err := revolution.New(s)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("case/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err = m.Solve(load); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
