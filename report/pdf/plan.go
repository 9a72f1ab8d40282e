package pdf

import (
	"math"
	"slices"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// A plan is a bulkhead seen along the axis from outside.
type plan struct {
	f       *drawing.Figure
	x, y    float64 // of the axis [mm]
	scale   float64 // paper per tank [mm/m]
	forward bool    // the forward bulkhead, seen by one who looks aft: the clock runs the other way
	system  string
}

// at returns the place on paper of a radius [m] at a clock [rad]; zero is on top.
func (p plan) at(radius, clock float64) drawing.Point {
	if p.forward {
		clock = -clock
	}
	sin, cos := math.Sincos(clock)
	return drawing.Point{X: p.x + radius*sin*p.scale, Y: p.y - radius*cos*p.scale}
}

// planReach is the radius of a bulkhead on paper, at most [mm].
const planReach = 33.0

// planFigures draws both bulkheads with their ports; one without a port is left out.
func planFigures(s *report.Sheet, width float64) (out []*drawing.Figure) {
	if s.Section == nil {
		return nil
	}
	for _, end := range []string{"aft", "forward"} {
		if f := planFigure(s, end, width); f != nil {
			out = append(out, f)
		}
	}
	return out
}

func planFigure(s *report.Sheet, end string, width float64) *drawing.Figure {
	part := "head." + end
	var ports []report.PortOutline
	for _, t := range s.Section.Ports {
		if t.Part == part {
			ports = append(ports, t)
		}
	}
	rim, bore := 0.0, 0.0
	for _, o := range s.Section.Outlines {
		if o.Part == part || o.Part == "cylinder" {
			for _, q := range o.Outside {
				rim = math.Max(rim, q.R)
			}
			for _, q := range o.Inside {
				bore = math.Max(bore, q.R)
			}
		}
	}
	covers := slices.DeleteFunc(slices.Clone(s.Section.Covers), func(c report.Cover) bool { return c.Part != part })
	if len(ports)+len(covers) == 0 || !(rim > 0) {
		return nil
	}
	from, turn := "forward", "anticlockwise"
	title := "Forward bulkhead with its ports, seen from forward, looking aft"
	if end == "aft" {
		from, turn = "aft", "clockwise"
		title = "Aft bulkhead with its ports, seen from aft, looking forward"
	}
	f := &drawing.Figure{Name: "bulkhead-" + end, Title: title, Width: width}
	left, right := sides(ports, end == "forward")
	high := math.Max(2*planReach+12, float64(max(len(left), len(right)))*planPitch+8)
	f.Height = high + 12
	p := plan{f: f, x: width / 2, y: high / 2, forward: end == "forward", system: s.Units}
	ratio := 1000 * rim / planReach
	for _, n := range scales {
		if n >= ratio {
			ratio = n
			break
		}
	}
	p.scale = 1000 / ratio
	leaders := slices.Concat(p.leaders(left, -1), p.leaders(right, 1))
	p.rims(s, part, rim)
	p.quarters(rim, leaders)
	legend := "full lines: tube and bore; broken: pad; chain: weld seam along the wall"
	for _, c := range covers {
		p.cover(c, bore)
		legend = "small circles: bolt holes, from 0° as drawn; dotted: seal; broken: the tank's bore, a pad; the cover's edge is as drawn, not in the file"
	}
	for _, t := range ports {
		p.port(t)
	}
	p.seamNames(s, part, rim, ports)
	for _, l := range leaders {
		p.f.AddText(l.at.X, l.at.Y+0.9, label, l.align, l.text)
		p.f.AddLine(l.from.X, l.from.Y, l.to.X, l.to.Y, drawing.Pen{Width: 0.1, Grey: 0.3})
	}
	f.AddText(width/2, f.Height-5.5, label, drawing.Centre, "scale 1:"+tick(ratio)+" on paper printed at full size; seen from "+from+", so the clock runs "+turn+" here")
	f.AddText(width/2, f.Height-2, label, drawing.Centre, legend)
	return f
}

// quarters marks the clock at the edge, each number where no leader crosses it.
func (p plan) quarters(rim float64, leaders []leader) {
	for i, name := range []string{"0°", "90°", "180°", "270°"} {
		clock := float64(i) * math.Pi / 2
		a, b, c := p.at(rim, clock), p.at(rim+2.5/p.scale, clock), p.at(rim+5.6/p.scale, clock)
		p.f.AddLine(a.X, a.Y, b.X, b.Y, drawing.Pen{Width: 0.25})
		y := c.Y + 0.9
		for _, off := range []float64{0.9, -0.8, 3, -2.6, 5, -4.6} {
			free := c.Y + off
			if !slices.ContainsFunc(leaders, func(l leader) bool { return l.crosses(c.X, 3, free-2.5, free+0.6) }) {
				y = free
				break
			}
		}
		p.f.AddText(c.X, y, label, drawing.Centre, name)
	}
}

// rims draws the tank's edge, its middle lines and the seams along the bulkhead.
func (p plan) rims(s *report.Sheet, part string, rim float64) {
	p.ring(0, 0, rim, 1, drawing.Pen{Width: 0.4})
	chain := drawing.Pen{Width: 0.13, Dash: []float64{6, 1, 1, 1}}
	for i := range 2 {
		a, b := p.at(rim, float64(i)*math.Pi/2), p.at(rim, float64(i)*math.Pi/2+math.Pi)
		p.f.AddLine(a.X, a.Y, b.X, b.Y, drawing.Pen{Width: 0.08, Grey: 0.5})
	}
	for _, m := range s.Section.Lengthwise {
		if m.Part == part {
			a, b := p.at(0, 0), p.at(rim, m.Clock)
			chain.Width = 0.4
			p.f.AddLine(a.X, a.Y, b.X, b.Y, chain)
		}
	}
}

// seamNames names the seams along the bulkhead beside them, where the name is clear of
// the rim, of the ports and of their leaders; where none is, at half the radius.
func (p plan) seamNames(s *report.Sheet, part string, rim float64, ports []report.PortOutline) {
	for _, m := range s.Section.Lengthwise {
		if m.Part != part {
			continue
		}
		text := "seam " + m.Name
		wide := 1.25 * float64(len([]rune(text)))
		c := p.at(0.55*rim, m.Clock)
		at := drawing.Point{X: c.X + 1, Y: c.Y - 0.8}
	search:
		for _, share := range []float64{0.55, 0.7, 0.4, 0.8, 0.25, 0.12} {
			c := p.at(share*rim, m.Clock)
			for _, left := range []float64{c.X + 1, c.X - 1 - wide} {
				if p.clear(drawing.Point{X: left, Y: c.Y - 3}, wide, rim, ports) {
					at = drawing.Point{X: left, Y: c.Y - 0.8}
					break search
				}
			}
		}
		p.f.AddText(at.X, at.Y, label, drawing.Left, text)
	}
}

// clear reports whether a line of type of a width, from its upper left corner, lies
// within the rim and off the ports and the leaders to their names [mm].
func (p plan) clear(corner drawing.Point, wide, rim float64, ports []report.PortOutline) bool {
	const high = 3.0
	for _, x := range []float64{corner.X, corner.X + wide} {
		for _, y := range []float64{corner.Y, corner.Y + high} {
			if math.Hypot(x-p.x, y-p.y) > rim*p.scale-0.5 {
				return false
			}
		}
	}
	for _, t := range ports {
		at, r := p.at(t.Wall.R, t.Clock), math.Max(t.OutsideDiameter, t.PadDiameter)/2*p.scale+0.5
		over := at.Y+r > corner.Y && at.Y-r < corner.Y+high
		if over && at.X+r > corner.X && at.X-r < corner.X+wide {
			return false // the port
		}
		outward := at.X < p.x-1e-9 && corner.X < at.X || at.X >= p.x-1e-9 && corner.X+wide > at.X
		if at.Y > corner.Y-0.5 && at.Y < corner.Y+high+0.5 && outward {
			return false // its leader, level or nearly
		}
	}
	return true
}

// ring draws a circle of a radius [m] round a place, foreshortened along the radius
// of the tank by tilt [-].
func (p plan) ring(radius, clock, size, tilt float64, pen drawing.Pen) {
	const steps = 48
	c, out := p.at(radius, clock), p.at(radius+1, clock)
	er := drawing.Point{X: (out.X - c.X) / p.scale, Y: (out.Y - c.Y) / p.scale}
	points := make([]drawing.Point, steps)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		u, v := size*cos*tilt*p.scale, size*sin*p.scale
		points[i] = drawing.Point{X: c.X + u*er.X - v*er.Y, Y: c.Y + u*er.Y + v*er.X}
	}
	p.f.Polylines = append(p.f.Polylines, drawing.Polyline{Points: points, Closed: true, Pen: pen})
}

// port draws tube, bore and pad at the place where the tube meets the wall; a tube
// that leans away from the axis is seen shorter that way.
func (p plan) port(t report.PortOutline) {
	dz, dr := t.Outer.Z-t.Inner.Z, t.Outer.R-t.Inner.R
	tilt := 1.0
	if l := math.Hypot(dz, dr); l > 0 {
		tilt = math.Abs(dz) / l
	}
	p.ring(t.Wall.R, t.Clock, t.OutsideDiameter/2, tilt, drawing.Pen{Width: 0.3})
	p.ring(t.Wall.R, t.Clock, t.InsideDiameter/2, tilt, drawing.Pen{Width: 0.13})
	if t.PadDiameter > t.OutsideDiameter {
		p.ring(t.Wall.R, t.Clock, t.PadDiameter/2, tilt, drawing.Pen{Width: 0.2, Dash: []float64{1.5, 0.8}})
	}
}

const planPitch = 3.6 // of the names beside a bulkhead [mm]

// sides deals ports out to the side of the paper on which they are drawn, from top
// to bottom.
func sides(ports []report.PortOutline, forward bool) (left, right []report.PortOutline) {
	view := plan{scale: 1, forward: forward}
	for _, t := range ports {
		if view.at(t.Wall.R, t.Clock).X < -1e-9 {
			left = append(left, t)
		} else {
			right = append(right, t)
		}
	}
	down := func(a, b report.PortOutline) int {
		return compare(view.at(a.Wall.R, a.Clock).Y, view.at(b.Wall.R, b.Clock).Y)
	}
	slices.SortStableFunc(left, down)
	slices.SortStableFunc(right, down)
	return left, right
}

// A leader is the name of a port beside the bulkhead and the line to it.
type leader struct {
	text         string
	at, from, to drawing.Point // of the text, and of the line [mm]
	align        drawing.Align
}

// crosses reports whether the line passes through a place half as wide as half on
// either side of x, from top to low [mm].
func (l leader) crosses(x, half, top, low float64) bool {
	for _, at := range []float64{x - half, x, x + half} {
		if share := (at - l.from.X) / (l.to.X - l.from.X); share >= 0 && share <= 1 {
			if y := l.from.Y + share*(l.to.Y-l.from.Y); y > top && y < low {
				return true
			}
		}
	}
	return false
}

// leaders places the names of ports in a column on one side, −1 left, clear of the
// numbers of the clock.
func (p plan) leaders(ports []report.PortOutline, side float64) (out []leader) {
	if len(ports) == 0 {
		return nil
	}
	x := p.x + side*(planReach+10)
	align := drawing.Left
	if side < 0 {
		align = drawing.Right
	}
	y := make([]float64, len(ports))
	low := 4.0
	for i, t := range ports {
		y[i] = math.Max(low, p.at(t.Wall.R, t.Clock).Y)
		low = y[i] + planPitch
	}
	high := 2*p.y - 4
	for i := len(ports) - 1; i >= 0; i-- {
		y[i] = math.Min(y[i], high)
		high = y[i] - planPitch
	}
	for i, t := range ports {
		out = append(out, leader{text: p.words(t, 41), at: drawing.Point{X: x, Y: y[i]}, from: drawing.Point{X: x - side, Y: y[i]}, to: p.at(t.Wall.R, t.Clock), align: align})
	}
	return out
}

// degrees prints a clock, within one turn.
func degrees(clock float64) string {
	return report.Plain(roundTo(math.Mod(math.Mod(clock*180/math.Pi, 360)+360, 360), 4)) + "°"
}

// words says what is to be known of a port in so many letters: a long name gives way,
// not the numbers.
func (p plan) words(t report.PortOutline, most int) string {
	show := func(v float64) string {
		d := report.DisplayUnit("m", v, p.system)
		return report.Plain(roundTo(d.Of(v), 4)) + " " + d.Unit
	}
	text := " " + degrees(t.Clock) + ", r " + show(t.Wall.R) + ", ⌀ " + show(t.OutsideDiameter)
	if t.PadDiameter > t.OutsideDiameter {
		text += ", pad ⌀ " + show(t.PadDiameter)
	}
	return clipInside(t.Name, max(7, most-len([]rune(text)))) + text
}

// bulkheads is the chapter of the plans.
func (p *paper) bulkheads() {
	for i, f := range planFigures(p.sheet, p.inner()) {
		if i == 0 {
			p.need(f.Height + 22)
			p.chapter("Bulkheads")
			p.paragraph("Each is seen from outside the tank. The clock counts from the builder's mark, clockwise for one who looks forward from aft, on both.")
		}
		p.figure(f)
	}
}
