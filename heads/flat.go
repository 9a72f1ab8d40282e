package heads

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// flatTakes are the keys of the tank file that mean something to the shape.
var flatTakes = []string{}

var flatShape = Shape{
	Name:   "flat",
	Takes:  flatTakes,
	vessel: flatVessel, european: flatEuropean,
	New: newFlat,
}

// newFlat makes a flat plate across the cylinder. It holds no volume.
func newFlat(g Geometry) (Head, error) {
	if err := g.accept("flat head", flatTakes); err != nil {
		return nil, err
	}
	return &meridian{kind: "flat", g: g, pieces: []piece{disc{g.InsideDiameter / 2}}}, nil
}

// flatVessel returns, d the inside diameter and C the factor of the corner weld,
//
//	t = d sqrt(C p/(S E))
//
// which holds the plate's bending stress C p d²/t² to S E. C must be given, from 0.20 up.
//
// Source: ASME VIII-1 UG-34 (read).
func flatVessel(r rule) ([]term, error) {
	d, C, a := r.g.InsideDiameter, r.o.CornerFactor, r.s*r.e
	if err := within("corner factor", C, 0.20, 1, "flat heads need corner_factor, with its source; the rule's least is 0.20"); err != nil {
		return nil, err
	}
	return []term{{
		what: "flat head", formula: "t = d sqrt(C p/(S E))",
		inputs: []check.Quantity{check.M("d", "inside diameter, corroded", d), check.Num("C", "corner factor", C),
			check.Pa("S", "allowable stress", r.s), check.Num("E", "joint efficiency", r.e)},
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-34", How: check.Read},
		need:   func(p float64) float64 { return d * math.Sqrt(C*p/a) },
		bear:   func(t float64) float64 { return a * t * t / (C * d * d) },
	}}, nil
}

// flatEuropean is not made: the rule needs a coefficient (C2) that stands only
// in a chart of the standard.
func flatEuropean(rule) ([]term, error) {
	return nil, errors.New("flat head by the European set: the coefficient C2 of the standard is not built in")
}
