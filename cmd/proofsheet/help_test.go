package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf8"

	"github.com/urfave/cli/v2"
)

func testApp() *cli.App { return newApp(strings.NewReader(""), io.Discard, io.Discard) }

// TestHelpFitsAScreen: every page of help is read at once on 80 columns by 24
// lines, the prompt on the last.
func TestHelpFitsAScreen(t *testing.T) {
	calls := [][]string{{"--help"}, {"help"}, {"-h"}}
	for _, c := range testApp().Commands {
		calls = append(calls, []string{c.Name, "--help"}, []string{"help", c.Name})
	}
	for _, name := range topicNames() {
		if name != manTopic {
			calls = append(calls, []string{"help", name})
		}
	}
	for _, args := range calls {
		status, out, says := call(t, "", args...)
		if status != exitHolds || says != "" {
			t.Errorf("%v: status %d, %s", args, status, says)
		}
		lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
		if len(lines) > helpLines {
			t.Errorf("%v: %d lines", args, len(lines))
		}
		for _, line := range lines {
			if n := utf8.RuneCountInString(line); n > helpWidth || strings.ContainsAny(line, "\t\x1b\u00a0") {
				t.Errorf("%v: %d columns: %q", args, n, line)
			}
		}
	}
}

// TestHelpSaysEverything: the page of a command names each of its flags, and the
// page of the program each command and topic.
func TestHelpSaysEverything(t *testing.T) {
	_, page, _ := call(t, "", "--help")
	for _, name := range topicNames() {
		if !strings.Contains(page, name) {
			t.Errorf("topic %s is missing", name)
		}
	}
	for _, c := range testApp().Commands {
		if !strings.Contains(page, "\n  "+c.Name+" ") {
			t.Errorf("%s is missing", c.Name)
		}
		_, own, _ := call(t, "", "help", c.Name)
		for _, f := range c.Flags {
			if !strings.Contains(own, "\n  "+flagHead(f)+" ") {
				t.Errorf("%s: %s is missing in\n%s", c.Name, flagHead(f), own)
			}
		}
	}
}

// TestExamplesAreCalls: every command has an example whose flags exist and whose
// number of arguments it takes.
func TestExamplesAreCalls(t *testing.T) {
	app := testApp()
	for _, c := range app.Commands {
		example, _, _ := strings.Cut(examples[c.Name], " >")
		words := strings.Fields(strings.ReplaceAll(example, `"1 mm"`, "1mm"))
		if len(words) < 2 || words[1] != c.Name {
			t.Errorf("%s: example %q", c.Name, example)
			continue
		}
		if _, err := permute(app, words); err != nil {
			t.Errorf("%s: %v", example, err)
		}
	}
	if len(examples) != len(app.Commands) {
		t.Errorf("%d examples of %d commands", len(examples), len(app.Commands))
	}
}

// TestHelpNearMiss answers a slip with what was meant.
func TestHelpNearMiss(t *testing.T) {
	for args, want := range map[string]string{
		"help margin": "did you mean margins?", "help chekc": "did you mean check?", "help wibble": "topics are exit, history, log, margins, tank, units, man",
		"help a b": "not 2", "completion bsh": "did you mean bash?", "completion": "bash, zsh, fish", "completion tcl": "there are bash, zsh, fish",
	} {
		if status, out, says := call(t, "", strings.Fields(args)...); status != exitInput || out != "" || !strings.Contains(says, want) {
			t.Errorf("%s: status %d, %s%s", args, status, out, says)
		}
	}
}

// TestManPage: the manual holds every command, flag and topic, and a reader of
// man pages, where there is one, finds no fault in it.
func TestManPage(t *testing.T) {
	status, page, says := call(t, "", "help", "man")
	if status != exitHolds || says != "" {
		t.Fatalf("status %d: %s", status, says)
	}
	for _, c := range testApp().Commands {
		for _, want := range []string{".SS " + roff(usageOf(c)) + "\n", "    " + roff(examples[c.Name]) + "\n"} {
			if !strings.Contains(page, want) {
				t.Errorf("%q is missing", want)
			}
		}
		for _, f := range c.Flags {
			if want := ".TP\n\\fB" + roff(flagHead(f)) + "\\fR\n"; !strings.Contains(page, want) {
				t.Errorf("%s: %q is missing", c.Name, want)
			}
		}
	}
	for _, topic := range topics {
		if !strings.Contains(page, ".SH "+strings.ToUpper(topic.about)+"\n") {
			t.Errorf("topic %s is missing", topic.name)
		}
	}
	reader, err := exec.LookPath("mandoc")
	if err != nil {
		t.Log("mandoc is not here: the page was not read by it")
		return
	}
	lint := exec.Command(reader, "-T", "lint", "-W", "error")
	lint.Stdin = strings.NewReader(page)
	if out, err := lint.CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, out)
	}
}

// TestRoff: nothing of a text is taken for a request or an escape.
func TestRoff(t *testing.T) {
	for text, want := range map[string]string{".SH x": `\&.SH x`, `a\b`: `a\eb`, "'tis": `\(aqtis`, "--pdf": `\-\-pdf`} {
		if got := roff(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// TestNoColour: nothing printed holds an escape of a terminal, whatever the
// environment asks for.
func TestNoColour(t *testing.T) {
	for _, asked := range []string{"", "1"} {
		t.Setenv("NO_COLOR", asked)
		t.Setenv("TERM", "xterm-256color")
		for _, args := range [][]string{{"--help"}, {"check", "../../testdata/tanks/demo.toml"}, {"list", "fluids"}, {"help", "man"}} {
			if _, out, says := call(t, "", args...); strings.Contains(out+says, "\x1b") {
				t.Errorf("%v prints an escape", args)
			}
		}
	}
}

// TestDashEverywhere: every command that reads a tank file reads it from standard
// input too, and says the same but for the name.
func TestDashEverywhere(t *testing.T) {
	path := starter(t)
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	withSheet(t, 50)
	reads := 0
	for _, c := range testApp().Commands {
		if !strings.Contains(c.ArgsUsage, "TANK.toml") && c.Name != "compare" {
			continue
		}
		reads++
		args := map[string][]string{
			"record": {"record", "-", "nosuch.csv"}, "study": {"study", "-", "--vary", "cylinder.thickness=6mm,7mm"}, "compare": {"compare", "-", path},
		}[c.Name]
		if args == nil {
			args = []string{c.Name, "-"}
		}
		status, out, says := call(t, string(src), args...)
		if c.Name == "record" { // the tank was read: what is missing is the log
			if !strings.Contains(says, "nosuch.csv") {
				t.Errorf("record: %s", says)
			}
		} else if status == exitInput || out == "" {
			t.Errorf("%v: status %d, %s", args, status, says)
		}
		if status, _, says := call(t, "[pressure]\n", args...); status != exitInput || !strings.Contains(says, "stdin:") {
			t.Errorf("%v: a fault has no place in standard input: status %d, %s", args, status, says)
		}
	}
	if reads < 7 {
		t.Errorf("only %d commands read a tank", reads)
	}
	var out bytes.Buffer
	if status := run([]string{"proofsheet", "check", "-"}, iotest.ErrReader(io.ErrUnexpectedEOF), &out, &out); status != exitInput || !strings.Contains(out.String(), "standard input cannot be read") {
		t.Errorf("status %d: %s", status, &out)
	}
}
