package port

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// CheckWeld is port.NAME/weld: the sizes of the attachment welds, and without
// stated full penetration the strength of every path through them:
//
//	tmin = min(19 mm, thinner of the parts joined), tc = min(6 mm, 0.7 tmin)
//	full penetration: cover fillet t1 ≥ tc
//	two partial welds: t1 ≥ tc, t2 ≥ tc, t1 + t2 ≥ 1.25 tmin
//	pad's outer edge: throat ≥ ½ min(19 mm, te, t)
//
// t1 is the throat of the outside fillet at its obtuse side, leg sin(β/2), t2 the
// larger of the inside fillet's and the depth of the groove [m]; a fillet that its tube
// does not reach past counts as none. The parts joined count with
// their nominal walls less corrosion ([Sizes]): a wall that came out thin asks for no
// smaller weld.
//
// Source: ASME VIII-1 UW-16 (tmin, tc, 1.25 read in course notes and the Section
// I twin; nominal walls and pad edge recalled); oblique throats computed.
func (r AreaReport) CheckWeld(name string) check.Result {
	id, title := "port."+name+"/weld", "Port "+name+": attachment welds"
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	formula, in, all := r.sizeReadings()
	paths, err := r.pathReadings()
	if err != nil { // not reached: what a fillet factor refuses leaves the report incomplete
		return check.NotMade(id, title, err)
	}
	all = append(all, paths...)
	if len(paths) > 0 {
		formula += "; each path ΣR_i ≥ W_i"
	}
	res := check.Result{ID: id, Title: title, Factor: 1, Formula: formula,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2010", Where: "sizes of UW-16 and paths of UG-41 read; unit strengths and pad edge recalled, confirm", How: check.Memory}}
	worst := governing(all)
	res.Inputs = append(in, numbers(all)...)
	res.Demand, res.Capacity = worst.demand, worst.capacity
	notes := []string{"governs: " + worst.what}
	if worst.capacity.Value <= 0 {
		res.Err = fmt.Errorf("port %s: there is no weld for this: %s", r.Port.Name, worst.what)
	}
	if δ := math.Pi/2 - r.Chords.Obliquity; δ < math.Pi/3-angleSlack && !r.Port.FullGroove {
		notes = append(notes, fmt.Sprintf("the joint closes to %.0f deg on one side: bevel it to full penetration or use a boss", δ*180/math.Pi))
	}
	res.Note = strings.Join(notes, "; ")
	return res
}

// CheckWeldAtProof is port.NAME/weld at the highest pressure of a test, the strengths of
// the report being the shares of yield that are allowed there: every path through the
// welds. With stated full penetration there is none.
//
// Source: as [AreaReport.WeldPaths], with the share of yield in place of the allowable
// stress; that a weld's unit strength of service holds against yield too, practice: no
// more than yield in shear, 0.577.
func (r AreaReport) CheckWeldAtProof(name string) check.Result {
	id, title := "port."+name+"/weld", "Port "+name+": attachment welds"
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	paths, err := r.pathReadings()
	switch {
	case err != nil: // not reached: what a fillet factor refuses leaves the report incomplete
		return check.NotMade(id, title, err)
	case len(paths) == 0:
		return check.NotApplicableTo(id, title, "full penetration: no path through the welds tears before the wall; their size is held in service")
	}
	worst := governing(paths)
	res := check.Result{ID: id, Title: title, Factor: 1, Formula: "each path ΣR_i ≥ W_i", Inputs: numbers(paths), Demand: worst.demand, Capacity: worst.capacity,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2010", Where: "paths of UG-41 read; unit strengths recalled, confirm", How: check.Memory},
		Note:   "governs: " + worst.what + "; the sizes that UW-16 asks for are held in service"}
	if worst.capacity.Value <= 0 {
		res.Err = fmt.Errorf("port %s: there is no weld for this: %s", r.Port.Name, worst.what)
	}
	return res
}

// sizeReadings lists the weld sizes asked and given, with the formula and the numbers
// that they are worked out by.
func (r AreaReport) sizeReadings() (formula string, in []check.Quantity, all []reading) {
	p, w := r.Port, r.Wall
	const most, cover = 19e-3, 6e-3
	t, tube := max(p.Sizes.Wall, p.atHole(w)), max(p.Sizes.Tube, p.TubeWall)
	joined, name := t, "vessel wall, nominal less corrosion where known"
	if p.Pad != nil {
		joined, name = max(p.Sizes.Pad, p.Pad.Thickness), "pad, nominal where known"
	}
	tmin := math.Min(most, math.Min(tube, joined))
	tc := math.Min(cover, 0.7*tmin)
	δ := math.Pi/2 - r.Chords.Obliquity
	throat := math.Sin(δ / 2)
	outer, inner := 0.0, 0.0 // a fillet that has no room is none
	outside, inside := p.fillets(w, r.Chords.Obliquity)
	if outside {
		outer = p.OutsideLeg
	}
	if inside {
		inner = p.InsideLeg
	}
	t1, t2 := outer*throat, math.Max(p.Groove, inner*throat)
	in = []check.Quantity{check.M("t_n", "tube wall, nominal less corrosion where known", tube), check.M("t_w", name, joined), check.M("m", "most that t_min counts", most),
		check.M("c", "most that t_c counts", cover), check.Rad("δ", "least angle between tube and wall", δ), check.M("l_o", "leg of the outside fillet", outer), check.M("t_min", "thinner of the parts joined", tmin)}
	formula = "t_min = min(t_n, t_w, m); t_c = min(c, 0.7 t_min); t_1 = l_o sin(δ/2); t_c ≤ t_1"
	all = []reading{{"throat of the outside fillet", check.M("t_c", "throat required outside", tc), check.M("t_1", "throat of the outside fillet", t1)}}
	if !p.FullGroove {
		ti := math.Min(most, math.Min(tube, t))
		in = append(in, check.M("t_v", "vessel wall inside, nominal less corrosion where known", t), check.M("t_i", "thinner of tube and wall", ti), check.M("l_i", "leg of the inside fillet", inner), check.M("g", "depth of the groove", p.Groove))
		formula += "; t_i = min(t_n, t_v, m); t_ci = min(c, 0.7 t_i); t_2 = max(g, l_i sin(δ/2)); t_ci ≤ t_2; t_s = 1.25 max(t_min, t_i); t_12 = t_1 + t_2; t_s ≤ t_12"
		all = append(all, reading{"second weld, inside fillet or groove", check.M("t_ci", "throat required of the second weld", math.Min(cover, 0.7*ti)), check.M("t_2", "throat or depth of the second weld", t2)},
			reading{"both welds together", check.M("t_s", "sum of throats required", 1.25*math.Max(tmin, ti)), check.M("t_12", "sum of throats", t1+t2)})
	}
	if p.Pad != nil {
		edge := math.Min(most, math.Min(joined, t))
		in = append(in, check.M("l_p", "leg round the pad", p.Pad.Leg), check.M("t_h", "vessel wall under the pad, nominal less corrosion where known", t))
		formula += "; t_e = min(t_w, t_h, m)/2; t_p = l_p/√2; t_e ≤ t_p"
		all = append(all, reading{"fillet round the pad", check.M("t_e", "throat required at the pad's edge", edge/2),
			check.M("t_p", "throat at the pad's edge", p.Pad.Leg/math.Sqrt2)})
	}
	return formula, in, all
}
