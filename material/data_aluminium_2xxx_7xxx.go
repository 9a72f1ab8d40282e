package material

import "proofsheet/report/check"

// This file carries aluminium 2219, 2195 and 7020.

// alloy2219T87 is 2219-T87.
var alloy2219T87 = Alloy{
	Name: "2219-T87", Title: "2219-T87",
	Designations: []string{"UNS A92219", "AMS 4031 stock aged"},
	Family:       Aluminium, Group: heatTreatableAluminium, Temper: "T87", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 450,
	Density: given(2840, 1, check.Source{Doc: "alloy page 2219: 2.84 Mg/m3 (0.103 lb/in3)", How: check.Read}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: "supplier data sheet for 2219-T87 (marked estimated there)", How: check.Read}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "alloy page 2219: 10.6 Msi", How: check.Read}, "",
		293, 73.1),
	ModulusLike: "6061-T6",
	Contraction: likeCurve(alloy6061T6.Contraction, "aluminium alloys contract within about 5 % of 6061 (2219 about 7 % less)"),
	Expansion: kelvin(1e-6, check.Source{Doc: "alloy page 2219, 20-100 degC", How: check.Read}, "",
		373, 22.5),
	Rows: []Strength{
		{
			Product: "sheet and plate", Spec: "MIL-HDBK-5J Table 3.2.8", Direction: "LT", Basis: "A",
			LeastThickness: 0.5 * mm, MostThickness: 25 * mm,
			Yield:            given(352, mpa, check.Source{Doc: "51 and 64 ksi; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(441, mpa, check.Source{Doc: "51 and 64 ksi; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(6, percent, check.Source{Doc: "51 and 64 ksi; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "T8 typical", Spec: "supplier", Direction: "L", Basis: "typical",
			LeastThickness: 0 * mm, MostThickness: 50 * mm,
			Yield:            given(352, mpa, check.Source{Doc: "alloy page 2219 T8/T851", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(455, mpa, check.Source{Doc: "alloy page 2219 T8/T851", How: check.Read}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "alloy page 2219 T8/T851", How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "T87 typical", Spec: "supplier", Direction: "L", Basis: "typical",
			LeastThickness: 0 * mm, MostThickness: 50 * mm,
			Yield:            given(393, mpa, check.Source{Doc: "supplier data sheet for 2219-T87", How: check.Read}, "12 and 8 % over the recalled A values"),
			Proof1:           missing,
			Ultimate:         given(476, mpa, check.Source{Doc: "supplier data sheet for 2219-T87", How: check.Read}, "12 and 8 % over the recalled A values"),
			Elongation:       given(10, percent, check.Source{Doc: "supplier data sheet for 2219-T87", How: check.Read}, "12 and 8 % over the recalled A values"),
			CompressiveYield: missing,
		},
	},
	YieldRatio: kelvin(1, check.Source{Doc: "as above; recalled, not seen; above 293 K Montano, J. Basic Eng. 89 (1967): 70 % of ambient strength at 204 degC for exposures to 300 s", How: check.Memory}, "",
		20, 1.27, 77, 1.18, 293, 1, 477, 0.7),
	UltimateRatio: kelvin(1, check.Source{Doc: "2219-T87 plate, NIST comparison report AD-A242956 and MIL-HDBK-5; recalled, not seen; above 293 K Montano, J. Basic Eng. 89 (1967): 70 % of ambient strength at 204 degC for exposures to 300 s", How: check.Memory}, "",
		20, 1.4, 77, 1.22, 293, 1, 477, 0.7),
	Zones: []Zone{
		{Kind: typicalZone, Product: "2219-T81 with ER2319", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(179, mpa, check.Source{Doc: alcotec, How: check.Read}, "typical, shown only"),
			Ultimate: given(241, mpa, check.Source{Doc: alcotec, How: check.Read}, "")},
	},
	Toughness: []Toughness{
		{Temperature: 293, Quantity: "K_Ic", Toughness: given(37, mpa, check.Source{Doc: recalled, How: check.Memory}, "typical")},
		{Temperature: 77, Quantity: "K_Ic", Toughness: given(43, mpa, check.Source{Doc: recalled, How: check.Memory}, "typical")},
	},
}

// alloy2219T62 is 2219-T62.
var alloy2219T62 = Alloy{
	Name: "2219-T62", Title: "2219-T62",
	Designations: []string{"UNS A92219"},
	Family:       Aluminium, Group: heatTreatableAluminium, Temper: "T62", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 450,
	Density:     likeValue(alloy2219T87.Density, "temper does not change it"),
	Poisson:     likeValue(alloy2219T87.Poisson, "temper does not change it"),
	Modulus:     likeCurve(alloy2219T87.Modulus, "temper does not change it"),
	ModulusLike: "6061-T6",
	Expansion:   likeCurve(alloy2219T87.Expansion, "temper does not change it"),
	Rows: []Strength{
		{
			Product: "sheet and plate", Spec: "MIL-HDBK-5J", Direction: "LT", Basis: "A",
			LeastThickness: 0.5 * mm, MostThickness: 50 * mm,
			Yield:            given(248, mpa, check.Source{Doc: "36 and 54 ksi; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(372, mpa, check.Source{Doc: "36 and 54 ksi; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(7, percent, check.Source{Doc: "36 and 54 ksi; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
}

// alloy2195T8 is 2195-T8 (Al-Li).
var alloy2195T8 = Alloy{
	Name: "2195-T8", Title: "2195-T8 (Al-Li)",
	Designations: []string{"UNS A92195"},
	Family:       Aluminium, Group: aluminiumLithium, Temper: "T8", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 420,
	Density: given(2710, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: recalled, How: check.Memory}, "",
		293, 76),
	ModulusLike: "6061-T6",
	Expansion: kelvin(1e-6, check.Source{Doc: recalled, How: check.Memory}, "",
		373, 22),
	Rows: []Strength{
		{
			Product: "plate T8", Spec: "NASA external-tank literature", Direction: "L", Basis: "typical",
			LeastThickness: 3 * mm, MostThickness: 50 * mm,
			Yield:            given(530, mpa, check.Source{Doc: recalled, How: check.Memory}, "informational only; no minimum found; obtain the mill certificate and test"),
			Proof1:           missing,
			Ultimate:         given(565, mpa, check.Source{Doc: recalled, How: check.Memory}, "informational only; no minimum found; obtain the mill certificate and test"),
			Elongation:       missing,
			CompressiveYield: missing,
		},
	},
}

// alloy7020T6 is 7020-T6 / T651.
var alloy7020T6 = Alloy{
	Name: "7020-T6", Title: "7020-T6 / T651",
	Designations: []string{"EN AW-7020", "AlZn4.5Mg1"},
	Family:       Aluminium, Group: heatTreatableAluminium, Temper: "T6/T651", ColdBrittle: false,
	LeastTemperature: 77, MostTemperature: 353,
	Density: given(2780, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Poisson: given(0.33, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "EN 1999-1-1 uses 70 GPa for all alloys; recalled, not seen", How: check.Memory}, "",
		293, 70),
	ModulusLike: "6061-T6",
	Contraction: likeCurve(alloy6061T6.Contraction, "aluminium alloys contract within about 5 % of 6061 (2219 about 7 % less)"),
	Expansion: kelvin(1e-6, check.Source{Doc: recalled, How: check.Memory}, "",
		373, 23.1),
	Rows: []Strength{
		{
			Product: "sheet and plate", Spec: "EN 485-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0.4 * mm, MostThickness: 12.5 * mm,
			Yield:            given(280, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(350, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Elongation:       given(7, percent, check.Source{Doc: en485, How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "plate T651", Spec: "EN 485-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 12.5 * mm, MostThickness: 40 * mm,
			Yield:            given(280, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(350, mpa, check.Source{Doc: en485, How: check.Read}, ""),
			Elongation:       given(9, percent, check.Source{Doc: en485, How: check.Read}, ""),
			CompressiveYield: missing,
		},
	},
	Zones: []Zone{
		{Kind: hazZone, Product: "sheet and plate T6/T651", LeastThickness: 0 * mm, MostThickness: 12.5 * mm,
			Yield:    given(205, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, "after 30 days of natural ageing (6xxx: 3 days); times 0.8 for TIG"),
			Ultimate: given(280, mpa, check.Source{Doc: en1999Table32a, How: check.Memory}, "")},
	},
	Cautions: []string{
		"stress-corrosion sensitive in the short transverse direction and at weld toes; welded strength recovers by natural ageing over about 30 to 90 days, so coupons must be as old as the tank at test",
	},
}
