package shell_test

// Single values from published texts, each named with how it was obtained.

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// Source: solved exercise pages on thin and thick cylinders (read), and on the
// wall by Tresca and von Mises (inputs read, numbers arithmetic).
func TestExercisePages(t *testing.T) {
	σ, err := mean(2, 0.011).HoopStress(1.65 * mpa)
	checktest.Printed(t, "D 2 m, 1.65 MPa, 11 mm", must(t, σ, err)/mpa, "150")

	c := shell.Cylinder{InsideRadius: 0.2, Thickness: 0.05}
	σ, _, _, err = c.LameStress(25*mpa, 12.4*mpa, c.InsideRadius)
	checktest.Printed(t, "Lamé, 25 MPa inside, 12.4 outside", must(t, σ, err)/mpa, "45")

	const R, p, limit = 500.0, 4.0, 300. / 3 // mm, MPa, MPa
	checktest.Close(t, "Tresca wall of 20 mm", shell.Tresca(p*R/20, p*R/40), limit, 1e-12)
	checktest.Close(t, "von Mises wall of 17.32 mm", shell.VonMises(p*R/17.32, p*R/34.64), limit, 1e-4)

	// a mechanics-of-structures companion, ex. 8.30 (inputs read, arithmetic)
	σ, err = mean(1, 0.012).HoopStress(2 * mpa)
	checktest.Printed(t, "ex. 8.30", must(t, σ, err)/mpa, "83.33")
}

// Source: Hibbeler, Mechanics of Materials, ex. 8.1 and 8.3, SI and US editions
// (inputs read by way of a companion; answers memory). Inside diameters, used as
// mean ones by the source.
func TestHibbeler(t *testing.T) {
	σ, err := mean(1.2, 0.012).HoopStress(2.80 * mpa)
	checktest.Printed(t, "8.1, cylinder", must(t, σ, err)/mpa, "140")
	σ, err = meanSphere(1.2, 0.012).Stress(5.60 * mpa)
	checktest.Printed(t, "8.1, sphere", must(t, σ, err)/mpa, "140")
	σ, err = mean(4*foot, 0.5*inch).HoopStress(417 * psi) // the book rounds 416.7 up
	checktest.Close(t, "8.1 in US units, cylinder", must(t, σ, err), 20e3*psi, 1e-3)
	σ, err = meanSphere(4*foot, 0.5*inch).Stress(833 * psi)
	checktest.Close(t, "8.1 in US units, sphere", must(t, σ, err), 20e3*psi, 1e-3)

	c := mean(1.2, 0.010)
	σ, err = c.HoopStress(0.450 * mpa)
	checktest.Printed(t, "8.3, hoop", must(t, σ, err)/mpa, "27.0")
	nx := c.ClosedEndForce(0.450 * mpa)
	σ, err = c.LongitudinalStress(nx)
	checktest.Printed(t, "8.3, axial", must(t, σ, err)/mpa, "13.5")
	// 200 kN of compression on top, over the area 2π·605·10 mm2 of the true mid-wall
	load := -200e3 / (2 * math.Pi * 0.605)
	σ, err = c.LongitudinalStress(load)
	checktest.Printed(t, "8.3, axial of 200 kN", -must(t, σ, err)/mpa, "5.261")
	σ, err = c.LongitudinalStress(nx + load)
	checktest.Printed(t, "8.3, net", must(t, σ, err)/mpa, "8.24")
}

// Source: Case, Chilver and Ross, Strength of Materials and Structures, ch. 6
// (page seen). Strains printed to three digits; growth of the diameter in cm.
func TestCaseChilverRoss(t *testing.T) {
	c, steel := mean(0.2, 0.005), shell.Elastic{Modulus: 200e9, Poisson: 0.3}
	g, err := c.Growth(70*mpa, 0, steel)
	must(t, 0, err)
	checktest.Printed(t, "open, strain", g.Hoop*1e3, "0.35")
	checktest.Printed(t, "open, diameter in cm", g.Diameter*100, "0.007")
	g, err = c.Growth(70*mpa, 35*mpa, steel)
	must(t, 0, err)
	checktest.Printed(t, "closed, strain", g.Hoop*1e3, "0.298")
	// 0.00596 is printed from the rounded strain; 0.00595 by arithmetic
	checktest.Close(t, "closed, diameter in cm", g.Diameter*100, 0.00596, 2e-3)
}

// Source: Megyesy, Pressure Vessel Handbook, example set of a shell and its
// heads (memory): 100 psi, R 48 in, S 17500 psi, E 0.85; the handbook rounds up
// to 0.325 in and 0.162 in.
func TestMegyesy(t *testing.T) {
	wall, err := shell.Cylinder{InsideRadius: 48 * inch}.RequiredThicknessHoop(100*psi, 17500*psi, 0.85)
	checktest.Close(t, "shell", must(t, wall, err)/inch, 0.325, 3.5e-3)
	wall, err = shell.Sphere{InsideRadius: 48 * inch}.RequiredThickness(100*psi, 17500*psi, 0.85)
	checktest.Close(t, "hemisphere", must(t, wall, err)/inch, 0.162, 3.5e-3)
}

// Source: 49 CFR 179.500-4 (read): P = 10 S (D² − d²)/[7 (D² + d²)] with S a
// third of the tensile strength U must be the pressure whose 0.7 share, by
// Lamé's bore stress, uses a third of U.
func TestCFR179(t *testing.T) {
	const S = 100 * mpa
	for _, y := range []float64{1.02, 1.1, 1.5} {
		c := shell.Cylinder{InsideRadius: 1, Thickness: y - 1}
		P := 10 * S * (y*y - 1) / (7 * (y*y + 1))
		σ, err := c.BoreHoopStress(0.7 * P)
		checktest.Close(t, "bore stress over S", must(t, σ, err)/S, 1, 1e-12)
	}
}

// Source: Towler and Sinnott, Chemical Engineering Design, 2013, p. 579 (read):
// hemisphere and cylinder grow alike at the wall ratio 7/17 for ν = 0.3.
func TestTowlerSinnott(t *testing.T) {
	const ν, R, wall, p = 0.3, 1.0, 0.01, 1 * mpa
	steel := shell.Elastic{Modulus: 200e9, Poisson: ν}
	cylinder, err := steel.Strain(p*R/wall, p*R/(2*wall))
	must(t, cylinder, err)
	thin := wall * 7 / 17
	sphere, err := steel.Strain(p*R/(2*thin), p*R/(2*thin))
	checktest.Close(t, "hoop strain", must(t, sphere, err), cylinder, 1e-12)
}

// A published solution that is wrong and stays as a warning: a tube problem of
// Budynas and Nisbett, as solved on an exercise page (read), gives −2.6 p at the
// bore under outside pressure for 300 by 200 mm. That is the ratio of pressure
// from inside; from outside it is −2 R_o²/(R_o² − R²) = −3.6.
func TestOutsidePressureAtTheBore(t *testing.T) {
	c := shell.Cylinder{InsideRadius: 0.1, Thickness: 0.05}
	inside, err := c.BoreHoopStress(1)
	checktest.Close(t, "pressure from inside", must(t, inside, err), 2.6, 1e-12)
	hoop, _, _, err := c.LameStress(0, 1, c.InsideRadius)
	checktest.Close(t, "pressure from outside", must(t, hoop, err), -3.6, 1e-12)
}

// A published sheet that does not reproduce: UFC 4-159-01N (read), a sphere of
// R 90 in at 1000 psi and S 23200 psi by t = 0.5 P R/(S − 0.25 P), prints 1.98 in;
// the formula it prints gives 1.9608.
func TestSphereOfHyperbaricSheet(t *testing.T) {
	// its formula is ours with 0.5 in place of 0.2: S moved by the difference
	wall, err := shell.Sphere{InsideRadius: 90 * inch}.RequiredThickness(1000*psi, (23200-0.15*1000)*psi, 1)
	if checktest.Close(t, "formula as printed", must(t, wall, err)/inch, 1.9608, 1e-4); math.Abs(wall/inch-1.98) < 0.01 {
		t.Error("the sheet's 1.98 in would reproduce")
	}
}
