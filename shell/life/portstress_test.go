package life_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// A small hole: 2 in a sphere (exercise, read); Jawad and Farr, Ex. 11.2, read: σ2 = −0.5 σ1 gives 3.5 σ1, and +0.5, a cylinder, 2.5.
func TestHoleStress(t *testing.T) {
	for _, row := range []struct {
		s1, s2 float64
		want   string
	}{{1, 1, "2.0"}, {1, -0.5, "3.5"}, {1, 0.5, "2.5"}, {0.5, 1, "2.5"}, {-1, -0.5, "-2.5"}} {
		checktest.Printed(t, "hole", life.HoleStress(row.s1, row.s2), row.want)
	}
	if v := life.HoleStress(math.NaN(), 1); !math.IsNaN(v) {
		t.Errorf("a missing stress gives %g", v)
	}
}

// ASME III NB-3338.2, indices recalled: 3.3 and 2.2 square to the wall; at 30 deg 1.5 of it, and at 45 deg 2, by hand.
func TestPortIndex(t *testing.T) {
	at := func(domed bool, deg float64) float64 {
		return value(t)(life.PortIndex(domed, 0.02, 0.3, 0.005, deg*math.Pi/180))
	}
	checktest.Printed(t, "cylinder", at(false, 0), "3.3")
	checktest.Printed(t, "dome", at(true, 0), "2.2")
	checktest.Printed(t, "30 deg", at(false, 30)/at(false, 0), "1.5")
	checktest.Printed(t, "45 deg", at(false, 45)/at(false, 0), "2.0")
	if a, b := at(false, 0), value(t)(life.PortIndex(false, 0.14, 2.1, 0.035, 0)); a != b {
		t.Errorf("change of units: %g, %g", a, b)
	}
	for name, row := range map[string][4]float64{
		"wide": {0.1, 0.3, 0.005, 0}, "wide for its wall": {0.031, 0.3, 0.0045, 0}, "thin wall": {0.01, 0.3, 0.0029, 0},
		"thick wall": {0.01, 0.3, 0.031, 0}, "inclined": {0.01, 0.3, 0.005, 0.8}, "bore missing": {math.NaN(), 0.3, 0.005, 0}, "no bore": {0, 0.3, 0.005, 0},
		"angle missing": {0.01, 0.3, 0.005, math.NaN()},
	} {
		v, err := life.PortIndex(false, row[0], row[1], row[2], row[3])
		refused(t, name, v, err)
	}
}
