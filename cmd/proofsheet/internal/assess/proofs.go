package assess

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/check"
	"proofsheet/report/unit"
)

// A proofTest is the plan with the checks that go with it.
type proofTest struct {
	plan   *proof.Plan
	err    error // why there is no plan
	rules  []proof.Rule
	points []proofPoint
	yield  check.Result
	reach  check.Result
	others []check.Result // knuckles and brittleness at proof
	ports  []check.Result // the metal round each hole at proof; one that is not made is named in the plan
	use    float64        // worst stress over limit at proof [-]
}

// issued reports whether the plan may be issued: every check at proof holds or
// does not arise. Otherwise it says which does not.
func (t *proofTest) issued() (bool, string) {
	if t.plan == nil {
		return false, t.err.Error()
	}
	for _, r := range t.ports {
		if r.Status() == check.NotSatisfied {
			return false, r.ID + " at proof is " + r.Status().String() + ". The pressure is never lowered to fit; the port, its tube or its pad is changed"
		}
	}
	for _, r := range append([]check.Result{t.yield, t.reach}, t.others...) {
		if s := r.Status(); s != check.Satisfied && s != check.NotApplicable {
			return false, r.ID + " at proof is " + s.String() + ". The pressure is never lowered to fit; the wall, the metal or the temperature is changed"
		}
	}
	return true, ""
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
		t.others = m.proofBolted(t)
	} else {
		t.reach = t.plan.CheckReach()
		t.yield = m.proofYield(t)
		t.others = slices.Concat(m.proofKnuckles(t), m.proofConvex(t), m.proofJunctions(t), m.proofRings(t), m.proofBolted(t), []check.Result{m.proofBrittle(), m.proofZones(t)})
	}
	t.ports = m.proofPorts(t)
	t.reach.Case, t.yield.Case = "proof", "proof"
	for _, rs := range [][]check.Result{t.others, t.ports} {
		for i := range rs {
			rs[i].Case, rs[i].Rule = "proof", ""
		}
	}
	for _, r := range append([]check.Result{t.yield}, t.others...) {
		if s := r.Status(); (s == check.Satisfied || s == check.NotSatisfied) && !strings.HasPrefix(r.ID, "tank/") {
			t.use = math.Max(t.use, r.Factor*r.Demand.Value/r.Capacity.Value)
		}
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
// highest in any case. The instants of a history share most of these stations: each is
// one point, since what a point must see is of every case.
func (m *model) proofPoints(cases []*loadCase) (out []proofPoint) {
	lo, hi := m.in.Bounds()
	L := m.t.Cylinder.Length
	for _, row := range []struct {
		p          *part
		from, to   float64 // [m]
		first, end string
	}{
		{&m.aft.part, lo, 0, "lowest point", "seam"}, {m.cyl, 0, L, "aft seam", "forward seam"}, {&m.fwd.part, L, hi, "seam", "highest point"},
	} {
		out = append(out, proofPoint{row.p.name + ", " + row.first, row.p, row.from}, proofPoint{row.p.name + ", " + row.end, row.p, row.to})
		for _, c := range cases {
			seen := map[float64]bool{}
			for _, s := range c.states {
				if _, at := s.HighestPressure(row.from, row.to); at > row.from+1e-6 && at < row.to-1e-6 && !seen[math.Round(at*1e9)] {
					seen[math.Round(at*1e9)] = true // to a nanometre, which no head of liquid shows
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

// depths returns how deep the ring of wall at a station lies under the highest
// point of the test liquid, at its top and at its bottom [m].
func (m *model) depths(z float64) (least, most float64) {
	lo, hi := m.in.Bounds()
	switch m.t.Proof.Orientation {
	case "inverted":
		return z - lo, z - lo
	case "horizontal":
		_, r := m.in.Radii(z)
		return m.in.radius - r, m.in.radius + r
	default:
		return hi - z, hi - z
	}
}

// proofPlan makes the plan.
func (m *model) proofPlan(t *proofTest, cases []*loadCase, near float64) (*proof.Plan, error) {
	p := m.t.Proof
	in := proof.Inputs{
		Method: proof.Method(p.Method), Rules: t.rules, MEOP: m.t.Pressure.MEOP, GaugeHeight: p.GaugeHeight,
		Chosen: given(p.Pressure), WorkingTime: given(p.WorkingTime), Near: near, GaugeTolerance: given(p.GaugeTolerance),
	}
	if !m.defaulted("proof.hold") {
		in.HoldAsked = p.Hold
	}
	var err error
	if in.Method == proof.Pneumatic {
		for _, j := range m.t.Joint {
			if j.Examination != "full" {
				return nil, fmt.Errorf("a proof with gas asks for every weld examined over its full length; joint %s is examined %q: use water", j.Name, j.Examination)
			}
		}
	}
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
		least, most := m.depths(pt.z)
		if in.Method == proof.Pneumatic {
			least, most = 0, 0
		}
		in.Points = append(in.Points, proof.Point{Name: pt.name, Service: m.service(pt.z, cases),
			WaterDepth: math.Max(least, 0), Deepest: math.Max(most, 0), Ratios: ratios})
	}
	return proof.NewPlan(in)
}

// proofChosen refuses a proof pressure in the tank file that is under what the rules in
// force ask the gauge to show. Where these cannot tell, the checks at proof say why.
func (m *model) proofChosen(cases []*loadCase) error {
	chosen := m.t.Proof.Pressure
	if chosen == nil {
		return nil
	}
	t := &proofTest{points: m.proofPoints(cases)}
	if t.rules, t.err = m.proofRules(cases); t.err != nil {
		return nil
	}
	free, left := m.fork(), *m.t
	left.Proof.Pressure, free.t = nil, &left
	plan, err := free.proofPlan(t, cases, 0)
	if err != nil || *chosen >= plan.Setting {
		return nil
	}
	written := strings.Trim(m.t.Written("proof.pressure"), `"'`)
	like := func(v float64) string { return unit.Like(unit.Pressure, v, written) }
	enough, up := "", 0.0
	for v := math.Inf(-1); v < plan.Setting; up += 1e-5 { // until the five digits are not rounded down
		enough = like(plan.Setting * (1 + up))
		if v, err = unit.Parse(unit.Pressure, enough); err != nil {
			return err
		}
	}
	s := plan.Points[plan.Governs]
	return tank.Faults{m.t.Fault("proof.pressure", "%s is under %s, which rule %q asks the gauge to show for %s; write at least %q, or leave it out",
		like(*chosen), like(plan.Setting), s.Rule, s.Name, enough)}
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
// service, of a part and its weld zone; the hottest case is the service. Of yield
// and tensile strength the one counts whose ratio is larger: the test is not under
// what either asks for.
func (m *model) ratios(p *part, cases []*loadCase) ([]proof.Ratio, error) {
	at := func(T float64) metal { return m.metals.at(p.material, m.weldsOf(p), p.nominal, T) }
	test, service := at(m.t.Proof.Temperature), at(hottest(cases))
	if err := errors.Join(test.parentErr, service.parentErr); err != nil {
		return nil, err
	}
	var out []proof.Ratio
	add := func(name string, a, b material.Properties) error {
		strength, inService := a.Yield.Value, b.Yield.Value
		if a.Ultimate.Value/b.Ultimate.Value > strength/inService {
			strength, inService = a.Ultimate.Value, b.Ultimate.Value
		}
		r, err := proof.NewRatio(name, strength, inService)
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
