package shell_test

// Sources: a rocket course's worked problem (read), helium sphere of 316L, R 150 mm, 35 MPa, F_ty 390 MPa; a forum's
// argument on tests of a new and cold wall (read), 1/2 in, 1/4 in of it corrosion allowance, 20 ksi.

import (
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// A wall sized to yield/1.25 is above yield at 1.5 times its pressure, one sized to yield/1.5 just there at MEOP.
// Radii are mean.
func TestRocketCourseSphere(t *testing.T) {
	for _, row := range []struct {
		limit, times float64 // yield over that at MEOP, test over MEOP
		wall, stress string  // mm, MPa
	}{{1.25, 1.5, "8.413", "468.0"}, {1.5, 1, "10.096", "260.0"}} {
		t0 := 35 * 0.150 / (2 * 390 / row.limit)
		checktest.Printed(t, "wall, mm", t0*1e3, row.wall)
		σ, err := shell.Sphere{InsideRadius: 0.150 - t0/2, Thickness: t0}.Stress(35 * mpa * row.times)
		checktest.Printed(t, "stress, MPa", must(t, σ, err)/mpa, row.stress)
	}
}

// 1.3 times the pressure of the corroded wall makes 13 ksi in the new one; 1.3 times that of the new wall 26 ksi.
func TestNewAndColdTest(t *testing.T) {
	const ksi, inch = 6894.757e3, 0.0254
	stress := func(wall, p float64) float64 {
		σ, err := shell.Cylinder{InsideRadius: 50*inch - wall/2, Thickness: wall}.HoopStress(p)
		return must(t, σ, err)
	}
	corroded, fresh := 20*ksi*0.25/50, 20*ksi*0.5/50 // permissible pressures at a mean radius of 50 in
	checktest.Printed(t, "corroded at its pressure, ksi", stress(0.25*inch, corroded)/ksi, "20")
	checktest.Printed(t, "new at 1.3 MAWP, ksi", stress(0.5*inch, 1.3*corroded)/ksi, "13")
	checktest.Printed(t, "new at 1.3 of the new and cold pressure, ksi", stress(0.5*inch, 1.3*fresh)/ksi, "26")
}
