package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// By hand: 1 MPa on a radius of 100 mm: 1.5·31 416 = 47 124 N; one fillet of 3 mm at 100
// MPa: 2π 100·3·49 = 92 363 N, two the double; so at p 1.960 MPa one fillet is used up.
func TestRimWeldByHand(t *testing.T) {
	one := heads.CheckRimWeld("aft", 1e6, 0.1, 3e-3, 1, 100e6)
	checktest.Printed(t, "thrust", one.Demand.Value, "47124")
	checktest.Printed(t, "one fillet", one.Capacity.Value, "92363")
	checktest.Printed(t, "two", heads.CheckRimWeld("aft", 1e6, 0.1, 3e-3, 2, 100e6).Capacity.Value, "184726")
	for p, want := range map[float64]check.Status{1.959e6: check.Satisfied, 1.961e6: check.NotSatisfied, math.NaN(): check.NotAssessed} {
		if got := heads.CheckRimWeld("aft", p, 0.1, 3e-3, 1, 100e6); got.Status() != want {
			t.Errorf("%g: %v", p, got.Status())
		}
	}
	for _, bad := range []check.Result{heads.CheckRimWeld("aft", 1e6, 0.1, 0, 1, 100e6), heads.CheckRimWeld("aft", 1e6, 0.1, 3e-3, 0, 100e6),
		heads.CheckRimWeld("aft", 1e6, math.NaN(), 3e-3, 1, 100e6), heads.CheckRimWeld("aft", 1e6, 0.1, 3e-3, 1, math.NaN()), heads.CheckRimWeld("aft", 1e6, 0.1, 3e-3, 3, 100e6)} {
		if bad.Status() != check.NotAssessed {
			t.Errorf("%v: %v", bad.Inputs, bad.Status())
		}
	}
	// force × 3, length × 7: both forces × 3
	wide := heads.CheckRimWeld("aft", 1e6*3/49, 0.7, 21e-3, 1, 100e6*3/49)
	checktest.Close(t, "units, demand", wide.Demand.Value, 3*one.Demand.Value, 1e-12)
	checktest.Close(t, "units, capacity", wide.Capacity.Value, 3*one.Capacity.Value, 1e-12)
}
