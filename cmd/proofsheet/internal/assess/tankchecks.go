package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/check"
)

// checkCapacity asks in every state whether the liquid at its warmest leaves
// the least ullage.
func (m *model) checkCapacity(c *loadCase) check.Result {
	total := m.in.Volume()
	mass := 0.0
	for _, s := range c.states {
		mass = math.Max(mass, s.Liquid.Mass)
	}
	return check.Result{
		ID: "tank/capacity", Title: "Tank: liquid and ullage at the warmest",
		Formula: "m / ρ_warm ≤ (1 − u) V",
		Inputs: []check.Quantity{
			check.Kg("m", "liquid mass", mass), check.KgPerM3("ρ_warm", "density at the warmest", m.warm),
			check.Num("u", "least ullage, share of the volume", m.t.Contents.LeastUllage), check.M3("V", "volume of the tank", total),
		},
		Demand:   check.M3("m/ρ_warm", "liquid volume at the warmest", mass/m.warm),
		Capacity: check.M3("(1 − u) V", "volume open to liquid", (1-m.t.Contents.LeastUllage)*total),
		Factor:   1,
		Source:   check.Source{Doc: "derived", Where: "volume kept", How: check.Computed},
	}
}

// checkRelief asks whether the relief device keeps the ullage within MEOP.
func (m *model) checkRelief() check.Result {
	id, title := "tank/relief", "Tank: relief set pressure and accumulation within MEOP"
	p := m.t.Pressure
	if p.Relief == nil {
		return check.NotMade(id, title, fmt.Errorf("no relief set pressure is given: write pressure.relief"))
	}
	return check.Result{
		ID: id, Title: title, Formula: "p_set (1 + a) ≤ MEOP",
		Inputs: []check.Quantity{
			check.Pa("p_set", "set pressure of the relief device", *p.Relief), check.Num("a", "accumulation", p.Accumulation),
			check.Pa("MEOP", "highest ullage pressure", p.MEOP),
		},
		Demand:   check.Pa("p_set (1 + a)", "pressure while relieving", *p.Relief*(1+p.Accumulation)),
		Capacity: check.Pa("MEOP", "highest ullage pressure", p.MEOP), Factor: 1,
		Source: check.Source{Doc: "common practice", Where: "relief keeps the tank within what it is built for", How: check.Practice},
	}
}

// checkVapour asks whether MEOP covers the vapour pressure at the warmest: of the
// liquid, and for a liquefied gas of the metal around it, to which a closed tank
// warms it. A cryogenic liquid is kept cold by its own boiling while the dry wall
// above it is warm, so that its wall says nothing of it.
func (m *model) checkVapour() check.Result {
	id, title := "tank/vapour", "Tank: MEOP covers the vapour pressure at the warmest"
	f, ok := fluid.Find(m.t.Contents.Fluid)
	if !ok {
		return check.NotMade(id, title, fmt.Errorf("the vapour pressure of a liquid given by its density alone is not known"))
	}
	warmest, name := m.t.Contents.Warmest, "warmest liquid"
	if T, of := m.hottestWall(); f.Kind == "liquefied_gas" && T > warmest {
		warmest, name = T, "liquid as warm as the metal of case "+of
	}
	v, err := f.VaporPressure(warmest)
	if err != nil {
		if f.Kind == "liquid" {
			return check.NotApplicableTo(id, title, f.Title+" is not kept as a liquid in balance with its vapour")
		}
		return check.NotMade(id, title, fmt.Errorf("%s: %w", name, err))
	}
	outside := m.leastOutside()
	return check.Result{
		ID: id, Title: title, Formula: "p_v ≤ MEOP + p_a",
		Inputs: []check.Quantity{
			check.K("T", name, warmest), check.Pa("MEOP", "highest ullage pressure", m.t.Pressure.MEOP),
			check.Pa("p_a", "least outside pressure: as the cases give it, none where a tank flies without saying", outside),
		},
		Demand:   check.Pa("p_v", "vapour pressure, absolute", v.Value),
		Capacity: check.Pa("MEOP + p_a", "highest ullage pressure, absolute", m.t.Pressure.MEOP+outside),
		Factor:   1, Source: v.Source, Note: v.Note,
	}
}

// hottestWall returns the hottest metal that is written for a case or an instant of
// the flight with liquid in the tank [K], and which it is; 0 where none is written.
// The metal of a case that writes none is taken at 20 °C or above for its strength,
// which says nothing of the liquid.
func (m *model) hottestWall() (T float64, of string) {
	for _, c := range m.t.Case {
		full := given(c.LiquidMass) > 0 || given(c.Fill) > 0 || given(c.Level) > 0
		if full && m.t.Written("case."+c.Name+".temperature") != "" && given(c.Temperature) > T {
			T, of = *c.Temperature, c.Name
		}
	}
	if m.t.Flight == nil {
		return T, of
	}
	for _, s := range m.t.Flight.States {
		if full := given(s.LiquidMass) > 0 || given(s.Fill) > 0 || given(s.Level) > 0; full && given(s.Temperature) > T {
			T, of = *s.Temperature, fmt.Sprintf("flight at %.4g s", s.Time)
		}
	}
	return T, of
}

// leastOutside returns the least pressure outside the tank in any case [Pa]: one
// atmosphere, what a case says, and none in a case for which nobody may be near
// that does not say, nor in a flight.
func (m *model) leastOutside() float64 {
	least := float64(atmosphere)
	for _, c := range m.t.Case {
		switch {
		case c.OutsideAbsolute != nil:
			least = math.Min(least, *c.OutsideAbsolute)
		case c.People == "clear" && !c.OnGround():
			return 0
		}
	}
	if m.t.Flight != nil {
		return 0
	}
	return least
}

// The classes of a pair of fluid and alloy, for checkCompatibility.
const (
	usual     = 1
	caution   = 2
	forbidden = 3
)

// checkCompatibility asks for the worst pair of contents and alloy.
func (m *model) checkCompatibility() (r check.Result, cautions []string) {
	r = check.Result{
		ID: "tank/compatibility", Title: "Tank: contents with every alloy", Factor: 1,
		Formula:  "class: 1 usual, 2 with caution, 3 forbidden; at most 2",
		Demand:   check.Num("class", "worst pair of contents and alloy", usual),
		Capacity: check.Num("2", "worst class that may be used", caution),
		Source:   check.Source{Doc: "common practice", Where: "no adverse record in the table", How: check.Practice},
	}
	if m.t.Contents.Fluid == "" {
		r.Err = fmt.Errorf("the contents are given by their density alone: no compatibility record can be looked up")
		return r, nil
	}
	for _, mat := range m.t.Material {
		name := mat.Alloy
		if mat.Own() {
			name = mat.Family
		}
		verdict, note, src := fluid.Compatibility(m.t.Contents.Fluid, name)
		class, known := map[string]float64{"satisfied": usual, "caution": caution, "refused": forbidden}[verdict]
		if !known {
			r.Err = fmt.Errorf("no compatibility record of %s with %s", m.t.Contents.Fluid, name)
		}
		if class == caution {
			cautions = append(cautions, fmt.Sprintf("%s with %s: %s", m.t.Contents.Fluid, name, note))
		}
		if class > r.Demand.Value || r.Demand.Value == usual && class == usual {
			pair := m.t.Contents.Fluid + " with " + name
			r.Demand = check.Num("class", pair+" is "+map[float64]string{usual: "usual", caution: "to be used with caution", forbidden: "forbidden"}[class]+": "+firstReason(note)+"; class", class)
			r.Note, r.Source = pair+": "+note, src
		}
	}
	if r.Demand.Value == forbidden { // what is forbidden does not wait for a record of the rest
		r.Err = nil
	}
	return r, cautions
}

// firstReason cuts the notes on a pair after the first.
func firstReason(note string) string {
	first, _, _ := strings.Cut(note, ";")
	return first
}

// leastElongation is the elongation at fracture of an own metal under which it is
// no ductile metal [-]: the common border of brittle metals (practice).
const leastElongation = 0.05

// checkBrittle asks whether every alloy of the tank may be as cold as it gets.
func (m *model) checkBrittle(c *loadCase) check.Result {
	r := check.Result{
		ID: "tank/brittleness", Title: "Tank: coldest metal within what the alloys keep their ductility for",
		Formula: "T_min ≤ T_cold", Factor: 1,
		Demand:   check.K("T_min", "lowest temperature an alloy of the tank may have", 0),
		Capacity: check.K("T_cold", "coldest metal of the case", c.coldest),
		Source:   check.Source{Doc: "materials table", Where: "lowest use temperature", How: check.Practice},
	}
	for _, mat := range m.t.Material {
		if mat.Own() {
			if mat.Family != "aluminium" && mat.Family != "austenitic" && c.coldest < roomTemperature {
				r.Err = fmt.Errorf("material %s: own values of the family %s have no known lowest temperature", mat.Name, mat.Family)
			}
			switch a := mat.Elongation; {
			case a == nil:
				r.Err = errors.Join(r.Err, fmt.Errorf("material %s does not say how far it stretches before it breaks, and the limits on local and secondary stress count on yielding: write elongation from its certificate", mat.Name))
			case *a < leastElongation:
				r.Err = errors.Join(r.Err, fmt.Errorf("material %s stretches by %.3g %% before it breaks: under %.0f %% the limits on local and secondary stress, which count on yielding, do not hold", mat.Name, *a*100, leastElongation*100))
			}
			continue
		}
		if a, ok := material.FindAlloy(mat.Alloy); ok && a.LeastTemperature > r.Demand.Value {
			r.Demand = check.K("T_min", "lowest temperature of use of "+a.Name, a.LeastTemperature)
		}
	}
	return r
}
