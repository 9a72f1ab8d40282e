package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/report/check"
)

// proofPorts asks of every port whether it holds at the highest pressure that the
// test can reach: metal round the hole, tube, welds and end thrust, with the share of
// the yield strength that the strictest rule allows at proof, of wall, tube and pad
// each, in place of their allowable stress. Without a plan each is listed with the reason.
func (m *model) proofPorts(t *proofTest) (out []check.Result) {
	c, s, err := (*loadCase)(nil), (*loads.State)(nil), t.err
	if err == nil {
		c, s, err = m.proofState(t)
	}
	for _, p := range m.ports {
		out = append(out, m.proofPort(t, p, s, c, err)...)
	}
	return out
}

// proofPort makes the checks of one port.
func (m *model) proofPort(t *proofTest, p *portPart, s *loads.State, c *loadCase, err error) []check.Result {
	var q port.Member
	var r port.AreaReport
	if err == nil && !m.closesTip(p) {
		if q, err = m.proofMember(t, p, s, c); err == nil {
			r, err = q.Port.Area(p.wall, q.Load, q.Strengths)
		}
	}
	name := p.in.Name
	var out []check.Result
	if err != nil || m.closesTip(p) {
		for _, row := range portChecks(p) {
			id, title := "port."+name+"/"+row[0], "Port "+name+": "+row[1]
			if m.closesTip(p) {
				out = append(out, check.NotApplicableTo(id, title, "it closes the cone's tip: the joint there is held at proof"))
				continue
			}
			out = append(out, check.NotMade(id, title, err))
		}
	} else {
		out = []check.Result{r.Check(name), r.CheckNeckAtProof(name), r.CheckWeldAtProof(name), m.proofThrust(t, p, r)}
		if p.in.Insert != nil {
			out = append(out, r.CheckInsert(name))
		}
	}
	for i := range out {
		if x := &out[i]; x.Status() == check.Satisfied || x.Status() == check.NotSatisfied {
			x.Note = strings.TrimSuffix("the strength of wall, tube and pad is the share of yield allowed at proof; "+x.Note, "; ")
		}
		out[i].Title += ", at proof"
	}
	return out
}

// portChecks lists the checks of the metal of a port, id and title.
func portChecks(p *portPart) [][2]string {
	rows := [][2]string{{"area", "metal replaced round the hole"}, {"neck", "tube wall"}, {"weld", "attachment welds"}, {"thrust", "end thrust and load from outside"}}
	if p.in.Insert != nil {
		rows = append(rows, [2]string{"insert", "weld round the inserted plate"})
	}
	return rows
}

// proofThrust holds tube and welds, and the wall where the piping loads it, to the
// limits of the test: local membrane stress to yield, with bending to the limit of
// primary bending. The piping's load is taken as it is in service: what hangs on the
// port in the test is not known.
func (m *model) proofThrust(t *proofTest, p *portPart, r port.AreaReport) check.Result {
	l := p.in.Load
	if l == nil {
		return r.CheckThrust(p.in.Name, port.External{})
	}
	x := port.External{Force: math.Abs(l.Force), Moment: math.Abs(l.Moment)}
	all, weldErr := m.weldsAt(p)
	metal := m.metals.at(p.host.material, all, p.host.nominal, m.t.Proof.Temperature)
	yield := math.Min(metal.parent.Yield.Value, metal.zone.Yield.Value)
	k, _, limitErr := proof.Limit(t.rules, 1)
	general, wallErr := r.GeneralMembrane()
	surface, bendErr := proof.BendingLimit(k, math.Min(general, yield), yield)
	out := r.CheckThrustAtProof(p.in.Name, x, yield, surface)
	if err := errors.Join(weldErr, metal.parentErr, metal.zoneErr, limitErr, wallErr, bendErr); err != nil {
		return check.NotMade(out.ID, out.Title, err)
	}
	out.Note += "; the load is that of service: a port that is blanked off for the test carries less"
	return out
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
	if q.Load, e6 = m.portLoad(p, s, c); e6 == nil && q.Load.Required > 0 && !q.Load.Convex {
		q.Load.Required, e6 = m.proofFlat(p, q, c)
	}
	q.Port, e7 = m.withInsert(p, c.rule)
	if err := errors.Join(p.wallErr, p.host.refused, weldErr, e1, e2, e3, e4, e5, e6, e7); err != nil {
		return q, fmt.Errorf("at proof: %w", err)
	}
	return q, nil
}

// proofFlat returns the thickness [m] that a flat head needs at proof without its port,
// bending held to the share of yield of a membrane, which is stricter than the limit of
// bending.
func (m *model) proofFlat(p *portPart, q port.Member, c *loadCase) (float64, error) {
	bolts := math.NaN()
	if p.head.bolted() {
		bolts = given(p.head.in.Bolts.Strength) / 4
	}
	return m.flatWall(p, q.Load.Pressure, q.Strengths.Wall, bolts, c)
}
