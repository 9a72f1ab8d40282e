package heads

import (
	"errors"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// CheckKnuckle sets the pressure p [Pa], the highest over the knuckle, against the lowest
// allowable of [KnuckleLimits] (head.X/knuckle), or, with atProof, the proof pressure against
// the lowest limit that it must not pass. E [Pa] is Young's modulus. A head without a knuckle, or with the
// pressure on its convex side, has no such check.
func CheckKnuckle(h Head, end string, p float64, w Wall, E float64, atProof bool, a Allowables, s Seams) check.Result {
	id, name := "head."+end+"/knuckle", title(end, "collapse and buckling of the knuckle")
	_, _, none, err := dish(h, w)
	switch {
	case none != "":
		return check.NotApplicableTo(id, name, none)
	case h.Geometry().Inward || p < 0:
		return check.NotApplicableTo(id, name, "the pressure is on the convex side: head."+end+"/external holds this head")
	case err == nil && a.ZoneKnown != nil:
		err = a.ZoneKnown
	case err == nil && !(p >= 0):
		err = errors.New("the pressure is missing")
	}
	m := KnuckleMetal{Yield: a.Parent.Yield, ElasticModulus: E, Factor: 1.5}
	if a.Parent.Rule == material.Flight {
		m.Factor = math.Max(1.5, a.Parent.YieldOnPressure)
	}
	note := "no weld in the knuckle or near it"
	if s.KnuckleInZone(h, w) {
		m.Yield, note = a.Zone.Yield, "welded strength: a weld crosses the knuckle or its zone reaches it"
	}
	var all []KnuckleLimit
	if err == nil {
		all, err = KnuckleLimits(h, w, m)
	}
	if err != nil {
		return check.NotMade(id, name, err)
	}
	return knuckleResult(check.Result{Rule: string(a.Parent.Rule), ID: id, Title: name, Factor: 1, Note: note,
		Demand: check.Pa("p", "highest pressure over the knuckle", p)}, h, w, m, all, atProof)
}

// knuckleResult fills r in with the lowest limit, every limit with its formula and the
// numbers that it is made of.
func knuckleResult(r check.Result, h Head, w Wall, m KnuckleMetal, all []KnuckleLimit, atProof bool) check.Result {
	d, _, _, _ := dish(h, w)
	r.Inputs = []check.Quantity{
		check.M("D", "inside diameter, corroded", d.D), check.M("L", "crown radius as judged", d.L), check.M("r", "knuckle radius as judged", d.R),
		check.M("t", "least wall", d.T), check.Pa("σ_y", "yield strength", m.Yield),
	}
	if !atProof {
		r.Inputs = append(r.Inputs, check.Num("k", "factor on yield", m.Factor))
	}
	least, formula := math.Inf(1), ""
	var symbols []string
	for _, l := range all {
		v := l.Allowable
		if atProof {
			v = l.AtProof
		}
		if math.IsInf(v, 1) {
			continue
		}
		q := check.Pa(l.Symbol, l.Name, v)
		r.Inputs = append(append(r.Inputs, l.inputs...), q)
		formula, symbols = formula+l.formula(atProof)+"; ", append(symbols, l.Symbol)
		if !(v >= least) {
			least, r.Source, r.Capacity = v, l.Source, q
		}
	}
	if math.IsInf(least, 1) { // not reached: a wall out of Shield-Drucker's range is thin enough for p_b or pck
		r.Err = errors.New("no limit pressure of the knuckle holds in its range at proof")
	}
	if len(symbols) == 1 {
		r.Formula = formula + "p ≤ " + symbols[0]
	} else {
		r.Formula = formula + "p ≤ min(" + strings.Join(symbols, ", ") + ")"
	}
	return r
}
