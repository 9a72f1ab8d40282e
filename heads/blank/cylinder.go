package blank

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
)

// A Sheet is the plate of one course of the cylinder.
type Sheet struct {
	Name, Title string
	Wall        port.Wall // of the cylinder, nominal; its length is the whole cylinder's
	From, To    float64   // the course's ends, from the aft seam [m]
	Seam        float64   // clock of its long seam [rad]
	Ports       []port.Port
}

// Blank returns the sheet, 2πR − gap long on the mid-line and To − From − gap
// high, R the mid-wall radius: the gap of each seam comes off its two edges by
// halves. Clock rises to the right, forward is up. It is refused where the hole of
// a port crosses an edge or another hole.
//
// Source: the mid-line keeps its length in rolling (practice, from five walls of
// radius up); identities in sheet_test.go.
func (s Sheet) Blank(o Options) Blank {
	b := Blank{Name: s.Name, Title: s.Title, Thickness: s.Wall.Thickness,
		Seen: "outside face up, forward edge up, clock rising to the right"}
	if err := s.valid(o); err != nil {
		return refuse(b, err)
	}
	R := s.Wall.Radius
	long, high := 2*math.Pi*R-o.Gap, s.To-s.From-o.Gap
	b.bendable(R, s.Wall.Thickness)
	holes, err := s.holes(&b, o)
	if err != nil {
		return refuse(b, err)
	}
	rim := []border{
		{"the long seam", func(p Point) float64 { return math.Min(p.X, long-p.X) }},
		{"the girth seam aft of it", func(p Point) float64 { return p.Y }},
		{"the girth seam forward of it", func(p Point) float64 { return high - p.Y }},
	}
	if err := b.keep(holes, rim); err != nil {
		return refuse(b, err)
	}
	b.Cut = append(b.Cut, polygon(box(-o.Kerf/2, -o.Kerf/2, long+o.Kerf/2, high+o.Kerf/2)))
	for i, letter := range []string{"A", "B", "C", "D"} {
		b.label(box(0, 0, long, high)[i], box(-1, -1, 1, 1)[i], letter)
	}
	b.measure("A–B", "length on the mid-line, at both edges", long)
	b.measure("A–D", "height, at both ends", high)
	b.measure("A–C", "diagonal; B–D is the same", math.Hypot(long, high))
	b.quarters(s.Seam, func(turn float64) (from, to Point) {
		x := R*turn - o.Gap/2
		return Point{x, 0}, Point{x, high}
	})
	for _, h := range holes {
		if err := s.open(&b, h); err != nil { // not reached: as in oblique
			return refuse(b, err)
		}
	}
	b.note("mid-wall radius %.6g mm; long seam at clock %.4g°; a plate 0.1 mm thicker than nominal wants 0.314 mm more length for the same inside", R*1e3, degrees(s.Seam))
	return b.finish(o, polygon(box(0, 0, long, high)), holes)
}

// open draws a hole and says where it is.
func (s Sheet) open(b *Blank, h *hole) error {
	b.draw(h)
	if err := b.oblique(s.Wall, h, Point{0, 1}, Point{1, 0}); err != nil { // not reached: as there
		return err
	}
	b.measure("", "centre of "+h.port.Name+" from the edge A–D", h.centre.X)
	b.measure("", "centre of "+h.port.Name+" from the edge A–B", h.centre.Y)
	b.nearSeam(s.Wall, h.port, s.Seam)
	return nil
}

func (s Sheet) valid(o Options) error {
	if err := o.Valid(); err != nil {
		return err
	}
	if s.Wall.Surface != port.Cylinder || !(s.Wall.Radius > s.Wall.Thickness) || !(s.Wall.Thickness > 0) {
		return fmt.Errorf("%s: no cylinder with a wall", s.Name)
	}
	if math.IsNaN(s.Seam) || math.IsInf(s.Seam, 0) {
		return fmt.Errorf("%s: the clock of its seam is not a number", s.Name)
	}
	if !(s.From >= 0 && s.To-s.From > o.Gap && s.To <= s.Wall.Length) {
		return fmt.Errorf("%s: a course from %.4g m to %.4g m is none of the cylinder", s.Name, s.From, s.To)
	}
	return nil
}

// holes lays the openings of the course on its sheet.
func (s Sheet) holes(b *Blank, o Options) (out []*hole, err error) {
	for _, p := range s.Ports {
		if p.Station+p.OutsideDiameter/2 <= s.From || p.Station-p.OutsideDiameter/2 >= s.To {
			continue
		}
		if _, err := p.Chords(s.Wall); err != nil {
			return nil, err
		}
		turn := forward(p.PierceClock(s.Wall) - s.Seam)
		centre := Point{s.Wall.Radius*turn - o.Gap/2, p.Station - s.From - o.Gap/2}
		h, err := lay(s.Wall, p, o, centre, Point{0, 1}, Point{1, 0})
		if err != nil {
			return nil, err
		}
		out = append(out, h)
	}
	return out, nil
}

// quarters scribes the lines of clock 0°, 90°, 180° and 270°. place says where a
// line runs that lies turn [rad] after the seam; one within half a degree of the
// seam is the edge itself and only named there.
func (b *Blank) quarters(seam float64, place func(turn float64) (from, to Point)) {
	for i, name := range []string{"clock 0°", "90°", "180°", "270°"} {
		turn := forward(float64(i)*math.Pi/2 - seam)
		if turn < math.Pi/360 || turn > 2*math.Pi-math.Pi/360 {
			b.note("the line of %s is the seam itself", name)
			from, to := place(0)
			inner, _ := place(math.Pi / 2)
			away := aside(from, to, inner)
			b.label(Point{(from.X + to.X) / 2, (from.Y + to.Y) / 2}, Point{1.6 * away.X, 1.6 * away.Y}, name)
			continue
		}
		from, to := place(turn)
		b.Mark = append(b.Mark, line(from, to))
		l := distance(from, to)
		b.label(to, Point{(to.X - from.X) / l, (to.Y - from.Y) / l}, name)
	}
}

// aside returns the direction square to the line from a to b, away from c.
func aside(a, b, c Point) Point {
	l := distance(a, b)
	n := Point{(b.Y - a.Y) / l, (a.X - b.X) / l}
	if (c.X-a.X)*n.X+(c.Y-a.Y)*n.Y > 0 {
		n = Point{-n.X, -n.Y}
	}
	return n
}

// box returns the corners of a rectangle from the lower left one, anticlockwise [m].
func box(x1, y1, x2, y2 float64) []Point { return []Point{{x1, y1}, {x2, y1}, {x2, y2}, {x1, y2}} }

// forward returns an angle as 0 up to a whole turn [rad].
func forward(a float64) float64 {
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	if 2*math.Pi-a < 1e-12 { // rounding of a clock given in degrees
		return 0
	}
	return a
}

// degrees returns an angle v [rad] in degrees of one turn.
func degrees(v float64) float64 { return forward(v) * 180 / math.Pi }
