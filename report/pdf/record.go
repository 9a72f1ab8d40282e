package pdf

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/jung-kurt/gofpdf"

	"proofsheet/report"
)

// RecordName is the embedded file that holds a record as data.
const RecordName = "record.json"

// WriteRecord returns the record of a proof test as a PDF file, unsigned, with
// the files of the sheet, the log and the record as data inside. The same
// sheet and record give the same bytes.
func WriteRecord(s *report.Sheet, r *report.Record) ([]byte, error) {
	data, err := report.RecordJSON(s, r)
	if err != nil {
		return nil, err
	}
	whole := *s
	whole.Tank.Combined = r.Combined
	whole.Tank.Files = append(slices.Clone(s.Tank.Files), report.FileInfo{Name: r.Log.Name, SHA256: r.Log.SHA256})
	whole.Head = "proof test " + r.Verdict
	var embedded []gofpdf.Attachment
	for _, f := range append(slices.Clone(s.Files), r.Log, report.Attachment{Name: RecordName, Data: data}) {
		about := "the record as data"
		if f.SHA256 != "" {
			about = "SHA-256 " + f.SHA256
		}
		embedded = append(embedded, gofpdf.Attachment{Content: f.Data, Filename: f.Name, Description: about})
	}
	if len(embedded) > most {
		return nil, fmt.Errorf("%d files are to be embedded, at most %d can be", len(embedded), most)
	}
	pages := 0
	for {
		p, err := newPaper(&whole, pages, false)
		if err != nil {
			return nil, err
		}
		for i := range embedded {
			embedded[i].Filename = p.clean(embedded[i].Filename)
		}
		p.doc.SetAttachments(embedded)
		p.record(r)
		if err := errors.Join(p.err, p.doc.Error()); err != nil {
			return nil, err
		}
		if pages > 0 {
			return p.bytes()
		}
		pages = p.doc.PageNo()
	}
}

// record sets every page.
func (p *paper) record(r *report.Record) {
	p.newPage()
	p.titleBlock("Record of a proof test: welded pressurised tank")
	p.verdictBox(r.Line(), r.Verdict == "satisfied", []string{
		fmt.Sprintf("Log %s, %d rows, SHA-256 %s.", r.Log.Name, r.Rows, r.Log.SHA256), "The tank's own sheet: " + r.Sheet + "."})
	p.heading("Cautions", 8)
	p.list(r.Cautions, body)
	p.chapter("Questions put to the log")
	for i, f := range r.Findings {
		p.finding(i+1, f)
	}
	p.wayUp(r)
	if len(r.Charts) > 0 {
		p.need(115) // no chapter without its first chart
		p.chapter("Measured on predicted")
		for _, c := range r.Charts {
			p.figure(chartFigure(c, p.sheet.Units, p.inner(), 78))
		}
	}
	gas := p.sheet.Proof != nil && p.sheet.Proof.Method == "pneumatic"
	p.seenAtTheTest(gas)
	p.chapter("Notes, limits and words")
	p.listed("Notes", r.Notes)
	p.listed("Words", recordWords(gas))
	p.inputFiles()
	p.signaturesOver(r.Line() + ". A signature does not change it.")
}

// recordWords explains the words of the record of a test with gas or with water.
func recordWords(gas bool) []string {
	words := []string{
		"“Pass” needs every question answered so; the worst answer is the verdict. “Inconclusive” is never a pass: the reading, or the test, is done again. “Not read” leaves the verdict alone and says what it leaves open.",
		"Uncertainties are expanded, k = 2. “Predicted ± band” is what the plan allows; an uncertainty that the log states never widens it.",
	}
	if gas {
		return append(words,
			"Change that nothing explains: the change of pressure in the hold less what the gas's temperature accounts for, absolute pressure going as absolute temperature.",
			"Strain left: what a gauge kept between two readings at the reference pressure, the pressure between them taken off by the gauge's own line.")
	}
	return append(words,
		"Change that nothing explains: the change of pressure in the hold less what the water's and the wall's temperature and the volume put in account for.",
		"Permanent growth: water that stayed in the tank between two readings at the reference pressure, at one temperature; total growth is that of the wall alone.")
}

// finding sets one question, its answer and its numbers.
func (p *paper) finding(n int, f report.Finding) {
	p.heading(fmt.Sprintf("%d  %s: %s", n, f.Title, f.Outcome), 10)
	p.lines(left, p.inner(), body, f.Reason+".")
	var rows [][]cell
	for _, v := range f.Values {
		name := v.Quantity.Name
		if v.Quantity.Symbol != "" && !strings.Contains(v.Quantity.Symbol, "ε") {
			name += ", " + v.Quantity.Symbol
		}
		rows = append(rows, plain(name, v.Show(v.Quantity.Value, p.sheet.Units), v.Against(p.sheet.Units), v.Spread(p.sheet.Units)))
	}
	p.y++
	p.table([]column{{"measured", 2.2, false, true}, {"value", 1, true, false}, {"prediction or limit", 1.8, false, false}, {"uncertainty (k = 2)", 1.4, false, false}}, rows, 0)
	p.list(f.Notes, small)
}

// wayUp lists the readings by which departures were told.
func (p *paper) wayUp(r *report.Record) {
	if len(r.Readings) == 0 {
		return
	}
	p.heading("Readings of the way up", 20)
	var rows [][]cell
	for i, q := range r.Readings {
		rows = append(rows, plain(append([]string{fmt.Sprint(i + 1), clock(q.Time)}, q.Cells(p.sheet.Units)...)...))
	}
	p.table([]column{{"no.", 0.4, true, false}, {"time", 0.8, true, false}, {"pressure", 1, true, false}, {"volume", 1, true, false},
		{"predicted, bled", 1.1, true, false}, {"by the earlier line", 1.2, true, false}, {"stop band", 1, true, false}}, rows, 0)
}

// clock prints a time of the log [s].
func clock(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return report.Plain(math.Round(v*10)/10) + " s"
}

// seenAtTheTest is filled in by hand by those who stood there, or watched from afar.
func (p *paper) seenAtTheTest(gas bool) {
	const high = 6.5 // of a row that is filled in [mm]
	tight, own := "dry", "line compliance taken off the volumes (yes, how)"
	if gas {
		tight, own = "tight", "barrier and distance kept, read from afar (yes, how)"
	}
	var rows [][]cell
	for _, what := range []string{
		"every weld and fitting " + tight + " (yes, no: then the test is failed)", "change of shape (none, where)",
		"gauge 1 and gauge 2, numbers and calibration", own,
		"relief device set at, tried on", "photographs and video, where kept", "tank marked with date, pressure, medium, next due",
	} {
		rows = append(rows, plain(what, ""))
	}
	p.heading("Seen at the test, filled in by hand", float64(len(rows)+1)*high) // on one page
	p.table([]column{{"question", 1.3, false, false}, {"answer, by", 2, false, false}}, rows, high)
}
