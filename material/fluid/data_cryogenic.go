package fluid

import "proofsheet/report/check"

// cryogenic liquids and liquefied gases, on the saturation line.
var cryogenic = []Fluid{
	{
		Name: "LOX", Title: "liquid oxygen", Kind: "cryogenic_saturated",
		density: kelvin(1, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "saturated liquid",
			56, 1299.3, 60, 1282, 66, 1255.2, 70, 1237, 75, 1213.9, 77.36, 1202.9, 80, 1190.5, 85, 1166.6, 90.188, 1141.2, 95, 1116.9, 100, 1090.9, 105, 1063.8, 110, 1035.5, 115, 1005.6, 120, 973.9),
		vapor: kelvin(bar, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			56, 0.0024, 60, 0.0073, 66, 0.0288, 70, 0.0626, 75, 0.1455, 77.36, 0.2078, 80, 0.3012, 85, 0.5683, 90.188, 1.0133, 95, 1.6308, 100, 2.5401, 105, 3.7853, 110, 5.434, 115, 7.5559, 120, 10.2228),
		vaporDensity: kelvin(1, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			56, 0.0166, 60, 0.0466, 66, 0.168, 70, 0.346, 75, 0.752, 77.36, 1.044, 80, 1.468, 85, 2.628, 90.188, 4.467, 95, 6.92, 100, 10.425, 105, 15.125, 110, 21.281, 115, 29.209, 120, 39.308),
		critical: given(154.581, 1, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, ""),
		boiling:  given(90.188, 1, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "at 1.01325 bar"),
		freezing: given(54.361, 1, check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "triple point"),
		compressed: &compressed{at: 90.188, density: pressures(check.Source{Doc: "equation of state Schmidt-Wagner 1985 / Stewart 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits); 10 and 30 bar moduli interpolated", How: check.Computed},
			1.01, 1141.2, 10, 1143.2, 20, 1145.4, 30, 1147.5, 40, 1149.6)},
	},
	{
		Name: "LN2", Title: "liquid nitrogen", Kind: "cryogenic_saturated",
		density: kelvin(1, check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "saturated liquid",
			64, 863.7, 68, 847, 70, 838.5, 75, 816.7, 77.355, 806.1, 80, 793.9, 85, 770.1, 90, 745, 95, 718.3, 100, 689.4, 105, 657.5, 110, 621.5),
		vapor: kelvin(bar, check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			64, 0.146, 68, 0.2848, 70, 0.3855, 75, 0.7604, 77.355, 1.0133, 80, 1.3687, 85, 2.2886, 90, 3.6046, 95, 5.4052, 100, 7.7828, 105, 10.833, 110, 14.658),
		critical: given(126.192, 1, check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, ""),
		boiling:  given(77.355, 1, check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "at 1.01325 bar"),
		freezing: given(63.151, 1, check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "triple point"),
		compressed: &compressed{at: 77.355, density: pressures(check.Source{Doc: "equation of state Span 2000, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed},
			1.01, 806.1, 10, 808.4, 20, 810.9, 30, 813.3, 40, 815.7)},
	},
	{
		Name: "LCH4", Title: "liquid methane", Kind: "cryogenic_saturated",
		density: kelvin(1, check.Source{Doc: "equation of state Setzmann-Wagner 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "saturated liquid",
			92, 449.7, 95, 445.7, 100, 438.9, 105, 431.9, 111.667, 422.4, 115, 417.4, 120, 409.9, 125, 402.1, 130, 394, 135, 385.6, 140, 376.9, 150, 357.9),
		vapor: kelvin(bar, check.Source{Doc: "equation of state Setzmann-Wagner 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			92, 0.138, 95, 0.198, 100, 0.344, 105, 0.564, 111.667, 1.0132, 115, 1.322, 120, 1.914, 125, 2.688, 130, 3.673, 135, 4.904, 140, 6.412, 150, 10.4),
		critical: given(190.564, 1, check.Source{Doc: "equation of state Setzmann-Wagner 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, ""),
		boiling:  given(111.667, 1, check.Source{Doc: "equation of state Setzmann-Wagner 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "at 1.01325 bar"),
		freezing: given(90.694, 1, check.Source{Doc: "equation of state Setzmann-Wagner 1991, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "triple point"),
	},
	{
		Name: "propane", Title: "propane", Kind: "liquefied_gas",
		density: kelvin(1, check.Source{Doc: "equation of state Lemmon 2009, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "saturated liquid",
			200, 615.4, 220, 593.4, 231.036, 580.9, 240, 570.4, 253.15, 554.5, 263.15, 541.8, 273.15, 528.6, 283.15, 514.7, 293.15, 500.1, 298.15, 492.4, 303.15, 484.4, 313.15, 467.5, 323.15, 448.9),
		vapor: kelvin(bar, check.Source{Doc: "equation of state Lemmon 2009, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			200, 0.202, 220, 0.606, 231.036, 1.013, 240, 1.48, 253.15, 2.445, 263.15, 3.453, 273.15, 4.745, 283.15, 6.366, 293.15, 8.365, 298.15, 9.521, 303.15, 10.79, 313.15, 13.694, 323.15, 17.133),
		critical: given(369.89, 1, check.Source{Doc: "equation of state Lemmon 2009, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, ""),
		boiling:  given(231.036, 1, check.Source{Doc: "equation of state Lemmon 2009, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "at 1.01325 bar"),
	},
	{
		Name: "N2O", Title: "nitrous oxide", Kind: "liquefied_gas",
		density: kelvin(1, check.Source{Doc: "equation of state Lemmon-Span 2006, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "saturated liquid",
			184.68, 1230.5, 200, 1184.4, 210, 1153, 220, 1120.3, 230, 1086, 240, 1049.7, 250, 1010.9, 253.15, 998.1, 258.15, 977, 263.15, 954.9, 268.15, 931.7, 273.15, 907.1, 278.15, 880.7, 283.15, 852.2, 288.15, 820.7, 293.15, 785.1, 298.15, 742.9, 300, 724.7, 303.15, 688.1, 305.15, 658.7, 307.15, 618.8),
		vapor: kelvin(bar, check.Source{Doc: "equation of state Lemmon-Span 2006, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			184.68, 1.013, 200, 2.337, 210, 3.743, 220, 5.716, 230, 8.383, 240, 11.878, 250, 16.341, 253.15, 17.971, 258.15, 20.797, 263.15, 23.934, 268.15, 27.401, 273.15, 31.221, 278.15, 35.416, 283.15, 40.012, 288.15, 45.037, 293.15, 50.525, 298.15, 56.518, 300, 58.874, 303.15, 63.075, 305.15, 65.877, 307.15, 68.797),
		vaporDensity: kelvin(1, check.Source{Doc: "equation of state Lemmon-Span 2006, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			184.68, 2.98, 200, 6.49, 210, 10.1, 220, 15.1, 230, 21.82, 240, 30.72, 250, 42.37, 253.15, 46.73, 258.15, 54.45, 263.15, 63.29, 268.15, 73.44, 273.15, 85.17, 278.15, 98.82, 283.15, 114.9, 288.15, 134.2, 293.15, 158, 298.15, 188.8, 300, 202.9, 303.15, 232.7, 305.15, 257.9, 307.15, 293.5),
		critical: given(309.52, 1, check.Source{Doc: "equation of state Lemmon-Span 2006, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, ""),
		boiling:  given(184.68, 1, check.Source{Doc: "equation of state Lemmon-Span 2006, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "at 1.01325 bar"),
		Cautions: []string{
			"critical point 36.4 degC, 72.45 bar: a tank left in the sun passes it. Design temperature sets design pressure; mean fill density above 452 kg/m3 makes it liquid-full before the critical point",
			"a widely copied 58.5 bar at 20 degC is wrong (that is the pressure near 26.6 degC); one web table of NIST semiconductor-gas data, as extracted, has its vapour-pressure column shifted by one 10 K row",
		},
	},
}
