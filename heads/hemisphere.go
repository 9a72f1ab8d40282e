package heads

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// hemisphereTakes are the keys of the tank file that mean something to the shape.
var hemisphereTakes = []string{"depth", "straight_flange"}

var hemisphereShape = Shape{
	Name:   "hemisphere",
	Takes:  hemisphereTakes,
	vessel: hemisphereVessel, european: hemisphereEuropean,
	New: newHemisphere,
}

// newHemisphere makes half a sphere of the diameter of the seam. A depth may be
// given and must then be half of it.
func newHemisphere(g Geometry) (Head, error) {
	if err := g.accept("hemisphere", hemisphereTakes); err != nil {
		return nil, err
	}
	r := g.InsideDiameter / 2
	if err := g.agree(r, "half the diameter"); err != nil {
		return nil, err
	}
	g.Depth = r
	return &meridian{kind: "hemisphere", g: g, pieces: []piece{arc{called: "sphere", ρ: r, b: math.Pi / 2}}}, nil
}

// hemisphereVessel returns, with the inside radius R and SE the lower of head
// and of the joint to the shell, which counts as one inside the head,
//
//	t = p R/(2 S E − 0.2 p)    for t ≤ 0.356 R, p ≤ 0.665 S E
//
// Source: ASME VIII-1 UG-27(d), UG-32 (read; the range recalled).
func hemisphereVessel(r rule) ([]term, error) {
	a, R := math.Min(r.s*r.e, r.sg*r.eg), r.g.InsideDiameter/2
	return []term{{
		what: "hemisphere, joint to the shell included", formula: "t = p R/(2 S E − 0.2 p)",
		inputs: []check.Quantity{check.M("R", "inside radius, corroded", R), check.Pa("S E", "allowable times efficiency, lower of head and girth joint", a)},
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-27(d), UG-32", How: check.Read},
		need:   func(p float64) float64 { return positive(p*R, 2*a-0.2*p) },
		bear:   func(t float64) float64 { return 2 * a * t / (R + 0.2*t) },
		holds: func(t, wall, p float64) error {
			return errors.Join(within("wall over inside radius", math.Max(t, wall)/R, 0, 0.356, "thin sphere rule"),
				within("pressure over S E", p/a, 0, 0.665, "thin sphere rule"))
		},
	}}, nil
}

// hemisphereEuropean returns e = p Di/(4 f z − p), which is p = 4 f z e/Dm, for
// e/De ≤ 0.16.
//
// Source: EN 13445-3 (recalled).
func hemisphereEuropean(r rule) ([]term, error) {
	a, D := math.Min(r.s*r.e, r.sg*r.eg), r.g.InsideDiameter
	return []term{{
		what: "hemisphere, joint to the shell included", formula: "e = p Di/(4 f z − p)",
		inputs: []check.Quantity{check.M("Di", "inside diameter, corroded", D), check.Pa("f z", "design stress times joint coefficient", a)},
		source: european,
		need:   func(p float64) float64 { return positive(p*D, 4*a-p) },
		bear:   func(t float64) float64 { return 4 * a * t / (D + t) },
		holds:  thinEuropean(D),
	}}, nil
}
