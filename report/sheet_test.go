package report_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"proofsheet/report"
	"proofsheet/report/check"
)

// sheet is a small sheet of invented numbers with a check of each status.
func sheet() *report.Sheet {
	time := 12.5
	good := check.Result{Case: "burnout", Rule: "vessel", ID: "cylinder/hoop", Title: "Cylinder: hoop stress", Formula: "σ_h = p r / t ≤ E S",
		Inputs: []check.Quantity{check.Pa("p", "pressure", 2.5e6)}, Demand: check.Pa("σ_h", "hoop stress", 88e6), Capacity: check.Pa("E S", "allowable", 96e6), Factor: 1,
		Source: check.Source{Doc: "Invented code", Where: "eq. (3)", How: check.Read}}
	bad := good
	bad.ID, bad.Case, bad.Time, bad.Capacity.Value, bad.Source.How = "head.aft/membrane", "flight", &time, 87.9e6, check.Memory
	s := &report.Sheet{
		Program: report.Program{Name: "proofsheet", Version: "v1"}, VerdictRule: "vessel", People: "near",
		Tank:  report.TankInfo{File: "tank.toml", SHA256: "ab", Combined: "0123456789abcdef", Files: []report.FileInfo{{Name: "flight.csv", SHA256: "cd"}}},
		Block: report.TitleBlock{Title: "Invented tank", Number: "T-001", Revision: "A"},
		Checks: []check.Result{good, check.NotApplicableTo("head.aft/knuckle", "Aft head: knuckle", "a cone has no knuckle"),
			check.NotMade("port.fill/weld", "Port: weld", errors.New("no leg is given")), bad},
		Quantities: []report.NamedQuantity{{Key: "volume", Value: 0.16, Unit: "m3"}, {Key: "dry_mass", Value: math.NaN(), Unit: "kg", Note: "no density"}, {Key: "a.first", Value: 1, Unit: "1"}},
		Conditions: []report.Condition{{Case: "burnout", Part: "head.aft", Z: -0.1, Pressure: 2.6e6, Temperature: math.Inf(1)}},
		Proof:      &report.Proof{Method: "hydrostatic", Fluid: "water", Pressure: 3.75e6, StoredEnergy: 1.2e5, Barrier: true, Steps: []report.ProofStep{{Pressure: 1.9e6, Hold: 300, InjectedVolume: 0.0004, HoopStrain: math.NaN(), AxialStrain: 0.0001, DiameterGrowth: 0.0003, Added: 0.0002, StopBand: math.NaN()}}},
		Basis:      []report.BasisRow{{Name: "proof_factor", Value: "1.4", Override: true, Instead: "1.3", Source: check.Source{Doc: "a letter"}}},
		Cautions:   []string{"One & only <caution>."}, PeopleBox: []string{"Nobody before a passed proof."},
		Cases: []report.CaseSheet{{Name: "burnout"}, {Name: "meop"}},
	}
	s.Settle()
	return s
}

// TestJSONForm compares the whole form, key by key and in its order, with the
// form that other programs read, written out by hand.
func TestJSONForm(t *testing.T) {
	const want = `{"format":1,"program":{"name":"proofsheet","version":"v1"},
"tank":{"file":"tank.toml","sha256":"ab","files":[{"name":"flight.csv","sha256":"cd"}],"title":"Invented tank","number":"T-001","revision":"A"},
"verdict":"not satisfied","people":"near","governing":"head.aft/membrane@flight",
"quantities":{"volume":{"value":0.16,"unit":"m3"},"dry_mass":{"value":null,"unit":"kg","note":"no density"},"a.first":{"value":1,"unit":"1"}},
"checks":[
{"id":"cylinder/hoop","case":"burnout","time":null,"rule":"vessel","title":"Cylinder: hoop stress","formula":"σ_h = p r / t ≤ E S","inputs":[{"symbol":"p","name":"pressure","value":2500000,"unit":"Pa"}],
"demand":{"symbol":"σ_h","name":"hoop stress","value":88000000,"unit":"Pa"},"capacity":{"symbol":"E S","name":"allowable","value":96000000,"unit":"Pa"},"factor":1,"margin":MARGIN1,"status":"satisfied","source":{"document":"Invented code","place":"eq. (3)","how":"read"},"note":""},
{"id":"head.aft/knuckle","case":"","time":null,"rule":"","title":"Aft head: knuckle","formula":"","inputs":[],"demand":null,"capacity":null,"factor":null,"margin":null,"status":"not applicable","source":{"document":"","place":"","how":"unstated"},"note":"a cone has no knuckle"},
{"id":"port.fill/weld","case":"","time":null,"rule":"","title":"Port: weld","formula":"","inputs":[],"demand":null,"capacity":null,"factor":null,"margin":null,"status":"not assessed","source":{"document":"","place":"","how":"unstated"},"note":"no leg is given"},
{"id":"head.aft/membrane","case":"flight","time":12.5,"rule":"vessel","title":"Cylinder: hoop stress","formula":"σ_h = p r / t ≤ E S","inputs":[{"symbol":"p","name":"pressure","value":2500000,"unit":"Pa"}],
"demand":{"symbol":"σ_h","name":"hoop stress","value":88000000,"unit":"Pa"},"capacity":{"symbol":"E S","name":"allowable","value":87900000,"unit":"Pa"},"factor":1,"margin":MARGIN2,"status":"not satisfied","source":{"document":"Invented code","place":"eq. (3)","how":"memory"},"note":""}],
"conditions":[{"case":"burnout","part":"head.aft","z":-0.1,"pressure":2600000,"temperature":null}],
"proof":{"pressure":3750000,"steps":[{"pressure":1900000,"hold":300,"injected_volume":0.0004,"hoop_strain":null,"axial_strain":0.0001,"diameter_growth":0.0003,"added_volume":0.0002,"stop_band":null}],"stored_energy":120000,"stand_off":null,"barrier":true},
"cautions":["One & only <caution>."],"notes":[]}`
	s := sheet()
	indented, err := s.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	if err := json.Compact(&got, indented); err != nil {
		t.Fatal(err)
	}
	full := func(r check.Result) string {
		b, _ := json.Marshal(r.Capacity.Value/(r.Factor*r.Demand.Value) - 1)
		return string(b)
	}
	expect := strings.NewReplacer("\n", "", "MARGIN1", full(s.Checks[0]), "MARGIN2", full(s.Checks[3])).Replace(want)
	if d := cmp.Diff(expect, got.String()); d != "" {
		t.Error(d)
	}
	if marshalled, err := json.Marshal(s); err != nil || !json.Valid(marshalled) {
		t.Errorf("json.Marshal: %v", err)
	}
}

func TestJSONWithoutNumbers(t *testing.T) {
	s := &report.Sheet{}
	s.Settle()
	out, err := s.JSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"quantities": {}`, `"checks": []`, `"proof": null`, `"governing": null`, `"verdict": "not assessed"`, `"files": []`, `"cautions": []`} {
		if !bytes.Contains(out, []byte(want)) {
			t.Errorf("no %s in %s", want, out)
		}
	}
}

func TestQuantityGivenTwice(t *testing.T) {
	s := sheet()
	s.Quantities = append(s.Quantities, s.Quantities[0])
	if _, err := s.JSON(); err == nil {
		t.Error("an object with the same key twice was written")
	}
}

// TestStatedVerdictMustBeTheChecks: no view prints a verdict that the checks
// do not bear out.
func TestStatedVerdictMustBeTheChecks(t *testing.T) {
	for name, spoil := range map[string]func(*report.Sheet){
		"verdict":   func(s *report.Sheet) { s.Verdict = check.Satisfied },
		"governing": func(s *report.Sheet) { s.Governing = "cylinder/hoop@burnout" },
		"checks":    func(s *report.Sheet) { s.Checks = s.Checks[:1] },
	} {
		s := sheet()
		spoil(s)
		if _, err := s.JSON(); err == nil {
			t.Errorf("%s: written as JSON", name)
		}
		if err := report.Text(&bytes.Buffer{}, s, false, "", 0); err == nil {
			t.Errorf("%s: written as text", name)
		}
	}
}

func text(t *testing.T, s *report.Sheet, quiet bool, filter string) string {
	t.Helper()
	var b bytes.Buffer
	if err := report.Text(&b, s, quiet, filter, 0); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextOpensAndClosesWithTheVerdict(t *testing.T) {
	s := sheet()
	all := text(t, s, false, "")
	want := "not satisfied by vessel: nobody near while pressurised; of 4 checks 1 not satisfied, 1 not assessed\n"
	if !strings.HasPrefix(all, want) || !strings.HasSuffix(all, "\n"+want) {
		t.Errorf("does not open and close with %q:\n%s", want, all)
	}
	for verdict, want := range map[check.Status]string{check.NotAssessed: "not assessed, rule vessel", check.NotSatisfied: "not satisfied by vessel", check.Satisfied: "satisfied by vessel"} {
		other := *s
		if other.Verdict = verdict; other.VerdictWords() != want {
			t.Errorf("%q, want %q", other.VerdictWords(), want)
		}
	}
	at := -1
	for _, part := range []string{"governing: head.aft/membrane@flight, margin -0.01", "override: proof_factor = 1.4 in place of 1.3",
		"-0.01  head.aft/membrane@flight at 12.5 s", "no leg is given", "+0.09  cylinder/hoop@burnout", "not applicable: 1",
		"recalled, to be confirmed: Invented code, recalled; confirm: head.aft/membrane"} {
		next := strings.Index(all, part)
		if next <= at {
			t.Errorf("%q is missing or out of order in\n%s", part, all)
		}
		at = next
	}
	if strings.Contains(all, "eq. (3), recalled") {
		t.Error("a recalled clause is cited")
	}
}

// TestAdvice prints what to write under a check that is not satisfied, once for all cases
// in which it is the same, and under no other.
func TestAdvice(t *testing.T) {
	s := sheet()
	good, bad := s.Checks[0], s.Checks[3]
	good.Advice, bad.Advice, bad.Note = "write less", "write clocks 47.6 deg or more apart, or radius = \"110 mm\" or more for both", "governs: area"
	again := bad
	again.Case = "burnout"
	s.Checks = []check.Result{good, bad, again}
	s.Settle()
	want := "against 87.90 MPa\n" + strings.Repeat(" ", 24) + bad.Advice + "\nnot satisfied  -0.01  head.aft/membrane@burnout"
	if got := text(t, s, false, ""); !strings.Contains(got, want) || strings.Count(got, "47.6") != 1 || strings.Contains(got, "write less") || strings.Contains(got, "governs: area") {
		t.Errorf("no %q in\n%s", want, got)
	}
	if got := report.Remark(bad); got != "governs: area; "+bad.Advice {
		t.Errorf("beside the check: %q", got)
	}
}

func TestTextFilter(t *testing.T) {
	s := sheet()
	one := text(t, s, false, "burnout")
	if strings.Contains(one, "head.aft/membrane@flight at") || !strings.Contains(one, "cylinder/hoop@burnout") {
		t.Errorf("not only the checks of burnout:\n%s", one)
	}
	if !strings.HasPrefix(one, "not satisfied") {
		t.Error("the verdict of one case stands for all")
	}
	if err := report.Text(&bytes.Buffer{}, s, false, "burn-out", 0); err == nil || !strings.Contains(err.Error(), "burnout, meop, flight") {
		t.Errorf("a case nobody wrote: %v", err)
	}
	if quiet := text(t, s, true, ""); strings.Count(quiet, "\n") != 2 {
		t.Errorf("quiet says %q", quiet)
	}
}

// TestNobodyNearUnlessSaid: a sheet that does not say who may be near lets
// nobody near, and so does one that is not satisfied.
func TestNobodyNearUnlessSaid(t *testing.T) {
	s := sheet()
	s.Checks = s.Checks[:1]
	s.Settle()
	for people, want := range map[string]bool{"near": true, "clear": false, "": false, "all": false} {
		s.People = people
		if got := strings.Contains(s.VerdictLine(), "people may be near"); got != want {
			t.Errorf("people %q: %s", people, s.VerdictLine())
		}
	}
	bad := sheet()
	if !strings.Contains(bad.VerdictLine(), "nobody near") {
		t.Error(bad.VerdictLine())
	}
}

func TestWorstFirst(t *testing.T) {
	var got []string
	for _, r := range report.WorstFirst(sheet().Checks) {
		got = append(got, r.Status().String())
	}
	if d := cmp.Diff([]string{"not satisfied", "not assessed", "satisfied", "not applicable"}, got); d != "" {
		t.Error(d)
	}
}

func TestCite(t *testing.T) {
	for _, row := range []struct {
		src  check.Source
		want string
	}{
		{check.Source{Doc: "Code", Where: "clause 3", How: check.Read}, "Code, clause 3"},
		{check.Source{Doc: "Code", Where: "clause 3", How: check.Memory}, "Code, recalled; confirm"}, // no clause that nobody read
		{check.Source{Doc: "Code, recalled; confirm", Where: "clause 3", How: check.Memory}, "Code, recalled; confirm"},
		{check.Source{Doc: "practice", How: check.Practice}, "practice"},
		{check.Source{Where: "worked in doc.go", How: check.Computed}, "worked in doc.go"},
		{check.Source{}, "no source stated"},
	} {
		if got := report.Cite(row.src); got != row.want {
			t.Errorf("%+v: %q, want %q", row.src, got, row.want)
		}
	}
}

// TestRecalledNamesEveryUser: what leans on memory is named, source by source.
func TestRecalledNamesEveryUser(t *testing.T) {
	s := sheet()
	src := check.Source{Doc: "Handbook", How: check.Memory}
	s.Recalled = []string{"a line of its own"}
	s.Materials = []report.MaterialSheet{{Name: "plate", Values: []report.ValueRow{{Quantity: check.Pa("E", "elastic modulus", 1), Source: src}, {Quantity: check.Pa("R", "strength", 1)}}}}
	s.Joints = []report.JointSheet{{Name: "long", Uses: []report.JointUse{{Place: "long seam", Source: src}}}}
	s.Basis = append(s.Basis, report.BasisRow{Name: "burst_factor", Source: src})
	want := []string{"a line of its own", "Invented code, recalled; confirm: head.aft/membrane",
		"Handbook, recalled; confirm: elastic modulus of material plate, joint long as long seam, burst_factor"}
	if d := cmp.Diff(want, s.AllRecalled()); d != "" {
		t.Error(d)
	}
}

// TestOpenChecksAreSaid: a pressure of a part is not printed without the
// checks which it leaves out.
func TestOpenChecksAreSaid(t *testing.T) {
	s := sheet()
	s.Checks = append(s.Checks, check.NotMade("port.fill/weld", "Port: weld", errors.New("again, in another case")))
	s.Settle()
	s.Permissible = []report.PermissiblePressure{{Part: "port.fill", Pressure: 2.2229e6, Check: "port.fill/area"}, {Part: "cylinder", Pressure: 2.5e6}, {Part: "head.aft", Pressure: math.NaN()},
		{Part: "port.vent", Check: "port.vent/weld"}}
	all := text(t, s, false, "")
	for _, want := range []string{"port.fill 2.222 MPa by the checks made, without port.fill/weld (port.fill/area)\n", "cylinder 2.500 MPa\n", "head.aft not assessed\n",
		"port.vent none, not satisfied at any (port.vent/weld)\n"} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q in\n%s", want, all)
		}
	}
}
