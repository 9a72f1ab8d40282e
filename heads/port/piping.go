package port

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Branch is a tube on a run of pipe, both straight, as the piping form sees it:
// walls are the least, corroded.
type Branch struct {
	RunDiameter, Diameter       float64 // D_h, D_b, outside [m]
	RunWall, Wall               float64 // T_h, T_b [m]
	RunRequired, Required       float64 // t_h, t_b, for the pressure [m]
	Angle                       float64 // β, between the axes; of run and branch [rad]
	PadDiameter, PadThickness   float64 // along the run; 0 = no pad [m]
	Height                      float64 // what the branch stands off the run, normal to it, on its shorter side [m]
	BranchRatio, PadRatio       float64 // allowable stress over the run's, not above 1; 0 = 1 [-]
	ReachOutboard, ReachInboard float64 // where metal ends on either side of the branch's axis; 0 = nowhere [m]
	Welds                       float64 // fillets within the zone [m2]
	Other                       float64 // metal within the zone beside these: of an inserted plate over T_h, of a tube inside [m2]
	RunEfficiency               float64 // of the seam through the hole, on T_h in A_2 only; 0 = 1 [-]
}

// A Piping is the area replacement of the piping form, every area in it.
type Piping struct {
	Hole, Reach, Height           float64 // d_1, d_2, L_4 [m]
	RunRequired, BranchRequired   float64 // t_h, t_b [m]
	Required, Run, Branch, Others float64 // A_1 required; A_2, A_3, A_4 there [m2]
}

// steepest is 45 degrees, the least angle between the axes that the piping form
// holds for.
const steepest = math.Pi / 4

// PipingArea replaces the metal of an oblique branch by the piping form:
//
//	d1 = (Db − 2Tb)/sin β        d2 = max(d1, Tb + Th + d1/2)     L4 = min(2.5Th, 2.5Tb + Tr)
//	A1 = th d1 (2 − sin β)       required
//	A2 = (2d2 − d1)(Th − th)     run;  cut off where metal ends on a side
//	A3 = 2L4 (Tb − tb)/sin β     branch
//	A4 = (Dr − Db/sin β) Tr + welds, the pad within d2
//
// A seam through the hole multiplies Th in A2 alone, as in [Port.Area]. With the axes meeting at β from 45 to 90 degrees, and Dh/Th under 100 or
// Db/Dh under one half. A weaker branch or pad counts by its strength over the
// run's. Lengths in [m]. Outside its range the error is a [*check.RangeError].
//
// Source: ASME B31.3 304.3.3, read in worked examples H301 (read) and H302, H303
// (inputs read and recalled); ratios as in 16 NYCRR Appendix 14-G, example 1
// (read). Test: piping_test.go.
func PipingArea(b Branch) (Piping, error) {
	nan := math.NaN()
	none := Piping{nan, nan, nan, nan, nan, nan, nan, nan, nan}
	const fn = "port.PipingArea"
	if err := check.Within(fn, "angle between the axes in degrees", b.Angle*180/math.Pi, (steepest-angleSlack)*180/math.Pi, 90+1e-9, "branches of the piping form"); err != nil {
		return none, err
	}
	for _, v := range []float64{b.RunDiameter, b.Diameter, b.RunWall, b.Wall, b.RunRequired, b.Required} {
		if err := check.Within(fn, "a diameter or wall of the branch [m]", v, 0, math.MaxFloat64, "a branch of pipe"); err != nil {
			return none, err
		}
	}
	if slender := b.RunDiameter / b.RunWall; !(slender < 100) && !(b.Diameter < b.RunDiameter/2) {
		return none, check.Within(fn, "run diameter over wall, branch not under half of the run", slender, 0, 100, "thin runs of the piping form")
	}
	sin, tr := math.Sin(b.Angle), b.PadThickness
	q := Piping{Hole: (b.Diameter - 2*b.Wall) / sin, RunRequired: b.RunRequired, BranchRequired: b.Required}
	q.Reach = math.Max(q.Hole, b.Wall+b.RunWall+q.Hole/2)
	q.Height = math.Min(math.Min(2.5*b.RunWall, 2.5*b.Wall+tr), b.Height)
	q.Required = b.RunRequired * q.Hole * (2 - sin)
	for _, end := range []float64{b.ReachOutboard, b.ReachInboard} {
		reach := math.Min(q.Reach, unless0(end))
		q.Run += (reach - q.Hole/2) * (b.RunWall*ratioOr1(b.RunEfficiency) - b.RunRequired)
		if pad := math.Min(b.PadDiameter/2, reach) - b.Diameter/sin/2; tr > 0 {
			q.Others += pad * tr * ratioOr1(b.PadRatio)
		}
	}
	q.Branch = 2 * q.Height * (b.Wall - b.Required) / sin * ratioOr1(b.BranchRatio)
	q.Others += b.Welds + b.Other
	return q, nil
}

// unless0 returns a length [m], without end where it is 0.
func unless0(v float64) float64 {
	if v == 0 {
		return inf
	}
	return v
}

// ratioOr1 returns a strength ratio [-], 1 where it is left 0.
func ratioOr1(v float64) float64 {
	if v == 0 {
		return 1
	}
	return math.Min(1, v)
}

// PipeWall returns the wall that a straight pipe of outside diameter d [m] needs
// under the pressure p [Pa], the allowable stress s [Pa] times the efficiency of
// its seam:
//
//	t = p D/[2 (S E + p Y)],  Y = 0.4
//
// for t under D/6.
//
// Source: ASME B31.3 304.1.2 (read in example H301; Y of ductile metal under 480 °C
// recalled).
func PipeWall(p, d, s float64) (float64, error) {
	const y = 0.4
	t := p * d / (2 * (s + p*y))
	if err := check.Within("port.PipeWall", "wall over diameter", t/d, 0, 1.0/6, "thin pipe"); err != nil {
		return math.NaN(), err
	}
	return t, nil
}

// thirdOpinion fills in the piping form in the meridional plane of a cylinder or
// cone, the cone as the pipe of its normal radius at the port, t_h not under N/S,
// metal and weld inside the wall counted as in [Port.Area] (the form's own zone
// ends at the inside face: practice). Elsewhere, outside its limits and for
// pressure on the convex side there is none; a note says why.
func (r *AreaReport) thirdOpinion() {
	p, w, s := r.Port, r.Wall, r.Strengths
	if w.Surface != Cylinder && w.Surface != Cone || r.Load.Convex || p.inKnuckle(w) {
		return
	}
	if r.Chords.Hillside {
		r.Notes = append(r.Notes, "the piping form does not reach this port: the axes of tube and cylinder do not meet")
		return
	}
	m, run := r.Meridional, 2*w.Radius+w.Thickness
	if w.Surface == Cone {
		run = 2*p.Radius/math.Cos(w.HalfApex) + w.Thickness
	}
	th, err := PipeWall(r.Load.Pressure, run, s.Wall)
	tb, err2 := PipeWall(r.Load.Pressure, p.OutsideDiameter, s.Tube*s.EfficiencyTube)
	b := Branch{RunDiameter: run, Diameter: p.OutsideDiameter, RunWall: w.Thickness, Wall: p.TubeWall,
		RunRequired: math.Max(th, r.Load.Hoop/s.Wall), Required: tb, Angle: math.Pi/2 - r.Chords.Obliquity,
		Height: p.outsideNormal(w, r.Chords.Obliquity), BranchRatio: r.Ratios.FR2, PadRatio: r.Ratios.FR4,
		ReachOutboard: m.Outboard.Limit, ReachInboard: m.Inboard.Limit, RunEfficiency: s.EfficiencyMeridional,
		Welds: m.Whole.A41 + m.Whole.A42 + m.Whole.A43, Other: m.Whole.A3}
	if p.Pad != nil {
		b.PadThickness, b.PadDiameter = p.Pad.Thickness, 2*m.Outboard.HalfPad
	}
	for _, side := range []Areas{m.Outboard, m.Inboard} {
		b.Other += s.EfficiencyMeridional * (p.wallMetal(w, side.HalfBore, side.Limit) - w.Thickness*(side.Limit-side.HalfBore))
	}
	q, err3 := PipingArea(b)
	if err := errors.Join(err, err2, err3); err != nil {
		r.Notes = append(r.Notes, fmt.Sprintf("the piping form does not reach this port: %v", err))
		return
	}
	r.Piping = &q
}

// reading sets what there is against what is required; what is negative stands
// on the side of the demand.
func (q Piping) reading() reading {
	need, have := q.Required, 0.0
	for _, v := range []float64{q.Run, q.Branch, q.Others} {
		if v < 0 {
			need -= v
		} else {
			have += v
		}
	}
	return reading{pipingName, check.M2("A_1", "area required, piping form", need), check.M2("A_2 + A_3 + A_4", "area there, piping form", have)}
}

const pipingName = "piping form, meridional plane"

// pipingFormula is the comparison of the piping form as printed.
const pipingFormula = "A_2 + A_3 + A_4 ≥ A_1 = t_h d_1 (2 − sin β), A_2 = (2d_2 − d_1)(T_h − t_h), A_3 = 2L_4 (T_b − t_b)/sin β f_r2, t = p D/[2(S E + 0.4p)]"

func (q *Piping) inputs() []check.Quantity {
	if q == nil {
		return nil
	}
	return []check.Quantity{check.M("t_h", "piping form, run wall required, or N/S", q.RunRequired), check.M("t_b", "piping form, branch wall required", q.BranchRequired),
		check.M("d_1", "piping form, hole", q.Hole), check.M("d_2", "piping form, reach along the wall", q.Reach), check.M("L_4", "piping form, height", q.Height),
		check.M2("A_1", "piping form, required", q.Required), check.M2("A_2", "piping form, wall", q.Run), check.M2("A_3", "piping form, tube", q.Branch), check.M2("A_4", "piping form, pad and welds", q.Others)}
}
