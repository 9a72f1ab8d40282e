package main

import (
	"bytes"
	"crypto/elliptic"
	"crypto/x509"
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// asVersion has the program call itself by another version.
func asVersion(t *testing.T, v string) {
	t.Helper()
	before := release
	t.Cleanup(func() { release = before })
	release = v
}

// TestOtherVersion verifies a sheet with another version than made it. It never holds and is
// never signed, however well the numbers agree, because nothing proves its pages.
func TestOtherVersion(t *testing.T) {
	for _, row := range []struct {
		was, is float64 // demand [Pa]
		want    string
	}{
		{50, 50, "numbers and verdicts in its data agree"},
		{50, 50 * (1 + 0.9e-6), "agree within 1e-06; this says nothing of its pages"},
		{50, 50 * (1 + 1.1e-6), "; in its data checks.cylinder/hoop@meop by vessel, 1.demand.value was 50 and is 50.000"},
		{100, 100 * (1 + 0.5e-6), ".status was satisfied and is not satisfied"},
		{150, 50, "; in its data "},
	} {
		asVersion(t, "1.0")
		withSheet(t, row.was)
		file := sealed(t)
		asVersion(t, "2.0")
		withSheet(t, row.is)
		status, out, _ := call(t, "", "verify", file)
		for _, want := range []string{row.want, `does not hold: the pages are not proven: the sheet says that version "1.0" made it, and version 2.0 does not draw them`, "verify and sign it with the version that made it"} {
			if status != exitFails || !strings.Contains(flat(out), flat(want)) || strings.Contains(out, "\nholds") {
				t.Errorf("%.9g and %.9g: status %d, %q is missing: %s", row.was, row.is, status, want, out)
			}
		}
		own, before := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), contents(t, file)
		status, _, says := signAs(t, file, "prepared", own.files...)
		if status != exitInput || !strings.Contains(says, "the pages are not proven") || !bytes.Equal(contents(t, file), before) {
			t.Errorf("signed with another version: status %d: %s", status, says)
		}
	}
}

// withPages has the sheet of a tank changed in what its pages say.
func withPages(t *testing.T, change func(s *report.Sheet)) {
	t.Helper()
	before := assessTank
	t.Cleanup(func() { assessTank = before })
	assessTank = func(in *tank.Tank) (*report.Sheet, error) {
		s, err := before(in)
		if err == nil {
			change(s)
		}
		return s, err
	}
}

// TestSameVersionOtherBytes has what calls itself this very version hold only as the very
// bytes: data changed by one space, or pages drawn otherwise, may be a page painted over.
// An honest other build of the same name is told from a forgery by nobody.
func TestSameVersionOtherBytes(t *testing.T) {
	withSheet(t, 150)
	honest := assessTank
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	for name, change := range map[string]func(s *report.Sheet){
		"a space in a note":         func(s *report.Sheet) { s.Notes = append(s.Notes, " ") },
		"a page that says more":     func(s *report.Sheet) { s.PeopleBox = []string{"anybody may stand near"} },
		"another processor's digit": func(s *report.Sheet) { s.Checks[0].Demand.Value *= 1 + 1e-12 },
	} {
		assessTank = honest
		withPages(t, change)
		file := sealed(t)
		if status, out, _ := call(t, "", "verify", file); status != exitHolds {
			t.Fatalf("%s: by what made it: status %d: %s", name, status, out)
		}
		assessTank = honest
		before := contents(t, file)
		status, out, _ := call(t, "", "verify", file)
		for _, want := range []string{"does not hold: this is not the sheet that version devel makes of the embedded files", "another build that is also called devel", "nothing on its pages is proven"} {
			if status != exitFails || !strings.Contains(flat(out), flat(want)) || strings.Contains(out, "\nholds") {
				t.Errorf("%s: status %d, %q is missing: %s", name, status, want, out)
			}
		}
		if status, _, says := signAs(t, file, "prepared", own.files...); status != exitInput || !strings.Contains(says, "nothing on its pages is proven") || !bytes.Equal(contents(t, file), before) {
			t.Errorf("%s: signed: status %d: %s", name, status, says)
		}
	}
}

// TestOtherVersionsData has data far longer than any of this version, which are not taken
// apart to be compared, and a tank that only the other version reads.
func TestOtherVersionsData(t *testing.T) {
	e := &examination{kind: "sheet", madeBy: "1.0", files: []sign.Attachment{{Data: append([]byte("{}"), make([]byte, 1<<21)...)}}}
	if says := e.otherBytes(&again{data: []byte("{}")}).Error(); !strings.Contains(says, "were not compared") || e.compared != nil {
		t.Errorf("long data: %s", says)
	}
	asVersion(t, "1.0")
	withSheet(t, 50)
	file := sealed(t)
	asVersion(t, "2.0")
	assessTank = func(*tank.Tank) (*report.Sheet, error) { return nil, errors.New("a key is missing") }
	if status, out, _ := call(t, "", "verify", file); status != exitFails || !strings.Contains(flat(out), flat(`does not hold: the sheet says that version "1.0" made it: the embedded tank file is not assessed by version 2.0: a key is missing`)) {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestRecordWithoutLog has what calls itself the record of a proof test, with no log.
func TestRecordWithoutLog(t *testing.T) {
	r := &sign.Report{Attachments: []sign.Attachment{{Name: "tank.toml"}, {Name: pdf.RecordName}}}
	if e, err := examine(r); err == nil || !strings.Contains(err.Error(), "a log are not embedded") || e.hashes {
		t.Errorf("a record: %v", err)
	}
}

func TestNumbers(t *testing.T) {
	read := func(text string) (v any) {
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Fatal(err)
		}
		return v
	}
	check := func(id string, n float64) string {
		return fmt.Sprintf(`{"id": %q, "case": "meop", "rule": "vessel", "title": "T%g", "margin": %g, "status": "satisfied", "inputs": [{"value": %g, "unit": "Pa", "symbol": "p"}]}`, id, n, n, n)
	}
	sheet := func(checks ...string) string {
		return `{"format": 1, "program": {"version": "1"}, "notes": ["a"], "verdict": "satisfied", "checks": [` + strings.Join(checks, ",") + `], "proof": null}`
	}
	for _, row := range []struct {
		was, is         string
		first           string // difference; "" for none
		same, all, more int
	}{
		{sheet(check("a", 1)), sheet(check("a", 1)), "", 6, 6, 0},
		{sheet(check("a", 1), check("a", 2)), sheet(check("a", 2), check("a", 1)), "checks.a@meop by vessel, 1.inputs[0].value was 1 and is 2", 6, 10, 0},
		{sheet(check("a", 2), check("c", 7), check("b", 1)), sheet(check("b", 1), check("a", 2)), "", 10, 10, 1},
		{sheet(check("a", 1)), sheet(check("b", 1)), "checks.b@meop by vessel, 1.inputs[0].unit was <nil> and is Pa", 2, 6, 1},
		{`{"program": {}, "checks": []}`, sheet(check("b", 1)), "checks.b@meop by vessel, 1.inputs[0].unit", 0, 6, 0},
		{sheet(check("a", 1e-9)), sheet(check("a", 2e-9)), "checks.a@meop by vessel, 1.inputs[0].value", 5, 6, 0},
		{`{"x": 1e-13}`, `{"x": 3e-13}`, "", 1, 1, 0},
		{`{"margin": 1e-7}`, `{"margin": 9e-7}`, "", 1, 1, 0},
		{`{"margin": 1}`, `{"margin": 1.0000019}`, "", 1, 1, 0},
		{`{"margin": 1e-7}`, `{"margin": 12e-7}`, "margin was 1e-07", 0, 1, 0},
		{`{"x": null}`, `{"x": 1}`, "x was <nil> and is 1", 0, 1, 0},
		{`{"x": 1}`, `{"x": null}`, "x was 1 and is <nil>", 0, 1, 0},
		{`{"x": [1]}`, `{"x": [1, 2]}`, "x[1] was <nil> and is 2", 1, 2, 0},
		{`{"x": [1, 2]}`, `{"x": [1]}`, "", 1, 1, 1},
		{`{"x": {"y": 1}}`, `{"x": 1}`, "x was map[y:1] and is 1", 0, 1, 0},
		{`{"unit": "Pa"}`, `{"unit": "bar"}`, "unit was Pa and is bar", 0, 1, 0},
		{`{"unit": ["Pa"]}`, `{"unit": "Pa"}`, "unit was [Pa] and is Pa", 0, 1, 0},
		{`{"title": "Pa", "notes": ["a"]}`, `{"title": "bar", "notes": ["b"]}`, "", 0, 0, 0},
	} {
		n := numbers{}
		n.compare("", "", read(row.was), read(row.is))
		if (n.first == "") != (row.first == "") || !strings.HasPrefix(n.first, row.first) || n.same != row.same || n.all != row.all || n.more != row.more {
			t.Errorf("%s\n%s\n%+v, want %+v", row.was, row.is, n, row)
		}
	}
}

func TestUnsignedIsComputedAgain(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	_, data, _ := call(t, "", "check", path, "--pdf", "-", "--unsigned")
	status, out, _ := call(t, data, "verify", "-")
	if status != exitFails || !strings.Contains(out, "recomputed   every page") || !strings.HasSuffix(out, "does not hold: the file is not signed\n") {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestOtherDocuments has documents of this program that are no sheet.
func TestOtherDocuments(t *testing.T) {
	path, folder := starter(t), t.TempDir()
	for want, args := range map[string][]string{
		"set of drawings": {"blank", path, "--pdf"},
		"study":           {"study", path, "--vary", "cylinder.thickness=3mm..4mm/1mm", "--pdf"},
	} {
		file := filepath.Join(folder, args[0]+".pdf")
		if status, _, says := call(t, "", append(args, file)...); status == exitInput {
			t.Fatalf("%s: %s", args[0], says)
		}
		if status, out, _ := call(t, "", "verify", file); status != exitFails || !strings.Contains(flat(out), flat("does not hold: this is a "+want+" of this program, which nobody signs")) {
			t.Errorf("%s: status %d: %s", args[0], status, out)
		}
	}
}

func TestIssuer(t *testing.T) {
	one, two := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), newPerson(t, "B. Name", curve(t, elliptic.P256()), soon())
	if says := issuer(sign.Signature{SelfMade: true, Certificate: one.certificate}); !strings.Contains(says, "self-made") {
		t.Errorf("a self-made certificate: %s", says)
	}
	if says := issuer(sign.Signature{Certificate: one.certificate}); !strings.Contains(says, "not checked") {
		t.Errorf("a certificate without its issuer: %s", says)
	}
	// The chain names somebody who did not sign the certificate.
	if says := issuer(sign.Signature{Certificate: one.certificate, Chain: []*x509.Certificate{two.certificate}}); !strings.Contains(says, "not checked") {
		t.Errorf("a certificate with another's issuer: %s", says)
	}
	r := &sign.Report{Signatures: []sign.Signature{{Role: "checked"}}}
	if open := unsignedRoles(r); open != "prepared, approved" {
		t.Errorf("not signed as %s", open)
	}
	if says := meaning(r, &examination{kind: "sheet"}, 0); !strings.Contains(says, "no issuer is known") || strings.Contains(says, "self-made") || !strings.Contains(says, "same sheet") {
		t.Errorf("meaning: %s", says)
	}
}

// TestWordsOfOthers has names, reasons and file names that read as lines of our own.
func TestWordsOfOthers(t *testing.T) {
	for text, want := range map[string]string{
		"a\x1b[2J\u202eb\nλ":                      "a?[2J?b?λ",
		"by hand" + strings.Repeat(" ", 80) + "x": "by hand x",
		"a\u00a0\u2003\t\u3164\u2800b":            "a b",
		"Ann\u200b\u2028\u2029\ufeff\u061c\u00ad": "Ann??????",
		"Ann\U000e0041\ue000\u0085":               "Ann???",
		"Zoë 王 ⅜":                                 "Zoë 王 ⅜",
	} {
		if got := clean(text); got != want {
			t.Errorf("%q cleaned: %q, want %q", text, got, want)
		}
	}
	if got := quoted(`Ann", as checked by "Bob`); got != `"Ann\", as checked by \"Bob"` {
		t.Errorf("quoted: %s", got)
	}
	if got := cleanLines("tank.toml\nholds:  all\r"); got != "tank.toml\n  holds: all?" {
		t.Errorf("lines: %q", got)
	}
	if got := embeddedLine("a.csv, SHA-256 00", "11", 0); got != "embedded     \"a.csv, SHA-256 00\", SHA-256 11\n" {
		t.Errorf("a file: %q", got)
	}
	withSheet(t, 50)
	file := sealed(t)
	own := newPerson(t, "Ann\u200b, as checked by Bob", curve(t, elliptic.P256()), soon())
	reason := "redone" + strings.Repeat(" ", 60) + "signed       as checked by Bob"
	status, out, says := signAs(t, file, "prepared", append([]string{"--reason", reason}, own.files...)...)
	if want := `signed as prepared by "Ann?, as checked by Bob", `; status != exitHolds || !strings.Contains(out, want) {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	_, out, _ = call(t, "", "verify", file)
	for _, want := range []string{`as prepared by "Ann?, as checked by Bob", `, `  reason     "redone signed as checked by Bob"` + "\n", `  by         "CN=Ann?\\, as checked by Bob", ECDSA P-256`} {
		if !strings.Contains(out, want) {
			t.Errorf("%s is missing in\n%s", want, out)
		}
	}
	if _, _, says := signAs(t, file, "prepared", own.files...); !strings.Contains(says, `already signed as prepared, by "Ann\u200b, as checked by Bob"`) {
		t.Errorf("signed twice: %s", says)
	}
}
