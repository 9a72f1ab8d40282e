package main

import (
	"encoding/json"
	"fmt"

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

// judgeAgain judges the embedded log by the embedded tank and draws the record again.
func judgeAgain(files []sign.Attachment) (*again, error) {
	n := len(files)
	t, err := tank.Read(files[0].Name, files[0].Data, embedded(files[1:n-2]))
	if err != nil {
		return nil, fmt.Errorf("the embedded tank file is not read by version %s:\n%w", programVersion(), err)
	}
	l, err := tank.ReadLog(files[n-2].Name, files[n-2].Data, t.Proof.Gas())
	if err != nil {
		return nil, fmt.Errorf("the embedded log is not read by version %s:\n%w", programVersion(), err)
	}
	a := &again{}
	if a.sheet, a.record, err = judgeLog(t, l); err != nil {
		return nil, fmt.Errorf("the embedded tank file is not assessed by version %s: %w", programVersion(), err)
	}
	if a.data, err = report.RecordJSON(a.sheet, a.record); err != nil {
		return nil, err
	}
	a.drawn, err = pdf.WriteRecord(a.sheet, a.record)
	return a, err
}

// recordCaution says what a signed record says where it is no pass.
func recordCaution(r *sign.Report) string {
	var says struct{ Verdict, Reason string }
	if err := json.Unmarshal(r.Attachments[len(r.Attachments)-1].Data, &says); err != nil || says.Verdict == "satisfied" {
		return ""
	}
	return "the record says: proof test " + says.Verdict + ": " + says.Reason + "; a signature does not change that"
}
