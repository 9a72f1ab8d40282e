package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/material"
)

// portPressure is [model.portLoad] without what only the numerical shell tells.
func (m *model) portPressure(p *portPart, s *loads.State, c *loadCase) (port.Load, error) {
	if p.chordsErr != nil {
		return port.Load{}, p.chordsErr
	}
	z1, z2 := m.portReach(p)
	most, _ := s.HighestPressure(z1, z2)
	least := s.LowestPressure(z1, z2)
	inward := p.head != nil && p.head.in.Bulge == "inward"
	switch {
	case most > 0 && least < 0:
		return port.Load{}, fmt.Errorf("the pressure across the wall changes its sense at the port, from %.4g to %.4g kPa", least/1e3, most/1e3)
	case least < 0 && !inward:
		return m.convexLoad(p, -least, c)
	case most > 0 && inward:
		return m.convexLoad(p, most, c)
	case p.head == nil:
		axial, _, load, _, err := s.WallForce(p.z, m.body(c))
		if !c.present { // a load that relieves may be absent
			load = unless(err, math.Max(load, 0))
		}
		out := port.Load{Pressure: most, Hoop: most * m.cyl.mid(), Meridional: math.Max(axial+load, 0)}
		if legs, flown := m.portLegs(p, c); flown && err == nil {
			out.HoopAsked, out.MeridionalAsked = asked(legs, out.Hoop, 0), asked(legs, axial, load)
		}
		return out, err
	case p.head.in.Shape == "flat":
		return m.flatLoad(p, most, c)
	case inward: // pressed from outside the tank: on its concave side
		return port.Load{Pressure: -least}, nil
	}
	return m.concaveLoad(p, most, s, c)
}

// portReach returns the stations between which a port and its reinforcement lie [m].
func (m *model) portReach(p *portPart) (z1, z2 float64) {
	reach := math.Max(p.chords.OutsideMeridional, p.chords.Meridional) + p.host.nominal + p.in.Tube.Wall
	if p.head == nil {
		return p.z - reach, p.z + reach
	}
	e := given(p.in.Radius)
	return m.headStation(p.head, e-reach), m.headStation(p.head, e+reach)
}

// convexLoad is a pressure p [Pa] on the convex side of a port's wall: half the area
// is asked, of the wall that the part needs against it.
func (m *model) convexLoad(p *portPart, pressure float64, c *loadCase) (port.Load, error) {
	load := port.Load{Pressure: pressure, Convex: true}
	var err error
	if load.Required, err = m.requiredOutside(p, pressure, c); err != nil {
		return load, fmt.Errorf("wall required for the pressure on the convex side: %w", err)
	}
	return load, nil
}

// flatLoad is a pressure [Pa] on a flat head: the thickness that its rule asks for,
// welded in without a seam or bolted, is what the port takes away.
func (m *model) flatLoad(p *portPart, pressure float64, c *loadCase) (port.Load, error) {
	load := port.Load{Pressure: pressure}
	all, err := m.weldsAt(p)
	if err != nil {
		return load, err
	}
	a := m.allow(p.host, all, c)
	if a.zoneErr != nil {
		return load, a.zoneErr
	}
	bolts := math.NaN()
	if p.head.bolted() {
		j, err := m.headJoint(p.head, c.temperature)
		sb, boltErr := m.boltAllowable(j, c.rule)
		if c.rule == material.VesselEU {
			err = errors.Join(err, errBoltedEuropean)
		}
		if err = errors.Join(err, boltErr); err != nil {
			return load, err
		}
		bolts = sb
	}
	load.Required, err = m.flatWall(p, pressure, a.seam.S, bolts, c)
	return load, err
}

// flatWall returns the thickness [m] that a flat head needs under a pressure without
// its port, with the stress s allowed in it and, bolted on, bolts in its bolts [Pa].
func (m *model) flatWall(p *portPart, pressure, s, bolts float64, c *loadCase) (float64, error) {
	if p.head.bolted() {
		j, err := m.headJoint(p.head, c.temperature)
		if err != nil {
			return math.NaN(), err
		}
		return j.CoverThickness(pressure, s, bolts)
	}
	t, _, _, err := heads.RequiredThickness(p.head.nominal0, c.rule, pressure, s, 1, 1,
		heads.RuleOptions{Wall: heads.Wall{Thickness: p.host.least, Corrosion: p.host.corrosion}, CornerFactor: given(p.head.in.CornerFactor)})
	return t, err
}

// lineShare is the share of the resultant of the highest ullage pressure from which
// line loads on an ellipsoid bring in exact theory beside the code's own sphere [-]:
// practice; the head's own weight is mostly below it.
const lineShare = 0.01

// concaveLoad is a pressure [Pa] on the concave side of a dished or conical head.
// The code's own sphere speaks for an ellipsoid by its pressure; exact theory under
// flight and where line loads add to it.
func (m *model) concaveLoad(p *portPart, pressure float64, s *loads.State, c *loadCase) (port.Load, error) {
	load := port.Load{Pressure: pressure}
	pt, err := p.head.strength.PointAt(given(p.in.Radius), p.host.least/2)
	if err != nil {
		return load, err
	}
	pull, line, err := m.cutForce(p.head, pt, s, c)
	if err != nil {
		return load, err
	}
	if p.head.in.Shape == "ellipsoid" && c.rule != material.Flight && !(line[0] > lineShare*m.t.Pressure.MEOP*math.Pi*pt.R*pt.R) {
		return load, nil
	}
	if !c.present { // a load that relieves may be absent
		line[0], line[1] = math.Max(line[0], 0), math.Min(line[1], 0)
	}
	legs, flown := m.portLegs(p, c)
	nφ, nθ, err := heads.Membrane(pt, pressure, pull)
	if err != nil {
		return load, err
	}
	for _, v := range line { // the most along the meridian, and the least, which leaves most to the hoop
		lφ, lθ, err := heads.Membrane(pt, 0, v)
		if err != nil {
			return load, err
		}
		load.Hoop, load.Meridional = math.Max(load.Hoop, nθ+lθ), math.Max(load.Meridional, nφ+lφ)
		if flown {
			load.HoopAsked, load.MeridionalAsked = math.Max(load.HoopAsked, asked(legs, nθ, lθ)), math.Max(load.MeridionalAsked, asked(legs, nφ, lφ))
		}
	}
	return load, nil
}

// portLegs returns the limits of the wall at a port where pressure and line loads have
// factors of their own, and whether they do. S holds those of the pressure alone.
func (m *model) portLegs(p *portPart, c *loadCase) (material.Limits, bool) {
	if c.rule != material.Flight {
		return material.Limits{}, false
	}
	all, err := m.weldsAt(p)
	a := m.allow(p.host, all, c)
	if err != nil || a.zoneErr != nil { // the strengths of the port are refused for it
		return material.Limits{S: math.NaN()}, true
	}
	return a.seam, true
}

// asked returns the resultant that takes as much of S as one of pressure and one of line
// loads [N/m] take of their strength, each with its own factor, one that relieves without:
//
//	N_S = S max[(FS_y N_p + FS_yl N_l)/F_ty, (FS_u N_p + FS_ul N_l)/F_tu]
func asked(l material.Limits, pressure, line float64) float64 {
	by := func(factor, n float64) float64 {
		if n < 0 {
			return n
		}
		return factor * n
	}
	yield := (by(l.YieldOnPressure, pressure) + by(l.YieldOnLoad, line)) / l.Yield
	ultimate := (by(l.UltimateOnPressure, pressure) + by(l.UltimateOnLoad, line)) / l.Ultimate
	return l.S * math.Max(0, math.Max(yield, ultimate))
}

// headStation returns z of the inside face of a head at a radius [m], the
// radius kept within the head.
func (m *model) headStation(h *headPart, r float64) float64 {
	most := h.nominal0.Radius(0)
	least := h.nominal0.Radius(h.nominal0.Depth())
	r = math.Min(math.Max(r, least), most)
	x, err := h.nominal0.AxialAt(r, 0)
	if err != nil {
		x = h.nominal0.Depth()
	}
	return m.station(h, x)
}

// cutForce returns the axial force of pressure and liquid that the cut through a point of
// a head carries, and both extremes of what line loads add on the two sides of the bending,
// most first, tension positive [N].
func (m *model) cutForce(h *headPart, pt heads.Point, s *loads.State, c *loadCase) (force float64, line [2]float64, err error) {
	lo, hi := m.in.Bounds()
	z := math.Min(math.Max(m.station(h, pt.X), lo), hi) // the mid-surface of an apex lies half a wall outside
	if pt.R == 0 {
		return 0, line, nil // on the axis nothing is cut
	}
	b := m.body(c)
	b.Radius = func(float64) float64 { return pt.R }
	f, err := s.FreeBody(z, b)
	bending := 2 * f.Moment / pt.R
	return f.Ullage + f.LiquidMost, [2]float64{f.LoadMost + bending, f.LoadLeast - bending}, err
}
