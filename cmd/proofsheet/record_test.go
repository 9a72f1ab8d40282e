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
		{"unit missing", goodLog(t, "pressure [bar] ± 0.004 bar", "pressure"), exitInput, `stdin.csv:3:1: heading "pressure" has no unit`},
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
	if err := json.Unmarshal(text, &record); err != nil || record.Verdict != "not satisfied" || len(record.Findings) != 11 || record.Log.Name != "leak.csv" {
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

// A log of a test with gas needs no volume; its PDF is judged again by verify, and
// speaks of gas. The same log of a test with water is refused.
func TestRecordDocumentOfGas(t *testing.T) {
	t.Setenv(sign.FolderVariable, filepath.Join(t.TempDir(), "identity"))
	src, err := os.ReadFile("../../testdata/tanks/kerosene.toml")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	gas, log, path := filepath.Join(folder, "gas.toml"), filepath.Join(folder, "log.csv"), filepath.Join(folder, "record.pdf")
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(gas, strings.NewReplacer("examination = \"spot\"", "examination = \"full\"",
		"method = \"hydrostatic\"", "method = \"pneumatic\"\nfluid = \"nitrogen\"").Replace(string(src)))
	write(log, "time [s],pressure [bar],temperature [degC],strain-hoop [um/m]\n0,0,15,0\n60,8,15,240\n120,9.5,15,285\n180,11,15,330\n240,0.8,15,24\n")
	status, out, says := call(t, "", "record", gas, log, "--pdf", path)
	if status != exitFails || !strings.Contains(out, "proof test inconclusive: setting reached and held") {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	if status, out, says := call(t, "", "verify", path); status != exitHolds || !strings.Contains(out, "recomputed") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
	words := pdfWords(t, path)
	for _, want := range []string{"Strain left: what a gauge kept", "every weld and fitting tight", "A bubble at a weld"} {
		if words != "" && !strings.Contains(words, want) {
			t.Errorf("the record lacks %q", want)
		}
	}
	if status, _, says := call(t, "", "record", "../../testdata/tanks/kerosene.toml", log); status != exitInput || !strings.Contains(says, "has no column volume; write volume") {
		t.Errorf("of water: status %d: %s", status, says)
	}
}
