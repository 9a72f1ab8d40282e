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
// larger of the inside fillet's and the depth of the groove [m]. The parts joined count with
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
	all := r.sizeReadings()
	paths, err := r.pathReadings()
	if err != nil { // not reached: what a fillet factor refuses leaves the report incomplete
		return check.NotMade(id, title, err)
	}
	all = append(all, paths...)
	res := check.Result{ID: id, Title: title, Factor: 1,
		Formula: "t_1 ≥ t_c; partial: t_2 ≥ t_c, t_1 + t_2 ≥ 1.25 t_min, each path ΣR ≥ min(W, W_i)",
		Source:  check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2010", Where: "sizes of UW-16 and paths of UG-41 read; unit strengths and pad edge recalled, confirm", How: check.Memory}}
	worst := governing(all)
	res.Inputs = append(res.Inputs, numbers(all)...)
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
	res := check.Result{ID: id, Title: title, Factor: 1, Formula: "each path ΣR ≥ min(W, W_i)", Inputs: numbers(paths), Demand: worst.demand, Capacity: worst.capacity,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2010", Where: "paths of UG-41 read; unit strengths recalled, confirm", How: check.Memory},
		Note:   "governs: " + worst.what + "; the sizes that UW-16 asks for are held in service"}
	if worst.capacity.Value <= 0 {
		res.Err = fmt.Errorf("port %s: there is no weld for this: %s", r.Port.Name, worst.what)
	}
	return res
}

// sizeReadings lists the weld sizes asked and given.
func (r AreaReport) sizeReadings() []reading {
	p, w := r.Port, r.Wall
	const most, cover = 19e-3, 6e-3
	t, tube := max(p.Sizes.Wall, p.atHole(w)), max(p.Sizes.Tube, p.TubeWall)
	joined := t
	if p.Pad != nil {
		joined = max(p.Sizes.Pad, p.Pad.Thickness)
	}
	tmin := math.Min(most, math.Min(tube, joined))
	tc := math.Min(cover, 0.7*tmin)
	throat := math.Sin((math.Pi/2 - r.Chords.Obliquity) / 2)
	t1, t2 := 0.0, p.Groove
	outside, inside := p.fillets(w, r.Chords.Obliquity)
	if outside {
		t1 = p.OutsideLeg * throat
	}
	if inside {
		t2 = math.Max(t2, p.InsideLeg*throat)
	}
	first := reading{"throat of the outside fillet", check.M("t_c", "throat required outside", tc), check.M("t_1", "throat of the outside fillet", t1)}
	all := []reading{first}
	if !p.FullGroove {
		inner := math.Min(most, math.Min(tube, t))
		all = append(all, reading{"second weld, inside fillet or groove", check.M("t_c", "throat required of the second weld", math.Min(cover, 0.7*inner)), check.M("t_2", "throat or depth of the second weld", t2)},
			reading{"both welds together", check.M("1.25 t_min", "sum of throats required", 1.25*math.Max(tmin, inner)), check.M("t_1 + t_2", "sum of throats", t1+t2)})
	}
	if p.Pad != nil {
		all = append(all, reading{"fillet round the pad", check.M("½ t_min", "throat required at the pad's edge", math.Min(most, math.Min(joined, t))/2),
			check.M("t", "throat at the pad's edge", p.Pad.Leg/math.Sqrt2)})
	}
	return all
}
