package pdf

import (
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// corners are the outlines of the marks of a chart, round their middle, in turn:
// square, triangle, diamond, triangle on its head. Filled, they serve four more lines.
var corners = [][]drawing.Point{
	{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}},
	{{X: 0, Y: -1.3}, {X: 1.2, Y: 0.9}, {X: -1.2, Y: 0.9}},
	{{X: 0, Y: -1.4}, {X: 1.2, Y: 0}, {X: 0, Y: 1.4}, {X: -1.2, Y: 0}},
	{{X: 0, Y: 1.3}, {X: 1.2, Y: -0.9}, {X: -1.2, Y: -0.9}},
}

// mark draws the n-th mark at a place.
func (p plot) mark(n int, at drawing.Point) {
	const half = 0.85 // [mm]
	shape := corners[n%len(corners)]
	points := make([]drawing.Point, len(shape))
	for i, c := range shape {
		points[i] = drawing.Point{X: at.X + half*c.X, Y: at.Y + half*c.Y}
	}
	grey := 1.0
	if n/len(corners)%2 == 1 {
		grey = 0
	}
	p.f.Fills = append(p.f.Fills, drawing.Fill{Points: points, Grey: grey})
	p.f.Polylines = append(p.f.Polylines, drawing.Polyline{Points: points, Closed: true, Pen: drawing.Pen{Width: 0.2}})
}

// marks sets marks along the n-th of several lines, each line's at other places, so
// that lines that run together are told apart.
func (p plot) marks(n, of int, s report.Series, dx, dy report.Display) {
	const count = 6
	step := (p.x1 - p.x0) / count
	first := p.x0 + step*(float64(n)+0.5)/float64(of)
	for k := range count {
		if at, ok := p.on(s, dx, dy, first+float64(k)*step); ok {
			p.mark(n, at)
		}
	}
	for i := range min(len(s.X), len(s.Y)) {
		if at, ok := p.alone(s, dx, dy, i); ok {
			p.mark(n, at)
		}
	}
}

// alone returns the place of a point that has no neighbour to draw a line to.
func (p plot) alone(s report.Series, dx, dy report.Display, i int) (drawing.Point, bool) {
	there := func(i int) bool {
		return i >= 0 && i < min(len(s.X), len(s.Y)) && !math.IsNaN(s.X[i]+s.Y[i]) && !math.IsInf(s.X[i]+s.Y[i], 0)
	}
	if !there(i) || there(i-1) || there(i+1) {
		return drawing.Point{}, false
	}
	return drawing.Point{X: p.x(dx.Of(s.X[i])), Y: p.y(dy.Of(s.Y[i]))}, true
}

// on returns where a line first crosses a place x of the paper [mm].
func (p plot) on(s report.Series, dx, dy report.Display, x float64) (drawing.Point, bool) {
	for i := range min(len(s.X), len(s.Y)) - 1 {
		a := drawing.Point{X: p.x(dx.Of(s.X[i])), Y: p.y(dy.Of(s.Y[i]))}
		b := drawing.Point{X: p.x(dx.Of(s.X[i+1])), Y: p.y(dy.Of(s.Y[i+1]))}
		lo, hi := math.Min(a.X, b.X), math.Max(a.X, b.X)
		if !(lo <= x && x <= hi) || hi == lo {
			continue
		}
		if y := a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X); !math.IsNaN(y) && !math.IsInf(y, 0) {
			return drawing.Point{X: x, Y: y}, true
		}
	}
	return drawing.Point{}, false
}
