package tank

import (
	"fmt"
	"slices"
	"strings"
)

// A Fault is one thing that is wrong with the tank file or a file it names.
type Fault struct {
	File         string
	Line, Column int // from 1, columns in characters
	Key, What    string
}

// Error returns the fault as it is printed: file:line:col: key: what.
func (f Fault) Error() string {
	if f.Key == "" {
		return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, f.What)
	}
	return fmt.Sprintf("%s:%d:%d: %s: %s", f.File, f.Line, f.Column, f.Key, f.What)
}

// Faults are all faults of one run, by position.
type Faults []Fault

// Error returns one fault a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// sorted orders by file, the tank file first, then position, then text, and drops
// repetitions.
func (fs Faults) sorted(main string) Faults {
	slices.SortStableFunc(fs, func(a, b Fault) int {
		if (a.File == main) != (b.File == main) {
			if a.File == main {
				return -1
			}
			return 1
		}
		if c := strings.Compare(a.File, b.File); c != 0 {
			return c
		}
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		if a.Column != b.Column {
			return a.Column - b.Column
		}
		return strings.Compare(a.Key+a.What, b.Key+b.What)
	})
	return slices.Compact(fs)
}
