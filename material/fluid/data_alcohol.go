package fluid

import "proofsheet/report/check"

// alcohols, and ethanol with water by mass.
var alcohols = []Fluid{
	{
		Name: "ethanol", Title: "ethanol, anhydrous", Formula: "C2H5OH", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "equation of state Schroeder 2014, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits); OIML R 22 formula gives 789.24 at 20 degC", How: check.Computed}, "",
			-20, 823.3, -10, 814.9, 0, 806.4, 10, 797.9, 15, 793.7, 20, 789.4, 25, 785.1, 30, 780.8, 40, 772.1),
		bulk: celsius(gpa, check.Source{Doc: "equation of state Schroeder 2014, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits); OIML R 22 formula gives 789.24 at 20 degC", How: check.Computed}, "",
			0, 1.014, 10, 0.949, 20, 0.888, 30, 0.83, 40, 0.774),
	},
	{
		Name: "ethanol-70", Title: "ethanol 70 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 900.05, -10, 892.18, 0, 884.17, 10, 875.99, 15, 871.83, 20, 867.61, 25, 863.34, 30, 859.02, 40, 850.22),
	},
	{
		Name: "ethanol-75", Title: "ethanol 75 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 888.44, -10, 880.47, 0, 872.35, 10, 864.07, 15, 859.86, 20, 855.6, 25, 851.29, 30, 846.93, 40, 838.04),
	},
	{
		Name: "ethanol-80", Title: "ethanol 80 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 876.64, -10, 868.52, 0, 860.3, 10, 851.93, 15, 847.68, 20, 843.39, 25, 839.04, 30, 834.65, 40, 825.68),
	},
	{
		Name: "ethanol-90", Title: "ethanol 90 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 851.59, -10, 843.31, 0, 834.95, 10, 826.49, 15, 822.2, 20, 817.88, 25, 813.53, 30, 809.13, 40, 800.21),
	},
	{
		Name: "ethanol-92.5", Title: "ethanol 92.5 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 844.75, -10, 836.54, 0, 828.2, 10, 819.73, 15, 815.44, 20, 811.13, 25, 806.78, 30, 802.41, 40, 793.57),
	},
	{
		Name: "ethanol-95", Title: "ethanol 95 % by mass", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "OIML R 22 (1975) general formula, coefficients read in three independent copies", How: check.Computed}, "valid -20 to 40 degC; below the freezing line of the mixture the formula is meaningless",
			-20, 837.66, -10, 829.52, 0, 821.21, 10, 812.74, 15, 808.45, 20, 804.14, 25, 799.81, 30, 795.47, 40, 786.72),
	},
	{
		Name: "methanol", Title: "methanol", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "equation of state de Reuck-Craven 1993, coefficients read from CoolProp fluid file, saturation and density solved here (not the ancillary fits)", How: check.Computed}, "",
			-20, 828.6, -10, 819.1, 0, 809.7, 10, 800.4, 15, 795.7, 20, 791, 25, 786.3, 30, 781.6, 40, 772.2),
	},
	{
		Name: "isopropanol", Title: "isopropanol", Kind: "liquid",
		density: celsius(1, check.Source{Doc: "785 at 20 degC read (0.785 g/mL); slope about -0.8 kg/m3/K recalled, not seen", How: check.Memory}, "good to 0.3 %",
			0, 801, 10, 793, 20, 785, 25, 781, 30, 776, 40, 768),
	},
}
