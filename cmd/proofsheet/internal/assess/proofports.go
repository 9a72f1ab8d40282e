package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/report/check"
)

// proofPorts asks of every port whether the metal round its hole holds at the
// highest pressure that the test can reach: the methods of port.N/area with the
// share of the yield strength that the strictest rule allows at proof, of wall,
// tube and pad each, in place of their allowable stress.
func (m *model) proofPorts(t *proofTest) (out []check.Result) {
	c, s, err := m.proofState(t)
	for _, p := range m.ports {
		r := m.proofPort(t, p, s, c, err)
		r.Title += ", at proof"
		out = append(out, r)
	}
	return out
}

// proofPort makes the check of one port.
func (m *model) proofPort(t *proofTest, p *portPart, s *loads.State, c *loadCase, err error) check.Result {
	id, title := "port."+p.in.Name+"/area", "Port "+p.in.Name+": metal replaced round the hole"
	if err == nil && p.head != nil && p.head.in.Shape == "flat" {
		err = errors.New("a port in a flat head is not held at the test pressure")
	}
	if err == nil && m.closesTip(p) {
		return check.NotApplicableTo(id, title, "it closes the cone's tip: the joint there is held at proof")
	}
	var q port.Member
	if err == nil {
		q, err = m.proofMember(t, p, s, c)
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	report, err := q.Port.Area(p.wall, q.Load, q.Strengths)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	r := report.Check(p.in.Name)
	if r.Err == nil {
		r.Note = "S_v, S_n, S_p are the share of yield allowed at proof; " + r.Note
	}
	return r
}

// proofMember gathers a port with its load and strengths at proof.
func (m *model) proofMember(t *proofTest, p *portPart, s *loads.State, c *loadCase) (port.Member, error) {
	all, weldErr := m.weldsAt(p)
	yield := func(material string, w welds, wall float64) (float64, error) {
		x := m.metals.at(material, w, wall, m.t.Proof.Temperature)
		l, err := proofLimit(t.rules, math.Min(x.parent.Yield.Value, x.zone.Yield.Value), 1)
		return l.S, errors.Join(x.parentErr, x.zoneErr, err)
	}
	var q port.Member
	var e1, e2, e3, e4, e5, e6, e7 error
	q.Strengths.Wall, e1 = yield(p.host.material, all, p.host.nominal)
	q.Strengths.Tube, e2 = yield(p.in.Tube.Material, m.tubeWelds(p), p.in.Tube.Wall)
	q.Strengths.Pad = q.Strengths.Wall
	if pad := p.in.Pad; pad != nil && pad.Material != "" {
		q.Strengths.Pad, e3 = yield(pad.Material, all, pad.Thickness)
	}
	q.Strengths.EfficiencyTube, e4 = m.tubeEfficiency(p, c.rule)
	q.Strengths.EfficiencyMeridional, e5 = m.seamThrough(p, c.rule)
	q.Strengths.EfficiencyTransverse = q.Strengths.EfficiencyMeridional
	q.Load, e6 = m.portLoad(p, s, c)
	q.Port, e7 = m.withInsert(p, c.rule)
	if err := errors.Join(p.wallErr, p.host.refused, weldErr, e1, e2, e3, e4, e5, e6, e7); err != nil {
		return q, fmt.Errorf("at proof: %w", err)
	}
	return q, nil
}
