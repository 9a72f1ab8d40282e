package fluid

import "proofsheet/report/check"

// kerosene, peroxide and water.
var others = []Fluid{
	{
		Name: "RP-1", Title: "RP-1 kerosene", Kind: "liquid",
		slope: &slope{at: 15 + zeroCelsius, least: 799, typical: 806, most: 815, perKelvin: -0.74,
			source: check.Source{Doc: "MIL-DTL-25576 limits 799 to 815 at 15 degC; recalled, not seen; slope computed for n-dodecane", How: check.Memory}, note: ""},
	},
	{
		Name: "JetA", Title: "Jet A / Jet A-1", Kind: "liquid",
		slope: &slope{at: 15 + zeroCelsius, least: 775, typical: 804, most: 840, perKelvin: -0.74,
			source: check.Source{Doc: "ASTM D1655 / MIL-HDBK-1022A table 775 to 840 (read); Jet A-1 0.804 and Jet A 0.820 typical (read); slope computed for n-dodecane (EOS Lemmon-Huber 2004)", How: check.Read}, note: "use rho_max for head pressure and rho_min for loaded mass"},
	},
	{
		Name: "HTP-85", Title: "hydrogen peroxide 85 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1360.165, typical: 1367, most: 1373.8349999999998, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Computed}, note: "± 0.5 %; interpolated"},
	},
	{
		Name: "HTP-87.5", Title: "hydrogen peroxide 87.5 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1373.1, typical: 1380, most: 1386.8999999999999, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Computed}, note: "± 0.5 %; interpolated"},
	},
	{
		Name: "HTP-90", Title: "hydrogen peroxide 90 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1385.04, typical: 1392, most: 1398.9599999999998, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Read}, note: "± 0.5 %; 1.39 at 20 degC read; 1387 at 25 degC memory"},
	},
	{
		Name: "HTP-95", Title: "hydrogen peroxide 95 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1412.9, typical: 1420, most: 1427.1, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Read}, note: "± 0.5 %; 1420 read in an open flight-mechanics header"},
	},
	{
		Name: "HTP-98", Title: "hydrogen peroxide 98 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1429.815, typical: 1437, most: 1444.185, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Memory}, note: "± 0.5 %; 1432 at 25 degC memory"},
	},
	{
		Name: "HTP-100", Title: "hydrogen peroxide 100 % by mass", Kind: "liquid",
		slope: &slope{at: 20 + zeroCelsius, least: 1441.7549999999999, typical: 1449, most: 1456.245, perKelvin: -1.1,
			source: check.Source{Doc: "anchors read for 90, 95, 100 %; others interpolated; slope from 1449 at 20 to 1443 at 25 degC", How: check.Read}, note: "± 0.5 %; 1.448 to 1.45 at 20 degC read; 1443 at 25 degC read (ECHA)"},
	},
	{
		Name: "water", Title: "water (proof-test fluid)", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "equation of state IAPWS-95, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			4, 999.97, 5, 999.97, 10, 999.7, 15, 999.1, 20, 998.21, 25, 997.05, 30, 995.65, 40, 992.22),
		bulk: celsius(gpa, check.Source{Doc: "IAPWS-95, isothermal, 1 bar", How: check.Computed}, "",
			5, 2.034, 10, 2.092, 15, 2.14, 20, 2.179, 25, 2.21, 30, 2.234, 40, 2.261),
		expansion: celsius(1e-6, check.Source{Doc: "IAPWS-95, 1 bar", How: check.Computed}, "",
			5, 16, 10, 87.9, 15, 150.8, 20, 206.8, 25, 257.3, 30, 303.4, 40, 385.5),
		softening: celsius(1e-12, check.Source{Doc: "change of water's compressibility with temperature, from the IAPWS-95 and Kell 1975 values of the compressibility", How: check.Computed}, "",
			5, -3.05, 10, -2.42, 15, -1.90, 20, -1.48, 25, -1.11, 30, -0.80),
		freezing: given(273.15, 1, check.Source{Doc: "IAPWS-95 water, melting at 1 atm", How: check.Memory}, ""),
		compressed: &compressed{at: 293.15, density: pressures(check.Source{Doc: "IAPWS-95", How: check.Computed},
			1, 998.21, 20, 999.08, 50, 1000.44, 100, 1002.69, 150, 1004.93)},
	},
}
