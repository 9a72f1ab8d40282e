package life

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// HoleStress returns the largest stress at the edge of a small round hole [Pa] in a wall under σ1 and σ2 [Pa], tension positive:
//
//	the one farther from zero of 3 σ1 − σ2 and 3 σ2 − σ1
//
// Source: Kirsch; Jawad and Farr, Ex. 11.2 (read). Small: its radius well below √(R t).
func HoleStress(σ1, σ2 float64) float64 {
	a, b := 3*σ1-σ2, 3*σ2-σ1
	if math.IsNaN(a) || math.Abs(a) > math.Abs(b) {
		return a
	}
	return b
}

// PortIndex returns the largest stress at a reinforced port over the largest membrane stress of the wall [-]:
//
//	K = 3.3 on a cylinder or cone, 2.2 on a domed wall; inclined by φ: times max(1 + 2 sin²φ, 1 + (tan φ)^4/3)
//
// for a bore d [m] in a wall t [m] of inside diameter D [m], of a cone or dome twice its second principal radius: d/D up to 0.33, d/√(D t) up to
// 0.8, D/t from 10 to 100, φ [rad] up to 45 deg. The opening must replace its area. Outside NaN and an error.
//
// Source: stress indices of nozzles, ASME III NB-3338.2 (recalled; the narrower limits of what is remembered).
func PortIndex(domed bool, d, D, t, φ float64) (float64, error) {
	const fn, why = "life.PortIndex", "stress indices of ports"
	if err := errors.Join(
		check.Within(fn, "bore of the port (m)", d, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "bore of the port over diameter", d/D, 0, 0.33, why),
		check.Within(fn, "bore over the root of diameter times wall", d/math.Sqrt(D*t), 0, 0.8, why),
		check.Within(fn, "diameter over wall", D/t, 10, 100, why),
		check.Within(fn, "angle of the tube to the wall's normal (rad)", φ, 0, math.Pi/4*(1+1e-9), why),
	); err != nil {
		return math.NaN(), err
	}
	k := 3.3
	if domed {
		k = 2.2
	}
	sin := math.Sin(φ)
	return k * math.Max(1+2*sin*sin, 1+math.Pow(math.Tan(φ), 4.0/3)), nil
}
