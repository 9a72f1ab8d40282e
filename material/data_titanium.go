package material

import "proofsheet/report/check"

// This file carries titanium.

// alloyTi6Al4V is Ti-6Al-4V annealed.
var alloyTi6Al4V = Alloy{
	Name: "Ti-6Al-4V", Title: "Ti-6Al-4V annealed",
	Designations: []string{"UNS R56400", "UNS R56401 ELI", "AMS 4911", "AMS 4928", "ASTM B265 Gr 5"},
	Family:       Titanium, Group: alphaBetaTitanium, Temper: "annealed", ColdBrittle: false,
	LeastTemperature: 20, MostTemperature: 450,
	Density: given(4429, 1, check.Source{Doc: mmpds01 + " (0.160 lb/in3)", How: check.Read}, ""),
	Poisson: given(0.31, 1, check.Source{Doc: mmpds01, How: check.Read}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: mmpds01 + ": 116.5 GPa (16.9 msi) times the temperature ratio", How: check.Read}, "",
		21.9, 137.2, 77.4, 126.6, 90.2, 124.9, 111.7, 122.8, 195, 120.2, 233, 119.4, 293, 116.5, 366, 111.1, 422, 106.9, 450, 104.7),
	Contraction: kelvin(1e-5, check.Source{Doc: "Ekin, Experimental Techniques for Low-Temperature Measurements; recalled, not seen", How: check.Memory}, "",
		4, -173, 77, -163, 293, 0),
	Expansion: kelvin(1e-6, check.Source{Doc: "supplier table, 0-100 and 0-300 degC", How: check.Read}, "",
		373, 8.6, 573, 9.2),
	Rows: []Strength{
		{
			Product: "bar, annealed", Spec: "MMPDS-01", Direction: "L", Basis: "S",
			LeastThickness: 0 * mm, MostThickness: 50 * mm,
			Yield:            given(862, mpa, check.Source{Doc: mmpds01 + " (125 and 135 ksi)", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(931, mpa, check.Source{Doc: mmpds01 + " (125 and 135 ksi)", How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
		{
			Product: "bar, forging, AMS 4928", Spec: "AMS 4928", Direction: "any", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 50 * mm,
			Yield:            given(828, mpa, check.Source{Doc: "supplier summary of AMS 4928 and generic minimum table 897/828/10 %", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(895, mpa, check.Source{Doc: "supplier summary of AMS 4928 and generic minimum table 897/828/10 %", How: check.Read}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "supplier summary of AMS 4928 and generic minimum table 897/828/10 %", How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "sheet, AMS 4911", Spec: "AMS 4911", Direction: "any", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 4.76 * mm,
			Yield:            given(869, mpa, check.Source{Doc: "126 and 134 ksi; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(924, mpa, check.Source{Doc: "126 and 134 ksi; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "126 and 134 ksi; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "plate, AMS 4911", Spec: "AMS 4911", Direction: "any", Basis: "spec_min",
			LeastThickness: 4.76 * mm, MostThickness: 101.6 * mm,
			Yield:            given(827, mpa, check.Source{Doc: "120 and 130 ksi; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(896, mpa, check.Source{Doc: "120 and 130 ksi; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "120 and 130 ksi; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	YieldRatio: kelvin(1, check.Source{Doc: mmpds01 + ", Ti-6Al-4V annealed Fty", How: check.Read}, "",
		25.1, 1.826, 77.4, 1.611, 90.2, 1.559, 111.7, 1.474, 150, 1.331, 195, 1.194, 233, 1.113, 255, 1.072, 299.8, 0.996, 323, 0.96, 366.5, 0.884, 422, 0.791, 450, 0.747),
	UltimateRatio: kelvin(1, check.Source{Doc: mmpds01 + ", Ti-6Al-4V annealed Ftu", How: check.Read}, "",
		24.1, 1.786, 77.4, 1.548, 90.2, 1.501, 111.7, 1.426, 150, 1.313, 195, 1.194, 233, 1.113, 255, 1.072, 299.8, 0.996, 323, 0.96, 366.5, 0.905, 422, 0.839, 450, 0.808),
	Toughness: []Toughness{
		{Temperature: 293, Quantity: "K_Ic", Toughness: given(44, mpa, check.Source{Doc: "Callister, Table B.5: 44 to 66 for Ti-6Al-4V; low end taken", How: check.Read}, "typical")},
	},
	Cautions: []string{
		"never with LOX or oxygen-enriched gas (see its compatibility); ELI grade needed below about 200 K for toughness",
	},
}
