package proof_test

import (
	"math"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check/checktest"
)

// Reference tank A at 4.5 MPa, worked apart from this package: 0.5 % of the setting is 22.5 kPa or 3 ml, 1 ml is 7.6 kPa; the growth of 428.65 ml between reference
// pressure and setting, 0.95 of it, of which 2 and 10 % are 8.14 and 40.7 ml; 0.5 % air 388.8 ml; the drift at four temperatures.
func TestLimitsOfTankA(t *testing.T) {
	p := &proof.Plan{Setting: referencePressure, Overshoot: 0.045e6, GaugeUncertainty: 0}
	l, err := p.Limits(tankA.full(t, 20, 0))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "most, MPa", l.MostShown/1e6, "4.545")
	checktest.Printed(t, "fall, kPa", l.Fall/1e3, "22.5")
	checktest.Printed(t, "lost, ml", l.Lost*1e6, "3")
	checktest.Printed(t, "1 ml, kPa", l.LeakFall*1e-6/1e3, "7.6")
	checktest.Printed(t, "air, ml", l.Air*1e6, "388.8")
	// By hand: 294.615 ml at half the setting, 0.9 of it, and 1.1 of it with 388.77 ml · 2.25/2.351325.
	checktest.Printed(t, "least at half, ml", l.HalfLeast*1e6, "265.2")
	checktest.Printed(t, "most at half, ml", l.HalfMost*1e6, "696.1")
	checktest.Printed(t, "air again", l.AirAgain, "0.00723")
	// √(11.25² − 4.5²) kPa over 80.8 kPa/K.
	checktest.Printed(t, "warmth, K", l.Warmth, "0.128")
	checktest.Printed(t, "assumed, K", l.Assumed, "0.2")
	checktest.Printed(t, "passes, ml", l.SetPass*1e6, "8.14")
	checktest.Printed(t, "rejected, ml", l.SetReject*1e6, "40.7")
	for i, celsius := range []float64{5, 10, 20, 30} {
		checktest.Printed(t, "drift at 45 bar", value(t)(p.AtTemperature(tankA.full(t, 20, 0), celsius+273.15))/1e3, []string{"-23.9", "16.5", "84.7", "141.1"}[i])
	}
}

func TestLimitsUnknown(t *testing.T) {
	p := &proof.Plan{Setting: referencePressure, Overshoot: 0.045e6}
	f := tankA.full(t, 20, 0)
	f.Growth = math.NaN()
	if l, err := p.Limits(f); err == nil || !math.IsNaN(l.Stiffness+l.SetPass) || !math.IsNaN(l.Warmth) || l.MostShown != 4.545e6 {
		t.Errorf("%+v, %v", l, err)
	}
	if d, err := p.AtTemperature(tankA.full(t, 20, 0), 273); err == nil || !math.IsNaN(d) {
		t.Errorf("ice: %g", d)
	}
}
