package weld

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/report/check"
)

// Inspection returns the factor [-] by which the examination of the tank's own
// weld counts beside a strength from coupons: 1.00 full, 0.85 spot, 0.70 none,
// whatever the kind of joint, as the kind is in the coupons. Coupons qualify the
// procedure; radiography shows that the tank's weld is like the coupon.
//
// Source: common practice; the numbers are those of a double butt.
func (j Joint) Inspection() (float64, check.Source, error) {
	exam, err := j.examination()
	if err != nil {
		return math.NaN(), check.Source{}, err
	}
	e := map[string]float64{"full": 1.00, "spot": 0.85, "none": 0.70}[exam]
	return e, check.Source{Doc: "inspection factor beside coupons", Where: "by examination: full 1.00, spot 0.85, none 0.70", How: check.Practice}, nil
}

// DescriptiveRatio returns mean(weld)/mean(parent) [-], for a report only: it
// rises where the parent was weak.
func DescriptiveRatio(weld, parent Sample) float64 { return weld.Mean / parent.Mean }

// ReducedRatio returns the reduced ratio [-] of pairs of a weld and a parent
// coupon [Pa], to be multiplied with the minimum of the parent; for display. It
// is a bound on the mean ratio, and far above the B basis of the ratios:
//
//	r̄ − t_{0.95, n−1} s_r/√n      r_i = weld_i/parent_i
//
// At least three pairs are needed.
//
// Source: in the style of MIL-HDBK-5 9.5, paired data (recalled).
func ReducedRatio(weld, parent []float64) (float64, error) {
	n := len(weld)
	if n != len(parent) {
		n = 0
	}
	if err := check.Within("weld.ReducedRatio", "pairs of coupons", float64(n), leastCoupons, mostCoupons, "a mean and its scatter"); err != nil {
		return math.NaN(), err
	}
	r := make([]float64, n)
	for i := range r {
		r[i] = weld[i] / parent[i]
	}
	var s Sample
	s.moments(r)
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n - 1)}.Quantile(confidence)
	return s.Mean - t*s.Deviation/math.Sqrt(float64(n)), nil
}

// LimitRatio returns η = min(1, limit/minimum) [-] of a limit from coupons
// [Pa] and the minimum of the parent [Pa]. It shows what the limit means as a joint
// efficiency; the limit itself is what the seam is held to.
func LimitRatio(limit, minimum float64) float64 { return math.Min(1, limit/minimum) }
