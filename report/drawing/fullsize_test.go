package drawing_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"proofsheet/report/drawing"
)

// The paths of the SVG, read as XML: layers, full size, and arcs that end where
// they must and bulge to the right side.
func TestSVGOfAPart(t *testing.T) {
	data, err := washer().SVG()
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Width   string `xml:"width,attr"`
		ViewBox string `xml:"viewBox,attr"`
		Groups  []struct {
			ID    string `xml:"id,attr"`
			Paths []struct {
				D string `xml:"d,attr"`
			} `xml:"path"`
			Texts []string `xml:"text"`
		} `xml:"g"`
	}
	d := xml.NewDecoder(strings.NewReader(string(data)))
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Token(); err != nil && !errors.Is(err, io.EOF) {
		t.Fatal(err)
	}
	if len(doc.Groups) != 3 || doc.Groups[0].ID != "CUT" || len(doc.Groups[0].Paths) != 2 || doc.Groups[1].ID != "MARK" || len(doc.Groups[1].Paths) != 1 || doc.Groups[2].ID != "TEXT" {
		t.Fatalf("groups: %+v", doc.Groups)
	}
	if box := strings.Fields(doc.ViewBox); len(box) != 4 || box[2]+"mm" != doc.Width {
		t.Errorf("one unit is no millimetre: %s, %s", doc.Width, doc.ViewBox)
	}
	if a := svgArea(t, doc.Groups[0].Paths[0].D); math.Abs(a-washerArea) > 1e-2 {
		t.Errorf("area %g, want %g", a, washerArea)
	}
	if a := svgArea(t, doc.Groups[0].Paths[1].D); math.Abs(a-holeArea) > 1e-2 {
		t.Errorf("hole %g, want %g", a, holeArea)
	}
	if texts := strings.Join(doc.Groups[2].Texts, "\n"); !strings.Contains(texts, "Washer < 45° & more") {
		t.Errorf("texts: %s", texts)
	}
}

// svgArea reads the commands M, L, A and Z of a path whose arcs are at most half
// turns and returns its area [mm2], y turned up.
func svgArea(t *testing.T, d string) (sum float64) {
	t.Helper()
	fields := strings.Fields(strings.NewReplacer("M", " M ", "L", " L ", "A", " A ", "Z", " Z ").Replace(d))
	var x0, y0, x, y float64
	next := func() float64 {
		v, err := strconv.ParseFloat(fields[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		fields = fields[1:]
		return v
	}
	to := func(a, b float64) {
		sum -= (x*b - a*y) / 2
		x, y = a, b
	}
	for len(fields) > 0 {
		command := fields[0]
		fields = fields[1:]
		switch command {
		case "M":
			x, y = next(), next()
			x0, y0 = x, y
		case "L":
			to(next(), next())
		case "Z":
			to(x0, y0)
		case "A":
			r, _, _, large, way := next(), next(), next(), next(), next()
			a, b := next(), next()
			if large != 0 {
				t.Fatal("an arc of more than half a turn")
			}
			θ := 2 * math.Asin(math.Min(1, math.Hypot(a-x, b-y)/2/r))
			segment := r * r / 2 * (θ - math.Sin(θ))
			if way == 1 { // with y down, towards y: clockwise to the eye
				segment = -segment
			}
			sum += segment
			to(a, b)
		}
	}
	return sum
}

func TestPartRefusesNaN(t *testing.T) {
	for name, spoil := range map[string]func(*drawing.Part){
		"corner": func(p *drawing.Part) { p.Paths[0].Vertices[1].X = math.NaN() },
		"bulge":  func(p *drawing.Part) { p.Paths[0].Vertices[1].Bulge = math.Inf(1) },
		"turn":   func(p *drawing.Part) { p.Paths[1].Vertices[1].Bulge = 1.5 }, // more than half a turn
		"label":  func(p *drawing.Part) { p.Labels[0].At.Y = math.NaN() },
		"empty":  func(p *drawing.Part) { p.Paths = nil },
	} {
		p := washer()
		spoil(p)
		if _, err := p.DXF(); err == nil {
			t.Errorf("%s: DXF written", name)
		}
		if _, err := p.SVG(); err == nil {
			t.Errorf("%s: SVG written", name)
		}
		if _, _, err := p.Scaled(180, 150, "", ""); err == nil {
			t.Errorf("%s: drawn", name)
		}
	}
}

// The figure keeps to its paper and to the scale it prints.
func TestScaled(t *testing.T) {
	for _, row := range []struct {
		grow float64
		said string
	}{{1, "scale 1:1"}, {2, "scale 1:2"}, {3, "scale 1:2.5"}, {13, "scale 1:10"}} {
		p := washer()
		for i := range p.Paths {
			for j := range p.Paths[i].Vertices {
				p.Paths[i].Vertices[j].X *= row.grow
				p.Paths[i].Vertices[j].Y *= row.grow
			}
		}
		f, said, err := p.Scaled(180, 150, "100 mm", "60 mm")
		if err != nil || said != row.said || !f.Finite() || f.Height > 150 {
			t.Errorf("%g times: %s, %v, %g high", row.grow, said, err, f.Height)
			continue
		}
		least, most := math.Inf(1), math.Inf(-1)
		for _, q := range f.Polylines[0].Points {
			least, most = math.Min(least, q.X), math.Max(most, q.X)
		}
		scale, _ := strconv.ParseFloat(strings.TrimPrefix(said, "scale 1:"), 64)
		if math.Abs((most-least)*scale-100*row.grow) > 1e-9 || least < 0 || most > 180 {
			t.Errorf("%g times: from %g to %g at %s", row.grow, least, most, said)
		}
	}
	p := washer()
	both, _, err := p.Scaled(180, 150, "100 mm", "60 mm")
	round, _, roundErr := p.Scaled(180, 150, "100 mm", "")
	if err != nil || roundErr != nil || len(round.Lines) >= len(both.Lines) {
		t.Error("a line of a height that has no number is drawn")
	}
	for _, text := range round.Texts {
		if text.Text == "" {
			t.Error("an empty text")
		}
	}
	p.Paths[0].Vertices[0].X = -1e6
	if _, _, err := p.Scaled(180, 150, "", ""); err == nil {
		t.Error("a part of a kilometre is drawn")
	}
}
