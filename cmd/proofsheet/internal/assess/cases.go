package assess

import (
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/material/fluid"
)

// atmosphere is the outside pressure where none is written [Pa]: 1 atm, exact
// by definition.
const atmosphere = 101325

// roomTemperature is 20 degC [K], the metal's temperature where it is not
// written and the liquid is colder.
const roomTemperature = 293.15

// A loadCase is one case resolved, with its liquid at rest in the tank.
type loadCase struct {
	name, people string
	rule         material.Rule
	ullage       float64 // across the wall [Pa]
	least        float64 // smallest ullage pressure with the same loads, across the wall [Pa]
	axial        float64 // load factor, a sudden step with its dynamic factor [-]
	lateral      float64 // load factor [-]
	volume       float64 // of the liquid, flat, at its densest unless the mass is given [m3]
	temperature  float64 // of the metal for strength: in a history the hottest of its band [K]
	metal        float64 // of the metal itself [K]
	coldest      float64 // of the metal for brittleness [K]
	states       []*loads.State
	ramp         float64 // of the metal's temperature at the liquid's level [m]
	sections     []loads.Section
	ground       bool
	kind         string   // of a ready-made ground case, or ""
	gust         float64  // pressure of the wind on the wall, where the program takes the wind [Pa]
	present      bool     // the other load is always there
	slosh        *float64 // how high the liquid swings on the wall [m]; nil is at rest

	time     *float64    // of an instant of the history [s]
	instants []*loadCase // of the history: those that may govern
	forms    []*loadCase // the case itself and the other forms it may take, see otherForms; nil: itself alone
	form     string      // what is other in this form, for the sheet; "" in the case itself
}

// moments returns what is assessed of a case: itself with its other forms, or the
// instants of the history.
func (c *loadCase) moments() []*loadCase {
	switch {
	case c.instants != nil:
		return c.instants
	case c.forms != nil:
		return c.forms
	}
	return []*loadCase{c}
}

// densities resolves the liquid's density at both ends of its range, and the
// boiling point of a liquefied gas at 1 atm.
func (m *model) densities() error {
	c := m.t.Contents
	m.boiling = math.Inf(1)
	if f, ok := fluid.Find(c.Fluid); ok && f.Kind == "liquefied_gas" {
		if boiling, err := f.Boiling(); err == nil {
			m.boiling = boiling.Value
		}
	}
	if c.Density != nil {
		m.cold, m.warm = *c.Density, *c.Density
		return nil
	}
	f, ok := fluid.Find(c.Fluid)
	if !ok {
		return fmt.Errorf("contents.fluid: %q is not known", c.Fluid)
	}
	_, most, err := f.DensityRange(c.Coldest)
	if err != nil {
		return fmt.Errorf("contents: density of %s at its coldest: %w", c.Fluid, err)
	}
	least, _, err := f.DensityRange(c.Warmest)
	if err != nil {
		return fmt.Errorf("contents: density of %s at its warmest: %w", c.Fluid, err)
	}
	m.cold, m.warm = most.Value, least.Value
	return nil
}

// cases returns meop, every written case in the order of the file, and the
// flight.
func (m *model) cases() ([]*loadCase, error) {
	var written []*loadCase
	for _, in := range m.t.Case {
		c, err := m.newCase(in)
		if err != nil {
			return nil, err
		}
		written = append(written, c)
	}
	flown, err := m.newFlight()
	if err != nil {
		return nil, err
	}
	if flown != nil {
		written = append(written, flown)
	}
	meop, err := m.meop(written)
	if err != nil {
		return nil, fmt.Errorf("case meop: %w", err)
	}
	return append([]*loadCase{meop}, written...), nil
}

// meop is the case that always exists: the highest ullage pressure, standing
// still, with the fullest liquid of any case by volume; a ready-made case that is
// empty says nothing of how full the tank gets.
func (m *model) meop(written []*loadCase) (*loadCase, error) {
	c := &loadCase{name: "meop", people: "clear", ullage: m.t.Pressure.MEOP, least: m.t.Pressure.MEOP, axial: 1}
	c.volume = m.fullest()
	if len(m.t.Case) == 0 {
		c.people = "near"
	}
	filled := false
	for _, w := range written {
		if usual := w.kind != "" && w.volume == 0; !usual && (!filled || w.volume > c.volume) {
			c.volume, filled = w.volume, true
		}
		if w.people != "clear" {
			c.people = "near"
		}
	}
	c.rule = m.ruleOf("", c.people)
	c.temperature, c.coldest = m.metalTemperature(nil)
	c.metal = c.temperature
	c.ramp = m.shortestRamp(written)
	return c, m.fill(c, m.cold, c.volume*m.cold)
}

// shortestRamp is the length over which the metal's temperature changes at the level
// of the ready-made case: the shortest of the written cases whose metal and liquid
// differ, 0, a step, where one of them does not say [m].
func (m *model) shortestRamp(written []*loadCase) float64 {
	least := math.Inf(1)
	for _, w := range written {
		if _, step := m.farthest(w.temperature); step >= leastStep {
			least = math.Min(least, w.ramp)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// newCase resolves a written case.
func (m *model) newCase(in tank.Case) (*loadCase, error) {
	c := &loadCase{name: in.Name, people: in.People, axial: in.AxialLoadFactor, lateral: in.LateralLoadFactor,
		ground: in.OnGround(), kind: in.Kind, ramp: given(in.TemperatureRamp), present: in.Present, slosh: in.SloshAmplitude, rule: m.ruleOf(in.Rule, in.People)}
	c.temperature, c.coldest = m.metalTemperature(in.Temperature)
	c.metal = c.temperature
	c.sections = sectionsOf(in, m.t.Cylinder.Length)
	m.padWind(c, in)
	var err error
	if c.ullage, err = m.ullage(in); err != nil {
		return nil, tank.Faults{m.t.Fault("case."+in.Name+".ullage_pressure", "%v", err)}
	}
	if c.least, err = m.leastUllage(in, c.ullage); err != nil {
		return nil, tank.Faults{m.t.Fault("case."+in.Name+".ullage_pressure", "%v", err)}
	}
	if in.DynamicFactor != nil {
		if c.axial, err = loads.StepFactor(given(in.AxialLoadFactorBefore), in.AxialLoadFactor, *in.DynamicFactor); err != nil {
			return nil, tank.Faults{m.t.Fault("case."+in.Name+".dynamic_factor", "%v", err)}
		}
	}
	if err := m.fits(in); err != nil {
		return nil, err
	}
	liquids := []loads.Liquid{{Density: m.cold}}
	if in.LiquidMass == nil {
		c.volume = m.liquidVolume(in)
		liquids[0].Mass = c.volume * m.cold
	} else {
		c.volume = *in.LiquidMass / m.warm
		liquids[0].Mass = *in.LiquidMass
		if m.warm != m.cold {
			liquids = append(liquids, loads.Liquid{Density: m.warm, Mass: *in.LiquidMass})
		}
	}
	for _, l := range liquids {
		if err := m.fill(c, l.Density, l.Mass); err != nil {
			return nil, err
		}
	}
	return c, m.otherForms(c, in, liquids)
}

// leastUllage returns the smallest ullage pressure across the wall that may stand with
// the loads of a case [Pa]: as written, and over saturated contents at their coldest.
func (m *model) leastUllage(in tank.Case, ullage float64) (float64, error) {
	least := ullage
	if in.Vapour {
		p, err := m.vapourAt(m.t.Contents.Coldest, in)
		if err != nil {
			return math.NaN(), err
		}
		least = math.Min(least, p)
	}
	if p := in.LeastUllagePressure; p != nil {
		least = math.Min(*p, least)
	}
	return least, nil
}

// vapourAt returns the pressure across the wall of saturated contents at T [K] in a case
// [Pa].
func (m *model) vapourAt(T float64, in tank.Case) (float64, error) {
	f, ok := fluid.Find(m.t.Contents.Fluid)
	if !ok {
		return math.NaN(), fmt.Errorf("the vapour pressure needs a built-in fluid")
	}
	v, err := f.VaporPressure(T)
	if err != nil {
		return math.NaN(), err
	}
	outside := float64(atmosphere)
	if in.OutsideAbsolute != nil {
		outside = *in.OutsideAbsolute
	}
	return v.Value - outside, nil
}

// fits refuses a mass or a level that the tank does not hold.
func (m *model) fits(in tank.Case) error {
	lo, hi := m.in.Bounds()
	if in.LiquidMass != nil && *in.LiquidMass > m.warm*m.in.Volume() {
		return tank.Faults{m.t.Fault("case."+in.Name+".liquid_mass", "%.4g kg take %.4g l at their warmest, the tank holds %.4g l; write at most \"%.4g kg\"",
			*in.LiquidMass, *in.LiquidMass/m.warm*1e3, m.in.Volume()*1e3, math.Floor(m.warm*m.in.Volume()*(1-m.t.Contents.LeastUllage)))}
	}
	if in.Level != nil && *in.Level > hi-lo {
		return tank.Faults{m.t.Fault("case."+in.Name+".level", "%.4g m lies above the tank, which is %.4g m inside; write at most \"%.0f mm\"",
			*in.Level, hi-lo, math.Floor((hi-lo)*1e3))}
	}
	return nil
}

// fill adds the state of a liquid of a density [kg/m3] and mass [kg].
func (m *model) fill(c *loadCase, density, mass float64) error {
	s, err := loads.NewState(m.in, c.ullage, loads.Liquid{Density: density, Mass: mass},
		loads.Acceleration{Axial: c.axial, Lateral: c.lateral})
	if err != nil {
		return err
	}
	c.states = append(c.states, swung(s, c))
	return nil
}

// fullest returns the volume at the densest of as much liquid as leaves the least
// ullage at the warmest, a hair less [m3].
func (m *model) fullest() float64 {
	return (1 - m.t.Contents.LeastUllage) * m.in.Volume() * m.warm / m.cold * (1 - 1e-9)
}

// liquidVolume returns what fill or level says [m3]. The level is measured
// along the axis from the lowest inside point, before the liquid tilts.
func (m *model) liquidVolume(in tank.Case) float64 {
	lo, hi := m.in.Bounds()
	switch {
	case in.Fullest:
		return m.fullest()
	case in.Fill != nil:
		return *in.Fill * m.in.Volume()
	case in.Level != nil && in.AxialLoadFactor < 0:
		return m.in.Volume() - m.in.VolumeBelow(hi-*in.Level)
	case in.Level != nil:
		return m.in.VolumeBelow(lo + *in.Level)
	default:
		return math.NaN()
	}
}

// ullage returns the ullage pressure across the wall [Pa].
func (m *model) ullage(in tank.Case) (float64, error) {
	if in.UllagePressure != nil {
		return *in.UllagePressure, nil
	}
	p, err := m.vapourAt(m.t.Contents.Warmest, in)
	if err != nil {
		return math.NaN(), err
	}
	if p > m.t.Pressure.MEOP {
		return math.NaN(), fmt.Errorf("the vapour pressure of %s at its warmest is %.4g bar across the wall, above meop: raise pressure.meop",
			m.t.Contents.Fluid, p/1e5)
	}
	return p, nil
}

// ruleOf returns the rule a case is made by: its own or the basis's, and the
// vessel rule in place of flight wherever somebody may be near.
func (m *model) ruleOf(own, people string) material.Rule {
	r := material.Rule(m.t.Basis.Rule)
	if own != "" {
		r = material.Rule(own)
	}
	if people != "clear" && r == material.Flight {
		return m.nearRule()
	}
	return r
}

// metalTemperature returns the temperatures of the metal for strength and for
// brittleness [K]. A vent or a blowdown takes a liquefied gas and its wall down
// to the boiling point at 1 atm, whatever the temperature at fill.
func (m *model) metalTemperature(given *float64) (strength, brittle float64) {
	c := m.t.Contents
	strength, brittle = math.Max(c.Warmest, roomTemperature), math.Min(c.Coldest, roomTemperature)
	if given != nil {
		strength, brittle = *given, math.Min(*given, c.Coldest)
	}
	return strength, math.Min(brittle, m.boiling)
}

// sectionsOf returns the section forces of a case; left out, they act at the
// forward head seam.
func sectionsOf(in tank.Case, forward float64) (out []loads.Section) {
	add := func(station *float64, force, moment, shear *float64) {
		if force == nil && moment == nil && shear == nil {
			return
		}
		s := loads.Section{Station: forward, Force: given(force), Moment: given(moment), Shear: math.NaN()} // not a number: not given
		if shear != nil {
			s.Shear = *shear
		}
		if station != nil {
			s.Station = *station
		}
		out = append(out, s)
	}
	add(in.Station, in.AxialForce, in.BendingMoment, in.ShearForce)
	for _, l := range in.Loads {
		add(&l.Station, l.AxialForce, l.BendingMoment, l.ShearForce)
	}
	return out
}

// rules returns every rule in force: the basis's and those of the cases, each
// once.
func rules(basis string, cases []*loadCase) []material.Rule {
	out := []material.Rule{material.Rule(basis)}
	for _, c := range cases {
		known := false
		for _, r := range out {
			known = known || r == c.rule
		}
		if !known {
			out = append(out, c.rule)
		}
	}
	return out
}

// hottest returns the highest temperature of the metal in any case [K].
func hottest(cases []*loadCase) float64 {
	T := roomTemperature
	for _, c := range cases {
		T = math.Max(T, c.temperature)
	}
	return T
}
