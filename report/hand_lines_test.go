package report_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

func boiler() check.Result {
	return check.Result{ID: "cylinder/hoop", Formula: "σ = p r/t ≤ E S",
		Inputs: []check.Quantity{check.Pa("p", "pressure", 2.5e6), check.M("r", "radius", 0.2), check.M("t", "wall", 0.008), check.Num("E", "efficiency", 0.85), check.Pa("S", "allowable", 120e6)},
		Demand: check.Pa("σ", "stress", 62.5e6), Capacity: check.Pa("E S", "allowable", 102e6), Factor: 1}
}

func TestHandLines(t *testing.T) {
	var lines []string
	for _, h := range report.Hand(boiler(), "si") {
		lines = append(lines, h.String())
	}
	want := "σ = 2.5 MPa · 200 mm/(8 mm) = 62.50 MPa | E S = 0.85 · 120 MPa = 102.0 MPa"
	if got := strings.Join(lines, " | "); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// TestHandRefuses prints no step that does not give the answer, and none of a check
// that was not made.
func TestHandRefuses(t *testing.T) {
	other := boiler()
	other.Demand.Value *= 1.001
	if lines := report.Hand(other, "si"); len(lines) != 1 || lines[0].Symbol != "" {
		t.Errorf("a demand from elsewhere is worked out: %v", lines)
	}
	broken := boiler()
	broken.Factor = 0.5
	if lines := report.Hand(broken, "si"); lines != nil {
		t.Errorf("a check that is not assessed is worked out: %v", lines)
	}
}

// TestHandDigits has a difference of close numbers, for which six digits do not do.
func TestHandDigits(t *testing.T) {
	r := check.Result{ID: "a/b", Formula: "c = a − b ≤ S", Inputs: []check.Quantity{check.M("a", "", 1.0000123456), check.M("b", "", 1)},
		Demand: check.M("c", "", 0.0000123456), Capacity: check.M("S", "", 1), Factor: 1}
	lines := report.Hand(r, "si")
	if len(lines) != 1 || !strings.Contains(lines[0].String(), "1000.0123") {
		t.Errorf("%v", lines)
	}
}

// TestAttached embeds a small sheet whole, and of one with very many inputs no input
// of a check that was made.
func TestAttached(t *testing.T) {
	s := &report.Sheet{}
	for range 3 {
		s.Checks = append(s.Checks, boiler())
	}
	s.Checks[1].Factor = 0.5 // not assessed
	s.Settle()
	whole, err := s.JSON()
	if err != nil {
		t.Fatal(err)
	}
	if data, err := s.Attached(); err != nil || string(data) != string(whole) {
		t.Errorf("a small sheet is not embedded whole: %v", err)
	}
	for i := range s.Checks {
		for range 20000 {
			s.Checks[i].Inputs = append(s.Checks[i].Inputs, check.M("x", "x", float64(i)))
		}
	}
	data, err := s.Attached()
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(data), `"name":"x"`); n != 20000 {
		t.Errorf("%d inputs embedded, want those of the check that is not assessed", n)
	}
	if len(s.Checks[0].Inputs) == 0 {
		t.Error("the sheet itself lost its inputs")
	}
}
