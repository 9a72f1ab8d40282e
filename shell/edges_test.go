package shell_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// Loads and metals that are none give no number.
func TestLoadsRefused(t *testing.T) {
	nan := math.NaN()
	c := shell.Cylinder{InsideRadius: 0.2, Thickness: 0.01, Length: 1}
	steel := shell.Elastic{Modulus: 200e9, Poisson: 0.3}
	for _, p := range []float64{nan, -1, 0.67 * 150e6} {
		if v, err := shell.SphereThicknessOutside(0.2, p, 150e6, 1); err == nil || !math.IsNaN(v) {
			t.Errorf("sphere at %g Pa: %g, %v", p, v, err)
		}
	}
	for _, nx := range []float64{nan, -1} {
		if v, err := c.AllowablePressureGirth(nx, 150e6, 1); err == nil || !math.IsNaN(v) {
			t.Errorf("line load %g: %g, %v", nx, v, err)
		}
	}
	if governs, err := c.GirthGoverns(nan, 1e6, 0, 150e6, 1, 1); err == nil || governs {
		t.Errorf("no pressure: %v, %v", governs, err)
	}
	bad := c
	bad.Thickness = nan
	if g, err := bad.Growth(1e8, 5e7, steel); err == nil || g != (shell.Growth{}) {
		t.Errorf("no wall grows by %+v, %v", g, err)
	}
	for _, m := range []shell.Elastic{{Modulus: nan, Poisson: 0.3}, {Modulus: 200e9, Poisson: 0.51}} {
		if g, err := c.Growth(1e8, 5e7, m); err == nil || g != (shell.Growth{}) {
			t.Errorf("%+v grows by %+v, %v", m, g, err)
		}
		if s, err := c.TemperatureStep(m, 1e-3, 0); err == nil || s != (shell.StepStress{}) {
			t.Errorf("%+v: %+v, %v", m, s, err)
		}
	}
}

// A wall of 60 on a radius of 100 mm, S 100 MPa: S [(R_o/R)² − 1] = 156 MPa; 1 MN/m takes 2 · 1e6 · 0.13/0.01 = 26 MPa of it.
func TestThickGirth(t *testing.T) {
	c := shell.Cylinder{InsideRadius: 0.1, Thickness: 0.06, Length: 1}
	for nx, want := range map[float64]float64{0: 156e6, 1e6: 130e6} {
		p, err := c.AllowablePressureGirth(nx, 100e6, 1)
		checktest.Close(t, "p", must(t, p, err), want, 1e-12)
	}
}
