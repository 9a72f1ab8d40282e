package assess_test

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// changed returns an example tank with lines of its text replaced.
func changed(t testing.TB, name string, pairs ...string) *tank.Tank {
	t.Helper()
	src := string(read(t, name).Text)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(src, pairs[i]) {
			t.Fatalf("%s has no %q", name, pairs[i])
		}
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return parse(t, name+".toml", src)
}

// find returns the check id@case.
func find(t testing.TB, s *report.Sheet, id string) check.Result {
	t.Helper()
	for _, r := range s.Checks {
		if report.FullID(r) == id {
			return r
		}
	}
	t.Fatalf("no check %s", id)
	return check.Result{}
}

func quantity(t testing.TB, s *report.Sheet, key string) float64 {
	t.Helper()
	for _, q := range s.Quantities {
		if q.Key == key {
			return q.Value
		}
	}
	t.Fatalf("no quantity %s", key)
	return 0
}

// The demonstration tank is an honest design: nothing that is checked fails,
// and what is not checked is said.
func TestDemoIsHonest(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	if s.Verdict != check.NotAssessed {
		t.Errorf("verdict %v, want not assessed: some checks are not made", s.Verdict)
	}
	made := 0
	for _, r := range s.Checks {
		switch r.Status() {
		case check.NotSatisfied:
			t.Errorf("%s is not satisfied: margin %.3f", report.FullID(r), r.Margin())
		case check.Satisfied:
			made++
		case check.NotAssessed:
			if r.Reason() == "" {
				t.Errorf("%s gives no reason", report.FullID(r))
			}
		}
	}
	if made < 30 {
		t.Errorf("only %d checks were made", made)
	}
}

// Hoop stress and required wall of the demonstration tank by hand: p = 25 bar
// with the head of the liquid above the aft seam, R 200 mm, least wall 7.7 mm,
// 304L at 20 degC, spot examined double butt 0.85: S = 113.33 MPa.
func TestDemoByHand(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	r := find(t, s, "cylinder/thickness@pad")
	p := pressureAt(t, s, "pad", "cylinder")
	want := p * 0.2 / (113.333333e6*0.85 - 0.6*p)
	checktest.Close(t, "t = p R/(S E − 0.6 p)", r.Demand.Value, want, 1e-6)
	hoop := find(t, s, "cylinder/hoop@pad")
	checktest.Close(t, "σ = p R_m/t", hoop.Demand.Value, p*(0.2+0.0077/2)/0.0077, 1e-6)
	if v := find(t, s, "cylinder/hoop@pad").Capacity.Value; math.Abs(v-0.85*113.333333e6) > 1e3 {
		t.Errorf("capacity %g, want E S", v)
	}
}

// pressureAt returns the highest pressure of a part in a case [Pa].
func pressureAt(t testing.TB, s *report.Sheet, c, part string) float64 {
	t.Helper()
	most := math.Inf(-1)
	for _, q := range s.Conditions {
		if q.Case == c && q.Part == part {
			most = math.Max(most, q.Pressure)
		}
	}
	return most
}

// At over 20 bar and a few g the acceleration head is a few per cent of the
// ullage pressure, and is still added. Common practice, no source.
func TestAccelerationHeadIsAdded(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	share := pressureAt(t, s, "burnout", "head.aft")/25e5 - 1
	if !(share > 0.001 && share < 0.05) {
		t.Errorf("head is %.4f of the ullage pressure", share)
	}
}

// A weak girth seam governs over a good long seam (the pattern of published
// problems with joints of unequal strength).
func TestGirthSeamGoverns(t *testing.T) {
	s := sheet(t, changed(t, "demo", "[joint.girth]\nkind = \"double butt\"\nexamination = \"spot\"",
		"[joint.girth]\nkind = \"double butt\"\nefficiency = 0.35\nsource = \"worked example\""))
	r := find(t, s, "cylinder/thickness@meop")
	if !strings.Contains(r.Note+r.Demand.Name, "girth") {
		t.Errorf("governs: %q %q, want the girth seam", r.Demand.Name, r.Note)
	}
}

// A case that presses on the wall takes the relief of the pressure from the
// free body: with the liquid's weight at 6 g on the aft head, the axial stress
// in the cylinder stays that of the ullage alone, not p(z) R/2.
func TestAxialForceComesFromTheFreeBody(t *testing.T) {
	in := changed(t, "demo", "axial_load_factor = 5.5", "axial_load_factor = 9", "fill = 0.25", "fill = 0.9",
		"axial_compression = \"15 kN\"\nbending_moment = \"1 kN m\"\nshear_force = \"1 kN\"\nstation = \"600 mm\"\n", "",
		"lateral_load_factor = 0.3", "lateral_load_factor = 0")
	r := find(t, sheet(t, in), "cylinder/longitudinal@burnout")
	rm, wall := 0.2+0.0077/2, 0.0077
	gas := 25e5 * rm / (2 * wall)
	if over := r.Demand.Value/gas - 1; over < -0.02 || over > 0.01 {
		t.Errorf("axial stress %.4g MPa, ullage alone gives %.4g", r.Demand.Value/1e6, gas/1e6)
	}
}

// People near a tank are protected by the vessel rule, whatever the basis.
func TestNearCaseUnderFlightIsAssessedByVessel(t *testing.T) {
	s := sheet(t, read(t, "oxygen"))
	if r := find(t, s, "cylinder/hoop@fill"); r.Rule != "vessel" {
		t.Errorf("near case by %q", r.Rule)
	}
	if r := find(t, s, "cylinder/hoop@boost"); r.Rule != "flight" {
		t.Errorf("clear case by %q", r.Rule)
	}
	if s.People != "clear" || quantity(t, s, "tank.near_pressure") != 0 {
		t.Errorf("people %q, near pressure %g: some checks are not made", s.People, quantity(t, s, "tank.near_pressure"))
	}
}

// The weld zone governs a heat-treated alloy.
func TestWeldZoneGoverns(t *testing.T) {
	r := find(t, sheet(t, read(t, "kerosene")), "cylinder/equivalent@meop")
	if r.Capacity.Value > 40.1e6 {
		t.Errorf("held to %.4g MPa, the TIG zone allows 40.0", r.Capacity.Value/1e6)
	}
}

// The highest ullage pressure of a part is where its worst margin vanishes:
// at it the checks hold, a little above they do not.
func TestPermissiblePressure(t *testing.T) {
	s := sheet(t, read(t, "port-at-rim"))
	for _, row := range s.Permissible {
		if row.Part != "cylinder" {
			continue
		}
		// By hand: 304L, S 113.33 MPa, double butt unexamined 0.70, R 200 mm, wall 5.7 mm,
		// p = S E t/(R + 0.6 t) at the aft seam, the liquid's head under 1 g off it.
		p := 113.333333e6 * 0.70 * 5.7e-3 / (0.2 + 0.6*5.7e-3)
		if !(row.Pressure < p && row.Pressure > p-10e3) {
			t.Errorf("cylinder holds to %.6g Pa, by hand just under %.6g Pa", row.Pressure, p)
		}
		return
	}
	t.Error("no permissible pressure of the cylinder")
}

// The instructive tank fails for the reasons it was made for.
func TestPortAtRimFails(t *testing.T) {
	s := sheet(t, read(t, "port-at-rim"))
	for _, id := range []string{"port.feed/area@meop", "cylinder/hoop@meop"} {
		if got := find(t, s, id).Status(); got != check.NotSatisfied {
			t.Errorf("%s: %v, want not satisfied", id, got)
		}
	}
	if s.Proof != nil {
		t.Error("a proof plan is issued for a tank that yields in it")
	}
}

// Cases have no order: turned round they give the same answers.
func TestOrderOfCasesDoesNotMatter(t *testing.T) {
	src := string(read(t, "demo").Text)
	at := strings.Index(src, "[[case]]")
	mid := at + 1 + strings.Index(src[at+1:], "[[case]]")
	end := strings.Index(src, "[proof]")
	turned := parse(t, "demo.toml", src[:at]+src[mid:end]+src[at:mid]+src[end:])
	a, b := sheet(t, read(t, "demo")), sheet(t, turned)
	for _, r := range a.Checks {
		if other := find(t, b, report.FullID(r)); other.Status() != r.Status() || math.Abs(other.Margin()-r.Margin()) > 1e-12 {
			t.Errorf("%s: margin %g, then %g", report.FullID(r), r.Margin(), other.Margin())
		}
	}
}

// A key whose check is not made yields a check that says so.
func TestUnbuiltKeysAreNotAssessed(t *testing.T) {
	s := sheet(t, changed(t, "demo", "[support]\nat = \"aft\"", "[support]\nat = \"aft\"\n"))
	for _, id := range []string{"tank/life", "tank/leak-before-burst"} {
		if got := find(t, s, id).Status(); got != check.NotAssessed {
			t.Errorf("%s: %v, want not assessed", id, got)
		}
	}
}

// More pressure and thinner walls never raise a margin.
func TestMonotone(t *testing.T) {
	base := find(t, sheet(t, read(t, "demo")), "cylinder/hoop@meop").Margin()
	thin := find(t, sheet(t, changed(t, "demo", "thickness = \"8 mm\"", "thickness = \"7 mm\"")), "cylinder/hoop@meop").Margin()
	more := find(t, sheet(t, changed(t, "demo", "meop = \"25 bar\"", "meop = \"27 bar\"")), "cylinder/hoop@meop").Margin()
	if thin >= base || more >= base {
		t.Errorf("margins %g, thinner %g, more pressure %g", base, thin, more)
	}
}

// The names other programs read.
func TestFixedQuantities(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	for _, key := range []string{"volume", "ullage_volume@meop", "surface_z@burnout", "liquid_mass@pad", "dry_mass", "tank.near_pressure",
		"cylinder.hoop_efficiency", "cylinder.longitudinal_efficiency", "head.aft.depth", "head.forward.volume",
		"port.outlet-1.long_chord", "port.vent.short_chord", "port.fill.obliquity"} {
		if v := quantity(t, s, key); math.IsNaN(v) {
			t.Errorf("%s is not there", key)
		}
	}
	checktest.Close(t, "long chord = OD/sin 45°", quantity(t, s, "port.vent.long_chord"), 0.0269*math.Sqrt2, 1e-9)
	checktest.Close(t, "obliquity", quantity(t, s, "port.vent.obliquity"), math.Pi/4, 1e-9)
	id := regexp.MustCompile(`^(cylinder|head\.(aft|forward)|port\.[a-z][a-z0-9-]*|tank|proof)/[a-z-]+[a-z0-9-]*$`)
	for _, r := range s.Checks {
		if !id.MatchString(r.ID) {
			t.Errorf("id %q is not part/check", r.ID)
		}
	}
}

// Under pressure from outside nothing is called satisfied for want of a demand.
func TestOutsidePressureIsNotSatisfiedByDefault(t *testing.T) {
	s := sheet(t, changed(t, "demo", "name = \"pad\"\nullage_pressure = \"25 bar\"", "name = \"pad\"\nullage_pressure = \"-0.3 bar\""))
	for id, want := range map[string]check.Status{
		"cylinder/hoop@pad": check.NotApplicable, "cylinder/thickness@pad": check.NotApplicable, "head.forward/thickness@pad": check.NotApplicable,
		"port.vent/area@pad": check.Satisfied, "cylinder/external@pad": check.Satisfied, "cylinder/external@meop": check.NotApplicable,
	} {
		if got := find(t, s, id).Status(); got != want {
			t.Errorf("%s: %v, want %v", id, got, want)
		}
	}
	if r := find(t, s, "port.vent/area@pad"); !(r.Demand.Value > 0) {
		t.Errorf("%s: nothing is asked of the port: %v", r.ID, r.Demand)
	}
}

// More liquid than the tank holds is a fault of the file, at its line.
func TestLiquidThatDoesNotFit(t *testing.T) {
	for _, row := range [][2]string{{"liquid_mass = \"300 kg\"", "liquid_mass"}, {"level = \"2 m\"", "level"}} {
		in := changed(t, "demo", "fill = 0.25", row[0])
		_, err := assess.Assess(in, assess.Options{})
		var faults tank.Faults
		if !errors.As(err, &faults) || len(faults) != 1 || !strings.Contains(faults[0].Key, row[1]) || faults[0].Line < 100 || !strings.Contains(faults[0].What, "write at most") {
			t.Errorf("%s: %v", row[0], err)
		}
	}
}

// A proof pressure under the rule's is a fault of the file, at its line; what the fault says
// to write is enough, and the next number below it is not.
func TestProofPressureUnderTheRule(t *testing.T) {
	refused := func(bar string) string {
		_, err := assess.Assess(changed(t, "demo", "[proof]", "[proof]\npressure = \""+bar+" bar\""), assess.Options{})
		if err == nil {
			return ""
		}
		var faults tank.Faults
		if !errors.As(err, &faults) || len(faults) != 1 || faults[0].Key != "proof.pressure" || faults[0].Line != 154 || faults[0].Column != 12 {
			t.Fatalf("%s bar: %v", bar, err)
		}
		return faults[0].What
	}
	what := refused("26")
	enough := regexp.MustCompile(`^26 bar is under ([0-9.]+) bar, which rule "vessel" asks the gauge to show for .*; write at least "([0-9.]+) bar", or leave it out$`).FindStringSubmatch(what)
	if enough == nil {
		t.Fatalf("%q", what)
	}
	if what := refused(enough[2]); what != "" {
		t.Errorf("%s bar, as it says: %s", enough[2], what)
	}
	v, err := strconv.ParseFloat(enough[2], 64)
	if err != nil {
		t.Fatal(err)
	}
	if refused(strconv.FormatFloat(v-0.001, 'f', 3, 64)) == "" {
		t.Errorf("%s bar is more than is needed", enough[2])
	}
}

// A proof with gas is planned only for welds examined over their full length.
func TestGasProofNeedsFullExamination(t *testing.T) {
	s := sheet(t, changed(t, "demo", "method = \"hydrostatic\"\nfluid = \"water\"", "method = \"pneumatic\"\nfluid = \"nitrogen\""))
	if r := find(t, s, "proof/reach@proof"); r.Status() != check.NotAssessed || s.Proof != nil {
		t.Errorf("reach %v, plan %v", r.Status(), s.Proof != nil)
	}
}

func BenchmarkAssess(b *testing.B) {
	in := read(b, "demo")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := assess.Assess(in, assess.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
