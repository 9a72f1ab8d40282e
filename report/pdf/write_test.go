package pdf_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/pdf"
)

func write(t *testing.T, s *report.Sheet) []byte {
	t.Helper()
	file, err := pdf.Write(s)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// TestSameBytes writes one sheet several times at once: a clock, a map order or
// a font changed in place would show.
func TestSameBytes(t *testing.T) {
	want := write(t, fixture())
	if !bytes.Equal(want, write(t, fixture())) {
		t.Error("the second document of the process differs from the first")
	}
	files := make([][]byte, 4)
	var group sync.WaitGroup
	for i := range files {
		group.Go(func() { files[i], _ = pdf.Write(fixture()) })
	}
	group.Wait()
	for i, got := range files {
		if !bytes.Equal(want, got) {
			t.Errorf("document %d, written beside others, differs", i)
		}
	}
}

func TestHeaderAndAttachments(t *testing.T) {
	file := write(t, fixture())
	if !bytes.HasPrefix(file, []byte("%PDF-1.7\n")) {
		t.Errorf("the file starts with %q", file[:9])
	}
	if n := bytes.Count(file, []byte("/EmbeddedFile ")); n != 3 {
		t.Errorf("%d files embedded, want the tank file, the file it names and the sheet as data", n)
	}
	crowd := fixture()
	for range 8 {
		crowd.Files = append(crowd.Files, report.Attachment{Name: "x", Data: []byte("x")})
	}
	if _, err := pdf.Write(crowd); err == nil {
		t.Error("more files than can be embedded in order were taken")
	}
}

// TestStrangeLetters sets letters that no font holds and bytes that are no text.
func TestStrangeLetters(t *testing.T) {
	s := fixture()
	s.Block.Title = "Tank \U0001F680 \xff\xfe one\ttwo\nthree \u0000"
	s.Cautions = append(s.Cautions, strings.Repeat("unbroken", 80), "\U0001F525")
	write(t, s)
}

func TestRefusesAnUnsettledSheet(t *testing.T) {
	s := fixture()
	s.Verdict = check.Satisfied
	if _, err := pdf.Write(s); err == nil {
		t.Error("a sheet was printed as satisfied against its checks")
	}
}

// TestSmallSheets writes sheets with as little on them as there can be.
func TestSmallSheets(t *testing.T) {
	empty := &report.Sheet{}
	empty.Settle()
	write(t, empty)
	s := fixture()
	s.Units, s.Paper, s.Proof, s.Section, s.Block.Date = "us", "letter", nil, nil, ""
	write(t, s)
}

func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skip(name + " is not installed")
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func saved(t *testing.T, s *report.Sheet) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, write(t, s), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestFileIsSound(t *testing.T) {
	path := saved(t, fixture())
	if out := run(t, "qpdf", "--check", path); strings.Contains(out, "WARNING") {
		t.Error(out)
	}
}

func TestWords(t *testing.T) {
	s := fixture()
	text := run(t, "pdftotext", "-layout", saved(t, s), "-")
	pages := strings.Split(strings.TrimSuffix(text, "\f"), "\f")
	for i, page := range pages {
		for _, want := range []string{"sheet T-001, revision B", "of " + itoa(len(pages)), "page " + itoa(i+1), s.Tank.Combined[:12]} {
			if !strings.Contains(page, want) {
				t.Errorf("page %d lacks %q", i+1, want)
			}
		}
	}
	for _, want := range []string{"not satisfied by flight", "People near this tank", "Governing check", "Cautions", "burst_factor", "scale 1:"} {
		if !strings.Contains(pages[0], want) {
			t.Errorf("page 1 lacks %q", want)
		}
	}
	last := pages[len(pages)-1]
	if strings.Count(last, "not signed") < 3 {
		t.Error("the last page does not say three times that it is not signed")
	}
	for _, want := range []string{"p = 2.61 MPa", "92.89 MPa", "not applicable", "range of the curves", "Proof test log form"} {
		if !strings.Contains(text, want) {
			t.Errorf("the document lacks %q", want)
		}
	}
}

func itoa(n int) string { return strconv.Itoa(n) }

func TestPlaces(t *testing.T) {
	for size, high := range map[string]float64{"a4": 297, "letter": 279.4} {
		places, err := pdf.Places(size)
		if err != nil || len(places) != len(pdf.Roles) {
			t.Fatalf("%s: %v, %v", size, places, err)
		}
		for i, p := range places {
			if p.Role != pdf.Roles[i] || !(p.Left > 0 && p.Left < p.Right && p.Low > 0 && p.Low < p.High && p.High < high*72/25.4) {
				t.Errorf("%s: %+v is not on the page", size, p)
			}
			if i > 0 && p.High >= places[i-1].Low {
				t.Errorf("%s: %s overlaps %s", size, p.Role, places[i-1].Role)
			}
		}
	}
	if _, err := pdf.Places("napkin"); err == nil {
		t.Error("a paper nobody knows was taken")
	}
}

func TestFigures(t *testing.T) {
	names := map[string]bool{}
	for _, f := range pdf.Figures(fixture()) {
		if _, err := f.SVG(); err != nil {
			t.Error(err)
		}
		names[f.Name] = true
	}
	for _, want := range []string{"section", "margins", "pressure", "meridian-burnout", "proof"} {
		if !names[want] {
			t.Errorf("no figure %s", want)
		}
	}
}
