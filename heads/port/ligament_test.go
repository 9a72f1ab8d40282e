package port_test

// PO-13 to PO-15: Indian Boiler Regulations, regulation 215 (a) and (b), figures 11
// and 12 (read). PO-21: sphere with a small hole (read); PO-22: Jawad and Farr,
// example 11.2 (read). PO-31: spacing of a 200 and a 100 mm hole, lines of ASME
// VIII-1 UG-36 as summarised by a head maker (read).

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

func TestLigaments(t *testing.T) {
	for _, row := range []struct {
		id   string
		p, d float64
		n    int
		want string
	}{{"PO-13", 5.25, 3 + 9.0/32, 1, "0.375"}, {"PO-14", 12, 3.281, 2, "0.453"}, {"PO-15", 29.25, 3.281, 5, "0.439"}} {
		e, err := port.LigamentEfficiency(row.p, row.d, row.n)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.id, e, row.want)
	}
	for _, bad := range [][2]float64{{1, 1}, {1, 0}, {1, -1}, {1, math.NaN()}} {
		if e, err := port.LigamentEfficiency(bad[0], bad[1], 1); err == nil || !math.IsNaN(e) {
			t.Errorf("p %g, d %g: %g, %v", bad[0], bad[1], e, err)
		}
	}
	if e, err := port.LigamentEfficiency(1, 0.1, 0); err == nil || !math.IsNaN(e) {
		t.Errorf("no holes: %g, %v", e, err)
	}
}

// The diagonal with its shear: 0.500, 0.522, 0.568, 0.673, 1.000 at 0 to 90 degrees
// for d/p′ = 0.5; the normal-stress form alone would say 0.667 at 45.
func TestDiagonalLigaments(t *testing.T) {
	for θ, want := range map[float64]string{0: "0.500", 30: "0.522", 45: "0.568", 60: "0.673", 90: "1.000"} {
		e, err := port.DiagonalEfficiency(0.5, θ*deg)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "diagonal", e, want)
		if back, _ := port.DiagonalEfficiency(0.5, math.Pi-θ*deg); math.Abs(back-e) > 1e-12 {
			t.Errorf("θ %g: mirrored %g, want %g", θ, back, e)
		}
	}
	for _, share := range []float64{0.3, 0.7} {
		along, _ := port.DiagonalEfficiency(share, 0)
		round, _ := port.DiagonalEfficiency(share, math.Pi/2)
		checktest.Close(t, "along", along, 1-share, 1e-12)
		checktest.Close(t, "round", round, math.Min(1, 2*(1-share)), 1e-12)
	}
	for _, bad := range [][2]float64{{0, 0}, {1, 0}, {0.5, -0.1}, {0.5, 3.2}, {math.NaN(), 0}, {0.5, math.NaN()}} {
		if e, err := port.DiagonalEfficiency(bad[0], bad[1]); err == nil || !math.IsNaN(e) {
			t.Errorf("%v: %g, %v", bad, e, err)
		}
	}
}

func TestOpenHoleStress(t *testing.T) {
	for _, row := range []struct {
		where   string
		h, m, k float64
		want    string
	}{
		{"PO-21, sphere", 1, 1, 1, "2"}, {"PO-22, s2 = −0.5 s1", 1, -0.5, 1, "3.5"}, {"PO-22, s2 = +0.5 s1", 1, 0.5, 1, "2.5"},
		{"cone 60 deg", 1, 0.5, 1 / math.Sin(60*deg), "2.81"}, {"cone 45 deg", 1, 0.5, 1 / math.Sin(45*deg), "3.33"}, {"cone 30 deg", 1, 0.5, 2, "4.50"},
		{"dome 30 deg", 1, 1, 1 / math.Cos(30*deg), "2.31"}, {"dome 45 deg", 1, 1, math.Sqrt2, "2.83"}, {"dome 60 deg", 1, 1, 2, "4.00"},
	} {
		σ, err := port.OpenHoleStress(row.h, row.m, row.k)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.where, σ, row.want)
	}
	// Turned by a right angle the hole is as long across: the same stress.
	a, _ := port.OpenHoleStress(70, 40, 1.6)
	b, _ := port.OpenHoleStress(40, 70, 1/1.6)
	checktest.Close(t, "turned", a, b, 1e-12)
	for _, bad := range [][3]float64{{1, 1, 0}, {math.NaN(), 1, 1}, {1, 1, math.NaN()}} {
		if σ, err := port.OpenHoleStress(bad[0], bad[1], bad[2]); err == nil || !math.IsNaN(σ) {
			t.Errorf("%v: %g, %v", bad, σ, err)
		}
	}
}

func TestExemptDistance(t *testing.T) {
	for _, row := range []struct {
		where   string
		s       port.Surface
		several bool
		θ       float64
		want    string
	}{{"two", port.Cylinder, false, 0, "300"}, {"axial", port.Cylinder, true, 0, "750"}, {"girth", port.Cylinder, true, math.Pi / 2, "300"}, {"dome", port.Sphere, true, 0, "750"}} {
		d, err := port.ExemptDistance(row.s, row.several, 200, 100, row.θ)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.where, d, row.want)
	}
	if d, err := port.ExemptDistance(port.Sphere, true, math.NaN(), 1, 0); err == nil || !math.IsNaN(d) {
		t.Errorf("NaN: %g, %v", d, err)
	}
}
