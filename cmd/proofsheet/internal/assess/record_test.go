package assess_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
)

// recordTank is the tank of the sample logs, and wallExpansion that of its
// alloy, 5083 [1/K].
const (
	recordTank    = "oxygen"
	wallExpansion = 23.8e-6
)

func judged(t *testing.T, name, text string) *report.Record {
	t.Helper()
	_, r, err := assess.Record(read(t, recordTank), readLog(t, name, text), assess.Options{Version: "test"})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestGoldenLogs makes the five logs again, and holds each verdict with its
// reason and the record that is printed of it.
func TestGoldenLogs(t *testing.T) {
	s := sheet(t, read(t, recordTank))
	for name, want := range map[string]struct{ verdict, reason string }{
		"good":    {"satisfied", "the test reached"},
		"leak":    {"not satisfied", "decay of the pressure: leak"},
		"yield":   {"not satisfied", "departure from the line: yield"},
		"air":     {"inconclusive", "stiffness and air: trapped air"},
		"warming": {"inconclusive", "decay of the pressure: water temperature explains"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(tanks, "logs", name)
			log := sampleLog(t, s, wallExpansion, name, samples[name])
			hold(t, path+".csv", log)
			got := judged(t, name+".csv", log)
			if got.Verdict != want.verdict || !strings.HasPrefix(got.Reason, want.reason) {
				t.Errorf("%s: %s, want %s: %s", got.Verdict, got.Reason, want.verdict, want.reason)
			}
			got.Sheet = "as its own golden sheet" // and what hangs on that
			got.Cautions = slices.DeleteFunc(got.Cautions, func(c string) bool { return strings.HasPrefix(c, "The tank's own sheet") })
			hold(t, path+".golden.txt", report.RecordText(s, got, 0))
			us := judged(t, name+".csv", american(t, log))
			if us.Verdict != got.Verdict || us.Reason != got.Reason {
				t.Errorf("in psi and gallons: %s: %s", us.Verdict, us.Reason)
			}
			for i, f := range us.Findings {
				if f.Outcome != got.Findings[i].Outcome || f.Reason != got.Findings[i].Reason {
					t.Errorf("in psi and gallons %s: %s: %s, want %s: %s", f.Title, f.Outcome, f.Reason, got.Findings[i].Outcome, got.Findings[i].Reason)
				}
			}
		})
	}
}

// Whoever follows the plan step by step, writes down what it predicts, and has a good
// thermometer, passes, on every tank with a plan; with an ordinary one it stays open.
func TestRecordOfThePlanItself(t *testing.T) {
	for _, name := range []string{"demo", "kerosene", recordTank} {
		in := read(t, name)
		s := sheet(t, in)
		rows, time, share := "", 0.0, 1-s.Proof.Values[0].Value/s.Proof.Pressure
		for _, step := range s.Proof.Steps {
			n, up := 2, 1.0
			if step.Name == "proof hold" {
				n = 1 + int(step.Hold/60)
			}
			if step.Pressure == s.Proof.Pressure {
				up = 1.002
			}
			for range n {
				time += 60
				rows += fmt.Sprintf("%.0f,%.5f,%.3f,%.3f,%.1f\n", time, up*step.Pressure/1e6, up*step.InjectedVolume/share*1e6, 15+1e-6*time, up*step.HoopStrain/share*1e6)
			}
			time += 120
		}
		for heading, want := range map[string]string{"temperature [degC] ± 0.01 K": "satisfied", "temperature [degC]": "inconclusive"} {
			log := readLog(t, "plan.csv", "time [s],pressure [MPa],volume [ml],"+heading+",strain-hoop [um/m]\n"+rows)
			s, r, err := assess.Record(in, log, assess.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if r.Verdict != want {
				t.Errorf("%s, %s: %s", name, heading, report.RecordText(s, r, 0))
			}
			if !strings.Contains(strings.Join(r.Cautions, " "), "names no sheet") || want == "satisfied" && !strings.Contains(r.Reason, "the log does not say") {
				t.Errorf("%s: a log of no sheet passes as one of this tank: %s", name, r.Reason)
			}
		}
	}
}

// The record of a test with gas answers all but what volumes would tell, in bar
// and in psi: a good test stays open for that alone, a leak fails, and volumes that
// were written down are named as not used.
func TestRecordOfGas(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(tanks, "kerosene.toml"))
	if err != nil {
		t.Fatal(err)
	}
	in := parse(t, "t.toml", strings.NewReplacer("examination = \"spot\"", "examination = \"full\"",
		"method = \"hydrostatic\"", "method = \"pneumatic\"\nfluid = \"nitrogen\"").Replace(string(src)))
	s := sheet(t, in)
	share := 1 - s.Proof.Values[0].Value/s.Proof.Pressure
	for _, row := range []struct {
		name, want  string
		unit, level float64 // of pressure [Pa], temperature at the start [degC or degF]
		fall        float64 // over the hold, share [-]
	}{
		{"MPa", "inconclusive: volumes: in gas no volume", 1e6, 15, 0},
		{"psi", "inconclusive: volumes: in gas no volume", 6894.757293168, 59, 0},
		{"psi", "not satisfied: decay of the pressure: leak", 6894.757293168, 59, 0.009},
	} {
		degree := map[string]string{"MPa": "degC", "psi": "degF"}[row.name]
		log, time := fmt.Sprintf("time [s],pressure [%s],volume [ml],temperature [%s] ± 0.02 K,strain-hoop [um/m] ± 2\n", row.name, degree), 0.0
		for _, step := range s.Proof.Steps {
			n, up, fall := 2, 1.0, 0.0
			if step.Name == "proof hold" {
				n, fall = 1+int(step.Hold/60), row.fall
			}
			if step.Pressure == s.Proof.Pressure {
				up = 1.0095
			}
			for i := range n {
				time += 60
				p := step.Pressure * (up - fall*float64(i)/float64(max(1, n-1)))
				log += fmt.Sprintf("%.0f,%.6f,0,%.4f,%.2f\n", time, p/row.unit, row.level+1e-6*time, step.HoopStrain/step.Pressure*p/share*1e6)
			}
			time += 120
		}
		l, err := tank.ReadLog("gas.csv", []byte(log), true)
		if err != nil {
			t.Fatal(err)
		}
		_, r, err := assess.Record(in, l, assess.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Verdict + ": " + r.Reason; !strings.HasPrefix(got, row.want) {
			t.Errorf("%s: %s", row.name, report.RecordText(s, r, 0))
		}
		for _, f := range r.Findings {
			if row.fall == 0 && f.Outcome != "not read" && (f.Outcome == "pass") == (f.Title == "volumes") {
				t.Errorf("%s: %s: %s", row.name, f.Title, f.Reason)
			}
		}
		notes := strings.Join(r.Notes, "\n")
		if !strings.Contains(notes, "Not used: the column volume: in gas it tells nothing") || strings.Contains(notes, "1 ml or") {
			t.Errorf("%s: %s", row.name, notes)
		}
		for _, c := range r.Charts {
			if c.Name == "record-volume" || c.Name == "record-departure" {
				t.Errorf("a gas has a chart %s", c.Name)
			}
		}
	}
}

// Without a plan there is nothing to pass by, however good the log.
func TestRecordWithoutPlan(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(tanks, recordTank+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	log, err := os.ReadFile(filepath.Join(tanks, "logs", "good.csv"))
	if err != nil {
		t.Fatal(err)
	}
	thin := strings.Replace(string(src), "thickness = \"5 mm\"", "thickness = \"2 mm\"", 1)
	for _, row := range []struct{ name, text, want string }{
		{"a wall that yields in it", thin, "plan: no proof plan is issued"},
		{"gas", strings.Replace(string(src), "method = \"hydrostatic\"", "method = \"pneumatic\"\nfluid = \"nitrogen\"", 1), ""},
	} {
		_, names, _ := strings.Cut(string(log), "# sheet: ") // of no sheet: that is another question
		_, unnamed, _ := strings.Cut(names, "\n")
		s, r, err := assess.Record(parse(t, "t.toml", row.text), readLog(t, "good.csv", unnamed), assess.Options{Version: "test"})
		if err != nil {
			t.Fatal(err)
		}
		if r.Verdict == "satisfied" || !strings.Contains(r.Reason, row.want) {
			t.Errorf("%s: %s", row.name, report.RecordText(s, r, 0))
		}
	}
}

// hold compares a text with a file, which -update writes.
func hold(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s differs; got:\n%s", path, got)
	}
}

// The setting is that of the plan's temperature: at another one the tank is planned
// again. The demo at 30 °C is set to 3.293 MPa, at 15 °C to 3.358 MPa.
func TestRecordOffThePlansTemperature(t *testing.T) {
	in := changed(t, "demo", "orientation = \"upright\"\ntemperature = \"15 degC\"", "orientation = \"upright\"\ntemperature = \"30 degC\"")
	s := sheet(t, in)
	for _, row := range []struct {
		celsius, over float64
		want, reason  string
	}{
		{26, 1.004, "pass", "within 5 K"}, {38, 1.004, "pass", "planned again for it"}, {24, 1.004, "inconclusive", "the setting is higher than what was held"}, {15, 1.004, "inconclusive", "15.0 K off the plan"},
		{41, 1.004, "inconclusive", "at 41.0 °C no plan would be issued"}, {-1, 1.004, "not read", "no temperature was read in the hold"},
	} {
		log := "time [s],pressure [MPa],volume [ml],temperature [degC]\n0,0,0,\n"
		for i := range 11 {
			cell := fmt.Sprintf("%.2f", row.celsius+0.001*float64(i))
			if row.celsius < 0 {
				cell = ""
			}
			log += fmt.Sprintf("%d,%.5f,400,%s\n", 60+60*i, row.over*s.Proof.Pressure/1e6, cell)
		}
		_, r, err := assess.Record(in, readLog(t, "t.csv", log), assess.Options{})
		if err != nil {
			t.Fatal(err)
		}
		f := r.Findings[len(r.Findings)-1]
		if f.Title != "temperature of the test" || f.Outcome != row.want || !strings.Contains(f.Reason, row.reason) {
			t.Errorf("%g °C: %s: %s: %s", row.celsius, f.Title, f.Outcome, f.Reason)
		}
	}
}

// A cylinder without a plain place predicts no strain: of a gauge on it only
// straightness is asked, and the record says so.
func TestRecordWithoutPlainPlace(t *testing.T) {
	log := "time [s],pressure [MPa],volume [ml],temperature [degC],strain-hoop [um/m]\n0,0,0,15,0\n60,0.1,9,15,90\n120,0.4,36,15,360\n180,0.8,72,15,720\n240,1.0,90,15,900\n300,0.1,9,15,90\n"
	for length, want := range map[string]bool{"800 mm": false, "110 mm": true} {
		in := changed(t, "kerosene", "length = \"800 mm\"", "length = \""+length+"\"")
		_, r, err := assess.Record(in, readLog(t, "t.csv", log), assess.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(strings.Join(r.Notes, " "), "No strain is predicted, as the plan says"); got != want {
			t.Errorf("%s: %q", length, r.Notes)
		}
		for _, f := range r.Findings {
			for _, v := range f.Values {
				if strings.HasPrefix(v.Quantity.Name, "hoop: strain at the top") && (v.Bound == "") != want {
					t.Errorf("%s: %+v", length, v)
				}
			}
		}
	}
}
