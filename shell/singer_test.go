package shell_test

// Source: solved problems on thin-walled pressure vessels, the set of Singer
// and Pytel, Strength of Materials, problems 133 to 143 (attribution from
// memory; inputs and results read on a solved-problem page). The source takes
// the diameter as that of the mean surface.

import (
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

const (
	psi  = 6894.757293168 // [Pa]
	inch = 0.0254         // [m]
	foot = 0.3048         // [m]
	mpa  = 1e6            // [Pa]
)

// mean returns the cylinder of mean diameter d [m] and wall t [m].
func mean(d, t float64) shell.Cylinder {
	return shell.Cylinder{InsideRadius: d/2 - t/2, Thickness: t, Length: 1}
}

func meanSphere(d, t float64) shell.Sphere {
	return shell.Sphere{InsideRadius: d/2 - t/2, Thickness: t}
}

// must returns v and ends the test on an error.
func must(t testing.TB, v float64, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSingerCylinder(t *testing.T) {
	c := mean(0.400, 0.020)
	hoop, err := c.HoopStress(4.5 * mpa)
	checktest.Printed(t, "133(a), hoop", must(t, hoop, err)/mpa, "45")
	axial, err := c.LongitudinalStress(c.ClosedEndForce(4.5 * mpa))
	checktest.Printed(t, "133(a), axial", must(t, axial, err)/mpa, "22.5")
	hoop, err = c.HoopStress(12 * mpa)
	checktest.Printed(t, "133(b), hoop at 12 MPa", must(t, hoop, err)/mpa, "120")

	// hoop stress of a water tank filled to the height the source finds
	const water = 62.4 / 1728.0 // lb/in3
	hoop, err = mean(22*foot, 0.5*inch).HoopStress(629.37 * water * psi)
	checktest.Printed(t, "water tank", must(t, hoop, err)/psi, "6000")
}

func TestSingerSphere(t *testing.T) {
	σ, err := meanSphere(4*foot, 5./16*inch).Stress(208.33 * psi)
	checktest.Printed(t, "sphere of 4 ft", must(t, σ, err)/psi, "8000")
	σ, err = mean(2*foot, 1.4*inch).HoopStress(1400 * psi)
	if err == nil {
		t.Errorf("a wall of 1.4 in at 24 in is no thin wall: got %g psi", σ/psi)
	}
	// the source's wall p D/(2 S), as the stress in a wall of 1.4 in
	c := mean(2*foot, 1.4*inch)
	checktest.Printed(t, "wall at 12 ksi", 1400*psi*c.MidRadius()/c.Thickness/psi, "12000")
}

// The joints carry 33 kip/ft along and 16 kip/ft around; the girth seam governs
// (diameter of 2.96 ft: memory, 2.963 by arithmetic).
func TestSingerGirthGoverns(t *testing.T) {
	const p, kipft = 150 * psi, 4448.2216152605 / foot // [Pa], [N/m]
	// a full joint of 40 kip/ft in a wall so thin that p/S drops out
	const wall, full = 1e-6, 40 * kipft
	S := full / wall
	c := shell.Cylinder{InsideRadius: 2.963 * foot / 2, Thickness: wall}
	long, err := c.AllowablePressureHoop(S, 33./40)
	must(t, long, err)
	girth, err := c.AllowablePressureGirth(0, S, 16./40)
	checktest.Printed(t, "pressure at 2.963 ft", must(t, girth, err)/psi, "150")
	if long <= girth {
		t.Errorf("long seam carries %g psi, girth seam %g: the girth seam must govern", long/psi, girth/psi)
	}
	checktest.Printed(t, "diameter of the long seam, ft", 2.963*long/p, "3.056")
	governs, err := c.GirthGoverns(p, p, 0, S, 33./40, 16./40)
	if err != nil || !governs {
		t.Errorf("girth governs: %v, %v", governs, err)
	}
}
