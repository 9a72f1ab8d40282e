package report

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestFold(t *testing.T) {
	x := func(n int) string { return strings.Repeat("x", n) }
	for _, row := range []struct{ in, want string }{
		{"short\n", "short\n"},
		{x(80), x(80)},
		{x(81) + "\n", x(81) + "\n"},
		{x(79) + " yy\n", x(79) + "\n  yy\n"},
		{x(77) + " yy\n", x(77) + " yy\n"},
		{"  " + x(77) + " yy zz", "  " + x(77) + "\n    yy zz"},
		{x(74) + " not satisfied", x(74) + "\n  not satisfied"},
		{x(70) + " 3.339 MPa, more", x(70) + "\n  3.339 MPa, more"},
		{x(73) + " 10⁻⁶ mm² or so", x(73) + "\n  10⁻⁶ mm² or so"},
		{x(70) + " 3 of 12 that went", x(70) + " 3 of 12\n  that went"},
		{x(50) + "   " + x(20) + " yyyyyyyyyy", x(50) + "\n  " + x(20) + " yyyyyyyyyy"},
		{x(90) + " " + x(85) + " z", x(90) + "\n  " + x(85) + "\n  z"},
		{"σ" + strings.Repeat("σ", 79) + "\n", strings.Repeat("σ", 80) + "\n"},
		{x(80) + " \n", x(80) + " \n"},
		{"log, 88 rows, SHA-256 " + strings.Repeat("a0", 32) + " (so)", "log, 88 rows, SHA-256 " + strings.Repeat("a0", 32) + " (so)"},
		{"", ""},
	} {
		if got := Fold(row.in, 80); got != row.want {
			t.Errorf("%q\ngave %q\nwant %q", row.in, got, row.want)
		}
		if got := Fold(row.in, 0); got != row.in {
			t.Errorf("%q\ngave %q without a width", row.in, got)
		}
	}
}

// TestFoldToOtherWidths folds to a narrower and to a wider terminal.
func TestFoldToOtherWidths(t *testing.T) {
	text := strings.Repeat("xxxxxxxxx ", 15) + "end\n"
	for width, want := range map[int]string{
		60:  strings.Repeat("xxxxxxxxx ", 5) + "xxxxxxxxx\n  " + strings.Repeat("xxxxxxxxx ", 4) + "xxxxxxxxx\n  " + strings.Repeat("xxxxxxxxx ", 4) + "end\n",
		152: strings.Repeat("xxxxxxxxx ", 14) + "xxxxxxxxx\n  end\n",
		153: text,
	} {
		if got := Fold(text, width); got != want {
			t.Errorf("width %d: %q, want %q", width, got, want)
		}
	}
}

// TestFoldKeepsQuotedUnits has a value to be written between its quotes.
func TestFoldKeepsQuotedUnits(t *testing.T) {
	if got := Fold("the gauge is to show more; write at least \"26.977 bar\", or leave it out\n", 54); !strings.Contains(got, "\"26.977 bar\"") {
		t.Errorf("%q", got)
	}
}

// TestFoldLosesNothing folds a long sheet's text: its words are the same, in their order.
func TestFoldLosesNothing(t *testing.T) {
	line := "caution: highest ullage pressure of port.outlet-1/area@phase-01-of-the-flight 3.339 MPa against 12 bar, factor 1.5, of 203 checks 0 not satisfied, 2 not assessed; "
	for n := range 40 {
		text := line[:n] + strings.Repeat(line, 4) + "\n"
		got := Fold(text, 80)
		if strings.Join(strings.Fields(got), " ") != strings.Join(strings.Fields(text), " ") {
			t.Fatalf("%q\nbecame %q", text, got)
		}
		for part := range strings.Lines(got) {
			part = strings.TrimRight(part, "\n")
			if utf8.RuneCountInString(part) > 80 || strings.HasPrefix(strings.TrimLeft(part, " "), "satisfied") || strings.HasPrefix(strings.TrimLeft(part, " "), "MPa") {
				t.Errorf("line %q", part)
			}
		}
	}
}
