package material_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check/checktest"
)

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestZone: EN 1999-1-1 Table 3.2 (6061-T6 115/175 read, sheet rows recalled)
// times the process factor, against the welded minima on a 50 mm gauge of
// Kissell & Ferry p. 64 and Lloyd's Register Table 13.8.1; the lower counts.
func TestZone(t *testing.T) {
	for _, row := range []struct {
		where, alloy, process string
		t                     float64 // mm
		yield, ultimate       float64 // MPa
	}{
		{"6061-T6 MIG: minimum 105/165 under 115/175", "6061-T6", "mig", 3, 105, 165},
		{"6061-T6 TIG: 0.8 × 115, 0.8 × 175", "6061-T6", "tig", 3, 92, 140},
		{"6061-T6 TIG at 6 mm", "6061-T6", "tig", 6, 92, 140},
		{"6061-T6 TIG over 6 mm: 0.64", "6061-T6", "", 6.5, 0.64 * 115, 0.64 * 175},
		{"6061-T6 MIG over 9.5 mm: 4043 filler", "6061-T6", "mig", 10, 80, 165},
		{"6082-T6 MIG", "6082-T6", "mig", 3, 125, 185},
		{"6082-T6 TIG", "6082-T6", "tig", 3, 100, 148},
		{"5083-H116: min(155, 125), min(275, 270)", "5083-H116", "mig", 5, 125, 270},
		{"5083-H116 TIG over 6 mm: 0.9 × 275", "5083-H116", "tig", 8, 125, 247.5},
		{"5086-H116", "5086-H116", "mig", 5, 95, 240},
		{"5052-H32", "5052-H32", "tig", 5, 65, 170},
		{"7020-T6 TIG", "7020-T6", "tig", 5, 0.8 * 205, 0.8 * 280},
		{"5083-O unaffected", "5083-O", "tig", 20, 125, 275},
		{"301 quarter hard: annealed", "301-quarter-hard", "tig", 1, 205, 515},
		{"304L: the parent", "304L", "tig", 6, 170, 485},
		{"4130 normalised: the parent", "4130", "tig", 3, 517, 655},
	} {
		q := query(row.alloy, "", "", row.t)
		q.Process = row.process
		if row.alloy == "4130" {
			q.Product = "normalised"
		}
		p, err := q.WeldZone()
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		checktest.Close(t, row.where+" yield", p.Yield.Value/mpa, row.yield, 1e-12)
		checktest.Close(t, row.where+" ultimate", p.Ultimate.Value/mpa, row.ultimate, 1e-12)
	}
}

// TestRecalledIsSaid: a recalled strength brings the note to confirm it, a read
// one does not.
func TestRecalledIsSaid(t *testing.T) {
	says := func(p material.Properties, err error) bool {
		if err != nil {
			t.Fatal(err)
		}
		return strings.Contains(strings.Join(p.Notes, "\n"), "recalled, not seen: confirm")
	}
	if says(query("304L", "ASTM A240", "", 6).Parent()) {
		t.Error("304L to A240 was read")
	}
	if !says(query("P265GH", "", "", 6).Parent()) {
		t.Error("P265GH is recalled")
	}
	if !says(query("6061-T6", "EN 485-2", "", 3).WeldZone()) {
		t.Error("the TIG factor is recalled")
	}
}

func TestZoneRefused(t *testing.T) {
	for name, q := range map[string]material.Query{
		"2219, no row":                query("2219-T87", "", "", 3),
		"2195":                        query("2195-T8", "", "", 3),
		"titanium without coupons":    query("Ti-6Al-4V", "", "", 3),
		"duplex without values":       query("2205", "", "", 3),
		"4130 quenched":               query("4130", "", "quenched", 3),
		"6061 plate beyond the row":   query("6061-T6", "EN 485-2", "", 13),
		"5086 over 15 mm":             query("5086-H116", "", "", 15.1),
		"unknown process":             {Alloy: "6061-T6", Thickness: 3 * mm, Temperature: room, Process: "laser"},
		"outside the rows of parents": query("304", "", "", 80),
	} {
		if p, err := q.WeldZone(); err == nil {
			t.Errorf("%s: %g/%g", name, p.Yield.Value, p.Ultimate.Value)
		}
	}
}

// TestZoneNeverAboveParent over all alloys, thicknesses and temperatures, cold
// option included: the zone gains nothing by cold.
func TestZoneNeverAboveParent(t *testing.T) {
	made := 0
	for _, a := range material.Alloys() {
		for _, thickness := range []float64{0.5, 2, 6, 8, 14} {
			for _, T := range []float64{90, room, 310, 360, 420} {
				q := material.Query{Alloy: a.Name, Thickness: thickness * mm, Temperature: T, ColdStrength: true}
				zone, err := q.WeldZone()
				if err != nil {
					continue
				}
				made++
				q.ColdStrength = false
				parent, err := q.Parent()
				if err != nil || !(zone.Yield.Value <= parent.Yield.Value) || !(zone.Ultimate.Value <= parent.Ultimate.Value) {
					t.Errorf("%s %g mm %g K: zone %g/%g, parent %g/%g, %v", a.Name, thickness, T, zone.Yield.Value, zone.Ultimate.Value, parent.Yield.Value, parent.Ultimate.Value, err)
				}
			}
		}
	}
	if made < 40 {
		t.Errorf("only %d zones were made", made)
	}
}

// TestOwn: own values as they are stated, a zone only where stated or annealed.
func TestOwn(t *testing.T) {
	nan := math.NaN()
	own := material.Own{Family: "aluminium", Yield: 240e6, Ultimate: 290e6, ElasticModulus: 70e9, Poisson: 0.33, Density: nan, Expansion: nan,
		Elongation: nan, Allowable: 60e6, WeldedYield: nan, WeldedUltimate: nan, Source: "certificate 1"}
	p, err := own.Parent(room)
	if l := limits(t, "own", p, err, material.Vessel); l.S != 60e6 {
		t.Errorf("allowable does not cap: %g", l.S)
	}
	if l := limits(t, "own", p, err, material.Flight); l.S <= 60e6 {
		t.Error("allowable is ignored in flight")
	}
	if _, err := own.WeldZone(room); err == nil {
		t.Error("own aluminium has no zone without welded values")
	}
	welded := own
	welded.WeldedYield, welded.WeldedUltimate = 300e6, 140e6
	if z, err := welded.WeldZone(room); err != nil || z.Yield.Value != 240e6 || z.Ultimate.Value != 140e6 || !z.Softened {
		t.Errorf("welded values: %v", err)
	}
	steel := own
	steel.Family, steel.Yield, steel.Ultimate = "ferritic", 265e6, 410e6
	if z, err := steel.WeldZone(room); err != nil || z.Yield.Value != 265e6 {
		t.Errorf("normalised steel: %v", err)
	}
	for family, yield := range map[string]float64{"ferritic": 461e6, "austenitic": 301e6, "titanium": 240e6} {
		hard := steel
		hard.Family, hard.Yield, hard.Ultimate = family, yield, 900e6
		if _, err := hard.WeldZone(room); err == nil {
			t.Errorf("own %s of %g MPa has no zone without welded values", family, yield/mpa)
		}
	}
	if z, err := steel.Parent(272); err != nil || z.Brittle == nil {
		t.Errorf("own ferritic steel below 0 °C: %v", err)
	}
	for name, change := range map[string]func(*material.Own){
		"family": func(o *material.Own) { o.Family = "wood" }, "source": func(o *material.Own) { o.Source = "" },
		"yield": func(o *material.Own) { o.Yield = nan }, "ultimate": func(o *material.Own) { o.Ultimate = -1 },
		"yield above": func(o *material.Own) { o.Yield = 300e6 }, "poisson": func(o *material.Own) { o.Poisson = 0.5 },
		"modulus": func(o *material.Own) { o.ElasticModulus = math.Inf(1) },
	} {
		bad := own
		change(&bad)
		if _, err := bad.Parent(room); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
	if _, err := own.Parent(324); err == nil {
		t.Error("own values were kept above 50 °C")
	}
}
