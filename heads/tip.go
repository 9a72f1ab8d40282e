package heads

import (
	"errors"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// TipFactor is the corner factor C [-] of a tip plate where none is given: the largest of the full-weld
// corners, above the simply supported plate's 0.309.
const TipFactor = 0.33

// A TipPlate is the flat plate that closes a truncated cone.
type TipPlate struct {
	Thickness    float64 // for strength [m]
	Corrosion    float64 // allowance [m]
	CornerFactor float64 // C; 0: [TipFactor] [-]
	Efficiency   float64 // of a weld in the plate; 1 without [-]
}

// CheckTipPlate sets the plate at the tip of a cone against the flat-head formula at the tip's inside diameter, corroded (head.X/tip):
//
//	t = d sqrt(C p/(S E))
//
// p is the highest pressure at the tip [Pa], l the limits of the plate or, lower, of its weld. The bending that it gives the cone's wall is not in it:
// the junction at the tip is the numerical shell's.
//
// Source: ASME VIII-1 UG-34 (read); C = 0.33 recalled.
func CheckTipPlate(h Head, end string, p float64, plate TipPlate, l material.Limits) check.Result {
	id, name := "head."+end+"/tip", title(end, "plate at the tip")
	g := h.Geometry()
	C, src := plate.CornerFactor, check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-34", How: check.Read}
	if C == 0 {
		C, src = TipFactor, check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "flat heads, C = 0.33 recalled; confirm", How: check.Memory}
	}
	err := errors.Join(
		check.Within("heads.CheckTipPlate", "corner factor", C, 0.20, 1, "flat plates; the rule's least is 0.20"),
		check.Within("heads.CheckTipPlate", "joint efficiency", plate.Efficiency, 0.01, 1, "a share of the plate's strength"),
		check.Within("heads.CheckTipPlate", "pressure at the tip, on the inside (Pa)", p, 0, math.MaxFloat64, "a plate under pressure from inside"),
		check.Within("heads.CheckTipPlate", "allowable stress (Pa)", l.S, math.SmallestNonzeroFloat64, math.MaxFloat64, "a metal"))
	if g.TipDiameter == 0 {
		err = errors.Join(err, errors.New("the head has no tip"))
	}
	if err != nil {
		return check.NotMade(id, name, err)
	}
	d := g.TipDiameter + 2*plate.Corrosion
	return check.Result{Rule: string(l.Rule), ID: id, Title: name, Formula: "t = d sqrt(C p/(S E))", Factor: 1, Source: src,
		Inputs: []check.Quantity{check.Pa("p", "highest pressure at the tip", p), check.M("d", "inside diameter of the tip, corroded", d), check.Num("C", "corner factor", C),
			check.Pa("S", "allowable stress", l.S), check.Num("E", "joint efficiency", plate.Efficiency)},
		Demand: check.M("t", "required thickness", d*math.Sqrt(C*p/(l.S*plate.Efficiency))), Capacity: check.M("t_w", "least wall of the plate", plate.Thickness),
		Note: "the junction of plate and cone is not in it"}
}
