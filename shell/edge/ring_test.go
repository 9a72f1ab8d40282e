package edge_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

func step(t2, e float64) edge.Step {
	return edge.Step{Radius: 100, First: unit, Second: thick(t2), Offset: e, FirstFree: inf, SecondFree: inf}
}

// Narrow ring on a cylinder, R = 100, t = 1, area A: meridional and hoop over p R/t by finite element (computed), equal to
// F = 2 p' A/(A β + 2 t) to every digit printed. Rigid ring 2.04 p R/t: Timoshenko and Woinowsky-Krieger (recalled).
func TestRing(t *testing.T) {
	for _, row := range []struct {
		A         float64
		mer, hoop string
	}{{1, "0.593", "0.949"}, {5, "0.875", "0.793"}, {20, "1.368", "0.522"}, {1e12, "2.043", "0.150"}} {
		s := step(1, 0)
		s.RingArea, s.RingModulus = row.A, 1
		j, err := s.Solve(edge.Gas(0.01, 100))
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "meridional", j.Shell.MeridionalSurface(), row.mer)
		checktest.Printed(t, "hoop", j.Shell.Hoop, row.hoop)
		β := 1 / edge.DecayLength(100, 1, 0.3)
		F := 2 * 0.01 * 0.85 * row.A / (row.A*β + 2)
		checktest.Close(t, "F", j.HRing, F, 1e-9)
		checktest.Close(t, "M", j.MShell, F/(4*β), 1e-9)
		if row.A < 1e6 { // beyond, the displacement is all rounding
			checktest.Close(t, "stretch of the ring", j.HRing, j.Displacement*row.A/1e4, 1e-9)
			checktest.Close(t, "stress of the ring", edge.RingStress(1, j.Displacement, 100).Hoop, j.HRing*100/row.A, 1e-9)
		}
	}
}

// Flat head at its mid-plane, R/t 50: meridional stress of the cylinder over p R/t: equal to the finite element in every
// digit (computed).
func TestFlat(t *testing.T) {
	for _, row := range []struct {
		tp   float64
		want string
	}{{2, "24.74"}, {5, "5.615"}, {10, "2.526"}, {20, "2.100"}} {
		f := edge.Flat{Radius: 50, Shell: unit, Plate: thick(row.tp), ShellFree: inf}
		j, err := f.Solve(0.02)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "meridional", j.Shell.MeridionalSurface(), row.want)
		checktest.Close(t, "one radial force", j.Rim.Meridional*row.tp, -j.H, 1e-12)
		// Moments of half the plate: the edge moment and the moment of the pressure, p R²/8 (mean of both directions at the centre).
		centre, rim := j.Centre.MeridionalBending*row.tp*row.tp/6, j.Rim.MeridionalBending*row.tp*row.tp/6
		checktest.Close(t, "plate", rim-centre, 3.3*0.02*2500/16, 1e-12)
	}
	a, _ := edge.Flat{Radius: 50, Shell: unit, Plate: thick(3), ShellFree: inf}.Solve(0.02)
	b, _ := edge.Flat{Radius: 350, Shell: edge.Wall{Thickness: 7, ElasticModulus: 5, Poisson: 0.3}, Plate: edge.Wall{Thickness: 21, ElasticModulus: 5, Poisson: 0.3}, ShellFree: inf}.Solve(0.06 / 49)
	checktest.Close(t, "units", b.Centre.MeridionalBending, a.Centre.MeridionalBending*3/49, 1e-12)
	checktest.Close(t, "units", b.Shell.MeridionalBending, a.Shell.MeridionalBending*3/49, 1e-12)
	rigid, err := edge.Flat{Radius: 50, Shell: unit, Plate: thick(24.9), ShellFree: inf}.Solve(0.02)
	if err != nil || rigid.Shell.MeridionalSurface() < 2.043 {
		t.Error("a plate is under the rigid ring", rigid.Shell, err)
	}
	for name, f := range map[string]edge.Flat{
		"thinner than the wall": {Radius: 50, Shell: unit, Plate: thick(0.99), ShellFree: inf}, "half the radius": {Radius: 50, Shell: unit, Plate: thick(25.1), ShellFree: inf},
		"two metals": {Radius: 50, Shell: unit, Plate: edge.Wall{Thickness: 2, ElasticModulus: 2, Poisson: 0.3}, ShellFree: inf},
		"NaN":        {Radius: 50, Shell: unit, Plate: thick(math.NaN()), ShellFree: inf}, "short": {Radius: 50, Shell: unit, Plate: thick(2), ShellFree: 17},
	} {
		if _, err := f.Solve(0.02); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

// Step of the wall at a girth seam, mid-lines in line, R/t 100: bending over the axial stress of the thinner wall, by finite
// element 0.148 and 0.441 at 1.5 and 2 (computed); and a change of units.
func TestStep(t *testing.T) {
	for _, row := range []struct {
		t2   float64
		want string
	}{{1.5, "0.148"}, {2, "0.441"}} {
		j, err := step(row.t2, 0).Solve(edge.Gas(0.01, 100))
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "bending", (j.PeakShell()-0.5)/0.5, row.want)
		scaled := edge.Step{Radius: 700, First: edge.Wall{Thickness: 7, ElasticModulus: 3, Poisson: 0.3}, Second: edge.Wall{Thickness: 7 * row.t2, ElasticModulus: 3, Poisson: 0.3}, FirstFree: inf, SecondFree: inf}
		k, _ := scaled.Solve(edge.Gas(0.01*3/49, 700))
		checktest.Close(t, "units", k.PeakShell(), j.PeakShell()*3/49, 1e-12)
	}
}

// Decay: 0.778 sqrt(R t), 4.3 % left at π/β = 2.44 sqrt(R t), two joints closer than 2.5 sqrt(R t) interact (computed).
func TestDecay(t *testing.T) {
	checktest.Printed(t, "1/β", edge.DecayLength(1, 1, 0.3), "0.778")
	checktest.Printed(t, "π/β", math.Pi*edge.DecayLength(1, 1, 0.3), "2.44")
	checktest.Printed(t, "left", math.Exp(-math.Pi), "0.043")
	if edge.Interact(25, 100, 1) || !edge.Interact(24.99, 100, 1) || !edge.Interact(math.NaN(), 100, 1) || !edge.Interact(25, math.NaN(), 1) {
		t.Error("the reach of a joint is wrong")
	}
	if !math.IsNaN(edge.DecayLength(0, 1, 0.3)) || !math.IsNaN(edge.DecayLength(1, 1, 0.6)) || !math.IsNaN(edge.Clear(1, -1)) {
		t.Error("a length of nothing is given")
	}
}

func TestStepRange(t *testing.T) {
	gas := edge.Gas(0.01, 100)
	for name, change := range map[string]func(*edge.Step){
		"offset": func(s *edge.Step) { s.Offset = -1.01 }, "short": func(s *edge.Step) { s.FirstFree = 24.9 }, "short second": func(s *edge.Step) { s.SecondFree = 35.3 },
		"thick": func(s *edge.Step) { s.Second.Thickness = 10.1 }, "NaN": func(s *edge.Step) { s.Radius = math.NaN() }, "ring": func(s *edge.Step) { s.RingArea = math.NaN() },
	} {
		s := step(2, 0.5)
		if _, err := s.Solve(gas); err != nil {
			t.Fatal(err)
		}
		change(&s)
		if _, err := s.Solve(gas); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if !math.IsNaN(edge.RingStress(1, 1, 0).Hoop) || !math.IsNaN(edge.RingStress(math.NaN(), 1, 1).Hoop) {
		t.Error("a ring of nothing has a stress")
	}
}
