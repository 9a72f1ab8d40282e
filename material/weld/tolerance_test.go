package weld_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/material/weld"
	"proofsheet/report/check/checktest"
)

// One-sided lower tolerance factors, 95 % confidence, 90 % (B) and 99 % (A).
// Where a table of such factors was read (B for n = 3 to 8, 10, 15, 20, 30 and 50,
// A for n = 3 to 8, 10, 15, 20 and 30) the computed values agree to its rounding;
// A at 50 and B at 100, and both at n = 2, stand on the quadrature below alone.
func TestToleranceFactors(t *testing.T) {
	for _, row := range []struct {
		n    int
		b, a string
	}{
		{2, "20.581", "37.094"},
		{3, "6.1553", "10.5527"}, {4, "4.1619", "7.0424"}, {5, "3.4066", "5.7411"}, {6, "3.0063", "5.0620"},
		{7, "2.7554", "4.6417"}, {8, "2.5819", "4.3539"}, {10, "2.3546", "3.9811"}, {15, "2.0684", "3.5201"},
		{20, "1.9260", "3.2952"}, {30, "1.7773", "3.0639"}, {50, "1.6456", "2.8624"}, {100, "1.5267", "2.6840"},
	} {
		for basis, c := range map[string]struct {
			p    float64
			want string
		}{"B": {0.90, row.b}, "A": {0.99, row.a}} {
			k, err := weld.ToleranceFactor(row.n, c.p, 0.95)
			if err != nil {
				t.Fatal(err)
			}
			checktest.Printed(t, fmt.Sprintf("k_%s(%d)", basis, row.n), k, c.want)
		}
	}
}

// Published factors as they were read, to their own digits.
func TestToleranceFactorsRead(t *testing.T) {
	for p, rows := range map[float64]map[int]string{
		0.90: {3: "6.155", 4: "4.162", 5: "3.407", 6: "3.006", 7: "2.755", 8: "2.582", 9: "2.454", 10: "2.355", 15: "2.068", 20: "1.926", 30: "1.777", 50: "1.646"},
		0.99: {3: "10.553", 4: "7.042", 5: "5.741", 6: "5.062", 7: "4.642", 8: "4.354", 9: "4.143", 10: "3.981", 15: "3.520", 20: "3.295", 30: "3.064"},
	} {
		for n, want := range rows {
			k, err := weld.ToleranceFactor(n, p, 0.95)
			if err != nil {
				t.Fatal(err)
			}
			checktest.Printed(t, fmt.Sprintf("p %g, n %d", p, n), k, want)
		}
	}
}

// NIST/SEMATECH e-Handbook 7.2.6.3, example n = 43, p 0.90, confidence 0.99. Its
// 1.8752 comes from an approximation; the exact value is 1.8740.
func TestToleranceFactorOfHandbook(t *testing.T) {
	k, err := weld.ToleranceFactor(43, 0.90, 0.99)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "exact, computed apart", k, "1.8740")
	checktest.Close(t, "the handbook's approximation", k, 1.8752, 1e-3)
}

// confidenceOf is the second opinion: the probability that mean − k s lies below
// the quantile, by integration over the distribution of s,
//
//	P(k) = ∫ Φ(√n (k √(u/(n−1)) − z_p)) f_χ²(u; n−1) du
//
// with u = v², as the density is singular at 0 for n = 2.
func confidenceOf(k float64, n int, p float64) float64 {
	ν := float64(n - 1)
	χ := distuv.ChiSquared{K: ν}
	z := distuv.UnitNormal.Quantile(p)
	root := math.Sqrt(float64(n))
	least, most := math.Sqrt(χ.Quantile(1e-13)), math.Sqrt(χ.Quantile(1-1e-13))
	f := func(v float64) float64 {
		return distuv.UnitNormal.CDF(root*(k*v/math.Sqrt(ν)-z)) * χ.Prob(v*v) * 2 * v
	}
	return quad.Fixed(f, least, most, 400, quad.Legendre{}, 0)
}

func TestToleranceFactorByQuadrature(t *testing.T) {
	sizes := []int{150, 200, 249, 250}
	for n := 2; n <= 100; n++ {
		sizes = append(sizes, n)
	}
	for _, n := range sizes {
		for _, p := range []float64{0.90, 0.99} {
			for _, γ := range []float64{0.95, 0.99} {
				k, err := weld.ToleranceFactor(n, p, γ)
				if err != nil {
					t.Fatal(err)
				}
				checktest.Close(t, fmt.Sprintf("n %d, p %g, confidence", n, p), confidenceOf(k, n, p), γ, 1e-7)
			}
		}
	}
}

// More coupons, less penalty; with very many the factor tends to the normal
// quantile.
func TestToleranceFactorFalls(t *testing.T) {
	last := math.Inf(1)
	for n := 2; n <= 250; n++ {
		k, err := weld.ToleranceFactor(n, 0.99, 0.95)
		if err != nil || !(k < last) || k < 2.326 {
			t.Fatalf("n %d: %g after %g (%v)", n, k, last, err)
		}
		last = k
	}
}

func TestToleranceFactorRange(t *testing.T) {
	for _, row := range []struct {
		n    int
		p, γ float64
		ok   bool
	}{
		{2, 0.9, 0.95, true}, {250, 0.99, 0.999, true}, {1, 0.9, 0.95, false}, {251, 0.9, 0.95, false}, {0, 0.9, 0.95, false}, {-3, 0.9, 0.95, false},
		{8, 0.5, 0.95, true}, {8, 0.49, 0.95, false}, {8, 0.991, 0.95, false}, {8, math.NaN(), 0.95, false}, {8, 0.9, math.NaN(), false}, {8, 0.9, 1, false},
	} {
		k, err := weld.ToleranceFactor(row.n, row.p, row.γ)
		if (err == nil) != row.ok || (err != nil) != math.IsNaN(k) {
			t.Errorf("%+v: %g, %v", row, k, err)
		}
	}
}
