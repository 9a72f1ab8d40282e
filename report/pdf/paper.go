package pdf

import (
	"fmt"

	"github.com/jung-kurt/gofpdf"

	"proofsheet/report"
	"proofsheet/report/check"
)

// Margins and the sizes of type.
const (
	left, right, top, bottom = 15.0, 15.0, 14.0, 17.0 // [mm]
	body, small, large       = 8.5, 7.2, 11.0         // [pt]
	leading                  = 0.43                   // line distance over type size [mm/pt]
)

// A paper is the document while it is written.
type paper struct {
	doc           *gofpdf.Fpdf
	sheet         *report.Sheet
	pages         int                     // in all; 0 while they are counted
	width, height float64                 // of the page [mm]
	y             float64                 // where the next line starts [mm]
	indices       bool                    // x_y is set with a lowered y: formulas and symbols only
	family, style string                  // of the font that is set
	dry           bool                    // pages are only counted
	missing       []rune                  // letters that could not be printed
	used          [2]letterset            // letters that were set, regular and bold
	line          []byte                  // room for one line of the page
	before        known                   // what the writing before told
	named         map[string]string       // symbols of a kind of check, and where they were named
	crowded       bool                    // more ports than can each be described in full
	shared        *shared                 // what every writing needs
	least         map[string]check.Result // of each id the check with the least margin
	links         []int                   // to the parts
	parts         []entry                 // of the contents, as they come
	err           error
}

// inner returns the width between the margins [mm].
func (p *paper) inner() float64 { return p.width - left - right }

// floor returns where the page ends for text [mm].
func (p *paper) floor() float64 { return p.height - bottom }

// clean returns text as it can be printed and keeps the letters that cannot.
func (p *paper) clean(text string) string {
	clean, missing, err := printable(text)
	if err != nil && p.err == nil {
		p.err = err
	}
	p.missing = append(p.missing, missing...)
	return clean
}

// newPage starts a page with its running head.
func (p *paper) newPage() {
	style := p.style
	p.doc.AddPage() // sets the font that was set, after the footer
	p.style = style
	p.y = top
	if p.doc.PageNo() == 1 {
		return
	}
	p.font("", small)
	p.put(left, p.y+2, p.fit(p.sheet.Block.Title, p.inner()/2))
	running := p.sheet.Head
	if running == "" {
		running = p.sheet.VerdictWords()
	}
	p.putRight(p.width-right, p.y+2, running)
	p.rule(p.y+3.5, 0.2)
	p.y += 8
}

// need starts a page where less than h [mm] is left on this one.
func (p *paper) need(h float64) {
	if p.y+h > p.floor() {
		p.newPage()
	}
}

// footer stands on every page.
func (p *paper) footer() {
	b := p.sheet.Block
	y := p.height - bottom + 7
	p.rule(y-4, 0.2)
	p.font("", small)
	w := p.inner() / 4
	p.put(left, y, p.fit("sheet "+orDash(b.Number)+", revision "+orDash(b.Revision), 1.3*w))
	if b.Serial != "" {
		p.put(left, y+3.5, p.fit("tank serial "+b.Serial, 1.3*w))
	}
	page := fmt.Sprintf("page %d of %d", p.doc.PageNo(), p.pages)
	p.put(left+2*w-p.measure(page)/2, y, page)
	p.putRight(p.width-right, y, "input SHA-256 "+orDash(p.sheet.Digits()))
	p.putRight(p.width-right, y+3.5, p.fit(p.sheet.Program.Name+" "+p.sheet.Program.Version, 1.3*w))
}

// font sets style and size [pt].
func (p *paper) font(style string, size float64) {
	if now, _ := p.doc.GetFontSize(); p.style == style && now == size {
		return
	}
	p.style = style
	p.doc.SetFont(p.family, style, size)
}

// grey sets the grey of text, 0 black to 1 white [-].
func (p *paper) grey(g float64) {
	v := int(255 * g)
	p.doc.SetTextColor(v, v, v)
}

// rule draws a line between the margins at y, of a width [mm].
func (p *paper) rule(y, width float64) {
	p.doc.SetDrawColor(0, 0, 0)
	p.doc.SetDashPattern(nil, 0)
	p.doc.SetLineWidth(width)
	p.doc.Line(left, y, p.width-right, y)
}

// chapter starts a part of the sheet, with its entry in the outline.
func (p *paper) chapter(title string) {
	p.need(30)
	p.y += 3
	p.font("B", large)
	p.enter(title, 0)
	p.put(left, p.y+4, title)
	p.rule(p.y+5.8, 0.4)
	p.y += 9
}

// heading starts a section of a chapter and asks for h [mm] under it.
func (p *paper) heading(title string, h float64) {
	p.need(8 + h)
	p.y += 1.5
	p.font("B", body+1)
	p.put(left, p.y+3.5, p.fit(title, p.inner()))
	p.y += 6
}

// paragraph sets text over the whole width, breaking pages where it must.
func (p *paper) paragraph(text string) { p.lines(left, p.inner(), body, text) }

// lines sets text of a size [pt] from x over a width [mm], and moves on.
func (p *paper) lines(x, width, size float64, text string) {
	p.font("", size)
	for _, line := range p.wrap(text, width) {
		p.need(size * leading)
		p.font("", size)
		p.put(x, p.y+size*leading*0.78, line)
		p.y += size * leading
	}
}

// list sets items with a dash before each.
func (p *paper) list(items []string, size float64) {
	for _, item := range items {
		p.font("", size)
		rows := p.wrap(item, p.inner()-5)
		p.need(min(float64(len(rows)), 3) * size * leading)
		p.font("", size)
		p.put(left+1, p.y+size*leading*0.78, "–")
		p.lines(left+5, p.inner()-5, size, item)
		p.y += 0.8
	}
}

func orEmpty(before, text string) string {
	if text == "" {
		return ""
	}
	return before + text
}

func orDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}
