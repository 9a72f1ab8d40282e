package shell_test

import (
	"math"
	"testing"

	"proofsheet/shell"
)

// Nothing is computed for a wall, a radius or a strength that is none: every
// function answers a bad geometry and a bad strength with an error and no number.
func TestNothingIsComputedFromNothing(t *testing.T) {
	nan := math.NaN()
	good := shell.Cylinder{InsideRadius: 0.2, Thickness: 0.01, Length: 1}
	type call func(c shell.Cylinder, S float64) (float64, error)
	ball := func(c shell.Cylinder) shell.Sphere {
		return shell.Sphere{InsideRadius: c.InsideRadius, Thickness: c.Thickness}
	}
	first := func(a, _ float64, err error) (float64, error) { return a, err }
	calls := map[string]call{
		"YieldPressures":          func(c shell.Cylinder, S float64) (float64, error) { return first(c.YieldPressures(S)) },
		"CollapsePressures":       func(c shell.Cylinder, S float64) (float64, error) { return first(c.CollapsePressures(S)) },
		"RequiredThicknessHoop":   func(c shell.Cylinder, S float64) (float64, error) { return c.RequiredThicknessHoop(1e6, S, 1) },
		"AllowablePressureHoop":   func(c shell.Cylinder, S float64) (float64, error) { return c.AllowablePressureHoop(S, 1) },
		"RequiredThicknessGirth":  func(c shell.Cylinder, S float64) (float64, error) { return c.RequiredThicknessGirth(1e6, 0, S, 1) },
		"AllowablePressureGirth":  func(c shell.Cylinder, S float64) (float64, error) { return c.AllowablePressureGirth(0, S, 1) },
		"RequiredThicknessHoopEU": func(c shell.Cylinder, S float64) (float64, error) { return c.RequiredThicknessHoopEU(1e6, S, 1) },
		"AllowablePressureHoopEU": func(c shell.Cylinder, S float64) (float64, error) { return c.AllowablePressureHoopEU(S, 1) },
		"AllowablePressureGirthEU": func(c shell.Cylinder, S float64) (float64, error) {
			return c.AllowablePressureGirthEU(0, S, 1)
		},
		"Sphere.RequiredThickness":   func(c shell.Cylinder, S float64) (float64, error) { return ball(c).RequiredThickness(1e6, S, 1) },
		"Sphere.AllowablePressure":   func(c shell.Cylinder, S float64) (float64, error) { return ball(c).AllowablePressure(S, 1) },
		"Sphere.RequiredThicknessEU": func(c shell.Cylinder, S float64) (float64, error) { return ball(c).RequiredThicknessEU(1e6, S, 1) },
		"HoopThicknessOutside": func(c shell.Cylinder, S float64) (float64, error) {
			return shell.HoopThicknessOutside(c.InsideRadius, 1e6, S, 1)
		},
		"GirthThicknessOutside": func(c shell.Cylinder, S float64) (float64, error) {
			return shell.GirthThicknessOutside(c.InsideRadius, 1e6, S, 1)
		},
		"SphereThicknessOutside": func(c shell.Cylinder, S float64) (float64, error) {
			return shell.SphereThicknessOutside(c.InsideRadius, 1e6, S, 1)
		},
	}
	for name, f := range calls {
		if v, err := f(good, 150e6); err != nil || !(v > 0) {
			t.Errorf("%s of a good cylinder: %g, %v", name, v, err)
		}
		for _, S := range []float64{0, -1, nan} {
			if v, err := f(good, S); err == nil || !math.IsNaN(v) {
				t.Errorf("%s at a strength of %g: %g, %v", name, S, v, err)
			}
		}
		for _, R := range []float64{0, -0.2, nan} {
			bad := good
			bad.InsideRadius = R
			if v, err := f(bad, 150e6); err == nil || !math.IsNaN(v) {
				t.Errorf("%s at a radius of %g: %g, %v", name, R, v, err)
			}
		}
	}
	thick := shell.Cylinder{InsideRadius: 0.05, Thickness: 0.01, Length: 1}
	stresses := map[string]func(c shell.Cylinder) (float64, error){
		"LongitudinalStress": func(c shell.Cylinder) (float64, error) { return c.LongitudinalStress(1e5) },
		"Sphere.Stress":      func(c shell.Cylinder) (float64, error) { return ball(c).Stress(1e6) },
		"Sphere.LameStress":  func(c shell.Cylinder) (float64, error) { return first(ball(c).LameStress(1e6, 0, c.InsideRadius)) },
	}
	for name, f := range stresses {
		for _, t0 := range []float64{0, -0.01, nan} {
			bad := good
			bad.Thickness = t0
			if v, err := f(bad); err == nil || !math.IsNaN(v) {
				t.Errorf("%s at a wall of %g: %g, %v", name, t0, v, err)
			}
		}
	}
	if v, err := ball(thick).Stress(1e6); err == nil || !math.IsNaN(v) {
		t.Errorf("thin-sphere stress of a thick one: %g, %v", v, err)
	}
	if _, _, err := ball(good).LameStress(1e6, 0, 0.5); err == nil {
		t.Error("a stress outside the wall")
	}
}
