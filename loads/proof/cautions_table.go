package proof

import "proofsheet/report/check"

var practice = check.Source{Doc: "common practice", Where: "checklist", How: check.Practice}

func read(doc, where string) check.Source {
	return check.Source{Doc: doc, Where: where, How: check.Read}
}

// cautions is the checklist, general lines first.
var cautions = []conditional{
	{Caution: Caution{"law", "The sheet is a calculation aid. It does not replace the pressure law of the place, the rules of the range or event, or the insurer's; a competent or licensed person reviews and signs it.", practice}},
	{Caution: Caution{"validity", "Valid only for the material certificates, measured walls, weld procedures and examination stated. A repair, a dent, a weld or heat voids it and asks for a new proof test.", practice}},
	{Caution: Caution{"people", "Nobody near while pressure rises, before a passed hold, or above the examination pressure. Fill, vent and read from afar; one person in charge.", practice}},
	{Caution: Caution{"fittings", "Test fittings, hoses, blanks and plugs are pressure parts too: rated, inspected, whip checks fitted. Ejected fittings have killed.", read("HSE guidance note GS4", "safety in pressure testing")}},
	{Caution: Caution{"relief", "An independent relief device, sized for the regulator full open and for boil-off or fire, never isolated; in the test on the tank's side of every valve that is shut. A burst disc between any two valves that can trap liquid.", practice}},
	{Caution: Caution{"welds", "Examine welds after the delay their metal asks for; watch for porosity, misalignment and missing penetration. Any weeping weld fails the test whatever the numbers say.", practice}},
	{Caution: Caution{"vacuum", "Open the top vent before draining: a closed tank that drains, or hot vapour that cools, pulls a vacuum and collapses it.", read("EN 13480-5:2002", "9.3.2.2.4")}},
	{Caution: Caution{"other-loads", "Head collapse, line loads and buckling at low ullage pressure are separate checks. Do not fly a tank that shows permanent set above its limit.", practice}},
	{Caution: Caution{"record", "Record pressure, temperature, volume and strain against time, photographs, serial numbers and calibrations. Mark the tank with date, pressure, medium and next test. Every pressurisation counts as a cycle.", practice}},

	{method: Hydrostatic, Caution: Caution{"hydro", "Bleed until no bubbles come; trapped air stores energy and hides yield. Supports carry the tank full of water. Water and metal 15 to 48 degC, or as the plan notes; barrier, at least 10 m, reading by camera.", practice}},
	{method: Pneumatic, Caution: Caution{"pneumatic", "Gas only where water cannot be used, after a risk assessment, with the distance on the sheet, all welds examined and a check for cold; never indoors, never to find a leak in an untested weld. Water first where possible. Fragments fly farther than the distance.", practice}},

	{dangers: []Danger{Cryogen}, Caution: Caution{"trapped-cryogen", "A cryogen shut in between two valves reaches about 300 MPa (nitrogen) or 380 MPa (oxygen) as it warms to 300 K. A relief device on every closed volume, not in a leg that can freeze.", check.Source{Doc: "equations of state of nitrogen and oxygen", Where: "isochore to 300 K", How: check.Computed}}},
	{dangers: []Danger{Oxygen}, Caution: Caution{"oxygen", "Oxygen: cleaned, inspected, sealed. No oil, no chlorinated residue, no aluminium fines; open valves slowly. Titanium is forbidden in it, wet or dry; cadmium, beryllium, magnesium and mercury are restricted. A leak is not harmless.", read("ASTM manual on oxygen systems, as quoted", "titanium, metals")}},
	{dangers: []Danger{Peroxide}, Caution: Caution{"peroxide", "Hydrogen peroxide: only passivated pure aluminium or selected, passivated stainless steel. Copper, brass, iron, lead and silver decompose it. Always vented; no closed volume.", read("hydrogen peroxide material classes 1 to 4", "classes")}},
	{dangers: []Danger{Nitrous}, Caution: Caution{"nitrous-oxide", "Nitrous oxide can decompose by itself: contaminated or heated vapour explodes the tank. No grease, no oxides of silver, copper or nickel. Its pressure follows the hottest day; over 36.4 degC it is not assessed. A tank filled too far turns liquid-full within degrees.", read("reports on the fatal cold-flow test of 2007", "cause")}},
	{dangers: []Danger{Oxygen, Peroxide, Nitrous}, Caution: Caution{"clean-test", "Test of a tank for an oxidiser: oil-free pump, everything that water or gas passes through clean for oxygen, no inhibitor in the water.", practice}},

	{families: []string{"aluminium"}, Caution: Caution{"aluminium", "Aluminium: demineralised water, no copper in it, dry within hours. No chlorinated solvent, mercury or alkali; 2xxx and 7xxx crack by corrosion across the grain; insulate from steel fittings. Welds soften the metal 20 to 50 mm to each side, by process and thickness; 6061 needs filler.", practice}},
	{families: []string{"austenitic", "duplex"}, Caution: Caution{"austenitic", "Stainless steel: test water at most 50 ppm chloride, drained and dried at once; standing raw water pits the welds within weeks. Use low-carbon grades where welded. No zinc near hot metal.", read("stainless steel development association guidance", "hydrostatic test water")}},
	{families: []string{"ferritic"}, Caution: Caution{"ferritic", "Carbon and low-alloy steel turn brittle cold: metal at least 17 K above the lowest design temperature in the test, never for cryogens. Hydrogen cracks welds of 4130 and its like hours later: preheat, low hydrogen, examine after 48 h.", read("ASME VIII-1", "UG-100(c)")}},
	{families: []string{"titanium"}, Caution: Caution{"titanium", "Titanium: never in or near oxygen, liquid or gas. Weld and heat under inert gas on both faces; no chlorinated solvent or methanol.", practice}},
}
