package blank

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
)

// A Doubler is the pad round a port, laid on the outside of its wall.
type Doubler struct {
	Name, Title string
	Port        port.Port
	Wall        port.Wall // of the part under it, nominal
	Thickness   float64   // of the pad, nominal [m]
	Diameter    float64   // outside, round in the flat; or 0 [m]
	Length      float64   // of an ellipse, along the meridian, Diameter across it; 0 = round [m]
	Lip         float64   // width all round; 0 with Diameter [m]
}

// wall returns the pad's own mid-surface, parallel to the wall's, and the port
// on it.
func (d Doubler) wall() (port.Wall, port.Port) {
	w, p := d.Wall, d.Port
	off := (w.Thickness + d.Thickness) / 2
	if w.Inward {
		off = -off
	}
	w.Thickness = d.Thickness
	switch w.Surface {
	case port.Cylinder:
		w.Radius += off
	case port.Cone:
		w.Radius += off * math.Cos(w.HalfApex)
		if !p.Parallel {
			p.Radius += off * math.Cos(w.HalfApex)
		}
	}
	p.Fit = port.Through // the pad lies round the tube, also where that abuts the wall
	return w, p
}

// Blank returns the pad laid flat about its own mid-surface, half a plate of each
// outside of the wall's, with the true outline of the tube. The tube's axis is at
// the origin, outboard (cylinder: forward) is up.
//
// Source: as [Outline]; widths in metres [m].
func (d Doubler) Blank(o Options) Blank {
	b := Blank{Name: d.Name, Title: d.Title, Thickness: d.Thickness, Seen: "outside face up, away from the tank's axis (cylinder: forward) up"}
	w, p := d.wall()
	err := o.Valid()
	if err == nil && !(d.Thickness > 0 && (d.Diameter > 0) != (d.Lip > 0)) {
		err = fmt.Errorf("port %s: a pad has a thickness, and a diameter or a lip", p.Name)
	}
	if err == nil {
		_, err = d.Port.Chords(d.Wall)
	}
	if err != nil {
		return refuse(b, err)
	}
	h, err := lay(w, p, o, Point{}, Point{0, 1}, Point{1, 0})
	if err != nil {
		return refuse(b, err)
	}
	edge, cut, err := d.edge(w, p, o)
	if err != nil { // not reached: as in edge
		return refuse(b, err)
	}
	land := narrowest(h.edge, edge)
	if !(land > 0) {
		return refuse(b, fmt.Errorf("port %s: the pad is smaller than the hole of its tube", p.Name))
	}
	b.Cut = append(b.Cut, cut)
	b.draw(h)
	top := highest(edge)
	b.Mark = append(b.Mark, line(Point{0, highest(h.edge)}, Point{0, top}))
	side := "outboard"
	if w.Surface == port.Cylinder {
		side = "forward"
	}
	b.label(Point{0, top}, up, side)
	b.measure("", "least width between hole and edge", land)
	switch {
	case d.Length > 0:
		b.measure("", "length of the pad along the meridian, before it is bent to the wall", d.Length)
		b.measure("", "width of the pad across it", d.Diameter)
	case d.Diameter > 0:
		b.measure("D_p", "diameter of the pad, before it is bent to the wall", d.Diameter)
	}
	b.note("a tell-tale hole, where the rule asks one, is not drawn")
	outer := polygon(edge)
	if d.Diameter > 0 && d.Length == 0 {
		outer = circle(Point{}, d.Diameter/2)
	}
	return b.finish(o, outer, []*hole{h})
}

// narrowest returns the least width of metal between a hole and the edge round it
// [m], 0 where the hole is not within.
func narrowest(hole, edge []Point) float64 {
	land := math.Inf(1)
	for _, q := range every(hole, 3) {
		if !within(q, edge) {
			return 0
		}
		for i, r := range edge {
			land = math.Min(land, toSegment(q, r, edge[(i+1)%len(edge)]))
		}
	}
	return land
}

// edge returns the pad's outer edge and the tool's path round it.
func (d Doubler) edge(w port.Wall, p port.Port, o Options) ([]Point, Path, error) {
	if d.Length > 0 {
		ps := make([]Point, drawn)
		for i := range ps {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / drawn)
			ps[i] = Point{d.Diameter / 2 * cos, d.Length / 2 * sin}
		}
		cut, _ := offset(ps, o.Kerf/2)
		return ps, polygon(cut), nil
	}
	if d.Diameter > 0 {
		r := d.Diameter / 2
		return circle(Point{}, r).Points(2 * math.Pi / drawn), circle(Point{}, r+o.Kerf/2), nil
	}
	thin := w
	thin.Thickness = 1e-9 * w.Thickness // the lip runs round the outline on the mid-surface
	ps, err := Outline(thin, p, p.OutsideDiameter/2, drawn)
	if err != nil { // not reached: the hole of the same tube has been laid on the whole wall
		return nil, Path{}, err
	}
	swap := make([]Point, len(ps))
	for i, q := range ps {
		swap[i] = Point{q.Y, q.X}
	}
	edge, _ := offset(swap, d.Lip)
	cut, _ := offset(swap, d.Lip+o.Kerf/2)
	return edge, polygon(cut), nil
}
