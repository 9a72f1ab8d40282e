package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/sign"
)

// call runs the program and returns its exit status and what it printed.
func call(t *testing.T, stdin string, args ...string) (status int, stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	status = run(append([]string{"proofsheet"}, args...), strings.NewReader(stdin), &out, &err)
	return status, out.String(), err.String()
}

// withSheet has every tank assessed as one check of the given demand [Pa] with
// the capacity 100 Pa, or as one that could not be made where it is negative.
func withSheet(t *testing.T, demand float64) {
	t.Helper()
	before := assessTank
	t.Cleanup(func() { assessTank = before })
	assessTank = func(in *tank.Tank) (*report.Sheet, error) {
		r := check.Result{
			Case: "meop", Rule: "vessel", ID: "cylinder/hoop", Title: "Cylinder: hoop stress", Formula: "σ = p",
			Demand: check.Pa("σ", "hoop stress", demand), Capacity: check.Pa("S", "allowable stress", 100), Factor: 1,
			Source: check.Source{Doc: "test", Where: "here", How: check.Computed},
		}
		if demand < 0 {
			r = check.NotMade("cylinder/hoop", "Cylinder: hoop stress", errors.New("a value is missing"))
			r.Case = "meop"
		}
		digest := fmt.Sprintf("%x", sha256.Sum256(in.Text))
		s := &report.Sheet{
			Program: report.Program{Name: "proofsheet", Version: programVersion()}, VerdictRule: "vessel", People: "near",
			Checks: []check.Result{r}, Cases: []report.CaseSheet{{Name: "meop"}},
			Tank:  report.TankInfo{File: filepath.Base(in.File), SHA256: digest, Combined: digest},
			Files: []report.Attachment{{Name: filepath.Base(in.File), Data: in.Text, SHA256: digest}},
			Proof: &report.Proof{Method: "hydrostatic", Fluid: "water", Pressure: 3e6, Steps: []report.ProofStep{{Name: "leak look", Pressure: 1e6, Hold: 300}}},
		}
		s.Settle()
		return s, nil
	}
}

// starter writes a starter file and returns its name.
func starter(t *testing.T) string {
	t.Helper()
	t.Setenv(sign.FolderVariable, filepath.Join(t.TempDir(), "identity"))
	path := filepath.Join(t.TempDir(), "tank.toml")
	if status, _, says := call(t, "", "new", path); status != exitHolds {
		t.Fatal(says)
	}
	return path
}

func TestUsage(t *testing.T) {
	for _, row := range []struct {
		args   string
		status int
		want   string // on standard error; on standard output where the status is 0
	}{
		{"--help", 0, "verify"},
		{"check --help", 0, "--unsigned"},
		{"check tank.toml --help", 0, "--unsigned"},
		{"help check", 0, "--unsigned"},
		{"--version", 0, "proofsheet version "},
		{"", 2, "no command"},
		{"chek tank.toml", 2, "did you mean check?"},
		{"frobnicate", 2, `unknown command "frobnicate"; proofsheet --help`},
		{"--nosuch", 2, "nosuch"},
		{"check", 2, "takes one file, not 0"}, {"check --pdf a.toml", 2, "; --pdf took a.toml for the file to write"},
		{"main.go", 2, "main.go is a file; write a command before it"},
		{"check a.toml b.toml", 2, "takes one file, not 2"},
		{"check nosuch.toml", 2, "nosuch.toml: no such file or directory in /"}, {"check no/such.toml", 2, "; there is no folder no"},
		{"check main_tset.go", 2, "did you mean main_test.go?"}, {"check main.go/a", 2, "not a directory"},
		{"study tank.toml --scatter many", 2, "study: --scatter: \"many\" is no whole number; write one, as --scatter 500"},
		{"check a.toml --quiet=maybe", 2, "check: --quiet takes no value, not \"maybe\""},
		{"new nosuch/a.toml", 2, "there is no folder nosuch; make it first"}, {"new a.toml --fluid kerosene", 2, "did you mean RP-1 or JetA?"},
		{"new a.toml --fluid oxygenated", 2, "write one of LOX, "}, {"new a.toml --head elliptical", 2, "did you mean ellipsoid?"},
		{"blank ../../testdata/tanks/demo.toml --dxf main.go", 2, "main.go is a file; write the name of a folder"},
		{"explain spacing", 2, "did you mean port.N/spacing?"}, {"explain thickness@meop", 2, "write one of cylinder/thickness, head.X/thickness"},
		{"explain port.vent", 2, "write one of port.N/area, "}, {"explain vent", 2, "proofsheet explain lists them"},
		{"check a.toml --jsn -", 2, "did you mean --json?"},
		{"check a.toml --PDF a.pdf", 2, "did you mean --pdf?"},
		{"check a.toml --wibble", 2, "unknown flag --wibble"},
		{"check a.toml --pdf", 2, "--pdf needs a value"},
		{"check a.toml --pdf --quiet", 2, "--pdf needs a value"},
		{"check a.toml --pdf=", 2, "--pdf needs a name"},
		{"check a.toml --quiet=perhaps", 2, "perhaps"},
		{"check a.toml --pdf - --json -", 2, "only one"},
		{"check a.toml --unsigned", 2, "nothing to sign"},
		{"check a.toml --pdf a.pdf --key k.pem", 2, "go together"},
		{"check a.toml --pdf a.pdf --p12 k.p12 --unsigned", 2, "exclude"},
		{"check a.toml --pdf a.pdf --p12 k.p12 --key k --certificate c", 2, "either"},
		{"check a.toml --password-file x", 2, "belongs to --p12"},
		{"size", 2, "takes one file, not 0"},
		{"size a.toml --write - --json -", 2, "only one"},
		{"size a.toml --write=", 2, "--write needs a name"},
		{"blank tank.toml --kerf 1", 2, "--kerf 1 has no unit"}, {"blank tank.toml --dxf=", 2, "--dxf needs a name"},
		{"blank tank.toml --gap 30mm", 2, "gap is 30 mm, must be from 0 to 20 mm"}, {"blank --help", 0, "--clearance"},
		{"record tank.toml", 2, "takes two files, not 1"}, {"record - -", 2, "only one"}, {"record --help", 0, "strain-NAME"},
		{"study tank.toml", 2, "either --vary or --scatter"}, {"compare a.toml", 2, "takes two files, not 1"}, {"compare - -", 2, "only one of the two"},
		{"explain a b", 2, "explain takes one check, not 2"},
		{"sign", 2, "takes one file, not 0"}, {"sign a.pdf", 2, "needs --as prepared"}, {"sign --help", 0, "no earlier byte"},
		{"sign a.pdf --as owner", 2, "there are prepared, checked, approved"}, {"sign a.pdf --as seal", 2, "there are prepared"},
		{"sign a.pdf --as checked", 2, "a key of your own"}, {"sign a.pdf --as checked --key k", 2, "go together"},
		{"sign a.pdf --as checked --p12 k --output=", 2, "--output needs a name"}, {"sign a.pdf --as checked --p12=", 2, "a key of your own"},
		{"sign - --as checked --p12 k", 2, "needs --output"}, {"sign nosuch.pdf --as checked --p12 k", 2, "nosuch.pdf: no such file"},
		{"sign a.pdf --as checked --password x", 2, "unknown flag --password"},
		{"list", 2, "materials, fluids, joints, rules, keys"},
		{"list fluid", 2, "did you mean fluids?"},
		{"list rules nosuch", 2, "nosuch"},
		{"schema x", 2, "takes no file"},
		{"identity x", 2, "takes no file"},
		{"verify nosuch.pdf", 2, "no such file"},
	} {
		t.Run(row.args, func(t *testing.T) {
			status, out, says := call(t, "", strings.Fields(row.args)...)
			if status != row.status {
				t.Errorf("status %d, want %d: %s%s", status, row.status, out, says)
			}
			text, silent := says, out
			if row.status == exitHolds {
				text, silent = out, says
			}
			if !strings.Contains(text, row.want) {
				t.Errorf("%q lacks %q", text, row.want)
			}
			if silent != "" {
				t.Errorf("on the other stream: %q", silent)
			}
			if row.status == exitInput && strings.Count(says, "\n") != 1 {
				t.Errorf("a usage fault takes one line: %q", says)
			}
		})
	}
}

func TestNewNeverOverwrites(t *testing.T) {
	path := starter(t)
	text, err := os.ReadFile(path)
	if err != nil || !bytes.Equal(text, tank.Starter()) {
		t.Fatalf("starter file: %v", err)
	}
	if err := os.WriteFile(path, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	status, _, says := call(t, "", "new", path)
	if status != exitInput || !strings.Contains(says, "not written over") {
		t.Errorf("status %d: %s", status, says)
	}
	if text, _ := os.ReadFile(path); string(text) != "mine" {
		t.Errorf("the file was written over: %q", text)
	}
	if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
	if status, _, _ := call(t, "", "new", filepath.Join(t.TempDir(), "no", "such", "folder.toml")); status != exitInput {
		t.Errorf("a folder that does not exist: status %d", status)
	}
}

func TestExitStatusIsTheVerdict(t *testing.T) {
	path := starter(t)
	for _, row := range []struct {
		demand  float64 // [Pa]
		status  int
		verdict string
	}{
		{99, exitHolds, "satisfied"}, {100, exitHolds, "satisfied"},
		{101, exitFails, "not satisfied"}, {-1, exitFails, "not assessed"},
	} {
		withSheet(t, row.demand)
		for _, command := range []string{"check", "proof"} {
			status, out, says := call(t, "", command, path)
			if status != row.status || says != "" || !strings.Contains(strings.SplitN(out, "\n", 2)[0], row.verdict) {
				t.Errorf("%s, demand %g: status %d\n%s%s", command, row.demand, status, out, says)
			}
		}
	}
}

func TestFlagsAfterTheFile(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	for _, args := range [][]string{
		{"check", path, "--json", "-", "--quiet"}, {"check", "--json", "-", path}, {"check", "--quiet", path, "--json=-"},
	} {
		status, out, says := call(t, "", args...)
		var sheet struct {
			Verdict string
		}
		if err := json.Unmarshal([]byte(out), &sheet); status != exitHolds || says != "" || err != nil || sheet.Verdict != "satisfied" {
			t.Errorf("%v: status %d, %v\n%s%s", args, status, err, out, says)
		}
	}
}

func TestStandardInput(t *testing.T) {
	withSheet(t, 50)
	status, out, says := call(t, string(tank.Starter()), "check", "-", "--quiet")
	if status != exitHolds || !strings.HasPrefix(out, "satisfied") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
}

// TestFaultOfTheAssessmentNamesThePlaceOnce takes a fault that only the calculation sees.
func TestFaultOfTheAssessmentNamesThePlaceOnce(t *testing.T) {
	path := starter(t)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	full := strings.Replace(string(text), `liquid_mass = "2 kg"`, `liquid_mass = "2000 kg"`, 1)
	if err := os.WriteFile(path, []byte(full), 0o644); err != nil {
		t.Fatal(err)
	}
	status, _, says := call(t, "", "check", path)
	if status != exitInput || strings.Count(says, path) != 1 || !strings.HasPrefix(says, path+":") || !strings.Contains(says, "case.burnout.liquid_mass") {
		t.Errorf("status %d: %s", status, says)
	}
}

func TestBadInputNamesThePlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tank.toml")
	if err := os.WriteFile(path, []byte("[pressure]\nmeop = \"25\"\nmeopp = 3\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	status, out, says := call(t, "", "check", path, "--pdf", pdf)
	if status != exitInput || out != "" {
		t.Errorf("status %d, printed %q", status, out)
	}
	for _, want := range []string{path + ":2:8: pressure.meop: ", path + ":3:1: pressure.meopp: "} {
		if !strings.Contains(says, want) {
			t.Errorf("%q is missing in\n%s", want, says)
		}
	}
	if _, err := os.Stat(pdf); err == nil {
		t.Error("a sheet was written for a faulty tank file")
	}
}

func TestUnknownCaseWritesNothing(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	data := filepath.Join(t.TempDir(), "sheet.json")
	status, out, says := call(t, "", "check", path, "--case", "meopp", "--json", data)
	if status != exitInput || out != "" || !strings.Contains(says, "meop") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
	if _, err := os.Stat(data); err == nil {
		t.Error("a file was written though the call was wrong")
	}
}

func TestListsAndSchema(t *testing.T) {
	for args, want := range map[string]string{
		"list materials": "304L", "list materials 304L": "MPa", "list fluids": "isopropanol", "list joints": "double butt",
		"list rules": "vessel-eu", "list rules flight": "burst_factor", "list keys": "[[port]]", "list keys port.cover": "thickness",
	} {
		status, out, says := call(t, "", strings.Fields(args)...)
		if status != exitHolds || says != "" || !strings.Contains(out, want) {
			t.Errorf("%s: status %d, %q is missing\n%s%s", args, status, want, out, says)
		}
	}
	status, out, _ := call(t, "", "schema")
	var schema map[string]any
	if err := json.Unmarshal([]byte(out), &schema); status != exitHolds || err != nil || schema["$schema"] == nil {
		t.Errorf("schema: status %d, %v", status, err)
	}
}

func TestIdentity(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "identity")
	t.Setenv(sign.FolderVariable, folder)
	status, out, says := call(t, "", "identity")
	if status != exitHolds || !strings.Contains(says, "made a local signing identity in "+folder) || !strings.Contains(out, "nobody's approval") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
	if status, again, says := call(t, "", "identity"); status != exitHolds || again != out || says != "" {
		t.Errorf("second call: status %d: %s%s", status, again, says)
	}
}

// flat returns printed text without its line ends: what it says, however it is folded.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }
