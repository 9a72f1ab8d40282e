package port_test

// Holes that reach into the knuckle of a toricone: its profile against the head's
// own meridian, its required wall by hand, and what no longer counts.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// toricone is a head of 400 mm inside, 45 degrees, knuckle 60 mm inside, wall 4 mm.
func toricone(t *testing.T) (heads.Head, port.Wall) {
	t.Helper()
	s, _ := heads.FindShape("toricone")
	h, err := s.New(heads.Geometry{InsideDiameter: 0.4, HalfAngle: 45 * deg, KnuckleRadius: 0.06, Thickness: 4 * mm})
	if err != nil {
		t.Fatal(err)
	}
	w, err := port.OnHead(h, 4*mm)
	if err != nil {
		t.Fatal(err)
	}
	return h, w
}

// The chord of a hole across the knuckle's tangent (mid-surface tangent at 140 + 62
// cos 45 = 183.84 mm) is the straight line between two points of the head's own
// mid-surface; the obliquity is the head's normal.
func TestHoleAcrossAKnuckle(t *testing.T) {
	h, w := toricone(t)
	for _, e := range []float64{170, 180, 186} {
		p := tube(20, 2, e)
		c, err := p.Chords(w)
		if err != nil {
			t.Fatal(err)
		}
		at := func(r float64) heads.Point {
			x, err := h.AxialAt(r*mm, 2*mm)
			if err != nil {
				t.Fatal(err)
			}
			pt, err := h.PointAt(r*mm, 2*mm)
			if err != nil {
				t.Fatal(err)
			}
			pt.X = x
			return pt
		}
		near, far := at(e-10), at(e+10)
		checktest.Close(t, "chord", c.OutsideMeridional, math.Hypot(20*mm, far.X-near.X), 1e-9)
		checktest.Close(t, "obliquity", c.Obliquity, at(e).Phi, 1e-9)
		if into := e > 173.84; into != (len(c.Cautions) > 0 && strings.Contains(strings.Join(c.Cautions, " "), "knuckle")) {
			t.Errorf("e %g: cautions %q", e, c.Cautions)
		}
	}
	if _, err := tube(20, 2, 193).Chords(w); err == nil || !strings.Contains(err.Error(), "rim") {
		t.Errorf("over the end of the knuckle: %v", err)
	}
}

// With p 2, S 80 MPa: L = (140 + 60 cos 45)/cos 45 = 257.99 mm, M = [3 + √(257.99/60)]/4 =
// 1.26840; p L M/(2S − 0.2p) = 4.1006, p L/(S − 0.6p) = 6.5480 mm.
func TestWholeHeadThickness(t *testing.T) {
	_, w := toricone(t)
	into, err := tube(20, 2, 180).Area(w, port.Load{Pressure: 2 * mpa}, port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "tr", into.RequiredWall/mm, "6.5480")
	if into.Piping != nil || len(into.Pressure) != 0 || into.Transverse.Factor != 1 {
		t.Errorf("in a knuckle area replacement alone speaks, F 1: piping %v, pressure %d, F %g", into.Piping, len(into.Pressure), into.Transverse.Factor)
	}
	if got := into.CheckThrust("p", port.External{Force: 1, Range: 300 * mpa, RangeFormula: "3 S"}).Status(); got != check.NotAssessed {
		t.Errorf("a load from outside in a knuckle: %v", got)
	}
	clear, err := tube(20, 2, 160).Area(w, port.Load{Pressure: 2 * mpa}, port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "clear of it, the cone at the port", clear.RequiredWall/mm, 2*160/(math.Cos(45*deg)*(80-1.2)), 1e-12)
	// Metal stops at the tangent: (183.84 − 160)/sin 45 = 33.71 mm is past d = 16/sin 45 =
	// 22.63; a wider tube is cut off there.
	wide, err := tube(40, 2, 160).Area(w, port.Load{Pressure: 2 * mpa}, port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "cut at the tangent", wide.Meridional.Outboard.Limit, (0.140+0.062*math.Cos(45*deg)-0.160)/math.Sin(45*deg), 1e-9)
}

// A hole all in a torisphere's knuckle counts no metal of the crown: inboard it is
// cut at the border.
func TestAllInTheKnuckle(t *testing.T) {
	w := port.Wall{Surface: port.Torisphere, Thickness: 4 * mm, Radius: 202 * mm, Crown: 402 * mm, Knuckle: 82 * mm}
	rt := 402.0 * (202 - 82) / (402 - 82)
	p := tube(12, 2, 165)
	p.Parallel = false
	r, err := p.Area(w, port.Load{Pressure: 1 * mpa}, port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	border := 82 * mm * (math.Asin((165.0-120)/82) - math.Asin((rt-120)/82))
	if want := math.Min(border, r.Meridional.ParallelLimit); r.Meridional.Inboard.Limit > want*(1+1e-12) {
		t.Errorf("inboard limit %g m, the border is at %g m", r.Meridional.Inboard.Limit, border)
	}
	p.Radius = 157 * mm
	if r, err = p.Area(w, port.Load{Pressure: 1 * mpa}, port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}); err != nil {
		t.Fatal(err)
	}
	border = 82 * mm * (math.Asin((157.0-120)/82) - math.Asin((rt-120)/82))
	checktest.Close(t, "cut at the border", r.Meridional.Inboard.Limit, border, 1e-9)
}
