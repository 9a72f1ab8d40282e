package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// torisphereTakes are the keys of the tank file that mean something to the shape.
var torisphereTakes = []string{"crown_radius", "knuckle_radius", "depth", "straight_flange"}

var torisphereShape = Shape{
	Name:     "torisphere",
	Takes:    torisphereTakes,
	Requires: [][]string{{"crown_radius"}, {"knuckle_radius"}},
	vessel:   torisphereVessel, european: torisphereEuropean,
	New: newTorisphere,
}

// newTorisphere makes a spherical crown of inside radius L that runs tangent
// into a knuckle of inside radius r, tangent to the cylinder. Crown meets
// knuckle at φ0 from the axis:
//
//	sin φ0 = (D/2 − r)/(L − r)    h = L − sqrt((L − r)² − (D/2 − r)²)
//
// Source: geometry; the depth is checked against D. Jones's printed values.
func newTorisphere(g Geometry) (Head, error) {
	if err := g.accept("torisphere", torisphereTakes); err != nil {
		return nil, err
	}
	R, L, r := g.InsideDiameter/2, g.CrownRadius, g.KnuckleRadius
	switch {
	case L == 0:
		return nil, missing("torisphere", "crown_radius")
	case r == 0:
		return nil, missing("torisphere", "knuckle_radius")
	case L < R:
		return nil, fmt.Errorf("crown_radius %.5g m is under half the inside diameter (%.5g m): such a crown does not reach the cylinder", L, R)
	case r > R:
		return nil, fmt.Errorf("knuckle_radius %.5g m is larger than the cylinder's radius %.5g m", r, R)
	case r >= L:
		return nil, fmt.Errorf("knuckle_radius %.5g m must be smaller than the crown_radius %.5g m", r, L)
	}
	φ0 := math.Asin((R - r) / (L - r))
	depth := L - math.Sqrt((L-R)*(L+R-2*r)) // (L−r)² − (R−r)², factored
	if err := g.agree(depth, "crown and knuckle radius"); err != nil {
		return nil, err
	}
	g.Depth = depth
	return &meridian{kind: "torisphere", g: g, pieces: []piece{
		arc{called: "crown", x0: depth - L, ρ: L, b: φ0},
		arc{called: "knuckle", r0: R - r, ρ: r, a: φ0, b: math.Pi / 2},
	}}, nil
}

// torisphereVessel returns, L and r inside, Do outside,
//
//	t = p L M/(2 S E − 0.2 p)    M = [3 + sqrt(L/r)]/4
//
// for L ≤ Do, r ≥ 0.06 Do, L/r ≤ 16 2/3 (all with 1 % for the nominal proportions) and r ≥ 3 t, and
// the floor of a seamless hemisphere. With L = Do, r = 0.06 Do it is the 0.885 p L form.
//
// Source: ASME VIII-1 Appendix 1-4(d), UG-32 (read; L ≤ Do, r ≥ 0.06 Do, r ≥ 3 t recalled).
func torisphereVessel(r rule) ([]term, error) {
	L, rk := r.g.CrownRadius, r.g.KnuckleRadius
	if err := errors.Join(
		within("crown radius over outside diameter", L/r.do, 0, 1+grace, "dished heads of the vessel rule"),
		within("knuckle radius over outside diameter", rk/r.do, 0.06*(1-grace), 1, "dished heads of the vessel rule"),
		within("crown over knuckle radius", L/rk, 1, 50.0/3*(1+grace), "range of the factor M"),
	); err != nil {
		return nil, err
	}
	S, note := r.capped()
	t := dishedVessel("torisphere", L, rk, S, r.e)
	t.note = note
	return append([]term{t}, r.seamless()...), nil
}

// dishedVessel is the general torisphere rule, also of the knuckle of a toricone:
// radii L and rk [m], allowable S [Pa], efficiency E [-].
func dishedVessel(what string, L, rk, S, E float64) term {
	M, a := (3+math.Sqrt(L/rk))/4, S*E
	return term{
		what: what, formula: "t = p L M/(2 S E − 0.2 p), M = [3 + sqrt(L/r)]/4",
		inputs: []check.Quantity{check.M("L", "crown radius, corroded", L), check.M("r", "knuckle radius, corroded", rk), check.Num("M", "shape factor", M),
			check.Pa("S", "allowable stress", S), check.Num("E", "joint efficiency", E)},
		source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-32, Appendix 1-4(d)", How: check.Read},
		need:   func(p float64) float64 { return positive(p*L*M, 2*a-0.2*p) },
		bear:   func(t float64) float64 { return 2 * a * t / (L*M + 0.2*t) },
		holds: func(t, wall, _ float64) error {
			return within("knuckle radius over wall", rk/math.Max(t, wall), 3-rounding, math.Inf(1), "knuckle of the vessel rule")
		},
	}
}

// torisphereEuropean returns the three requirements of [rule.dished].
func torisphereEuropean(r rule) ([]term, error) {
	return r.dished(r.g.CrownRadius, r.g.KnuckleRadius)
}
