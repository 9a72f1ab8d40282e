package assess_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
)

// The demonstration tank on the pad has 400 mm of bore: by hand
// (computed), deep liquid swings at √(ξ g0/R)/(2 π), and at 5.5 g0 √5.5 times that;
// a dry tank has no mode.
func TestSloshFrequencyOfTheDemo(t *testing.T) {
	q := map[string]float64{}
	for _, n := range sheet(t, read(t, "demo")).Quantities {
		q[n.Key] = n.Value
	}
	deep := math.Sqrt(1.8412*9.80665/0.2) / (2 * math.Pi)
	checktest.Close(t, "pad", q["slosh.frequency@pad"], deep, 1e-3)
	if f := q["slosh.frequency@burnout"]; !(f < math.Sqrt(5.5)*deep && f > 0.9*math.Sqrt(5.5)*deep) {
		t.Errorf("burnout %g Hz, deep liquid %g Hz", f, math.Sqrt(5.5)*deep)
	}
	for _, n := range sheet(t, read(t, "flight")).Quantities {
		if n.Key == "slosh.frequency@road" && (!math.IsNaN(n.Value) || n.Note == "") {
			t.Errorf("dry tank: %g Hz, %q", n.Value, n.Note)
		}
	}
}
