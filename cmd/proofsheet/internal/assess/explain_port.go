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
		Limits: "tolerance and corrosion off; 12.5 % where the tube's tolerance is not written; at proof t_a alone, with the share of yield", Change: []string{"a thicker tube", "seamless tube: seam = \"none\""},
	},
	{
		ID: "port.N/weld", Asks: "Are the fillets and the groove large enough, and does no path through welds tear first?",
		Formula: "t_1 + t_2 ≥ 1.25 t_min; each path ΣR ≥ min(W, W_i)", Source: "ASME VIII-1 UW-16, UG-41 (read); unit strengths recalled",
		Limits: "a fillet under 60 degrees carries nothing unless grooved to full penetration; at proof the paths alone, with the share of yield", Change: []string{"larger legs", "groove = \"full\""},
	},
	{
		ID: "port.N/spacing", Asks: "Is the port far enough from its neighbours, or do they share their metal safely?",
		Formula: "shared limits ΣA ≥ A; centre distance over 4/3 of the mean diameter", Source: "ASME VIII-1 UG-42 (read), least distances recalled",
		Limits: "distances along the wall, chords along the line of centres", Change: []string{"a wider ring or fewer ports", "thicker tubes or wall"},
	},
	{
		ID: "port.N/placement", Asks: "Does the hole with its metal stand clear of rims, knuckles, tips and seams between parts?",
		Formula: "hole and the wall that it needs beside it ≤ distance along the wall", Source: "European method (recalled); geometry derived here",
		Limits: "a hole across a seam between parts is refused; in a bolted cover it keeps from the seal, in place of a rim", Change: []string{"move the port: radius, clock or station"},
	},
	{
		ID: "port.N/thrust", Asks: "Do welds and tube carry the end thrust of the tube and what the piping puts on it?",
		Formula: "p π OD²/4 + F + 2 M/r ≤ R", Source: "equilibrium; unit strengths of UW-15 (recalled)",
		Limits: "screening of the wall beside the port, membrane to 1.5 S and with bending to min(3 S, 2 Rp0.2), by flight 2 F_ty and the load with its factor over that of pressure, from 1 up; in a knuckle or beside an ellipsoid's rim with the numerical shell's stress, not on a flat head; a stiff line moves more load than it says; at proof with the load of service, the wall to yield", Change: []string{"support the line", "larger welds", "a thicker tube"},
	},
	{
		ID: "port.N/insert", Asks: "Does the butt weld round an inserted plate carry what the wall must carry there?",
		Formula: "max(t_r, N/S) ≤ E t", Source: "ASME VIII-1 UG-27 and UG-32 with the joint's efficiency (recalled)",
		Limits: "the bending by an insert that is thicker on one side only is not in it: port.N/misalignment",
		Change: []string{"full examination of the weld round the insert", "a thicker wall"},
	},
	{
		ID: "port.N/misalignment", Asks: "Does the butt weld round an inserted plate stay within the limit on membrane and bending together, out of line and bent by the thicker plate?",
		Formula: "|σ_m| (1 + Σ k) ≤ E min(3 S, 2 Rp0.2)", Source: "BS 7910 Annex D form (recalled)",
		Limits: "the plate as flush with the wall on one face; hi-lo and peaking where the joint states them; the wall's own stress, either across the weld", Change: []string{"fit the plate better and measure again", "a thinner plate", "a thicker wall"},
	},
	{
		ID: "port.N/hammer", Asks: "Does the port stand the surge when its line is shut?",
		Formula: "p + ρ c Δv", Source: "Joukowsky (textbook)",
		Limits: "line as written in the port's line table", Change: []string{"close the valve more slowly", "a lower velocity"},
	},
	{
		ID: "port.N/bolts", Asks: "Do the bolts of a cover carry its thrust and the load that seats its seal, and does none of them pass its proof strength when tightened?",
		Formula: "W_m1, W_m2 ≤ n A_r S_b; F_0 (1 + s) + ΔF + H/n ≤ S_p A_t", Source: "ASME VIII-1 App. 2 (read); allowable of bolts (recalled)",
		Limits: "as head.X/bolts", Change: []string{"more or larger bolts", "less preload where the tightened bolt governs"},
	},
	{
		ID: "port.N/seal", Asks: "Does a cover, or the fitting in a boss, stay on its seal under pressure by its least preload?",
		Formula: "q W_m1 + n ΔF ≤ n F_0 (1 − s), a fitting q (π/4 D_s² p + F_x + F_q) + ΔF ≤ F_0 (1 − s); q = 1.4, at proof 1", Source: "equilibrium (computed); q (recalled)",
		Limits: "as head.X/seal", Change: []string{"more preload", "a smaller seal diameter"},
	},
	{
		ID: "port.N/thread", Asks: "Do the threads of a boss and of its fitting carry thrust and preload together?",
		Formula: "π/4 D_s² p + F_x + F_0 (1 + s) + ΔF ≤ 0.577 min(S_boss A_i, S_fitting A_e) L_e", Source: "FED-STD-H28 form (read); limits of size of ISO 965-1 and ASME B1.1 (recalled)",
		Limits: "parallel threads from 3 to 90 mm, at least 4 pitches engaged, no more than 1.5 diameters counted; the fitting's own section is its maker's",
		Change: []string{"a longer engagement", "a stronger metal of boss or fitting", "less preload"},
	},
	{
		ID: "port.N/cover", Asks: "Is the bolted flat cover of a port thick enough, under pressure and as its bolts were tightened?",
		Formula: "t = G √[0.3 p/S + 1.9 W h_G/(S G³)]", Source: "ASME VIII-1 UG-34 (read)",
		Limits: "round and flat, without holes but those of its bolts (port.N/ligament); not by the European set", Change: []string{"a thicker cover", "a bolt circle nearer to the seal", "less preload"},
	},
	{
		ID: "port.N/ligament", Asks: "Does the bolted cover of a port carry the moment of its bolts where their holes weaken it?",
		Formula: "t ≥ √[1.9 W h_G/(E S G)], E = (p_h − d_h)/p_h", Source: "ASME VIII-1 UG-34 and UG-53 (read); together (practice, on the safe side)",
		Limits: "as head.X/ligament", Change: []string{"narrower holes: bolts.hole", "a thicker cover", "less preload"},
	},
	{
		ID: "port.N/flange", Asks: "Does the ring that a port's cover is bolted to keep shape and strength?",
		Formula: "none here", Source: "none", Limits: "not assessed: this program has no method for it",
		Change: []string{"have the flange calculated by a flange code"},
	},
}
