package material

import "proofsheet/report/check"

// This file carries duplex, low-alloy and carbon steel.

// alloy2205 is Duplex 2205.
var alloy2205 = Alloy{
	Name: "2205", Title: "Duplex 2205",
	Designations: []string{"UNS S32205", "EN 1.4462"},
	Family:       Duplex, Group: duplexSteel, Temper: "solution annealed", ColdBrittle: true,
	LeastTemperature: 223, MostTemperature: 523,
	Density: given(7800, 1, check.Source{Doc: "EN 10088-1; recalled, not seen", How: check.Memory}, ""),
	Poisson: given(0.3, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "EN 10088-1; recalled, not seen", How: check.Memory}, "",
		293, 200, 373, 194, 473, 186),
	Expansion: kelvin(1e-6, check.Source{Doc: "EN 10088-1; recalled, not seen", How: check.Memory}, "",
		373, 13, 473, 13.5),
	Rows: []Strength{
		{
			Product: "plate, sheet", Spec: "ASTM A240 S32205", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(450, mpa, check.Source{Doc: "ASTM A240; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(655, mpa, check.Source{Doc: "ASTM A240; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(25, percent, check.Source{Doc: "ASTM A240; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Hot: []HotTable{
		{
			Spec: "EN 10028-7, reference data for duplex", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "BSSA article on elevated temperature properties in BS EN 10028-7", How: check.Read}, "",
				100, 360, 150, 335, 200, 315, 250, 300),
			Ultimate: celsius(mpa, check.Source{Doc: "BSSA article on elevated temperature properties in BS EN 10028-7", How: check.Read}, "",
				100, 590, 150, 570, 200, 550, 250, 540),
		},
	},
	Cautions: []string{
		"ferrite is brittle when cold: usable to about -50 degC (read, AZoM cryogenic stainless article); never LOX, LN2, LCH4 or boiling N2O",
	},
}

// alloy4130 is AISI 4130.
var alloy4130 = Alloy{
	Name: "4130", Title: "AISI 4130",
	Designations: []string{"UNS G41300"},
	Family:       Ferritic, Group: lowAlloySteel, Temper: "normalised or Q&T", ColdBrittle: true,
	LeastTemperature: 233, MostTemperature: 450,
	Density: given(7833, 1, check.Source{Doc: "MMPDS-11, figure digitised in the MIT-licensed open dataset 'material-properties-interchange'", How: check.Read}, ""),
	Poisson: given(0.32, 1, check.Source{Doc: mmpds11, How: check.Read}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "MMPDS-11 via material-properties-interchange: 200 GPa times ratio", How: check.Read}, "",
		200, 206.2, 233, 204, 255, 202.6, 294, 200.4, 322, 198.8, 366.5, 196.4, 422, 193.2, 455, 191.2),
	Expansion: kelvin(1e-6, check.Source{Doc: recalled, How: check.Memory}, "",
		373, 11.7),
	Rows: []Strength{
		{
			Product: "tubing, normalised", Spec: "MMPDS-11", Direction: "L", Basis: "S",
			LeastThickness: 0 * mm, MostThickness: 6 * mm,
			Yield:            given(517, mpa, check.Source{Doc: "MMPDS-11 via material-properties-interchange (75 and 95 ksi)", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(655, mpa, check.Source{Doc: "MMPDS-11 via material-properties-interchange (75 and 95 ksi)", How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
		{
			Product: "tubing, quenched and tempered HT-125", Spec: "MMPDS-11", Direction: "L", Basis: "A",
			LeastThickness: 0 * mm, MostThickness: 6 * mm,
			Hardened:         true,
			Yield:            given(689.5, mpa, check.Source{Doc: "MMPDS-11 via material-properties-interchange (100 and 125 ksi)", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(861.8, mpa, check.Source{Doc: "MMPDS-11 via material-properties-interchange (100 and 125 ksi)", How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
	},
	YieldRatio: kelvin(1, check.Source{Doc: mmpds11, How: check.Read}, "",
		198.9, 1.073, 233, 1.05, 255, 1.035, 294, 1.003, 323, 0.983, 366.5, 0.954, 422, 0.914, 450, 0.895),
	UltimateRatio: kelvin(1, check.Source{Doc: mmpds11, How: check.Read}, "",
		198.8, 1.058, 233, 1.033, 255, 1.02, 294, 1.002, 323, 0.995, 366.5, 0.984, 422, 0.971, 450, 0.964),
	Zones: []Zone{
		{Kind: annealedZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(517, mpa, check.Source{Doc: "MMPDS-11 normalised tubing as the ceiling", How: check.Practice}, "weld then full heat treatment recovers base; as-welded HAZ of Q&T material is hard and brittle beside the weld and softened farther out: use normalised minima and require coupons"),
			Ultimate: given(655, mpa, check.Source{Doc: "MMPDS-11 normalised tubing as the ceiling", How: check.Practice}, "")},
	},
	Cautions: []string{
		"curve ends at 199 K; do not extrapolate; minimum temperature 233 K set by judgement without Charpy data",
	},
}

// alloyS355J2 is S355J2+N.
var alloyS355J2 = Alloy{
	Name: "S355J2", Title: "S355J2+N",
	Designations: []string{"EN 10025-2", "1.0577"},
	Family:       Ferritic, Group: carbonSteel, Temper: "+N", ColdBrittle: true,
	LeastTemperature: 253, MostTemperature: 450,
	Density: given(7850, 1, check.Source{Doc: "steel data page (P235GH, 7.85 g/cm3)", How: check.Read}, ""),
	Poisson: given(0.3, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "EN 13445-3 Annex O form; recalled, not seen", How: check.Memory}, "",
		293, 210, 373, 206, 473, 199),
	Expansion: kelvin(1e-6, check.Source{Doc: "steel data page for P235GH, 20 and 100 degC", How: check.Read}, "",
		293, 11.9, 373, 12.5),
	Rows: []Strength{
		{
			Product: "plate", Spec: "EN 10025-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 3 * mm, MostThickness: 16 * mm,
			Yield:            given(355, mpa, check.Source{Doc: "reproduced Table 7 of EN 10025-2 (355 to 16 mm, 345 to 40 mm, Rm 470-630)", How: check.Read}, "A is memory"),
			Proof1:           missing,
			Ultimate:         given(470, mpa, check.Source{Doc: "reproduced Table 7 of EN 10025-2 (355 to 16 mm, 345 to 40 mm, Rm 470-630)", How: check.Read}, "A is memory"),
			Elongation:       given(20, percent, check.Source{Doc: "EN 10025-2; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "plate", Spec: "EN 10025-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 16 * mm, MostThickness: 40 * mm,
			Yield:            given(345, mpa, check.Source{Doc: "same", How: check.Read}, "A is memory"),
			Proof1:           missing,
			Ultimate:         given(470, mpa, check.Source{Doc: "same", How: check.Read}, "A is memory"),
			Elongation:       given(20, percent, check.Source{Doc: "EN 10025-2; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Cautions: []string{
		"body-centred cubic: brittle when cold. Not below the impact-test temperature (-20 degC for J2 and for the -20 option of GH grades). Never LOX, LN2, LCH4, nor N2O that can flash to -88 degC",
	},
}

// alloyP265GH is P265GH.
var alloyP265GH = Alloy{
	Name: "P265GH", Title: "P265GH",
	Designations: []string{"EN 10028-2", "1.0425"},
	Family:       Ferritic, Group: carbonSteel, Temper: "+N", ColdBrittle: true,
	LeastTemperature: 253, MostTemperature: 450,
	Density: given(7850, 1, check.Source{Doc: "steel data page (P235GH, 7.85 g/cm3)", How: check.Read}, ""),
	Poisson: given(0.3, 1, check.Source{Doc: recalled, How: check.Memory}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "EN 13445-3 Annex O form; recalled, not seen", How: check.Memory}, "",
		293, 210, 373, 206, 473, 199),
	Expansion: kelvin(1e-6, check.Source{Doc: "steel data page for P235GH, 20 and 100 degC", How: check.Read}, "",
		293, 11.9, 373, 12.5),
	Rows: []Strength{
		{
			Product: "plate", Spec: "EN 10028-2", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 16 * mm,
			Yield:            given(265, mpa, check.Source{Doc: "EN 10028-2; recalled, not seen (P235GH 235/360/24 %/27 J at -20 degC was read)", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(410, mpa, check.Source{Doc: "EN 10028-2; recalled, not seen (P235GH 235/360/24 %/27 J at -20 degC was read)", How: check.Memory}, ""),
			Elongation:       given(22, percent, check.Source{Doc: "EN 10028-2; recalled, not seen (P235GH 235/360/24 %/27 J at -20 degC was read)", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Hot: []HotTable{
		{
			Spec: "EN 10028-2", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "EN 10028-2; recalled, not seen", How: check.Memory}, "",
				50, 256, 100, 241, 150, 223, 200, 205, 250, 188),
		},
	},
	Cautions: []string{
		"body-centred cubic: brittle when cold. Not below the impact-test temperature (-20 degC for J2 and for the -20 option of GH grades). Never LOX, LN2, LCH4, nor N2O that can flash to -88 degC",
	},
}
