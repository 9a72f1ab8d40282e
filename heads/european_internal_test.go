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
