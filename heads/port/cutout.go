package port

import (
	"fmt"
	"math"
)

const ringSteps = 720 // the integrands are smooth and periodic: the trapezium rule is exact to rounding

// A CutOut is the true outline of a tube's outside diameter on the mid-surface.
type CutOut struct {
	Perimeter float64 // [m]
	Area      float64 // of wall removed [m2]
}

// point returns the outline at ψ [rad] round the tube, 0 outboard, for a
// parallel tube: distance r from the tank axis [m] and θ, the angle round it
// from the tube's own meridian [rad].
func (p Port) point(a, ψ float64) (r, θ float64) {
	x, y := p.Radius+a*math.Cos(ψ), a*math.Sin(ψ)
	return math.Hypot(x, y), math.Atan2(y, x)
}

// CutOut returns perimeter and area of the hole:
//
//	perimeter = ∮ √(a² + (dz/dψ)²) dψ,  area = ∬ √(1 + g′²) dA over the circle
//
// with z = g(r) along the outline, a the outside radius; on a cone the area is
// πa²/sin α. A tube normal to the wall is taken as in a flat wall.
//
// Source: computed; identities in cutout_test.go.
func (p Port) CutOut(w Wall) (CutOut, error) {
	if _, err := p.Chords(w); err != nil {
		return CutOut{math.NaN(), math.NaN()}, err
	}
	if p.hillside(w) {
		return p.hillsideCutOut(w), nil
	}
	a := p.OutsideDiameter / 2
	if !p.Parallel {
		return CutOut{2 * math.Pi * a, math.Pi * a * a}, nil
	}
	const h = 2 * math.Pi / ringSteps
	var out CutOut
	for i := range ringSteps {
		ψ := float64(i) * h
		out.Perimeter += math.Hypot(a, p.rise(w, a, ψ)) * h
		// ∫ ρ/cos φ dρ from the tube axis to the outline, in this direction.
		out.Area += h * integral(func(ρ float64) float64 {
			r, _ := p.point(ρ, ψ)
			return ρ / math.Cos(w.normalAngle(r))
		}, 0, a)
	}
	return out, nil
}

// rise returns dz/dψ [m/rad] along the outline of radius a [m]: the slope
// −tan φ times dr/dψ = −e a sin ψ/r.
func (p Port) rise(w Wall, a, ψ float64) float64 {
	r, _ := p.point(a, ψ)
	if r == 0 { // not reached: sin π rounds to more than zero, so that no point lies on the axis
		return 0
	}
	return math.Tan(w.normalAngle(r)) * p.Radius * a * math.Sin(ψ) / r
}

// Flat returns the point of the cone's flat blank [m] that the outline of a tube
// of outside radius a reaches at ψ [rad]: u outboard along the generator through
// the port, v across it:
//
//	u = s cos ω − e/sin α,  v = s sin ω,  s = r/sin α, ω = θ sin α
//
// Only a cone can be laid flat; for other walls the error says so.
//
// Source: unrolling of the mid-surface, computed; table in cutout_test.go.
func (p Port) Flat(w Wall, ψ float64) (u, v float64, err error) {
	if w.Surface != Cone || !p.Parallel {
		return math.NaN(), math.NaN(), fmt.Errorf("port %s: only a cone with a tube parallel to its axis has a flat template here", p.Name)
	}
	if _, err := p.Chords(w); err != nil {
		return math.NaN(), math.NaN(), err
	}
	r, θ := p.point(p.OutsideDiameter/2, ψ)
	sin := math.Sin(w.HalfApex)
	s, ω := r/sin, θ*sin
	return s*math.Cos(ω) - p.Radius/sin, s * math.Sin(ω), nil
}

// TubeEnd returns how far the wall's mid-surface lies at ψ [rad] below its
// nearest point to the apex at ψ = 180° [m]: the height of the tube's end
// template, along the tube. Beside the cylinder's radius ψ is 0 on the side away from it.
//
// Source: z = g(r), computed; table in cutout_test.go.
func (p Port) TubeEnd(w Wall, ψ float64) (float64, error) {
	if _, err := p.Chords(w); err != nil {
		return math.NaN(), err
	}
	if p.hillside(w) {
		x, a := math.Abs(p.Offset), p.OutsideDiameter/2
		return w.level(x-a) - w.level(x+a*math.Cos(ψ)), nil
	}
	if !p.Parallel {
		return math.NaN(), fmt.Errorf("port %s: no end template for a tube normal to the wall", p.Name)
	}
	a := p.OutsideDiameter / 2
	near, _ := p.point(a, math.Pi)
	r, _ := p.point(a, ψ)
	return w.height(near) - w.height(r), nil
}
