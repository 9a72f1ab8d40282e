package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// isRecord reports whether embedded files are those of the record of a proof
// test: the tank's, the log, and the record as data.
func isRecord(files []sign.Attachment) bool {
	n := len(files)
	return n >= 3 && files[n-1].Name == pdf.RecordName
}

// A judgement is a record judged again from what is embedded in it.
type judgement struct {
	sheet  *report.Sheet
	record *report.Record
}

// judgeAgain judges the embedded log by the embedded tank, draws the record
// again and holds it against the document. Every byte must agree: the printed
// hashes and the data among them.
func judgeAgain(r *sign.Report) (a judgement, err error) {
	files := r.Attachments
	n := len(files)
	t, err := tank.Read(files[0].Name, files[0].Data, embedded(files[1:n-2]))
	if err != nil {
		return a, fmt.Errorf("the embedded tank file is not read by version %s:\n%w", programVersion(), err)
	}
	l, err := tank.ReadLog(files[n-2].Name, files[n-2].Data)
	if err != nil {
		return a, fmt.Errorf("the embedded log is not read by version %s:\n%w", programVersion(), err)
	}
	if a.sheet, a.record, err = assess.Record(t, l, assess.Options{Version: programVersion()}); err != nil {
		return a, fmt.Errorf("the embedded tank file is not assessed by version %s: %w", programVersion(), err)
	}
	drawn, err := pdf.WriteRecord(a.sheet, a.record)
	if err != nil {
		return a, err
	}
	if !bytes.Equal(drawn, r.Base) {
		return a, otherRecord(files[n-1].Data, a)
	}
	return a, inPlace(r, a.sheet.Paper)
}

// otherRecord says in what a record judged again is another one.
func otherRecord(data []byte, a judgement) error {
	var was, is map[string]any
	now, err := report.RecordJSON(a.sheet, a.record)
	if err = errors.Join(err, json.Unmarshal(data, &was), json.Unmarshal(now, &is)); err != nil {
		return errors.New("the record judged again is another one, and its embedded data cannot be read")
	}
	by := ""
	if p, ok := was["program"].(map[string]any); ok {
		by = clean(fmt.Sprint(p["version"]))
	}
	if at := difference("", was, is); at != "" {
		return fmt.Errorf("the record judged again by version %s is another one (it says version %s made it): %s", programVersion(), by, at)
	}
	return fmt.Errorf("the numbers judged again are the same, but the pages are not those that version %s draws (it says version %s made it)", programVersion(), by)
}

// verifyRecord prints what holds of a record after its signatures.
func verifyRecord(c *cli.Context, r *sign.Report, unsigned bool, signatures string) error {
	var text strings.Builder
	text.WriteString(signatures)
	for _, f := range r.Attachments {
		fmt.Fprintf(&text, "embedded     %s, SHA-256 %x\n", clean(f.Name), sha256.Sum256(f.Data))
	}
	a, err := judgeAgain(r)
	if err == nil && unsigned {
		err = sign.ErrNotSigned
	}
	if err != nil {
		return fails(c, text.String(), err)
	}
	fmt.Fprintf(&text, "recomputed   the log judged again by the embedded tank, every page and number byte for byte, by version %s\n", programVersion())
	fmt.Fprintf(&text, "holds: unchanged since it was signed; the record says: %s\n", a.record.Line())
	return toStdout(c, text.String())
}

// recordCaution says what a signed record says where it is no pass.
func recordCaution(r *sign.Report) string {
	var says struct{ Verdict, Reason string }
	if err := json.Unmarshal(r.Attachments[len(r.Attachments)-1].Data, &says); err != nil || says.Verdict == "satisfied" {
		return ""
	}
	return "the record says: proof test " + says.Verdict + ": " + says.Reason + "; a signature does not change that"
}
