package assess_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// A failer reports what does not hold: a test, a fuzz or a property run.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
}

// honest asks of any sheet what none may break: a verdict rests on finite
// numbers and on a source, what was not judged says why, the whole is never
// better than its parts, people near are never left to the flight rule, and no
// proof plan goes out for a wall that yields in it.
func honest(t failer, s *report.Sheet) {
	t.Helper()
	near := map[string]bool{}
	for _, c := range s.Cases {
		near[c.Name] = c.People != "clear"
	}
	open := false
	for _, r := range s.Checks {
		id := report.FullID(r)
		switch r.Status() {
		case check.Satisfied, check.NotSatisfied:
			judgedOnNumbers(t, id, r)
		default:
			if r.Reason() == "" {
				t.Errorf("%s is %v without a reason", id, r.Status())
			}
		}
		open = open || r.Status() == check.NotAssessed
		if near[r.Case] && r.Rule == "flight" {
			t.Errorf("%s: somebody may be near, and the rule is flight", id)
		}
	}
	if want := check.Verdict(s.Checks); s.Verdict != want {
		t.Errorf("verdict %v, its checks say %v", s.Verdict, want)
	}
	for _, q := range s.Quantities {
		if q.Key == "tank.near_pressure" && (open && q.Value != 0 || !(q.Value >= 0)) {
			t.Errorf("near pressure %g Pa with checks that were not made: %t", q.Value, open)
		}
	}
	proofIsCovered(t, s)
}

// judgedOnNumbers asks that a verdict of one check can be redone by hand.
func judgedOnNumbers(t failer, id string, r check.Result) {
	t.Helper()
	numbers := append([]check.Quantity{r.Demand, r.Capacity, {Name: "factor", Value: r.Factor}}, r.Inputs...)
	for _, q := range numbers {
		if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
			t.Errorf("%s is %v with %s = %g", id, r.Status(), q.Name, q.Value)
		}
	}
	if r.Demand.Unit != r.Capacity.Unit || r.Demand.Unit == "" {
		t.Errorf("%s: demand in %q, capacity in %q", id, r.Demand.Unit, r.Capacity.Unit)
	}
	if r.Err != nil || r.Factor < 1 || r.Source.Doc == "" {
		t.Errorf("%s is %v with error %v, factor %g, source %q", id, r.Status(), r.Err, r.Factor, r.Source.Doc)
	}
	if covered := r.Factor*r.Demand.Value <= r.Capacity.Value; covered != (r.Status() == check.Satisfied) {
		t.Errorf("%s is %v: %g times %g against %g", id, r.Status(), r.Factor, r.Demand.Value, r.Capacity.Value)
	}
}

// proofIsCovered asks that a plan is issued only where its two checks hold.
func proofIsCovered(t failer, s *report.Sheet) {
	t.Helper()
	if s.Proof == nil {
		return
	}
	if p := s.Proof.Pressure; !(p > 0) || math.IsInf(p, 0) {
		t.Errorf("proof pressure %g Pa", p)
	}
	for _, r := range s.Checks {
		if (r.ID == "proof/yield" || r.ID == "proof/reach") && r.Status() != check.Satisfied {
			t.Errorf("a proof plan is issued, and %s is %v", r.ID, r.Status())
		}
	}
}

// FuzzAssess takes any text for a tank: what can be read either is refused as a
// whole or gives an honest sheet.
func FuzzAssess(f *testing.F) {
	files, err := filepath.Glob(filepath.Join(tanks, "*.toml"))
	if err != nil || files == nil {
		f.Fatalf("no example tanks: %v", err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(src))
	}
	none := func(string) ([]byte, error) { return nil, errors.New("no other files") }
	f.Fuzz(func(t *testing.T, src string) {
		in, err := tank.Read("fuzz.toml", []byte(src), none)
		if err != nil || len(in.Port) > 40 || len(in.Case) > 20 {
			return
		}
		s, err := assess.Assess(in, assess.Options{})
		if err != nil {
			return
		}
		honest(t, s)
	})
}
