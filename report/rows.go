package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"proofsheet/report/check"
)

// writeChecks writes the checks of a case, or of all, the worst first.
func (s *Sheet) writeChecks(b *strings.Builder, caseFilter string, width int) {
	fmt.Fprintln(b)
	rows := [][4]string{}
	absent := 0
	for _, r := range WorstFirst(s.Checks) {
		if caseFilter != "" && r.Case != caseFilter {
			continue
		}
		if r.Status() == check.NotApplicable {
			absent++
			continue
		}
		rows = append(rows, [4]string{r.Status().String(), Margin(r), FullID(r) + instant(r), s.comparison(r)})
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

// writeRows writes checks in columns: status, margin, id, comparison. Where a row would
// be wider than a terminal, every comparison goes under its id; without a width none is.
func writeRows(b *strings.Builder, rows [][4]string, width int) {
	wide := [4]int{}
	for _, row := range rows {
		for i := range wide {
			wide[i] = max(wide[i], utf8.RuneCountInString(row[i]))
		}
	}
	beside := width == 0 || wide[0]+wide[1]+wide[2]+wide[3]+6 <= width
	for _, row := range rows {
		fmt.Fprintf(b, "%-*s  %*s  ", wide[0], row[0], wide[1], row[1])
		if beside {
			fmt.Fprintf(b, "%-*s  %s\n", wide[2], row[2], row[3])
			continue
		}
		indent := wide[0] + wide[1] + 4
		fmt.Fprintf(b, "%s\n%s\n", row[2], strings.Join(foldLine(strings.Repeat(" ", indent)+row[3], indent, width), "\n"))
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
// made or does not arise, and its note.
func Remark(r check.Result) string {
	reason := once(r.Reason())
	if reason == "" || reason == r.Note {
		return r.Note
	}
	if r.Note == "" {
		return reason
	}
	return reason + "; " + r.Note
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
