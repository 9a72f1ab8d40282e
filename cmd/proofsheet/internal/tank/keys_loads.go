package tank

import "proofsheet/report/unit"

// sectionKeys are the section forces of a case or of one of its stations.
var sectionKeys = []field{
	quantity("axial_force", unit.Force, anyNumber, "-35 kN", "in the stack at station, inertia forward of it included, tension positive, without pressure thrust and this tank's liquid"),
	quantity("axial_compression", unit.Force, notNegative, "35 kN", "in place of axial_force: the same, compression as a positive number"),
	quantity("bending_moment", unit.Moment, anyNumber, "3 kN m", "at station"),
	quantity("shear_force", unit.Force, anyNumber, "2 kN", "at station"),
}

var caseKeys = append(append([]field{
	{key: "name", form: formName, example: quote("burnout"), doc: "name of the case; meop, flight and proof are reserved", required: true},
	choice("people", "near: somebody may stand by, the vessel rule applies; clear: nobody does", "near", "clear"),
	text("people_source", "range safety plan 3.1", "who keeps people away; needed to clear a ready-made ground case"),
	choice("rule", "override of the basis for this case", rules...),
	quantity("ullage_pressure", unit.Pressure, anyNumber, "25 bar", "across the wall; or \"vapour\" for saturated contents, from their warmest down to their coldest; or ullage_absolute; default meop").or("vapour"),
	quantity("ullage_absolute", unit.AbsolutePressure, notNegative, "26 bara", "absolute ullage pressure, with outside_absolute or altitude"),
	quantity("least_ullage_pressure", unit.Pressure, anyNumber, "22 bar", "the smallest that may stand with the same loads, for what pressure relieves, and below 0 for suction on every part; default the ullage pressure"),
	quantity("outside_absolute", unit.AbsolutePressure, notNegative, "1.013 bara", "absolute pressure outside"),
	quantity("altitude", unit.Length, anyNumber, "3000 m", "above sea level, standard atmosphere, in place of outside_absolute"),
	number("axial_load_factor", anyNumber, "5.5", "what the liquid feels in g0, positive aft; 1 standing on the pad"),
	number("dynamic_factor", atLeast1, "1.5", "on a sudden step of the axial load factor: the factor less the one before is multiplied; before, settled and swung beyond are judged; write line loads with it"),
	number("axial_load_factor_before", anyNumber, "1", "before the step; with dynamic_factor"),
	number("lateral_load_factor", notNegative, "0.3", "in g0, taken in the worst direction"),
	quantity("liquid_mass", unit.Mass, notNegative, "40 kg", "or fill, or level: one is required"),
	number("fill", fullShare, "0.25", "share of the tank's volume"),
	quantity("level", unit.Length, notNegative, "0.6 m", "above the lowest inside point as the liquid lies"),
	quantity("slosh_amplitude", unit.Length, positive, "50 mm", "how high the liquid swings on the wall at its surface: slosh in pressure and line loads, linear first mode; left out: none"),
	quantity("temperature", unit.Temperature, positive, "20 degC", "of the metal; default the warmer of the liquid and 20 degC"),
	quantity("temperature_ramp", unit.Length, notNegative, "50 mm", "length of wall over which its temperature changes at the liquid's level; default 0, a step"),
}, sectionKeys...),
	quantity("station", unit.Length, anyNumber, "600 mm", "where they act; default the forward head seam"),
	tables("loads", "section forces at several stations, in place of the keys above",
		append([]field{quantity("station", unit.Length, anyNumber, "600 mm", "where they act").must()}, sectionKeys...)...),
	number("cycles", notNegative, "4", "how often in the tank's life"),
	boolean("ground", "the case happens on the ground"),
	choice("kind", "ready-made ground case; transport, lift and landing take the axial load factor either way, pad adds the wind on the tank to what is written", "pad", "transport", "lift", "drain", "landing"),
	boolean("present", "pressure and line load always act together"),
)

var flightKeys = []field{
	file("history", "flight.csv", "rows of time, ullage_pressure or ullage_absolute, axial_load_factor or axial_acceleration, …").must(),
	choice("people", "clear: nobody near; near: the vessel rule applies", "clear", "near"),
	text("people_source", "range safety plan 3.1", "who keeps people away"),
	choice("acceleration", "what axial_acceleration is: sensed, or vertical for the kinematic one of a vertical flight", "sensed", "vertical"),
	choice("rule", "override of the basis for the history", rules...),
	quantity("slosh_amplitude", unit.Length, positive, "50 mm", "how high, all along the history, the liquid swings on the wall at its surface: slosh in pressure and line loads, linear first mode; left out: none"),
	number("cycles", notNegative, "4", "how often in the tank's life"),
	{key: "columns", form: formColumns, doc: "our column name = the file's heading with its unit in (…) or […]", example: quote("t (s)")},
}
