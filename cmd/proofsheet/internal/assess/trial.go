package assess

import (
	"fmt"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/report/check"
)

// A Trial is a tank resolved for sizing: the checks of one part or one port in
// every case and at proof, without the sheet round them.
type Trial struct {
	*model
	cases []*loadCase
	test  *proofTest // its plan and rules, made when they are first asked for
}

// NewTrial resolves a tank; the error is that of [Assess].
func NewTrial(t *tank.Tank) (*Trial, error) {
	m, err := newModel(t)
	if err != nil {
		return nil, err
	}
	m.trial = true
	m.masses, m.massErr = m.structure()
	tr := &Trial{model: m}
	tr.cases, err = m.cases()
	tr.operate(tr.cases)
	return tr, err
}

// moments returns every case, a history by the instants at which something
// governs.
func (tr *Trial) moments() (out []*loadCase) {
	for _, c := range tr.cases {
		out = append(out, c.moments()...)
	}
	return out
}

// Part makes the checks of the cylinder or a head, named as in check ids, in
// every case; until, when it returns false for one, ends it early.
func (tr *Trial) Part(name string, until func(check.Result) bool) {
	tr.lookAtRanges()
	for _, c := range tr.moments() {
		for _, s := range c.states {
			for _, r := range tr.partChecks(name, s, c) {
				r.Case, r.Rule = c.name, string(c.rule)
				if !until(r) {
					return
				}
			}
		}
	}
}

// partChecks makes the checks of the cylinder or a head in one state.
func (tr *Trial) partChecks(name string, s *loads.State, c *loadCase) []check.Result {
	if name == "cylinder" {
		return tr.checkWholeCylinder(s, c)
	}
	for _, h := range tr.ends() {
		if h.name == name {
			return tr.checkHead(h, s, c)
		}
	}
	return nil
}

// Port makes the checks of the ports of a group in every case until a call
// returns false: of each by itself first, then of their neighbours on the wall.
func (tr *Trial) Port(group string, until func(check.Result) bool) {
	pass := func(c *loadCase, rs ...check.Result) bool {
		for _, r := range rs {
			r.Case, r.Rule = c.name, string(c.rule)
			if !until(r) {
				return false
			}
		}
		return true
	}
	for _, p := range tr.ports { // ports of a group are mostly alike: the first one speaks first
		for _, c := range tr.moments() {
			for _, s := range c.states {
				if p.in.Group != group {
					continue
				}
				q, err := tr.member(p, s, c)
				if !pass(c, append(tr.checkPort(p, q, err), tr.checkFitted(p, s, c)...)...) {
					return
				}
			}
		}
	}
	for _, c := range tr.moments() {
		for _, s := range c.states {
			members, errs := tr.neighbours(group, s, c)
			for i, p := range tr.ports {
				if p.in.Group == group && !pass(c, tr.checkSpacing(i, members, errs, unadvised)) {
					return
				}
			}
		}
	}
	tr.portsAtProof(group, until)
}

// portsAtProof makes the checks of a group at the highest pressure of the test.
func (tr *Trial) portsAtProof(group string, until func(check.Result) bool) {
	t := tr.planned()
	if t.err != nil {
		return // without a plan nothing is tested; the parts say why
	}
	c, s, err := tr.proofState(t)
	for _, p := range tr.ports {
		if p.in.Group != group {
			continue
		}
		for _, r := range tr.proofPort(t, p, s, c, err) {
			if r.Case = "proof"; !until(r) {
				return
			}
		}
	}
}

// planned returns the plan of the test with the rules in force.
func (tr *Trial) planned() *proofTest {
	if tr.test == nil {
		t := &proofTest{points: tr.proofPoints(tr.cases)}
		if t.rules, t.err = tr.proofRules(tr.cases); t.err == nil {
			t.plan, t.err = tr.proofPlan(t, tr.cases, 0)
		}
		tr.test = t
	}
	return tr.test
}

// neighbours gathers the ports on the wall of a group; the others are left
// empty.
func (tr *Trial) neighbours(group string, s *loads.State, c *loadCase) ([]port.Member, []error) {
	members, errs, host := make([]port.Member, len(tr.ports)), make([]error, len(tr.ports)), ""
	for _, p := range tr.ports {
		if p.in.Group == group {
			host = p.host.name
		}
	}
	for i, p := range tr.ports {
		if p.host.name == host {
			members[i], errs[i] = tr.member(p, s, c)
		}
	}
	return members, errs
}

// Proof makes the checks of a part at the highest pressure of the test.
func (tr *Trial) Proof(name string) (out []check.Result) {
	tr.lookAtRanges()
	t := tr.planned()
	if t.err != nil {
		return []check.Result{check.NotMade("proof/yield", "Proof: membrane stress", t.err)}
	}
	c, s, err := tr.proofState(t)
	if err != nil {
		return []check.Result{check.NotMade("proof/yield", "Proof: membrane stress", err)}
	}
	if name == "cylinder" {
		return tr.proofCylinder(t, s, c)
	}
	for _, r := range append(append(tr.proofKnuckles(t), tr.proofJunctions(t)...), tr.proofBolted(t)...) {
		if strings.HasPrefix(r.ID, name+"/") {
			out = append(out, r)
		}
	}
	for _, h := range tr.ends() {
		if h.name == name {
			out = append(out, tr.proofHead(t, h, s, c))
			if h.in.Tip != nil {
				out = append(out, tr.proofTip(t, h, s, c))
			}
		}
	}
	return out
}

// WithPort returns the trial with the ports of a group changed; what does not
// depend on them is shared.
func (tr *Trial) WithPort(group string, change func(*tank.Port)) (*Trial, error) {
	m := *tr.model
	t := *tr.t
	t.Port = append([]tank.Port(nil), tr.t.Port...)
	for i := range t.Port {
		if p := &t.Port[i]; p.Group == group {
			if p.Pad != nil {
				pad := *p.Pad
				p.Pad = &pad
			}
			change(p)
		}
	}
	m.t, m.ports, m.strengths, m.stables = &t, nil, nil, map[stableKey]*stableCylinder{}
	if err := m.newPorts(); err != nil {
		return nil, err
	}
	return &Trial{model: &m, cases: tr.cases, test: tr.planned()}, nil
}

// PortMass returns the mass of the tubes and pads of a group [kg].
func (tr *Trial) PortMass(group string) (float64, error) {
	sum := 0.0
	for _, p := range tr.ports {
		if p.in.Group != group {
			continue
		}
		props := tr.metals.at(p.in.Tube.Material, "", p.in.Tube.Wall, roomTemperature)
		ρ := props.parent.Density.Value
		if props.parentErr != nil || !(ρ > 0) {
			return 0, fmt.Errorf("port %s: the density of its tube is not known", p.in.Name)
		}
		sum += ρ * p.metal()
	}
	return sum, nil
}

// DryMass returns the mass of the empty tank [kg].
func (tr *Trial) DryMass() (float64, error) {
	ms, err := tr.structure()
	return dryMass(ms), err
}
