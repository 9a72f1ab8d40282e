package port

import (
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/shell"
)

// OnHead returns the wall of a head whose geometry already holds the dimensions
// of the corroded inside face, with the least corroded wall t [m]: the mid-surface
// lies half a wall further from the contents.
func OnHead(h heads.Head, t float64) (Wall, error) {
	g := h.Geometry()
	half := t / 2
	if g.Inward { // the face inside the tank is the convex one
		half = -half
	}
	w := Wall{Thickness: t, Inward: g.Inward, Radius: g.InsideDiameter/2 + half}
	sin, cos := math.Sincos(g.HalfAngle)
	switch h.Kind() {
	case "hemisphere":
		w.Surface = Sphere
	case "ellipsoid":
		w.Surface, w.Depth = Ellipsoid, h.Depth()+half
	case "torisphere":
		w.Surface, w.Crown, w.Knuckle = Torisphere, g.CrownRadius+half, g.KnuckleRadius+half
	case "cone", "toricone":
		w.Surface, w.HalfApex = Cone, g.HalfAngle
		w.Radius = g.InsideDiameter/2 + half*cos
		if g.TipDiameter > 0 {
			w.Tip = g.TipDiameter/2 + half/cos // cut by the plane of the tip
		}
		if h.Kind() == "toricone" {
			w.Radius = g.InsideDiameter/2 + half
			w.Knuckle = g.KnuckleRadius + half
			w.Edge, w.KnuckleAtEdge = g.InsideDiameter/2-g.KnuckleRadius+(g.KnuckleRadius+half)*cos, true
		}
		if !(sin > 0 && cos > 0) {
			return w, fmt.Errorf("a %s with half angle %.4g deg has no wall for a port", h.Kind(), g.HalfAngle*180/math.Pi)
		}
	case "flat":
		w.Surface, w.Radius = Flat, g.InsideDiameter/2
	default:
		return w, fmt.Errorf("ports on a %s are not covered", h.Kind())
	}
	return w, w.valid()
}

// OnCylinder returns the wall of the cylinder.
func OnCylinder(c shell.Cylinder) (Wall, error) {
	w := Wall{Surface: Cylinder, Thickness: c.Thickness, Radius: c.InsideRadius + c.Thickness/2, Length: c.Length}
	return w, w.valid()
}
