package port

import (
	"fmt"
	"math"
)

// BesideRim reports whether the port's outline reaches into the knuckle of a torisphere
// or toricone, or outside 0.8 of an ellipsoid's diameter: a load from outside is held
// there beside the stress of a numerical shell, [Load.Membrane] and [Load.Face].
func (p Port) BesideRim(w Wall) bool { return p.inKnuckle(w) || p.outsideMiddle(w) }

// rimWall is the wall of a port beside the rim to a load from outside: a cylinder of the
// larger of the wall's radii where the hole stands, r_2 = r/sin φ at its inboard edge or
// at the knuckle's tangent. Under the same load a shell that is curved the other way too
// is stressed less, whatever that radius; the cone or cylinder beside it, as much at the
// most. The stress of the pressure, bending too, is the numerical shell's: membrane
// theory breaks at the knuckle's ends.
//
// Source: shallow shell of two curvatures, computed. Test: thrust_test.go.
func (p Port) rimWall(w Wall, l Load) (localWall, error) {
	if !(l.Membrane > 0 && l.Face >= l.Membrane) || l.Face >= inf {
		return localWall{}, fmt.Errorf("port %s: a load from outside in a knuckle or beside the rim needs the stress of the numerical shell there, which is not known: head.X/junction says why; or move the port nearer to the axis", p.Name)
	}
	large, small := p.rimRadii(w)
	if a := p.OutsideDiameter / 2; a > small {
		return localWall{}, fmt.Errorf("port %s: the tube's radius of %.4g mm is more than the wall's smaller radius there, %.4g mm: no shallow shell speaks for a load on it; move the port nearer to the axis or carry the line on a bracket of its own", p.Name, a*1e3, small*1e3)
	}
	return localWall{radius: large, stress: CylinderLocalStress,
		general: math.Max(l.Membrane*w.Thickness, math.Max(math.Max(l.Hoop, l.Meridional), l.mostAsked())), bent: l.Face - l.Membrane}, nil
}

// rimRadii returns the larger and the smaller principal radius of the mid-surface under
// the hole of a port beside the rim [m], each the largest and the least there is.
func (p Port) rimRadii(w Wall) (large, small float64) {
	inner, outer := p.reach(w)
	if w.Surface == Ellipsoid {
		a, h := w.Radius, w.Depth
		of := func(e float64) (float64, float64) {
			r2 := math.Sqrt(a*a*a*a+e*e*(h*h-a*a)) / h
			return r2, r2 * r2 * r2 * h * h / (a * a * a * a)
		}
		r2, r1 := of(math.Max(inner, 0))
		r4, r3 := of(outer)
		return math.Max(math.Max(r1, r2), math.Max(r3, r4)), math.Min(math.Min(r1, r2), math.Min(r3, r4))
	}
	_, rt := w.knuckleCentre()
	at := math.Max(inner, rt)
	return at / math.Sin(w.normalAngle(at)), w.Knuckle
}
