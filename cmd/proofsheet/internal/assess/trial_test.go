package assess_test

import (
	"os"
	"path/filepath"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// TestChecksAreThoseOfTheSheet makes the checks of every tank twice, with and
// without the sheet, and part by part.
func TestChecksAreThoseOfTheSheet(t *testing.T) {
	files, err := filepath.Glob("../../../../testdata/tanks/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		in, err := tank.Read(file, src, func(path string) ([]byte, error) {
			return os.ReadFile(filepath.Join(filepath.Dir(file), path))
		})
		if err != nil {
			t.Fatal(err)
		}
		s, err := assess.Assess(in, assess.Options{})
		if err != nil {
			t.Fatal(err)
		}
		alone, err := assess.Checks(in)
		if err != nil {
			t.Fatal(err)
		}
		same := map[string]check.Status{}
		for _, r := range alone {
			same[r.ID+"@"+r.Case] = r.Status()
		}
		if len(alone) != len(s.Checks) {
			t.Errorf("%s: %d checks alone, %d on the sheet", file, len(alone), len(s.Checks))
		}
		for _, r := range s.Checks {
			if got, ok := same[r.ID+"@"+r.Case]; !ok || got != r.Status() {
				t.Errorf("%s: %s@%s is %v alone, %v on the sheet", file, r.ID, r.Case, got, r.Status())
			}
		}
		trialAgrees(t, in, s.Checks)
	}
}

// trialAgrees makes the checks of each part and port by themselves: of its
// states the worst is what the sheet says.
func trialAgrees(t *testing.T, in *tank.Tank, want []check.Result) {
	t.Helper()
	tr, err := assess.NewTrial(in)
	if err != nil {
		t.Fatal(err)
	}
	least := map[string]float64{}
	note := func(r check.Result) bool {
		id := r.ID + "@" + r.Case
		if m, ok := least[id]; !ok || r.Margin() < m {
			least[id] = r.Margin()
		}
		return true
	}
	for _, part := range []string{"cylinder", "head.aft", "head.forward"} {
		tr.Part(part, note)
	}
	for _, p := range in.Port {
		tr.Port(p.Group, note)
	}
	seen := 0
	for _, r := range want {
		if m, ok := least[r.ID+"@"+r.Case]; ok {
			seen++
			if m != r.Margin() && r.Status() != check.NotAssessed && r.Status() != check.NotApplicable {
				t.Errorf("%s@%s: margin %g alone, %g on the sheet", r.ID, r.Case, m, r.Margin())
			}
		}
	}
	if seen < len(in.Port)+3 {
		t.Errorf("only %d checks were compared", seen)
	}
}
