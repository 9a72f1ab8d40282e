package weld

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// normalityLimit is the 5 % point of the modified Anderson-Darling statistic,
// mean and deviation estimated [-]; powerless the number of coupons under which
// the test hardly ever rejects.
const (
	normalityLimit = 0.752
	powerless      = 8
)

// A Normality is an Anderson-Darling test of normality, mean and deviation taken
// from the coupons themselves.
type Normality struct {
	Statistic float64 // A² [-]
	Modified  float64 // A²* [-]
	Rejected  bool    // at 5 %: A²* above 0.752
}

// normality tests values of this mean and deviation [all in one unit]:
//
//	A²  = −n − (1/n) Σ (2i − 1) [ln F(z_i) + ln(1 − F(z_{n+1−i}))]
//	A²* = A² (1 + 0.75/n + 2.25/n²)      rejected at 5 % above 0.752
//
// z are the sorted standardised values, F the normal distribution. Another
// small-sample form, 1 + 4/n − 25/n², hardly ever rejects under n = 8 and is
// not used.
//
// Source: Stephens' modified form for mean and variance estimated (recalled);
// its level was found by simulation to be 4.7 to 5.1 % for n from 5 to 100.
func normality(values []float64, mean, deviation float64) Normality {
	x := slices.Sorted(slices.Values(values))
	n := len(x)
	below := func(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 } // F, exact in the tail too
	sum := 0.0
	for i := range x {
		low, high := (x[i]-mean)/deviation, (x[n-1-i]-mean)/deviation
		sum += float64(2*i+1) * (math.Log(below(low)) + math.Log(below(-high)))
	}
	m := float64(n)
	a := Normality{Statistic: -m - sum/m}
	a.Modified = a.Statistic * (1 + 0.75/m + 2.25/(m*m))
	a.Rejected = !(a.Modified <= normalityLimit)
	return a
}

// An Outlier is the coupon farthest from the mean.
type Outlier struct {
	Index    int     // of the coupon
	Distance float64 // |x − mean|/s [-]
	Limit    float64 // 5 % point of that distance [-]
	Is       bool    // beyond the limit
	Low      bool    // below the mean
}

// outlier judges the coupon farthest from the mean [values, mean and deviation
// in one unit]. It is an outlier at 5 % beyond
//
//	G = (n − 1)/√n · √(t²/(n − 2 + t²))      t = t_{1−0.025/n, n−2}
//
// Source: Grubbs' test, two-sided (recalled form; 5 % points worked out apart).
func outlier(values []float64, mean, deviation float64) Outlier {
	var o Outlier
	for i, v := range values {
		if d := math.Abs(v-mean) / deviation; d > o.Distance {
			o.Index, o.Distance, o.Low = i, d, v < mean
		}
	}
	o.Limit = outlierLimit(len(values))
	o.Is = o.Distance > o.Limit
	return o
}

// outlierLimit returns G of outlier for n values [-].
func outlierLimit(n int) float64 {
	m := float64(n)
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: m - 2}.Quantile(1 - 0.025/m)
	return (m - 1) / math.Sqrt(m) * math.Sqrt(t*t/(m-2+t*t))
}
