package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path/filepath"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// dataName is the embedded file that holds the sheet as data.
const dataName = "sheet.json"

// digestDigits is how many digits of the digest over all input files stand on
// every page.
const digestDigits = 12

// An examination is what a sheet, or the record of a proof test, says of itself, and
// the same computed again.
type examination struct {
	files    []sign.Attachment
	kind     string   // "sheet" or "record"
	hashes   bool     // those of the embedded files are the printed ones
	madeBy   string   // version that made it, by its own word
	again    *again   // nil unless it is drawn again with the same bytes
	compared *numbers // how far the data agree where it is not
}

// again is what this program makes of the embedded files.
type again struct {
	sheet  *report.Sheet  // of a record that of its tank
	record *report.Record // nil of a sheet
	data   []byte         // as it is embedded
	drawn  []byte
}

// line is the verdict in full.
func (a again) line() string {
	if a.record != nil {
		return a.record.Line()
	}
	return a.sheet.VerdictLine()
}

// examine looks at everything in a sheet or record but its signatures' digests. The
// error says what does not hold.
func examine(r *sign.Report) (*examination, error) {
	e, compute := &examination{files: r.Attachments, kind: "sheet"}, drawAgain
	if isRecord(r.Attachments) {
		e.kind, compute = "record", judgeAgain
	}
	if err := e.compareHashes(r); err != nil {
		return e, err
	}
	a, err := compute(r.Attachments)
	if err != nil && e.madeBy != programVersion() {
		err = fmt.Errorf("the %s says that version %q made it: %w", e.kind, e.madeBy, err)
	}
	if err != nil {
		return e, err
	}
	if !bytes.Equal(a.drawn, r.Base) {
		return e, e.otherBytes(a)
	}
	e.again = a
	return e, inPlace(r, a.sheet.Paper)
}

// text prints what holds, for a width as of [report.Fold].
func (e *examination) text(width int) string {
	var b strings.Builder
	for _, a := range e.files {
		b.WriteString(embeddedLine(a.Name, fmt.Sprintf("%x", sha256.Sum256(a.Data)), width))
	}
	if e.hashes {
		b.WriteString("hashes       those printed on the pages are those of the embedded files\n")
	}
	switch {
	case e.again != nil:
		fmt.Fprintf(&b, "recomputed   every page and number, byte for byte, by version %s\n", programVersion())
	case e.compared != nil:
		b.WriteString(e.compared.text())
	}
	return b.String()
}

// compareHashes holds the digests in the sheet's data and on its pages against
// the embedded files.
func (e *examination) compareHashes(r *sign.Report) error {
	n := len(e.files) - 1
	switch {
	case e.kind == "record":
	case n >= 0 && e.files[n].Name == pdf.RecordName:
		return errors.New("this is no record of this program: a tank file and a log are not embedded in it")
	case bytes.Contains(r.Base, producer()) && documentKind(e.files) != "sheet":
		return fmt.Errorf("this is a %s of this program, which nobody signs and which is not computed again; verify takes a sheet or a record", documentKind(e.files))
	case n < 1 || e.files[n].Name != dataName:
		return errors.New("this is no sheet of this program: a tank file and the sheet as data are not embedded in it")
	}
	var says struct {
		Program struct{ Version string }
		Tank    struct {
			File, SHA256 string
			Files        []struct{ Name, SHA256 string }
		}
		Log *struct{ Name, SHA256 string } // of a record, the last of its files
	}
	if err := json.Unmarshal(e.files[n].Data, &says); err != nil {
		return fmt.Errorf("the embedded data cannot be read: %w", err)
	}
	e.madeBy = short(says.Program.Version)
	if e.kind == "record" && says.Log != nil {
		says.Tank.Files = append(says.Tank.Files, *says.Log)
	}
	if len(says.Tank.Files) != n-1 {
		return fmt.Errorf("the %s names %d input files, %d are embedded", e.kind, 1+len(says.Tank.Files), n)
	}
	pages, err := r.Text()
	if err != nil {
		return fmt.Errorf("the pages cannot be read: %w", err)
	}
	for i := range pages {
		pages[i] = strings.ReplaceAll(pages[i], " ", "")
	}
	printed, all := strings.Join(pages, "\n"), sha256.New()
	for i, f := range e.files[:n] {
		all.Write(f.Data)
		want := says.Tank.SHA256
		if i > 0 {
			want = says.Tank.Files[i-1].SHA256
		}
		if sum := fmt.Sprintf("%x", sha256.Sum256(f.Data)); sum != want || !strings.Contains(printed, sum) {
			return fmt.Errorf("the embedded file %s is not the one that was computed: its SHA-256 is %s, the %s says otherwise", clean(f.Name), sum, e.kind)
		}
	}
	digits := hex.EncodeToString(all.Sum(nil))[:digestDigits]
	for i, page := range pages {
		if !strings.Contains(page, "inputSHA-256"+digits) {
			return fmt.Errorf("page %d does not bear the digits %s of the embedded files", i+1, digits)
		}
	}
	e.hashes = true
	return nil
}

// drawAgain assesses the embedded tank again and draws the sheet again.
func drawAgain(files []sign.Attachment) (*again, error) {
	t, err := tank.Read(files[0].Name, files[0].Data, embedded(files[1:]))
	if err != nil {
		return nil, fmt.Errorf("the embedded tank file is not read by version %s:\n%w", programVersion(), err)
	}
	a := &again{}
	if a.sheet, err = assessTank(t); err != nil {
		return nil, fmt.Errorf("the embedded tank file is not assessed by version %s: %w", programVersion(), err)
	}
	if a.data, err = a.sheet.Attached(); err != nil {
		return nil, err
	}
	a.drawn, err = pdf.Write(a.sheet)
	return a, err
}

// embedded opens embedded files by the paths of the tank file. They are kept
// without their folders, in the order in which they are opened, so that of two
// with one name the one not yet opened is meant.
func embedded(files []sign.Attachment) func(path string) ([]byte, error) {
	opened := make([]bool, len(files))
	return func(path string) ([]byte, error) {
		found := -1
		for i, a := range files {
			if a.Name == filepath.Base(path) && (found < 0 || opened[found] && !opened[i]) {
				found = i
			}
		}
		if found < 0 {
			return nil, fs.ErrNotExist
		}
		opened[found] = true
		return files[found].Data, nil
	}
}

// inPlace reports whether each signature that is drawn stands in its frame: one
// drawn elsewhere could cover what the sheet says.
func inPlace(r *sign.Report, paper string) error {
	for _, s := range r.Signatures {
		if s.Box == nil {
			continue
		}
		want, err := boxFor(s.Role, paper)
		if err != nil {
			return err
		}
		got, near := s.Box, 0.02 // [pt]; a box is written with two decimals
		if want == nil || got.Page != s.Pages || math.Abs(got.X-want.X) > near || math.Abs(got.Y-want.Y) > near ||
			math.Abs(got.Width-want.Width) > near || math.Abs(got.Height-want.Height) > near {
			return fmt.Errorf("the signature as %s is not drawn in its frame", s.Role)
		}
	}
	return nil
}
