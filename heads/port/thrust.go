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
}

// CheckThrust is port.NAME/thrust: the capped tube's pressure thrust and the
// load from outside, carried by the attachment weld and by the tube:
//
//	T = p π OD²/4 + F + 2M/r ≤ weld: π OD (legs 0.49 + groove 0.60) S
//	σ = p r/(2 tn) + F/(2π r tn) + M/(π r² tn) ≤ Sn,  r the tube's mean radius
//
// a full-penetration groove counts with the vessel wall's thickness, fillets with
// [Port.FilletFactor], S the weaker of wall and tube; a moment acts as a force 2M/r
// (same peak line load, safe). On a sphere or a torisphere's crown a load from
// outside is held in the wall too, see [LocalStress]; on other walls it is not
// assessed.
//
// Source: equilibrium, computed; unit strengths ASME VIII-1 UW-15(c), recalled.
func (r AreaReport) CheckThrust(name string, x External) check.Result {
	id, title := "port."+name+"/thrust", "Port "+name+": end thrust and load from outside"
	p, s := r.Port, r.Strengths
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	if !(x.Force >= 0 && x.Moment >= 0) {
		return check.NotMade(id, title, fmt.Errorf("port %s: force and moment from outside must be numbers from zero up", p.Name))
	}
	weld, err := r.ringStrength()
	if err != nil {
		return check.NotMade(id, title, err)
	}
	od, tn := p.OutsideDiameter, p.TubeWall
	rm := (od - tn) / 2
	thrust := r.Load.Pressure * math.Pi * od * od / 4
	σ := r.Load.Pressure*rm/(2*tn) + x.Force/(2*math.Pi*rm*tn) + x.Moment/(math.Pi*rm*rm*tn)
	all := []reading{
		{"attachment weld", check.N("T", "thrust and load on the weld", thrust+x.Force+2*x.Moment/rm), check.N("R", "strength of the weld round the tube", weld)},
		{"tube", check.Pa("σ", "stress along the tube", σ), check.Pa("S_n", "allowable stress, tube", s.Tube)},
	}
	if x.Force > 0 || x.Moment > 0 {
		local, err := r.localReadings(x.Force + 2*x.Moment/(od/2))
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
	res.Inputs = append(res.Inputs, numbers(all)...)
	res.Demand, res.Capacity = worst.demand, worst.capacity
	res.Note = strings.Join([]string{"governs: " + worst.what, "an unbalanced flexible line pulls with p times its own effective area: give it as force"}, "; ")
	return res
}

// ringStrength returns what the welds round the whole tube carry along it [N].
func (r AreaReport) ringStrength() (float64, error) {
	p, s := r.Port, r.Strengths
	out, err := p.FilletFactor(r.Wall, true)
	if err != nil {
		return math.NaN(), err
	}
	in, err := p.FilletFactor(r.Wall, false)
	if err != nil {
		return math.NaN(), err
	}
	weak := math.Min(s.Wall, s.Tube)
	if p.Pad != nil {
		weak = math.Min(weak, s.Pad)
	}
	depth := p.Groove
	if p.FullGroove {
		depth = math.Min(r.Wall.Thickness, p.TubeWall)
	}
	fillets := 0.0
	if r.Meridional.Whole.A41 > 0 {
		fillets += p.OutsideLeg * out
	}
	if r.Meridional.Whole.A43 > 0 {
		fillets += p.InsideLeg * in
	}
	return math.Pi * p.OutsideDiameter * weak * (filletShear*fillets + grooveShear*depth), nil
}

// plugs is the peak response of a sphere to a force through a rigid tube:
// U = r0/√(Rm T), N T/F, M/F, meridional [-].
//
// Source: shallow spherical shell, ν = 0.3, rigid plug, computed; meets the
// point-load value 0.125 F l²/D as U goes to 0.
var plugs = [...][3]float64{{0.1, 0.2778, 0.2937}, {0.2, 0.2309, 0.1922}, {0.5, 0.1344, 0.0836}, {1.0, 0.0656, 0.0343},
	{1.5, 0.0381, 0.0184}, {2.0, 0.0248, 0.0115}, {2.5, 0.0173, 0.0078}}

// LocalStress returns the peak membrane and bending stress [Pa] in a sphere of
// mid-surface radius rm and wall t [m] beside a rigid tube of outside radius r0
// [m] that carries the force f [N] normal to the wall:
//
//	σm = (N T/F) F/T²,  σb = 6 (M/F) F/T²,  U = r0/√(Rm T) from 0.1 to 2.5
//
// linear between the table's rows, which lies above the curve. Outside, the error
// is a [*check.RangeError] and the stresses are NaN.
//
// Source: see plugs. A screening: not compared with a published curve.
func LocalStress(rm, t, r0, f float64) (membrane, bending float64, err error) {
	u := r0 / math.Sqrt(rm*t)
	if err := check.Within("port.LocalStress", "tube radius over √(R T)", u, 0.1, 2.5, "table of local stress"); err != nil {
		return math.NaN(), math.NaN(), err
	}
	i := 1
	for i < len(plugs)-1 && u > plugs[i][0] {
		i++
	}
	lo, hi := plugs[i-1], plugs[i]
	x := (u - lo[0]) / (hi[0] - lo[0])
	n, m := lo[1]+(hi[1]-lo[1])*x, lo[2]+(hi[2]-lo[2])*x
	return n * f / (t * t), 6 * m * f / (t * t), nil
}

// localReadings holds a force along the tube [N] in the wall: membrane with the
// pressure's to 1.5 S, with bending to 3 S.
func (r AreaReport) localReadings(force float64) ([]reading, error) {
	w, p := r.Wall, r.Port
	rm := w.Radius
	switch {
	case w.Surface == Torisphere && !p.inKnuckle(w):
		rm = w.Crown
	case w.Surface != Sphere:
		return nil, fmt.Errorf("port %s: a load from outside on a %s is not covered here; a numerical model of the port is needed", p.Name, w.Surface)
	}
	t, φ := w.Thickness, r.Chords.Obliquity
	σm, σb, err := LocalStress(rm, t, p.OutsideDiameter/2, force*math.Cos(φ))
	if err != nil {
		return nil, err
	}
	shear := 2 * force * math.Sin(φ) / (math.Pi * p.OutsideDiameter * t)
	σm += r.Load.Pressure*rm/(2*t) + 2*shear // Tresca: twice the shear beside the tension
	return []reading{
		{"wall, membrane", check.Pa("σ_m", "local membrane stress", σm), check.Pa("1.5 S", "local membrane limit", 1.5*r.Strengths.Wall)},
		{"wall, membrane and bending", check.Pa("σ_m + σ_b", "local stress at the surface", σm+σb), check.Pa("3 S", "limit of membrane and bending", 3*r.Strengths.Wall)},
	}, nil
}
