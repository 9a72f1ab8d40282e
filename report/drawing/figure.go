package drawing

import "math"

// A Figure is a drawing on paper.
type Figure struct {
	Name          string  // of its file, without extension
	Title         string  // printed under or over it by whoever places it
	Width, Height float64 // of the paper [mm]
	Lines         []Line
	Arcs          []Arc
	Polylines     []Polyline
	Fills         []Fill
	Texts         []Text
}

// A Point is a place on the paper, from its upper left corner, y down.
type Point struct {
	X, Y float64 // [mm]
}

// A Pen is how a line is drawn.
type Pen struct {
	Width float64   // [mm]
	Grey  float64   // 0 black to 1 white [-]
	Dash  []float64 // lengths of stroke and gap in turn [mm]; none: solid
}

// A Line is straight.
type Line struct {
	From, To Point
	Pen      Pen
}

// An Arc is part of a circle, from angle Start over Sweep, both counted from
// the x axis towards y.
type Arc struct {
	Centre       Point
	Radius       float64 // [mm]
	Start, Sweep float64 // [rad]
	Pen          Pen
}

// A Polyline is a chain of straight lines.
type Polyline struct {
	Points []Point
	Closed bool
	Pen    Pen
}

// A Fill is an area of one grey without an edge.
type Fill struct {
	Points []Point
	Grey   float64 // 0 black to 1 white [-]
}

// An Align says which part of a text stands at its place.
type Align int

const (
	Left Align = iota
	Centre
	Right
)

// A Text is one line of words; At is on its base line.
type Text struct {
	At    Point
	Text  string
	Size  float64 // of the type [mm]
	Align Align
	Turn  float64 // counter-clockwise on the paper [rad]
	Bold  bool
}

// AddLine adds a line from (x1, y1) to (x2, y2) [mm].
func (f *Figure) AddLine(x1, y1, x2, y2 float64, pen Pen) {
	f.Lines = append(f.Lines, Line{Point{x1, y1}, Point{x2, y2}, pen})
}

// AddText adds a text at (x, y) of a type size [mm].
func (f *Figure) AddText(x, y, size float64, align Align, text string) {
	f.Texts = append(f.Texts, Text{At: Point{x, y}, Text: text, Size: size, Align: align})
}

// AddRectangle adds a rectangle with corner (x, y), width w and height h [mm].
func (f *Figure) AddRectangle(x, y, w, h float64, pen Pen) {
	f.Polylines = append(f.Polylines, Polyline{Rectangle(x, y, w, h), true, pen})
}

// Rectangle returns the corners of a rectangle at (x, y), w by h [mm].
func Rectangle(x, y, w, h float64) []Point {
	return []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
}

// AddArrow adds a filled arrow head whose tip is at (x, y), pointing along the
// direction [rad], of a length [mm].
func (f *Figure) AddArrow(x, y, direction, length float64) {
	back := func(turn float64) Point {
		return Point{x - length*math.Cos(direction+turn), y - length*math.Sin(direction+turn)}
	}
	f.Fills = append(f.Fills, Fill{Points: []Point{{x, y}, back(0.25), back(-0.25)}})
}

// Finite reports whether every place of the figure is a finite number: a
// figure that is not must not be drawn.
func (f *Figure) Finite() bool {
	ok := finite(f.Width, f.Height)
	each := func(ps []Point) {
		for _, p := range ps {
			ok = ok && finite(p.X, p.Y)
		}
	}
	for _, l := range f.Lines {
		each([]Point{l.From, l.To})
	}
	for _, a := range f.Arcs {
		ok = ok && finite(a.Centre.X, a.Centre.Y, a.Radius, a.Start, a.Sweep)
	}
	for _, p := range f.Polylines {
		each(p.Points)
	}
	for _, p := range f.Fills {
		each(p.Points)
	}
	for _, t := range f.Texts {
		each([]Point{t.At})
	}
	return ok
}

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
