package heads

import (
	"fmt"
	"math"
)

// toriconeTakes are the keys of the tank file that mean something to the shape.
var toriconeTakes = []string{"half_angle", "depth", "knuckle_radius", "tip", "straight_flange"}

var toriconeShape = Shape{
	Name:     "toricone",
	Takes:    toriconeTakes,
	Requires: [][]string{{"half_angle", "depth"}, {"knuckle_radius"}},
	New:      newToricone,
}

// newToricone makes a cone that runs tangent into a knuckle of inside radius r,
// tangent to the cylinder. Knuckle and cone meet at x = r sin α, radius
// R − r (1 − cos α), and
//
//	h = r sin α + [R − r (1 − cos α) − d_tip/2]/tan α
func newToricone(g Geometry) (Head, error) {
	if err := g.accept("toricone", toriconeTakes); err != nil {
		return nil, err
	}
	R, r, tip := g.InsideDiameter/2, g.KnuckleRadius, g.TipDiameter/2
	switch {
	case r == 0:
		return nil, missing("toricone", "knuckle_radius")
	case g.HalfAngle == 0 && g.Depth == 0:
		return nil, missing("toricone", "half_angle or depth")
	case r > R:
		return nil, fmt.Errorf("knuckle_radius %.5g m is larger than the cylinder's radius %.5g m", r, R)
	case tip >= R:
		return nil, fmt.Errorf("tip: its diameter %.5g m must be smaller than the cylinder's %.5g m", g.TipDiameter, g.InsideDiameter)
	}
	if g.HalfAngle == 0 {
		α, err := toriconeAngle(R, r, tip, g.Depth)
		if err != nil {
			return nil, err
		}
		g.HalfAngle = α
	}
	α := g.HalfAngle
	joint := R - r*(1-math.Cos(α))
	if joint <= tip {
		return nil, fmt.Errorf("the knuckle of radius %.5g m ends at radius %.5g m, inside the tip: no cone is left", r, joint)
	}
	depth := toriconeDepth(R, r, tip, α)
	if apex := toriconeDepth(R, r, 0, α); g.Depth > apex+agreement*g.InsideDiameter {
		return nil, fmt.Errorf("the cone closes at %.5g m, before its depth of %.5g m", apex, g.Depth)
	}
	if err := g.agree(depth, fmt.Sprintf("half_angle %.4g deg", α*180/math.Pi)); err != nil {
		return nil, err
	}
	g.Depth = depth
	return &meridian{"toricone", g, []piece{
		line{x1: depth, r1: tip, x2: r * math.Sin(α), r2: joint, α: α, tangent: true},
		arc{called: "knuckle", r0: R - r, ρ: r, a: math.Pi/2 - α, b: math.Pi / 2},
	}}, nil
}

// toriconeDepth is the depth [m] of cylinder radius R, knuckle r and tip radius
// tip [m] at half angle α [rad].
func toriconeDepth(R, r, tip, α float64) float64 {
	return r*math.Sin(α) + (R-r*(1-math.Cos(α))-tip)/math.Tan(α)
}

// toriconeAngle solves toriconeDepth for α [rad], all lengths in [m]. The depth falls with α, from
// no bound at 0 down to where the cone between knuckle and tip vanishes.
func toriconeAngle(R, r, tip, depth float64) (float64, error) {
	hi := math.Pi / 2
	if tip > R-r {
		hi = math.Acos((tip - (R - r)) / r)
	}
	if least := toriconeDepth(R, r, tip, hi); depth <= least {
		return math.NaN(), fmt.Errorf("depth %.5g m is too shallow for a knuckle_radius of %.5g m: it must be above %.5g m", depth, r, least)
	}
	lo := 0.0
	for range 200 {
		mid := lo + (hi-lo)/2
		if toriconeDepth(R, r, tip, mid) > depth {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2, nil
}
