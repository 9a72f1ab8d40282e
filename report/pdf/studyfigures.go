package pdf

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// A Drawing is a figure of a study: [Lines], [Spreads], [Follows] or [Governs].
type Drawing interface {
	// draw returns the figure in a system of units, nil where there is nothing to draw.
	draw(units string, width float64) *drawing.Figure
}

// DrawingSVG draws one figure as SVG, in a system of units.
func DrawingSVG(d Drawing, units string) ([]byte, error) {
	f := d.draw(units, 180)
	if f == nil {
		return nil, errors.New("there is nothing to draw")
	}
	return f.SVG()
}

// Lines are a chart of lines.
type Lines report.Chart

func (l Lines) draw(units string, width float64) *drawing.Figure {
	return chartFigure(report.Chart(l), units, width, 85)
}

// Spreads show for each check the mean of its margin with two deviations to each side.
type Spreads struct {
	Title string
	Rows  []SpreadRow
}

// A SpreadRow is one check of a [Spreads].
type SpreadRow struct {
	Check           string
	Mean, Deviation float64 // of the margin [-]
	Fails           string  // how often it was not satisfied: "3 of 500"
}

const spreadPitch = 4.6 // of the rows of a figure [mm]

func (s Spreads) draw(_ string, width float64) *drawing.Figure {
	low, high := 0.0, 0.0
	for _, r := range s.Rows {
		low, high = math.Min(low, r.Mean-2*r.Deviation), math.Max(high, r.Mean+2*r.Deviation)
	}
	if len(s.Rows) == 0 || math.IsNaN(low+high) || math.IsInf(high-low, 0) {
		return nil
	}
	pad := 0.04 * math.Max(high-low, 1e-6)
	f := &drawing.Figure{Name: "scatter", Title: s.Title, Width: width, Height: float64(len(s.Rows))*spreadPitch + 17}
	p := plot{f: f, x0: 58, y0: 4, x1: width - 30, y1: float64(len(s.Rows))*spreadPitch + 5,
		least: math.Max(low-pad, leastShown), most: math.Min(high+pad, mostShown)}
	p.scale("margin of safety; square: mean, line: two deviations to each side")
	f.AddText(p.x1+2, p.y0-0.8, label, drawing.Left, "not satisfied")
	for i, r := range s.Rows {
		y := p.y0 + (float64(i)+0.6)*spreadPitch
		f.AddText(p.x0-2, y+0.9, label, drawing.Right, clipInside(r.Check, 44))
		f.AddText(p.x1+2, y+0.9, label, drawing.Left, r.Fails)
		p.spread(r, y)
	}
	return f
}

// scale draws the axis of a figure of rows, and a heavy line at zero.
func (p plot) scale(title string) {
	for _, v := range ticks(p.least, p.most, 8) {
		p.f.AddLine(p.x(v), p.y0, p.x(v), p.y1, drawing.Pen{Width: 0.1, Grey: 0.7})
		p.f.AddText(p.x(v), p.y1+3.5, label, drawing.Centre, tick(v))
	}
	p.f.AddText((p.x0+p.x1)/2, p.y1+8, label+0.2, drawing.Centre, title)
	p.f.AddLine(p.x(0), p.y0, p.x(0), p.y1, drawing.Pen{Width: 0.5})
}

// spread draws one row; what is beyond the frame ends in an arrow.
func (p plot) spread(r SpreadRow, y float64) {
	low, high := r.Mean-2*r.Deviation, r.Mean+2*r.Deviation
	within := func(v float64) float64 { return p.x(math.Max(p.least, math.Min(p.most, v))) }
	p.f.AddLine(within(low), y, within(high), y, drawing.Pen{Width: 0.5})
	for _, v := range []float64{low, high} {
		if v >= p.least && v <= p.most {
			p.f.AddLine(p.x(v), y-1, p.x(v), y+1, drawing.Pen{Width: 0.3})
		}
	}
	if high > p.most {
		p.f.AddArrow(p.x1+1.2, y, 0, 2.4)
	}
	if low < p.least {
		p.f.AddArrow(p.x0-1.2, y, math.Pi, 2.4)
	}
	if r.Mean > p.most {
		p.f.AddText(p.x1-2, y+0.9, label, drawing.Right, "mean "+report.Number(r.Mean, 3, report.Down))
		return
	}
	const half = 0.85
	at := within(r.Mean)
	p.f.Fills = append(p.f.Fills, drawing.Fill{Points: drawing.Rectangle(at-half, y-half, 2*half, 2*half)})
}

// Follows show how strongly the margin of a check follows each input.
type Follows struct {
	Title string
	Rows  []FollowRow
}

// A FollowRow is one input of a [Follows].
type FollowRow struct {
	Input       string
	Correlation float64 // of margin and input, -1 to 1 [-]
}

func (s Follows) draw(_ string, width float64) *drawing.Figure {
	if len(s.Rows) == 0 {
		return nil
	}
	f := &drawing.Figure{Name: "follows", Title: s.Title, Width: width, Height: float64(len(s.Rows))*spreadPitch + 17}
	p := plot{f: f, x0: 58, y0: 4, x1: width - 30, y1: float64(len(s.Rows))*spreadPitch + 5, least: -1, most: 1}
	p.scale("correlation of the margin with the input; grey: more of it raises the margin, black: lowers it")
	for i, r := range s.Rows {
		y := p.y0 + (float64(i)+0.6)*spreadPitch
		f.AddText(p.x0-2, y+0.9, label, drawing.Right, clipInside(r.Input, 44))
		f.AddText(p.x1+2, y+0.9, label, drawing.Left, fmt.Sprintf("%+.2f", r.Correlation))
		grey := 0.8
		if r.Correlation < 0 {
			grey = 0
		}
		a, b := math.Min(p.x(0), p.x(r.Correlation)), math.Max(p.x(0), p.x(r.Correlation))
		box := drawing.Rectangle(a, y-1.3, math.Max(b-a, 0.4), 2.6)
		f.Fills = append(f.Fills, drawing.Fill{Points: box, Grey: grey})
		f.Polylines = append(f.Polylines, drawing.Polyline{Points: box, Closed: true, Pen: drawing.Pen{Width: 0.15}})
	}
	return f
}
