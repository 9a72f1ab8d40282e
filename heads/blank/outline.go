package blank

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/heads/port"
)

// holeRadius returns the radius [m] that the hole of a port has to let pass: the
// bore under a tube that abuts the outside, else the tube and its clearance.
func holeRadius(p port.Port, o Options) float64 {
	if p.Fit == port.On {
		return p.OutsideDiameter/2 - p.TubeWall
	}
	return p.OutsideDiameter/2 + o.Clearance
}

// Outline returns n points or a few more round the edge of the hole that a tube
// of radius a [m] needs, cut square to the plate before it is rolled: x along the
// generator, outboard (cylinder: forward), y across it, towards rising clock, from
// where the tube axis pierces the mid-surface [m]. The hole is what the tube takes
// up on any face of the wall, from inside to outside, n from −t/2 to t/2:
//
//	cone, parallel   s = r/sin α − n cot α, ω = θ sin α
//	                 r² = e² + a² + 2 e a cos ψ, tan θ = a sin ψ/(e + a cos ψ)
//	cylinder         x = a cos ψ, y = R [asin((x0 + a sin ψ)/(R ∓ t/2)) − asin(x0/R)]
//	cone, normal     hull of the intersections with five faces
//	flat             circle of radius a
//
// On a cone with a parallel tube it is the true outline moved by (t/2) cot α each
// way along the generators: as long as 2a/sin α + t cot α. Other walls cannot be
// laid flat.
//
// Source: unrolling about the mid-surface's apex, plane sections square to the
// wall; computed, and rolled up again in outline_test.go.
func Outline(w port.Wall, p port.Port, a float64, n int) ([]Point, error) {
	switch {
	case !(a > 0) || n < 16:
		return nil, fmt.Errorf("port %s: no hole of radius %.4g m", p.Name, a)
	case w.Surface == port.Cone && p.Parallel:
		return obliqueOnCone(w, p, a, n)
	case w.Surface == port.Cone:
		return normalOnCone(w, p, a, n)
	case w.Surface == port.Cylinder && !p.Parallel:
		return onCylinder(w, p, a, n)
	case w.Surface == port.Flat:
		return ring(n, func(ψ float64) Point { return Point{a * math.Cos(ψ), a * math.Sin(ψ)} }), nil
	}
	return nil, fmt.Errorf("port %s: a %s cannot be laid flat: drill along the tube's axis after forming, by the tube's template", p.Name, w.Surface)
}

// ring returns f at n steps round the tube.
func ring(n int, f func(ψ float64) Point) []Point {
	ps := make([]Point, n)
	for i := range ps {
		ps[i] = f(2 * math.Pi * float64(i) / float64(n))
	}
	return ps
}

// obliqueOnCone joins the outboard half of the outline on the inside face to the
// inboard half on the outside face along the two generators that touch the tube.
func obliqueOnCone(w port.Wall, p port.Port, a float64, n int) ([]Point, error) {
	e, sin, cos := p.Radius, math.Sin(w.HalfApex), math.Cos(w.HalfApex)
	if !(e > a) {
		return nil, fmt.Errorf("port %s: the hole covers the apex of the cone", p.Name)
	}
	δ := w.Thickness / 2 * cos / sin
	at := func(ψ, shift float64) Point {
		x, y := e+a*math.Cos(ψ), a*math.Sin(ψ)
		s, ω := math.Hypot(x, y)/sin+shift, math.Atan2(y, x)*sin
		return Point{s*math.Cos(ω) - e/sin, s * math.Sin(ω)}
	}
	touch := math.Acos(-a / e) // ψ where θ is largest
	half := n / 2
	ps := make([]Point, 0, n+2)
	for i := range half + 1 {
		ps = append(ps, at(touch*(2*float64(i)/float64(half)-1), δ))
	}
	for i := range half + 1 {
		ps = append(ps, at(touch+2*(math.Pi-touch)*float64(i)/float64(half), -δ))
	}
	return ps, nil
}

// FaceLine returns n points of the line in which a parallel tube of radius a [m]
// crosses a cone's outside face, as it lies on the flat blank: the true outline
// moved by (t/2) cot α along the generators, towards the apex, on a head that
// bulges inward away from it [m]. Of a tube beside the cylinder's radius, the line on
// the outside face at mid-wall radius.
//
// Source: as [Outline].
func FaceLine(w port.Wall, p port.Port, a float64, n int) ([]Point, error) {
	if w.Surface == port.Cylinder && p.Offset != 0 && a > 0 {
		return ring(n, func(ψ float64) Point {
			y := p.Offset + a*math.Sin(ψ)
			return Point{a * math.Cos(ψ), w.Radius * (math.Asin(y/(w.Radius+w.Thickness/2)) - math.Asin(p.Offset/w.Radius))}
		}), nil
	}
	if w.Surface != port.Cone || !p.Parallel || !(p.Radius > a) || !(a > 0) {
		return nil, fmt.Errorf("port %s: no line of a parallel tube on a cone", p.Name)
	}
	e, sin := p.Radius, math.Sin(w.HalfApex)
	shift := -w.Thickness / 2 / math.Tan(w.HalfApex)
	if w.Inward {
		shift = -shift
	}
	return ring(n, func(ψ float64) Point {
		x, y := e+a*math.Cos(ψ), a*math.Sin(ψ)
		s, ω := math.Hypot(x, y)/sin+shift, math.Atan2(y, x)*sin
		return Point{s*math.Cos(ω) - e/sin, s * math.Sin(ω)}
	}), nil
}

// onCylinder returns the widest section of both faces at mid-wall radius: on the inside
// face, and of a tube beside the radius, where it does not reach over it, on the outside
// face on the near side.
func onCylinder(w port.Wall, p port.Port, a float64, n int) ([]Point, error) {
	inside := w.Radius - w.Thickness/2
	if !(math.Abs(p.Offset)+a < inside) {
		return nil, fmt.Errorf("port %s: the hole is wider than the cylinder", p.Name)
	}
	pierce := math.Asin(p.Offset / w.Radius)
	return ring(n, func(ψ float64) Point {
		y, face := p.Offset+a*math.Sin(ψ), inside
		if y*math.Sin(ψ) < 0 { // the edge is on the near side of the tube, but not over the radius
			face += w.Thickness
		}
		return Point{a * math.Cos(ψ), w.Radius * (math.Asin(y/face) - pierce)}
	}), nil
}

// normalOnCone returns the hull of the sections of five faces.
func normalOnCone(w port.Wall, p port.Port, a float64, n int) ([]Point, error) {
	sin := math.Sin(w.HalfApex)
	if !(p.Radius > a) {
		return nil, fmt.Errorf("port %s: the hole covers the apex of the cone", p.Name)
	}
	var ps []Point
	for _, part := range []float64{-0.5, -0.25, 0, 0.25, 0.5} {
		ps = append(ps, ring(n, func(ψ float64) Point {
			s, θ, _ := meetNormal(w, p, a, ψ, part*w.Thickness)
			sinω, cosω := math.Sincos(θ * sin)
			return Point{s*cosω - p.Radius/sin, s * sinω}
		})...)
	}
	return spaced(hull(ps), 2*math.Pi*a/float64(3*n)), nil
}

// spaced leaves out points nearer than least [m] to the one before: the hull of
// several faces has some all but on one place, and no side could be moved there.
func spaced(ps []Point, least float64) (out []Point) {
	for _, p := range ps {
		if len(out) == 0 || distance(out[len(out)-1], p) >= least && distance(out[0], p) >= least {
			out = append(out, p)
		}
	}
	return out
}

// meetNormal returns where the line at ψ of a tube normal to a cone meets the face
// at n [m] outside of the mid-surface: slant distance s from the apex of that
// face's own normals [m], θ round the tank axis [rad], and h along the tube from the
// mid-surface [m]. h solves
//
//	√(x² + y²) = z tan α + n/cos α
//
// and rises steadily, so Newton's steps from h = n arrive.
func meetNormal(w port.Wall, p port.Port, a, ψ, n float64) (s, θ, h float64) {
	sin, cos := math.Sincos(w.HalfApex)
	along, y := p.Radius/sin+a*math.Cos(ψ), a*math.Sin(ψ)
	h = n
	var x float64
	for range 30 {
		x = along*sin + h*cos
		miss := math.Hypot(x, y) - (along*sin - h*sin*sin/cos) - n/cos
		step := miss / (x*cos/math.Hypot(x, y) + sin*sin/cos)
		h -= step
		if math.Abs(step) < 1e-13*a {
			break
		}
	}
	x = along*sin + h*cos
	return along + (n-h)*sin/cos, math.Atan2(y, x), h
}

// hull returns the convex hull, anticlockwise.
func hull(ps []Point) []Point {
	ps = slices.Clone(ps)
	slices.SortFunc(ps, func(a, b Point) int {
		if a.X != b.X {
			return sign(a.X - b.X)
		}
		return sign(a.Y - b.Y)
	})
	half := func(from []Point) (out []Point) {
		for _, p := range from {
			for len(out) > 1 {
				a, b := out[len(out)-2], out[len(out)-1]
				if (b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X) > 0 {
					break
				}
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	low := half(ps)
	slices.Reverse(ps)
	return append(low, half(ps)...)
}

func sign(v float64) int {
	if v < 0 {
		return -1
	} else if v > 0 {
		return 1
	}
	return 0
}
