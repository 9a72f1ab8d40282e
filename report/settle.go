package report

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// Settle sets Verdict and Governing from the checks. The assessment calls it
// last.
func (s *Sheet) Settle() {
	s.Verdict, s.Governing = check.Verdict(s.Checks), s.governing()
}

// Consistent returns an error where the stated verdict or governing check is
// not that of the checks: such a sheet must not be printed.
func (s *Sheet) Consistent() error {
	if want := check.Verdict(s.Checks); s.Verdict != want {
		return fmt.Errorf("the sheet states %q but its checks say %q", s.Verdict, want)
	}
	if want := s.governing(); s.Governing != want {
		return fmt.Errorf("the sheet names %q as governing but its checks say %q", s.Governing, want)
	}
	return nil
}

// governing returns the id@case of the least margin, "" when none was made.
func (s *Sheet) governing() string {
	if i := check.Governing(s.Checks); i >= 0 {
		return FullID(s.Checks[i])
	}
	return ""
}

// Open returns the ids, each once, of the checks of a part that are not
// assessed: a pressure permitted by the others does not cover them.
func (s *Sheet) Open(part string) []string { return s.OpenParts()[part] }

// OpenParts returns the same of each part that has such checks.
func (s *Sheet) OpenParts() map[string][]string {
	open := map[string][]string{}
	for _, r := range s.Checks {
		if r.Status() != check.NotAssessed {
			continue
		}
		if part, _, _ := strings.Cut(r.ID, "/"); !slices.Contains(open[part], r.ID) {
			open[part] = append(open[part], r.ID)
		}
	}
	return open
}

// FullID returns the check's id with its case: "cylinder/hoop@burnout".
func FullID(r check.Result) string {
	if r.Case == "" {
		return r.ID
	}
	return r.ID + "@" + r.Case
}
