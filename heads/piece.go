package heads

import "math"

// A piece is one analytic part of a meridian. s runs from 0 at its end next to
// the apex to 1 at its end next to the seam; o is the distance [m] of the
// parallel surface from the inside face, positive away from the concave side.
type piece interface {
	name() string
	at(s, o float64) Point
	span() (seam, apex float64)    // x of the inside face at its two ends [m]
	radius(x float64) float64      // of the inside face [m]
	volume(x float64) float64      // between x and its apex end [m3]
	find(r, o float64) (s float64) // where the parallel surface has radius r; NaN if nowhere
	tightest() float64             // smallest principal radius in the meridian plane [m]
}

// An arc is a circular piece: centre at (x0, r0), radius ρ, φ from a to b. With
// r0 = 0 it is part of a sphere, otherwise of a torus.
type arc struct {
	called    string
	x0, r0, ρ float64 // [m]
	a, b      float64 // [rad]
}

func (c arc) name() string      { return c.called }
func (c arc) tightest() float64 { return c.ρ }
func (c arc) span() (seam, apex float64) {
	return c.x0 + c.ρ*cosine(c.b), c.x0 + c.ρ*cosine(c.a)
}

// cosine is cos φ, exactly 0 at a right angle, so that the seam lies at x = 0.
func cosine(φ float64) float64 {
	if φ == math.Pi/2 {
		return 0
	}
	return math.Cos(φ)
}

func (c arc) at(s, o float64) Point {
	φ := c.a + s*(c.b-c.a)
	if s == 1 {
		φ = c.b
	}
	ρ := c.ρ + o
	p := Point{X: c.x0 + ρ*cosine(φ), R: c.r0 + ρ*math.Sin(φ), Phi: φ, R1: ρ, R2: ρ, Piece: c.called}
	if c.r0 != 0 {
		p.R2 = p.R / math.Sin(φ)
	}
	return p
}

func (c arc) radius(x float64) float64 {
	u := x - c.x0
	return c.r0 + math.Sqrt(math.Max(0, (c.ρ-u)*(c.ρ+u)))
}

// volume integrates π r² dx with x = x0 + ρ cos φ, r = r0 + ρ sin φ:
//
//	V = π ρ [r0² (cos a − cos φ) + r0 ρ (φ − a − sin φ cos φ + sin a cos a)
//	    + ρ² (cos a − cos φ − (cos³ a − cos³ φ)/3)]
//
// and, for a cap that begins on the axis, π h² (ρ − h/3), which keeps its digits
// when h is small.
func (c arc) volume(x float64) float64 {
	if c.r0 == 0 && c.a == 0 {
		h := c.x0 + c.ρ - x
		return math.Pi * h * h * (c.ρ - h/3)
	}
	φ := math.Acos(math.Max(-1, math.Min(1, (x-c.x0)/c.ρ)))
	sa, ca, sφ, cφ := math.Sin(c.a), cosine(c.a), math.Sin(φ), cosine(φ)
	return math.Pi * c.ρ * (c.r0*c.r0*(ca-cφ) + c.r0*c.ρ*(φ-c.a-sφ*cφ+sa*ca) +
		c.ρ*c.ρ*(ca-cφ-(ca*ca*ca-cφ*cφ*cφ)/3))
}

func (c arc) find(r, o float64) float64 {
	sin := (r - c.r0) / (c.ρ + o)
	if !(sin <= 1+rounding && sin >= -rounding) {
		return math.NaN()
	}
	if c.b == c.a { // a crown that is no more than the apex
		if r > c.r0+(c.ρ+o)*math.Sin(c.a) {
			return math.NaN()
		}
		return 1
	}
	return (math.Asin(math.Max(0, math.Min(1, sin))) - c.a) / (c.b - c.a)
}

// An ellipse is the whole meridian of an ellipsoidal head: semi-axis a at the
// equator (the seam), b along the tank axis.
type ellipse struct{ a, b float64 } // [m]

func (e ellipse) name() string               { return "ellipsoid" }
func (e ellipse) tightest() float64          { return math.Min(e.b*e.b/e.a, e.a*e.a/e.b) }
func (e ellipse) span() (seam, apex float64) { return 0, e.b }

func (e ellipse) at(s, o float64) Point {
	φ := s * math.Pi / 2
	sin, cos := math.Sin(φ), cosine(φ)
	q := math.Hypot(e.a*sin, e.b*cos)
	return Point{
		X: (e.b*e.b/q + o) * cos, R: (e.a*e.a/q + o) * sin, Phi: φ,
		R1: e.a*e.a*e.b*e.b/(q*q*q) + o, R2: e.a*e.a/q + o, Piece: "ellipsoid",
	}
}

func (e ellipse) radius(x float64) float64 {
	return e.a * math.Sqrt(math.Max(0, (1-x/e.b)*(1+x/e.b)))
}

func (e ellipse) volume(x float64) float64 {
	h := e.b - x
	return math.Pi * e.a * e.a * h * h * (e.b - h/3) / (e.b * e.b)
}

// find halves the bracket: the radius of a parallel curve without a cusp grows
// with φ.
func (e ellipse) find(r, o float64) float64 {
	if r < 0 || r > (e.a+o)*(1+rounding) || math.IsNaN(r) {
		return math.NaN()
	}
	if r >= e.a+o {
		return 1
	}
	lo, hi := 0.0, 1.0
	for i := 0; i < 200 && lo < hi; i++ {
		mid := lo + (hi-lo)/2
		if mid == lo || mid == hi {
			break
		}
		if e.at(mid, o).R < r {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2
}

// A line is the straight generator of a cone from (x1, r1) next to the tip to
// (x2, r2) next to the seam. Its parallel surface is cut by the same plane as
// the inside face at the tip and, where it meets the cylinder, at the seam;
// where it meets a knuckle it ends on the same normal (tangent).
type line struct {
	x1, r1, x2, r2 float64 // [m]
	α              float64 // [rad]
	tangent        bool
}

func (l line) name() string               { return "cone" }
func (l line) tightest() float64          { return math.Inf(1) }
func (l line) span() (seam, apex float64) { return l.x2, l.x1 }

// ends returns tip and seam end of the parallel line: x and radius [m].
func (l line) ends(o float64) (xa, ra, xb, rb float64) {
	shift := o / math.Cos(l.α)
	xa, ra, xb, rb = l.x1, l.r1+shift, l.x2, l.r2+shift
	if ra < 0 { // the concave face of a cone closes before the convex one
		xa, ra = xa+ra/math.Tan(l.α), 0
	}
	if l.tangent {
		xb, rb = l.x2+o*math.Sin(l.α), l.r2+o*math.Cos(l.α)
	}
	return xa, ra, xb, rb
}

func (l line) at(s, o float64) Point {
	xa, ra, xb, rb := l.ends(o)
	r := ra + s*(rb-ra)
	return Point{
		X: xa + s*(xb-xa), R: r, Phi: math.Pi/2 - l.α,
		R1: math.Inf(1), R2: r / math.Cos(l.α), Piece: "cone",
	}
}

func (l line) radius(x float64) float64 {
	if l.x1 == l.x2 {
		return l.r2
	}
	return l.r2 + (x-l.x2)*(l.r1-l.r2)/(l.x1-l.x2)
}

func (l line) volume(x float64) float64 {
	r, h := l.radius(x), l.x1-x
	return math.Pi * h / 3 * (l.r1*l.r1 + l.r1*r + r*r)
}

// find lets the parallel surface of a cone run on inwards to where its inside
// face ends, so that every radius from the tip outwards has an answer.
func (l line) find(r, o float64) float64 {
	_, ra, _, rb := l.ends(o)
	if !(r >= math.Min(ra, l.r1)*(1-rounding) && r >= 0) {
		return math.NaN()
	}
	return (r - ra) / (rb - ra)
}

// A disc is a flat head of radius a.
type disc struct{ a float64 } // [m]

func (d disc) name() string               { return "flat" }
func (d disc) tightest() float64          { return math.Inf(1) }
func (d disc) span() (seam, apex float64) { return 0, 0 }
func (d disc) radius(float64) float64     { return d.a }
func (d disc) volume(float64) float64     { return 0 } // not reached: a piece that ends where it begins is passed over
func (d disc) find(r, _ float64) float64  { return r / d.a }

func (d disc) at(s, o float64) Point {
	return Point{X: o, R: s * d.a, R1: math.Inf(1), R2: math.Inf(1), Piece: "flat"}
}
