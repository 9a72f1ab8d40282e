package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

// A test warmer than any case asks for the service pressure times its factor and no
// less: the correction is 1 and the plan is issued, with as many checks. A colder one
// asks for more, as the metal is stronger then.
func TestProofWarmerThanService(t *testing.T) {
	at := func(degrees string) *report.Sheet {
		t.Helper()
		s := assessed(strings.Replace(text(t, "demo"), `temperature = "15 degC"`, `temperature = "`+degrees+`"`, 1))
		if s == nil || s.Proof == nil {
			t.Fatalf("%s: no plan", degrees)
		}
		return s
	}
	level := at("30 degC") // the hottest case of this tank
	colder := level.Proof.Pressure
	for _, degrees := range []string{"25 degC", "20 degC"} {
		p := at(degrees).Proof.Pressure
		if !(p > colder) {
			t.Errorf("%s: %.0f Pa, warmer %.0f Pa", degrees, p, colder)
		}
		colder = p
	}
	for _, degrees := range []string{"30.5 degC", "31 degC", "35 degC", "40 degC"} {
		s := at(degrees)
		if len(s.Checks) != len(level.Checks) {
			t.Errorf("%s: %d checks, %d at 30 degC", degrees, len(s.Checks), len(level.Checks))
		}
		reach := find(t, s, "proof/reach@proof")
		if cf := reach.Inputs[1]; cf.Symbol != "CF" || cf.Value != 1 || reach.Status() != check.Satisfied {
			t.Errorf("%s: %s = %g, %v", degrees, cf.Symbol, cf.Value, reach.Status())
		}
		if p := s.Proof.Pressure / level.Proof.Pressure; p < 0.999 || p > 1.001 { // water is lighter
			t.Errorf("%s: %.4f of the setting at 30 degC", degrees, p)
		}
		if notes := strings.Join(s.Proof.Notes, "\n"); !strings.Contains(notes, "a test warmer than service counts as 1") {
			t.Errorf("%s: %s", degrees, notes)
		}
	}
}
