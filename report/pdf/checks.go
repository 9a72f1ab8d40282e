package pdf

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// checks sets every check, part by part, each complete enough to be redone by
// hand: formula, numbers, demand, capacity, margin and source.
func (p *paper) checks() {
	p.need(30 + tall) // the title of the chapter stays with its first check
	p.chapter("Checks")
	p.paragraph("Demands are rounded up, capacities and margins down, inputs to the nearest. " + marginWords)
	part, last, n := "", check.Result{}, 0
	for _, g := range p.shared.groups {
		told := false
		for _, rs := range p.alike(g.shown) {
			r := rs[0]
			name, _, _ := strings.Cut(r.ID, "/")
			if name != part {
				last = check.Result{}
			}
			b, least, made := block{}, 3*small*leading, r.Status() != check.NotApplicable
			if made {
				b = p.laid(n, rs, last)
				n++
				least = b.least(p.floor() - top - partHigh)
			}
			if name != part {
				part = name
				p.need(partHigh + least) // the name of the part stays with its first check
				p.font("B", body+1)
				p.enter(part, 1)
				p.heading("Part: "+part, 0)
			}
			switch {
			case made:
				p.need(least)
				p.draw(b)
				last = r
			case !told:
				p.absent(g.shown)
				told = true
			}
		}
		p.others(g.others)
	}
}

const marginWords = "Margin of safety = capacity / (factor × demand) − 1; zero or more is satisfied."

// partHigh is the height of the name of a part [mm].
const partHigh = 8.0

// tall is the height from which a check may go over to the next page [mm]: kept
// whole it would leave half a page empty.
const tall = 80.0

// sameHead reports whether the head of the check before serves this one too.
func sameHead(a, b check.Result) bool {
	return a.ID == b.ID && a.Title == b.Title && a.Formula == b.Formula && a.Source == b.Source
}

// sameNames reports whether the inputs of the check before have the symbols and the
// names of this one's, so that they need not be named again.
func sameNames(a, b check.Result) bool {
	return sameHead(a, b) && slices.EqualFunc(a.Inputs, b.Inputs, func(p, q check.Quantity) bool { return p.Symbol == q.Symbol && p.Name == q.Name })
}

// laid returns the n-th block of the checks, laid out once for all writings.
func (p *paper) laid(n int, rs []check.Result, last check.Result) block {
	if n < len(p.shared.blocks) {
		return p.shared.blocks[n]
	}
	b := p.lay(rs, !sameHead(last, rs[0]), sameNames(last, rs[0]))
	p.shared.blocks = append(p.shared.blocks, b)
	return b
}

// lay sets checks that are alike in lines; with head, title, formula and source
// first; with named, inputs without their names, which the check before has given.
func (p *paper) lay(rs []check.Result, head, named bool) block {
	b, r := block{rule: head}, rs[0]
	left := 0
	r.Inputs, left = ofNeighbour(r)
	if head {
		p.add(&b, line{text: r.ID + " – " + r.Title, bold: true, size: body})
		if r.Formula != "" {
			p.formulaLines(&b, r)
		}
		p.add(&b, line{text: "Source: " + provenance(r.Source), indent: 4, size: small})
	}
	var names []string
	for _, o := range rs {
		names = append(names, caseName(o)+at(o))
	}
	p.add(&b, line{text: strings.Join(names, ", ") + orEmpty(", by ", r.Rule), indent: 4, bold: true, size: body, right: p.outcome(r)})
	b.head = len(b.lines)
	as := ""
	if !named {
		if at := p.namedAt(r); at != "" {
			as, named = "; symbols as at "+at, true
		}
	}
	switch {
	case p.sites(&b, r, as, slices.ContainsFunc(rs, p.governs)):
	case named && len(r.Inputs) > 0:
		p.add(&b, line{text: p.numbers(r.Inputs) + as, indent: 8, indices: true, size: small})
	case len(r.Inputs) > listed:
		p.grid(&b, r)
	case len(r.Inputs) > 0:
		p.add(&b, line{text: p.substituted(r.Inputs), indent: 8, indices: true, size: small})
	}
	b.keep(b.head)
	if left > 0 {
		p.add(&b, line{text: fmt.Sprintf("%d inputs of other neighbours stand in the data of the sheet, “check --json”.", left), indent: 8, size: small})
	}
	p.handLines(&b, rs[0])
	if made := r.Status() == check.Satisfied || r.Status() == check.NotSatisfied; made {
		d, c := report.ShowPair(r.Demand, r.Capacity, p.sheet.Units)
		p.add(&b, line{text: "demand: " + withName(r.Demand, d) + ";  capacity: " + withName(r.Capacity, c) +
			";  " + glued("factor "+factor(r)), indent: 8, indices: true, size: body})
	}
	if remark := report.Remark(r); remark != "" {
		if r.Status() == check.NotAssessed {
			remark = "Not assessed: " + remark
		}
		p.add(&b, line{text: remark, indent: 8, size: small})
	}
	b.height += 1.6
	return b
}

// outcome is the verdict on one check in words, with its margin.
func (p *paper) outcome(r check.Result) string {
	if r.Status() == check.NotAssessed {
		return "NOT ASSESSED"
	}
	word := "satisfied"
	if r.Status() == check.NotSatisfied {
		word = "NOT SATISFIED"
	}
	return word + ", margin " + report.Margin(r)
}

// caseName names the case of a check; one without is of no case in particular.
func caseName(r check.Result) string {
	if r.Case == "" {
		return "no case in particular"
	}
	return r.Case
}

// withName returns a quantity with the number that is shown for it.
func withName(q check.Quantity, shown string) string {
	return strings.TrimSpace(q.Name + " " + glued(strings.TrimSpace(q.Symbol+" = "+shown)))
}

// substituted returns the inputs with their numbers and names, each kept on one
// line where it fits.
func (p *paper) substituted(in []check.Quantity) string {
	items := make([]string, len(in))
	for i, q := range in {
		items[i] = glued(q.Symbol+" = "+report.Show(q, p.sheet.Units, report.Nearest)) + " (" + q.Name + ")"
	}
	return strings.Join(items, ", ")
}

// numbers returns the inputs with their numbers alone.
func (p *paper) numbers(in []check.Quantity) string {
	items := make([]string, len(in))
	for i, q := range in {
		items[i] = glued(q.Symbol + " = " + report.Show(q, p.sheet.Units, report.Nearest))
	}
	return strings.Join(items, ", ")
}

// glued keeps the words of a short text on one line.
func glued(text string) string { return strings.ReplaceAll(text, " ", string(tie)) }

// From more than listed inputs on, they are set side by side in columns.
const listed, inputColumns = 12, 3

// cellWidth returns the width of a column of inputs [mm].
func (p *paper) cellWidth(indent float64) float64 { return (p.inner() - indent) / inputColumns }

// grid sets many inputs in columns, read across.
func (p *paper) grid(b *block, r check.Result) {
	const indent = 8.0
	p.font("", small)
	p.indices = true
	defer func() { p.indices = false }()
	for i := 0; i < len(r.Inputs); i += inputColumns {
		row := r.Inputs[i:min(i+inputColumns, len(r.Inputs))]
		wrapped := make([][]string, len(row))
		high := 0
		for k, q := range row {
			text := glued(q.Symbol+" = "+report.Show(q, p.sheet.Units, report.Nearest)) + " " + q.Name
			wrapped[k] = p.wrap(text, p.cellWidth(indent)-3)
			high = max(high, len(wrapped[k]))
		}
		for n := range high {
			l := line{indent: indent, indices: true, size: small, cells: make([]string, len(row))}
			for k := range row {
				if n < len(wrapped[k]) {
					l.cells[k] = wrapped[k][n]
				}
			}
			b.lines = append(b.lines, l)
			b.height += small * leading
		}
	}
}
