package pdf

import (
	"fmt"
	"strings"

	"proofsheet/report/check"
)

// recalled lists every value and formula that nobody read, on a page of its own.
func (p *paper) recalled() {
	lines := p.shared.recalled
	p.newPage()
	p.chapter("Recalled values")
	if len(lines) == 0 {
		p.paragraph("No value or formula of this sheet is quoted from memory.")
		return
	}
	p.paragraph("The following were quoted from memory and not seen in the text named. A verdict that leans on one of them holds only once it has been confirmed.")
	p.y += 1
	rows := make([][]cell, len(lines))
	for i, l := range lines {
		rows[i] = plain(l, "")
	}
	p.table([]column{{"value or formula", 5, false, false}, {"confirmed in, by", 2, false, false}}, rows, 6.5)
}

// limits are said on every sheet.
var limits = []string{
	"This sheet is a calculation. It claims no compliance with any code or law and replaces no licensed engineer, no inspection and no permit; the law of the place, the range and the insurer come first.",
	"It holds only for the tank described: these materials with these certificates, these measured walls, these welds with this examination. A repair, a dent, a new weld or overheating ends it and asks for a new proof test.",
	"A check that could not be made is printed “not assessed” and keeps the tank from being satisfied.",
}

// closing sets what the numbers take for granted and what was not looked at.
func (p *paper) closing() {
	p.chapter("Assumptions, limits and what was not covered")
	p.listed("Limits of this sheet", limits)
	p.listed("Assumptions", p.sheet.Assumptions)
	p.listed("Not covered", p.sheet.NotCovered)
	p.listed("Notes", p.sheet.Notes)
	p.listed("Words", []string{
		marginWords + " Demand is what the load asks of the part, capacity what the part can give.",
		"A verdict is “not satisfied” if any check is; else “not assessed” if any is; else “satisfied”.",
		"How a source was obtained: read (seen in a copy of the text named), computed (worked out and tested independently), memory (recalled; to be confirmed), practice (common practice without a source).",
		"z is the station along the tank axis, positive forward from the aft seam between head and cylinder. Pressures act across the wall, inside less outside. Tension is positive. Clock angles turn clockwise for one who looks forward from aft.",
	})
	p.replaced()
	p.inputFiles()
}

// replaced says which letters of the input are not printed as they are.
func (p *paper) replaced() {
	if len(p.before.missing) == 0 {
		return
	}
	var names []string
	for _, r := range p.before.missing {
		names = append(names, fmt.Sprintf("U+%04X", r))
	}
	p.listed("Letters", []string{"Printed as \uFFFD, because the font of this sheet has no such letter: " + strings.Join(names, ", ") +
		". They stand as they are in the attached tank file."})
}

func (p *paper) listed(title string, items []string) {
	if len(items) == 0 {
		return
	}
	p.heading(title, 8)
	p.list(items, body)
}

// inputFiles lists what the sheet was computed from; all of it is embedded.
func (p *paper) inputFiles() {
	t := p.sheet.Tank
	rows := [][]cell{plain(t.File, t.SHA256)}
	for _, f := range t.Files {
		rows = append(rows, plain(f.Name, f.SHA256))
	}
	rows = append(rows, plain("all input files", t.Combined))
	p.heading("Input files, embedded in this document", 15)
	p.table([]column{{"file", 2, false, false}, {"SHA-256", 4, false, false}}, rows, 0)
}

// signatures is the last page of the sheet.
func (p *paper) signatures() {
	text := p.shared.verdict + "."
	if p.sheet.Verdict != check.Satisfied {
		text += " A signature does not change it."
	}
	p.signaturesOver(text)
}

// signaturesOver is the last page, with the verdict over which they stand. It
// holds no links: a signature is laid over it.
func (p *paper) signaturesOver(verdict string) {
	p.newPage()
	p.y = top + 8
	p.font("B", large)
	p.enter("Signatures", 0)
	p.put(left, p.y+4, "Signatures")
	p.rule(p.y+5.8, 0.4)
	p.y += 10
	p.lines(left, p.inner(), body, "The verdict over which these signatures stand: "+verdict)
	b := p.sheet.Block
	for _, r := range []struct{ role, does, name string }{
		{"prepared", "who described the tank and made this sheet", b.Prepared},
		{"checked", "another person, who redid it by hand", b.Checked},
		{"approved", "who answers for the use of the tank", b.Approved},
	} {
		p.signature(r.role, r.does, r.name)
	}
	p.y = signatureTop + 3*signaturePitch + 4
	p.list([]string{
		"A name printed here is not a signature. The frame says “not signed” until a digital signature or a hand fills it.",
		"A seal which the program itself sets proves only that the file is unchanged since it was written; it is nobody's approval.",
		"“Checked” must be signed by another person than “prepared”.",
		"A signature covers every byte of this document with the input files inside it. A change makes a new revision, which is signed anew.",
	}, body)
}

// signature sets the frame of one role.
func (p *paper) signature(role, does, name string) {
	x, y, w, h := frame(role)
	p.doc.SetLineWidth(0.3)
	p.doc.Rect(x, y, w, h, "D")
	p.font("B", body+1)
	p.put(left, y+5, role)
	p.font("", small)
	for i, l := range p.wrap(does, x-left-3) {
		p.put(left, y+9+float64(i)*small*leading, l)
	}
	p.font("", body)
	p.put(left, y+19, p.fit("name: "+orDash(name), x-left-3))
	p.put(left, y+25, "date:")
	p.font("B", large)
	p.put(x+4, y+h/2+1.5, "not signed")
}
