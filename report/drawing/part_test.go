package drawing_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"proofsheet/report/drawing"
)

// washer is a plate of 100 by 60 mm with round corners of 10 mm, a round hole of
// 20 mm, a notch by a clockwise arc and a line to scribe.
func washer() *drawing.Part {
	q := math.Tan(math.Pi / 8)
	v := func(x, y, bulge float64) drawing.Vertex { return drawing.Vertex{X: x, Y: y, Bulge: bulge} }
	return &drawing.Part{Name: "washer", Title: "Washer < 45° & more", Remarks: []string{"plate 6 mm nominal", "100 %% sure, 5 Ω"}, Paths: []drawing.Path{
		{Layer: drawing.Cut, Closed: true, Vertices: []drawing.Vertex{v(0, 0, 0), v(90, 0, q), v(100, 10, 0), v(100, 50, q), v(90, 60, 0), v(60, 60, -1), v(40, 60, 0), v(0, 60, 0)}},
		{Layer: drawing.Cut, Closed: true, Vertices: []drawing.Vertex{v(40, 30, 1), v(20, 30, 1)}},
		{Layer: drawing.Mark, Vertices: []drawing.Vertex{v(70, 10, 0), v(70, 50, 0)}},
	}, Labels: []drawing.Label{{At: drawing.Point{X: 70, Y: 50}, Away: drawing.Point{Y: 1}, Text: "90°"}}}
}

// By hand: 6000 − (200 − 50π) − 50π, and the hole.
const washerArea, holeArea = 6000 - (200 - 50*math.Pi) - 50*math.Pi, 100 * math.Pi

// A pair of a DXF file: code and value.
type pair struct {
	code  int
	value string
}

// readPairs reads the file as lines, two by two, and knows nothing of the writer.
func readPairs(t *testing.T, data []byte) (out []pair) {
	t.Helper()
	lines := strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
	for i := 0; i+1 < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		out = append(out, pair{code, lines[i+1]})
	}
	return out
}

// An outline read back: x, y and bulge of its corners.
type outline struct {
	layer  string
	closed bool
	at     [][3]float64
}

// readOutlines walks the entities and returns the polylines and the texts.
func readOutlines(t *testing.T, pairs []pair) (outlines []outline, texts []string) {
	t.Helper()
	entity, section := "", ""
	for i, p := range pairs {
		number := func() float64 {
			v, err := strconv.ParseFloat(p.value, 64)
			if err != nil {
				t.Fatalf("pair %d: %v", i, err)
			}
			return v
		}
		if p.code == 0 {
			entity = p.value
			switch {
			case entity == "POLYLINE":
				outlines = append(outlines, outline{})
			case entity == "VERTEX":
				outlines[len(outlines)-1].at = append(outlines[len(outlines)-1].at, [3]float64{})
			}
			continue
		}
		if entity == "SECTION" && p.code == 2 {
			section = p.value
		}
		if section != "ENTITIES" || len(outlines) == 0 {
			continue
		}
		last := &outlines[len(outlines)-1]
		switch {
		case entity == "POLYLINE" && p.code == 8:
			last.layer = p.value
		case entity == "POLYLINE" && p.code == 70:
			last.closed = p.value == "1"
		case entity == "VERTEX" && (p.code == 10 || p.code == 20 || p.code == 42):
			last.at[len(last.at)-1][map[int]int{10: 0, 20: 1, 42: 2}[p.code]] = number()
		case entity == "TEXT" && p.code == 1:
			texts = append(texts, p.value)
		}
	}
	return outlines, texts
}

// area sums sectors and triangles of an outline with arcs [mm2].
func (o outline) area() (sum float64) {
	for i, a := range o.at {
		b := o.at[(i+1)%len(o.at)]
		sum += (a[0]*b[1] - b[0]*a[1]) / 2
		if θ := 4 * math.Atan(a[2]); θ != 0 {
			r := math.Hypot(b[0]-a[0], b[1]-a[1]) / 2 / math.Sin(θ/2)
			sum += r * r / 2 * (θ - math.Sin(θ))
		}
	}
	return sum
}

func TestDXFReadBack(t *testing.T) {
	data, err := washer().DXF()
	if err != nil {
		t.Fatal(err)
	}
	pairs := readPairs(t, data)
	outlines, texts := readOutlines(t, pairs)
	if len(outlines) != 3 {
		t.Fatalf("%d outlines", len(outlines))
	}
	for i, want := range []outline{{layer: "CUT", closed: true}, {layer: "CUT", closed: true}, {layer: "MARK"}} {
		if got := outlines[i]; got.layer != want.layer || got.closed != want.closed || len(got.at) != len(washer().Paths[i].Vertices) {
			t.Errorf("outline %d: %+v", i, got)
		}
	}
	if a, b := outlines[0].area(), outlines[1].area(); math.Abs(a-washerArea) > 1e-5 || math.Abs(b-holeArea) > 1e-5 {
		t.Errorf("areas %g and %g, want %g and %g", a, b, washerArea, holeArea)
	}
	all := strings.Join(texts, "\n")
	for _, want := range []string{"units: mm; scale 1:1", "plate 6 mm nominal", "90%%d", "Washer < 45%%d & more", "100 % % sure, 5 Omega"} {
		if !strings.Contains(all, want) {
			t.Errorf("no text %q in %q", want, all)
		}
	}
	// Release 12, comments with the unit, layers defined, ends as it must.
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	for _, want := range []string{"999\nunits: mm", "  9\n$ACADVER\n  1\nAC1009\n", "  0\nLAYER\n  2\nCUT\n", "  0\nLAYER\n  2\nMARK\n", "  0\nLAYER\n  2\nTEXT\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if last := pairs[len(pairs)-1]; last != (pair{0, "EOF"}) {
		t.Errorf("ends with %v", last)
	}
	for i, c := range data {
		if c > '~' {
			t.Fatalf("byte %d is not ASCII", i)
		}
	}
	again, _ := washer().DXF()
	if string(again) != string(data) {
		t.Error("the same part gave different bytes")
	}
}

// Sections and tables open and close in turn, and every polyline ends.
func TestDXFNests(t *testing.T) {
	data, err := washer().DXF()
	if err != nil {
		t.Fatal(err)
	}
	var open []string
	for _, p := range readPairs(t, data) {
		if p.code != 0 {
			continue
		}
		if end, ok := map[string]string{"SECTION": "ENDSEC", "TABLE": "ENDTAB", "POLYLINE": "SEQEND"}[p.value]; ok {
			open = append(open, end)
		} else if n := len(open); strings.HasPrefix(p.value, "END") || p.value == "SEQEND" {
			if n == 0 || open[n-1] != p.value {
				t.Fatalf("%s closes %v", p.value, open)
			}
			open = open[:n-1]
		}
	}
	if len(open) > 0 {
		t.Errorf("%v not closed", open)
	}
}

// A reader that nobody here wrote, where there is one.
func TestDXFByAnotherReader(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil || exec.Command(node, "-e", "require('dxf-parser')").Run() != nil {
		t.Log("node with the module dxf-parser is not here: the file was read by the test's own reader only")
		return
	}
	data, err := washer().DXF()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "washer.dxf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(node, "-e", `const P=require('dxf-parser');const C=P.default||P;
const d=new C().parseSync(require('fs').readFileSync(process.argv[1],'utf8'));
console.log(d.entities.filter(e=>e.type==='POLYLINE').map(e=>e.layer+e.vertices.length).join(' '))`, path).CombinedOutput()
	if got := strings.TrimSpace(string(out)); err != nil || got != "CUT8 CUT2 MARK2" {
		t.Errorf("%v: %s", err, got)
	}
}

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
	p.Paths[0].Vertices[0].X = -1e6
	if _, _, err := p.Scaled(180, 150, "", ""); err == nil {
		t.Error("a part of a kilometre is drawn")
	}
}
