package port_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/heads/port"
	"proofsheet/report/check"
)

// drawnPort draws a port on any wall, sound or not; lengths in m.
func drawnPort(t *rapid.T) (port.Port, port.Wall, port.Strengths) {
	number := func(label string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, label) }
	r := number("radius", 0.1, 0.5)
	w := port.Wall{Thickness: number("wall", 1.5, 15) * mm, Radius: r, Length: number("length", 0.3, 2)}
	switch rapid.SampledFrom([]string{"cylinder", "cone", "toricone", "sphere", "ellipsoid", "torisphere"}).Draw(t, "surface") {
	case "cylinder":
		w.Surface = port.Cylinder
	case "cone":
		w.Surface, w.HalfApex, w.Tip = port.Cone, number("half angle", 30, 80)*deg, number("tip", 0, 0.2)*r
	case "toricone":
		w.Surface, w.HalfApex, w.KnuckleAtEdge, w.Knuckle = port.Cone, number("half angle", 30, 80)*deg, true, 0.15*r
		w.Edge = 0.85*r + w.Knuckle*math.Cos(w.HalfApex)
	case "sphere":
		w.Surface = port.Sphere
	case "ellipsoid":
		w.Surface, w.Depth = port.Ellipsoid, r/number("aspect", 1.05, 2.6)
	case "torisphere":
		w.Surface, w.Crown, w.Knuckle = port.Torisphere, number("crown", 1.2, 2)*r, number("knuckle", 0.12, 0.3)*r
	}
	od := number("tube", 8, 90) * mm
	p := port.Port{Name: "p", OutsideDiameter: od, TubeWall: number("tube wall", 0.02, 0.3) * od, Radius: number("place", 0, 1) * r, Station: number("station", 0, 1) * w.Length,
		Parallel: w.Surface != port.Cylinder && rapid.Bool().Draw(t, "parallel"), Fit: port.Fit(rapid.IntRange(0, 2).Draw(t, "fit")),
		Outside: number("outside", 0, 60) * mm, OutsideLeg: number("leg", 0, 8) * mm, InsideLeg: number("inside leg", 0, 8) * mm, FullGroove: rapid.Bool().Draw(t, "full")}
	if p.Fit == port.Through {
		p.Inside, p.InsideWall = number("inside", 0.1, 20)*mm, p.TubeWall
	}
	e := number("efficiency", 0.6, 1)
	s := port.Strengths{Wall: number("S_v", 40, 200) * mpa, Tube: number("S_n", 40, 200) * mpa, Pad: number("S_p", 40, 200) * mpa, EfficiencyMeridional: e, EfficiencyTransverse: e, EfficiencyTube: 1}
	switch rapid.IntRange(0, 4).Draw(t, "reinforced") {
	case 1:
		p.Pad = &port.Pad{OutsideDiameter: number("pad", 1, 4) * od, Thickness: number("pad thickness", 1, 12) * mm, Leg: number("pad leg", 0, 6) * mm}
	case 2:
		p.Pad = &port.Pad{Lip: number("lip", 1, 60) * mm, Thickness: number("pad thickness", 1, 12) * mm, Leg: number("pad leg", 0, 6) * mm}
	case 3:
		p.Pad = &port.Pad{OutsideDiameter: number("pad", 1, 3) * od, Length: number("pad length", 1, 5) * od, Thickness: number("pad thickness", 1, 12) * mm}
	case 4:
		p.Insert = &port.Insert{OutsideDiameter: number("insert", 1, 5) * od, Thickness: number("insert thickness", 1, 2) * w.Thickness, Efficiency: number("insert efficiency", 0.5, 1)}
	}
	return p, w, s
}

// More pressure never makes a port better: no check that failed or was not made
// holds at a higher one, and a margin does not rise. Weld paths are left out: they
// develop what tube and pad bring, which is less the more the tube needs for itself.
func TestMorePressureIsWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, w, s := drawnPort(t)
		low := rapid.Float64Range(0.01, 8).Draw(t, "pressure") * mpa
		high := low * rapid.Float64Range(1.0001, 3).Draw(t, "more")
		at := func(pressure float64) []check.Result {
			r, _ := p.Area(w, port.Load{Pressure: pressure}, s) // an error leaves the checks not made
			return []check.Result{r.Check("p"), r.CheckNeck("p"), r.CheckThrust("p", port.External{Force: 100, Range: 3 * s.Wall, RangeFormula: "3 S"}), r.CheckInsert("p")}
		}
		a, b := at(low), at(high)
		for i := range a {
			if b[i].Status() == check.Satisfied && a[i].Status() != check.Satisfied {
				t.Errorf("%s: %v at %g Pa (%s %s), satisfied at %g Pa", a[i].ID, a[i].Status(), low, a[i].Note, a[i].Reason(), high)
			}
			if x, y := a[i].Margin(), b[i].Margin(); b[i].Status() == check.Satisfied && y > x*(1+1e-9)+1e-9 {
				t.Errorf("%s: margin %g at %g Pa, %g at %g Pa: %s", a[i].ID, x, low, y, high, b[i].Note)
			}
		}
	})
}

// Of two ports turned together round the axis, and named either way round, the
// distance and the verdict stay.
func TestPairsTurnedAndSwapped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, w, s := drawnPort(t)
		q := p
		q.Name, q.Clock, q.Radius = "q", rapid.Float64Range(0.1, 6).Draw(t, "clock"), p.Radius*rapid.Float64Range(0.6, 1.2).Draw(t, "radius")
		d, _, _ := port.CentreDistance(w, p, q)
		back, _, _ := port.CentreDistance(w, q, p)
		if math.Abs(d-back) > 1e-9*d {
			t.Fatalf("there %g, back %g", d, back)
		}
		load := port.Load{Pressure: mpa}
		one := port.CheckSpacing(w, []port.Member{{Port: p, Load: load, Strengths: s}, {Port: q, Load: load, Strengths: s}}, 0)
		by := rapid.Float64Range(-7, 7).Draw(t, "turn")
		p.Clock, q.Clock = p.Clock+by, q.Clock+by
		two := port.CheckSpacing(w, []port.Member{{Port: q, Load: load, Strengths: s}, {Port: p, Load: load, Strengths: s}}, 1)
		if one.Status() != two.Status() || math.Abs(one.Margin()-two.Margin()) > 1e-6*(1+math.Abs(one.Margin())) {
			t.Errorf("%v %g, turned %v %g", one.Status(), one.Margin(), two.Status(), two.Margin())
		}
	})
}
