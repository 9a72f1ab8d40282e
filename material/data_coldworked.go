package material

import "proofsheet/report/check"

// This file carries cold-worked austenitic stainless steel.

// alloy301QuarterHard is AISI 301 1/4 hard.
var alloy301QuarterHard = Alloy{
	Name: "301-quarter-hard", Title: "AISI 301 1/4 hard",
	Designations: []string{"UNS S30100", "EN 1.4310", "AMS 5517", "ASTM A666"},
	Family:       Austenitic, Group: coldWorkedAustenitic, Temper: "1/4 hard", ColdBrittle: false,
	LeastTemperature: 77, MostTemperature: 450,
	Density: given(7880, 1, check.Source{Doc: "mill sheet for cold-rolled 301 (0.285 lb/in3)", How: check.Read}, ""),
	Poisson: given(0.27, 1, check.Source{Doc: "taken as 304", How: check.Practice}, ""),
	Modulus: kelvin(gpa, check.Source{Doc: "mill sheet for cold-rolled 301: 28 Msi, with the remark that cold work lowers it", How: check.Read}, "use 180 GPa in longitudinal compression and buckling unless tested (practice)",
		293, 193),
	ModulusLike: "304",
	Expansion: kelvin(1e-6, check.Source{Doc: "same mill sheet, 20-100 degC", How: check.Read}, "",
		373, 16.6),
	Rows: []Strength{
		{
			Product: "sheet and strip", Spec: "ASTM A666 / AMS 5517", Direction: "LT", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 4.8 * mm,
			Yield:            given(517, mpa, check.Source{Doc: "A666 301 1/4 hard: 125 ksi, 75 ksi, 25 %; recalled, not seen. Only full-hard (185/140 ksi) was read", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(862, mpa, check.Source{Doc: "A666 301 1/4 hard: 125 ksi, 75 ksi, 25 %; recalled, not seen. Only full-hard (185/140 ksi) was read", How: check.Memory}, ""),
			Elongation:       given(25, percent, check.Source{Doc: "A666 301 1/4 hard: 125 ksi, 75 ksi, 25 %; recalled, not seen. Only full-hard (185/140 ksi) was read", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Zones: []Zone{
		{Kind: annealedZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(205, mpa, check.Source{Doc: "metallurgical practice; annealed minimum set as for 304", How: check.Practice}, "cold work is lost in the fusion zone and HAZ: use annealed 301 minimum (205/515) across the weld"),
			Ultimate: given(515, mpa, check.Source{Doc: "metallurgical practice; annealed minimum set as for 304", How: check.Practice}, "")},
	},
	Cautions: []string{
		"longitudinal compressive yield of cold-rolled 301 is far below tensile yield (near half); never use tensile Rp0.2 for axial compression",
		"301 transforms strongly to martensite when cold: strength rises, toughness of welds falls; LOX/LN2 use needs tests",
		"in longitudinal compression and buckling take 180 GPa for E unless tested (practice)",
	},
}

// alloy304QuarterHard is AISI 304 1/4 hard.
var alloy304QuarterHard = Alloy{
	Name: "304-quarter-hard", Title: "AISI 304 1/4 hard",
	Designations: []string{"UNS S30400", "ASTM A666"},
	Family:       Austenitic, Group: coldWorkedAustenitic, Temper: "1/4 hard", ColdBrittle: false,
	LeastTemperature: 77, MostTemperature: 450,
	Density:     likeValue(alloy304.Density, "cold work does not change it appreciably"),
	Poisson:     likeValue(alloy304.Poisson, "cold work does not change it appreciably"),
	Modulus:     likeCurve(alloy301QuarterHard.Modulus, "as cold-rolled 301"),
	ModulusLike: "304",
	Expansion:   likeCurve(alloy304.Expansion, "cold work does not change it appreciably"),
	Rows: []Strength{
		{
			Product: "sheet and strip", Spec: "ASTM A666", Direction: "LT", Basis: "spec_min",
			LeastThickness: 0 * mm, MostThickness: 4.8 * mm,
			Yield:            given(517, mpa, check.Source{Doc: "A666 304 1/4 hard: 125 ksi, 75 ksi, 10 to 12 % by thickness; recalled, not seen", How: check.Memory}, ""),
			Proof1:           missing,
			Ultimate:         given(862, mpa, check.Source{Doc: "A666 304 1/4 hard: 125 ksi, 75 ksi, 10 to 12 % by thickness; recalled, not seen", How: check.Memory}, ""),
			Elongation:       given(10, percent, check.Source{Doc: "A666 304 1/4 hard: 125 ksi, 75 ksi, 10 to 12 % by thickness; recalled, not seen", How: check.Memory}, ""),
			CompressiveYield: missing,
		},
	},
	Zones: []Zone{
		{Kind: annealedZone, Product: "any", LeastThickness: 0 * mm, MostThickness: 80 * mm,
			Yield:    given(205, mpa, check.Source{Doc: "as 304", How: check.Practice}, "annealed 304 across the weld"),
			Ultimate: given(515, mpa, check.Source{Doc: "as 304", How: check.Practice}, "")},
	},
	Cautions: []string{
		"longitudinal compressive yield of cold-worked austenitic sheet is far below its tensile yield; in longitudinal compression and buckling take 180 GPa for E unless tested (practice)",
	},
}
