package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// checkCorners holds the corners of a cone to the rule of the case: at its joint to
// the cylinder, and at its tip to the tube or neck there. Neither shows a corner safe:
// head.X/junction and head.X/tip-junction decide.
func (m *model) checkCorners(h *headPart, s *loads.State, c *loadCase) (out []check.Result) {
	if h.in.Shape == "cone" {
		out = append(out, m.checkCorner(h, s, c, false))
	}
	if h.in.Tip != nil {
		out = append(out, m.checkCorner(h, s, c, true))
	}
	return out
}

// checkCorner makes the check of one corner.
func (m *model) checkCorner(h *headPart, s *loads.State, c *loadCase, small bool) check.Result {
	id, title, stress := h.name+"/corner", h.title+": corner to the cylinder by the rule", h.name+"/junction"
	if small {
		id, title, stress = h.name+"/tip-corner", h.title+": corner at the tip by the rule", h.name+"/tip-junction"
	}
	of := m.largeCorner
	if small {
		of = m.smallCorner
	}
	switch x, err := of(h, s, c); {
	case c.rule == material.Flight:
		return check.NotApplicableTo(id, title, "the flight rule set has no rule for a corner; "+stress+" decides")
	case h.in.Bulge == "inward":
		return check.NotApplicableTo(id, title, "the rule is for pressure on the concave side; "+stress+" decides")
	case small && h.in.Tip.Close == "plate":
		return check.NotApplicableTo(id, title, "a plate closes the tip, not a cylinder; "+h.name+"/tip and "+stress+" decide")
	case err != nil:
		return check.NotMade(id, title, err)
	case x.Pressure < 0:
		return check.NotApplicableTo(id, title, "the rule is for pressure from inside; "+stress+" and "+h.name+"/external decide")
	case c.rule == material.VesselEU:
		r := x.CheckEuropean(h.end)
		if r.Err == nil && !small {
			r.Note += "; what liquid and line loads pull at the corner counts as pressure, 2 N/R"
		}
		return r
	default:
		return x.Check(h.end)
	}
}

// largeCorner is the corner of a cone at the cylinder. The axial force is that of
// the cone, gas, liquid and the pull of line loads.
func (m *model) largeCorner(h *headPart, s *loads.State, c *loadCase) (heads.Corner, error) {
	l := m.jointLimits(h, c)
	seams, a, err := m.headSeams(h, c)
	longSeams, _, longErr, _ := m.cylinderSeams(c)
	e, _, elasticErr := m.elastic(m.cyl, c.temperature)
	if err = errors.Join(l.err, err, longErr, elasticErr); err != nil {
		return heads.Corner{}, err
	}
	g := h.strength.Geometry()
	x := heads.Corner{HalfAngle: g.HalfAngle, Radius: m.cyl.corroded(), ShellWall: m.cyl.least, ConeWall: h.least,
		ShellFree: m.t.Cylinder.Length / 2, ConeFree: slant(g, g.InsideDiameter), Efficiency: longSeams.Long, Modulus: e,
		S: math.Min(l.parent[0].S, l.zone[0].S), AddedE: e}
	x.AddedS = x.S
	if c.rule == material.VesselEU {
		x.S = math.Min(x.S, math.Min(l.parent[1].S, l.zone[1].S))
	}
	x.Pressure = m.headPressure(h, s, 0)
	load := m.headLoading(h, s, c)
	at := m.cyl.mid()
	pull := math.Max(0, load.LoadMost(0)) + load.Force(0, at)/(2*math.Pi*at) - x.Pressure*at/2
	if c.rule == material.VesselEU { // which knows no line load: p_eff = 2 N_x/R, where it is more
		x.Pressure += 2 * math.Max(0, pull) / at
	} else {
		x.LineLoad = pull
	}
	if x.Pressure < 0 {
		return x, nil
	}
	if x.Added, err = m.addedAt(h, x); err != nil {
		return x, err
	}
	cyl := shell.Cylinder{InsideRadius: x.Radius, Thickness: x.ShellWall, Length: m.t.Cylinder.Length}
	if c.rule == material.VesselEU {
		x.ShellNeed, err = cyl.RequiredThicknessHoopEU(x.Pressure, x.S, longSeams.Long)
	} else {
		x.ShellNeed, err = cyl.RequiredThicknessHoop(x.Pressure, x.S, longSeams.Long)
	}
	if err != nil {
		return x, err
	}
	x.ConeNeed, _, _, err = heads.RequiredThickness(h.nominal0, c.rule, x.Pressure, math.Min(a.Parent.S, a.SeamSegment.S), seams.Segment, seams.Girth,
		heads.RuleOptions{Wall: heads.Wall{Thickness: h.least, Corrosion: h.corrosion}})
	return x, err
}

// addedAt returns the metal added at the corner of a head that counts there [m2]:
// a ring, or the thicker wall of the seam beyond the thicker of both walls, half of
// it on each side.
func (m *model) addedAt(h *headPart, x heads.Corner) (float64, error) {
	switch {
	case h.in.Ring != nil:
		return heads.AddedArea(h.in.Ring.Width, h.in.Ring.Thickness, 0, x.Radius, x.ShellWall)
	case h.in.SeamThickness != nil && h.in.SeamWidth != nil:
		strip := *h.in.SeamThickness - (m.cyl.nominal - m.cyl.least)
		return heads.AddedArea(*h.in.SeamWidth, math.Max(0, strip-math.Max(x.ShellWall, x.ConeWall)), 0, x.Radius, x.ShellWall)
	}
	return 0, nil
}

// slant returns the length of a cone along its wall, from the diameter where its
// plain part begins to its tip [m].
func slant(g heads.Geometry, from float64) float64 {
	if g.KnuckleRadius > 0 {
		from -= 2 * g.KnuckleRadius * (1 - math.Cos(g.HalfAngle))
	}
	return (from - g.TipDiameter) / (2 * math.Sin(g.HalfAngle))
}

// smallCorner is the corner of a cone at the tube or neck of its tip, whose metal
// and weld it takes.
func (m *model) smallCorner(h *headPart, s *loads.State, c *loadCase) (heads.Corner, error) {
	if h.in.Tip.Close == "plate" {
		return heads.Corner{}, nil
	}
	n, err := m.neckOf(h, c)
	l := m.tipLimits(h, c)
	seams, a, seamErr := m.headSeams(h, c)
	if err = errors.Join(err, l.err, seamErr); err != nil {
		return heads.Corner{}, err
	}
	g := h.strength.Geometry()
	tip := g.TipDiameter
	x := heads.Corner{Small: true, HalfAngle: g.HalfAngle, Radius: n.inside, ShellWall: n.part.least, ConeWall: h.least,
		ShellFree: n.length, ConeFree: slant(g, g.InsideDiameter), Efficiency: n.long, Pressure: m.worstAt(s, m.station(h, h.nominal0.Depth())),
		S: math.Min(l.parent[0].S, l.zone[0].S)}
	if c.rule == material.VesselEU {
		x.S = math.Min(x.S, math.Min(l.parent[1].S, l.zone[1].S))
		x.Efficiency = math.Min(x.Efficiency, n.girth)
	}
	if x.Pressure < 0 {
		return x, nil
	}
	if math.Abs(2*n.inside-tip) > 2*h.least {
		return x, fmt.Errorf("the tube's bore of %.4g mm does not meet the tip of %.4g mm", 2e3*n.inside, 1e3*tip)
	}
	cyl := shell.Cylinder{InsideRadius: n.inside, Thickness: n.part.least, Length: n.length}
	if c.rule == material.VesselEU {
		x.ShellNeed, err = cyl.RequiredThicknessHoopEU(x.Pressure, x.S, n.long)
	} else {
		x.ShellNeed, err = cyl.RequiredThicknessHoop(x.Pressure, x.S, n.long)
	}
	if err != nil {
		return x, err
	}
	shape, _ := heads.FindShape("cone")
	small, err := shape.New(heads.Geometry{InsideDiameter: tip, HalfAngle: g.HalfAngle, Thickness: h.nominal})
	if err != nil {
		return x, err
	}
	x.ConeNeed, _, _, err = heads.RequiredThickness(small, c.rule, x.Pressure, math.Min(a.Parent.S, a.SeamSegment.S), seams.Segment, 1,
		heads.RuleOptions{Wall: heads.Wall{Thickness: h.least}})
	return x, err
}
