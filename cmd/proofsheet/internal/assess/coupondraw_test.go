package assess_test

import (
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// drawn returns the tank with the weld of its joint seam drawn by a deviate.
func drawn(t *testing.T, in *tank.Tank, z float64) *tank.Tank {
	t.Helper()
	out, err := in.WithNumbers(map[string]float64{"joint.seam.coupons": z})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// By hand: the eight coupons of the example have the ultimate 308.5 ± 7.67184 MPa; by
// vessel the long seam is allowed 0.85 of it over 3.5, limit or drawn.
func TestDrawnWeld(t *testing.T) {
	in := couponTank(t, "", "rule = \"flight\"", "rule = \"vessel\"")
	for _, row := range []struct {
		z    float64
		want string // MPa
	}{{0, "74.921"}, {1, "76.785"}, {-2, "71.195"}, {-10, "56.290"}} {
		capacity := find(t, sheet(t, drawn(t, in, row.z)), "cylinder/hoop@meop").Capacity.Value
		checktest.Printed(t, "drawn", capacity/1e6, row.want)
	}
	limit := find(t, sheet(t, in), "cylinder/hoop@meop").Capacity.Value
	checktest.Printed(t, "limit", limit/1e6, "66.809") // 0.85 275.097/3.5
	if s := find(t, sheet(t, drawn(t, in, 40)), "cylinder/hoop@meop"); s.Capacity.Value > 0.85*441e6/3.5*(1+1e-9) {
		t.Errorf("%g: the weld is stronger than its parent", s.Capacity.Value)
	}
}

// A strength that no metal has makes no tank; it is not clamped.
func TestDrawnBelowZero(t *testing.T) {
	in := couponTank(t, "")
	if _, err := assess.ChecksWithoutShell(drawn(t, in, -41)); err == nil || !strings.Contains(err.Error(), "joint.seam.coupons: the strength drawn, -41.00 deviations from the mean, is not above zero") {
		t.Errorf("%v", err)
	}
	// Yield scatters far, ultimate little: far up they cross.
	in = couponTank(t, coupons([2]float64{300, 180}, [2]float64{301, 220}, [2]float64{302, 190}, [2]float64{301, 210}, [2]float64{300, 195}, [2]float64{301, 205}))
	if _, err := assess.ChecksWithoutShell(drawn(t, in, 8)); err == nil || !strings.Contains(err.Error(), "yield drawn, 8.00 deviations from the mean, is above the ultimate") {
		t.Errorf("%v", err)
	}
}

// TestCouponScatter says how far a weld scatters, and refuses coupons that say nothing of it.
func TestCouponScatter(t *testing.T) {
	c, err := assess.CouponScatter(couponTank(t, ""), "seam")
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "ultimate", c.Ultimate.Mean/1e6, "308.5")
	checktest.Printed(t, "deviation", c.Ultimate.Deviation/1e6, "7.67184")
	if c, err = assess.CouponScatter(couponTank(t, coupons(alone...)), "seam"); err != nil || c.Yield.N != 0 {
		t.Errorf("%v, %+v", err, c.Yield)
	}
	same := [2]float64{300, 0}
	for name, file := range map[string]string{
		"same strength":     coupons(same, same, same),
		"not above zero":    coupons([2]float64{270, 0}, [2]float64{300, 0}, [2]float64{340, 0}),
		"normal population": clusters(300),
	} {
		in := couponTank(t, file)
		if _, err := assess.CouponScatter(in, "seam"); err == nil || !strings.Contains(err.Error(), name) || !strings.HasPrefix(err.Error(), "coupons.toml:") {
			t.Errorf("%s: %v", name, err)
		}
		if r := find(t, sheet(t, drawn(t, in, 0)), "cylinder/hoop@meop"); r.Status() != check.NotAssessed {
			t.Errorf("%s: %s", name, r.Status())
		}
	}
}

// clusters are coupons of two strengths, which are no normal population but
// enough for the lowest of them to be a limit.
func clusters(n int) string {
	var rows [][2]float64
	for i := range n {
		rows = append(rows, [2]float64{300 + 40*float64(i%2) + float64(i%7), 0})
	}
	return coupons(rows...)
}
