package pdf

import (
	"fmt"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// first is page 1: what the tank is, what the verdict is, who may be near it.
func (p *paper) first() {
	p.newPage()
	p.titleBlock("Calculation sheet: welded pressurised tank")
	p.verdict()
	people, worst := p.peopleHeight(), p.worstHeight()
	cautions := p.twoColumns(p.sheet.Cautions)
	room := p.floor() - p.y - people - worst - 5
	height := room - float64(max(len(cautions[0]), len(cautions[1])))*tiny*leading - 10
	height = max(56, min(105, height, room))
	if f := sectionFigure(p.sheet, p.inner(), height); f != nil {
		p.need(f.Height)
		p.place(f, left, p.y)
		p.y += f.Height + 2
	}
	p.people(people)
	p.worst(worst)
	p.cautions(cautions)
}

// tiny is the type of the cautions and lists of page 1 [pt].
const tiny = 6.8

// twoColumns wraps items and deals them out in two columns of about the same height,
// the first first.
func (p *paper) twoColumns(items []string) (columns [2][]string) {
	p.font("", tiny)
	w := (p.inner()-6)/2 - 4
	total := 0
	var wrapped [][]string
	for _, item := range items {
		lines := p.wrap(item, w)
		total += len(lines)
		wrapped = append(wrapped, lines)
	}
	for _, lines := range wrapped {
		lines[0] = "–\t" + lines[0]
		at := 0
		if len(columns[0]) >= (total+1)/2 {
			at = 1
		}
		columns[at] = append(columns[at], lines...)
	}
	return columns
}

// cautions sets the cautions in two columns, over to the next page where they must.
func (p *paper) cautions(columns [2][]string) {
	rows := max(len(columns[0]), len(columns[1]))
	if rows == 0 {
		return
	}
	p.heading("Cautions", min(float64(rows)*tiny*leading, 30))
	from := 0
	for from < rows {
		fits := max(1, int((p.floor()-p.y)/(tiny*leading)))
		if from > 0 {
			p.newPage()
			p.heading("Cautions, continued", 0)
			fits = int((p.floor() - p.y) / (tiny * leading))
		}
		to := min(rows, from+fits)
		p.font("", tiny)
		for c, lines := range columns {
			x := left + float64(c)*((p.inner()-6)/2+6)
			for n := from; n < min(to, len(lines)); n++ {
				y := p.y + (float64(n-from)+0.78)*tiny*leading
				text, starts := strings.CutPrefix(lines[n], "–\t")
				if starts {
					p.put(x, y, "–")
				}
				p.put(x+3, y, text)
			}
		}
		p.y += float64(to-from) * tiny * leading
		from = to
	}
	p.y += 1
}

// titleBlock sets what the document is and the sheet's particulars in a frame.
func (p *paper) titleBlock(kind string) {
	s := p.sheet
	p.font("B", small)
	p.put(left, p.y, kind)
	p.y += 6
	p.font("B", 15)
	lines := p.wrap(orDash(s.Block.Title), p.inner())
	for i, line := range lines[:min(2, len(lines))] {
		if i == 1 {
			line = p.fit(strings.Join(lines[1:], " "), p.inner())
			p.y += 15 * leading
		}
		p.put(left, p.y, line)
	}
	p.y += 3
	cells := [][2]string{
		{"sheet number", s.Block.Number}, {"revision", s.Block.Revision}, {"tank serial", s.Block.Serial}, {"issue date", dated(s.Block.Date)},
		{"project", s.Block.Project}, {"input file", s.Tank.File}, {"input SHA-256", s.Digits()}, {"computed by", s.Program.Name + " " + s.Program.Version},
	}
	const high, columns = 8.5, 4
	w := p.inner() / columns
	p.doc.SetLineWidth(0.2)
	for i, c := range cells {
		x, y := left+float64(i%columns)*w, p.y+float64(i/columns)*high
		p.doc.Rect(x, y, w, high, "D")
		p.font("", 6)
		p.put(x+1.2, y+2.8, c[0])
		p.font("B", body)
		p.put(x+1.2, y+6.9, p.fit(orDash(c[1]), w-2.4))
	}
	p.y += float64((len(cells)+columns-1)/columns)*high + 2.5
}

func dated(date string) string {
	if date == "" {
		return "undated"
	}
	return date
}

// verdict sets the verdict in a frame, white on black unless it is satisfied,
// with the governing check and whatever the verdict leans on.
func (p *paper) verdict() {
	p.verdictBox(p.shared.verdict, p.sheet.Verdict == check.Satisfied, p.leansOn())
}

// verdictBox sets a verdict in a frame, white on black unless it is good, with
// what it leans on.
func (p *paper) verdictBox(line string, good bool, leans []string) {
	size := 13.0
	p.font("B", size)
	words := p.wrap(line, p.inner()-6)
	p.font("", body)
	var rest []string
	for _, line := range leans {
		rest = append(rest, p.wrap(line, p.inner()-6)...)
	}
	h := float64(len(words))*size*leading + float64(len(rest))*body*leading + 4.5
	p.doc.SetLineWidth(0.7)
	if good {
		p.doc.Rect(left, p.y, p.inner(), h, "D")
	} else {
		p.doc.SetFillColor(0, 0, 0)
		p.doc.Rect(left, p.y, p.inner(), h, "FD")
		p.grey(1)
	}
	y := p.y + 1.6
	p.font("B", size)
	for _, line := range words {
		p.put(left+3, y+size*leading*0.78, line)
		y += size * leading
	}
	p.font("", body)
	for _, line := range rest {
		p.put(left+3, y+body*leading*0.78+0.6, line)
		y += body * leading
	}
	p.grey(0)
	p.y += h + 2.5
}

// leansOn names the governing check, the overrides and the recalled values.
func (p *paper) leansOn() []string {
	s := p.sheet
	lines := []string{"Governing check: none, no check was made."}
	if i := p.shared.governing; i >= 0 {
		r := s.Checks[i]
		d, c := report.ShowPair(r.Demand, r.Capacity, s.Units)
		lines[0] = fmt.Sprintf("Governing check: %s (%s): %s %s against %s, factor %s, margin %s.",
			report.FullID(r), r.Title, r.Demand.Name, d, c, factor(r), report.Margin(r))
	}
	var overrides []string
	for _, b := range s.Basis {
		if b.Override {
			overrides = append(overrides, fmt.Sprintf("%s = %s in place of %s", b.Name, b.Value, orDash(b.Instead)))
		}
	}
	if len(overrides) > 0 {
		lines = append(lines, "Overrides of the rule: "+strings.Join(overrides, "; ")+".")
	}
	if taken := p.taken(); taken != "" {
		lines = append(lines, "Left out of the tank file and taken so: "+taken+".")
	}
	if n := len(p.shared.recalled); n > 0 {
		lines = append(lines, fmt.Sprintf("Sources quoted from memory: %d, listed under “Recalled values”; confirm them.", n))
	}
	return lines
}

const peopleTitle = "People near this tank"

// peopleHeight returns the height of the people box [mm].
func (p *paper) peopleHeight() float64 {
	return p.listHeight(p.peopleLines(), body) + 8
}

// peopleLines never returns nothing: a sheet without the box says so.
func (p *paper) peopleLines() []string {
	if len(p.sheet.PeopleBox) == 0 {
		return []string{"It was not worked out who may be near this tank: nobody may be near while it is pressurised."}
	}
	return p.sheet.PeopleBox
}

func (p *paper) listHeight(items []string, size float64) float64 {
	p.font("", size)
	h := 0.0
	for _, item := range items {
		h += float64(len(p.wrap(item, p.inner()-11)))*size*leading + 0.8
	}
	return h
}

// people sets the box, whole on one page.
func (p *paper) people(h float64) {
	p.need(h)
	p.doc.SetLineWidth(0.5)
	p.doc.Rect(left, p.y, p.inner(), h, "D")
	p.font("B", body+1)
	p.put(left+3, p.y+4.8, peopleTitle)
	y := p.y + 6.5
	p.font("", body)
	for _, item := range p.peopleLines() {
		p.put(left+3, y+body*leading*0.78, "–")
		for _, line := range p.wrap(item, p.inner()-11) {
			p.put(left+7, y+body*leading*0.78, line)
			y += body * leading
		}
		y += 0.8
	}
	p.y += h + 1
}
