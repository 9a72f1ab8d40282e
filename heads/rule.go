package heads

import (
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Wall is the wall of a head that counts for strength.
type Wall struct {
	Thickness float64 // least: nominal less tolerance, thinning and corrosion [m]
	Corrosion float64 // allowance, which enlarges the inside radii [m]
}

// RuleOptions are what else a thickness rule may ask.
type RuleOptions struct {
	Wall         Wall    // thickness 0: not chosen yet, and the ranges are taken at what is required
	LineLoad     float64 // tension round the seam, per length, ≥ 0; flight: times load factor over pressure factor [N/m]
	GirthS       float64 // allowable across the girth seam, 0 where it is S [Pa]
	Proof        float64 // 0.2 % proof strength at temperature; vessel-eu torisphere and ellipsoid [Pa]
	CornerFactor float64 // C of a flat head's corner [-]
}

// A rule holds what the formulas of one shape take, geometry corroded.
type rule struct {
	name    material.Rule
	g       Geometry // corroded
	do      float64  // nominal outside diameter [m]
	nominal float64  // nominal wall [m]
	s, e    float64  // allowable [Pa] and efficiency [-] inside the head
	sg, eg  float64  // the same across its joint to the shell
	o       RuleOptions
}

// A term is one requirement of a rule: the thickness it asks for at a pressure
// and, the other way round, the pressure it permits at a thickness.
type term struct {
	what    string // for the reader: "cone, across its long seam"
	formula string // as printed
	inputs  []check.Quantity
	source  check.Source
	need    func(p float64) float64        // [Pa] -> [m]
	bear    func(t float64) float64        // [m] -> [Pa]
	holds   func(t, wall, p float64) error // range: required and real wall [m], pressure [Pa]; nil: none
	note    string
}

// RequiredThickness returns the least wall t [m] of the head, corrosion not
// included, that the rule set asks for under the pressure p [Pa], the highest
// over the head, on the concave side; S [Pa] is the allowable inside the head,
// E [-] the efficiency of the welds inside it (of a seamless head: 1 or 0.85),
// EGirth [-] that of its joint to the shell. governs names the requirement.
// Outside the range of a formula, or for an inward head, it is NaN and an error.
//
// Formulas and sources: at the …Vessel and …European function of each shape.
func RequiredThickness(h Head, r material.Rule, p, S, E, EGirth float64, o RuleOptions) (t float64, governs string, src check.Source, err error) {
	best, t, err := required(h, r, p, S, E, EGirth, o)
	if err != nil {
		return math.NaN(), "", check.Source{}, err
	}
	return t, best.what, best.source, nil
}

// AllowablePressure returns the highest pressure [Pa] that the rule set permits
// at the least wall o.Wall.Thickness; the other arguments are those of
// [RequiredThickness]. A line load lowers it.
func AllowablePressure(h Head, r material.Rule, S, E, EGirth float64, o RuleOptions) (p float64, governs string, src check.Source, err error) {
	t := o.Wall.Thickness
	fail := func(err error) (float64, string, check.Source, error) { return math.NaN(), "", check.Source{}, err }
	if !(t > 0) || math.IsInf(t, 1) {
		return fail(fmt.Errorf("thickness must be greater than zero"))
	}
	ts, err := terms(h, r, S, E, EGirth, o)
	if err != nil {
		return fail(err)
	}
	p = math.Inf(1)
	var least term
	for _, m := range ts {
		if b := m.bear(t); !(b >= p) { // NaN is taken and refused below
			p, least = b, m
		}
	}
	if !(p > 0) || math.IsInf(p, 1) {
		return fail(fmt.Errorf("%s: no pressure is left at this wall", least.what))
	}
	for _, m := range ts {
		if m.holds == nil {
			continue
		}
		if err := m.holds(t, t, p); err != nil {
			return fail(err)
		}
	}
	return p, least.what, least.source, nil
}

// required finds the requirement that asks for most.
func required(h Head, r material.Rule, p, S, E, EGirth float64, o RuleOptions) (term, float64, error) {
	if err := check.Within("heads.RequiredThickness", "pressure on the concave side (Pa)", p, 0, math.MaxFloat64, "thickness rules for pressure on the concave side"); err != nil {
		return term{}, math.NaN(), err
	}
	ts, err := terms(h, r, S, E, EGirth, o)
	if err != nil {
		return term{}, math.NaN(), err
	}
	var most term
	t := -1.0
	for _, m := range ts {
		n := m.need(p)
		if !(n >= 0) || math.IsInf(n, 1) {
			return term{}, math.NaN(), fmt.Errorf("%s: no thickness carries %.4g MPa at this allowable stress", m.what, p/1e6)
		}
		if n > t {
			t, most = n, m
		}
	}
	wall := o.Wall.Thickness
	if wall == 0 {
		wall = t
	}
	for _, m := range ts {
		if m.holds == nil {
			continue
		}
		if err := m.holds(m.need(p), wall, p); err != nil {
			return term{}, math.NaN(), fmt.Errorf("%s: %w", m.what, err)
		}
	}
	return most, t, nil
}

// terms collects the requirements of a head by a rule set.
func terms(h Head, name material.Rule, S, E, EGirth float64, o RuleOptions) ([]term, error) {
	n := h.Geometry()
	if n.Inward {
		return nil, fmt.Errorf("the thickness rules are for pressure on the concave side; an inward head is held by the external-pressure check")
	}
	if o.GirthS == 0 {
		o.GirthS = S
	}
	const fn = "heads.RequiredThickness"
	for _, v := range []struct {
		name        string
		got         float64
		least, most float64
	}{
		{"allowable stress (Pa)", S, 1, math.MaxFloat64}, {"allowable stress across the girth seam (Pa)", o.GirthS, 1, math.MaxFloat64},
		{"joint efficiency", E, 0.01, 1}, {"girth joint efficiency", EGirth, 0.01, 1},
		{"line load (N/m)", o.LineLoad, 0, math.MaxFloat64}, {"thickness (m)", o.Wall.Thickness, 0, math.MaxFloat64},
	} {
		if err := check.Within(fn, v.name, v.got, v.least, v.most, "what the thickness rules take"); err != nil {
			return nil, err
		}
	}
	worn, err := Corroded(h, o.Wall.Corrosion)
	if err != nil {
		return nil, err
	}
	s, _ := FindShape(h.Kind())
	r := rule{name: name, g: worn.Geometry(), do: n.InsideDiameter + 2*n.Thickness, nominal: n.Thickness,
		s: S, e: E, sg: o.GirthS, eg: EGirth, o: o}
	switch name {
	case material.Vessel, material.Flight:
		return s.vessel(r)
	case material.VesselEU:
		return s.european(r)
	default:
		return nil, fmt.Errorf("no thickness rule for %q", string(name))
	}
}

// within is check.Within with the function name of the rules.
func within(param string, got, least, most float64, why string) error {
	return check.Within("heads.RequiredThickness", param, got, least, most, why)
}

// grace is how far a torisphere may miss 6 % knuckle or crown = outside diameter [-]:
// both are nominal proportions of dished heads that are bought by the outside diameter.
const grace = 0.01
