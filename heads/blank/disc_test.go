package blank_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// Closed forms of area and meridian: half sphere 2πR² and πR/2; half oblate
// spheroid πa²[1 + (1 − ε²)/ε · artanh ε]; crown and knuckle of a torisphere
// 2πL²(1 − cos φ) and 2πr[c(π/2 − φ) + r cos φ], sin φ = c/(L − r).
func TestDiameters(t *testing.T) {
	area, length := blank.Diameters(shaped(t, "hemisphere", heads.Geometry{InsideDiameter: 0.396, Thickness: 4 * mm, StraightFlange: 0.02}), 4*mm)
	checktest.Close(t, "hemisphere, area", area, math.Sqrt(4*(2*0.2*0.2+2*0.2*0.02)), 1e-6)
	checktest.Close(t, "hemisphere, meridian", length, math.Pi*0.2+0.04, 1e-6)

	area, length = blank.Diameters(shaped(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 1e-9}), 1e-9)
	ε := math.Sqrt(0.75)
	checktest.Close(t, "ellipsoid, area", area, math.Sqrt(4*0.2*0.2*(1+0.25/ε*math.Atanh(ε))), 1e-6)
	checktest.Close(t, "ellipsoid, meridian", length, 0.4*1.2110560275684594, 1e-6) // E(3/4)

	const L, r, R = 0.4, 0.04, 0.2
	φ := math.Asin((R - r) / (L - r))
	area, length = blank.Diameters(shaped(t, "torisphere", heads.Geometry{InsideDiameter: 2 * R, CrownRadius: L, KnuckleRadius: r, Thickness: 1e-9}), 1e-9)
	surface := 2*math.Pi*L*L*(1-math.Cos(φ)) + 2*math.Pi*r*((R-r)*(math.Pi/2-φ)+r*math.Cos(φ))
	checktest.Close(t, "torisphere, area", area, math.Sqrt(4*surface/math.Pi), 1e-6)
	checktest.Close(t, "torisphere, meridian", length, 2*(L*φ+r*(math.Pi/2-φ)), 1e-6)

	if area, length := blank.Diameters(shaped(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 0.5, TipDiameter: 0.1, Thickness: mm}), mm); !math.IsNaN(area) || !math.IsNaN(length) {
		t.Error("a disc for a cone with a hole in its middle")
	}
}

func TestDiscs(t *testing.T) {
	h := shaped(t, "ellipsoid", heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 4 * mm})
	w, err := port.OnHead(h, 4*mm)
	if err != nil {
		t.Fatal(err)
	}
	p := tube(30, 60)
	p.Clock = 90 * deg
	d := blank.Disc{Name: "head-aft", Title: "Aft head", Head: h, Wall: w, Ports: []port.Port{p}}
	b := d.Blank(blank.Options{Kerf: 2 * mm})
	if b.Err != nil || len(b.Cut) != 1 || !strings.Contains(strings.Join(b.Notes, ""), "common practice") {
		t.Errorf("%v, %d cuts, %v", b.Err, len(b.Cut), b.Notes)
	}
	checktest.Close(t, "kerf", b.Cut[0].Length(), math.Pi*(value(t, b, "D_length")+2*mm), 1e-12)
	plan := d.Plan(blank.Options{})
	if plan.Err != nil || len(plan.Cut) != 0 || !strings.Contains(strings.Join(plan.Cautions, ""), "not a flat blank") {
		t.Errorf("plan: %v, %d cuts, %v", plan.Err, len(plan.Cut), plan.Cautions)
	}
	checktest.Printed(t, "to the mark", value(t, plan, "centre of p from the zero mark, in the plan")/mm, "210.723") // √(60² + 202²)
}

// A flat head seen from outside: clock rises clockwise on the aft one, the other way
// on the forward one.
func TestFlatHead(t *testing.T) {
	h := shaped(t, "flat", heads.Geometry{InsideDiameter: 0.2, Thickness: 10 * mm})
	w, err := port.OnHead(h, 10*mm)
	if err != nil {
		t.Fatal(err)
	}
	p := tube(20, 50)
	p.Clock = 90 * deg
	for _, forward := range []bool{false, true} {
		d := blank.Disc{Name: "head", Head: h, Wall: w, Forward: forward, Ports: []port.Port{p}}
		b := d.Blank(blank.Options{})
		if b.Err != nil {
			t.Fatal(b.Err)
		}
		least, most := b.Cut[1].Bounds()
		if x := (least.X + most.X) / 2; (x > 0) == forward || math.Abs(math.Abs(x)-50*mm) > 1e-6 {
			t.Errorf("forward %v: the hole stands at x = %g", forward, x)
		}
		checktest.Close(t, "area", value(t, b, "F"), math.Pi*(0.1*0.1-0.01*0.01), 1e-6)
		d.Ports[0].Radius = 85 * mm
		if b := d.Blank(blank.Options{}); b.Err != nil || !strings.Contains(strings.Join(b.Cautions, ""), "to the edge") {
			t.Errorf("near the edge: %v, %v", b.Err, b.Cautions)
		}
		d.Ports[0].Radius = 95 * mm
		if b := d.Blank(blank.Options{}); b.Err == nil {
			t.Error("over the edge, and drawn")
		}
		d.Ports[0].Radius = 50 * mm
	}
}
