package fluid

import (
	"slices"
	"strings"

	"proofsheet/report/check"
)

// A pairing is one published caution on fluids and metals.
type pairing struct {
	fluids, metals  []string
	verdict, reason string
	source          check.Source
}

// Verdicts of Compatibility, the worst last.
const (
	Unknown   = "unknown"
	Satisfied = "satisfied"
	Caution   = "caution"
	Refused   = "refused"
)

// severity orders the verdicts.
var severity = map[string]int{Unknown: 0, Satisfied: 1, Caution: 2, Refused: 3}

// Compatibility returns what is published on a fluid in a tank of an alloy or
// of a family of alloys: satisfied, caution, refused, or unknown where nothing
// is. Of several cautions the worst counts, with its source; the notes of all
// are joined. It qualifies no material: cleaning, grade and service decide.
func Compatibility(fluid, alloyFamilyOrName string) (verdict, note string, src check.Source) {
	verdict = Unknown
	base := fluid
	for _, family := range []string{"ethanol-", "HTP-"} {
		if strings.HasPrefix(fluid, family) {
			base = strings.TrimSuffix(family, "-")
		}
	}
	metals := metalKeys(alloyFamilyOrName)
	for _, p := range pairings {
		if !slices.Contains(p.fluids, base) || !slices.ContainsFunc(p.metals, func(m string) bool { return slices.Contains(metals, m) }) {
			continue
		}
		if severity[p.verdict] > severity[verdict] {
			verdict, src = p.verdict, p.source
		}
		if note != "" {
			note += "; "
		}
		note += p.reason
	}
	return verdict, note, src
}

// metalKeys returns the metals of the table that an alloy or family belongs to.
// A family stands for every alloy of it.
func metalKeys(name string) []string {
	has := func(parts ...string) bool {
		return slices.ContainsFunc(parts, func(p string) bool { return strings.HasPrefix(name, p) })
	}
	switch {
	case name == "aluminium":
		return []string{"aluminium", "aluminium-lithium", "2xxx", "5xxx", "6xxx", "7xxx"}
	case has("2195"):
		return []string{"aluminium", "aluminium-lithium"}
	case has("2219", "2014"):
		return []string{"aluminium", "2xxx"}
	case has("50", "51", "54", "57"):
		return []string{"aluminium", "5xxx"}
	case has("60"):
		return []string{"aluminium", "6xxx"}
	case has("70"):
		return []string{"aluminium", "7xxx"}
	case has("2205"), name == "duplex":
		return []string{"duplex"}
	case has("301-", "304-"):
		return []string{"austenitic"}
	case name == "304", name == "304L", name == "316", name == "316L", name == "321":
		return []string{"austenitic", "annealed austenitic"}
	case name == "austenitic":
		return []string{"austenitic", "annealed austenitic"}
	case has("4130", "S355", "P265"), name == "ferritic":
		return []string{"carbon steel"}
	case has("Ti-"), name == "titanium":
		return []string{"titanium"}
	}
	return []string{name}
}
