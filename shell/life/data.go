package life

import (
	"math"

	"proofsheet/report/check"
)

// A Record is what is known of crack growth in an alloy, with where it comes from. It is not a minimum: it shows how a
// flaw would grow, and passes nothing by itself.
type Record struct {
	Alloy  string // "6061-T651 plate"
	Fits   string // name of the alloy in the tables that it is nearest to, "" for a family
	Family string // aluminium, austenitic, ferritic
	Law    Law
	Welded bool // holds where the stress of welding is left: it knows the stress ratio, or bounds what was measured
	Source check.Source
	Note   string
}

// barsom is the mean line of austenitic steel from empty.
var barsom = Paris{5.6e-12, 3.25}

// steelBound is the upper bound of steel.
var steelBound = ParisFromNewton(5.21e-13, 3)

var schwarmann = check.Source{Doc: "Schwarmann 1986, as tabulated in an open crack-growth list", Where: "Forman constants", How: check.Read}

// Records lists the growth laws that are known, single alloys first, then upper bounds of a family.
func Records() []Record {
	return []Record{
		{"2219-T851 plate", "2219-T87", "aluminium", Forman{4.84e-8, 2.16, 57.5 * mpa}, true, schwarmann, ""},
		{"6061-T651 plate", "6061-T6", "aluminium", Forman{9.60e-8, 1.84, 41.2 * mpa}, true, schwarmann, ""},
		{"6061-T6 sheet", "6061-T6", "aluminium", Forman{2.27e-7, 1.66, 60.1 * mpa}, true, schwarmann, "exponent and toughness stand in each other's place in the list; put right here"},
		{"aluminium, upper bound", "", "aluminium", ParisFromNewton(1.41e-11, 3), true,
			check.Source{Doc: "IIW upper bound for aluminium", Where: "crack growth", How: check.Memory}, ""},
		{"austenitic steel", "", "austenitic", barsom, false,
			check.Source{Doc: "Barsom, austenitic steel", Where: "crack growth", How: check.Memory}, ""},
		{"steel, upper bound, for austenitic steel", "", "austenitic", UpTo{steelBound, meeting(steelBound, barsom)}, true,
			check.Source{Doc: "upper bound of steel, in a list after HSE, BS 7910 and API 579", Where: "m = 3; that it bounds austenitic steel too", How: check.Memory}, ""},
		{"steel, upper bound", "", "ferritic", steelBound, true,
			check.Source{Doc: "published list after HSE, BS 7910 and API 579", Where: "upper bound, m = 3", How: check.Read}, ""},
	}
}

// meeting returns the ΔK at which two power laws grow alike [Pa m½].
func meeting(a, b Paris) float64 { return mpa * math.Pow(a.C/b.C, 1/(b.M-a.M)) }

// RecordsOf returns the records that speak for an alloy: its own, and the bound of its family.
func RecordsOf(alloy, family string) (out []Record) {
	for _, r := range Records() {
		if r.Family == family && (r.Fits == "" || r.Fits == alloy) {
			out = append(out, r)
		}
	}
	return out
}
