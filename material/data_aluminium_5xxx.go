package material

import "proofsheet/report/check"

// This file carries aluminium 5083, 5086 and 5052.

// sensitised is the caution on alloys of more than 3 % magnesium.
const sensitised = "not above 65 degC (338 K): sensitisation of Mg > 3 % alloys; ASME use window quoted as -195 to 65 degC (read)"

// tobler is where the toughness of 5083-O comes from.
var tobler = check.Source{Doc: "Tobler and Reed 1977, abstract (read): J_Ic 9 kJ/m2 at 295 K, 25 at 4 K; K = sqrt(J E/(1 - nu2)) worked out here", How: check.Computed}

// alloy5083O is 5083-O / H111.
var alloy5083O = Alloy{
	Name: "5083-O", Title: "5083-O / H111",
	Designations: []string{"UNS A95083", "EN AW-5083", "AlMg4.5Mn0.7"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "O/H111", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 338,
	Density: given(2650, 1, check.Source{Doc: "alloy sheets for 5083: 2.65 g/cm3 (US handbooks 2660)", How: check.Read}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy: compressive modulus 71 700 MPa", How: check.Read}, "vendor sheets quote 72; cold ratio as 6061 (practice)",
		293, 71.7),
	ModulusLike: "6061-T6",
	Contraction: likeCurve(alloy6061T6.Contraction, "aluminium alloys contract within about 5 % of 6061 (2219 about 7 % less)"),
	Expansion: kelvin(1e-6, check.Source{Doc: "alloy sheets for 5083; US handbooks 23.8", How: check.Read}, "",
		373, 25),
	Toughness: []Toughness{
		{Temperature: 295, Quantity: "K_J", Toughness: given(26.8, mpa, tobler, "typical")},
		{Temperature: 4, Quantity: "K_J", Toughness: given(47.7, mpa, tobler, "typical")},
	},
	Rows: []Strength{
		{
			Product: "sheet and plate O/H111", Spec: "EN 485-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0.2 * mm, MostThickness: 50 * mm,
			Yield:            given(125, mpa, check.Source{Doc: en485, How: check.Read}, "A50 11/12/13/15/16 % for 0.2-0.5/-1.5/-3/-6/-12.5 mm, A 15 % to 50 mm"),
			Proof1:           missing,
			Ultimate:         given(275, mpa, check.Source{Doc: en485, How: check.Read}, "A50 11/12/13/15/16 % for 0.2-0.5/-1.5/-3/-6/-12.5 mm, A 15 % to 50 mm"),
			Elongation:       given(11, percent, check.Source{Doc: en485, How: check.Read}, "A50 11/12/13/15/16 % for 0.2-0.5/-1.5/-3/-6/-12.5 mm, A 15 % to 50 mm"),
			CompressiveYield: missing,
		},
		{
			Product: "plate O/H111", Spec: "EN 485-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 50 * mm, MostThickness: 80 * mm,
			Yield:            given(115, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(270, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Elongation:       given(14, percent, check.Source{Doc: en485, How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "sheet and plate O", Spec: "ASTM B209 via Aluminum Design Manual", Direction: "any", Basis: "spec_min",
			LeastThickness: 1.2 * mm, MostThickness: 6.3 * mm,
			Yield:            given(125, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(275, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
		{
			Product: "extruded or drawn", Spec: "EN 1999-1-1 Table 3.2b", Direction: "L", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 200 * mm,
			Yield:            given(110, mpa, check.Source{Doc: en1999Table32b, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(270, mpa, check.Source{Doc: en1999Table32b, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
	},
	YieldRatio: kelvin(1, check.Source{Doc: "same note: yield rises about 10 %", How: check.Read}, "",
		78, 1.1, 293, 1),
	UltimateRatio: kelvin(1, check.Source{Doc: "low-temperature note: ultimate of 5083-O rises about 40 % from room temperature to -195 degC", How: check.Read}, "",
		78, 1.4, 293, 1),
	Zones: []Zone{
		{Kind: hazZone, Product: "extruded O/H111/H112", LeastThickness: 0 * mm, MostThickness: 200 * mm,
			Yield:    given(110, mpa, check.Source{Doc: en1999Table32b, How: check.Read}, ""),
			Ultimate: given(270, mpa, check.Source{Doc: en1999Table32b, How: check.Read}, "")},
		{Kind: hazZone, Product: "sheet and plate O/H111", LeastThickness: 0 * mm, MostThickness: 50 * mm,
			Yield:    given(125, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, ""),
			Ultimate: given(275, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, "")},
		{Kind: classZone, Product: "rolled", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(125, mpa, check.Source{Doc: classRules, How: check.Read}, ""),
			Ultimate: given(275, mpa, check.Source{Doc: classRules, How: check.Read}, "")},
	},
	Cautions: []string{sensitised},
}

// alloy5083H116 is 5083-H116 / H321.
var alloy5083H116 = Alloy{
	Name: "5083-H116", Title: "5083-H116 / H321",
	Designations: []string{"UNS A95083", "EN AW-5083"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "H116/H321", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 338,
	Density:     likeValue(alloy5083O.Density, "temper does not change it"),
	Poisson:     likeValue(alloy5083O.Poisson, "temper does not change it"),
	Modulus:     likeCurve(alloy5083O.Modulus, "temper does not change it"),
	ModulusLike: "6061-T6",
	Expansion:   likeCurve(alloy5083O.Expansion, "temper does not change it"),
	Rows: []Strength{
		{
			Product: "sheet and plate H116", Spec: "EN 485-2; Aluminum Design Manual Table 3.3-1M", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 1.5 * mm, MostThickness: 40 * mm,
			Yield:            given(215, mpa, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy (305/215 for 4 to 40 mm)", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(305, mpa, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy (305/215 for 4 to 40 mm)", How: check.Read}, ""),
			Elongation:       given(8, percent, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy (305/215 for 4 to 40 mm)", How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "plate H116", Spec: "EN 485-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 40 * mm, MostThickness: 80 * mm,
			Yield:            given(200, mpa, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(285, mpa, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy", How: check.Read}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet; Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy", How: check.Read}, ""),
			CompressiveYield: missing,
		},
	},
	Zones: []Zone{
		{Kind: hazZone, Product: "sheet and plate H116/H321", LeastThickness: 0 * mm, MostThickness: 40 * mm,
			Yield:    given(155, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, ""),
			Ultimate: given(275, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, "")},
		{Kind: minimumZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(125, mpa, check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate recalled", How: check.Read}, "24 ksi (165) is the 10 in gauge value: x 0.75 = 18 ksi; ultimate 39 to 40 ksi, Lloyd's Register 275"),
			Ultimate: given(270, mpa, check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate recalled", How: check.Memory}, "")},
		{Kind: classZone, Product: "rolled", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(125, mpa, check.Source{Doc: classRules, How: check.Read}, ""),
			Ultimate: given(275, mpa, check.Source{Doc: classRules, How: check.Read}, "")},
		{Kind: typicalZone, Product: "5083-H116 with ER5183", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(152, mpa, check.Source{Doc: alcotec, How: check.Read}, "typical, shown only"),
			Ultimate: given(296, mpa, check.Source{Doc: alcotec, How: check.Read}, "")},
	},
	Cautions: []string{sensitised},
}

// alloy5086H116 is 5086-H116 / H32.
var alloy5086H116 = Alloy{
	Name: "5086-H116", Title: "5086-H116 / H32",
	Designations: []string{"UNS A95086", "EN AW-5086"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "H116/H32", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 338,
	Density: given(2660, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: aluminiumManual, How: check.Read}, "",
		293, 71.7),
	ModulusLike: "6061-T6",
	Contraction: likeCurve(alloy6061T6.Contraction, "aluminium alloys contract within about 5 % of 6061 (2219 about 7 % less)"),
	Expansion: kelvin(1e-6, check.Source{Doc: recalled, How: check.Memory}, "",
		373, 23.8),
	Rows: []Strength{
		{
			Product: "sheet and plate H116, H32", Spec: "ASTM B209 via Aluminum Design Manual", Direction: "any", Basis: "spec_min",
			LeastThickness: 1.6 * mm, MostThickness: 50 * mm,
			Yield:            given(195, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(275, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: given(180, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
		},
	},
	Zones: []Zone{
		{Kind: minimumZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(95, mpa, check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate Lloyd's Register 240", How: check.Read}, "19 ksi (130) is the 10 in gauge value: x 0.75 = 14.25 ksi (98.3), O temper and Lloyd's Register 95"),
			Ultimate: given(240, mpa, check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate Lloyd's Register 240", How: check.Read}, "")},
		{Kind: classZone, Product: "rolled", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(95, mpa, check.Source{Doc: classRules, How: check.Read}, ""),
			Ultimate: given(240, mpa, check.Source{Doc: classRules, How: check.Read}, "")},
	},
	Cautions: []string{sensitised},
}

// alloy5086O is 5086-O.
var alloy5086O = Alloy{
	Name: "5086-O", Title: "5086-O",
	Designations: []string{"UNS A95086", "EN AW-5086"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "O", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 338,
	Density:     likeValue(alloy5086H116.Density, "temper does not change it"),
	Poisson:     likeValue(alloy5086H116.Poisson, "temper does not change it"),
	Modulus:     likeCurve(alloy5086H116.Modulus, "temper does not change it"),
	Expansion:   likeCurve(alloy5086H116.Expansion, "temper does not change it"),
	Contraction: likeCurve(alloy5086H116.Contraction, "temper does not change it"),
	ModulusLike: "6061-T6",
	Rows: []Strength{
		{
			Product: "sheet and plate O", Spec: "ASTM B209 via Aluminum Design Manual", Direction: "any", Basis: "spec_min",
			LeastThickness: 0.5 * mm, MostThickness: 50 * mm,
			Yield:            given(95, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(240, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
	},
	Cautions: []string{sensitised},
}

// alloy5052H32 is 5052-H32.
var alloy5052H32 = Alloy{
	Name: "5052-H32", Title: "5052-H32",
	Designations: []string{"UNS A95052", "EN AW-5052"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "H32", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 373,
	Density: given(2680, 1, check.Source{Doc: "MIL-HDBK-5J; recalled, not seen (2.68 also in a vendor list)", How: check.Memory}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: aluminiumManual, How: check.Read}, "",
		293, 70.3),
	ModulusLike: "6061-T6",
	Contraction: likeCurve(alloy6061T6.Contraction, "aluminium alloys contract within about 5 % of 6061 (2219 about 7 % less)"),
	Expansion: kelvin(1e-6, check.Source{Doc: recalled, How: check.Memory}, "",
		373, 23.8),
	Rows: []Strength{
		{
			Product: "sheet and plate H32", Spec: "ASTM B209 via Aluminum Design Manual", Direction: "any", Basis: "spec_min",
			LeastThickness: 0.4 * mm, MostThickness: 50 * mm,
			Yield:            given(160, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(215, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: given(145, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
		},
	},
	Zones: []Zone{
		{Kind: minimumZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(65, mpa, check.Source{Doc: "Kissell & Ferry, Aluminum Structures, p. 64; O temper 65/170 (Aluminum Design Manual Table 3.3-1M)", How: check.Read}, "13 ksi (90) is the 10 in gauge value: x 0.75 = 9.75 ksi (67.2), O temper 65"),
			Ultimate: given(170, mpa, check.Source{Doc: "Kissell & Ferry, Aluminum Structures, p. 64; O temper 65/170 (Aluminum Design Manual Table 3.3-1M)", How: check.Read}, "")},
		{Kind: typicalZone, Product: "5052-H32 with ER5356", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(97, mpa, check.Source{Doc: alcotec, How: check.Read}, "typical, shown only"),
			Ultimate: given(193, mpa, check.Source{Doc: alcotec, How: check.Read}, "")},
	},
}

// alloy5052O is 5052-O.
var alloy5052O = Alloy{
	Name: "5052-O", Title: "5052-O",
	Designations: []string{"UNS A95052", "EN AW-5052"},
	Family:       Aluminium, Group: workHardeningAluminium, Temper: "O", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 373,
	Density:     likeValue(alloy5052H32.Density, "temper does not change it"),
	Poisson:     likeValue(alloy5052H32.Poisson, "temper does not change it"),
	Modulus:     likeCurve(alloy5052H32.Modulus, "temper does not change it"),
	Expansion:   likeCurve(alloy5052H32.Expansion, "temper does not change it"),
	Contraction: likeCurve(alloy5052H32.Contraction, "temper does not change it"),
	ModulusLike: "6061-T6",
	Rows: []Strength{
		{
			Product: "sheet and plate O", Spec: "ASTM B209 via Aluminum Design Manual", Direction: "any", Basis: "spec_min",
			LeastThickness: 0.15 * mm, MostThickness: 80 * mm,
			Yield:            given(65, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(170, mpa, check.Source{Doc: aluminiumManual, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
	},
}
