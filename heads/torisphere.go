package heads

import (
	"fmt"
	"math"
)

// torisphereTakes are the keys of the tank file that mean something to the shape.
var torisphereTakes = []string{"crown_radius", "knuckle_radius", "depth", "straight_flange"}

var torisphereShape = Shape{
	Name:     "torisphere",
	Takes:    torisphereTakes,
	Requires: [][]string{{"crown_radius"}, {"knuckle_radius"}},
	New:      newTorisphere,
}

// newTorisphere makes a spherical crown of inside radius L that runs tangent
// into a knuckle of inside radius r, tangent to the cylinder. Crown meets
// knuckle at φ0 from the axis:
//
//	sin φ0 = (D/2 − r)/(L − r)    h = L − sqrt((L − r)² − (D/2 − r)²)
//
// Source: geometry; the depth is checked against D. Jones's printed values.
func newTorisphere(g Geometry) (Head, error) {
	if err := g.accept("torisphere", torisphereTakes); err != nil {
		return nil, err
	}
	R, L, r := g.InsideDiameter/2, g.CrownRadius, g.KnuckleRadius
	switch {
	case L == 0:
		return nil, missing("torisphere", "crown_radius")
	case r == 0:
		return nil, missing("torisphere", "knuckle_radius")
	case L < R:
		return nil, fmt.Errorf("crown_radius %.5g m is under half the inside diameter (%.5g m): such a crown does not reach the cylinder", L, R)
	case r > R:
		return nil, fmt.Errorf("knuckle_radius %.5g m is larger than the cylinder's radius %.5g m", r, R)
	case r >= L:
		return nil, fmt.Errorf("knuckle_radius %.5g m must be smaller than the crown_radius %.5g m", r, L)
	}
	φ0 := math.Asin((R - r) / (L - r))
	depth := L - math.Sqrt((L-R)*(L+R-2*r)) // (L−r)² − (R−r)², factored
	if err := g.agree(depth, "crown and knuckle radius"); err != nil {
		return nil, err
	}
	g.Depth = depth
	return &meridian{"torisphere", g, []piece{
		arc{called: "crown", x0: depth - L, ρ: L, b: φ0},
		arc{called: "knuckle", r0: R - r, ρ: r, a: φ0, b: math.Pi / 2},
	}}, nil
}
