package shell

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// thicknessRule is how one rule set asks for a wall.
type thicknessRule struct {
	hoop       func(c Cylinder, p, S, E float64) (float64, error)
	girth      func(c Cylinder, p, nx, S, E float64) (float64, error)
	hoopThick  float64 // p/(S E) beyond which the thick form holds [-]
	girthThick float64
	hoopText   [2]string // thin and thick form as printed: P, N, S, E stand for what is put in
	girthText  [2]string
	source     check.Source
}

var clauseRule = thicknessRule{
	Cylinder.RequiredThicknessHoop, Cylinder.RequiredThicknessGirth, 0.385, 1.25,
	[2]string{"{P} R/({S} E_l − 0.6 {P})", "R [√(({S} E_l + {P})/({S} E_l − {P})) − 1]"},
	[2]string{"({P} R + 2 {N})/(2 {S} E_g + 0.4 {P})", "R [√(1 + {P}/({S} E_g)) − 1]"},
	check.Source{Doc: "ASME VIII-1", Where: "UG-27(c)(1), (c)(2); line load by equilibrium", How: check.Read},
}

var europeanRule = thicknessRule{
	Cylinder.RequiredThicknessHoopEU, Cylinder.RequiredThicknessGirthEU, math.Inf(1), math.Inf(1),
	[2]string{"2 {P} R/(2 {S} E_l − {P})"}, [2]string{"(2 {P} R + 4 {N})/(4 {S} E_g − {P})"},
	check.Source{Doc: "EN 13445-3", Where: "European method, recalled; confirm; girth by equilibrium", How: check.Memory},
}

var thicknessRules = map[material.Rule]thicknessRule{material.Vessel: clauseRule, material.Flight: clauseRule, material.VesselEU: europeanRule}

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
	r.Source = weaker(weaker(how.source, a.SeamLong.Source), a.SeamGirth.Source)
	px, nx := 2*cond.AxialMost/c.MidRadius(), cond.LoadMost
	r.Inputs = append(c.inputs(cond), check.NPerM("N_x,p", "axial force of gas and liquid, most", cond.AxialMost),
		check.Pa("p_x", "pressure that the axial force of gas and liquid stands for", px),
		check.NPerM("N_x,l", "line load, most in tension", nx),
		check.Num("E_l", "joint efficiency, long seam "+s.LongJoint, s.Long),
		check.Num("E_g", "joint efficiency, girth seam "+s.GirthJoint, s.Girth))
	if r.Err = errors.Join(c.Valid(), a.seam(s.LongJoint, s.Long), a.seam(s.GirthJoint, s.Girth)); r.Err != nil {
		return r
	}
	var needs needed
	for _, f := range held(a.SeamLong) {
		p := math.Max(0, f.pressure*cond.Pressure)
		need, err := how.hoop(c, p, f.strength, s.Long)
		needs.add("l", how.hoopText[form(p, how.hoopThick*f.strength*s.Long)], "p", cond.Pressure, "long seam", f, need, err)
	}
	for _, f := range held(a.SeamGirth) {
		p := math.Max(0, f.pressure*px)
		need, err := how.girth(c, p, math.Max(0, f.load*nx), f.strength, s.Girth)
		needs.add("g", how.girthText[form(p, how.girthThick*f.strength*s.Girth)], "p_x", px, "girth seam", f, need, err)
	}
	r.Formula = "p_x = 2 N_x,p/R_m; " + needs.formula + "t_req = max(" + strings.Join(needs.symbols, ", ") + ") ≤ t"
	r.Inputs = append(r.Inputs, needs.inputs...)
	r.Demand = check.M("t_req", "required thickness, "+needs.governs+" governs", needs.most)
	r.Capacity = check.M("t", "least wall", c.Thickness)
	r.Note, r.Err = "The "+needs.governs+" governs.", needs.err
	if cond.Pressure <= 0 {
		r.Note = "No pressure from inside in this case; pressure from outside is for cylinder/external."
	}
	return r
}

// form returns 0 for the thin form, 1 for the thick one, which holds past a pressure [Pa].
func form(p, most float64) int {
	if p > most {
		return 1
	}
	return 0
}

// needed collects required walls.
type needed struct {
	most    float64 // [m]
	governs string
	formula string
	symbols []string
	inputs  []check.Quantity
	err     error
}

// add takes one required wall [m] with the strength and factors behind it, the form
// that it is by, and the pressure in it [Pa], under its symbol.
func (n *needed) add(index, text, symbol string, pressure float64, seam string, f factored, need float64, err error) {
	words, load := seam, "max(N_x,l, 0)"
	if pressure < 0 {
		symbol = "max(" + symbol + ", 0)"
	}
	if f.name != "" {
		words += ", " + f.name
		index += f.name[:1]
		symbol, load = "FS_"+index+" "+symbol, "FL_"+index+" "+load
		n.inputs = append(n.inputs, check.Num("FS_"+index, "factor on pressure, "+words, f.pressure))
		if strings.Contains(text, "{N}") {
			n.inputs = append(n.inputs, check.Num("FL_"+index, "factor on line loads, "+words, f.load))
		}
	}
	n.inputs = append(n.inputs, check.Pa("S_"+index, "strength held to, "+words, f.strength), check.M("t_"+index, "required thickness, "+words, need))
	n.symbols = append(n.symbols, "t_"+index)
	n.formula += "t_" + index + " = " + strings.NewReplacer("{P}", symbol, "{N}", load, "{S}", "S_"+index).Replace(text) + "; "
	n.err = errors.Join(n.err, err)
	if n.governs == "" || need > n.most || math.IsNaN(need) {
		n.most, n.governs = need, words
	}
}
