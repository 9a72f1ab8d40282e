package blank

import "math"

// A Point is a place on a blank: x to the right, y up, its outside face up.
type Point struct {
	X, Y float64 // [m]
}

// A Vertex is a corner of a path. To the next one the path runs straight where
// Bulge is 0, else along an arc of the sweep 4 atan(Bulge), anticlockwise where
// it is positive.
type Vertex struct {
	Point
	Bulge float64 // tan of a quarter of the sweep [-]
}

// A Path is a chain of straight lines and arcs.
type Path struct {
	Vertices []Vertex
	Closed   bool
}

// polygon returns a closed path of straight lines.
func polygon(ps []Point) Path {
	p := Path{Closed: true}
	for _, q := range ps {
		p.Vertices = append(p.Vertices, Vertex{Point: q})
	}
	return p
}

// line returns a straight path.
func line(a, b Point) Path { return Path{Vertices: []Vertex{{Point: a}, {Point: b}}} }

// circle returns a full circle, in quarters.
func circle(c Point, r float64) Path {
	p := Path{Closed: true}
	for i := range 4 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 2)
		p.Vertices = append(p.Vertices, Vertex{Point{c.X + r*cos, c.Y + r*sin}, math.Tan(math.Pi / 8)})
	}
	return p
}

// arc returns the corners of an arc about the origin from angle a to b [rad], the
// last without its bulge, in pieces of no more than a quarter.
func arc(r, a, b float64) []Vertex {
	n := max(1, int(math.Ceil(math.Abs(b-a)/(math.Pi/2)-1e-9)))
	vs := make([]Vertex, n+1)
	for i := range vs {
		sin, cos := math.Sincos(a + (b-a)*float64(i)/float64(n))
		vs[i] = Vertex{Point{r * cos, r * sin}, math.Tan((b - a) / float64(n) / 4)}
	}
	vs[n].Bulge = 0
	return vs
}

// segments calls f for every side of the path with its chord [m] and sweep [rad].
func (p Path) segments(f func(a, b Point, chord, sweep float64)) {
	n := len(p.Vertices)
	for i, v := range p.Vertices {
		if i == n-1 && !p.Closed {
			return
		}
		next := p.Vertices[(i+1)%n].Point
		f(v.Point, next, distance(v.Point, next), 4*math.Atan(v.Bulge))
	}
}

// Length returns the length of the path [m], arcs along their curve.
func (p Path) Length() (sum float64) {
	p.segments(func(_, _ Point, chord, sweep float64) {
		if half := sweep / 2; half != 0 {
			chord *= half / math.Sin(half)
		}
		sum += chord
	})
	return sum
}

// Area returns the area within a closed path [m2], positive where it runs
// anticlockwise.
func (p Path) Area() (sum float64) {
	p.segments(func(a, b Point, chord, sweep float64) {
		sum += (a.X*b.Y - b.X*a.Y) / 2
		if sweep != 0 {
			r := chord / (2 * math.Sin(sweep/2))
			sum += r * r / 2 * (sweep - math.Sin(sweep))
		}
	})
	return sum
}

// Points returns places on the path, its arcs in steps of no more than step [rad].
func (p Path) Points(step float64) (out []Point) {
	p.segments(func(a, b Point, chord, sweep float64) {
		out = append(out, a)
		n := int(math.Ceil(math.Abs(sweep) / step))
		if sweep == 0 || n < 2 {
			return
		}
		// The centre lies to the left of the chord where the sweep is positive.
		r := chord / (2 * math.Sin(sweep/2))
		h := r * math.Cos(sweep/2)
		cx := (a.X+b.X)/2 - h*(b.Y-a.Y)/chord
		cy := (a.Y+b.Y)/2 + h*(b.X-a.X)/chord
		for i := 1; i < n; i++ {
			sin, cos := math.Sincos(sweep * float64(i) / float64(n))
			dx, dy := a.X-cx, a.Y-cy
			out = append(out, Point{cx + dx*cos - dy*sin, cy + dx*sin + dy*cos})
		}
	})
	if n := len(p.Vertices); n > 0 && !p.Closed {
		out = append(out, p.Vertices[n-1].Point)
	}
	return out
}

// Bounds returns the corners of the box round the path.
func (p Path) Bounds() (least, most Point) {
	least, most = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, q := range p.Points(0.001) {
		least = Point{math.Min(least.X, q.X), math.Min(least.Y, q.Y)}
		most = Point{math.Max(most.X, q.X), math.Max(most.Y, q.Y)}
	}
	return least, most
}

func distance(a, b Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// offset moves the sides of a convex, closed polygon outward by d [m], inward
// where it is negative; ok is false where a side would vanish.
func offset(ps []Point, d float64) (out []Point, ok bool) {
	if d == 0 {
		return ps, true
	}
	if polygon(ps).Area() < 0 {
		d = -d
	}
	n := len(ps)
	normal := func(a, b Point) (x, y float64) { // to the right of a to b
		l := distance(a, b)
		return (b.Y - a.Y) / l, -(b.X - a.X) / l
	}
	out, ok = make([]Point, n), true
	for i, p := range ps {
		ax, ay := normal(ps[(i+n-1)%n], p)
		bx, by := normal(p, ps[(i+1)%n])
		k := d / (1 + ax*bx + ay*by)
		out[i] = Point{p.X + k*(ax+bx), p.Y + k*(ay+by)}
	}
	for i, p := range ps {
		q, a, b := ps[(i+1)%n], out[i], out[(i+1)%n]
		ok = ok && (q.X-p.X)*(b.X-a.X)+(q.Y-p.Y)*(b.Y-a.Y) > 0
	}
	return out, ok
}

// within reports whether p lies in the polygon, by counting crossings.
func within(p Point, ps []Point) (in bool) {
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// apart returns the shortest distance between two closed polygons [m], 0 where they
// touch or one lies in the other.
func apart(p, q []Point) float64 {
	if within(p[0], q) || within(q[0], p) {
		return 0
	}
	least := math.Inf(1)
	for i := range p {
		for j := range q {
			least = math.Min(least, toSegment(p[i], q[j], q[(j+1)%len(q)]))
			least = math.Min(least, toSegment(q[j], p[i], p[(i+1)%len(p)]))
		}
	}
	return least
}

// toSegment returns the distance of p from the line between a and b [m].
func toSegment(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	l2 := dx*dx + dy*dy
	if l2 == 0 { // not reached: an outline has no two points in one place
		return distance(p, a)
	}
	k := math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l2))
	return distance(p, Point{a.X + k*dx, a.Y + k*dy})
}

// every returns one point of each k.
func every(ps []Point, k int) (out []Point) {
	for i := 0; i < len(ps); i += k {
		out = append(out, ps[i])
	}
	return out
}
