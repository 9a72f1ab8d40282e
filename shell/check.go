package shell

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// Seams are the joint efficiencies that act in a cylinder, with their names.
type Seams struct {
	Long, Girth           float64 // E_l, E_g [-]
	LongJoint, GirthJoint string  // as the sheet calls them; LongJoint "" for a shell without a long seam
}

// A Condition is what loads the cylinder in one case, extremes over the part.
type Condition struct {
	Pressure              float64 // p, highest over the part, liquid head included [Pa]
	AxialMost, AxialLeast float64 // N_x from gas and liquid by free body, at mid-wall [N/m]
	LoadMost, LoadLeast   float64 // N_x from line loads alone, both sides of bending [N/m]
	PressureLeast         float64 // smallest simultaneous pressure / pressure [-]
	Present               bool    // the smallest pressure is certain: without it 0 is tried too
}

// Allowables are the limits of the wall and of its welds.
type Allowables struct {
	Parent, Zone        material.Limits // away from welds; in the weld zone, without efficiency
	SeamLong, SeamGirth material.Limits // lower of parent and zone; the check applies the efficiency
	ZoneKnown           error           // why the zone cannot be assessed, or nil
}

// seam returns why a stress across the named joint cannot be judged, or nil.
func (a Allowables) seam(joint string, efficiency float64) error {
	if joint != "" && a.ZoneKnown != nil {
		return fmt.Errorf("strength of the weld %q: %w", joint, a.ZoneKnown)
	}
	return check.Within("shell", "joint efficiency", efficiency, math.SmallestNonzeroFloat64, 1, "a share of the wall's strength")
}

// CheckHoop sets the hoop stress against the allowable across the long seam:
// σ_θ = p R_m/t from R_m/t = 10 up, and Lamé's bore stress below.
func (c Cylinder) CheckHoop(cond Condition, a Allowables, s Seams) check.Result {
	across := "long seam " + s.LongJoint
	if s.LongJoint == "" {
		across = "no long seam"
	}
	r := c.start("cylinder/hoop", "Cylinder: hoop stress, "+across, a.SeamLong)
	h, err := c.hoop(cond.Pressure)
	r.Formula, r.Source = "σ_p = "+h.formula, weaker(h.source, a.SeamLong.Source)
	r.Inputs = c.inputs(cond)
	if err = errors.Join(err, a.seam(s.LongJoint, s.Long)); err != nil {
		r.Err = err
		return r
	}
	return judge(r, a.SeamLong.Normal(h.stress, 0, 0, s.Long))
}

// CheckLongitudinal sets the axial tension against the allowable across the
// girth seams: σ_p = N_x,p/t and σ_l = N_x,l/t, from the free body and the line loads.
// Compression is for stability and the equivalent stress.
func (c Cylinder) CheckLongitudinal(cond Condition, a Allowables, s Seams) check.Result {
	r := c.start("cylinder/longitudinal", "Cylinder: axial stress, girth seam "+s.GirthJoint, a.SeamGirth)
	r.Formula = "σ_p = N_x,p/t, σ_l = N_x,l/t"
	r.Source = weaker(check.Source{Doc: "equilibrium of the free body", Where: "loads and shell, package comments", How: check.Computed}, a.SeamGirth.Source)
	r.Inputs = append(c.inputs(cond), c.axialInputs(cond)...)
	if r.Err = errors.Join(c.Valid(), a.seam(s.GirthJoint, s.Girth)); r.Err != nil {
		return r
	}
	t := c.Thickness
	return judge(r, a.SeamGirth.Normal(cond.AxialMost/t, cond.LoadMost/t, cond.LoadLeast/t, s.Girth))
}

// CheckEquivalent sets the equivalent membrane stress against the wall and,
// without joint efficiency, against the weld zone; the worse is shown. It is
// the larger of von Mises and the largest principal stress, and Tresca where
// the signs differ, as [material.Limits.Equivalent] has it.
func (c Cylinder) CheckEquivalent(cond Condition, a Allowables, s Seams) check.Result {
	r := c.start("cylinder/equivalent", "Cylinder: equivalent stress", a.Parent)
	h, err := c.hoop(cond.Pressure)
	r.Formula = "σ_θp = " + h.formula + ", σ_φp = N_x,p/t, σ_φl = N_x,l/t"
	r.Inputs = append(c.inputs(cond), c.axialInputs(cond)...)
	r.Inputs = append(r.Inputs, check.Num("p_min/p", "smallest simultaneous pressure, share", cond.PressureLeast))
	if a.ZoneKnown != nil {
		err = errors.Join(err, fmt.Errorf("strength of the weld zone: %w", a.ZoneKnown))
	}
	if r.Err = err; err != nil {
		return r
	}
	t, worst, where := c.Thickness, material.Judged{}, ""
	for _, l := range []struct {
		name   string
		limits material.Limits
	}{{"wall away from welds", a.Parent}, {"weld zone, without joint efficiency", a.Zone}} {
		for _, nx := range []float64{cond.AxialMost, cond.AxialLeast} {
			j := l.limits.Equivalent(material.Stress{
				HoopPressure: h.equivalent, MeridionalPressure: nx / t,
				MeridionalLoadMost: cond.LoadMost / t, MeridionalLoadLeast: cond.LoadLeast / t,
				PressureLeast: cond.PressureLeast, Present: cond.Present,
			})
			if where == "" || worse(j, worst) {
				worst, where = j, l.name
				r.Source = weaker(check.Source{Doc: "von Mises and Tresca, plane stress", Where: "membrane of a cylinder", How: check.Memory}, l.limits.Source)
				r.Rule = string(l.limits.Rule)
			}
		}
	}
	r.Title += ", " + where
	return judge(r, worst)
}

// hoopStress is the hoop stress of the case and how it was found.
type hoopStress struct {
	stress     float64 // across the long seam [Pa]
	equivalent float64 // for the equivalent stress [Pa]
	formula    string
	source     check.Source
}

// hoop returns the hoop stress by the form that holds for this wall. Below
// R_m/t = 10 the radial stress at the bore is added to the equivalent stress.
func (c Cylinder) hoop(p float64) (hoopStress, error) {
	h := hoopStress{
		stress: math.NaN(), equivalent: math.NaN(), formula: "p R_m/t",
		source: check.Source{Doc: "Case, Chilver and Ross, Strength of Materials and Structures", Where: "eq. 6.6", How: check.Read},
	}
	if err := c.Valid(); err != nil {
		return h, err
	}
	var err error
	if c.isThin("shell") == nil {
		h.stress, err = c.HoopStress(p)
		h.equivalent = h.stress
		return h, err
	}
	h.formula = "p (Y² + 1)/(Y² − 1), Y = (R + t)/R, at the bore, and p more in the equivalent stress"
	h.source = check.Source{Doc: "Lamé, thick cylinder", Where: "bore, inside pressure", How: check.Read}
	h.stress, err = c.BoreHoopStress(p)
	h.equivalent = h.stress + math.Max(p, 0)
	return h, err
}

// start begins a result.
func (c Cylinder) start(id, title string, l material.Limits) check.Result {
	return check.Result{ID: id, Title: strings.TrimSpace(title), Rule: string(l.Rule), Factor: 1}
}

func (c Cylinder) inputs(cond Condition) []check.Quantity {
	return []check.Quantity{
		check.Pa("p", "highest pressure, liquid head included", cond.Pressure),
		check.M("R", "inside radius", c.InsideRadius),
		check.M("t", "least wall", c.Thickness),
		check.M("R_m", "mid-wall radius", c.MidRadius()),
	}
}

func (c Cylinder) axialInputs(cond Condition) []check.Quantity {
	return []check.Quantity{
		check.NPerM("N_x,p", "axial force of gas and liquid, most", cond.AxialMost),
		check.NPerM("N_x,p,min", "the same, least", cond.AxialLeast),
		check.NPerM("N_x,l", "axial force of line loads, most", cond.LoadMost),
		check.NPerM("N_x,l,min", "the same, least", cond.LoadLeast),
	}
}

// judge completes a result by what the limits said.
func judge(r check.Result, j material.Judged) check.Result {
	if j.Formula != "" {
		r.Formula += "; " + j.Formula
	}
	r.Inputs = append(r.Inputs, j.Inputs...)
	r.Demand, r.Capacity, r.Factor = j.Demand, j.Capacity, j.Factor
	r.Note = strings.TrimSpace(strings.Join([]string{r.Note, j.Note}, " "))
	r.Err = errors.Join(r.Err, j.Err)
	return r
}

// worse reports whether j is nearer to failing than k; one that could not be
// judged is the worst.
func worse(j, k material.Judged) bool {
	use := func(j material.Judged) float64 {
		u := j.Factor * j.Demand.Value / j.Capacity.Value
		if j.Err != nil || math.IsNaN(u) {
			return math.Inf(1)
		}
		return u
	}
	return use(j) > use(k)
}

// weaker returns the source of the formula, or that of the limit where that is
// the less certain one, naming both, each once.
func weaker(formula, limit check.Source) check.Source {
	if limit.How != check.Memory && limit.How != check.Practice {
		return formula
	}
	return check.Source{Doc: appended(formula.Doc, "allowable: "+limit.Doc), Where: appended(formula.Where, limit.Where), How: limit.How}
}

// appended adds words to a text, unless they are none or stand there already.
func appended(text, words string) string {
	if words == "" || strings.Contains(text, words) {
		return text
	}
	return text + "; " + words
}
