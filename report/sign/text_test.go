package sign

import (
	"bytes"
	"strings"
	"testing"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"github.com/jung-kurt/gofpdf"
)

// TestText reads back what a writer with a font for all of Unicode set.
func TestText(t *testing.T) {
	lines := [][]string{{"input SHA-256 94e0e730caab", "σ_θ = p r / t (1)"}, {`a \ b) and (c`, "not signed"}}
	doc := gofpdf.New("P", "mm", "A4", "")
	doc.AddUTF8FontFromBytes("DejaVu", "", bytes.Clone(dejavusans.TTF))
	doc.SetFont("DejaVu", "", 9)
	for _, page := range lines {
		doc.AddPage()
		for i, text := range page {
			doc.Text(20, 20+10*float64(i), text)
		}
	}
	var out bytes.Buffer
	if err := doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	pages, err := (&Report{Base: out.Bytes()}).Text()
	if err != nil || len(pages) != len(lines) {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	for i, page := range lines {
		if want := strings.Join(page, ""); pages[i] != want {
			t.Errorf("page %d: %q, want %q", i+1, pages[i], want)
		}
	}
	if _, err := (&Report{Base: []byte("no PDF")}).Text(); err == nil {
		t.Error("text of no PDF at all")
	}
}
