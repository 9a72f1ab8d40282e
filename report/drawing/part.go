package drawing

import (
	"fmt"
	"math"
	"unicode/utf8"
)

// The layers of a part.
const (
	Cut   = "CUT"  // the tool's path
	Mark  = "MARK" // to be scribed
	Words = "TEXT" // to be read, not to be made
)

// A Part is a flat part at full size: x to the right and y up, in millimetres,
// from an origin that its remarks name.
type Part struct {
	Name    string // of its file, without extension
	Title   string
	Remarks []string // under the drawing and at the head of the file
	Paths   []Path
	Labels  []Label
}

// A Path is a chain of lines and arcs on a layer.
type Path struct {
	Layer    string
	Closed   bool
	Vertices []Vertex
}

// A Vertex is a corner. To the next one the path runs straight where Bulge is 0,
// else along an arc of the sweep 4 atan(Bulge), anticlockwise where positive; a
// sweep is at most half a turn.
type Vertex struct {
	X, Y  float64 // [mm]
	Bulge float64 // [-]
}

// A Label is a word beside a place, on the side of the direction Away, (0, 0) on
// the place itself; y up.
type Label struct {
	At, Away Point
	Text     string
}

// finite reports whether every place is a number.
func (p *Part) finite() bool {
	ok := true
	for _, path := range p.Paths {
		for _, v := range path.Vertices {
			ok = ok && finite(v.X, v.Y, v.Bulge) && math.Abs(v.Bulge) <= 1
		}
	}
	for _, l := range p.Labels {
		ok = ok && finite(l.At.X, l.At.Y, l.Away.X, l.Away.Y)
	}
	return ok && len(p.Paths) > 0
}

// check refuses a part that cannot be made from.
func (p *Part) check() error {
	if !p.finite() {
		return fmt.Errorf("part %q has no outline, or a place that is not a finite number", p.Name)
	}
	return nil
}

// Points returns the path as straight steps, within 0.02 mm of its arcs, y up.
func (p Path) Points() (out []Point) {
	n := len(p.Vertices)
	for i, v := range p.Vertices {
		out = append(out, Point{v.X, v.Y})
		if v.Bulge != 0 && (i < n-1 || p.Closed) {
			arc := v.arc(p.Vertices[(i+1)%n]).Points()
			out = append(out, arc[1:len(arc)-1]...)
		}
	}
	return out
}

// arc returns the arc from v to next, y up.
func (v Vertex) arc(next Vertex) Arc {
	sweep := 4 * math.Atan(v.Bulge)
	dx, dy := next.X-v.X, next.Y-v.Y
	r := math.Hypot(dx, dy) / (2 * math.Sin(sweep/2))
	h := r * math.Cos(sweep/2) / math.Hypot(dx, dy) // the centre lies left of the chord where positive
	c := Point{(v.X+next.X)/2 - h*dy, (v.Y+next.Y)/2 + h*dx}
	return Arc{Centre: c, Radius: math.Abs(r), Start: math.Atan2(v.Y-c.Y, v.X-c.X), Sweep: sweep}
}

// bounds returns the corners of the box round all paths [mm], y up.
func (p *Part) bounds() (least, most Point) {
	least, most = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, path := range p.Paths {
		for _, q := range path.Points() {
			least = Point{math.Min(least.X, q.X), math.Min(least.Y, q.Y)}
			most = Point{math.Max(most.X, q.X), math.Max(most.Y, q.Y)}
		}
	}
	return least, most
}

// letters returns the width of a text over its size, on the wide side [-]: no
// font is at hand here.
func letters(text string) float64 { return 0.62 * float64(utf8.RuneCountInString(text)) }

// centre returns where the middle of a label of a type size [mm] stands, y up.
func (l Label) centre(size float64) Point {
	return Point{l.At.X + l.Away.X*size*(0.6+letters(l.Text)/2), l.At.Y + l.Away.Y*size*1.1}
}

// words returns labels and remarks as texts at full size, y up, and the box round
// them and the paths [mm].
func (p *Part) words() (texts []Text, least, most Point) {
	least, most = p.bounds()
	size := math.Max(2.5, math.Min(8, math.Max(most.X-least.X, most.Y-least.Y)/70))
	for _, l := range p.Labels {
		c := l.centre(size)
		texts = append(texts, Text{At: Point{c.X, c.Y - 0.35*size}, Text: l.Text, Size: size, Align: Centre})
		half := letters(l.Text) * size / 2
		least = Point{math.Min(least.X, c.X-half), math.Min(least.Y, c.Y-size)}
		most = Point{math.Max(most.X, c.X+half), math.Max(most.Y, c.Y+size)}
	}
	for _, r := range append([]string{p.Title, fullSize}, p.Remarks...) {
		least.Y -= 1.6 * size
		texts = append(texts, Text{At: Point{least.X, least.Y}, Text: r, Size: size})
		most.X = math.Max(most.X, least.X+letters(r)*size)
	}
	least.Y -= 0.5 * size
	return texts, least, most
}
