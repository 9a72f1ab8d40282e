package assess

import (
	"errors"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/material/weld"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// body returns the tank as a free body for the cylinder's wall.
func (m *model) body(c *loadCase) loads.Body {
	return loads.Body{
		Radius: func(float64) float64 { return m.cyl.mid() },
		Masses: m.masses, Sections: c.sections, Support: loads.Support(m.t.Support.At),
		AftJoint: 0, ForwardJoint: m.t.Cylinder.Length,
	}
}

// cylinderSeams returns the efficiencies that act in the cylinder, the limits
// across its seams and in their zones, and why a seam cannot be assessed, remembered.
func (m *model) cylinderSeams(c *loadCase) (s shell.Seams, a shell.Allowables, longErr, girthErr error) {
	got := once(m.known.cylinder, byRule(c), func() (l cylinderLimits) {
		l.seams, l.a, l.longErr, l.girthErr = m.findCylinderSeams(c)
		return l
	})
	return got.seams, got.a, got.longErr, got.girthErr
}

// findCylinderSeams finds them.
func (m *model) findCylinderSeams(c *loadCase) (s shell.Seams, a shell.Allowables, longErr, girthErr error) {
	p := *m.cyl
	outside := 2 * (p.radius + p.nominal)
	girths := m.girthJoints()
	if m.long != nil {
		s.LongJoint = m.long.Name
		s.Long, _, longErr = asWeld(m.long).EfficiencyAt(string(c.rule),
			weld.Place{Category: "A", Longitudinal: true, Thickness: p.nominal, OutsideDiameter: outside})
		al := m.allow(p, m.atPart("cylinder", m.long), c)
		a.Parent, a.Zone, a.SeamLong, a.ZoneKnown = al.parent, al.zone, al.seam, al.zoneErr
	} else {
		s.LongJoint = "none, drawn or extruded"
		s.Long, _ = weld.SeamlessEfficiency(m.joining()...)
		al := m.allow(p, "", c)
		a.Parent, a.SeamLong, longErr = al.parent, al.parent, al.parentErr
	}
	s.Girth = math.Inf(1)
	if len(girths) == 0 {
		girthErr = errors.New("both heads are bolted on: how their flange rings are welded to the cylinder is not in the file")
	}
	for i, j := range girths {
		e, err := m.girthEfficiency(j, c, outside)
		if err != nil {
			girthErr = err
		}
		if e < s.Girth || math.IsNaN(e) {
			s.Girth, s.GirthJoint = e, j.Name
		}
		al := m.allow(p, m.aroundCylinder(j), c)
		if al.zoneErr != nil {
			a.ZoneKnown = al.zoneErr
			continue
		}
		if i == 0 {
			a.SeamGirth = al.seam
		} else if a.SeamGirth, err = a.SeamGirth.Lower(al.seam); err != nil {
			girthErr = err
		}
		if m.long == nil && i == 0 {
			a.Zone = al.zone
		} else if a.Zone, err = a.Zone.Lower(al.zone); err != nil {
			a.ZoneKnown = err
		}
	}
	return s, a, longErr, girthErr
}

// girthJoints returns the joints that go round the cylinder, each once.
func (m *model) girthJoints() (out []*tank.Joint) {
	for _, j := range []*tank.Joint{m.aft.seam, m.fwd.seam, m.girth} {
		known := j == nil
		for _, o := range out {
			known = known || o.Name == j.Name
		}
		if !known {
			out = append(out, j)
		}
	}
	return out
}

// joining returns every joint that goes round the cylinder as it counts where it
// stands: of a seamless shell they decide what the hoop stress is allowed.
func (m *model) joining() (out []weld.Joint) {
	if m.girth != nil {
		out = append(out, asWeld(m.girth))
	}
	for _, h := range m.ends() {
		if h.seam != nil {
			j, _ := m.seamOf(h)
			out = append(out, j)
		}
	}
	return out
}

// girthEfficiency returns the least efficiency [-] of a joint over the girths it
// is used for; outside is the cylinder's diameter [m].
func (m *model) girthEfficiency(j *tank.Joint, c *loadCase, outside float64) (float64, error) {
	least := math.Inf(1)
	var errs []error
	take := func(w weld.Joint, at weld.Place) {
		e, _, err := w.EfficiencyAt(string(c.rule), at)
		errs = append(errs, err)
		least = math.Min(least, e) // keeps NaN
	}
	if m.girth != nil && m.girth.Name == j.Name {
		take(asWeld(j), weld.Place{Category: "B", Thickness: m.cyl.nominal, OutsideDiameter: outside})
	}
	for _, h := range m.ends() {
		if h.seam != nil && h.seam.Name == j.Name {
			take(m.seamOf(h))
		}
	}
	return least, errors.Join(errs...)
}

// cylinderCondition gathers what loads the cylinder in one state. Extremes along
// the part are taken together, which is never less than any one station.
func (m *model) cylinderCondition(s *loads.State, c *loadCase) (shell.Condition, error) {
	L := m.t.Cylinder.Length
	cond := shell.Condition{PressureLeast: c.pressureLeast(), Present: c.present,
		AxialMost: math.Inf(-1), AxialLeast: math.Inf(1), LoadMost: math.Inf(-1), LoadLeast: math.Inf(1)}
	cond.Pressure, _ = s.HighestPressure(0, L)
	if least := math.Min(s.PressureLeast(0), s.PressureLeast(L)); least < 0 && -least > math.Abs(cond.Pressure) {
		cond.Pressure = least // from outside the dry wall is worse than the wet one
	}
	b := m.body(c)
	for _, z := range m.cylinderStations(c) {
		high, low, most, least, err := s.WallForce(z, b)
		if err != nil {
			return cond, err
		}
		cond.AxialMost, cond.AxialLeast = math.Max(cond.AxialMost, high), math.Min(cond.AxialLeast, low)
		cond.LoadMost, cond.LoadLeast = math.Max(cond.LoadMost, most), math.Min(cond.LoadLeast, least)
	}
	if !c.present { // a load that relieves may be absent
		cond.LoadMost, cond.LoadLeast = math.Max(cond.LoadMost, 0), math.Min(cond.LoadLeast, 0)
	}
	return cond, nil
}

// checkCylinder makes the membrane, thickness and stability checks of the cylinder
// in one state of a case.
func (m *model) checkCylinder(s *loads.State, c *loadCase) []check.Result {
	cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
	seams, a, longErr, girthErr := m.cylinderSeams(c)
	cond, err := m.cylinderCondition(s, c)
	refuse := func(r check.Result, why ...error) check.Result {
		for _, e := range append([]error{m.massErr, err}, why...) {
			if e != nil {
				return check.NotMade(r.ID, r.Title, e)
			}
		}
		return r
	}
	stability := m.checkStability(s, c)
	if err == nil && cond.Pressure < 0 {
		return append(outsideOnly(refuse(cyl.CheckLongitudinal(cond, a, seams), girthErr, a.ZoneKnown), refuse(cyl.CheckEquivalent(cond, a, seams), a.ZoneKnown)), stability...)
	}
	return append([]check.Result{
		refuse(cyl.CheckHoop(cond, a, seams), longErr, zoneOf(a, m.long != nil)),
		refuse(cyl.CheckLongitudinal(cond, a, seams), girthErr, a.ZoneKnown),
		refuse(cyl.CheckEquivalent(cond, a, seams), a.ZoneKnown),
		refuse(cyl.CheckThickness(c.rule, cond, a, seams), longErr, girthErr, a.ZoneKnown),
	}, stability...)
}

// outsideOnly returns the checks of a cylinder under pressure from outside: hoop
// tension and the thickness for it do not arise.
func outsideOnly(longitudinal, equivalent check.Result) []check.Result {
	const why = "the pressure across the wall is negative: cylinder/external holds it"
	return []check.Result{check.NotApplicableTo("cylinder/hoop", "Cylinder: hoop stress", why), longitudinal, equivalent,
		check.NotApplicableTo("cylinder/thickness", "Cylinder: required thickness", why)}
}

// zoneOf returns why the zone of a seam is not known, where there is a seam.
func zoneOf(a shell.Allowables, seam bool) error {
	if seam {
		return a.ZoneKnown
	}
	return nil
}
