package blank

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Blank is a flat part, or a template, at full size.
type Blank struct {
	Name      string  // of its file: "head-aft", "tube-outlet"
	Title     string  // in words
	Thickness float64 // of the plate, nominal; 0 for a paper template [m]
	Seen      string  // which face is up, and what is up and right
	Cut       []Path  // the tool's path: kerf taken into account
	Mark      []Path  // to be scribed, not cut
	Labels    []Label
	Measures  []check.Quantity // of the part as cut, to be measured on it
	Notes     []string
	Cautions  []string
	Err       error // why the part is not drawn; nothing is to be cut
}

// A Label is a word beside a place of the blank, on the side to which Away points.
type Label struct {
	At, Away Point
	Text     string
}

// Options are what the shop allows for.
type Options struct {
	Gap       float64 // root gap of every butt seam; half of it comes off each edge [m]
	Kerf      float64 // width of the cut; its middle runs half of it outside of the part [m]
	Clearance float64 // between tube and hole, on the radius [m]
}

// most is the largest allowance that is taken for meant [m]: common practice.
const most = 0.02

// Valid returns an error for an allowance that is no length from 0 to 20 mm.
func (o Options) Valid() error {
	var errs []error
	for _, a := range []struct {
		name  string
		value float64
	}{{"gap", o.Gap}, {"kerf", o.Kerf}, {"clearance", o.Clearance}} {
		if !(a.value >= 0 && a.value <= most) {
			errs = append(errs, fmt.Errorf("%s is %.4g mm, must be from 0 to %.4g mm", a.name, a.value*1e3, most*1e3))
		}
	}
	return errors.Join(errs...)
}

// refuse returns a blank that is not drawn, with the reason.
func refuse(b Blank, err error) Blank {
	return Blank{Name: b.Name, Title: b.Title, Thickness: b.Thickness, Cautions: b.Cautions, Err: err}
}

// measure adds a length [m] to what can be measured.
func (b *Blank) measure(symbol, name string, v float64) {
	b.Measures = append(b.Measures, check.M(symbol, name, v))
}

func (b *Blank) note(format string, a ...any) { b.Notes = append(b.Notes, fmt.Sprintf(format, a...)) }

func (b *Blank) warn(format string, a ...any) {
	b.Cautions = append(b.Cautions, fmt.Sprintf(format, a...))
}

func (b *Blank) label(at, away Point, text string) {
	b.Labels = append(b.Labels, Label{at, away, text})
}

var up, down = Point{0, 1}, Point{0, -1}

// outward returns the direction of a place from the origin.
func outward(p Point) Point {
	if r := math.Hypot(p.X, p.Y); r > 0 {
		return Point{p.X / r, p.Y / r}
	}
	return up // not reached: no corner of a blank lies at its origin
}

// finish measures the edge as it is to be after the cut, less its holes, and the
// plate it needs: where there is a kerf, all of it lies outside of the part.
func (b Blank) finish(o Options, edge Path, holes []*hole) Blank {
	area := math.Abs(edge.Area())
	for _, h := range holes {
		area -= h.area
	}
	if len(holes) > 0 && o.Clearance == 0 {
		b.note("holes are as wide as their tubes: no clearance was asked for")
	}
	least, top := edge.Bounds()
	wide, high := top.X-least.X, top.Y-least.Y
	if o.Kerf > 0 {
		b.measure("W", "width of the part, as drawn", wide)
		b.measure("H", "height of the part, as drawn", high)
		b.measure("W_p", "width of the plate it needs, a kerf on either side", wide+2*o.Kerf)
		b.measure("H_p", "height of the plate it needs, a kerf on either side", high+2*o.Kerf)
	} else {
		b.measure("W", "width of the plate it needs, as drawn", wide)
		b.measure("H", "height of the plate it needs, as drawn", high)
	}
	b.measure("U", "round the outer edge", edge.Length())
	b.Measures = append(b.Measures, check.M2("F", "area, holes taken off", area))
	for _, q := range b.Measures {
		if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
			return refuse(b, fmt.Errorf("%s: %s is not a number", b.Name, q.Name))
		}
	}
	return b
}

// bendable warns where the mid-line may not keep its length.
func (b *Blank) bendable(radius, t float64) {
	if radius < 5*t {
		b.warn("the tightest bend, %.4g mm at mid-wall, is under 5 walls: the mid-line lengthens in rolling; prove the length on a strip first (practice)", radius*1e3)
	}
}
