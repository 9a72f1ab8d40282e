package pdf

import (
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// Figures returns every figure of the sheet, as it stands in the document: the
// section, the charts and the proof steps.
func Figures(s *report.Sheet) []drawing.Figure {
	var out []drawing.Figure
	add := func(f *drawing.Figure) {
		if f != nil {
			out = append(out, *f)
		}
	}
	add(sectionFigure(s, 180, 95))
	for _, f := range planFigures(s, 180) {
		add(f)
	}
	add(marginsFigure(report.WorstFirst(fewer(grouped(s.Checks))), report.WorstFirst(s.Checks), 180))
	for _, c := range allCharts(s) {
		add(chartFigure(c, s.Units, 180, 85))
	}
	for _, j := range s.Joints {
		if j.Coupons != nil {
			add(couponFigure(j, s.Units, 180, 70))
		}
	}
	add(proofFigure(s, 180, 75))
	return out
}

// place draws a figure with its upper left corner at (x, y) [mm].
func (p *paper) place(f *drawing.Figure, x, y float64) {
	if !f.Finite() {
		p.fail(fmt.Errorf("figure %q has a place that is not a finite number", f.Name))
		return
	}
	if p.dry {
		for _, t := range f.Texts {
			p.clean(t.Text)
		}
		return
	}
	for _, a := range f.Fills {
		p.doc.SetFillColor(shade(a.Grey))
		if len(a.Points) > 2 {
			p.path(a.Points, x, y, true, "F")
		}
	}
	for _, l := range f.Polylines {
		p.pen(l.Pen)
		if len(l.Points) > 1 {
			p.path(l.Points, x, y, l.Closed, "D")
		}
	}
	for _, l := range f.Lines {
		p.pen(l.Pen)
		p.doc.Line(x+l.From.X, y+l.From.Y, x+l.To.X, y+l.To.Y)
	}
	for _, a := range f.Arcs {
		p.pen(a.Pen)
		p.path(a.Points(), x, y, false, "D")
	}
	p.doc.SetFillColor(0, 0, 0)
	for _, t := range f.Texts {
		p.word(t, x, y)
	}
	p.pen(drawing.Pen{Width: 0.2})
}

func (p *paper) path(ps []drawing.Point, x, y float64, closed bool, how string) {
	p.doc.MoveTo(x+ps[0].X, y+ps[0].Y)
	for _, q := range ps[1:] {
		p.doc.LineTo(x+q.X, y+q.Y)
	}
	if closed {
		p.doc.ClosePath()
	}
	p.doc.DrawPath(how)
}

func (p *paper) word(t drawing.Text, x, y float64) {
	p.font(style(t.Bold), t.Size*72/25.4)
	w := p.measure(t.Text)
	at := x + t.At.X
	if t.Turn != 0 {
		p.doc.TransformBegin()
		p.doc.TransformRotate(t.Turn*180/math.Pi, at, y+t.At.Y)
		defer p.doc.TransformEnd()
	}
	switch t.Align {
	case drawing.Centre:
		at -= w / 2
	case drawing.Right:
		at -= w
	}
	p.put(at, y+t.At.Y, t.Text)
}

func (p *paper) pen(pen drawing.Pen) {
	p.doc.SetLineWidth(pen.Width)
	p.doc.SetDrawColor(shade(pen.Grey))
	p.doc.SetDashPattern(pen.Dash, 0)
}

func shade(grey float64) (r, g, b int) {
	v := int(math.Round(255 * grey))
	return v, v, v
}

// fail keeps the first error.
func (p *paper) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

// figure sets a figure at the place of the next line, with its title over it.
func (p *paper) figure(f *drawing.Figure) {
	if f == nil {
		return
	}
	p.heading(f.Title, f.Height)
	p.place(f, left, p.y)
	p.y += f.Height + 3
}
