package loads_test

// Slosh in the loads of a state: the published force, its balance with the
// pressure on the wall, both supports, change of units and the edges of its range.

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// swinging is the tank of the worked force (computed: 81.88545 N): R 0.2 m, liquid
// of 800 kg/m3, 0.5 m deep over a flat bottom, a_x = 30 m/s2, η = 50 mm.
func swinging(t *testing.T, η float64) (tank, *loads.State) {
	t.Helper()
	in := tank{R: 0.2, length: 0.9, aft: flat(), forward: ellipsoid(0.2, 0.1)}
	s, err := state(t, in, 1e5, 800, 800*math.Pi*0.2*0.2*0.5, 30/g0, 0).Sloshing(η)
	if err != nil {
		t.Fatal(err)
	}
	return in, s
}

// The wall at the foot of a standing tank takes the whole force, and the moment that
// the integral of the same pressure has; both by the closed form of the mode.
func TestSloshOnTheWall(t *testing.T) {
	in, s := swinging(t, 0.05)
	F, p, _ := s.SloshForce()
	checktest.Printed(t, "force, N", F, "81.88545")
	checktest.Close(t, "pressure at the level", p, 800*30*0.05, 1e-12)
	f, err := s.FreeBody(0, body(in, loads.Aft))
	must(t, f, err)
	checktest.Printed(t, "shear at the foot, N", f.Shear, "81.88545")
	_, M, err := loads.Slosh{Radius: 0.2, Depth: 0.5, Acceleration: 30, Density: 800}.Force(0.05)
	checktest.Close(t, "moment at the foot", f.Moment, must(t, M, err), 1e-12)
	checktest.Close(t, "pressure at 0.2 m: by hand", s.PressureWorst(0.2),
		1e5+800*30*(0.3+0.05*math.Cosh(1.84118378*1)/math.Cosh(1.84118378*2.5)), 1e-9)
	for _, z := range []float64{0.52, 0.56} { // the crest stands to 0.55
		checktest.Close(t, "crest", s.PressureWorst(z), 1e5+800*30*math.Max(0, 0.55-z), 1e-12)
		checktest.Close(t, "trough", s.PressureLeast(z), 1e5, 1e-12)
	}
	if low := s.PressureLeast(0.49); low != 1e5 {
		t.Errorf("the trough side at 0.49 m has %g Pa", low)
	}
}

// Pressure integrated round the wall is the shear: along it the shear falls by π R Δp,
// and from both sides of any cut the shears make up the whole force; the hung tank's
// moment adds that of the bottom's pressure.
func TestSloshBalance(t *testing.T) {
	_, low := swinging(t, 0.01)
	F, _, _ := low.SloshForce()
	sum := 0.0
	const steps = 4000
	for i := range steps { // crest and clipped trough make up for each other, but for the second order
		z := 0.6 * (float64(i) + 0.5) / steps
		sum += math.Pi * 0.2 * (low.PressureWorst(z) - low.PressureLeast(z)) / 2 * 0.6 / steps
	}
	checktest.Close(t, "pressure over the wall", sum, F, 0.01)
	in, s := swinging(t, 0.05)
	F, _, _ = s.SloshForce()
	standing, hung := body(in, loads.Aft), body(in, loads.Forward)
	for _, z := range []float64{0.05, 0.2, 0.4, 0.7} {
		a, err := s.FreeBody(z, standing)
		must(t, a, err)
		b, err := s.FreeBody(z, hung)
		must(t, b, err)
		checktest.Close(t, "shears of both sides", a.Shear+b.Shear, F, 1e-9)
		const d = 1e-5
		up, _ := s.FreeBody(z+d, standing)
		down, _ := s.FreeBody(z-d, standing)
		if z < 0.44 {
			checktest.Close(t, "fall of the shear", (down.Shear-up.Shear)/(2*d), math.Pi*0.2*(s.PressureWorst(z)-s.PressureLeast(z))/2, 1e-6)
			checktest.Close(t, "fall of the moment", (down.Moment-up.Moment)/(2*d), a.Shear, 1e-6)
		} else if a.Shear != 0 || a.Moment != 0 {
			t.Errorf("above the wave: %g N, %g N m", a.Shear, a.Moment)
		}
	}
	b, err := s.FreeBody(0, hung)
	must(t, b, err)
	foot, R := math.Cosh(1.84118378*2.5), 0.2
	checktest.Close(t, "pressure on the bottom, by hand", b.Moment, 800*30*0.05*math.Pi*R*math.Pow(R/1.84118378, 2)/foot, 1e-7)
}

// With three times the density, twice the length and a_x kept, forces are 24 times
// and moments 48 times as large. Where all lateral loads are away slosh alone bends.
func TestSloshUnits(t *testing.T) {
	_, s := swinging(t, 0.05)
	big := tank{R: 0.4, length: 1.8, aft: flat(), forward: ellipsoid(0.4, 0.2)}
	b, err := state(t, big, 1e5, 2400, 2400*math.Pi*0.4*0.4*1, 30/g0, 0).Sloshing(0.1)
	must(t, b, err)
	F, p, _ := s.SloshForce()
	F3, p3, _ := b.SloshForce()
	checktest.Close(t, "force", F3, 24*F, 1e-12)
	checktest.Close(t, "pressure", p3, 6*p, 1e-12)
	in, _ := swinging(t, 0.05)
	f, _ := s.FreeBody(0.1, body(in, loads.Aft))
	g, _ := b.FreeBody(0.2, body(big, loads.Aft))
	checktest.Close(t, "moment", g.Moment, 48*f.Moment, 1e-12)
}

// Over a curved bottom a deep liquid counts as over a flat one of its volume; the
// hanging head carries a share of it that goes to nothing at its apex. Shallower than
// its radius no fall with depth is taken: never less than any first mode.
func TestSloshOverCurvedBottoms(t *testing.T) {
	in := tank{R: 0.2, length: 0.9, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	with := func(level float64) *loads.State {
		s, err := state(t, in, 0, 800, 800*in.VolumeBelow(level), 30/g0, 0).Sloshing(0.05)
		return must(t, s, err)
	}
	deep := with(0.5)
	mode := loads.Slosh{Radius: 0.2, Depth: in.VolumeBelow(0.5) / (math.Pi * 0.04), Acceleration: 30, Density: 800}
	F, _, err := mode.Force(0.05)
	got, _, bound := deep.SloshForce()
	checktest.Close(t, "deep", got, must(t, F, err), 1e-9)
	if bound {
		t.Error("a deep liquid is called a bound")
	}
	last := math.Inf(1)
	for _, z := range []float64{-0.001, -0.05, -0.09, -0.0999} {
		f, err := deep.FreeBody(z, body(in, loads.Aft))
		must(t, f, err)
		_, r := in.Radii(z)
		if line := f.Moment / (r * r); line > last || f.Shear < 0 {
			t.Errorf("at %g: line load %g after %g", z, line, last)
		} else {
			last = line
		}
	}
	flatter := with(0.06)
	mode.Depth = in.VolumeBelow(0.06) / (math.Pi * 0.04)
	F, _, _ = mode.Force(0.05)
	if got, p, bound := flatter.SloshForce(); got < F || !bound || math.Abs(p-1200) > 1e-9 || math.Abs(flatter.PressureWorst(-0.1)-800*30*(0.16+0.05)) > 1e-6 {
		t.Errorf("shallow: %g N for %g of the mode, %g Pa; %g Pa at the apex", got, F, p, flatter.PressureWorst(-0.1))
	}
}

// A tilted level swings about itself: on the wall both add up.
func TestSloshOnATilt(t *testing.T) {
	in := tank{R: 0.2, length: 0.9, aft: flat(), forward: flat()}
	rest := state(t, in, 0, 800, 800*math.Pi*0.04*0.5, 3, 0.3)
	s, err := rest.Sloshing(0.04)
	must(t, s, err)
	if !s.Sided() || rest.PressureWorst(0.52) != 0 {
		t.Error("the state at rest was changed")
	}
	checktest.Close(t, "at the tilted level", s.PressureWorst(0.52), 800*3*g0*0.04, 1e-9)
	checktest.Close(t, "other side, at its level", s.PressureLeast(0.4), rest.PressureLeast(0.4)-800*3*g0*0.04*math.Cosh(1.84118378*2.1)/math.Cosh(1.84118378*2.5), 0.02)
	p, at := s.HighestPressure(0, 0.9)
	if at > 1e-6 || p != s.PressureWorst(at) {
		t.Errorf("highest %g Pa at %g", p, at)
	}
}

// The first mode ends at a quarter of the radius, where the surface would fall
// freely, at the ends of the straight wall, and where nothing presses aft.
func TestSloshStateRange(t *testing.T) {
	in := tank{R: 0.2, length: 0.9, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	at := func(level, n, y float64) *loads.State { return state(t, in, 0, 800, 800*in.VolumeBelow(level), n, y) }
	for _, row := range []struct {
		name  string
		s     *loads.State
		η     float64
		takes bool
	}{
		{name: "a quarter of the radius", s: at(0.5, 3, 0), η: 0.05, takes: true},
		{name: "more than it", s: at(0.5, 3, 0), η: 0.0501},
		{name: "more than free fall", s: at(0.5, 3, 0), η: 0.11},
		{name: "none", s: at(0.5, 3, 0), η: 0},
		{name: "not a number", s: at(0.5, 3, 0), η: math.NaN()},
		{name: "crest on the seam", s: at(0.86, 3, 0), η: 0.04 - 1e-9, takes: true},
		{name: "crest in the head", s: at(0.86, 3, 0), η: 0.0401},
		{name: "tilt takes it there", s: at(0.82, 3, 0.3), η: 0.0601},
		{name: "trough in the head", s: at(0.03, 3, 0), η: 0.04},
		{name: "level in the head", s: at(-0.03, 3, 0), η: 0.01},
		{name: "pressed forward", s: at(0.5, -3, 0), η: 0.01},
		{name: "weightless", s: at(0.5, 0, 0), η: 0.01},
		{name: "sideways only", s: at(0.5, 0, 1), η: 0.01},
		{name: "dry", s: state(t, in, 0, 800, 0, 3, 0), η: 0.01},
		{name: "round an inward head", s: state(t, tank{R: 0.2, length: 0.9, aft: ellipsoid(0.2, 0.1), forward: flat(), aftInward: true}, 0, 800, 800*math.Pi*0.04*0.02, 3, 0), η: 0.01},
	} {
		if s, err := row.s.Sloshing(row.η); (err == nil) != row.takes || (s == nil) == row.takes {
			t.Errorf("%s: %v", row.name, err)
		}
	}
}
