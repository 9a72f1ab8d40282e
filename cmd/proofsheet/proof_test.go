package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
)

// TestProofStations: the plan says at which station each point stands, as two points
// of one case have one name.
func TestProofStations(t *testing.T) {
	status, out, says := call(t, "", "proof", "../../testdata/tanks/flight.toml")
	if status != exitFails || says != "" {
		t.Fatalf("status %d: %s", status, says)
	}
	rows := regexp.MustCompile(`(?m)^head\.\w+, .*?  +(-?[0-9.]+ mm) .*MPa$`).FindAllStringSubmatch(out, -1)
	seen := map[string]bool{}
	for _, row := range rows {
		if seen[row[0]] {
			t.Errorf("twice: %s", row[0])
		}
		seen[row[0]] = true
	}
	if len(rows) < 8 || !strings.Contains(out, "station z") {
		t.Errorf("%d points with a station\n%s", len(rows), out)
	}
}

// planned returns the sheet of an example tank with pairs of old and new text in its file.
func planned(t *testing.T, name string, changes ...string) *report.Sheet {
	t.Helper()
	src, err := os.ReadFile("../../testdata/tanks/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	in, err := tank.Read(name+".toml", []byte(strings.NewReplacer(changes...).Replace(string(src))), os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	s, err := assess.Assess(in, assess.Options{})
	if err != nil || s.Proof == nil {
		t.Fatalf("%s: no plan: %v", name, err)
	}
	return s
}

// On a terminal of 80 columns the plan stays in them, in either system of units, and
// loses no column; a pipe gets a step to a line.
func TestProofFitsTheTerminal(t *testing.T) {
	for _, units := range []string{"si", "us"} {
		s := planned(t, "demo", `title = "`, `units = "`+units+`"`+"\ntitle = \"")
		narrow, wide := proofText(s, 80), proofText(s, 0)
		for line := range strings.Lines(narrow) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 80 {
				t.Errorf("%s: %d columns: %s", units, n, line)
			}
		}
		step := regexp.MustCompile(`(?m)^8 proof hold, 10 min +\S+ \S+  +\S+ \S+  +\S+ ± \S+ \S+  +\S+  +\S+  +\S+ \S+$`)
		over := regexp.MustCompile(`(?m)^8 proof hold, 10 min\n  \S+ \S+  +\S+ \S+  +\S+ ± \S+ \S+  +\S+  +\S+  +\S+ \S+$`)
		if !step.MatchString(wide) || !over.MatchString(narrow) {
			t.Errorf("%s: a step in a pipe and on a terminal:\n%s\n%s", units, wide, narrow)
		}
	}
}

// The log form has one blank for each quantity at each of its rows; that of a gas asks
// for no volume.
func TestProofLogForm(t *testing.T) {
	water := planned(t, "demo")
	rows := len(water.Proof.LogRows())
	text := proofText(water, 0)
	for _, blank := range []string{"time __", "gauge 1 __", "gauge 2 __", "fluid __", "metal __", "   in __", "returned __", "line __", "hoop __", "axial __", "ΔD __", "by __"} {
		if n := strings.Count(text, blank); n != rows && blank != "time __" || n < rows {
			t.Errorf("%q stands %d times in %d rows", blank, n, rows)
		}
	}
	if !strings.Contains(text, "\n8.5 hold, after 10 min: 3.358 MPa\n") || strings.Count(text, "vent open: zero of the gauges") != 2 {
		t.Error(text)
	}
	gas := planned(t, "kerosene", `examination = "spot"`, `examination = "full"`, `method = "hydrostatic"`, "method = \"pneumatic\"\nfluid = \"nitrogen\"")
	if text := proofText(gas, 0); strings.Contains(text, "returned") || strings.Contains(text, "in, bled") || !strings.Contains(text, "   hoop _____ axial _____ ΔD _____ by ___\n") {
		t.Error(text)
	}
}
