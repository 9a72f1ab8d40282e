package pdf

import (
	"errors"
	"fmt"
	"slices"

	"github.com/jung-kurt/gofpdf"

	"proofsheet/report"
	"proofsheet/report/check"
)

// StudyName is the embedded file that holds the rows of a study.
const StudyName = "study.csv"

// A Study is what a study of a tank tells, set out for its pages.
type Study struct {
	Kind     string   // over the title: "Study: …"
	Faults   []string // what of it was not done; said beside the verdict
	Asked    []string // what was asked, in sentences
	Inputs   Grid
	Drawn    []Drawing
	Tables   []Grid
	Ways     []string // how samples were decided
	Cautions []string
	Rows     []byte // the table as data
}

// A Grid is a table of a study.
type Grid struct {
	Title   string
	Columns []GridColumn
	Rows    [][]string
	Bold    []int // rows that are set bold
	Under   []string
}

// A GridColumn is one column of a grid.
type GridColumn struct {
	Title string
	Width float64 // share of the table's width [-]
	Right bool    // numbers stand to the right
}

// studyWords stand beside the verdict of the tank on every study.
const studyWords = "This study is no calculation sheet, approves nothing and is not for signing. The verdict is that of the tank as it is written, without what the study changes."

// WriteStudy returns a study of a tank as a PDF file, unsigned, with the files of the
// sheet and the rows of the study inside. The same sheet and study give the same bytes.
func WriteStudy(s *report.Sheet, st *Study) ([]byte, error) {
	whole := *s
	whole.Head = "study, approves nothing"
	embedded, err := studyFiles(s, st)
	if err != nil {
		return nil, err
	}
	var before known
	for range rounds {
		p, err := newPaper(&whole, before.pages, false)
		if err != nil {
			return nil, err
		}
		p.before = before
		files := slices.Clone(embedded)
		for i := range files {
			files[i].Filename = p.clean(files[i].Filename)
		}
		p.doc.SetAttachments(files)
		p.study(st)
		if err := errors.Join(p.err, p.doc.Error()); err != nil {
			return nil, err
		}
		now := p.learned()
		if now.equal(before) {
			return p.bytes()
		}
		before = now
	}
	return nil, errors.New("the pages of the study do not settle")
}

// studyFiles returns what is embedded: the input files, then the rows.
func studyFiles(s *report.Sheet, st *Study) (out []gofpdf.Attachment, err error) {
	for _, f := range append(slices.Clone(s.Files), report.Attachment{Name: StudyName, Data: st.Rows}) {
		about := "the rows of the study as data"
		if f.SHA256 != "" {
			about = "SHA-256 " + f.SHA256
		}
		out = append(out, gofpdf.Attachment{Content: f.Data, Filename: f.Name, Description: about})
	}
	if len(out) > most {
		return nil, fmt.Errorf("%d files are to be embedded, at most %d can be", len(out), most)
	}
	return out, nil
}

// study sets every page.
func (p *paper) study(st *Study) {
	p.newPage()
	p.titleBlock(st.Kind)
	line := "tank as written: " + p.sheet.VerdictLine()
	p.verdictBox(line, p.sheet.Verdict == check.Satisfied && len(st.Faults) == 0, append([]string{studyWords}, st.Faults...))
	p.heading("Cautions", 8)
	p.list(st.Cautions, body)
	p.chapter("What was asked")
	for _, text := range st.Asked {
		p.paragraph(text)
	}
	p.y++
	p.studyTable(st.Inputs)
	p.studyFigures(st.Drawn)
	for i, g := range st.Tables {
		if i == 0 {
			p.chapter("The table")
		}
		p.studyTable(g)
	}
	if len(st.Ways) > 0 {
		p.chapter("How samples were decided")
		p.list(st.Ways, body)
	}
	p.chapter("Input files and words")
	p.listed("Words", []string{
		marginWords,
		"A verdict is “not satisfied” if any check is; else “not assessed” if any is; else “satisfied”. A check that is not assessed is not satisfied.",
	})
	p.replaced()
	p.inputFiles()
	p.paragraph("The rows of this study, with all their digits and in SI units, are embedded as " + StudyName + ".")
}

// studyFigures sets the charts, and says so where there is nothing to draw.
func (p *paper) studyFigures(drawn []Drawing) {
	none := true
	for _, d := range drawn {
		f := d.draw(p.sheet.Units, p.inner())
		if f == nil {
			continue
		}
		if none {
			p.need(f.Height + 22) // the title of the chapter stays with its first figure
			p.chapter("Charts")
		}
		none = false
		p.figure(f)
	}
	if none {
		p.chapter("Charts")
		p.paragraph("No chart: nothing of this study has a number that could be drawn.")
	}
}

// studyTable sets a table of a study.
func (p *paper) studyTable(g Grid) {
	if g.Title != "" {
		p.heading(g.Title, 20)
	}
	var columns []column
	for _, c := range g.Columns {
		columns = append(columns, column{title: c.Title, width: c.Width, right: c.Right})
	}
	rows := make([][]cell, len(g.Rows))
	for i, r := range g.Rows {
		rows[i] = plain(r...)
		for k := range rows[i] {
			rows[i][k].bold = slices.Contains(g.Bold, i)
		}
	}
	p.table(columns, rows, 0)
	for _, text := range g.Under {
		p.paragraph(text)
	}
}
