package edge_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

// A load so large, or a wall so soft, that the edge equations run over the end of the numbers has no answer.
func TestNoSolution(t *testing.T) {
	soft := edge.Wall{Thickness: 1, ElasticModulus: math.SmallestNonzeroFloat64, Poisson: 0.3}
	cone, c := corner(30, 100, 1, false), edge.Cap{Radius: 100, HalfOpening: 60 * deg, Shell: unit, Head: unit, ShellFree: inf}
	d, s := dome(100, 1, 1), step(1, 0)
	solvers := map[string]func(edge.Load) (edge.Joint, error){"cone": cone.Solve, "cap": c.Solve, "dome": d.Solve, "step": s.Solve}
	for name, solve := range solvers {
		if _, err := solve(edge.Gas(1, 100)); err != nil {
			t.Fatal(name, err)
		}
		j, err := solve(edge.Gas(1e306, 100))
		if err == nil || j.Displacement != 0 {
			t.Errorf("%s: an answer of %g under a load without end, %v", name, j.Displacement, err)
		}
	}
	cone.Shell, cone.Cone = soft, soft
	_, err := cone.Solve(edge.Gas(1, 100))
	checktest.Refused(t, "a wall without stiffness", err, "no solution")
	_, err = edge.GirthHiLo(step(1, 0.5), edge.Gas(1e306, 100))
	checktest.Refused(t, "hi-lo", err, "not a number")
	c.ShellFree = 1
	_, err = c.Solve(edge.Gas(1, 100))
	checktest.Refused(t, "a cap on a short cylinder", err, "cylinder")
	Y, X, err := edge.LargeEndCoefficients(61*deg, 100, 0.3)
	checktest.Refused(t, "coefficients beyond 60 deg", err, "half apex angle")
	if !math.IsNaN(Y) || !math.IsNaN(X) {
		t.Errorf("Y %g, X %g", Y, X)
	}
	limit, err := edge.PrimaryAtProof(0, math.NaN())
	checktest.Refused(t, "no yield strength", err, "yield strength")
	if !math.IsNaN(limit) {
		t.Errorf("a limit of %g without a strength", limit)
	}
}

// At proof a weld of efficiency 0.5 has half the yield strength across it: 100/(0.5 × 170).
func TestProofAcrossAWeld(t *testing.T) {
	j := joint(edge.Stress{Meridional: 100e6}, vessel)
	j.Numerical.Places[0].Efficiency = 0.5
	r := j.CheckProof()
	checktest.Close(t, "use", r.Demand.Value/r.Capacity.Value, 100/85.0, 1e-12)
	if r.Status() != check.NotSatisfied || !strings.Contains(r.Note, "across the weld") {
		t.Errorf("%v, %s", r.Status(), r.Note)
	}
}

// The range needs every other case: one without a stress, or without a number for it, leaves the joint not assessed.
func TestRangeOfOtherCases(t *testing.T) {
	s := edge.Stress{Meridional: 60e6, Hoop: 20e6, MeridionalBending: 100e6}
	nan := place(edge.Stress{Hoop: math.NaN()}, vessel)
	for name, change := range map[string]func(*edge.Junction){
		"no mesh":      func(j *edge.Junction) { j.Others = []edge.Answer{{Err: errors.New("no mesh")}} },
		"not a number": func(j *edge.Junction) { j.Others = []edge.Answer{nan} },
		"no stress at this place": func(j *edge.Junction) {
			j.Extremes = [][]edge.Stress{}
		},
		"another case is not a number": func(j *edge.Junction) { j.Extremes = [][]edge.Stress{{{HoopBending: math.Inf(-1)}}} },
	} {
		j := joint(s, vessel)
		if change(&j); j.Check().Status() != check.NotAssessed {
			t.Errorf("%s: %v", name, j.Check().Status())
		}
		checktest.Refused(t, name, j.Check().Err, name)
	}
	// By hand: 160 on one face here, −40 − 100 in the other case: 300 against min(345, 340).
	j := joint(s, vessel)
	j.Extremes = [][]edge.Stress{{s, {Meridional: -40e6, MeridionalBending: -100e6}}}
	checktest.Close(t, "range", j.Check().Demand.Value, 300e6, 1e-12)
}

// A closed form of other places stands beside nothing, and the note says so.
func TestNothingBeside(t *testing.T) {
	j := joint(edge.Stress{Meridional: 60e6}, vessel)
	j.Closed.Places[0].Where = "head at the joint"
	if r := j.Check(); !strings.Contains(r.Note, "no closed form beside it") {
		t.Errorf("%q", r.Note)
	}
}
