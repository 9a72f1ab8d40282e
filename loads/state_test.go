package loads_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func TestWeightlessAndDry(t *testing.T) {
	in := twin()
	s := state(t, in, 2e6, 1000, 100, 0, 0)
	p, _ := s.HighestPressure(in.Bounds())
	if p != 2e6 || !math.IsNaN(s.SurfaceZ()) || !math.IsNaN(s.MassForward(0.5)) {
		t.Errorf("weightless: pressure %g, level %g, mass forward %g", p, s.SurfaceZ(), s.MassForward(0.5))
	}
	for _, y := range []float64{0, 1} {
		s = state(t, in, 2e6, 1000, 0, 3, y)
		p, _ = s.HighestPressure(in.Bounds())
		if p != 2e6 || !math.IsNaN(s.SurfaceZ()) || s.MassForward(0.5) != 0 || s.UllageFraction() != 1 {
			t.Errorf("dry: pressure %g, level %g, mass forward %g", p, s.SurfaceZ(), s.MassForward(0.5))
		}
	}
}

// Decelerating, the liquid lies on the forward head.
func TestLiquidForward(t *testing.T) {
	in := twin()
	up, down := state(t, in, 1e5, 1000, 50, 2, 0), state(t, in, 1e5, 1000, 50, -2, 0)
	checktest.Close(t, "level", down.SurfaceZ(), 1.2-up.SurfaceZ(), 1e-9)
	checktest.Close(t, "apex", down.PressureAxis(1.3), up.PressureAxis(-0.1), 1e-12)
	if p := down.PressureAxis(-0.1); p != 1e5 {
		t.Errorf("aft apex %g, want the ullage pressure", p)
	}
	if p, at := down.HighestPressure(-0.1, 1.3); at != 1.3 || p != down.PressureAxis(1.3) {
		t.Errorf("highest %g at %g", p, at)
	}
}

// In a full tank the gas pressure acts at the point of least depth.
func TestFullTank(t *testing.T) {
	in := twin()
	for _, a := range [][2]float64{{2, 0}, {2, 1}, {-1, 0.5}, {0, 1}} {
		s := state(t, in, 1e5, 1000, 1000*in.Volume(), a[0], a[1])
		least := math.Inf(1)
		for z := -0.1; z <= 1.3; z += 1e-4 {
			_, r := in.Radii(z)
			least = math.Min(least, s.PressureAt(z, -r))
		}
		if least < 1e5 || least > 1e5+2 {
			t.Errorf("%v: least pressure %g, want 1e5", a, least)
		}
	}
}

// More liquid or more acceleration never lowers the highest pressure, and
// leaves every pressure at or above that of the ullage.
func TestMonotone(t *testing.T) {
	in := twin()
	for _, y := range []float64{0, 0.5} {
		last := 0.0
		for m := 0.0; m < 160; m += 8 {
			p, _ := state(t, in, 1e5, 1000, m, 3, y).HighestPressure(in.Bounds())
			if p < last || p < 1e5 {
				t.Errorf("%g kg: %g after %g", m, p, last)
			}
			last = p
		}
		last = 0
		for n := 0.0; n < 9; n += 0.5 {
			p, _ := state(t, in, 1e5, 1000, 100, n, y).HighestPressure(in.Bounds())
			if y == 0 && p < last {
				t.Errorf("%g g: %g after %g", n, p, last)
			}
			last = p
		}
	}
}

// With length ×7 and density ×3 the head grows by 21, mass by 3·343.
func TestUnits(t *testing.T) {
	small := twin()
	big := tank{R: 1.4, length: 8.4, aft: ellipsoid(1.4, 0.7), forward: ellipsoid(1.4, 0.7)}
	for _, y := range []float64{0, 0.7} {
		a, b := state(t, small, 0, 800, 60, 2, y), state(t, big, 0, 2400, 60*3*343, 2, y)
		checktest.Close(t, "level", b.SurfaceZ(), 7*a.SurfaceZ(), 1e-9)
		checktest.Close(t, "pressure", b.PressureWorst(0), 21*a.PressureWorst(0), 1e-9)
		checktest.Close(t, "mass", b.MassForward(2.1), 3*343*a.MassForward(0.3), 1e-6)
	}
}

// What cannot be used is refused, and NaN never becomes a pressure.
func TestStateRange(t *testing.T) {
	in, nan, inf := twin(), math.NaN(), math.Inf(1)
	for name, row := range map[string]struct {
		ullage, density, mass, nx, ny float64
	}{
		"ullage NaN":    {nan, 1000, 1, 1, 0},
		"ullage Inf":    {inf, 1000, 1, 1, 0},
		"density zero":  {0, 0, 1, 1, 0},
		"density NaN":   {0, nan, 1, 1, 0},
		"mass negative": {0, 1000, -1, 1, 0},
		"mass NaN":      {0, 1000, nan, 1, 0},
		"mass Inf":      {0, 1000, inf, 1, 0},
		"axial NaN":     {0, 1000, 1, nan, 0},
		"lateral NaN":   {0, 1000, 1, 1, nan},
		"lateral Inf":   {0, 1000, 1, 1, inf},
		"too much":      {0, 1000, 1000 * in.Volume() * 1.000001, 1, 0},
	} {
		if s, err := loads.NewState(in, row.ullage, loads.Liquid{Density: row.density, Mass: row.mass}, loads.Acceleration{Axial: row.nx, Lateral: row.ny}); err == nil {
			t.Errorf("%s is not refused: level %g", name, s.SurfaceZ())
		}
	}
	_, err := loads.NewState(in, 0, loads.Liquid{Density: 1000, Mass: 200}, loads.Acceleration{Axial: 1})
	var out *check.RangeError
	if !errors.As(err, &out) || !strings.Contains(err.Error(), "liquid volume") {
		t.Errorf("too much liquid: %v", err)
	}
	s := state(t, in, 1e5, 1000, 50, 1, 0.2)
	if p, at := s.HighestPressure(nan, 1); !math.IsNaN(p) || !math.IsNaN(at) {
		t.Errorf("NaN station: %g at %g", p, at)
	}
	if p, _ := s.HighestPressure(5, 6); !math.IsNaN(p) {
		t.Errorf("outside the tank: %g", p)
	}
	if !math.IsNaN(s.PressureAxis(nan)) || !math.IsNaN(s.PressureWorst(nan)) || !math.IsNaN(s.MassForward(nan)) {
		t.Error("NaN station gives a number")
	}
}

func FuzzState(f *testing.F) {
	f.Add(0.5, 1.0, 0.3)
	f.Add(0.999, -2.0, 0.0)
	f.Add(1e-6, 0.0, 1.0)
	in := twin()
	f.Fuzz(func(t *testing.T, fill, nx, ny float64) {
		if !(fill >= 0 && fill <= 1 && math.Abs(nx) < 100 && math.Abs(ny) < 100) {
			t.Skip()
		}
		s, err := loads.NewState(in, 1e5, loads.Liquid{Density: 1000, Mass: 1000 * fill * in.Volume()}, loads.Acceleration{Axial: nx, Lateral: ny})
		if err != nil {
			t.Fatalf("fill %g, %g, %g: %v", fill, nx, ny, err)
		}
		p, at := s.HighestPressure(in.Bounds())
		// the whole tank deep at most
		if most := 1e5 + 1000*g0*(math.Abs(nx)*1.4+math.Abs(ny)*0.4); !(p >= 1e5 && p <= most*(1+1e-9)) || math.IsNaN(at) {
			t.Errorf("fill %g, %g, %g: pressure %g at %g, at most %g", fill, nx, ny, p, at, most)
		}
	})
}

func BenchmarkFlat(b *testing.B)   { bench(b, 0) }
func BenchmarkTilted(b *testing.B) { bench(b, 0.4) }

func bench(b *testing.B, lateral float64) {
	d := torisphere(0.25, 1, 0.1)
	in := tank{R: 0.25, length: 1, aft: d, forward: d}
	for b.Loop() {
		if _, err := loads.NewState(in, 0, loads.Liquid{Density: 800, Mass: 150}, loads.Acceleration{Axial: 2, Lateral: lateral}); err != nil {
			b.Fatal(err)
		}
	}
}
