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

// kept leaves the gauge a share of its strain at the reference pressure.
func kept(share float64) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		rows[18].Strains[0] += share * rows[17].Strains[0]
		return rows
	}
}

// longer goes on with the hold for ten minutes more, each reading changed by its number.
func longer(change func(r *proof.LogRow, k int)) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		for k := 1; k <= 10; k++ {
			at := rows[17]
			at.Time, at.Strains = at.Time+60*float64(k), slices.Clone(at.Strains)
			change(&at, k)
			rows = slices.Insert(rows, 17+k, at)
		}
		rows[28].Time += 600
		return rows
	}
}

// unread blanks the volumes of rows that another change has made.
func unread(from, to int, way func([]proof.LogRow) []proof.LogRow) func([]proof.LogRow) []proof.LogRow {
	return func(rows []proof.LogRow) []proof.LogRow {
		rows = way(rows)
		for i := from; i <= to; i++ {
			rows[i].Volume = math.NaN()
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
		{"the second bursts", cycles(t, asItIs, upTo(8, func(r *proof.LogRow) { r.Pressure = 0 })), setQ, proof.Inconclusive, "no reference reading after it"},
		{"the second leaks 30 kPa", cycles(t, asItIs, leaks(30e3)), decayQ, proof.Failed, "the closed tank lost pressure"},
		{"the second leaks 20 kPa", cycles(t, asItIs, leaks(20e3)), decayQ, proof.Passed, passes},
		{"the second leaks 200 kPa with no volume read", cycles(t, asItIs, unread(8, 17, leaks(200e3))), decayQ, proof.Failed, "the closed tank lost pressure"},
		{"the second is let down while the meter lags", cycles(t, asItIs, func(r []proof.LogRow) []proof.LogRow {
			at := r[17]
			at.Time, at.Pressure = at.Time+20, 0.9*referencePressure
			return slices.Insert(r, 18, at)
		}), decayQ, proof.Passed, passes},
		{"let down to zero before the reference reading", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			return slices.Insert(r, 18, opened(r[17].Time+100))
		}), referenceQ, proof.Inconclusive, "before the tank is opened"},
		{"an earlier one let down to zero", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			return append(r[:7], opened(r[6].Time+100))
		}, asItIs), setQ, proof.Inconclusive, "log the next test by itself"},
		{"the gauge keeps 6 % of its strain", cycles(t, kept(0.06)), strainsQ, proof.Failed, "keeps strain at the reference pressure"},
		{"the gauge keeps 4 % of its strain", cycles(t, kept(0.04)), strainsQ, proof.Passed, passes},
		{"the second way up, it keeps 6 %", cycles(t, asItIs, kept(0.06)), strainsQ, proof.Failed, "keeps strain"},
		{"it is not read at the reference pressure", cycles(t, kept(math.NaN())), strainsQ, proof.Inconclusive, "not read at the reference pressure"},
		{"a strain blank at both ends of the hold", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			r[7].Strains[0], r[17].Strains[0] = math.NaN(), math.NaN()
			return r
		}), strainsQ, proof.Passed, passes},
		{"and for four minutes more", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			for _, i := range []int{13, 14, 15, 16, 17} {
				r[i].Strains[0] = math.NaN()
			}
			return r
		}), strainsQ, proof.Inconclusive, "not read through the hold"},
		{"topped up without a word", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			for i := 8; i <= 17; i++ {
				r[i].Pressure -= 4e3 * float64(i-7)
				if i > 12 {
					r[i].Pressure += 20e3
				}
			}
			return r
		}), decayQ, proof.Inconclusive, "water was let in"},
		{"the last reading of the hold is of letting down", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			at := r[17]
			at.Time, at.Pressure = at.Time+1, 1.0001*referencePressure
			return slices.Insert(r, 18, at)
		}), decayQ, proof.Passed, passes},
		{"a hold that warms by 2 K at its end and does not follow", cycles(t, longer(func(r *proof.LogRow, k int) { r.Temperature += 0.2 * float64(k) })), decayQ, proof.Inconclusive, "did not follow its warmth"},
		{"the second leaks 100 kPa with no temperature read", cycles(t, asItIs, func(r []proof.LogRow) []proof.LogRow {
			for i := 7; i <= 17; i++ {
				r[i].Pressure, r[i].Temperature = r[i].Pressure-10e3*float64(i-7), math.NaN()
			}
			return r
		}), decayQ, proof.Inconclusive, "no temperature tells why"},
		{"a hold of twice the time, whose temperature is read for the planned part",
			cycles(t, longer(func(r *proof.LogRow, _ int) { r.Temperature = math.NaN() })), decayQ, proof.Passed, passes},
		{"nothing is returned on the meter", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			r[18].Volume = r[17].Volume
			return r
		}), setQ, proof.Inconclusive, "no volume is read as returned"},
		{"the meter still moves at the reference pressure", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			last := r[18]
			for k := range 4 {
				at := last
				at.Time, at.Volume = last.Time-float64(40-10*k), last.Volume+1e-6*float64(4-k)
				r = slices.Insert(r, 18+k, at)
			}
			return r
		}), setQ, proof.Inconclusive, "still moving"},
		{"pumping has begun in the last row at the reference pressure", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			last := r[1]
			for k := range 5 {
				at := last
				at.Time += 10 * float64(k+1)
				if k == 4 {
					at.Pressure, at.Volume = at.Pressure+18e3, at.Volume+18e3*1.309e-10
				}
				r = slices.Insert(r, 2+k, at)
			}
			return r
		}), setQ, proof.Passed, passes},
		{"a gap of 2.5 min after the planned hold", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			at := r[17]
			at.Time += 150
			return slices.Insert(r, 18, at)
		}), reachedQ, proof.Passed, passes},
		{"a gap of 2.5 min in it", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			return slices.Delete(r, 10, 12)
		}), reachedQ, proof.Inconclusive, "too few readings"},
		{"a temperature blank at the last row of the reference", cycles(t, func(r []proof.LogRow) []proof.LogRow {
			at := r[18]
			at.Time, at.Temperature = at.Time+30, math.NaN()
			return append(r, at)
		}), setQ, proof.Passed, passes},
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

// high puts the gauge 5 m over the tank: 998.2 kg/m3 of water hold it 48.95 kPa
// under the open tank.
func high(open float64) func(*proof.Test, *proof.Log) {
	return func(x *proof.Test, l *proof.Log) {
		plan := *x.Plan
		plan.In.GaugeHeight, plan.In.WaterDensity = 5, 998.2
		x.Plan = &plan
		l.Rows[0].Pressure = open
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
		{"zero off by more", first(46e3), zeroQ, proof.Inconclusive, "before anything has gone in"},
		{"counts from a vacuum", first(101325), zeroQ, proof.Inconclusive, "counts from a vacuum"},
		{"under zero", first(-46e3), zeroQ, proof.Inconclusive, "never shows the open tank"},
		{"begins with the reference pressure", func(_ *proof.Test, l *proof.Log) { l.Rows = l.Rows[2:] }, zeroQ, proof.Inconclusive, "never shows the open tank"},
		{"drifted by the end", func(_ *proof.Test, l *proof.Log) {
			l.Rows = append(l.Rows, opened(3000))
			l.Rows[20].Pressure = 46e3
		}, zeroQ, proof.Inconclusive, "when all has come back"},
		{"drifted by the end, with water in", func(_ *proof.Test, l *proof.Log) {
			l.Rows = append(l.Rows, opened(3000))
			l.Rows[20].Pressure, l.Rows[20].Volume = 46e3, 5e-6
		}, zeroQ, proof.Inconclusive, "does not come back to the open tank"},
		{"drops out", func(_ *proof.Test, l *proof.Log) { l.Rows[5].Pressure = 0 }, pressureQ, proof.Inconclusive, "drops out at 1000 s"},
		{"back by the end", func(_ *proof.Test, l *proof.Log) {
			l.Rows = append(l.Rows, opened(3000))
			l.Rows[20].Pressure = 44e3
		}, zeroQ, proof.Passed, ""},
		{"a gauge 5 m up that was set to zero there", high(0), zeroQ, proof.Inconclusive, "before anything has gone in"},
		{"shows pressure over a volume of its own", func(_ *proof.Test, l *proof.Log) { l.Rows[0].Pressure, l.Rows[0].Volume = 46e3, 9e-6 }, zeroQ, proof.Inconclusive, "never shows the open tank"},
		{"a gauge 5 m up", high(-49.0e3), zeroQ, proof.Passed, ""},
		{"a gauge 5 m up is not under the atmosphere", high(-49.0e3), pressureQ, proof.Passed, ""},
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
