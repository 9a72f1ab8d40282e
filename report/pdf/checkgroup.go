package pdf

import (
	"fmt"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// caseLimit is how many cases of one check are all set in full; of more, the one with
// the least margin is, and every one that is not assessed.
const caseLimit = 10

// A group is the checks of one id, part by part.
type group struct {
	shown  []check.Result // set in full
	others []check.Result // made, with more margin; worst first
}

// grouped deals the checks out by id, those of a part together.
func grouped(rs []check.Result) (out []group) {
	sorted := byPart(rs)
	for from := 0; from < len(sorted); {
		to := from
		for to < len(sorted) && sorted[to].ID == sorted[from].ID {
			to++
		}
		all := sorted[from:to]
		from = to
		g := group{shown: all}
		if worst := check.Governing(all); len(all) > caseLimit && worst >= 0 {
			g.shown = nil
			for i, r := range all {
				if made := r.Status() == check.Satisfied || r.Status() == check.NotSatisfied; made && i != worst {
					g.others = append(g.others, r)
				} else {
					g.shown = append(g.shown, r)
				}
			}
			g.others = report.WorstFirst(g.others)
		}
		out = append(out, g)
	}
	return out
}

// others says how the cases of a check that are not set in full came out; worst first
// those that are not satisfied come before the others.
func (p *paper) others(rs []check.Result) {
	failed := 0
	for failed < len(rs) && rs[failed].Status() == check.NotSatisfied {
		failed++
	}
	for _, of := range [][]check.Result{rs[:failed], rs[failed:]} {
		if len(of) == 0 {
			continue
		}
		word := "Satisfied"
		if of[0].Status() == check.NotSatisfied {
			word = "NOT SATISFIED"
		}
		first, last := of[0], of[len(of)-1]
		margins := "margin " + report.Margin(first)
		if report.Margin(last) != report.Margin(first) {
			margins = fmt.Sprintf("margins from %s (%s) to %s (%s)", report.Margin(first), caseName(first)+at(first), report.Margin(last), caseName(last)+at(last))
		}
		p.lines(left+4, p.inner()-4, small, fmt.Sprintf("%s in %d other cases, %s; each stands in the attached sheet.json.", word, len(of), margins))
		p.y += 1.6
	}
}

// An absence is a reason why a check does not arise, with the cases of which it is true.
type absence struct {
	of    check.Result
	cases []string
}

// absences returns why the checks of one id do not arise, each reason once.
func absences(rs []check.Result) (out []absence) {
	at := map[string]int{}
	for _, r := range rs {
		if r.Status() != check.NotApplicable {
			continue
		}
		key := r.Title + "\n" + r.Note
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, absence{of: r})
		}
		if r.Case != "" {
			out[i].cases = append(out[i].cases, r.Case)
		}
	}
	return out
}

// reasonsShown is how many reasons why a check does not arise are set in full: with
// many cases they differ in a number.
const reasonsShown = 4

// absent lists the checks of one id that do not arise, with their reasons.
func (p *paper) absent(rs []check.Result) {
	all := absences(rs)
	shown := all
	if len(all) > reasonsShown {
		shown = all[:reasonsShown-1]
	}
	say := func(r check.Result, cases []string, why string) {
		p.lines(left, p.inner(), small, r.ID+" – "+r.Title+": not applicable"+orEmpty(" in ", strings.Join(cases, ", "))+". "+why)
		p.y += 1
	}
	for _, a := range shown {
		say(a.of, a.cases, sentence(a.of.Note))
	}
	if rest := all[len(shown):]; len(rest) > 0 {
		var cases []string
		for _, a := range rest {
			cases = append(cases, a.cases...)
		}
		say(rest[0].of, cases, "The reason of each stands in the attached sheet.json.")
	}
}

// alike gathers the checks of one id that differ in their case alone, as printed:
// they are set once, under the names of all their cases.
func (p *paper) alike(rs []check.Result) [][]check.Result {
	if len(rs) == 1 {
		return [][]check.Result{rs}
	}
	var out [][]check.Result
	at := map[string]int{}
	for _, r := range rs {
		d, c := report.ShowPair(r.Demand, r.Capacity, p.sheet.Units)
		key := strings.Join([]string{r.ID, r.Title, r.Formula, provenance(r.Source), r.Rule, p.outcome(r), p.substituted(r.Inputs),
			withName(r.Demand, d), withName(r.Capacity, c), factor(r), report.Remark(r)}, "\n")
		if i, ok := at[key]; ok {
			out[i] = append(out[i], r)
			continue
		}
		at[key] = len(out)
		out = append(out, []check.Result{r})
	}
	return out
}

// byPart returns the checks with those of a part together, and within it those
// of one id, in the order in which each first comes.
func byPart(rs []check.Result) []check.Result {
	var parts []string
	ids := map[string][]string{}
	places := map[string][]int{}
	for i, r := range rs {
		if places[r.ID] == nil {
			part, _, _ := strings.Cut(r.ID, "/")
			if ids[part] == nil {
				parts = append(parts, part)
			}
			ids[part] = append(ids[part], r.ID)
		}
		places[r.ID] = append(places[r.ID], i)
	}
	out := make([]check.Result, 0, len(rs))
	for _, part := range parts {
		for _, id := range ids[part] {
			for _, i := range places[id] {
				out = append(out, rs[i])
			}
		}
	}
	return out
}

// alikeParts is from how many parts of one kind on, ports, the symbols of their
// checks are named once for all.
const alikeParts = 8

// namedAt returns the check of a like part, where the sheet has many, at which the
// same symbols were named before; "" where they have to be named.
func (p *paper) namedAt(r check.Result) string {
	if p.named == nil {
		p.named, p.crowded = map[string]string{}, p.sheet.Section != nil && len(p.sheet.Section.Ports) > alikeParts
	}
	if !p.crowded || !strings.HasPrefix(r.ID, "port.") {
		return ""
	}
	var key strings.Builder
	key.WriteString(r.ID[strings.LastIndex(r.ID, "/"):] + r.Formula)
	for _, q := range r.Inputs {
		if !strings.Contains(q.Name, ", port ") {
			key.WriteString("\n" + q.Symbol + " " + q.Name)
		}
	}
	at, ok := p.named[key.String()]
	if !ok {
		p.named[key.String()] = r.ID
	}
	return at
}

// neighbours is how many inputs of a check against neighbours are set in full.
const neighbours = 40

// ofNeighbour returns the inputs of a check that are set: of one with very many, in
// which names end in that of a neighbour, those of the neighbour that governs; and
// how many are left out.
func ofNeighbour(r check.Result) (in []check.Quantity, left int) {
	const mark = " port "
	at := strings.LastIndex(r.Capacity.Name, mark)
	if len(r.Inputs) <= neighbours || at < 0 {
		return r.Inputs, 0
	}
	governs, _, _ := strings.Cut(r.Capacity.Name[at+len(mark):], " ")
	for _, q := range r.Inputs {
		if strings.HasSuffix(q.Name, mark+governs) || !strings.Contains(q.Name, mark) {
			in = append(in, q)
		}
	}
	return in, len(r.Inputs) - len(in)
}
