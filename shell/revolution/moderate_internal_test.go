package revolution

import (
	"math"
	"testing"
)

// The tangent is the derivative of the unbalanced load, and pull that by λ, on a
// state far from straight, with pressure that follows, a ring, a joint and an open end.
func TestTangent(t *testing.T) {
	m, err := New(Structure{
		Segments: []Segment{
			{Name: "zone", Curve: Arc(Point{}, 2, 0.5, 1.2), Thickness: 0.05, Modulus: 100, Poisson: 0.3},
			{Name: "cone", Curve: Line{From: Point{R: 2 * math.Sin(1.2), Z: -2 * math.Cos(1.2)}, To: Point{R: 2, Z: 1}}, Thickness: 0.08, Modulus: 100, Poisson: 0.3},
		},
		Rings:    []Ring{{Node: 1, Area: 0.01, Axial: 1e-4, Modulus: 100, Offset: Point{Z: 0.1}}},
		Supports: []Support{{Node: 0, Axial: true}},
		Mesh:     Mesh{Elements: 6},
	})
	if err != nil {
		t.Fatal(err)
	}
	l, err := m.loading(Load{Pressure: func(p Place) float64 { return 1 + p.Z }, Forces: []Force{{Node: 2, Axial: 3}}}, Uniform(2))
	if err != nil {
		t.Fatal(err)
	}
	p := &path{m: m, l: l, k: newBand(m.n, width), r: make([]float64, m.n)}
	u := make([]float64, m.n)
	for i := range u {
		u[i] = 0.1 * math.Sin(float64(3*i))
	}
	m.tangent(u, 0.7, &p.l, p.k, p.r)
	k := append([]float64(nil), p.k.a...)
	up, down, q := make([]float64, m.n), make([]float64, m.n), make([]float64, m.n)
	p.pull(u, q)
	const h = 1e-5
	m.tangent(u, 0.7+h, &p.l, p.k, up)
	m.tangent(u, 0.7-h, &p.l, p.k, down)
	for i := range q {
		if got := (up[i] - down[i]) / (2 * h); !(math.Abs(got-q[i]) < 1e-6*(1+math.Abs(got))) {
			t.Fatalf("pull %d: %g, difference %g", i, q[i], got)
		}
	}
	for j := range u {
		was := u[j]
		u[j] = was + h
		m.tangent(u, 0.7, &p.l, p.k, up)
		u[j] = was - h
		m.tangent(u, 0.7, &p.l, p.k, down)
		u[j] = was
		for i := max(0, j-width); i <= j; i++ {
			got, want := -(up[i]-down[i])/(2*h), k[i*stride+j-i]
			if !(math.Abs(got-want) < 1e-5*(1+math.Abs(want))) {
				t.Fatalf("row %d, column %d: %g, difference %g", i, j, want, got)
			}
		}
	}
}
