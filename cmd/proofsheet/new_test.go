package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/material/fluid"
)

// TestNewChecksWithoutError writes a starter for every shape, every fluid and
// every alloy, and checks it: nothing is a fault of the file.
func TestNewChecksWithoutError(t *testing.T) {
	var flags [][]string
	for _, s := range shapeNames() {
		flags = append(flags, []string{"--head", s})
	}
	for _, f := range fluid.Names() {
		flags = append(flags, []string{"--fluid", f})
	}
	for _, a := range material.AlloyNames() {
		flags = append(flags, []string{"--alloy", a, "--head", "ellipsoid"})
	}
	for _, set := range flags {
		path := filepath.Join(t.TempDir(), "new.toml")
		if status, _, says := call(t, "", append([]string{"new", path}, set...)...); status != exitHolds {
			t.Errorf("%v: %s", set, says)
			continue
		}
		if status, _, says := call(t, "", "check", path); status == exitInput {
			t.Errorf("%v: %s", set, says)
		}
		text, err := os.ReadFile(path)
		if err != nil || !strings.Contains(string(text), `"`+set[1]+`"`) {
			t.Errorf("%v: the choice does not stand in the file", set)
		}
	}
}

// TestNewNearMiss answers a slip with the nearest name.
func TestNewNearMiss(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.toml")
	for _, row := range [][3]string{{"--head", "elipsoid", "did you mean ellipsoid?"}, {"--alloy", "304l", "304L"}, {"--fluid", "nothing-like-it", "is not known"}} {
		if status, _, says := call(t, "", "new", path, row[0], row[1]); status != exitInput || !strings.Contains(says, row[2]) {
			t.Errorf("%v: status %d, %s", row, status, says)
		}
	}
}
