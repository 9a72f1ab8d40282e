package loads_test

// Worked cases of level and pressure, each found by closed volumes and again by
// numerical integration of the profile, to the digits given (computed).

import (
	"errors"
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const oxygen = 1141 // density of liquid oxygen [kg/m3]

func state(t *testing.T, in loads.Interior, ullage, density, mass, nx, ny float64) *loads.State {
	t.Helper()
	s, err := loads.NewState(in, ullage, loads.Liquid{Density: density, Mass: mass}, loads.Acceleration{Axial: nx, Lateral: ny})
	return must(t, s, err)
}

// Two 2:1 heads, liquid oxygen, 5 % ullage, 20 bar, 6 g.
func twin() tank {
	return tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
}

func TestTwoEllipsoids(t *testing.T) {
	in := twin()
	checktest.Printed(t, "volume", in.Volume(), "0.16755161")
	s := state(t, in, 2e6, oxygen, 0.95*in.Volume()*oxygen, 6, 0)
	checktest.Printed(t, "mass", s.Liquid.Mass, "181.61757")
	checktest.Printed(t, "level above the apex", s.SurfaceZ()+0.1, "1.300000")
	checktest.Printed(t, "pressure at the apex, MPa", s.PressureAxis(-0.1)/1e6, "2.087277")
	checktest.Printed(t, "pressure at the seam, MPa", s.PressureWorst(0)/1e6, "2.080564")
	checktest.Printed(t, "ullage", s.UllageFraction(), "0.05")
	p, at := s.HighestPressure(in.Bounds())
	if p != s.PressureAxis(-0.1) || at != -0.1 {
		t.Errorf("highest pressure %g at %g, want that of the apex", p, at)
	}
}

// Common practice: over 20 bar and at a few g the head is a few per cent of the
// ullage pressure; it is added all the same.
func TestHeadIsAddedAtHighPressure(t *testing.T) {
	in := twin()
	for _, n := range []float64{3, 5, 8} {
		s := state(t, in, 2.5e6, oxygen, 0.95*in.Volume()*oxygen, n, 0)
		p, _ := s.HighestPressure(in.Bounds())
		if share := p/2.5e6 - 1; share < 0.01 || share > 0.06 {
			t.Errorf("%g g: head is %.3g of the ullage pressure, want a few per cent", n, share)
		}
		checktest.Close(t, "head", p-2.5e6, oxygen*n*loads.StandardGravity*1.3, 1e-9)
	}
}

func TestOtherBottoms(t *testing.T) {
	c := tank{R: 0.15, length: 0.9, aft: cone(0.15, 0.15), forward: ellipsoid(0.15, 0.075)}
	s := state(t, c, 1.5e6, 810, 50, 4, 0)
	checktest.Printed(t, "cone, volume", c.Volume(), "0.07068583")
	checktest.Printed(t, "cone, level", s.SurfaceZ()+0.15, "0.97327815")
	checktest.Printed(t, "cone, ullage in %", 100*s.UllageFraction(), "12.6722")
	checktest.Printed(t, "cone, apex, MPa", s.PressureAxis(-0.15)/1e6, "1.5309245")

	d := torisphere(0.25, 1, 0.1)
	k := tank{R: 0.25, length: 1, aft: d, forward: d}
	s = state(t, k, 0, 800, 150, 1, 0)
	checktest.Printed(t, "torisphere, depth", d.a, "0.09688711")
	checktest.Printed(t, "torisphere, head", d.volume(d.a), "0.01237075")
	checktest.Printed(t, "torisphere, volume", k.Volume(), "0.22109104")
	checktest.Printed(t, "torisphere, level", s.SurfaceZ()+d.a, "0.98881306")

	cap := tank{R: 0.3, length: 0.5, aft: dish(0.3, 0.12)}
	s = state(t, cap, 0.3e6, 1000, 8, 8, 0)
	checktest.Printed(t, "cap, level", s.SurfaceZ()+0.12, "0.07893581")
	checktest.Printed(t, "cap, apex, MPa", s.PressureAxis(-0.12)/1e6, "0.3061928")
}

func TestInwardBottom(t *testing.T) {
	in := tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true}
	s := state(t, in, 0.5e6, oxygen, 60, 5, 0)
	checktest.Printed(t, "level", s.SurfaceZ(), ".48512839")
	checktest.Printed(t, "rim, MPa", s.PressureWorst(0)/1e6, "0.527141")
	checktest.Printed(t, "crown, MPa", s.PressureAxis(0.1)/1e6, "0.521547")
	s = state(t, in, 0.5e6, oxygen, 2.5, 5, 0)
	checktest.Printed(t, "2.5 kg, level", s.SurfaceZ(), ".08057282")
	checktest.Printed(t, "held below the crown", in.VolumeBelow(0.1)*oxygen, "4.7794")
}

func TestHorizontalAndFull(t *testing.T) {
	in := twin()
	s := state(t, in, 0, 1000, 0.8*in.Volume()*1000, 0, 1)
	p, _ := s.HighestPressure(in.Bounds())
	checktest.Printed(t, "80 %, height", p/1000/loads.StandardGravity, ".29696697")
	s = state(t, in, 0, 1000, in.Volume()*1000, 0, 1)
	p, _ = s.HighestPressure(in.Bounds())
	checktest.Printed(t, "full, horizontal, kPa", p/1e3, "3.9227")
	s = state(t, in, 0, 1000, in.Volume()*1000, 1, 0)
	p, _ = s.HighestPressure(in.Bounds())
	checktest.Printed(t, "full, vertical, kPa", p/1e3, "13.7293")
}

// The level of the volume below z is z again, and it rises with the volume.
func TestLevelRoundTrip(t *testing.T) {
	for name, in := range map[string]loads.Interior{
		"cone":        tank{R: 0.15, length: 0.9, aft: cone(0.15, 0.15), forward: ellipsoid(0.15, 0.075)},
		"torispheres": tank{R: 0.25, length: 1, aft: torisphere(0.25, 1, 0.1), forward: torisphere(0.25, 0.8, 0.15)},
		"inward":      tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true},
		"turned":      turned{tank{R: 0.2, length: 0.6, aft: dish(0.2, 0.07), forward: cone(0.2, 0.3)}},
	} {
		lo, hi := in.Bounds()
		for i := 1; i < 200; i++ {
			z := lo + (hi-lo)*float64(i)/200
			got, err := loads.LevelForVolume(in, in.VolumeBelow(z))
			if must(t, got, err); math.Abs(got-z) > 1e-9*(hi-lo) {
				t.Errorf("%s: level %.12g, want %.12g", name, got, z)
			}
		}
	}
}

func TestLevelRange(t *testing.T) {
	in := twin()
	for _, v := range []float64{-1e-9, in.Volume() * 1.000001, math.NaN(), math.Inf(1)} {
		z, err := loads.LevelForVolume(in, v)
		var out *check.RangeError
		if !errors.As(err, &out) || !math.IsNaN(z) {
			t.Errorf("volume %g: %g, %v; want NaN and a range error", v, z, err)
		}
	}
	lo, hi := in.Bounds()
	for v, want := range map[float64]float64{0: lo, in.Volume(): hi} {
		if z, err := loads.LevelForVolume(in, v); err != nil || z != want {
			t.Errorf("volume %g: level %g, %v; want %g", v, z, err, want)
		}
	}
}
