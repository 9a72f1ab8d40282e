package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// proofYield holds the membrane stress of every part, at the highest pressure
// the test can reach, to the strictest limit, and returns the worst.
func (m *model) proofYield(t *proofTest) check.Result {
	c, s, err := m.proofState(t)
	if err != nil {
		return check.NotMade("proof/yield", "Proof: membrane stress at the highest pressure of the test", err)
	}
	checks := m.proofCylinder(t, s, c)
	for _, h := range m.ends() {
		checks = append(checks, m.proofHead(t, h, s, c))
		if h.in.Tip != nil {
			checks = append(checks, m.proofTip(t, h, s, c))
		}
	}
	for _, r := range checks {
		if r.Status() == check.NotAssessed {
			return named(r, "proof/yield")
		}
	}
	i := check.Governing(checks)
	if i < 0 {
		return check.NotMade("proof/yield", "Proof: membrane stress", errors.New("no part has a membrane to check"))
	}
	return named(checks[i], "proof/yield")
}

// named returns a check under another id, its own part kept in the title.
func named(r check.Result, id string) check.Result {
	if r.Status() != check.NotAssessed {
		r.Note = "worst of every part and seam; held to the share of yield at proof. " + r.Note
	}
	r.ID, r.Title, r.Rule = id, "Proof, "+r.Title, ""
	return r
}

// proofState returns the tank full of the test fluid at the highest pressure the
// test can reach.
func (m *model) proofState(t *proofTest) (*loadCase, *loads.State, error) {
	c := &loadCase{name: "proof", rule: material.Vessel, temperature: m.t.Proof.Temperature, coldest: m.t.Proof.Temperature, present: true}
	switch m.t.Proof.Orientation {
	case "inverted":
		c.axial = -1
	case "horizontal":
		c.lateral = 1
	default:
		c.axial = 1
	}
	c.ullage = t.plan.Top + 2*t.plan.GaugeUncertainty + t.plan.Overshoot
	density, mass := 1.0, 0.0
	if t.plan.In.Method == proof.Hydrostatic {
		density = t.plan.In.WaterDensity
		mass = density * m.in.Volume()
	}
	err := m.fill(c, density, mass)
	if err != nil {
		return c, nil, err
	}
	return c, c.states[0], nil
}

// proofLimit returns the share of yield of a metal as a limit, the seam's
// efficiency e [-] in it.
func proofLimit(rs []proof.Rule, yield, e float64) (material.Limits, error) {
	k, rule, err := proof.Limit(rs, e)
	return material.Limits{Rule: material.Vessel, S: k * yield, Yield: yield, Governs: "k E Sy",
		Terms:  []material.Term{{Symbol: "k E Sy", Name: fmt.Sprintf("%.4g of yield at the test temperature, by %s", k, rule.Rule), Value: k * yield}},
		Source: rule.LimitSource}, err
}

// withLimit returns a check with what its limit at proof is made of: k, yield [Pa]
// and the efficiency e of the seam [-].
func withLimit(r check.Result, rs []proof.Rule, yield, e float64) check.Result {
	if _, rule, err := proof.Limit(rs, e); err == nil {
		if rule.IgnoreEfficiency {
			e = 1
		}
		r.Inputs = append(r.Inputs, check.Num("k", "share of yield at proof", rule.K), check.Num("E_s", "efficiency of the seam at proof", e),
			check.Pa("R_p0.2", "yield strength at the test; S = k E_s R_p0.2", yield))
		r.Source = rule.LimitSource
	}
	return r
}

// proofYields returns the yield of a part and of its weld zone at the test [Pa].
func (m *model) proofYields(p *part) (parent, zone float64, err error) {
	x := m.metals.at(p.material, m.weldsOf(p), p.nominal, m.t.Proof.Temperature)
	return x.parent.Yield.Value, x.zone.Yield.Value, errors.Join(p.refused, x.parentErr, x.zoneErr, x.parent.Brittle, x.zone.Brittle)
}

// proofCylinder makes the membrane checks of the cylinder at proof.
func (m *model) proofCylinder(t *proofTest, s *loads.State, c *loadCase) []check.Result {
	cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
	seams, _, longErr, girthErr := m.cylinderSeams(c)
	cond, condErr := m.cylinderCondition(s, c)
	parent, zone, err := m.proofYields(m.cyl)
	var a shell.Allowables
	var e1, e2, e3, e4 error
	a.Parent, e1 = proofLimit(t.rules, parent, 1)
	a.Zone, e2 = proofLimit(t.rules, zone, 1)
	a.SeamLong, e3 = proofLimit(t.rules, math.Min(parent, zone), seams.Long)
	a.SeamGirth, e4 = proofLimit(t.rules, math.Min(parent, zone), seams.Girth)
	long, girth := seams.Long, seams.Girth
	seams.Long, seams.Girth = 1, 1 // already in the limits
	if err = errors.Join(m.massErr, longErr, girthErr, condErr, err, e1, e2, e3, e4); err != nil {
		return []check.Result{check.NotMade("cylinder/hoop", "Cylinder: membrane stress", err)}
	}
	across := math.Min(parent, zone)
	return []check.Result{withLimit(cyl.CheckHoop(cond, a, seams), t.rules, across, long), withLimit(cyl.CheckLongitudinal(cond, a, seams), t.rules, across, girth),
		withLimit(cyl.CheckEquivalent(cond, a, seams), t.rules, across, 1)}
}

// proofLimits returns the efficiencies and the limits of a head at proof.
func (m *model) proofLimits(t *proofTest, h *headPart, c *loadCase) (heads.Seams, heads.Allowables, error) {
	seams, a, err := m.headSeams(h, c)
	parent, zone, yieldErr := m.proofYields(&h.part)
	_, shellZone, shellErr := m.proofYields(m.cyl)
	var e1, e2, e3, e4 error
	a.Parent, e1 = proofLimit(t.rules, parent, 1)
	a.Zone, e2 = proofLimit(t.rules, zone, 1)
	across := math.Min(parent, zone)
	segment := 1.0
	if seams.Segmented {
		segment = seams.Segment
	}
	a.SeamSegment, e3 = proofLimit(t.rules, across, segment)
	a.SeamGirth, e4 = proofLimit(t.rules, math.Min(across, shellZone), seams.Girth)
	err = errors.Join(m.massErr, err, a.ZoneKnown, yieldErr, shellErr, e1, e2, e3, e4)
	a.ZoneKnown = nil
	seams.Segment, seams.Girth = 1, 1 // already in the limits
	return seams, a, err
}

// proofHead makes the membrane check of a head at proof.
func (m *model) proofHead(t *proofTest, h *headPart, s *loads.State, c *loadCase) check.Result {
	seams, a, err := m.proofLimits(t, h, c)
	switch {
	case err != nil:
	case h.in.Shape == "flat":
		return m.proofBending(t, h, s)
	}
	if err != nil {
		return check.NotMade(h.name+"/membrane", h.title+": membrane stress", err)
	}
	return heads.CheckMembrane(h.nominal0, h.end, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}, m.headLoading(h, s, c), a, seams)
}

// proofBending holds the bending of a flat head at proof, σ_b = C p d²/t² with
// its corner factor, to the limit on primary bending.
func (m *model) proofBending(t *proofTest, h *headPart, s *loads.State) check.Result {
	parent, zone, err := m.proofYields(&h.part)
	d, demandErr := m.headDemand(h, s, &loadCase{rule: material.Vessel}, heads.Loading{})
	if h.bolted() {
		σ, bendErr := m.boltedBending(h, d.Pressure, m.t.Proof.Temperature)
		if err = errors.Join(err, demandErr, bendErr); err != nil {
			return check.NotMade(h.name+"/membrane", h.title+": bending", err)
		}
		return t.plan.CheckBending(proof.Stressed{Part: "bolted " + h.end + " head", Pressure: d.Pressure, Bending: σ, Yield: math.Min(parent, zone), Efficiency: 1})
	}
	if err = errors.Join(err, demandErr); err == nil && !(d.CornerFactor > 0) {
		err = errors.New("the corner factor is not given")
	}
	if err != nil {
		return check.NotMade(h.name+"/membrane", h.title+": bending", err)
	}
	x := 2 * h.corroded() / h.least
	return t.plan.CheckBending(proof.Stressed{Part: "flat " + h.end + " head", Pressure: d.Pressure,
		Bending: d.CornerFactor * d.Pressure * x * x, Yield: math.Min(parent, zone), Efficiency: 1})
}

// proofBrittle asks whether every alloy may be as cold as the test makes it.
func (m *model) proofBrittle() check.Result {
	return m.checkBrittle(&loadCase{coldest: math.Min(m.t.Proof.Temperature, roomTemperature)})
}

// proofConvex holds the highest pressure of the test to what every inward head
// carries on its convex side, with the factors of service.
func (m *model) proofConvex(t *proofTest) (out []check.Result) {
	c, s, err := m.proofState(t)
	for _, h := range m.ends() {
		if h.in.Bulge != "inward" || h.in.Shape == "flat" {
			continue
		}
		r := check.NotMade(h.name+"/external", h.title+": external pressure", err)
		if err == nil {
			r = m.checkHeadExternal(h, s, c)
			r.Note += " At proof, with the factors of service."
		}
		out = append(out, r)
		if h.lapped() {
			out = append(out, m.proofRimWeld(t, h, s, err))
		}
	}
	return out
}

// proofKnuckles holds the highest pressure of the test to what every knuckle
// carries.
func (m *model) proofKnuckles(t *proofTest) (out []check.Result) {
	c, s, stateErr := m.proofState(t)
	for _, h := range m.ends() {
		seams, a, err := m.proofLimits(t, h, c)
		if err = errors.Join(stateErr, err); err != nil {
			out = append(out, check.NotMade(h.name+"/knuckle", h.title+": knuckle at proof", err))
			continue
		}
		d, err := m.headDemand(h, s, c, heads.Loading{})
		r := heads.CheckKnuckle(h.nominal0, h.end, d.Pressure, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}, m.modulus(h, c.temperature), true, a, seams)
		if err != nil {
			r = check.NotMade(r.ID, r.Title, err)
		}
		out = append(out, r)
	}
	return out
}

// proofZones holds every weld zone at the highest pressure of the test to the
// share of its own yield.
func (m *model) proofZones(t *proofTest) check.Result {
	c, s, err := m.proofState(t)
	if err != nil {
		return check.NotMade(weldZonesID, weldZonesTitle, err)
	}
	r := m.weldZones(s, c, func(p part, joint string) (material.Limits, error) {
		x := m.metals.at(p.material, welds(joint), p.nominal, c.temperature)
		if err := errors.Join(x.zoneErr, x.zone.Brittle); err != nil {
			return material.Limits{}, err
		}
		return proofLimit(t.rules, x.zone.Yield.Value, 1)
	})
	if k, rule, err := proof.Limit(t.rules, 1); err == nil && r.Status() != check.NotApplicable && r.Status() != check.NotAssessed {
		r.Inputs = append(r.Inputs, check.Num("k", "share of yield at proof, by "+rule.Rule+"; S = k R_p0.2,w", k))
	}
	return r
}

// proofRimWeld holds the fillets of a lapped inward head at the test, by the share of
// yield of the weaker metal and with the factor of service on the thrust.
func (m *model) proofRimWeld(t *proofTest, h *headPart, s *loads.State, err error) check.Result {
	if err != nil {
		return check.NotMade(h.name+"/rim-weld", h.title+": shear of the fillets at its rim", err)
	}
	parent, zone, headErr := m.proofYields(&h.part)
	_, shell, shellErr := m.proofYields(m.cyl)
	l, limitErr := proofLimit(t.rules, math.Min(math.Min(parent, zone), shell), 1)
	return m.checkRimWeld(h, s, l.S, errors.Join(headErr, shellErr, limitErr))
}
