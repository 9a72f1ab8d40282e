package assess_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/loads/proof"
	"proofsheet/report"
)

// Whoever fills in the printed form, row by row, with what the plan predicts and a good
// thermometer, and copies it out, passes the record: the form asks for every reading
// that the record wants.
func TestFormPassesItsRecord(t *testing.T) {
	for _, name := range []string{"demo", "kerosene", recordTank} {
		in := read(t, name)
		s := sheet(t, in)
		share := 1 - s.Proof.Values[0].Value/s.Proof.Pressure
		log, time := "time [s],pressure [MPa],volume [ml],temperature [degC] ± 0.01 K,strain-hoop [um/m],strain-axial [um/m]\n", 0.0
		steps := map[float64]report.ProofStep{}
		for _, r := range s.Proof.LogRows() {
			p, q, up := r.Pressure, r.ProofStep, 1.0
			switch {
			case math.IsNaN(p): // vent open
				p, q.InjectedVolume, q.HoopStrain, q.AxialStrain = 0, 0, 0, 0
			case math.IsNaN(q.InjectedVolume): // in the hold
				q = steps[p]
			default:
				steps[p] = q
			}
			if p == s.Proof.Pressure {
				up = 1.002
			}
			time += s.Proof.HoldRead
			log += fmt.Sprintf("%.0f,%.5f,%.3f,%.3f,%.1f,%.1f\n", time, up*p/1e6, up*q.InjectedVolume/share*1e6, 15+1e-6*time, up*q.HoopStrain/share*1e6, up*q.AxialStrain/share*1e6)
		}
		s, r, err := assess.Record(in, readLog(t, "form.csv", log), assess.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Verdict != "satisfied" {
			t.Errorf("%s: %s", name, report.RecordText(s, r, 0))
		}
	}
}

// The form holds the zero of the gauges before and after, and the hold at the interval
// that is asked for, the last reading at its end.
func TestFormRows(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	if want := proof.HoldReadings(s.Proof.Hold); s.Proof.HoldRead != want {
		t.Fatalf("read every %g s, want %g", s.Proof.HoldRead, want)
	}
	rows := s.Proof.LogRows()
	last := len(rows) - 1
	if len(rows) != len(s.Proof.Steps)+2+5 || rows[0].Name != rows[last].Name || !math.IsNaN(rows[0].Pressure) {
		t.Errorf("%d rows, from %q to %q", len(rows), rows[0].Name, rows[last].Name)
	}
	var held []string
	for _, r := range rows {
		if r.Pressure == s.Proof.Pressure && r.Cycle == 1 {
			held = append(held, r.Number+" "+r.Name)
		}
	}
	if got := fmt.Sprint(held); got != "[8 proof hold 8.1 hold, after 2 min 8.2 hold, after 4 min 8.3 hold, after 6 min 8.4 hold, after 8 min 8.5 hold, after 10 min]" {
		t.Error(got)
	}
	s.Proof.HoldRead = 7 * 60 // an interval that does not divide the hold
	if rows = s.Proof.LogRows(); rows[10].Name != "hold, after 10 min" {
		t.Errorf("the hold ends with %q", rows[10].Name)
	}
}
