package main

import (
	"path/filepath"
	"regexp"
	"testing"
)

// TestNoNumberThatIsNone reads check and proof plan of every example tank for what
// a number that is none leaves in a text.
func TestNoNumberThatIsNone(t *testing.T) {
	files, err := filepath.Glob("../../testdata/tanks/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	none := regexp.MustCompile(`.*(?:\bNaN\b|\+Inf|-Inf|e\+308|e-324|%!).*`)
	for _, file := range files {
		for _, command := range []string{"check", "proof"} {
			_, out, says := call(t, "", command, file)
			if m := none.FindString(out + says); m != "" {
				t.Errorf("%s %s: %s", command, filepath.Base(file), m)
			}
		}
	}
}
