package pdf

import (
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// couponFigure draws the strengths of coupons side by side in the order of the
// file, with the mean and the limit of each strength; nil where there is none.
func couponFigure(j report.JointSheet, system string, width, height float64) *drawing.Figure {
	c := j.Coupons
	low, high := math.Inf(1), math.Inf(-1)
	widen := func(v float64) {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	for _, r := range c.Rows {
		widen(r.Ultimate)
		widen(r.Yield)
	}
	for _, l := range c.Limits {
		widen(l.Limit)
	}
	if !(high >= low) {
		return nil
	}
	unit := report.DisplayUnit("Pa", high, system)
	f := &drawing.Figure{Name: "coupons-" + j.Name, Title: "Coupons of joint " + j.Name + ": mean and limit of each strength", Width: width, Height: height}
	p := plot{f: f, x0: 18, y0: 4, x1: width - 46, y1: height - 15, least: 0, most: math.Max(float64(len(c.Rows)+1), 10)}
	p.low, p.high = reach(unit.Of(low), unit.Of(high))
	p.axes("coupon, in the order of the file", title("strength", unit.Unit))
	for i, r := range c.Rows {
		p.couponMark(float64(i+1), unit.Of(r.Ultimate), r.Kind == "parent", true)
		p.couponMark(float64(i+1), unit.Of(r.Yield), r.Kind == "parent", false)
	}
	for _, l := range c.Limits {
		p.couponLevels(l, unit)
	}
	f.AddText(p.x0, height-2.5, label, drawing.Left, "square: weld; triangle: parent; black: ultimate; white: yield; solid line: mean; broken line: limit")
	return f
}

// couponMark draws one strength: a square for a weld coupon and a triangle for
// the parent, black for ultimate and white for yield.
func (p plot) couponMark(at, v float64, parent, black bool) {
	if math.IsNaN(v) {
		return
	}
	const half = 0.9 // [mm]
	x, y := p.x(at), p.y(v)
	box := drawing.Rectangle(x-half, y-half, 2*half, 2*half)
	if parent {
		box = []drawing.Point{{X: x, Y: y - 1.3*half}, {X: x + 1.2*half, Y: y + half}, {X: x - 1.2*half, Y: y + half}}
	}
	grey := 1.0
	if black {
		grey = 0
	}
	p.f.Fills = append(p.f.Fills, drawing.Fill{Points: box, Grey: grey})
	p.f.Polylines = append(p.f.Polylines, drawing.Polyline{Points: box, Closed: true, Pen: drawing.Pen{Width: 0.25}})
}

// couponLevels draws mean and limit of one strength, named at the right.
func (p plot) couponLevels(l report.CouponLimit, unit report.Display) {
	draw := func(v, below float64, pen drawing.Pen, name string, dir report.Round) {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return
		}
		y := p.y(unit.Of(v))
		p.f.AddLine(p.x0, y, p.x1, y, pen)
		p.f.AddText(p.x1+1.5, y+below, label, drawing.Left, name+" "+fourDigits(v, unit, dir))
	}
	draw(l.Mean, 0, drawing.Pen{Width: 0.25}, "mean of "+l.Name, report.Nearest)
	used := ""
	if l.Refused != "" {
		used = ", not used"
	}
	draw(l.Limit, 2, drawing.Pen{Width: 0.5, Dash: []float64{2, 1}}, fmt.Sprintf("%s limit%s", l.Basis, used), report.Down)
}

// fourDigits prints a strength v [Pa] in a unit, a dash where there is none.
func fourDigits(v float64, unit report.Display, dir report.Round) string {
	if math.IsNaN(v) {
		return "–"
	}
	return report.Number(unit.Of(v), 4, dir) + " " + unit.Unit
}
