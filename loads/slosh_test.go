package loads_test

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// First modes of four tanks (computed apart from this code, with the first zero of
// J1′ found anew): frequency, share of the mass, pendulum length.
func TestSloshComputed(t *testing.T) {
	for _, row := range []struct {
		R, h, n         float64
		f, share, swing string
	}{
		{0.2, 0.6, 1, "1.51219", "0.151498", "0.108629"},
		{0.2, 0.6, 6, "3.70410", "0.151498", "0.108629"},
		{0.2, 0.1, 3, "2.23201", "0.660108", "0.149586"},
		{1, 1, 1, "0.659475", "0.432197", "0.571168"},
	} {
		s := loads.Slosh{Radius: row.R, Depth: row.h, Acceleration: row.n * g0, Density: 800}
		f, err := s.Frequency()
		m, L, err2 := s.Mass()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		checktest.Printed(t, "frequency, Hz", f, row.f)
		checktest.Printed(t, "share of the mass", m/(800*math.Pi*row.R*row.R*row.h), row.share)
		checktest.Printed(t, "pendulum, m", L, row.swing)
	}
}

// The lateral force of one tank (computed: 81.88545 N) is the integral of the wall
// pressure, and the force of the pendulum m_1 ω² x; its moment is that integral's.
func TestSloshForce(t *testing.T) {
	s := loads.Slosh{Radius: 0.2, Depth: 0.5, Acceleration: 30, Density: 800}
	const η = 0.05
	F, M, err := s.Force(η)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "force, N", F, "81.88545")
	f, _ := s.Frequency()
	m, _, _ := s.Mass()
	const ξ = 1.84118378 // of the pendulum's swing, by hand
	th := math.Tanh(ξ * 0.5 / 0.2)
	x := η * (ξ*ξ - 1) / (2 * ξ * th)
	checktest.Close(t, "m ω² x", m*math.Pow(2*math.Pi*f, 2)*x, F, 1e-7)
	force, moment := 0.0, 0.0
	const steps = 20000
	for i := range steps { // ∫ p cos²θ R dθ = π R p
		z := 0.5 * (float64(i) + 0.5) / steps
		p, err := s.WallPressure(z, η)
		if err != nil {
			t.Fatal(err)
		}
		force += math.Pi * 0.2 * p * 0.5 / steps
		moment += math.Pi * 0.2 * p * z * 0.5 / steps
	}
	checktest.Close(t, "integral of the pressure", force, F, 1e-7)
	checktest.Close(t, "its moment", moment, M, 1e-7)
}

// Sloshing scales: an ω of the square root of a_x, a pressure with ρ a_x η. The
// surface is continuous at the level at rest, and the amplitude is bounded there
// where the surface would fall freely.
func TestSloshScaling(t *testing.T) {
	s := loads.Slosh{Radius: 0.3, Depth: 0.4, Acceleration: 12, Density: 1000}
	four := s
	four.Acceleration *= 4
	f, _ := s.Frequency()
	f4, _ := four.Frequency()
	checktest.Close(t, "frequency at four times the acceleration", f4, 2*f, 1e-12)
	below, _ := s.WallPressure(0.4, 0.05)
	above, _ := s.WallPressure(0.4+1e-9, 0.05)
	checktest.Close(t, "pressure at the level", below, 1000*12*0.05, 1e-12)
	checktest.Close(t, "pressure above the level", above, below, 1e-6)
	if top, _ := s.WallPressure(0.46, 0.05); top != 0 {
		t.Errorf("%g Pa above the wave", top)
	}
	most, _ := s.LargestAmplitude()
	checktest.Close(t, "free fall of the surface", most*math.Pow(2*math.Pi*f, 2), 12, 1e-12)
}

// Without depth, radius, density or push there is no mode; amplitudes end at a
// quarter of the radius.
func TestSloshRange(t *testing.T) {
	good := loads.Slosh{Radius: 0.2, Depth: 0.5, Acceleration: 30, Density: 800}
	for name, edit := range map[string]func(*loads.Slosh){
		"radius": func(s *loads.Slosh) { s.Radius = math.NaN() }, "depth": func(s *loads.Slosh) { s.Depth = 0 },
		"acceleration": func(s *loads.Slosh) { s.Acceleration = -1 }, "density": func(s *loads.Slosh) { s.Density = math.Inf(1) },
	} {
		s := good
		edit(&s)
		f, err := s.Frequency()
		_, _, err2 := s.Force(0.01)
		if err == nil || err2 == nil || !math.IsNaN(f) {
			t.Errorf("%s is taken: %g Hz", name, f)
		}
	}
	if _, _, err := good.Force(0.05); err != nil {
		t.Error(err)
	}
	for _, η := range []float64{0.0501, -0.01, math.NaN()} {
		if F, _, err := good.Force(η); err == nil || !math.IsNaN(F) {
			t.Errorf("amplitude %g is taken", η)
		}
		if p, err := good.WallPressure(0.1, η); err == nil || !math.IsNaN(p) {
			t.Errorf("amplitude %g is taken for the pressure", η)
		}
	}
	if _, err := good.WallPressure(-0.1, 0.01); err == nil {
		t.Error("a place below the bottom is taken")
	}
}
