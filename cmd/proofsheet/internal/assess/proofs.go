package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// A proofTest is the plan with the checks that go with it.
type proofTest struct {
	plan   *proof.Plan
	err    error // why there is no plan
	rules  []proof.Rule
	points []proofPoint
	yield  check.Result
	reach  check.Result
	others []check.Result // of knuckles at proof
	use    float64        // worst stress over limit at proof [-]
}

// A proofPoint is a station of a part that the proof has to show.
type proofPoint struct {
	name string
	p    *part
	z    float64 // [m]
}

// newProof plans the proof and makes its checks. near is the highest ullage
// pressure with people near [Pa].
func (m *model) newProof(cases []*loadCase, near float64) *proofTest {
	t := &proofTest{points: m.proofPoints(cases)}
	if t.rules, t.err = m.proofRules(cases); t.err == nil {
		t.plan, t.err = m.proofPlan(t, cases, near)
	}
	if t.err != nil {
		t.reach = check.NotMade("proof/reach", "Proof: does every point see its factor", t.err)
		t.yield = check.NotMade("proof/yield", "Proof: membrane stress at the highest pressure of the test", t.err)
	} else {
		t.reach = t.plan.CheckReach()
		t.yield = m.proofYield(t)
		t.others = m.proofKnuckles(t)
	}
	t.reach.Case, t.yield.Case = "proof", "proof"
	for i := range t.others {
		t.others[i].Case, t.others[i].Rule = "proof", ""
	}
	if s := t.yield.Status(); s == check.Satisfied || s == check.NotSatisfied {
		t.use = t.yield.Demand.Value / t.yield.Capacity.Value
	}
	return t
}

// proofRules returns the numbers of every rule in force, [basis] overrides
// among them.
func (m *model) proofRules(cases []*loadCase) (out []proof.Rule, err error) {
	for _, name := range rules(m.t.Basis.Rule, cases) {
		r, err := proof.DefaultRule(string(name), proof.Method(m.t.Proof.Method), !m.group4)
		if err != nil {
			return nil, err
		}
		if string(name) == m.t.Basis.Rule {
			for _, o := range overrides(m.t.Basis) {
				src := check.Source{Doc: o.source, Where: "given in the tank file", How: check.Practice}
				switch o.key {
				case "proof_factor":
					r.PF, r.LeastPF, r.Source = o.value, 0, src
				case "proof_limit":
					r.K, r.LimitSource = o.value, src
				}
			}
		}
		out = append(out, r)
	}
	return out, nil
}

// proofPoints returns both ends of every part and where its pressure is
// highest in any case.
func (m *model) proofPoints(cases []*loadCase) (out []proofPoint) {
	lo, hi := m.in.Bounds()
	L := m.t.Cylinder.Length
	for _, row := range []struct {
		p          *part
		from, to   float64 // [m]
		first, end string
	}{
		{&m.aft.part, lo, 0, "lowest point", "seam"}, {&m.cyl, 0, L, "aft seam", "forward seam"}, {&m.fwd.part, L, hi, "seam", "highest point"},
	} {
		out = append(out, proofPoint{row.p.name + ", " + row.first, row.p, row.from}, proofPoint{row.p.name + ", " + row.end, row.p, row.to})
		for _, c := range cases {
			for _, s := range c.states {
				if _, at := s.HighestPressure(row.from, row.to); at > row.from+1e-6 && at < row.to-1e-6 {
					out = append(out, proofPoint{fmt.Sprintf("%s, worst of case %s", row.p.name, c.name), row.p, at})
				}
			}
		}
	}
	return out
}

// service returns the highest pressure in service at a station [Pa]: MEOP with
// the head of every case on it.
func (m *model) service(z float64, cases []*loadCase) float64 {
	most := m.t.Pressure.MEOP
	for _, c := range cases {
		for _, s := range c.states {
			head := s.PressureWorst(z) - s.UllagePressure
			most = math.Max(most, math.Max(c.ullage, m.t.Pressure.MEOP)+head)
		}
	}
	return most
}

// depth returns how deep a station lies under the highest point of the test
// liquid [m], at the deepest of its ring.
func (m *model) depth(z float64) float64 {
	lo, hi := m.in.Bounds()
	switch m.t.Proof.Orientation {
	case "inverted":
		return z - lo
	case "horizontal":
		_, r := m.in.Radii(z)
		return m.in.radius + r
	default:
		return hi - z
	}
}

// proofPlan makes the plan.
func (m *model) proofPlan(t *proofTest, cases []*loadCase, near float64) (*proof.Plan, error) {
	p := m.t.Proof
	in := proof.Inputs{
		Method: proof.Method(p.Method), Rules: t.rules, MEOP: m.t.Pressure.MEOP, GaugeHeight: p.GaugeHeight,
		Chosen: given(p.Pressure), WorkingTime: given(p.WorkingTime), Near: near,
	}
	if !m.defaulted("proof.hold") {
		in.HoldAsked = p.Hold
	}
	var err error
	if in.Method == proof.Hydrostatic {
		if in.WaterDensity, err = m.testDensity(); err != nil {
			return nil, err
		}
	}
	for _, pt := range t.points {
		ratios, err := m.ratios(pt.p, cases)
		if err != nil {
			return nil, err
		}
		depth := m.depth(pt.z)
		if in.Method == proof.Pneumatic {
			depth = 0
		}
		in.Points = append(in.Points, proof.Point{Name: pt.name, Service: m.service(pt.z, cases), WaterDepth: math.Max(depth, 0), Ratios: ratios})
	}
	plan, err := proof.NewPlan(in)
	if err != nil || p.GaugeTolerance == nil {
		return plan, err
	}
	in.GaugeShare = *p.GaugeTolerance / plan.Setting // the share follows the setting it is a share of
	return proof.NewPlan(in)
}

// defaulted reports whether a key was left out.
func (m *model) defaulted(key string) bool {
	for _, d := range m.t.Defaults {
		if d.Key == key {
			return true
		}
	}
	return false
}

// testDensity returns the density of the test liquid [kg/m3].
func (m *model) testDensity() (float64, error) {
	f, ok := fluid.Find(m.t.Proof.Fluid)
	if !ok {
		return math.NaN(), fmt.Errorf("test fluid %q is not known", m.t.Proof.Fluid)
	}
	v, err := f.Density(m.t.Proof.Temperature)
	return v.Value, err
}

// ratios returns the property that sets the allowable, at the test over in
// service, of a part and its weld zone; the hottest case is the service.
func (m *model) ratios(p *part, cases []*loadCase) ([]proof.Ratio, error) {
	at := func(T float64) metal { return m.metals.at(p.material, m.process(p), p.nominal, T) }
	test, service := at(m.t.Proof.Temperature), at(hottest(cases))
	if err := errors.Join(test.parentErr, service.parentErr); err != nil {
		return nil, err
	}
	var out []proof.Ratio
	add := func(name string, a, b material.Properties) error {
		worst := math.Max(a.Yield.Value/b.Yield.Value, a.Ultimate.Value/b.Ultimate.Value)
		r, err := proof.NewRatio(name, worst, 1)
		out = append(out, r)
		return err
	}
	if err := add(p.material, test.parent, service.parent); err != nil {
		return nil, err
	}
	if test.zoneErr != nil || service.zoneErr != nil {
		return out, nil // the weld zone is refused by every check that needs it
	}
	return out, add(p.material+", weld zone", test.zone, service.zone)
}

// process returns the weld process whose zone is the weaker at a part.
func (m *model) process(p *part) string {
	var js []*tank.Joint
	switch p.name {
	case "cylinder":
		js = append(m.girthJoints(), m.long)
	case "head.aft":
		js = []*tank.Joint{m.aft.seam, m.aft.segment}
	default:
		js = []*tank.Joint{m.fwd.seam, m.fwd.segment}
	}
	process, first := "", true
	for _, j := range js {
		if j == nil {
			continue
		}
		if first {
			process, first = j.Process, false
		}
		process = slower(process, j.Process)
	}
	return process
}

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

// proofYields returns the yield of a part and of its weld zone at the test [Pa].
func (m *model) proofYields(p *part) (parent, zone float64, err error) {
	x := m.metals.at(p.material, m.process(p), p.nominal, m.t.Proof.Temperature)
	return x.parent.Yield.Value, x.zone.Yield.Value, errors.Join(p.refused, x.parentErr, x.zoneErr)
}

// proofCylinder makes the membrane checks of the cylinder at proof.
func (m *model) proofCylinder(t *proofTest, s *loads.State, c *loadCase) []check.Result {
	cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
	seams, _, longErr, girthErr := m.cylinderSeams(c)
	cond, condErr := m.cylinderCondition(s, c)
	parent, zone, err := m.proofYields(&m.cyl)
	var a shell.Allowables
	var e1, e2, e3, e4 error
	a.Parent, e1 = proofLimit(t.rules, parent, 1)
	a.Zone, e2 = proofLimit(t.rules, zone, 1)
	a.SeamLong, e3 = proofLimit(t.rules, math.Min(parent, zone), seams.Long)
	a.SeamGirth, e4 = proofLimit(t.rules, math.Min(parent, zone), seams.Girth)
	seams.Long, seams.Girth = 1, 1 // already in the limits
	if err = errors.Join(m.massErr, longErr, girthErr, condErr, err, e1, e2, e3, e4); err != nil {
		return []check.Result{check.NotMade("cylinder/hoop", "Cylinder: membrane stress", err)}
	}
	return []check.Result{cyl.CheckHoop(cond, a, seams), cyl.CheckLongitudinal(cond, a, seams), cyl.CheckEquivalent(cond, a, seams)}
}

// proofLimits returns the efficiencies and the limits of a head at proof.
func (m *model) proofLimits(t *proofTest, h *headPart, c *loadCase) (heads.Seams, heads.Allowables, error) {
	seams, a, err := m.headSeams(h, c)
	parent, zone, yieldErr := m.proofYields(&h.part)
	_, shellZone, shellErr := m.proofYields(&m.cyl)
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
	a.ZoneKnown = nil
	seams.Segment, seams.Girth = 1, 1 // already in the limits
	return seams, a, errors.Join(m.massErr, err, yieldErr, shellErr, e1, e2, e3, e4)
}

// proofHead makes the membrane check of a head at proof.
func (m *model) proofHead(t *proofTest, h *headPart, s *loads.State, c *loadCase) check.Result {
	seams, a, err := m.proofLimits(t, h, c)
	if err != nil {
		return check.NotMade(h.name+"/membrane", h.title+": membrane stress", err)
	}
	return heads.CheckMembrane(h.nominal0, h.end, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}, m.headLoading(h, s, c), a, seams)
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
