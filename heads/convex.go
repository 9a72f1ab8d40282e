package heads

import (
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// convexFactor is what the pressure on the convex side counts with in a concave-side formula of E = 1.
const convexFactor = 1.67

// RequiredThicknessConvex returns the least wall t [m] of a head with the pressure p [Pa] ≥ 0 on its convex side, at the rim:
// that of [RequiredThickness] under 1.67 p on the concave side with E = 1. Buckling is another check's, and may ask for more. S [Pa] is the
// allowable inside the head. An inward head is taken with the radii of its convex face, the larger ones. A flat head has no convex side.
//
// Source: ASME VIII-1 UG-33, strength part (recalled); the same concept with the formulas of the European set is common practice.
func RequiredThicknessConvex(h Head, r material.Rule, p, S float64, o RuleOptions) (t float64, governs string, src check.Source, err error) {
	fail := func(err error) (float64, string, check.Source, error) { return math.NaN(), "", check.Source{}, err }
	g := h.Geometry()
	if h.Kind() == "flat" {
		return fail(fmt.Errorf("a flat head has no convex side"))
	}
	g.Inward = false
	s, _ := FindShape(h.Kind())
	turned, err := s.New(g)
	if err != nil { // not reached: what was made from these numbers facing inward is made from them outward
		return fail(err)
	}
	t, governs, _, err = RequiredThickness(turned, r, convexFactor*p, S, 1, 1, o)
	if err != nil {
		return fail(err)
	}
	src = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "formed heads with the pressure on the convex side, recalled; confirm", How: check.Memory}
	if r == material.VesselEU {
		src = check.Source{Doc: "concept of ASME BPVC Section VIII Division 1 with the European formulas", Where: "common practice; confirm", How: check.Practice}
	}
	return t, governs, src, nil
}

// CheckThicknessConvex sets the wall of a head against [RequiredThicknessConvex] (head.X/convex); p is the highest pressure on the convex
// side, at the rim [Pa], as a magnitude. It is the strength of the head only: head.X/external holds its buckling.
func CheckThicknessConvex(h Head, end string, p float64, d Demand, w Wall, a Allowables) check.Result {
	id, name := "head."+end+"/convex", title(end, "thickness with the pressure on the convex side")
	switch {
	case h.Kind() == "flat":
		return check.NotApplicableTo(id, name, "a flat head has no convex side")
	case a.ZoneKnown != nil:
		return check.NotMade(id, name, a.ZoneKnown)
	}
	// E = 1 and 1.67 belong together; a softened weld still counts by the seam's allowable.
	S := math.Min(a.Parent.S, math.Min(a.SeamSegment.S, a.SeamGirth.S))
	if math.IsNaN(S) || !(w.Thickness > 0) {
		return check.NotMade(id, name, fmt.Errorf("an allowable stress or the wall is missing"))
	}
	t, governs, src, err := RequiredThicknessConvex(h, a.Parent.Rule, p, S, RuleOptions{Wall: w, Proof: d.Proof, CornerFactor: d.CornerFactor})
	if err != nil {
		return check.NotMade(id, name, err)
	}
	return check.Result{
		Rule: string(a.Parent.Rule), ID: id, Title: name, Formula: "t of the concave-side formula at 1.67 p, E = 1",
		Inputs: []check.Quantity{check.Pa("p", "highest pressure on the convex side", p), check.Num("k", "factor on it", convexFactor), check.Pa("S", "allowable stress, lowest of wall and welds", S),
			check.M("c", "corrosion allowance", w.Corrosion)},
		Demand: check.M("t", "required thickness", t), Capacity: check.M("t_w", "least wall", w.Thickness), Factor: 1, Source: src,
		Note: "governs: " + governs + "; buckling: head." + end + "/external",
	}
}
