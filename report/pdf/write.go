package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"sync"
	"time"

	"github.com/jung-kurt/gofpdf"

	"proofsheet/report"
	"proofsheet/report/check"
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
	p, err := settled(s)
	if err != nil {
		return nil, err
	}
	return p.bytes()
}

// bytes ends the document and returns it as a file.
func (p *paper) bytes() ([]byte, error) {
	var out bytes.Buffer
	if err := p.doc.Output(&out); err != nil {
		return nil, err
	}
	file, err := squeezed(out.Bytes())
	if err != nil {
		return nil, err
	}
	// Embedded files and signatures need a later version than the writer
	// states; the header keeps its length, so that every offset holds.
	copy(file, "%PDF-1.7")
	return file, nil
}

// known is what only a written document tells and a written document prints: its
// pages, where its parts begin, the letters that had to be replaced.
type known struct {
	pages   int
	parts   []entry
	missing []rune
	shared  *shared
}

// shared is what every writing of a sheet needs and none changes.
type shared struct {
	data   func() ([]byte, error) // the sheet as data, as it is embedded
	groups []group
	blocks []block             // of the checks, in their order
	worst  []check.Result      // worst first
	few    []check.Result      // of the overview, worst first
	open   map[string][]string // of each part the ids that are not assessed

	verdict   string
	governing int            // place of the check with the least margin, −1 for none
	least     []check.Result // of page 1
	unmade    string         // what was not assessed
	recalled  []string
}

// prepare works out what every writing of a sheet needs; the data meanwhile, on a
// second processor where there is one.
func prepare(s *report.Sheet) *shared {
	type answer struct {
		data []byte
		err  error
	}
	answers := make(chan answer, 1)
	go func() {
		data, err := s.Attached()
		answers <- answer{data, err}
	}()
	groups, worst := grouped(s.Checks), report.WorstFirst(s.Checks)
	return &shared{
		data: sync.OnceValues(func() ([]byte, error) {
			a := <-answers
			return a.data, a.err
		}),
		groups: groups, worst: worst, few: report.WorstFirst(fewer(groups)), open: s.OpenParts(),
		verdict: s.VerdictLine(), governing: check.Governing(s.Checks), least: worstMargins(worst), unmade: notAssessed(s.Checks),
		recalled: s.AllRecalled(),
	}
}

func (k known) equal(o known) bool {
	return k.pages == o.pages && slices.Equal(k.parts, o.parts) && slices.Equal(k.missing, o.missing)
}

// rounds is how often a document is written before it must say of itself what is so.
const rounds = 5

// settled writes the document until what it says of its own pages is so: twice, and
// once more where the list of replaced letters moved something.
func settled(s *report.Sheet) (*paper, error) {
	before := known{shared: prepare(s)}
	for range rounds {
		p, err := compose(s, before)
		if err != nil {
			return nil, err
		}
		now := p.learned()
		if now.equal(before) {
			return p, nil
		}
		before = now
	}
	return nil, errors.New("the pages of the sheet do not settle")
}

// learned returns what this writing of the document told.
func (p *paper) learned() known {
	missing := slices.Clone(p.missing)
	slices.Sort(missing)
	return known{p.doc.PageNo(), p.parts, slices.Compact(missing), p.shared}
}

// compose writes the whole document once, with what the writing before told.
func compose(s *report.Sheet, before known) (*paper, error) {
	dry := before.shared != nil && before.pages == 0
	p, err := newPaper(s, before.pages, dry)
	if err != nil {
		return nil, err
	}
	p.before, p.shared = before, before.shared
	if p.shared == nil { // a writing by itself
		p.shared = prepare(s)
	}
	if err := p.attach(); err != nil {
		return nil, err
	}
	for _, chapter := range []func(*paper){
		(*paper).first, (*paper).contents, (*paper).bulkheads, (*paper).overview, (*paper).basis, (*paper).materials, (*paper).joints, (*paper).cases,
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

// newPaper opens a document of the sheet's paper size; a dry one has no letters, so
// that the fonts need not be read for it.
func newPaper(s *report.Sheet, pages int, dry bool) (*paper, error) {
	size := "A4"
	if s.Paper == "letter" {
		size = "Letter"
	}
	doc := gofpdf.New("P", "mm", size, "")
	doc.SetCompression(false) // of the pages; [squeezed] does it
	if !dry {
		for _, style := range []string{"", "B"} {
			doc.AddUTF8FontFromBytes(family, style, bytes.Clone(faces[style]))
		}
	}
	when := issued(s.Block.Date)
	doc.SetCreationDate(when)
	doc.SetModificationDate(when)
	doc.SetCatalogSort(true)
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(left, top, right)
	doc.SetLineCapStyle("butt")
	doc.SetLineJoinStyle("round")
	p := &paper{doc: doc, sheet: s, pages: pages, style: "none", family: family, dry: dry}
	if dry {
		p.family = coreFamily
	}
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
	var data []byte
	if !p.dry {
		var err error
		if data, err = p.shared.data(); err != nil {
			return err
		}
	}
	files := p.sheet.Files
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
