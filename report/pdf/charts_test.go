package pdf

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
)

// TestStepLabelsAreClear holds the pressures written beside the steps of a proof test
// off the line that joins them.
func TestStepLabelsAreClear(t *testing.T) {
	s := &report.Sheet{Proof: &report.Proof{Pressure: 3.358e6, Relief: 3.525e6}}
	for _, p := range []float64{0.17, 0.1679, 1.679, 2.015, 2.351, 2.687, 3.022, 3.358, 0.1679, 1.679, 2.015, 2.351, 2.687, 3.022, 3.358, 0.1679} {
		s.Proof.Steps = append(s.Proof.Steps, report.ProofStep{Pressure: p * 1e6})
	}
	f := proofFigure(s, 180, 70)
	chain := f.Polylines[len(f.Polylines)-1].Points
	labels := 0
	for _, text := range f.Texts {
		if text.Size != label-0.3 {
			continue
		}
		labels++
		wide, high := 0.9*float64(len(text.Text)), 1.6
		left := text.At.X
		switch text.Align {
		case drawing.Right:
			left -= wide
		case drawing.Centre:
			left -= wide / 2
		}
		for i := range chain[1:] {
			if crosses(chain[i], chain[i+1], left, text.At.Y-high, wide, high) {
				t.Errorf("the line from %.1f to %.1f runs through %q at %.1f, %.1f", chain[i], chain[i+1], text.Text, left, text.At.Y)
			}
		}
	}
	if labels != len(s.Proof.Steps) {
		t.Errorf("%d labels for %d steps", labels, len(s.Proof.Steps))
	}
}

// crosses reports whether a line runs through a rectangle.
func crosses(a, b drawing.Point, x, y, wide, high float64) bool {
	const steps = 400
	for k := range steps + 1 {
		u := float64(k) / steps
		px, py := a.X+u*(b.X-a.X), a.Y+u*(b.Y-a.Y)
		if px > x && px < x+wide && py > y && py < y+high {
			return true
		}
	}
	return false
}

// TestMarginsOfManyCases has one check in many cases: it takes up one bar, so that
// others are seen.
func TestMarginsOfManyCases(t *testing.T) {
	var rs []check.Result
	add := func(id, in string, demand float64) {
		rs = append(rs, check.Result{ID: id, Case: in, Demand: check.Pa("σ", "stress", demand), Capacity: check.Pa("S", "strength", 100), Factor: 1,
			Source: check.Source{Doc: "hand", How: check.Computed}})
	}
	for i := range 40 {
		add("cylinder/hoop", "phase-"+string(rune('A'+i)), 90-float64(i)/10)
	}
	add("cylinder/girth", "meop", 50)
	few, worst := report.WorstFirst(fewer(grouped(rs))), report.WorstFirst(rs)
	f := marginsFigure(few, worst, 180)
	names := map[string]int{}
	for _, text := range f.Texts {
		names[text.Text]++
	}
	if names["cylinder/hoop@phase-A"] != 1 || names["cylinder/girth@meop"] != 1 || names["satisfied"] != 2 {
		t.Errorf("the bars are %v", names)
	}
	if !strings.Contains(f.Title, "2 of 41 checks") {
		t.Errorf("title %q", f.Title)
	}
}

// TestMarginNearTheEnd has a bar that ends just before the word beside it.
func TestMarginNearTheEnd(t *testing.T) {
	rs := []check.Result{{ID: "cylinder/hoop", Demand: check.Pa("σ", "stress", 34), Capacity: check.Pa("S", "strength", 100), Factor: 1}}
	inside := 0
	for _, text := range marginsFigure(rs, rs, 180).Texts {
		if text.Text == "+1.94" && text.Align == drawing.Right {
			inside++
		}
	}
	if inside != 1 {
		t.Error("the margin runs into the word at the end of its bar")
	}
}

// TestHeadOfABlockStandsWithItsCase gives a block so tall that it may be broken a head
// of formulas: it is not begun where no more than the head fits.
func TestHeadOfABlockStandsWithItsCase(t *testing.T) {
	b := block{height: 120, head: 4}
	for range 4 {
		b.lines = append(b.lines, line{math: &box{}, high: 15})
	}
	for range 20 {
		b.lines = append(b.lines, line{size: small})
	}
	if got, want := b.least(260), 60+2*small*leading; math.Abs(got-want) > 1e-9 {
		t.Errorf("%.2f mm are asked for, want %.2f", got, want)
	}
	if got := b.least(50); got != 50 {
		t.Errorf("%.2f mm of a page of 50 are asked for", got)
	}
	b.height = tall
	if got := b.least(260); got != tall {
		t.Errorf("%.2f mm are asked for a block of %.2f", got, tall)
	}
}

// TestAbsences has a check that does not arise in many cases, each for a reason with
// another number: some are set in full, and every case is named.
func TestAbsences(t *testing.T) {
	var rs []check.Result
	for i := range 20 {
		r := check.NotApplicableTo("cylinder/external", "Cylinder: external pressure", "least "+string(rune('A'+i))+" bar above")
		r.Case = "case-" + string(rune('A'+i))
		rs = append(rs, r, check.NotApplicableTo("cylinder/external", "Cylinder: external pressure", "no case at all"))
	}
	all := absences(rs)
	if len(all) != 21 || len(all[0].cases) != 1 || len(all[1].cases) != 0 {
		t.Fatalf("%d reasons: %+v", len(all), all)
	}
	p, err := newPaper(&report.Sheet{}, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	from := p.y
	p.absent(rs)
	if lines := (p.y - from - 4) / (small * leading); lines > 7 {
		t.Errorf("%.0f lines", lines)
	}
	from = p.y
	p.absent(rs[:6])
	if lines := (p.y - from - 4) / (small * leading); math.Abs(lines-4) > 1e-6 {
		t.Errorf("%.2f lines for four reasons", lines)
	}
}

// No pressure of a step is struck by the line of the steps: the number beside a low
// step before another low one, and at a top, stands over it.
func TestStepsLeaveTheirNumbersFree(t *testing.T) {
	s := &report.Sheet{Proof: &report.Proof{Pressure: 8.3e6, Relief: 8.72e6}}
	for _, p := range []float64{0.17e6, 0.41e6, 4.1e6, 5e6, 5.8e6, 6.6e6, 7.5e6, 8.3e6, 0.41e6, 4.1e6, 5e6, 5.8e6, 6.6e6, 7.5e6, 8.3e6, 0.41e6} {
		s.Proof.Steps = append(s.Proof.Steps, report.ProofStep{Pressure: p})
	}
	f := proofFigure(s, 180, 75)
	struck := f.Polylines[len(f.Polylines)-1].Points // a chain
	var strokes [][2]drawing.Point
	for i := range len(struck) - 1 {
		strokes = append(strokes, [2]drawing.Point{struck[i], struck[i+1]})
	}
	for _, l := range f.Lines {
		if len(l.Pen.Dash) > 0 { // the relief device, just over the top
			strokes = append(strokes, [2]drawing.Point{l.From, l.To})
		}
	}
	seen := 0
	for _, text := range f.Texts {
		if text.Size != label-0.3 {
			continue
		}
		seen++
		wide := 0.5 * text.Size * float64(len(text.Text))
		left := text.At.X - map[drawing.Align]float64{drawing.Left: 0, drawing.Centre: wide / 2, drawing.Right: wide}[text.Align]
		for _, l := range strokes {
			for k := range 201 {
				u := float64(k) / 200
				x, y := l[0].X+u*(l[1].X-l[0].X), l[0].Y+u*(l[1].Y-l[0].Y)
				if x > left && x < left+wide && y < text.At.Y && y > text.At.Y-0.7*text.Size {
					t.Errorf("%s at %.1f, %.1f is struck at %.1f, %.1f", text.Text, text.At.X, text.At.Y, x, y)
					break
				}
			}
		}
	}
	if seen != 16 {
		t.Errorf("%d numbers", seen)
	}
}
