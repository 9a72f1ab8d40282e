package pdf

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

// TestEveryLetterHasAGlyph sets the letters that checks, units and forms use,
// and the whole of a sheet's own words: a letter that the fonts lack would be
// an empty box, which no text search finds.
func TestEveryLetterHasAGlyph(t *testing.T) {
	const used = "αβγδεηθκλμνπρστφψωΓΔΣΦΩ √≤≥≈±×·°²³⁴⁻⁰¹⁵⁶⁷⁸⁹ ∂∞∫∑ −–—…“”‘’ ½¼ ⌀ ▼ → ₀₁₂₃ ü é ß"
	if _, missing, err := printable(used); err != nil || len(missing) > 0 {
		t.Errorf("missing %q, %v", missing, err)
	}
	s := &report.Sheet{Block: report.TitleBlock{Title: used}, Notes: []string{used}, PeopleBox: []string{used}}
	s.Checks = []check.Result{{ID: "a/b", Formula: used, Title: used}}
	s.Settle()
	p, err := compose(s, known{pages: 9})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.missing) > 0 {
		t.Errorf("the sheet has letters without a glyph: %q", p.missing)
	}
}

func TestPrintable(t *testing.T) {
	for _, row := range []struct{ in, want string }{
		{"plain", "plain"},
		{"a\tb\nc\x00", "a b c "},
		{"\U0001F680!", "\uFFFD!"},
		{"\xffx", "\uFFFDx"},
		{"\u4E2D", "\uFFFD"},
	} {
		got, _, err := printable(row.in)
		if err != nil || got != row.want {
			t.Errorf("%q gave %q, %v, want %q", row.in, got, err, row.want)
		}
	}
	if _, missing, _ := printable("\U0001F680"); !slices.Equal(missing, []rune{'\U0001F680'}) {
		t.Errorf("the letter without a glyph is not named: %q", missing)
	}
}

func TestRuns(t *testing.T) {
	for in, want := range map[string]string{
		"σ_h = p r":       "σ|↓h| = p r",
		"R_p0.2 ≤ S":      "R|↓p0.2| ≤ S",
		"R_m.":            "R|↓m|.",
		"x^2 + y^-3":      "x|↑2| + y|↑-3",
		"N_{x,cr}/t":      "N|↓x,cr|/t",
		"N_x,l,min, N_y":  "N|↓x,l,min|, N|↓y",
		"a _ b_":          "a _ b_",
		"(R/t)^(1/2)":     "(R/t)^(1/2)",
		"_x":              "_x",
		"σ_θ_i":           "σ|↓θ||↓i",
		"open_{brace":     "open_{brace",
		"p_low ≥ p_req":   "p|↓low| ≥ p|↓req",
		"no index at all": "no index at all",
	} {
		var parts []string
		for _, r := range runs(in) {
			mark := map[bool]string{true: "↓", false: ""}[r.shift > 0]
			if r.shift < 0 {
				mark = "↑"
			}
			parts = append(parts, mark+r.text)
		}
		if got := strings.TrimSuffix(strings.Join(parts, "|"), "|"); got != want {
			t.Errorf("%q gave %q, want %q", in, got, want)
		}
	}
}

func testPaper(t *testing.T) *paper {
	t.Helper()
	p, err := newPaper(&report.Sheet{}, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	p.font("", body)
	return p
}

// TestWrapKeepsEveryWord wraps at many widths: no line is too wide and no
// letter is lost.
func TestWrapKeepsEveryWord(t *testing.T) {
	p := testPaper(t)
	const text = "A caution with words and a/very/long/path/without/any/space/in/it and p = 2.61 MPa at the end"
	for width := 4.0; width < 120; width += 3.7 {
		lines := p.wrap(text, width)
		for _, l := range lines {
			if p.measure(l) > width {
				t.Errorf("at %g mm a line is %g mm wide: %q", width, p.measure(l), l)
			}
		}
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := squeeze(strings.Join(lines, "")); got != squeeze(text) {
			t.Errorf("at %g mm the text became %q", width, got)
		}
	}
	if lines := p.wrap(glued("p = 2.61 MPa")+" "+glued("r = 200 mm"), 25); len(lines) != 2 {
		t.Errorf("numbers and units were parted: %q", lines)
	}
}

// TestLinksAndNoOtherFonts looks for core fonts, which lack most letters, and for annotations: the links of the contents on
// page 2 and no others, since a signature on the last page would have to share them.
func TestLinksAndNoOtherFonts(t *testing.T) {
	s := &report.Sheet{}
	s.Settle()
	file, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	text := string(file)
	for _, word := range []string{"/Helvetica", "/Times", "/Courier", "/OpenAction"} {
		if strings.Contains(text, word) {
			t.Errorf("the file holds %s", word)
		}
		if n := strings.Count(text, "/Annots"); n != 1 {
			t.Errorf("%d pages with annotations, want one, that of the contents", n)
		}
	}
}

// TestPageCountIsPrinted compares the pages counted with those written, so
// that the footer of a long sheet states the right number.
func TestPageCountIsPrinted(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	s := &report.Sheet{}
	for range 400 {
		s.Checks = append(s.Checks, check.Result{ID: "cylinder/hoop", Case: "many"})
	}
	s.Settle()
	file, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "many.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Count(string(out), "\f")
	first, err := compose(s, known{})
	if err != nil {
		t.Fatal(err)
	}
	if n := first.doc.PageNo(); n != pages || n < 10 {
		t.Errorf("%d pages counted, %d printed", n, pages)
	}
}

// TestWidthsAreTheWriters holds the widths by which lines are laid out against those
// that the writer of the file puts into it.
func TestWidthsAreTheWriters(t *testing.T) {
	p, err := newPaper(&report.Sheet{}, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	both, err := faceLetters()
	if err != nil {
		t.Fatal(err)
	}
	held := 0
	for i, style := range []string{"", "B"} {
		p.font(style, 10)
		for r := rune(' '); r < 1<<16; r++ {
			w := both[i].width(r)
			if w < 0 {
				continue
			}
			held++
			if want := p.doc.GetStringSymbolWidth(string(r)); w != want {
				t.Fatalf("%q in %q is %d wide, the writer says %d", r, style, w, want)
			}
		}
	}
	if held < 8000 {
		t.Errorf("only %d letters are held", held)
	}
}

// TestSetAsTheWriterDoes sets one line twice at one place: the first is written by the
// writer of the document, the second here.
func TestSetAsTheWriterDoes(t *testing.T) {
	p, err := newPaper(&report.Sheet{}, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	const text = "a (b) \\ c, σ_θ ≤ 3·½ Ω ⌀ Ĩ č ( \u0D0D" // also letters of which a byte is a bracket or a return
	clean := p.clean(text)
	for _, style := range []string{"", "B"} {
		p.font(style, 9.3)
		for range 2 {
			p.set(12.345, 67.891, clean)
		}
	}
	p.grey(1)
	p.set(12.345, 67.891, clean)
	p.grey(0)
	var out bytes.Buffer
	if err := p.doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	var lines [][]byte
	for line := range bytes.SplitSeq(out.Bytes(), []byte("\nBT ")) {
		if at := bytes.Index(line, []byte(" Tj ET")); at > 0 {
			lines = append(lines, line[:at])
		}
	}
	if len(lines) < 4 {
		t.Fatalf("%d lines", len(lines))
	}
	for i := 0; i < 4; i += 2 {
		if !bytes.Equal(lines[i], lines[i+1]) {
			t.Errorf("the writer sets %q, here it is %q", lines[i], lines[i+1])
		}
	}
	if n := bytes.Count(out.Bytes(), []byte("q 1.000 g BT ")); n != 1 {
		t.Errorf("%d white lines, want 1", n)
	}
}
