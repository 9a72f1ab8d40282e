package revolution_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// States without bending, which the elements hold exactly but for the course of
// the circle: a sphere, and a cylinder free to grow, N_φ = V/(2πr sin φ) and
// N_θ = r₂ (p − N_φ/r₁).
func TestMembraneExactly(t *testing.T) {
	p := pile{t: t}
	aft, err := revolution.Hemisphere(2)
	p.add(aft, err)(0.01)
	p.add(revolution.Forward(aft, 0), nil)(0.01)
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	_, u := solve(t, p.s, revolution.Uniform(3))
	for _, s := range u.Stations {
		checktest.Close(t, "sphere, meridional", s.NPhi, 3, 1e-6)
		checktest.Close(t, "sphere, hoop", s.NTheta, 3, 1e-6)
		checktest.Close(t, "sphere, inside", s.Inside.Hoop, 300, 1e-6)
	}
	// ΔV = 4π R² w, w = (1 − ν) p R²/(2 E t)
	checktest.Close(t, "sphere, growth", u.VolumeGrowth, 16*math.Pi*0.7*3*4/(2*modulus*0.01), 1e-6)

	p = pile{t: t}
	p.add(revolution.Cylinder(2, -1, 5))(0.01)
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	l := revolution.Uniform(3)
	l.Forces = []revolution.Force{{Node: 1, Axial: 1000}}
	_, u = solve(t, p.s, l)
	for _, s := range u.Stations {
		checktest.Close(t, "cylinder, meridional", s.NPhi, 1000/(4*math.Pi), 1e-6)
		checktest.Close(t, "cylinder, hoop", s.Outside.Hoop, 600, 1e-6)
	}
}

// Cone and sphere between edges that carry their membrane forces; what bending
// is left at an edge that no moment holds is of the order t/R. The cone: N_θ = p r/cos α, N_φ half of it; the
// sphere's zone likewise, cut at 30 and 80 degrees.
func TestMembraneZones(t *testing.T) {
	const α, p, wall = 30 * deg, 3.0, 1e-6
	cos, sin := math.Cos(α), math.Sin(α)
	pl := pile{t: t}
	pl.add(revolution.Cone(2, α, 1))(wall)
	pl.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	edge := func(r float64) float64 { return p * r / (2 * cos) } // N_φ
	l := revolution.Uniform(p)
	l.Forces = []revolution.Force{
		{Node: 0, Radial: -edge(1) * sin},
		{Node: 1, Radial: edge(2) * sin, Axial: 4 * math.Pi * edge(2) * cos},
	}
	_, u := solve(t, pl.s, l)
	for _, s := range u.Stations {
		checktest.Close(t, "cone, meridional", s.NPhi, edge(s.R), 1e-6)
		checktest.Close(t, "cone, hoop", s.NTheta, 2*edge(s.R), 1e-6)
	}
	// the tip's force on the small end: p r²/2 pulls on the axial support
	checktest.Close(t, "cone, reaction", u.Reactions[0].Axial, -math.Pi*p, 1e-9)

	pl = pile{t: t}
	pl.add([]revolution.Part{{Name: "zone", Curve: revolution.Arc(revolution.Point{}, 2, 30*deg, 80*deg)}}, nil)(wall)
	pl.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	l = revolution.Uniform(p)
	l.Forces = []revolution.Force{
		{Node: 0, Radial: -p * math.Cos(30*deg)},
		{Node: 1, Radial: p * math.Cos(80*deg), Axial: 4 * math.Pi * p * math.Pow(math.Sin(80*deg), 2)},
	}
	_, u = solve(t, pl.s, l)
	for _, s := range u.Stations {
		checktest.Close(t, "zone, meridional", s.NPhi, p, 1e-6)
		checktest.Close(t, "zone, hoop", s.NTheta, p, 1e-6)
	}
}

// A cone hung from its rim, filled with liquid to it: N_θ = p(y) y tan α/cos α
// and N_φ = (y tan α/(2 cos α)) ρa (H − 2y/3), greatest at H/2 and 3H/4.
//
// Source: Timoshenko and Woinowsky-Krieger (memory); the place of the greatest
// hoop force read in Johnson, Advanced Structural Mechanics, p. 185.
func TestLiquidCone(t *testing.T) {
	const α, depth, weight, wall = 30 * deg, 3.0, 10.0, 1e-5
	tan, cos := math.Tan(α), math.Cos(α)
	pl := pile{t: t}
	pl.add(revolution.Cone(depth*tan, α, 0))(wall)
	pl.s.Supports = []revolution.Support{{Node: 1, Axial: true}}
	nφ := func(y float64) float64 { return y * tan / (2 * cos) * weight * (depth - 2*y/3) }
	l := revolution.Load{
		Pressure: func(at revolution.Place) float64 { return -weight * at.Z },
		Forces:   []revolution.Force{{Node: 1, Radial: nφ(depth) * math.Sin(α)}},
	}
	_, u := solve(t, pl.s, l)
	bestθ, bestφ := revolution.Station{}, revolution.Station{}
	for _, s := range u.Stations {
		if y := s.Z + depth; y > 0.1 && y < 2.8 {
			checktest.Close(t, "meridional", s.NPhi, nφ(y), 1e-3)
			checktest.Close(t, "hoop", s.NTheta, weight*(depth-y)*y*tan/cos, 1e-3)
		}
		if s.NTheta > bestθ.NTheta {
			bestθ = s
		}
		if s.NPhi > bestφ.NPhi {
			bestφ = s
		}
	}
	checktest.Close(t, "height of the greatest hoop force", bestθ.Z+depth, depth/2, 0.02)
	checktest.Close(t, "height of the greatest meridional force", bestφ.Z+depth, 3*depth/4, 0.02)
	// the support carries the whole liquid
	checktest.Close(t, "weight", u.Reactions[0].Axial, weight*math.Pi*math.Pow(depth*tan, 2)*depth/3, 1e-9)
}

// Every vertical load finds its reaction.
func TestBalance(t *testing.T) {
	s := tank(t, 300)
	l := revolution.Load{
		Pressure: func(at revolution.Place) float64 { return 5 + 2*math.Max(0, 2-at.Z) },
		Axial:    func(revolution.Place) float64 { return -0.1 },
		Forces:   []revolution.Force{{Node: 3, Axial: -7, Moment: 0.2}, {Node: 1, Radial: 0.3}},
	}
	_, u := solve(t, s, l)
	if !(u.Balance < 1e-9) || !(u.Residual < 1e-9) {
		t.Errorf("balance %.2g, residual %.2g", u.Balance, u.Residual)
	}
	t.Logf("balance %.2g, residual %.2g", u.Balance, u.Residual)
	// a closed vessel under gas carries itself
	_, u = solve(t, s, revolution.Uniform(5))
	if got := math.Abs(u.Reactions[0].Axial) / (5 * math.Pi); !(got < 1e-9) {
		t.Errorf("reaction of a closed vessel: %.2g of p π R²", got)
	}
	// so does one whose mid-lines step
	s.Segments = s.Segments[:3]
	part, err := revolution.Hemisphere(1.004)
	if err != nil {
		t.Fatal(err)
	}
	s.Segments = append(s.Segments, revolution.Segment{Name: "hemisphere", Curve: revolution.Forward(part, 3.002)[0].Curve,
		Thickness: 0.01, Modulus: modulus, Poisson: poisson, Linked: true})
	_, u = solve(t, s, revolution.Uniform(5))
	if got := math.Abs(u.Reactions[0].Axial) / (5 * math.Pi); !(got < 1e-9) {
		t.Errorf("reaction of a stepped vessel: %.2g of p π R²", got)
	}
}

// The error of the stresses falls with the fourth power of the element's length
// or faster: quintic displacements, second derivatives in the moments.
func TestConvergenceOrder(t *testing.T) {
	errors := func(elements int) float64 {
		s := tank(t, elements)
		m, u := solve(t, s, revolution.Uniform(1))
		e, err := m.MeshError(u, revolution.Uniform(1))
		if err != nil {
			t.Fatal(err)
		}
		return e.Stress
	}
	coarse, fine := errors(160), errors(320)
	order := math.Log2(coarse / fine)
	t.Logf("mesh error %.2g with 160 elements, %.2g with 320: order %.2f", coarse, fine, order)
	if !(order > 3.5) {
		t.Errorf("order %.2f, the element's is 4", order)
	}
}

// With 300 elements over a tank every stress is within 0.1 per cent of the
// greatest of its converged value.
func TestThreeHundredElements(t *testing.T) {
	for _, slender := range []float64{50, 100, 300, 1000} {
		s := tank(t, 300)
		for i := range s.Segments {
			s.Segments[i].Thickness *= 100 / slender
		}
		m, u := solve(t, s, revolution.Uniform(1))
		e, err := m.MeshError(u, revolution.Uniform(1))
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("R/t %4.0f, %d elements: mesh error %.2g at %s, z = %.3f", slender, m.Elements(), e.Stress, s.Segments[e.At.Segment].Name, e.At.Z)
		if !(e.Stress < 1e-3) {
			t.Errorf("R/t %.0f: mesh error %.2g", slender, e.Stress)
		}
	}
}

// Force × 3 and length × 7: stress × 3/49, displacement × 7 with the modulus
// scaled alike.
func TestUnits(t *testing.T) {
	build := func(force, length float64) *revolution.Solution {
		p := pile{t: t}
		p.add(revolution.Torisphere(length, 2*length, 0.2*length))(0.01 * length)
		p.add(revolution.Cylinder(length, 0, 2*length))(0.01 * length)
		for i := range p.s.Segments {
			p.s.Segments[i].Modulus *= force / (length * length)
		}
		p.s.Rings = []revolution.Ring{{Node: 2, Area: 1e-4 * length * length, Axial: 1e-9 * math.Pow(length, 4), Modulus: modulus * force / (length * length)}}
		p.s.Supports = []revolution.Support{{Node: 3, Axial: true}}
		_, u := solve(t, p.s, revolution.Uniform(force/(length*length)))
		return u
	}
	a, b := build(1, 1), build(3, 7)
	for i, s := range a.Stations {
		q, where := b.Stations[i], fmt.Sprint("station ", i)
		if d := math.Abs(q.Inside.Meridional - s.Inside.Meridional*3/49); !(d < 1e-6) {
			t.Errorf("%s: stress off by %.2g", where, d)
		}
		if d := math.Abs(q.Radial - s.Radial*7); !(d < 1e-9) {
			t.Errorf("%s: displacement off by %.2g", where, d)
		}
	}
	checktest.Close(t, "volume", b.VolumeGrowth, a.VolumeGrowth*343, 1e-9)
}

// The default mesh is as good as the package says.
func TestDefaultMesh(t *testing.T) {
	for _, slender := range []float64{25, 100, 1000} {
		s := tank(t, 0)
		for i := range s.Segments {
			s.Segments[i].Thickness *= 100 / slender
		}
		m, u := solve(t, s, revolution.Uniform(1))
		e, err := m.MeshError(u, revolution.Uniform(1))
		t.Logf("R/t %4.0f, %d elements: mesh error %.2g", slender, m.Elements(), e.Stress)
		if err != nil || !(e.Stress < 1e-4) {
			t.Errorf("R/t %.0f: mesh error %.2g, %v", slender, e.Stress, err)
		}
	}
}
