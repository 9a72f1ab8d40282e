package life_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// Folias in two open texts, read: with z = L²/(D t), L = 2c, √(1 + 0.6275 z − 0.003375 z²) up to 50, then 0.032 z + 3.3; with c²/(R t) 1.255, 0.0135
// and 25. Both are one; at the switch 4.893 and 4.900.
func TestFoliasForms(t *testing.T) {
	for x := 0.0; x <= 60; x += 0.5 {
		z := 2 * x
		other := math.Sqrt(1 + 0.6275*z - 0.003375*z*z)
		if z > 50 {
			other = 0.032*z + 3.3
		}
		checktest.Close(t, "both forms", value(t)(life.Folias(x)), other, 1e-14)
	}
	checktest.Printed(t, "below the switch", value(t)(life.Folias(25)), "4.893")
	checktest.Printed(t, "above", value(t)(life.Folias(math.Nextafter(25, 26))), "4.900")
}

// Two bad copies are about. One text's branch of large x is 0.064 √x, without the square and the 3.3: it falls to 0.32 at the switch,
// below a flat plate. Another has √(1 + 0.4 z) for all, 10 % below at the switch.
func TestFoliasBadCopies(t *testing.T) {
	m := value(t)(life.Folias(26))
	if bad := 0.064 * math.Sqrt(26); !(bad < 1 && m > 1) {
		t.Errorf("0.064 √x gives %g against %g", bad, m)
	}
	if bad := math.Sqrt(1 + 0.4*50.0); math.Abs(bad/value(t)(life.Folias(25))-1) < 0.05 {
		t.Errorf("√(1 + 0.4 z) gives %g", bad)
	}
}

// A tank of R 150 mm, t 3 mm, 3.0 MPa, σ_h 150 MPa, worked apart from this package: half length at which a crack runs, with bulging and as a flat plate.
func TestReferenceThroughCrack(t *testing.T) {
	for _, row := range []struct {
		K          float64
		bent, flat string // mm
	}{{29, "9.51", "11.90"}, {36, "12.68", "18.33"}, {27, "8.56", "10.31"}} {
		checktest.Printed(t, "bulging", 1e3*value(t)(life.CriticalHalfLength(0.150, 3e-3, 150*MPa, row.K*MPa)), row.bent)
		checktest.Printed(t, "flat", 1e3*value(t)(life.CriticalHalfLength(1e7, 3e-3, 150*MPa, row.K*MPa)), row.flat)
	}
	at := func(c float64) float64 {
		return value(t)(life.ThroughCrack{HalfLength: c, Radius: 0.150, Thickness: 3e-3}.Intensity(150*MPa)) / MPa
	}
	checktest.Printed(t, "K(c = t)", at(3e-3), "14.7")
	checktest.Printed(t, "K(2c = 10 t)", at(15e-3), "41.5")
}

func TestFoliasEdges(t *testing.T) {
	for _, x := range []float64{-1e-9, 400.1, math.NaN()} {
		v, err := life.Folias(x)
		refused(t, "folias", v, err)
		v, err = life.FoliasUpper(x)
		refused(t, "upper form", v, err)
	}
	for x := 0.0; x <= 200; x += 1 {
		if a, b := value(t)(life.Folias(x)), value(t)(life.FoliasUpper(x)); a > b*(1+1e-12) {
			t.Errorf("x %g: upper form %g is below %g", x, b, a)
		}
	}
	for name, c := range map[string]life.ThroughCrack{
		"thick": {1e-3, 4.9e-3, 1e-3}, "no wall": {1e-3, 1, 0}, "length missing": {math.NaN(), 1, 1e-3}, "too long": {0.64, 1, 1e-3},
	} {
		v, err := c.Intensity(1)
		refused(t, name, v, err)
	}
	v, err := life.ThroughCrack{1e-3, 1, 1e-3}.Intensity(-1)
	refused(t, "compression", v, err)
	v, err = life.CriticalHalfLength(1, 1e-3, 1, 1e9)
	refused(t, "no crack runs", v, err)
	v, err = life.CriticalHalfLength(1, 1e-3, math.NaN(), 1e9)
	refused(t, "stress", v, err)
	a := value(t)(life.CriticalHalfLength(0.15, 3e-3, 150, 29))
	checktest.Close(t, "change of units", value(t)(life.CriticalHalfLength(7*0.15, 7*3e-3, 150*3.0/49, 29*3*math.Sqrt(7)/49)), 7*a, 1e-12)
}

func TestFlowStress(t *testing.T) {
	for _, row := range []struct {
		yield, ultimate float64
		want            string
	}{{100, 120, "110"}, {100, 200, "115"}} { // by hand
		checktest.Printed(t, "flow", value(t)(life.FlowStress(row.yield*MPa, row.ultimate*MPa))/MPa, row.want)
	}
	for _, bad := range [][2]float64{{100, 99}, {0, 100}, {math.NaN(), 100}, {100, math.NaN()}} {
		v, err := life.FlowStress(bad[0], bad[1])
		refused(t, "strength", v, err)
	}
}

// M σ of a crack 10 t long, by hand: R/t 25 has x = 1, √2.61 = 1.6155; R/t 100 x = 0.25, √1.4025 = 1.1843. 46 MPa at the tighter radius ask more than
// 60 at the wider one. Beyond x = 400 M stays 0.064 × 400 + 3.3 = 28.9.
func TestBulged(t *testing.T) {
	checktest.Printed(t, "tight", life.Bulged(46*MPa, 0.075, 3e-3)/MPa, "74.3")
	checktest.Printed(t, "wide", life.Bulged(60*MPa, 0.3, 3e-3)/MPa, "71.1")
	checktest.Printed(t, "at an apex", life.Bulged(1*MPa, 0, 3e-3)/MPa, "28.9")
	if v := life.Bulged(math.NaN(), 0.3, 3e-3); !math.IsNaN(v) {
		t.Errorf("no stress: %g", v)
	}
	if v := life.Bulged(1*MPa, math.NaN(), 3e-3); !math.IsNaN(v) {
		t.Errorf("no radius: %g", v)
	}
}
