package pdf

import (
	"math"
	"slices"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// scales are the reductions a section is drawn in [-].
var scales = []float64{1, 2, 2.5, 4, 5, 8, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 250, 500, 1000}

// A view maps the section to paper, forward to the right.
type view struct {
	f        *drawing.Figure
	x, y     float64 // of z = 0 on the axis [mm]
	scale    float64 // paper per tank [mm/m]
	lo, hi   float64 // stations of the ends [m]
	up, down float64 // reach of the section from its axis [m]
	under    float64 // room for names under the tank [mm]
}

func (v view) at(q report.Point) drawing.Point {
	return drawing.Point{X: v.x + q.Z*v.scale, Y: v.y - q.R*v.scale}
}

// Room around the tank on paper [mm].
const (
	clear     = 6.0 // between the tank and what stands over and under it
	namePitch = 3.5 // of rows of names
	rowPitch  = 5.0 // of stacked dimensions
	scaleNote = 6.0
	worstNote = 4.0
)

// sectionFigure draws the tank cut along its axis, to scale, within a width and
// a height [mm]; nil where the sheet holds no section.
func sectionFigure(s *report.Sheet, width, height float64) *drawing.Figure {
	if s.Section == nil || len(s.Section.Outlines) == 0 {
		return nil
	}
	c := trimmed(s.Section, width)
	along, across := sorted(c.Dimensions)
	f := &drawing.Figure{Name: "section", Title: "Section of the tank", Width: width}
	v := view{f: f}
	v.bounds(c)
	over, under := split(c)
	above := float64(rowsOf(over, width))*namePitch + clear
	v.under = float64(rowsOf(under, width))*namePitch + clear
	below := float64(len(along))*rowPitch + v.under + scaleNote
	beside := float64(len(across))*rowPitch + 12
	if c.Worst != nil {
		below += worstNote
	}
	fitScale := math.Min((width-beside-12)/(v.hi-v.lo), (height-above-below)/(v.up+v.down))
	ratio := 1000 / fitScale
	for _, n := range scales {
		if n >= ratio {
			ratio = n
			break
		}
	}
	v.scale = 1000 / ratio
	f.Height = (v.up+v.down)*v.scale + above + below
	v.x = beside + (width-beside-12-(v.hi-v.lo)*v.scale)/2 - v.lo*v.scale
	v.y = above + v.up*v.scale
	v.draw(c)
	v.dimensions(along, across, s.Units)
	shaded := ""
	if len(c.Levels) > 0 {
		shaded = "; the liquid is shaded as in case " + c.Levels[0].Case
	}
	v.scaleBar(ratio, s.Units, c.Worst, shaded, crowded(c))
	return f
}

// trimmed returns a section with no more levels than can be told apart, and of one
// with many ports no more than have names in one row [mm]: leaders would cross the
// names of another.
func trimmed(c *report.Section, width float64) *report.Section {
	fewer := *c
	fewer.Levels = c.Levels[:min(len(c.Levels), levelsShown)]
	for crowded(c) && len(fewer.Levels) > 1 {
		if _, under := split(&fewer); rowsOf(under, width) <= 1 {
			break
		}
		fewer.Levels = fewer.Levels[:len(fewer.Levels)-1]
	}
	return &fewer
}

// bounds finds the ends and the reach of metal and tubes.
func (v *view) bounds(c *report.Section) {
	v.lo, v.hi = math.Inf(1), math.Inf(-1)
	for _, o := range slices.Concat(c.Outlines, c.Rings) {
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
	for _, o := range slices.Concat(c.Outlines, c.Rings) {
		for _, side := range []float64{1, -1} {
			ring := slices.Clone(o.Outside)
			slices.Reverse(ring)
			metal := v.mirrored(slices.Concat(o.Inside, ring), side)
			v.f.Fills = append(v.f.Fills, drawing.Fill{Points: metal, Grey: 0.35})
			v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: metal, Closed: true, Pen: drawing.Pen{Width: 0.13}})
		}
	}
	for _, b := range c.Covers {
		v.cover(b)
	}
	for _, t := range c.Ports {
		v.port(c, t)
	}
	for _, m := range c.Seams {
		v.seam(m)
	}
	if c.Worst != nil {
		v.worst(c.Worst.At)
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
func (v view) port(c *report.Section, t report.PortOutline) {
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
	if t.PadDiameter > t.OutsideDiameter {
		v.pad(c, t, side)
	}
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

// worst rings a place in black over white, so that it shows on metal too.
func (v view) worst(q report.Point) {
	at := v.at(q)
	for _, pen := range []drawing.Pen{{Width: 0.9, Grey: 1}, {Width: 0.4}} {
		v.f.Arcs = append(v.f.Arcs, drawing.Arc{Centre: at, Radius: 1.8, Sweep: 2 * math.Pi, Pen: pen})
	}
}

// seam marks a weld by a short line across the wall on both sides.
func (v view) seam(m report.SeamMark) {
	for _, side := range []float64{1, -1} {
		at := v.at(report.Point{Z: m.At.Z, R: side * m.At.R})
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: []drawing.Point{
			{X: at.X, Y: at.Y}, {X: at.X - 0.9, Y: at.Y - side*1.8}, {X: at.X + 0.9, Y: at.Y - side*1.8}}})
	}
}
