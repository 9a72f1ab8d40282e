package main

import (
	"strings"
	"testing"
)

// TestExplain asks for a check as it is printed, as it is listed, and by a slip.
func TestExplain(t *testing.T) {
	for _, id := range []string{"head.aft/junction@meop", "head.X/junction"} {
		status, out, says := call(t, "", "explain", id)
		if status != exitHolds || says != "" || !strings.Contains(out, "knuckle in place of a sharp corner") {
			t.Errorf("%s: status %d, %s%s", id, status, out, says)
		}
		for _, line := range strings.Split(out, "\n") {
			if len([]rune(line)) > 80 {
				t.Errorf("%s: a line of %d columns", id, len([]rune(line)))
			}
		}
	}
	if status, _, says := call(t, "", "explain", "cylinder/hop"); status != exitInput || !strings.Contains(says, "did you mean cylinder/hoop?") {
		t.Errorf("status %d: %s", status, says)
	}
	if status, _, says := call(t, "", "explain", "head.aft/juncton@meop"); status != exitInput || !strings.Contains(says, "did you mean head.X/junction?") {
		t.Errorf("status %d: %s", status, says)
	}
	status, out, _ := call(t, "", "explain")
	if status != exitHolds || !strings.Contains(out, "tank/relief") {
		t.Errorf("status %d: %s", status, out)
	}
	for _, line := range strings.Split(out, "\n") {
		if len([]rune(line)) > 80 || strings.Contains(line, "/") && line[0] != ' ' && line[28] != ' ' {
			t.Errorf("the list does not fit: %q", line)
		}
	}
}
