package tank

// NominalInsideDiameter returns the cylinder's inside diameter as drawn [m].
func (c Cylinder) NominalInsideDiameter() float64 {
	switch {
	case c.InsideDiameter != nil:
		return *c.InsideDiameter
	case c.OutsideDiameter != nil:
		return *c.OutsideDiameter - 2*c.Thickness
	}
	return 0
}

// Wall returns the cylinder's wall for strength and stability [m]: nominal less
// under-tolerance, or measured, less corrosion.
func (c Cylinder) Wall() float64 {
	return leastWall(c.Thickness, c.UnderTolerance, c.LeastThickness, nil, c.Corrosion)
}

// Wall returns the head's wall for strength and stability [m]: nominal less
// under-tolerance and thinning, or measured, less corrosion.
func (h Head) Wall() float64 {
	return leastWall(h.Thickness, h.UnderTolerance, h.LeastThickness, h.FormingThinning, h.Corrosion)
}

// leastWall returns (t − tolerance)(1 − thinning) − corrosion, or the measured
// wall − corrosion [m].
func leastWall(t float64, tolerance, measured, thinning *float64, corrosion float64) float64 {
	if measured != nil {
		return *measured - corrosion
	}
	if tolerance != nil {
		t -= *tolerance
	}
	if thinning != nil {
		t *= 1 - *thinning
	}
	return t - corrosion
}

// SeamInsideDiameter returns the nominal inside diameter of a head at its seam
// [m]: walls of different thickness line up there as the head's align says.
func (t *Tank) SeamInsideDiameter(h Head) float64 {
	inside, wall := t.Cylinder.NominalInsideDiameter(), t.Cylinder.Thickness
	switch h.Align {
	case "outside":
		return inside + 2*wall - 2*h.Thickness
	case "middle":
		return inside + wall - h.Thickness
	}
	return inside
}
