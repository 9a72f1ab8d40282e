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

// A hold without an interval has its one row, and minutes are rounded up to halves.
func TestLogRowsWithoutInterval(t *testing.T) {
	p := &report.Proof{Steps: []report.ProofStep{report.Unpredicted("proof hold", 1, 1e6, 600)}}
	if rows := p.LogRows(); len(rows) != 3 {
		t.Errorf("%d rows", len(rows))
	}
	for seconds, want := range map[float64]string{120: "2 min", 130: "2.5 min", 3600: "60 min"} {
		if got := report.Minutes(seconds); got != want {
			t.Errorf("%g s: %s, want %s", seconds, got, want)
		}
	}
}
