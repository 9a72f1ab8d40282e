package buckling_test

// Hand calculations, limits, changes of units and edges of the ranges.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

var (
	nan       = math.NaN()
	steelTube = buckling.Tube{Radius: 0.3, Thickness: 0.0015, Length: 1.5}
	halfCone  = buckling.Cone{HalfAngle: math.Pi / 6, SmallRadius: 0.05, LargeRadius: 0.2, Thickness: 0.002}
)

// Cone of 30 degrees, r 50 to 200, t 2 mm, E 193 GPa, by hand.
func TestConeByHand(t *testing.T) {
	hard := steel304
	hard.Yield, hard.Exponent = 3000*mpa, 20 // elastic
	p, err := halfCone.CompressionForce(hard)
	checktest.Printed(t, "P", must(t, p, err)/1e3, "726.593")
	m, err := halfCone.BendingMoment(hard)
	checktest.Printed(t, "M", must(t, m, err)/1e3, "22.5684")
	q, err := halfCone.PressureSP8019(hard)
	checktest.Printed(t, "p", must(t, q, err)/mpa, "1.448")
	e, err := halfCone.Equivalent(hard)
	checktest.Printed(t, "D_o", must(t, e, err).OutsideDiameter()/mm, "401.732")
	checktest.Printed(t, "L_e", e.Length/mm, "162.7998")
	u, err := e.PressureUG28(hard)
	checktest.Printed(t, "UG-33(f)", must(t, u, err)/mpa, "0.543415")
	whole := buckling.Cone{HalfAngle: math.Pi / 6, LargeRadius: 0.2, Thickness: 0.002}
	e, err = whole.Equivalent(hard)
	checktest.Close(t, "whole cone, L_x/2 and a little for the wall", must(t, e, err).Length, 0.2*math.Sqrt(3)/2, 0.01)
	small := halfCone
	small.HalfAngle = 5 * math.Pi / 180
	p, err = small.CompressionForce(hard)
	γ, bad := buckling.KnockdownCompression(0.05 / math.Cos(small.HalfAngle) / 0.002)
	checktest.Close(t, "under 10 degrees", must(t, p, err), must(t, γ, bad)*2*math.Pi*hard.Modulus*math.Pow(0.002*math.Cos(small.HalfAngle), 2)/math.Sqrt(2.73), 1e-12)
}

func TestConeEdges(t *testing.T) {
	for _, row := range []struct {
		f           func(buckling.Cone) error
		least, most float64 // degrees
	}{
		{func(c buckling.Cone) error { _, err := c.CompressionForce(steel304); return err }, 0, 75},
		{func(c buckling.Cone) error { _, err := c.BendingMoment(steel304); return err }, 0, 60},
		{func(c buckling.Cone) error { _, err := c.PressureSP8019(steel304); return err }, 10, 75},
		{func(c buckling.Cone) error { _, err := c.Equivalent(steel304); return err }, 0, 60},
	} {
		at := func(α float64) error {
			c := halfCone
			c.HalfAngle = α * math.Pi / 180
			return row.f(c)
		}
		for _, bad := range []float64{row.least - 0.01, row.most + 0.01, nan, 90, -30} {
			outside(t, "half angle", at(bad))
		}
		for _, good := range []float64{row.least + 0.01, row.most} {
			if err := at(good); err != nil {
				t.Errorf("%g: %v", good, err)
			}
		}
	}
	c := halfCone
	c.Roundness = 0.006
	_, err := c.PressureSP8019(steel304)
	outside(t, "roundness", err)
	c.Roundness, c.SmallRadius = 0, 0.3
	_, err = c.PressureSP8019(steel304)
	outside(t, "radii", err)
}

// Column of R 300, t 1.5, L 1500 mm, K = 2; shell stress 131.53 MPa, by hand.
func TestColumnByHand(t *testing.T) {
	c := buckling.Column{Radius: 0.3, Thickness: 0.0015, Length: 1.5, Factor: 2}
	p, err := c.Euler(steel304)
	checktest.Printed(t, "P_E", must(t, p, err)/1e3, "26929.0")
	j, err := c.Johnson(steel304, 131.53*mpa)
	checktest.Printed(t, "P_J", must(t, j, err)/1e3, "370.608")
	// where the loss is a half the parabola touches Euler's curve
	c.Length = math.Sqrt(2*math.Pi*math.Pi*steel304.Modulus/131.53e6) * 0.3 / (2 * math.Sqrt2) * (1 - 1e-9)
	p, err = c.Euler(steel304)
	must(t, p, err)
	j, err = c.Johnson(steel304, 131.53*mpa)
	checktest.Close(t, "touching", must(t, j, err), p, 1e-6)
	c.Length *= 1.001
	_, err = c.Johnson(steel304, 131.53*mpa)
	outside(t, "loss", err)
	for _, bad := range []buckling.Column{{0.3, 0.0015, nan, 2}, {0.3, 0.0015, 1.5, 0.4}, {0.3, 0, 1.5, 1}, {nan, 0.0015, 1.5, 1}} {
		_, err := bad.Euler(steel304)
		outside(t, "column", err)
	}
}

// Cap R 500, t 2 mm, half opening 20 degrees, and EN 13445-3 on its sphere.
func TestCapByHand(t *testing.T) {
	d := buckling.NewCap(0.499, 0.002, 20*math.Pi/180)
	checktest.Printed(t, "λ", d.CapParameter(steel304), "9.98219")
	p, err := d.PressureSP8032(steel304)
	checktest.Printed(t, "p", must(t, p, err)/kpa, "643.343")
	en, err := d.PressureEN13445(steel304)
	must(t, en, err)
	checktest.Printed(t, "P_y", en.Yield/mpa, "1.312")
	checktest.Printed(t, "P_m", en.Elastic/mpa, "3.73648")
	// 0.386 + (0.435 − 0.386)(2.84793 − 2.5)/0.5 = 0.420097, times P_y/1.5
	checktest.Printed(t, "P_r/1.5", en.Allowable/mpa, "0.36744")
	thick := buckling.NewCap(0.495, 0.010, math.Pi/2)
	p, err = thick.PressureSP8032(steel304)
	checktest.Close(t, "yield", must(t, p, err), 205e6*0.010/0.5, 1e-12)
	// past the knee: 0.125 E t/R_o = 482.5 MPa, above 0.55 × 205 = 112.75 MPa; that times 10/(2 × 505)
	p, err = thick.PressureUG33(steel304)
	checktest.Printed(t, "UG-33 past its knee", must(t, p, err)/mpa, "1.11634")
	hemi := buckling.NewHemisphere(0.499, 0.002)
	checktest.Close(t, "hemisphere as ellipsoid", buckling.NewEllipsoid(0.499, 0.499, 0.002).CrownRadius, hemi.CrownRadius, 1e-12)
	for _, bad := range []buckling.Dome{
		buckling.NewCap(0.499, 0.002, 3*math.Pi/180), buckling.NewCap(0.499, 0.002, 2), buckling.NewCap(0.499, 0.002, nan),
		buckling.NewEllipsoid(0.2, 0.06, 0.002), buckling.NewEllipsoid(0.2, nan, 0.002), buckling.NewTorisphere(nan, 0.002), buckling.NewTorisphere(0.4, 0.05),
		{CrownRadius: 0.4, Thickness: 0.002, Deviation: 0.011},
	} {
		if _, err := bad.PressureSP8032(steel304); err == nil {
			t.Errorf("%+v is accepted", bad)
		}
	}
}

// Torsion of R 300, t 1.5, L 1500 mm, by hand.
func TestTorsionByHand(t *testing.T) {
	s, err := steelTube.TorsionStress(steel304)
	checktest.Printed(t, "τ", must(t, s, err).Elastic/mpa, "57.0159")
	short := steelTube
	short.Length = 0.16 // γ Z 32
	_, err = short.TorsionStress(steel304)
	outside(t, "γ Z", err)
}

// The table is read between its points, is 0 below them and is never carried on.
func TestGain(t *testing.T) {
	g := buckling.Gain{Source: "own copy", Points: []buckling.GainPoint{{0.02, 0.02}, {0.1, 0.07}, {1, 0.18}}}
	for _, row := range [][2]float64{{-1, 0}, {0.0199, 0}, {0.02, 0.02}, {0.06, 0.045}, {1, 0.18}} {
		got, err := g.At(row[0])
		if math.Abs(must(t, got, err)-row[1]) > 1e-12 {
			t.Errorf("x_p %g: %g, want %g", row[0], got, row[1])
		}
	}
	for _, bad := range []float64{1.001, nan} {
		_, err := g.At(bad)
		outside(t, "x_p", err)
	}
	for _, bad := range []buckling.Gain{
		{Points: g.Points}, {Source: "x", Points: []buckling.GainPoint{{0.1, 0.07}, {0.02, 0.08}}}, {Source: "x", Points: []buckling.GainPoint{{0.02, 0.07}, {0.1, 0.02}}},
		{Source: "x", Points: []buckling.GainPoint{{0, 0.1}}}, {Source: "x", Points: []buckling.GainPoint{{0.1, nan}}}, {Source: "x", Points: []buckling.GainPoint{{0.1, 0.7}}},
	} {
		if _, err := bad.At(0.05); err == nil {
			t.Errorf("%+v is accepted", bad)
		}
	}
	if none, err := (buckling.Gain{}).At(5); none != 0 || err != nil {
		t.Errorf("no table: %g, %v", none, err)
	}
	// with a gain the skin never passes the classical stress
	a, err := steelTube.CompressionStress(steel304, 0.5)
	checktest.Close(t, "cap", must(t, a, err).Elastic, a.Classical*a.LengthFactor, 1e-12)
}

// Length for pressure from outside: tangents and the share of each end.
func TestLengthOfEnds(t *testing.T) {
	c := buckling.Cylinder{InsideRadius: 0.2, Thickness: 0.002, Length: 1, Ends: [2]buckling.End{
		{Kind: buckling.Dished, Depth: 0.1}, {Kind: buckling.Conic, Depth: 0.3, HalfAngle: 25 * math.Pi / 180}}}
	e, err := c.ExternalTube()
	checktest.Close(t, "L", must(t, e, err).Length, 1.34, 1e-12)
	c.Ends = [2]buckling.End{{}, {Kind: buckling.Conic, Depth: 0.3, HalfAngle: math.Pi / 6}}
	e, err = c.ExternalTube()
	checktest.Close(t, "L", must(t, e, err).Length, 1.12, 1e-12)
	for _, bad := range []buckling.End{{Kind: buckling.Dished}, {Kind: buckling.Conic, Depth: 0.1}, {Kind: buckling.Conic, Depth: 0.1, HalfAngle: nan}, {Kind: 9, Depth: 1}} {
		if _, err := bad.Share(); err == nil {
			t.Errorf("%+v is accepted", bad)
		}
	}
}

// Force times 3 and length times 7: a stress or pressure times 3/49.
func TestChangeOfUnits(t *testing.T) {
	const ℓ, σ = 7.0, 3.0 / 49
	scaled := func(m buckling.Metal) buckling.Metal {
		m.Modulus *= σ
		m.Yield *= σ
		return m
	}
	for _, c := range []buckling.Tube{steelTube, {Radius: 0.3, Thickness: 0.003, Length: 0.05}, {Radius: 0.05, Thickness: 0.002, Length: 4}} {
		big := buckling.Tube{Radius: ℓ * c.Radius, Thickness: ℓ * c.Thickness, Length: ℓ * c.Length}
		for name, f := range pressures {
			p, err := f(c, steel304)
			q, bad := f(big, scaled(steel304))
			if (err == nil) != (bad == nil) {
				t.Errorf("%s: %v, %v", name, err, bad)
			} else if err == nil {
				checktest.Close(t, name, q, σ*p, 1e-9)
			}
		}
	}
	c := halfCone
	c.SmallRadius, c.LargeRadius, c.Thickness = ℓ*c.SmallRadius, ℓ*c.LargeRadius, ℓ*c.Thickness
	p, _ := halfCone.PressureSP8019(steel304)
	q, err := c.PressureSP8019(scaled(steel304))
	checktest.Close(t, "cone", must(t, q, err), σ*p, 1e-9)
	p, _ = halfCone.CompressionForce(steel304)
	q, err = c.CompressionForce(scaled(steel304))
	checktest.Close(t, "cone, force", must(t, q, err), 3*p, 1e-9)
	d := buckling.NewEllipsoid(0.2, 0.1, 0.002)
	p, _ = d.PressureSP8032(steel304)
	q, err = buckling.NewEllipsoid(ℓ*0.2, ℓ*0.1, ℓ*0.002).PressureSP8032(scaled(steel304))
	checktest.Close(t, "dome", must(t, q, err), σ*p, 1e-9)
}

// pressures are the stresses and pressures of a tube that must be finite or
// refused.
var pressures = map[string]func(buckling.Tube, buckling.Metal) (float64, error){
	"SP-8007": func(c buckling.Tube, m buckling.Metal) (float64, error) { return c.PressureSP8007(m) },
	"UG-28":   func(c buckling.Tube, m buckling.Metal) (float64, error) { return c.PressureUG28(m) },
	"VIII-2":  func(c buckling.Tube, m buckling.Metal) (float64, error) { return c.PressureDivision2(m) },
	"EN 13445-3": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		r, err := c.PressureEN13445(m)
		return r.Allowable, err
	},
	"EN 1993-1-6": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		_, p, err := c.EuropeanPressure(m, "")
		return p, err
	},
	"compression": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		a, err := c.CompressionStress(m, 0)
		return a.Critical, err
	},
	"bending": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		a, err := c.BendingStress(m, 0)
		return a.Critical, err
	},
	"torsion": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		a, err := c.TorsionStress(m)
		return a.Critical, err
	},
	"EN axial": func(c buckling.Tube, m buckling.Metal) (float64, error) {
		e, err := c.EuropeanCompression(m, "", 0, 0)
		return e.Design, err
	},
}

// No method takes a number that is none, and each holds to its own edges.
func TestEdgesOfTubes(t *testing.T) {
	type place struct {
		c buckling.Tube
		m buckling.Metal
	}
	bent := func(f func(*place)) place {
		p := place{steelTube, steel304}
		f(&p)
		return p
	}
	for name, f := range pressures {
		for i, bad := range []place{
			bent(func(p *place) { p.c.Radius = nan }), bent(func(p *place) { p.c.Thickness = 0 }), bent(func(p *place) { p.c.Length = -1 }),
			bent(func(p *place) { p.c.Length = nan }), bent(func(p *place) { p.m.Modulus = nan }), bent(func(p *place) { p.m.Poisson = 0.6 }),
			bent(func(p *place) { p.m.Yield = nan }), bent(func(p *place) { p.m.Exponent = 1 }), bent(func(p *place) { p.c.Thickness = 0.4 }),
		} {
			v, err := f(bad.c, bad.m)
			outside(t, name, err)
			if !math.IsNaN(v) {
				t.Errorf("%s, %d: %g", name, i, v)
			}
		}
	}
	for _, row := range []struct {
		name      string
		good, bad buckling.Tube
	}{
		{"SP-8007", buckling.Tube{Radius: 1.001, Thickness: 0.1, Length: 3}, buckling.Tube{Radius: 0.999, Thickness: 0.1, Length: 3}},
		{"UG-28", buckling.Tube{Radius: 0.451, Thickness: 0.1, Length: 3}, buckling.Tube{Radius: 0.449, Thickness: 0.1, Length: 3}},
		{"UG-28", buckling.Tube{Radius: 1, Thickness: 0.01, Length: 0.2001}, buckling.Tube{Radius: 1, Thickness: 0.01, Length: 0.1999}},
		{"VIII-2", buckling.Tube{Radius: 0.999, Thickness: 0.001, Length: 1}, buckling.Tube{Radius: 1.001, Thickness: 0.001, Length: 1}},
		{"compression", buckling.Tube{Radius: 1.499, Thickness: 0.001, Length: 3}, buckling.Tube{Radius: 1.501, Thickness: 0.001, Length: 3}},
		{"bending", buckling.Tube{Radius: 1.499, Thickness: 0.001, Length: 3}, buckling.Tube{Radius: 1.501, Thickness: 0.001, Length: 3}},
	} {
		v, err := pressures[row.name](row.good, steel304)
		if must(t, v, err) <= 0 {
			t.Errorf("%s: %g", row.name, v)
		}
		_, err = pressures[row.name](row.bad, steel304)
		outside(t, row.name, err)
	}
}

// A cone of 61 degrees must not bear what one of 60 does not: beyond the angle of the
// equivalent cylinder it is not judged.
func TestFlatConeIsNotJudged(t *testing.T) {
	c := buckling.Cone{HalfAngle: math.Pi / 3, SmallRadius: 0.03, LargeRadius: 0.2, Thickness: 0.002}
	at60 := buckling.CheckHeadExternal("head.aft", "Aft head", c, steel304, 50e3, 1.5)
	if at60.Err != nil || !(at60.Capacity.Value > 0) {
		t.Fatal(at60.Err)
	}
	c.HalfAngle = 61 * math.Pi / 180
	at61 := buckling.CheckHeadExternal("head.aft", "Aft head", c, steel304, at60.Capacity.Value/2, 1.5)
	if at61.Status() != check.NotAssessed || !strings.Contains(at61.Err.Error(), "half angle") {
		t.Errorf("61 degrees: %v, %v", at61.Status(), at61.Err)
	}
}

// Nothing that weakens a dome or makes it thinner raises what it bears: over the knee of
// UG-33 and past it, with less yield strength, modulus or wall.
func TestDomeOverTheKnee(t *testing.T) {
	bears := func(e, y, wall float64) float64 {
		m := steel304
		m.Modulus, m.Yield = e, y
		least, err := buckling.Lowest(buckling.NewTorisphere(0.4, wall).External(m, 1.5))
		if err != nil {
			t.Fatal(err)
		}
		return least.Allowable
	}
	for i := range 60 {
		x := 1 - 0.015*float64(i)
		const e, y, wall, less = 193e9, 205e6, 0.004, 0.99
		if a, b := bears(e, y*x, wall), bears(e, y*x*less, wall); b > a {
			t.Errorf("yield strength %g MPa: %g, weaker %g", y*x/1e6, a, b)
		}
		if a, b := bears(e*x, y, wall), bears(e*x*less, y, wall); b > a {
			t.Errorf("modulus %g GPa: %g, less %g", e*x/1e9, a, b)
		}
		if a, b := bears(e, y, wall*x), bears(e, y, wall*x*less); b > a {
			t.Errorf("wall %g mm: %g, thinner %g", wall*x*1e3, a, b)
		}
	}
}
