package main

import (
	"crypto/elliptic"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// withRecord has the log judged as it is, then changed.
func withRecord(t *testing.T, change func(r *report.Record)) {
	t.Helper()
	before := judgeLog
	t.Cleanup(func() { judgeLog = before })
	judgeLog = func(in *tank.Tank, l *tank.Log) (*report.Sheet, *report.Record, error) {
		s, r, err := before(in, l)
		if err == nil {
			change(r)
		}
		return s, r, err
	}
}

// sealedRecord writes the record of the good sample log.
func sealedRecord(t *testing.T) string {
	t.Helper()
	t.Setenv(sign.FolderVariable, filepath.Join(t.TempDir(), "identity"))
	path := filepath.Join(t.TempDir(), "record.pdf")
	if status, _, says := call(t, "", "record", loggedTank, sampleLogs+"good.csv", "--pdf", path); status != exitHolds {
		t.Fatalf("status %d: %s", status, says)
	}
	return path
}

// TestRecordOfOtherVersion verifies a record with another version than made it, which
// finds the same numbers but for so much. Only the one that made it has it hold.
func TestRecordOfOtherVersion(t *testing.T) {
	asVersion(t, "1.0")
	path := sealedRecord(t)
	asVersion(t, "2.0")
	judge := judgeLog
	by := func(factor float64) func(*report.Record) {
		return func(r *report.Record) { r.Readings[3].Volume *= factor }
	}
	for _, row := range []struct {
		name   string
		change func(r *report.Record)
		want   string
	}{
		{"same", func(*report.Record) {}, `the record says that version "1.0" made it`},
		{"near", by(1 + 0.9e-6), "numbers and verdicts in its data agree within 1e-06; this says nothing of its pages"},
		{"far", by(1 + 1.1e-6), "in its data readings[3].volume was"},
		{"less", func(r *report.Record) { r.Findings = r.Findings[1:] }, "its data hold more than this version computes"},
		{"outcome", func(r *report.Record) { r.Findings[1].Outcome = "not read" }, ".outcome was pass and is not read"},
		{"verdict", func(r *report.Record) { r.Verdict = "inconclusive" }, "verdict was satisfied and is inconclusive"},
	} {
		judgeLog = judge
		withRecord(t, row.change)
		status, out, _ := call(t, "", "verify", path)
		if status != exitFails || !strings.Contains(flat(out), flat(row.want)) || !strings.Contains(flat(out), flat("does not hold: the pages are not proven")) {
			t.Errorf("%s: status %d, want %q:\n%s", row.name, status, row.want, out)
		}
	}
	judgeLog = judge
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	if status, _, says := signAs(t, path, "prepared", own.files...); status != exitInput || !strings.Contains(says, "the pages are not proven") {
		t.Fatalf("signed with another version: status %d: %s", status, says)
	}
	asVersion(t, "1.0")
	if status, _, says := signAs(t, path, "prepared", own.files...); status != exitHolds {
		t.Fatalf("status %d: %s", status, says)
	}
	status, out, _ := call(t, "", "verify", path)
	if want := "the record says: proof test satisfied"; status != exitHolds || !strings.Contains(flat(out), flat(want)) || !strings.Contains(out, "from the embedded tank file and log") {
		t.Errorf("status %d, want %q:\n%s", status, want, out)
	}
}

// TestLyingRecord has pages of this very version that show another reason than is found
// in the log, and a log that is not the one whose hash is printed.
func TestLyingRecord(t *testing.T) {
	asVersion(t, "2.0")
	path := sealedRecord(t)
	data, err := readFile(path)
	if err != nil {
		t.Fatal(err)
	}
	r, err := sign.Verify(data)
	if err != nil {
		t.Fatal(err)
	}
	e, err := examine(r)
	if err != nil || e.again == nil || e.kind != "record" {
		t.Fatalf("the record itself: %v", err)
	}
	judge := judgeLog
	withRecord(t, func(r *report.Record) { r.Reason += " " })
	if _, err := examine(r); err == nil || !strings.Contains(err.Error(), "this is not the record that version 2.0 makes") {
		t.Errorf("another reason: %v", err)
	}
	judgeLog = judge
	r.Attachments[1].Data = append([]byte("# another\n"), r.Attachments[1].Data...)
	if _, err := examine(r); err == nil || !strings.Contains(err.Error(), "the embedded file good.csv is not the one that was computed") || !strings.Contains(err.Error(), "the record says otherwise") {
		t.Errorf("another log: %v", err)
	}
	r.Attachments = []sign.Attachment{r.Attachments[0], {Name: pdf.RecordName, Data: []byte("{}")}}
	if _, err := examine(r); err == nil || !strings.Contains(err.Error(), "no record of this program") {
		t.Errorf("no log: %v", err)
	}
}
