package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// toriconeTakes are the keys of the tank file that mean something to the shape.
var toriconeTakes = []string{"half_angle", "depth", "knuckle_radius", "tip", "straight_flange"}

var toriconeShape = Shape{
	Name:     "toricone",
	Takes:    toriconeTakes,
	Requires: [][]string{{"half_angle", "depth"}, {"knuckle_radius"}},
	vessel:   toriconeVessel, european: toriconeEuropean,
	New: newToricone,
}

// newToricone makes a cone that runs tangent into a knuckle of inside radius r,
// tangent to the cylinder. Knuckle and cone meet at x = r sin α, radius
// R − r (1 − cos α), and
//
//	h = r sin α + [R − r (1 − cos α) − d_tip/2]/tan α
func newToricone(g Geometry) (Head, error) {
	if err := g.accept("toricone", toriconeTakes); err != nil {
		return nil, err
	}
	R, r, tip := g.InsideDiameter/2, g.KnuckleRadius, g.TipDiameter/2
	switch {
	case r == 0:
		return nil, missing("toricone", "knuckle_radius")
	case g.HalfAngle == 0 && g.Depth == 0:
		return nil, missing("toricone", "half_angle or depth")
	case r > R:
		return nil, fmt.Errorf("knuckle_radius %.5g m is larger than the cylinder's radius %.5g m", r, R)
	case tip >= R:
		return nil, fmt.Errorf("tip: its diameter %.5g m must be smaller than the cylinder's %.5g m", g.TipDiameter, g.InsideDiameter)
	}
	if g.HalfAngle == 0 {
		α, err := toriconeAngle(R, r, tip, g.Depth)
		if err != nil {
			return nil, err
		}
		g.HalfAngle = α
	}
	α := g.HalfAngle
	joint := R - r*(1-math.Cos(α))
	if joint <= tip {
		return nil, fmt.Errorf("the knuckle of radius %.5g m ends at radius %.5g m, inside the tip: no cone is left", r, joint)
	}
	depth := toriconeDepth(R, r, tip, α)
	if apex := toriconeDepth(R, r, 0, α); g.Depth > apex+agreement*g.InsideDiameter {
		return nil, fmt.Errorf("the cone closes at %.5g m, before its depth of %.5g m", apex, g.Depth)
	}
	if err := g.agree(depth, fmt.Sprintf("half_angle %.4g deg", α*180/math.Pi)); err != nil {
		return nil, err
	}
	g.Depth = depth
	return &meridian{kind: "toricone", g: g, pieces: []piece{
		line{x1: depth, r1: tip, x2: r * math.Sin(α), r2: joint, α: α, tangent: true},
		arc{called: "knuckle", r0: R - r, ρ: r, a: math.Pi/2 - α, b: math.Pi / 2},
	}}, nil
}

// toriconeDepth is the depth [m] of cylinder radius R, knuckle r and tip radius
// tip [m] at half angle α [rad].
func toriconeDepth(R, r, tip, α float64) float64 {
	return r*math.Sin(α) + (R-r*(1-math.Cos(α))-tip)/math.Tan(α)
}

// toriconeAngle solves toriconeDepth for α [rad], all lengths in [m]. The depth falls with α, from
// no bound at 0 down to where the cone between knuckle and tip vanishes.
func toriconeAngle(R, r, tip, depth float64) (float64, error) {
	hi := math.Pi / 2
	if tip > R-r {
		hi = math.Acos((tip - (R - r)) / r)
	}
	if least := toriconeDepth(R, r, tip, hi); depth <= least {
		return math.NaN(), fmt.Errorf("depth %.5g m is too shallow for a knuckle_radius of %.5g m: it must be above %.5g m", depth, r, least)
	}
	lo := 0.0
	for range 200 {
		mid := lo + (hi-lo)/2
		if toriconeDepth(R, r, tip, mid) > depth {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2, nil
}

// large returns the inside diameter [m] where the cone meets the knuckle, of the
// corroded head: D1 = D − 2 r (1 − cos α).
func (r rule) large() float64 {
	return r.g.InsideDiameter - 2*r.g.KnuckleRadius*(1-math.Cos(r.g.HalfAngle))
}

// toriconeVessel returns the plain cone at D1 and for the knuckle the torisphere rule
//
//	t = p L M/(2 S E − 0.2 p)    L = D1/(2 cos α)    M = [3 + sqrt(L/r)]/4
//
// for r ≥ 0.06 Do and r ≥ 3 t.
//
// Source: ASME VIII-1 UG-32 (recalled; the knuckle over 30 degrees read in Farr and Jawad).
func toriconeVessel(r rule) ([]term, error) {
	rk, D1 := r.g.KnuckleRadius, r.large()
	if err := within("knuckle radius over outside diameter", rk/r.do, 0.06*(1-grace), 1, "toricones of the vessel rule"); err != nil {
		return nil, err
	}
	ts, err := r.conicalVessel(D1)
	if err != nil {
		return nil, err
	}
	S, note := r.capped()
	k := dishedVessel("knuckle of the toricone", D1/(2*math.Cos(r.g.HalfAngle)), rk, S, r.e)
	k.note = note
	k.source = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "toricone, recalled; confirm", How: check.Memory}
	return append(ts, k), nil
}

// toriconeEuropean returns the plain cone at D1 and for the knuckle
//
//	e_j = p Dc b/(2 f γ)
//	b = (1/3) sqrt(Dc/e_j) tan α/(1 + 1/sqrt(cos α)) − 0.15
//	ρ = 0.028 r/sqrt(Dc e_j) · α°/(1 + 1/sqrt(cos α))    γ = 1 + ρ/[1.2 (1 + 0.2/ρ)]
//
// Dc the mean diameter of the cylinder, for α ≤ 60 deg and r < 0.3 Dc.
//
// Source: EN 13445-3 (b read in a published clause calculation; the rest recalled).
func toriconeEuropean(r rule) ([]term, error) {
	rk, α, D := r.g.KnuckleRadius, r.g.HalfAngle, r.g.InsideDiameter
	if err := errors.Join(
		within("half angle (rad)", α, 0, math.Pi/3+rounding, "knuckles of the European set"),
		within("knuckle radius over diameter", rk/D, 0, 0.3, "knuckles of the European set"),
	); err != nil {
		return nil, err
	}
	ts, err := r.conicalEuropean(r.large())
	if err != nil { // not reached: the knuckle asks for a smaller half angle
		return nil, err
	}
	bear := func(e float64) float64 {
		Dc := D + e
		ρ := 0.028 * rk / math.Sqrt(Dc*e) * (α * 180 / math.Pi) / (1 + 1/math.Sqrt(math.Cos(α)))
		γ := 1 + ρ/(1.2*(1+0.2/ρ))
		return positive(2*r.s*γ*e, Dc*junctionFactor(Dc/e, α))
	}
	return append(ts, term{
		what: "knuckle of the toricone", formula: "e_j = p Dc b/(2 f γ)", source: european,
		inputs: []check.Quantity{check.M("Di", "inside diameter, corroded", D), check.M("r", "knuckle radius, corroded", rk),
			check.Rad("a", "half apex angle", α), check.Pa("f", "design stress", r.s)},
		need: func(p float64) float64 { return leastWall(p, D/2, bear) },
		bear: bear,
	}), nil
}

// junctionFactor is b [-] of the European junction for slender = Dc/e [-] and the half angle α [rad].
func junctionFactor(slender, α float64) float64 {
	return math.Sqrt(slender)*math.Tan(α)/(3*(1+1/math.Sqrt(math.Cos(α)))) - 0.15
}

// leastWall solves bear(e) ≥ p [Pa] for the least e up to most [m]; +Inf when none does.
func leastWall(p, most float64, bear func(float64) float64) float64 {
	lo, hi := 0.0, most
	if !(bear(hi) >= p) {
		return math.Inf(1)
	}
	for range 200 {
		e := lo + (hi-lo)/2
		if bear(e) >= p {
			hi = e
		} else {
			lo = e
		}
	}
	return hi
}
