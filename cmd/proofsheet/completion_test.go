package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// asProgram has the test program be the program itself, for shells to call.
const asProgram = "PROOFSHEET_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		os.Exit(run(os.Args, os.Stdin, os.Stdout, os.Stderr))
	}
	os.Exit(m.Run())
}

// proposed returns the words proposed for a line, what they are cut off.
func proposed(t *testing.T, words ...string) (out []string) {
	t.Helper()
	status, text, says := call(t, "", append([]string{"completion", "words"}, words...)...)
	if status != exitHolds || says != "" {
		t.Fatalf("%q: status %d, %s", words, status, says)
	}
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		word, _, _ := strings.Cut(line, "\t")
		out = append(out, word)
	}
	return out
}

// TestCompletionWords proposes commands, flags, their values, names in the tank
// file, checks and names of lists.
func TestCompletionWords(t *testing.T) {
	const demo = "../../testdata/tanks/demo.toml"
	for _, row := range []struct {
		words []string
		want  string // words that must be proposed
		not   string // words that must not
	}{
		{[]string{""}, "check study help completion", ""},
		{[]string{"co"}, "compare completion", "check"},
		{[]string{"--v"}, "--version", "--help"},
		{[]string{"check", ""}, ":files|.toml", ""},
		{[]string{"record", "tank.toml", ""}, ":files|.csv", ":files|.toml"},
		{[]string{"compare", "a.toml", ""}, ":files|.toml", ""},
		{[]string{"verify", "a"}, ":files|.pdf", ""},
		{[]string{"check", "a.toml", ""}, "", ":files|.toml"},
		{[]string{"check", demo, "--"}, "--pdf --case --watch --help", ""},
		{[]string{"check", "--pdf", "x", demo, "--p"}, "--p12 --password-file", "--pdf --case"},
		{[]string{"check", demo, "--pdf", ""}, ":files", ""},
		{[]string{"check", demo, "--figures", ""}, ":folders", ""},
		{[]string{"check", demo, "--case", ""}, "meop proof burnout pad", "flight"},
		{[]string{"check", demo, "--case", "bu"}, "burnout", "meop"},
		{[]string{"check", demo, "--case", "=", "bu"}, "burnout", "meop"},
		{[]string{"check", demo, "--case", "="}, "burnout meop", ""},
		{[]string{"check", demo, "--case=bu"}, "--case=burnout", "--case=meop"},
		{[]string{"check", "nosuch.toml", "--case", ""}, "meop proof", "burnout"},
		{[]string{"check", "--", "--"}, ":files|.toml", "--pdf"},
		{[]string{"study", demo, "--vary", "cylinder.t"}, "cylinder.thickness=", "cylinder.material="},
		{[]string{"study", demo, "--vary", "cylinder.thickness=1mm,2mm", "--v"}, "--vary", ""},
		{[]string{"sign", "a.pdf", "--as", ""}, "prepared checked approved", "seal"},
		{[]string{"new", "--head", "e"}, "ellipsoid", "cone"},
		{[]string{"new", "--alloy", "30"}, "304L", ""},
		{[]string{"new", "--fluid", "iso"}, "isopropanol", ""},
		{[]string{"explain", "head.aft/j"}, "head.aft/junction", "head.forward/junction"},
		{[]string{"explain", "tank/relief", ""}, "", "tank/relief"},
		{[]string{"list", ""}, "materials fluids joints rules keys", ""},
		{[]string{"list", "fluids", "iso"}, "isopropanol", ""},
		{[]string{"list", "joints", "double"}, "double|butt", ""},
		{[]string{"help", "ma"}, "margins man", "check"},
		{[]string{"completion", ""}, "bash zsh fish", "words"},
		{[]string{"nosuch", ""}, "", "check"},
	} {
		got := proposed(t, row.words...)
		for _, w := range strings.Fields(row.want) {
			if w = strings.ReplaceAll(w, "|", " "); !slices.Contains(got, w) {
				t.Errorf("%q: %q is missing among %q", row.words, w, got)
			}
		}
		for _, w := range strings.Fields(row.not) {
			if w = strings.ReplaceAll(w, "|", " "); slices.Contains(got, w) {
				t.Errorf("%q: %q is proposed", row.words, w)
			}
		}
	}
}

// TestEveryFlagValueIsProposed: a flag that takes a name of something known has
// its names proposed; the others are free text and numbers.
func TestEveryFlagValueIsProposed(t *testing.T) {
	free := []string{"gap", "kerf", "clearance", "reason", "scatter"}
	for _, c := range testApp().Commands {
		for _, f := range c.Flags {
			name := f.Names()[0]
			if placeholder(f) == "" || slices.Contains(free, name) {
				continue
			}
			if got := proposed(t, c.Name, "../../testdata/tanks/demo.toml", "--"+name, ""); len(got) == 0 || got[0] == "" {
				t.Errorf("%s --%s: nothing is proposed", c.Name, name)
			}
		}
	}
}

// inShell runs a script in a shell that finds this program as proofsheet, in a
// folder with a tank file, another file and a folder. It returns "" where the
// shell is not here.
func inShell(t *testing.T, shell, script string) string {
	t.Helper()
	path, err := exec.LookPath(shell)
	if err != nil {
		t.Logf("%s is not here: its script was not run", shell)
		return ""
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	demo, err := os.ReadFile("../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	program := fmt.Sprintf("#!/bin/sh\nexec env %s=1 %q \"$@\"\n", asProgram, self)
	for name, text := range map[string]string{"proofsheet": program, "tank one.toml": string(demo), "tank.txt": ""} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(folder, "tanks"), 0o755); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(path)
	run.Args = append(run.Args, map[string][]string{"zsh": {"-f"}, "bash": {"--norc"}, "fish": {"--no-config"}}[shell]...)
	run.Args = append(run.Args, "-c", script)
	run.Dir = folder
	run.Env = append(os.Environ(), "PATH="+folder+":"+os.Getenv("PATH"), "HOME="+folder, "XDG_CONFIG_HOME="+folder)
	out, err := run.CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", shell, err, out)
	}
	return string(out)
}

// sameLines compares printed lines, in any order.
func sameLines(t *testing.T, got string, want ...string) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(got), "\n")
	slices.Sort(lines)
	slices.Sort(want)
	if !slices.Equal(lines, want) {
		t.Errorf("%q, want %q", lines, want)
	}
}

// TestBashCompletes sources the script and completes as bash does.
func TestBashCompletes(t *testing.T) {
	for _, row := range []struct {
		words string
		want  []string
	}{
		{`proofsheet co`, []string{"compare", "completion"}},
		{`proofsheet check ta`, []string{"tank one.toml", "tanks"}},
		{`proofsheet check 'tank one.toml' --case bu`, []string{"burnout"}},
		{`proofsheet check 'tank\ one.toml' --case bu`, []string{"burnout"}}, // as a line holds it
		{`proofsheet check 'tank\ o'`, []string{"tank one.toml"}}, {`proofsheet check '"tank o'`, []string{"tank one.toml"}},
		{`proofsheet verify '~/ta'`, []string{"$HOME/tanks"}},
		{`proofsheet check --figures ta`, []string{"tanks"}},
		{`proofsheet list joints double`, []string{`double\ butt`, `double\ lap`}},
	} {
		out := inShell(t, "bash", `source <(proofsheet completion bash); complete -p proofsheet >/dev/null || exit 9
COMP_WORDS=(`+row.words+`); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _proofsheet; printf '%s\n' "${COMPREPLY[@]/#$HOME/\$HOME}"`)
		if out != "" {
			sameLines(t, out, row.want...)
		}
	}
}

// TestZshCompletes sources the script and completes with zsh's own functions put
// aside: they need a terminal.
func TestZshCompletes(t *testing.T) {
	const own = `compdef() { }; _describe() { print -l -- "${(@P)2}" }; _files() { print -l -- "files $*" }
source <(proofsheet completion zsh); `
	for words, want := range map[string]string{
		`proofsheet comp`:     "compare:two tanks side by side\ncompletion:print the completion script of a shell",
		`proofsheet check ''`: "files -g *.toml(-.)", `proofsheet check x --pdf ''`: "files -g *(-.)", `proofsheet check x --figures ''`: "files -/",
		`proofsheet check 'tank one.toml' --case bu`: "burnout:burnout", `proofsheet check 'tank\ one.toml' --case bu`: "burnout:burnout",
	} {
		if out := inShell(t, "zsh", own+`words=(`+words+`); CURRENT=${#words}; _proofsheet`); out != "" {
			sameLines(t, out, strings.Split(want, "\n")...)
		}
	}
}

// TestFishCompletes sources the script and asks fish for its completions.
func TestFishCompletes(t *testing.T) {
	for line, want := range map[string]string{
		`proofsheet compa`: "compare\ttwo tanks side by side", `proofsheet check x --figures ta`: "tanks/",
		`proofsheet check tank\ one.toml --case bu`: "burnout",
	} {
		if out := inShell(t, "fish", `proofsheet completion fish | source; complete -C `+"'"+line+"'"); out != "" {
			first, _, _ := strings.Cut(out, "\n")
			if !strings.HasPrefix(first, want) {
				t.Errorf("%s: %q, want %q", line, out, want)
			}
		}
	}
}
