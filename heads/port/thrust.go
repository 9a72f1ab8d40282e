package port

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// An External load is what pipe or fitting puts on the port, magnitudes.
type External struct {
	Force  float64 // along the tube [N]
	Moment float64 // bending the tube [N m]
	// Factor κ on force and moment where line loads have factors of their own, over the
	// one on pressure that the allowable stresses hold; from 1 up, 0 = 1 [-].
	Factor float64
	// What membrane and bending stress of the wall, secondary, are held to, and its
	// formula; needed with a force or a moment [Pa].
	Range        float64
	RangeFormula string
}

// factored returns force and moment with the factor κ, and κ [-].
func (x External) factored() (force, moment, κ float64) {
	κ = 1
	if x.Factor != 0 {
		κ = x.Factor
	}
	return κ * x.Force, κ * x.Moment, κ
}

// loaded reports whether there is any.
func (x External) loaded() bool { return x.Force > 0 || x.Moment > 0 }

// valid returns an error for a load that is none, or that has no limit.
func (x External) valid(port string) error {
	switch {
	case !(x.Force >= 0 && x.Moment >= 0):
		return fmt.Errorf("port %s: force and moment from outside must be numbers from zero up", port)
	case x.Factor != 0 && !(x.Factor >= 1 && x.Factor < inf):
		return fmt.Errorf("port %s: the factor on the load from outside is %.4g, must be from 1 up", port, x.Factor)
	case x.loaded() && !(x.Range > 0 && x.Range < inf):
		return fmt.Errorf("port %s: what membrane and bending stress of the wall are held to is not known", port)
	}
	return nil
}

// CheckThrust is port.NAME/thrust: the capped tube's pressure thrust and the
// load from outside, carried by the attachment weld and by the tube:
//
//	T = p π OD²/4 + F + 2M/r ≤ weld: π OD (legs 0.49 + groove 0.60) S
//	σ = p r/(2 tn) + F/(2π r tn) + M/(π r² tn) ≤ Sn,  r the tube's mean radius
//
// a full-penetration groove counts with the vessel wall's thickness, fillets with
// [Port.FilletFactor], S the weaker of wall and tube; a moment acts as a force 2M/r
// (same peak line load, safe). A load from outside is held in the wall too, as a
// screening: on a dome by [LocalStress] with the larger of its radii, on a cylinder
// and, with the normal radius, on a cone by [CylinderLocalStress], in a knuckle and
// outside 0.8 of an ellipsoid's diameter by that with the larger of its radii and the
// numerical shell's stress, [Load.Membrane] and [Load.Face]; on a flat head it is not assessed.
// Local membrane stress is held to 1.5 S, with bending to [External.Range]. By a factor κ of
// [External] F and M count κ times.
//
// Source: equilibrium, computed; unit strengths ASME VIII-1 UW-15(c), recalled; limits of
// stress as at a joint.
func (r AreaReport) CheckThrust(name string, x External) check.Result {
	s := r.Strengths.Wall
	return r.thrust(name, x, [2]check.Quantity{check.Pa("1.5 S", "local membrane limit", 1.5*s), check.Pa(x.RangeFormula, "limit of membrane and bending", x.Range)})
}

// CheckThrustAtProof is the same at the highest pressure of a test, the strengths of
// the report being the shares of yield that are allowed there: local membrane stress in
// the wall to membrane, with bending to surface, both [Pa].
func (r AreaReport) CheckThrustAtProof(name string, x External, membrane, surface float64) check.Result {
	x.Range = surface
	return r.thrust(name, x, [2]check.Quantity{check.Pa("σ_L", "local membrane limit at proof", membrane), check.Pa("σ_B", "limit of membrane and bending at proof", surface)})
}

// thrust is the check with the limits of local membrane stress in the wall and of
// membrane and bending.
func (r AreaReport) thrust(name string, x External, limits [2]check.Quantity) check.Result {
	id, title := "port."+name+"/thrust", "Port "+name+": end thrust and load from outside"
	p, s := r.Port, r.Strengths
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	if err := x.valid(p.Name); err != nil {
		return check.NotMade(id, title, err)
	}
	force, moment, κ := x.factored()
	weld, err := r.ringStrength()
	if err != nil { // not reached: what a fillet factor refuses leaves the report incomplete
		return check.NotMade(id, title, err)
	}
	od, tn := p.OutsideDiameter, p.TubeWall
	rm := (od - tn) / 2
	thrust := r.Load.Pressure * math.Pi * od * od / 4
	σ := r.Load.Pressure*rm/(2*tn) + force/(2*math.Pi*rm*tn) + moment/(math.Pi*rm*rm*tn)
	all := []reading{
		{"attachment weld", check.N("T", "thrust and load on the weld", thrust+force+2*moment/rm), check.N("R", "strength of the weld round the tube", weld)},
		{"tube", check.Pa("σ", "stress along the tube", σ), check.Pa("S_n", "allowable stress, tube", s.Tube)},
	}
	if x.loaded() {
		local, err := r.localReadings(force+2*moment/(od/2), limits)
		if err != nil {
			return check.NotMade(id, title, err)
		}
		all = append(all, local...)
	}
	res := check.Result{ID: id, Title: title, Factor: 1, Formula: "T = p π OD²/4 + F + 2M/r ≤ R; σ = p r/(2 t_n) + F/(2π r t_n) + M/(π r² t_n) ≤ S_n",
		Inputs: []check.Quantity{check.Pa("p", "pressure at the port", r.Load.Pressure), check.M("OD", "tube outside diameter", od), check.M("t_n", "least tube wall", tn),
			check.M("r", "tube mean radius", rm), check.N("F", "force from outside", x.Force), check.NM("M", "moment from outside", x.Moment)},
		Source: check.Source{Doc: "derived: equilibrium of the tube", Where: "unit weld strengths of ASME VIII-1 UW-15(c) recalled, confirm", How: check.Memory}}
	worst := governing(all)
	loaded := x.loaded()
	if κ != 1 {
		res.Formula = "T = p π OD²/4 + κ (F + 2M/r) ≤ R; σ = p r/(2 t_n) + κ [F/(2π r t_n) + M/(π r² t_n)] ≤ S_n"
		res.Inputs = append(res.Inputs, check.Num("κ", "factor on the load from outside over that on pressure", κ))
	}
	if loaded && p.BesideRim(r.Wall) {
		res.Inputs = append(res.Inputs, check.Pa("σ_sm", "numerical shell at the port, membrane", r.Load.Membrane), check.Pa("σ_sf", "numerical shell at the port, at a face", r.Load.Face))
	}
	res.Inputs = append(res.Inputs, numbers(all)...)
	res.Demand, res.Capacity = worst.demand, worst.capacity
	res.Note = r.thrustNote(worst.what, loaded)
	return res
}

// thrustNote says what governs and, of a port that is loaded from outside, how it is held.
func (r AreaReport) thrustNote(governs string, loaded bool) string {
	notes := []string{"governs: " + governs, "an unbalanced flexible line pulls with p times its own effective area: give it as force"}
	if loaded {
		notes = append(notes, "local stress in the wall by shallow-shell tables of a rigid tube: a screening, no curve of a standard; thermal and vibration loads of the line go into force and moment")
		if r.Port.BesideRim(r.Wall) {
			notes = append(notes, "beside the rim as on a cylinder of the larger of the wall's radii there, beside the numerical shell's stresses of the pressure; buckling of the wall under the load is not in it")
		}
	}
	return strings.Join(notes, "; ")
}

// ringStrength returns what the welds round the whole tube carry along it [N].
func (r AreaReport) ringStrength() (float64, error) {
	p, s := r.Port, r.Strengths
	out, err := p.FilletFactor(r.Wall, true)
	if err != nil { // not reached: what a fillet factor refuses leaves the report incomplete
		return math.NaN(), err
	}
	in, err := p.FilletFactor(r.Wall, false)
	if err != nil { // not reached: the outside one has the same range
		return math.NaN(), err
	}
	weak := math.Min(s.Wall, s.Tube)
	if p.Pad != nil {
		weak = math.Min(weak, s.Pad)
	}
	depth := p.Groove
	if p.FullGroove {
		depth = math.Min(p.atHole(r.Wall), p.TubeWall)
	}
	fillets := 0.0
	outside, inside := p.fillets(r.Wall, r.Chords.Obliquity)
	if outside {
		fillets += p.OutsideLeg * out
	}
	if inside {
		fillets += p.InsideLeg * in
	}
	return math.Pi * p.OutsideDiameter * weak * (filletShear*fillets + grooveShear*depth), nil
}
