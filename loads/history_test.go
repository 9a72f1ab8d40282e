package loads_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
)

// A rocket's flight marched in steps of 5 ms (computed): water of 1.5 m falling to
// nothing in 30 s, 300 to 120 kg, thrust 6 kN rising to 12 kN at 12 s and falling
// to 9 kN, drag area 0.0629 m2. The highest head is neither at the start, nor
// where the load factor or the dynamic pressure peaks; with a regulator that
// holds 2 MPa absolute the highest difference comes at burnout.
func TestGoverningInstant(t *testing.T) {
	const H, ρ0, p0, dt = 8434.5, 1.225, 101325, 0.005 // scale height, air and pressure on the ground
	in := tank{R: 0.1, length: 1.5, aft: flat(), forward: flat()}
	keep := func(most, when *float64, now, at float64) {
		if now > *most {
			*most, *when = now, at
		}
	}
	var v, z, head, headAt, n, nAt, q, qAt, gauge, gaugeAt float64
	for i := 0; i < 6000; i++ {
		at := float64(i) * dt
		mass, thrust := 300-6*at, 6000+500*at
		if at > 12 {
			thrust = 12000 - 3000*(at-12)/18
		}
		dynamic := 0.5 * ρ0 * math.Exp(-z/H) * v * v
		sensed := (thrust - 0.0629*dynamic) / (mass * g0)
		outside := p0 * math.Exp(-z/H)
		s := state(t, in, 2e6-outside, 1000, 1000*in.Volume()*(1-at/30), sensed, 0)
		p, _ := s.HighestPressure(in.Bounds())
		if i == 0 {
			checktest.Close(t, "head at the start", p-(2e6-p0), 30.00e3, 1e-6)
			checktest.Printed(t, "difference at the start, MPa", p/1e6, "1.92868")
		}
		keep(&head, &headAt, p-s.UllagePressure, at)
		keep(&n, &nAt, sensed, at)
		keep(&q, &qAt, dynamic, at)
		keep(&gauge, &gaugeAt, p, at)
		v += (sensed - 1) * g0 * dt
		z += v * dt
	}
	// the air's scale height is not stated: within 0.5 per cent
	for _, row := range []struct {
		name          string
		got, at       float64
		want, instant float64
	}{
		{"head", head, headAt, 40.157e3, 8.345},
		{"load factor", n, nAt, 4.309, 12},
		{"dynamic pressure", q, qAt, 87.96e3, 24.7},
		{"difference", gauge, gaugeAt, 1.96908e6, 30},
	} {
		checktest.Close(t, row.name, row.got, row.want, 5e-3)
		checktest.Close(t, row.name+", instant", row.at, row.instant, 5e-3)
	}
}
