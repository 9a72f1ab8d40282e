package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/buckling"
)

// checkHeadStability makes the stability checks of a head in one state: pressure
// on its convex side and, of a cone, loads along its wall.
func (m *model) checkHeadStability(h *headPart, s *loads.State, c *loadCase) []check.Result {
	out := []check.Result{m.checkHeadExternal(h, s, c)}
	if h.in.Shape == "cone" || h.in.Shape == "toricone" {
		out = append(out, m.checkConeCompression(h, s, c))
	}
	return out
}

// checkHeadExternal holds a head with the pressure on its convex side: from
// outside the tank, or from inside on a head that bulges inward.
func (m *model) checkHeadExternal(h *headPart, s *loads.State, c *loadCase) check.Result {
	id, title := h.name+"/external", h.title+": external pressure"
	p := c.outside()
	if h.in.Bulge == "inward" && h.in.Shape != "flat" {
		if p = m.onConvex(h, s); p <= 0 {
			return check.NotApplicableTo(id, title, "the head bulges inward, and the pressure inside the tank, on its convex side, is never above the pressure outside in this case")
		}
		return m.outsideHead(h, c, p)
	}
	switch {
	case p <= 0:
		return check.NotApplicableTo(id, title, c.never())
	case h.in.Shape == "flat" && p <= m.t.Pressure.MEOP:
		return check.NotApplicableTo(id, title, fmt.Sprintf("a flat head does not buckle: it bends alike from either side, and %s/thickness holds it at more pressure in meop", h.name))
	case h.in.Shape == "flat":
		return check.NotMade(id, title, fmt.Errorf("a flat head bends alike from either side, and %.4g bar from outside is more than meop holds it for: raise pressure.meop", p/1e5))
	}
	return m.outsideHead(h, c, p)
}

// outsideHead holds a head under the pressure p [Pa] on its convex side.
func (m *model) outsideHead(h *headPart, c *loadCase, p float64) check.Result {
	f, factorErr := m.factors(c.rule)
	metal, metalErr := m.stableMetal(&h.part, c.temperature)
	shape, shapeErr := h.buckles()
	if err := errors.Join(factorErr, metalErr, shapeErr); err != nil {
		return check.NotMade(h.name+"/external", h.title+": external pressure", err)
	}
	r := buckling.CheckHeadExternal(h.name, h.title, shape, metal, p, f.BucklingFactor)
	if h.in.Bulge == "inward" && r.Err == nil {
		r.Note += " The pressure is the tank's own, liquid included, on the convex side of an inward head."
	}
	return r
}

// buckles returns the head as the stability checks want it, corroded. The given
// face of an inward head is the convex one, its wall lies on the other side.
func (h *headPart) buckles() (buckling.HeadShape, error) {
	g, in := h.strength.Geometry(), 0.0
	if g.Inward {
		in = h.least
	}
	switch h.in.Shape {
	case "hemisphere":
		return buckling.NewHemisphere(g.InsideDiameter/2-in, h.least), nil
	case "ellipsoid":
		return buckling.NewEllipsoid(g.InsideDiameter/2-in, h.strength.Depth()-in, h.least), nil
	case "torisphere":
		return buckling.NewTorisphere(g.CrownRadius-in, h.least), nil
	case "cone", "toricone":
		return h.cone(), nil
	}
	return nil, fmt.Errorf("no method for a head of shape %s under pressure on its convex side is at hand", h.in.Shape)
}

// cone returns a conical head from its tip to the cylinder; the knuckle of a
// toricone counts as cone, which makes it longer.
func (h *headPart) cone() buckling.Cone {
	g := h.strength.Geometry()
	out := h.toMid()
	c := buckling.Cone{HalfAngle: g.HalfAngle, LargeRadius: g.InsideDiameter/2 + out, Thickness: h.least}
	if g.TipDiameter > 0 {
		c.SmallRadius = g.TipDiameter/2 + out
	}
	return c
}

// toMid returns how much farther from the axis the mid-wall of a cone lies than
// its given face, square to the wall at its edge [m].
func (h *headPart) toMid() float64 {
	g := h.strength.Geometry()
	out := h.least * math.Cos(g.HalfAngle) / 2
	if g.Inward {
		return -out
	}
	return out
}
