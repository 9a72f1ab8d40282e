package main

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"proofsheet/cmd/proofsheet/internal/tank"
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
			if bare := l.name == "materials" && name == "" || l.name == "keys"; !bare && !strings.Contains(out, "Sources and notes\n[") {
				t.Errorf("%q names no source", args)
			}
		}
	}
}

// TestListNames: a name that is not there is answered with the one meant.
func TestListNames(t *testing.T) {
	for _, row := range []struct{ args, want string }{
		{"list materials 6061T6", `did you mean "6061-T6"?`}, {"list materials 304l", `write "304L"`},
		{"list materials unobtainium", "there are 304, 304L"}, {"list fluids lox", `write "LOX"`}, {"list fluids nitrous", "did you mean N2O?"}, {"list fluids kerosene", "did you mean RP-1 or JetA?"},
		{"list fluids isopropanl", `did you mean "isopropanol"?`}, {"list rules vesel", `did you mean "vessel"?`},
		{"list joints double but", `did you mean "double butt"?`}, {"list keys flihgt", `did you mean "flight"?`},
	} {
		if status, out, says := call(t, "", strings.Fields(row.args)...); status != 2 || out != "" || !strings.Contains(says, row.want) {
			t.Errorf("%s: status %d, %s%s", row.args, status, out, says)
		}
	}
	for _, row := range []struct{ args, want string }{
		{"list materials 5454-H32", "shown only"}, {"list materials 1.4301", "AISI 304"}, {"list fluids HTP-92", "between HTP-90 and HTP-95"},
		{"list joints double butt", "1.00"}, {"list materials Ti-6Al-4V", "refused: ignites under impact"},
		{"list keys port.vent.cover", `port.cover cover = { … } kind = "cover": the flat plate that is bolted on thickness "20 mm"`},
		{"list keys port[].cover.thickness", `grooves and the ends of holes; needed`}, {"list keys case", `kind one of "pad", "transport"`},
		{"list keys head.forward.bolts", `head.X.bolts bolts = { … }`}, {"list keys squeeze", `port.seal.squeeze "2 kN"`},
		{"list keys", `head.X [head.X] the two ends`}, {"list keys", `case.loads [[case.loads]]`}, {"list keys", `joint [joint.NAME]`},
	} {
		if status, out, says := call(t, "", strings.Fields(row.args)...); status != 0 || !strings.Contains(strings.Join(strings.Fields(out), " "), row.want) {
			t.Errorf("%s: status %d, %s%s", row.args, status, out, says)
		}
	}
}

// TestListKeysWhole: every key of the tank file is found under its table's name, once
// for both heads.
func TestListKeysWhole(t *testing.T) {
	for _, k := range tank.Keys() {
		root, _, _ := strings.Cut(askedPath(k.Path), ".")
		if k.Path == "head" || strings.HasPrefix(k.Path, "head.forward") {
			continue
		}
		_, rows, err := keyRows(root)
		if err != nil || !slices.ContainsFunc(rows, func(row []string) bool {
			return row[0] == strings.TrimPrefix(askedPath(k.Path), root+".") && strings.HasPrefix(row[2], k.Doc) || k.Path == "head.aft" && row[0] == "X"
		}) {
			t.Errorf("%s is not under %s (%v)", k.Path, root, err)
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
