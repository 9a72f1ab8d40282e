package shell_test

// Limits, balances, change of units and edges of every formula; no published
// values here.

import (
	"errors"
	"math"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

var plain = shell.Cylinder{InsideRadius: 0.2, Thickness: 0.005, Length: 1.2}

// Thin-shell stress meets the mean of Lamé's, and the bore stress to t/R.
func TestThinMeetsThick(t *testing.T) {
	const p = 2.5 * mpa
	for _, wall := range []float64{0.0002, 0.002, 0.005} {
		c := shell.Cylinder{InsideRadius: 0.2, Thickness: wall}
		thin, err := c.HoopStress(p)
		must(t, thin, err)
		bore, err := c.BoreHoopStress(p)
		// p(Y²+1)/(Y²−1) = p (R_m/t)(1 + t²/4R_m²)
		x := wall / c.MidRadius()
		checktest.Close(t, "bore over thin", must(t, bore, err)/thin, 1+x*x/4, 1e-12)
	}
	s := shell.Sphere{InsideRadius: 0.2, Thickness: 0.0002}
	thin, err := s.Stress(p)
	must(t, thin, err)
	bore, _, err := s.LameStress(p, 0, 0.2)
	checktest.Close(t, "thin sphere", must(t, bore, err), thin, 2e-3)
}

// The stress over the wall balances the pressure: half a ring p 2R, an end p π R².
func TestLameBalance(t *testing.T) {
	c := shell.Cylinder{InsideRadius: 0.1, Thickness: 0.06}
	const p, po, n = 30 * mpa, 4 * mpa, 2000
	hoopForce, step := 0.0, c.Thickness/n
	for i := range n {
		hoop, radial, axial, err := c.LameStress(p, po, c.InsideRadius+(float64(i)+0.5)*step)
		must(t, hoop, err)
		hoopForce += hoop * step
		checktest.Close(t, "hoop + radial = 2 axial", hoop+radial, 2*axial, 1e-12)
	}
	checktest.Close(t, "half ring", hoopForce, p*0.1-po*0.16, 1e-6)
	_, inner, _, err := c.LameStress(p, po, 0.1)
	checktest.Close(t, "bore face", must(t, inner, err), -p, 1e-12)
	_, outer, _, err := c.LameStress(p, po, c.OutsideRadius())
	checktest.Close(t, "outer face", must(t, outer, err), -po, 1e-12)
	s := shell.Sphere{InsideRadius: 0.1, Thickness: 0.06}
	_, inner, err = s.LameStress(p, po, 0.1)
	checktest.Close(t, "sphere, bore face", must(t, inner, err), -p, 1e-12)
}

// At the yield pressure the bore is just at yield by each condition in three
// dimensions; the collapse pressure is above it and nears it in a thin wall.
func TestYieldPressures(t *testing.T) {
	const σy = 200 * mpa
	for _, wall := range []float64{0.002, 0.05} {
		c := shell.Cylinder{InsideRadius: 0.1, Thickness: wall}
		mises, tresca, err := c.YieldPressures(σy)
		must(t, mises, err)
		a, b, x, err := c.LameStress(mises, 0, 0.1)
		must(t, a, err)
		checktest.Close(t, "von Mises", math.Sqrt(((a-b)*(a-b)+(b-x)*(b-x)+(x-a)*(x-a))/2), σy, 1e-12)
		a, b, _, err = c.LameStress(tresca, 0, 0.1)
		checktest.Close(t, "Tresca", must(t, a, err)-b, σy, 1e-12)
		pm, pt, err := c.CollapsePressures(σy)
		if must(t, pm, err); pm <= mises || pt <= tresca {
			t.Errorf("wall %g: collapse %g, %g below yield %g, %g", wall, pm, pt, mises, tresca)
		}
		if wall == 0.002 {
			checktest.Close(t, "thin: collapse over yield", pm/mises, 1, wall/0.1*1.1)
		}
	}
}

// UG-27's 0.6 p keeps Lamé's bore stress within 1 per cent of S E; the thick
// form meets it at its limit, and each wall carries just its pressure back.
func TestThicknessForms(t *testing.T) {
	const S, E = 100 * mpa, 0.85
	for _, share := range []float64{0.01, 0.05, 0.09, 0.18, 0.384, 0.386, 0.7} {
		p := share * S * E
		c := plain
		wall, err := c.RequiredThicknessHoop(p, S, E)
		c.Thickness = must(t, wall, err)
		bore, err := c.BoreHoopStress(p)
		checktest.Close(t, "bore stress", must(t, bore, err), S*E, 0.011)
		back, err := c.AllowablePressureHoop(S, E)
		checktest.Close(t, "pressure back", must(t, back, err), p, 6e-4) // the limits 0.385 and R/2 differ by so much
		girth, err := c.RequiredThicknessGirth(p, 0, S, E)
		c.Thickness = must(t, girth, err)
		back, err = c.AllowablePressureGirth(0, S, E)
		checktest.Close(t, "pressure back, girth", must(t, back, err), p, 1e-12)
		s := shell.Sphere{InsideRadius: 0.2}
		wall, err = s.RequiredThickness(p, S, E)
		s.Thickness = must(t, wall, err)
		back, err = s.AllowablePressure(S, E)
		checktest.Close(t, "pressure back, sphere", must(t, back, err), p, 2e-3)
	}
	below, _ := plain.RequiredThicknessHoop(0.385*S, S, 1)
	above, err := plain.RequiredThicknessHoop(0.385001*S, S, 1)
	checktest.Close(t, "across 0.385 S E", must(t, above, err), below, 2e-3)
	below, _ = plain.RequiredThicknessGirth(1.25*S, 0, S, 1)
	above, err = plain.RequiredThicknessGirth(1.250001*S, 0, S, 1)
	checktest.Close(t, "across 1.25 S E", must(t, above, err), below, 2e-3)
}

// From the outside radius R + t the outside forms give t again.
func TestOutsideForms(t *testing.T) {
	const p, S, E = 4 * mpa, 110 * mpa, 0.85
	for _, form := range []struct {
		name    string
		inside  func() (float64, error)
		outside func(ro float64) (float64, error)
	}{
		{"hoop", func() (float64, error) { return plain.RequiredThicknessHoop(p, S, E) },
			func(ro float64) (float64, error) { return shell.HoopThicknessOutside(ro, p, S, E) }},
		{"girth", func() (float64, error) { return plain.RequiredThicknessGirth(p, 0, S, E) },
			func(ro float64) (float64, error) { return shell.GirthThicknessOutside(ro, p, S, E) }},
		{"sphere", func() (float64, error) { return shell.Sphere{InsideRadius: 0.2}.RequiredThickness(p, S, E) },
			func(ro float64) (float64, error) { return shell.SphereThicknessOutside(ro, p, S, E) }},
	} {
		wall, err := form.inside()
		must(t, wall, err)
		again, err := form.outside(0.2 + wall)
		checktest.Close(t, form.name, must(t, again, err), wall, 1e-12)
	}
}

// The European wall is the mean-diameter one: at it the mean stress is f z.
func TestEuropeanForms(t *testing.T) {
	const p, f, z = 6 * mpa, 120 * mpa, 0.85
	c := plain
	wall, err := c.RequiredThicknessHoopEU(p, f, z)
	c.Thickness = must(t, wall, err)
	σ, err := c.HoopStress(p)
	checktest.Close(t, "hoop", must(t, σ, err), f*z, 1e-12)
	back, err := c.AllowablePressureHoopEU(f, z)
	checktest.Close(t, "pressure back", must(t, back, err), p, 1e-12)

	const nx = 2e5
	wall, err = c.RequiredThicknessGirthEU(p, nx, f, z)
	c.Thickness = must(t, wall, err)
	checktest.Close(t, "axial", (c.ClosedEndForce(p)+nx)/c.Thickness, f*z, 1e-12)
	back, err = c.AllowablePressureGirthEU(nx, f, z)
	checktest.Close(t, "pressure back, girth", must(t, back, err), p, 1e-12)

	s := shell.Sphere{InsideRadius: 0.2}
	wall, err = s.RequiredThicknessEU(p, f, z)
	s.Thickness = must(t, wall, err)
	σ, err = s.Stress(p)
	checktest.Close(t, "sphere", must(t, σ, err), f*z, 1e-12)
	if _, err := plain.RequiredThicknessHoopEU(0.5*f, f, 1); err == nil {
		t.Error("e/De above 0.16 is not refused")
	}
}

// The girth seam governs below E_g = (E_l − p/S)/2 and not above.
func TestGirthGovernsBound(t *testing.T) {
	const p, S, el = 5 * mpa, 100 * mpa, 0.85
	bound := (el - p/S) / 2
	for _, row := range []struct {
		eg   float64
		want bool
	}{{bound * 0.9999, true}, {bound * 1.0001, false}} {
		got, err := plain.GirthGoverns(p, p, 0, S, el, row.eg)
		if err != nil || got != row.want {
			t.Errorf("E_g %g: governs %v, %v", row.eg, got, err)
		}
	}
	if got, err := plain.GirthGoverns(p, p, 1e6, S, el, el); err != nil || !got {
		t.Errorf("a line load of 1 MN/m must make the girth seam govern: %v, %v", got, err)
	}
}

// With force ×3 and length ×7 a stress changes by 3/49 and a wall by 7.
func TestUnits(t *testing.T) {
	const F, L = 3.0, 7.0
	σ := F / (L * L)
	big := shell.Cylinder{InsideRadius: plain.InsideRadius * L, Thickness: plain.Thickness * L}
	const p, S = 3 * mpa, 100 * mpa
	for _, row := range []struct {
		name string
		f    func(c shell.Cylinder, σ, line float64) (float64, error)
		want float64
	}{
		{"hoop", func(c shell.Cylinder, σ, _ float64) (float64, error) { return c.HoopStress(p * σ) }, σ},
		{"bore", func(c shell.Cylinder, σ, _ float64) (float64, error) { return c.BoreHoopStress(p * σ) }, σ},
		{"axial", func(c shell.Cylinder, _, line float64) (float64, error) { return c.LongitudinalStress(1e5 * line) }, σ},
		{"wall, hoop", func(c shell.Cylinder, σ, _ float64) (float64, error) {
			return c.RequiredThicknessHoop(p*σ, S*σ, 0.85)
		}, L},
		{"wall, girth", func(c shell.Cylinder, σ, line float64) (float64, error) {
			return c.RequiredThicknessGirth(p*σ, 1e5*line, S*σ, 0.85)
		}, L},
		{"wall, girth, European", func(c shell.Cylinder, σ, line float64) (float64, error) {
			return c.RequiredThicknessGirthEU(p*σ, 1e5*line, S*σ, 0.85)
		}, L},
		{"pressure, girth", func(c shell.Cylinder, σ, line float64) (float64, error) {
			return c.AllowablePressureGirth(1e5*line, S*σ, 0.85)
		}, σ},
	} {
		one, err := row.f(plain, 1, 1)
		must(t, one, err)
		other, err := row.f(big, σ, F/L)
		checktest.Close(t, row.name, must(t, other, err), one*row.want, 1e-12)
	}
}

// More pressure asks for more wall, and more line load too.
func TestMonotone(t *testing.T) {
	lastHoop, lastGirth, lastLoad := -1.0, -1.0, -1.0
	for p := 0.0; p < 90*mpa; p += 1 * mpa {
		hoop, err := plain.RequiredThicknessHoop(p, 100*mpa, 1)
		must(t, hoop, err)
		girth, err := plain.RequiredThicknessGirth(p, 0, 100*mpa, 1)
		must(t, girth, err)
		load, err := plain.RequiredThicknessGirth(1*mpa, p, 100*mpa, 1)
		must(t, load, err)
		if hoop <= lastHoop || girth <= lastGirth || load <= lastLoad {
			t.Errorf("p %g: walls %g, %g, %g do not rise", p, hoop, girth, load)
		}
		lastHoop, lastGirth, lastLoad = hoop, girth, load
	}
}

// Outside its range every formula gives a range error and NaN; inside, neither.
func TestRanges(t *testing.T) {
	nan := math.NaN()
	thick := func(ratio float64) shell.Cylinder { return shell.Cylinder{InsideRadius: ratio - 0.5, Thickness: 1} }
	for name, f := range map[string]struct {
		out, in func() (float64, error)
	}{
		"thin":           {func() (float64, error) { return thick(9.99).HoopStress(1) }, func() (float64, error) { return thick(10).HoopStress(1) }},
		"no wall":        {func() (float64, error) { return shell.Cylinder{InsideRadius: 1}.HoopStress(1) }, func() (float64, error) { return plain.HoopStress(-1) }},
		"NaN wall":       {func() (float64, error) { return shell.Cylinder{InsideRadius: 1, Thickness: nan}.BoreHoopStress(1) }, func() (float64, error) { return thick(0.6).BoreHoopStress(1) }},
		"p at S E":       {func() (float64, error) { return plain.RequiredThicknessHoop(1, 1, 1) }, func() (float64, error) { return plain.RequiredThicknessHoop(0.999, 1, 1) }},
		"p negative":     {func() (float64, error) { return plain.RequiredThicknessHoop(-1, 100, 1) }, func() (float64, error) { return plain.RequiredThicknessHoop(0, 100, 1) }},
		"p NaN":          {func() (float64, error) { return plain.RequiredThicknessHoop(nan, 100, 1) }, func() (float64, error) { return plain.RequiredThicknessHoop(1, 100, 1) }},
		"E above 1":      {func() (float64, error) { return plain.RequiredThicknessGirth(1, 0, 100, 1.01) }, func() (float64, error) { return plain.RequiredThicknessGirth(1, 0, 100, 1) }},
		"E zero":         {func() (float64, error) { return plain.AllowablePressureHoop(100, 0) }, func() (float64, error) { return plain.AllowablePressureHoop(100, 0.01) }},
		"S NaN":          {func() (float64, error) { return plain.AllowablePressureGirth(0, nan, 1) }, func() (float64, error) { return plain.AllowablePressureGirth(0, 1, 1) }},
		"load relieves":  {func() (float64, error) { return plain.RequiredThicknessGirth(1, -1, 100, 1) }, func() (float64, error) { return plain.RequiredThicknessGirth(1, 1, 100, 1) }},
		"thick and load": {func() (float64, error) { return plain.RequiredThicknessGirth(126, 1, 100, 1) }, func() (float64, error) { return plain.RequiredThicknessGirth(126, 0, 100, 1) }},
		"sphere at 2 S":  {func() (float64, error) { return shell.Sphere{InsideRadius: 1}.RequiredThickness(2, 1, 1) }, func() (float64, error) { return shell.Sphere{InsideRadius: 1}.RequiredThickness(1.99, 1, 1) }},
		"outside thick":  {func() (float64, error) { return shell.HoopThicknessOutside(1, 0.386, 1, 1) }, func() (float64, error) { return shell.HoopThicknessOutside(1, 0.385, 1, 1) }},
		"EU thick": {func() (float64, error) {
			return shell.Cylinder{InsideRadius: 1, Thickness: 0.48}.AllowablePressureHoopEU(1, 1)
		}, func() (float64, error) {
			return shell.Cylinder{InsideRadius: 1, Thickness: 0.47}.AllowablePressureHoopEU(1, 1)
		}},
		"modulus": {func() (float64, error) { return shell.Elastic{Poisson: 0.3}.Strain(1, 1) }, func() (float64, error) { return shell.Elastic{Modulus: 1, Poisson: 0.3}.Strain(1, 1) }},
	} {
		v, err := f.out()
		var out *check.RangeError
		if !errors.As(err, &out) || !math.IsNaN(v) {
			t.Errorf("%s: %g, %v; want NaN and a range error", name, v, err)
		}
		if v, err := f.in(); err != nil || math.IsNaN(v) {
			t.Errorf("%s, inside the range: %g, %v", name, v, err)
		}
	}
	if _, _, _, err := plain.LameStress(1, 0, 0.206); err == nil {
		t.Error("a radius outside the wall is not refused")
	}
}
