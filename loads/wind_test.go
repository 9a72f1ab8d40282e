package loads_test

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// By hand (computed): 20 m/s give 245 Pa; on 0.4 m with the coefficient 1.2 that is
// 117.6 N/m, over 1.5 m 176.4 N and 132.3 N m. Twice the gust is four times the load.
func TestWindByHand(t *testing.T) {
	v, m := loads.Wind(20, 1.2, 0.4, 0.5, 2)
	checktest.Printed(t, "shear, N", v, "176.4")
	checktest.Printed(t, "moment, N m", m, "132.3")
	v2, m2 := loads.Wind(40, 1.2, 0.4, 0.5, 2)
	checktest.Close(t, "shear at twice the gust", v2, 4*v, 1e-12)
	checktest.Close(t, "moment at twice the gust", m2, 4*m, 1e-12)
	if v, m := loads.Wind(20, 1.2, 0.4, 2, 2); v != 0 || m != 0 {
		t.Errorf("at the top %g N, %g N m", v, m)
	}
	for _, bad := range [][5]float64{{20, 1.2, 0.4, 2.1, 2}, {20, 0, 0.4, 0, 2}, {20, 1.2, math.NaN(), 0, 2}} {
		if v, m := loads.Wind(bad[0], bad[1], bad[2], bad[3], bad[4]); !math.IsNaN(v) || !math.IsNaN(m) {
			t.Errorf("%v: %g N, %g N m", bad, v, m)
		}
	}
}
