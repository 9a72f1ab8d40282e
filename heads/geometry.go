package heads

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// agreement is the largest difference, as a part of the diameter [-], at which two
// given dimensions that fix each other still agree: drawings are rounded.
const agreement = 1e-3

// accept refuses a geometry whose numbers are not numbers, not positive, or
// mean nothing to the shape; nothing given is passed over.
func (g Geometry) accept(shape string, takes []string) error {
	var faults []error
	fault := func(format string, a ...any) { faults = append(faults, fmt.Errorf(format, a...)) }
	if !(g.InsideDiameter > 0) || math.IsInf(g.InsideDiameter, 1) {
		fault("inside diameter must be greater than zero")
	}
	if !(g.Thickness > 0) || math.IsInf(g.Thickness, 1) {
		fault("thickness must be greater than zero")
	}
	if !(g.StraightFlange >= 0) || math.IsInf(g.StraightFlange, 1) {
		fault("straight_flange must not be negative")
	}
	for _, d := range g.dimensions() {
		switch {
		case d.value == 0:
		case !(d.value > 0) || math.IsInf(d.value, 1):
			fault("%s must be greater than zero", d.key)
		case !slices.Contains(takes, d.key):
			fault("%s: a %s has none", d.key, shape)
		}
	}
	if g.StraightFlange > 0 && !slices.Contains(takes, "straight_flange") {
		fault("straight_flange: a %s has none", shape)
	}
	if g.HalfAngle >= math.Pi/2 {
		fault("half_angle %.4g deg must be below 90 deg; from the wall to the tank axis", g.HalfAngle*180/math.Pi)
	}
	return errors.Join(faults...)
}

type dimension struct {
	key   string
	value float64 // [m, rad or -]
}

func (g Geometry) dimensions() []dimension {
	return []dimension{
		{"depth", g.Depth}, {"half_angle", g.HalfAngle}, {"aspect", g.Aspect},
		{"crown_radius", g.CrownRadius}, {"knuckle_radius", g.KnuckleRadius}, {"tip", g.TipDiameter},
	}
}

// agree refuses a depth that differs from the one the other dimensions give.
func (g Geometry) agree(depth float64, from string) error {
	if g.Depth == 0 || math.Abs(g.Depth-depth) <= agreement*g.InsideDiameter {
		return nil
	}
	return fmt.Errorf("depth %.5g m and %s disagree: that gives %.5g m; leave one out", g.Depth, from, depth)
}

// missing says which key of a shape was not given.
func missing(shape, keys string) error { return fmt.Errorf("a %s needs %s", shape, keys) }

// Corroded returns the head after its inside face has lost c [m]: diameter,
// depth and radii as the parallel surface has them, half angle and nominal
// outside unchanged. An inward head loses on its convex face and shrinks.
//
// Source: PTB-4 adds twice the allowance to the diameter of a cone (recalled).
func Corroded(h Head, c float64) (Head, error) {
	if c == 0 {
		return h, nil
	}
	g := h.Geometry()
	if !(c > 0 && c < g.Thickness) {
		return nil, fmt.Errorf("corrosion %.4g m must lie between zero and the wall", c)
	}
	g.Thickness -= c
	if g.Inward {
		c = -c
	}
	shift := func(v float64) float64 {
		if v == 0 {
			return 0
		}
		return v + c
	}
	g.InsideDiameter += 2 * c
	g.CrownRadius, g.KnuckleRadius = shift(g.CrownRadius), shift(g.KnuckleRadius)
	if g.TipDiameter > 0 {
		g.TipDiameter += 2 * c
	}
	switch h.Kind() {
	case "cone", "toricone", "torisphere":
		g.Depth = 0 // follows from the rest
	case "flat":
	default:
		g.Depth, g.Aspect = g.Depth+c, 0
	}
	s, _ := FindShape(h.Kind())
	return s.New(g)
}
