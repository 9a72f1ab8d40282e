package material_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check/checktest"
)

// TestRoomMinima holds the room-temperature minima against the tables they come
// from: ASTM A240, EN 10028-7, EN 485-2, the Aluminum Design Manual Table
// 3.3-1M, MMPDS-01 and -11 and EN 10025-2 (copies read), others recalled.
func TestRoomMinima(t *testing.T) {
	for _, row := range []struct {
		where, alloy, spec, product string
		t                           float64 // mm
		yield, proof1, ultimate     float64 // MPa; 0: none
		elongation                  float64 // %; 0: none
	}{
		{"A240 304", "304", "ASTM A240", "", 6, 205, 0, 515, 40},
		{"EN 10028-7 C 1.4301", "304", "EN 10028-7", "cold", 8, 230, 260, 540, 45},
		{"EN 10028-7 P 1.4301", "304", "EN 10028-7", "plate", 75, 210, 250, 520, 45},
		{"MMPDS-01 304 sheet, L", "304", "MMPDS-01", "", 3, 179, 0, 503, 0},
		{"A240 304L", "304L", "A240", "", 6, 170, 0, 485, 40},
		{"EN 10028-7 C 1.4307", "304L", "EN 10028-7", "(C)", 6, 220, 250, 520, 45},
		{"EN 10028-7 P 1.4307", "304L", "EN 10028-7", "(P)", 6, 200, 240, 500, 45},
		{"A240 316L", "316L", "A240", "", 6, 170, 0, 485, 40},
		{"EN 10028-7 C 1.4404", "316L", "EN 10028-7", "(C)", 6, 240, 270, 530, 40},
		{"EN 10028-7 P 1.4404", "316L", "EN 10028-7", "(P)", 6, 220, 260, 520, 45},
		{"A240 321", "321", "A240", "", 6, 205, 0, 515, 40},
		{"EN 10028-7 C 1.4541", "321", "EN 10028-7", "(C)", 6, 220, 250, 520, 40},
		{"EN 10028-7 P 1.4541", "321", "EN 10028-7", "(P)", 6, 200, 240, 500, 40},
		{"A666 301", "301-quarter-hard", "", "", 1, 517, 0, 862, 25},
		{"A666 304", "304-quarter-hard", "", "", 1, 517, 0, 862, 10},
		{"A240 S32205", "2205", "", "", 6, 450, 0, 655, 25},
		{"EN 485-2 6061-T6", "6061-T6", "EN 485-2", "", 3, 240, 0, 290, 6},
		{"EN 485-2 6082-T6 to 6", "6082-T6", "", "", 6, 260, 0, 310, 6},
		{"EN 485-2 6082-T6 over 6", "6082-T6", "", "", 6.01, 255, 0, 300, 9},
		{"EN 485-2 6082-T6 over 12.5", "6082-T6", "", "", 20, 240, 0, 295, 8},
		{"EN 485-2 5083-O", "5083-O", "EN 485-2", "", 50, 125, 0, 275, 11},
		{"EN 485-2 5083-O over 50", "5083-O", "", "", 60, 115, 0, 270, 14},
		{"EN 485-2 5083-H116", "5083-H116", "", "", 10, 215, 0, 305, 8},
		{"EN 485-2 5083-H116 over 40", "5083-H116", "", "", 60, 200, 0, 285, 10},
		{"ADM 5086-H116", "5086-H116", "", "", 6, 195, 0, 275, 0},
		{"ADM 5086-O", "5086-O", "", "", 6, 95, 0, 240, 0},
		{"ADM 5052-H32", "5052-H32", "", "", 6, 160, 0, 215, 0},
		{"ADM 5052-O", "5052-O", "", "", 6, 65, 0, 170, 0},
		{"MIL-HDBK-5J 2219-T87, A", "2219-T87", "", "", 6, 352, 0, 441, 6},
		{"MIL-HDBK-5J 2219-T62, A", "2219-T62", "", "", 6, 248, 0, 372, 7},
		{"EN 485-2 7020-T6", "7020-T6", "", "", 6, 280, 0, 350, 7},
		{"MMPDS-01 Ti bar, S", "Ti-6Al-4V", "MMPDS-01", "", 6, 862, 0, 931, 0},
		{"AMS 4928", "Ti-6Al-4V", "AMS 4928", "", 6, 828, 0, 895, 10},
		{"AMS 4911 sheet", "Ti-6Al-4V", "AMS 4911", "", 3, 869, 0, 924, 10},
		{"MMPDS-11 4130 N tube", "4130", "", "normalised", 3, 517, 0, 655, 0},
		{"EN 10025-2 S355 to 16", "S355J2", "", "", 16, 355, 0, 470, 20},
		{"EN 10025-2 S355 to 40", "S355J2", "", "", 40, 345, 0, 470, 20},
		{"EN 10028-2 P265GH", "P265GH", "", "", 16, 265, 0, 410, 22},
	} {
		p, err := query(row.alloy, row.spec, row.product, row.t).Parent()
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		for _, v := range []struct {
			what      string
			got, want float64
		}{{"yield", p.Yield.Value / mpa, row.yield}, {"Rp1.0", p.Proof1.Value / mpa, row.proof1}, {"ultimate", p.Ultimate.Value / mpa, row.ultimate}, {"A", p.Elongation.Value * 100, row.elongation}} {
			switch {
			case v.want == 0 && !math.IsNaN(v.got):
				t.Errorf("%s: %s %g, the source gives none", row.where, v.what, v.got)
			case v.want != 0:
				checktest.Close(t, row.where+" "+v.what, v.got, v.want, 1e-12)
			}
		}
	}
}

// TestWeakestRow: with nothing named every number is the lowest of the rows.
func TestWeakestRow(t *testing.T) {
	p, err := query("Ti-6Al-4V", "", "", 10).Parent()
	if err != nil {
		t.Fatal(err)
	}
	// AMS 4911 plate 827/896, AMS 4928 828/895.
	if p.Yield.Value != 827e6 || p.Ultimate.Value != 895e6 {
		t.Errorf("weakest %g/%g", p.Yield.Value, p.Ultimate.Value)
	}
	// EN 10028-7 1.4404: plate 220/260/520/45 %, cold-rolled 240/270/530/40 %.
	if p, err = query("316L", "EN 10028-7", "", 6).Parent(); err != nil || p.Yield.Value != 220e6 || math.Abs(p.Elongation.Value-0.40) > 1e-12 {
		t.Errorf("weakest of 1.4404: yield %g, elongation %g, %v", p.Yield.Value, p.Elongation.Value, err)
	}
	for _, a := range material.Alloys() {
		for _, r := range a.Rows {
			at := r.MostThickness
			tube := strings.Contains(r.Product, "extru") || strings.Contains(r.Product, "tub")
			open, err := material.Query{Alloy: a.Name, Tube: tube, Thickness: at, Temperature: room}.Parent()
			if r.Basis == "typical" || err != nil {
				continue
			}
			if r.Yield.Value < open.Yield.Value || r.Ultimate.Value < open.Ultimate.Value {
				t.Errorf("%s at %g: the row %s is weaker than the weakest", a.Name, at, r.Product)
			}
		}
	}
}

func TestOutsideRows(t *testing.T) {
	nan := math.NaN()
	for name, q := range map[string]material.Query{
		"too thick":             query("304", "", "", 75.1),
		"too thin":              query("6082-T6", "", "", 0.39),
		"no thickness":          query("304", "", "", 0),
		"negative":              query("304", "", "", -1),
		"NaN thickness":         query("304", "", "", nan),
		"NaN temperature":       {Alloy: "304", Thickness: 3 * mm, Temperature: nan},
		"too hot":               {Alloy: "304", Thickness: 3 * mm, Temperature: 451},
		"too cold":              {Alloy: "304", Thickness: 3 * mm, Temperature: 3.9},
		"unknown spec":          query("304", "EN 9999", "", 3),
		"unknown alloy":         query("unobtainium", "", "", 3),
		"typical only":          query("2195-T8", "", "", 6),
		"no curve over 50 °C":   {Alloy: "5083-O", Thickness: 3 * mm, Temperature: 324},
		"no hot ultimate":       {Alloy: "P265GH", Thickness: 3 * mm, Temperature: 373.15},
		"row without yield":     query("6061-T6", "MMPDS-01", "", 30),
		"weaker row incomplete": {Alloy: "6061-T6", Tube: true, Thickness: 30 * mm, Temperature: room},
		"plate over its rows":   query("5083-O", "", "", 100),
		"plate under its rows":  query("6061-T6", "", "", 0.2),
		"aluminium, no temper":  query("EN AW-5083", "", "", 3),
	} {
		if p, err := q.Parent(); err == nil {
			t.Errorf("%s: %+v", name, p.Row)
		}
	}
	if _, err := query("304", "", "", 80).Parent(); err == nil || !strings.Contains(err.Error(), "ASTM A240") {
		t.Errorf("the rows are not listed: %v", err)
	}
	if _, err := query("304", "", "", 75).Parent(); err != nil {
		t.Errorf("edge of the row: %v", err)
	}
}

// A tube without a seam has the minima of its own product beside those that are
// written, plate none of them: EN 485-2 6061-T6 sheet 240/290 and 5083-O 125/275, EN
// 1999-1-1 Table 3.2b extruded or drawn 240/260 and 110/270, 304L of plate alone.
func TestMinimaOfTubes(t *testing.T) {
	for _, row := range []struct {
		alloy, spec, product  string
		tube                  bool
		yield, ultimate, weld float64 // MPa; weld: yield of a MIG zone
	}{
		{"6061-T6", "", "", false, 240, 290, 105}, {"6061-T6", "EN 485-2", "", false, 240, 290, 105},
		{"6061-T6", "", "", true, 240, 260, 105}, {"6061-T6", "EN 485-2", "", true, 240, 260, 105}, {"6061-T6", "EN 1999", "", false, 240, 260, 105},
		{"6061-T6", "", "extruded or drawn", false, 240, 260, 105}, {"6061-T6", "EN 485-2", "sheet", true, 240, 290, 105},
		{"5083-O", "", "", false, 125, 275, 125}, {"5083-O", "EN 485-2", "", true, 110, 270, 110},
		{"304L", "ASTM A240", "", true, 170, 485, 170}, {"4130", "", "", false, 517, 655, 517}, {"4130", "", "", true, 517, 655, 517},
		{"Ti-6Al-4V", "", "", false, 828, 895, 0},
	} {
		q := material.Query{Alloy: row.alloy, Spec: row.spec, Product: row.product, Tube: row.tube, Thickness: 3 * mm, Temperature: room, Process: "mig"}
		p, err := q.Parent()
		if err != nil || math.Abs(p.Yield.Value/mpa-row.yield) > 1e-9 || math.Abs(p.Ultimate.Value/mpa-row.ultimate) > 1e-9 {
			t.Errorf("%+v: %g/%g, %v", q, p.Yield.Value/mpa, p.Ultimate.Value/mpa, err)
		}
		if z, err := q.WeldZone(); row.weld > 0 && (err != nil || math.Abs(z.Yield.Value/mpa-row.weld) > 1e-9) {
			t.Errorf("zone of %+v: %g, %v", q, z.Yield.Value/mpa, err)
		}
	}
}
