package blank

import (
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/heads/port"
)

// A Disc is the plate of a formed or a flat head.
type Disc struct {
	Name, Title string
	Head        heads.Head // inside face, nominal
	Wall        port.Wall  // nominal
	Forward     bool
	Ports       []port.Port
}

// Diameters returns the disc [m] that has the area of the head's mid-surface, and
// the one as wide as its meridian is long, both with the straight flange, for a
// nominal wall t [m]:
//
//	D_area = √(4 A/π),  D_length = 2 (L + flange)
//
// The first holds where the wall keeps its thickness on the whole, as in spinning
// without thinning; pressing lies between the two.
//
// Source: common practice; both against closed forms in disc_test.go.
func Diameters(h heads.Head, t float64) (area, length float64) {
	const perPiece = 4000
	g := h.Geometry()
	half := t / 2
	if g.Inward {
		half = -half
	}
	A, L := 0.0, 0.0
	pts := h.Points(perPiece, t/2)
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		step := math.Hypot(b.R-a.R, b.X-a.X)
		A += math.Pi * (a.R + b.R) * step
		L += step
	}
	if len(pts) > 0 && g.TipDiameter == 0 {
		A += 2 * math.Pi * (g.InsideDiameter/2 + half) * g.StraightFlange
		L += g.StraightFlange
		return math.Sqrt(4 * A / math.Pi), 2 * L
	}
	return math.NaN(), math.NaN()
}

// Blank returns the disc. A formed head's is drawn as wide as its meridian is long,
// the larger of the two of [Diameters], and without its holes: they are cut after
// forming. A flat head's has the inside diameter and its holes [m].
func (d Disc) Blank(o Options) Blank {
	b := Blank{Name: d.Name, Title: d.Title, Thickness: d.Wall.Thickness, Seen: "outside face up"}
	if err := o.Valid(); err != nil {
		return refuse(b, err)
	}
	if d.Wall.Surface == port.Flat {
		return d.flat(b, o)
	}
	area, length := Diameters(d.Head, d.Wall.Thickness)
	if !(area > 0 && length >= area*(1-1e-6)) {
		return refuse(b, fmt.Errorf("%s: no disc for a head of this shape", d.Name))
	}
	b.Cut = append(b.Cut, circle(Point{}, length/2+o.Kerf/2))
	b.cross(length / 40)
	b.Mark = append(b.Mark, line(Point{0, length * 0.4}, Point{0, length / 2}))
	b.label(Point{0, length / 2}, up, "clock 0°")
	b.measure("D_length", "diameter drawn: the meridian's length, twice", length)
	b.measure("D_area", "diameter of the same area as the head", area)
	b.note("disc size by common practice: who forms the head decides, and adds what is trimmed")
	b.note("no holes: they are cut after forming, along the tube's axis")
	return b.finish(o, circle(Point{}, length/2), nil)
}

// cross marks the centre with arms of r [m].
func (b *Blank) cross(r float64) {
	b.Mark = append(b.Mark, line(Point{-r, 0}, Point{r, 0}), line(Point{0, -r}, Point{0, r}))
}

// at returns where a radius e [m] at a clock [rad] lies as seen from outside, clock
// 0 up: it rises anticlockwise on the forward head, clockwise on the aft one.
func (d Disc) at(e, clock float64) Point {
	sin, cos := math.Sincos(clock)
	if d.Forward {
		sin = -sin
	}
	return Point{e * sin, e * cos}
}

func (d Disc) flat(b Blank, o Options) Blank {
	r := d.Wall.Radius
	holes, err := d.holes(d.Ports, o)
	edge := []border{{"the edge", func(p Point) float64 { return r - math.Hypot(p.X, p.Y) }}}
	if err == nil {
		err = b.keep(holes, edge)
	}
	if err != nil {
		return refuse(b, err)
	}
	b.Seen = d.seen()
	b.Cut = append(b.Cut, circle(Point{}, r+o.Kerf/2))
	b.cross(r / 20)
	b.Mark = append(b.Mark, line(Point{0, r * 0.8}, Point{0, r}))
	b.label(Point{0, r}, up, "clock 0°")
	b.measure("D", "diameter: the inside of the cylinder", 2*r)
	b.places(d, holes, r)
	b.warn("the disc is as wide as the cylinder inside: how the corner joint lets it in is not in the tank file; add what that joint needs")
	return b.finish(o, circle(Point{}, r), holes)
}

// holes lays the holes of ports on a flat plate.
func (d Disc) holes(ports []port.Port, o Options) (holes []*hole, err error) {
	for _, p := range ports {
		if _, err := p.Chords(d.Wall); err != nil {
			return nil, err
		}
		h, err := lay(d.Wall, p, o, d.at(p.Radius, p.Clock), Point{0, 1}, Point{1, 0})
		if err != nil {
			return nil, err
		}
		holes = append(holes, h)
	}
	return holes, nil
}

func (d Disc) seen() string {
	if d.Forward {
		return "outside face up, clock 0° up, clock rising anticlockwise"
	}
	return "outside face up, clock 0° up, clock rising clockwise"
}

// places draws holes and says where they are.
func (b *Blank) places(d Disc, holes []*hole, r float64) {
	for _, h := range holes {
		b.draw(h)
		b.measure("", "centre of "+h.port.Name+" from the centre", h.port.Radius)
		b.measure("", "centre of "+h.port.Name+" from the zero mark", distance(h.centre, Point{0, r}))
	}
}

// Plan returns the holes of a formed head as circles seen along the tank axis: a
// plan to drill by, along the axis, and no blank. Lengths in [m].
func (d Disc) Plan(o Options) Blank {
	b := Blank{Name: d.Name + "-plan", Title: d.Title + ": drilling plan", Seen: "along the tank axis, " + d.seen()}
	err := o.Valid()
	for _, p := range d.Ports {
		if _, bad := p.Chords(d.Wall); bad != nil && err == nil {
			err = bad
		}
	}
	if err != nil {
		return refuse(b, err)
	}
	r := d.Wall.Radius
	b.Mark = append(b.Mark, circle(Point{}, r), line(Point{0, r * 0.8}, Point{0, r}))
	b.cross(r / 20)
	b.label(Point{0, r}, up, "clock 0°")
	b.measure("D", "mid-wall diameter at the seam", 2*r)
	for _, p := range d.Ports {
		if !p.Parallel {
			b.note("port %s is normal to the wall: its hole is a circle about its own axis, not in this plan", p.Name)
			continue
		}
		a, at := holeRadius(p, o), d.at(p.Radius, p.Clock)
		b.Mark = append(b.Mark, circle(at, a), line(Point{at.X - a/2, at.Y}, Point{at.X + a/2, at.Y}), line(Point{at.X, at.Y - a/2}, Point{at.X, at.Y + a/2}))
		b.label(Point{at.X, at.Y - a}, down, p.Name)
		b.measure("", "circle of "+p.Name+": diameter", 2*a)
		b.measure("", "centre of "+p.Name+" from the axis", p.Radius)
		b.measure("", "centre of "+p.Name+" from the zero mark, in the plan", distance(at, Point{0, r}))
	}
	b.warn("a plan, not a flat blank: the wall is not to be cut square to itself by these circles, but along the tank axis")
	return b
}
