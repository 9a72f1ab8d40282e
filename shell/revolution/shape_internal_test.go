package revolution

import (
	"math"
	"testing"
)

// Five points integrate every power up to the ninth, and the tenth no more.
func TestGauss(t *testing.T) {
	for power := range 11 {
		sum := 0.0
		for i, x := range abscissae {
			sum += weights[i] * math.Pow(x, float64(power))
		}
		if off := math.Abs(sum*float64(power+1) - 1); (off < 1e-14) != (power < 10) {
			t.Errorf("power %d: off by %.2g", power, off)
		}
	}
}

// Each function of Hermite has one of value, slope and curvature at one end, and
// its derivatives are its own.
func TestHermite(t *testing.T) {
	for end, x := range [2]float64{0, 1} {
		b := hermite(x)
		for i := range 6 {
			for k, got := range [3]float64{b.h[i], b.d[i], b.dd[i]} {
				want := 0.0
				if i == 3*end+k {
					want = 1
				}
				if math.Abs(got-want) > 1e-12 {
					t.Errorf("function %d, derivative %d at %g: %g", i, k, x, got)
				}
			}
		}
	}
	const h = 1e-6
	a, b, m := hermite(0.3-h), hermite(0.3+h), hermite(0.3)
	for i := range 6 {
		if math.Abs((b.h[i]-a.h[i])/(2*h)-m.d[i]) > 1e-8 || math.Abs((b.d[i]-a.d[i])/(2*h)-m.dd[i]) > 1e-8 {
			t.Errorf("function %d: derivatives %g, %g", i, m.d[i], m.dd[i])
		}
	}
}
