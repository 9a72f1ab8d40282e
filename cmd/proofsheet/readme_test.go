package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/report/sign"
)

const readmeFile = "../../README.md"

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestReadmeChecks holds the table of what is checked to the list of all checks.
func TestReadmeChecks(t *testing.T) {
	var named, known []string
	for _, line := range strings.Split(readme(t), "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 5 || !strings.Contains(cells[1], "/") {
			continue
		}
		part := ""
		for _, id := range strings.Split(strings.TrimSpace(cells[1]), ", ") {
			if p, _, ok := strings.Cut(id, "/"); ok {
				part = p
			} else {
				id = part + "/" + id
			}
			named = append(named, id)
		}
	}
	for _, e := range assess.Explanations() {
		known = append(known, e.ID)
		if !slices.Contains(named, e.ID) {
			t.Errorf("README.md does not name the check %s", e.ID)
		}
	}
	for _, id := range named {
		if !slices.Contains(known, id) {
			t.Errorf("README.md names %s, which is no check", id)
		}
	}
}

// TestReadmeCommands holds that every command stands in README.md, and that
// every call in it names a command and flags that exist.
func TestReadmeCommands(t *testing.T) {
	app := newApp(strings.NewReader(""), io.Discard, io.Discard)
	app.Setup()
	called := map[string]bool{"help": true}
	call := regexp.MustCompile(`(?m)(?:^    |` + "`" + `|<\()proofsheet ([a-z]+)([^` + "`" + `)\n]*)`)
	flag := regexp.MustCompile(`--[a-z0-9-]+`)
	for _, m := range call.FindAllStringSubmatch(readme(t), -1) {
		command := app.Command(m[1])
		if command == nil {
			t.Errorf("README.md calls %s, which is no command", m[1])
			continue
		}
		called[m[1]] = true
		for _, f := range flag.FindAllString(m[2], -1) {
			if _, err := takesValue(command, f, strings.TrimLeft(f, "-")); err != nil {
				t.Errorf("README.md: %v", err)
			}
		}
	}
	for _, c := range app.Commands {
		if !called[c.Name] && !c.Hidden {
			t.Errorf("README.md does not show the command %s", c.Name)
		}
	}
}

// TestReadmeFirstTank checks the tank of README.md: no more than ten lines, read
// without fault, nothing that fails.
func TestReadmeFirstTank(t *testing.T) {
	_, rest, _ := strings.Cut(readme(t), "Write `first.toml`:\n\n")
	block, _, _ := strings.Cut(rest, "\n\n")
	if n := strings.Count(block, "\n") + 1; n > 10 {
		t.Errorf("the first tank takes %d lines", n)
	}
	path := filepath.Join(t.TempDir(), "first.toml")
	if err := os.WriteFile(path, []byte(strings.ReplaceAll("\n"+block, "\n    ", "\n")), 0o644); err != nil {
		t.Fatal(err)
	}
	t.Setenv(sign.FolderVariable, t.TempDir())
	status, out, says := call(t, "", "check", path)
	if status != exitFails || says != "" || !strings.Contains(out, "0 not satisfied, 2 not assessed") {
		t.Errorf("status %d: %s%.200s", status, says, out)
	}
}

// TestReadmeExcerpt holds the lines of a sheet in README.md to the golden sheet
// of the demonstration tank; a line that is cut ends with an ellipsis.
func TestReadmeExcerpt(t *testing.T) {
	golden, err := os.ReadFile("../../testdata/tanks/demo.golden.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, line := range strings.Split(readme(t), "\n") {
		shown, ok := strings.CutPrefix(line, "    ")
		goesOn := strings.HasPrefix(shown, strings.Repeat(" ", 20))
		if !ok || !goesOn && !strings.HasPrefix(shown, "satisfied ") && !strings.HasPrefix(shown, "not assessed ") {
			continue
		}
		n++
		if start, cut := strings.CutSuffix(shown, " …"); cut && strings.Contains(string(golden), "\n"+start) {
			continue
		}
		if !strings.Contains(string(golden), "\n"+shown+"\n") {
			t.Errorf("README.md shows %q, which the sheet does not", shown)
		}
	}
	if n < 8 {
		t.Errorf("%d lines of a sheet in README.md", n)
	}
}
