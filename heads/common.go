package heads

import (
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// european is the source of every rule of the European set: recalled, so no
// clause is printed.
var european = check.Source{Doc: "EN 13445-3", Where: "European method, recalled; confirm", How: check.Memory}

// positive returns a/b, and +Inf where b is not above zero: no wall will do.
func positive(a, b float64) float64 {
	if !(b > 0) {
		return math.Inf(1)
	}
	return a / b
}

// thinEuropean is the range e/De ≤ 0.16 for an inside diameter [m].
func thinEuropean(inside float64) func(t, wall, p float64) error {
	return func(t, wall, _ float64) error {
		e := math.Max(t, wall)
		return within("wall over outside diameter", e/(inside+2*e), 0, 0.16, "thin-wall rule of the European set")
	}
}

// capped returns S [Pa], not above 138 MPa for a torisphere or an ellipsoid by the
// vessel rule: above 485 MPa ultimate strength the rule allows no more, and by
// S ≤ Rm/3.5 a higher S comes only from there.
//
// Source: ASME VIII-1 UG-32 (recalled).
func (r rule) capped() (float64, string) {
	const most = 138e6
	if r.name == material.Vessel && r.s > most {
		return most, "S is held to 138 MPa for a dished head of high-strength metal (recalled)"
	}
	return r.s, ""
}

// seamless is the floor of a dished head by the vessel rule: the thickness of a
// seamless hemisphere of the same diameter over the efficiency of the joint to the shell,
//
//	t ≥ p (D/2)/(2 S − 0.2 p)/E_g
//
// Source: ASME VIII-1 UG-32(b) (recalled).
func (r rule) seamless() []term {
	if r.name != material.Vessel {
		return nil
	}
	R, S, E := r.g.InsideDiameter/2, r.sg, r.eg
	return []term{{
		what: "floor: a seamless hemisphere over the girth efficiency", formula: "t = p (D/2)/(2 S − 0.2 p)/E_g",
		inputs: []check.Quantity{check.M("D/2", "inside radius, corroded", R), check.Pa("S", "allowable stress", S), check.Num("E_g", "girth joint efficiency", E)},
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "thickness of formed heads, recalled; confirm", How: check.Memory},
		need:   func(p float64) float64 { return positive(p*R, (2*S-0.2*p)*E) },
		bear:   func(t float64) float64 { return 2 * S * t * E / (R + 0.2*t*E) },
	}}
}
