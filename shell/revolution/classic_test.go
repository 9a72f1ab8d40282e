package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// A cylMode is a buckle of m half waves along and n around a simply supported
// cylinder of R = 1, u = U cos kx cos nθ, v = V sin kx sin nθ, w = W sin kx cos nθ,
// in the strains of Sanders: each row is what U, V and W make.
type cylMode struct{ s, θ, γ, κs, κθ, τ, βs, βθ, ψ [3]float64 }

func newCylMode(k, n float64) (c cylMode) {
	c.s, c.θ, c.γ = [3]float64{-k, 0, 0}, [3]float64{0, n, 1}, [3]float64{-n, k, 0}
	c.βs, c.βθ, c.ψ = [3]float64{0, 0, k}, [3]float64{0, -1, -n}, [3]float64{n / 2, k / 2, 0}
	for i := range 3 {
		c.κs[i] = k * c.βs[i]
		c.κθ[i] = -n * c.βθ[i]
		c.τ[i] = -(k*c.βθ[i] - n*c.βs[i]) + c.ψ[i]
	}
	return c
}

// critical returns the axial compression, or the hoop compression, per length
// at which the mode buckles: the least N of det(K − N G) = 0.
func (c cylMode) critical(t, ν float64, hoop bool) float64 {
	var k [3][3]float64
	cc := modulus * t / (1 - ν*ν)
	d := cc * t * t / 12
	for i := range 3 {
		for j := range 3 {
			k[i][j] = cc*(c.s[i]*c.s[j]+c.θ[i]*c.θ[j]+ν*(c.s[i]*c.θ[j]+c.θ[i]*c.s[j])+(1-ν)/2*c.γ[i]*c.γ[j]) +
				d*(c.κs[i]*c.κs[j]+c.κθ[i]*c.κθ[j]+ν*(c.κs[i]*c.κθ[j]+c.κθ[i]*c.κs[j])+(1-ν)/2*c.τ[i]*c.τ[j])
		}
	}
	a, b := c.βs, c.ψ
	if hoop {
		a = c.βθ
	}
	// the larger eigenvalue of gᵢᵀ K⁻¹ gⱼ
	x, y := linear3(k, a), linear3(k, b)
	p, q, r := dot3(a, x), dot3(a, y), dot3(b, y)
	return 2 / (p + r + math.Sqrt((p-r)*(p-r)+4*q*q))
}

func dot3(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// linear3 solves three equations by elimination.
func linear3(k [3][3]float64, b [3]float64) [3]float64 {
	for i := range 3 {
		for j := i + 1; j < 3; j++ {
			f := k[j][i] / k[i][i]
			for m := i; m < 3; m++ {
				k[j][m] -= f * k[i][m]
			}
			b[j] -= f * b[i]
		}
	}
	for i := 2; i >= 0; i-- {
		for j := i + 1; j < 3; j++ {
			b[i] -= k[i][j] * b[j]
		}
		b[i] /= k[i][i]
	}
	return b
}

func bifurcation(t *testing.T, s revolution.Structure, l revolution.Load) revolution.Buckling {
	t.Helper()
	m, err := revolution.New(s)
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Bifurcation(revolution.Load{}, l)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// simple is a cylinder held round and outwards at both ends, ν = 0 so that
// axial force does not bend it before it buckles.
func simple(t *testing.T, length, wall float64) revolution.Structure {
	p := pile{t: t}
	p.add(revolution.Cylinder(1, 0, length))(wall)
	p.s.Segments[0].Poisson = 0
	p.s.Supports = []revolution.Support{
		{Node: 0, Axial: true}, {Node: 0, Radial: true, Waves: true}, {Node: 1, Radial: true, Waves: true},
	}
	return p.s
}

// Axial compression of a simply supported cylinder: the lowest of all modes in
// closed form, and within a few per cent of the classical E t²/(R √3).
func TestCylinderCompression(t *testing.T) {
	for _, row := range []struct{ length, wall float64 }{{2, 0.01}, {1, 0.004}, {0.5, 0.02}} {
		want, waves := math.Inf(1), 0
		for n := range 60 {
			for m := 1; m < 60; m++ {
				if x := newCylMode(float64(m)*math.Pi/row.length, float64(n)).critical(row.wall, 0, false); x < want {
					want, waves = x, n
				}
			}
		}
		unit := modulus * row.wall * row.wall / math.Sqrt(3)
		b := bifurcation(t, simple(t, row.length, row.wall), revolution.Load{Forces: []revolution.Force{{Node: 1, Axial: -2 * math.Pi * unit}}})
		t.Logf("L/R %.1f, R/t %.0f: %.5f of the classical value with n = %d, closed form %.5f with %d; counted to %d",
			row.length, 1/row.wall, b.Factor, b.Waves, want/unit, waves, b.Most)
		checktest.Close(t, "compression", b.Factor, want/unit, 2e-3)
		if b.Waves != waves {
			t.Errorf("%d waves, want %d", b.Waves, waves)
		}
	}
}
