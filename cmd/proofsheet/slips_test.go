package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestCommandFirst has flags ahead of the command, and says how to write the call.
func TestCommandFirst(t *testing.T) {
	for words, want := range map[string]string{
		"--pdf x.pdf check a.toml": "the command comes first, then its flags: proofsheet check a.toml --pdf x.pdf\n",
		"--quiet check a.toml":     "the command comes first, then its flags: proofsheet check a.toml --quiet\n",
		"--quiet a.toml":           "flag provided but not defined: -quiet\n",
	} {
		if status, out, says := call(t, "", strings.Fields(words)...); status != exitInput || out != "" || says != "proofsheet: "+want {
			t.Errorf("%s: status %d: %s%s", words, status, out, says)
		}
	}
	if status, out, _ := call(t, "", "--version"); status != exitHolds || !strings.Contains(out, "version") {
		t.Errorf("--version: status %d: %s", status, out)
	}
}

// TestEndingLeftOut offers the files that have the name with an ending.
func TestEndingLeftOut(t *testing.T) {
	path := starter(t)
	folder, name := filepath.Dir(path), strings.TrimSuffix(filepath.Base(path), ".toml")
	bare := filepath.Join(folder, name)
	if status, _, says := call(t, "", "check", bare); status != exitInput || !strings.HasSuffix(says, "; did you mean "+bare+".toml?\n") {
		t.Errorf("status %d: %s", status, says)
	}
	if err := os.WriteFile(bare+".pdf", nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if status, _, says := call(t, "", "verify", bare); status != exitInput || !strings.HasSuffix(says, "; did you mean "+bare+".pdf or "+bare+".toml?\n") {
		t.Errorf("status %d: %s", status, says)
	}
}

// TestVerifyNeedsPDF has a tank file where a sheet is asked for: that is no answer about a
// sheet.
func TestVerifyNeedsPDF(t *testing.T) {
	path := starter(t)
	if status, out, says := call(t, "", "verify", path); status != exitInput || out != "" || says != "proofsheet: "+path+": this is not a PDF file; write the name of the PDF of a sheet or record\n" {
		t.Errorf("status %d: %s%s", status, out, says)
	}
}

// TestFaultOfTheCalculation gives what only the calculation sees its place in the file.
func TestFaultOfTheCalculation(t *testing.T) {
	src := strings.NewReplacer("fluid = \"JetA\"", "fluid = \"N2O\"", "warmest = \"30 degC\"", "warmest = \"38 degC\"").Replace(string(contents(t, "../../testdata/tanks/kerosene.toml")))
	path := write(t, "hot.toml", []byte(src))
	for _, command := range []string{"check", "size"} {
		status, _, says := call(t, "", command, path)
		if status != exitInput || !strings.HasPrefix(says, path+":") || strings.HasPrefix(says, path+":1:") || !strings.Contains(says, ": contents: density of N2O at its warmest: ") {
			t.Errorf("%s: status %d: %s", command, status, says)
		}
	}
}

// TestDoubtsAreSaid asks on standard error about what looks like a slip, and goes on.
func TestDoubtsAreSaid(t *testing.T) {
	path := starter(t)
	src := string(contents(t, path))
	if !strings.Contains(src, "\nclock = \"") {
		t.Fatal("the starter has no clock")
	}
	turned := write(t, "turned.toml", []byte(strings.Replace(src, "\nclock = \"", "\nclock = \"450 deg\" # \"", 1)))
	withSheet(t, 50)
	status, out, says := call(t, "", "check", turned)
	if status != exitHolds || out == "" || !strings.HasPrefix(says, "caution: "+turned+":") || !strings.Contains(says, `450 deg is more than a turn; the same place is "90 deg"`) {
		t.Errorf("status %d: %s", status, says)
	}
}

// TestTankForLog gives a tank file where the log of a test is asked for.
func TestTankForLog(t *testing.T) {
	path := starter(t)
	if status, out, says := call(t, "", "record", path, path); status != exitInput || out != "" || says != "proofsheet: "+path+" is a tank file, the log is a table of comma-separated values: proofsheet record TANK.toml LOG.csv\n" {
		t.Errorf("status %d: %s%s", status, out, says)
	}
}
