package tank

import (
	"proofsheet/material/fluid"
	"proofsheet/report/unit"
)

// root is the tank file, table by table, in the order of the starter file.
var root = []field{
	table("sheet", "title block; all optional", sheetKeys...),
	table("basis", "where allowable stress and factors come from", basisKeys...),
	table("pressure", "what the tank is built for", pressureKeys...).must(),
	table("contents", "the liquid in service", contentsKeys...).must(),
	named("material", "materials, each with a name of your own", materialKeys...).must(),
	named("joint", "weld joints, each with a name of your own", jointKeys...).must(),
	table("cylinder", "the parallel part: one diameter, one wall", cylinderKeys...).must(),
	table("head", "the two ends",
		table("aft", "the end at the smaller z", headKeys...).must(),
		table("forward", "the end at the larger z", headKeys...).must()).must(),
	tables("port", "openings, any number", portKeys...),
	table("support", "who carries the tank", supportKeys...),
	tables("case", "load cases, any number; meop and proof always exist", caseKeys...),
	table("flight", "a flight history, optional", flightKeys...),
	table("proof", "the proof test", proofKeys...),
	table("stock", "what sizing may choose from, optional", stockKeys...),
	{key: "scatter", form: formScatter, doc: "spread of numbers of this file, for studies: a quoted key = \"normal SPREAD\" (standard deviation) or \"uniform SPREAD\" (half the width); \"joint.NAME.coupons\" = \"coupons\" for a weld that scatters as its coupons do", example: quote("normal 0.05 mm")},
}

var sheetKeys = []field{
	text("title", "Fuel tank", "title of the sheet"),
	text("number", "T-001", "number of the sheet"),
	text("serial", "S-01", "serial of the tank"),
	text("revision", "A", "revision of the sheet"),
	text("project", "Demo", "project"),
	{key: "date", form: formDate, example: quote("2026-01-31"), doc: "issue date, year-month-day; left out: undated"},
	text("prepared", "A. Name", "name under the empty signature line; not a signature"),
	text("checked", "B. Name", "name under the empty signature line; not a signature"),
	text("approved", "C. Name", "name under the empty signature line; not a signature"),
	choice("units", "display units", "si", "us"),
	choice("paper", "paper of the sheet", "a4", "letter"),
}

var basisKeys = []field{
	choice("rule", "rule set of allowable stresses and factors; people may be near: vessel, vessel-eu; nobody near: flight", rules...),
	override("yield_factor", atLeast1, "1.5", "factor on pressure against yield, in place of the rule's; needs source"),
	override("ultimate_factor", atLeast1, "2.0", "factor on pressure against ultimate, in place of the rule's; needs source"),
	override("load_yield_factor", atLeast1, "1.25", "factor on line loads against yield, in place of the rule's; needs source"),
	override("load_ultimate_factor", atLeast1, "1.5", "factor on line loads against ultimate, in place of the rule's; needs source"),
	override("buckling_factor", atLeast1, "1.5", "factor on the loads of every stability check, in place of the rule's; needs source"),
	override("proof_factor", atLeast1, "1.5", "proof pressure over MEOP, in place of the rule's; needs source"),
	override("burst_factor", atLeast1, "2.0", "burst pressure over MEOP, in place of the rule's; needs source"),
	override("proof_limit", someShare, "0.9", "membrane stress at proof over yield, in place of the rule's; needs source"),
	boolean("austenitic_90", "allow austenitic steels 0.9 of yield where a slight growth is acceptable; needs source"),
	choice("coupon_basis", "statistical basis of coupon tests; B needs source", "A", "B"),
	text("source", "programme requirement 4.2", "source of the overrides that have none of their own"),
}

var rules = []string{"vessel", "vessel-eu", "flight"}

var pressureKeys = []field{
	quantity("meop", unit.Pressure, positive, "25 bar", "maximum expected operating pressure: highest ullage pressure ever, relief accumulation and tolerance included, across the wall").must(),
	quantity("relief", unit.Pressure, positive, "22.5 bar", "set pressure of the relief device; set x (1 + accumulation) must not exceed meop"),
	number("accumulation", share, "0.10", "rise of pressure while the relief device blows, share of the set pressure"),
}

var contentsKeys = []field{
	listed("fluid", "isopropanol", "built-in fluid, or a share by mass between two of them, as ethanol-85; or density with source", fluidNames).beyond(openList{takes: knownFluid, pattern: sharePattern, like: fluid.Like}),
	quantity("density", unit.Density, positive, "786 kg/m3", "own density, in place of fluid; needs source"),
	text("source", "supplier's data sheet", "source of the own density"),
	quantity("temperature", unit.Temperature, positive, "20 degC", "of the liquid; or coldest and warmest"),
	quantity("coldest", unit.Temperature, positive, "5 degC", "of the liquid, where it is densest"),
	quantity("warmest", unit.Temperature, positive, "35 degC", "of the liquid, where it fills the tank most"),
	number("least_ullage", share, "0.05", "least gas volume at the warmest, share of the tank's volume"),
}

var materialKeys = []field{
	listed("alloy", "304L", "built-in alloy; or own values with family and source", alloyNames).beyond(openList{means: alloyOf}),
	text("spec", "ASTM A240", "specification that picks the alloy's row"),
	text("product", "plate", "product form that picks the alloy's row"),
	text("certificate", "heat 1234", "heat or certificate, printed"),
	boolean("cold_strength", "use strength below room temperature, from typical curves, in walls wholly under liquid"),
	choice("family", "own values: the family of the alloy", "ferritic", "austenitic", "aluminium", "titanium"),
	quantity("yield", unit.Pressure, positive, "170 MPa", "own yield or 0.2 % proof strength"),
	quantity("ultimate", unit.Pressure, positive, "485 MPa", "own ultimate strength"),
	quantity("elastic_modulus", unit.Pressure, positive, "195 GPa", "own elastic modulus"),
	number("poisson", poisson, "0.3", "own Poisson's ratio"),
	quantity("density", unit.Density, positive, "7900 kg/m3", "own density"),
	quantity("expansion", unit.Expansion, positive, "16e-6 1/K", "own thermal expansion"),
	number("elongation", fullShare, "0.40", "own elongation at fracture, share; left out: brittleness is not assessed"),
	quantity("allowable", unit.Pressure, positive, "115 MPa", "own allowable stress; caps the vessel rules"),
	quantity("welded_yield", unit.Pressure, positive, "170 MPa", "own yield strength in the weld's zone"),
	quantity("welded_ultimate", unit.Pressure, positive, "485 MPa", "own ultimate strength in the weld's zone"),
	text("source", "mill certificate 1234", "source of the own values"),
	quantity("toughness", unit.Toughness, positive, "60 MPa m^0.5", "least fracture toughness of wall and weld zone at the temperatures of service; needs toughness_source"),
	quantity("toughness_most", unit.Toughness, positive, "110 MPa m^0.5", "most that it can be at the proof: what flaw the proof finds rests on it; needs toughness"),
	text("toughness_source", "test report 5", "source of toughness"),
	table("strain_life", "of the plain metal at the edge of a port's hole, as the weld leaves it: Δε/2 = (strength/E) (2N)^strength_exponent + ductility (2N)^ductility_exponent",
		quantity("strength", unit.Pressure, positive, "1000 MPa", "fatigue strength coefficient").must(),
		number("strength_exponent", below0, "-0.114", "fatigue strength exponent").must(),
		number("ductility", positive, "0.171", "fatigue ductility coefficient").must(),
		number("ductility_exponent", below0, "-0.402", "fatigue ductility exponent, below strength_exponent").must(),
		text("source", "test report 6", "who measured it, on which plate and at which temperature").must()),
}

var jointKeys = []field{
	listed("kind", "double butt", "kind of joint", jointKinds).must(),
	choice("examination", "radiographic or ultrasonic examination", "none", "spot", "full"),
	text("root", "borescope over the whole length", "how the whole root was seen: kind \"single butt, root seen\" counts as double butt only with it"),
	number("efficiency", someShare, "0.80", "override of the joint efficiency; needs source"),
	text("source", "programme requirement 4.2", "source of the override"),
	choice("process", "welding process", "tig", "mig"),
	quantity("hi_lo", unit.Length, notNegative, "0.5 mm", "offset of the two walls at the seam"),
	quantity("peaking", unit.Length, notNegative, "1 mm", "departure from the round at the seam"),
	quantity("flaw", unit.Length, positive, "1.5 mm", "depth of the deepest flaw that the examination may miss"),
	quantity("peaking_length", unit.Length, positive, "25 mm", "straight wall on each side of the peak; default three times peaking, the worst"),
	file("coupons", "coupons.csv", "coupon tests: columns coupon, ultimate [MPa], yield [MPa], thickness [mm], gauge_length [mm], failure; or load [kN], yield_load [kN] with width [mm]; kind weld or parent"),
	choice("coupon_basis", "statistical basis of the coupon tests; B needs source in [basis]", "A", "B"),
}

var cylinderKeys = []field{
	quantity("inside_diameter", unit.Length, positive, "400 mm", "nominal inside diameter; or outside_diameter"),
	quantity("outside_diameter", unit.Length, positive, "412 mm", "nominal outside diameter; or inside_diameter"),
	quantity("length", unit.Length, positive, "1200 mm", "between head seams, straight flanges not included").must(),
	quantity("thickness", unit.Length, positive, "6 mm", "nominal wall").must(),
	quantity("under_tolerance", unit.Length, notNegative, "0.3 mm", "how much the wall may be thinner than nominal; or least_thickness"),
	quantity("least_thickness", unit.Length, positive, "5.7 mm", "measured least wall; replaces under_tolerance"),
	quantity("corrosion", unit.Length, notNegative, "0 mm", "corrosion allowance"),
	quantity("out_of_round", unit.Length, notNegative, "2 mm", "largest less smallest diameter, as measured or allowed"),
	refers("material", "material", "plate", "a [material.NAME]").must(),
	refers("long_seam", "joint", "long", "a [joint.NAME]; \"none\" only for drawn or extruded tube").orNone().must(),
	quantity("long_seam_clock", unit.Angle, anyNumber, "180 deg", "where the long seam lies; clockwise looking forward"),
	refers("girth_seam", "joint", "girth", "a [joint.NAME] between courses, with girth_stations; left out: one course"),
	table("rings", "equal rings of flat bar round the cylinder, welded to it all round, against pressure from outside",
		field{key: "stations", form: formQuantities, unit: unit.Length, sense: positive, example: `["300 mm", "600 mm"]`, doc: "of the rings; or count"},
		field{key: "count", form: formCount, sense: atLeast1, example: "3", doc: "number of rings, equally spaced between the head seams"},
		quantity("width", unit.Length, positive, "5 mm", "of the bar, along the tank axis").must(),
		quantity("height", unit.Length, positive, "30 mm", "of the bar, away from the wall").must(),
		quantity("under_tolerance", unit.Length, notNegative, "0.3 mm", "how much width and height may be less; default the wall's"),
		choice("side", "the face of the wall they stand on", "outside", "inside"),
		refers("material", "material", "plate", "a [material.NAME]; default the wall's")),
	{key: "girth_stations", form: formQuantities, unit: unit.Length, sense: positive, example: `["600 mm"]`, doc: "stations of the girth seams between courses"},
}
