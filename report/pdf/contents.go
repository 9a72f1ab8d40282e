package pdf

import (
	"fmt"
)

// An entry is one line of the contents.
type entry struct {
	title string
	level int // 0 a chapter, 1 a part of the tank
	page  int
}

// enter puts a title into the contents and the outline, at the place of the next
// line; a font must be set.
func (p *paper) enter(title string, level int) {
	p.doc.Bookmark(p.clean(title), level, p.y)
	p.parts = append(p.parts, entry{title, level, p.doc.PageNo()})
	p.doc.SetLink(p.link(len(p.parts)-1), p.y, -1)
}

// link returns the link to an entry of the contents, made when first asked for.
func (p *paper) link(n int) int {
	for len(p.links) <= n {
		p.links = append(p.links, p.doc.AddLink())
	}
	return p.links[n]
}

// contents is page 2: what stands where, and what was revised. It is there before
// the parts are known, so that they do not move when they are.
func (p *paper) contents() {
	p.newPage()
	p.chapter("Contents")
	parts := p.before.parts
	columns := 1 + len(parts)/45
	const pitch = 4.3
	rows := (len(parts) + columns - 1) / columns
	w := (p.inner() - 6*float64(columns-1)) / float64(columns)
	foot := p.y
	for i, e := range parts {
		x, y := left+float64(i/rows)*(w+6), p.y+float64(i%rows+1)*pitch
		p.font(style(e.level == 0), body)
		page := fmt.Sprint(e.page)
		indent := 4 * float64(e.level)
		p.putRight(x+w, y, page)
		title := p.fit(e.title, w-indent-14)
		p.put(x+indent, y, title)
		p.dots(x+indent+p.measure(title)+1.5, x+w-p.measure(page)-1.5, y)
		p.doc.Link(x, y-3.2, w, pitch, p.link(i))
		foot = max(foot, y)
	}
	p.y = foot + 6
	p.revisions()
}

// dots leads the eye from a title to its page.
func (p *paper) dots(from, to, y float64) {
	if to-from < 3 {
		return
	}
	p.doc.SetLineWidth(0.2)
	p.doc.SetDrawColor(120, 120, 120)
	p.doc.SetDashPattern([]float64{0.2, 1.3}, 0)
	p.doc.Line(from, y, to, y)
	p.doc.SetDashPattern(nil, 0)
	p.doc.SetDrawColor(0, 0, 0)
}

// revisions names this revision, with lines for those before and after it: the
// program knows of no other.
func (p *paper) revisions() {
	b := p.sheet.Block
	p.heading("Revisions of sheet "+orDash(b.Number), 40)
	rows := [][]cell{plain(orDash(b.Revision), dated(b.Date), "this sheet; input SHA-256 "+p.sheet.Digits(), b.Prepared, b.Checked, b.Approved)}
	for range 3 {
		rows = append(rows, plain("", "", "", "", "", ""))
	}
	p.table([]column{{"revision", 0.8, false, false}, {"date", 1, false, false}, {"what changed, and why", 3.4, false, false},
		{"prepared", 1.3, false, false}, {"checked", 1.3, false, false}, {"approved", 1.3, false, false}}, rows, 8)
	p.paragraph("Names stand here as the tank file gives them; who signed is said by the signatures on the last page. A revision holds only with its own input files: compare the digits.")
}
