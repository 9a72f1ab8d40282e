package heads

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
)

// EN 13445-3 junction factor b: Dc/e 100 and 200 at 30, 45 and 60 degrees:
// computed from the form read in a published clause calculation.
func TestJunctionFactor(t *testing.T) {
	for _, row := range []struct {
		slender, α float64
		want       string
	}{{100, 30, "0.778"}, {100, 45, "1.373"}, {100, 60, "2.241"}, {200, 30, "1.162"}, {200, 45, "2.003"}, {200, 60, "3.232"}} {
		checktest.Printed(t, "b", junctionFactor(row.slender, row.α*math.Pi/180), row.want)
	}
}

// EN 13445-3 p_b with f_b = σ_y/1.5, crown radius = diameter 1000, knuckle 100 mm, σ_y
// 250 MPa, in MPa at three D/t: computed from the recalled form, which an independent
// recollection of a published design equation (coefficient 80) meets within 0.1 %.
func TestKnuckleBuckling(t *testing.T) {
	for _, row := range []struct {
		slender float64
		want    string
		other   float64
	}{{600, "0.2034", 0.2036}, {1000, "0.0945", 0.0946}, {1500, "0.0515", 0.0515}} {
		got := Dish{D: 1, L: 1, R: 0.1, T: 1 / row.slender}.buckling() * 250 / 1.5
		checktest.Printed(t, "p_b", got, row.want)
		checktest.Close(t, "the other form", got, row.other, 1.2e-3)
	}
}

// Shield-Drucker over the European p_y at f = σ_y/1.5: computed.
func TestLimitOverEuropeanYield(t *testing.T) {
	for _, row := range []struct {
		L, r, eR float64
		want     string
	}{{1, 0.06, 0.01, "1.28"}, {1, 0.1, 0.01, "1.19"}, {1, 0.1, 0.005, "1.18"}, {1, 0.1, 0.002, "0.98"}, {0.8, 0.154, 0.005, "1.24"}} {
		q, err := ShieldDrucker(row.eR, row.r, row.L)
		if err != nil {
			t.Fatal(err)
		}
		py := row.eR * row.L / (1.5 * beta(row.eR, row.r) * (0.75*row.L + 0.2))
		checktest.Printed(t, "p_SD/p_y", q/py, row.want)
	}
}
