package blank_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// A cover of 12 holes of 11 mm on a circle of 240 mm and one port: the holes lie on the
// circle, half a kerf inside of their edge, 240 sin 15° = 62.12 mm apart; the edge is
// scribed and not cut.
func TestCover(t *testing.T) {
	wall := port.Wall{Surface: port.Flat, Thickness: 0.025, Radius: 0.1}
	fill := port.Port{Name: "fill", Radius: 0.05, Parallel: true, OutsideDiameter: 0.0213, TubeWall: 0.003}
	c := blank.Cover{Name: "head-forward", Thickness: 0.025, Count: 12, Circle: 0.24, Hole: 0.011, Seal: 0.21, Edge: 0.273, Wall: wall, Forward: true, Ports: []port.Port{fill}}
	o := blank.Options{Kerf: 0.001}
	b := c.Blank(o)
	if b.Err != nil || len(b.Cut) != 13 {
		t.Fatalf("%v, %d cuts", b.Err, len(b.Cut))
	}
	bolts, first := 0, false
	for _, path := range b.Cut {
		least, most := path.Bounds()
		x, y, wide := (least.X+most.X)/2, (least.Y+most.Y)/2, most.X-least.X
		if math.Abs(math.Hypot(x, y)-0.12) < 1e-9 && math.Abs(wide-0.010) < 1e-9 {
			bolts++
			first = first || math.Abs(x) < 1e-9 && y > 0
		} else if math.Abs(y-0.05) > 1e-9 || math.Abs(wide-0.0203) > 1e-9 {
			t.Errorf("a hole of %g m at %g, %g", wide, x, y)
		}
		if wide > 0.2 {
			t.Error("the edge is cut")
		}
	}
	if bolts != 12 || !first {
		t.Errorf("%d bolt holes, the first at clock 0: %v", bolts, first)
	}
	for _, q := range b.Measures {
		if strings.Contains(q.Name, "from one bolt hole") {
			checktest.Printed(t, "pitch", q.Value*1e3, "62.12")
		}
	}
	for name, change := range map[string]func(*blank.Cover, *blank.Options){
		"holes that touch":    func(c *blank.Cover, _ *blank.Options) { c.Count = 100 },
		"no holes":            func(c *blank.Cover, _ *blank.Options) { c.Count = 0 },
		"a kerf as the hole":  func(c *blank.Cover, o *blank.Options) { o.Kerf = 0.011 },
		"edge over the holes": func(c *blank.Cover, _ *blank.Options) { c.Edge = 0.245 },
		"a kerf of nothing":   func(_ *blank.Cover, o *blank.Options) { o.Kerf = math.NaN() },
		"over the seal":       func(c *blank.Cover, _ *blank.Options) { c.Seal, c.Ports[0].Radius = 0.11, 0.05 },
		"over the bolts":      func(c *blank.Cover, _ *blank.Options) { c.Seal, c.Circle, c.Count = 0, 0.11, 4 },
		"a port of nothing":   func(c *blank.Cover, _ *blank.Options) { c.Ports[0].TubeWall = math.NaN() },
	} {
		d, o := c, o
		d.Ports = []port.Port{fill}
		change(&d, &o)
		if b := d.Blank(o); b.Err == nil || len(b.Cut) > 0 {
			t.Errorf("%s: drawn", name)
		}
	}
}
