package pdf_test

import (
	"math"
	"strings"
	"testing"
)

// The form has a row for each reading of the hold and for the zeros; where no relief
// device has room it names who attends; a gas has no column for volumes, in the form or
// in the table of steps.
func TestLogForm(t *testing.T) {
	s := fixture()
	words := func() string {
		return strings.Join(strings.Fields(run(t, "pdftotext", "-layout", saved(t, s), "-")), " ")
	}
	water := words()
	for _, want := range []string{"8.1 hold, after 2 min", "totals since the vent was closed", "8.5 hold, after 10 min", "returned", "metal", "axial", "adds, ± stop band", "Relief device set at", "10 min, read every 2 min"} {
		if !strings.Contains(water, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if n := strings.Count(water, "zero of"); n != 2 {
		t.Errorf("%d rows for the zero of the gauges", n)
	}
	s.Proof.Method, s.Proof.Relief = "pneumatic", math.NaN()
	gas := words()
	for _, no := range []string{"returned", "line takes", "totals", "adds,", "Relief device set at"} {
		if strings.Contains(gas, no) {
			t.Errorf("gas: %q does not belong", no)
		}
	}
	if !strings.Contains(gas, "No relief device: attended by") || !strings.Contains(gas, "8.5 hold, after 10 min") {
		t.Error("gas: the form is not whole")
	}
}
