package buckling

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// CheckExternal is cylinder/external: the largest pressure from outside, p_ext
// [Pa], outside minus inside, against the lowest allowable of all methods. At 0
// and below it does not apply.
func (r *Resistance) CheckExternal(p float64) check.Result {
	c := CheckPressure{
		ID: "cylinder/external", Title: "Cylinder: external pressure", Pressure: p, Factor: r.o.Factor,
		Shape: "circular within 0.5 % of R (EN 13445-3), D_max − D_min within 1 % of D (UG-80); both heads support the cylinder",
	}
	if p <= 0 {
		return c.Check(nil)
	}
	if _, _, err := r.External(); err != nil && r.external == nil {
		return check.NotMade(c.ID, c.Title, err)
	}
	t, _ := r.c.ExternalTube() // its error is among those of External
	length := check.M("L", "length with the shares of the ends", t.Length)
	if r.lowest.Length > 0 {
		length = check.M("L", "longest bay, between rings or to an end with its share", r.lowest.Length)
		c.Shape += "; " + r.c.Rings.describe()
	}
	c.Inputs = []check.Quantity{
		check.M("R", "mid-wall radius", t.Radius), check.M("t", "wall for strength", t.Thickness),
		length, check.M("L_t", "length between tangents", r.c.Length),
		check.Pa("E", "elastic modulus, lowest", r.m.Modulus), check.Num("ν", "Poisson's ratio", r.m.Poisson),
		check.Pa("σ_y", "yield strength, weld zone included", r.m.Yield),
	}
	return c.Check(r.external)
}

// A HeadShape is a head that can bear pressure from outside: [Cone] or [Dome].
type HeadShape interface {
	// External returns every method, factor the buckling factor [-].
	External(m Metal, factor float64) []Method
	Describe() ([]check.Quantity, string)
}

// CheckHeadExternal is head.X/external: end "head.aft" or "head.forward", title
// the head's name, p the largest pressure [Pa] on the outer side, or on the
// convex side of an inward head with the liquid at its rim; factor the
// buckling factor [-].
func CheckHeadExternal(end, title string, h HeadShape, m Metal, p, factor float64) check.Result {
	c := CheckPressure{ID: end + "/external", Title: title + ": external pressure", Pressure: p, Factor: factor}
	if err := check.Within("buckling.CheckHeadExternal", "buckling factor", factor, 1, math.MaxFloat64, "never below one"); err != nil {
		return check.NotMade(c.ID, c.Title, err)
	}
	c.Inputs, c.Shape = h.Describe()
	c.Inputs = append(c.Inputs, check.Pa("E", "elastic modulus, lowest", m.Modulus), check.Num("ν", "Poisson's ratio", m.Poisson),
		check.Pa("σ_y", "yield strength, weld zone included", m.Yield))
	return c.Check(h.External(m, factor))
}

// A ColumnLoad is what presses on the tank as a strut: limit loads.
type ColumnLoad struct {
	External    float64 // compression by external forces and inertia of metal, largest along the tank [N]
	Liquid      float64 // n g0 times the liquid forward of that section [N]
	Pressurised bool    // the wall is relieved by pressure
	Assumed     string  // where length and factor were not given: what was taken
}

// CheckColumn is cylinder/column: the external load and the liquid's weight,
// times the buckling factor and without relief by pressure, against Euler's
// load; without pressure the external load also against Johnson's parabola on
// the shell's own buckling stress.
func (r *Resistance) CheckColumn(col Column, l ColumnLoad) check.Result {
	const id, title = "cylinder/column", "Cylinder: buckling as a column"
	if err := errors.Join(r.err, check.Within("buckling.ColumnLoad", "external compression [N]", l.External, 0, math.MaxFloat64, "a magnitude"),
		check.Within("buckling.ColumnLoad", "weight of the liquid [N]", l.Liquid, 0, math.MaxFloat64, "a magnitude")); err != nil {
		return check.NotMade(id, title, err)
	}
	euler, err := col.Euler(r.m)
	demand := r.o.Factor * (l.External + l.Liquid)
	out := check.Result{
		ID: id, Title: title, Formula: "FS (C + n g0 m) ≤ P_E = π² E I/(K L)², I = π R³ t", Factor: 1, Err: err,
		Source: check.Source{Doc: "Euler", Where: "strut", How: check.Memory},
		Inputs: []check.Quantity{
			check.N("C", "external compression, limit", l.External), check.N("n g0 m", "weight of the liquid under load", l.Liquid),
			check.Num("FS", "buckling factor", r.o.Factor), check.M("R", "mid-wall radius", col.Radius), check.M("t", "wall for strength", col.Thickness),
			check.M("L", "length of the column", col.Length), check.Num("K", "column factor", col.Factor), check.Pa("E", "elastic modulus, lowest", r.m.Modulus),
		},
		Demand:   check.N("P", "column load, factor inside", demand),
		Capacity: check.N("P_E", "Euler's load", euler),
		Note:     "No relief by pressure: it neither raises nor lowers Euler's load. Bending adds no second-order moment here.",
	}
	if err == nil && !l.Pressurised {
		r.johnson(&out, col, r.o.Factor*l.External, demand/euler)
	}
	if l.Assumed != "" {
		out.Note += " " + l.Assumed + "."
	}
	return out
}

// johnson puts the parabola in Euler's place where it asks for more.
func (r *Resistance) johnson(out *check.Result, col Column, demand, use float64) {
	p, err := col.Johnson(r.m, r.axial.Critical)
	switch {
	case err != nil:
		out.Note += " The parabola for stocky columns is out of range: " + err.Error() + "."
	case demand/p > use:
		out.Formula = "FS C ≤ P = 2πR t σ_c [1 − σ_c (K L/ρ)²/(4π² E)], ρ = R/√2"
		out.Source = check.Source{Doc: "Bruhn, Analysis and Design of Flight Vehicle Structures", Where: "parabola for stocky columns", How: check.Memory}
		out.Inputs = append(out.Inputs, check.Pa("σ_c", "buckling stress of the shell", r.axial.Critical), out.Capacity)
		out.Demand = check.N("P", "external load, factor inside", demand)
		out.Capacity = check.N("P_J", "load of the stocky column", p)
		out.Note += " The wall has no pressure: the parabola governs, Euler's load is among the inputs."
	default:
		out.Note += " The parabola for stocky columns bears " + down(p/1000) + " kN."
	}
}
