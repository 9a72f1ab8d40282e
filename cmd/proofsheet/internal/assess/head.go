package assess

import (
	"errors"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/material/weld"
	"proofsheet/report/check"
)

// hair keeps a plane on the head's side of its joint [m].
const hair = 1e-9

// checkHead makes the checks of a head in one state of a case: thickness,
// membrane, knuckle, joints and stability.
func (m *model) checkHead(h *headPart, s *loads.State, c *loadCase) []check.Result {
	seams, a, err := m.headSeams(h, c)
	wall := heads.Wall{Thickness: h.least, Corrosion: h.corrosion}
	l := m.headLoading(h, s, c)
	d, demandErr := m.headDemand(h, s, c, l)
	out := []check.Result{
		heads.CheckThickness(h.nominal0, h.end, d, wall, a, seams),
		heads.CheckMembrane(h.nominal0, h.end, wall, l, a, seams),
		heads.CheckKnuckle(h.nominal0, h.end, d.Pressure, wall, m.modulus(h, c.temperature), false, a, seams),
	}
	if h.bolted() {
		thickness, joint := m.checkBoltedHead(h, d.Pressure, m.lowestOn(h, s), c)
		out[0] = thickness
		out = append(out, joint...)
	}
	out = append(out, m.checkJunctions(h, s, c)...)
	out = append(out, m.checkCorners(h, s, c)...)
	if h.in.Tip != nil {
		out = append(out, m.checkTip(h, s, c))
	}
	if h.in.Ring != nil {
		out = append(out, m.checkRing(h, s, c))
	}
	out = append(out, m.checkMisalignedHead(h, s, c)...)
	if m.convexLoaded(h) {
		out = append(out, m.checkConvex(h, s, c))
		if h.lapped() {
			out = append(out, m.checkRimWeld(h, s, a.SeamGirth.S, errors.Join(m.massErr, h.refused, a.ZoneKnown)))
		}
	}
	if err = errors.Join(m.massErr, h.refused, err, demandErr); err != nil {
		for i, r := range out {
			if r.Status() != check.NotApplicable {
				out[i] = check.NotMade(r.ID, r.Title, err)
			}
		}
	}
	return append(out, m.checkHeadStability(h, s, c)...)
}

// modulus returns Young's modulus of a head at T [Pa], NaN where not known.
func (m *model) modulus(h *headPart, T float64) float64 {
	p := m.metals.at(h.material, "", h.nominal, T)
	return unless(p.parentErr, p.parent.ElasticModulus.Value)
}

// headSeams returns the efficiencies that act in a head and its limits, remembered.
func (m *model) headSeams(h *headPart, c *loadCase) (heads.Seams, heads.Allowables, error) {
	got := once(m.known.heads, headAt{h.end, byRule(c)}, func() (l headLimits) {
		l.seams, l.a, l.err = m.findHeadSeams(h, c)
		return l
	})
	return got.seams, got.a, got.err
}

// findHeadSeams finds them.
func (m *model) findHeadSeams(h *headPart, c *loadCase) (s heads.Seams, a heads.Allowables, err error) {
	own := m.allow(h.part, "", c)
	a = heads.Allowables{Parent: own.parent, Zone: own.zone, SeamSegment: own.parent, SeamGirth: own.parent, ZoneKnown: own.parentErr}
	if h.seam == nil { // bolted
		s.Girth, s.GirthJoint, s.Segment = 1, "bolted", 1
		return s, a, own.parentErr
	}
	joint, place := m.seamOf(h)
	s.GirthJoint = h.seam.Name
	if s.Girth, _, err = joint.EfficiencyAt(string(c.rule), place); err != nil {
		return s, a, err
	}
	if h.segment != nil {
		s.Segmented, s.SegmentJoint = true, h.segment.Name
		s.Segment, _, err = asWeld(h.segment).EfficiencyAt(string(c.rule),
			weld.Place{Category: "A", Longitudinal: true, Thickness: h.nominal, OutsideDiameter: 2 * (h.radius + h.nominal)})
	} else {
		s.Segment, _ = weld.SeamlessEfficiency(joint)
	}
	switch {
	case h.in.Shape == "hemisphere":
		s.Segment = math.Min(s.Segment, s.Girth)
	case h.in.Shape == "flat" && h.segment == nil: // no weld of category A: UG-34 asks for no efficiency
		s.Segment = 1
	}
	if err != nil {
		return s, a, err
	}
	return m.headLimits(h, c, s, a)
}

// seamOf returns the joint of a head to the cylinder as it counts there, and its
// place.
func (m *model) seamOf(h *headPart) (weld.Joint, weld.Place) {
	j := asWeld(h.seam)
	if corner := m.t.Corner(h.in); !math.IsNaN(corner) {
		j = j.AtCone(corner)
	}
	return j, m.t.SeamPlace(h.in)
}

// headLimits fills in the limits across the welds of a head and in their zones.
func (m *model) headLimits(h *headPart, c *loadCase, s heads.Seams, a heads.Allowables) (heads.Seams, heads.Allowables, error) {
	all := m.weldsOf(&h.part)
	welded := m.allow(h.part, all, c)
	shell := m.allow(*m.cyl, m.atSeam(h), c)
	a.ZoneKnown = errors.Join(welded.zoneErr, shell.zoneErr)
	if a.ZoneKnown != nil {
		return s, a, nil
	}
	a.Zone = welded.zone
	if s.Segmented {
		a.SeamSegment = welded.seam
	}
	var err error
	if a.SeamGirth, err = welded.seam.Lower(shell.seam); err != nil {
		return s, a, err
	}
	s.ZoneWidth, s.PortZones, err = m.zones(h, c, all)
	return s, a, err
}

// zones returns the width of the softened zone along a head and the radii over
// which ports soften it [m]; nothing where the alloy does not soften.
func (m *model) zones(h *headPart, c *loadCase, w welds) (width float64, ports [][2]float64, err error) {
	props := m.metals.at(h.material, w, h.nominal, c.temperature)
	if !props.zone.Softened {
		return 0, nil, nil
	}
	if width, err = m.widest(w, props.parent.Family, h.nominal); err != nil {
		return 0, nil, err
	}
	for _, p := range m.ports {
		if p.head == h {
			e, reach := given(p.in.Radius), p.port.Reach(p.in.Tube.OutsideDiameter/2)+width
			ports = append(ports, [2]float64{e - reach, e + reach})
		}
	}
	if h.in.Tip != nil { // what closes the tip is welded to it, by a process that is not stated
		ports = append(ports, [2]float64{0, h.in.Tip.Diameter/2 + h.nominal + width})
	}
	return width, ports, nil
}

// headLoading returns what acts along a head in one state.
func (m *model) headLoading(h *headPart, s *loads.State, c *loadCase) heads.Loading {
	free := m.freeBodyAlong(h, s, c, m.cutOf(h))
	line := func(x, sign float64) float64 {
		f, r := free(x)
		load := f.LoadMost
		if sign < 0 {
			load = f.LoadLeast
		}
		return (load + sign*2*f.Moment/r) / (2 * math.Pi * r)
	}
	l := heads.Loading{
		PressureLeast: c.pressureLeast(), Present: c.present,
		Pressure: func(x float64) float64 { return m.headPressure(h, s, x) },
		Force: func(x, r float64) float64 {
			f, _ := free(x)
			return s.UllagePressure*math.Pi*r*r + f.LiquidMost
		},
		LoadMost:  func(x float64) float64 { return line(x, 1) },
		LoadLeast: func(x float64) float64 { return line(x, -1) },
	}
	if h.in.Shape == "flat" { // carries by bending, and no stack load beyond its seam
		l.LoadMost, l.LoadLeast = nil, nil
	}
	if h.in.Bulge == "inward" {
		l.Force = func(x, r float64) float64 { return m.inwardForce(h, s, x, r) }
		l.LoadMost, l.LoadLeast = nil, nil
	}
	return l
}

// cutOf returns where the plane at x of a head cuts the tank [m], on the head's
// side of its joint.
func (m *model) cutOf(h *headPart) func(x float64) float64 {
	lo, hi := m.in.Bounds()
	return func(x float64) float64 {
		z := m.station(h, x)
		if h.end == "aft" {
			return math.Min(math.Max(z, lo), -hair)
		}
		return math.Max(math.Min(z, hi), m.t.Cylinder.Length+hair)
	}
}

// headPressure returns the pressure on a head at x from the plane where it
// begins [Pa], the worst round the ring; at that plane the worst of the straight
// flange. From outside the dry wall is worse than the wet one.
func (m *model) headPressure(h *headPart, s *loads.State, x float64) float64 {
	lo, hi := m.in.Bounds()
	z := math.Min(math.Max(m.station(h, x), lo), hi)
	p := s.PressureWorst(z)
	if x <= 0 {
		p, _ = s.HighestPressure(z, m.station(h, -h.in.StraightFlange))
	}
	if least := s.PressureLeast(z); least < 0 && -least > math.Abs(p) {
		return least
	}
	return p
}

// freeBodyAlong returns the free body of the cut at x of a head, and the mid-wall
// radius there [m]. The last cut is remembered: force and both line loads are
// asked for at one point after the other.
func (m *model) freeBodyAlong(h *headPart, s *loads.State, c *loadCase, at func(x float64) float64) func(x float64) (loads.Forces, float64) {
	b := m.body(c)
	last, radius := math.NaN(), math.NaN()
	b.Radius = func(float64) float64 { return radius }
	var f loads.Forces
	return func(x float64) (loads.Forces, float64) {
		if x == last {
			return f, radius
		}
		last, radius = x, h.strength.Radius(math.Min(math.Max(x, 0), h.strength.Depth()))+h.least/2
		var err error
		if f, err = s.FreeBody(at(x), b); err != nil {
			nan := math.NaN()
			f = loads.Forces{LiquidMost: nan, LoadMost: nan, LoadLeast: nan}
		}
		return f, radius
	}
}

// inwardForce returns the force that an inward head carries at x from its rim,
// compression [N]: the mean pressure on its face beyond the cut, on the circle of
// the mid-wall radius r [m].
func (m *model) inwardForce(h *headPart, s *loads.State, x, r float64) float64 {
	x = math.Min(math.Max(x, 0), h.nominal0.Depth())
	z := m.station(h, x)
	face := h.nominal0.Radius(x)
	if face < 1e-6*h.radius { // at the crown itself
		return -s.PressureAxis(z) * math.Pi * r * r
	}
	v, err := s.InwardHeadForce(z)
	return unless(err, v*r*r/(face*face))
}

// headDemand returns what the thickness rule of a head is asked for.
func (m *model) headDemand(h *headPart, s *loads.State, c *loadCase, l heads.Loading) (heads.Demand, error) {
	lo, hi := m.in.Bounds()
	d := heads.Demand{CornerFactor: given(h.in.CornerFactor), CornerSource: h.in.Source}
	if h.end == "aft" {
		d.Pressure, _ = s.HighestPressure(lo, 0)
	} else {
		d.Pressure, _ = s.HighestPressure(m.t.Cylinder.Length, hi)
	}
	if l.LoadMost != nil {
		d.LineLoad = math.Max(l.LoadMost(0), 0)
	}
	props := m.metals.at(h.material, m.weldsOf(&h.part), h.nominal, c.temperature)
	if c.rule == material.VesselEU {
		d.Proof = props.parent.Yield.Value
		if h.segment != nil {
			d.Proof = props.zone.Yield.Value
		}
		return d, errors.Join(props.parentErr, props.zoneErr)
	}
	return d, nil
}
