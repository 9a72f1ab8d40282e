package checktest

import (
	"errors"
	"math"
	"testing"
)

// A recorder counts what a comparison reports.
type recorder struct {
	testing.TB
	faults int
}

func (r *recorder) Helper()               {}
func (r *recorder) Errorf(string, ...any) { r.faults++ }

func TestPrinted(t *testing.T) {
	for _, row := range []struct {
		got     float64
		printed string
		faults  int
	}{
		{1.2349, "1.23", 0}, {1.2351, "1.23", 1}, {1234.4, "1234", 0}, {1235.1, "1234", 1},
		{1.24e6, "1.2e6", 0}, {1.26e6, "1.2e6", 1}, {-0.5, "-0.50", 0},
	} {
		r := &recorder{TB: t}
		Printed(r, "row", row.got, row.printed)
		if r.faults != row.faults {
			t.Errorf("%g against %s: %d faults, want %d", row.got, row.printed, r.faults, row.faults)
		}
	}
}

func TestClose(t *testing.T) {
	r := &recorder{TB: t}
	Close(r, "inside", 101, 100, 0.0101)
	Close(r, "outside", 102, 100, 0.0101)
	if r.faults != 1 {
		t.Errorf("%d faults, want one", r.faults)
	}
}

func TestRefused(t *testing.T) {
	r := &recorder{TB: t}
	thin := errors.New("wall too thin")
	Refused(r, "named", thin, "wall")
	RefusedNumber(r, "named, no number", math.NaN(), thin, "wall")
	if r.faults != 0 {
		t.Errorf("%d faults, want none", r.faults)
	}
	Refused(r, "no error", nil, "wall")
	Refused(r, "another error", thin, "radius")
	RefusedNumber(r, "a number all the same", 1, thin, "wall")
	RefusedNumber(r, "no error", math.NaN(), nil, "wall")
	if r.faults != 4 {
		t.Errorf("%d faults, want four", r.faults)
	}
}
