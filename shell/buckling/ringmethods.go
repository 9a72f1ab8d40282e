package buckling

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// withRings returns the methods of a cylinder with rings beside those of its whole
// length, full. The rings decide where every method of theirs together stands more than
// the plain cylinder, which a ring never weakens: the lowest of the wall between rings,
// of rings and wall between the heads, and of the ring itself. Weak rings, or rings that
// cannot be counted, leave the plain cylinder at its full length to decide, and are
// shown beside it.
func (c Cylinder) withRings(m Metal, class Class, factor float64, full []Method) []Method {
	rings, err := c.ringMethods(m, class, factor)
	if err != nil {
		return append(full, Method{Name: "rings, not counted", Beside: true, Err: err})
	}
	with, bad := Lowest(rings)
	plain, none := Lowest(full)
	if bad == nil && (none != nil || with.Allowable > plain.Allowable) {
		for i := range full {
			full[i].Name += " without rings"
		}
		return append(rings, beside(full)...)
	}
	for i := range rings {
		rings[i].Detail = "weaker than the plain cylinder: it decides"
	}
	return append(full, beside(rings)...)
}

// beside marks methods as shown only.
func beside(ms []Method) []Method {
	for i := range ms {
		ms[i].Beside = true
	}
	return ms
}

// ringMethods returns the methods of the wall between rings and of the rings.
func (c Cylinder) ringMethods(m Metal, class Class, factor float64) ([]Method, error) {
	if err := c.Rings.valid(c); err != nil {
		return nil, err
	}
	bay, carried, err := c.Bay()
	if err != nil { // not reached: without its ends the cylinder itself has no methods
		return nil, err
	}
	t := c.Tube()
	t.Length = bay
	out := t.external(m, class, factor)
	for i := range out {
		out[i].Name += " between rings"
	}
	more, err := c.stiffMethods(m, factor, carried)
	if err != nil { // not reached: as there
		return nil, err
	}
	out = append(out, more...)
	for i := range out {
		out[i].Length = bay
	}
	return out, nil
}

// stiffMethods returns the methods of rings and wall between the heads and of the ring,
// each of which carries the length carried [m].
func (c Cylinder) stiffMethods(m Metal, factor, carried float64) ([]Method, error) {
	overall, waves, err := c.RingOverall(m)
	if err != nil { // not reached: rings, ends and metal are valid by now
		return nil, err
	}
	yields, most, err := c.RingYield(m)
	if err != nil { // not reached: as above
		return nil, err
	}
	bryant := divided("Bryant, rings and wall", ringKnockdown*overall, factor, nil, check.Source{Doc: "Bryant, two-term form", Where: "cylinder with rings, recalled", How: check.Memory},
		"knock-down 0.75")
	bryant.Formula = "p_a = 0.75 p_g/FS, p_g = (E t/R) λ^4/((n² − 1 + λ²/2) (n² + λ²)²) + (n² − 1) E I_e/(R_n³ L_s), λ = π R/L_c, least over n"
	bryant.Steps = c.ringSteps(carried, waves, check.M("R_n", "radius of the common centroid", c.Section(carried, waves).Radius), check.Num("n", "waves around", float64(waves)), check.Pa("p_g", "elastic pressure of rings and wall", overall))
	yielding := divided("ring out of round", yields, factor, nil, check.Source{Doc: "form of EN 13445-3 8.5.3, recalled", Where: "stress of the ring", How: check.Memory},
		"0.5 % of R out of round")
	yielding.Formula = "p_a = p_y/FS, p_y R_o/t + E e 0.005 (n² − 1) p_y/(R (p_g − p_y)) = σ_y of the ring, least over n"
	yielding.Steps = c.ringSteps(carried, most, check.M("e", "reach of the section", c.Section(carried, most).Reach), check.Num("n", "waves around", float64(most)), check.Pa("p_y", "pressure at which the ring yields", yields))
	p, strain, stress := c.ug29(m, carried)
	ug := Method{Name: "UG-29, inertia of the ring", Critical: math.NaN(), Factor: 3, Allowable: p, Source: check.Source{Doc: "ASME VIII-1 UG-29, closed form", Where: "rings", How: check.Memory},
		Formula: "p_a = F_ic (t + A_s/L_s)/(1.5 D_o), F_ic of A E, A = 10.9 I_e/(D_o² L_s (t + A_s/L_s))",
		Steps:   c.ringSteps(carried, 0, check.M("D_o", "outside diameter", c.Tube().OutsideDiameter()), check.Num("A", "strain of UG-29", strain), check.Pa("F_ic", "stress at collapse", stress))}
	return []Method{bryant, yielding, ug}, nil
}

// ringSteps lists what the methods of rings share, in n waves [-], and more.
func (c Cylinder) ringSteps(carried float64, n int, more ...check.Quantity) []check.Quantity {
	s := c.Section(carried, n)
	whole, _ := c.ExternalTube() // its error is among those of the methods
	return append([]check.Quantity{check.M("L_c", "length between the heads with the shares of the ends", whole.Length), check.M("L_s", "length that one ring carries, the longest", carried),
		check.M2("A_s", "section of a ring", s.Area), check.M("L_e", "strip of wall that works with it", s.Strip), {Symbol: "I_e", Name: "second moment of ring and strip", Value: s.Inertia, Unit: "m4"}}, more...)
}

// describe says what rings are counted on.
func (r Rings) describe() string {
	side := "outside"
	if r.Inside {
		side = "inside"
	}
	return fmt.Sprintf("rings: %d %s, %.4g mm wide and %.4g mm high, circular within 0.5 %% of R", len(r.Stations), side, r.Width*1e3, r.Height*1e3)
}
