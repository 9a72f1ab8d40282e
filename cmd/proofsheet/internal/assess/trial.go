package assess

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
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

	states map[string][]operatingState // by which the ports of a wall are judged
	twins  []int                       // of each port: itself, or an earlier one that stands in the same company
}

// NewTrial resolves a tank; the error is that of [Assess].
func NewTrial(t *tank.Tank) (*Trial, error) {
	m, err := newModel(t)
	if err != nil {
		return nil, err
	}
	return newTrial(m)
}

// Like resolves a tank of the same materials, joints and basis: what has been looked up
// of them for this one is taken over.
func (tr *Trial) Like(t *tank.Tank) (*Trial, error) {
	m, err := newModel(t)
	if err != nil {
		return nil, err
	}
	maps.Copy(m.metals.found, tr.metals.found)
	maps.Copy(m.known.allowances, tr.known.allowances)
	return newTrial(m)
}

func newTrial(m *model) (*Trial, error) {
	m.masses, m.massErr = m.structure()
	tr := &Trial{model: m, states: map[string][]operatingState{}, twins: twins(m.t.Port)}
	var err error
	tr.cases, err = m.cases()
	m.coldWalls(tr.cases)
	tr.operate(tr.cases)
	return tr, err
}

// Bare returns the trial without the numerical shell: what fails by it fails, what
// rests on the shell is not assessed.
func (tr *Trial) Bare() *Trial {
	m := tr.fork()
	m.withoutShell, m.ranges = true, map[string]*jointRange{}
	return &Trial{model: m, cases: tr.cases, test: tr.test, states: tr.states, twins: tr.twins}
}

// Fork returns a trial that may be used beside this one at the same time.
func (tr *Trial) Fork() *Trial {
	return &Trial{model: tr.fork(), cases: tr.cases, test: tr.planned(), states: maps.Clone(tr.states), twins: tr.twins}
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

// Port makes the checks of the ports of a group until a call returns false: of each
// by itself first, then of their neighbours on the wall. Ports that differ in name and
// clock alone speak once, and of the states those that load the ports of the
// wall no more than another by the same rule and temperature are passed over: more
// pressure never helps an opening.
func (tr *Trial) Port(group string, until func(check.Result) bool) {
	var members []*portPart
	for _, p := range tr.ports {
		if p.in.Group == group {
			members = append(members, p)
		}
	}
	if len(members) == 0 {
		return
	}
	if members[0].in.Insert != nil { // its weld is held to the range over all of them
		tr.lookAtRanges()
	}
	states := tr.hardest(members[0].host.name)
	_ = tr.portsAlone(members, states, until) && tr.portsTogether(members, states, until) && tr.portsAtProof(group, until)
}

// portsAlone makes the checks of each port by itself.
func (tr *Trial) portsAlone(ports []*portPart, states []operatingState, until func(check.Result) bool) bool {
	for _, p := range ports { // where a port stands does not change with what loads it
		if !until(tr.placement(p)) {
			return false
		}
	}
	for _, o := range states {
		var spoken []port.Member
		for _, p := range ports {
			q, err := tr.member(p, o.state, o.c)
			if err == nil && slices.ContainsFunc(spoken, func(s port.Member) bool { return alike(s, q) }) {
				continue
			}
			spoken = append(spoken, q)
			for _, r := range append(tr.checkPort(p, &q, err, o.state, o.c), tr.checkFitted(p, o.state, o.c)...) {
				if r.Case, r.Rule = o.c.name, string(o.c.rule); !until(r) {
					return false
				}
			}
		}
	}
	return true
}

// portsTogether makes the checks of each port beside its neighbours; ports of a ring that
// stand in the same company, turned, speak once where all of that company is loaded alike.
func (tr *Trial) portsTogether(ports []*portPart, states []operatingState, until func(check.Result) bool) bool {
	for _, o := range states {
		members, errs := tr.neighbours(ports[0].host.name, o)
		even := true
		for i, p := range tr.ports {
			k := tr.twins[i]
			even = even && (p.host.name != ports[0].host.name || k == i || errs[i] == nil && errs[k] == nil && alike(members[i], members[k]))
		}
		walls := map[string]*wallPorts{}
		for i, p := range tr.ports {
			if !slices.Contains(ports, p) || even && tr.twins[i] != i {
				continue
			}
			r := tr.checkSpacing(i, members, errs, walls, unadvised)
			if r.Case, r.Rule = o.c.name, string(o.c.rule); !until(r) {
				return false
			}
		}
	}
	return true
}

// twins returns for each port the first one of its group from which all ports of the
// wall are seen as from itself, turned round the axis.
func twins(ports []tank.Port) []int {
	seen := func(i int) (out []string) {
		p := ports[i]
		for _, q := range ports {
			if q.On == p.On {
				turn := math.Mod(q.Clock-p.Clock+4*math.Pi+1e-9, 2*math.Pi)
				out = append(out, fmt.Sprintf("%s %.9f %.9f %.9f %.6f", q.Group, given(q.Radius), given(q.Station), q.Offset, turn))
			}
		}
		slices.Sort(out)
		return out
	}
	out, views := make([]int, len(ports)), make([][]string, len(ports))
	for i := range ports {
		out[i], views[i] = i, seen(i)
		for k := range i {
			if ports[k].Group == ports[i].Group && slices.Equal(views[k], views[i]) {
				out[i] = k
				break
			}
		}
	}
	return out
}

// alike reports whether two ports differ in name and clock alone.
func alike(a, b port.Member) bool {
	a.Port.Name, a.Port.Clock, a.Report = b.Port.Name, b.Port.Clock, b.Report
	return reflect.DeepEqual(a, b)
}

// hardest returns the states by which the ports of a wall are judged, found once and
// kept by every trial that is made of this one.
func (tr *Trial) hardest(host string) []operatingState {
	return once(tr.states, host, func() (kept []operatingState) {
		var loads [][]port.Load
		for _, c := range tr.moments() {
			for _, s := range c.states {
				o := operatingState{s, c}
				members, errs := tr.neighbours(host, o)
				var own []port.Load
				for i, q := range members {
					if errs[i] != nil {
						q.Load.Pressure = math.NaN() // below no other: it is kept
					}
					own = append(own, q.Load)
				}
				if !slices.ContainsFunc(kept, func(k operatingState) bool { return k.c.alikeFor(c) && below(own, loads[slices.Index(kept, k)]) }) {
					kept, loads = append(kept, o), append(loads, own)
				}
			}
		}
		return kept
	})
}

// alikeFor reports whether two cases hold a port to the same limits.
func (c *loadCase) alikeFor(o *loadCase) bool {
	return c.rule == o.rule && c.temperature == o.temperature && c.outside() == o.outside()
}

// below reports whether every load is at most the other one, in all that is in it.
func below(a, b []port.Load) bool {
	for i, x := range a {
		y := b[i]
		if !(x.Convex == y.Convex && x.Pressure <= y.Pressure && x.Hoop <= y.Hoop && x.Meridional <= y.Meridional && x.HoopAsked <= y.HoopAsked && x.MeridionalAsked <= y.MeridionalAsked && x.Required <= y.Required &&
			x.Membrane <= y.Membrane && x.Face <= y.Face) {
			return false
		}
	}
	return true
}

// portsAtProof makes the checks of a group at the highest pressure of the test.
func (tr *Trial) portsAtProof(group string, until func(check.Result) bool) bool {
	t := tr.planned()
	if t.err != nil {
		return true // without a plan nothing is tested; the parts say why
	}
	c, s, err := tr.proofState(t)
	for _, p := range tr.ports {
		if p.in.Group != group {
			continue
		}
		for _, r := range tr.proofPort(t, p, s, c, err) {
			if r.Case = "proof"; !until(r) {
				return false
			}
		}
	}
	return true
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

// neighbours gathers the ports on a wall; the others are left empty.
func (tr *Trial) neighbours(host string, o operatingState) ([]port.Member, []error) {
	members, errs := make([]port.Member, len(tr.ports)), make([]error, len(tr.ports))
	for i, p := range tr.ports {
		if p.host.name == host {
			members[i], errs[i] = tr.member(p, o.state, o.c)
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
func (tr *Trial) WithPort(group string, change func(*tank.Port)) *Trial {
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
	m.t, m.stables, m.known = &t, map[stableKey]*stableCylinder{}, m.known.withoutPorts()
	m.ports = append([]*portPart(nil), m.ports...)
	for i, p := range m.ports {
		if p.in.Group == group {
			m.ports[i] = m.newPort(t.Port[i])
		}
	}
	return &Trial{model: &m, cases: tr.cases, test: tr.planned(), states: tr.states, twins: tr.twins}
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
