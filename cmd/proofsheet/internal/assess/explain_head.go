package assess

var headExplanations = []Explanation{
	{
		ID: "head.X/thickness", Asks: "Is the head as thick as the rule set's formula for its shape asks for?",
		Formula: "p D/(2 S E − 0.2 p) and the like, by shape", Source: "ASME VIII-1 UG-32, UG-34 (read); EN 13445-3 (recalled)",
		Limits: "the wall after forming and tolerance; it does not see the joint: head.X/junction does",
		Change: []string{thicker, "a measured least_thickness in place of tolerance and thinning", "a rounder shape"},
	},
	{
		ID: "head.X/membrane", Asks: "Is the membrane stress of exact theory within the limit at every point of the meridian, weld zones and straight flange included?",
		Formula: "σ_φ = V/(2 π r sin φ t), σ_θ = r_2 (p/t − σ_φ/r_1)", Source: "equilibrium (computed)",
		Limits: "R/t from 10 up; where the hoop is opposite to the pressure only the meridional stress: the knuckle check holds the rest",
		Change: []string{thicker, "no weld or port in the critical zone"},
	},
	{
		ID: "head.X/knuckle", Asks: "Does the knuckle neither collapse plastically nor buckle in hoop compression, in service and at proof?",
		Formula: "p ≤ the lowest of limit pressure/1.5, European p_y and p_b, p_ck/1.5, each in its range", Source: "Shield and Drucker; EN 13445-3 7.5.3; ASME VIII-1 1-4(f) (recalled)",
		Limits: "r/D from 0.06, L/D up to 1; no formula in range: not assessed",
		Change: []string{"a larger knuckle radius", thicker, "a hemisphere"},
	},
	{
		ID: "head.X/junction", Asks: "Do both walls at the joint, and the head beyond it, stay within the limits on local membrane and on membrane with bending?",
		Formula: "σ_m ≤ 1.5 S; range of membrane and bending ≤ min(3 S, 2 Rp0.2)", Source: "numerical shell of revolution (computed), edge theory beside it",
		Limits: "linear elastic, clear of supports and ports; the range runs from zero over every case; secondary bending of a joint without corner is not held at proof",
		Change: []string{"a knuckle in place of a sharp corner", "a steeper cone (smaller half_angle)", "thicker walls beside the joint: seam_thickness or a ring", "a fully examined girth seam"},
	},
	{
		ID: "head.X/tip", Asks: "Is what closes the tip of the cone thick enough: plate, tube or neck?",
		Formula: "t = d √(C p/(S E)); t = p R/(S E − 0.6 p)", Source: "ASME VIII-1 UG-34, UG-27 (read), C recalled",
		Limits: "a flat plate, or a round tube; its joint to the cone is head.X/tip-junction",
		Change: []string{"a thicker plate", "a smaller tip"},
	},
	{
		ID: "head.X/tip-junction", Asks: "Do the walls about the tip of the cone stay within the limits of a joint?",
		Formula: "as head.X/junction", Source: "numerical shell of revolution (computed)",
		Limits: "what closes the tip is modelled as a plate or a long tube; its weld is taken in its zone",
		Change: []string{"a thicker plate or tube", "a thicker cone"},
	},
	{
		ID: "head.X/corner", Asks: "Does the corner of cone and cylinder have the metal that the rule set's area or wall formula asks for?",
		Formula: "(k Q R/(S E))(1 − Δ/α) tan α ≤ A_e + A_added; European e_j", Source: "ASME VIII-1 App. 1-5, EN 13445-3 7.6 (recalled in part)",
		Limits: "up to 30 degrees; passing it never passes the joint: head.X/junction decides",
		Change: []string{"a ring or seam_thickness", "thicker walls at the corner"},
	},
	{
		ID: "head.X/tip-corner", Asks: "The same at the small end of the cone.",
		Formula: "as head.X/corner, small end", Source: "ASME VIII-1 App. 1-5, EN 13445-3 7.6.8 (recalled in part)",
		Limits: "up to 30 degrees", Change: []string{"a thicker neck or cone"},
	},
	{
		ID: "head.X/ring", Asks: "Does the ring at a stiffened seam carry what the joint puts on it?",
		Formula: "E w/R ≤ 1.5 S, its range with the joint's turning ≤ min(3 S, 2 Rp0.2), 0.70 of both across its splice", Source: "numerical shell and ring (computed)",
		Limits: "a ring on the outside at the joint", Change: []string{"a larger ring"},
	},
	{
		ID: "head.X/misalignment", Asks: "Does the seam of the head stand its peaking?",
		Formula: "none", Source: "no formula is at hand for a kink round the tank",
		Limits: "never assessed; the hi-lo of that seam is among the places of head.X/junction", Change: []string{"a joint of its own for that seam, without peaking where none was measured"},
	},
	{
		ID: "head.X/segment-misalignment", Asks: "Does the segment seam with its hi-lo and peaking stay within the limit on membrane and bending together?",
		Formula: "|σ_m| + σ_b ≤ E min(3 S, 2 Rp0.2), σ_b = |σ_m| k + σ_b0", Source: "form of BS 7910 Annex D (recalled)",
		Limits: "as cylinder/misalignment, the hoop stress of the numerical shell across the seam", Change: []string{"fit the seam better and measure again", thicker},
	},
	{
		ID: "head.X/convex", Asks: "Is a head thick enough for strength with the pressure on its convex side: inward, or under pressure from outside?",
		Formula: "the concave-side formula under 1.67 p with E = 1", Source: "ASME VIII-1 UG-33 (recalled)",
		Limits: "strength only: head.X/external holds its buckling", Change: []string{thicker, "an outward head"},
	},
	{
		ID: "head.X/rim-weld", Asks: "Do the fillets that lap an inward head to the cylinder carry its thrust in shear?",
		Formula: "1.5 p π R² ≤ n 2π R a · 0.49 S", Source: "equilibrium; ASME VIII-1 UW-13(e) and UW-15(c) (recalled)",
		Limits: "full fillets, legs as long as the thinner wall; plugs not counted; the bending of the step between the walls is not in it",
		Change: []string{"a butt weld on a machined ring", "a double lap", thicker},
	},
	{
		ID: "head.X/external", Asks: "Does the head stand pressure on its convex side: an inward head in service, an outward one under vacuum?",
		Formula: "p ≤ the lowest of SP-8032, and the two vessel forms", Source: "NASA SP-8032, ASME VIII-1 UG-33, EN 13445-3 (recalled)",
		Limits: "not above what yields the wall; a flat head has no convex side", Change: []string{thicker, "open the vent before draining", "an outward head"},
	},
	{
		ID: "head.X/compression", Asks: "Does a cone stand the compression along its wall without buckling?",
		Formula: "N ≤ N_allowable of the equivalent cylinder", Source: "NASA SP-8019 (recalled)",
		Limits: "a dished head compressed along its meridian has no method here", Change: []string{thicker},
	},
	{
		ID: "head.X/bolts", Asks: "Do the bolts of a bolted head carry its thrust and the load that seats its seal, and does none of them pass its proof strength when tightened?",
		Formula: "W_m1, W_m2 ≤ n A_r S_b; F_0 (1 + s) + ΔF + H/n ≤ S_p A_t", Source: "ASME VIII-1 App. 2 (read); allowable of bolts (recalled)",
		Limits: "bolts from −50 to 150 °C, proof strength as written; bending of bolts and what else hangs on the cover are not in it",
		Change: []string{"more or larger bolts", "a higher class, by certificate", "less preload where the tightened bolt governs", "a smaller seal diameter"},
	},
	{
		ID: "head.X/seal", Asks: "Does the joint of a bolted head stay closed under pressure, and is its seal seated, by the least preload of its bolts?",
		Formula: "q W_m1 + n ΔF ≤ n F_0 (1 − s); W_m2 ≤ n F_0 (1 − s); q = 1.4, at proof 1", Source: "equilibrium (computed); q (recalled)",
		Limits: "not assessed without a preload; groove, gap and compound of an O-ring and crushing of a gasket are not in it",
		Change: []string{"more preload, if the bolts carry it", "less scatter, by a better way of tightening", "a smaller seal diameter"},
	},
	{
		ID: "head.X/ligament", Asks: "Does a bolted head carry the moment of its bolts where their holes weaken it?",
		Formula: "t ≥ √[1.9 W h_G/(E S G)], E = (p_h − d_h)/p_h", Source: "ASME VIII-1 UG-34 and UG-53 (read); together (practice, on the safe side)",
		Limits: "as thick at the bolts as within; how far the rim goes on outside of the bolts is not in the tank file; holes = 1.25 of the bolts' diameter where bolts.hole is not written",
		Change: []string{"narrower holes: bolts.hole", "a thicker head", "fewer bolts, or a wider bolt circle with the same lever", "less preload"},
	},
	{
		ID: "head.X/flange", Asks: "Does the flange ring that a head is bolted to, and the cylinder beside it, keep shape and strength?",
		Formula: "none here", Source: "none", Limits: "not assessed: this program has no method for it",
		Change: []string{"have the flange calculated by a flange code"},
	},
}
