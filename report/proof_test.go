package report_test

import (
	"math"
	"testing"

	"proofsheet/report"
)

// What a step adds is printed with its unit once, and without a band where none is told.
func TestStepAdds(t *testing.T) {
	for _, row := range []struct {
		added, band float64 // [ml]
		want        string
	}{{55.25, 6.63, "55.25 ± 6.63 ml"}, {-524.9, math.NaN(), "-524.9 ml"}, {math.NaN(), math.NaN(), "–"}, {2100, 42, "2.1 l ± 42 ml"}} {
		s := report.Unpredicted("step", 1, 1e6, 120)
		s.Added, s.StopBand = row.added*1e-6, row.band*1e-6
		if got := s.Adds("si"); got != row.want {
			t.Errorf("%g ± %g: %q, want %q", row.added, row.band, got, row.want)
		}
	}
}
