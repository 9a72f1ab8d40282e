package loads

import (
	"math"
	"testing"
)

// The greatest value is looked for between two stations only: pieces beyond them do not count.
func TestLargestBetween(t *testing.T) {
	f := func(z float64) float64 { return -(z - 1.5) * (z - 1.5) }
	for _, row := range []struct{ z1, z2, at float64 }{{0, 3, 1.5}, {1.2, 1.4, 1.4}, {2.1, 2.9, 2.1}, {1.1, 2.5, 1.5}} {
		most, at := largest([]float64{0, 1, 2, 3}, row.z1, row.z2, f)
		if math.Abs(at-row.at) > 1e-6 || math.Abs(most-f(row.at)) > 1e-9 {
			t.Errorf("%g to %g: %g at %g, want it at %g", row.z1, row.z2, most, at, row.at)
		}
	}
}
