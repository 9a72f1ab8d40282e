package pdf

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

// many is a sheet of one check in so many cases, with margins that fall.
func many(n int) *report.Sheet {
	s := &report.Sheet{Block: report.TitleBlock{Title: "Many \U0001F680"}}
	for i := range n {
		s.Checks = append(s.Checks, check.Result{ID: "cylinder/hoop", Case: fmt.Sprintf("case-%d", i), Title: "Cylinder: hoop stress", Formula: "σ = p r/t ≤ S",
			Inputs: []check.Quantity{check.Pa("p", "pressure", 1e6), check.M("r", "radius", 0.1), check.M("t", "wall", 1e-3/(1+0.001*float64(i)))},
			Demand: check.Pa("σ", "hoop stress", 1e8*(1+0.001*float64(i))), Capacity: check.Pa("S", "allowable", 1.2e8), Factor: 1})
	}
	s.Settle()
	return s
}

// TestContents opens each page that the contents name and finds the title there.
func TestContents(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	s := many(4)
	p, err := settled(s)
	if err != nil {
		t.Fatal(err)
	}
	file, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(string(out), "\f")
	if len(p.before.parts) < 6 {
		t.Fatalf("only %d entries: %v", len(p.before.parts), p.before.parts)
	}
	for _, e := range p.before.parts {
		if !strings.Contains(pages[e.page-1], e.title) {
			t.Errorf("page %d does not hold %q", e.page, e.title)
		}
		if !strings.Contains(pages[1], e.title) {
			t.Errorf("the contents lack %q", e.title)
		}
	}
	if text := string(out); !strings.Contains(text, "U+1F680") {
		t.Error("the letter that was replaced is not named")
	}
}

// TestCaseLimit sets all of few cases in full, and of many the least margin.
func TestCaseLimit(t *testing.T) {
	few := grouped(many(caseLimit).Checks)
	if len(few) != 1 || len(few[0].shown) != caseLimit || few[0].others != nil {
		t.Errorf("few cases: %d in full, %d not", len(few[0].shown), len(few[0].others))
	}
	s := many(caseLimit + 1)
	s.Checks[3].Capacity.Value = 1e7 // not satisfied, and the least margin
	s.Checks[5].Err = fmt.Errorf("why")
	g := grouped(s.Checks)[0]
	if len(g.shown) != 2 || g.shown[0].Case != "case-3" || g.shown[1].Case != "case-5" || len(g.others) != caseLimit-1 {
		t.Errorf("many cases: in full %v, others %d", g.shown, len(g.others))
	}
}

func TestOfNeighbour(t *testing.T) {
	r := check.Result{Capacity: check.M("p", "centre distance, port b", 1)}
	for i := range 30 {
		r.Inputs = append(r.Inputs, check.M("x", fmt.Sprintf("distance, port %c", 'a'+i%3), 1), check.M("y", "wall", 1))
	}
	in, left := ofNeighbour(r)
	if len(in) != 40 || left != 20 {
		t.Errorf("%d inputs kept, %d left out", len(in), left)
	}
	r.Inputs = r.Inputs[:neighbours]
	if in, left := ofNeighbour(r); len(in) != neighbours || left != 0 {
		t.Errorf("few inputs: %d kept", len(in))
	}
}

// TestSetting holds boxes to the sizes that make lines: a fraction is higher than its
// parts, and a long formula is broken into lines of the width.
func TestSetting(t *testing.T) {
	s := many(1)
	p, err := newPaper(s, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	set := setter{p: p, size: body}
	r := s.Checks[0]
	sides := report.Statements(r)[0].Sides
	plain, fraction := set.set(sides[0]), set.set(sides[1])
	if fraction.over+fraction.under < 1.6*(plain.over+plain.under) {
		t.Errorf("a fraction is %g high, its side %g", fraction.over+fraction.under, plain.over+plain.under)
	}
	r.Formula = "A = " + strings.Repeat("p r + ", 60) + "t"
	var steps [][]box
	for _, st := range report.Statements(r) {
		steps = append(steps, set.statement(st, 100))
	}
	lines := set.flow(steps, 100)
	if len(lines) < 3 {
		t.Errorf("%d lines", len(lines))
	}
	for _, l := range lines {
		if l.wide > 100 {
			t.Errorf("a line is %g mm wide", l.wide)
		}
	}
}
