package revolution_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// A cone turned about: forward it ends at its tip, inside out its tip stands on the other side of the seam.
func TestTurnedCone(t *testing.T) {
	aft, err := revolution.Cone(1, 45*deg, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	near := func(where string, c revolution.Curve, want revolution.Line) {
		t.Helper()
		l, ok := c.(revolution.Line)
		for _, d := range []float64{l.From.R - want.From.R, l.From.Z - want.From.Z, l.To.R - want.To.R, l.To.Z - want.To.Z} {
			if !ok || math.Abs(d) > 1e-12 {
				t.Errorf("%s: %+v, want %+v", where, c, want)
				return
			}
		}
	}
	near("aft", aft[0].Curve, line(0.5, -0.5, 1, 0))
	near("forward", revolution.Forward(aft, 2)[0].Curve, line(1, 2, 0.5, 2.5))
	near("inward", revolution.Inward(aft)[0].Curve, line(0.5, 0.5, 1, 0))
	tori, err := revolution.Toricone(1, 45*deg, 0.2, 0.5)
	if err != nil || len(tori) != 2 || tori[1].Name != "knuckle" {
		t.Errorf("%+v, %v", tori, err)
	}
}

// An inward cap of 60 degrees far from its seam is in compression by half p L/t, L = R/sin 60° and R/t 200; an outward one in tension.
func TestInwardCap(t *testing.T) {
	L := 1 / math.Sin(60*deg)
	out := []revolution.Part{{Name: "cap", Curve: revolution.Arc(revolution.Point{Z: L * math.Cos(60*deg)}, L, 0, 60*deg)}}
	u := headOn(t, 200, 1)(revolution.Inward(out), nil)
	tip := u.Stations[0]
	checktest.Close(t, "meridional", tip.Membrane.Meridional, -100*L, 2e-3)
	checktest.Close(t, "hoop", tip.Membrane.Hoop, -100*L, 2e-3)
	checktest.Close(t, "an outward one", headOn(t, 200, 1)(out, nil).Stations[0].Membrane.Hoop, 100*L, 2e-3)
}

// Numbers that run over their end, and walls too thin for them, give no state.
func TestNumbersWithoutEnd(t *testing.T) {
	s := tank(t, 60)
	s.Segments[2].Thickness = 1e-120
	if m, err := revolution.New(s); err == nil || m != nil || !strings.Contains(err.Error(), "singular") {
		t.Errorf("a wall of 1e-120 m: %v", err)
	}
	m, _ := solve(t, tank(t, 60), revolution.Load{})
	if u, err := m.Solve(revolution.Uniform(1e308)); err == nil || u != nil || !strings.Contains(err.Error(), "equilibrium") {
		t.Errorf("a pressure of 1e308 Pa: %v", err)
	}
}

// A pressure that is not known on the step between two mid-lines gives no state: the link carries it.
func TestPressureOnAStep(t *testing.T) {
	p := pile{t: t}
	p.add(revolution.Cylinder(1, 0, 1))(0.01)
	p.add(revolution.Cylinder(1.005, 1, 1))(0.02)
	p.s.Segments[1].Linked = true
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	m, _ := solve(t, p.s, revolution.Uniform(1))
	hole := revolution.Load{Pressure: func(at revolution.Place) float64 {
		if at.Z == 1 {
			return math.NaN()
		}
		return 1
	}}
	if u, err := m.Solve(hole); err == nil || u != nil || !strings.Contains(err.Error(), "pressure at z = 1 m") {
		t.Errorf("%v", err)
	}
}

// The error of a mesh is known only of a solution of that model, under a load that halved elements can be given.
func TestMeshErrorRefused(t *testing.T) {
	m, u := solve(t, tank(t, 60), revolution.Uniform(1))
	other, _ := solve(t, tank(t, 80), revolution.Uniform(1))
	e, err := other.MeshError(u, revolution.Uniform(1))
	checktest.RefusedNumber(t, "another model", e.Stress, err, "meshes do not match")
	e, err = m.MeshError(u, revolution.Uniform(math.Inf(1)))
	checktest.RefusedNumber(t, "no load", e.Stress, err, "not finite")
}

// What a limit load, a buckling load and a snap need: loads that are numbers, a base that stands, a mesh that is fine enough.
func TestFactorsRefused(t *testing.T) {
	nan, one := revolution.Uniform(math.NaN()), revolution.Uniform(1)
	s := tank(t, 60)
	for i := range s.Segments {
		s.Segments[i].Yield = 1
	}
	m, err := revolution.New(s)
	if err != nil {
		t.Fatal(err)
	}
	c, err := m.LimitLoad(nan, one)
	checktest.RefusedNumber(t, "limit, base", c.Factor, err, "not finite")
	c, err = m.LimitLoad(one, nan)
	checktest.RefusedNumber(t, "limit, vary", c.Factor, err, "not finite")
	b, err := m.Bifurcation(one, nan)
	checktest.RefusedNumber(t, "bifurcation, vary", b.Factor, err, "not finite")

	// A tube under four, and under a million times, the outside pressure 3 D/R³ at which it buckles.
	const wall = 0.01
	p := pile{t: t}
	p.add(revolution.Cylinder(1, 0, 10))(wall)
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	tube, _ := solve(t, p.s, one)
	d := modulus * wall * wall * wall / (12 * (1 - poisson*poisson))
	for _, times := range []float64{12, 3e6} {
		b, err = tube.Bifurcation(revolution.Uniform(-times*d), revolution.Uniform(-d))
		checktest.RefusedNumber(t, "a base beyond buckling", b.Factor, err, "the base state buckles by itself")
	}
	b, err = tube.BifurcationModerate(revolution.Uniform(-12*d), revolution.Uniform(-d), 1)
	checktest.RefusedNumber(t, "a base beyond buckling, moderate", b.Factor, err, "the base state buckles by itself")

	blunt := pile{t: t}
	blunt.add(revolution.Cone(1, 60*deg, 0))(0.002)
	blunt.add(revolution.Cylinder(1, 0, 1))(0.002)
	for i := range blunt.s.Segments {
		blunt.s.Segments[i].Yield = 100
	}
	blunt.s.Supports = []revolution.Support{{Node: 2, Axial: true, Rotation: true}}
	blunt.s.Mesh.Elements = 4
	if m, err = revolution.New(blunt.s); err != nil {
		t.Fatal(err)
	}
	c, err = m.LimitLoad(revolution.Load{}, revolution.Uniform(0.1))
	checktest.RefusedNumber(t, "a corner of four elements", c.Factor, err, "mesh is too coarse")
}

// A path that begins with a step of 1e30 of the load is not found back to.
func TestPathLost(t *testing.T) {
	m, p := clampedCap(t, 6, 0.3)
	snap, err := m.Snapthrough(revolution.Load{}, p, 1e30)
	if !errors.Is(err, revolution.ErrLimit) || !math.IsNaN(snap.Factor) {
		t.Errorf("%g, %v", snap.Factor, err)
	}
}

// A cap of λ = 4 snaps through before any wave shows: the same factor by the count of waves as by the path, and no waves.
func TestSnapBeforeWaves(t *testing.T) {
	m, p := clampedCap(t, 4, 1./3)
	b, err := m.BifurcationModerate(revolution.Load{}, p, 2)
	if err != nil || b.Waves != 0 {
		t.Fatalf("%d waves, %v", b.Waves, err)
	}
	checktest.Close(t, "published", b.Factor, .578, 0.02)
	snap, err := m.Snapthrough(revolution.Load{}, p, 2)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "path", b.Factor, snap.Factor, 1e-3)
}
