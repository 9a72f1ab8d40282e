package assess

import (
	"math"
	"testing"

	"proofsheet/shell/revolution"
)

// TestSlenderOnTheAxis takes the neighbour's radius over wall where the axis has none,
// from either side, and never that of another part.
func TestSlenderOnTheAxis(t *testing.T) {
	s := []revolution.Station{{Segment: 0, Slender: math.NaN()}, {Segment: 0, Slender: 50}, {Segment: 1, Slender: 40}, {Segment: 1, Slender: math.NaN()}, {Segment: 2, Slender: math.NaN()}}
	for i, want := range []float64{50, 50, 40, 40} {
		if got := slenderAt(s, i); got != want {
			t.Errorf("station %d: %g, want %g", i, got, want)
		}
	}
	if got := slenderAt(s, 4); !math.IsNaN(got) {
		t.Errorf("a part of one station on the axis: %g, want not a number", got)
	}
}
