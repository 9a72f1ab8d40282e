package study

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// A lack is what could not be made of a part or a group of ports: it is sized by
// nothing then, since the check that is missing may be the one that asks for the wall.
type lack struct {
	ids []string // of the checks that are not assessed
	why error    // of the first
}

// with adds a check that is not assessed; there may be no lack before it.
func (l *lack) with(r check.Result) *lack {
	if l == nil {
		l = &lack{why: r.Err}
	}
	if !slices.Contains(l.ids, r.ID) {
		l.ids = append(l.ids, r.ID)
	}
	return l
}

// String says why a row is not sized. The reason of the first check stands for all: check
// prints the others.
func (l *lack) String() string {
	more := " is"
	if n := len(l.ids) - 1; n > 0 {
		more = fmt.Sprintf(" and %d more are", n)
	}
	text := "cannot be sized: " + l.ids[0] + more + " not assessed"
	if l.why != nil {
		first, _, _ := strings.Cut(l.why.Error(), "\n")
		text += ": " + first
	}
	return text
}

// judged reports whether a row speaks against the walls of its neighbours: it has not
// been given up, or only for want of checks, and those that are made must go on to hold.
func (z *sizing) judged(name string) bool {
	return z.rows[name].Why == "" || z.lacks[name] != nil && z.rows[name].Status != check.NotSatisfied
}

// withdraw takes back the changes of every row of which the assessment of the whole tank
// leaves a check unmade: the trials do not halve the mesh of the numerical shell to see
// whether it is fine enough. What is taken back changes the tank, so it is looked at again.
func (z *sizing) withdraw() error {
	for {
		e, err := z.ended()
		if err != nil {
			return err
		}
		again := false
		for name, l := range lacking(e.checks, z.ownerOf) {
			row := z.rows[name]
			if row == nil {
				continue // of the tank as a whole
			}
			if row.Status == check.Satisfied {
				row.Status = check.NotAssessed
			}
			if row.Why == "" {
				row.Why = l.String()
			}
			z.lacks[name] = l
			again = again || len(row.Changes) > 0
			row.Changes = nil
		}
		if !again {
			return nil
		}
		if e, err = z.written(); err != nil {
			return err
		}
		z.now = e.tank
	}
}

// lacking gathers the checks that are not assessed by what they belong to.
func lacking(checks []check.Result, owner func(id string) string) map[string]*lack {
	out := map[string]*lack{}
	for _, r := range checks {
		if r.Status() == check.NotAssessed {
			name := owner(r.ID)
			out[name] = out[name].with(r)
		}
	}
	return out
}

func (z *sizing) ownerOf(id string) string { return ownerOf(z.first, id) }

// portsLack reports whether a check of a port on a part is not made: it may be the one
// that asks for the part's wall.
func (z *sizing) portsLack(part string) bool {
	return slices.ContainsFunc(groups(z.now), func(group string) bool {
		return hostOf(z.now, group) == part && z.lacks["port."+group] != nil
	})
}
