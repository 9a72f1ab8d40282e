package assess

var portExplanations = []Explanation{
	{
		ID: "port.N/area", Asks: "Is the metal cut out for a tube replaced near the hole, in both planes, on the whole and on each side alone?",
		Formula: "A_1 + … + A_5 ≥ A, each side A/2; pressure-area p ≤ p_max", Source: "ASME VIII-1 UG-37 (read), pressure-area method (recalled); obliquity derived here",
		Limits: "tube axis to wall normal up to 60 degrees; the worst of the methods governs",
		Change: []string{"a pad", "a thicker tube, long enough outside", "a thicker wall", "a smaller or less oblique hole (proofsheet size tries them)"},
	},
	{
		ID: "port.N/neck", Asks: "Is the tube's own wall thick enough at the port?",
		Formula: "t_n ≥ max(t_a, min(t_b3, max(t_b1, t_b2)))", Source: "ASME VIII-1 UG-45 (read, pipe table recalled)",
		Limits: "tolerance and corrosion off; 12.5 % where the tube's tolerance is not written", Change: []string{"a thicker tube", "seamless tube: seam = \"none\""},
	},
	{
		ID: "port.N/weld", Asks: "Are the fillets and the groove large enough, and does no path through welds tear first?",
		Formula: "t_1 + t_2 ≥ 1.25 t_min; each path ΣR ≥ min(W, W_i)", Source: "ASME VIII-1 UW-16, UG-41 (read); unit strengths recalled",
		Limits: "a fillet under 60 degrees carries nothing unless grooved to full penetration", Change: []string{"larger legs", "groove = \"full\""},
	},
	{
		ID: "port.N/spacing", Asks: "Is the port far enough from its neighbours, or do they share their metal safely?",
		Formula: "shared limits ΣA ≥ A; centre distance over 4/3 of the mean diameter", Source: "ASME VIII-1 UG-42 (read), least distances recalled",
		Limits: "distances along the wall, chords along the line of centres", Change: []string{"a wider ring or fewer ports", "thicker tubes or wall"},
	},
	{
		ID: "port.N/placement", Asks: "Does the hole with its metal stand clear of rims, knuckles, tips and seams between parts?",
		Formula: "hole and the wall that it needs beside it ≤ distance along the wall", Source: "European method (recalled); geometry derived here",
		Limits: "a hole across a seam between parts is refused", Change: []string{"move the port: radius, clock or station"},
	},
	{
		ID: "port.N/thrust", Asks: "Do welds and tube carry the end thrust of the tube and what the piping puts on it?",
		Formula: "p π OD²/4 + F + 2 M/r ≤ R", Source: "equilibrium; unit strengths of UW-15 (recalled)",
		Limits: "screening of the wall beside the port; a stiff line moves more load than it says", Change: []string{"support the line", "larger welds", "a thicker tube"},
	},
	{
		ID: "port.N/external-load", Asks: "Does the wall beside the port carry the force and moment of the piping?",
		Formula: "local membrane by the local radius", Source: "table of spheres and local-radius form (recalled)",
		Limits: "a screening, said so on the sheet", Change: []string{"support the line", "a pad"},
	},
	{
		ID: "port.N/hammer", Asks: "Does the port stand the surge when its line is shut?",
		Formula: "p + ρ c Δv", Source: "Joukowsky (textbook)",
		Limits: "line as written in the port's line table", Change: []string{"close the valve more slowly", "a lower velocity"},
	},
	{
		ID: "port.N/bolts", Asks: "Do the bolts of a cover carry its thrust and seat its gasket?",
		Formula: "W ≤ n A_b S_b", Source: "ASME VIII-1 App. 2 form (recalled)", Limits: "as head.X/bolts", Change: []string{"more or larger bolts"},
	},
	{
		ID: "port.N/seal", Asks: "Does a cover or fitting stay closed on its seal?",
		Formula: "preload ≥ thrust on the seal diameter", Source: "equilibrium (computed)", Limits: "an O-ring seats without load", Change: []string{"more preload", "a smaller seal"},
	},
	{
		ID: "port.N/thread", Asks: "Does the thread of a boss hold the fitting?",
		Formula: "thrust ≤ shear area × allowable", Source: "published thread geometry", Limits: "engagement as written", Change: []string{"a longer engagement"},
	},
	{
		ID: "port.N/cover", Asks: "Is the flat cover of a port thick enough?",
		Formula: "t = d √(C p/S + …)", Source: "ASME VIII-1 UG-34 (read)", Limits: "round and flat", Change: []string{"a thicker cover"},
	},
}
