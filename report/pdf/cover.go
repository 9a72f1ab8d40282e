package pdf

import (
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// cover draws a bolt hole of a flat cover on either side of the axis, with its middle
// line, and the seal as two dots on the face inside.
func (v view) cover(b report.Cover) {
	over := 2.5 / v.scale // of the middle line over the faces [m]
	lo, hi := math.Min(b.Inside, b.Outside), math.Max(b.Inside, b.Outside)
	for _, side := range []float64{1, -1} {
		R := side * b.Circle / 2
		hole := v.mirrored([]report.Point{{Z: lo, R: R - b.Hole/2}, {Z: hi, R: R - b.Hole/2}, {Z: hi, R: R + b.Hole/2}, {Z: lo, R: R + b.Hole/2}}, 1)
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: hole, Grey: 1})
		v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: hole, Closed: true, Pen: drawing.Pen{Width: 0.13}})
		from, to := v.at(report.Point{Z: lo - over, R: R}), v.at(report.Point{Z: hi + over, R: R})
		v.f.AddLine(from.X, from.Y, to.X, to.Y, drawing.Pen{Width: 0.1, Dash: []float64{3, 0.8, 0.8, 0.8}})
		if b.Seal > 0 {
			at := v.at(report.Point{Z: b.Inside, R: side * b.Seal / 2})
			v.dot(at)
		}
	}
}

// dot sets a black dot in a white ring, which shows on metal and beside it.
func (v view) dot(at drawing.Point) {
	const steps = 16
	for _, d := range []struct{ radius, grey float64 }{{1, 1}, {0.65, 0}} {
		points := make([]drawing.Point, steps)
		for i := range points {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
			points[i] = drawing.Point{X: at.X + d.radius*cos, Y: at.Y + d.radius*sin}
		}
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: points, Grey: d.grey})
	}
}

// cover draws the holes, the bolt circle, the seal and the tank's bore of a bolted
// cover that is seen along the axis.
func (p plan) cover(b report.Cover, bore float64) {
	p.ring(0, 0, b.Circle/2, 1, drawing.Pen{Width: 0.1, Dash: []float64{3, 0.8, 0.8, 0.8}})
	for i := range b.Count {
		p.ring(b.Circle/2, 2*math.Pi*float64(i)/float64(b.Count), b.Hole/2, 1, drawing.Pen{Width: 0.25})
	}
	if b.Seal > 0 {
		p.ring(0, 0, b.Seal/2, 1, drawing.Pen{Width: 0.2, Dash: []float64{0.6, 0.6}})
	}
	p.ring(0, 0, bore, 1, drawing.Pen{Width: 0.13, Dash: []float64{2, 1}})
}
