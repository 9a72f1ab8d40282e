package pdf

import (
	"bytes"
	"fmt"
	"time"

	"github.com/jung-kurt/gofpdf"

	"proofsheet/report"
)

// most is how many files can be embedded: the writer numbers their names, and
// from ten on the names would no longer be in the order that the format asks.
const most = 9

// Write returns the sheet as a PDF file, unsigned. The same sheet gives the
// same bytes. It is an error where the sheet's verdict is not that of its
// checks.
func Write(s *report.Sheet) ([]byte, error) {
	if err := s.Consistent(); err != nil {
		return nil, err
	}
	count, err := compose(s, 0)
	if err != nil {
		return nil, err
	}
	p, err := compose(s, count.doc.PageNo())
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := p.doc.Output(&out); err != nil {
		return nil, err
	}
	file := out.Bytes()
	// Embedded files and signatures need a later version than the writer
	// states; the header keeps its length, so that every offset holds.
	copy(file, "%PDF-1.7")
	return file, nil
}

// compose writes the whole document once, with the number of its pages as
// counted before, or 0 to count them.
func compose(s *report.Sheet, pages int) (*paper, error) {
	p, err := newPaper(s, pages)
	if err != nil {
		return nil, err
	}
	if err := p.attach(); err != nil {
		return nil, err
	}
	for _, chapter := range []func(*paper){
		(*paper).first, (*paper).overview, (*paper).basis, (*paper).materials, (*paper).joints, (*paper).cases,
		(*paper).permissible, (*paper).checks, (*paper).charts, (*paper).quantities, (*paper).proof,
		(*paper).recalled, (*paper).closing, (*paper).signatures,
	} {
		chapter(p)
	}
	if p.err != nil {
		return nil, p.err
	}
	return p, p.doc.Error()
}

// newPaper opens a document of the sheet's paper size.
func newPaper(s *report.Sheet, pages int) (*paper, error) {
	size := "A4"
	if s.Paper == "letter" {
		size = "Letter"
	}
	doc := gofpdf.New("P", "mm", size, "")
	for _, style := range []string{"", "B"} {
		doc.AddUTF8FontFromBytes(family, style, bytes.Clone(faces[style]))
	}
	when := issued(s.Block.Date)
	doc.SetCreationDate(when)
	doc.SetModificationDate(when)
	doc.SetCatalogSort(true)
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(left, top, right)
	doc.SetLineCapStyle("butt")
	doc.SetLineJoinStyle("round")
	p := &paper{doc: doc, sheet: s, pages: pages}
	p.width, p.height = doc.GetPageSize()
	doc.SetTitle(p.clean(s.Block.Title), true)
	doc.SetSubject(p.clean(s.Block.Number), true)
	doc.SetCreator(p.clean(s.Program.Name+" "+s.Program.Version), true)
	doc.SetProducer(p.clean(s.Program.Name+" "+s.Program.Version), true)
	doc.SetFooterFunc(p.footer)
	return p, p.err
}

// issued returns the issue date, or a fixed day for an undated sheet or a date
// written otherwise: the clock has no place in the file.
func issued(date string) time.Time {
	if t, err := time.Parse("2006-01-02", date); err == nil {
		return t.UTC()
	}
	return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
}

// attach embeds the tank file, every file it names, and the sheet as JSON.
func (p *paper) attach() error {
	files := p.sheet.Files
	data, err := p.sheet.JSON()
	if err != nil {
		return err
	}
	files = append(files[:len(files):len(files)], report.Attachment{Name: "sheet.json", Data: data})
	if len(files) > most {
		return fmt.Errorf("%d files are to be embedded, at most %d can be", len(files), most)
	}
	var embedded []gofpdf.Attachment
	for _, f := range files {
		about := "the sheet as data"
		if f.SHA256 != "" {
			about = "SHA-256 " + f.SHA256
		}
		embedded = append(embedded, gofpdf.Attachment{Content: f.Data, Filename: p.clean(f.Name), Description: about})
	}
	p.doc.SetAttachments(embedded)
	return nil
}
