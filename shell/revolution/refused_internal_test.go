package revolution

import (
	"math"
	"strings"
	"testing"
)

// A pivot of nothing is taken as a little above: the signs of the others still count the negative eigenvalues, here ±1.
func TestPivotOfNothing(t *testing.T) {
	b := newBand(2, 1)
	b.a = []float64{0, 1, 0, 0}
	if n := b.ldl(); n != 1 {
		t.Errorf("%d negative eigenvalues of the two ±1", n)
	}
}

// More waves than can be counted are an error, never left out unsaid.
func TestTooManyWaves(t *testing.T) {
	s := &search{}
	if err := s.try(waveMost + 1); err == nil || !strings.Contains(err.Error(), "1000 waves") {
		t.Errorf("%v", err)
	}
}

// A diagonal that is not above zero is a base that buckles.
func TestHoldRefuses(t *testing.T) {
	for _, d := range []float64{0, -1, math.NaN()} {
		p := newPencil(1, 1)
		p.k.a[0] = d
		if err := p.hold([]bool{false}); err != errBase {
			t.Errorf("%g: %v", d, err)
		}
		if err := p.hold([]bool{true}); err != nil {
			t.Errorf("%g, held: %v", d, err)
		}
	}
}
