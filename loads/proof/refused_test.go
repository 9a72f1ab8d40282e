package proof_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// A ratio that is not known, or is none, corrects nothing.
func TestRatiosRefused(t *testing.T) {
	for _, ratios := range [][]proof.Ratio{nil, {{Material: "plate", Value: math.NaN()}}, {{Material: "plate", Value: 1}, {Material: "weld", Value: 0.04}}} {
		if cf, err := proof.CorrectionFactor(ratios); err == nil || !math.IsNaN(cf) || ratios == nil && !errors.Is(err, proof.ErrNoRatio) {
			t.Errorf("%v: %g, %v", ratios, cf, err)
		}
	}
}

// A rule that is no rule sets no limit; one that ignores the seam shows E as 1.
func TestLimitOfRules(t *testing.T) {
	bad := rule(t, "flight", proof.Hydrostatic)
	bad.K = math.NaN()
	k, _, err := proof.Limit([]proof.Rule{rule(t, "vessel", proof.Hydrostatic), bad}, 1)
	if err == nil || !strings.Contains(err.Error(), "limit at proof") || !math.IsNaN(k) {
		t.Errorf("%g, %v", k, err)
	}
	in := oxygenTank(t)
	in.Rules = []proof.Rule{rule(t, "vessel-eu", proof.Hydrostatic)}
	got := plan(t, in).CheckYield(proof.Stressed{Part: "long seam", Pressure: 4.6e6, Membrane: 150e6, Yield: 210e6, Efficiency: 0.7})
	checktest.Close(t, "Sy/1.05", got.Capacity.Value, 200e6, 1e-12)
	if got.Status() != check.Satisfied || got.Inputs[2].Symbol != "E" || got.Inputs[2].Value != 1 {
		t.Errorf("%v, %+v", got.Status(), got.Inputs[2])
	}
}

// A sum rounded down leaves no point short: two thousand depths, two services.
func TestNoPointLeftShort(t *testing.T) {
	for i := range 2000 {
		in := oxygenTank(t)
		in.Points[1].WaterDepth = 0.1 + 0.00371*float64(i)
		in.Points[1].Service = 3.0e6 + 1e4*math.Sqrt(float64(i+1))
		for _, s := range plan(t, in).Points {
			if s.Low < s.Required {
				t.Fatalf("%s, %g m: %.17g Pa shown, %.17g asked", s.Name, s.WaterDepth, s.Low, s.Required)
			}
		}
	}
}

func TestWaterIsRecalled(t *testing.T) {
	if src := proof.WaterSource(); src.How != check.Memory || !strings.Contains(src.Doc, "Kell") {
		t.Errorf("%+v", src)
	}
}

// The words of the answers, a pass under no other.
func TestOutcomes(t *testing.T) {
	for o, want := range map[proof.Outcome]string{proof.Inconclusive: "inconclusive", proof.Failed: "fail", proof.Passed: "pass", proof.NotRead: "not read"} {
		if o.String() != want {
			t.Errorf("%d: %s", o, o)
		}
	}
}

// A log that is none is refused in a few words, however long it is.
func TestLongBadLog(t *testing.T) {
	l := proof.Log{Rows: make([]proof.LogRow, 1000)}
	for i := range l.Rows {
		l.Rows[i] = proof.LogRow{Time: math.NaN(), Pressure: math.NaN()}
	}
	got, err := recordTest(t).Judge(l)
	if got != nil || err == nil || !strings.Contains(err.Error(), "times of the log do not rise") {
		t.Fatal(err)
	}
	if n := strings.Count(err.Error(), "\n"); n > 30 {
		t.Errorf("%d lines for one log", n)
	}
}

// The balance between two rows: the wall's own thermometer counts for the wall where there is one. Water and wall apart by 0.2 K
// leave 3 α · 0.2 K · V/C more to explain.
func TestWallThermometer(t *testing.T) {
	test := recordTest(t)
	l := handLog{warm: 0.2}.log(t)
	same, err := test.Judge(l)
	if err != nil {
		t.Fatal(err)
	}
	a := same.Balance(7, 17) // before the rows, which it reads, are changed
	for i := range l.Rows {
		l.Rows[i].Wall = 293.15
	}
	cold, err := test.Judge(l)
	if err != nil {
		t.Fatal(err)
	}
	b := cold.Balance(7, 17)
	C := test.Full.Growth + test.Full.Compressibility*test.Full.Volume
	checktest.Close(t, "explained", b.Explained-a.Explained, 3*test.Full.WallExpansion*0.2*test.Full.Volume/C, 1e-3)
	checktest.Close(t, "as read", b.Change+1, a.Change+1, 1e-12)
}

// Where the line is softer than predicted the drift is that of the predicted tank, with the air that was found.
func TestDriftWithAir(t *testing.T) {
	test := recordTest(t)
	got, err := test.Judge(handLog{softer: 0.2, air: 200e-6}.log(t))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "air", got.Line.Air, 200e-6, 1e-6)
	full := test.Full
	full.Air = 200e-6
	want, err := full.Drift(1.005 * referencePressure)
	checktest.Close(t, "drift", got.Decay.Drift, want, 2e-3) // the water's expansion is taken at the setting there
	if err != nil {
		t.Fatal(err)
	}
}

// Readings under the atmosphere, and a stop read twice, change no answer; a way up that is too quick is said.
func TestRowsOfTheWayUp(t *testing.T) {
	l := handLog{}.log(t)
	first := proof.LogRow{Time: -400, Pressure: -500, Volume: 0, Temperature: 293.15, Wall: math.NaN(), Strains: []float64{0}}
	again := l.Rows[2]
	again.Time -= 60
	l.Rows = append(append([]proof.LogRow{first}, append(l.Rows[:2:2], again)...), l.Rows[2:]...)
	got, err := recordTest(t).Judge(l)
	if err != nil || got.Outcome != proof.Passed {
		t.Errorf("%v, %+v", err, got.Findings)
	}
	said := func(rate float64) bool {
		test := recordTest(t)
		test.Plan.Rate = rate
		_, _, got := answer(t, test, handLog{}.log(t), reachedQ)
		return strings.Contains(strings.Join(got.Findings[1].Notes, " "), "raised faster than the plan says")
	}
	// 0.105 of 4.5 MPa in 60 s is 7875 Pa/s, from 0.9 to the top.
	if said(7875/1.1*1.001) || !said(7875/1.1*0.999) {
		t.Error("the rate of 7875 Pa/s")
	}
}

// A second cycle whose volumes cannot be corrected, or that is neither read well enough nor by strain, shows nothing.
func TestSecondCycleNotShown(t *testing.T) {
	again := func() proof.Log {
		l := handLog{left: 0.03 * 409e-6}.log(t)
		first := l.Rows
		for _, r := range append(first[2:8:8], first[len(first)-1]) {
			r.Time = l.Rows[len(l.Rows)-1].Time + 200
			l.Rows = append(l.Rows, r)
		}
		return l
	}
	for _, row := range []struct {
		name, want string
		change     func(l *proof.Log)
	}{
		{"no temperature", "no water temperature at the reference readings of the second cycle", func(l *proof.Log) { l.Rows[len(l.Rows)-1].Temperature = math.NaN() }},
		{"no strain, a poor meter", "no hoop strain was read", func(l *proof.Log) {
			l.VolumeChange, l.Gauges = 6e-6, nil
			for i := range l.Rows {
				l.Rows[i].Strains = nil
			}
		}},
	} {
		l := again()
		row.change(&l)
		if o, reason, _ := answer(t, recordTest(t), l, setQ); o != proof.Inconclusive || !strings.Contains(reason, row.want) {
			t.Errorf("%s: %v: %s", row.name, o, reason)
		}
	}
}
