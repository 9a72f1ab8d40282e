package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestCompare sets the demonstration tank beside one with a thicker cylinder and
// another case.
func TestCompare(t *testing.T) {
	src, err := os.ReadFile("../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	other := filepath.Join(t.TempDir(), "other.toml")
	text := strings.Replace(string(src), `thickness = "8 mm"`, `thickness = "9 mm"`, 1) + "\n[[case]]\nname = \"vented\"\nullage_pressure = \"0 bar\"\nfill = 0.5\n"
	if err := os.WriteFile(other, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	status, out, says := call(t, "", "compare", "../../testdata/tanks/demo.toml", other)
	if status != exitFails || says != "" {
		t.Fatalf("status %d: %s", status, says)
	}
	fields := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{"cylinder.thickness 8 mm 9 mm", "case.vented.fill - 0.5", "dry_mass ", "no such check -> ", "cylinder/hoop@meop +", "checks are alike"} {
		if !strings.Contains(fields, want) {
			t.Errorf("%q is missing in\n%s", want, out)
		}
	}
	if _, whole, _ := call(t, "", "compare", "../../testdata/tanks/demo.toml", other, "--all"); len(whole) <= len(out) {
		t.Error("--all prints no more")
	}
}

// TestCompareAlike sets a tank beside itself: nothing differs.
func TestCompareAlike(t *testing.T) {
	demo := "../../testdata/tanks/demo.toml"
	_, out, _ := call(t, "", "compare", demo, demo)
	if !strings.Contains(out, "nothing differs") || strings.Contains(out, " -> ") {
		t.Errorf("%s", out)
	}
	if status, _, says := call(t, "", "compare", demo); status != exitInput || !strings.Contains(says, "takes two files, not 1") {
		t.Errorf("status %d: %s", status, says)
	}
}
