package assess_test

import (
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
)

// TestEveryCheckIsExplained looks every id of every example tank up.
func TestEveryCheckIsExplained(t *testing.T) {
	files, err := filepath.Glob("../../../../testdata/tanks/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range files {
		for _, r := range sheet(t, read(t, strings.TrimSuffix(filepath.Base(file), ".toml"))).Checks {
			if e, ok := assess.Explain(r.ID); !ok || e.Asks == "" || len(e.Change) == 0 {
				t.Errorf("%s: %s is not explained", filepath.Base(file), r.ID)
			}
		}
	}
}

// TestExplanationsAreWhole holds that nothing is left out and no id comes twice.
func TestExplanationsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range assess.Explanations() {
		if seen[e.ID] {
			t.Errorf("%s comes twice", e.ID)
		}
		seen[e.ID] = true
		if e.Asks == "" || e.Formula == "" || e.Source == "" || e.Limits == "" || len(e.Change) == 0 {
			t.Errorf("%s is not whole", e.ID)
		}
	}
	for id, want := range map[string]string{
		"cylinder/hoop@meop": "cylinder/hoop", "head.aft/junction": "head.X/junction", "port.fill-2/area@boost": "port.N/area",
		"head.aft/segment-misalignment@meop": "head.X/segment-misalignment", "head.X/knuckle": "head.X/knuckle",
	} {
		if e, ok := assess.Explain(id); !ok || e.ID != want {
			t.Errorf("%s: %q, %t, want %s", id, e.ID, ok, want)
		}
	}
	if _, ok := assess.Explain("cylinder/nothing"); ok {
		t.Error("cylinder/nothing is explained")
	}
}
