package pdf

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// TestPlanClock has a port at a quarter turn: to the right for one who looks forward
// at the aft bulkhead, to the left for one who looks aft at the forward one.
func TestPlanClock(t *testing.T) {
	for _, row := range []struct {
		end  string
		left bool
		says string
	}{{"aft", false, "clockwise here"}, {"forward", true, "anticlockwise here"}} {
		s := &report.Sheet{Section: &report.Section{
			Outlines: []report.Outline{{Part: "cylinder", Outside: []report.Point{{Z: 0, R: 0.2}}}},
			Ports: []report.PortOutline{{Name: "fill", Part: "head." + row.end, Clock: math.Pi / 2, Wall: report.Point{R: 0.1},
				Outer: report.Point{Z: 1}, OutsideDiameter: 0.04, InsideDiameter: 0.03}},
		}}
		f := planFigure(s, row.end, 180)
		if f == nil {
			t.Fatalf("%s: no figure", row.end)
		}
		says, named := false, false
		for _, text := range f.Texts {
			says = says || strings.Contains(text.Text, " "+row.says)
			if strings.HasPrefix(text.Text, "fill 90°") {
				named = true
				if left := text.Align == drawing.Right && text.At.X < 90; left != row.left {
					t.Errorf("%s: the port is named at %g mm", row.end, text.At.X)
				}
			}
		}
		if !says || !named {
			t.Errorf("%s: says how the clock runs: %v; names the port: %v", row.end, says, named)
		}
		tube := f.Polylines[1].Points // after the rim
		x, wide, high := 0.0, extentOf(tube, true), extentOf(tube, false)
		for _, q := range tube {
			x += q.X / float64(len(tube))
		}
		if (x < 90) != row.left || math.Abs(wide-high) > 0.05 {
			t.Errorf("%s: the tube stands at %g mm, %g by %g", row.end, x, wide, high)
		}
		if other := planFigure(s, map[string]string{"aft": "forward", "forward": "aft"}[row.end], 180); other != nil {
			t.Errorf("the bulkhead without ports is drawn")
		}
	}
}

// A leader that runs to the side at the height of the axis leaves the number of the
// clock there free: it moves up.
func TestLeaderLeavesTheClockFree(t *testing.T) {
	s := &report.Sheet{Section: &report.Section{Outlines: []report.Outline{{Part: "cylinder", Outside: []report.Point{{R: 0.2}}}},
		Ports: []report.PortOutline{{Name: "outlet", Part: "head.aft", Outer: report.Point{Z: 1}, OutsideDiameter: 0.04, InsideDiameter: 0.03}}}}
	f := planFigure(s, "aft", 180)
	var line *drawing.Line
	for i, l := range f.Lines {
		if l.Pen.Grey == 0.3 {
			line = &f.Lines[i]
		}
	}
	found := 0
	for _, text := range f.Texts {
		if text.Text != "90°" && text.Text != "270°" {
			continue
		}
		found++
		if right := text.At.X > 90; right && line.From.Y > text.At.Y-2.2 && line.From.Y < text.At.Y+0.3 {
			t.Errorf("%s on the line %g, from %g up", text.Text, text.At.Y, line.From.Y)
		}
		if far := math.Abs(text.At.X-90) + 3; far > math.Abs(line.From.X-90) {
			t.Errorf("%s reaches into the names", text.Text)
		}
	}
	if found != 2 {
		t.Errorf("%d numbers of the clock", found)
	}
}

// A bolted cover is drawn to its own edge, with its holes, on its own bulkhead only.
func TestBoltedCoverIsDrawn(t *testing.T) {
	wide := []report.Point{{Z: 1, R: 0.1}, {Z: 1, R: 0.14}, {Z: 1.02, R: 0.14}, {Z: 1.02}}
	s := &report.Sheet{Section: &report.Section{
		Outlines: []report.Outline{{Part: "head.aft", Inside: []report.Point{{Z: 0}, {R: 0.1}}, Outside: []report.Point{{Z: 0}, {R: 0.104}}},
			{Part: "cylinder", Inside: []report.Point{{R: 0.1}, {Z: 1, R: 0.1}}, Outside: []report.Point{{R: 0.104}, {Z: 1, R: 0.104}}},
			{Part: "head.forward", Inside: []report.Point{{Z: 1, R: 0.1}, {Z: 1}}, Outside: wide}},
		Covers: []report.Cover{{Part: "head.forward", Inside: 1, Outside: 1.02, Diameter: 0.28, Circle: 0.24, Hole: 0.011, Seal: 0.21, Count: 12}},
		Ports:  []report.PortOutline{{Name: "a", Part: "head.aft", Outer: report.Point{Z: -1}, OutsideDiameter: 0.04, InsideDiameter: 0.03}},
	}}
	for end, want := range map[string]struct{ holes, rim float64 }{"forward": {12, 0.14}, "aft": {0, 0.104}} {
		f := planFigure(s, end, 180)
		holes := 0.0
		scale := extentOf(f.Polylines[0].Points, true) / 2 / want.rim // the rim comes first
		for _, l := range f.Polylines {
			if math.Abs(extentOf(l.Points, true)-0.011*scale) < 0.01*scale*0.011 {
				holes++
			}
		}
		if holes != want.holes {
			t.Errorf("%s: %g holes, want %g", end, holes, want.holes)
		}
	}
	f := sectionFigure(s, 180, 100)
	holes := 0
	for _, fill := range f.Fills {
		if fill.Grey == 1 && len(fill.Points) == 4 && math.Abs(extentOf(fill.Points, false)/extentOf(fill.Points, true)-11.0/20) < 1e-6 {
			holes++
		}
	}
	if holes != 2 {
		t.Errorf("%d holes in the section", holes)
	}
}

// extentOf returns how wide or high points reach [mm].
func extentOf(points []drawing.Point, across bool) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range points {
		v := q.Y
		if across {
			v = q.X
		}
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	return hi - lo
}

// TestMarksLieOnTheirLine holds every mark of a chart to the line it marks.
func TestMarksLieOnTheirLine(t *testing.T) {
	c := report.Chart{X: report.Axis{Unit: "1"}, Y: report.Axis{Unit: "1"}, Series: []report.Series{
		{Name: "up", X: []float64{0, 10}, Y: []float64{0, 10}}, {Name: "gap", X: []float64{0, 4, 5, 6, 10}, Y: []float64{1, 1, math.NaN(), 1, 1}}}}
	f := &drawing.Figure{}
	p := plot{f: f, x0: 0, y0: 0, x1: 100, y1: 100, least: 0, most: 10, low: 0, high: 10}
	one := report.Display{Divide: 1}
	p.marks(0, 2, c.Series[0], one, one)
	if len(f.Fills) != 6 {
		t.Fatalf("%d marks", len(f.Fills))
	}
	for _, m := range f.Fills {
		x, y := 0.0, 0.0
		for _, q := range m.Points {
			x, y = x+q.X/4, y+q.Y/4
		}
		if math.Abs(x+y-100) > 1e-9 {
			t.Errorf("a mark at %g, %g", x, y)
		}
	}
	f.Fills = nil
	p.marks(1, 2, c.Series[1], one, one)
	if len(f.Fills) != 5 {
		t.Errorf("%d marks on a line with a gap, want one left out", len(f.Fills))
	}
}

// TestLongNamesKeepTheirEnds shortens names where room is short: numbers are never cut.
func TestLongNamesKeepTheirEnds(t *testing.T) {
	for _, row := range []struct {
		in   string
		n    int
		want string
	}{{"short", 9, "short"}, {"ninechars", 9, "ninechars"}, {"port.sensor-a/weld@meop", 11, "port.…@meop"}, {"αβγδε", 3, "α…ε"}} {
		if got := clipInside(row.in, row.n); got != row.want || len([]rune(got)) > row.n {
			t.Errorf("%q in %d letters is %q, want %q", row.in, row.n, got, row.want)
		}
	}
	port := report.PortOutline{Name: "pressurant-inlet-with-a-long-name-of-its-own", Clock: math.Pi, Wall: report.Point{R: 0.11}, OutsideDiameter: 0.0269}
	got := plan{}.words(port, 41)
	if !strings.HasSuffix(got, "-own 180°, r 110 mm, ⌀ 26.9 mm") || !strings.HasPrefix(got, "press") || len([]rune(got)) > 41 {
		t.Errorf("%q", got)
	}
}
