package proof_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"proofsheet/loads/proof"
)

// opened is a row with the tank open, at a time.
func opened(at float64) proof.LogRow {
	return proof.LogRow{Time: at, Volume: 0, Temperature: 293.15, Wall: math.NaN(), Strains: []float64{0}}
}

// cycles is a log of ways up by hand, the tank open first: each changes the rows of
// a good one, which are the leak look, the reference reading, five steps, eleven
// readings at the top, and the reference reading again.
func cycles(t testing.TB, ways ...func(rows []proof.LogRow) []proof.LogRow) proof.Log {
	good := handLog{}.log(t)
	l := good
	l.Rows = []proof.LogRow{opened(-10)}
	for _, way := range ways {
		rows := slices.Clone(good.Rows)
		for i := range rows {
			rows[i].Strains = slices.Clone(rows[i].Strains)
		}
		start := l.Rows[len(l.Rows)-1].Time + 10
		for _, row := range way(rows) {
			row.Time += start
			l.Rows = append(l.Rows, row)
		}
	}
	return l
}

func asItIs(rows []proof.LogRow) []proof.LogRow { return rows }

// more keeps a volume [m3] in the tank from a row on.
func more(from int, volume float64) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		for i := from; i < len(rows); i++ {
			rows[i].Volume += volume
		}
		return rows
	}
}

// upTo keeps the rows up to n, and changes the last.
func upTo(n int, last func(*proof.LogRow)) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		rows = rows[:n]
		last(&rows[n-1])
		return rows
	}
}

// strains makes a gauge show a share more at the top.
func strains(share float64) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		for i := 7; i <= 17; i++ {
			rows[i].Strains[0] *= 1 + share
		}
		return rows
	}
}

// Every way up is judged, before the hold and after it. The growth of the tank is
// 409 ml, injected are 589 ml.
func TestEveryWayUp(t *testing.T) {
	const passes = ""
	leaks := func(by float64) func([]proof.LogRow) []proof.LogRow {
		return func(rows []proof.LogRow) []proof.LogRow {
			for i := 7; i <= 17; i++ {
				rows[i].Pressure -= by * float64(i-7) / 10
			}
			return rows
		}
	}
	for _, row := range []struct {
		name    string
		log     proof.Log
		title   string
		outcome proof.Outcome
		reason  string
	}{
		{"two good ones", cycles(t, asItIs, asItIs), setQ, proof.Passed, passes},
		{"one that wavers about 0.3", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			for i, share := range []float64{0.305, 0.295, 0.303, 0.29} {
				at := opened(500 + float64(i))
				at.Pressure, at.Volume, at.Strains = share*referencePressure, math.NaN(), []float64{math.NaN()}
				r = slices.Insert(r, 2+i, at)
			}
			return r
		}), referenceQ, proof.Passed, passes},
		{"three good ones", cycles(t, asItIs, asItIs, asItIs), departureQ, proof.Passed, passes},
		{"a yield, let down to the reference, then a good one", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			return append(more(5, 20e-6)(r)[:6], r[18])
		}, asItIs), departureQ, proof.Failed, "on the way up from -10 s on, to 80 % of the setting: yield"},
		{"the second yields", cycles(t, asItIs, more(6, 20e-6)), departureQ, proof.Failed, "yield"},
		{"the second yields, third good", cycles(t, asItIs, more(6, 20e-6), asItIs), departureQ, proof.Failed, "yield"},
		{"the second leaves 4.2 ml", cycles(t, asItIs, more(18, 4.2e-6)), setQ, proof.Failed, "permanent growth again, or a leak"},
		{"the second leaves 4.0 ml", cycles(t, asItIs, more(18, 4.0e-6)), setQ, proof.Passed, passes},
		{"the second is not read to its end", cycles(t, asItIs, upTo(18, func(*proof.LogRow) {})), setQ, proof.Inconclusive, "no reference reading after it"},
		{"the second has no temperature at its end", cycles(t, asItIs, upTo(19, func(r *proof.LogRow) { r.Temperature = math.NaN() })), setQ, proof.Inconclusive, "not known"},
		{"the second bursts", cycles(t, asItIs, upTo(8, func(r *proof.LogRow) { r.Pressure = 0 })), decayQ, proof.Failed, "the closed tank lost pressure"},
		{"the second leaks 30 kPa", cycles(t, asItIs, leaks(30e3)), decayQ, proof.Failed, "the closed tank lost pressure"},
		{"the second leaks 20 kPa", cycles(t, asItIs, leaks(20e3)), decayQ, proof.Passed, passes},
		{"the first leaks 100 kPa, then tight", cycles(t, leaks(100e3), asItIs), decayQ, proof.Inconclusive, "test the mended tank by a log of its own"},
		{"the first leaves 9 ml", cycles(t, func(r []proof.LogRow) []proof.LogRow { return append(r[:7], more(18, 9e-6)(r)[18]) }, more(0, 9e-6)), setQ, proof.Inconclusive, "it left water in the tank"},
		{"the second strains 6 % more", cycles(t, asItIs, strains(0.06)), strainsQ, proof.Failed, "leaves its straight line"},
		{"the second strains 4 % more", cycles(t, asItIs, strains(0.04)), strainsQ, proof.Passed, passes},
		{"the first strains 6 % more", cycles(t, strains(0.06), asItIs, asItIs), strainsQ, proof.Failed, "leaves its straight line"},
		{"the second without readings to tell by", cycles(t, asItIs, func(r []proof.LogRow) []proof.LogRow {
			for i := 2; i < 18; i++ {
				r[i].Volume = math.NaN()
			}
			return r
		}), departureQ, proof.Inconclusive, "no reading over half the setting"},
		{"an earlier one with air, of two readings", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			rows := []proof.LogRow{r[5], opened(1400)}
			rows[0].Volume += 50e-6
			return rows
		}, asItIs), departureQ, proof.Inconclusive, "too few earlier readings"},
	} {
		got, reason, all := answer(t, recordTest(t), row.log, row.title)
		if got != row.outcome || !strings.Contains(reason, row.reason) {
			t.Errorf("%s: %v: %s, want %v: …%s…", row.name, got, reason, row.outcome, row.reason)
		}
		if row.outcome != proof.Passed && all.Outcome == proof.Passed {
			t.Errorf("%s: the verdict is %v", row.name, all.Outcome)
		}
	}
}

// What the instruments themselves leave open.
func TestInstruments(t *testing.T) {
	first := func(p float64) func(*proof.Test, *proof.Log) {
		return func(_ *proof.Test, l *proof.Log) { l.Rows[0].Pressure = p }
	}
	for _, row := range []struct {
		name    string
		change  func(*proof.Test, *proof.Log)
		title   string
		outcome proof.Outcome
		reason  string
	}{
		{"zero within the gauge", first(45e3), zeroQ, proof.Passed, ""},
		{"zero off by more", first(46e3), zeroQ, proof.Inconclusive, "never shows zero"},
		{"counts from a vacuum", first(101325), zeroQ, proof.Inconclusive, "counts from a vacuum"},
		{"under zero", first(-46e3), zeroQ, proof.Inconclusive, "never shows zero"},
		{"no reading of the open tank", func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[1:] }, zeroQ, proof.NotRead, "no reading with the tank open"},
		{"a little suction", func(_ *proof.Test, l *proof.Log) { l.Rows[19].Pressure = -45e3 }, pressureQ, proof.Passed, ""},
		{"drawn under the atmosphere", func(_ *proof.Test, l *proof.Log) { l.Rows[19].Pressure = -46e3 }, pressureQ, proof.Inconclusive, "drawn under the atmosphere"},
		{"a gauge read to 0.4 bar", func(_ *proof.Test, l *proof.Log) { l.PressureStep = 40e3 }, decayQ, proof.Inconclusive, "cannot be told"},
		{"one read to 0.1 bar", func(_ *proof.Test, l *proof.Log) { l.PressureStep = 10e3 }, decayQ, proof.Passed, ""},
		{"a thermometer read to 0.5 K", func(_ *proof.Test, l *proof.Log) { l.TemperatureStep = 0.5 }, decayQ, proof.Inconclusive, "cannot be told"},
		{"one read to 0.1 K", func(_ *proof.Test, l *proof.Log) { l.TemperatureStep = 0.1 }, decayQ, proof.Passed, ""},
		{"one that never moves", func(_ *proof.Test, l *proof.Log) { l.TemperatureStep = 0.01 }, decayQ, proof.Inconclusive, "stuck"},
		{"one that does", func(_ *proof.Test, l *proof.Log) {
			l.TemperatureStep = 0.01
			l.Rows[3].Temperature += 0.01
		}, decayQ, proof.Passed, ""},
		{"a meter read to 20 ml", func(_ *proof.Test, l *proof.Log) { l.VolumeStep = 20e-6 }, departureQ, proof.Inconclusive, "not read well enough"},
		{"a gauge at a port that is dead", func(_ *proof.Test, l *proof.Log) {
			l.Gauges[0].Place = proof.Elsewhere
			for i := range l.Rows {
				l.Rows[i].Strains[0] = 0
			}
		}, strainsQ, proof.Inconclusive, "does not answer to the pressure"},
		{"an axial gauge of five times the strain, said to be poor", func(x *proof.Test, l *proof.Log) {
			along(5)(x, l)
			l.StrainChange = 1e-3
		}, strainsQ, proof.Inconclusive, "explain it"},
	} {
		test, l := recordTest(t), cycles(t, asItIs)
		row.change(&test, &l)
		if got, reason, _ := answer(t, test, l, row.title); got != row.outcome || !strings.Contains(reason, row.reason) {
			t.Errorf("%s: %v: %s, want %v: …%s…", row.name, got, reason, row.outcome, row.reason)
		}
	}
	test, l := recordTest(t), cycles(t, asItIs)
	l.Rows[5].Pressure = -101.4e3
	if _, err := test.Judge(l); err == nil {
		t.Error("less than a vacuum is a pressure")
	}
}

// A thermometer on the wall has an error of its own. By hand, at the null of the
// drift β = 3 α: water and wall each move the pressure by 3 α V/C per kelvin, so 2 u is
// 2 √2 × 0.02 K of that, where one thermometer for both would leave nothing.
func TestWallThermometerOfItsOwn(t *testing.T) {
	test, l := recordTest(t), cycles(t, asItIs)
	l.TemperatureChange, l.PressureChange = 0.02, 1
	_, _, got := answer(t, test, l, decayQ)
	one := got.Decay.Uncertainty
	for i := range l.Rows {
		l.Rows[i].Wall = l.Rows[i].Temperature
	}
	_, _, got = answer(t, test, l, decayQ)
	w, err := proof.WaterAt(293.15, 1.005*referencePressure)
	if err != nil {
		t.Fatal(err)
	}
	c := test.Full.Growth + w.Compressibility*test.Full.Volume
	want := 2 * 0.02 * math.Hypot(w.Expansion, 3*test.Full.WallExpansion) * test.Full.Volume / c
	if math.Abs(got.Decay.Uncertainty-want) > 0.005*want || !(got.Decay.Uncertainty > 1.3*one) {
		t.Errorf("U is %g, want %g, more than %g", got.Decay.Uncertainty, want, one)
	}
}
