package revolution

import (
	"fmt"
	"math"
)

// A Point of the meridian plane.
type Point struct {
	R float64 // distance from the axis [m]
	Z float64 // along the axis, positive forward [m]
}

// A Curve is one smooth piece of a meridian of mid-surface, run through so that
// the inside of the vessel lies on its left: from the aft tip outwards, forward
// along the cylinder and inwards to the forward tip. It is a Line or an Ellipse
// (of which Arc is the round one).
type Curve interface {
	at(τ float64) frame // τ from 0 to 1
	fault() error
	flipped() Curve  // mirrored in the plane z = 0
	reversed() Curve // run through backwards
	moved(z float64) Curve
}

// A frame is the exact geometry of a meridian at one place: with s the length
// along it and γ the angle of the tangent, t = (cos γ, sin γ), the outward
// normal is n = (sin γ, −cos γ).
type frame struct {
	r, z   float64 // [m]
	tr, tz float64 // tangent
	k      float64 // dγ/ds, positive where the meridian bulges outwards [1/m]
	j, dj  float64 // ds/dτ and its derivative by τ [m]
}

// A Line is the meridian of a cylinder, a cone or an annular or full flat plate.
type Line struct{ From, To Point }

func (l Line) at(τ float64) frame {
	dr, dz := l.To.R-l.From.R, l.To.Z-l.From.Z
	j := math.Hypot(dr, dz)
	f := frame{r: l.From.R + τ*dr, z: l.From.Z + τ*dz, tr: dr / j, tz: dz / j, j: j}
	if τ == 1 {
		f.r, f.z = l.To.R, l.To.Z
	}
	return f
}

func (l Line) fault() error {
	switch {
	case !finite(l.From.R, l.From.Z, l.To.R, l.To.Z):
		return fmt.Errorf("a number of the line is not finite")
	case l.From == l.To:
		return fmt.Errorf("the line has no length")
	case l.From.R < 0 || l.To.R < 0:
		return fmt.Errorf("the line crosses the axis: a cone closes before its tip")
	case l.From.R == 0 && l.To.R == 0:
		return fmt.Errorf("the line lies on the axis")
	}
	return nil
}

func (l Line) flipped() Curve {
	l.From.Z, l.To.Z = -l.From.Z, -l.To.Z
	return l
}

func (l Line) reversed() Curve { return Line{From: l.To, To: l.From} }

func (l Line) moved(z float64) Curve {
	l.From.Z += z
	l.To.Z += z
	return l
}

// An Ellipse is a piece of an ellipse with one axis along the tank's:
//
//	r = r_c + a sin ψ, z = z_c − b cos ψ
//
// ψ grows from 0 at the aft pole over π/2 at the equator to π at the forward
// one; To below From runs it backwards, as in a head that bulges inwards.
// A centre on the axis gives an ellipsoid or sphere, off it a torus.
type Ellipse struct {
	Center   Point
	A        float64 // semi-axis across the tank's axis, a [m]
	B        float64 // semi-axis along the tank's axis, b [m]
	From, To float64 // ψ [rad]
}

// Arc is a round piece: centre, radius [m], ψ at both ends [rad].
func Arc(center Point, radius, from, to float64) Ellipse {
	return Ellipse{Center: center, A: radius, B: radius, From: from, To: to}
}

func (e Ellipse) at(τ float64) frame {
	ψ, dψ := e.From+τ*(e.To-e.From), e.To-e.From
	if τ == 1 {
		ψ = e.To
	}
	sin, cos := math.Sincos(ψ)
	switch ψ { // exact at the axis and the equator
	case math.Pi / 2:
		cos = 0
	case math.Pi:
		sin = 0
	}
	q := math.Hypot(e.A*cos, e.B*sin)
	way := 1.0
	if dψ < 0 {
		way = -1
	}
	return frame{
		r: e.Center.R + e.A*sin, z: e.Center.Z - e.B*cos,
		tr: way * e.A * cos / q, tz: way * e.B * sin / q,
		k: way * e.A * e.B / (q * q * q),
		j: q * math.Abs(dψ), dj: way * dψ * dψ * (e.B*e.B - e.A*e.A) * sin * cos / q,
	}
}

func (e Ellipse) fault() error {
	from, to := math.Min(e.From, e.To), math.Max(e.From, e.To)
	switch {
	case !finite(e.Center.R, e.Center.Z, e.A, e.B, e.From, e.To):
		return fmt.Errorf("a number of the arc is not finite")
	case !(e.A > 0 && e.B > 0):
		return fmt.Errorf("the radius of the arc must be above 0")
	case from == to:
		return fmt.Errorf("the arc has no length")
	case from < 0 || to > math.Pi && e.Center.R < e.A:
		return fmt.Errorf("the arc crosses the axis")
	case to-from > 2*math.Pi:
		return fmt.Errorf("the arc runs over itself")
	}
	for i := 0; i <= 64; i++ {
		if r := e.at(float64(i) / 64).r; r < -rounding*e.A || r <= 0 && i > 0 && i < 64 {
			return fmt.Errorf("the arc crosses the axis")
		}
	}
	return nil
}

func (e Ellipse) flipped() Curve {
	e.Center.Z = -e.Center.Z
	e.From, e.To = math.Pi-e.From, math.Pi-e.To
	return e
}

func (e Ellipse) reversed() Curve {
	e.From, e.To = e.To, e.From
	return e
}

func (e Ellipse) moved(z float64) Curve {
	e.Center.Z += z
	return e
}

// rounding is the relative distance below which two numbers are one [-].
const rounding = 1e-9

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
