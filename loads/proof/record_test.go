package proof_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/loads/proof"
)

// recordTest is reference tank A with a plan of 4.5 MPa at the gauge, 1 % of
// overshoot and a hold of 10 min.
func recordTest(t testing.TB) proof.Test {
	return proof.Test{
		Plan: &proof.Plan{Setting: referencePressure, Top: referencePressure - 0.045e6, Overshoot: 0.045e6, GaugeUncertainty: 0.045e6, Hold: 600, Rate: 7500,
			In: proof.Inputs{Method: proof.Hydrostatic}},
		Full: tankA.full(t, 20, referencePressure), Wall: tankA.wall, Radius: referenceRadius, Use: 0.9,
	}
}

// handLog is a log by hand: the reference pressure, the steps, a hold of 10 min
// with readings every minute, and back. Volumes follow the tank with the stiffness
// and air given, uncertainties are good.
type handLog struct {
	softer float64 // stiffness over the predicted one [-]
	air    float64 // [m3]
	fall   float64 // over the hold [Pa]
	warm   float64 // over the hold [K]
	more   map[int]float64
	left   float64 // at the reference reading afterwards [m3]
}

func (h handLog) log(t testing.TB) proof.Log {
	f := tankA.full(t, 20, referencePressure)
	C := (f.Growth + f.Compressibility*f.Volume) * (1 + h.softer)
	ε, err := tankA.wall.ThickCylinderStrains(1e6, referenceRadius-tankA.wall.Thickness/2)
	if err != nil {
		t.Fatal(err)
	}
	l := proof.Log{Gauges: []proof.Gauge{{Name: "hoop", Place: proof.PlainHoop}}, PressureChange: 1e3, VolumeChange: 0.2e-6, TemperatureChange: 0.01, StrainChange: 2e-6}
	time := 0.0
	add := func(share, volume, fall, warm float64) {
		p := share*referencePressure - fall
		l.Rows = append(l.Rows, proof.LogRow{Time: time, Pressure: p, Volume: volume, Temperature: 293.15 + warm, Wall: math.NaN(),
			Strains: []float64{ε.Hoop * p / 1e6}})
	}
	at := func(share float64) float64 {
		p := share * referencePressure
		return C*p + h.air*p/(p+proof.Atmosphere)
	}
	for i, share := range []float64{0.1, 0.05, 0.5, 0.6, 0.7, 0.8, 0.9} {
		time += 200
		add(share, at(share)+h.more[i], 0, 0)
	}
	const top = 1.005
	for i := range 11 {
		time += 60
		add(top, at(top)+h.more[7], h.fall*float64(i)/10, h.warm*float64(i)/10)
	}
	time += 200
	add(0.05, at(0.05)+h.left, 0, 0)
	return l
}

// answer judges a log and returns the outcome and reason of a question.
func answer(t testing.TB, test proof.Test, l proof.Log, title string) (proof.Outcome, string, *proof.Judged) {
	t.Helper()
	got, err := test.Judge(l)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range got.Findings {
		if f.Title == title {
			return f.Outcome, f.Reason, got
		}
	}
	t.Fatalf("no question %q", title)
	return 0, "", nil
}

const (
	pressureQ, reachedQ, referenceQ, stiffnessQ = "pressure within the plan", "setting reached and held", "reference readings", "stiffness and air"
	zeroQ                                       = "zero of the gauge"
	departureQ, strainsQ, decayQ, setQ          = "departure from the line", "strains", "decay of the pressure", "permanent set"
)

func TestGoodLogPasses(t *testing.T) {
	got, err := recordTest(t).Judge(handLog{}.log(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range got.Findings {
		if f.Outcome != proof.Passed && f.Title != zeroQ { // the log begins with pressure
			t.Errorf("%s: %v: %s", f.Title, f.Outcome, f.Reason)
		}
	}
	if got.Outcome != proof.Passed {
		t.Errorf("%v", got.Outcome)
	}
}

// An asked is a good log with a change, and the answer that it changes.
type asked struct {
	name    string
	log     handLog
	change  func(*proof.Test, *proof.Log) // nil for none
	title   string
	outcome proof.Outcome
	reason  string // in part
}

// ask holds the answer of a log to what is wanted, and the verdict to the answer.
func (row asked) ask(t *testing.T, test proof.Test, l proof.Log) {
	t.Helper()
	if row.change != nil {
		row.change(&test, &l)
	}
	got, reason, all := answer(t, test, l, row.title)
	if got != row.outcome || !strings.Contains(reason, row.reason) {
		t.Errorf("%v: %s, want %v: …%s…", got, reason, row.outcome, row.reason)
	}
	gas := test.Plan.In.Method == proof.Pneumatic
	if row.outcome == proof.Failed && all.Outcome != proof.Failed || (gas || row.outcome == proof.Inconclusive) && all.Outcome == proof.Passed {
		t.Errorf("the verdict is %v", all.Outcome)
	}
}

// Each change to a good log changes one answer, and the verdict with it.
func TestRecordQuestions(t *testing.T) {
	nan := math.NaN()
	for _, row := range []asked{
		{"at the overshoot", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[9].Pressure = 4.545e6 }, pressureQ, proof.Passed, ""},
		{"over it by 1 Pa", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[9].Pressure = 4.545001e6 }, pressureQ, proof.Failed, "OVER-PRESSURE"},
		{"a dip by 1 Pa", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[12].Pressure = 4.499999e6 }, reachedQ, proof.Inconclusive, "without a break"},
		{"a second short", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[17].Time-- }, reachedQ, proof.Inconclusive, "whole time"},
		{"two readings of the hold", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = append(l.Rows[:8:8], l.Rows[17:]...) }, reachedQ, proof.Inconclusive, "too few"},
		{"never there", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[:7] }, reachedQ, proof.Inconclusive, "never reached"},
		{"no reference before", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[1].Volume = nan }, referenceQ, proof.Inconclusive, "way up"},
		{"no reference after", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[:18] }, referenceQ, proof.Inconclusive, "after the hold"},
		{"softer by 9 %", handLog{softer: 0.09}, nil, stiffnessQ, proof.Passed, ""},
		{"softer by 11 %", handLog{softer: 0.11}, nil, stiffnessQ, proof.Inconclusive, "softer"},
		{"stiffer by 9 %", handLog{softer: -0.09}, nil, stiffnessQ, proof.Passed, ""},
		{"stiffer by 11 %", handLog{softer: -0.11}, nil, stiffnessQ, proof.Inconclusive, "stiffer"},
		{"air of 0.49 %", handLog{air: 0.0049 * 0.077754}, nil, stiffnessQ, proof.Passed, ""},
		{"air of 0.51 %", handLog{air: 0.0051 * 0.077754}, nil, stiffnessQ, proof.Inconclusive, "bleed"},
		{"nothing predicted", handLog{}, func(x *proof.Test, _ *proof.Log) { x.Full.Growth = nan }, stiffnessQ, proof.Inconclusive, "no stiffness is predicted"},
		{"no low readings", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[2:] }, stiffnessQ, proof.Inconclusive, "no reading below"},
		{"one low reading", handLog{air: 300e-6}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[1:] }, stiffnessQ, proof.Passed, ""},
		{"one low reading, and air that is no yield", handLog{air: 380e-6}, func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[1:] }, departureQ, proof.Passed, ""},
		{"air at the limit, not known", handLog{air: 0.0049 * 0.077754}, func(_ *proof.Test, l *proof.Log) { l.VolumeChange = 3e-6 }, stiffnessQ, proof.Inconclusive, "not known well enough"},
		{"a meter of 50 ml", handLog{}, func(_ *proof.Test, l *proof.Log) { l.VolumeChange = 50e-6 }, stiffnessQ, proof.Inconclusive, "not known well enough"},
		{"1.9 % more at 0.9", handLog{more: map[int]float64{6: 0.019 * 530e-6}}, nil, departureQ, proof.Passed, ""},
		{"2.1 % more at 0.9", handLog{more: map[int]float64{6: 0.021 * 530e-6}}, nil, departureQ, proof.Failed, "yield"},
		{"2.1 % less at 0.9", handLog{more: map[int]float64{6: -0.021 * 530e-6}}, nil, departureQ, proof.Inconclusive, "instrument"},
		{"3 % more at the top", handLog{more: map[int]float64{7: 0.03 * 589e-6}}, nil, departureQ, proof.Failed, "yield"},
		{"a poor meter does not widen the band", handLog{more: map[int]float64{6: 0.021 * 530e-6}},
			func(_ *proof.Test, l *proof.Log) { l.VolumeChange = 50e-6 }, departureQ, proof.Failed, "yield"},
		{"a poor meter cannot tell it", handLog{}, func(_ *proof.Test, l *proof.Log) { l.VolumeChange = 50e-6 }, departureQ, proof.Inconclusive, "not read well enough"},
		{"no volumes", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := range l.Rows {
				l.Rows[i].Volume = nan
			}
		}, departureQ, proof.Inconclusive, "no volumes"},
		{"no strain", handLog{}, func(_ *proof.Test, l *proof.Log) {
			l.Gauges = nil
			for i := range l.Rows {
				l.Rows[i].Strains = nil
			}
		}, strainsQ, proof.NotRead, "no strain was read"},
		{"strain 11 % high", handLog{}, strained(1.11, 0, 0), strainsQ, proof.Inconclusive, "another wall"},
		{"strain 9 % high", handLog{}, strained(1.09, 0, 0), strainsQ, proof.Passed, ""},
		{"6 % off the line at the top", handLog{}, strained(1, 0.06, 0), strainsQ, proof.Failed, "leaves its straight line"},
		{"4 % off the line at the top", handLog{}, strained(1, 0.04, 0), strainsQ, proof.Passed, ""},
		{"creep of 60e-6", handLog{}, strained(1, 0, 60e-6), strainsQ, proof.Failed, "creeps"},
		{"no temperature", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := range l.Rows {
				l.Rows[i].Temperature = nan
			}
		}, decayQ, proof.Inconclusive, "no water temperature"},
		{"warming by 1.1 K", handLog{warm: 1.1}, nil, decayQ, proof.Inconclusive, "more than 1 K"},
		{"a fall of 1 %", handLog{fall: 45e3}, func(_ *proof.Test, l *proof.Log) { keepUp(l) }, decayQ, proof.Failed, "leak"},
		{"a rise of 1 %", handLog{fall: -22e3}, func(x *proof.Test, l *proof.Log) { x.Plan.Setting *= 0.8 }, decayQ, proof.Failed, "rises"},
		{"a small rise", handLog{fall: -10e3}, nil, decayQ, proof.Inconclusive, "rises"},
		{"warming explains a rise", handLog{fall: -0.2 * 84.7e3, warm: 0.2}, nil, decayQ, proof.Passed, ""},
		{"an ordinary thermometer", handLog{}, func(_ *proof.Test, l *proof.Log) { l.TemperatureChange = 0 }, decayQ, proof.Inconclusive, "cannot be told"},
		{"one that explains the fall", handLog{fall: 0.27 * 84.7e3, warm: -0.27}, func(_ *proof.Test, l *proof.Log) { l.TemperatureChange = 0 }, decayQ, proof.Inconclusive, "explains"},
		{"topped up by 4 ml", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := 13; i < 18; i++ {
				l.Rows[i].Volume += 4e-6
			}
		}, decayQ, proof.Failed, "leak"},
		{"topped up by 2 ml, a poor meter", handLog{}, func(_ *proof.Test, l *proof.Log) {
			l.VolumeChange = 2e-6
			for i := 13; i < 18; i++ {
				l.Rows[i].Volume += 2e-6
			}
		}, decayQ, proof.Inconclusive, ""},
		{"volumes of the hold missing", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := 7; i < 18; i++ {
				l.Rows[i].Volume = nan
			}
		}, decayQ, proof.Inconclusive, "volumes read"},
		{"no stiffness at all", handLog{}, func(x *proof.Test, l *proof.Log) {
			x.Full.Growth = nan
			for i := range 7 {
				l.Rows[i].Volume = nan
			}
		}, decayQ, proof.Inconclusive, "without a stiffness"},
		{"pumped until three minutes before the end", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := 7; i < 18; i++ {
				l.Rows[i].Volume += 0.3e-6 * float64(min(i, 14)-7)
			}
		}, decayQ, proof.Inconclusive, "not watched long enough"},
		{"last volume of the hold not read", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[17].Volume = nan }, decayQ, proof.Passed, ""},
		{"less than compression alone", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := range l.Rows {
				l.Rows[i].Volume *= 0.25
			}
		}, setQ, proof.Inconclusive, "growth of the wall is not known"},
		{"a gauge of 6.7 %", handLog{}, func(x *proof.Test, _ *proof.Log) { x.Plan.GaugeUncertainty = 0.3e6 }, stiffnessQ, proof.Inconclusive, "not known well enough to lay beside"},
		{"no volume over half the setting", handLog{}, func(_ *proof.Test, l *proof.Log) {
			for i := 3; i < 18; i++ {
				l.Rows[i].Volume = nan
			}
		}, departureQ, proof.Inconclusive, "between half the setting and the setting"},
		{"one strain not read", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[3].Strains[0] = nan }, strainsQ, proof.Passed, ""},
		{"6 % off the line, a poor gauge", handLog{}, func(x *proof.Test, l *proof.Log) {
			strained(1, 0.06, 0)(x, l)
			l.StrainChange = 0.04 * l.Rows[10].Strains[0] // 2 u is 8 % and more
		}, strainsQ, proof.Inconclusive, "not read well enough to tell whether it is straight"},
		{"a gauge elsewhere, twice the strain", handLog{}, func(x *proof.Test, l *proof.Log) {
			strained(2, 0, 0)(x, l)
			l.Gauges[0].Place = proof.Elsewhere
		}, strainsQ, proof.Passed, ""},
		{"no wall to predict a strain by", handLog{}, func(x *proof.Test, _ *proof.Log) { x.Wall.Thickness = nan }, strainsQ, proof.Inconclusive, "off the predicted strain"},
		{"along the cylinder", handLog{}, along(1), strainsQ, proof.Passed, ""},
		{"along the cylinder, half as much again", handLog{}, along(1.5), strainsQ, proof.Inconclusive, "10 % and its uncertainty"},
		{"1.9 % left", handLog{left: 0.019 * 409e-6}, nil, setQ, proof.Passed, ""},
		{"2.2 % left", handLog{left: 0.022 * 409e-6}, nil, setQ, proof.Inconclusive, "second cycle is needed"},
		{"10.5 % left", handLog{left: 0.105 * 409e-6}, nil, setQ, proof.Failed, "rejected"},
		{"more came back", handLog{left: -0.03 * 409e-6}, nil, setQ, proof.Inconclusive, "not understood"},
		{"no temperature at the reference", handLog{}, func(_ *proof.Test, l *proof.Log) { l.Rows[18].Temperature = nan }, setQ, proof.Inconclusive, "no water temperature"},
		{"a meter of 6 ml", handLog{}, func(_ *proof.Test, l *proof.Log) { l.VolumeChange = 6e-6 }, setQ, proof.Inconclusive, "second cycle"},
	} {
		t.Run(row.name, func(t *testing.T) { row.ask(t, recordTest(t), row.log.log(t)) })
	}
}

// strained changes the strains of a log: all by a factor, those at the top of the way up
// by a share more, and what is added by the end of the hold.
func strained(factor, more, creep float64) func(*proof.Test, *proof.Log) {
	return func(_ *proof.Test, l *proof.Log) {
		for i := range l.Rows {
			e := &l.Rows[i].Strains[0]
			*e *= factor
			if i >= 7 && i <= 17 {
				*e *= 1 + more
				*e += creep * float64(i-7) / 10
			}
		}
	}
}

// along makes the gauge one along the cylinder, with what is predicted there times a factor.
func along(factor float64) func(*proof.Test, *proof.Log) {
	return func(x *proof.Test, l *proof.Log) {
		l.Gauges[0].Place = proof.PlainAxial
		ε, _ := x.Wall.ThickCylinderStrains(1e6, x.Radius-x.Wall.Thickness/2)
		for i := range l.Rows {
			l.Rows[i].Strains[0] = factor * ε.Axial * l.Rows[i].Pressure / 1e6
		}
	}
}

// keepUp lifts the readings of a hold so that it stays at the setting.
func keepUp(l *proof.Log) {
	for i := 7; i <= 17; i++ {
		l.Rows[i].Pressure += 22.4e3
	}
}

// A test that was begun, let down to bleed, and begun again is judged from its last
// beginning; a pressure over the plan counts wherever it stands.
func TestBegunAgain(t *testing.T) {
	l := handLog{}.log(t)
	var first []proof.LogRow
	for i, p := range []float64{0, 2.4e6, 0.01e6} {
		first = append(first, proof.LogRow{Time: float64(i) - 10, Pressure: p, Volume: 900e-6 * float64(i), Temperature: 293.15, Wall: math.NaN(), Strains: []float64{0}})
	}
	l.Rows = append(first, l.Rows...)
	l.Rows[2].Volume = 0
	_, _, got := answer(t, recordTest(t), l, departureQ)
	if got.Outcome != proof.Passed || len(got.Findings[1].Notes) != 1 {
		t.Errorf("%v: %+v", got.Outcome, got.Findings)
	}
	l.Rows[1].Pressure = 4.6e6
	if o, _, _ := answer(t, recordTest(t), l, pressureQ); o != proof.Failed {
		t.Errorf("over the plan at first: %v", o)
	}
}

// A second cycle answers for a set between pass and reject.
func TestSecondCycle(t *testing.T) {
	for _, row := range []struct {
		name    string
		again   float64 // left by the second cycle, share of the growth [-]
		strain  float64 // left [-]
		outcome proof.Outcome
	}{
		{"0.9 % again", 0.009, 0, proof.Passed}, {"1.1 % again", 0.011, 0, proof.Failed}, {"strain of 110e-6 left", 0, 110e-6, proof.Failed},
		{"strain of 90e-6 left", 0, 90e-6, proof.Passed},
	} {
		l := handLog{left: 0.03 * 409e-6}.log(t)
		first := l.Rows
		last := first[len(first)-1]
		for _, r := range append(first[2:8:8], last) { // steps of the second cycle and back
			r.Time = l.Rows[len(l.Rows)-1].Time + 200
			if r.Pressure == last.Pressure {
				r.Volume += row.again * 409e-6
				r.Strains = []float64{r.Strains[0] + row.strain}
			}
			l.Rows = append(l.Rows, r)
		}
		if got, reason, _ := answer(t, recordTest(t), l, setQ); got != row.outcome {
			t.Errorf("%s: %v: %s", row.name, got, reason)
		}
	}
}
