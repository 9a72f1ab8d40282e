package blank

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
	"proofsheet/report/check"
)

const (
	drawn = 360  // points of an outline as it is drawn: within 0.01 mm of the curve up to 0.2 m
	fine  = 7200 // points of an outline as it is measured: area and length to 1e-6
)

// A hole is an opening laid on a blank.
type hole struct {
	port       port.Port
	centre     Point
	edge       []Point // without kerf, as drawn
	cut        Path
	long, wide float64 // along and across the generator [m]
	area       float64 // [m2]
	round      float64 // length of its edge [m]
}

// lay places the hole of a port: centre on the blank, and the directions of the
// outline's x and y there.
func lay(w port.Wall, p port.Port, o Options, centre, x, y Point) (*hole, error) {
	a := holeRadius(p, o)
	full, err := Outline(w, p, a, fine)
	if err != nil {
		return nil, err
	}
	few, err := Outline(w, p, a, drawn)
	if err != nil { // not reached: the same outline has been had with more points
		return nil, err
	}
	h := &hole{port: p, centre: centre}
	h.round, h.area = polygon(full).Length(), math.Abs(polygon(full).Area())
	least, top := polygon(full).Bounds()
	h.long, h.wide = top.X-least.X, top.Y-least.Y
	tool, ok := offset(few, -o.Kerf/2)
	if !ok {
		return nil, fmt.Errorf("port %s: the hole is too small for a cut %.4g mm wide", p.Name, o.Kerf*1e3)
	}
	place := func(ps []Point) []Point { return turned(ps, centre, x, y) }
	h.edge, h.cut = place(few), polygon(place(tool))
	if w.Surface == port.Flat {
		h.cut = circle(centre, a-o.Kerf/2)
	}
	return h, nil
}

// turned places local points: their x and y along the directions x and y.
func turned(ps []Point, centre, x, y Point) []Point {
	out := make([]Point, len(ps))
	for i, q := range ps {
		out[i] = Point{centre.X + q.X*x.X + q.Y*y.X, centre.Y + q.X*x.Y + q.Y*y.Y}
	}
	return out
}

// openWedge is the gap between tube and wall, at the ends of an oblique hole cut
// square, from which a weld is warned of [m]: common practice.
const openWedge = 3e-3

// oblique scribes where a parallel tube crosses the outside face of a cone, or one beside
// the radius that of the cylinder, and says how far the hole, cut square, stands off it there.
func (b *Blank) oblique(w port.Wall, h *hole, x, y Point) error {
	p := h.port
	if !p.Parallel && p.Offset == 0 || p.Fit == port.On {
		return nil
	}
	ps, err := FaceLine(w, p, p.OutsideDiameter/2, drawn)
	if err != nil { // not reached: the hole of the same tube has been laid on this wall
		return err
	}
	b.Mark = append(b.Mark, polygon(turned(ps, h.centre, x, y)))
	wedge := w.Thickness / math.Tan(w.HalfApex)
	if w.Surface == port.Cylinder { // at the far edge, where the wall is steepest to the tube
		wedge = w.Thickness * math.Tan(math.Asin((math.Abs(p.Offset)+p.OutsideDiameter/2)/w.Radius))
		low, top := polygon(ps).Bounds()
		b.measure("", "line of "+p.Name+" on the outside face: width across the generator", top.Y-low.Y)
	} else {
		b.measure("", "line of "+p.Name+" on the outside face: length", p.OutsideDiameter/math.Sin(w.HalfApex))
	}
	if wedge > openWedge {
		b.warn("the hole of port %s, cut square to the plate, stands up to %.4g mm off the tube at each face: where the weld cannot fill that, cut along the tube's axis after rolling, from the line scribed on the outside face (practice)", p.Name, math.Ceil(wedge*1e4)/10)
	}
	return nil
}

// draw adds a hole to the blank: its cut, the cross at the tube axis, its name and
// its size.
func (b *Blank) draw(h *hole) {
	b.Cut = append(b.Cut, h.cut)
	c, arm := h.centre, math.Min(h.wide/4, 0.01)
	b.Mark = append(b.Mark, line(Point{c.X - arm, c.Y}, Point{c.X + arm, c.Y}), line(Point{c.X, c.Y - arm}, Point{c.X, c.Y + arm}))
	right := c.X
	for _, p := range h.edge {
		right = math.Max(right, p.X)
	}
	b.label(Point{right, c.Y}, Point{1, 0}, h.port.Name)
	name := "hole of " + h.port.Name
	b.measure("", name+": length along the generator", h.long)
	b.measure("", name+": largest width across it", h.wide)
	b.measure("", name+": round its edge", h.round)
	b.Measures = append(b.Measures, check.M2("", name+": area", h.area))
}

// A border is an edge of the blank that a hole must keep from.
type border struct {
	name string
	gap  func(Point) float64 // distance inward of the edge [m]
}

// keep refuses a hole that crosses an edge of the blank or another hole, and
// warns of one whose weld comes within five walls of either.
func (b *Blank) keep(holes []*hole, borders []border) error {
	for i, h := range holes {
		for _, edge := range borders {
			least := math.Inf(1)
			for _, p := range h.edge {
				least = math.Min(least, edge.gap(p))
			}
			if !(least > 0) {
				return fmt.Errorf("the hole of port %s crosses %s: move the seam or the port", h.port.Name, edge.name)
			}
			if pad := h.port.Pad; pad != nil && edge.gap(h.centre) < pad.OutsideDiameter/2+pad.Leg {
				b.warn("the pad of port %s lies over %s, or its weld does: a pad lies on one part only", h.port.Name, edge.name)
			}
			if least-h.port.OutsideLeg < 5*b.Thickness {
				b.warn("the hole of port %s leaves %.4g mm to %s: its weld toe stands nearer than five walls (practice)", h.port.Name, floorMM(least), edge.name)
			}
		}
		for _, other := range holes[:i] {
			gap := apart(every(h.edge, 3), every(other.edge, 3))
			if !(gap > 0) {
				return fmt.Errorf("the holes of ports %s and %s run into each other", other.port.Name, h.port.Name)
			}
			if gap-h.port.OutsideLeg-other.port.OutsideLeg < 5*b.Thickness {
				b.warn("between the holes of ports %s and %s stand %.4g mm: their welds are nearer than five walls (practice)", other.port.Name, h.port.Name, floorMM(gap))
			}
		}
	}
	return nil
}

// floorMM returns a length v [m] in millimetres, rounded down to a tenth.
func floorMM(v float64) float64 { return math.Floor(v*1e4) / 10 }

// nearSeam warns of a seam within the limit of reinforcement of a port.
func (b *Blank) nearSeam(w port.Wall, p port.Port, seam float64) {
	bore := p.OutsideDiameter - 2*p.TubeWall
	limit := math.Max(bore, bore/2+p.TubeWall+w.Thickness)
	if d := p.SeamDistance(w, seam); d < limit {
		b.warn("the seam passes %.4g mm from the axis of port %s, within its limit of reinforcement of %.4g mm: the seam's efficiency counts there", floorMM(d), p.Name, limit*1e3)
	}
}
