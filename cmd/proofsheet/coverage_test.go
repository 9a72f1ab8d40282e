package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// calculates names the rooms that hold formulas and checks: what is not tested there may print a wrong verdict.
var calculates = []string{"material/...", "shell/...", "heads/...", "loads/..."}

// notReached is how a comment begins that says why no test comes to a block of statements.
const notReached = "// not reached:"

// A block is a run of statements as a cover profile counts it.
type block struct {
	file       string // below the root of the module
	line, at   int    // its first line, and where it begins there
	statements int
}

// Every block of a calculation room that the tests of a cover profile leave out says why, in a comment on its first line
// or on the line above; no such comment stands where a test does come; and each room has over 95 % of its statements tested. DEVELOPERS.md, section 1, says how to run it.
func TestCoverage(t *testing.T) {
	name := os.Getenv("COVERPROFILE")
	if name == "" {
		t.Skip("COVERPROFILE names no cover profile")
	}
	blocks := profile(t, name)
	lines, excuses := map[string][]string{}, map[string]bool{}
	at := func(file string, line int) string { return fmt.Sprintf("%s:%d", file, line) }
	all, tested := map[string]int{}, map[string]int{}
	for b, times := range blocks {
		dir := filepath.ToSlash(filepath.Dir(b.file))
		if !slices.ContainsFunc(calculates, func(pattern string) bool { return fits(pattern, dir) }) {
			continue
		}
		if lines[b.file] == nil {
			lines[b.file] = source(t, b.file)
		}
		all[dir] += b.statements
		if times > 0 {
			tested[dir] += b.statements
			continue
		}
		if !excused(lines[b.file], b.line) {
			t.Errorf("%s:%d: no test comes here, and no comment says why (%q)", b.file, b.line, notReached)
		}
		excuses[at(b.file, b.line)], excuses[at(b.file, b.line-1)] = true, true
	}
	for file, text := range lines {
		for i, line := range text {
			if strings.Contains(line, notReached) && !excuses[at(file, i+1)] {
				t.Errorf("%s:%d: a test does come here", file, i+1)
			}
		}
	}
	if len(all) == 0 {
		t.Errorf("%s holds no calculation room", name)
	}
	for dir, n := range all {
		if percent := 100 * float64(tested[dir]) / float64(n); !(percent > 95) {
			t.Errorf("%s: %.1f %% of the statements are tested, over 95 %% are asked for", dir, percent)
		}
	}
}

// excused reports whether the line, counted from 1, or the one above says why no test comes there.
func excused(source []string, line int) bool {
	for _, i := range []int{line - 1, line - 2} {
		if i < 0 || i >= len(source) {
			continue
		}
		if _, why, ok := strings.Cut(source[i], notReached); ok && strings.TrimSpace(why) != "" {
			return true
		}
	}
	return false
}

func TestExcused(t *testing.T) {
	text := []string{"// not reached: the caller has refused it", "if err != nil {", "\treturn err", "}", "if x { // not reached: y", "case 1: // not reached:"}
	for line, want := range map[int]bool{0: false, 1: true, 2: true, 3: false, 4: false, 5: true, 7: false, 8: false} {
		if excused(text, line) != want {
			t.Errorf("line %d: %v", line, !want)
		}
	}
}

// profile reads how often each block was run.
func profile(t *testing.T, name string) map[block]int {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	blocks := map[block]int{}
	for lines := bufio.NewScanner(f); lines.Scan(); {
		line := lines.Text()
		if strings.HasPrefix(line, "mode:") {
			continue
		}
		file, rest, _ := strings.Cut(line, ":")
		b := block{file: strings.TrimPrefix(file, modulePath+"/")}
		var toLine, toAt, times int
		if _, err := fmt.Sscanf(rest, "%d.%d,%d.%d %d %d", &b.line, &b.at, &toLine, &toAt, &b.statements, &times); err != nil {
			t.Fatalf("%s: %q: %v", name, line, err)
		}
		blocks[b] += times // a profile of several packages may hold a block more than once
	}
	return blocks
}

// source returns the lines of a file.
func source(t *testing.T, file string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot, file))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(string(text), "\n")
}
