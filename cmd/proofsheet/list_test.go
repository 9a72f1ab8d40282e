package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// TestListReads: every table and every name in it prints, in lines that a
// person reads along, with how each number is known and from where.
func TestListReads(t *testing.T) {
	for _, l := range listings {
		for _, name := range append([]string{""}, l.names()...) {
			args := append([]string{"list", l.name}, strings.Fields(name)...)
			status, out, says := call(t, "", args...)
			if status != 0 || says != "" || out == "" {
				t.Errorf("%q: status %d, %s", args, status, says)
			}
			for _, line := range strings.Split(out, "\n") {
				if n := utf8.RuneCountInString(line); n > usualWidth {
					t.Errorf("%q: %d characters: %s", args, n, line)
				}
				if strings.HasSuffix(line, " ") || strings.Contains(line, "NaN") || strings.Contains(line, "<nil>") {
					t.Errorf("%q: %q", args, line)
				}
			}
			if overview := l.name == "materials" && name == ""; !overview && !strings.Contains(out, "Sources and notes\n[") {
				t.Errorf("%q names no source", args)
			}
		}
	}
}

// TestListNames: a name that is not there is answered with the one meant.
func TestListNames(t *testing.T) {
	for _, row := range []struct{ args, want string }{
		{"list materials 6061T6", `did you mean "6061-T6"?`}, {"list materials 304l", `write "304L"`},
		{"list materials unobtainium", "there are 304, 304L"}, {"list fluids lox", `write "LOX"`},
		{"list fluids isopropanl", `did you mean "isopropanol"?`}, {"list rules vesel", `did you mean "vessel"?`},
		{"list joints double but", `did you mean "double butt"?`},
	} {
		if status, out, says := call(t, "", strings.Fields(row.args)...); status != 2 || out != "" || !strings.Contains(says, row.want) {
			t.Errorf("%s: status %d, %s%s", row.args, status, out, says)
		}
	}
	for _, row := range []struct{ args, want string }{
		{"list materials 5454-H32", "shown only"}, {"list materials 1.4301", "AISI 304"}, {"list fluids HTP-92", "between HTP-90 and HTP-95"},
		{"list joints double butt", "1.00"}, {"list materials Ti-6Al-4V", "refused: ignites under impact"},
	} {
		if status, out, says := call(t, "", strings.Fields(row.args)...); status != 0 || !strings.Contains(strings.Join(strings.Fields(out), " "), row.want) {
			t.Errorf("%s: status %d, %s%s", row.args, status, out, says)
		}
	}
}

// TestWrap: nothing is lost and nothing is too wide.
func TestWrap(t *testing.T) {
	for _, row := range []struct {
		text  string
		width int
		want  string
	}{
		{"", 5, ""}, {"a b", 3, "a b"}, {"a bc", 3, "a|bc"}, {"abcdefg h", 3, "abc|def|g h"}, {"1 20\u00a0K", 4, "1|20 K"}, {"µm µm", 2, "µm|µm"},
	} {
		if got := strings.Join(wrap(row.text, row.width), "|"); got != row.want {
			t.Errorf("%q in %d: %q, want %q", row.text, row.width, got, row.want)
		}
	}
}
