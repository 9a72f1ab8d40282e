package assess_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
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
	cold := sheet(t, coldTank(t, "0.99"))
	said := false
	for _, v := range cold.Materials[0].Values {
		said = said || strings.Contains(v.Note, "cold option: minimum times") && strings.Contains(v.Note, "typical")
	}
	if !said {
		t.Error("cold strength does not say on what it rests")
	}
}

// coldTank is the example with strength in the cold, its flight at -100 °C with a share
// of liquid.
func coldTank(t *testing.T, fill string) *tank.Tank {
	return changed(t, "demo", demoPlate, "alloy = \"304\"\nspec = \"ASTM A240\"\ncold_strength = true", "rule = \"vessel\"", "rule = \"flight\"",
		"fill = 0.25\ntemperature = \"20 degC\"", "fill = "+fill+"\ntemperature = \"-100 degC\"")
}

// coldYield returns the yield of the cylinder at -100 °C as the sheet has it [MPa].
func coldYield(t *testing.T, s *report.Sheet) float64 {
	for _, m := range s.Materials {
		for _, v := range m.Values {
			if strings.Contains(m.Used, "cylinder") && v.Quantity.Symbol == "R_p0.2" && strings.Contains(v.Quantity.Name, "-100 °C") {
				return v.Quantity.Value / 1e6
			}
		}
	}
	t.Fatal("no yield at -100 °C")
	return 0
}

// Strength in the cold counts where liquid covers the whole wall, and where gas stands
// on it the minimum of room temperature does. By hand, 304 at 173.15 K between the
// points 150 K, 1.21 and 195 K, 1.157 of its curve: 205 (1.21 − 0.053 · 23.15/45) =
// 242.46 MPa. A curve is typical, and the sheet says so; in
// every other case the metal is warm.
func TestColdStrengthOfDryWalls(t *testing.T) {
	for _, row := range []struct {
		where, fill string
		want        float64 // MPa
		says        string
	}{
		{"under liquid", "0.99", 242.46, "Strength in the cold rests on typical curves, not on minima: cylinder at -100 °C"},
		{"a wall half dry", "0.60", 205, "cold_strength is not used where gas may stand on the wall: aft head at -100 °C, cylinder at -100 °C"},
		{"dry", "0.0", 205, "cold_strength is not used where gas may stand on the wall: aft head at -100 °C, cylinder at -100 °C"},
	} {
		s := sheet(t, coldTank(t, row.fill))
		if got := coldYield(t, s); math.Abs(got-row.want) > 0.01 {
			t.Errorf("%s: %.2f MPa, want %.2f", row.where, got, row.want)
		}
		if !strings.Contains(strings.Join(s.Cautions, "\n"), row.says) {
			t.Errorf("%s: %q", row.where, s.Cautions)
		}
	}
	for _, c := range sheet(t, read(t, "demo")).Cautions {
		if strings.Contains(c, "old_strength") || strings.Contains(c, "in the cold") {
			t.Errorf("without cold_strength: %s", c)
		}
	}
}

// A pad as thick as the wall stands out of the liquid, and is looked up as the wall
// is: both have the strength of room temperature. So has a wall that is dry in one
// case of two at the same temperature.
func TestColdStrengthIsNotShared(t *testing.T) {
	const pad = "weld = { outside_leg = \"7 mm\", inside_leg = \"5 mm\", groove = \"full\" }\n\n[support]"
	padded := strings.Replace(pad, "\n\n[support]", "\npad = { outside_diameter = \"80 mm\", thickness = \"8 mm\", leg = \"5 mm\" }\n\n[support]", 1)
	warmPad := "fill = 0.92\ntemperature = \"20 degC\""
	for where, pair := range map[string][2]string{"pad": {pad, padded}, "two cases": {warmPad, strings.Replace(warmPad, "20", "-100", 1)}} {
		text := string(coldTank(t, "0.99").Text)
		if !strings.Contains(text, pair[0]) {
			t.Fatalf("%s: no %q", where, pair[0])
		}
		in, err := tank.Read("demo.toml", []byte(strings.Replace(text, pair[0], pair[1], 1)), nil)
		if err != nil {
			t.Fatalf("%s: %v", where, err)
		}
		if got := coldYield(t, sheet(t, in)); math.Abs(got-205) > 1e-6 {
			t.Errorf("%s: %.2f MPa", where, got)
		}
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
