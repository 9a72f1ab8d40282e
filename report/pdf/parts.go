package pdf

import (
	"proofsheet/report"
	"proofsheet/report/drawing"
)

// A PartPage is one flat part or template in a document of drawings.
type PartPage struct {
	Part       drawing.Part
	Title      string
	Wide, High string      // on the lines of its size
	Facts      [][3]string // symbol, what is measured, value
	Notes      []string
	Cautions   []string
	Refused    string // why it is not drawn; then nothing else counts
	Absent     bool   // there is nothing to draw; the notes say why
}

// WriteParts returns the drawings of a tank's flat parts as a PDF file, unsigned:
// a list of all with what they allow for, and a page for each that is drawn, with
// its scale and what can be measured on it. The same input gives the same bytes.
func WriteParts(s *report.Sheet, head []string, parts []PartPage) ([]byte, error) {
	pages := 0
	var p *paper
	for range 2 { // counted, then written
		var err error
		if p, err = newPaper(s, pages, false); err != nil {
			return nil, err
		}
		p.partList(head, parts)
		for _, part := range parts {
			p.part(part)
		}
		if p.err != nil {
			return nil, p.err
		}
		if err := p.doc.Error(); err != nil {
			return nil, err
		}
		pages = p.doc.PageNo()
	}
	return p.bytes()
}

// partList is the first page.
func (p *paper) partList(head []string, parts []PartPage) {
	p.newPage()
	p.font("B", large+3)
	p.put(left, p.y+5, p.fit("Flat parts and templates: "+p.sheet.Block.Title, p.inner()))
	p.y += 11
	for _, line := range head {
		p.paragraph(line)
		p.y += 1
	}
	p.chapter("The parts")
	var rows [][]cell
	for _, part := range parts {
		state := "drawn"
		switch {
		case part.Refused != "":
			state = "REFUSED: " + part.Refused
		case part.Absent && len(part.Notes) > 0:
			state = "none: " + part.Notes[0]
		}
		rows = append(rows, []cell{{text: part.Part.Name}, {text: part.Title}, {text: state, bold: part.Refused != ""}})
	}
	p.table([]column{{title: "file", width: 2}, {title: "part", width: 4}, {title: "state", width: 5}}, rows, 0)
}

// part is the page of one part.
func (p *paper) part(part PartPage) {
	if part.Refused != "" || part.Absent {
		return
	}
	p.newPage()
	p.chapter(part.Title)
	f, said, err := part.Part.Scaled(p.inner(), p.floor()-p.y-70, part.Wide, part.High)
	if err != nil {
		p.fail(err)
		return
	}
	for _, line := range append([]string{said}, part.Part.Remarks...) {
		p.paragraph(line)
	}
	p.y += 2
	p.place(f, left, p.y)
	p.y += f.Height + 3
	var rows [][]cell
	for _, fact := range part.Facts {
		rows = append(rows, plain(fact[0], fact[1], fact[2], ""))
	}
	p.heading("To be measured on the part", 20)
	p.table([]column{{title: "", width: 1.2, index: true}, {title: "dimension", width: 6}, {title: "computed", width: 2, right: true},
		{title: "measured", width: 1.8}}, rows, 0)
	p.listed("Cautions", part.Cautions)
	p.listed("Notes", part.Notes)
}
