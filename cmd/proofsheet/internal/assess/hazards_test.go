package assess_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

// planless fails the test where a proof plan is issued.
func planless(t *testing.T, what string, s *report.Sheet) {
	t.Helper()
	if s.Proof != nil {
		t.Errorf("%s: a proof plan is issued", what)
	}
	said := false
	for _, n := range s.Notes {
		said = said || strings.HasPrefix(n, "No proof plan is issued")
	}
	if !said {
		t.Errorf("%s: no note says why there is no plan", what)
	}
}

// A plan goes out only when everything that is checked at proof holds.
func TestNoPlanOnAWallThatFailsInTheTest(t *testing.T) {
	planless(t, "knuckle too thin", sheet(t, changed(t, "kerosene", "thickness = \"6 mm\"", "thickness = \"4 mm\"")))

	cold := sheet(t, changed(t, "demo", "alloy = \"304L\"\nspec = \"ASTM A240\"", "alloy = \"P265GH\"", "temperature = \"15 degC\"", "temperature = \"-60 degC\"",
		"examination = \"spot\"", "examination = \"full\"", "method = \"hydrostatic\"\nfluid = \"water\"", "method = \"pneumatic\"\nfluid = \"nitrogen\""))
	planless(t, "brittle metal in a cold gas test", cold)

	unknown := sheet(t, changed(t, "demo", "fluid = \"water\"", "fluid = \"ethanol\"", "alloy = \"304L\"\nspec = \"ASTM A240\"", "alloy = \"2219-T87\""))
	planless(t, "weld zone without strength", unknown)
}

// A head with pressure on its convex side is not waved through the proof; one of 12 mm is
// past the knee of UG-33 and stands MEOP alone.
func TestInwardHeadHasNoPlan(t *testing.T) {
	s := sheet(t, changed(t, "oxygen", "[head.forward]\nshape = \"ellipsoid\"", "[head.forward]\nbulge = \"inward\"\nshape = \"ellipsoid\"", "thickness = \"6 mm\"", "thickness = \"12 mm\""))
	planless(t, "inward head", s)
	for id, want := range map[string]check.Status{"head.forward/external@meop": check.Satisfied, "head.forward/external@proof": check.NotSatisfied} {
		if got := find(t, s, id); got.Status() != want || !strings.Contains(got.Note, "convex side") {
			t.Errorf("%s: %v, %s %s", id, got.Status(), got.Note, got.Reason())
		}
	}
}

// A flat head is held in bending at proof.
func TestFlatHeadIsHeldAtProof(t *testing.T) {
	flat := "[head.forward]\nshape = \"flat\"\ncorner_factor = 0.33\nsource = \"UG-34\"\nthickness = \"10 mm\"\nunder_tolerance = \"0.3 mm\"\nmaterial = \"plate\"\nseam = \"girth\"\nsegment_seam = \"none\"\n\n[[port]]"
	src := string(read(t, "port-at-rim").Text)
	a, b := strings.Index(src, "[head.forward]"), strings.Index(src, "[[port]]")
	s := sheet(t, parse(t, "flat.toml", src[:a]+flat+src[b+len("[[port]]"):]))
	planless(t, "flat head of 10 mm", s)
	if got := find(t, s, "head.forward/thickness@meop").Status(); got != check.NotSatisfied {
		t.Errorf("thickness: %v", got)
	}
}

// Under vacuum liquid never makes the dry wall look safer.
func TestVacuumIsJudgedOnTheDryWall(t *testing.T) {
	demand := func(fill string) float64 {
		s := sheet(t, changed(t, "oxygen", "ullage_pressure = \"12 bar\"", "ullage_pressure = \"-0.9 bar\"", "fill = 0.90", "fill = "+fill,
			"axial_compression = \"8 kN\"\nbending_moment = \"0.8 kN m\"\n", ""))
		return find(t, s, "cylinder/equivalent@boost").Demand.Value
	}
	if dry, wet := demand("0.0"), demand("0.60"); wet < 0.999*dry {
		t.Errorf("equivalent stress dry %g Pa, with liquid %g Pa", dry, wet)
	}
}

// A girth seam whose place is not said may be at the port.
func TestGirthSeamWithoutStationsMayBeAtThePort(t *testing.T) {
	onCylinder := []string{"on = \"forward\"\naxis = \"parallel\"\nradius = \"110 mm\"\nclock = \"60 deg\"", "on = \"cylinder\"\naxis = \"normal\"\nstation = \"300 mm\"\nclock = \"60 deg\"",
		"[joint.girth]\nkind = \"double butt\"\nexamination = \"spot\"", "[joint.girth]\nkind = \"double butt\""}
	capacity := func(pairs ...string) float64 {
		return find(t, sheet(t, changed(t, "demo", append(onCylinder, pairs...)...)), "port.vent/area@meop").Capacity.Value
	}
	at := capacity("girth_stations = [\"600 mm\"]", "girth_stations = [\"300 mm\"]")
	unsaid := capacity("girth_stations = [\"600 mm\"]", "")
	if unsaid > at {
		t.Errorf("capacity with the seam at the port %g, unsaid %g", at, unsaid)
	}
}

// A port's weld has no stated process, so the slower one softens its zone.
func TestPortZoneTakesTheSlowerProcess(t *testing.T) {
	s := sheet(t, changed(t, "kerosene", "process = \"tig\"", "process = \"mig\""))
	if r := find(t, s, "head.aft/membrane@boost"); r.Capacity.Value > 92.1e6 {
		t.Errorf("held to %.4g MPa, the TIG zone of the port has a yield of 92", r.Capacity.Value/1e6)
	}
}

// The near pressure asks every check that the tank has.
func TestPermissiblePressureCountsNeighboursAndHeat(t *testing.T) {
	part := func(s *report.Sheet, name string) float64 {
		for _, row := range s.Permissible {
			if row.Part == name {
				return row.Pressure
			}
		}
		return math.NaN()
	}
	if p := part(sheet(t, changed(t, "demo", "clock = \"300 deg\"", "clock = \"75 deg\"")), "port.fill"); p > 0 {
		t.Errorf("ports that touch: %g Pa", p)
	}
	cool, hot := part(sheet(t, read(t, "demo")), "cylinder"), part(sheet(t, changed(t, "demo", "fill = 0.92\ntemperature = \"20 degC\"", "fill = 0.92\ntemperature = \"170 degC\"")), "cylinder")
	if !(hot < 0.9*cool) {
		t.Errorf("a pad case at 170 degC leaves %g Pa of %g Pa", hot, cool)
	}
}

// In vacuum the vapour pressure acts in full.
func TestVapourPressureInFlight(t *testing.T) {
	s := sheet(t, changed(t, "demo", "fluid = \"isopropanol\"\ncoldest = \"5 degC\"\nwarmest = \"30 degC\"", "fluid = \"N2O\"\ntemperature = \"20 degC\"",
		"meop = \"25 bar\"", "meop = \"50 bar\"", "relief = \"22.5 bar\"", "relief = \"45 bar\""))
	if got := find(t, s, "tank/vapour").Status(); got != check.NotSatisfied {
		t.Errorf("50.5 bar of vapour in a 50 bar tank that flies: %v", got)
	}
}

// A liquefied gas gets as warm as the metal that a case writes around it: propane at
// 40 °C has 13.7 bar absolute, at 20 °C 8.36 bar (both by its equation of state, as
// published), against MEOP 12 bar and 1.01 bar outside; at 70 °C its table has ended,
// N2O has no liquid from 36.4 °C on. What a case without liquid, or one without a
// temperature, has says nothing, nor does the dry wall over liquid oxygen.
func TestVapourPressureOfHotMetal(t *testing.T) {
	propane := []string{"fluid = \"ethanol-85\"", "fluid = \"propane\""}
	hot := func(T string) []string {
		return append([]string{"ullage_pressure = \"12 bar\"\n", "ullage_pressure = \"12 bar\"\ntemperature = \"" + T + "\"\n"}, propane...)
	}
	for _, row := range []struct {
		where  string
		pairs  []string
		status check.Status
		bar    float64 // demand, absolute; 0: not asked
	}{
		{"nothing written", propane, check.Satisfied, 8.36},
		{"40 °C", hot("40 degC"), check.NotSatisfied, 13.7},
		{"cooler than the liquid", hot("10 degC"), check.Satisfied, 8.36},
		{"70 °C", hot("70 degC"), check.NotAssessed, 0},
		{"40 °C and empty", append(hot("40 degC"), "fill = 0.90", "fill = 0.0"), check.Satisfied, 8.36},
		{"N2O at 45 °C", []string{"fluid = \"ethanol-85\"", "fluid = \"N2O\"", "12 bar", "55 bar", "10.5 bar", "45 bar", "ullage_pressure = \"55 bar\"\n", "ullage_pressure = \"55 bar\"\ntemperature = \"45 degC\"\n"}, check.NotAssessed, 0},
	} {
		r := find(t, sheet(t, changed(t, "life", row.pairs...)), "tank/vapour")
		if r.Status() != row.status || row.bar > 0 && math.Abs(r.Demand.Value/1e5-row.bar) > 0.05 {
			t.Errorf("%s: %v at %.4g bar: %s", row.where, r.Status(), r.Demand.Value/1e5, report.Remark(r))
		}
	}
	if got := find(t, sheet(t, read(t, "oxygen")), "tank/vapour"); got.Status() != check.Satisfied || got.Inputs[0].Value != 90 {
		t.Errorf("oxygen under a dry wall at 20 degC: %v at %g K", got.Status(), got.Inputs[0].Value)
	}
}

// The history counts too, from its rows with liquid.
func TestVapourPressureOfHotMetalInFlight(t *testing.T) {
	in := changed(t, "flight", "fluid = \"isopropanol\"", "fluid = \"propane\"")
	for i := range in.Flight.States { // propane is lighter: half the mass fits
		half := *in.Flight.States[i].LiquidMass / 2
		in.Flight.States[i].LiquidMass = &half
	}
	if got := find(t, sheet(t, in), "tank/vapour").Inputs[0].Value; got != 293.15 {
		t.Errorf("%g K without a temperature in the history", got)
	}
	cool, hot := 293.15, 313.15
	for i := range in.Flight.States {
		in.Flight.States[i].Temperature = &cool
	}
	in.Flight.States[3].Temperature = &hot
	if got := find(t, sheet(t, in), "tank/vapour").Inputs[0].Value; got != hot {
		t.Errorf("%g K, want the hottest of the history", got)
	}
}

// Own values may come from a temper that forming takes away.
func TestOwnTemperIsLostToo(t *testing.T) {
	s := sheet(t, changed(t, "kerosene", "alloy = \"6061-T6\"", "family = \"aluminium\"\nyield = \"276 MPa\"\nultimate = \"310 MPa\"\nwelded_yield = \"105 MPa\"\nwelded_ultimate = \"165 MPa\"\ndensity = \"2700 kg/m3\"\nelastic_modulus = \"69 GPa\"\npoisson = 0.33\nsource = \"certificate (invented)\"",
		"heat_treated = \"solution treated and aged after spinning, certificate HT-7 (invented)\"\n", ""))
	if got := find(t, s, "head.aft/membrane@meop").Status(); got != check.NotAssessed {
		t.Errorf("membrane of a spun head: %v", got)
	}
}

// The factors printed are those used.
func TestPrintedFactorsAreThoseUsed(t *testing.T) {
	s := sheet(t, changed(t, "oxygen", "rule = \"flight\"", "rule = \"flight\"\nproof_factor = 1.25\nsource = \"range rule (invented)\""))
	for _, b := range s.Basis {
		if b.Name == "flight: yield_factor" && b.Value != "1.389" {
			t.Errorf("yield factor %s, want 1.25/0.90", b.Value)
		}
	}
}

// A load that relieves the wall may be absent, unless the case says that it is
// always there.
func TestRelievingLoadMayBeAbsent(t *testing.T) {
	demand := func(pairs ...string) float64 {
		return find(t, sheet(t, changed(t, "demo", pairs...)), "cylinder/longitudinal@pad").Demand.Value
	}
	alone := demand("axial_compression = \"2 kN\"\nground", "ground")
	pressed := demand("axial_compression = \"2 kN\"\nground", "axial_compression = \"100 kN\"\nground")
	present := demand("axial_compression = \"2 kN\"\nground", "axial_compression = \"100 kN\"\npresent = true\nground")
	if pressed < 0.999*alone || present >= 0.9*alone {
		t.Errorf("axial stress %g Pa alone, %g with a compression, %g with one that is always there", alone, pressed, present)
	}
}

// A forbidden pair is not hidden behind a pair that nobody has recorded.
func TestForbiddenPairIsNotSatisfied(t *testing.T) {
	s := sheet(t, changed(t, "oxygen", "[material.plate]", "[material.fitting]\nalloy = \"Ti-6Al-4V\"\n\n[material.plate]"))
	if r := find(t, s, "tank/compatibility"); r.Status() != check.NotSatisfied || !strings.Contains(r.Note, "Ti-6Al-4V") {
		t.Errorf("titanium with liquid oxygen: %v, %s", r.Status(), r.Note)
	}
}

// Whoever pumps must not take the printed volumes for the limit of yield.
func TestPredictedVolumesAreNotALicence(t *testing.T) {
	s := sheet(t, read(t, "oxygen"))
	if s.Proof == nil || math.IsNaN(s.Proof.Injected) {
		t.Fatal("the tank has no predicted readings")
	}
	if all := strings.Join(s.Proof.Limits, " "); !strings.Contains(all, "the straight line through the earlier ones") || !strings.Contains(all, "the test is failed") {
		t.Errorf("nothing says what the stop band is laid around: %s", all)
	}
}

// What the people at the test need stands in the plan: what is never passed, how fast, what stops and
// fails, drift by temperature; that no distance covers what flies.
func TestPlanSaysWhatStopsTheTest(t *testing.T) {
	water := sheet(t, read(t, lived)).Proof
	for _, want := range []string{"never shows more than 1.591 MPa", "not faster than 0.1575 MPa a minute", "for 10 min without a break", "air up to 0.5 % of the volume (388.", "bleed, or find out, and begin again",
		"more than 5 %", "at most 7.87", "is known within 0.02 K (standard uncertainty)", "up to 2 % of its growth", "over 10 %", "A wet weld is a failure"} {
		if all := strings.Join(water.Limits, " "); !strings.Contains(all, want) {
			t.Errorf("%q is missing: %s", want, all)
		}
	}
	if len(water.Drifts) != 6 || !(water.Drifts[0].Drift < 0 && water.Drifts[5].Drift > water.Drifts[2].Drift) { // below 7 °C a warming steel tank loses pressure
		t.Errorf("drifts: %+v", water.Drifts)
	}
	if all := strings.Join(water.Notes, " "); !strings.Contains(all, "not covered by any number here") {
		t.Errorf("water: %s", all)
	}
	gas := sheet(t, changed(t, lived, "method = \"hydrostatic\"\nfluid = \"water\"\norientation = \"upright\"", "method = \"pneumatic\"\nfluid = \"nitrogen\"")).Proof
	all := strings.Join(append(gas.Notes, gas.Limits...), " ")
	for _, want := range []string{"constant volume", "with heat from outside", "blast alone", "fly farther and are not covered", "leaves at 151 m/s", "absolute pressure over absolute temperature"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is missing: %s", want, all)
		}
	}
	if st := gas.Steps[8]; st.Name != "examination" || !math.IsNaN(st.InjectedVolume) || !(st.HoopStrain > 0) {
		t.Errorf("gas: %+v", st)
	}
}
