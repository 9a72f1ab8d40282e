package main

import (
	"regexp"
	"strings"
	"testing"
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
