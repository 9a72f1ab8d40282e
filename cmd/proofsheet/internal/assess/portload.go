package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
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

// crossings returns the seams within a reach [m] of a port's axis. A seam of which nothing
// says where it lies, by clock or station, may be there.
func (m *model) crossings(p *portPart, reach float64) (out []crossing) {
	joint, clock, anywhere := m.long, m.t.Cylinder.LongSeamClock, m.t.Cylinder.LongSeamAnywhere
	if p.head != nil {
		joint, clock, anywhere = p.head.segment, p.head.in.SegmentSeamClock, p.head.in.SegmentSeamAnywhere
	}
	outside := 2 * (p.host.radius + p.host.nominal)
	if joint != nil && (anywhere || p.port.SeamDistance(p.wall, clock) < reach) {
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

// weldsAt returns the welds that meet the wall of a port: its own, that of its inserted
// plate, and every seam whose zone reaches its reinforcement.
func (m *model) weldsAt(p *portPart) (welds, error) {
	w := welds(p.in.Weld.Joint)
	if p.in.Insert != nil {
		w = w.and(welds(p.in.Insert.Seam))
	}
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
	if err == nil && p.in.Load != nil && p.port.BesideRim(p.wall) {
		load.Membrane, load.Face = m.shellUnder(p, s, c)
	}
	return load, err
}

// shellUnder returns the largest stress of the numerical shell under a port, either sign,
// line loads in it: of the membrane, and at a face [Pa]; not a number where not known.
func (m *model) shellUnder(p *portPart, s *loads.State, c *loadCase) (membrane, face float64) {
	across, err1 := m.spanWhere(s, c, hoop, m.alongPort(p))
	along, err2 := m.spanWhere(s, c, meridional, m.alongPort(p))
	if errors.Join(err1, err2) != nil {
		return math.NaN(), math.NaN()
	}
	for _, x := range []span{across, along} {
		membrane, face = math.Max(membrane, x.membrane()), math.Max(face, x.largest())
	}
	return membrane, face
}
