package heads

import "fmt"

// ellipsoidTakes are the keys of the tank file that mean something to the shape.
var ellipsoidTakes = []string{"aspect", "depth", "straight_flange"}

var ellipsoidShape = Shape{
	Name:     "ellipsoid",
	Takes:    ellipsoidTakes,
	Requires: [][]string{{"aspect", "depth"}},
	New:      newEllipsoid,
}

// newEllipsoid makes half an ellipsoid of revolution, aspect D/(2h) of one or
// more: a deeper one has its sharpest curvature at the apex and is no head of
// the trade.
func newEllipsoid(g Geometry) (Head, error) {
	if err := g.accept("ellipsoid", ellipsoidTakes); err != nil {
		return nil, err
	}
	switch {
	case g.Aspect == 0 && g.Depth == 0:
		return nil, missing("ellipsoid", "aspect or depth")
	case g.Aspect == 0:
		g.Aspect = g.InsideDiameter / (2 * g.Depth)
	default:
		depth := g.InsideDiameter / (2 * g.Aspect)
		if err := g.agree(depth, fmt.Sprintf("aspect %.4g", g.Aspect)); err != nil {
			return nil, err
		}
		g.Depth = depth
	}
	if g.Aspect < 1-rounding {
		return nil, fmt.Errorf("aspect D/2h is %.4g, must be 1 or more: the head is deeper than a hemisphere", g.Aspect)
	}
	return &meridian{"ellipsoid", g, []piece{ellipse{a: g.InsideDiameter / 2, b: g.Depth}}}, nil
}
