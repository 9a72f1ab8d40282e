package heads

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// Beta returns the factor β [-] of the European knuckle-yield rule, for the
// wall over crown radius eR = e/R [-] and x = r/Di [-]:
//
//	Y = min(e/R, 0.04)    Z = log10(1/Y)    N = 1.006 − 1/[6.2 + (90 Y)⁴]
//	x = 0.06: N (−0.3635 Z³ + 2.2124 Z² − 3.2937 Z + 1.8873)
//	x = 0.1:  N (−0.1833 Z³ + 1.0383 Z² − 1.2943 Z + 0.837)
//	x = 0.2:  max[0.95 (0.56 − 1.94 Y − 82.5 Y²), 0.5]
//
// linear in x between. Outside 0.06 ≤ x ≤ 0.2 or e/R ≤ 0 it is NaN and an error.
//
// Source: EN 13445-3, β formulas read in a published clause calculation.
func Beta(eR, x float64) (float64, error) {
	if err := errors.Join(
		check.Within("heads.Beta", "knuckle radius over inside diameter", x, 0.06-rounding, 0.2+rounding, "knuckle factor of the European set"),
		check.Within("heads.Beta", "wall over crown radius", eR, math.SmallestNonzeroFloat64, math.MaxFloat64, "knuckle factor of the European set"),
	); err != nil {
		return math.NaN(), err
	}
	return beta(eR, x), nil
}

func beta(eR, x float64) float64 {
	Y := math.Min(eR, 0.04)
	Z := math.Log10(1 / Y)
	N := 1.006 - 1/(6.2+math.Pow(90*Y, 4))
	at06 := N * (((-0.3635*Z+2.2124)*Z-3.2937)*Z + 1.8873)
	at10 := N * (((-0.1833*Z+1.0383)*Z-1.2943)*Z + 0.837)
	at20 := math.Max(0.95*(0.56-1.94*Y-82.5*Y*Y), 0.5)
	if x <= 0.1 {
		return 25 * ((0.1-x)*at06 + (x-0.06)*at10)
	}
	return 10 * ((0.2-x)*at10 + (x-0.1)*at20)
}

// dished returns the three requirements of the European set for a crown of
// inside radius R [m] and a knuckle of inside radius rk [m]:
//
//	e_s = p R/(2 f z − 0.5 p)
//	e_y = β p (0.75 R + 0.2 Di)/f
//	e_b = (0.75 R + 0.2 Di) [(p/(111 f_b)) (Di/r)^0.825]^(1/1.5)    f_b = Rp0.2/1.5
//
// for 0.06 Di ≤ r ≤ 0.2 Di, r ≥ 2 e, 0.001 De ≤ e ≤ 0.08 De, R ≤ De; e_b falls away
// once e_y is above 0.005 Di.
//
// Source: EN 13445-3 (e_s, e_y, β read in a published clause calculation; the rest recalled).
func (r rule) dished(R, rk float64) ([]term, error) {
	D := r.g.InsideDiameter
	if err := errors.Join(
		within("knuckle radius over inside diameter", rk/D, 0.06-rounding, 0.2+rounding, "dished heads of the European set"),
		within("crown radius over outside diameter", R/r.do, 0, 1+rounding, "dished heads of the European set"),
		within("0.2 % proof strength (Pa)", r.o.Proof, 1, math.MaxFloat64, "knuckle buckling of the European set"),
	); err != nil {
		return nil, err
	}
	f, a, fb, w := r.s, r.s*r.e, r.o.Proof/1.5, 0.75*R+0.2*D
	ey := func(p float64) float64 { return r.yieldWall(p, R, rk, w) }
	ins := []check.Quantity{check.M("R", "crown radius, corroded", R), check.M("r", "knuckle radius, corroded", rk), check.M("Di", "inside diameter, corroded", D), check.Pa("f", "design stress", f)}
	return []term{
		{what: "crown", formula: "e_s = p R/(2 f z − 0.5 p)", source: european,
			inputs: append(ins[:4:4], check.Num("z", "joint coefficient", r.e)),
			need:   func(p float64) float64 { return positive(p*R, 2*a-0.5*p) },
			bear:   func(t float64) float64 { return 2 * a * t / (R + 0.5*t) },
			holds:  r.dishedRange(rk)},
		{what: "knuckle, yield", formula: "e_y = β p (0.75 R + 0.2 Di)/f", source: european, inputs: ins, need: ey,
			bear: func(t float64) float64 { return f * t / (beta(t/R, rk/D) * w) }},
		{what: "knuckle, buckling", formula: "e_b = (0.75 R + 0.2 Di) [(p/(111 f_b)) (Di/r)^0.825]^(1/1.5)", source: european,
			inputs: append(ins[:4:4], check.Pa("f_b", "design stress against buckling", fb)),
			need: func(p float64) float64 {
				if ey(p) > 0.005*D {
					return 0
				}
				return w * math.Pow(p/(111*fb)*math.Pow(D/rk, 0.825), 1/1.5)
			},
			bear: func(t float64) float64 {
				if t > 0.005*D {
					return math.Inf(1)
				}
				return 111 * fb * math.Pow(t/w, 1.5) * math.Pow(rk/D, 0.825)
			}},
	}, nil
}

// yieldWall solves e_y = β(e_y/R) p w/f for e_y [m]; lengths R, rk, w in [m], p in
// [Pa]. From 0.0005 R up β falls as e grows, so the bracket holds one root; below,
// far under the least wall of the rule, the answer stays there, which is safe.
func (r rule) yieldWall(p, R, rk, w float64) float64 {
	lo, hi := 0.0005*R, R
	for range 200 {
		e := lo + (hi-lo)/2
		if e > beta(e/R, rk/r.g.InsideDiameter)*p*w/r.s {
			hi = e
		} else {
			lo = e
		}
	}
	if hi == R {
		return math.Inf(1)
	}
	return hi
}

// dishedRange is the range of the wall for a knuckle of inside radius rk [m].
func (r rule) dishedRange(rk float64) func(t, wall, p float64) error {
	return func(t, wall, _ float64) error {
		e := math.Max(t, wall)
		return errors.Join(
			within("wall over outside diameter", wall/r.do, 0.001, 0.08, "dished heads of the European set"),
			within("knuckle radius over wall", rk/e, 2-rounding, math.Inf(1), "dished heads of the European set"))
	}
}
