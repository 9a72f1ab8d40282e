package assess

var tankExplanations = []Explanation{
	{
		ID: "tank/capacity", Asks: "Does the liquid fit with its least ullage at its warmest?",
		Formula: "m/ρ_warm ≤ (1 − u) V", Source: "volume kept (computed)", Limits: "nominal dimensions; internals not subtracted",
		Change: []string{"less liquid", "a longer tank", "a narrower temperature range"},
	},
	{
		ID: "tank/relief", Asks: "Does the relief device open within meop, accumulation included?",
		Formula: "p_set (1 + a) ≤ MEOP", Source: "common practice", Limits: "the device's own capacity is not looked at",
		Change: []string{"a lower set pressure", "a higher meop, and a stronger tank"},
	},
	{
		ID: "tank/vapour", Asks: "Does meop cover the vapour pressure of the contents at their warmest, and at the hottest metal of a case where they are a liquefied gas?",
		Formula: "p_v ≤ MEOP + p_outside", Source: "equation of state or table of the fluid", Limits: "nothing at or above the critical temperature",
		Change: []string{"a cooler tank", "a higher meop"},
	},
	{
		ID: "tank/compatibility", Asks: "Is every alloy of the tank usual, or at least possible, with its contents?",
		Formula: "class at most 2: 1 usual, 2 with caution, 3 forbidden", Source: "the table of proofsheet list fluids NAME, each pair with its source",
		Limits: "metals only: seals, greases and cleaning are yours", Change: []string{"another alloy", "another propellant"},
	},
	{
		ID: "tank/brittleness", Asks: "Does every alloy keep its ductility at the coldest it can get?",
		Formula: "T_min ≤ T_coldest", Source: "materials table", Limits: "a liquefied gas is judged at its boiling point; own metals need their elongation, 5 % or more",
		Change: []string{"an austenitic or aluminium alloy", "a warmer case"},
	},
	{
		ID: "tank/weld-zones", Asks: "Where softened zones of welds meet, is every point in them within the strength of the weakest?",
		Formula: "equivalent membrane stress ≤ S of the zone, no joint efficiency", Source: "EN 1999-1-1 (read in part); width of the zone",
		Limits: "alloys that soften; over 15 mm only with coupons", Change: []string{"move ports and seams apart by twice the zone", "weld coupons", thicker},
	},
	{
		ID: "tank/weld-metals", Asks: "Does a weld join metals that do not fuse into a sound joint?",
		Formula: "none: aluminium and titanium are welded to their own family only", Source: "common practice",
		Limits: "printed only where such a weld is drawn; then the tank is not assessed", Change: []string{"one family of alloys for parts that are welded together", "a bolted closure"},
	},
	{
		ID: "tank/slosh", Asks: "Is the slosh that the case asks for in its loads?",
		Formula: "η ≤ R/(ξ tanh(ξ h/R)), η ≤ 0.25 R; p = ρ a_x η cosh(ξ z/R)/cosh(ξ h/R), F = ρ a_x η π R² tanh(ξ h/R)/ξ", Source: "linear potential theory, NASA SP-106 (recalled); 0.25 R is practice",
		Limits: "made where the case writes slosh_amplitude; the wave on the straight wall of the cylinder, pressed aft; over a curved bottom the flat one of the same volume stands in for it down to a depth of R, and a bound from above below that; no baffles, no growth of the amplitude",
		Change: []string{"a smaller slosh_amplitude, with its reason", "baffles, which this program does not compute", "a fill whose level stands clear of the heads"},
	},
	{
		ID: "tank/life", Asks: "Do the welds stand the cycles of every case and of the proof?",
		Formula: "4 Σ n/N(Δσ, FAT) ≤ 1; with strain_life of the material, the plain metal at the edge of a port's hole too: Δε/2 = (σ_f'/E) (2N)^b + ε_f' (2N)^c, Δσ Δε = Δσ_e²/E", Source: "weld classes of IIW and EN 13445-3, rule of Neuber (recalled)",
		Limits: "every case says its cycles, every joint its hi_lo and peaking; proof and leak test come on top; cycles of all cases in their worst order, a moment to either side; a range above twice the zone's yield is not assessed: strain-life of plain metal says nothing about the toe of a weld",
		Change: []string{"fewer cycles", "a joint welded from both sides", "walls better in line", thicker},
	},
	{
		ID: "tank/leak-before-burst", Asks: "Would a crack leak before the tank bursts?",
		Formula: "M σ_h √(π 5 t) ≤ K_c; M σ_h ≤ flow stress; surface crack at 0.8 of the wall ≤ K_c", Source: "criterion B of space practice (recalled), Folias (read), Newman and Raju (recalled)",
		Limits: "needs toughness of the material, a lower bound; up to 0.8 of the zone's yield, bending of hi_lo and peaking in it; walls of the shell and seams round it, not flat walls or tubes; a leak of oxygen, peroxide, nitrous oxide or methanol is no safe end",
		Change: []string{"a tougher alloy, or a toughness that was measured", "a less stressed wall"},
	},
	{
		ID: "tank/flaw-growth", Asks: "Does a flaw that the examination may have missed stay within the wall over every cycle?",
		Formula: "4 (n/N + n_p/N_p) ≤ 1", Source: "Newman and Raju (recalled); growth constants, each with its own source", Limits: "made where a joint says its flaw; depth up to 0.8 of the wall; the whole range of the stress across the seam, compression too, by a law at R = 0.5 or an upper bound; a flaw in a port's weld is not assessed",
		Change: []string{"an examination that finds smaller flaws", "fewer cycles", thicker},
	},
	{
		ID: "proof/yield", Asks: "Does every part stay within the share of yield that the rule allows, at the highest pressure that the test can reach?",
		Formula: "σ ≤ k E Rp0.2", Source: "46 CFR 54.10-10 (read); EN 13445-5 (recalled)", Limits: "k at the test's temperature; membrane: head.X/junction@proof holds the joints",
		Change: []string{thicker, "a better gauge: less uncertainty", "never a lower test pressure"},
	},
	{
		ID: "proof/reach", Asks: "Does every point see its factor times its service pressure during the test?",
		Formula: "p_low ≥ F p_service", Source: "ASME VIII-1 UG-99 (read)", Limits: "0.00 is usual: the pressure is chosen so; line loads and buckling are never exercised",
		Change: []string{"a higher test pressure (leave proof.pressure out)", "test the other way up"},
	},
}
