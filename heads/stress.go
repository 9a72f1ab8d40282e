package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Loading is what acts along a head in one case. x is the distance from the
// seam plane, never beyond the depth of the inside face.
type Loading struct {
	Pressure            func(x float64) float64    // inside minus outside, highest round the ring at x [Pa]
	Force               func(x, r float64) float64 // V, axial force that the head carries at the cut at x where its mid-wall radius is r, by pressure and liquid, tension positive [N]
	LoadMost, LoadLeast func(x float64) float64    // both extremes of what line loads add to the axial force, per length of circumference; nil: none [N/m]
	PressureLeast       float64                    // smallest simultaneous pressure over Pressure [-]
	Present             bool                       // the smallest values are certain to act
}

// samples is the number of points of a meridian at which stress is judged. Every
// piece has its share, both ends included, and the extremes of membrane
// stress lie at ends or are flat, so that the count does not matter.
const samples = 192

// thinnest is the least mid-wall radius over wall at the seam [-] for membrane theory.
const thinnest = 10

// CheckMembrane sets the membrane stress along the whole head, straight flange
// included, against its limits, and returns the worst point (head.X/membrane):
//
//	σ_φ = V/(2 π r sin φ t)    σ_θ = r_2 (p − N_φ/r_1)/t
//
// Where the hoop stress has the sign of the pressure the equivalent stress is
// held to the wall's limit, or to the weld zone's within its width of a weld;
// where it is the other way round (knuckle, rim of a flat ellipsoid) only
// the meridional stress, since there membrane theory overstates the hoop and the
// knuckle and junction checks hold it. Across welds the stress square to the seam
// is held to the seam's limit times its efficiency. The surface is at half
// the least wall outside the corroded inside face. A mid-wall radius under ten walls
// at the seam is outside the theory: not assessed.
func CheckMembrane(h Head, end string, w Wall, l Loading, a Allowables, s Seams) check.Result {
	id, name := "head."+end+"/membrane", title(end, "membrane stress along the meridian")
	if h.Kind() == "flat" {
		return check.NotApplicableTo(id, name, "a flat head carries pressure by bending, which the thickness rule holds")
	}
	worst, at, err := worstPoint(h, w, l, a, s)
	if err != nil {
		return check.NotMade(id, name, err)
	}
	return check.Result{
		Rule: string(a.Parent.Rule), ID: id, Title: name,
		Formula: at.formula() + worst.Formula,
		Inputs:  append(at.inputs(w), worst.Inputs...),
		Demand:  worst.Demand, Capacity: worst.Capacity, Factor: worst.Factor,
		Source: check.Source{Doc: "membrane equilibrium of a shell of revolution", Where: "heads, package comment", How: check.Computed},
		Note:   at.note(worst), Err: worst.Err,
	}
}

// A place is a point with the stresses there.
type place struct {
	Point
	from                float64 // along the wall to the girth seam [m]
	p                   float64 // inside minus outside [Pa]
	hoop, mer           float64 // from pressure [Pa]
	loadMost, loadLeast float64 // meridional, from line loads [Pa]
	where               string
}

func (at place) inputs(w Wall) []check.Quantity {
	q := []check.Quantity{
		check.M("x", "distance from the seam plane", at.X), check.M("r", "mid-wall radius", at.R),
		check.Rad("φ", "angle between wall normal and tank axis", at.Phi), check.M("r_2", "second principal radius", at.R2),
		check.M("t", "least wall", w.Thickness), check.Pa("p", "pressure there", at.p),
		check.N("V", "axial force of the cut from pressure and liquid", at.mer*w.Thickness*2*math.Pi*at.R*math.Sin(at.Phi)),
		check.Pa("σ_φ", "meridional stress from pressure", at.mer), check.Pa("σ_θ", "hoop stress from pressure", at.hoop),
		check.Pa("σ_n,max", "meridional stress from line loads, most", at.loadMost), check.Pa("σ_n,min", "the same, least", at.loadLeast),
	}
	if !math.IsInf(at.R1, 1) {
		q = append(q, check.M("r_1", "meridional radius of curvature", at.R1))
	}
	return q
}

// formula returns the stresses of the place from its inputs.
func (at place) formula() string {
	text := "σ_φ = V/(2 π r sin φ t)"
	if at.R == 0 {
		text = "σ_φ = p r_2/(2 t)"
	}
	if math.IsInf(at.R1, 1) {
		return text + ", σ_θ = p r_2/t; "
	}
	return text + ", σ_θ = r_2 (p/t − σ_φ/r_1); "
}

func (at place) note(j material.Judged) string {
	n := fmt.Sprintf("worst point: %s, %s", at.Piece, at.where)
	if j.Note != "" {
		n += "; " + j.Note
	}
	return n
}

// worstPoint judges the places along a head and returns the one with the least margin.
func worstPoint(h Head, w Wall, l Loading, a Allowables, s Seams) (material.Judged, place, error) {
	if err := l.whole(w); err != nil {
		return material.Judged{}, place{}, err
	}
	t, err := trackOf(h, w)
	if err == nil {
		err = a.ZoneKnown
	}
	if err != nil {
		return material.Judged{}, place{}, err
	}
	g := h.Geometry()
	zone := s.zone().inside(t)
	at := walk{l: l, g: g, wall: w.Thickness, track: t, apart: zone,
		due: func(all []trial, i int, p *place) []trial {
			return a.trials(all, p, g.Inward, &l, &s, zone[i], i == len(t.points)-1)
		}}
	return at.worst()
}

// notCompared returns why a comparison at x [m] from the seam could not be made.
func notCompared(err error, x float64) error {
	if err != nil {
		return err
	}
	// not reached: a comparison without a number has an error of its own
	return fmt.Errorf("at %.4g m from the seam the stress or its limit is not a number", x)
}

// whole refuses a loading that is not complete.
func (l Loading) whole(w Wall) error {
	if !(w.Thickness > 0) || !(w.Corrosion >= 0) || l.Pressure == nil || l.Force == nil {
		return errors.New("wall, pressure or axial force along the head is missing")
	}
	if !(l.PressureLeast <= 1) {
		return errors.New("the smallest simultaneous pressure must not exceed the pressure")
	}
	return nil
}

// stress fills in the stresses of one place, wall t [m].
func (l Loading) stress(at *place, g Geometry, t float64) error {
	x := math.Max(0, math.Min(g.Depth, at.X))
	at.p = l.Pressure(x)
	concave, V := at.p, 0.0
	if g.Inward {
		concave = -at.p
	}
	if at.R > 0 {
		V = l.Force(x, at.R)
	}
	nφ, nθ, err := Membrane(at.Point, concave, V)
	if err != nil {
		return err
	}
	at.mer, at.hoop = nφ/t, nθ/t
	if l.LoadMost != nil && at.R > 0 {
		at.loadMost = l.LoadMost(x) / (math.Sin(at.Phi) * t)
	}
	if l.LoadLeast != nil && at.R > 0 {
		at.loadLeast = l.LoadLeast(x) / (math.Sin(at.Phi) * t)
	}
	if math.IsNaN(at.loadMost + at.loadLeast) {
		return errors.New("a line load along the head is missing")
	}
	return nil
}
