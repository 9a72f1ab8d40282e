package revolution

import (
	"fmt"
	"math"
)

// A Part is a named curve: a segment without its wall.
type Part struct {
	Name  string
	Curve Curve
}

// Heads are given as aft heads, tip first, with their seam at z = 0; every
// measure is one of the mid-surface.

// Hemisphere returns the head of a cylinder of radius [m].
func Hemisphere(radius float64) ([]Part, error) {
	if err := above("radius", radius); err != nil {
		return nil, err
	}
	return []Part{{"hemisphere", Arc(Point{}, radius, 0, π/2)}}, nil
}

// Ellipsoid returns the head of semi-axis a at its seam and depth b, both [m].
func Ellipsoid(a, b float64) ([]Part, error) {
	if err := above("radius", a); err != nil {
		return nil, err
	}
	if err := above("depth", b); err != nil {
		return nil, err
	}
	return []Part{{"ellipsoid", Ellipse{A: a, B: b, To: π / 2}}}, nil
}

// Torisphere returns the head of a cylinder of radius R with crown radius L and
// knuckle radius r, all [m]: crown and knuckle meet at sin φ₀ = (R − r)/(L − r).
func Torisphere(radius, crown, knuckle float64) ([]Part, error) {
	switch {
	case !(radius > 0 && crown > 0 && knuckle > 0) || !finite(radius, crown, knuckle):
		return nil, fmt.Errorf("a torisphere of radius %.4g m, crown %.4g m, knuckle %.4g m: each must be above 0", radius, crown, knuckle)
	case crown < radius:
		return nil, fmt.Errorf("a crown radius of %.4g m under half the diameter, %.4g m", crown, radius)
	case knuckle >= radius:
		return nil, fmt.Errorf("a knuckle radius of %.4g m is not below the cylinder's, %.4g m", knuckle, radius)
	}
	φ := math.Asin((radius - knuckle) / (crown - knuckle))
	return []Part{
		{"crown", Arc(Point{Z: (crown - knuckle) * math.Cos(φ)}, crown, 0, φ)},
		{"knuckle", Arc(Point{R: radius - knuckle}, knuckle, φ, π/2)},
	}, nil
}

// Cone returns the head of a cylinder of radius [m] with half apex angle [rad],
// cut off at the radius tip [m], 0 for none.
func Cone(radius, halfApex, tip float64) ([]Part, error) {
	return Toricone(radius, halfApex, 0, tip)
}

// Toricone returns the cone of Cone with a knuckle of radius r between it and
// the cylinder, all [m] and [rad].
func Toricone(radius, halfApex, knuckle, tip float64) ([]Part, error) {
	switch {
	case !finite(radius, halfApex, knuckle, tip) || !(radius > 0 && tip >= 0 && knuckle >= 0):
		return nil, fmt.Errorf("a cone of radius %.4g m, tip %.4g m, knuckle %.4g m: none may be below 0", radius, tip, knuckle)
	case !(halfApex > 0 && halfApex < π/2):
		return nil, fmt.Errorf("a half apex angle of %.4g rad must lie between 0 and a right angle", halfApex)
	case knuckle >= radius:
		return nil, fmt.Errorf("a knuckle radius of %.4g m is not below the cylinder's, %.4g m", knuckle, radius)
	}
	sin, cos := math.Sincos(halfApex)
	end := Point{R: radius - knuckle*(1-cos), Z: -knuckle * sin}
	if end.R <= tip {
		return nil, fmt.Errorf("the cone closes before its tip: it begins at radius %.4g m and its tip is to have %.4g m", end.R, tip)
	}
	parts := []Part{{"cone", Line{From: Point{R: tip, Z: end.Z - (end.R-tip)*cos/sin}, To: end}}}
	if knuckle > 0 {
		parts = append(parts, Part{"knuckle", Arc(Point{R: radius - knuckle}, knuckle, π/2-halfApex, π/2)})
	}
	return parts, nil
}

// Flat returns the flat head from a hole of radius [m], 0 for none, to the
// cylinder's radius [m].
func Flat(hole, radius float64) ([]Part, error) {
	if !(hole >= 0 && radius > hole) || !finite(hole, radius) {
		return nil, fmt.Errorf("a plate from %.4g m to %.4g m has no breadth", hole, radius)
	}
	return []Part{{"flat", Line{From: Point{R: hole}, To: Point{R: radius}}}}, nil
}

// Cylinder returns the cylinder of radius [m] from z [m] to z + length [m].
func Cylinder(radius, z, length float64) ([]Part, error) {
	if !(radius > 0 && length > 0) || !finite(radius, z, length) {
		return nil, fmt.Errorf("a cylinder of radius %.4g m and length %.4g m: both must be above 0", radius, length)
	}
	return []Part{{"cylinder", Line{From: Point{R: radius, Z: z}, To: Point{R: radius, Z: z + length}}}}, nil
}

// Inward turns an aft head inside out, in the plane of its seam.
func Inward(head []Part) []Part {
	out := make([]Part, len(head))
	for i, p := range head {
		out[i] = Part{p.Name, p.Curve.flipped()}
	}
	return out
}

// Forward makes the forward head of an aft one, its seam at z [m].
func Forward(head []Part, z float64) []Part {
	out := make([]Part, len(head))
	for i, p := range head {
		out[len(head)-1-i] = Part{p.Name, p.Curve.flipped().reversed().moved(z)}
	}
	return out
}

// Moved shifts parts along the axis by z [m].
func Moved(parts []Part, z float64) []Part {
	out := make([]Part, len(parts))
	for i, p := range parts {
		out[i] = Part{p.Name, p.Curve.moved(z)}
	}
	return out
}

func above(what string, x float64) error {
	if !(x > 0) || math.IsInf(x, 0) {
		return fmt.Errorf("a %s of %.4g m must be above 0", what, x)
	}
	return nil
}
