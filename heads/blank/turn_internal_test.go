package blank

import (
	"math"
	"testing"
)

// An angle of a whole turn less rounding is none: a seam at its own clock is not a turn away from itself.
func TestForward(t *testing.T) {
	for _, row := range []struct{ a, want float64 }{
		{0, 0}, {2 * math.Pi, 0}, {-1e-13, 0}, {2*math.Pi - 1e-13, 0}, {-math.Pi / 2, 1.5 * math.Pi}, {7 * math.Pi, math.Pi}, {-1e-9, 2*math.Pi - 1e-9},
	} {
		if got := forward(row.a); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("%g: %g, want %g", row.a, got, row.want)
		}
	}
	if !math.IsNaN(forward(math.NaN())) {
		t.Error("an angle of no number")
	}
}
