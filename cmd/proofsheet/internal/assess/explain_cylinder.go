package assess

// thicker is what most checks of a wall ask for.
const thicker = "a thicker wall (proofsheet size finds the least of your stock)"

var cylinderExplanations = []Explanation{
	{
		ID: "cylinder/hoop", Asks: "Does the long seam carry the hoop stress of the highest pressure along the cylinder, liquid head included?",
		Formula: "p R_m/t ≤ E S", Source: "thin cylinder (Case, Chilver and Ross, read); S of the rule set",
		Limits: "R/t from 10 up; the stress crosses the long seam, so that seam's own efficiency and its weld zone count; none without a seam",
		Change: []string{"a better examined long seam", thicker, "less pressure"},
	},
	{
		ID: "cylinder/longitudinal", Asks: "Do the girth seams carry the axial stress of ullage pressure, liquid, thrust and bending, on both sides?",
		Formula: "(N_p + N_loads)/t ≤ E S", Source: "free body of everything forward of the cut (computed); S of the rule set",
		Limits: "never the local pressure times R/2; what relieves counts at its smallest, unfactored, once",
		Change: []string{"a better examined girth seam", thicker, "less bending moment or thrust"},
	},
	{
		ID: "cylinder/equivalent", Asks: "Is the wall itself, and the zone beside every weld, within the limit under hoop and axial stress together?",
		Formula: "max(|σ_θ|, |σ_x|, von Mises; Tresca where the signs differ) ≤ S", Source: "plane stress, textbook (recalled)",
		Limits: "membrane clear of joints; the zone is held without joint efficiency, over the whole cylinder",
		Change: []string{thicker, "a process with a stronger zone, or coupons", "less load"},
	},
	{
		ID: "cylinder/thickness", Asks: "Is the wall as thick as the rule set asks for, by the long and by the girth seam?",
		Formula: "t = p R/(S E − 0.6 p), p R/(2 S E_g + 0.4 p) and the European forms", Source: "ASME VIII-1 UG-27 (read); EN 13445-3 (recalled)",
		Limits: "t not above R/2; gas and head, with line loads in the girth term",
		Change: []string{thicker, "a better examined seam"},
	},
	{
		ID: "cylinder/compression", Asks: "Does the cylinder stand under axial compression and bending without buckling, at the smallest pressure and at none?",
		Formula: "N ≤ N_allowable, knock-down in it; interaction of compression, bending, torsion and shear linear", Source: "NASA SP-8007 (read in part), EN 1993-1-6 beside it",
		Limits: "R/t under 1500; both ends held: the warmth since support.assembly_temperature presses, and without it nothing is said; stiffening by pressure and by rings not counted; on the ground and near people the tank must stand without pressure",
		Change: []string{thicker, "less bending moment: a shorter stack, a wind limit", "in flight: keep the pressure up and let the case say so"},
	},
	{
		ID: "cylinder/external", Asks: "Does the cylinder stand the pressure from outside: draining with the vent closed, a vented tank, a vacuum?",
		Formula: "p_outside ≤ the lowest of the methods, each with its own factor", Source: "NASA SP-8007 and SP-8019, EN 13445-3, closed form of UG-28; rings by Bryant, UG-29 and EN 13445-3 8.5.3 (recalled where marked)",
		Limits: "out-of-roundness as assumed on the sheet; a worse measured one is not assessed",
		Change: []string{"open the top vent before draining, and write the case so", thicker, "rings: cylinder.rings", "a shorter cylinder between stiff ends"},
	},
	{
		ID: "cylinder/rings", Asks: "Does the wall stand the bending where a ring keeps it from growing, and the ring being stretched by the wall, in service and at proof?",
		Formula: "local membrane ≤ 1.5 S, Δσ_mb ≤ min(3 S, 2 Rp0.2); ring E w/r across its splice, efficiency 0.70", Source: "beam on an elastic foundation (computed), compared with a numerical shell",
		Limits: "only with cylinder.rings: flat bar, not wider than √(R t), not higher than 0.2 R nor 0.375 √(E/σ_y) of its width, 2.5 √(R t) of plain wall to the next ring and to the heads; clear of ports and girth seams. Rings count in cylinder/external alone, and only where they stand more than the plain cylinder",
		Change: []string{"a smaller section of the rings", "rings farther apart or from the heads", thicker},
	},
	{
		ID: "cylinder/column", Asks: "Does the tank stand as a column?",
		Formula: "F ≤ π² E I/(K L)²", Source: "Euler (textbook)",
		Limits: "external load and liquid, no relief by pressure; L and K from [support], else the tank's length and 2",
		Change: []string{"write column_length and column_factor of the real stack", thicker},
	},
	{
		ID: "cylinder/thermal", Asks: "Does the step of temperature at the liquid level, or a length held at both ends, stay within what a secondary stress may be?",
		Formula: "membrane ± bending ± restraint, worse face ≤ E min(3 S, 2 Rp0.2)", Source: "beam on an elastic foundation (computed)",
		Limits: "expansion as the mean from 20 °C; held ends: from support.assembly_temperature, liquid or none, and what presses counts in buckling too; secondary: it does not add to the membrane checks",
		Change: []string{"let one end move", "write support.assembly_temperature", "say over which height the temperature falls: temperature_ramp", "chill down more slowly"},
	},
	{
		ID: "cylinder/misalignment", Asks: "Does the long seam with its hi-lo, peaking and out of roundness stay within the limit on membrane and bending together?",
		Formula: "|σ_m| + σ_b ≤ E min(3 S, 2 Rp0.2), σ_b = |σ_m| k + σ_b0", Source: "form of BS 7910 Annex D (recalled), compared with a numerical shell (computed)",
		Limits: "hi-lo up to the wall, peaking up to a third of peaking_length, out of roundness up to 5 % under pressure from inside; secondary stress",
		Change: []string{"fit the seam better and measure again", "measure peaking_length", thicker},
	},
	{
		ID: "cylinder/girth-misalignment", Asks: "The same at the seams between courses, where the axial stress is across.",
		Formula: "|σ_m| (1 + 3 e/t) + σ_b0 ≤ E min(3 S, 2 Rp0.2)", Source: "edge theory (computed), form of BS 7910 Annex D (recalled)",
		Limits: "hi-lo up to the wall; peaking round the tank is not assessed", Change: []string{"fit the seam better and measure again", thicker},
	},
}
