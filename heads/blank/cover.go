package blank

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
)

// A Cover is the flat plate that is bolted over a head or a port.
type Cover struct {
	Name, Title  string
	Thickness    float64 // nominal, under its grooves [m]
	Count        int     // of the bolts
	Circle, Hole float64 // diameters of the bolt circle and of a hole [m]
	Seal         float64 // diameter of the seal [m]
	Edge         float64 // diameter to which the plate is drawn: the tank file has none [m]
	Wall         port.Wall
	Forward      bool // a forward head, or a port's cover: clock rises anticlockwise from outside
	Ports        []port.Port
}

// Blank returns the cover with its bolt holes and the holes of its ports to be cut; its
// edge, which the tank file does not give, and its seal are scribed only. The first bolt
// hole is drawn at clock 0.
func (c Cover) Blank(o Options) Blank {
	d := Disc{Wall: c.Wall, Forward: c.Forward}
	b := Blank{Name: c.Name, Title: c.Title, Thickness: c.Thickness, Seen: d.seen()}
	chord := c.Circle * math.Sin(math.Pi/float64(c.Count))
	switch {
	case o.Valid() != nil:
		return refuse(b, o.Valid())
	case !(c.Count > 0 && c.Hole > o.Kerf && chord > c.Hole && c.Edge >= c.Circle+c.Hole && c.Edge < math.Inf(1)):
		return refuse(b, fmt.Errorf("%s: %d holes of %.4g mm on a circle of %.4g mm do not fit", c.Name, c.Count, c.Hole*1e3, c.Circle*1e3))
	}
	edge := []border{{"the bolt holes", func(p Point) float64 { return (c.Circle-c.Hole)/2 - math.Hypot(p.X, p.Y) }}}
	if c.Seal > 0 {
		edge[0] = border{"the seal", func(p Point) float64 { return c.Seal/2 - math.Hypot(p.X, p.Y) }}
	}
	holes, err := d.holes(c.Ports, o)
	if err == nil {
		err = b.keep(holes, edge)
	}
	if err != nil {
		return refuse(b, err)
	}
	r := c.Edge / 2
	b.cross(r / 20)
	b.Mark = append(b.Mark, circle(Point{}, r), circle(Point{}, c.Circle/2), line(Point{0, r * 0.9}, Point{0, r}))
	if c.Seal > 0 {
		b.Mark = append(b.Mark, circle(Point{}, c.Seal/2))
		b.measure("G", "diameter of the seal", c.Seal)
	}
	b.label(Point{0, r}, up, "clock 0°")
	for i := range c.Count {
		b.Cut = append(b.Cut, circle(d.at(c.Circle/2, 2*math.Pi*float64(i)/float64(c.Count)), c.Hole/2-o.Kerf/2))
	}
	b.measure("D", "edge as drawn: not in the tank file", c.Edge)
	b.measure("C_b", "bolt circle", c.Circle)
	b.measure("", "from one bolt hole to the next, between centres", chord)
	b.measure("", "bolt hole: diameter", c.Hole)
	b.places(d, holes, r)
	b.note("a bolted cover: its outside diameter is not in the tank file, so the edge is scribed and not cut; %.6g mm nominal under its grooves, %d holes of at most %.6g mm on a circle of %.6g mm",
		c.Thickness*1e3, c.Count, c.Hole*1e3, c.Circle*1e3)
	b.warn("where the first bolt stands is not in the tank file: it is drawn at clock 0°; drill cover and flange together, or from one template")
	return b
}
