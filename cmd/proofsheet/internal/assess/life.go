package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell/life"
)

const (
	lifeID    = "tank/life"
	lifeTitle = "Tank: fatigue of its welds over every cycle"
)

// proofCycles is how often the plan goes up to the proof pressure [-], and
// leakTests how often to MEOP after it [-].
const proofCycles, leakTests = 2, 1

// A lifeCycle is one kind of cycle, from empty through what its states make of it.
type lifeCycle struct {
	name  string
	count float64 // [-]
	at    []*loadCase
}

// lifeCycles lists every planned cycle: those of the cases and of the flight, the
// proof at the highest pressure it can reach, and the leak test at MEOP. A case
// without its number is an error.
func (m *model) lifeCycles(cases []*loadCase) (out []lifeCycle, err error) {
	count := map[string]*float64{}
	for _, c := range m.t.Case {
		count[c.Name] = c.Cycles
	}
	if m.t.Flight != nil {
		count["flight"] = m.t.Flight.Cycles
	}
	var open []string
	for _, c := range cases[1:] { // the first is MEOP, which is no event
		n := count[c.name]
		if n == nil {
			open = append(open, c.name)
			continue
		}
		out = append(out, lifeCycle{c.name, *n, c.moments()})
	}
	if len(cases) == 1 {
		return nil, errors.New("no case says how often the tank is pressurised: write cases with cycles")
	}
	if open != nil {
		return nil, fmt.Errorf("how often is not known of case %s: write its cycles, every filling and test on the ground included", strings.Join(open, ", "))
	}
	p, err := m.proofCase(cases)
	if err != nil {
		return nil, fmt.Errorf("the cycles of the proof: %w", err)
	}
	return append(out, lifeCycle{"proof", proofCycles, []*loadCase{p}}, lifeCycle{"leak test at MEOP", leakTests, []*loadCase{cases[0]}}), nil
}

// proofCase returns the tank at the highest pressure that the proof can reach.
func (m *model) proofCase(cases []*loadCase) (*loadCase, error) {
	t := &proofTest{points: m.proofPoints(cases)}
	if t.rules, t.err = m.proofRules(cases); t.err != nil {
		return nil, t.err
	}
	if t.plan, t.err = m.proofPlan(t, cases, 0); t.err != nil {
		return nil, t.err
	}
	c, _, err := m.proofState(t)
	return c, err
}

// checkLife asks whether every weld of the tank stands every cycle.
func (m *model) checkLife(cases []*loadCase) check.Result {
	cycles, err := m.lifeCycles(cases)
	if err != nil {
		return check.NotMade(lifeID, lifeTitle, err)
	}
	var details []life.Detail
	for _, w := range m.lifeWelds() {
		d := m.detail(w, cycles)
		details = append(details, d)
		if edge, ok := m.holeEdge(w, d, cycles); ok {
			details = append(details, edge)
		}
	}
	r := life.CheckLife(lifeID, lifeTitle, details)
	if r.Status() == check.NotAssessed {
		return r
	}
	total := 0.0
	for _, c := range cycles {
		total += c.count
	}
	r.Note += "; cycles of all cases counted in the worst order, the largest stress of any next to the least of any; a moment counts to either side; what shakes within one is not counted, nor fatigue away from welds"
	r.Note += m.withoutStrainLife()
	if total > aluminiumCycles && m.hasFamily("aluminium") {
		r.Note += fmt.Sprintf("; the European rule for aluminium vessels ends at %d full cycles", aluminiumCycles)
	}
	return r
}

// aluminiumCycles is where EN 13445-8 ends [-]; read.
const aluminiumCycles = 500

func (m *model) hasFamily(family string) bool {
	for _, p := range []*part{m.cyl, &m.aft.part, &m.fwd.part} {
		if m.familyOf(p.material) == family {
			return true
		}
	}
	return false
}

// familyOf returns the family of a named material, "" where it is not known.
func (m *model) familyOf(name string) string {
	mat, _ := m.t.FindMaterial(name)
	if a, ok := material.FindAlloy(mat.Alloy); ok {
		return a.Family
	}
	return mat.Family
}

// detail makes the fatigue question of one weld.
func (m *model) detail(w lifeWeld, cycles []lifeCycle) life.Detail {
	d := life.Detail{Where: w.where, Yield: math.Inf(1), Local: w.local}
	errs := []error{w.err}
	if w.err == nil {
		d.Class, d.Err = w.class()
		errs = append(errs, d.Err)
	}
	var events []life.Event
	for _, c := range cycles {
		var over span
		for _, at := range c.at {
			y, err := m.zoneYield(w, at.temperature)
			errs, d.Yield = append(errs, err), math.Min(d.Yield, y)
			for _, s := range at.states {
				if errors.Join(errs...) != nil {
					break
				}
				got, err := w.stress(s, at)
				errs = append(errs, err)
				over = over.with(got)
			}
		}
		over = over.bent(w.bend)
		events = append(events, life.Event{Name: c.name, Least: over.least, Most: over.most, Count: c.count})
	}
	d.Cycles, d.Err = life.WorstOrder(events), firstOf(errs)
	return d
}

// firstOf returns the first error of many that say the same in other words.
func firstOf(errs []error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// zoneYield returns the least yield strength in the zone of a weld at T [Pa].
func (m *model) zoneYield(w lifeWeld, T float64) (float64, error) {
	least := math.Inf(1)
	for _, p := range w.parts {
		x := m.metals.at(p.material, m.weldsOf(p), p.nominal, T)
		if err := errors.Join(p.refused, x.zoneErr); err != nil {
			return math.NaN(), err
		}
		least = math.Min(least, x.zone.Yield.Value)
	}
	return least, nil
}

// A lifeWeld is a weld at which fatigue is asked for.
type lifeWeld struct {
	where  string
	joint  *tank.Joint // nil of a port, a tip and a ring
	of     *tank.Joint // with which a port or the tube at a tip is welded; nil where none is named
	port   bool
	along  bool // along the shell, the hoop stress across it
	parts  []*part
	bend   float64 // bending of its misalignment over the membrane stress [-]
	radius float64 // second principal radius of the wall; 0: the cylinder's [m]
	local  string  // of the stress, for the reader
	class  func() (life.Class, error)
	stress func(s *loads.State, c *loadCase) (span, error)
	plain  func(s *loads.State, c *loadCase) (span, error) // of an insert's weld the wall's own stress, not raised by the port
	err    error
}
