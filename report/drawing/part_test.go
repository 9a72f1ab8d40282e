package drawing_test

import (
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
