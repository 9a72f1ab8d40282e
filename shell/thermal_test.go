package shell_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// A bar held at both ends (ENGN0310, read): E 1e5 MPa, α 12e-6, 70 K warmer, −84 MPa.
// Bhandari, ex. 4.22 (read; inputs only): a steel tube with a gap of 0.15 mm over
// 200 mm from 25 to 250 degC, α 10.8e-6, E 207 GPa, 347.76 MPa of compression.
func TestRestrainedPublished(t *testing.T) {
	σ, err := shell.Elastic{Modulus: 1e5}.RestrainedStress(12e-6*70, 0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "ENGN0310, MPa", σ, "-84")
	σ, _ = shell.Elastic{Modulus: 207e3}.RestrainedStress(10.8e-6*225-0.15/200, 0)
	checktest.Printed(t, "Bhandari, MPa", σ, "-347.76")
	half, _ := shell.Elastic{Modulus: 207e3}.RestrainedStress(10.8e-6*225-0.15/200, 1)
	checktest.Close(t, "ends as stiff as the wall", half, σ/2, 1e-12)
}

// A step of the temperature and ramps of β l from 0.5 to 4, against a solution by
// finite differences (computed): hoop 0.4988, and bending as multiples of E α ΔT.
func TestTemperatureStepComputed(t *testing.T) {
	c, m := shell.Cylinder{InsideRadius: 0.2, Thickness: 0.002, Length: 2}, shell.Elastic{Modulus: 70e9, Poisson: 0.3}
	β := math.Pow(3*(1-0.09), 0.25) / math.Sqrt(c.MidRadius()*c.Thickness)
	const ε = 24e-6 * 100
	s, err := c.TemperatureStep(m, ε, 0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "hoop at a step", s.Hoop/(70e9*ε), 0.4988, 3e-3) // the differences round the corner off
	checktest.Printed(t, "bending beside it", s.Bending/(70e9*ε), "0.2927")
	checktest.Close(t, "where", s.At, math.Pi/(4*β), 1e-12)
	for _, row := range []struct {
		βl            float64
		bending, hoop string
	}{{0.5, "0.287", "0.379"}, {1, "0.270", "0.278"}, {2, "0.215", "0.147"}, {4, "0.116", "0.062"}} {
		s, err := c.TemperatureStep(m, ε, row.βl/β)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "bending of a ramp", s.Bending/(70e9*ε), row.bending)
		checktest.Printed(t, "hoop of a ramp", s.Hoop/(70e9*ε), row.hoop)
	}
}

// A very short ramp is a step; a longer one never does more; the faces of a wall
// held flat see E α ΔT/(2 (1 − ν)), and nothing where they are as warm.
func TestThermalLimits(t *testing.T) {
	c, m := shell.Cylinder{InsideRadius: 0.15, Thickness: 0.003, Length: 1}, shell.Elastic{Modulus: 193e9, Poisson: 0.28}
	step, _ := c.TemperatureStep(m, -1e-3, 0)
	short, _ := c.TemperatureStep(m, -1e-3, 1e-7)
	checktest.Close(t, "bending of a short ramp", short.Bending, step.Bending, 1e-3)
	checktest.Close(t, "hoop of a short ramp", short.Hoop, step.Hoop, 1e-3)
	last := step
	for i := 1; i < 30; i++ {
		s, _ := c.TemperatureStep(m, -1e-3, 0.002*float64(i))
		if s.Bending > last.Bending || s.Hoop > last.Hoop {
			t.Errorf("ramp of %g m does more than a shorter one", 0.002*float64(i))
		}
		last = s
	}
	const length, force = 7.0, 3.0
	other := shell.Cylinder{InsideRadius: 0.15 * length, Thickness: 0.003 * length, Length: length}
	scaled, _ := other.TemperatureStep(shell.Elastic{Modulus: 193e9 * force / (length * length), Poisson: 0.28}, -1e-3, 0.01*length)
	plain, _ := c.TemperatureStep(m, -1e-3, 0.01)
	checktest.Close(t, "in other units", scaled.Bending, plain.Bending*force/(length*length), 1e-9)
	σ, _ := m.GradientStress(-1e-3)
	checktest.Close(t, "gradient", σ, 193e9*1e-3/(2*0.72), 1e-12)
}

func TestThermalRange(t *testing.T) {
	c, m := shell.Cylinder{InsideRadius: 0.15, Thickness: 0.003, Length: 1}, shell.Elastic{Modulus: 193e9, Poisson: 0.3}
	nan := math.NaN()
	for name, err := range map[string]error{
		"modulus": second((shell.Elastic{Modulus: nan}).RestrainedStress(1e-3, 0)),
		"ends":    second(m.RestrainedStress(1e-3, -0.1)),
		"Poisson": second((shell.Elastic{Modulus: 1, Poisson: 0.6}).GradientStress(1e-3)),
		"length":  second(c.TemperatureStep(m, 1e-3, nan)),
		"strain":  second(c.TemperatureStep(m, nan, 0)),
		"wall":    second((shell.Cylinder{InsideRadius: 0.1, Thickness: nan, Length: 1}).TemperatureStep(m, 1e-3, 0)),
	} {
		if err == nil {
			t.Errorf("%s out of range is taken", name)
		}
	}
}

// second returns the error of a pair.
func second[T any](_ T, err error) error { return err }
