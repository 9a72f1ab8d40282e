package proof_test

import (
	"math"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check/checktest"
)

// Numbers of the reference tank A that were worked apart from this package.
func TestRecordReference(t *testing.T) {
	f := tankA.full(t, 20, 0)
	C := f.Growth + f.Compressibility*f.Volume
	var high []float64
	for _, share := range []float64{0.5, 0.6, 0.7, 0.8, 0.9, 1} {
		high = append(high, share*referencePressure)
	}
	volumes := func(air float64, ps []float64) (vs []float64) {
		for _, p := range ps {
			vs = append(vs, C*p+air*p/(p+proof.Atmosphere))
		}
		return vs
	}
	// A straight line through the steps: its intercept and the slope too much.
	l := proof.FitLine(high, volumes(200e-6, high), referencePressure, 1e-6)
	checktest.Printed(t, "intercept over the air", l.Zero/200e-6, "0.94")
	checktest.Printed(t, "slope too high, 200 ml, %", 100*(l.Slope/C-1), "1.4")
	l = proof.FitLine(high, volumes(0.005*f.Volume, high), referencePressure, 1e-6)
	checktest.Printed(t, "slope too high, 0.5 %, %", 100*(l.Slope/C-1), "2.7")
	if !math.IsNaN(l.Air) || l.AirFitted {
		t.Errorf("air of %g from a straight line", l.Air)
	}
	// With the start of the line the air is found and the slope is right.
	all := append([]float64{0.05 * referencePressure, 0.1 * referencePressure}, high...)
	l = proof.FitLine(all, volumes(200e-6, all), referencePressure, 1e-6)
	checktest.Close(t, "C", l.Slope, C, 1e-9)
	checktest.Close(t, "air", l.Air, 200e-6, 1e-9)
	// A decay of 0.5 % is 22.5 kPa and 3 ml.
	_, _, got := answer(t, recordTest(t), handLog{fall: 22.5e3}.log(t), decayQ)
	checktest.Printed(t, "allowed, kPa", got.Decay.Allowed/1e3, "22.5")
	checktest.Printed(t, "leak, ml", got.Decay.Leak*1e6, "3")
	// U by hand: D 84.7 kPa/K, β V/C 126.8 kPa/K, u_dT 0.02 K, dT 0.1 K, u_dp 4.5 kPa:
	// 2 √(1.694² + (0.1 √(8.47² + 6.34²))² + 4.5²) = 9.85 kPa.
	log := handLog{fall: -8.47e3, warm: 0.1}.log(t)
	log.PressureChange, log.TemperatureChange = 0, 0.02
	for i := range log.Rows {
		log.Rows[i].Temperature -= 0.05 // 20 °C on the mean
	}
	_, _, got = answer(t, recordTest(t), log, decayQ)
	checktest.Printed(t, "D, kPa/K", got.Decay.Drift/1e3, "84.7")
	checktest.Printed(t, "U, kPa", got.Decay.Uncertainty/1e3, "9.85")
}

// 49 CFR 180.205 rejects over 10 % of the total expansion, that of the wall.
// Of the 589 ml injected into tank A, water takes 160; 10 % of all of it would
// be 13.7 % of the wall's 429 ml, and is rejected.
func TestPermanentSetIsOfTheWall(t *testing.T) {
	checktest.Printed(t, "share of the wall, %", 100*0.1*589.23/428.65, "13.7")
	got, _, _ := answer(t, recordTest(t), handLog{left: 0.1 * 589e-6 * 0.95}.log(t), setQ)
	if got != proof.Failed {
		t.Errorf("%v", got)
	}
}

// Fitted numbers follow the units: with pressures times 3 and volumes times 7, a slope
// changes by 7/3.
func TestFitLineScales(t *testing.T) {
	ps, vs := []float64{2e6, 3e6, 4e6, 5e6}, []float64{201e-6, 299e-6, 402e-6, 498e-6}
	a := proof.FitLine(ps, vs, 5e6, 1e-6)
	for i := range ps {
		ps[i], vs[i] = 3*ps[i], 7*vs[i]
	}
	b := proof.FitLine(ps, vs, 15e6, 7e-6)
	checktest.Close(t, "slope", b.Slope, a.Slope*7/3, 1e-9)
	checktest.Close(t, "its uncertainty", b.SlopeU, a.SlopeU*7/3, 1e-9)
	checktest.Close(t, "zero", b.Zero, 7*a.Zero, 1e-6)
	checktest.Close(t, "scatter", b.Scatter, 7*a.Scatter, 1e-6)
	if l := proof.FitLine(ps[:1], vs[:1], 15e6, 1e-6); !math.IsNaN(l.Slope) {
		t.Errorf("slope %g of one reading", l.Slope)
	}
	if l := proof.FitLine([]float64{12e6, 12e6}, vs[:2], 15e6, 1e-6); !math.IsNaN(l.Slope) {
		t.Errorf("slope %g at one pressure", l.Slope)
	}
}

// What is no log is an error, and nothing in a log is ever a panic or a pass
// that another reading takes back.
func TestJudgeRefuses(t *testing.T) {
	for name, change := range map[string]func(*proof.Log){
		"no rows":              func(l *proof.Log) { l.Rows = nil },
		"a time again":         func(l *proof.Log) { l.Rows[3].Time = l.Rows[2].Time },
		"a time missing":       func(l *proof.Log) { l.Rows[3].Time = math.NaN() },
		"a pressure missing":   func(l *proof.Log) { l.Rows[3].Pressure = math.NaN() },
		"a strain missing":     func(l *proof.Log) { l.Rows[3].Strains = nil },
		"uncertainty unknown":  func(l *proof.Log) { l.VolumeChange = math.NaN() },
		"uncertainty negative": func(l *proof.Log) { l.PressureChange = -1 },
	} {
		l := handLog{}.log(t)
		change(&l)
		if got, err := recordTest(t).Judge(l); err == nil || got != nil {
			t.Errorf("%s: %v", name, got)
		}
	}
	if _, err := (proof.Test{}).Judge(handLog{}.log(t)); err == nil {
		t.Error("no plan")
	}
	test := recordTest(t)
	test.Plan.In.Method = proof.Pneumatic
	if got, err := test.Judge(handLog{}.log(t)); err != nil || got.Outcome != proof.Inconclusive {
		t.Errorf("gas: %v, %v", got, err)
	}
}

// FuzzJudge: no log panics, and one that passes never saw more than the plan allows,
// held the setting, and had its temperature read.
func FuzzJudge(f *testing.F) {
	f.Add(0.0, 0.0, 0.0, 0.0, 9)
	f.Add(0.1, 4e-4, 5e3, 0.1, 3)
	f.Fuzz(func(t *testing.T, softer, air, fall, warm float64, hole int) {
		l := handLog{softer: softer, air: air, fall: fall, warm: warm}.log(t)
		l.Rows[((hole%len(l.Rows))+len(l.Rows))%len(l.Rows)].Volume = math.NaN()
		got, err := recordTest(t).Judge(l)
		if err != nil || got.Outcome != proof.Passed {
			return
		}
		for _, r := range l.Rows {
			if r.Pressure > 4.545001e6 {
				t.Errorf("passed at %g Pa", r.Pressure)
			}
		}
		if d := got.Decay; !(math.Abs(d.Residual)+d.Uncertainty <= 22.5e3) || got.Hold.To < 0 {
			t.Errorf("passed with %+v", d)
		}
	})
}
