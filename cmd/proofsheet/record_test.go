package main

import (
	"bytes"
	"crypto/elliptic"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// sampleLogs is the folder of the sample logs, beside their tank.
const sampleLogs = "../../testdata/tanks/logs/"

const loggedTank = "../../testdata/tanks/oxygen.toml"

// Each sample log ends with its verdict and the exit status that goes with it.
func TestRecord(t *testing.T) {
	for _, row := range []struct {
		name   string
		status int
		want   string
	}{
		{"good", exitHolds, "proof test satisfied: the test reached its setting"},
		{"leak", exitFails, "proof test not satisfied: decay of the pressure: leak"},
		{"yield", exitFails, "proof test not satisfied: departure from the line: yield"},
		{"air", exitFails, "proof test inconclusive: stiffness and air: trapped air"},
		{"warming", exitFails, "proof test inconclusive: decay of the pressure: water temperature explains"},
	} {
		status, out, says := call(t, "", "record", loggedTank, sampleLogs+row.name+".csv")
		verdict, _, _ := strings.Cut(out, "\n\n")
		if status != row.status || !strings.HasPrefix(verdict, row.want) || !strings.HasSuffix(out, "\n\n"+verdict+"\n") || says != "" {
			t.Errorf("%s: status %d, want %d: %s\n%s", row.name, status, row.status, out, says)
		}
	}
}

// goodLog returns the good sample, changed.
func goodLog(t *testing.T, old, new string) string {
	t.Helper()
	data, err := os.ReadFile(sampleLogs + "good.csv")
	if err != nil {
		t.Fatal(err)
	}
	if old != "" && !strings.Contains(string(data), old) {
		t.Fatalf("the sample lacks %q", old)
	}
	return strings.Replace(string(data), old, new, 1)
}

// Bad logs: by standard input, which the messages name.
func TestRecordBadLogs(t *testing.T) {
	rows := strings.SplitAfter(goodLog(t, "", ""), "\n")
	column := func(n int, to string) string { // the n-th column of every row
		var b strings.Builder
		for _, line := range rows {
			cells := strings.Split(line, ",")
			if !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "time") && len(cells) > n {
				cells[n] = to
			}
			b.WriteString(strings.Join(cells, ","))
		}
		return b.String()
	}
	swapped := strings.Join(rows[:20], "") + rows[21] + rows[20] + strings.Join(rows[22:], "")
	for _, row := range []struct {
		name, log string
		status    int
		want      string
	}{
		{"no temperature", column(3, ""), exitFails, "proof test inconclusive: decay of the pressure: no water temperature"},
		{"over the plan", goodLog(t, ",19.1", ",29.1"), exitFails, "proof test not satisfied: pressure within the plan: FAULT: OVER-PRESSURE"},
		{"another sheet", goodLog(t, "# sheet: ", "# sheet: 00000"), exitFails, "proof test inconclusive: identity"},
		{"unit missing", goodLog(t, "pressure [bar] ± 0.004 bar", "pressure"), exitInput, `stdin.csv:1:1: heading "pressure" has no unit`},
		{"times out of order", swapped, exitInput, "stdin.csv:22:1: time: "},
		{"text", column(1, "high"), exitInput, `"high" is not a number`},
		{"nothing", "", exitInput, "stdin.csv:1:1: is empty"},
	} {
		status, out, says := call(t, row.log, "record", loggedTank, "-")
		if text := out + says; status != row.status || !strings.Contains(text, row.want) {
			t.Errorf("%s: status %d, want %d: %.300s", row.name, status, row.status, text)
		}
	}
}

// The PDF is sealed, holds tank, log and data, and is judged again by verify;
// a log changed inside does not hold.
func TestRecordDocument(t *testing.T) {
	t.Setenv(sign.FolderVariable, filepath.Join(t.TempDir(), "identity"))
	path := filepath.Join(t.TempDir(), "record.pdf")
	data := filepath.Join(t.TempDir(), "record.json")
	status, _, says := call(t, "", "record", loggedTank, sampleLogs+"leak.csv", "--pdf", path, "--json", data)
	if status != exitFails {
		t.Fatalf("status %d: %s", status, says)
	}
	text, err := os.ReadFile(data)
	if err != nil {
		t.Fatal(err)
	}
	var record struct {
		Verdict  string
		Findings []struct{ Title, Outcome string }
		Log      struct{ Name, SHA256 string }
	}
	if err := json.Unmarshal(text, &record); err != nil || record.Verdict != "not satisfied" || len(record.Findings) != 9 || record.Log.Name != "leak.csv" {
		t.Errorf("%v: %+v", err, record)
	}
	status, out, says := call(t, "", "verify", path)
	if status != exitHolds {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	for _, want := range []string{"as seal by", "oxygen.toml, SHA-256", "leak.csv, SHA-256", pdf.RecordName, "recomputed", "the record says: proof test not satisfied: decay"} {
		if !strings.Contains(flat(out), flat(want)) {
			t.Errorf("%q lacks %q", out, want)
		}
	}
	status, _, says = signAs(t, path, "prepared", newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()).files...)
	if status != exitHolds || !strings.Contains(says, "the record says: proof test not satisfied") {
		t.Errorf("signing: status %d: %s", status, says)
	}
	if status, out, _ = call(t, "", "verify", path); status != exitHolds || !strings.Contains(out, "A. Name") {
		t.Errorf("signed by a person: status %d: %s", status, out)
	}
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	again := filepath.Join(t.TempDir(), "again.pdf")
	if status, _, says := call(t, "", "record", loggedTank, sampleLogs+"leak.csv", "--pdf", again, "--unsigned"); status != exitFails {
		t.Fatal(says)
	}
	plain, err := os.ReadFile(again)
	if err != nil || !bytes.HasPrefix(whole, plain[:len(plain)/2]) {
		t.Errorf("the same input gives other bytes (%v)", err)
	}
	if status, _, says := call(t, "", "record", loggedTank, sampleLogs+"leak.csv", "--pdf", sampleLogs+"leak.csv"); status != exitInput || !strings.Contains(says, "not written over") {
		t.Errorf("status %d: %s", status, says)
	}
}
