package proof_test

import (
	"math"
	"slices"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check/checktest"
)

const leftQ, volumesQ = "strain left", "volumes"

// gasTest is the test of reference tank A with gas, and gasLog a log of it by
// hand: no volumes, and pressures that follow the gas where it warms.
func gasTest(t testing.TB) proof.Test {
	x := recordTest(t)
	plan := *x.Plan
	plan.In.Method = proof.Pneumatic
	x.Plan, x.Full = &plan, proof.Full{Volume: x.Full.Volume, Growth: math.NaN(), Compressibility: math.NaN(), Expansion: math.NaN(), WallExpansion: math.NaN()}
	return x
}

func gasLog(t testing.TB, h handLog) proof.Log {
	l := h.log(t)
	for i := range l.Rows {
		l.Rows[i].Volume = math.NaN()
	}
	return l
}

// A gas goes by absolute pressure over absolute temperature. By hand: 4.5225 MPa
// at the gauge and 0.101325 MPa, 293.15 K, are 15 772.9 Pa/K; 0.5 K are 7886 Pa. A
// fall of 45 kPa in 0.077754 m3 is 34.53 l of gas at the atmosphere, and over 600 s
// 5.8316 Pa m3/s.
func TestGasBalance(t *testing.T) {
	for _, row := range []struct {
		name                   string
		log                    handLog
		drift, explained, leak string
	}{
		{"a gas that warms by half a kelvin", handLog{warm: 0.5}, "15772.9", "7886.4", ""},
		{"one that leaks 45 kPa", handLog{fall: 45e3}, "15772.9", "", "34.53e-3"},
	} {
		l := gasLog(t, row.log)
		for i := 7; i <= 17; i++ {
			l.Rows[i].Pressure = 4.5225e6 - row.log.fall*float64(i-7)/10
		}
		_, _, got := answer(t, gasTest(t), l, decayQ)
		d := got.Balance(7, 17)
		checktest.Printed(t, row.name+": drift", d.Drift, row.drift)
		if row.leak == "" {
			checktest.Printed(t, row.name+": explained", d.Explained, row.explained)
			continue
		}
		checktest.Printed(t, row.name+": lost", d.Leak, row.leak)
		checktest.Printed(t, row.name+": rate", d.Leak*proof.Atmosphere/600, "5.832")
	}
}

// Each change to a good log of a gas changes one answer; none makes it pass.
func TestGasQuestions(t *testing.T) {
	nan := math.NaN()
	for _, row := range []asked{
		{"nothing wrong", handLog{}, nil, volumesQ, proof.Inconclusive, "cannot pass it"},
		{"over the plan", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[9].Pressure = 4.6e6 }, pressureQ, proof.Failed, "OVER-PRESSURE"},
		{"never there", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[:7] }, reachedQ, proof.Inconclusive, "never reached"},
		{"no reference after", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[:18] }, referenceQ, proof.Inconclusive, "no strain read"},
		{"no hold to see a fall in", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[:8] }, decayQ, proof.Inconclusive, "no stretch of the log near the setting long enough"},
		{"still", handLog{}, nil, decayQ, proof.Passed, ""},
		{"a fall of 1 %", handLog{fall: 45e3}, func(_ *proof.Test, l *proof.Log) { keepUp(l) }, decayQ, proof.Failed, "leak"},
		{"warming explains a rise", handLog{fall: -0.5 * 15773, warm: 0.5}, nil, decayQ, proof.Passed, ""},
		{"warming hides a leak", handLog{fall: 6e3, warm: 0.9}, func(_ *proof.Test, l *proof.Log) { keepUp(l) }, decayQ, proof.Inconclusive, ""},
		{"warming hides a large leak", handLog{fall: 20e3, warm: 0.9}, func(_ *proof.Test, l *proof.Log) { keepUp(l) }, decayQ, proof.Failed, "leak"},
		{"warming by 1.1 K", handLog{warm: 1.1}, nil, decayQ, proof.Inconclusive, "the gas changed by more than 1 K"},
		{"no temperature", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := range l.Rows {
				l.Rows[i].Temperature = nan
			}
		}, decayQ, proof.Inconclusive, "no gas temperature"},
		{"topped up", handLog{fall: 10e3}, func(_ *proof.Test, l *proof.Log) {
			for i := 14; i <= 17; i++ {
				l.Rows[i].Pressure += 8e3
			}
		}, decayQ, proof.Inconclusive, "gas was let in"},
		{"straight", handLog{}, nil, strainsQ, proof.Passed, ""},
		{"let out slowly after the hold", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for k := range 5 {
				at := l.Rows[17]
				at.Time, at.Pressure = at.Time+30*float64(k+1), at.Pressure-50e3*float64(k+1)
				l.Rows = slices.Insert(l.Rows, 18+k, at)
			}
		}, decayQ, proof.Passed, ""},
		{"no gauge", handLog{}, func(_ *proof.Test, l *proof.Log) {
			l.Gauges = nil
			for i := range l.Rows {
				l.Rows[i].Strains = nil
			}
		}, strainsQ, proof.Inconclusive, "nothing else tells a yield"},
		{"6 % off the line at the top", handLog{}, strained(1, 0.06, 0), strainsQ, proof.Failed, "leaves its straight line"},
		{"nothing left", handLog{}, nil, leftQ, proof.Passed, "within 2 %"},
		{"1.9 % left", handLog{}, leaves(0.019), leftQ, proof.Passed, "within 2 %"},
		{"2.1 % left", handLog{}, leaves(0.021), leftQ, proof.Inconclusive, "second cycle is needed"},
		{"9.9 % left", handLog{}, leaves(0.099), leftQ, proof.Inconclusive, "second cycle is needed"},
		{"10.1 % left", handLog{}, leaves(0.101), leftQ, proof.Failed, "rejected"},
		{"10.1 % less", handLog{}, leaves(-0.101), leftQ, proof.Failed, "rejected"},
		{"a strain not read", handLog{}, leaves(nan), leftQ, proof.Inconclusive, "no hoop strain"},
		{"no hoop gauge", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Gauges[0].Place = proof.Elsewhere }, leftQ, proof.Inconclusive, "no hoop strain"},
		{"3 % left, then nothing", handLog{}, again(0.03, 0), leftQ, proof.Passed, "no further strain"},
		{"3 % left, then 0.9 %", handLog{}, again(0.03, 0.009), leftQ, proof.Passed, "no further strain"},
		{"3 % left, then 1.1 %", handLog{}, again(0.03, 0.011), leftQ, proof.Inconclusive, "second cycle is needed"},
		{"3 % left, then 4 %", handLog{}, again(0.03, 0.04), leftQ, proof.Failed, "second cycle left hoop strain"},
	} {
		t.Run(row.name, func(t *testing.T) { row.ask(t, gasTest(t), gasLog(t, row.log)) })
	}
}

// leaves lets the gauge keep a share of its strain between the reference pressure
// and the top.
func leaves(share float64) func(*proof.Test, *proof.Log) {
	return func(_ *proof.Test, l *proof.Log) {
		l.Rows[18].Strains[0] += share * (l.Rows[17].Strains[0] - l.Rows[1].Strains[0])
	}
}

// again adds a second cycle that keeps another share.
func again(first, second float64) func(*proof.Test, *proof.Log) {
	return func(x *proof.Test, l *proof.Log) {
		leaves(first)(x, l)
		whole := l.Rows[17].Strains[0] - l.Rows[1].Strains[0]
		for _, r := range slices.Concat(l.Rows[2:8], l.Rows[18:19]) {
			r.Time = l.Rows[len(l.Rows)-1].Time + 200
			r.Strains = []float64{r.Strains[0]}
			if r.Pressure < 1e6 {
				r.Strains[0] += second * whole
			}
			l.Rows = append(l.Rows, r)
		}
	}
}
