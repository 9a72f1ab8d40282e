package port

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// sphereFactors is K_1 of an ellipsoidal head: radius of the sphere that stands
// for its middle over the inside diameter [-], against D/2h [-].
//
// Source: Jawad and Farr, Structural Analysis and Design of Process Equipment,
// table 11.3 (read).
var sphereFactors = [...][2]float64{{1.0, 0.50}, {1.2, 0.57}, {1.4, 0.65}, {1.6, 0.73}, {1.8, 0.81},
	{2.0, 0.90}, {2.2, 0.99}, {2.4, 1.08}, {2.6, 1.18}, {2.8, 1.27}, {3.0, 1.36}}

// SphereFactor returns K_1 [-] of an ellipsoidal head of inside aspect D/2h [-],
// by linear interpolation in the table, 1.0 to 3.0; outside it the error is a
// [*check.RangeError] and the value NaN.
func SphereFactor(aspect float64) (float64, error) {
	const why = "table of equivalent sphere radii"
	if err := check.Within("port.SphereFactor", "aspect D/2h of the ellipsoid", aspect, 1, 3, why); err != nil {
		return math.NaN(), err
	}
	for i := 1; i < len(sphereFactors); i++ {
		lo, hi := sphereFactors[i-1], sphereFactors[i]
		if aspect <= hi[0] {
			return lo[1] + (hi[1]-lo[1])*(aspect-lo[0])/(hi[0]-lo[0]), nil
		}
	}
	// not reached: the table goes on to the end of the range
	return math.NaN(), check.Within("port.SphereFactor", "aspect D/2h of the ellipsoid", aspect, 1, 3, why)
}

// RequiredWall returns the thickness t_r [m] the seamless wall (E = 1) needs at
// the port under the pressure p [Pa] with the allowable stress s [Pa], and the
// formula it comes from:
//
//	cylinder    p R/(S − 0.6p)              R inside radius
//	cone        p e/[cos α (S − 0.6p)]      e where the tube axis meets the wall
//	sphere      p R/(2S − 0.2p)
//	ellipsoid   p K1 D/(2S − 0.2p)          hole inside 0.8 D, else p D K/(2S − 0.2p)
//	torisphere  p L/(2S − 0.2p)             hole inside the crown, else p L M/(2S − 0.2p)
//	toricone    as the cone                 hole clear of the knuckle, else the larger of
//	            p L M/(2S − 0.2p) and p L/(S − 0.6p), L = e_1/cos α at the knuckle's tangent
//
// with K = [2 + (D/2h)²]/6 and M = [3 + √(L/r)]/4, all on inside dimensions. It
// holds for p under 0.385 S (thin wall). A flat head has no formula here.
//
// Source: ASME VIII-1 UG-37(a), UG-27, UG-32: cylinder, sphere and ellipsoid
// read (Jawad and Farr, example 11.6), cone and torisphere recalled.
func (p Port) RequiredWall(w Wall, pressure, s float64) (tr float64, formula string, err error) {
	nan := math.NaN()
	if err := check.Within("port.RequiredWall", "pressure over allowable stress", pressure/s, 0, 0.385, "thin-wall thickness rules"); err != nil {
		return nan, "", err
	}
	t := w.Thickness
	spherical := func(r float64) float64 { return pressure * r / (2*s - 0.2*pressure) }
	switch w.Surface {
	case Cylinder:
		return pressure * (w.Radius - t/2) / (s - 0.6*pressure), "t_r = p R/(S − 0.6p)", nil
	case Cone:
		if p.inKnuckle(w) {
			e, r := w.edge()-t/2*math.Cos(w.HalfApex), w.Knuckle-t/2
			l := e / math.Cos(w.HalfApex)
			return math.Max(spherical(l*(3+math.Sqrt(l/r))/4), pressure*l/(s-0.6*pressure)), "t_r = max[p L M/(2S − 0.2p), p L/(S − 0.6p)], L = e_1/cos α, hole reaching into the knuckle", nil
		}
		return pressure * p.Radius / (math.Cos(w.HalfApex) * (s - 0.6*pressure)), "t_r = p e/[cos α (S − 0.6p)]", nil
	case Sphere:
		return spherical(w.Radius - t/2), "t_r = p R/(2S − 0.2p)", nil
	case Ellipsoid:
		d := 2*w.Radius - t
		aspect := d / (2*w.Depth - t)
		if _, most := p.reach(w); most > 0.4*d {
			return spherical(d * (2 + aspect*aspect) / 6), "t_r = p D K/(2S − 0.2p), hole outside 0.8 D", nil
		}
		k1, err := SphereFactor(aspect)
		return spherical(k1 * d), "t_r = p K_1 D/(2S − 0.2p)", err
	case Torisphere:
		l, r := w.Crown-t/2, w.Knuckle-t/2
		if p.inKnuckle(w) {
			return spherical(l * (3 + math.Sqrt(l/r)) / 4), "t_r = p L M/(2S − 0.2p), hole reaching into the knuckle", nil
		}
		return spherical(l), "t_r = p L/(2S − 0.2p)", nil
	}
	return nan, "", fmt.Errorf("port %s: no required thickness of a %s here; it must be given", p.Name, w.Surface)
}

// outsideMiddle reports whether a hole on an ellipsoid leaves the circle of 0.8
// of the inside diameter, within which the equivalent sphere holds.
func (p Port) outsideMiddle(w Wall) bool {
	_, most := p.reach(w)
	return w.Surface == Ellipsoid && most > 0.4*(2*w.Radius-w.Thickness)
}
