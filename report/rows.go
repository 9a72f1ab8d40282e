package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"proofsheet/report/check"
)

// A checkRow is a check in the summary: status, margin, id, comparison, and in a line of
// its own what to write where it is not satisfied.
type checkRow struct {
	cells  [4]string
	advice string
}

// writeChecks writes the checks of a case, or of all, the worst first. What to write is
// said once, not again for every case in which a check fails by the same.
func (s *Sheet) writeChecks(b *strings.Builder, caseFilter string, width int) {
	fmt.Fprintln(b)
	var rows []checkRow
	said := map[string]bool{}
	absent := 0
	for _, r := range WorstFirst(s.Checks) {
		if caseFilter != "" && r.Case != caseFilter {
			continue
		}
		if r.Status() == check.NotApplicable {
			absent++
			continue
		}
		row := checkRow{cells: [4]string{r.Status().String(), Margin(r), FullID(r) + instant(r), s.comparison(r)}}
		if key := r.ID + " " + r.Advice; r.Status() == check.NotSatisfied && !said[key] {
			said[key], row.advice = true, r.Advice
		}
		rows = append(rows, row)
	}
	writeRows(b, rows, width)
	if absent > 0 {
		fmt.Fprintf(b, "not applicable: %d, each with its reason in the sheet\n", absent)
	}
	if caseFilter != "" {
		fmt.Fprintf(b, "only case %s is listed; the verdict covers every case\n", caseFilter)
	}
	fmt.Fprintln(b)
}

// writeRows writes checks in columns. Where a row would be wider than a terminal, every
// comparison goes under its id; without a width none is.
func writeRows(b *strings.Builder, rows []checkRow, width int) {
	wide := [4]int{}
	for _, row := range rows {
		for i := range wide {
			wide[i] = max(wide[i], utf8.RuneCountInString(row.cells[i]))
		}
	}
	beside := width == 0 || wide[0]+wide[1]+wide[2]+wide[3]+6 <= width
	indent := wide[0] + wide[1] + 4
	under := func(text string, indent int) {
		fmt.Fprintln(b, strings.Join(foldLine(strings.Repeat(" ", indent)+text, indent, width), "\n"))
	}
	for _, row := range rows {
		fmt.Fprintf(b, "%-*s  %*s  ", wide[0], row.cells[0], wide[1], row.cells[1])
		if beside {
			fmt.Fprintf(b, "%-*s  %s\n", wide[2], row.cells[2], row.cells[3])
		} else {
			fmt.Fprintln(b, row.cells[2])
			under(row.cells[3], indent)
		}
		if row.advice != "" {
			under(row.advice, indent+2)
		}
	}
}

// comparison returns "demand 150.3 MPa, capacity 147.0 MPa", or the reason.
func (s *Sheet) comparison(r check.Result) string {
	if r.Status() == check.NotAssessed {
		return Remark(r)
	}
	d, c := ShowPair(r.Demand, r.Capacity, s.Units)
	text := r.Demand.Name + " " + d + " against " + c
	if r.Factor != 1 {
		text += ", factor " + Number(r.Factor, 4, Up)
	}
	return text
}

// instant returns the time of a check of a flight history.
func instant(r check.Result) string {
	if r.Time == nil {
		return ""
	}
	return " at " + trim(Number(*r.Time, 6, Nearest)) + " s"
}

// WorstFirst returns the checks in the order of concern: not satisfied, not
// assessed, satisfied, not applicable; in each the least margin first.
func WorstFirst(rs []check.Result) []check.Result {
	rank := map[check.Status]int{check.NotSatisfied: 0, check.NotAssessed: 1, check.Satisfied: 2, check.NotApplicable: 3}
	type ranked struct {
		at, rank int
		margin   float64 // [-]
	}
	order := make([]ranked, len(rs))
	for i, r := range rs {
		order[i] = ranked{i, rank[r.Status()], r.Margin()}
	}
	slices.SortStableFunc(order, func(a, b ranked) int {
		switch {
		case a.rank != b.rank:
			return a.rank - b.rank
		case a.margin < b.margin:
			return -1
		case a.margin > b.margin:
			return 1
		default: // also two without a margin
			return 0
		}
	})
	sorted := make([]check.Result, len(rs))
	for i, o := range order {
		sorted[i] = rs[o.at]
	}
	return sorted
}

// Remark returns what is printed beside a check: the reason where it was not
// made or does not arise, its note and its advice.
func Remark(r check.Result) string {
	var parts []string
	for _, part := range []string{once(r.Reason()), r.Note, r.Advice} {
		if part != "" && !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, "; ")
}

// once says each line of a reason once, in one line.
func once(reason string) string {
	var said []string
	for line := range strings.SplitSeq(reason, "\n") {
		if !slices.Contains(said, line) {
			said = append(said, line)
		}
	}
	return strings.Join(said, "; ")
}
