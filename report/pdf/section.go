package pdf

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
)

// scales are the reductions a section is drawn in [-].
var scales = []float64{1, 2, 2.5, 5, 10, 15, 20, 25, 40, 50, 75, 100, 150, 200, 250, 500, 1000}

// A view maps the section to paper, forward to the right.
type view struct {
	f        *drawing.Figure
	x, y     float64 // of z = 0 on the axis [mm]
	scale    float64 // paper per tank [mm/m]
	lo, hi   float64 // stations of the ends [m]
	up, down float64 // reach of the section from its axis [m]
}

func (v view) at(q report.Point) drawing.Point {
	return drawing.Point{X: v.x + q.Z*v.scale, Y: v.y - q.R*v.scale}
}

// Room around the tank on paper [mm].
const (
	rowAbove  = 10.0 // port names
	rowPitch  = 5.0  // of stacked dimensions
	scaleNote = 6.0
)

// sectionFigure draws the tank cut along its axis, to scale, within a width and
// a height [mm]; nil where the sheet holds no section.
func sectionFigure(s *report.Sheet, width, height float64) *drawing.Figure {
	if s.Section == nil || len(s.Section.Outlines) == 0 {
		return nil
	}
	c := s.Section
	along, across := sorted(c.Dimensions)
	f := &drawing.Figure{Name: "section", Title: "Section of the tank", Width: width}
	v := view{f: f}
	v.bounds(c)
	below := float64(len(along))*rowPitch + rowAbove + scaleNote
	beside := float64(len(across))*rowPitch + 12
	fitScale := math.Min((width-beside-12)/(v.hi-v.lo), (height-rowAbove-below)/(v.up+v.down))
	ratio := 1000 / fitScale
	for _, n := range scales {
		if n >= ratio {
			ratio = n
			break
		}
	}
	v.scale = 1000 / ratio
	f.Height = (v.up+v.down)*v.scale + rowAbove + below
	v.x = beside + (width-beside-12-(v.hi-v.lo)*v.scale)/2 - v.lo*v.scale
	v.y = rowAbove + v.up*v.scale
	v.draw(c)
	v.dimensions(along, across, s.Units)
	v.scaleBar(ratio)
	return f
}

// bounds finds the ends and the reach of metal and tubes.
func (v *view) bounds(c *report.Section) {
	v.lo, v.hi = math.Inf(1), math.Inf(-1)
	for _, o := range c.Outlines {
		for _, q := range slices.Concat(o.Inside, o.Outside) {
			v.lo, v.hi = math.Min(v.lo, q.Z), math.Max(v.hi, q.Z)
			v.up = math.Max(v.up, math.Abs(q.R))
		}
	}
	v.down = v.up
	for _, t := range c.Ports {
		side, half := sideOf(t), t.OutsideDiameter/2
		for _, q := range []report.Point{t.Inner, t.Outer} {
			v.lo, v.hi = math.Min(v.lo, q.Z-half), math.Max(v.hi, q.Z+half)
			if side > 0 {
				v.up = math.Max(v.up, q.R+half)
			} else {
				v.down = math.Max(v.down, q.R+half)
			}
		}
	}
}

// sideOf returns the side on which a port is drawn: +1 up to half a turn, −1
// beyond.
func sideOf(t report.PortOutline) float64 {
	if c := math.Mod(t.Clock, 2*math.Pi); c > math.Pi+1e-9 || c < -1e-9 && c > -math.Pi {
		return -1
	}
	return 1
}

func (v view) draw(c *report.Section) {
	if len(c.Levels) > 0 {
		v.liquid(c)
	}
	for _, o := range c.Outlines {
		for _, side := range []float64{1, -1} {
			ring := slices.Clone(o.Outside)
			slices.Reverse(ring)
			metal := v.mirrored(slices.Concat(o.Inside, ring), side)
			v.f.Fills = append(v.f.Fills, drawing.Fill{Points: metal, Grey: 0.35})
			v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: metal, Closed: true, Pen: drawing.Pen{Width: 0.13}})
		}
	}
	for _, t := range c.Ports {
		v.port(t)
	}
	for _, m := range c.Seams {
		v.seam(m)
	}
	v.f.AddLine(v.x+v.lo*v.scale-5, v.y, v.x+v.hi*v.scale+5, v.y, drawing.Pen{Width: 0.13, Dash: []float64{6, 1, 1, 1}})
	v.names(c)
}

func (v view) mirrored(qs []report.Point, side float64) []drawing.Point {
	out := make([]drawing.Point, len(qs))
	for i, q := range qs {
		out[i] = v.at(report.Point{Z: q.Z, R: side * q.R})
	}
	return out
}

// liquid shades the inside aft of the first level and draws every level.
func (v view) liquid(c *report.Section) {
	var inside []report.Point
	for _, o := range c.Outlines {
		inside = append(inside, o.Inside...)
	}
	for i := len(inside) - 1; i >= 0; i-- {
		inside = append(inside, report.Point{Z: inside[i].Z, R: -inside[i].R})
	}
	for i, l := range c.Levels {
		if len(l.Points) < 2 {
			continue
		}
		first, last := l.Points[0], l.Points[len(l.Points)-1]
		if i == 0 {
			wet := aftOf(inside, first, last)
			v.f.Fills = append(v.f.Fills, drawing.Fill{Points: v.mirrored(wet, 1), Grey: 0.88})
		}
		v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: v.mirrored(l.Points, 1), Pen: drawing.Pen{Width: 0.25, Dash: []float64{2, 1}}})
		at := v.at(first)
		if last.R < first.R {
			at = v.at(last)
		}
		v.f.AddText(at.X-1.2, at.Y-4-3*float64(i), label-0.1, drawing.Right, "liquid, "+l.Case)
	}
}

// aftOf clips an outline to the side of the line through a and b that lies aft.
func aftOf(ring []report.Point, a, b report.Point) []report.Point {
	nz, nr := b.R-a.R, a.Z-b.Z // normal of the level
	if nz < 0 {
		nz, nr = -nz, -nr
	}
	depth := func(q report.Point) float64 { return (q.Z-a.Z)*nz + (q.R-a.R)*nr }
	var out []report.Point
	for i, q := range ring {
		next := ring[(i+1)%len(ring)]
		d, e := depth(q), depth(next)
		if d <= 0 {
			out = append(out, q)
		}
		if d < 0 && e > 0 || d > 0 && e < 0 {
			t := d / (d - e)
			out = append(out, report.Point{Z: q.Z + t*(next.Z-q.Z), R: q.R + t*(next.R-q.R)})
		}
	}
	return out
}

// port draws a tube and its pad, turned into the plane of the cut.
func (v view) port(t report.PortOutline) {
	side := sideOf(t)
	dz, dr := t.Outer.Z-t.Inner.Z, t.Outer.R-t.Inner.R
	length := math.Hypot(dz, dr)
	if length == 0 {
		return
	}
	ez, er := dz/length, dr/length // along the tube, outwards
	box := func(from, to report.Point, inner, outer float64) []drawing.Point {
		corner := func(q report.Point, half float64) report.Point {
			return report.Point{Z: q.Z - er*half, R: q.R + ez*half}
		}
		return v.mirrored([]report.Point{corner(from, inner), corner(to, inner), corner(to, outer), corner(from, outer)}, side)
	}
	ro, ri := t.OutsideDiameter/2, t.InsideDiameter/2
	v.f.Fills = append(v.f.Fills, drawing.Fill{Points: box(t.Inner, t.Outer, -ri, ri), Grey: 1})
	edge := drawing.Pen{Width: 0.13}
	for _, s := range []float64{1, -1} {
		wall := box(t.Inner, t.Outer, s*ri, s*ro)
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: wall, Grey: 0.35})
		v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: wall, Closed: true, Pen: edge})
	}
	a, b := v.at(report.Point{Z: t.Inner.Z, R: side * t.Inner.R}), v.at(report.Point{Z: t.Outer.Z, R: side * t.Outer.R})
	v.f.AddLine(a.X, a.Y, b.X, b.Y, drawing.Pen{Width: 0.1, Dash: []float64{3, 0.8, 0.8, 0.8}})
}

// seam marks a weld by a short line across the wall on both sides.
func (v view) seam(m report.SeamMark) {
	for _, side := range []float64{1, -1} {
		at := v.at(report.Point{Z: m.At.Z, R: side * m.At.R})
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: []drawing.Point{
			{X: at.X, Y: at.Y}, {X: at.X - 0.9, Y: at.Y - side*1.8}, {X: at.X + 0.9, Y: at.Y - side*1.8}}})
	}
}

// A name is a text that wants to stand at an x of a row, with a leader.
type name struct {
	text string
	to   drawing.Point
	x    float64
}

// names sets the names of ports and labels in rows over and under the tank,
// pushed apart where they would overlap.
func (v view) names(c *report.Section) {
	var over, under []name
	for _, t := range c.Ports {
		text := fmt.Sprintf("%s %s", t.Name, report.Show(check.Rad("", "", t.Clock), "si", report.Nearest))
		side := sideOf(t)
		n := name{text: text, to: v.at(report.Point{Z: t.Outer.Z, R: side * t.Outer.R})}
		n.x = n.to.X
		if side > 0 {
			over = append(over, n)
		} else {
			under = append(under, n)
		}
	}
	for _, l := range c.Labels {
		at := v.at(l.At)
		over = append(over, name{text: l.Text, to: at, x: at.X})
	}
	v.row(over, 4, 1)
	v.row(under, v.y+v.down*v.scale+7, -3)
}

func (v view) row(names []name, y, foot float64) {
	slices.SortStableFunc(names, func(a, b name) int { return compare(a.x, b.x) })
	edge := 0.0
	for i := range names {
		half := float64(len([]rune(names[i].text)))*0.62 + 1
		names[i].x = math.Max(names[i].x, edge+half)
		edge = names[i].x + half
	}
	over := edge - v.f.Width
	for i := range slices.Backward(names) {
		if over > 0 {
			names[i].x -= over
		}
	}
	for _, n := range names {
		v.f.AddText(n.x, y, label, drawing.Centre, n.text)
		v.f.AddLine(n.x, y+foot, n.to.X, n.to.Y, drawing.Pen{Width: 0.1, Grey: 0.3})
	}
}

// sorted parts dimensions into those along the axis and those across it.
func sorted(ds []report.Dimension) (along, across []report.Dimension) {
	for _, d := range ds {
		if math.Abs(d.To.Z-d.From.Z) >= math.Abs(d.To.R-d.From.R) {
			along = append(along, d)
		} else {
			across = append(across, d)
		}
	}
	return along, across
}

func (v view) dimensions(along, across []report.Dimension, system string) {
	thin := drawing.Pen{Width: 0.1}
	base := v.y + v.down*v.scale + rowAbove
	for i, d := range along {
		y := base + float64(i)*rowPitch + 2
		a, b := v.at(d.From), v.at(d.To)
		if a.X > b.X {
			a, b = b, a
		}
		v.f.AddLine(a.X, a.Y, a.X, y+1, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(b.X, b.Y, b.X, y+1, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(a.X, y, b.X, y, thin)
		v.arrows(a.X, y, b.X, y)
		v.f.AddText((a.X+b.X)/2, y-0.7, label, drawing.Centre, dimensionText(d, system))
	}
	for i, d := range across {
		x := v.x + v.lo*v.scale - 8 - float64(i)*rowPitch
		a, b := v.at(d.From), v.at(d.To)
		if a.Y > b.Y {
			a, b = b, a
		}
		v.f.AddLine(a.X, a.Y, x-1, a.Y, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(b.X, b.Y, x-1, b.Y, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(x, a.Y, x, b.Y, thin)
		v.arrows(x, a.Y, x, b.Y)
		v.f.Texts = append(v.f.Texts, drawing.Text{At: drawing.Point{X: x - 0.7, Y: (a.Y + b.Y) / 2},
			Text: dimensionText(d, system), Size: label, Align: drawing.Centre, Turn: math.Pi / 2})
	}
}

// arrows puts heads on both ends of a dimension line, from outside where it is
// too short for them.
func (v view) arrows(x1, y1, x2, y2 float64) {
	direction := math.Atan2(y2-y1, x2-x1)
	if math.Hypot(x2-x1, y2-y1) < 5 {
		direction += math.Pi
	}
	v.f.AddArrow(x2, y2, direction, 1.8)
	v.f.AddArrow(x1, y1, direction+math.Pi, 1.8)
}

func dimensionText(d report.Dimension, system string) string {
	value := report.Show(d.Value, system, report.Nearest)
	if d.Name == "" {
		return value
	}
	return d.Name + " " + value
}

// scaleBar states the scale, with a bar that holds when the page is printed in
// another size.
func (v view) scaleBar(ratio float64) {
	bar := 0.1
	for bar*v.scale < 12 {
		bar *= 2
	}
	y := v.f.Height - 2
	v.f.AddLine(6, y, 6+bar*v.scale, y, drawing.Pen{Width: 0.5})
	v.f.AddText(8+bar*v.scale, y+0.8, label, drawing.Left, fmt.Sprintf(
		"%s mm   scale 1:%s on paper printed at full size; ports turned into the plane of the cut, ▼ weld seam; forward is to the right",
		tick(roundTo(bar*1000, 4)), tick(ratio)))
}
