package report

import (
	"slices"
	"strings"

	"proofsheet/report/check"
)

// AllRecalled returns every value or formula quoted from memory: those listed
// by the assessment, then, source by source, the checks, material values and
// joint efficiencies that lean on it.
func (s *Sheet) AllRecalled() []string {
	var sources []string
	users := map[string][]string{}
	add := func(src check.Source, user string) {
		cite := Cite(src)
		if src.How != check.Memory || slices.Contains(users[cite], user) {
			return
		}
		if users[cite] == nil {
			sources = append(sources, cite)
		}
		users[cite] = append(users[cite], user)
	}
	for _, r := range s.Checks {
		if r.Status() != check.NotApplicable {
			add(r.Source, r.ID)
		}
	}
	for _, m := range s.Materials {
		for _, v := range m.Values {
			add(v.Source, v.Quantity.Name+" of material "+m.Name)
		}
	}
	for _, j := range s.Joints {
		if j.Coupons != nil {
			for _, v := range j.Coupons.Ratios {
				add(v.Source, "joint "+j.Name+", "+v.Quantity.Name)
			}
			for _, l := range j.Coupons.Limits {
				add(l.Source, "joint "+j.Name+", limit of "+l.Name)
			}
		}
		for _, u := range j.Uses {
			add(u.Source, "joint "+j.Name+" as "+u.Place)
		}
	}
	for _, b := range s.Basis {
		add(b.Source, b.Name)
	}
	lines := slices.Clone(s.Recalled)
	for _, cite := range sources {
		lines = append(lines, cite+": "+strings.Join(users[cite], ", "))
	}
	return lines
}

// Cite returns a source as it is printed: document, and the clause only where
// it was read or worked out.
func Cite(src check.Source) string {
	switch {
	case src.Doc == "" && src.Where == "":
		return "no source stated"
	case src.How == check.Memory && strings.Contains(src.Doc, "recalled"):
		return src.Doc // it says so itself
	case src.How == check.Memory:
		return src.Doc + ", recalled; confirm"
	case src.Where == "":
		return src.Doc
	case src.Doc == "":
		return src.Where
	default:
		return src.Doc + ", " + src.Where
	}
}
