package loads_test

// Heads that stand in the tank, by equilibrium.

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// Beside an inward head no pressure pulls along the wall but that of its crown.
func TestBesideInwardHead(t *testing.T) {
	in := tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true, forward: ellipsoid(0.2, 0.1)}
	s := state(t, in, 1e5, 1000, 30, 2, 0)
	for _, z := range []float64{0, 0.04, 0.0999} {
		f := must2(t, s, z, body(in, loads.Aft))
		checktest.Close(t, "as at the crown", total(f), 1e5*math.Pi*0.04, 1e-9)
	}
}

// An inward head is pushed in by its rim's pressure less the weight of what the
// dome displaces; with the cylinder's pull it balances what the tank holds.
func TestInwardHeadForce(t *testing.T) {
	in := tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true, forward: ellipsoid(0.2, 0.1)}
	for _, mass := range []float64{0, 2.5, 40} { // dry, below the crown, above it
		s := state(t, in, 1e5, 1000, mass, 2, 0)
		level := 0.0
		if mass > 0 {
			level = math.Min(s.SurfaceZ(), 0.1)
		}
		dome := math.Pi*0.04*level - in.VolumeBelow(level) // within the dome, below the level
		want := -(s.PressureAxis(0)*math.Pi*0.04 - 2*g0*1000*dome)
		V, err := s.InwardHeadForce(1e-12)
		checktest.Close(t, "rim", must(t, V, err), want, 1e-5)
		// balance: dome and cylinder together carry the weight and the gas above
		f := must2(t, s, 0, body(in, loads.Aft))
		checktest.Close(t, "balance", V+f.Ullage+f.LiquidMost+1, -2*g0*mass+1, 1e-5*math.Abs(want))
	}
	flat, tilted := state(t, in, 1e5, 1000, 40, 2, 0), state(t, in, 1e5, 1000, 40, 2, 0.3)
	a, err := flat.InwardHeadForce(0.03)
	must(t, a, err)
	b, err := tilted.InwardHeadForce(0.03)
	checktest.Close(t, "a tilt clear of the head leaves the force", must(t, b, err), a, 1e-6)
	if V, err := flat.InwardHeadForce(0.3); err == nil || !math.IsNaN(V) {
		t.Errorf("no head at 0.3 m: %g, %v", V, err)
	}
}

// A free plane that cuts the dome, and a head that hangs in the tank from forward with
// the liquid pressed upon it: the pressure summed over the face, point by point.
func TestInwardHeadCutByTheLevel(t *testing.T) {
	sum := func(p func(z, x float64) float64, height func(r float64) float64) float64 {
		const rings, parts = 400, 400
		force := 0.0
		for i := range rings {
			r := 0.2 * (float64(i) + 0.5) / rings
			for k := range parts {
				θ := 2 * math.Pi * (float64(k) + 0.5) / parts
				force -= p(height(r), r*math.Cos(θ)) * r * (0.2 / rings) * (2 * math.Pi / parts)
			}
		}
		return force
	}
	dome := func(r float64) float64 { return 0.1 * math.Sqrt(1-r*r/0.04) }
	in := tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true, forward: ellipsoid(0.2, 0.1)}
	for _, mass := range []float64{3, 6, 9} {
		s := state(t, in, 1e4, 1000, mass, 2, 0.6)
		V, err := s.InwardHeadForce(1e-9)
		checktest.Close(t, "tilted", must(t, V, err), sum(s.PressureAt, dome), 1e-3) // of both rules
	}
	for _, mass := range []float64{3, 40} { // level below and above the crown
		s := state(t, turned{in}, 1e4, 1000, mass, -2, 0)
		V, err := s.InwardHeadForce(-1e-9)
		checktest.Close(t, "from forward", must(t, V, err), sum(s.PressureAt, func(r float64) float64 { return -dome(r) }), 1e-3)
	}
}
