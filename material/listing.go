package material

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// Listing returns the heading and the rows of the table of alloys; with a name
// every number of that alloy with its source.
func Listing(name string) (heading []string, rows [][]string, err error) {
	if name == "" {
		heading = []string{"alloy", "name", "family", "product", "spec", "thickness", "basis", "yield MPa", "ultimate MPa", "how"}
		for _, a := range families {
			for _, r := range a.Rows {
				rows = append(rows, []string{a.Name, a.Title, a.Group, r.Product, r.Spec, fmt.Sprintf("%.4g to %.4g mm", r.LeastThickness/mm, r.MostThickness/mm),
					r.Basis, show(r.Yield, mpa), show(r.Ultimate, mpa), r.Ultimate.Source.How.String()})
			}
		}
		return heading, rows, nil
	}
	a, ok := FindAlloy(name)
	if !ok {
		return nil, nil, fmt.Errorf("unknown alloy %q; one of %s", name, strings.Join(AlloyNames(), ", "))
	}
	heading = []string{"property", "for", "value", "source", "how", "note"}
	for _, v := range a.numbers() {
		if !math.IsNaN(v.value.Value) {
			rows = append(rows, []string{v.what, v.at, fmt.Sprintf("%.6g %s", v.value.Value/v.unit, v.words), v.value.Source.Doc, v.value.Source.How.String(), v.value.Note})
		}
	}
	for _, c := range a.Cautions {
		rows = append(rows, []string{"caution", "", c, "", "", ""})
	}
	return heading, rows, nil
}

// show writes a value in a unit [SI], "-" for a missing one.
func show(v Value, unit float64) string {
	if math.IsNaN(v.Value) {
		return "-"
	}
	return fmt.Sprintf("%.4g", v.Value/unit)
}

// A number is one number of an alloy as it is listed.
type number struct {
	what, at string
	value    Value
	unit     float64 // in which it is shown [SI]
	words    string
}

// numbers returns every number that an alloy carries.
func (a *Alloy) numbers() []number {
	out := []number{{"density", "", a.Density, 1, "kg/m3"}, {"poisson", "", a.Poisson, 1, ""}}
	curve := func(what, at string, c Curve, unit float64, words string) {
		for _, p := range c.Points {
			out = append(out, number{what, strings.TrimSpace(fmt.Sprintf("%s %.4g K", at, p.T)), Value{Value: p.Value, Source: c.Source, Note: c.Note}, unit, words})
		}
	}
	curve("elastic modulus", "", a.Modulus, gpa, "GPa")
	curve("contraction from 293 K", "", a.Contraction, 1e-5, "1e-5")
	curve("mean expansion from 293 K", "", a.Expansion, 1e-6, "1e-6/K")
	for _, r := range a.Rows {
		at := r.words()
		out = append(out, number{"yield", at, r.Yield, mpa, "MPa"}, number{"1 % proof", at, r.Proof1, mpa, "MPa"}, number{"ultimate", at, r.Ultimate, mpa, "MPa"},
			number{"elongation", at, r.Elongation, percent, "%"}, number{"compressive yield", at, r.CompressiveYield, mpa, "MPa"})
	}
	curve("yield ratio", "", a.YieldRatio, 1, "")
	curve("ultimate ratio", "", a.UltimateRatio, 1, "")
	for _, h := range a.Hot {
		at := join(h.Spec, h.Shown)
		curve("yield", at, h.Yield, mpa, "MPa")
		curve("1 % proof", at, h.Proof1, mpa, "MPa")
		curve("ultimate", at, h.Ultimate, mpa, "MPa")
	}
	for _, z := range a.Zones {
		at := fmt.Sprintf("%s, %s, %.4g to %.4g mm", z.Kind, z.Product, z.LeastThickness/mm, z.MostThickness/mm)
		out = append(out, number{"welded yield", at, z.Yield, mpa, "MPa"}, number{"welded ultimate", at, z.Ultimate, mpa, "MPa"})
	}
	for _, k := range a.Toughness {
		out = append(out, number{k.Quantity, fmt.Sprintf("%.4g K", k.Temperature), k.Toughness, mpa, "MPa m^0.5"})
	}
	return out
}

// RuleListing returns the heading and the rows of the factors of the rule sets;
// with a name only that one's.
func RuleListing(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"rule", "factor", "value", "source", "how"}
	for _, r := range []Rule{Vessel, VesselEU, Flight} {
		if name != "" && name != string(r) {
			continue
		}
		f, err := DefaultFactors(r)
		if err != nil {
			return nil, nil, err
		}
		for _, v := range []struct {
			key    string
			value  float64 // [-]
			source check.Source
		}{
			{"yield_factor", f.YieldFactor, ruleSources[r]}, {"ultimate_factor", f.UltimateFactor, ruleSources[r]},
			{"load_yield_factor", f.LoadYieldFactor, ruleSources[r]}, {"load_ultimate_factor", f.LoadUltimateFactor, ruleSources[r]},
			{"buckling_factor", f.BucklingFactor, check.Source{Doc: "factor on line loads and external pressure", How: check.Practice}},
			{"proof_factor", f.ProofFactor, proofSources[r]}, {"burst_factor", f.BurstFactor, proofSources[r]}, {"proof_limit", f.ProofLimit, limitSources[r]},
		} {
			if !math.IsNaN(v.value) {
				rows = append(rows, []string{string(r), v.key, fmt.Sprintf("%.4g", v.value), v.source.Doc, v.source.How.String()})
			}
		}
	}
	if len(rows) == 0 {
		return nil, nil, fmt.Errorf("unknown rule %q: vessel, vessel-eu or flight", name)
	}
	return heading, rows, nil
}
