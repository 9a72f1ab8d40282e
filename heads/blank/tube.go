package blank

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/heads/port"
)

// A Tube is a tube whose end is cut, or marked, by a template wrapped round it.
type Tube struct {
	Name, Title string
	Port        port.Port
	Wall        port.Wall  // nominal
	Head        heads.Head // inside face, nominal; nil on the cylinder
	Forward     bool       // on the forward head, or on the cylinder
}

// End returns how high the wall's face at offset n [m], from the inside face
// through the wall, stands at ψ [rad] round the tube of outside radius a; heights
// [m] are along the tube, away from the contents, from a level that is the same for
// all ψ and n:
//
//	parallel tube   the face's own meridian at r(ψ) = √(e² + a² + 2 e a cos ψ)
//	cylinder        √[(R_i + n)² − (x0 − a sin ψ)²] − R
//	normal, cone    h of the intersection with the face, from the mid-surface
//
// Source: computed; port.TubeEnd, by the mid-surface alone, in tube_test.go.
func (t Tube) End(ψ, n float64) (float64, error) {
	a, e := t.Port.OutsideDiameter/2, t.Port.Radius
	switch {
	case t.Wall.Surface == port.Cylinder && !t.Port.Parallel:
		y := t.Port.Offset - a*math.Sin(ψ) // who looks aft at the tube has rising clock on the left
		face := t.Wall.Radius - t.Wall.Thickness/2 + n
		return math.Sqrt(face*face-y*y) - t.Wall.Radius, nil
	case t.Port.Parallel && t.Head != nil:
		x, err := t.Head.AxialAt(math.Hypot(e+a*math.Cos(ψ), a*math.Sin(ψ)), n)
		if t.Wall.Inward {
			x = -x
		}
		return x, err
	case t.Wall.Surface == port.Cone && !t.Wall.Inward:
		_, _, h := meetNormal(t.Wall, t.Port, a, ψ, n-t.Wall.Thickness/2)
		return h, nil
	}
	return math.NaN(), fmt.Errorf("port %s: no template for a tube normal to a wall of this shape: fit it in place", t.Port.Name)
}

// Blank returns the template, as long as the tube is round on its outside, with
// its middle on the outboard (cylinder: forward) line of the tube and the ends
// on the opposite one. Up is away from the contents. A tube that projects is cut
// square at both ends, and the template marks where the faces of the wall cross it; a flush tube
// is cut along the inside face, one that abuts along the outside face.
//
// Source: the curves of [Tube.End] by the outside of the tube; widths and heights in
// metres [m].
func (t Tube) Blank(o Options) Blank {
	b := Blank{Name: t.Name, Title: t.Title, Seen: "printed side out, up away from the contents"}
	err := o.Valid()
	if _, bad := t.Port.Chords(t.Wall); bad != nil {
		err = errors.Join(err, bad)
	}
	in, inErr := t.curve(0)
	out, outErr := t.curve(t.Wall.Thickness)
	if err = errors.Join(err, inErr, outErr); err != nil {
		return refuse(b, err)
	}
	top := highest(out) + t.Port.Outside
	low := lowest(in)
	end := box(in[0].X, low-t.Port.Inside, in[len(in)-1].X, top)[:2] // square
	switch t.Port.Fit {
	case port.Through:
		b.Mark = append(b.Mark, open(in))
		b.label(in[len(in)*5/8], Point{0, -2.5}, "inside face")
	case port.Flush:
		end = in
	case port.On:
		end = out
	}
	return t.finish(b, end, in, out, top)
}

// finish draws the template from its lower end upwards and measures it.
func (t Tube) finish(b Blank, end, in, out []Point, top float64) Blank {
	base := lowest(end)
	sheet := append(append([]Point{}, end...), Point{end[len(end)-1].X, top}, Point{end[0].X, top})
	b.Cut = []Path{polygon(sheet)}
	if t.Port.Fit != port.On {
		b.Mark = append(b.Mark, open(out))
		b.label(out[len(out)*5/8], Point{0, 2.5}, "outside face")
	}
	wide := out[len(out)-1].X
	t.lines(&b, wide, base, top)
	b.measure("W", "round the tube", 2*wide)
	b.measure("H", "length of the tube", top-base)
	b.measure("", "rise of the outside face's line from end to end", highest(out)-lowest(out))
	b.measure("", "rise of the inside face's line from end to end", highest(in)-lowest(in))
	for i, at := range []string{"at the middle line", "at the quarter lines", "at the ends"} {
		k := len(out)/2 + i*(len(out)-1)/4
		b.measure("", "upper edge to the outside face's line "+at, top-out[k].Y)
	}
	b.lower(base)
	b.note("a template on thin paper: on a thick one its length grows by 2π times the thickness")
	if t.Port.Fit != port.Through {
		b.note("the end is cut along the line on the outside of the tube: dress its inner edge to the wall")
	}
	b.note("no allowance for the root gap of the port's weld: the wall crosses the tube along the lines")
	return b
}

// lines scribes the middle and the quarters of the tube, named at the top, and
// says on which side clock rises.
func (t Tube) lines(b *Blank, wide, base, top float64) {
	for _, x := range []float64{-wide / 2, 0, wide / 2} {
		b.Mark = append(b.Mark, line(Point{x, base}, Point{x, top}))
	}
	side := "outboard"
	if t.Wall.Surface == port.Cylinder {
		side = "forward"
	}
	rising := Point{wide / 2, top}
	if !t.Forward || t.Wall.Surface == port.Cylinder { // seen from forward there
		rising.X = -rising.X
	}
	b.label(Point{0, top}, up, side)
	b.label(rising, up, "rising clock")
}

// lower moves all of a blank down by y [m].
func (b *Blank) lower(y float64) {
	for _, paths := range [][]Path{b.Cut, b.Mark} {
		for _, p := range paths {
			for i := range p.Vertices {
				p.Vertices[i].Y -= y
			}
		}
	}
	for i := range b.Labels {
		b.Labels[i].At.Y -= y
	}
}

// curve returns the line of a face on the unrolled tube.
func (t Tube) curve(n float64) ([]Point, error) {
	const steps = drawn
	a := t.Port.OutsideDiameter / 2
	ps := make([]Point, steps+1)
	for i := range ps {
		ψ := math.Pi * (2*float64(i)/steps - 1)
		h, err := t.End(ψ, n)
		if err == nil && math.IsNaN(h) {
			err = fmt.Errorf("port %s: the tube misses the wall", t.Port.Name)
		}
		if err != nil {
			return nil, err
		}
		ps[i] = Point{a * ψ, h}
	}
	return ps, nil
}

func open(ps []Point) Path {
	p := polygon(ps)
	p.Closed = false
	return p
}

func highest(ps []Point) float64 {
	v := math.Inf(-1)
	for _, p := range ps {
		v = math.Max(v, p.Y)
	}
	return v
}

func lowest(ps []Point) float64 {
	v := math.Inf(1)
	for _, p := range ps {
		v = math.Min(v, p.Y)
	}
	return v
}
