package tank

import "proofsheet/report/unit"

// boltKeys hold a flat cover.
var boltKeys = []field{
	field{key: "count", form: formCount, sense: atLeast1, example: "12", doc: "number of bolts"}.must(),
	text("size", "1/4-28 UNF", "thread: \"M10\", \"M20x1.5\", \"1/4-28 UNF\"").must(),
	quantity("circle", unit.Length, positive, "140 mm", "diameter of the bolt circle").must(),
	quantity("hole", unit.Length, positive, "11 mm", "diameter of the holes in the cover; default 1.25 of the bolt's"),
	quantity("strength", unit.Pressure, positive, "580 MPa", "proof strength of the bolt, from its class or certificate").unlike(propertyClass),
	quantity("preload", unit.Force, positive, "8 kN", "of one bolt; without it the seal is not assessed"),
	number("scatter", share, "0.25", "by how much of itself the preload may turn out less or more; default 0.25"),
	quantity("expansion", unit.Expansion, positive, "12e-6 1/K", "mean thermal expansion of the bolts; left out: the worse of 10.5e-6 and 18e-6 1/K"),
}

// sealKeys keep a flat cover tight.
var sealKeys = []field{
	choice("kind", "kind of seal", "o-ring", "gasket").must(),
	quantity("diameter", unit.Length, positive, "127 mm", "the pressure acts within: outer edge of the o-ring's groove, or mean diameter of the gasket's contact face").must(),
	quantity("squeeze", unit.Force, notNegative, "2 kN", "o-ring: force that flattens the whole ring; default 10 N for each mm of its circumference"),
	quantity("width", unit.Length, positive, "10 mm", "gasket: of its contact face"),
	number("gasket_factor", notNegative, "2.0", "gasket: m, stress kept on it over the pressure"),
	quantity("seating_stress", unit.Pressure, notNegative, "11 MPa", "gasket: y, stress that seats it"),
	text("source", "maker's data sheet 12", "gasket: where m and y come from"),
}

// threadKeys describe the thread of a boss.
var threadKeys = []field{
	text("size", "M20x1.5", "parallel thread: \"M20x1.5\", \"7/16-20 UNF\"").must(),
	quantity("engagement", unit.Length, positive, "14 mm", "length of full threads in engagement").must(),
	quantity("seal_diameter", unit.Length, positive, "24 mm", "the pressure acts within").must(),
	quantity("squeeze", unit.Force, notNegative, "0.7 kN", "force that flattens the o-ring; default 10 N for each mm of its circumference"),
	quantity("preload", unit.Force, notNegative, "6 kN", "with which the fitting is screwed home").must(),
	number("scatter", share, "0.25", "by how much of itself the preload may turn out less or more; default 0.25"),
	refers("material", "material", "plate", "a [material.NAME]: of the fitting").must(),
}

// coverKeys describe the plate of a bolted cover.
var coverKeys = []field{
	quantity("thickness", unit.Length, positive, "20 mm", "nominal, what is left under grooves and the ends of holes").must(),
	quantity("under_tolerance", unit.Length, notNegative, "0.3 mm", "default the wall's"),
	refers("material", "material", "plate", "default the wall's"),
}
