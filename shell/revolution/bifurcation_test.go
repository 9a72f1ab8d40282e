package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// A whole sphere under outside pressure: 2 E (t/R)²/√(3(1 − ν²)), which waves
// that must fit the sphere miss by a few thousandths.
func TestSphereBuckling(t *testing.T) {
	for _, wall := range []float64{0.01, 0.002} {
		p := pile{t: t}
		aft, err := revolution.Hemisphere(1)
		p.add(aft, err)(wall)
		p.add(revolution.Forward(aft, 0), nil)(wall)
		p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
		b := bifurcation(t, p.s, revolution.Uniform(-2*modulus*wall*wall/math.Sqrt(3*(1-poisson*poisson))))
		t.Logf("R/t %.0f: %.4f of the classical value, n = %d, counted to %d", 1/wall, b.Factor, b.Waves, b.Most)
		checktest.Close(t, "sphere", b.Factor, 1, 5e-3)
	}
}

// A long tube with free ends under outside pressure that follows it:
// p = (n² − 1) D/R³ with n = 2; under one that keeps its direction n² D/R³.
//
// Source: Bresse; Timoshenko and Gere, Theory of Elastic Stability (memory).
func TestTubeBuckling(t *testing.T) {
	const wall = 0.01
	p := pile{t: t}
	p.add(revolution.Cylinder(1, 0, 10))(wall)
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	d := modulus * wall * wall * wall / (12 * (1 - poisson*poisson))
	load := revolution.Uniform(-d)
	b := bifurcation(t, p.s, load)
	checktest.Close(t, "following", b.Factor, 3, 5e-3)
	load.Dead = true
	dead := bifurcation(t, p.s, load)
	checktest.Close(t, "dead", dead.Factor, 4, 5e-3)
	t.Logf("tube: %.4f D/R³ with n = %d, dead %.4f with %d", b.Factor, b.Waves, dead.Factor, dead.Waves)
	if b.Waves != 2 || b.OneWave {
		t.Errorf("n = %d, one wave counted: %v", b.Waves, b.OneWave)
	}
	if b.Mode[0].Normal == 0 || math.Abs(math.Abs(b.Mode[0].Normal)-1) > 0.05 {
		t.Errorf("the mode of a free tube is even along it, its end has %.3f", b.Mode[0].Normal)
	}
	if in := bifurcation(t, p.s, revolution.Uniform(1)); !math.IsInf(in.Factor, 1) {
		t.Errorf("a tube under inside pressure buckles at %g", in.Factor)
	}
}

// Large end of a sharp cone under inside pressure, equal walls: meridional surface
// stress over E when the compression ring buckles, computed, linear.
func TestConeRingBuckling(t *testing.T) {
	for _, row := range []struct {
		α, slender, want, digit float64
	}{
		{30, 100, 0.31, 0.01}, {30, 250, 0.076, 0.001}, {30, 500, 0.025, 0.001},
		{45, 100, 0.19, 0.01}, {45, 250, 0.041, 0.001}, {45, 500, 0.014, 0.001},
		{60, 100, 0.106, 0.001}, {60, 250, 0.025, 0.001}, {60, 500, 0.0094, 0.0001},
	} {
		p := pile{t: t}
		p.add(revolution.Cone(1, row.α*deg, 0.05))(1 / row.slender)
		p.add(revolution.Cylinder(1, 0, 1))(1 / row.slender)
		p.s.Supports = []revolution.Support{{Node: 2, Axial: true, Rotation: true}}
		l := revolution.Uniform(1)
		l.Forces = []revolution.Force{{Node: 0, Axial: -math.Pi * 0.05 * 0.05}}
		_, u := solve(t, p.s, l)
		most := largest(u, 1, faces(meridional))
		b := bifurcation(t, p.s, l)
		got := b.Factor * most / modulus
		t.Logf("%.0f deg, R/t %3.0f: %.4f E with n = %d, tabulated %.4g", row.α, row.slender, got, b.Waves, row.want)
		checktest.Close(t, "ring of a cone", got, row.want, math.Max(0.01, 0.51*row.digit/row.want))
	}
}

// Torispheres under inside pressure; the elastic value pe of an appendix of a
// vessel code is 0.95 to 1.01 of linear bifurcation (6 and 10 per cent, L = D,
// D/t 500 and 1000) and 0.52 to 0.60 of that of a 2:1 ellipsoid, computed; here it
// is 0.948 to 1.028 and 0.521 to 0.605 on a mesh that is converged.
func TestKnuckleBuckling(t *testing.T) {
	for _, slender := range []float64{250, 500} {
		for _, r := range []float64{0.12, 0.20} {
			b := knuckle(t, slender)(revolution.Torisphere(1, 2, r))
			pe := codeElastic(2, r, 1/slender)
			t.Logf("D/t %4.0f, r/D %.2f: %.4g with n = %d; pe %.4g, ratio %.3f", 2*slender, r/2, b.Factor, b.Waves, pe, pe/b.Factor)
			between(t, pe/b.Factor, 0.94, 1.03)
		}
		b := knuckle(t, slender)(revolution.Ellipsoid(1, 0.5))
		pe := codeElastic(1.8, 0.34, 1/slender)
		t.Logf("D/t %4.0f, ellipsoid: %.4g with n = %d; pe %.4g, ratio %.3f", 2*slender, b.Factor, b.Waves, pe, pe/b.Factor)
		between(t, pe/b.Factor, 0.52, 0.61)
	}
}

func between(t *testing.T, x, least, most float64) {
	t.Helper()
	if !(x >= least && x <= most) {
		t.Errorf("%.4f is not from %.2f to %.2f", x, least, most)
	}
}

func knuckle(t *testing.T, slender float64) func([]revolution.Part, error) revolution.Buckling {
	return func(parts []revolution.Part, err error) revolution.Buckling {
		t.Helper()
		p := pile{t: t}
		p.add(parts, err)(1 / slender)
		p.add(revolution.Cylinder(1, 0, 1))(1 / slender)
		p.s.Supports = []revolution.Support{{Node: len(parts) + 1, Axial: true, Rotation: true}}
		return bifurcation(t, p.s, revolution.Uniform(1))
	}
}

// codeElastic is the elastic pressure of a torisphere of D = 2 by the rules for
// thin formed heads, recalled.
func codeElastic(crown, r, wall float64) float64 {
	c1, c2 := 9.31*r/2-0.086, 1.25
	if r/2 > 0.08 {
		c1, c2 = 0.692*r/2+0.605, 1.46-2.6*r/2
	}
	φ, β := math.Sqrt(crown*wall)/r, math.Acos((1-r)/(crown-r))
	re := 1.0
	if φ < β {
		re = (1-r)/math.Cos(β-φ) + r
	}
	return c1 * modulus * wall * wall / r / (c2 * re * (0.5*re/r - 1))
}

// A tank that nothing holds across its axis moves as a whole with one wave: that
// is no buckling, and no support may be missing for it to be looked at.
func TestMotionAsAWhole(t *testing.T) {
	p := pile{t: t}
	aft, err := revolution.Ellipsoid(1, 0.5)
	p.add(aft, err)(0.02)
	p.add(revolution.Cylinder(1, 0, 2))(0.02)
	p.add(revolution.Forward(aft, 2), nil)(0.02)
	p.s.Supports = []revolution.Support{{Node: 1, Axial: true}}
	for _, row := range []struct {
		add []revolution.Support
		one bool
	}{
		{nil, false},
		{[]revolution.Support{{Node: 1, Radial: true, Waves: true}}, false},
		{[]revolution.Support{{Node: 1, Radial: true, Waves: true}, {Node: 2, Waves: true}}, true},
		{[]revolution.Support{{Node: 2, Rotation: true, Waves: true}}, true},
		{[]revolution.Support{{Node: 2, Axial: true, Waves: true}}, true},
	} {
		s := p.s
		s.Supports = append(append([]revolution.Support(nil), s.Supports...), row.add...)
		m, err := revolution.New(s)
		if err != nil {
			t.Fatal(err)
		}
		b, err := m.Bifurcation(revolution.Load{}, revolution.Uniform(-1))
		if err != nil {
			t.Fatal(err)
		}
		c, err := m.BifurcationModerate(revolution.Load{}, revolution.Uniform(-1), 2*b.Factor)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%d more supports: %.4g with n = %d, moderate %.4g with %d", len(row.add), b.Factor, b.Waves, c.Factor, c.Waves)
		if b.OneWave != row.one || c.OneWave != row.one || b.Waves < 2 || c.Waves < 2 {
			t.Errorf("%+v: one wave looked at: %v, %v", row.add, b.OneWave, c.OneWave)
		}
		checktest.Close(t, "moderate beside linear", c.Factor, b.Factor, 0.05)
	}
}
