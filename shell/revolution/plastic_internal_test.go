package revolution

import (
	"math"
	"testing"
)

// The stress stays within yield, what flows is normal to the yield surface, and
// the moduli are its derivative.
func TestReturnToYield(t *testing.T) {
	y := yielding{e: 200, ν: 0.3, σy: 1}
	for _, ε := range []plane{{0.001, -0.002}, {0.01, 0.004}, {-0.02, 0.03}, {0.008, 0.008}, {0.3, -0.3}, {5, 2}} {
		σ, flow, ss, sθ, θθ := y.stress(ε)
		mises := math.Sqrt(σ[0]*σ[0] - σ[0]*σ[1] + σ[1]*σ[1])
		elastic := plane{(σ[0] - y.ν*σ[1]) / y.e, (σ[1] - y.ν*σ[0]) / y.e}
		for i := range 2 {
			if !(math.Abs(elastic[i]+flow[i]-ε[i]) < 1e-12) {
				t.Errorf("%v: elastic %v and flow %v do not add up", ε, elastic, flow)
			}
		}
		if flow == (plane{}) {
			if !(mises <= 1) {
				t.Errorf("%v: %g elastic beyond yield", ε, mises)
			}
		} else if !(math.Abs(mises-1) < 1e-9) || !(math.Abs(flow[0]*(2*σ[1]-σ[0])-flow[1]*(2*σ[0]-σ[1])) < 1e-9*math.Hypot(flow[0], flow[1])) {
			t.Errorf("%v: von Mises %g, flow %v", ε, mises, flow)
		}
		const h = 1e-7
		up, _, _, _, _ := y.stress(plane{ε[0] + h, ε[1]})
		down, _, _, _, _ := y.stress(plane{ε[0] - h, ε[1]})
		right, _, _, _, _ := y.stress(plane{ε[0], ε[1] + h})
		left, _, _, _, _ := y.stress(plane{ε[0], ε[1] - h})
		for i, pair := range [3][2]float64{{ss, up[0] - down[0]}, {sθ, up[1] - down[1]}, {θθ, right[1] - left[1]}} {
			if !(math.Abs(pair[0]-pair[1]/(2*h)) < 1e-4*y.e) {
				t.Errorf("%v: modulus %d is %g, difference %g", ε, i, pair[0], pair[1]/(2*h))
			}
		}
		if flow != (plane{}) {
			if d, want := y.dissipation(flow), flow[0]*σ[0]+flow[1]*σ[1]; !(math.Abs(d-want) < 1e-9*want) {
				t.Errorf("%v: dissipation %g, work %g", ε, d, want)
			}
		}
	}
}
