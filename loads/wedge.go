package loads

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"
)

// segmentArea returns the area [m2] of the part of a circle of radius r [m]
// where x ≥ u r, u cut to [−1, 1]:
//
//	A = r² acos(u) − r² u √(1 − u²)
func segmentArea(r, u float64) float64 {
	switch {
	case u >= 1 || r == 0:
		return 0
	case u <= -1:
		return math.Pi * r * r
	}
	return r * r * (math.Acos(u) - u*math.Sqrt((1-u)*(1+u)))
}

// wetArea returns the area [m2] of liquid in the plane z [m] when the free
// plane is c [m], with a lateral factor above 0.
func (s *State) wetArea(c, z float64) float64 {
	inner, outer := s.in.Radii(z)
	reach := (s.Acceleration.Axial*z - c) / s.Acceleration.Lateral // x from which on it is wet [m]
	area := segmentArea(outer, reach/outer)
	if inner > 0 {
		area -= segmentArea(inner, reach/inner)
	}
	return area
}

// band returns the stations [m] between which the free plane c [m] crosses the
// tank; on one side of them a section is full, on the other dry.
func (s *State) band(c float64) (from, to float64) {
	lo, hi := s.in.Bounds()
	n, y := s.Acceleration.Axial, s.Acceleration.Lateral*s.most
	if n == 0 {
		return lo, hi
	}
	from, to = min((c-y)/n, (c+y)/n), max((c-y)/n, (c+y)/n)
	return min(max(from, lo), hi), min(max(to, lo), hi)
}

// wetVolume returns the volume of liquid [m3] between the planes z1 < z2 [m]
// for the free plane c [m]: exact where sections are full, and by quadrature
// where the free plane crosses them.
func (s *State) wetVolume(c, z1, z2 float64) float64 {
	var from, to float64
	if s.Acceleration.Lateral == 0 {
		lo, hi := s.in.Bounds()
		from = min(max(c/s.Acceleration.Axial, lo), hi)
		to = from
	} else {
		from, to = s.band(c)
	}
	v := 0.0
	if s.Acceleration.Axial > 0 && z1 < from {
		v += s.in.VolumeBelow(min(z2, from)) - s.in.VolumeBelow(z1)
	}
	if s.Acceleration.Axial < 0 && z2 > to {
		v += s.in.VolumeBelow(z2) - s.in.VolumeBelow(max(z1, to))
	}
	if s.Acceleration.Lateral > 0 {
		v += s.integrate(c, max(from, z1), min(to, z2), func(z float64) float64 { return s.wetArea(c, z) })
	}
	return v
}

// A cell is a stretch of the tank that the free plane cuts smoothly, or not at all.
type cell struct {
	z1, z2 float64 // [m]
	volume float64 // ∫ A dz of the liquid [m3]
	moment float64 // ∫ A z dz [m4]
}

// wetCells divides the wet part of the tank where its pieces end and in their middle, and
// where the free plane begins to cross it, with a lateral factor above 0.
func (s *State) wetCells() (out []cell) {
	from, to := s.band(s.plane)
	for i := 1; i < len(s.zs); i++ {
		ends := []float64{s.zs[i-1], (s.zs[i-1] + s.zs[i]) / 2, s.zs[i]}
		for _, z := range [2]float64{from, to} {
			if z > ends[0] && z < ends[len(ends)-1] {
				ends = append(ends, z)
			}
		}
		slices.Sort(ends)
		for k := 1; k < len(ends); k++ {
			a, b := ends[k-1], ends[k]
			dry := s.Acceleration.Axial > 0 && a >= to || s.Acceleration.Axial < 0 && b <= from
			if a >= b || dry {
				continue
			}
			area := func(z float64) float64 { return s.wetArea(s.plane, z) }
			out = append(out, cell{a, b, s.cut(s.plane, a, b, area), s.cut(s.plane, a, b, func(z float64) float64 { return z * area(z) })})
		}
	}
	return out
}

// wetMoment returns ∫ A (z − about) dz [m4] of the liquid between z1 < z2 [m],
// with a lateral factor above 0: what is known of whole cells, and the ends of the stretch.
func (s *State) wetMoment(z1, z2, about float64) float64 {
	v := 0.0
	for _, c := range s.cells {
		switch a, b := max(c.z1, z1), min(c.z2, z2); {
		case a >= b:
		case a == c.z1 && b == c.z2:
			v += c.moment - about*c.volume
		default:
			v += s.cut(s.plane, a, b, func(z float64) float64 { return s.wetArea(s.plane, z) * (z - about) })
		}
	}
	return v
}

// integrate returns ∫ f dz between a and b [m] for the free plane c [m], piece
// by smooth piece, each halved and cut where the plane begins to touch a ring or
// leaves it. The substitution z = m + h (3 q − q³)/2 takes the root of an apex
// and the power 3/2 of a grazing plane, which sit at those ends, away.
func (s *State) integrate(c, a, b float64, f func(z float64) float64) float64 {
	sum := 0.0
	for i := 1; i < len(s.zs); i++ {
		z1, z2 := max(s.zs[i-1], a), min(s.zs[i], b)
		if z1 >= z2 {
			continue
		}
		mid := (z1 + z2) / 2
		sum += s.cut(c, z1, mid, f) + s.cut(c, mid, z2, f)
	}
	return sum
}

// cut integrates from a to b [m] in parts that end where the free plane c [m]
// meets the outer edge of the tank on either side.
func (s *State) cut(c, a, b float64, f func(z float64) float64) float64 {
	near := func(z float64, side float64) float64 { // x of the plane less x of the wall [m], times the factor
		_, r := s.in.Radii(z)
		return s.Acceleration.Axial*z - c - side*s.Acceleration.Lateral*r
	}
	var ends [2]float64
	n := 0
	for _, side := range [2]float64{-1, 1} {
		lo, hi, below := a, b, near(a, side) < 0
		if below == (near(b, side) < 0) {
			continue
		}
		for range 20 { // to 1e-6 of the part; what is left counts with the power 5/2
			if mid := (lo + hi) / 2; (near(mid, side) < 0) == below {
				lo = mid
			} else {
				hi = mid
			}
		}
		ends[n] = (lo + hi) / 2
		n++
	}
	if n == 2 && ends[0] > ends[1] {
		ends[0], ends[1] = ends[1], ends[0]
	}
	sum, from := 0.0, a
	for _, end := range ends[:n] {
		sum += panel(from, end, f)
		from = end
	}
	return sum + panel(from, b, f)
}

// panel is one panel of [State.cut].
func panel(a, b float64, f func(z float64) float64) float64 {
	m, h, sum := (a+b)/2, (b-a)/2, 0.0
	for i, q := range gaussNode {
		w := gaussWeight[i] * 1.5 * (1 - q*q)
		d := h * q * (3 - q*q) / 2
		sum += w * (f(m+d) + f(m-d))
	}
	return h * sum
}

// gaussNode and gaussWeight are the positive half of the Gauss-Legendre rule
// of order 24 [-], from the numeric library.
var gaussNode, gaussWeight = halfRule(24)

// halfRule returns the positive nodes and their weights [-] of the
// Gauss-Legendre rule of even order n on −1 to 1.
func halfRule(n int) (nodes, weights []float64) {
	x, w := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, w, -1, 1)
	for i, q := range x {
		if q > 0 {
			nodes, weights = append(nodes, q), append(weights, w[i])
		}
	}
	return nodes, weights
}

// tiltedPlane returns c [m] for the liquid volume v of total [m3].
func (s *State) tiltedPlane(v, total float64) (float64, error) {
	lo, hi := s.in.Bounds()
	n, y := s.Acceleration.Axial, s.Acceleration.Lateral
	var at float64
	s.most, at = largest(s.zs, lo, hi, func(z float64) float64 { _, r := s.in.Radii(z); return r })
	if inside(s.zs, at) { // a bulging piece: the search closes in from below
		s.most *= 1 + 1e-6
	}
	if v >= total*(1-1e-9) { // full: the plane touches the point of least depth
		c, _ := largest(s.zs, lo, hi, func(z float64) float64 { _, r := s.in.Radii(z); return n*z + y*r })
		return c, nil
	}
	if c, ok := s.straightPlane(v, total); ok {
		return c, nil
	}
	a := min(n*lo, n*hi) - y*s.most
	b := max(n*lo, n*hi) + y*s.most
	return rising(a, b, -v, total-v, total, func(c float64) float64 { return s.wetVolume(c, lo, hi) - v })
}

// straightPlane returns c [m] for the liquid volume v of total [m3] where the free
// plane crosses nothing but a straight wall: what it takes from one side it gives to
// the other, so it meets the axis at the flat level. The wall is straight where
// the volume between the two edges of the plane is that of a cylinder of the
// tank's largest radius.
func (s *State) straightPlane(v, total float64) (float64, bool) {
	n := s.Acceleration.Axial
	if n == 0 {
		return 0, false
	}
	c, err := flatPlane(s.in, v, n)
	if err != nil { // not reached: the volume is within the tank's, and the search for the tilted plane stands behind
		return 0, false
	}
	from, to := s.band(c)
	rise := s.Acceleration.Lateral * s.most / math.Abs(n)
	if to-from < 2*rise*(1-1e-12) { // cut off by an end of the tank
		return 0, false
	}
	between := s.in.VolumeBelow(to) - s.in.VolumeBelow(from)
	return c, math.Abs(between-math.Pi*s.most*s.most*(to-from)) <= 1e-12*total
}

// inside reports whether z [m] is none of the ends of pieces.
func inside(zs []float64, z float64) bool {
	for _, end := range zs {
		if z == end {
			return false
		}
	}
	return true
}

// rising returns the root of f, which rises from fa < 0 at a to fb > 0 at b,
// to 1e-13 of scale or of the bracket: false position, the end that stays put
// halved (Illinois), and a bisection whenever that has not halved the bracket in three
// steps.
func rising(a, b, fa, fb, scale float64, f func(float64) float64) (float64, error) {
	width, since, side, tolerance := b-a, 0, 0, 1e-13*(math.Abs(a)+math.Abs(b))
	for range 200 {
		x := (a*fb - b*fa) / (fb - fa)
		if since++; since > 3 || !(x > a && x < b) {
			x = (a + b) / 2
		}
		fx := f(x)
		switch {
		case math.Abs(fx) <= 1e-13*scale || b-a <= tolerance:
			return x, nil
		case fx < 0:
			if a, fa = x, fx; side < 0 {
				fb /= 2
			}
			side = -1
		case fx > 0:
			if b, fb = x, fx; side > 0 {
				fa /= 2
			}
			side = 1
		default:
			return math.NaN(), errors.New("the volume of the liquid is not a number")
		}
		if b-a < width/2 {
			width, since = b-a, 0
		}
	}
	// not reached: every fourth step halves the bracket
	return math.NaN(), errors.New("no free plane found that keeps the volume of the liquid")
}
