package tank

import (
	"fmt"
	"math"
	"slices"
)

// reserved are names of cases that the program makes itself.
var reserved = []string{"meop", "flight", "proof"}

func (r *reader) checkCases() {
	seen := map[string]int{}
	for i := range r.t.Case {
		c := &r.t.Case[i]
		table := fmt.Sprintf("case[%d]", i)
		if slices.Contains(reserved, c.Name) {
			r.fault(join(table, "name"), "%q is reserved; write another name", c.Name)
		}
		if first, ok := seen[c.Name]; ok && c.Name != "" {
			r.fault(join(table, "name"), "%q is the name of another case, at line %d; names are unique", c.Name,
				r.where(fmt.Sprintf("case[%d]", first), r.at.key).line)
		} else {
			seen[c.Name] = i
		}
		r.caseUllage(table, c)
		r.casePeople(table, c)
		r.caseRest(table, c)
		r.caseLoads(table, c)
	}
}

func (r *reader) caseUllage(table string, c *Case) {
	gauge, absolute := join(table, "ullage_pressure"), join(table, "ullage_absolute")
	r.notBoth(table, "ullage_pressure", "ullage_absolute", "one of them fixes the pressure across the wall")
	r.notBoth(table, "outside_absolute", "altitude", "one of them fixes the pressure outside")
	if c.Altitude != nil && c.OutsideAbsolute == nil {
		if p, err := atmosphere(*c.Altitude); err != nil {
			r.fault(join(table, "altitude"), "%v; write outside_absolute", err)
		} else {
			c.OutsideAbsolute = &p
		}
	}
	switch {
	case r.words[gauge]:
		c.Vapour = true
		if r.has("contents.density") {
			r.fault(gauge, "\"vapour\" needs a built-in fluid; write the pressure")
		}
		if c.OutsideAbsolute == nil && !r.has(join(table, "outside_absolute")) && !r.has(join(table, "altitude")) {
			p := layers[0].pressure
			c.OutsideAbsolute = &p
			r.defaulted(join(table, "outside_absolute"), "1.01325 bara", "sea level; at altitude the pressure across the wall is higher")
		}
	case r.has(absolute):
		if !r.has(join(table, "outside_absolute")) && !r.has(join(table, "altitude")) {
			r.fault(absolute, "needs the pressure outside; write outside_absolute = \"1.013 bara\" or altitude")
		}
		if c.UllageAbsolute != nil && c.OutsideAbsolute != nil && c.UllagePressure == nil {
			across := *c.UllageAbsolute - *c.OutsideAbsolute
			c.UllagePressure = &across
			r.notOverMEOP(absolute, across)
		}
	case c.UllagePressure != nil:
		r.notOverMEOP(gauge, *c.UllagePressure)
	case !r.has(gauge) && c.Kind != "":
		r.groundUllage(gauge, c, grounds[c.Kind])
	case !r.has(gauge):
		p := r.t.Pressure.MEOP
		c.UllagePressure = &p
		r.defaulted(gauge, r.written("pressure.meop"), "meop")
	}
}

// notOverMEOP refuses more ullage pressure than the tank is built for.
func (r *reader) notOverMEOP(path string, p float64) {
	if meop := r.t.Pressure.MEOP; meop > 0 && p > meop*(1+1e-9) {
		r.fault(path, "%s across the wall is above meop %s; raise meop", r.bar(p), r.bar(meop))
	}
}

func (r *reader) casePeople(table string, c *Case) {
	r.orDefault(join(table, "people"), &c.People, "near", "nothing was written")
	if c.Kind != "" && c.People == "clear" && !r.has(join(table, "people_source")) {
		r.fault(join(table, "people"), "a ready-made ground case is \"near\"; to clear it write people_source = \"who keeps people away\"")
	}
	if r.has(join(table, "ground")) && !c.Ground && c.Kind != "" {
		r.contradict(join(table, "ground"), "kind", "every ready-made case is on the ground")
	}
}

func (r *reader) caseRest(table string, c *Case) {
	if g, ready := grounds[c.Kind]; ready {
		r.groundRest(table, c, g)
	} else {
		r.oneOf(table, "write one; 0 is allowed", "liquid_mass", "fill", "level")
		r.orNumber(join(table, "axial_load_factor"), &c.AxialLoadFactor, 1, "1", "standing still")
		r.orNumber(join(table, "lateral_load_factor"), &c.LateralLoadFactor, 0, "0", "nothing was written")
	}
	r.needs(table, "dynamic_factor", "axial_load_factor_before", "1")
	r.needs(table, "axial_load_factor_before", "dynamic_factor", "1.5")
	if d := c.DynamicFactor; d != nil && *d > 2 {
		r.fault(join(table, "dynamic_factor"), "%g is more than a step can do; write at most 2", *d)
	}
	if least := c.LeastUllagePressure; least != nil && c.UllagePressure != nil && *least > *c.UllagePressure {
		r.fault(join(table, "least_ullage_pressure"), "%s is above the ullage pressure %s; write at most that", r.bar(*least), r.bar(*c.UllagePressure))
	}
	if !r.has(join(table, "temperature")) {
		t, text := room, "20 degC"
		if w := r.t.Contents.Warmest; w > room {
			t, text = w, "the liquid's"
		}
		c.Temperature = &t
		r.defaulted(join(table, "temperature"), text, "the warmer of the liquid and 20 degC")
	}
}

// room is the temperature of metal nobody wrote one for [K].
const room = 293.15

// caseLoads folds axial_compression into axial_force.
func (r *reader) caseLoads(table string, c *Case) {
	c.AxialForce = r.axial(table, c.AxialForce, c.AxialCompression)
	direct := r.anyOf(table, "axial_force", "axial_compression", "bending_moment", "shear_force")
	if r.has(join(table, "loads")) && direct != "" {
		r.contradict(join(table, direct), "loads", "section forces stand in the case or in loads")
	}
	if direct == "" {
		r.onlyWith(join(table, "station"), "axial_force, bending_moment or shear_force")
	} else if !r.has(join(table, "station")) {
		r.defaulted(join(table, "station"), "forward head seam", "nothing was written")
	}
	for i := range c.Loads {
		l, at := &c.Loads[i], fmt.Sprintf("%s.loads[%d]", table, i)
		l.AxialForce = r.axial(at, l.AxialForce, l.AxialCompression)
		if r.anyOf(at, "axial_force", "axial_compression", "bending_moment", "shear_force") == "" {
			r.fault(at, "holds no load; write axial_force, bending_moment or shear_force")
		}
	}
}

// axial returns the section force, tension positive.
func (r *reader) axial(table string, force, compression *float64) *float64 {
	if !r.notBoth(table, "axial_force", "axial_compression", "the same force, tension or compression positive") || compression == nil {
		return force
	}
	f := -math.Abs(*compression)
	return &f
}

// anyOf returns the first key that was written, or "".
func (r *reader) anyOf(table string, keys ...string) string {
	for _, k := range keys {
		if r.has(join(table, k)) {
			return k
		}
	}
	return ""
}
