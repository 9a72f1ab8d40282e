package heads

import (
	"fmt"
	"math"
)

// coneTakes are the keys of the tank file that mean something to the shape.
var coneTakes = []string{"half_angle", "depth", "tip"}

var coneShape = Shape{
	Name:     "cone",
	Takes:    coneTakes,
	Requires: [][]string{{"half_angle", "depth"}},
	vessel:   coneVessel, european: coneEuropean,
	New: newCone,
}

// newCone makes a cone that meets the cylinder at a corner. Without a tip it
// runs to its apex, with one it ends there:
//
//	h = (D − d_tip)/(2 tan α)
//
// α is the half apex angle, from the wall to the tank axis.
func newCone(g Geometry) (Head, error) {
	if err := g.accept("cone", coneTakes); err != nil {
		return nil, err
	}
	R, tip := g.InsideDiameter/2, g.TipDiameter/2
	if g.HalfAngle == 0 && g.Depth == 0 {
		return nil, missing("cone", "half_angle or depth")
	}
	if tip >= R {
		return nil, fmt.Errorf("tip: its diameter %.5g m must be smaller than the cylinder's %.5g m", g.TipDiameter, g.InsideDiameter)
	}
	if g.HalfAngle == 0 {
		g.HalfAngle = math.Atan((R - tip) / g.Depth)
	}
	depth := (R - tip) / math.Tan(g.HalfAngle)
	if apex := R / math.Tan(g.HalfAngle); g.Depth > apex+agreement*g.InsideDiameter {
		return nil, fmt.Errorf("the cone closes at %.5g m, before its depth of %.5g m", apex, g.Depth)
	}
	if err := g.agree(depth, fmt.Sprintf("half_angle %.4g deg", g.HalfAngle*180/math.Pi)); err != nil {
		return nil, err
	}
	g.Depth = depth
	return &meridian{kind: "cone", g: g, pieces: []piece{line{x1: depth, r1: tip, r2: R, α: g.HalfAngle}}}, nil
}

// coneVessel and coneEuropean are the plain cone at the cylinder's diameter.
func coneVessel(r rule) ([]term, error)   { return r.conicalVessel(r.g.InsideDiameter) }
func coneEuropean(r rule) ([]term, error) { return r.conicalEuropean(r.g.InsideDiameter) }
