package main

import (
	"bytes"
	"crypto/elliptic"
	"crypto/x509"
	"encoding/json"
	"fmt"
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

// TestOtherVersion verifies a sheet with another version than made it, which
// computes the same numbers but for so much.
func TestOtherVersion(t *testing.T) {
	for _, row := range []struct {
		was, is float64 // demand [Pa]
		status  int
		want    string
	}{
		{50, 50, exitHolds, "number"},
		{50, 50 * (1 + 0.9e-6), exitHolds, "each within 1e-06 of that in the sheet's data; version 1.0 made it"},
		{50, 50 * (1 + 1.1e-6), exitFails, "by version 2.0 (the sheet says version 1.0 made it) is another one: checks.cylinder/hoop@meop by vessel, 1.demand.value was 50 and is 50.000"},
		{100, 100 * (1 + 0.5e-6), exitFails, ".status was satisfied and is not satisfied"},
		{150, 50, exitFails, "is another one"},
	} {
		asVersion(t, "1.0")
		withSheet(t, row.was)
		file := sealed(t)
		asVersion(t, "2.0")
		withSheet(t, row.is)
		status, out, _ := call(t, "", "verify", file)
		if status != row.status || !strings.Contains(flat(out), flat(row.want)) {
			t.Errorf("%.9g and %.9g: status %d: %s", row.was, row.is, status, out)
		}
		if row.status != exitHolds {
			continue
		}
		for _, want := range []string{"caution: only the build that made it can draw the same pages", "holds: unchanged since it was signed, and its numbers computed again; its pages were read, not compared line by line"} {
			if !strings.Contains(flat(out), flat(want)) {
				t.Errorf("%q is missing in\n%s", want, out)
			}
		}
		own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
		if status, _, says := signAs(t, file, "prepared", own.files...); status != exitHolds {
			t.Errorf("signed with another version: status %d: %s", status, says)
		}
	}
}

// TestLyingPage has honest data under a page that shows another verdict, by what
// calls itself an earlier version.
func TestLyingPage(t *testing.T) {
	asVersion(t, "2.0")
	for was, is := range map[float64]float64{150: 50, 50: 150} {
		withSheet(t, is)
		in := &tank.Tank{File: "tank.toml", Text: tank.Starter()}
		honest, err := assessTank(in)
		if err != nil {
			t.Fatal(err)
		}
		withSheet(t, was)
		lying, err := assessTank(in)
		if err != nil {
			t.Fatal(err)
		}
		pages, err := (&sign.Report{Base: drawnSheet(t, lying)}).Text()
		if err != nil {
			t.Fatal(err)
		}
		if err := sameVerdict(pages, &again{sheet: honest}); err == nil || !strings.Contains(err.Error(), honest.VerdictLine()) {
			t.Errorf("a page that says %q under %q: %v", lying.VerdictLine(), honest.VerdictLine(), err)
		}
		if err := sameVerdict(pages, &again{sheet: lying}); err != nil {
			t.Errorf("a page that says what was computed: %v", err)
		}
	}
}

// TestOtherBuild has the same version compute numbers that differ in their last
// digits, as another processor does, and pages drawn otherwise under numbers that
// are the same.
func TestOtherBuild(t *testing.T) {
	withSheet(t, 50)
	file := sealed(t)
	withSheet(t, 50*(1+1e-12))
	status, out, _ := call(t, "", "verify", file)
	for _, want := range []string{"another build of it made it", " read as this version draws them"} {
		if status != exitHolds || !strings.Contains(flat(out), flat(want)) {
			t.Errorf("another processor: status %d, %q is missing: %s", status, want, out)
		}
	}
	in := &tank.Tank{File: "tank.toml", Text: tank.Starter()}
	s, err := assessTank(in)
	if err != nil {
		t.Fatal(err)
	}
	s.PeopleBox = []string{"anybody may stand near"}
	data, err := s.JSON()
	if err != nil {
		t.Fatal(err)
	}
	r := &sign.Report{Base: drawnSheet(t, s), Attachments: []sign.Attachment{{Name: "tank.toml", Data: in.Text}, {Name: dataName, Data: data}}}
	if _, err := examine(r); err == nil || !strings.Contains(err.Error(), "the file is not the one that is drawn") || !strings.HasSuffix(err.Error(), "read otherwise: 1") {
		t.Errorf("a page that says more: %v", err)
	}
	withSheet(t, 50)
	if s, err = assessTank(in); err != nil {
		t.Fatal(err)
	}
	r.Base = bytes.Replace(drawnSheet(t, s), []byte("/CreationDate (D:20"), []byte("/CreationDate (D:19"), 1)
	if r.Attachments[1].Data, err = s.JSON(); err != nil {
		t.Fatal(err)
	}
	if _, err := examine(r); err == nil || !strings.HasSuffix(err.Error(), "its pages read the same") {
		t.Errorf("a file that differs where nobody reads: %v", err)
	}
}

// TestRecordWithoutLog has what calls itself the record of a proof test, with no log.
func TestRecordWithoutLog(t *testing.T) {
	r := &sign.Report{Attachments: []sign.Attachment{{Name: "tank.toml"}, {Name: pdf.RecordName}}}
	if e, err := examine(r); err == nil || !strings.Contains(err.Error(), "a log are not embedded") || e.hashes {
		t.Errorf("a record: %v", err)
	}
}

func TestOtherPages(t *testing.T) {
	asVersion(t, "2.0")
	was := []string{"a page 1 of 2 proofsheet 1.0", "b 7 page 2 of 2 proofsheet 1.0"}
	if other := otherPages("1.0", was, []string{"x page 1 of 3 proofsheet 2.0", "b 7 page 2 of 3 proofsheet 2.0", "a page 3 of 3 proofsheet 2.0"}); len(other) > 0 {
		t.Errorf("pages that have moved: %v", other)
	}
	if other := otherPages("1.0", was, []string{"a page 1 of 2 proofsheet 2.0", "b 8 page 2 of 2 proofsheet 2.0"}); fmt.Sprint(other) != "[2]" {
		t.Errorf("another number: %v", other)
	}
	many := make([]int, 14)
	if text := list(many); text != strings.Repeat("0, ", 11)+"0 and 2 more" {
		t.Errorf("list %q", text)
	}
}

func drawnSheet(t *testing.T, s *report.Sheet) []byte {
	t.Helper()
	data, err := pdf.Write(s)
	if err != nil {
		t.Fatal(err)
	}
	return data
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
		was, is     string
		at          string // of the difference; "" for none
		count, more int
	}{
		{sheet(check("a", 1)), sheet(check("a", 1)), "", 3, 0},
		{sheet(check("a", 1), check("a", 2)), sheet(check("a", 1), check("a", 2)), "", 5, 0},
		{sheet(check("a", 1), check("a", 2)), sheet(check("a", 2), check("a", 1)), "checks.a@meop by vessel, 1.inputs[0].value was 1 and is 2", 0, 0},
		{sheet(check("b", 1), check("a", 2)), sheet(check("a", 2), check("c", 7), check("b", 1)), "", 5, 1},
		{sheet(check("b", 1)), sheet(check("a", 1)), "checks.b@meop by vessel, 1 is missing", 0, 0},
		{sheet(check("a", 1e-9)), sheet(check("a", 2e-9)), "checks.a@meop by vessel, 1.inputs[0].value", 0, 0},
		{sheet(check("a", 1e-13)), sheet(check("a", 3e-13)), "", 3, 0},
		{`{"margin": 1e-7}`, `{"margin": 9e-7}`, "", 1, 0},
		{`{"margin": 1}`, `{"margin": 1.0000019}`, "", 1, 0},
		{`{"margin": 1e-7}`, `{"margin": 12e-7}`, "margin was 1e-07", 0, 0},
		{`{"x": null}`, `{"x": 1}`, "x was <nil> and is 1", 0, 0},
		{`{"x": 1}`, `{"x": null}`, "x was 1 and is <nil>", 0, 0},
		{`{"x": [1]}`, `{"x": [1, 2]}`, "x was [1] and is [1 2]", 0, 0},
		{`{"x": 1}`, `{}`, "x is missing", 0, 0},
		{`{"unit": "Pa"}`, `{"unit": "bar"}`, "unit was Pa and is bar", 0, 0},
		{`{"title": "Pa", "notes": ["a"]}`, `{"title": "bar", "notes": []}`, "", 0, 0},
		{`{"checks": [1, [2]]}`, `{"checks": [1, [2]]}`, "", 2, 0},
	} {
		n := numbers{}
		at := n.compare("", "", read(row.was), read(row.is))
		if (at == "") != (row.at == "") || !strings.HasPrefix(at, row.at) || row.at == "" && (n.count != row.count || n.more != row.more) {
			t.Errorf("%s\n%s\n%q, want %q; %d compared, %d more", row.was, row.is, at, row.at, n.count, n.more)
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
	if says := meaning(r, &examination{kind: "sheet", exact: true}, 0); !strings.Contains(says, "no issuer is known") || strings.Contains(says, "self-made") || !strings.Contains(says, "same sheet") {
		t.Errorf("meaning: %s", says)
	}
	if got := clean("a\x1b[2J\u202eb\nλ"); got != "a?[2J?b?λ" {
		t.Errorf("cleaned: %q", got)
	}
}
