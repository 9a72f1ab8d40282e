package drawing_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"proofsheet/report/drawing"
)

func sample() *drawing.Figure {
	f := &drawing.Figure{Name: "sample", Title: "a < b & c", Width: 100, Height: 50}
	f.AddLine(0, 0, 100, 50, drawing.Pen{Width: 0.2, Dash: []float64{2, 1}})
	f.AddText(50, 25, 3, drawing.Centre, `σ ≤ "S" & <t>`)
	f.AddRectangle(1, 2, 3, 4, drawing.Pen{Width: 0.1, Grey: 0.5})
	f.AddArrow(10, 10, math.Pi/2, 2)
	f.Arcs = append(f.Arcs, drawing.Arc{Centre: drawing.Point{X: 20, Y: 20}, Radius: 10, Sweep: math.Pi, Pen: drawing.Pen{Width: 0.3}})
	return f
}

func TestSVGIsXMLAndRepeats(t *testing.T) {
	first, err := sample().SVG()
	if err != nil {
		t.Fatal(err)
	}
	second, _ := sample().SVG()
	if !bytes.Equal(first, second) {
		t.Error("the same figure gave different bytes")
	}
	d := xml.NewDecoder(bytes.NewReader(first))
	text := ""
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if c, ok := token.(xml.CharData); ok {
			text += string(c)
		}
	}
	if !strings.Contains(text, `σ ≤ "S" & <t>`) {
		t.Errorf("the text did not come through: %q", text)
	}
}

func TestSVGRefusesNaN(t *testing.T) {
	for name, spoil := range map[string]func(*drawing.Figure){
		"line":     func(f *drawing.Figure) { f.Lines[0].To.X = math.NaN() },
		"arc":      func(f *drawing.Figure) { f.Arcs[0].Radius = math.Inf(1) },
		"polyline": func(f *drawing.Figure) { f.Polylines[0].Points[2].Y = math.NaN() },
		"fill":     func(f *drawing.Figure) { f.Fills[0].Points[0].Y = math.NaN() },
		"text":     func(f *drawing.Figure) { f.Texts[0].At.X = math.Inf(-1) },
		"paper":    func(f *drawing.Figure) { f.Width = math.NaN() },
	} {
		f := sample()
		spoil(f)
		if _, err := f.SVG(); err == nil {
			t.Errorf("%s: drawn with a place that is no number", name)
		}
	}
}

func TestArcKeepsToItsCircle(t *testing.T) {
	a := drawing.Arc{Centre: drawing.Point{X: 3, Y: 4}, Radius: 50, Start: 1, Sweep: -2}
	ps := a.Points()
	for i, p := range ps {
		if got := math.Hypot(p.X-3, p.Y-4); math.Abs(got-50) > 1e-9 {
			t.Errorf("point %d is %g from the centre", i, got)
		}
		if i > 0 {
			if got := math.Hypot((p.X+ps[i-1].X)/2-3, (p.Y+ps[i-1].Y)/2-4); got < 50-0.0201 {
				t.Errorf("chord %d is %g mm off the arc", i, 50-got)
			}
		}
	}
	if last := ps[len(ps)-1]; math.Abs(last.X-(3+50*math.Cos(-1))) > 1e-9 {
		t.Errorf("the arc ends at %v", last)
	}
}
