package heads

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// ellipsoidTakes are the keys of the tank file that mean something to the shape.
var ellipsoidTakes = []string{"aspect", "depth", "straight_flange"}

var ellipsoidShape = Shape{
	Name:     "ellipsoid",
	Takes:    ellipsoidTakes,
	Requires: [][]string{{"aspect", "depth"}},
	vessel:   ellipsoidVessel, european: ellipsoidEuropean,
	New: newEllipsoid,
}

// newEllipsoid makes half an ellipsoid of revolution, aspect D/(2h) of one or
// more: a deeper one has its sharpest curvature at the apex and is no head of
// the trade.
func newEllipsoid(g Geometry) (Head, error) {
	if err := g.accept("ellipsoid", ellipsoidTakes); err != nil {
		return nil, err
	}
	switch {
	case g.Aspect == 0 && g.Depth == 0:
		return nil, missing("ellipsoid", "aspect or depth")
	case g.Aspect == 0:
		g.Aspect = g.InsideDiameter / (2 * g.Depth)
	default:
		depth := g.InsideDiameter / (2 * g.Aspect)
		if err := g.agree(depth, fmt.Sprintf("aspect %.4g", g.Aspect)); err != nil {
			return nil, err
		}
		g.Depth = depth
	}
	if g.Aspect < 1-rounding {
		return nil, fmt.Errorf("aspect D/2h is %.4g, must be 1 or more: the head is deeper than a hemisphere", g.Aspect)
	}
	return &meridian{kind: "ellipsoid", g: g, pieces: []piece{ellipse{a: g.InsideDiameter / 2, b: g.Depth}}}, nil
}

// ellipsoidVessel returns, D and h inside,
//
//	t = p D K/(2 S E − 0.2 p)    K = [2 + (D/2h)²]/6    1 ≤ D/2h ≤ 3
//
// and the floor of a seamless hemisphere. Below a wall of 0.002 crown radii the
// knuckle check is part of the rule.
//
// Source: ASME VIII-1 Appendix 1-4(c), UG-32 (read).
func ellipsoidVessel(r rule) ([]term, error) {
	D, k := r.g.InsideDiameter, r.g.Aspect
	if err := within("aspect D/2h", k, 1-rounding, 3, "range of the factor K"); err != nil {
		return nil, err
	}
	K, S, note := (2+k*k)/6, r.s, ""
	if K > 1+rounding {
		S, note = r.capped()
	}
	a := S * r.e
	return append([]term{{
		what: "ellipsoid", formula: "t = p D K/(2 S E − 0.2 p), K = [2 + (D/2h)²]/6", note: note,
		inputs: []check.Quantity{check.M("D", "inside diameter, corroded", D), check.Num("D/2h", "aspect, corroded", k), check.Num("K", "shape factor", K),
			check.Pa("S", "allowable stress", S), check.Num("E", "joint efficiency", r.e)},
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-32, Appendix 1-4(c)", How: check.Read},
		need:   func(p float64) float64 { return positive(p*D*K, 2*a-0.2*p) },
		bear:   func(t float64) float64 { return 2 * a * t / (K*D + 0.2*t) },
	}}, r.seamless()...), nil
}

// ellipsoidEuropean takes the torisphere that stands for it,
//
//	r = Di (0.5/K − 0.08)    R = Di (0.44 K + 0.02)    K = Di/2hi    1.7 < K < 2.2
//
// r over 0.2 Di (K under 1.786) counts as 0.2 Di, where the knuckle factor ends: every
// requirement falls as r grows, so that this is safe.
//
// Source: EN 13445-3 (recalled).
func ellipsoidEuropean(r rule) ([]term, error) {
	D, k := r.g.InsideDiameter, r.g.Aspect
	if err := within("aspect Di/2hi", k, 1.7, 2.2, "equivalent torisphere of the European set"); err != nil {
		return nil, err
	}
	return r.dished(D*(0.44*k+0.02), D*math.Min(0.5/k-0.08, 0.2))
}
