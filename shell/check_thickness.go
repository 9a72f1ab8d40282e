package shell

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// thicknessRule is how one rule set asks for a wall.
type thicknessRule struct {
	hoop    func(c Cylinder, p, S, E float64) (float64, error)
	girth   func(c Cylinder, p, nx, S, E float64) (float64, error)
	formula string
	source  check.Source
}

var clauseRule = thicknessRule{
	Cylinder.RequiredThicknessHoop, Cylinder.RequiredThicknessGirth,
	"t_l = p R/(S E_l − 0.6 p), t_g = (p_x R + 2 max(N_x,l, 0))/(2 S E_g + 0.4 p_x), p_x = 2 N_x,p/R_m",
	check.Source{Doc: "ASME VIII-1", Where: "UG-27(c)(1), (c)(2); line load by equilibrium", How: check.Read},
}

var thicknessRules = map[material.Rule]thicknessRule{
	material.Vessel: clauseRule,
	material.Flight: clauseRule,
	material.VesselEU: {
		Cylinder.RequiredThicknessHoopEU, Cylinder.RequiredThicknessGirthEU,
		"e_l = p D_i/(2 f z_l − p), e_g = (p_x D_i + 4 max(N_x,l, 0))/(4 f z_g − p_x), p_x = 2 N_x,p/R_m",
		check.Source{Doc: "EN 13445-3", Where: "European method, recalled; confirm; girth by equilibrium", How: check.Memory},
	},
}

// A factored pair of loads with the strength they are held to.
type factored struct {
	name           string
	strength       float64 // [Pa]
	pressure, load float64 // factors [-]
}

// held returns what the limits hold loads to: S in a vessel rule, and yield
// and ultimate strength, each with its own factors, in flight.
func held(l material.Limits) []factored {
	if l.Rule != material.Flight {
		return []factored{{"", l.S, 1, 1}}
	}
	return []factored{
		{"yield", l.Yield, l.YieldOnPressure, l.YieldOnLoad},
		{"ultimate", l.Ultimate, l.UltimateOnPressure, l.UltimateOnLoad},
	}
}

// CheckThickness sets the least wall against what the rule asks for along the
// long seam and across the girth seams, and says which seam governs. The girth
// term takes the axial pressure from the free body and the line load in tension
// where there is one; what relieves is left out. In flight each load carries
// its factor and the wall is held to yield and ultimate strength.
func (c Cylinder) CheckThickness(rule material.Rule, cond Condition, a Allowables, s Seams) check.Result {
	r := c.start("cylinder/thickness", "Cylinder: required thickness", a.SeamLong)
	r.Rule = string(rule)
	how, known := thicknessRules[rule]
	if !known {
		r.Err = fmt.Errorf("no thickness formula for the rule %q", string(rule))
		return r
	}
	r.Formula = how.formula
	r.Source = weaker(weaker(how.source, a.SeamLong.Source), a.SeamGirth.Source)
	px, nx := 2*cond.AxialMost/c.MidRadius(), cond.LoadMost
	r.Inputs = append(c.inputs(cond),
		check.Pa("p_x", "pressure that the axial force of gas and liquid stands for", px),
		check.NPerM("N_x,l", "line load, most in tension", nx),
		check.Num("E_l", "joint efficiency, long seam "+s.LongJoint, s.Long),
		check.Num("E_g", "joint efficiency, girth seam "+s.GirthJoint, s.Girth))
	if r.Err = errors.Join(c.Valid(), a.seam(s.LongJoint, s.Long), a.seam(s.GirthJoint, s.Girth)); r.Err != nil {
		return r
	}
	var needs needed
	for _, f := range held(a.SeamLong) {
		need, err := how.hoop(c, math.Max(0, f.pressure*cond.Pressure), f.strength, s.Long)
		needs.add("t_l", "long seam", f, need, err)
	}
	for _, f := range held(a.SeamGirth) {
		need, err := how.girth(c, math.Max(0, f.pressure*px), math.Max(0, f.load*nx), f.strength, s.Girth)
		needs.add("t_g", "girth seam", f, need, err)
	}
	r.Inputs = append(r.Inputs, needs.inputs...)
	r.Demand = check.M("t_req", "required thickness, "+needs.governs+" governs", needs.most)
	r.Capacity = check.M("t", "least wall", c.Thickness)
	r.Note, r.Err = "The "+needs.governs+" governs.", needs.err
	if cond.Pressure <= 0 {
		r.Note = "No pressure from inside in this case; pressure from outside is for cylinder/external."
	}
	return r
}

// needed collects required walls.
type needed struct {
	most    float64 // [m]
	governs string
	inputs  []check.Quantity
	err     error
}

// add takes one required wall [m] with the strength and factors behind it.
func (n *needed) add(symbol, seam string, f factored, need float64, err error) {
	words := seam
	if f.name != "" {
		words += ", " + f.name
		n.inputs = append(n.inputs,
			check.Num("FS_p", "factor on pressure, "+words, f.pressure),
			check.Num("FS_l", "factor on line loads, "+words, f.load))
	}
	n.inputs = append(n.inputs,
		check.Pa("S", "strength held to, "+words, f.strength),
		check.M(symbol, "required thickness, "+words, need))
	n.err = errors.Join(n.err, err)
	if n.governs == "" || need > n.most || math.IsNaN(need) {
		n.most, n.governs = need, words
	}
}
