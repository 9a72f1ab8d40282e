package edge_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

func dome(R, ratio, th float64) edge.Dome {
	return edge.Dome{Radius: R, Depth: R / ratio, Shell: unit, Head: thick(th), ShellFree: inf}
}

// shellMost returns the largest hoop stress of the outer face along the cylinder.
func shellMost(j edge.Joint, R float64) (most float64) {
	for x := 0.0; x < 8*math.Sqrt(R); x += 0.01 * math.Sqrt(R) {
		s := j.ShellAt(x)
		most = math.Max(most, s.Hoop-s.HoopBending)
	}
	return most
}

// Hemisphere of the cylinder's wall: largest meridional 1.293 p R/(2t), hoop 1.032 p R/t, 0.75 at the joint:
// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (recalled; 1.294, 1.031, 0.750 by finite element). M = 0 and H = −p/(8 β) exactly.
func TestHemisphereTimoshenko(t *testing.T) {
	j, err := dome(100, 1, 1).Solve(edge.Gas(0.01, 100))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "meridional", 2*j.PeakShell(), "1.293")
	checktest.Close(t, "hoop", shellMost(j, 100), 1.032, 1e-3) // recalled to three decimals
	checktest.Printed(t, "joint hoop", j.Shell.Hoop, "0.750")
	β := 1 / edge.DecayLength(100, 1, 0.3)
	checktest.Close(t, "H", j.HShell, -0.01/(8*β), 1e-12)
	checktest.Close(t, "balance", j.HHead, -j.HShell, 1e-12)
	if math.Abs(j.MShell) > 1e-15 {
		t.Errorf("M is %g, not 0", j.MShell)
	}
	// The peak lies at β x = π/4.
	s := j.ShellAt(math.Pi / 4 / β)
	checktest.Close(t, "place of the peak", s.MeridionalSurface(), j.PeakShell(), 1e-12)
}

// Hemispheres of unequal thickness, R/t 100: computed by finite element; 7/17 gives equal dilation
// (Towler and Sinnott, Chemical Engineering Design, 2013, p. 579, read). Within 0.12 %.
func TestUnequalHemisphere(t *testing.T) {
	for _, row := range []struct{ th, cylinder, joint, head float64 }{
		{1, 0.647, 0.750, 0.647}, {0.6, 0.579, 0.886, 0.927}, {0.5, 0.542, 0.942, 1.078}, {7.0 / 17, 0.500, 1.000, 1.214},
	} {
		j, err := dome(100, 1, row.th).Solve(edge.Gas(0.01, 100))
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "cylinder", j.PeakShell(), row.cylinder, 1.2e-3)
		checktest.Close(t, "joint hoop", j.Shell.Hoop, row.joint, 1.2e-3)
		checktest.Close(t, "head", j.PeakHead(), row.head, 1.2e-3)
	}
	j, _ := dome(100, 1, 7.0/17).Solve(edge.Gas(0.01, 100))
	if math.Abs(j.HShell) > 1e-12 || math.Abs(j.MShell) > 1e-12 {
		t.Error("equal dilation leaves an edge load")
	}
}

// Ellipsoid 2:1, equal walls: hoop 1.128 p R/t, meridional 2.17 p R/(2t) in the cylinder (Timoshenko and
// Woinowsky-Krieger, recalled, asymptotic: the factor of the hemisphere four times). Finite element at R/t 200, 100: 1.122, 1.118 and
// 2.133, 2.098; sqrt2 head, R/t 100: 1.062, 1.576: the closed form is above, by 0.7 and 3.5 %.
func TestEllipsoidTimoshenko(t *testing.T) {
	for _, row := range []struct{ R, ratio, hoop, mer, high float64 }{{200, 2, 1.122, 2.133, 0.018}, {100, 2, 1.118, 2.098, 0.035}, {100, math.Sqrt2, 1.062, 1.576, 0.007}} {
		j, err := dome(row.R, row.ratio, 1).Solve(edge.Gas(1/row.R, row.R))
		if err != nil {
			t.Fatal(err)
		}
		for what, got := range map[float64]float64{row.hoop: shellMost(j, row.R), row.mer: 2 * j.PeakShell()} {
			if e := got/what - 1; !(e > -1e-3 && e <= row.high) {
				t.Errorf("R/t %g, %.3f:1: %.4f, finite element %.4f", row.R, row.ratio, got, what)
			}
		}
		if row.ratio == 2 {
			checktest.Printed(t, "meridional", 2*j.PeakShell(), "2.17")
			checktest.Close(t, "hoop", shellMost(j, row.R), 1.128, 3e-3) // recalled value is 1 + 4 × 0.032
		}
	}
}

// A cap of 90 deg is the hemisphere; at any angle the radial forces balance the membrane's pull, which a rigid ring
// takes whole but for what its walls hold; ring tension of an inward set cap.
func TestCap(t *testing.T) {
	gas := edge.Gas(0.01, 100)
	c := edge.Cap{Radius: 100, HalfOpening: math.Pi / 2, Shell: unit, Head: thick(0.6), ShellFree: inf}
	a, err := c.Solve(gas)
	b, _ := dome(100, 1, 0.6).Solve(gas)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "hemisphere", a.Shell.Hoop, b.Shell.Hoop, 1e-9)
	checktest.Close(t, "hemisphere, head", a.PeakHead(), b.PeakHead(), 1e-9)
	c.HalfOpening, c.RingArea, c.RingModulus = 60*deg, 5, 1
	j, err := c.Solve(gas)
	if err != nil {
		t.Fatal(err)
	}
	q, F, err := edge.RingForce(0.01, 100/math.Sin(60*deg), 60*deg, false)
	if err != nil || F >= 0 {
		t.Error(F, err)
	}
	checktest.Close(t, "balance", j.HShell+j.HHead+j.HRing, q, 1e-9)
	checktest.Close(t, "q", q, -0.5/math.Tan(60*deg), 1e-12)
	checktest.Close(t, "F", F, q*100, 1e-12)
	if r, G, _ := edge.RingForce(0.01, 100/math.Sin(60*deg), 60*deg, true); r != -q || G != -F {
		t.Error("an inward cap must throw its ring into tension")
	}
	for _, φ := range []float64{29 * deg, 91 * deg, math.NaN()} {
		c.HalfOpening = φ
		if _, err := c.Solve(gas); err == nil {
			t.Errorf("%g rad is taken", φ)
		}
	}
	if _, _, err := edge.RingForce(math.NaN(), 1, 1, false); err == nil {
		t.Error("no pressure is taken")
	}
}

func TestDomeRange(t *testing.T) {
	gas := edge.Gas(0.01, 100)
	for name, change := range map[string]func(*edge.Dome){
		"too flat": func(d *edge.Dome) { d.Depth = 29 }, "too deep": func(d *edge.Dome) { d.Depth = 101 }, "NaN": func(d *edge.Dome) { d.Depth = math.NaN() },
		"offset": func(d *edge.Dome) { d.Offset = 0.61 }, "short": func(d *edge.Dome) { d.ShellFree = 24 }, "thick": func(d *edge.Dome) { d.Head.Thickness = 11 },
	} {
		d := dome(100, 1, 0.6)
		if _, err := d.Solve(gas); err != nil {
			t.Fatal(err)
		}
		if change(&d); true {
			if _, err := d.Solve(gas); err == nil {
				t.Errorf("%s is taken", name)
			}
		}
	}
	j, _ := dome(100, 1, 1).Solve(gas)
	if !math.IsNaN(j.ShellAt(-1).Hoop) || !math.IsNaN(j.ShellAt(math.NaN()).Hoop) {
		t.Error("a place beyond the joint has a stress")
	}
	if s := j.ShellAt(0); math.Abs(s.Hoop-j.Shell.Hoop) > 1e-12 {
		t.Error("the joint differs from the end of the wall")
	}
}
