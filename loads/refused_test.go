package loads_test

// Insides and loads that give no state, by the name of what is wrong; and cuts that no published case has.

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// odd is a tank of which something is changed.
type odd struct {
	tank
	radii  func(z float64) (inner, outer float64)
	volume float64
}

func (o odd) Radii(z float64) (inner, outer float64) {
	if o.radii != nil {
		return o.radii(z)
	}
	return o.tank.Radii(z)
}

func (o odd) Volume() float64 {
	if o.volume != 0 {
		return o.volume
	}
	return o.tank.Volume()
}

func TestInsidesRefused(t *testing.T) {
	in := twin()
	liquid := loads.Liquid{Density: 1000, Mass: 50}
	for _, volume := range []float64{math.NaN(), -1} {
		s, err := loads.NewState(odd{tank: in, volume: volume}, 1e5, liquid, loads.Acceleration{Axial: 1})
		if s != nil || err == nil || !strings.Contains(err.Error(), "volume inside the tank") {
			t.Errorf("volume %g: %v", volume, err)
		}
	}
	// A wall of 10 km where the volume says 0.2 m: Newton's steps of nothing never arrive.
	wide := odd{tank: in, radii: func(float64) (float64, float64) { return 0, 1e4 }}
	z, err := loads.LevelForVolume(wide, 0.05)
	checktest.RefusedNumber(t, "volume and radius apart", z, err, "no level found")
	// A wall of no known radius, the liquid tilted.
	c := tank{R: 0.2, length: 0.6, aft: cone(0.2, 0.2), forward: flat()}
	hole := odd{tank: c, radii: func(z float64) (float64, float64) {
		if z > -0.15 && z < 0.1 {
			return 0, math.NaN()
		}
		return c.Radii(z)
	}}
	if _, err := loads.NewState(hole, 1e5, loads.Liquid{Density: 1000, Mass: 5}, loads.Acceleration{Axial: 1, Lateral: 1}); err == nil || !strings.Contains(err.Error(), "not a number") {
		t.Errorf("a hole in the wall: %v", err)
	}
	// A head that stands in the whole tank leaves no cut clear of it.
	ring := odd{tank: tank{R: 0.2, length: 0.6, aft: flat(), forward: flat()}, radii: func(float64) (float64, float64) { return 0.1, 0.2 }}
	s := state(t, ring, 1e5, 1000, 0, 1, 0)
	V, err := s.InwardHeadForce(0.3)
	checktest.RefusedNumber(t, "head all along", V, err, "no station clear")
	if f, err := s.FreeBody(0.3, body(ring.tank, loads.Aft)); err == nil || !strings.Contains(err.Error(), "no station clear") || f != (loads.Forces{}) {
		t.Errorf("%+v, %v", f, err)
	}
}

// A sphere of one smooth piece, half full and tilted: the plane passes its centre, and at the deepest point of the wall
// p = p_u + ρ g0 R √(n_x² + n_y²).
type ball struct{ R float64 }

func (b ball) Bounds() (lo, hi float64)           { return -b.R, b.R }
func (b ball) Breaks() []float64                  { return nil }
func (b ball) Radii(z float64) (float64, float64) { return 0, math.Sqrt(math.Max(0, b.R*b.R-z*z)) }
func (b ball) Volume() float64                    { return 4 * math.Pi * b.R * b.R * b.R / 3 }
func (b ball) VolumeBelow(z float64) float64 {
	h := math.Min(math.Max(z+b.R, 0), 2*b.R)
	return math.Pi * h * h * (b.R - h/3)
}

func TestTiltedBall(t *testing.T) {
	b := ball{0.3}
	s := state(t, b, 1e5, 1000, 1000*b.Volume()/2, 3, 4)
	checktest.Close(t, "deepest", s.PressureWorst(-0.3*3/5), 1e5+1000*g0*0.3*5, 1e-6)
	checktest.Close(t, "centre", s.PressureAt(0, 0)-1e5+1, 1, 1e-2) // to 1e-6 of the depth
	// Aft of the centre it is a wedge of the sphere, of the angle π − acos 3/5.
	checktest.Close(t, "aft", s.MassAft(0), 1000*b.Volume()*(math.Pi-math.Acos(0.6))/(2*math.Pi), 1e-6)
}

// Pressed forward the liquid lies as it does pressed aft in the tank turned round, tilt and all.
func TestTiltPressedForward(t *testing.T) {
	in := twin()
	aft := state(t, in, 1e5, 1000, 60, 2, 0.3)
	forward := state(t, turned{in}, 1e5, 1000, 60, -2, 0.3)
	for _, z := range []float64{-0.05, 0.2, 0.4, 0.45, 0.5} {
		checktest.Close(t, "mass", forward.MassForward(-z), aft.MassAft(z), 1e-9)
		checktest.Close(t, "pressure", forward.PressureWorst(-z), aft.PressureWorst(z), 1e-9)
	}
}

// The same in a cone, where the plane cuts the wall well within its piece.
func TestTiltInAConePressedForward(t *testing.T) {
	in := tank{R: 0.2, length: 0.6, aft: cone(0.2, 0.4), forward: flat()}
	for _, level := range []float64{-0.3, -0.2, -0.12} {
		mass := 1000 * in.VolumeBelow(level)
		aft, forward := state(t, in, 1e5, 1000, mass, 2, 0.3), state(t, turned{in}, 1e5, 1000, mass, -2, 0.3)
		for _, z := range []float64{-0.35, -0.25, level, -0.1} {
			checktest.Close(t, "mass", 1+forward.MassForward(-z), 1+aft.MassAft(z), 1e-9)
			checktest.Close(t, "pressure", forward.PressureWorst(-z), aft.PressureWorst(z), 1e-9)
		}
	}
}

// What stands on the free side of a cut forward of the forward joint: 2 kg, 0.03 m beyond it, at a lateral factor of 0.5.
func TestForwardHeadAcross(t *testing.T) {
	in := twin()
	s := state(t, in, 1e5, 1000, 0, 0, 0.5)
	b := body(in, loads.Both)
	b.Masses = []loads.PointMass{{Z: 1.28, Mass: 2}, {Z: 0.5, Mass: 100}}
	f := must2(t, s, 1.25, b)
	checktest.Close(t, "moment", f.Moment, 0.5*g0*2*0.03, 1e-12)
	checktest.Close(t, "shear", f.Shear, 0.5*g0*2, 1e-12)
}

// A history of which an instant cannot be had has no peaks, the vertex between two rows included.
func TestPeaksOfMissingInstants(t *testing.T) {
	for name, fails := range map[string]func(row int, part float64) bool{
		"first row": func(row int, part float64) bool { return row == 0 && part == 0 },
		"middle":    func(_ int, part float64) bool { return part == 0.5 },
		"vertex":    func(_ int, part float64) bool { return part != 0 && part != 0.5 },
	} {
		peaks, err := loads.Peaks(2, func(row int, part float64) ([]float64, error) {
			if fails(row, part) {
				return nil, errors.New("no load at this instant")
			}
			x := float64(row) + part
			return []float64{x * (1.2 - x)}, nil // greatest at 0.6
		})
		if err == nil || !strings.Contains(err.Error(), "no load at this instant") || peaks != nil {
			t.Errorf("%s: %v, %v", name, peaks, err)
		}
	}
}

func TestSloshRefused(t *testing.T) {
	p, err := loads.Slosh{Radius: 0.2, Depth: math.NaN(), Acceleration: 9, Density: 800}.WallPressure(0.1, 0.01)
	checktest.RefusedNumber(t, "depth", p, err, "depth")
	in := twin()
	full := state(t, in, 1e5, 1000, 1000*in.Volume(), 1, 0)
	if _, err := full.SloshMode(); err == nil || !strings.Contains(err.Error(), "level does not stand in the tank") {
		t.Errorf("full: %v", err)
	}
	rest := state(t, in, 1e5, 1000, 60, 1, 0)
	if F, q, bound := rest.SloshForce(); F != 0 || q != 0 || bound || rest.SloshAmplitude() != 0 {
		t.Errorf("at rest: %g N, %g Pa, %v, %g m", F, q, bound, rest.SloshAmplitude())
	}
	swung, err := rest.Sloshing(0.01)
	if must(t, swung, err); swung.SloshAmplitude() != 0.01 {
		t.Errorf("amplitude %g", swung.SloshAmplitude())
	}
}

// Over a shallow curved bottom the pressure of the wave is taken even, and the tank hangs from its forward joint. By hand, with
// q = ρ a_x η π R over the whole depth: shear q u and moment q u²/2 of what is u below the cut, and the bottom's q R²/3.
func TestShallowSloshHung(t *testing.T) {
	in := twin()
	s := state(t, in, 1e5, 1000, 1000*in.VolumeBelow(0.05), 2, 0)
	swung, err := s.Sloshing(0.01)
	must(t, swung, err)
	if _, _, bound := swung.SloshForce(); !bound {
		t.Fatal("not over a shallow bottom")
	}
	q := 1000 * 2 * g0 * 0.01 * math.Pi * 0.2
	for _, row := range []struct{ z, u float64 }{{0.02, 0.12}, {0.3, 0.15}} {
		f := must2(t, swung, row.z, body(in, loads.Forward))
		checktest.Close(t, "shear", f.Shear, q*row.u, 1e-9)
		checktest.Close(t, "moment", f.Moment, q*row.u*(row.z+0.1-row.u/2)+q*0.04/3, 1e-9)
	}
}
