package weld

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/report/check"
)

// The statistical bases of a limit from coupons: the share of all such welds
// that is stronger than the limit, with a confidence of 95 %.
const (
	BasisA = "A" // 99 %
	BasisB = "B" // 90 %
)

// FewCoupons is the size under which a set is to be cautioned [-]: practice.
const FewCoupons = 5

// leastCoupons is the smallest set that gets a limit, mostCoupons the largest for
// which the factor is exact: above, the noncentral t of the library turns to an
// approximation.
const leastCoupons, mostCoupons = 3, 250

// confidence is that of both bases [-].
const confidence = 0.95

// share returns the share of welds stronger than the limit of a basis [-], and
// the number of coupons from which on the lowest of them is a limit without any
// assumed distribution: 0.99ⁿ or 0.90ⁿ at most 0.05.
func share(basis string) (p float64, lowest int, err error) {
	switch basis {
	case BasisA:
		return 0.99, 299, nil
	case BasisB:
		return 0.90, 29, nil
	}
	return math.NaN(), 0, fmt.Errorf("basis %q of coupons must be A or B", basis)
}

// ToleranceFactor returns k [-] of the one-sided lower tolerance limit
// mean − k s of n coupons from a normal population, s with n − 1: with the
// confidence γ [-] the share p [-] of the population lies above it.
//
//	k = t'_γ(ν = n − 1, δ = z_p √n) / √n
//
// t' is the quantile of the noncentral t distribution, z_p that of the normal.
// It holds for n from 2 to 250, p from 0.5 to 0.99 and γ from 0.5 to 0.999.
//
// Source: definition of the noncentral t; tolerance factors in NIST/SEMATECH
// e-Handbook 7.2.6.3 (its formula there is an approximation).
func ToleranceFactor(n int, p, γ float64) (float64, error) {
	const fn = "weld.ToleranceFactor"
	if err := errors.Join(
		check.Within(fn, "number of coupons n", float64(n), 2, mostCoupons, "where the factor is exact"),
		check.Within(fn, "share p", p, 0.5, 0.99, "where the factor is exact"),
		check.Within(fn, "confidence γ", γ, 0.5, 0.999, "where the factor is exact")); err != nil {
		return math.NaN(), err
	}
	root := math.Sqrt(float64(n))
	t := distuv.NoncentralT{Nu: float64(n - 1), Mu: distuv.UnitNormal.Quantile(p) * root}
	q := t.Quantile(γ)
	if back := t.CDF(q); !(math.Abs(back-γ) < 1e-9) { // not reached: the quantile was found everywhere in the range
		return math.NaN(), fmt.Errorf("the quantile of the noncentral t was not found for %d coupons", n)
	}
	return q / root, nil
}

// A Sample is one strength of a set of coupons as statistics see it. Where an
// error goes with it, what could be computed is there to be shown and Limit is
// NaN or must not be used.
type Sample struct {
	N           int     // coupons
	Mean        float64 // [Pa]
	Deviation   float64 // s, with n − 1 [Pa]
	Least, Most float64 // [Pa]
	Basis       string  // A or B
	Factor      float64 // k [-]; NaN where the limit is the lowest coupon
	Limit       float64 // the lower limit; negative is reported as it is [Pa]
	Lowest      bool    // the limit is the lowest coupon, of a set large enough
	Normality   Normality
	Outlier     Outlier
	Cautions    []string
}

// BasisLimit returns the lower limit of a strength from coupons [Pa] by basis A
// or B:
//
//	X = mean − k s      k of ToleranceFactor, confidence 95 %
//
// Where normality is rejected the limit is the lowest coupon if there are at
// least 29 (B) or 299 (A), else there is none; so too in a set above the range
// of k. Fewer than 3 coupons, a value not
// above zero, s = 0 and a limit not above zero are errors; a coupon is never
// left out.
//
// Source: MIL-HDBK-5 / MMPDS 1.4.1 for the bases; confidence of the lowest of
// n: 1 − pⁿ.
func BasisLimit(values []float64, basis string) (Sample, error) {
	s := Sample{N: len(values), Basis: basis, Mean: math.NaN(), Deviation: math.NaN(), Least: math.NaN(), Most: math.NaN(), Factor: math.NaN(), Limit: math.NaN()}
	p, lowest, err := share(basis)
	if err != nil {
		return s, err
	}
	if s.N < leastCoupons {
		return s, fmt.Errorf("%d coupons: a basis needs at least %d, and 5 or more to be of use", s.N, leastCoupons)
	}
	for i, v := range values {
		if !(v > 0) || math.IsInf(v, 0) {
			return s, fmt.Errorf("strength of coupon %d is not a number above zero", i+1)
		}
	}
	s.moments(values)
	if !(s.Deviation > 1e-9*s.Mean) {
		return s, errors.New("all coupons show the same strength: no scatter, no limit; write what was measured, not a certificate value")
	}
	s.Normality, s.Outlier = normality(values, s.Mean, s.Deviation), outlier(values, s.Mean, s.Deviation)
	s.caution()
	if s.Normality.Rejected {
		if s.N < lowest {
			return s, fmt.Errorf("normality is rejected (A²* %.3f above %.3f): the limit of a normal population is not used, and the lowest coupon is a %s basis only from %d coupons on", s.Normality.Modified, normalityLimit, basis, lowest)
		}
	}
	if s.Normality.Rejected || s.N > mostCoupons && s.N >= lowest {
		s.Lowest, s.Limit = true, s.Least
		return s, nil
	}
	if s.Factor, err = ToleranceFactor(s.N, p, confidence); err != nil {
		return s, err
	}
	s.Limit = s.Mean - s.Factor*s.Deviation
	if !(s.Limit > 0) {
		return s, fmt.Errorf("the %s basis of %d coupons, mean − %.2f s, is not above zero: too few coupons for a scatter s of %.1f %% of the mean; pull more", basis, s.N, s.Factor, 100*s.Deviation/s.Mean)
	}
	return s, nil
}

// moments fills mean, deviation and extremes of values [Pa].
func (s *Sample) moments(values []float64) {
	n := float64(len(values))
	sum, squares := 0.0, 0.0
	for _, v := range values {
		sum += v / n
	}
	for _, v := range values {
		squares += (v - sum) * (v - sum)
	}
	s.Mean, s.Deviation = sum, math.Sqrt(squares/(n-1))
	s.Least, s.Most = slices.Min(values), slices.Max(values)
}

// caution says what the reader must know of a set of this size.
func (s *Sample) caution() {
	if s.N < powerless {
		s.Cautions = append(s.Cautions, fmt.Sprintf("under %d coupons the test of normality has almost no power: not rejected proves nothing", powerless))
	}
}
