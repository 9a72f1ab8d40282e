package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

const modulus = 200e9

func steel(t float64) edge.Wall {
	return edge.Wall{Thickness: t, ElasticModulus: modulus, Poisson: 0.3}
}

// A cone of 30 deg at R/t = 100, both ends, against a finite element (computed): hoop −0.718, meridional
// 3.714 at the large end, 2.897 and 3.711 at the small one. Inside diameters are chosen so that the mid-lines cross at the seam.
func TestConeJoints(t *testing.T) {
	cos, wall := math.Cos(30*deg), 0.002
	inside := 2 * (0.2 - wall/(2*cos))
	h := head(t, "cone", heads.Geometry{InsideDiameter: inside, HalfAngle: 30 * deg, Thickness: wall, TipDiameter: inside - 0.2})
	w, n := heads.Wall{Thickness: wall}, heads.Neighbour{Wall: steel(wall), Radius: 0.2, Free: 1}
	j, err := heads.SeamJoint(h, w, modulus, 0.3, n, edge.Gas(1e6, 0.2))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "meridional", j.Shell.MeridionalSurface()/1e8, 3.714, 5e-3)
	checktest.Close(t, "hoop", j.Shell.Hoop/1e8, -0.718, 0.03)
	n.Radius = 0.1
	n.Wall = steel(0.001)
	tip, err := heads.TipJoint(h, w, modulus, 0.3, n, edge.Gas(1e6, 0.1))
	if err != nil || tip.Shell.Hoop <= 0 {
		t.Errorf("the small end is not in tension: %+v, %v", tip.Shell, err)
	}
	n.Radius = 0.11
	if _, err := heads.TipJoint(h, w, modulus, 0.3, n, edge.Gas(1e6, 0.1)); err == nil {
		t.Error("walls that do not meet are taken")
	}
	whole := head(t, "cone", heads.Geometry{InsideDiameter: inside, HalfAngle: 30 * deg, Thickness: wall})
	if _, err := heads.TipJoint(whole, w, modulus, 0.3, n, edge.Gas(1e6, 0.1)); err == nil {
		t.Error("a cone without a tip has a joint there")
	}
}

// Hemisphere on the same mid-line: 0.75 p R/t at the joint (Timoshenko and Woinowsky-Krieger, recalled). A wall thicker outwards adds
// its offset; a short straight flange of another wall has no closed form, a long one is the head's own cylinder.
func TestDomeJoints(t *testing.T) {
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 0.398, Thickness: 0.002})
	w, n := heads.Wall{Thickness: 0.002}, heads.Neighbour{Wall: steel(0.002), Radius: 0.2, Free: 1}
	gas := edge.Gas(1e6, 0.2)
	j, err := heads.SeamJoint(h, w, modulus, 0.3, n, gas)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "hoop", j.Shell.Hoop/1e8, 0.75, 1e-9)
	n.Wall, n.Radius = steel(0.003), 0.2005
	off, err := heads.SeamJoint(h, w, modulus, 0.3, n, edge.Gas(1e6, 0.2005))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "offset moment", off.MHead-off.MShell, 1e6*0.2005/2*-0.0005, 1e-9)
	for flange, ok := range map[float64]bool{0.02: false, 0.06: true} {
		f := head(t, "hemisphere", heads.Geometry{InsideDiameter: 0.398, Thickness: 0.002, StraightFlange: flange})
		k, err := heads.SeamJoint(f, w, modulus, 0.3, n, gas)
		if (err == nil) != ok {
			t.Errorf("flange of %g: %v", flange, err)
		} else if ok {
			checktest.Close(t, "own cylinder", k.Shell.Hoop/1e8, 0.75, 1e-9)
		}
		if clear, short := heads.ShortFlange(f, w); short == ok || math.Abs(clear-0.05) > 1e-9 {
			t.Errorf("flange of %g: needs %g, short %v", flange, clear, short)
		}
	}
	for shape, g := range map[string]heads.Geometry{
		"torisphere": {InsideDiameter: 0.398, CrownRadius: 0.398, KnuckleRadius: 0.04, Thickness: 0.002},
		"flat":       {InsideDiameter: 0.398, Thickness: 0.02}, "hemisphere": {InsideDiameter: 0.398, Thickness: 0.002, Inward: true},
	} {
		if _, err := heads.SeamJoint(head(t, shape, g), w, modulus, 0.3, n, gas); err == nil {
			t.Errorf("%s has a closed form", shape)
		}
	}
	if _, short := heads.ShortFlange(h, w); short {
		t.Error("a head without a flange has a short one")
	}
	n.Radius = math.NaN()
	if _, err := heads.SeamJoint(h, w, modulus, 0.3, n, gas); err == nil {
		t.Error("no radius is taken")
	}
}

// By hand: hemisphere R 0.2 m, p 0.3 MPa on its convex side, S 100 MPa: 1.67 × 0.3e6 × 0.2/(2 × 100e6 − 0.2 × 0.501e6) = 0.50125 mm.
func TestConvexByHand(t *testing.T) {
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 0.4, Thickness: 0.002, Inward: true})
	got, _, src, err := heads.RequiredThicknessConvex(h, material.Vessel, 0.3e6, 100e6, heads.RuleOptions{})
	if err != nil || src.How != check.Memory {
		t.Fatal(err, src)
	}
	checktest.Printed(t, "t", got*1e3, "0.50125")
	w := heads.Wall{Thickness: 0.00051}
	status(t, "enough", heads.CheckThicknessConvex(h, "aft", 0.3e6, heads.Demand{}, w, vessel(100e6)), check.Satisfied)
	w.Thickness = 0.0005
	status(t, "short", heads.CheckThicknessConvex(h, "aft", 0.3e6, heads.Demand{}, w, vessel(100e6)), check.NotSatisfied)
	for _, p := range []float64{-1, math.NaN()} {
		status(t, "pressure", heads.CheckThicknessConvex(h, "aft", p, heads.Demand{}, w, vessel(100e6)), check.NotAssessed)
	}
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 0.4, Thickness: 0.02})
	status(t, "flat", heads.CheckThicknessConvex(flat, "aft", 1e5, heads.Demand{}, w, vessel(100e6)), check.NotApplicable)
}

// By hand: tip of 60 mm, p 2.5 MPa, S 120 MPa, C 0.33: 60 sqrt(0.33 × 2.5/120) = 4.975 mm.
func TestTipPlateByHand(t *testing.T) {
	h := head(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 30 * deg, Thickness: 0.008, TipDiameter: 0.06})
	l := material.Limits{Rule: material.Vessel, S: 120e6}
	r := heads.CheckTipPlate(h, "aft", 2.5e6, heads.TipPlate{Thickness: 0.006, Efficiency: 1}, l)
	checktest.Printed(t, "t", r.Demand.Value*1e3, "4.975")
	status(t, "plate", r, check.Satisfied)
	status(t, "thin plate", heads.CheckTipPlate(h, "aft", 2.5e6, heads.TipPlate{Thickness: 0.0049, Efficiency: 1}, l), check.NotSatisfied)
	status(t, "corner factor", heads.CheckTipPlate(h, "aft", 2.5e6, heads.TipPlate{Thickness: 0.006, Efficiency: 1, CornerFactor: 0.19}, l), check.NotAssessed)
	status(t, "no strength", heads.CheckTipPlate(h, "aft", 2.5e6, heads.TipPlate{Thickness: 0.006, Efficiency: 1}, material.Limits{}), check.NotAssessed)
	status(t, "pressure", heads.CheckTipPlate(h, "aft", math.NaN(), heads.TipPlate{Thickness: 0.006, Efficiency: 1}, l), check.NotAssessed)
	status(t, "vacuum", heads.CheckTipPlate(h, "aft", -1, heads.TipPlate{Thickness: 0.006, Efficiency: 1}, l), check.NotAssessed)
	whole := head(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 30 * deg, Thickness: 0.008})
	status(t, "no tip", heads.CheckTipPlate(whole, "aft", 2.5e6, heads.TipPlate{Thickness: 0.006, Efficiency: 1}, l), check.NotAssessed)
}
