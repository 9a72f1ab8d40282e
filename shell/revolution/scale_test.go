package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// Force × 3 and length × 7 leave every load factor as it is.
func TestFactorsHaveNoUnit(t *testing.T) {
	build := func(force, length float64) (*revolution.Model, revolution.Load) {
		stress := force / (length * length)
		p := pile{t: t}
		p.add(revolution.Torisphere(length, 2*length, 0.2*length))(0.005 * length)
		p.add(revolution.Cylinder(length, 0, length))(0.005 * length)
		for i := range p.s.Segments {
			p.s.Segments[i].Modulus *= stress
			p.s.Segments[i].Yield = 200 * stress
		}
		p.s.Rings = []revolution.Ring{{Node: 2, Area: 1e-4 * length * length, Radial: 1e-8 * math.Pow(length, 4), Axial: 1e-9 * math.Pow(length, 4),
			Torsion: 1e-9 * math.Pow(length, 4), Modulus: modulus * stress, Poisson: poisson, Yield: 100 * stress, Offset: revolution.Point{R: 0.01 * length}}}
		p.s.Supports = []revolution.Support{{Node: 3, Axial: true, Rotation: true}}
		m, err := revolution.New(p.s)
		if err != nil {
			t.Fatal(err)
		}
		return m, revolution.Uniform(-stress)
	}
	factors := func(m *revolution.Model, l revolution.Load) [4]float64 {
		snap, err := m.Snapthrough(revolution.Load{}, l, 50)
		if err != nil {
			t.Fatal(err)
		}
		linear, err := m.Bifurcation(revolution.Load{}, l)
		if err != nil {
			t.Fatal(err)
		}
		bent, err := m.BifurcationModerate(revolution.Load{}, l, 50)
		if err != nil {
			t.Fatal(err)
		}
		limit, err := m.LimitLoad(revolution.Load{}, l)
		if err != nil {
			t.Fatal(err)
		}
		return [4]float64{snap.Factor, linear.Factor, bent.Factor, limit.Factor}
	}
	m, l := build(1, 1)
	n, k := build(3, 7)
	a, b := factors(m, l), factors(n, k)
	t.Logf("snap-through %.4f, bifurcation %.4f, from moderate rotations %.4f, limit load %.4f", a[0], a[1], a[2], a[3])
	for i := range a {
		checktest.Close(t, "factor", b[i], a[i], 1e-3)
	}
	checktest.Close(t, "bifurcation", b[1], a[1], 1e-6)
}
