package shell_test

// Source: companion to a strength-of-materials text, chapter 15, problems 15.1
// to 15.10, pages 351 to 355 (inputs and method read; the printed answers are
// not shown there, the numbers are arithmetic on them). Mean diameters.

import (
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

func TestCompanionGrowth(t *testing.T) {
	for _, row := range []struct {
		where          string
		d, l, t, p     float64 // m, m, mm, MPa
		e, ν           float64 // GPa
		hoop, axial    string  // MPa
		dD, dL, volume string  // cm, cm, cm3; "" not asked
	}{
		{"15.1", 0.8, 3, 10, 2.5, 200, 0.25, "100", "50", "0.035", "0.0375", "1508.0"},
	} {
		c := mean(row.d, row.t/1000)
		c.Length = row.l
		hoop, err := c.HoopStress(row.p * mpa)
		must(t, hoop, err)
		axial, err := c.LongitudinalStress(c.ClosedEndForce(row.p * mpa))
		must(t, axial, err)
		checktest.Printed(t, row.where+", hoop", hoop/mpa, row.hoop)
		checktest.Printed(t, row.where+", axial", axial/mpa, row.axial)
		g, err := c.Growth(hoop, axial, shell.Elastic{Modulus: row.e * 1e9, Poisson: row.ν})
		must(t, 0, err)
		checktest.Printed(t, row.where+", diameter", g.Diameter*100, row.dD)
		checktest.Printed(t, row.where+", length", g.Length*100, row.dL)
		checktest.Printed(t, row.where+", volume", g.Volume*1e6, row.volume)
	}
}

func TestCompanionStress(t *testing.T) {
	c := mean(1, 0.015)
	hoop, err := c.HoopStress(1.5 * mpa)
	checktest.Printed(t, "15.6, hoop", must(t, hoop, err)/mpa, "50")
	axial, err := c.LongitudinalStress(c.ClosedEndForce(1.5 * mpa))
	checktest.Printed(t, "15.6, axial", must(t, axial, err)/mpa, "25")
	σ, err := meanSphere(0.8, 0.010).Stress(5 * mpa)
	checktest.Printed(t, "15.10, sphere", must(t, σ, err)/mpa, "100")
}

// Two problems in which the weak girth seam governs although the hoop stress is
// twice the axial one.
func TestCompanionGirthGoverns(t *testing.T) {
	for _, row := range []struct {
		where    string
		d, t, p  float64 // m, mm, MPa
		el, eg   float64
		longOnly float64 // diameter that the long seam alone allows [m]
	}{
		{"15.3", 1.92, 20, 2, 0.90, 0.40, 2.16},
		{"15.5, pressure given", 1.08, 15, 2, 0.7, 0.3, 1.26},
		{"15.5, diameter given", 1.5, 15, 1.44, 0.7, 0.3, 1.75},
	} {
		c := mean(row.d, row.t/1000)
		axial, err := c.LongitudinalStress(c.ClosedEndForce(row.p * mpa))
		checktest.Close(t, row.where+", girth at its limit", must(t, axial, err)/row.eg, 120*mpa, 1e-12)
		hoop, err := c.HoopStress(row.p * mpa)
		if must(t, hoop, err)/row.el >= 120*mpa {
			t.Errorf("%s: the long seam governs, hoop %g MPa", row.where, hoop/mpa)
		}
		wide := mean(row.longOnly, row.t/1000)
		hoop, err = wide.HoopStress(row.p * mpa)
		checktest.Close(t, row.where+", long seam at its limit", must(t, hoop, err)/row.el, 120*mpa, 1e-12)
		governs, err := c.GirthGoverns(row.p*mpa, row.p*mpa, 0, 120*mpa, row.el, row.eg)
		if err != nil || !governs {
			t.Errorf("%s: girth governs: %v, %v", row.where, governs, err)
		}
	}
}
