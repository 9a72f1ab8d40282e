package port_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
)

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	dome := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	barrel := port.Wall{Surface: port.Cylinder, Thickness: 3 * mm, Radius: 150 * mm, Length: 1}
	tip := cone(45, 3)
	tip.Tip = 50 * mm
	rim := cone(45, 3)
	rim.Radius = 72 * mm
	knuckle := rim
	knuckle.KnuckleAtEdge, knuckle.Radius, knuckle.Edge = true, 90*mm, 72*mm
	beyond := tube(25.4, 2, 60)
	beyond.Station = 0.5
	side := tube(25.4, 2, 0)
	side.Parallel, side.Station = false, 12*mm
	inside := beyond
	inside.Inside = 5 * mm
	big := side
	big.OutsideDiameter, big.Station = 160*mm, 0.5
	for _, row := range []struct {
		name string
		p    port.Port
		w    port.Wall
		want string
	}{
		{"apex covered", tube(25.4, 2, 12), cone(45, 3), "apex"},
		{"on the axis of a cone", tube(25.4, 2, 0), cone(45, 3), "apex"},
		{"over the rim of a cone", beyond, rim, "rim"},
		{"into the knuckle of a cone", beyond, knuckle, "knuckle"},
		{"over the tip", beyond, tip, "tip"},
		{"over the rim of a dome", tube(25.4, 2, 140), dome, "rim"},
		{"steeper than 60 degrees", beyond, cone(29.9, 3), "60"},
		{"steep dome", tube(10, 2, 135), dome, "60"},
		{"parallel on the cylinder", beyond, barrel, "parallel"},
		{"over the cylinder's seam", side, barrel, "seam"},
		{"too large for the cylinder", big, barrel, "UG-36"},
		{"no surface", beyond, port.Wall{Thickness: 1, Radius: 1}, "not described"},
		{"no bore", tube(25.4, 12.7, 60), cone(45, 3), "no bore"},
		{"NaN radius", tube(25.4, 2, nan), cone(45, 3), "radius"},
		{"NaN diameter", tube(nan, 2, 60), cone(45, 3), "outside diameter"},
		{"NaN tube wall", tube(25.4, nan, 60), cone(45, 3), "tube wall"},
		{"NaN wall", beyond, cone(45, nan), "wall thickness"},
		{"NaN half angle", beyond, cone(nan, 3), "half angle"},
		{"inside without its wall", inside, cone(45, 3), "inside wall"},
	} {
		c, err := row.p.Chords(row.w)
		if err == nil || !strings.Contains(err.Error(), row.want) || !math.IsNaN(c.Meridional) {
			t.Errorf("%s: chord %g, error %v; want NaN and %q", row.name, c.Meridional, err, row.want)
		}
		load, s := port.Load{Pressure: mpa}, strengths(10000, 10000)
		r, _ := row.p.Area(row.w, load, s)
		for _, got := range []check.Result{r.Check("p"), r.CheckNeck("p"), r.CheckWeld("p"), r.CheckThrust("p", port.External{}), row.p.CheckPlacement(row.w)} {
			if got.Status() != check.NotAssessed || got.Reason() == "" {
				t.Errorf("%s: %s is %v", row.name, got.ID, got.Status())
			}
		}
	}
}

func TestObliquityBands(t *testing.T) {
	for _, row := range []struct {
		α        float64
		cautions int
	}{{80, 0}, {45, 0}, {44.9, 1}, {30, 1}} {
		c, err := tube(10, 1, 60).Chords(cone(row.α, 3))
		if err != nil || len(c.Cautions) != row.cautions {
			t.Errorf("α %g: %d cautions (%v), want %d", row.α, len(c.Cautions), err, row.cautions)
		}
	}
}

func TestLoadsAndStrengthsRefused(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	for name, change := range map[string]func(l *port.Load, s *port.Strengths){
		"NaN pressure":          func(l *port.Load, s *port.Strengths) { l.Pressure = math.NaN() },
		"suction":               func(l *port.Load, s *port.Strengths) { l.Pressure = -1 },
		"pressure too high":     func(l *port.Load, s *port.Strengths) { l.Pressure = 31 * mpa },
		"NaN resultant":         func(l *port.Load, s *port.Strengths) { l.Hoop = math.NaN() },
		"NaN strength":          func(l *port.Load, s *port.Strengths) { s.Wall = math.NaN() },
		"no tube strength":      func(l *port.Load, s *port.Strengths) { s.Tube = 0 },
		"efficiency over 1":     func(l *port.Load, s *port.Strengths) { s.EfficiencyMeridional = 1.01 },
		"no efficiency":         func(l *port.Load, s *port.Strengths) { s.EfficiencyTransverse = 0 },
		"no tube efficiency":    func(l *port.Load, s *port.Strengths) { s.EfficiencyTube = 0 },
		"tube efficiency low":   func(l *port.Load, s *port.Strengths) { s.EfficiencyTube = 0.2999 },
		"tube efficiency high":  func(l *port.Load, s *port.Strengths) { s.EfficiencyTube = 1.0001 },
		"NaN tube efficiency":   func(l *port.Load, s *port.Strengths) { s.EfficiencyTube = math.NaN() },
		"pressure for the seam": func(l *port.Load, s *port.Strengths) { s.EfficiencyTube, l.Pressure = 0.3, 9.3*mpa },
		"convex, nothing asked": func(l *port.Load, s *port.Strengths) { l.Convex = true },
		"thickness slipped in":  func(l *port.Load, s *port.Strengths) { l.Required = 1e-6 },
	} {
		l, q := load, s
		change(&l, &q)
		r, err := p.Area(w, l, q)
		if err == nil || r.Check("p").Status() != check.NotAssessed {
			t.Errorf("%s: error %v, %v", name, err, r.Check("p").Status())
		}
	}
	if got := (port.AreaReport{}).Check("p").Status(); got != check.NotAssessed {
		t.Errorf("an empty report: %v", got)
	}
}

// A groove counts only metal that is there: at the wall left for strength it is
// admitted, deeper it is refused, in words that say what is left.
func TestGrooveDeeperThanTheWall(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	for depth, ok := range map[float64]bool{w.Thickness * 0.99: true, w.Thickness: true, w.Thickness * 1.01: false} {
		p.Groove, p.FullGroove = depth, false
		r, err := p.Area(w, load, s)
		if (err == nil) != ok {
			t.Errorf("groove %g m in %g m: %v", depth, w.Thickness, err)
		}
		if !ok && (r.CheckWeld("p").Status() != check.NotAssessed || !strings.Contains(err.Error(), "of wall left")) {
			t.Errorf("groove %g m: %v, %v", depth, r.CheckWeld("p").Status(), err)
		}
	}
}
