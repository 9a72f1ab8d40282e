package loads_test

// The force in the wall: worked cases (statics, checked by surface integrals)
// and the free body taken from both sides.

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// body returns the free body of a tank whose wall has no thickness.
func body(in tank, s loads.Support) loads.Body {
	return loads.Body{
		Radius:  func(z float64) float64 { _, r := in.Radii(z); return r },
		Support: s, AftJoint: 0, ForwardJoint: in.length,
	}
}

func total(f loads.Forces) float64 { return f.Ullage + f.LiquidMost + f.LoadMost }

// Lower 2:1 head of R 0.2, liquid oxygen 1.1 m deep, 6 g, 20 bar: the head hangs
// on p_u π R² + weight, not on the pressure of its apex; the wall 0.5 m above it,
// with 20 kN and 15 kg on top, carries the ullage pressure, not the local one.
func TestWallForceByUllage(t *testing.T) {
	in := tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	mass := oxygen * in.VolumeBelow(1)
	b := body(in, loads.Aft)
	b.Masses = []loads.PointMass{{Z: 0.9, Mass: 15}}
	b.Sections = []loads.Section{{Station: 1.2, Force: -20e3}}
	for _, row := range []struct {
		ullage float64
		want   string // N/m
		wrong  string // by the local pressure; 7411 in the worked case, which rounded it up
	}{{2e6, "183382", "187410"}, {0.2e6, "3382", "7410"}} {
		s := state(t, in, row.ullage, oxygen, mass, 6, 0)
		p, low, most, least, err := s.WallForce(0.4, b)
		must(t, p, err)
		if p != low {
			t.Errorf("one joint carries, but pressure parts of %g and %g N/m", p, low)
		}
		if most != least {
			t.Errorf("no bending, but loads of %g and %g N/m", most, least)
		}
		checktest.Printed(t, "N_x", p+most, row.want)
		checktest.Printed(t, "N_x by the local pressure", s.PressureAxis(0.4)*0.2/2+most, row.wrong)
		if row.ullage == 2e6 {
			f, err := s.FreeBody(math.Nextafter(0, -1), body(in, loads.Aft))
			checktest.Printed(t, "whole lower head", total(must(t, f, err)), "260326.4518")
		}
	}
}

// R 0.15, 2:1 heads, water to z = 0.7, 3 g, 5 bar, 20 kN pressing from forward.
func TestSupports(t *testing.T) {
	h := ellipsoid(0.15, 0.075)
	in := tank{R: 0.15, length: 0.9, aft: h, forward: h}
	mass := 1000 * in.VolumeBelow(0.7)
	checktest.Printed(t, "liquid", mass, "53.0144")
	checktest.Printed(t, "its weight", mass*3*g0, "1559.68")
	s := state(t, in, 0.5e6, 1000, mass, 3, 0)
	push := []loads.Section{{Station: 0.9, Force: -20e3}}

	skirt := body(in, loads.Aft)
	skirt.Sections = push
	for _, z := range []float64{0, 0.3, 0.8, 0.9} {
		checktest.Printed(t, "on an aft skirt, cylinder", total(must2(t, s, z, skirt)), "15342.92")
	}
	checktest.Printed(t, "aft head", total(must2(t, s, -0.0375, skirt)), "27689.95")
	checktest.Printed(t, "aft head, lower", total(must2(t, s, -0.06, skirt)), "13298.24")
	checktest.Printed(t, "skirt below the joint", 20e3+mass*3*g0, "21559.68")

	hung := body(in, loads.Forward)
	for _, z := range []float64{0, 0.3, 0.8} {
		checktest.Printed(t, "hung, cylinder", total(must2(t, s, z, hung)), "36902.60")
	}
	boss := skirt
	boss.AftJoint = -0.075
	checktest.Printed(t, "on a boss", total(must2(t, s, -0.0375, boss)), "6130.27")
	checktest.Printed(t, "on a boss, lower: compression", total(must2(t, s, -0.06, boss)), "-8261.44")

	s = state(t, in, 0.2e6, 1000, 1000*in.VolumeBelow(0.95), 3, 0)
	f := must2(t, s, 0.9, body(in, loads.Aft))
	checktest.Printed(t, "liquid in the forward head", total(f), "14152.57")
	checktest.Printed(t, "gas alone", f.Ullage, "14137.17")
}

func must2(t *testing.T, s *loads.State, z float64, b loads.Body) loads.Forces {
	t.Helper()
	f, err := s.FreeBody(z, b)
	return must(t, f, err)
}

// The same force from the aft side: p π r² + n_x g0 (masses aft of the cut),
// less what the aft joint pushes up, for a standing and for a hung tank.
func TestBothSidesAgree(t *testing.T) {
	in := tank{R: 0.2, length: 1, aft: cone(0.2, 0.15), forward: torisphere(0.2, 1, 0.1)}
	masses := []loads.PointMass{{Z: -0.1, Mass: 3}, {Z: 0, Mass: 1}, {Z: 0.4, Mass: 11}, {Z: 0.95, Mass: 5}, {Z: 1.05, Mass: 2}}
	for _, n := range []float64{1, 4, -2} {
		s := state(t, in, 3e5, 900, 70, n, 0)
		for _, support := range []loads.Support{loads.Aft, loads.Forward} {
			b := body(in, support)
			b.Masses = masses
			for _, z := range []float64{-0.07, 0, 0.2, 0.5, 1, 1.06} {
				_, r := in.Radii(z)
				aft := 0.0
				for _, m := range masses {
					if m.Z <= z {
						aft += m.Mass
					}
				}
				want := s.PressureAxis(z)*math.Pi*r*r + n*g0*(s.MassAft(z)+aft)
				reaction := n * g0 * (70 + 22) // carried by the joint
				if support == loads.Aft && z >= 0 {
					want -= reaction
				}
				if support == loads.Forward && z > in.length {
					want -= reaction
				}
				if f := must2(t, s, z, b); math.Abs(total(f)-want) > 1e-6*math.Abs(want)+1e-6 {
					t.Errorf("n %g, %s, z %g: %.9g from forward, %.9g from aft", n, support, z, total(f), want)
				}
			}
		}
	}
}

// Under a lateral factor the aft head hangs on the integral of the pressure
// over its projected surface.
func TestTiltedHeadForce(t *testing.T) {
	h := ellipsoid(0.15, 0.075)
	in := tank{R: 0.15, length: 0.9, aft: h, forward: h}
	s := state(t, in, 1e5, 1000, 0.5, 1, 0.6)
	force, n := 0.0, 400
	for i := range n {
		r := 0.15 * (float64(i) + 0.5) / float64(n)
		z := -0.075 * math.Sqrt(1-r*r/0.0225)
		for k := range n {
			x := r * math.Cos(2*math.Pi*(float64(k)+0.5)/float64(n))
			force += s.PressureAt(z, x) * r * (0.15 / float64(n)) * (2 * math.Pi / float64(n))
		}
	}
	f := must2(t, s, math.Nextafter(0, -1), body(in, loads.Aft))
	checktest.Close(t, "liquid's part", f.LiquidMost, force-f.Ullage, 1e-3)
}

// The lateral inertia of liquid and masses bends the tank: liquid in a flat
// cylinder by its moment in closed form, masses as levers.
func TestBending(t *testing.T) {
	in := tank{R: 0.2, length: 2, aft: flat(), forward: flat()}
	const h, slope, R = 0.6, 0.25, 0.2
	s := state(t, in, 1e5, 1000, 1000*math.Pi*R*R*h, 2, 2*slope)
	b := body(in, loads.Aft)
	b.Masses = []loads.PointMass{{Z: 1.5, Mass: 8}}
	f := must2(t, s, 0, b)
	y := 2 * slope * g0
	liquid := 1000 * (math.Pi*R*R*h*h/2 + slope*slope*math.Pi*math.Pow(R, 4)/8)
	checktest.Close(t, "moment", f.Moment, y*(liquid+8*1.5), 1e-6)
	checktest.Close(t, "shear", f.Shear, y*(s.Liquid.Mass+8), 1e-6)

	b.Sections = []loads.Section{{Station: 2, Force: -5e3, Moment: 300, Shear: -40}}
	f = must2(t, s, 1, b)
	checktest.Close(t, "moment with a section", f.Moment, 300+40*1+y*8*0.5, 1e-9)
	_, _, most, least, err := s.WallForce(1, b)
	must(t, most, err)
	checktest.Close(t, "mean of both sides", (most+least)/2, (-5e3-8*2*g0)/(2*math.Pi*R), 1e-9)
	checktest.Close(t, "half their difference", (most-least)/2, f.Moment/(math.Pi*R*R), 1e-9)

	if f.ShearMissing {
		t.Error("the shear force was given")
	}
	b.Sections[0].Shear = math.NaN()
	if f = must2(t, s, 1, b); !f.ShearMissing || math.IsNaN(f.Moment) {
		t.Errorf("no shear force given: missing %v, moment %g", f.ShearMissing, f.Moment)
	}
}

// Between two quoted sections the extremes of both are kept; beyond, one.
func TestSections(t *testing.T) {
	in := twin()
	s := state(t, in, 1e5, 1000, 20, 2, 0)
	b := body(in, loads.Aft)
	b.Masses = []loads.PointMass{{Z: 0.5, Mass: 10}}
	b.Sections = []loads.Section{{Station: 1.1, Force: -1000, Moment: 50}, {Station: 0.1, Force: -3000, Moment: 90}}
	f := must2(t, s, 0.3, b)
	checktest.Close(t, "most", f.LoadMost, -1000-10*2*g0, 1e-12)
	checktest.Close(t, "least", f.LoadLeast, -3000, 1e-12)
	checktest.Close(t, "moment", f.Moment, 90, 1e-12)
	f = must2(t, s, 1.15, b)
	if f.LoadMost != -1000 || f.LoadLeast != -1000 || f.Moment != 50 {
		t.Errorf("forward of both: %+v", f)
	}
	f = must2(t, s, -0.05, b)
	if f.LoadMost != 0 || f.Moment != 0 {
		t.Errorf("the aft head carries the stack: %+v", f)
	}
}

// Held at both ends the tank may stand or hang. The extremes are those of the
// two, and the liquid's weight, n g0 m/(2π r) = 3 g0 60/(2π 0.2) = 1404.7 N/m,
// stands between the pressure parts alone, never among the loads.
func TestHeldAtBoth(t *testing.T) {
	in := twin()
	s := state(t, in, 1e5, 1000, 60, 3, 0)
	all := map[loads.Support][4]float64{}
	for _, support := range []loads.Support{loads.Aft, loads.Forward, loads.Both} {
		b := body(in, support)
		b.Masses = []loads.PointMass{{Z: 0.5, Mass: 10}}
		high, low, most, least, err := s.WallForce(0.3, b)
		must(t, high, err)
		all[support] = [4]float64{high, low, most, least}
	}
	stands, hangs, both := all[loads.Aft], all[loads.Forward], all[loads.Both]
	checktest.Close(t, "pressure, most", both[0], hangs[0], 1e-12)
	checktest.Close(t, "pressure, least", both[1], stands[1], 1e-12)
	checktest.Printed(t, "weight of the liquid", both[0]-both[1], "1404.7")
	checktest.Close(t, "load, most", both[2], hangs[2], 1e-12)
	checktest.Close(t, "load, least", both[3], stands[3], 1e-12)
	// Only the tank's own 10 kg lies between the loads: 3 g0 10/(2π 0.2).
	checktest.Printed(t, "weight of the mass", both[2]-both[3], "234.1")
}

// With force ×3 (pressures, masses) and length ×7 wall forces scale by 3/7, the
// weight held by density; the inside radius gives less relief than mid-wall.
func TestWallUnitsAndRadius(t *testing.T) {
	in := twin()
	s := state(t, in, 1e6, 1000, 60, 2, 0)
	b := body(in, loads.Aft)
	b.Radius = func(float64) float64 { return 0.202 }
	mid, _, _, _, err := s.WallForce(0.3, b)
	checktest.Close(t, "mid-wall", must(t, mid, err), 1e6*0.202/2, 1e-12)
	b.PressureRadius = func(float64) float64 { return 0.2 }
	inside, _, _, _, err := s.WallForce(0.3, b)
	checktest.Close(t, "inside", must(t, inside, err), 1e6*0.04/(2*0.202), 1e-12)

	big := tank{R: 1.4, length: 8.4, aft: ellipsoid(1.4, 0.7), forward: ellipsoid(1.4, 0.7)}
	// stress scale 3/49; weight ρ g L³ must scale by 3: density 3/343
	one := state(t, in, 1e6, 1000, 60, 2, 0.3)
	other := state(t, big, 1e6*3/49, 1000*3./343, 60*3, 2, 0.3)
	small, large := body(in, loads.Forward), body(big, loads.Forward)
	small.Sections = []loads.Section{{Station: 0.1, Force: 500, Moment: 40, Shear: 30}}
	large.Sections = []loads.Section{{Station: 0.7, Force: 1500, Moment: 840, Shear: 90}}
	p1, q1, m1, l1, err := one.WallForce(0.5, small)
	must(t, p1, err)
	p2, q2, m2, l2, err := other.WallForce(3.5, large)
	must(t, p2, err)
	for i, pair := range [][2]float64{{p1, p2}, {q1, q2}, {m1, m2}, {l1, l2}} {
		checktest.Close(t, "part "+string(rune('1'+i)), pair[1], pair[0]*3/7, 1e-6)
	}
}

func TestWallRange(t *testing.T) {
	in := twin()
	s := state(t, in, 1e5, 1000, 60, 2, 0)
	good := body(in, loads.Aft)
	for name, change := range map[string]func(b *loads.Body) float64{
		"outside":   func(*loads.Body) float64 { return 1.4 },
		"NaN":       func(*loads.Body) float64 { return math.NaN() },
		"apex":      func(*loads.Body) float64 { return -0.1 },
		"no radius": func(b *loads.Body) float64 { b.Radius = nil; return 0.5 },
		"support":   func(b *loads.Body) float64 { b.Support = "side"; return 0.5 },
		"joints":    func(b *loads.Body) float64 { b.ForwardJoint = 0; return 0.5 },
		"flat wall": func(b *loads.Body) float64 { b.HalfAngle = func(float64) float64 { return 1.5 }; return 0.5 },
		"load NaN":  func(b *loads.Body) float64 { b.Sections = []loads.Section{{Force: math.NaN()}}; return 0.5 },
	} {
		b := good
		z := change(&b)
		if p, low, most, least, err := s.WallForce(z, b); err == nil || !math.IsNaN(p) || !math.IsNaN(low) || !math.IsNaN(most) || !math.IsNaN(least) {
			t.Errorf("%s: %g, %g, %g, %g, %v; want NaN and an error", name, p, low, most, least, err)
		}
	}
	cone := good
	cone.HalfAngle = func(float64) float64 { return math.Pi / 3 }
	p, _, _, _, err := s.WallForce(0.5, cone)
	checktest.Close(t, "along a cone of 60 degrees", must(t, p, err), 2*1e5*0.1, 1e-9)
}
