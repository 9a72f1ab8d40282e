package pdf

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// overview lists every check on one table, worst first, after the chart of
// their margins.
func (p *paper) overview() {
	p.newPage()
	p.chapter("Overview")
	p.figure(marginsFigure(p.shared.few, p.shared.worst, p.inner()))
	var rows [][]cell
	for _, r := range p.shared.few {
		d, c := "–", "–"
		switch r.Status() {
		case check.Satisfied, check.NotSatisfied:
			d, c = report.ShowPair(r.Demand, r.Capacity, p.sheet.Units)
		}
		row := plain(r.Status().String(), report.Margin(r), report.FullID(r)+at(r), r.Title, d, c, factor(r))
		row[0].bold = r.Status() != check.Satisfied && r.Status() != check.NotApplicable
		row[1].bold = row[0].bold
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		p.paragraph("No check was made.")
		return
	}
	p.heading("All checks, worst first", 20)
	if n := len(p.sheet.Checks) - len(rows); n > 0 {
		p.paragraph(fmt.Sprintf("%d further cases are left out here: of a check with more than %d cases only the least margin is listed, and whatever is not assessed. The chapter of the checks names them.", n, caseLimit))
	}
	p.table([]column{{"verdict", 1.18, false, false}, {"margin", 0.73, true, false}, {"check @ case", 2.5, false, false}, {"what", 3.5, false, false},
		{"demand", 1.05, true, false}, {"capacity", 1.05, true, false}, {"factor", 0.62, true, false}}, rows, 0)
}

// fewer returns the checks that the overview lists: of one that does not arise in
// several cases for one reason, the first.
func fewer(groups []group) (out []check.Result) {
	for _, g := range groups {
		told := map[string]bool{}
		for _, r := range g.shown {
			if r.Status() == check.NotApplicable && len(g.shown) > caseLimit {
				if told[r.Note] {
					continue
				}
				told[r.Note] = true
			}
			out = append(out, r)
		}
	}
	return out
}

// at names the instant of a check of a flight history.
func at(r check.Result) string {
	if r.Time == nil {
		return ""
	}
	return " at " + report.Plain(*r.Time) + " s"
}

func factor(r check.Result) string {
	if r.Factor == 0 || r.Status() == check.NotApplicable {
		return "–"
	}
	return report.Plain(r.Factor)
}

// provenance prints a source with how it was obtained.
func provenance(src check.Source) string {
	if src == (check.Source{}) {
		return "no source stated"
	}
	if src.How == check.Unstated {
		return report.Cite(src)
	}
	return report.Cite(src) + " (" + src.How.String() + ")"
}

func (p *paper) basis() {
	p.chapter("Basis and factors")
	p.paragraph("Rule set of the verdict: " + orDash(p.sheet.VerdictRule) + ". People while pressurised: " + orDash(p.sheet.People) + ".")
	p.y += 2
	var rows [][]cell
	for _, b := range p.sheet.Basis {
		kind := "of the rule"
		if b.Override {
			kind = "OVERRIDE, in place of " + orDash(b.Instead)
		}
		row := plain(b.Name, b.Value, kind, provenance(b.Source))
		row[2].bold = b.Override
		rows = append(rows, row)
	}
	p.table([]column{{"factor or choice", 1.6, false, false}, {"value", 1, false, false}, {"", 1.5, false, false}, {"source", 3.4, false, false}}, rows, 0)
	if len(p.sheet.Defaults) > 0 {
		p.heading("Inputs left out of the tank file and the values taken", 15)
		rows = nil
		for _, d := range p.sheet.Defaults {
			rows = append(rows, plain(d.Name, d.Value, d.Note))
		}
		p.table([]column{{"key", 2, false, false}, {"value taken", 1.3, false, false}, {"why", 4, false, false}}, rows, 0)
	}
}

func (p *paper) materials() {
	if len(p.sheet.Materials) == 0 {
		return
	}
	p.chapter("Materials")
	for _, m := range p.sheet.Materials {
		p.heading(m.Name+": "+m.Alloy, 22)
		p.paragraph(sentence(m.Row) + " Used for: " + orDash(m.Used) + ". Heat or certificate: " + orNoneGiven(m.Certificate) + ".")
		p.y += 1
		var rows [][]cell
		for _, v := range m.Values {
			rows = append(rows, plain(v.Quantity.Name, v.Quantity.Symbol, report.Show(v.Quantity, p.sheet.Units, report.Nearest), provenance(v.Source), v.Note))
		}
		p.table([]column{{"property", 1.7, false, false}, {"symbol", 0.6, false, true}, {"value", 1, true, false}, {"source (how)", 2.6, false, false}, {"note", 1.8, false, true}}, rows, 0)
		p.list(m.Notes, small)
	}
}

func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.TrimRight(text, ".") + "."
}

func orNoneGiven(text string) string {
	if text == "" {
		return "none given"
	}
	return text
}

func (p *paper) joints() {
	if len(p.sheet.Joints) == 0 {
		return
	}
	p.chapter("Weld joints")
	var rows [][]cell
	var notes []string
	for _, j := range p.sheet.Joints {
		what := strings.Trim(j.Kind+", "+j.Process, ", ")
		for _, u := range j.Uses {
			value := "not permitted"
			if !math.IsNaN(u.Efficiency) {
				value = report.Number(u.Efficiency, 4, report.Down)
			}
			rows = append(rows, plain(j.Name, what, orDash(j.Examination), u.Place, u.Rule, value, strings.TrimRight(provenance(u.Source)+"; "+u.Note, "; ")))
		}
		for _, n := range j.Notes {
			notes = append(notes, j.Name+": "+n)
		}
	}
	p.table([]column{{"joint", 0.8, false, false}, {"kind", 1.3, false, false}, {"examined", 0.8, false, false}, {"where", 1.5, false, false}, {"rule", 0.8, false, false},
		{"efficiency", 0.8, true, false}, {"source (how), note", 2.6, false, false}}, rows, 0)
	p.list(notes, small)
	for _, j := range p.sheet.Joints {
		if j.Coupons != nil {
			p.coupons(j)
		}
	}
}

func (p *paper) cases() {
	if len(p.sheet.Cases)+len(p.sheet.Conditions) == 0 {
		return
	}
	p.chapter("Load cases and pressures by station")
	for _, c := range p.sheet.Cases {
		p.heading(c.Name+orEmpty(": ", c.Title), 8)
		text := "Assessed by " + orDash(c.Rule) + "; people: " + orDash(c.People) + ";  "
		for _, q := range c.Values {
			text += glued(q.Name+" "+report.Show(q, p.sheet.Units, report.Nearest)) + ";  "
		}
		p.paragraph(strings.TrimRight(text, "; ") + ".")
		p.list(c.Notes, small)
	}
	if len(p.sheet.Conditions) == 0 {
		return
	}
	p.y += 2
	p.heading("Pressure and temperature by station", 20)
	var rows [][]cell
	for _, k := range p.sheet.Conditions {
		rows = append(rows, plain(k.Case, k.Part, report.Show(check.M("", "", micro(k.Z)), p.sheet.Units, report.Nearest),
			report.Show(check.Pa("", "", k.Pressure), p.sheet.Units, report.Up), report.Show(check.K("", "", k.Temperature), p.sheet.Units, report.Nearest)))
	}
	p.table([]column{{"case", 1.5, false, false}, {"part", 1.5, false, false}, {"station z", 1, true, false}, {"pressure across the wall", 1.3, true, false}, {"metal temperature", 1.2, true, false}}, rows, 0)
}

// micro returns a station to the nearest micrometre [m]: stations just beside a
// seam are meant to show as the seam's.
func micro(z float64) float64 { return math.Round(z*1e6) / 1e6 }

// permissible lists the highest ullage pressure of each part, the weakest
// marked.
func (p *paper) permissible() {
	list := p.sheet.Permissible
	if len(list) == 0 {
		return
	}
	weakest := -1
	var open []string
	for i, q := range list {
		if math.IsNaN(q.Pressure) || len(p.shared.open[q.Part]) > 0 {
			open = append(open, q.Part)
		}
		if !math.IsNaN(q.Pressure) && (weakest < 0 || q.Pressure < list[weakest].Pressure) {
			weakest = i
		}
	}
	p.chapter("Highest permissible ullage pressures")
	var rows [][]cell
	for i, q := range list {
		row := plain(q.Part, q.Shown(p.sheet.Units), q.Rule, q.Check, p.permitted(q, i == weakest, len(open) > 0))
		row[0].bold, row[1].bold = i == weakest, i == weakest
		rows = append(rows, row)
	}
	p.table([]column{{"part", 1.2, false, false}, {"ullage pressure", 1, true, false}, {"rule", 0.6, false, false}, {"set by", 1.6, false, false}, {"note", 3.2, false, false}}, rows, 0)
	if len(open) > 0 {
		p.paragraph("The weakest part cannot be named, since checks are not assessed of: " + strings.Join(open, ", ") + ".")
	}
	if left := p.shared.open["tank"]; len(left) > 0 {
		p.paragraph("No pressure of the table covers what is not assessed of the whole tank: " + strings.Join(left, ", ") + ".")
	}
}

// permitted says of a permissible pressure what it does not cover, and whether it
// is the least.
func (p *paper) permitted(q report.PermissiblePressure, least, open bool) string {
	note := ""
	if left := p.shared.open[q.Part]; len(left) > 0 {
		short := make([]string, len(left))
		for i, id := range left {
			short[i] = strings.TrimPrefix(id, q.Part+"/")
		}
		note = "NOT COVERED, because not assessed: " + strings.Join(short, ", ") + ". "
	}
	if q.Pressure == 0 {
		note += "Not satisfied at any pressure: more than the pressure is to be changed. "
	}
	switch {
	case least && open:
		note += "Lowest of the pressures assessed. "
	case least:
		note += "The weakest part. "
	}
	return strings.TrimSpace(note + sentence(q.Note))
}

func (p *paper) charts() {
	figures := 0
	for _, c := range allCharts(p.sheet) {
		f := chartFigure(c, p.sheet.Units, p.inner(), 85)
		if f == nil {
			continue
		}
		if figures == 0 {
			p.need(f.Height + 22) // the title of the chapter stays with its first figure
			p.chapter("Charts")
		}
		p.figure(f)
		figures++
	}
}

func (p *paper) quantities() {
	if len(p.sheet.Quantities) == 0 {
		return
	}
	p.chapter("Quantities")
	var rows [][]cell
	for _, q := range p.sheet.Quantities {
		rows = append(rows, plain(q.Key, report.Show(check.Quantity{Value: q.Value, Unit: q.Unit}, p.sheet.Units, report.Nearest), q.Note))
	}
	p.table([]column{{"quantity", 2, false, false}, {"value", 1, true, false}, {"note", 3, false, false}}, rows, 0)
}
