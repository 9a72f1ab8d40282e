package revolution_test

import (
	"math"
	"strings"
	"sync"
	"testing"

	"proofsheet/shell/revolution"
)

// Shapes that cannot be are refused with the reason.
func TestImpossibleHeads(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		why  string
		make func() ([]revolution.Part, error)
	}{
		{"under half the diameter", func() ([]revolution.Part, error) { return revolution.Torisphere(1, 0.99, 0.1) }},
		{"not below the cylinder's", func() ([]revolution.Part, error) { return revolution.Torisphere(1, 2, 1) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Torisphere(1, 2, 0) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Torisphere(1, nan, 0.1) }},
		{"closes before its tip", func() ([]revolution.Part, error) { return revolution.Cone(1, 30*deg, 1) }},
		{"closes before its tip", func() ([]revolution.Part, error) { return revolution.Toricone(1, 60*deg, 0.5, 0.75) }},
		{"right angle", func() ([]revolution.Part, error) { return revolution.Cone(1, 90*deg, 0) }},
		{"not below the cylinder's", func() ([]revolution.Part, error) { return revolution.Toricone(1, 30*deg, 1, 0) }},
		{"below 0", func() ([]revolution.Part, error) { return revolution.Cone(1, nan, 0) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Hemisphere(nan) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Ellipsoid(1, 0) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Ellipsoid(-1, 1) }},
		{"no breadth", func() ([]revolution.Part, error) { return revolution.Flat(1, 1) }},
		{"must be above 0", func() ([]revolution.Part, error) { return revolution.Cylinder(1, 0, 0) }},
	} {
		if parts, err := row.make(); err == nil || parts != nil || !strings.Contains(err.Error(), row.why) {
			t.Errorf("%v, %v; the reason is %q", parts, err, row.why)
		}
	}
}

// Structures that are no shell are refused with the reason.
func TestImpossibleStructures(t *testing.T) {
	inf := math.Inf(1)
	for _, row := range []struct {
		why   string
		spoil func(s *revolution.Structure)
	}{
		{"without segments", func(s *revolution.Structure) { s.Segments = nil }},
		{"no curve", func(s *revolution.Structure) { s.Segments[1].Curve = nil }},
		{"wall", func(s *revolution.Structure) { s.Segments[1].Thickness = 0 }},
		{"wall", func(s *revolution.Structure) { s.Segments[1].Thickness = math.NaN() }},
		{"elastic modulus", func(s *revolution.Structure) { s.Segments[1].Modulus = inf }},
		{"Poisson", func(s *revolution.Structure) { s.Segments[1].Poisson = 0.5 }},
		{"gap", func(s *revolution.Structure) { s.Segments[2].Curve = line(1, 0.01, 1, 3) }},
		{"apart", func(s *revolution.Structure) {
			s.Segments[2].Curve, s.Segments[2].Linked = line(1.021, 0, 1.021, 3), true
		}},
		{"turns back", func(s *revolution.Structure) {
			s.Segments = s.Segments[:3]
			s.Segments[2].Curve = line(1, 0, 0.1, -0.9/math.Tan(30*deg))
		}},
		{"crosses the axis", func(s *revolution.Structure) { s.Segments[0].Curve = line(-0.1, 0, 1, 0) }},
		{"on the axis", func(s *revolution.Structure) { s.Segments[0].Curve = line(0, 0, 0, 1) }},
		{"no length", func(s *revolution.Structure) { s.Segments[0].Curve = line(1, 0, 1, 0) }},
		{"not finite", func(s *revolution.Structure) { s.Segments[0].Curve = line(1, 0, inf, 0) }},
		{"crosses the axis", func(s *revolution.Structure) {
			s.Segments[0].Curve = revolution.Arc(revolution.Point{}, 1, -0.1, 1)
		}},
		{"crosses the axis", func(s *revolution.Structure) {
			s.Segments[0].Curve = revolution.Arc(revolution.Point{R: -0.5}, 1, 0, 1)
		}},
		{"radius of the arc", func(s *revolution.Structure) {
			s.Segments[0].Curve = revolution.Ellipse{A: 1, To: 1}
		}},
		{"runs over itself", func(s *revolution.Structure) {
			s.Segments[0].Curve = revolution.Arc(revolution.Point{R: 2}, 1, 0, 6.3)
		}},
		{"meets the axis", func(s *revolution.Structure) {
			s.Segments = s.Segments[:3]
			s.Segments[0].Curve, s.Segments[1].Curve = line(0.1, -2, 0, -1), line(0, -1, 1, 0)
		}},
		{"no length", func(s *revolution.Structure) { s.Segments[0].Curve = revolution.Arc(revolution.Point{}, 1, 1, 1) }},
		{"not finite", func(s *revolution.Structure) {
			s.Segments[0].Curve = revolution.Arc(revolution.Point{Z: inf}, 1, 0, 1)
		}},
		{"along the axis", func(s *revolution.Structure) { s.Supports = nil }},
		{"support stands", func(s *revolution.Structure) { s.Supports[0].Node = 6 }},
		{"ring stands", func(s *revolution.Structure) { s.Rings = []revolution.Ring{{Node: -1}} }},
		{"section", func(s *revolution.Structure) { s.Rings = []revolution.Ring{{Node: 2, Area: -1, Modulus: 1}} }},
		{"material", func(s *revolution.Structure) { s.Rings = []revolution.Ring{{Node: 2, Area: 1}} }},
		{"off the axis", func(s *revolution.Structure) {
			s.Rings = []revolution.Ring{{Node: 2, Area: 1, Modulus: 1, Offset: revolution.Point{R: -1}}}
		}},
	} {
		s := tank(t, 60)
		row.spoil(&s)
		if m, err := revolution.New(s); err == nil || m != nil || !strings.Contains(err.Error(), row.why) {
			t.Errorf("%v; the reason is %q", err, row.why)
		}
	}
}

func line(r1, z1, r2, z2 float64) revolution.Line {
	return revolution.Line{From: revolution.Point{R: r1, Z: z1}, To: revolution.Point{R: r2, Z: z2}}
}

// A load that is not finite or acts nowhere gives no state.
func TestImpossibleLoads(t *testing.T) {
	m, _ := solve(t, tank(t, 60), revolution.Load{})
	for _, l := range []revolution.Load{
		revolution.Uniform(math.NaN()), revolution.Uniform(math.Inf(1)),
		{Axial: func(revolution.Place) float64 { return math.NaN() }},
		{Forces: []revolution.Force{{Node: 6}}}, {Forces: []revolution.Force{{Node: -1}}},
		{Forces: []revolution.Force{{Node: 2, Moment: math.NaN()}}},
	} {
		if u, err := m.Solve(l); err == nil || u != nil {
			t.Errorf("%+v: %v, %v", l, u, err)
		}
	}
	u, err := m.Solve(revolution.Load{})
	if err != nil || u.Residual != 0 || u.Stations[0].Inside.Equivalent() != 0 {
		t.Errorf("no load: %v", err)
	}
	if e, err := m.MeshError(u, revolution.Load{}); err != nil || e.Stress != 0 {
		t.Errorf("no load: mesh error %v, %v", e.Stress, err)
	}
}

// One model serves many at a time.
func TestTogether(t *testing.T) {
	m, want := solve(t, tank(t, 60), revolution.Uniform(2))
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			u, err := m.Solve(revolution.Uniform(2))
			if err != nil || u.Stations[10] != want.Stations[10] {
				t.Errorf("a solution beside others differs: %v", err)
				return
			}
			if _, err := m.MeshError(u, revolution.Uniform(2)); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
}
