package shell_test

// Source: V. B. Bhandari, Design of Machine Elements, chapter 22 and example
// 8.21, by way of a textbook companion's printed results (read). Its thin walls
// are p D/(2 S) on the inside diameter without further terms.

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

func TestBhandariThin(t *testing.T) {
	for _, row := range []struct {
		where   string
		d, p, S float64 // mm, MPa, MPa
		want    string  // mm
	}{
		{"ex. 22.1", 251.5398, 20, 390 / 2.5, "16.124346"},
		{"ex. 22.2, cylinder", 492.372511, 5, 340. / 4, "14.481544"},
		{"ex. 8.21, corrosion of 2 mm apart", 1500, 1.5, 80 * 0.80 * 1, "17.578125"},
	} {
		// p D/(2 S) is UG-27(c)(1) with the term 0.6 p taken back out of S
		wall, err := shell.Cylinder{InsideRadius: row.d / 2000}.RequiredThicknessHoop(row.p*mpa, (row.S+0.6*row.p)*mpa, 1)
		checktest.Printed(t, row.where, must(t, wall, err)*1000, row.want)
	}
	wall, err := shell.Sphere{InsideRadius: 492.372511e-3 / 2}.RequiredThickness(5*mpa, (340./4+0.1*5)*mpa, 1)
	checktest.Printed(t, "ex. 22.2, hemisphere", must(t, wall, err)*1000, "7.240772")
}

func TestBhandariLame(t *testing.T) {
	// ex. 22.3: 40 mm bore, 10 MPa, 200/5 MPa: 5.82 mm, which the book rounds up to 6
	c := shell.Cylinder{InsideRadius: 0.020, Thickness: 0.020 * (math.Sqrt(50./30) - 1)}
	checktest.Printed(t, "ex. 22.3, wall in mm", c.Thickness*1000, "5.82")
	σ, err := c.BoreHoopStress(10 * mpa)
	checktest.Close(t, "ex. 22.3, bore stress", must(t, σ, err), 40*mpa, 1e-12)
	p, err := shell.Cylinder{InsideRadius: 0.020, Thickness: c.Thickness}.RequiredThicknessHoop(10*mpa, 40*mpa, 0.5)
	checktest.Close(t, "half efficiency: the thick form", must(t, p, err), 0.020*(math.Sqrt(3)-1), 1e-12)
}

// The greatest strain at the bore, times E, is the allowable stress: Clavarino's
// rule for closed ends, Birnie's for open ones.
func TestBhandariStrain(t *testing.T) {
	const ν = 0.27
	for _, row := range []struct {
		where        string
		bore, t, p   float64 // mm, mm, MPa
		closed       bool
		want, within float64 // MPa, relative
	}{
		// the book prints 30 mm, rounded up from 29.623, so that the digits are arithmetic
		{"ex. 22.4, Clavarino", 250, 29.623, 15, true, 340. / 5, 1e-4},
		{"ex. 22.5, Birnie", 100, 7.285750, 12, false, 230 / 2.5, 1e-6},
	} {
		c := shell.Cylinder{InsideRadius: row.bore / 2000, Thickness: row.t / 1000}
		hoop, radial, axial, err := c.LameStress(row.p*mpa, 0, c.InsideRadius)
		must(t, hoop, err)
		if !row.closed {
			axial = 0
		}
		checktest.Close(t, row.where, (hoop-ν*(radial+axial))/mpa, row.want, row.within)
	}
}
