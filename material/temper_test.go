package material_test

import (
	"testing"

	"proofsheet/material"
)

// The tempers by hand, from the words of each alloy: T6, T62 are solution treated and
// aged, T8 and H tempers and quarter hard hold cold work, HT-125 is quenched and
// tempered, all else is annealed or normalised.
func TestTemperOfEveryAlloy(t *testing.T) {
	want := map[string]material.Temper{
		"301-quarter-hard": material.ColdWorked, "304-quarter-hard": material.ColdWorked,
		"5083-H116": material.ColdWorked, "5086-H116": material.ColdWorked, "5052-H32": material.ColdWorked, "2219-T87": material.ColdWorked,
		"6061-T6": material.HeatTreated, "6082-T6": material.HeatTreated, "7020-T6": material.HeatTreated, "2219-T62": material.HeatTreated,
	}
	for _, a := range material.Alloys() {
		if a.Name == "2195-T8" { // it has typical values only, and so no row
			continue
		}
		w, ok := want[a.Name]
		if !ok {
			w = material.Annealed
		}
		if got, err := (material.Query{Alloy: a.Name, Thickness: 0.003}).Temper(); err != nil || got != w {
			t.Errorf("%s, %s: temper %d, want %d (%v)", a.Name, a.Temper, got, w, err)
		}
	}
	if got, err := (material.Query{Alloy: "4130", Product: "quenched", Thickness: 0.003}).Temper(); err != nil || got != material.HeatTreated {
		t.Errorf("4130 quenched and tempered: %d, %v", got, err)
	}
	for _, q := range []material.Query{{Alloy: "unobtainium", Thickness: 0.003}, {Alloy: "2195-T8", Thickness: 0.003}} {
		if got, err := q.Temper(); err == nil || got != material.UnknownTemper {
			t.Errorf("%s: %d, %v", q.Alloy, got, err)
		}
	}
}

// Own steel above what annealing or normalising leaves, 300 and 460 MPa, is hard.
func TestTemperOfOwnMetal(t *testing.T) {
	for _, row := range []struct {
		family string
		yield  float64 // [Pa]
		want   material.Temper
	}{
		{material.Austenitic, 300e6, material.Annealed}, {material.Austenitic, 301e6, material.ColdWorked},
		{material.Ferritic, 460e6, material.Annealed}, {material.Ferritic, 461e6, material.HeatTreated},
		{material.Aluminium, 100e6, material.HeatTreated}, {material.Titanium, 830e6, material.HeatTreated},
		{"", 100e6, material.UnknownTemper},
	} {
		if got := (material.Own{Family: row.family, Yield: row.yield}).Temper(); got != row.want {
			t.Errorf("%s of %g Pa: %d, want %d", row.family, row.yield, got, row.want)
		}
	}
}

func TestSofterAlloy(t *testing.T) {
	for hard, want := range map[string]string{
		"304-quarter-hard": "304", "5083-H116": "5083-O", "5086-H116": "5086-O", "5052-H32": "5052-O", "2219-T87": "2219-T62",
		"301-quarter-hard": "", "2195-T8": "", "": "",
	} {
		if got := material.SofterAlloy(hard); got != want {
			t.Errorf("%s: %q, want %q", hard, got, want)
		}
	}
}

// Only rows of tube, extrusion and bar are of a product without a long seam.
func TestSeamless(t *testing.T) {
	for _, row := range []struct {
		q  material.Query
		ok bool
	}{
		{query("304L", "A240", "", 3), false}, {query("304L", "", "", 3), false}, {query("304L", "EN 10028", "", 3), false},
		{query("6061-T6", "EN 485", "", 3), false}, {query("6061-T6", "", "", 3), true}, {query("6061-T6", "", "", 100), false}, {query("unobtainium", "", "", 3), false},
		{query("4130", "", "normalised", 3), true}, {query("Ti-6Al-4V", "", "bar", 3), true}, {query("Ti-6Al-4V", "4911", "sheet", 3), false},
	} {
		if err := row.q.Seamless(); (err == nil) != row.ok {
			t.Errorf("%+v: %v", row.q, err)
		}
	}
}
