package report

import (
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// Fold breaks the lines of a text that are wider than a terminal's width [characters], and
// indents what goes on two further than its line. It breaks at a space, a gap between
// columns before others, but never between a number and its unit, nor after "not" or "±": a
// line that began with "satisfied" would be read by itself. A word that is longer stays
// whole, and so does the line of a digest: it is looked for and copied with what it belongs
// to. A width of 0 is that of a pipe or a file, whose lines are searched: it breaks none.
func Fold(text string, width int) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		line, end := strings.CutSuffix(line, "\n")
		indent := len(line) - len(strings.TrimLeft(line, " "))
		b.WriteString(strings.Join(foldLine(line, indent+2, width), "\n"))
		if end {
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// foldLine breaks one line; all but the first are indented so far.
func foldLine(line string, indent, width int) (out []string) {
	for first := true; ; first = false {
		if !first {
			line = strings.Repeat(" ", indent) + line
		}
		at := breakOf(line, width)
		if at < 0 {
			return append(out, line)
		}
		out = append(out, strings.TrimRight(line[:at], " "))
		line = strings.TrimLeft(line[at:], " ")
	}
}

// breakOf returns the byte at which a line is broken, −1 for one that fits, has no place
// to, or goes where there is no width.
func breakOf(line string, width int) int {
	if width == 0 || utf8.RuneCountInString(line) <= width || slices.ContainsFunc(strings.Fields(line), isDigest) {
		return -1
	}
	start := len(line) - len(strings.TrimLeft(line, " "))
	column, last, gap := 0, -1, -1
	for i, r := range line {
		if column > width && last >= 0 {
			break
		}
		column++
		if r != ' ' || i <= start || !breakable(line, i) || strings.TrimSpace(line[i:]) == "" {
			continue
		}
		last = i
		if strings.HasPrefix(line[i+1:], " ") && line[i-1] != ' ' && column > width/2 {
			gap = i
		}
	}
	if gap >= 0 {
		return gap
	}
	return last
}

// isDigest reports whether a word is a digest or a fingerprint, in hexadecimal.
func isDigest(word string) bool {
	const least = 40
	return len(word) >= least && strings.Trim(word, "0123456789abcdefABCDEF:") == ""
}

// breakable reports whether a line may be broken at a space.
func breakable(line string, at int) bool {
	before := line[strings.LastIndexByte(line[:at], ' ')+1 : at]
	after, _, _ := strings.Cut(strings.TrimLeft(line[at:], " "), " ")
	if before == "not" || before == "±" {
		return false
	}
	digit, _ := utf8.DecodeLastRuneInString(before)
	number := unicode.IsNumber(digit) // also raised digits
	return !number || !units()[strings.TrimRight(after, ",;:.)?\"")]
}

// units are the first words of all units shown.
var units = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{"bar": true, "kg": true, "Hz": true, "degC": true, "%": true, "J": true}
	for _, system := range ladders {
		for _, ladder := range system {
			for _, r := range ladder {
				word, _, _ := strings.Cut(r.Unit, " ")
				all[word] = true
			}
		}
	}
	delete(all, "")
	return all
})
