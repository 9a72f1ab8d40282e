package heads

import (
	"errors"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// EuropeanLargeEnd returns the wall e_j [m] that the European set asks for at a large end without a knuckle, on
// both sides, at the pressure p [Pa], mean diameter Dc [m], half angle α [rad] and design stress f [Pa]:
//
//	e_j = p Dc b/(2 f)    b = (1/3) sqrt(Dc/e_j) tan α/(1 + 1/sqrt(cos α)) − 0.15
//
// for α up to 60 deg and e_j/Dc up to 0.16. It is a rule against shakedown: at that pressure the elastic surface stress is 2.6 f to 3.2 f.
//
// Source: EN 13445-3, 7.6.6 (read in a published clause calculation).
func EuropeanLargeEnd(p, Dc, α, f float64) (float64, error) {
	const fn, why = "heads.EuropeanLargeEnd", "corner of the European set"
	if err := errors.Join(
		check.Within(fn, "half angle (rad)", α, math.SmallestNonzeroFloat64, math.Pi/3*(1+rounding), why),
		check.Within(fn, "pressure (Pa)", p, 0, math.MaxFloat64, why),
		check.Within(fn, "mean diameter (m)", Dc, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "design stress (Pa)", f, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
	); err != nil {
		return math.NaN(), err
	}
	e := leastWall(p, Dc/2, func(e float64) float64 { return positive(2*f*e, Dc*junctionFactor(Dc/e, α)) })
	if err := check.Within(fn, "wall asked for over mean diameter", e/Dc, 0, 0.16, "thin walls: no such wall carries this pressure by the European set"); err != nil {
		return math.NaN(), err
	}
	return e, nil
}

// EuropeanSmallEnd returns the pressure [Pa] that the European set allows at a small end with the walls e1 of the
// cylinder and e2 of the cone [m], mean diameter Dc [m], half angle α [rad], design stress f [Pa] and joint coefficient z [-]:
//
//	p = 2 f z e1/(Dc b_H)    b_H = max(1, 0.4 sqrt(Dc/e1) tan α/τ + 0.5)    s = e2/e1
//	s < 1: τ = s sqrt(s/cos α) + sqrt((1 + s²)/2)    s ≥ 1: τ = 1 + sqrt(s (1 + s²)/(2 cos α))
//
// for α up to 60 deg. Source: EN 13445-3, 7.6.8 (recalled).
func EuropeanSmallEnd(e1, e2, Dc, α, f, z float64) (float64, error) {
	const fn, why = "heads.EuropeanSmallEnd", "small end of the European set"
	if err := errors.Join(
		check.Within(fn, "half angle (rad)", α, 0, math.Pi/3*(1+rounding), why),
		check.Within(fn, "wall of the cylinder (m)", e1, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "wall of the cone (m)", e2, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "mean diameter (m)", Dc, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "design stress (Pa)", f, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "joint coefficient", z, 0.01, 1, why),
	); err != nil {
		return math.NaN(), err
	}
	s, cos := e2/e1, math.Cos(α)
	τ := 1 + math.Sqrt(s*(1+s*s)/(2*cos))
	if s < 1 {
		τ = s*math.Sqrt(s/cos) + math.Sqrt((1+s*s)/2)
	}
	b := math.Max(1, 0.4*math.Sqrt(Dc/e1)*math.Tan(α)/τ+0.5)
	return 2 * f * z * e1 / (Dc * b), nil
}

// CheckEuropean sets the corner against the European set: at a large end the thinner wall against e_j,
// over 1.4 sqrt(Dc e1) of the cylinder and 1.4 sqrt(Dc e2/cos α) of the cone; at a small end the pressure against the allowed
// one, over the same lengths without the 1.4. Dc is mean at the cylinder. A line load has no place in these rules: in tension, not assessed.
func (c Corner) CheckEuropean(end string) check.Result {
	id, name := "head."+end+"/corner", title(end, "corner to the cylinder by the European set")
	if c.Small {
		id, name = "head."+end+"/tip-corner", title(end, "corner at the tip by the European set")
	}
	if c.HalfAngle > math.Pi/3*(1+rounding) {
		return check.NotApplicableTo(id, name, "the rule ends at 60 degrees: the stresses of head."+end+"/junction decide alone")
	}
	err := c.valid(math.Pi / 3)
	if err == nil && c.LineLoad > 0 {
		err = errors.New("the rule has no place for tension from line loads")
	}
	Dc := 2*c.Radius + c.ShellWall
	reach := 1.4
	if c.Small {
		reach = 1
	}
	err = errors.Join(err,
		check.Within("heads.Corner.CheckEuropean", "cylinder free of other joints (m)", c.ShellFree, reach*math.Sqrt(Dc*c.ShellWall), math.Inf(1), "length over which the corner's wall must stand"),
		check.Within("heads.Corner.CheckEuropean", "cone free of other joints (m)", c.ConeFree, reach*math.Sqrt(Dc*c.ConeWall/math.Cos(c.HalfAngle)), math.Inf(1), "length over which the corner's wall must stand"))
	if err != nil {
		return check.NotMade(id, name, err)
	}
	r := check.Result{Rule: string(material.VesselEU), ID: id, Title: name, Factor: 1, Source: european, Note: "the rule alone does not show the corner safe: head." + end + "/junction decides",
		Inputs: []check.Quantity{check.Pa("p", "pressure at the corner", c.Pressure), check.M("Dc", "mean diameter", Dc), check.Rad("a", "half apex angle", c.HalfAngle),
			check.Pa("f", "design stress", c.S), check.M("e1", "wall of the cylinder", c.ShellWall), check.M("e2", "wall of the cone", c.ConeWall)}}
	if c.Small {
		p, err := EuropeanSmallEnd(c.ShellWall, c.ConeWall, Dc, c.HalfAngle, c.S, c.Efficiency)
		r.Formula, r.Err = "p ≤ 2 f z e1/(Dc b_H)", err
		r.Inputs = append(r.Inputs, check.Num("z", "joint coefficient", c.Efficiency))
		r.Demand, r.Capacity = check.Pa("p", "pressure at the corner", c.Pressure), check.Pa("p_max", "allowed by the rule", p)
		return r
	}
	e, err := EuropeanLargeEnd(c.Pressure, Dc, c.HalfAngle, c.S)
	r.Formula, r.Err = "e_j = p Dc b/(2 f) ≤ min(e1, e2)", err
	r.Demand, r.Capacity = check.M("e_j", "wall asked for at the corner", e), check.M("e_a", "thinner wall at the corner", math.Min(c.ShellWall, c.ConeWall))
	return r
}
