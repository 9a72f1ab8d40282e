package weld_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"proofsheet/material/weld"
	"proofsheet/report/check/checktest"
)

const mpa = 1e6

// eight are the coupons of the worked set [Pa].
var eight = []float64{305 * mpa, 311 * mpa, 298 * mpa, 322 * mpa, 309 * mpa, 301 * mpa, 315 * mpa, 307 * mpa}

// Worked apart from this package (mean, s and A² by a spreadsheet of the
// formulas, k from another library's noncentral t).
func TestWorkedSet(t *testing.T) {
	a, err := weld.BasisLimit(eight, "A")
	if err != nil {
		t.Fatal(err)
	}
	b, err := weld.BasisLimit(eight, "B")
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "mean", a.Mean/mpa, "308.50")
	checktest.Printed(t, "s", a.Deviation/mpa, "7.672")
	checktest.Printed(t, "A limit", a.Limit/mpa, "275.10")
	checktest.Printed(t, "B limit", b.Limit/mpa, "288.69")
	checktest.Printed(t, "A²", a.Normality.Statistic, "0.1379")
	checktest.Printed(t, "A²*", a.Normality.Modified, "0.1557")
	if a.Normality.Rejected || a.Lowest || a.Outlier.Is || a.N != 8 || a.Least != 298*mpa || a.Most != 322*mpa || a.Cautions != nil {
		t.Errorf("%+v", a)
	}
}

// What few coupons cost: the share of the mean that a basis keeps at a
// coefficient of variation v is 1 − k v.
func TestShareKept(t *testing.T) {
	for _, row := range []struct {
		v    float64
		n    int
		b, a string
	}{
		{0.02, 3, "0.88", "0.79"}, {0.02, 5, "0.93", "0.89"}, {0.02, 10, "0.95", "0.92"}, {0.03, 5, "0.90", "0.83"}, {0.03, 20, "0.94", "0.90"},
		{0.05, 3, "0.69", "0.47"}, {0.05, 10, "0.88", "0.80"}, {0.08, 3, "0.51", "0.16"}, {0.08, 20, "0.85", "0.74"},
	} {
		for p, want := range map[float64]string{0.90: row.b, 0.99: row.a} {
			k, err := weld.ToleranceFactor(row.n, p, 0.95)
			if err != nil {
				t.Fatal(err)
			}
			checktest.Printed(t, fmt.Sprintf("cv %g, n %d, p %g", row.v, row.n, p), 1-k*row.v, want)
		}
	}
}

// spread returns n values like normal ones, of mean and deviation about as
// stated: they stand at the middles of n equal shares.
func spread(n int, mean, deviation float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = mean + deviation*math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/float64(n)-1)
	}
	return out
}

// skewed returns n values, most of them close together and one in six far up.
func skewed(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = (300 + 0.1*float64(i%7)) * mpa
		if i%6 == 0 {
			out[i] = (330 + float64(i)/10) * mpa
		}
	}
	return out
}

// A set that is not normal gets the lowest coupon as its limit from 29 (B) and
// 299 (A) coupons on, and nothing before: 0.9^29 = 0.0471, 0.99^299 = 0.0495.
func TestNotNormal(t *testing.T) {
	for _, row := range []struct {
		n     int
		basis string
		ok    bool
	}{{28, "B", false}, {29, "B", true}, {29, "A", false}, {298, "A", false}, {299, "A", true}} {
		s, err := weld.BasisLimit(skewed(row.n), row.basis)
		if !s.Normality.Rejected {
			t.Fatalf("%d: A²* %g", row.n, s.Normality.Modified)
		}
		if (err == nil) != row.ok {
			t.Errorf("%+v: %v", row, err)
		}
		if row.ok && (!s.Lowest || s.Limit != 300*mpa || !math.IsNaN(s.Factor)) {
			t.Errorf("%+v: %+v", row, s)
		}
		if !row.ok && !math.IsNaN(s.Limit) {
			t.Errorf("%+v: a limit %g after a rejected normality", row, s.Limit)
		}
	}
}

func TestNormalIsNotRejected(t *testing.T) {
	for _, n := range []int{5, 8, 20, 100} {
		s, err := weld.BasisLimit(spread(n, 300*mpa, 9*mpa), "B")
		if err != nil || s.Normality.Rejected || !(s.Normality.Modified < 0.3) {
			t.Errorf("%d: %+v, %v", n, s, err)
		}
	}
}

// Above the range of the factor the lowest coupon counts where there are enough.
func TestManyCoupons(t *testing.T) {
	for _, row := range []struct {
		n     int
		basis string
		ok    bool
	}{{250, "A", true}, {251, "A", false}, {299, "A", true}, {251, "B", true}} {
		x := spread(row.n, 300*mpa, 9*mpa)
		s, err := weld.BasisLimit(x, row.basis)
		if (err == nil) != row.ok || row.ok && s.Lowest != (row.n > 250) || s.Lowest && s.Limit != x[0] {
			t.Errorf("%+v: %+v, %v", row, s, err)
		}
	}
}

// Critical distances of the farthest value, worked out apart.
func TestOutlierLimits(t *testing.T) {
	for n, want := range map[int]string{3: "1.154", 4: "1.481", 5: "1.715", 6: "1.887", 8: "2.127", 10: "2.290", 15: "2.548", 20: "2.708"} {
		s, err := weld.BasisLimit(spread(n, 300*mpa, 6*mpa), "B")
		if err != nil {
			t.Fatal(n, err)
		}
		// A unit of the last digit: two of the printed ones are cut, not rounded.
		if math.Abs(s.Outlier.Limit-parse(t, want)) > 1e-3 {
			t.Errorf("n %d: %.4f, want %s", n, s.Outlier.Limit, want)
		}
	}
}

func parse(t *testing.T, s string) (v float64) {
	t.Helper()
	if _, err := fmt.Sscan(s, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// A low coupon is told and stays: the limit is that of the whole set.
func TestOutlierStays(t *testing.T) {
	low := append(slices.Clone(eight), 272*mpa)
	s, _ := weld.BasisLimit(low, "B")
	if !s.Outlier.Is || !s.Outlier.Low || s.Outlier.Index != 8 || s.N != 9 || s.Least != 272*mpa {
		t.Errorf("%+v", s)
	}
	mean := 0.0
	for _, v := range low {
		mean += v / 9
	}
	checktest.Close(t, "mean of all nine", s.Mean, mean, 1e-12)
}

func TestRefused(t *testing.T) {
	for name, row := range map[string]struct {
		values []float64
		basis  string
		words  string
	}{
		"two":           {eight[:2], "A", "at least 3"},
		"none":          {nil, "A", "at least 3"},
		"no scatter":    {[]float64{300 * mpa, 300 * mpa, 300 * mpa}, "A", "same strength"},
		"zero":          {[]float64{300 * mpa, 0, 310 * mpa}, "A", "coupon 2"},
		"not a number":  {[]float64{300 * mpa, 310 * mpa, math.NaN()}, "A", "coupon 3"},
		"infinite":      {[]float64{300 * mpa, 310 * mpa, math.Inf(1)}, "A", "coupon 3"},
		"another basis": {eight, "S", "must be A or B"},
	} {
		s, err := weld.BasisLimit(row.values, row.basis)
		if err == nil || !strings.Contains(err.Error(), row.words) || !math.IsNaN(s.Limit) {
			t.Errorf("%s: %+v, %v", name, s, err)
		}
	}
}

// k_A of three coupons is 10.55: a scatter of a tenth drives the limit below
// zero. It is told as it is, and not used.
func TestNegativeLimitIsTold(t *testing.T) {
	s, err := weld.BasisLimit([]float64{270 * mpa, 300 * mpa, 330 * mpa}, "A")
	checktest.Printed(t, "300 − 10.5527 · 30", s.Limit/mpa, "-16.6")
	if err == nil || !strings.Contains(err.Error(), "mean − 10.55 s, is not above zero: too few coupons for a scatter s of 10.0 %") {
		t.Errorf("%v", err)
	}
	if len(s.Cautions) != 1 || !strings.Contains(s.Cautions[0], "almost no power") || s.N >= weld.FewCoupons {
		t.Errorf("%q", s.Cautions)
	}
}

// Strengths times a number: limit, mean and scatter times it, all else as it was.
func TestLimitScales(t *testing.T) {
	x := make([]float64, len(eight))
	for i, v := range eight {
		x[i] = v * 7
	}
	a, err := weld.BasisLimit(eight, "A")
	b, err7 := weld.BasisLimit(x, "A")
	if err != nil || err7 != nil {
		t.Fatal(err, err7)
	}
	checktest.Close(t, "limit", b.Limit, 7*a.Limit, 1e-12)
	checktest.Close(t, "A²*", b.Normality.Modified, a.Normality.Modified, 1e-9)
}

// The order of the coupons does not count.
func TestLimitOfAnyOrder(t *testing.T) {
	a, err := weld.BasisLimit(eight, "B")
	x := slices.Clone(eight)
	slices.Sort(x)
	b, errSorted := weld.BasisLimit(x, "B")
	if err != nil || errSorted != nil {
		t.Fatal(err, errSorted)
	}
	checktest.Close(t, "limit", b.Limit, a.Limit, 1e-12)
}

// Ratios of six pairs, worked apart: mean 0.605, reduced 0.590, and the B and A
// limits of the ratios themselves 0.549 and 0.510, far below.
func TestReducedRatio(t *testing.T) {
	r := []float64{0.60, 0.62, 0.58, 0.61, 0.63, 0.59}
	parent := []float64{300, 310, 305, 298, 302, 299}
	welded := make([]float64, 6)
	for i := range r {
		welded[i] = r[i] * parent[i]
	}
	reduced, err := weld.ReducedRatio(welded, parent)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "reduced", reduced, "0.590")
	b, errB := weld.BasisLimit(r, "B")
	a, errA := weld.BasisLimit(r, "A")
	if errA != nil || errB != nil {
		t.Fatal(errA, errB)
	}
	checktest.Printed(t, "mean ratio", b.Mean, "0.605")
	checktest.Printed(t, "B of the ratios", b.Limit, "0.549")
	checktest.Printed(t, "A of the ratios", a.Limit, "0.510")
	if _, err := weld.ReducedRatio(welded[:2], parent[:2]); err == nil {
		t.Error("two pairs made a ratio")
	}
	if _, err := weld.ReducedRatio(welded, parent[:5]); err == nil {
		t.Error("sets of unequal size made pairs")
	}
}

func TestLimitRatioIsCapped(t *testing.T) {
	if got := weld.LimitRatio(330*mpa, 290*mpa); got != 1 {
		t.Error(got)
	}
	checktest.Close(t, "275.1/290", weld.LimitRatio(275.1*mpa, 290*mpa), 0.94862, 1e-5)
}

// With coupons the examination alone sets the factor, in every rule, and the
// limits of use of the kind stand.
func TestInspection(t *testing.T) {
	girth := weld.Place{Category: "B", Thickness: 0.006, OutsideDiameter: 0.4}
	long := weld.Place{Category: "A", Longitudinal: true, Thickness: 0.006, OutsideDiameter: 0.4}
	for _, rule := range []string{"vessel", "vessel-eu", "flight"} {
		for exam, want := range map[string]float64{"full": 1, "spot": 0.85, "none": 0.70, "": 0.70} {
			for _, kind := range []string{weld.DoubleButt, weld.BackedButt} {
				e, source, err := weld.Joint{Kind: kind, Examination: exam, Coupons: true}.EfficiencyAt(rule, long)
				if err != nil || e != want || source.How.String() != "practice" {
					t.Errorf("%s, %s, %q: %g, %v, %v", rule, kind, exam, e, source, err)
				}
			}
		}
	}
	one := weld.Joint{Kind: weld.SingleButt, Examination: "full", Coupons: true}
	if e, _, err := one.EfficiencyAt("vessel", girth); err != nil || e != 1 {
		t.Errorf("one-sided girth: %g, %v", e, err)
	}
	if e, _, err := one.EfficiencyAt("vessel", long); err == nil || !math.IsNaN(e) {
		t.Errorf("one-sided long seam: %g, %v", e, err)
	}
	twice := weld.Joint{Kind: weld.DoubleButt, Coupons: true, Efficiency: 0.9, EfficiencySource: "letter"}
	if e, _, err := twice.EfficiencyAt("vessel", long); err == nil || !math.IsNaN(e) {
		t.Errorf("efficiency and coupons: %g, %v", e, err)
	}
}

// At a corner of more than 30 degrees the kind counts where it is worth less
// than the inspection factor: a one-sided girth 0.60, on flat coupons 0.85.
func TestCouponsAtACorner(t *testing.T) {
	girth := weld.Place{Category: "B", Thickness: 0.006, OutsideDiameter: 0.4}
	for _, row := range []struct {
		kind     string
		α, e     float64
		examined string
	}{
		{weld.SingleButt, 30 * math.Pi / 180, 0.85, "spot"}, {weld.SingleButt, 31 * math.Pi / 180, 0.60, "spot"},
		{weld.DoubleButt, 45 * math.Pi / 180, 0.85, "spot"}, {weld.BackedButt, 45 * math.Pi / 180, 0.90, "full"}, {weld.SingleButt, math.NaN(), 0.60, "full"},
	} {
		e, _, err := weld.Joint{Kind: row.kind, Examination: row.examined, Coupons: true}.AtCone(row.α).EfficiencyAt("vessel", girth)
		if err != nil || e != row.e {
			t.Errorf("%+v: %g, %v", row, e, err)
		}
	}
}

func ExampleBasisLimit() {
	s, err := weld.BasisLimit([]float64{305e6, 311e6, 298e6, 322e6, 309e6, 301e6, 315e6, 307e6}, weld.BasisA)
	fmt.Printf("mean %.1f MPa, s %.2f MPa, k %.3f: %.1f MPa %v\n", s.Mean/1e6, s.Deviation/1e6, s.Factor, s.Limit/1e6, err)
	// Output: mean 308.5 MPa, s 7.67 MPa, k 4.354: 275.1 MPa <nil>
}
