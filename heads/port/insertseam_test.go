package port_test

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// A plate flush on one face, form of BS 7910 Annex D (recalled), by hand: T/t = 2 gives 3/(1 + 2.828427) = 0.783612, over
// 0.91 at ν 0.3 0.861112; T/t = 4 gives 9/9, the most of any: 3 gives 6/6.196152 = 0.968343, 6 would give 15/15.696938 =
// 0.955600 and is taken as 1. No step, no bending.
func TestInsertBending(t *testing.T) {
	for _, row := range []struct {
		T, ν float64
		want string
	}{{1, 0.3, "0"}, {2, 0, "0.783612"}, {2, 0.3, "0.861112"}, {3, 0, "0.968343"}, {4, 0, "1.000000"}, {6, 0, "1.000000"}, {60, 0, "1.000000"}} {
		got, err := port.InsertBending(3*mm, row.T*3*mm, row.ν)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "step", got, row.want)
	}
	for i := range 200 {
		x := 1 + float64(i)/50
		if a, _ := port.InsertBending(1, x, 0.3); a > 1/0.91+1e-12 {
			t.Errorf("T/t %g: %g, over the most", x, a)
		}
	}
	for name, bad := range map[string][3]float64{"thinner": {1, 0.9, 0.3}, "no wall": {0, 1, 0.3}, "NaN": {1, math.NaN(), 0.3}, "Poisson": {1, 2, 0.6}} {
		if v, err := port.InsertBending(bad[0], bad[1], bad[2]); err == nil || !math.IsNaN(v) {
			t.Errorf("%s: %g, %v", name, v, err)
		}
	}
}
