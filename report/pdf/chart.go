package pdf

import (
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// dashes tell the lines of a chart apart without colour.
var dashes = []drawing.Pen{
	{Width: 0.45}, {Width: 0.45, Dash: []float64{3, 1}}, {Width: 0.45, Dash: []float64{1, 0.8}},
	{Width: 0.45, Dash: []float64{4, 1, 0.8, 1}}, {Width: 0.9, Grey: 0.6}, {Width: 0.9, Grey: 0.6, Dash: []float64{3, 1.2}},
	{Width: 0.25}, {Width: 0.25, Dash: []float64{2, 1.5}},
}

// A plot maps values to the paper of a chart.
type plot struct {
	f                      *drawing.Figure
	x0, y0, x1, y1         float64 // box on the paper [mm]
	least, most, low, high float64 // ranges of the axes [display units]
}

func (p plot) x(v float64) float64 { return p.x0 + (v-p.least)/(p.most-p.least)*(p.x1-p.x0) }
func (p plot) y(v float64) float64 { return p.y1 - (v-p.low)/(p.high-p.low)*(p.y1-p.y0) }

// chartFigure draws a chart, or returns nil where it holds no two points.
func chartFigure(c report.Chart, system string, width, height float64) *drawing.Figure {
	xs, ys := extent(c)
	if xs == nil || ys == nil {
		return nil
	}
	dx := report.DisplayUnit(c.X.Unit, math.Max(math.Abs(xs[0]), math.Abs(xs[1])), system)
	dy := report.DisplayUnit(c.Y.Unit, math.Max(math.Abs(ys[0]), math.Abs(ys[1])), system)
	legend := float64((len(c.Series)+len(c.Limits)+2)/3)*4 + 2
	f := &drawing.Figure{Name: c.Name, Title: c.Title, Width: width, Height: height + legend}
	p := plot{f: f, x0: 18, y0: 4, x1: width - 6, y1: height - 11}
	p.least, p.most = dx.Of(xs[0]), dx.Of(xs[1])
	if p.most-p.least < 1e-9*math.Max(1, math.Abs(p.most)) {
		p.least, p.most = p.least-1, p.most+1
	}
	p.low, p.high = reach(dy.Of(ys[0]), dy.Of(ys[1]))
	p.axes(title(c.X.Name, dx.Unit), title(c.Y.Name, dy.Unit))
	for i, s := range c.Series {
		pen := dashes[i%len(dashes)]
		p.curve(s, dx, dy, pen)
		p.marks(i, len(c.Series), s, dx, dy)
		p.legend(i, pen, s.Name)
		p.mark(i, p.legendAt(i))
	}
	for i, l := range c.Limits {
		pen := drawing.Pen{Width: 0.3, Dash: []float64{0.6, 0.6}}
		at := p.y(dy.Of(l.Y))
		f.AddLine(p.x0, at, p.x1, at, pen)
		p.legend(len(c.Series)+i, pen, l.Name)
	}
	return f
}

func title(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + " [" + unit + "]"
}

// extent returns the ranges of a chart's finite values in SI, nil where there
// are none; the second range holds the limits too.
func extent(c report.Chart) (xs, ys []float64) {
	widen := func(r []float64, v float64) []float64 {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return r
		}
		if r == nil {
			return []float64{v, v}
		}
		return []float64{math.Min(r[0], v), math.Max(r[1], v)}
	}
	for _, s := range c.Series {
		for i := range min(len(s.X), len(s.Y)) {
			xs, ys = widen(xs, s.X[i]), widen(ys, s.Y[i])
		}
	}
	for _, l := range c.Limits {
		ys = widen(ys, l.Y)
	}
	return xs, ys
}

// reach widens a range of values so that lines stay clear of the frame; it
// keeps zero where zero is near.
func reach(low, high float64) (float64, float64) {
	span := high - low
	if span <= 0 {
		span = math.Max(1, math.Abs(high))
	}
	if low >= 0 && low < 0.6*high {
		return 0, high + 0.08*span
	}
	return low - 0.08*span, high + 0.08*span
}

// ticks returns round values within a range, at most about n.
func ticks(low, high float64, n int) []float64 {
	raw := (high - low) / float64(n)
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	step := 10 * power
	for _, m := range []float64{1, 2, 5} {
		if m*power >= raw {
			step = m * power
			break
		}
	}
	var out []float64
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9*step; k++ {
		out = append(out, k*step)
	}
	return out
}

const label = 2.5 // type size on charts [mm]

func (p plot) axes(xTitle, yTitle string) {
	f := p.f
	grid := drawing.Pen{Width: 0.1, Grey: 0.75}
	for _, v := range ticks(p.least, p.most, 10) {
		f.AddLine(p.x(v), p.y0, p.x(v), p.y1, grid)
		f.AddText(p.x(v), p.y1+3.5, label, drawing.Centre, tick(v))
	}
	for _, v := range ticks(p.low, p.high, 7) {
		f.AddLine(p.x0, p.y(v), p.x1, p.y(v), grid)
		f.AddText(p.x0-1.5, p.y(v)+0.9, label, drawing.Right, tick(v))
	}
	f.AddRectangle(p.x0, p.y0, p.x1-p.x0, p.y1-p.y0, drawing.Pen{Width: 0.25})
	f.AddText((p.x0+p.x1)/2, p.y1+8, label+0.2, drawing.Centre, xTitle)
	f.Texts = append(f.Texts, drawing.Text{At: drawing.Point{X: 4, Y: (p.y0 + p.y1) / 2}, Text: yTitle,
		Size: label + 0.2, Align: drawing.Centre, Turn: math.Pi / 2})
}

// tick returns the number of a tick, without the noise of its sum.
func tick(v float64) string {
	if math.Abs(v) < 1e-12 {
		return "0"
	}
	return report.Plain(v)
}

func (p plot) curve(s report.Series, dx, dy report.Display, pen drawing.Pen) {
	var chain []drawing.Point
	flush := func() {
		if len(chain) > 1 {
			p.f.Polylines = append(p.f.Polylines, drawing.Polyline{Points: chain, Pen: pen})
		}
		chain = nil
	}
	for i := range min(len(s.X), len(s.Y)) {
		at := drawing.Point{X: p.x(dx.Of(s.X[i])), Y: p.y(dy.Of(s.Y[i]))}
		if math.IsNaN(at.X+at.Y) || math.IsInf(at.X+at.Y, 0) {
			flush()
			continue
		}
		chain = append(chain, at)
	}
	flush()
}

// legend writes the n-th name under the chart, three to a row.
func (p plot) legend(n int, pen drawing.Pen, name string) {
	w := (p.x1 - p.x0) / 3
	at := p.legendAt(n)
	p.f.AddLine(at.X-5, at.Y, at.X+5, at.Y, pen)
	p.f.AddText(at.X+6.5, at.Y+0.9, label, drawing.Left, clip(name, int((w-13)/1.25)))
}

// legendAt returns the middle of the line of the n-th name of the legend.
func (p plot) legendAt(n int) drawing.Point {
	return drawing.Point{X: p.x0 + float64(n%3)*(p.x1-p.x0)/3 + 5, Y: p.y1 + 12.6 + float64(n/3)*4}
}

// clipInside shortens a name to n letters in its middle: two of one kind differ at
// their ends.
func clipInside(text string, n int) string {
	r := []rune(text)
	if len(r) <= n || n < 3 {
		return text
	}
	tail := n / 2
	return string(r[:n-1-tail]) + "…" + string(r[len(r)-tail:])
}

// clip shortens a name to n letters.
func clip(text string, n int) string {
	if r := []rune(text); len(r) > n && n > 1 {
		return string(r[:n-1]) + "…"
	}
	return text
}
