package pdf_test

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/report/drawing"
	"proofsheet/report/pdf"
)

// partPages are a part that is drawn, one that is refused and one that is none.
func partPages() []pdf.PartPage {
	plate := drawing.Part{Name: "cover", Title: "Cover", Remarks: []string{"plate 6 mm nominal; outside face up"}, Paths: []drawing.Path{
		{Layer: drawing.Cut, Closed: true, Vertices: []drawing.Vertex{{X: 0, Y: 0}, {X: 700, Y: 0}, {X: 700, Y: 300, Bulge: 1}, {X: 0, Y: 300}}},
		{Layer: drawing.Mark, Vertices: []drawing.Vertex{{X: 350, Y: 0}, {X: 350, Y: 300}}}},
		Labels: []drawing.Label{{Away: drawing.Point{X: -1, Y: -1}, Text: "A"}}}
	return []pdf.PartPage{
		{Part: plate, Title: "Cover plate", Wide: "700 mm", High: "650 mm", Facts: [][3]string{{"a_AB", "length of the lower edge", "700 mm"}},
			Notes: []string{"a note"}, Cautions: []string{"a caution"}},
		{Part: drawing.Part{Name: "cone"}, Title: "Cone", Refused: "the hole of port fill crosses the seam"},
		{Part: drawing.Part{Name: "tube"}, Title: "Tube", Absent: true, Notes: []string{"cut square"}},
	}
}

func TestWriteParts(t *testing.T) {
	s := fixture()
	s.Settle()
	data, err := pdf.WriteParts(s, []string{"gap 2 mm; kerf 1 mm"}, partPages())
	if err != nil {
		t.Fatal(err)
	}
	again, _ := pdf.WriteParts(s, []string{"gap 2 mm; kerf 1 mm"}, partPages())
	if !bytes.Equal(data, again) {
		t.Error("the same parts gave different bytes")
	}
	path := filepath.Join(t.TempDir(), "parts.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(run(t, "pdftotext", "-layout", path, "-")), " ")
	for _, want := range []string{"REFUSED: the hole of port fill crosses the seam", "none: cut square", "scale 1:5", "this bar is 50 mm long",
		"plate 6 mm nominal; outside face up", "length of the lower edge 700 mm", "a caution", "a note", "page 2 of 2", "gap 2 mm; kerf 1 mm"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

func TestWritePartsRefusesNaN(t *testing.T) {
	s := fixture()
	s.Settle()
	pages := partPages()
	pages[0].Part.Paths[0].Vertices[1].X = math.NaN()
	if _, err := pdf.WriteParts(s, nil, pages); err == nil {
		t.Error("a corner that is no number was drawn")
	}
}
