package heads

import "math"

// hemisphereTakes are the keys of the tank file that mean something to the shape.
var hemisphereTakes = []string{"depth", "straight_flange"}

var hemisphereShape = Shape{
	Name:  "hemisphere",
	Takes: hemisphereTakes,
	New:   newHemisphere,
}

// newHemisphere makes half a sphere of the diameter of the seam. A depth may be
// given and must then be half of it.
func newHemisphere(g Geometry) (Head, error) {
	if err := g.accept("hemisphere", hemisphereTakes); err != nil {
		return nil, err
	}
	r := g.InsideDiameter / 2
	if err := g.agree(r, "half the diameter"); err != nil {
		return nil, err
	}
	g.Depth = r
	return &meridian{"hemisphere", g, []piece{arc{called: "sphere", ρ: r, b: math.Pi / 2}}}, nil
}
