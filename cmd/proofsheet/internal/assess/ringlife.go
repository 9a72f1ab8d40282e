package assess

import (
	"math"

	"proofsheet/loads"
	"proofsheet/shell/edge"
	"proofsheet/shell/life"
)

// lifeRings are the welds of the rings of the cylinder: their fillets on the wall, and
// the splice of the bar, of which nothing is stated.
func (m *model) lifeRings() []lifeWeld {
	q := m.t.Cylinder.Rings
	if q == nil {
		return nil
	}
	bar := &part{name: "cylinder", title: "ring", material: q.Material, nominal: q.Width, least: q.Width}
	return []lifeWeld{
		{where: "rings on the cylinder", parts: []*part{m.cyl}, local: "closed form of a narrow ring", err: m.ringsFit(),
			class:  func() (life.Class, error) { return life.RingClass(m.familyOf(m.cyl.material)) },
			stress: func(s *loads.State, c *loadCase) (span, error) { return m.spanAtRing(s, c, meridional) }},
		{where: "splice of a ring", parts: []*part{bar}, local: "closed form of a narrow ring", err: m.ringsFit(),
			class:  func() (life.Class, error) { return life.ClassOf("single butt", m.familyOf(q.Material), false, false) },
			stress: m.spanOfBar},
	}
}

// spanAtRing returns the extremes of a stress in the wall at a ring, both faces, line loads
// there or not.
func (m *model) spanAtRing(s *loads.State, c *loadCase, d direction) (span, error) {
	j, err := m.ringJoint(s, c)
	return ringSpan(j, "wall at a ring", c, d), err
}

// spanOfBar returns the extremes of the stress along the bar of a ring.
func (m *model) spanOfBar(s *loads.State, c *loadCase) (span, error) {
	j, err := m.ringJoint(s, c)
	return ringSpan(j, "ring", c, meridional), err
}

// ringSpan gathers the extremes over the places of a name.
func ringSpan(j edge.Junction, where string, c *loadCase, d direction) (out span) {
	for _, p := range j.Numerical.Places {
		if p.Where != where {
			continue
		}
		for _, l := range [3]edge.Stress{{}, p.LoadMost, p.LoadLeast} {
			out = out.with(spanOf(p.Pressure, l, l, c, d))
		}
	}
	return out
}

// crackedAtRing raises the local stress of the cylinder's wall to that at a ring; bend
// is the bending of misalignment over the membrane [-].
func (m *model) crackedAtRing(w *life.Wall, s *loads.State, c *loadCase, bend float64) error {
	across, err := m.spanAtRing(s, c, hoop)
	if err != nil {
		return err
	}
	along, err := m.spanAtRing(s, c, meridional)
	w.Local = math.Max(w.Local, math.Max(across.largest(), along.largest())+bend*math.Max(across.membrane(), along.membrane()))
	return err
}

// ringNearPort reports whether a port of the cylinder lies where the wall bends beside a
// ring.
func (m *model) ringNearPort(p *portPart) bool {
	if p.head != nil || m.t.Cylinder.Rings == nil {
		return false
	}
	for _, z := range m.t.Cylinder.Rings.Stations {
		if edge.Interact(math.Abs(z-p.z)-p.in.Tube.OutsideDiameter/2, m.cyl.mid(), m.cyl.least) {
			return true
		}
	}
	return false
}
