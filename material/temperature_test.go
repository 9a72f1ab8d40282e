package material_test

import (
	"testing"

	"proofsheet/material"
	"proofsheet/report/check/checktest"
)

func at(alloy, spec, product string, t, T float64, cold bool) material.Query {
	return material.Query{Alloy: alloy, Spec: spec, Product: product, Thickness: t * mm, Temperature: T, ColdStrength: cold}
}

// TestColdRatios holds strength with the cold option against the ratios of
// MMPDS-01 (digitised figure) and the low-temperature note on 5083-O.
func TestColdRatios(t *testing.T) {
	for _, row := range []struct {
		where, alloy, spec string
		T                  float64
		yield, ultimate    string // ratio, as printed; "": none
	}{
		{"304 at 77 K", "304", "ASTM A240", 77.4, "1.27", "2.07"},
		{"304 at 90 K", "304", "ASTM A240", 90.2, "1.26", "2.01"},
		{"304 at 112 K", "304", "ASTM A240", 111.7, "1.25", "1.90"},
		{"304 at 195 K", "304", "ASTM A240", 195, "1.16", "1.49"},
		{"6061-T6 at 90 K", "6061-T6", "EN 485-2", 90.2, "", "1.25"},
		{"6061-T6 at 77 K", "6061-T6", "EN 485-2", 77.4, "1.17", "1.29"},
		{"5083-O at 78 K", "5083-O", "EN 485-2", 78, "1.10", "1.40"},
		{"2219-T87 at 77 K", "2219-T87", "", 77, "1.18", "1.22"},
		{"Ti at 90 K", "Ti-6Al-4V", "AMS 4928", 90.2, "1.56", "1.50"},
	} {
		p, err := at(row.alloy, row.spec, "", 3, row.T, true).Parent()
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		// The table prints the ratios cut to two decimals: one unit of the last.
		checktest.Close(t, row.where+" ultimate", p.Ultimate.Value/p.RoomUltimate, number(t, row.ultimate), 0.006)
		if row.yield != "" {
			checktest.Close(t, row.where+" yield", p.Yield.Value/p.RoomYield, number(t, row.yield), 0.006)
		}
		warm, err := at(row.alloy, row.spec, "", 3, row.T, false).Parent()
		if err != nil || warm.Yield.Value != p.RoomYield || warm.Ultimate.Value != p.RoomUltimate {
			t.Errorf("%s: cold strength without the option: %v", row.where, err)
		}
	}
}

// TestHot: the lowest of ratio and absolute tables, from 20 °C up. Rows of
// EN 10269 (BSSA table), EN 10028-7 for 1.4462 and 1.4404, EN 10028-2, MMPDS.
func TestHot(t *testing.T) {
	const C = 273.15
	for _, row := range []struct {
		where, alloy, spec string
		T                  float64
		yield, ultimate    float64 // MPa; 0: not compared
	}{
		{"1.4301 at 50 °C, EN 10269", "304", "EN 10028-7", 50 + C, 177, 0},
		{"1.4307 at 150 °C, EN 10269", "304L", "EN 10028-7", 150 + C, 130, 0},
		{"1.4404 at 100 °C", "316L", "EN 10028-7", 100 + C, 165, 430},
		{"1.4462 at 100 °C", "2205", "", 100 + C, 360, 590},
		{"1.4462 at 150 °C", "2205", "", 150 + C, 335, 570},
		{"304 at 450 K, MMPDS 0.716", "304", "MMPDS-01", 450, 0.710 * 179, 0},
	} {
		p, err := at(row.alloy, row.spec, "", 6, row.T, true).Parent()
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		if row.yield > 0 && p.Yield.Value > row.yield*mpa*(1+1e-9) {
			t.Errorf("%s: yield %g MPa over the table's %g", row.where, p.Yield.Value/mpa, row.yield)
		}
		if row.ultimate > 0 && p.Ultimate.Value > row.ultimate*mpa*(1+1e-9) {
			t.Errorf("%s: ultimate %g MPa over the table's %g", row.where, p.Ultimate.Value/mpa, row.ultimate)
		}
	}
	duplex, err := at("2205", "", "", 6, 150+C, false).Parent()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "1.4462 at 150 °C Rp0.2", duplex.Yield.Value, 335e6, 1e-12)
	checktest.Close(t, "1.4462 at 150 °C Rm", duplex.Ultimate.Value, 570e6, 1e-12)
}

// TestHeatNeverStrengthens: above 20 °C no strength exceeds its room value, and
// none grows with temperature.
func TestHeatNeverStrengthens(t *testing.T) {
	for _, a := range material.Alloys() {
		last := map[string]float64{}
		for T := room; T <= a.MostTemperature; T += 1 {
			p, err := material.Query{Alloy: a.Name, Thickness: 4 * mm, Temperature: T}.Parent()
			if err != nil {
				break
			}
			for what, v := range map[string]float64{"yield": p.Yield.Value / p.RoomYield, "ultimate": p.Ultimate.Value / p.RoomUltimate} {
				if before, ok := last[what]; v > 1 || ok && v > before*(1+1e-12) {
					t.Errorf("%s at %.2f K: %s ratio %g after %g", a.Name, T, what, v, before)
				}
				last[what] = v
			}
		}
	}
}

// TestBrittle: body-centred cubic metal below its least temperature has no
// limits, whatever its strength.
func TestBrittle(t *testing.T) {
	f, _ := material.DefaultFactors(material.Vessel)
	for _, row := range []struct {
		alloy   string
		T       float64
		brittle bool
	}{
		{"S355J2", 253, false}, {"S355J2", 252.9, true}, {"P265GH", 184.7, true}, {"4130", 232, true}, {"2205", 223, false}, {"2205", 184.7, true},
		{"304", 90, false}, {"6061-T6", 77, false}, {"5083-O", 20, false},
	} {
		p, err := at(row.alloy, "", "", 4, row.T, true).Parent()
		if err != nil {
			t.Errorf("%s at %g K: %v", row.alloy, row.T, err)
			continue
		}
		_, err = p.Limits(material.Vessel, f, material.LimitOptions{})
		if (p.Brittle != nil) != row.brittle || (err != nil) != row.brittle {
			t.Errorf("%s at %g K: brittle %v, limits %v", row.alloy, row.T, p.Brittle, err)
		}
	}
}

// TestModulusAndExpansion: NIST fits and MMPDS-01 (digitised figures).
func TestModulusAndExpansion(t *testing.T) {
	for _, row := range []struct {
		alloy string
		T     float64
		want  string // GPa
	}{
		{"304", 77, "214.4"}, {"304", 90, "214.1"}, {"304", room, "199.5"}, {"316", 77, "209.1"}, {"316", room, "194.7"},
		{"Ti-6Al-4V", 90.2, "124.9"}, {"6061-T6", 90.2, "76.4"}, {"6061-T6", 294, "68.7"}, {"5083-O", room, "71.7"},
	} {
		p, err := at(row.alloy, "", "", 4, row.T, false).Parent()
		if err != nil {
			t.Errorf("%s: %v", row.alloy, err)
			continue
		}
		checktest.Printed(t, row.alloy+" E", p.ElasticModulus.Value/1e9, row.want)
	}
	// Contraction from 293 K to 90 K: 304 0.270 %, 6061 0.376 % (NIST); 5083 is
	// taken as 6061.
	for alloy, want := range map[string]float64{"304": 0.00270, "6061-T6": 0.00376, "5083-O": 0.00376} {
		p, err := at(alloy, "", "", 4, 90, false).Parent()
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, alloy+" contraction to 90 K", p.Expansion.Value*(293-90), want, 0.003) // printed to three digits, α too
	}
	for _, a := range material.Alloys() { // every alloy has E at 20 and 40 °C
		for _, T := range []float64{room, 313.15} {
			p, err := material.Query{Alloy: a.Name, Thickness: 4 * mm, Temperature: T}.Parent()
			if a.Name == "2195-T8" {
				continue
			}
			if err != nil || !(p.ElasticModulus.Value > 60e9) || !(p.Expansion.Value > 7e-6) || !(p.Density.Value > 2600) {
				t.Errorf("%s at %g K: E %g, α %g, ρ %g, %v", a.Name, T, p.ElasticModulus.Value, p.Expansion.Value, p.Density.Value, err)
			}
		}
	}
}
