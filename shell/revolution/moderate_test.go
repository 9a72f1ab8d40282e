package revolution_test

import (
	"errors"
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// A cylinder held at one end under pressure and the axial force N of its lid: the
// beam on an elastic foundation under tension,
//
//	D w⁗ − N w″ + E t w/R² = p − ν N/R, w = w∞ (1 − e^(−ax) (cos bx + (a/b) sin bx))
//
// a² − b² = N/(2D), a² + b² = √(E t/(R² D)). The force is three tenths of that
// at which it decays without overshoot.
func TestCylinderUnderTension(t *testing.T) {
	const wall, ν = 0.002, poisson
	d := modulus * wall * wall * wall / (12 * (1 - ν*ν))
	n := 0.3 * 2 * math.Sqrt(d*modulus*wall)
	sum, diff := math.Sqrt(modulus*wall/d), n/(2*d)
	a, b := math.Sqrt((sum+diff)/2), math.Sqrt((sum-diff)/2)
	far := (2*n - ν*n) / (modulus * wall) // p = 2N/R
	p := pile{t: t}
	p.add(revolution.Cylinder(1, 0, 1))(wall)
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true, Radial: true, Rotation: true}}
	m, linear := solve(t, p.s, load(n))
	u, err := m.SolveModerate(load(n))
	if err != nil {
		t.Fatal(err)
	}
	most := 0.0
	for i, s := range u.Stations {
		if s.Z < 0.5 {
			want := far * (1 - math.Exp(-a*s.Z)*(math.Cos(b*s.Z)+a/b*math.Sin(b*s.Z)))
			if !(math.Abs(s.Radial-want) < 2e-3*far) {
				t.Errorf("z %.4f: %.5g, want %.5g", s.Z, s.Radial, want)
			}
			most = math.Max(most, math.Abs(want-linear.Stations[i].Radial)/far)
		}
	}
	t.Logf("tension changes the growth by up to %.3f of its far value", most)
	if !(most > 0.03) {
		t.Errorf("the linear state is only %.3f away: nothing was tested", most)
	}
}

func load(n float64) revolution.Load {
	return revolution.Load{
		Pressure: func(revolution.Place) float64 { return 2 * n }, Dead: true,
		Forces: []revolution.Force{{Node: 1, Axial: 2 * math.Pi * n}},
	}
}

// A flat plate clamped and held at its edge: w/t (1 + 0.488 (w/t)²) =
// 3/16 (1 − ν²) p a⁴/(E t⁴) for ν = 0.3 while the deflection is not above half the
// wall, and the membrane of Hencky, w = 0.662 a (p a/(E t))^(1/3) for ν = 0.25,
// where it is far above.
//
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, large
// deflections (memory).
func TestPlateLargeDeflection(t *testing.T) {
	for _, row := range []struct{ wall, w, ν, allowed float64 }{{0.01, 0.1, 0.3, 2e-3}, {0.01, 0.25, 0.3, 5e-3}, {0.01, 0.5, 0.3, 0.015}, {1e-4, 200, 0.25, 0.01}} {
		p := pile{t: t}
		p.add(revolution.Flat(0, 1))(row.wall)
		p.s.Segments[0].Poisson = row.ν
		p.s.Supports = []revolution.Support{{Node: 1, Axial: true, Radial: true, Rotation: true}}
		m, err := revolution.New(p.s)
		if err != nil {
			t.Fatal(err)
		}
		q := modulus * math.Pow(row.wall, 4) * 16 / (3 * (1 - row.ν*row.ν)) * row.w * (1 + 0.488*row.w*row.w)
		if row.w > 10 {
			q = modulus * row.wall * math.Pow(row.w*row.wall/0.662, 3)
		}
		u, err := m.SolveModerate(revolution.Uniform(q))
		if err != nil {
			t.Fatal(err)
		}
		got := math.Abs(u.Stations[0].Axial) / row.wall
		t.Logf("w/t %.2f: %.4f, residual %.1g", row.w, got, u.Residual)
		checktest.Close(t, "deflection", got, row.w, row.allowed)
	}
}

// A small load gives the linear state; a load beyond the snap gives none.
func TestModerateEnds(t *testing.T) {
	m, p := clampedCap(t, 6, 0.3)
	small := revolution.Uniform(p.Pressure(revolution.Place{}) * 1e-4)
	a, err := m.Solve(small)
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.SolveModerate(small)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "rise", b.Stations[0].Axial, a.Stations[0].Axial, 1e-3)
	checktest.Close(t, "growth", b.VolumeGrowth, a.VolumeGrowth, 1e-3)
	if !(b.Balance < 1e-9 && b.Residual < 1e-8) {
		t.Errorf("balance %.2g, residual %.2g", b.Balance, b.Residual)
	}
	over := revolution.Uniform(p.Pressure(revolution.Place{}) * 1.1)
	if u, err := m.SolveModerate(over); !errors.Is(err, revolution.ErrLimit) {
		t.Errorf("beyond the snap: %v, %v", u, err)
	}
	nan := revolution.Uniform(math.NaN())
	for what, f := range map[string]func() (float64, error){
		"state": func() (float64, error) { _, err := m.SolveModerate(nan); return math.NaN(), err },
		"snap":  func() (float64, error) { s, err := m.Snapthrough(nan, p, 2); return s.Factor, err },
		"waves": func() (float64, error) { b, err := m.Bifurcation(nan, p); return b.Factor, err },
		"both":  func() (float64, error) { b, err := m.BifurcationModerate(p, nan, 2); return b.Factor, err },
		"most": func() (float64, error) {
			s, err := m.Snapthrough(revolution.Load{}, p, math.Inf(1))
			return s.Factor, err
		},
		"end": func() (float64, error) {
			b, err := m.BifurcationModerate(revolution.Load{}, p, 0)
			return b.Factor, err
		},
	} {
		if x, err := f(); err == nil || !math.IsNaN(x) {
			t.Errorf("%s: %g, %v", what, x, err)
		}
	}
	if s, err := m.Snapthrough(revolution.Load{}, p, 0.5); err != nil || !math.IsInf(s.Factor, 1) {
		t.Errorf("below the snap: %g, %v", s.Factor, err)
	}
	if b, err := m.BifurcationModerate(revolution.Load{}, p, 0.5); err != nil || !math.IsInf(b.Factor, 1) {
		t.Errorf("below the waves: %g, %v", b.Factor, err)
	}
}

// A base load counts as it stands: half of the buckling load applied beforehand
// leaves half, from the linear state and, to the bend of the path, the other.
func TestBaseLoad(t *testing.T) {
	m, p := clampedCap(t, 8, 0.3)
	half := revolution.Uniform(p.Pressure(revolution.Place{}) / 2)
	all, err := m.Bifurcation(revolution.Load{}, p)
	if err != nil {
		t.Fatal(err)
	}
	rest, err := m.Bifurcation(half, p)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "linear", rest.Factor+0.5, all.Factor, 1e-6)
	all, err = m.BifurcationModerate(revolution.Load{}, p, 2)
	if err != nil {
		t.Fatal(err)
	}
	rest, err = m.BifurcationModerate(half, p, 2)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "moderate", rest.Factor+0.5, all.Factor, 3e-4)
	if b, err := m.Bifurcation(revolution.Uniform(2*p.Pressure(revolution.Place{})), p); err == nil {
		t.Errorf("a base that buckles by itself gives %g", b.Factor)
	}
}
