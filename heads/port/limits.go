package port

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// limits are the distances along the wall within which metal may count [m],
// from where the tube axis pierces the mid-surface; infinite where nothing ends
// it.
type limits struct{ outboard, inboard, transverse float64 }

// cuts returns where the wall itself stops metal from counting: the part's edge
// or seam, the knuckle, the 0.8 D circle of an ellipsoid treated by its
// equivalent sphere, the tip, and the zone a joint has claimed.
func (p Port) cuts(w Wall) limits {
	e, edge := p.Radius, w.edge()
	if w.Surface == Cone && p.inKnuckle(w) {
		inboard := w.arc(w.Tip, e) - w.InboardZone
		if least, _ := p.reach(w); least >= edge { // a hole all in the knuckle: the cone's metal does not count
			inboard = w.arc(edge, e)
		}
		return limits{w.arc(e, w.Radius) - w.OutboardZone, inboard, math.Sqrt(w.Radius*w.Radius-e*e) - w.OutboardZone}
	}
	switch w.Surface {
	case Cylinder:
		return limits{w.Length - p.Station - w.OutboardZone, p.Station - w.InboardZone, math.Pi * w.Radius / 2}
	case Cone:
		sin := math.Sin(w.HalfApex)
		s, far := e/sin, edge/sin-w.OutboardZone
		return limits{far - s, s - w.Tip/sin - w.InboardZone, math.Sqrt(math.Max(0, far*far-s*s))}
	case Ellipsoid:
		if !p.outsideMiddle(w) {
			edge = math.Min(edge, 0.4*(2*w.Radius-w.Thickness))
		}
	case Torisphere:
		if _, rt := w.knuckleCentre(); !p.inKnuckle(w) {
			edge = math.Min(edge, rt)
		}
	}
	// The arc is longer than its projection square to the tank axis, so the
	// transverse distance is taken on the safe side.
	inboard := w.arc(0, e) + w.arc(0, edge)
	if w.Tip > 0 {
		inboard = w.arc(w.Tip, e) - w.InboardZone
	}
	if least, _ := p.reach(w); w.Surface == Torisphere {
		if _, rt := w.knuckleCentre(); least >= rt { // a hole all in the knuckle: the crown's metal does not count
			inboard = math.Min(inboard, w.arc(rt, e))
		}
	}
	return limits{w.arc(e, edge) - w.OutboardZone, math.Min(inboard, inboardEnd(w, inboard)), math.Sqrt(edge*edge-e*e) - w.OutboardZone}
}

// inboardEnd takes the outboard joint's zone off an inboard distance that runs
// over the axis to the far edge.
func inboardEnd(w Wall, inboard float64) float64 {
	if w.Tip > 0 {
		return inboard
	}
	return inboard - w.OutboardZone
}

// arc returns the length of the meridian between the distances r1 ≤ r2 [m] from
// the axis [m].
func (w Wall) arc(r1, r2 float64) float64 {
	switch w.Surface {
	case Sphere:
		return w.Radius * (math.Asin(math.Min(1, r2/w.Radius)) - math.Asin(r1/w.Radius))
	case Torisphere:
		c, rt := w.knuckleCentre()
		crown := w.Crown * (math.Asin(math.Min(r2, rt)/w.Crown) - math.Asin(math.Min(r1, rt)/w.Crown))
		turn := func(r float64) float64 { return math.Asin(math.Min(1, (math.Max(r, rt)-c)/w.Knuckle)) } // the rim may round to over 1
		knuckle := w.Knuckle * (turn(r2) - turn(r1))
		return crown + knuckle
	case Ellipsoid:
		// r = A sin u: ds = √(A² cos² u + h² sin² u) du, smooth up to the equator.
		u1, u2 := math.Asin(r1/w.Radius), math.Asin(math.Min(1, r2/w.Radius))
		return integral(func(u float64) float64 { return math.Hypot(w.Radius*math.Cos(u), w.Depth*math.Sin(u)) }, u1, u2)
	case Cone:
		if !w.hasKnuckle() {
			return (r2 - r1) / math.Sin(w.HalfApex)
		}
		c, rt := w.knuckleCentre()
		turn := func(r float64) float64 { return math.Asin(math.Min(1, (math.Max(r, rt)-c)/w.Knuckle)) }
		return (math.Min(r2, rt)-math.Min(r1, rt))/math.Sin(w.HalfApex) + w.Knuckle*(turn(r2)-turn(r1))
	}
	return r2 - r1
}

// integral of a smooth function from a to b, by Gauss and Legendre with 24
// points: exact to rounding for the arcs of this room.
func integral(f func(float64) float64, a, b float64) float64 {
	return quad.Fixed(f, a, b, 24, quad.Legendre{}, 0)
}
