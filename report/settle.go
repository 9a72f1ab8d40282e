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
	s.Verdict, s.Governing = s.judge()
}

// Consistent returns an error where the stated verdict or governing check is
// not that of the checks: such a sheet must not be printed.
func (s *Sheet) Consistent() error {
	verdict, governing := s.judge()
	if s.Verdict != verdict {
		return fmt.Errorf("the sheet states %q but its checks say %q", s.Verdict, verdict)
	}
	if s.Governing != governing {
		return fmt.Errorf("the sheet names %q as governing but its checks say %q", s.Governing, governing)
	}
	return nil
}

// judge returns the verdict and the id@case of the least margin, "" when none was made.
func (s *Sheet) judge() (check.Status, string) {
	verdict, i := check.Judge(s.Checks)
	if i < 0 {
		return verdict, ""
	}
	return verdict, FullID(s.Checks[i])
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
