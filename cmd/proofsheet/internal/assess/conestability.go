package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/buckling"
)

// Shear in a cone counts as axial compression of twice its largest stress, all
// round, τ = V/(π r t): P = 4 V. That is the safe side while the cone would bear
// in torsion at least half of what it is given in compression,
//
//	0.747·0.67 E (t/ρ)^1.25 (ρ/L)^0.5 ≥ 0.33·0.605 E (t/ρ)/2
//
// with ρ its mean radius square to the wall and L its slant length, and from 10
// degrees of half angle, where 0.33 is the knock-down.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 33 to 35 on the cone unrolled (computed).
const (
	shearAsForce = 4                    // P/V [-]
	shearLimit   = 5.0                  // of (ρ/t)^0.25 (L/ρ)^0.5 [-]
	shearAngle   = 10 * math.Pi / 180.0 // least half angle [rad]
)

// coneSections are where a cone is looked at, in shares of its depth from the seam.
var coneSections = [...]float64{0, 0.5, 0.9}

// checkConeCompression holds a conical head against what its own mass and the
// liquid do along its wall; the stack's loads pass it by at the joint.
func (m *model) checkConeCompression(h *headPart, s *loads.State, c *loadCase) check.Result {
	id, title := h.name+"/compression", h.title+": buckling in compression and bending"
	if h.in.Bulge == "inward" {
		return check.NotApplicableTo(id, title, "only pressure presses along an inward cone, and "+h.name+"/external holds that")
	}
	f, factorErr := m.factors(c.rule)
	metal, metalErr := m.stableMetal(&h.part, c.temperature)
	if err := errors.Join(m.massErr, factorErr, metalErr); err != nil {
		return check.NotMade(id, title, err)
	}
	whole := h.cone()
	free := m.freeBodyAlong(h, s, c, m.cutOf(h))
	var worst *check.Result
	for _, share := range coneSections {
		x := share * h.strength.Depth()
		force, _ := free(x)
		k := buckling.ConeCompression{End: h.name, Title: h.title, Cone: whole, Metal: metal, Factor: f.BucklingFactor}
		k.Cone.SmallRadius = math.Min(h.strength.Radius(x)+h.toMid(), whole.LargeRadius*(1-1e-6))
		shear, err := shearOnCone(k.Cone, whole, force.Shear)
		st := buckling.Station{Compression: math.Max(0, -force.LoadLeast) + math.Max(0, -force.LiquidLeast) + shear,
			LiquidPull: math.Max(0, force.LiquidLeast), Moment: force.Moment, PressureLeast: c.least, PressureMost: s.PressureWorst(m.cutOf(h)(x))}
		if st.Compression == 0 && st.Moment == 0 {
			continue
		}
		st.LiquidHead = st.PressureMost - s.UllagePressure
		k.Station = st
		got := k.Check(c.standsBare())
		if err != nil {
			got = check.NotMade(id, title, err)
		}
		if got.Err == nil {
			got.Inputs = append(got.Inputs, check.M("x", "section, from the plane where the cone begins", x))
			got.Note += fmt.Sprintf(" Shear of %.4g N in it counts as %g times as much compression.", force.Shear, float64(shearAsForce))
		}
		if worst == nil {
			worst = &got
		} else if w := worse(*worst, got); true {
			worst = &w
		}
	}
	if worst == nil {
		return check.NotApplicableTo(id, title, "nothing but pressure presses along this cone in this case, and "+h.name+"/external holds that")
	}
	return *worst
}

// shearOnCone returns the compression [N] as which a shear force [N] counts.
func shearOnCone(c, whole buckling.Cone, shear float64) (float64, error) {
	if shear == 0 {
		return 0, nil
	}
	ρ := (whole.SmallRadius + whole.LargeRadius) / (2 * math.Cos(c.HalfAngle))
	slant := (whole.LargeRadius - whole.SmallRadius) / math.Sin(c.HalfAngle)
	if err := errors.Join(check.Within("shear of a cone", "half angle [rad]", c.HalfAngle, shearAngle*(1-1e-9), math.Pi/2, "the knock-down of SP-8019"),
		check.Within("shear of a cone", "(ρ/t)^0.25 (L/ρ)^0.5", math.Pow(ρ/c.Thickness, 0.25)*math.Sqrt(slant/ρ), 0, shearLimit, "a cone that torsion does not buckle first")); err != nil {
		return math.NaN(), err
	}
	return shearAsForce * shear, nil
}
