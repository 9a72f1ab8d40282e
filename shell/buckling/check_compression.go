package buckling

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

var (
	sourceSP8007   = check.Source{Doc: "NASA/SP-8007-2020 Rev 2", Where: "eqs 1 to 16, 33 to 46; length factor computed", How: check.Read}
	sourceEuropean = check.Source{Doc: "EN 1993-1-6:2007 Annex D, second-hand; class C recalled", Where: "axial compression", How: check.Memory}
)

// CheckCompression is cylinder/compression at one station: the design line
// load, buckling factor inside, against what the wall can bear at the same mix
// of loads. It is made at the smallest ullage pressure and at none. zeroDecides
// says that the case without pressure decides too: on the ground, near people,
// in transport, lifting, recovery and landing. Otherwise a failure at no
// pressure is said in the note: the tank needs its pressure to stand.
func (r *Resistance) CheckCompression(s Station, zeroDecides bool) check.Result {
	const id, title = "cylinder/compression", "Cylinder: buckling in compression and bending"
	if err := errors.Join(s.valid(), r.err, r.errC); err != nil {
		return check.NotMade(id, title, err)
	}
	d := r.decide(s, zeroDecides)
	out := r.result(d.under, d.use, d.err)
	out.ID, out.Title = id, title
	out.Note += " " + d.note + "."
	return out
}

// Ratio returns how much of the resistance in compression a station asks [-],
// as [Resistance.CheckCompression] would decide, without building its text:
// for the search of the governing instant. More than 1 does not stand.
func (r *Resistance) Ratio(s Station, zeroDecides bool) (float64, error) {
	if err := errors.Join(s.valid(), r.err, r.errC); err != nil {
		return math.NaN(), err
	}
	u, err := r.at(s)
	if !zeroDecides || err != nil {
		return u.Ratio, err
	}
	bare, err := r.at(s.unpressured())
	return math.Max(u.Ratio, bare.Ratio), err
}

// A decision is the state, with pressure or without, that decides a station.
type decision struct {
	use   Use
	under Station
	err   error
	note  string
}

// decide makes the check at the smallest ullage pressure and at none.
func (r *Resistance) decide(s Station, zeroDecides bool) decision {
	pressed, errP := r.at(s)
	bare, errB := r.at(s.unpressured())
	d := decision{use: pressed, under: s, err: errP}
	switch {
	case s.PressureLeast == 0 && s.PressureMost == s.LiquidHead:
		d.note = "No ullage pressure in this case"
	case zeroDecides && (errB != nil || errP == nil && !(bare.Ratio <= pressed.Ratio)):
		d = decision{bare, s.unpressured(), errB, "Decided without ullage pressure"}
	case !zeroDecides && errB != nil: // not reached: what the wall has without pressure it has with it
		d.note = "Without ullage pressure it could not be assessed: " + errB.Error()
	case !zeroDecides && !(bare.Ratio <= 1) && pressed.Ratio <= 1:
		d.note = fmt.Sprintf("The tank needs its pressure to stand: without it the use is %.3g", up(bare.Ratio))
	default:
		d.note = fmt.Sprintf("Without ullage pressure the use is %.3g", up(bare.Ratio))
	}
	return d
}

func (r *Resistance) at(s Station) (Use, error) {
	return r.Use(r.c.Line(s, r.o.Factor), s.PressureLeast, s.PressureMost)
}

// up rounds a ratio up to three digits.
func up(v float64) float64 {
	if !(v > 0) || math.IsInf(v, 0) {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(v))-2)
	return math.Ceil(v/step*(1-1e-12)) * step
}

// result builds the check from the use.
func (r *Resistance) result(s Station, u Use, err error) check.Result {
	out := check.Result{
		Formula: "N_c/(t σ_c) + N_b/(t σ_b) + R_s + R_p ≤ 1; N/t ≤ χ σ_y/1.1; N = [FS C − C_rel]/(2πR) + FS M/(πR²) − N_p",
		Inputs:  r.inputs(s, u), Factor: 1, Source: r.sourceOf(u), Note: r.note(s, u), Err: err,
	}
	if err == nil && math.IsInf(u.Ratio, 1) {
		out.Err = errors.New("the hoop stress at the largest pressure reaches the yield strength: the wall has no resistance left by EN 1993-1-6")
	}
	switch {
	case u.Total > 0:
		out.Demand = check.NPerM("N", "design compression, factor inside, relief taken", u.Total)
		out.Capacity = check.NPerM("N_a", "what the wall bears at this mix of loads", u.Total/u.Ratio)
	case u.Ratio > 0:
		out.Demand = check.Num("R_s + R_p", "use by shear and outside pressure; the wall is in axial tension", u.Ratio)
		out.Capacity = check.Num("1", "linear sum", 1)
	default:
		out.Demand = check.NPerM("N", "design compression: none, the wall is in tension", 0)
		out.Capacity = check.NPerM("N_a", "what the wall bears in compression", r.plain(u))
	}
	return out
}

// plain is the line load [N/m] that the wall bears in compression alone.
func (r *Resistance) plain(u Use) float64 {
	return r.c.Thickness * math.Min(u.Axials.Critical, u.European.Design)
}

// sourceOf returns the source of the method that governs; the exponent of the
// stress-strain curve is recalled, so it weakens SP-8007 where it counts.
func (r *Resistance) sourceOf(u Use) check.Source {
	if u.EuropeanGoverns || u.Total <= 0 && u.European.Design < u.Axials.Critical {
		return sourceEuropean
	}
	src := sourceSP8007
	if u.Axials.LengthFactor < 0.999 {
		src.How = check.Computed
	}
	if u.Axials.Critical < 0.99*u.Axials.Elastic || u.Bendings.Critical < 0.99*u.Bendings.Elastic {
		src.Doc += "; exponent of the stress-strain curve recalled"
		src.How = check.Memory
	}
	if u.Pressed > 0 && r.lowest.Source.How == check.Memory {
		src.Doc += "; outside pressure by " + r.lowest.Name
		src.How = check.Memory
	}
	return src
}

func (r *Resistance) inputs(s Station, u Use) []check.Quantity {
	e := u.European
	q := []check.Quantity{
		check.N("C", "axial compression, limit", s.Compression), check.N("C_rel", "axial pull, smallest simultaneous", s.Pull+s.LiquidPull),
		check.NM("M", "bending moment, limit", s.Moment), check.Num("FS", "buckling factor on line loads, not on the relief", r.o.Factor),
		check.Pa("p_min", "smallest simultaneous ullage pressure", s.PressureLeast), check.Pa("p_g", "largest local pressure", s.PressureMost),
		check.NPerM("N_p", "relief by the ullage pressure, at the inside radius", u.Relief),
		check.M("R", "mid-wall radius", r.c.MidRadius()), check.M("R_i", "inside radius", r.c.InsideRadius),
		check.M("t", "wall for strength", r.c.Thickness), check.M("L", "length between tangents", r.c.Length),
		check.Pa("E", "elastic modulus, lowest", r.m.Modulus), check.Num("ν", "Poisson's ratio", r.m.Poisson),
		check.Pa("σ_y", "yield strength, weld zone included", r.m.Yield), check.Num("m", "exponent of the stress-strain curve", r.m.Exponent),
		check.Num("γ_c", "knock-down, compression", u.Axials.Knockdown), check.Num("γ_b", "knock-down, bending", u.Bendings.Knockdown),
		check.Num("Δγ", "gain by inside pressure", u.Axials.Gain), check.Num("C_L", "length factor", u.Axials.LengthFactor),
		check.Pa("σ_c", "critical stress, compression", u.Axials.Critical), check.Pa("σ_b", "critical stress, bending", u.Bendings.Critical),
		check.NPerM("N_c", "share of the axial force", u.Axial), check.NPerM("N_b", "share of bending", u.Bending),
	}
	if u.Line.Shear != 0 {
		q = append(q, check.N("V", "shear force, limit", s.Shear), check.NM("T", "torque, limit", s.Torque),
			check.Pa("τ", "shear stress, factor inside", u.Line.Shear), check.Pa("τ_cr", "critical shear stress", r.shear.Critical))
	}
	if u.External != 0 {
		q = append(q, check.Pa("p_ext", "pressure from outside", u.External), check.Pa("p_a", "its allowable, "+r.lowest.Name, r.lowest.Allowable))
	}
	return append(q, check.Num("ΣR", "sum by SP-8007", u.Sum), check.Num("α", "EN reduction factor", e.Reduction),
		check.Num("χ", "EN buckling factor", e.Chi), check.Pa("χ σ_y/1.1", "EN design stress", e.Design), check.Num("R_EN", "use by EN 1993-1-6", u.EuropeanRatio))
}

// note names both methods, what each knocks down, and what governs.
func (r *Resistance) note(s Station, u Use) string {
	e, governs := u.European, "SP-8007 governs."
	if u.EuropeanGoverns {
		governs = "EN 1993-1-6 governs."
	}
	if u.Ratio == 0 {
		governs = "The wall is in tension."
	}
	text := []string{governs,
		fmt.Sprintf("SP-8007: use %.3g, knock-down %.3g in compression, %.3g in bending, length %.3g, stiffening by pressure %.3g.", up(u.Sum), u.Axials.Knockdown, u.Bendings.Knockdown, u.Axials.LengthFactor, u.Axials.Gain),
		fmt.Sprintf("EN 1993-1-6 closed form, class %s: use %.3g, reduction %.3g.", r.o.Class.orC(), up(u.EuropeanRatio), e.Reduction)}
	if s.PressureMost > 0 {
		text = append(text, fmt.Sprintf("Its own stiffening by pressure: %.3g to %.3g; with yield under pressure %.3g.", e.Unpressured, e.Pressured, e.ElephantFoot))
		if r.m.Family == "aluminium" || r.m.Family == "titanium" {
			text = append(text, "That last form was calibrated on steel: for this metal it is outside its base.")
		}
	}
	if r.c.MidRadius()/r.c.Thickness < 25 {
		text = append(text, "R/t is under 25: the knock-down at 25 is used, the safe side.")
	}
	if r.c.Length > 5*r.c.MidRadius() {
		text = append(text, "L/R is over 5, beyond the tests behind SP-8007; the length factor covers it.")
	}
	if u.Line.Shear != 0 && r.shearTakenLong {
		text = append(text, "Shear: the shell is shorter than the form's range and is taken as long as its shortest.")
	}
	if len(r.o.Gain.Points) > 0 {
		text = append(text, "Stiffening by the user's table: "+r.o.Gain.Source+".")
	}
	if r.o.ClassSource != "" {
		text = append(text, "Class by "+r.o.ClassSource+".")
	}
	return strings.Join(append(text, "Imperfection assumed: that of the tests behind SP-8007 and of the EN class; both edges held round."), " ")
}
