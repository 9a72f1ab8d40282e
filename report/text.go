package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"proofsheet/report/check"
)

// Text writes the summary of a sheet. It opens and closes with the verdict; a
// quiet one is that line and the governing check only. With a case named, only
// that case's checks are listed; the verdict still covers all. Its lines are folded to a
// width as by [Fold]; of 0, each check has one.
func Text(w io.Writer, s *Sheet, quiet bool, caseFilter string, width int) error {
	if err := s.Consistent(); err != nil {
		return err
	}
	if caseFilter != "" && !s.hasCase(caseFilter) {
		return fmt.Errorf("no case %q; there are %s", caseFilter, strings.Join(s.caseNames(), ", "))
	}
	var b strings.Builder
	verdict := VerdictLines("", s, width)
	b.WriteString(verdict)
	fmt.Fprintln(&b, s.governingLine())
	if !quiet {
		s.writeBody(&b, caseFilter, width)
		b.WriteString(verdict)
	}
	_, err := io.WriteString(w, Fold(b.String(), width))
	return err
}

// VerdictWords returns the verdict with its rule: "satisfied by flight", "not assessed, rule
// flight".
func (s *Sheet) VerdictWords() string {
	switch {
	case s.VerdictRule == "":
		return s.Verdict.String()
	case s.Verdict == check.NotAssessed:
		return s.Verdict.String() + ", rule " + s.VerdictRule
	default:
		return s.Verdict.String() + " by " + s.VerdictRule
	}
}

// VerdictLine returns the verdict with its rule and its people: "satisfied by
// flight: nobody near while pressurised".
func (s *Sheet) VerdictLine() string {
	line := s.VerdictWords()
	switch {
	case s.Verdict != check.Satisfied:
		return line + ": nobody near while pressurised; " + s.shortfall()
	case s.People == "near":
		return line + ": people may be near after a passed proof, within the pressures stated"
	default: // also where nobody said
		return line + ": nobody near while pressurised"
	}
}

// VerdictLines returns the verdict behind a head: in one line where it fits a width as of
// [Fold], else what it rests on in the next.
func VerdictLines(head string, s *Sheet, width int) string {
	line := head + s.VerdictLine()
	if before, after, ok := strings.Cut(line, "; "); ok && width > 0 && utf8.RuneCountInString(line) > width {
		line = before + ";\n  " + after
	}
	return Fold(line+"\n", width)
}

// shortfall counts the checks that keep the verdict from being satisfied.
func (s *Sheet) shortfall() string {
	failed, open := 0, 0
	for _, r := range s.Checks {
		switch r.Status() {
		case check.NotSatisfied:
			failed++
		case check.NotAssessed:
			open++
		}
	}
	if failed+open == 0 {
		return "no check was made"
	}
	return fmt.Sprintf("of %d checks %d not satisfied, %d not assessed", len(s.Checks), failed, open)
}

func (s *Sheet) governingLine() string {
	i := check.Governing(s.Checks)
	if i < 0 {
		return "governing: none, no check was made"
	}
	return fmt.Sprintf("governing: %s, margin %s", FullID(s.Checks[i]), Margin(s.Checks[i]))
}

func (s *Sheet) writeBody(b *strings.Builder, caseFilter string, width int) {
	fmt.Fprintf(b, "\n%s\n", s.subject())
	for _, row := range s.Basis {
		if row.Override {
			fmt.Fprintf(b, "override: %s = %s in place of %s (%s)\n", row.Name, row.Value, orNone(row.Instead), row.Source.Doc)
		}
	}
	for _, j := range s.Joints {
		if j.Coupons != nil {
			for _, l := range j.Coupons.Limits {
				fmt.Fprintln(b, l.line(j.Name, s.Units))
			}
		}
	}
	s.writeChecks(b, caseFilter, width)
	opens := s.OpenParts()
	for _, p := range s.Permissible {
		value := p.Shown(s.Units)
		if p.Pressure == 0 {
			value += ", not satisfied at any"
		}
		switch open := strings.Join(opens[p.Part], ", "); {
		case open == "":
		case math.IsNaN(p.Pressure):
			value += ", since these are not: " + open
		default:
			value += " by the checks made, without " + open
		}
		fmt.Fprintln(b, strings.TrimRight("highest ullage pressure: "+p.Part+" "+value+" "+bracketed(p.Check), " "))
	}
	if p := s.Proof; p != nil {
		fmt.Fprintf(b, "proof: %s with %s, %s at the gauge\n", p.Method, p.Fluid, Show(check.Pa("", "", p.Pressure), s.Units, Up))
	}
	for _, line := range s.PeopleBox {
		fmt.Fprintf(b, "people: %s\n", line)
	}
	for _, line := range s.Cautions {
		fmt.Fprintf(b, "caution: %s\n", line)
	}
	for _, line := range s.Notes {
		fmt.Fprintf(b, "note: %s\n", line)
	}
	for _, line := range s.AllRecalled() {
		fmt.Fprintf(b, "recalled, to be confirmed: %s\n", line)
	}
	fmt.Fprintln(b)
}

// subject names the sheet, the tank and its input.
func (s *Sheet) subject() string {
	title := s.Block.Title
	if title == "" {
		title = "tank without a title"
	}
	parts := []string{title}
	if s.Block.Number != "" {
		parts = append(parts, "sheet "+s.Block.Number)
	}
	if s.Block.Revision != "" {
		parts = append(parts, "revision "+s.Block.Revision)
	}
	if s.Tank.File != "" {
		parts = append(parts, s.Tank.File+" "+s.Digits())
	}
	return strings.Join(parts, ", ")
}

// Digits returns the first 12 digits of the digest over the input files.
func (s *Sheet) Digits() string {
	return s.Tank.Combined[:min(12, len(s.Tank.Combined))]
}

func (s *Sheet) hasCase(name string) bool { return slices.Contains(s.caseNames(), name) }

// caseNames returns the cases of the sheet and of its checks, each once.
func (s *Sheet) caseNames() []string {
	var names []string
	for _, c := range s.Cases {
		names = append(names, c.Name)
	}
	for _, r := range s.Checks {
		if r.Case != "" && !slices.Contains(names, r.Case) {
			names = append(names, r.Case)
		}
	}
	return names
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

func bracketed(text string) string {
	if text == "" {
		return ""
	}
	return "(" + text + ")"
}
