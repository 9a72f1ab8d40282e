package edge_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/edge"
)

// Hi-lo of equal walls at a girth seam, R/t 100, worse and better face: finite element 0.303/0.297, 0.759/0.741,
// 1.518/1.481 (computed); the form gives their mean. Unequal walls 2:1 flush on one face: 0.78, by the form of BS 7910 Annex D (recalled).
func TestHiLo(t *testing.T) {
	for _, row := range []struct{ e, hi, lo float64 }{{0.1, 0.303, 0.297}, {0.25, 0.759, 0.741}, {0.5, 1.518, 1.481}} {
		got, err := edge.HiLo(1, 1, row.e)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "hi-lo", got, (row.hi+row.lo)/2, 1e-3)
		girth, err := edge.GirthHiLo(step(1, row.e), edge.Gas(0.01, 100))
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "girth", girth, got, 1e-9)
	}
	got, _ := edge.HiLo(2, 1, 0.5)
	checktest.Printed(t, "2:1 flush", got, "0.78")
	long, err := edge.LongHiLo(2, 1, 0.5, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "long seam", long, got/0.91, 1e-12)
	for _, bad := range [][4]float64{{1, 1, 1.01, 0.3}, {0, 1, 0, 0.3}, {1, math.NaN(), 0.1, 0.3}, {1, 1, math.NaN(), 0.3}, {1, 1, 0.1, 0.6}} {
		if _, err := edge.LongHiLo(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("%v is taken", bad)
		}
	}
}

// Girth seam 2:1 flush on one face, R/t 100: finite element 1.19 of the axial stress on the worse side; plate and step
// together 1.22 (computed). The joint alone is 1.20.
func TestGirthHiLo(t *testing.T) {
	got, err := edge.GirthHiLo(step(2, 0.5), edge.Gas(0.01, 100))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "step and hi-lo", got, "1.22")
	turned := edge.Step{Radius: 100, First: thick(2), Second: unit, Offset: -0.5, FirstFree: inf, SecondFree: inf}
	again, err := edge.GirthHiLo(turned, edge.Gas(0.01, 100))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "turned round", again, got, 1e-9)
	j, _ := step(2, -0.5).Solve(edge.Gas(0.01, 100))
	checktest.Close(t, "joint", (j.PeakShell()-0.5)/0.5, 1.19, 0.015) // 1.203: on the safe side
	if _, err := edge.GirthHiLo(step(2, 0.5), edge.Load{Pressure: 0.01}); err == nil {
		t.Error("a seam without axial stress has a ratio")
	}
	if _, err := edge.GirthHiLo(step(1, 1.01), edge.Gas(0.01, 100)); err == nil {
		t.Error("an offset beyond the wall is taken")
	}
}

// Peaking: with no stress 6 d/t pinned, over 1 − ν²; with much stress the straight part carries it on half its height: both ends
// tend to (6 d/t)/k. By hand: d = t/2, l = 10 t, σ/E = 0.001, ν = 0.3: k = 20 sqrt(3 × 0.91 × 0.001) = 1.044988, tanh k = 0.779789,
// 3 × 0.746218/0.91 = 2.460.
func TestPeaking(t *testing.T) {
	got, err := edge.Peaking(0.5, 10, 1, 0.001, 1, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "by hand", got, "2.460")
	got, _ = edge.Peaking(0.5, 10, 1, 0, 1, 0)
	checktest.Close(t, "no stress", got, 3, 1e-12)
	a, _ := edge.Peaking(0.5, 1000, 1, 0.01, 1, 0.3)
	k := 2000 * math.Sqrt(3*0.91*0.01)
	checktest.Close(t, "much stress", a, 3/k/0.91, 1e-9)
	b, _ := edge.Peaking(3.5, 7000, 7, 0.03, 3, 0.3)
	checktest.Close(t, "units", b, a, 1e-12)
	// Kinked strip with pinned ends under compression N, by hand: M = N d tan(k)/k, k = l sqrt(N/D) = 0.3305.
	c, err := edge.Peaking(0.5, 10, 1, -0.0001, 1, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "compressed, by hand", c, "3.4222")
	if _, err := edge.Peaking(0.5, 10, 1, -0.00057, 1, 0.3); err == nil { // k = 0.789, over π/4
		t.Error("a strip near its buckling is taken")
	}
	for _, bad := range [][4]float64{{4, 10, 1, 0}, {0.5, 0, 1, 0}, {0.5, 10, 0, 0}, {0.5, 10, 1, -1}, {math.NaN(), 10, 1, 0}, {0.5, 10, 1, math.NaN()}} {
		if _, err := edge.Peaking(bad[0], bad[1], bad[2], bad[3], 1, 0.3); err == nil {
			t.Errorf("%v is taken", bad)
		}
	}
}

// Out of roundness of 1 %, D = 300, t = 1.5 mm: the linear factor is 3.0 (computed); at p/E of the ring's buckling pressure,
// 2 (t/D)³/(1 − ν²), rounding halves it.
func TestOutOfRound(t *testing.T) {
	got, err := edge.OutOfRound(3, 300, 1.5, 0, 1, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "linear", got, "3.0")
	half, _ := edge.OutOfRound(3, 300, 1.5, 2/(0.91*200*200*200), 1, 0.3)
	checktest.Close(t, "at p_cr", half, 1.5, 1e-12)
	for _, bad := range [][4]float64{{16, 300, 1.5, 0}, {-1, 300, 1.5, 0}, {3, 300, 16, 0}, {3, 300, 1.5, -1}, {math.NaN(), 300, 1.5, 0}, {3, 300, 1.5, math.NaN()}} {
		if _, err := edge.OutOfRound(bad[0], bad[1], bad[2], bad[3], 1, 0.3); err == nil {
			t.Errorf("%v is taken", bad)
		}
	}
}
