package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/material/weld"
)

// A strengthKey is all that the strengths of a port depend on.
type strengthKey struct {
	p    *portPart
	T    float64 // [K]
	rule material.Rule
}

// A strengthFound is what was found for a key.
type strengthFound struct {
	s   port.Strengths
	err error
}

// portStrengths returns the allowable stresses at a port: the welded values
// where an alloy softens, and the efficiency of a seam through the hole. They are
// remembered: every pressure that is tried asks for them again.
func (m *model) portStrengths(p *portPart, c *loadCase) (port.Strengths, error) {
	key := strengthKey{p, c.temperature, c.rule}
	if f, ok := m.strengths[key]; ok {
		return f.s, f.err
	}
	var f strengthFound
	f.s, f.err = m.findStrengths(p, c)
	if m.strengths == nil {
		m.strengths = map[strengthKey]strengthFound{}
	}
	m.strengths[key] = f
	return f.s, f.err
}

func (m *model) findStrengths(p *portPart, c *loadCase) (port.Strengths, error) {
	var s port.Strengths
	own := welds(p.in.Weld.Joint)
	all, err := m.weldsAt(p)
	if err != nil {
		return s, err
	}
	wall := m.allow(p.host, all, c)
	if wall.zoneErr != nil {
		return s, wall.zoneErr
	}
	tube := m.allowAt(p.in.Tube.Material, m.tubeWelds(p), p.in.Tube.Wall, c.temperature, c.rule, nil)
	if tube.zoneErr != nil {
		return s, fmt.Errorf("tube: %w", tube.zoneErr)
	}
	s = port.Strengths{Wall: wall.seam.S, Tube: tube.seam.S, Pad: wall.seam.S}
	if pad := p.in.Pad; pad != nil && pad.Material != "" {
		a := m.allowAt(pad.Material, own, pad.Thickness, c.temperature, c.rule, nil)
		if a.zoneErr != nil {
			return s, fmt.Errorf("pad: %w", a.zoneErr)
		}
		s.Pad = a.seam.S
	}
	if s.EfficiencyTube, err = m.tubeEfficiency(p, c.rule); err != nil {
		return s, fmt.Errorf("tube: %w", err)
	}
	e, err := m.seamThrough(p, c.rule)
	s.EfficiencyMeridional, s.EfficiencyTransverse = e, e
	return s, err
}

// tubeWelds returns the welds of a port's tube: the one to the wall, and its own
// seam where a joint describes it.
func (m *model) tubeWelds(p *portPart) welds {
	w := welds(p.in.Weld.Joint)
	if j := m.joint(p.in.Tube.Seam); j != nil {
		w = w.and(welds(j.Name))
	}
	return w
}

// tubeEfficiency returns the efficiency of the tube's own seam [-]: 1 for a tube
// stated seamless, 0.85 where nothing is said: practice for welded pipe.
func (m *model) tubeEfficiency(p *portPart, rule material.Rule) (float64, error) {
	const unknown = 0.85
	switch p.in.Tube.Seam {
	case "none":
		return 1, nil
	case "":
		return unknown, nil
	}
	j := m.joint(p.in.Tube.Seam)
	if j == nil {
		return math.NaN(), fmt.Errorf("joint %q of the tube is not in the tank file", p.in.Tube.Seam)
	}
	e, _, err := asWeld(j).EfficiencyAt(string(rule), weld.Place{Category: "A", Longitudinal: true,
		Thickness: p.in.Tube.Wall, OutsideDiameter: p.in.Tube.OutsideDiameter})
	return e, err
}

// A crossing is a seam that a port's reinforcement or its softened zone meets.
type crossing struct {
	joint *tank.Joint
	at    weld.Place
}

// crossings returns the seams within a reach [m] of a port's axis. A girth seam
// whose station is not said may be there.
func (m *model) crossings(p *portPart, reach float64) (out []crossing) {
	joint, clock := m.long, m.t.Cylinder.LongSeamClock
	if p.head != nil {
		joint, clock = p.head.segment, p.head.in.SegmentSeamClock
	}
	outside := 2 * (p.host.radius + p.host.nominal)
	if joint != nil && p.port.SeamDistance(p.wall, clock) < reach {
		out = append(out, crossing{joint, weld.Place{Category: "A", Longitudinal: true, Thickness: p.host.nominal, OutsideDiameter: outside}})
	}
	if p.head != nil || m.girth == nil {
		return out
	}
	stations := m.t.Cylinder.GirthStations
	if len(stations) == 0 {
		stations = []float64{p.z}
	}
	for _, z := range stations {
		if math.Abs(z-p.z) < reach {
			return append(out, crossing{m.girth, weld.Place{Category: "B", Thickness: p.host.nominal, OutsideDiameter: outside}})
		}
	}
	return out
}

// reinforced returns how far from its axis a port's reinforcement reaches [m].
func (p *portPart) reinforced() float64 {
	across := math.Max(p.chords.OutsideSides[0], p.chords.OutsideSides[1])
	return across + math.Max(p.chords.Transverse/2, p.in.Tube.Wall+p.host.nominal)
}

// seamThrough returns the efficiency of the seam that the port's reinforcement
// meets [-], 1 in solid plate. A seam anywhere within the limit of
// reinforcement counts, in both planes.
func (m *model) seamThrough(p *portPart, rule material.Rule) (float64, error) {
	least := 1.0
	for _, x := range m.crossings(p, p.reinforced()) {
		e, _, err := asWeld(x.joint).EfficiencyAt(string(rule), x.at)
		if err != nil {
			return math.NaN(), err
		}
		least = math.Min(least, e)
	}
	return least, nil
}

// weldsAt returns the welds that meet the wall of a port: its own, and every seam
// whose zone reaches its reinforcement.
func (m *model) weldsAt(p *portPart) (welds, error) {
	w := welds(p.in.Weld.Joint)
	for _, x := range m.crossings(p, math.Inf(1)) {
		parent := m.metals.at(p.host.material, w, p.host.nominal, roomTemperature)
		if parent.parentErr != nil {
			return w, parent.parentErr
		}
		b, err := m.widest(welds(x.joint.Name), parent.parent.Family, p.host.nominal)
		if err != nil {
			return w, err
		}
		for _, near := range m.crossings(p, p.reinforced()+b) {
			w = w.and(welds(near.joint.Name))
		}
	}
	return w, nil
}

// portLoad returns what the wall carries at a port: the highest pressure over
// hole and reinforcement, and the resultants of exact theory. Where it acts on the
// convex side the wall required for that goes with it.
func (m *model) portLoad(p *portPart, s *loads.State, c *loadCase) (port.Load, error) {
	load, err := m.portPressure(p, s, c)
	if err == nil && p.in.Load != nil && p.port.InKnuckle(p.wall) {
		load.Membrane, load.Face = m.shellUnder(p, s, c)
	}
	return load, err
}

// shellUnder returns the largest stress of the numerical shell under a port, either sign,
// line loads in it: of the membrane, and at a face [Pa]; not a number where not known.
func (m *model) shellUnder(p *portPart, s *loads.State, c *loadCase) (membrane, face float64) {
	hoop, err1 := m.spanWhere(s, c, true, m.alongPort(p))
	mer, err2 := m.spanWhere(s, c, false, m.alongPort(p))
	if errors.Join(err1, err2) != nil {
		return math.NaN(), math.NaN()
	}
	for _, x := range []span{hoop, mer} {
		membrane, face = math.Max(membrane, x.membrane), math.Max(face, math.Max(math.Abs(x.most), math.Abs(x.least)))
	}
	return membrane, face
}

// portPressure is [model.portLoad] without what only the numerical shell tells.
func (m *model) portPressure(p *portPart, s *loads.State, c *loadCase) (port.Load, error) {
	if p.chordsErr != nil {
		return port.Load{}, p.chordsErr
	}
	z1, z2 := m.portReach(p)
	most, _ := s.HighestPressure(z1, z2)
	least := math.Min(s.PressureLeast(z1), s.PressureLeast(z2))
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
		return port.Load{Pressure: most, Hoop: most * m.cyl.mid(), Meridional: math.Max(axial+load, 0)}, err
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
	v, line, err := m.cutForce(p.head, pt, s, c)
	if err != nil {
		return load, err
	}
	if p.head.in.Shape == "ellipsoid" && c.rule != material.Flight && !(line > lineShare*m.t.Pressure.MEOP*math.Pi*pt.R*pt.R) {
		return load, nil
	}
	nφ, nθ, err := heads.Membrane(pt, pressure, v)
	load.Hoop, load.Meridional = math.Max(nθ, 0), math.Max(nφ, 0)
	return load, err
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

// cutForce returns the axial force that the cut through a point of a head
// carries, and the part of it that line loads bring, tension positive [N].
func (m *model) cutForce(h *headPart, pt heads.Point, s *loads.State, c *loadCase) (force, line float64, err error) {
	lo, hi := m.in.Bounds()
	z := math.Min(math.Max(m.station(h, pt.X), lo), hi) // the mid-surface of an apex lies half a wall outside
	if pt.R == 0 {
		return 0, 0, nil // on the axis nothing is cut
	}
	b := m.body(c)
	b.Radius = func(float64) float64 { return pt.R }
	f, err := s.FreeBody(z, b)
	line = f.LoadMost + 2*f.Moment/pt.R
	return f.Ullage + f.LiquidMost + line, line, err
}
