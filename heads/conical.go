package heads

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// conicalVessel returns the two requirements of the plain cone at its largest
// inside diameter D [m], a the half apex angle:
//
//	long seam:  t = p D/[2 cos a (S E − 0.6 p)]
//	girth seam: t = p D/[4 cos a (S E_g + 0.2 p)] + f/(S E_g cos a)
//
// with f the line load per length. Up to 60 degrees; over 30 degrees without a
// knuckle the junction check is part of the rule, and it is asked of every sharp
// corner. The girth form is the cylinder's at the radius D/(2 cos a).
//
// Source: ASME VIII-1 UG-32; Farr and Jawad eqs 3.33 to 3.36 (read); girth form computed.
func (r rule) conicalVessel(D float64) ([]term, error) {
	α := r.g.HalfAngle
	if err := within("half angle (rad)", α, 0, math.Pi/3+rounding, "cones of the vessel rule"); err != nil {
		return nil, err
	}
	cos, a, ag, f := math.Cos(α), r.s*r.e, r.sg*r.eg, r.o.LineLoad
	ins := []check.Quantity{check.M("D", "largest inside diameter of the cone, corroded", D), check.Rad("a", "half apex angle", α)}
	note := "the corner at each end of the cone is not held here: without its junction check the joint is not shown safe"
	return []term{{
		what: "cone, across its long seam", formula: "t = p D/[2 cos a (S E − 0.6 p)]", note: note,
		inputs: append(ins[:2:2], check.Pa("S", "allowable stress", r.s), check.Num("E", "joint efficiency", r.e)),
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1; Farr and Jawad", Where: "UG-32; eqs 3.33 to 3.36", How: check.Read},
		need:   func(p float64) float64 { return positive(p*D, 2*cos*(a-0.6*p)) },
		bear:   func(t float64) float64 { return 2 * a * t * cos / (D + 1.2*t*cos) },
		holds: func(t, wall, p float64) error {
			return errors.Join(within("wall over inside radius square to it", 2*math.Max(t, wall)*cos/D, 0, 0.5, "thin-wall rule"),
				within("pressure over S E", p/a, 0, 0.385, "thin-wall rule"))
		},
	}, {
		what: "cone, across its girth seam", formula: "t = p D/[4 cos a (S E_g + 0.2 p)] + f/(S E_g cos a)", note: note,
		inputs: append(ins[:2:2], check.Pa("S", "allowable stress across the girth seam", r.sg), check.Num("E_g", "girth joint efficiency", r.eg),
			check.NPerM("f", "line load, tension", f)),
		source: check.Source{Doc: "derived", Where: "UG-27(c)(2) at the radius D/(2 cos a)", How: check.Computed},
		need:   func(p float64) float64 { return p*D/(4*cos*(ag+0.2*p)) + f/(ag*cos) },
		bear: func(t float64) float64 {
			u := t - f/(ag*cos)
			return positive(4*ag*u*cos, D-0.8*u*cos)
		},
	}}, nil
}

// conicalEuropean returns, at the largest inside diameter D [m] of the cone,
//
//	long seam:  e = p D/[(2 f z − p) cos a]
//	girth seam: e = p D/[(4 f z − p) cos a] + n/(f z cos a), n the line load
//
// for a ≤ 75 deg and e/De ≤ 0.16. The girth form is the axial force at the mean diameter.
//
// Source: EN 13445-3 (recalled); girth form computed.
func (r rule) conicalEuropean(D float64) ([]term, error) {
	α := r.g.HalfAngle
	if err := within("half angle (rad)", α, 0, 75*math.Pi/180+rounding, "cones of the European set"); err != nil {
		return nil, err
	}
	cos, a, ag, n := math.Cos(α), r.s*r.e, r.sg*r.eg, r.o.LineLoad
	ins := []check.Quantity{check.M("D", "largest inside diameter of the cone, corroded", D), check.Rad("a", "half apex angle", α)}
	note := "the corner at each end of the cone is not held here: without its junction check the joint is not shown safe"
	return []term{{
		what: "cone, across its long seam", formula: "e = p D/[(2 f z − p) cos a]", source: european, note: note,
		inputs: append(ins[:2:2], check.Pa("f", "design stress", r.s), check.Num("z", "joint coefficient", r.e)),
		need:   func(p float64) float64 { return positive(p*D, (2*a-p)*cos) },
		bear:   func(t float64) float64 { return 2 * a * t * cos / (D + t*cos) },
		holds:  thinEuropean(D),
	}, {
		what: "cone, across its girth seam", formula: "e = p D/[(4 f z − p) cos a] + n/(f z cos a)", source: european, note: note,
		inputs: append(ins[:2:2], check.Pa("f", "design stress across the girth seam", r.sg), check.Num("z", "joint coefficient of the girth seam", r.eg),
			check.NPerM("n", "line load, tension", n)),
		need: func(p float64) float64 { return positive(p*D, (4*ag-p)*cos) + n/(ag*cos) },
		bear: func(t float64) float64 {
			u := t - n/(ag*cos)
			return positive(4*ag*u*cos, D+u*cos)
		},
	}}, nil
}
