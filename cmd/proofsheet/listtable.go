package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"proofsheet/report"
)

// The width of a table [characters]: where no terminal tells, and the most that
// a person reads along.
const (
	usualWidth = 80
	mostWidth  = 100
	leastWidth = 60
)

// widthOf returns the width to print in.
func widthOf(w io.Writer) int {
	if f, ok := w.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		if columns, _, err := term.GetSize(int(f.Fd())); err == nil {
			return min(max(columns-1, leastWidth), mostWidth)
		}
	}
	return usualWidth
}

// foldWidth returns the width that text is folded to on the terminal that shows it, and 0
// where a pipe or a file takes it: what is searched for lines stays in lines.
func foldWidth(c *cli.Context) int { return foldWidthOf(c.App.Writer) }

// tell writes messages to standard error, folded on a terminal.
func tell(stderr io.Writer, text string) error {
	_, err := io.WriteString(stderr, report.Fold(text, foldWidthOf(stderr)))
	return err
}

func foldWidthOf(w io.Writer) int {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0
	}
	columns, _, err := term.GetSize(int(f.Fd()))
	if err != nil || columns == 0 {
		return usualWidth
	}
	return max(columns, leastWidth)
}

// table writes rows in columns of a width in all, text wrapped in its column.
// A row of one cell heads those that follow. The columns named source and note
// become numbered lines below the table, each said once.
func table(heading []string, rows [][]string, width int) string {
	var foot footnotes
	head := without(heading, heading)
	numbered := len(head) < len(heading)
	if numbered {
		head = append(head, "")
	}
	lines := [][]string{head}
	for _, r := range rows {
		if len(r) == 1 {
			lines = append(lines, r)
			continue
		}
		cells := without(heading, r)
		if numbered {
			cells = append(cells, foot.number(heading, r))
		}
		lines = append(lines, cells)
	}
	var b strings.Builder
	widths := columns(lines, width)
	for i, r := range lines {
		if len(r) == 1 {
			b.WriteString("\n" + strings.Join(wrap(r[0], width), "\n") + "\n")
			continue
		}
		b.WriteString(sideBySide(r, widths))
		if i == 0 {
			b.WriteString(strings.Repeat("-", min(width, sum(widths)+2*(len(widths)-1))) + "\n")
		}
	}
	if len(foot.lines) > 0 {
		b.WriteString("\nSources and notes\n")
		digits := len(fmt.Sprint(len(foot.lines)))
		for i, l := range foot.lines {
			for j, part := range wrap(l, width-digits-4) {
				mark := strings.Repeat(" ", digits+2)
				if j == 0 {
					mark = fmt.Sprintf("[%*d]", digits, i+1)
				}
				b.WriteString(mark + "  " + part + "\n")
			}
		}
	}
	return b.String()
}

// footnotes are the sources and notes of a table, in order of use.
type footnotes struct{ lines []string }

// number returns the mark of what a row says of its source, "" for nothing.
func (f *footnotes) number(heading, row []string) string {
	var said []string
	for i, h := range heading {
		if aside(h) && row[i] != "" {
			said = append(said, row[i])
		}
	}
	if len(said) == 0 {
		return ""
	}
	text := strings.Join(said, ". Note: ")
	i := slices.Index(f.lines, text)
	if i < 0 {
		i = len(f.lines)
		f.lines = append(f.lines, text)
	}
	return fmt.Sprintf("[%d]", i+1)
}

// aside reports whether a column goes below the table.
func aside(heading string) bool { return heading == "source" || heading == "note" }

// without returns the cells of a row that stay in the table.
func without(heading, row []string) (out []string) {
	for i, cell := range row {
		if !aside(heading[i]) {
			out = append(out, cell)
		}
	}
	return out
}

// columns shares the width among the columns: the widest gives way first, none
// below its longest word. A width of 0 gives each what it takes.
func columns(lines [][]string, width int) []int {
	wide, least := make([]int, len(lines[0])), make([]int, len(lines[0]))
	for _, r := range lines {
		if len(r) == 1 {
			continue
		}
		for i, cell := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
			for _, word := range strings.Split(cell, " ") {
				least[i] = max(least[i], utf8.RuneCountInString(word))
			}
		}
	}
	for width > 0 && sum(wide)+2*(len(wide)-1) > width {
		give := -1
		for i := range wide {
			if wide[i] > least[i] && (give < 0 || wide[i] > wide[give]) {
				give = i
			}
		}
		if give < 0 {
			break
		}
		wide[give]--
	}
	return wide
}

func sum(numbers []int) (total int) {
	for _, n := range numbers {
		total += n
	}
	return total
}

// sideBySide writes cells in columns, each wrapped.
func sideBySide(cells []string, widths []int) string {
	var b strings.Builder
	parts, high := make([][]string, len(cells)), 0
	for i, c := range cells {
		parts[i] = wrap(c, widths[i])
		high = max(high, len(parts[i]))
	}
	for line := range high {
		text := ""
		for i, p := range parts {
			cell := ""
			if line < len(p) {
				cell = p[line]
			}
			text += cell + strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell))) + "  "
		}
		b.WriteString(strings.TrimRight(text, " ") + "\n")
	}
	return b.String()
}

// wrap breaks text at its spaces into lines of at most width characters; a
// longer word is broken. A no-break space holds words together and is printed
// as a space.
func wrap(text string, width int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(strings.ReplaceAll(text, "\u00a0", "\x00")) {
		for utf8.RuneCountInString(word) > width && width > 0 {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			r := []rune(word)
			lines, word = append(lines, string(r[:width])), string(r[width:])
		}
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	lines = append(lines, line)
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], "\x00", " ")
	}
	return lines
}
