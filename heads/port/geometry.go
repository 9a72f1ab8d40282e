package port

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

const (
	clearObliquity = math.Pi / 4 // common practice and ASME B31.3 304.3.3: no remark up to here
	mostObliquity  = math.Pi / 3 // EN 13445-3 clause 9, recalled; fillets lose their root beyond
	angleSlack     = 1e-9        // [rad] rounding of degrees typed by a reader
)

// Chords returns the size of the hole in both planes on the wall's mid-surface
// and the angle φ [rad] between tube axis and wall normal. With tube radius a:
//
//	cone, parallel tube    meridional 2a/sin α      φ = 90° − α
//	sphere                 2R sin{[asin((e+a)/R) − asin((e−a)/R)]/2}   sin φ = e/R
//	ellipsoid, torisphere  √[(2a)² + (g(e−a) − g(e+a))²]   from the profile g(r)
//	flat, or normal tube   2a                       φ = 0
//
// and 2a in the transverse plane. Beside the cylinder's radius the long chord is the
// transverse one: 2R sin{[acos((x0−a)/R) − acos((x0+a)/R)]/2}, sin φ = x0/R. Half-chords run from where the tube axis
// pierces the mid-surface: equal on straight generators, unequal on a dome.
//
// It refuses (error) a hole whose outside-diameter outline covers a cone's apex,
// runs over the rim, a seam or the tip, and an obliquity over 60 degrees; from 45
// degrees up, and across a knuckle, there is a caution.
//
// Source: intersection of a circular cylinder with the mid-surface, computed by
// two methods; checked in oblique_test.go.
func (p Port) Chords(w Wall) (Chords, error) {
	nan := math.NaN()
	none := Chords{Obliquity: nan, Meridional: nan, Transverse: nan, OutsideMeridional: nan,
		OutsideTransverse: nan, Outboard: nan, Inboard: nan, OutsideOutboard: nan, OutsideInboard: nan,
		Sides: [2]float64{nan, nan}, OutsideSides: [2]float64{nan, nan}}
	if err := errors.Join(w.valid(), p.valid()); err != nil {
		return none, err
	}
	if err := p.inside(w); err != nil {
		return none, err
	}
	φ, err := p.obliquity(w)
	if err != nil {
		return none, err
	}
	a, b := p.OutsideDiameter/2, p.OutsideDiameter/2-p.TubeWall
	c := Chords{Obliquity: φ, Hillside: p.hillside(w)}
	c.Transverse, c.Sides = p.sideways(w, b)
	c.OutsideTransverse, c.OutsideSides = p.sideways(w, a)
	c.Meridional, c.Outboard, c.Inboard = p.meridional(w, b)
	c.OutsideMeridional, c.OutsideOutboard, c.OutsideInboard = p.meridional(w, a)
	if φ > clearObliquity+angleSlack {
		c.Cautions = append(c.Cautions, fmt.Sprintf("port %s stands %.1f deg off the wall's normal, over 45: "+
			"outside the piping and alternative pressure-vessel rules; bevel the joint or use a boss", p.Name, φ*180/math.Pi))
	}
	if p.inKnuckle(w) {
		c.Cautions = append(c.Cautions, fmt.Sprintf("port %s reaches into the knuckle: the whole-head thickness is asked, "+
			"and the knuckle's own stresses are not covered by the area rule", p.Name))
	}
	if w.Surface == Cone && c.Meridional > p.Radius {
		c.Cautions = append(c.Cautions, fmt.Sprintf("port %s takes more than half of the cone's diameter where it stands: the area rule was not made for so large a hole", p.Name))
	}
	if p.outsideMiddle(w) {
		c.Cautions = append(c.Cautions, fmt.Sprintf("port %s reaches outside 0.8 of the head's diameter: the whole-head thickness is asked there", p.Name))
	}
	return c, nil
}

// meridional returns the chord and its two halves [m] for a tube radius a [m].
func (p Port) meridional(w Wall, a float64) (chord, outboard, inboard float64) {
	switch {
	case w.Surface == Cone && p.Parallel && !p.inKnuckle(w):
		h := a / math.Sin(w.HalfApex)
		return 2 * h, h, h
	case !p.Parallel || w.Surface == Flat || w.Surface == Cylinder:
		return 2 * a, a, a
	}
	e := p.Radius
	chord = math.Hypot(2*a, w.height(e-a)-w.height(e+a))
	if w.Surface == Sphere {
		chord = 2 * w.Radius * math.Sin((math.Asin((e+a)/w.Radius)-math.Asin((e-a)/w.Radius))/2)
	}
	return chord, math.Hypot(a, w.height(e)-w.height(e+a)), math.Hypot(a, w.height(e-a)-w.height(e))
}

// height returns the mid-surface's height g [m] over the equator plane (cone:
// below the apex, negative) at distance r [m] from the axis; NaN off the surface.
func (w Wall) height(r float64) float64 {
	r = math.Abs(r)
	switch w.Surface {
	case Cone:
		if r > w.edge() {
			c, _ := w.knuckleCentre()
			return -w.edge()/math.Tan(w.HalfApex) - w.Knuckle*math.Sin(w.HalfApex) + math.Sqrt(w.Knuckle*w.Knuckle-(r-c)*(r-c))
		}
		return -r / math.Tan(w.HalfApex)
	case Sphere:
		return math.Sqrt(w.Radius*w.Radius - r*r)
	case Ellipsoid:
		return w.Depth * math.Sqrt(1-r*r/(w.Radius*w.Radius))
	case Torisphere:
		c, rt := w.knuckleCentre()
		if r > rt {
			return math.Sqrt(w.Knuckle*w.Knuckle - (r-c)*(r-c))
		}
		return math.Sqrt(w.Crown*w.Crown-r*r) - math.Sqrt((w.Crown-w.Knuckle)*(w.Crown-w.Knuckle)-c*c)
	case Flat:
		return 0
	}
	return math.NaN() // not reached: nothing is parallel to the axis of a cylinder, and other surfaces are refused
}

// normalAngle returns the angle [rad] between the wall's normal and the tank
// axis at distance r [m] from the axis.
func (w Wall) normalAngle(r float64) float64 {
	switch w.Surface {
	case Cylinder:
		return math.Pi / 2
	case Cone:
		if r > w.edge() {
			c, _ := w.knuckleCentre()
			return math.Asin((r - c) / w.Knuckle)
		}
		return math.Pi/2 - w.HalfApex
	case Sphere:
		return math.Asin(r / w.Radius)
	case Ellipsoid:
		q := r / w.Radius
		return math.Atan(w.Depth / w.Radius * q / math.Sqrt(1-q*q))
	case Torisphere:
		c, rt := w.knuckleCentre()
		if r > rt {
			return math.Asin((r - c) / w.Knuckle)
		}
		return math.Asin(r / w.Crown)
	case Flat:
		return 0
	}
	return math.NaN() // not reached: other surfaces are refused
}

// knuckleCentre returns the radius c of the knuckle circle's centre and r_t of
// the joint of crown, or cone, and knuckle [m].
func (w Wall) knuckleCentre() (c, rt float64) {
	c = w.Radius - w.Knuckle
	if w.Surface == Cone {
		return c, w.edge()
	}
	return c, w.Crown * c / (w.Crown - w.Knuckle)
}

// obliquity returns the angle between tube axis and wall normal [rad].
func (p Port) obliquity(w Wall) (float64, error) {
	if !p.Parallel && !p.hillside(w) {
		return 0, nil
	}
	if w.Surface == Cylinder && p.Parallel {
		return math.NaN(), fmt.Errorf("port %s: a tube parallel to the tank axis does not pierce the cylinder; use axis normal", p.Name)
	}
	φ := w.normalAngle(p.Radius)
	if p.hillside(w) {
		φ = math.Asin(math.Abs(p.Offset) / w.Radius)
	}
	return φ, check.Within("port.Chords", "angle of the tube to the wall's normal in degrees", φ*180/math.Pi,
		0, (mostObliquity+angleSlack)*180/math.Pi, "limit of the oblique rules; a boss normal to the wall or a numerical model is needed")
}

// reach returns the least and the largest distance from the axis [m] of the
// outside-diameter outline; the least is negative where it covers the axis.
func (p Port) reach(w Wall) (least, most float64) {
	a := p.OutsideDiameter / 2
	if !p.Parallel {
		a *= math.Cos(w.normalAngle(p.Radius))
	}
	return p.Radius - a, p.Radius + a
}

// edge returns the mid-surface radius at which the piece ends outboard [m].
func (w Wall) edge() float64 {
	if w.Edge > 0 {
		return w.Edge
	}
	return w.Radius
}

// hasKnuckle reports whether the wall goes on outboard in a knuckle that is
// described.
func (w Wall) hasKnuckle() bool {
	return w.Surface == Torisphere || w.Surface == Cone && w.KnuckleAtEdge && w.Knuckle > 0
}

// inKnuckle reports whether the outline crosses into a torisphere's or toricone's
// knuckle.
func (p Port) inKnuckle(w Wall) bool {
	if !w.hasKnuckle() {
		return false
	}
	_, most := p.reach(w)
	_, rt := w.knuckleCentre()
	return most > rt
}

// cylinderSize returns an error unless the bore is of a size the area rule holds
// for in a cylinder: half the inside diameter and 20 in up to 60 in of diameter,
// a third and 40 in above.
//
// Source: ASME VIII-1 UG-36(b)(1) (read).
func (p Port) cylinderSize(w Wall) error {
	inside := 2*w.Radius - w.Thickness
	most := math.Min(inside/2, 20*inch)
	if inside > 60*inch {
		most = math.Min(inside/3, 40*inch)
	}
	return check.Within("port.Chords", "port "+p.Name+": bore in m", p.OutsideDiameter-2*p.TubeWall, 0, most, "size of an opening in a cylinder, UG-36(b)(1)")
}

// inside returns an error unless the outline of the outside diameter lies on the
// part.
func (p Port) inside(w Wall) error {
	a := p.OutsideDiameter / 2
	if p.Offset != 0 && w.Surface != Cylinder {
		return fmt.Errorf("port %s: an offset from the radius is of a tube on the cylinder", p.Name)
	}
	if w.Surface == Cylinder {
		if err := errors.Join(p.cylinderSize(w), p.clears(w)); err != nil {
			return err
		}
		if p.Station-a < 0 || p.Station+a > w.Length {
			return fmt.Errorf("port %s: the hole reaches over a seam at the cylinder's end: move it to %.4g mm or more from both ends", p.Name, a*1e3)
		}
		return nil
	}
	least, most := p.reach(w)
	switch {
	case w.hasKnuckle() && most < w.Radius:
	case most >= w.edge() && w.KnuckleAtEdge && w.Knuckle == 0:
		return fmt.Errorf("port %s: the hole reaches %.4g mm from the axis, into the knuckle that begins at %.4g mm: not covered on a cone", p.Name, most*1e3, w.edge()*1e3)
	case w.hasKnuckle():
		return fmt.Errorf("port %s: the hole reaches %.4g mm from the axis, over the rim or seam of the part at %.4g mm", p.Name, most*1e3, w.Radius*1e3)
	case most >= w.edge():
		return fmt.Errorf("port %s: the hole reaches %.4g mm from the axis, over the rim or seam of the part at %.4g mm", p.Name, most*1e3, w.edge()*1e3)
	}
	switch {
	case w.Surface == Cone && least <= 0:
		return fmt.Errorf("port %s: the hole covers the apex of the cone; a tube on the axis belongs to a truncated cone's tip", p.Name)
	case w.Tip > 0 && least <= w.Tip:
		return fmt.Errorf("port %s: the hole reaches within %.4g mm of the axis, over the tip of the part at %.4g mm", p.Name, least*1e3, w.Tip*1e3)
	}
	return nil
}

// NormalRadius returns the second principal radius of the mid-surface where the tube's
// axis pierces it, from the wall to the tank axis along the wall's normal [m]: r/sin φ with
// φ from the axis, at the apex its limit; without end on a flat wall.
//
// Source: geometry.
func (p Port) NormalRadius(w Wall) float64 {
	φ := w.normalAngle(p.Radius)
	switch {
	case w.Surface == Cylinder:
		return w.Radius
	case w.Surface == Ellipsoid && p.Radius == 0:
		return w.Radius * w.Radius / w.Depth
	case w.Surface == Torisphere && p.Radius == 0:
		return w.Crown
	case w.Surface == Sphere:
		return w.Radius
	case w.Surface == Flat:
		return math.Inf(1)
	}
	return p.Radius / math.Sin(φ)
}
