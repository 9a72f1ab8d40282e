package pdf

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
)

// allCharts returns the pressure along the tank and the charts of the sheet.
func allCharts(s *report.Sheet) []report.Chart {
	return append([]report.Chart{pressureChart(s)}, s.Charts...)
}

// shown is how many cases one chart can hold and still be read.
const shown = 8

// pressureChart plots the conditions by station, a line a case; of many cases
// those with the highest pressures.
func pressureChart(s *report.Sheet) report.Chart {
	c := report.Chart{
		Name: "pressure", Title: "Pressure along the tank",
		X: report.Axis{Name: "station z, forward from the aft seam", Unit: "m"},
		Y: report.Axis{Name: "pressure across the wall", Unit: "Pa"},
	}
	byCase := map[string][]report.Condition{}
	var names []string
	for _, k := range s.Conditions {
		if byCase[k.Case] == nil {
			names = append(names, k.Case)
		}
		byCase[k.Case] = append(byCase[k.Case], k)
	}
	if len(names) > shown {
		slices.SortStableFunc(names, func(a, b string) int {
			return compare(peak(byCase[b]), peak(byCase[a]))
		})
		c.Title += fmt.Sprintf(" (the %d cases with the highest pressure of %d)", shown, len(names))
		names = names[:shown]
	}
	for _, name := range names {
		ks := slices.Clone(byCase[name])
		slices.SortStableFunc(ks, func(a, b report.Condition) int { return compare(a.Z, b.Z) })
		line := report.Series{Name: name}
		for _, k := range ks {
			line.X, line.Y = append(line.X, k.Z), append(line.Y, k.Pressure)
		}
		c.Series = append(c.Series, line)
	}
	return c
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func peak(ks []report.Condition) float64 {
	most := math.Inf(-1)
	for _, k := range ks {
		most = math.Max(most, k.Pressure)
	}
	return most
}

// Limits of the margins chart: a bar longer than these ends in an arrow.
const (
	leastShown, mostShown = -1.0, 2.0 // [-]
	barsShown             = 28
)

// marginsFigure draws the margins of checks as bars from zero: of those of the
// overview, given worst first, the worst; those that could not be made are counted in
// words.
func marginsFigure(few, worst []check.Result, width float64) *drawing.Figure {
	var rows []check.Result
	open, made := 0, 0
	for _, r := range worst {
		switch r.Status() {
		case check.Satisfied, check.NotSatisfied:
			made++
		case check.NotAssessed:
			open++
		}
	}
	for _, r := range few {
		if s := r.Status(); len(rows) < barsShown && (s == check.Satisfied || s == check.NotSatisfied) {
			rows = append(rows, r)
		}
	}
	if len(rows) == 0 {
		return nil
	}
	title := "Margins of safety, worst first"
	if made > len(rows) {
		title += fmt.Sprintf(" (%d of %d checks", len(rows), made)
		if len(few) < len(worst) {
			title += "; of one with many cases the least"
		}
		title += ")"
	}
	const pitch = 4.2
	f := &drawing.Figure{Name: "margins", Title: title, Width: width, Height: float64(len(rows))*pitch + 17}
	p := plot{f: f, x0: 64, y0: 2, x1: width - 34, y1: float64(len(rows))*pitch + 3, least: leastShown, most: mostShown}
	for _, v := range []float64{-1, -0.5, 0, 0.5, 1, 1.5, 2} {
		f.AddLine(p.x(v), p.y0, p.x(v), p.y1, drawing.Pen{Width: 0.1, Grey: 0.7})
		f.AddText(p.x(v), p.y1+3.5, label, drawing.Centre, tick(v))
	}
	f.AddText(p.x(0.5), p.y1+7.5, label, drawing.Centre, "margin of safety = capacity / (factor × demand) − 1")
	if open > 0 {
		f.Texts = append(f.Texts, drawing.Text{At: drawing.Point{Y: p.y1 + 12}, Size: label + 0.2, Bold: true,
			Text: fmt.Sprintf("Not assessed, so without a margin and not drawn: %d. Each keeps the tank from being satisfied.", open)})
	}
	f.AddLine(p.x(0), p.y0, p.x(0), p.y1, drawing.Pen{Width: 0.5})
	for i, r := range rows {
		p.bar(r, p.y0+(float64(i)+0.6)*pitch)
	}
	return f
}

// bar draws one check: filled black where it is not satisfied, grey with an
// edge where it is, and a word at its end in either case.
func (p plot) bar(r check.Result, y float64) {
	f := p.f
	f.AddText(p.x0-2, y+0.9, label, drawing.Right, clipInside(report.FullID(r), 48))
	f.AddText(p.x1+2, y+0.9, label, drawing.Left, r.Status().String())
	m := r.Margin()
	end := math.Max(leastShown, math.Min(mostShown, m))
	a, b := math.Min(p.x(0), p.x(end)), math.Max(p.x(0), p.x(end))
	b = math.Max(b, a+0.4)
	grey := 0.8
	if r.Status() == check.NotSatisfied {
		grey = 0
	}
	box := drawing.Rectangle(a, y-1.3, b-a, 2.6)
	f.Fills = append(f.Fills, drawing.Fill{Points: box, Grey: grey})
	f.Polylines = append(f.Polylines, drawing.Polyline{Points: box, Closed: true, Pen: drawing.Pen{Width: 0.15}})
	text := report.Margin(r)
	switch {
	case m > mostShown:
		f.AddArrow(p.x1+1.2, y, 0, 2.4)
		f.AddText(b-3, y+0.9, label, drawing.Right, text)
	case b+9 > p.x1: // no room before the word at the end
		f.AddText(b-1.5, y+0.9, label, drawing.Right, text)
	case m < 0:
		f.AddText(p.x(0)+1.2, y+0.9, label, drawing.Left, text)
	default:
		f.AddText(b+1.2, y+0.9, label, drawing.Left, text)
	}
}

// proofFigure draws the steps of the proof test, one after the other: their
// pressures to scale, their times not.
func proofFigure(s *report.Sheet, width, height float64) *drawing.Figure {
	if s.Proof == nil || len(s.Proof.Steps) == 0 {
		return nil
	}
	steps := s.Proof.Steps
	f := &drawing.Figure{Name: "proof", Title: "Proof test: pressure at the gauge, step by step (times not to scale)", Width: width, Height: height}
	top := s.Proof.Pressure
	for _, st := range steps {
		top = math.Max(top, st.Pressure)
	}
	if s.Proof.Relief > top {
		top = s.Proof.Relief
	}
	unit := report.DisplayUnit("Pa", top, s.Units)
	p := plot{f: f, x0: 18, y0: 4, x1: width - 6, y1: height - 11, least: 0, most: float64(len(steps)) + 0.6, high: 1.1 * unit.Of(top)}
	p.axes("step", title("pressure at the gauge", unit.Unit))
	chain := []drawing.Point{{X: p.x(0), Y: p.y(0)}}
	for i, st := range steps {
		y := p.y(unit.Of(st.Pressure))
		from, to := p.x(float64(i)+0.75), p.x(float64(i)+1.25)
		chain = append(chain, drawing.Point{X: from, Y: y}, drawing.Point{X: to, Y: y})
		x, under, align := stepLabel(steps, i, 0.15*top, from, to)
		f.AddText(x, y+under, label-0.3, align, report.Number(unit.Of(st.Pressure), 4, st.GaugeRound()))
	}
	chain = append(chain, drawing.Point{X: p.x1, Y: p.y(0)})
	f.Polylines = append(f.Polylines, drawing.Polyline{Points: chain, Pen: drawing.Pen{Width: 0.5}})
	p.level(unit.Of(s.Proof.Relief), "relief device opens")
	if s.Proof.Examination > 0 {
		p.level(unit.Of(s.Proof.Examination), "nobody near above this, nor before a passed hold")
	}
	return f
}

// stepLabel returns where the pressure of a step stands, clear of the line that climbs
// and falls beside it: from x, so far under the step [mm]. A step under the pressure
// low [Pa] has no room down to the axis, and one between lower ones none under it.
func stepLabel(steps []report.ProofStep, i int, low, from, to float64) (x, under float64, align drawing.Align) {
	before, now, after := 0.0, steps[i].Pressure, 0.0
	if i > 0 {
		before = steps[i-1].Pressure
	}
	if i+1 < len(steps) {
		after = steps[i+1].Pressure
	}
	switch {
	case now < low && after >= low:
		return to + 1.2, 0.8, drawing.Left
	case now < low && before >= low:
		return from - 1.2, 0.8, drawing.Right
	case now < low || after < now:
		return (from + to) / 2, -0.5, drawing.Centre
	}
	return from + 0.4, 3, drawing.Left
}

func (p plot) level(v float64, text string) {
	if math.IsNaN(v) || v <= p.low || v > p.high {
		return
	}
	p.f.AddLine(p.x0, p.y(v), p.x1, p.y(v), drawing.Pen{Width: 0.3, Dash: []float64{1.5, 1}})
	p.f.AddText(p.x0+1, p.y(v)-0.8, label, drawing.Left, text)
}

// roundTo returns v to n significant digits, in the same unit.
func roundTo(v float64, n int) float64 {
	if v == 0 {
		return 0
	}
	scale := math.Pow(10, float64(n-1)-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*scale) / scale
}
