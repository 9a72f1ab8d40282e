package port

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// judge collects what no area can make good: a wall thinner than it must be
// without the port, an outline that reaches where metal stops counting, a pad
// smaller than the hole in it or thicker than allowed.
//
// Source: ASME VIII-1 UG-37; pad thickness VIII-2:2010 4.2.5.5(d)(4) (read).
func (r *AreaReport) judge() {
	p, w := r.Port, r.Wall
	fault := func(what string, demand, capacity check.Quantity) {
		if !(demand.Value <= capacity.Value) {
			r.Faults = append(r.Faults, Fault{what, demand, capacity})
		}
	}
	need := math.Max(r.RequiredWall, r.Load.mostAsked()/r.Strengths.Wall)
	fault("the wall is thinner than it must be without the port", check.M("t_r", "wall required without the port", need), check.M("t", "least wall", w.Thickness))
	for _, pl := range []Plane{r.Meridional, r.Transverse} {
		for _, side := range []Areas{pl.Outboard, pl.Inboard} {
			fault("the hole reaches to where metal no longer counts, in the "+pl.Name+" plane",
				check.M("C/2", "half outside chord", side.HalfOutside), check.M("L_s", "limit along the wall", side.Limit))
			if p.Pad != nil {
				fault("the pad is smaller than the hole in it, in the "+pl.Name+" plane",
					check.M("C/2", "half outside chord", side.HalfOutside), check.M("D_p/2", "reach of the pad", side.HalfPad))
			}
		}
	}
	if p.Fit == On {
		r.Cautions = append(r.Cautions, fmt.Sprintf("port %s pulls on the wall through its thickness: examine the plate there for laminations (practice)", p.Name))
	}
	if p.Insert != nil {
		r.Cautions = append(r.Cautions, fmt.Sprintf("port %s: the inserted plate bends the wall where it is thicker on one side only; the area rule does not show it, port.%s/misalignment takes it as flush with the wall", p.Name, p.Name))
	}
	if w.Surface != Cylinder && w.Surface != Cone && w.Surface != Flat && r.Chords.Meridional > w.Radius {
		r.Cautions = append(r.Cautions, fmt.Sprintf("port %s takes more than half of the head's diameter: a reducer or cone is the better choice (UG-36(b)(2), recalled)", p.Name))
	}
	if p.Pad == nil {
		return
	}
	fault("the pad is thicker than 1.5 times the wall", check.M("t_e", "pad thickness", p.Pad.Thickness), check.M("1.5 t", "most pad thickness", 1.5*w.Thickness))
	r.Cautions = append(r.Cautions, fmt.Sprintf("port %s: a pad counts only where wall, tube and pad have at most 550 MPa of ultimate strength "+
		"and at least 12 %% elongation; keep its vent hole open", p.Name))
}

// A reading is one of the comparisons the check may rest on.
type reading struct {
	what             string
	demand, capacity check.Quantity
}

// utilisation returns demand over capacity [-]; +Inf where there is no capacity.
func (a reading) utilisation() float64 {
	if a.capacity.Value <= 0 {
		return math.Inf(1)
	}
	return a.demand.Value / a.capacity.Value
}

// governing returns the comparison with the largest utilisation, or the first
// that is not a number, so that none can hide.
func governing(all []reading) reading {
	worst := all[0]
	for _, a := range all {
		u := a.utilisation()
		if math.IsNaN(u) {
			return a
		}
		if u > worst.utilisation() {
			worst = a
		}
	}
	return worst
}

// numbers returns both numbers of every comparison, to be printed.
func numbers(all []reading) []check.Quantity {
	var in []check.Quantity
	for _, a := range all {
		in = append(in, a.demand, a.capacity)
	}
	return in
}

// compare sets the area there is against the area asked. An area that is
// negative stands on the side of the demand: the verdict is the same, the
// capacity stays positive, and the margin falls steadily as the pressure rises.
// Where not even one area is positive, no such capacity can be printed and the
// wall itself is compared; the margin steps there, far below zero on either side.
func (r AreaReport) compare(pl Plane, a Areas, what string) reading {
	need, have := a.Required, 0.0
	for _, v := range []float64{a.A1, a.A2, a.A3, a.A41, a.A42, a.A43, a.A5} {
		if v < 0 {
			need -= v
		} else {
			have += v
		}
	}
	if need == a.Required {
		return reading{what, check.M2("A", "area required, "+what, need), check.M2("ΣA", "area available, "+what, have)}
	}
	if wall := pl.Efficiency * r.Wall.Thickness; have == 0 && pl.Strip > wall {
		return reading{what, check.M("F t_r", "wall required, "+what, pl.Strip), check.M("E_1 t", "wall there is, "+what, wall)}
	}
	return reading{what, check.M2("A − Σ(A < 0)", "area required and missing, "+what, need), check.M2("Σ(A > 0)", "area available, "+what, have)}
}

// readings lists every comparison, areas first.
func (r AreaReport) readings() []reading {
	all := make([]reading, 0, 16)
	for _, pl := range [2]*Plane{&r.Meridional, &r.Transverse} {
		for i, a := range [3]*Areas{&pl.Whole, &pl.Outboard, &pl.Inboard} {
			all = append(all, r.compare(*pl, *a, wordsOf[pl.Name].parts[i].reading))
		}
	}
	for _, q := range r.Pressure {
		all = append(all, reading{"pressure-area method, " + q.Side + " side", check.Pa("p", "pressure at the port", r.Load.Pressure),
			check.Pa("p_max", "pressure the "+q.Side+" side carries", q.Capacity)})
	}
	if r.Piping != nil {
		all = append(all, r.Piping.reading())
	}
	if q := r.Stress; q != nil {
		all = append(all, reading{stressName, check.Pa("p", "pressure at the port", r.Load.Pressure), check.Pa("p_max", "pressure carried, stress method", q.Capacity)})
	}
	return all
}

// worst returns the comparison that speaks and the note on it: the largest
// utilisation of areas and faults. Where there is a fault, only what fails with
// numbers that can be printed may speak, or else the fault, which is no verdict
// then: no area makes a fault good.
func (r AreaReport) worst(all []reading) (reading, string) {
	if len(r.Faults) == 0 {
		a := governing(all)
		return a, "governs: " + a.what
	}
	var faults, failing []reading
	for _, f := range r.Faults {
		faults = append(faults, reading{f.What, f.Demand, f.Capacity})
	}
	for _, a := range append(all, faults...) {
		if a.capacity.Value > 0 && a.demand.Value > a.capacity.Value {
			failing = append(failing, a)
		}
	}
	a, whatever := governing(faults), "not satisfied whatever the areas: "
	whatever += a.what
	if len(failing) > 0 {
		a = governing(failing)
	}
	return a, "governs: " + a.what + "; " + whatever
}

// Check returns the check port.NAME/area: the worst of the whole section and of
// each side alone in both planes, of the pressure-area method on both sides, of
// the piping form and the stress method where they reach, and of the faults. The stress at the edge of an open hole is
// shown and decides nothing: area replacement stands for it. An incomplete report is not assessed.
func (r AreaReport) Check(name string) check.Result {
	id, title := "port."+name+"/area", "Port "+name+": metal replaced round the hole"
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	worst, note := r.worst(r.readings())
	res := check.Result{
		ID: id, Title: title, Inputs: r.inputs(), Demand: worst.demand, Capacity: worst.capacity, Factor: 1,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2019", Where: "areas and limits of UG-37 read; cones, torispheres and weld ratios recalled, confirm", How: check.Memory},
		Note:   strings.Join(slices.Concat([]string{note}, r.Notes, r.exempt(), r.Cautions), "; "),
	}
	area := areaFormula + "; " + r.RequiredFormula + "; t_rn = p R_n/(S_n E_t − 0.6p)"
	formulas := []string{area}
	if len(r.Pressure) > 0 {
		formulas = append(formulas, pressureAreaFormula)
	}
	if r.Piping != nil {
		formulas = append(formulas, pipingFormula)
	}
	if r.Stress != nil {
		formulas = append(formulas, stressFormula)
	}
	first := area
	switch {
	case strings.HasPrefix(worst.what, "pressure-area"):
		first = pressureAreaFormula
		res.Source = check.Source{Doc: "European method, recalled; confirm", Where: "pressure-area method for openings", How: check.Memory}
	case worst.what == stressName:
		first = stressFormula
		res.Source = check.Source{Doc: "ASME BPVC Section VIII Division 2, recalled; confirm", Where: "4.5, stress at an opening", How: check.Memory}
	case worst.what == pipingName:
		first = pipingFormula
		res.Source = check.Source{Doc: "ASME B31.3, recalled; confirm", Where: "304.3.3, branch at an angle, read in an example; taken for the wall at the port", How: check.Memory}
	}
	formulas = append([]string{first}, slices.DeleteFunc(formulas, func(f string) bool { return f == first })...)
	res.Formula = strings.Join(formulas, "; beside it: ")
	return res
}

// areaFormula is the comparison of area replacement as printed.
const areaFormula = "A_1 + A_2 + A_3 + A_41 + A_42 + A_43 + A_5 ≥ A = d F t_r + 2 t_n′ F t_r (1 − f_r1), each side alone A/2"

// pressureAreaFormula is the comparison of the pressure-area method as printed;
// l is the reach along the wall from the tube's axis.
const pressureAreaFormula = "p ≤ p_max = [(E_1 A_fs + A_fw) S_v + A_fb min(S_v, S_n) + A_fp min(S_v, S_p)]/[A_ps + A_pb + A_pφ/2 + (A_fs + A_fw + A_fb + A_fp)/2], " +
	"A_ps = r_is l (cylinder), l (2 r_is ± l tan α)/2 (cone, + outboard), r_is² l/(2 r_is + t) (dome), l = l_so + a"

// inputs lists every number of the check in the order of the work.
func (r AreaReport) inputs() []check.Quantity {
	p, w, fr := r.Port, r.Wall, r.Ratios
	in := append(make([]check.Quantity, 0, 176), // they come to about a hundred and fifty
		check.Pa("p", "pressure at the port", r.Load.Pressure), check.M("t", "least wall", w.Thickness), check.M("t_n", "least tube wall", p.TubeWall),
		check.M("OD", "tube outside diameter", p.OutsideDiameter), check.Rad("φ", "tube axis to wall normal", r.Chords.Obliquity),
		check.Pa("S_v", "allowable stress, wall", r.Strengths.Wall), check.Pa("S_n", "allowable stress, tube", r.Strengths.Tube),
		check.Num("E_t", "efficiency of the tube's own seam", r.Strengths.EfficiencyTube),
		check.Num("f_r1", "strength ratio", fr.FR1), check.Num("f_r2", "strength ratio", fr.FR2), check.Num("f_r3", "strength ratio", fr.FR3), check.Num("f_r4", "strength ratio", fr.FR4),
		check.M("t_r", "wall required without the port", r.RequiredWall), check.M("t_rn", "tube wall required", r.RequiredTube),
		check.NPerM("N_θ", "resultant across the meridional plane", r.Load.Hoop), check.NPerM("N_φ", "resultant across the transverse plane", r.Load.Meridional),
	)
	if l := r.Load; l.HoopAsked != 0 || l.MeridionalAsked != 0 {
		hoop, meridional := l.asked()
		in = append(in, check.NPerM("N_θS", "N of the meridional plane: pressure and line loads by their own factors", hoop), check.NPerM("N_φS", "N of the transverse plane, the same", meridional))
	}
	switch w.Surface {
	case Cylinder, Sphere:
		in = append(in, check.M("R_m", "mid-surface radius", w.Radius))
	case Cone:
		in = append(in, check.M("e", "tube axis from tank axis", p.Radius), check.Rad("α", "half angle", w.HalfApex))
	}
	if p.Pad != nil {
		in = append(in, check.Pa("S_p", "allowable stress, pad", r.Strengths.Pad), check.M("t_e", "pad thickness", p.Pad.Thickness))
	}
	if q := p.Insert; q != nil {
		in = append(in, check.M("t_i", "inserted plate", q.Thickness), check.M("s_i", "reach of the inserted plate", q.OutsideDiameter/2))
	}
	in = r.Transverse.inputs(r.Meridional.inputs(in))
	for _, q := range r.Pressure {
		in = append(in, q.inputs()...)
	}
	in = append(append(in, r.Piping.inputs()...), r.Stress.inputs()...)
	return append(in, check.Num("K", "stress at the edge over hoop stress, were the hole open; shown only", r.stressRaise()))
}

// A planeWords names the numbers of a plane, made once: a tank of many ports prints
// them often.
type planeWords struct {
	bore, outside, along, tube, factor, strip, seam, limit, off, inside, short string
	parts                                                                      [3]partWords
}

// A partWords names the numbers of a whole section or of a side.
type partWords struct {
	reading, limit, half, pad, asked, wall, tubeOut, tubeIn, fillet, padFillet, filletIn, padArea string
}

// wordsOf names the numbers of both planes.
var wordsOf = map[string]*planeWords{"meridional": newPlaneWords("meridional"), "transverse": newPlaneWords("transverse")}

func newPlaneWords(plane string) *planeWords {
	w := &planeWords{plane + " bore chord", plane + " outside chord", plane + " tube wall along the wall", plane + " tube to wall", plane + " plane factor",
		plane + " wall required, or N/S", plane + " seam through the hole", plane + " limit along the wall", plane + " limit off the wall",
		plane + " inside projection counted", plane + " limit of a wall that is short", [3]partWords{}}
	for i, part := range [3][2]string{{"whole", "whole section"}, {"outboard", "outboard side alone"}, {"inboard", "inboard side alone"}} {
		name := plane + " " + part[0]
		w.parts[i] = partWords{plane + " plane, " + part[1], name + " limit", name + " bore half-chord", name + " reach of the pad", name + " required", name + " wall", name + " tube outside",
			name + " tube inside", name + " outside fillet", name + " pad fillet", name + " inside fillet", name + " pad"}
	}
	return w
}

// inputs appends the numbers of a plane.
func (pl Plane) inputs(in []check.Quantity) []check.Quantity {
	w := wordsOf[pl.Name]
	in = append(in,
		check.M("d", w.bore, pl.Bore), check.M("C", w.outside, pl.Outside), check.M("t_n′", w.along, pl.TubeAlong),
		check.Num("sin β", w.tube, pl.SinBeta), check.Num("F", w.factor, pl.Factor), check.M("F t_r", w.strip, pl.Strip), check.Num("E_1", w.seam, pl.Efficiency),
		check.M("L_p", w.limit, pl.ParallelLimit), check.M("H", w.off, pl.NormalLimit), check.M("h", w.inside, pl.InsideLimit),
	)
	if pl.WallLimit != pl.ParallelLimit {
		in = append(in, check.M("L_w", w.short, pl.WallLimit))
	}
	for i, a := range [3]*Areas{&pl.Whole, &pl.Outboard, &pl.Inboard} {
		part := &w.parts[i]
		if i > 0 {
			in = append(in, check.M("L_s", part.limit, a.Limit), check.M("c", part.half, a.HalfBore))
			if a.HalfPad > 0 {
				in = append(in, check.M("D_p/2", part.pad, a.HalfPad))
			}
		}
		in = append(in, check.M2("A", part.asked, a.Required), check.M2("A_1", part.wall, a.A1), check.M2("A_2", part.tubeOut, a.A2),
			check.M2("A_3", part.tubeIn, a.A3), check.M2("A_41", part.fillet, a.A41), check.M2("A_42", part.padFillet, a.A42),
			check.M2("A_43", part.filletIn, a.A43), check.M2("A_5", part.padArea, a.A5))
	}
	return in
}

func (q PressureArea) inputs() []check.Quantity {
	s := q.Side
	return []check.Quantity{
		check.M("r_is", s+" wall radius of curvature", q.WallRadius), check.M("l_so", s+" wall counted", q.WallLength), check.M("l′_b", s+" tube counted outside", q.TubeLength), check.M("l′_bi", s+" tube counted inside", q.InsideLength),
		check.M2("A_fs", s+" wall area", q.WallArea), check.M2("A_fb", s+" tube area", q.TubeArea), check.M2("A_fp", s+" pad area", q.PadArea), check.M2("A_fw", s+" weld area", q.WeldArea),
		check.M2("A_ps", s+" pressure area in the shell", q.WallPressure), check.M2("A_pb", s+" pressure area in the tube", q.TubePressure), check.M2("A_pφ", s+" pressure area of the obliquity", q.ObliquePressure),
		check.Pa("p_max", s+" side", q.Capacity),
	}
}
