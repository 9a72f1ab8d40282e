package shell_test

import (
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

// Hand calculation from the formula as recalled (Hill): p = (2/√3) σ_y ln(R_o/R) by von
// Mises, σ_y ln(R_o/R) by Tresca; ln by Simpson's rule on dr/r over the wall in eight
// strips, as the wall's equilibrium σ_y dr/r gives it; 2/√3 = 1.15470. In mm and MPa:
//
//	R 100, t 100, σ_y 200: ln 2 = 0.69315, Tresca 138.63, von Mises 160.07 (160.075)
//	R 150, t 6, σ_y 250: ln 1.04 = 0.039221, Tresca 9.8052, von Mises 11.322
//	R 500, t 2, σ_y 300: ln 1.004 = 0.0039920, Tresca 1.1976, von Mises 1.3829
func TestCollapsePressuresByHand(t *testing.T) {
	for _, row := range []struct {
		R, t, yield   float64 // [mm], [mm], [MPa]
		mises, tresca string  // [MPa]
	}{{100, 100, 200, "160.075", "138.63"}, {150, 6, 250, "11.322", "9.8052"}, {500, 2, 300, "1.3829", "1.1976"}} {
		c := shell.Cylinder{InsideRadius: row.R / 1000, Thickness: row.t / 1000}
		mises, tresca, err := c.CollapsePressures(row.yield * mpa)
		checktest.Printed(t, "von Mises", must(t, mises, err)/mpa, row.mises)
		checktest.Printed(t, "Tresca", tresca/mpa, row.tresca)
	}
}
