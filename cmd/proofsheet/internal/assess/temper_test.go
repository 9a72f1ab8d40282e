package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

const (
	lifeAlloy   = "[material.plate]\nalloy = \"304L\"\nspec = \"ASTM A240\""
	lifePressed = "forming = \"pressed\"\n"
	ownSteel    = "elastic_modulus = \"195 GPa\"\npoisson = 0.3\ndensity = \"7900 kg/m3\"\nexpansion = \"16e-6 1/K\"\nelongation = 0.15\nwelded_yield = \"350 MPa\"\nwelded_ultimate = \"500 MPa\"\nsource = \"certificate (invented)\""
	ownHard     = "[material.plate]\nfamily = \"ferritic\"\nyield = \"700 MPa\"\nultimate = \"820 MPa\"\n" + ownSteel
	ownCold     = "[material.plate]\nfamily = \"austenitic\"\nyield = \"517 MPa\"\nultimate = \"862 MPa\"\n" + ownSteel
	ownSoft     = "[material.plate]\nfamily = \"ferritic\"\nyield = \"355 MPa\"\nultimate = \"520 MPa\"\n" + ownSteel
)

// A head that was pressed, spun, or made nobody says how, does not have the temper
// of the sheet it was made of unless a certificate tells of a treatment that
// restores it; cold work none restores, and any takes away.
func TestTemperOfFormedHeads(t *testing.T) {
	alloy := func(name string) string { return "[material.plate]\nalloy = \"" + name + "\"" }
	treated := func(words string) string { return lifePressed + "heat_treated = \"" + words + "\"\n" }
	const soft, kept = "", "kept"
	for _, row := range []struct {
		where, metal, made string
		says               string // empty: the head is assessed; kept: and the treatment is cautioned of
	}{
		{"annealed, pressed", lifeAlloy, lifePressed, soft},
		{"annealed, nobody says how", lifeAlloy, "", soft},
		{"annealed and annealed again", lifeAlloy, treated("solution annealed"), kept},
		{"quarter hard, annealed", alloy("304-quarter-hard"), treated("solution annealed at 1050 degC"), `alloy = "304" for the head`},
		{"quarter hard, pressed", alloy("304-quarter-hard"), lifePressed, `alloy = "304" for the head`},
		{"quarter hard, nobody says how", alloy("304-quarter-hard"), "", `alloy = "304" for the head`},
		{"quarter hard of 301", alloy("301-quarter-hard"), treated("annealed"), "own values of the annealed metal"},
		{"quarter hard, machined", alloy("304-quarter-hard"), "forming = \"machined\"\n", soft},
		{"H116, annealed", alloy("5083-H116"), treated("annealed"), `alloy = "5083-O"`},
		{"H32, annealed", alloy("5052-H32"), treated("annealed"), `alloy = "5052-O"`},
		{"H116 of 5086, pressed", alloy("5086-H116"), lifePressed, `alloy = "5086-O"`},
		{"T87, aged again", alloy("2219-T87"), treated("solution treated and aged"), `alloy = "2219-T62"`},
		{"T6, aged", alloy("6061-T6"), treated("solution treated and aged"), kept},
		{"T6, in other words", alloy("6061-T6"), treated("Zeugnis 12"), kept},
		{"T6, pressed", alloy("6061-T6"), lifePressed, "write heat_treated"},
		{"T6, annealed", alloy("6061-T6"), treated("annealed at 415 degC"), "softens it"},
		{"T6, nobody says how", alloy("6061-T6"), "", "forming is not written"},
		{"T6, machined", alloy("6061-T6"), "forming = \"machined\"\n", soft},
		{"own steel, quenched", ownHard, lifePressed, "write heat_treated"},
		{"own steel, quenched after pressing", ownHard, treated("quenched and tempered"), kept},
		{"own steel, normalised", ownSoft, lifePressed, soft},
		{"own austenitic, hard, annealed", ownCold, treated("annealed"), "own values of the annealed metal"},
		{"4130 quenched and tempered", "[material.plate]\nalloy = \"4130\"\nproduct = \"quenched\"", lifePressed, "write heat_treated"},
		{"4130 normalised", "[material.plate]\nalloy = \"4130\"\nproduct = \"normalised\"", lifePressed, soft},
	} {
		s := sheet(t, changed(t, "life", "thickness = \"5 mm\"", "thickness = \"4 mm\"", lifeAlloy, row.metal, lifePressed, row.made))
		r := find(t, s, "head.forward/membrane@meop")
		said := report.Remark(r)
		refused := strings.Contains(said, "temper") || strings.Contains(said, "cold work") || strings.Contains(said, "softens")
		if row.says != soft && row.says != kept && (r.Status() != check.NotAssessed || !strings.Contains(said, row.says)) || (row.says == soft || row.says == kept) && refused {
			t.Errorf("%s: %v, %q", row.where, r.Status(), said)
		}
		if cautioned := slices.ContainsFunc(s.Cautions, func(c string) bool { return strings.Contains(c, "Forward head: heat-treated") }); cautioned != (row.says == kept) {
			t.Errorf("%s: cautions %q", row.where, s.Cautions)
		}
	}
}

// A cone is rolled without losing its temper; the knuckle of a toricone is not.
func TestTemperOfRolledCones(t *testing.T) {
	const hemisphere = "[head.forward]\nshape = \"hemisphere\"\n"
	rolled := func(shape, made string) report.Sheet {
		return *sheet(t, changed(t, "life", lifeAlloy, "[material.plate]\nalloy = \"6061-T6\"", hemisphere, "[head.forward]\n"+shape,
			"forming_thinning = 0.10\nforming = \"pressed\"\nmaterial = \"plate\"\nseam = \"girth\"\nsegment_seam = \"none\"\n\n[[port]]",
			made+"material = \"plate\"\nseam = \"girth\"\nsegment_seam = \"none\"\n\n[[port]]"))
	}
	for _, row := range []struct {
		where, shape, made string
		lost               bool
	}{
		{"cone, rolled", "shape = \"cone\"\nhalf_angle = \"30 deg\"\n", "forming = \"rolled\"\n", false},
		{"cone, nothing said", "shape = \"cone\"\nhalf_angle = \"30 deg\"\n", "", false},
		{"cone, spun", "shape = \"cone\"\nhalf_angle = \"30 deg\"\n", "forming = \"spun\"\n", true},
		{"toricone, rolled", "shape = \"toricone\"\nhalf_angle = \"30 deg\"\nknuckle_radius = \"45 mm\"\nforming_thinning = 0.10\n", "forming = \"rolled\"\n", true},
	} {
		s := rolled(row.shape, row.made)
		said := report.Remark(find(t, &s, "head.forward/membrane@meop"))
		if strings.Contains(said, "does not keep that temper") != row.lost {
			t.Errorf("%s: %q", row.where, said)
		}
	}
}

// A plate has a long seam whatever the file says where the file itself names a plate: not
// assessed. Where only the alloy is named the cylinder is the tube that a missing seam
// makes it, and page 1 says whose minima stand in. A tube of 4130 is one, as are own
// values.
func TestPlateIsNoSeamlessTube(t *testing.T) {
	const seam = "long_seam = \"long\"\nlong_seam_clock = \"180 deg\""
	for _, row := range []struct {
		where, metal  string
		made, caution bool
	}{
		{"plate by its spec", "[material.plate]\nalloy = \"304L\"\nspec = \"ASTM A240\"", false, false}, {"the alloy alone", "[material.plate]\nalloy = \"304L\"", true, true},
		{"tube", "[material.plate]\nalloy = \"4130\"\nproduct = \"normalised\"", true, false}, {"own values", ownSoft, true, false},
		{"extruded", "[material.plate]\nalloy = \"6061-T6\"", true, false}, {"sheet", "[material.plate]\nalloy = \"6061-T6\"\nspec = \"EN 485-2\"", false, false},
	} {
		s := sheet(t, changed(t, "life", lifeAlloy, row.metal, seam, "long_seam = \"none\""))
		for _, id := range []string{"cylinder/hoop@meop", "cylinder/thickness@meop", "cylinder/longitudinal@meop"} {
			r := find(t, s, id)
			if made := r.Status() != check.NotAssessed; made != row.made || !made && !strings.Contains(r.Reason(), "or the long seam") {
				t.Errorf("%s, %s: %v, %s", row.where, id, r.Status(), r.Reason())
			}
		}
		if e := quantity(t, s, "cylinder.hoop_efficiency"); (e == 1) != row.made {
			t.Errorf("%s: E = %g", row.where, e)
		}
		if got := find(t, s, "cylinder/hoop@meop").Capacity.Value; row.where == "extruded" && math.Abs(got/(260e6/3.5)-1) > 1e-9 { // its own 260, not 290 of sheet
			t.Errorf("extruded: %g Pa", got)
		}
		if got := strings.Contains(strings.Join(s.Cautions, " "), "stand in for the tube's"); got != row.caution {
			t.Errorf("%s: cautions %q", row.where, s.Cautions)
		}
	}
}
