package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

const demoPlate = "alloy = \"304L\"\nspec = \"ASTM A240\""

// TestMetalAndContents: a pair that is forbidden fails the tank in words, a
// metal that the vent makes brittle too, whatever the temperature at fill.
func TestMetalAndContents(t *testing.T) {
	oxygen := []string{`fluid = "isopropanol"`, `fluid = "LOX"`, `coldest = "5 degC"`, `coldest = "88 K"`, `warmest = "30 degC"`, `warmest = "95 K"`}
	gas := []string{`fluid = "isopropanol"`, `fluid = "N2O"`, `coldest = "5 degC"`, `coldest = "15 degC"`, `warmest = "30 degC"`, `warmest = "20 degC"`}
	for _, row := range []struct {
		where, alloy string
		contents     []string
		id           string
		status       check.Status
		says         string
	}{
		{"titanium for oxygen", "Ti-6Al-4V", oxygen, "tank/compatibility", check.NotSatisfied, "LOX with Ti-6Al-4V is forbidden: ignites under impact"},
		{"carbon steel for oxygen", "P265GH", oxygen, "tank/brittleness@meop", check.NotSatisfied, "P265GH"},
		{"carbon steel for N2O at 15 °C", "P265GH", gas, "tank/brittleness@meop", check.NotSatisfied, "P265GH"},
		{"stainless for N2O", "304L", gas, "tank/brittleness@meop", check.Satisfied, "304L"},
		{"ethanol by share", "304L", []string{`fluid = "isopropanol"`, `fluid = "ethanol-85"`}, "tank/compatibility", check.Satisfied, "ethanol-85 with 304L is usual"},
	} {
		s := sheet(t, changed(t, "demo", append([]string{demoPlate, `alloy = "` + row.alloy + `"`}, row.contents...)...))
		r := find(t, s, row.id)
		if r.Status() != row.status || !strings.Contains(r.Demand.Name, row.says) {
			t.Errorf("%s: %v, %q", row.where, r.Status(), r.Demand.Name)
		}
		if row.status == check.NotSatisfied && s.Verdict != check.NotSatisfied {
			t.Errorf("%s: the sheet is %v", row.where, s.Verdict)
		}
	}
}

// TestMetalOutsideItsTable: what the tables do not cover is not assessed, each
// reason said once and with what there is.
func TestMetalOutsideItsTable(t *testing.T) {
	for _, row := range []struct {
		where string
		pairs []string
		id    string
		says  string
	}{
		{"thickness", []string{demoPlate, "alloy = \"6061-T6\"\nspec = \"EN 485-2\"", `thickness = "8 mm"`, `thickness = "45 mm"`}, "cylinder/hoop@meop", "45 mm is outside every row of minima (EN 485-2"},
		{"specification", []string{`spec = "ASTM A240"`, `spec = "EN 9999"`}, "cylinder/hoop@meop", `no row of minima is called spec "EN 9999"`},
		{"typical only", []string{demoPlate, `alloy = "2195-T8"`}, "cylinder/hoop@meop", "only typical values are published"},
		{"hot without a curve", []string{demoPlate, `alloy = "7020-T6"`, `temperature = "20 degC"`, `temperature = "60 degC"`}, "cylinder/hoop@burnout", "no curve of strength over temperature reaches 60 °C"},
		{"5083 over 65 °C", []string{demoPlate, `alloy = "5083-O"`, `temperature = "20 degC"`, `temperature = "70 degC"`}, "cylinder/hoop@burnout", "the metal is at 70 °C: not above 65 degC"},
	} {
		r := find(t, sheet(t, changed(t, "demo", row.pairs...)), row.id)
		said := report.Remark(r)
		if r.Status() != check.NotAssessed || strings.Count(said, row.says) != 1 || strings.Contains(said, "\n") {
			t.Errorf("%s: %v, %q", row.where, r.Status(), said)
		}
	}
}

// TestMaterialsPage: every value has its source and how; a recalled one asks to
// be confirmed; an allowable shows its terms and which of them governs; cold
// strength says that its ratio is typical.
func TestMaterialsPage(t *testing.T) {
	for _, name := range []string{"demo", "kerosene", "oxygen"} {
		for _, m := range sheet(t, read(t, name)).Materials {
			if m.Row == "" || len(m.Values) == 0 {
				t.Errorf("%s: material %s shows nothing", name, m.Name)
			}
			allowables := 0
			for _, v := range m.Values {
				if v.Source.Doc == "" || v.Source.How == check.Unstated {
					t.Errorf("%s: %s of %s has no source", name, v.Quantity.Name, m.Name)
				}
				if v.Source.How == check.Memory && v.Quantity.Symbol != "S" && !strings.Contains(v.Note, "confirm against the certificate") {
					t.Errorf("%s: %s of %s is recalled and does not say so: %q", name, v.Quantity.Name, m.Name, v.Note)
				}
				if v.Quantity.Symbol == "S" {
					allowables++
					if !strings.Contains(v.Note, "least of ") || !strings.Contains(v.Note, "governs: ") {
						t.Errorf("%s: %s of %s without its terms: %q", name, v.Quantity.Name, m.Name, v.Note)
					}
				}
			}
			if allowables == 0 {
				t.Errorf("%s: no allowable of %s", name, m.Name)
			}
		}
	}
	cold := sheet(t, changed(t, "demo", demoPlate, "alloy = \"304\"\nspec = \"ASTM A240\"\ncold_strength = true", `temperature = "20 degC"`, `temperature = "-100 degC"`))
	said := false
	for _, v := range cold.Materials[0].Values {
		said = said || strings.Contains(v.Note, "cold option: minimum times") && strings.Contains(v.Note, "typical")
	}
	if !said {
		t.Error("cold strength does not say on what it rests")
	}
}

// An own metal that does not say how far it stretches is no ductile one: 3 % is
// refused, and what nobody wrote is not taken as more.
func TestElongationIsAskedFor(t *testing.T) {
	steel := func(elongation string) string {
		return "family = \"austenitic\"\nyield = \"200 MPa\"\nultimate = \"500 MPa\"\nelastic_modulus = \"195 GPa\"\npoisson = 0.3\n" +
			"density = \"7900 kg/m3\"\nexpansion = \"16e-6 1/K\"\n" + elongation + "source = \"invented\""
	}
	for written, status := range map[string]check.Status{"": check.NotAssessed, "elongation = 0.03\n": check.NotAssessed, "elongation = 0.40\n": check.Satisfied} {
		r := find(t, sheet(t, changed(t, "life", demoPlate, steel(written))), "tank/brittleness@meop")
		if r.Status() != status || written == "" && !strings.Contains(r.Reason(), "write elongation from its certificate") {
			t.Errorf("%q: %v, %s", written, r.Status(), r.Reason())
		}
	}
}
