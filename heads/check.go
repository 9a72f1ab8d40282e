package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// Allowables are the limits that hold in a head, by one rule set.
type Allowables struct {
	Parent      material.Limits // the wall away from welds
	Zone        material.Limits // the wall within Seams.ZoneWidth of a weld, without efficiency
	SeamSegment material.Limits // across the welds inside the head, lower of parent and zone; of a one-piece head the parent's
	SeamGirth   material.Limits // across its joint to the shell, lower of both sides and their zones
	ZoneKnown   error           // why the weld zone is not assessable, nil if it is
}

// Seams are the welds of a head.
type Seams struct {
	Segment      float64      // efficiency inside the head; of a one-piece head 1 or 0.85 for the thickness rule [-]
	Girth        float64      // efficiency of the joint to the shell [-]
	Segmented    bool         // welds run through the head itself
	SegmentJoint string       // name of the joint, for the reader
	GirthJoint   string       // name of the joint, for the reader
	ZoneWidth    float64      // b_haz, along the wall from a weld; 0: nothing softens [m]
	PortZones    [][2]float64 // radii of the mid-surface between which a port's weld zone lies [m]
}

// A Demand is what the thickness rule is asked for.
type Demand struct {
	Pressure     float64 // inside minus outside, highest over the head, liquid head included [Pa]
	LineLoad     float64 // most tension from line loads at the seam, per length of circumference; 0 where they only press [N/m]
	Proof        float64 // 0.2 % proof strength at temperature, for vessel-eu [Pa]
	CornerFactor float64 // C of a flat head [-]
	CornerSource string  // where C comes from
}

// title returns the printed name of the head at that end of the tank.
func title(end, what string) string {
	if end == "" {
		return what
	}
	return fmt.Sprintf("%c%s head: %s", end[0]-'a'+'A', end[1:], what)
}

// CheckThickness sets the least wall of a head against what the rule set of a
// asks for (head.X/thickness); end is forward or aft. A line load enters the
// girth form of a cone, by flight with its own factors against yield and against
// ultimate. Pressure on the convex side is another check's.
func CheckThickness(h Head, end string, d Demand, w Wall, a Allowables, s Seams) check.Result {
	id, name := "head."+end+"/thickness", title(end, "thickness by the rule set")
	switch {
	case h.Geometry().Inward:
		return check.NotApplicableTo(id, name, "the pressure is on the convex side: head."+end+"/external holds this head")
	case d.Pressure < 0:
		return check.NotApplicableTo(id, name, "the pressure across the head is negative: head."+end+"/external holds it")
	case a.ZoneKnown != nil:
		return check.NotMade(id, name, a.ZoneKnown)
	case !(w.Thickness > 0):
		return check.NotMade(id, name, errors.New("no wall is left"))
	case math.IsNaN(d.LineLoad):
		return check.NotMade(id, name, errors.New("the line load is missing"))
	}
	best, t, err := d.strictest(h, w, a, s)
	if err != nil {
		return check.NotMade(id, name, err)
	}
	inputs := append([]check.Quantity{check.Pa("p", "highest pressure over the head", d.Pressure)}, best.inputs...)
	return check.Result{
		Rule: string(a.Parent.Rule), ID: id, Title: name, Formula: best.formula,
		Inputs:   append(inputs, check.M("c", "corrosion allowance", w.Corrosion)),
		Demand:   check.M("t", "required thickness", t),
		Capacity: check.M("t_w", "least wall", w.Thickness),
		Factor:   1, Source: best.source, Note: d.note(h, w, best, s),
	}
}

// strictest returns the requirement that asks for the thickest wall [m].
func (d Demand) strictest(h Head, w Wall, a Allowables, s Seams) (term, float64, error) {
	most := math.Max(0, d.LineLoad)
	if !(a.SeamGirth.S > 0) {
		return term{}, math.NaN(), errors.New("the allowable stress across the girth seam is missing")
	}
	o := RuleOptions{Wall: w, LineLoad: most, GirthS: a.SeamGirth.S, Proof: d.Proof, CornerFactor: d.CornerFactor}
	if a.Parent.Rule != material.Flight || most == 0 {
		return required(h, a.Parent.Rule, d.Pressure, a.SeamSegment.S, s.Segment, s.Girth, o)
	}
	var best term
	var t float64
	for _, c := range []func(material.Limits) (s, scale float64){yieldCriterion, ultimateCriterion} {
		S, _ := c(a.SeamSegment)
		girth, scale := c(a.SeamGirth)
		o.GirthS, o.LineLoad = girth, most*scale
		b, need, err := required(h, material.Flight, d.Pressure, S, s.Segment, s.Girth, o)
		if err != nil {
			return b, need, err
		}
		if need >= t {
			best, t = b, need
		}
	}
	return best, t, nil
}

// yieldCriterion and ultimateCriterion give what flight allows under pressure
// alone [Pa], and how many times heavier a line load weighs than pressure [-].
func yieldCriterion(l material.Limits) (s, scale float64) {
	return l.Yield / l.YieldOnPressure, l.YieldOnLoad / l.YieldOnPressure
}

func ultimateCriterion(l material.Limits) (s, scale float64) {
	return l.Ultimate / l.UltimateOnPressure, l.UltimateOnLoad / l.UltimateOnPressure
}

// note says which requirement governs, and what else the reader must know.
func (d Demand) note(h Head, w Wall, best term, s Seams) string {
	n := "governs: " + best.what
	if s.SegmentJoint != "" {
		n += "; welds in the head: " + s.SegmentJoint
	}
	if s.GirthJoint != "" {
		n += "; joint to the shell: " + s.GirthJoint
	}
	if best.note != "" {
		n += "; " + best.note
	}
	if h.Kind() == "flat" && d.CornerSource != "" {
		n += "; corner factor: " + d.CornerSource
	}
	if g := h.Geometry(); g.CrownRadius > 0 && w.Thickness < 0.002*g.CrownRadius {
		n += "; wall under 0.002 crown radii: the knuckle check is part of the rule"
	}
	return n
}
