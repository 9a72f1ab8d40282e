package loads_test

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// An undamped mass on a spring, marched in time after a step of the load from 1 to
// 4 (computed), peaks at 7; after a cut-off from 5.5 to 0 it swings to −5.5. With
// 5 % of damping the factor is 1 + exp(−π ζ/√(1 − ζ²)) = 1.854.
func TestStepByMarch(t *testing.T) {
	march := func(before, after, ζ float64) float64 {
		x, v, most := before, 0.0, before
		const dt = 1e-5
		for range 400000 { // with a circular frequency of 1
			v += (after - x - 2*ζ*v) * dt
			x += v * dt
			if math.Abs(x-before) > math.Abs(most-before) {
				most = x
			}
		}
		return most
	}
	for _, row := range []struct{ before, after, ζ, D float64 }{{1, 4, 0, 2}, {5.5, 0, 0, 2}, {1, 4, 0.05, 1.8545}} {
		n, err := loads.StepFactor(row.before, row.after, row.D)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "peak", march(row.before, row.after, row.ζ), n, 1e-4)
	}
	n, _ := loads.StepFactor(1, 4, 1)
	checktest.Close(t, "slow change", n, 4, 1e-15)
}

// The usual head, P = p_u + ρ (g + a) h (read: textbook companion, ex. 4.2): water
// of 0.1 m in a tube that is pushed up with 100 m/s2 puts 10.981 kPa on the piston.
func TestAcceleratedTube(t *testing.T) {
	s := state(t, tank{R: 0.02, length: 0.2, aft: flat(), forward: flat()}, 0, 1000, 1000*math.Pi*0.02*0.02*0.1, 1+100/g0, 0)
	p, _ := s.HighestPressure(0, 0.2)
	checktest.Printed(t, "gauge at the piston, kPa", p/1000, "10.981")
}

func TestStepRange(t *testing.T) {
	for _, bad := range [][3]float64{{1, 4, 0.9}, {1, 4, 2.1}, {1, 4, math.NaN()}, {math.NaN(), 4, 1.5}, {1, math.Inf(1), 1.5}} {
		if n, err := loads.StepFactor(bad[0], bad[1], bad[2]); err == nil || !math.IsNaN(n) {
			t.Errorf("%v is taken: %g", bad, n)
		}
	}
}
