package port

import (
	"fmt"
	"math"
)

// hillside reports whether the tube stands beside the cylinder's radius: its axis is
// square to the cylinder's and parallel to a radius.
func (p Port) hillside(w Wall) bool { return w.Surface == Cylinder && p.Offset != 0 }

// PierceClock returns the clock [rad] at which the tube's axis meets the mid-surface.
// It is the port's own, but for a tube beside the cylinder's radius:
//
//	clock + asin(x0/R)
//
// Source: geometry, computed.
func (p Port) PierceClock(w Wall) float64 {
	if !p.hillside(w) {
		return p.Clock
	}
	return p.Clock + math.Asin(p.Offset/w.Radius)
}

// clears returns an error for a tube beside the cylinder's radius that does not pass
// through the inside face all round.
func (p Port) clears(w Wall) error {
	if reach, most := math.Abs(p.Offset)+p.OutsideDiameter/2, w.Radius-w.Thickness/2; !(reach < most) {
		return fmt.Errorf("port %s: the tube reaches %.4g mm to the side of the axis, past the cylinder's inside radius of %.4g mm: write an offset of %.4g mm or less",
			p.Name, reach*1e3, most*1e3, math.Floor((most-p.OutsideDiameter/2)*1e4)/10)
	}
	return nil
}

// level returns how high the mid-surface of the cylinder stands over the plane of its
// axis [m] at y [m] beside it.
func (w Wall) level(y float64) float64 { return math.Sqrt(w.Radius*w.Radius - y*y) }

// sideways returns the chord in the transverse plane and its two parts from where the
// axis pierces the mid-surface, rising clock first [m], for a tube of radius a [m] at
// x0 beside the cylinder's radius:
//
//	2R sin{[acos((x0−a)/R) − acos((x0+a)/R)]/2}, parts √[a² + (g(x0) − g(x0±a))²]
//
// Source: intersection with the mid-surface, computed; ASME PTB-4 E4.5.2, recalled.
// Test: hillside_test.go.
func (p Port) sideways(w Wall, a float64) (chord float64, parts [2]float64) {
	if !p.hillside(w) {
		return 2 * a, [2]float64{a, a}
	}
	x, r := p.Offset, w.Radius
	chord = 2 * r * math.Sin((math.Acos((x-a)/r)-math.Acos((x+a)/r))/2)
	return chord, [2]float64{math.Hypot(a, w.level(x)-w.level(x+a)), math.Hypot(a, w.level(x-a)-w.level(x))}
}

// meanHillside integrates [Port.FilletFactor] of a tube beside the cylinder's radius: at
// ψ from the side away from it, y = x0 + a cos ψ, inside cos δ = (y/R) cos ψ.
func (p Port) meanHillside(w Wall, outside bool) float64 {
	a, x := p.OutsideDiameter/2, math.Abs(p.Offset)
	angle := func(ψ float64) float64 { // δ at ψ [rad]
		cos := (x + a*math.Cos(ψ)) / w.Radius * math.Cos(ψ)
		if outside {
			cos = -cos
		}
		return math.Acos(cos)
	}
	return meanOverRing(angle, func(ψ float64) float64 { return math.Hypot(a, p.hillsideRise(w, ψ)) }) / (math.Pi * a)
}

// hillsideRise returns dz/dψ [m/rad] along the outline, ψ [rad] from the side away from
// the radius.
func (p Port) hillsideRise(w Wall, ψ float64) float64 {
	a := p.OutsideDiameter / 2
	y := math.Abs(p.Offset) + a*math.Cos(ψ)
	return y * a * math.Sin(ψ) / w.level(y)
}

// hillsideCutOut is [Port.CutOut] of a tube beside the cylinder's radius: the area is
// ∬ dA/√(1 − y²/R²) over the circle.
func (p Port) hillsideCutOut(w Wall) (out CutOut) {
	const h = 2 * math.Pi / ringSteps
	a, x := p.OutsideDiameter/2, math.Abs(p.Offset)
	for i := range ringSteps {
		ψ := float64(i) * h
		out.Perimeter += math.Hypot(a, p.hillsideRise(w, ψ)) * h
		out.Area += h * integral(func(ρ float64) float64 { return ρ * w.Radius / w.level(x+ρ*math.Cos(ψ)) }, 0, a)
	}
	return out
}

// planes returns sin β, of the angle between tube and wall, in the meridional and in the
// transverse plane [-]: the obliquity lies in the one or in the other.
func (c Chords) planes() (meridional, transverse float64) {
	if c.Hillside {
		return 1, math.Cos(c.Obliquity)
	}
	return math.Cos(c.Obliquity), 1
}

// width returns the bore where the wall cuts it square [m].
func (c Chords) width() float64 {
	if c.Hillside {
		return c.Meridional
	}
	return c.Transverse
}

// largest returns the largest half outside chord of both planes [m].
func (c Chords) largest() float64 {
	return math.Max(math.Max(c.OutsideOutboard, c.OutsideInboard), math.Max(c.OutsideSides[0], c.OutsideSides[1]))
}

// boreAlong and outsideAlong return the chord [m] in a plane at w [rad] to the meridian.
// Beside the cylinder's radius it is the ellipse through both chords.
func (c Chords) boreAlong(w float64) float64 {
	if c.Hillside {
		return 1 / math.Hypot(math.Cos(w)/c.Meridional, math.Sin(w)/c.Transverse)
	}
	return along(c.Transverse, c.Obliquity, w)
}

func (c Chords) outsideAlong(w float64) float64 {
	if c.Hillside {
		return 1 / math.Hypot(math.Cos(w)/c.OutsideMeridional, math.Sin(w)/c.OutsideTransverse)
	}
	return along(c.OutsideTransverse, c.Obliquity, w)
}
