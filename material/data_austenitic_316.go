package material

import "proofsheet/report/check"

// This file carries AISI 316, 316L and 321, annealed.

// alloy316 is AISI 316.
var alloy316 = Alloy{
	Name: "316", Title: "AISI 316",
	Designations: []string{"UNS S31600", "EN 1.4401"},
	Family:       Austenitic, Group: annealedAustenitic, Temper: "solution annealed", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 450,
	Density: given(7950, 1, check.Source{Doc: "data sheet for 1.4404 (7.95 kg/dm3); AZoM gives 8000 for 316L", How: check.Read}, ""),
	Poisson: given(0.27, 1, check.Source{Doc: mmpds01 + " (AISI 304 / 316L common properties)", How: check.Read}, "0.27 to 0.30 is quoted; buckling results are insensitive"),
	Modulus: kelvin(gpa, check.Source{Doc: "NIST Cryogenic Material Properties fits (page text for 316 Stainless, UNS S31600), equation E or dL/L = a+bT+cT^2+dT^3+eT^4; evaluated here; 473 K: 186 GPa read in a data sheet for 1.4404; 373 K interpolated", How: check.Computed}, "NIST 293 K value 194.7 and the data-sheet 200 at 20 degC differ by 3 %",
		50, 209.5, 77, 209.1, 90, 208.7, 111.7, 207.7, 150, 205.3, 200, 201.8, 250, 198.1, 293, 194.7, 373, 193, 473, 186),
	Contraction: kelvin(1e-5, check.Source{Doc: nist304Contraction, How: check.Computed}, "fit error 5 %, data range 4-300 K, constant below 23 K",
		20, -300, 77, -279.9, 90, -269.9, 111.7, -249.9, 150, -206.4, 200, -139.1, 250, -65.5, 293, 0),
	Expansion: kelvin(1e-6, check.Source{Doc: nistMMPDS304, How: check.Computed}, "the digitised MMPDS figure gives 12.2 at 90 K, 9 % under NIST: NIST preferred when cold",
		77, 13, 90, 13.3, 111.7, 13.8, 200, 14.9, 366.5, 16.2, 422, 16.6, 450, 16.8),
	Rows: []Strength{
		{
			Product: "plate, sheet, strip", Spec: "ASTM A240", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(205, mpa, check.Source{Doc: "CASTI summary of ASTM minima for yield; stockholder table for the set 515/205/40", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(515, mpa, check.Source{Doc: "CASTI summary of ASTM minima for yield; stockholder table for the set 515/205/40", How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "CASTI summary of ASTM minima for yield; stockholder table for the set 515/205/40", How: check.Read}, ""),
			CompressiveYield: missing,
		},
	},
	Hot: []HotTable{
		{
			Spec: "EN 10269, bars, solution annealed (AT)", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "BSSA table of elevated-temperature proof strength after EN 10269, 1.4401", How: check.Read}, "the Alleima minima below are lower and stay",
				50, 191, 100, 175, 150, 158, 200, 145, 250, 135, 300, 127),
		},
		{
			Spec: "typical annealed sheet, AISI/NiDI 9004", Basis: "typical",
			Shown: "typical",
			Yield: celsius(mpa, check.Source{Doc: "High-Temperature Characteristics of Stainless Steels (NiDI 9004), transcribed in material-properties-interchange", How: check.Read}, "",
				27, 290, 149, 201, 260, 172),
			Ultimate: celsius(mpa, check.Source{Doc: "High-Temperature Characteristics of Stainless Steels (NiDI 9004), transcribed in material-properties-interchange", How: check.Read}, "",
				27, 579, 149, 517, 260, 503),
		},
		{
			Spec: "typical, annealed tube", Basis: "typical",
			Shown: "typical",
			Yield: celsius(mpa, check.Source{Doc: "cryogenic table, 40, 45, 57, 73 ksi", How: check.Read}, "",
				-168, 503, -78, 393, -40, 310, 0, 276),
		},
		{
			Spec: "Alleima 316/316L data sheet minima", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "Alleima 316/316L data sheet, transcribed in OpenSolids", How: check.Read}, "",
				20, 205, 100, 155, 200, 127),
			Ultimate: celsius(mpa, check.Source{Doc: "Alleima 316/316L data sheet, transcribed in OpenSolids", How: check.Read}, "",
				20, 515, 100, 450, 200, 400),
		},
	},
}

// alloy316L is AISI 316L.
var alloy316L = Alloy{
	Name: "316L", Title: "AISI 316L",
	Designations: []string{"UNS S31603", "EN 1.4404", "X2CrNiMo17-12-2"},
	Family:       Austenitic, Group: annealedAustenitic, Temper: "solution annealed", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 450,
	Density: given(7950, 1, check.Source{Doc: "data sheet for 1.4404: 7.95 kg/dm3", How: check.Read}, ""),
	Poisson: given(0.27, 1, check.Source{Doc: mmpds01 + " (AISI 304 / 316L common properties)", How: check.Read}, "0.27 to 0.30 is quoted; buckling results are insensitive"),
	Modulus: likeCurve(alloy316.Modulus, "taken as 316"),
	Contraction: kelvin(1e-5, check.Source{Doc: nist304Contraction, How: check.Computed}, "fit error 5 %, data range 4-300 K, constant below 23 K",
		20, -300, 77, -279.9, 90, -269.9, 111.7, -249.9, 150, -206.4, 200, -139.1, 250, -65.5, 293, 0),
	Expansion: kelvin(1e-6, check.Source{Doc: nistMMPDS304, How: check.Computed}, "the digitised MMPDS figure gives 12.2 at 90 K, 9 % under NIST: NIST preferred when cold",
		77, 13, 90, 13.3, 111.7, 13.8, 200, 14.9, 366.5, 16.2, 422, 16.6, 450, 16.8),
	Rows: []Strength{
		{
			Product: "plate, sheet, strip", Spec: "ASTM A240", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(170, mpa, check.Source{Doc: "CASTI summary: 25 ksi = 170 MPa for S31603; mill data sheet 4404: A240 170/485", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(485, mpa, check.Source{Doc: "CASTI summary: 25 ksi = 170 MPa for S31603; mill data sheet 4404: A240 170/485", How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "ASTM A240 Table 2; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "cold-rolled (C)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 8 * mm,
			Yield:            given(240, mpa, check.Source{Doc: "mill data sheet 4404 (cold-rolled, lists EN 10028-7)", How: check.Read}, ""),
			Proof1:           given(270, mpa, check.Source{Doc: "mill data sheet 4404 (cold-rolled, lists EN 10028-7)", How: check.Read}, ""),
			Ultimate:         given(530, mpa, check.Source{Doc: "mill data sheet 4404 (cold-rolled, lists EN 10028-7)", How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "hot-rolled strip (H)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 13.5 * mm,
			Yield:            given(220, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Proof1:           given(260, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Ultimate:         given(530, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "hot-rolled plate (P)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(220, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Proof1:           given(260, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Ultimate:         given(520, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(45, percent, check.Source{Doc: "EN 10028-7 Table 7, 1.4404; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Hot: []HotTable{
		{
			Spec: "EN 10028-7 values as printed in a data sheet for 1.4404", Basis: "spec_min",
			Proof1: celsius(mpa, check.Source{Doc: "supplier data sheet for S31603 / 1.4404", How: check.Read}, "",
				100, 199, 200, 167),
			Ultimate: celsius(mpa, check.Source{Doc: "supplier data sheet for S31603 / 1.4404", How: check.Read}, "",
				100, 430, 200, 390),
		},
		{
			Spec: "EN 10028-7", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "EN 10028-7 Table 13, 1.4404; recalled, not seen", How: check.Memory}, "",
				100, 166, 150, 152, 200, 137, 250, 127),
		},
		{
			Spec: "EN 10269, bars, solution annealed (AT)", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "BSSA table of elevated-temperature proof strength after EN 10269, 1.4404", How: check.Read}, "0 to 2 MPa under the recalled EN 10028-7 row: take the lower",
				50, 187, 100, 165, 150, 150, 200, 137, 250, 127, 300, 119),
		},
	},
}

// alloy321 is AISI 321.
var alloy321 = Alloy{
	Name: "321", Title: "AISI 321",
	Designations: []string{"UNS S32100", "EN 1.4541", "X6CrNiTi18-10"},
	Family:       Austenitic, Group: annealedAustenitic, Temper: "solution annealed", ColdBrittle: false,
	LeastTemperature: 4, MostTemperature: 450,
	Density: given(7900, 1, check.Source{Doc: "EN 10088-1; recalled, not seen", How: check.Memory}, ""),
	Poisson: given(0.27, 1, check.Source{Doc: mmpds01 + " (AISI 304 / 316L common properties)", How: check.Read}, "0.27 to 0.30 is quoted; buckling results are insensitive"),
	Modulus: kelvin(gpa, check.Source{Doc: "EN 10088-1 for 293 K; cold value taken as 304; recalled, not seen", How: check.Memory}, "",
		77, 214, 293, 200),
	ModulusLike: "304",
	Contraction: kelvin(1e-5, check.Source{Doc: nist304Contraction, How: check.Computed}, "fit error 5 %, data range 4-300 K, constant below 23 K",
		20, -300, 77, -279.9, 90, -269.9, 111.7, -249.9, 150, -206.4, 200, -139.1, 250, -65.5, 293, 0),
	Expansion: kelvin(1e-6, check.Source{Doc: nistMMPDS304, How: check.Computed}, "the digitised MMPDS figure gives 12.2 at 90 K, 9 % under NIST: NIST preferred when cold",
		77, 13, 90, 13.3, 111.7, 13.8, 200, 14.9, 366.5, 16.2, 422, 16.6, 450, 16.8),
	Rows: []Strength{
		{
			Product: "plate, sheet, strip", Spec: "ASTM A240", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(205, mpa, check.Source{Doc: "CASTI summary: 30 ksi for most grades", How: check.Read}, ""),
			Proof1:           missing,
			Ultimate:         given(515, mpa, check.Source{Doc: "supplier sheet for 321: 30/75 ksi, 40 %", How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "supplier sheet for 321: 30/75 ksi, 40 %", How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "cold-rolled (C)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 8 * mm,
			Yield:            given(220, mpa, check.Source{Doc: "supplier table for 1.4541 after EN 10028-7 / EN 10088-2 (its Rp1.0 column repeats 220)", How: check.Read}, ""),
			Proof1:           given(250, mpa, check.Source{Doc: "EN 10028-7 Table 7, 1.4541; recalled, not seen", How: check.Memory}, ""),
			Ultimate:         given(520, mpa, check.Source{Doc: "supplier table for 1.4541 after EN 10028-7 / EN 10088-2 (its Rp1.0 column repeats 220)", How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: "supplier table for 1.4541 after EN 10028-7 / EN 10088-2 (its Rp1.0 column repeats 220)", How: check.Read}, ""),
			CompressiveYield: missing,
		},
		{
			Product: "hot-rolled strip (H)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 13.5 * mm,
			Yield:            given(200, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Proof1:           given(240, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Ultimate:         given(520, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Elongation:       missing,
			CompressiveYield: missing,
		},
		{
			Product: "plate (P)", Spec: "EN 10028-7", Direction: "transverse", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 75 * mm,
			Yield:            given(200, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Proof1:           given(240, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Ultimate:         given(500, mpa, check.Source{Doc: supplier4541, How: check.Read}, ""),
			Elongation:       given(40, percent, check.Source{Doc: supplier4541, How: check.Read}, ""),
			CompressiveYield: missing,
		},
	},
	Hot: []HotTable{
		{
			Spec: "EN 10028-7", Basis: "spec_min",
			Yield: celsius(mpa, check.Source{Doc: "EN 10028-7 Tables 13 and 14, 1.4541; recalled, not seen", How: check.Memory}, "",
				100, 176, 150, 167, 200, 157, 250, 147),
			Proof1: celsius(mpa, check.Source{Doc: "EN 10028-7 Tables 13 and 14, 1.4541; recalled, not seen", How: check.Memory}, "",
				100, 208, 150, 196, 200, 186, 250, 177),
		},
		{
			Spec: "typical, annealed tube", Basis: "typical",
			Shown: "typical",
			Yield: celsius(mpa, check.Source{Doc: "cryogenic table, 40, 45, 50, 58 ksi", How: check.Read}, "",
				-168, 400, -78, 345, -40, 310, 0, 276),
		},
	},
}
