package fluid

import (
	"slices"
	"strings"
)

// tradeNames are words of the trade for built-in fluids whose titles do not say them.
var tradeNames = map[string][]string{
	"kerosene": {"RP-1", "JetA"}, "kerosine": {"RP-1", "JetA"}, "paraffin": {"RP-1", "JetA"},
	"alcohol": {"ethanol", "methanol", "isopropanol"}, "ipa": {"isopropanol"}, "isopropyl alcohol": {"isopropanol"},
	"nitrous": {"N2O"}, "h2o2": {"HTP-90"}, "natural gas": {"LCH4"}, "lng": {"LCH4"},
}

// Like returns the built-in fluids that a word may mean which is no name of one: those
// it is a trade name of, those with it for their formula, and those whose title has
// every word of it. A person chooses: near fluids differ in density and vapour pressure.
func Like(word string) (names []string) {
	word = strings.ToLower(strings.TrimSpace(word))
	if names = tradeNames[word]; names != nil || word == "" {
		return slices.Clone(names)
	}
	for _, f := range Fluids() {
		title := strings.Fields(strings.ToLower(f.Title))
		within := !slices.ContainsFunc(strings.Fields(word), func(part string) bool { return !slices.Contains(title, part) })
		if within || strings.EqualFold(f.Formula, word) {
			names = append(names, f.Name)
		}
	}
	return names
}
