package material

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Listing returns the heading and the rows of the table of alloys; with a name
// every number of that alloy, or of a metal of which only weld strength is
// published, with its source. A row of one cell heads those that follow.
func Listing(name string) (heading []string, rows [][]string, err error) {
	if name == "" {
		heading, rows = overview()
		return heading, rows, nil
	}
	heading = []string{"property", "value", "how", "source", "note"}
	a, ok := FindAlloy(name)
	if !ok {
		if rows = weldRowsOf(name); len(rows) == 0 {
			return nil, nil, fmt.Errorf("unknown alloy %q; one of %s", name, strings.Join(ListingNames(), ", "))
		}
		return heading, append([][]string{{name + ": no minima are carried; strength across a weld is shown only"}}, rows...), nil
	}
	rows = append([][]string{{a.Name + ": " + a.Title + ", " + a.Group + ", " + a.Temper}}, a.use()...)
	return heading, append(append(rows, a.listed()...), weldRowsOf(a.Name)...), nil
}

// ListingNames returns the names that Listing answers to: the alloys, then the
// metals of which only weld strength is published.
func ListingNames() []string {
	names := AlloyNames()
	for _, r := range WeldRows() {
		if !slices.ContainsFunc(names, r.of) {
			names = append(names, r.Metal)
		}
	}
	return names
}

// overview lists the minima of every alloy.
func overview() (heading []string, rows [][]string) {
	heading = []string{"product", "specification", "wall mm", "Rp0.2", "Rm", "basis", "how"}
	for _, a := range families {
		rows = append(rows, []string{a.Name + ": " + a.Group + ", " + a.Temper})
		for _, r := range a.Rows {
			how := max(r.Ultimate.Source.How, r.Yield.Source.How)
			rows = append(rows, []string{r.Product, r.Spec, fmt.Sprintf("%.4g to %.4g", r.LeastThickness/mm, r.MostThickness/mm), show(r.Yield, mpa), show(r.Ultimate, mpa), r.Basis, how.String()})
		}
	}
	return heading, append(rows,
		[]string{"Weld strength only, shown and never used: " + strings.Join(ListingNames()[len(families):], ", ")},
		[]string{"Rp0.2 and Rm in MPa at 20 °C. Basis: spec_min is the minimum of the specification, A, B and S are statistical bases of handbooks, typical is shown and never used. A value of memory has to be confirmed against the certificate."})
}

// show writes a value in a unit [SI], "-" for a missing one.
func show(v Value, unit float64) string {
	if math.IsNaN(v.Value) {
		return "-"
	}
	return fmt.Sprintf("%.4g", v.Value/unit)
}

// use says what the alloy is called and between which temperatures it is used.
func (a *Alloy) use() [][]string {
	cold := "stays ductile when cold"
	if a.ColdBrittle {
		cold = "brittle when colder"
	}
	return [][]string{
		{"also called", strings.Join(a.Designations, ", "), "", "", ""},
		{"for use", fmt.Sprintf("from %.4g to %.4g K (%.4g to %.4g °C); %s", a.LeastTemperature, a.MostTemperature, a.LeastTemperature-zeroCelsius, a.MostTemperature+rounding-zeroCelsius, cold), "", "", ""},
	}
}

// listed writes every number of the alloy: the points of a curve in one row,
// the numbers of one row of minima below its words.
func (a *Alloy) listed() (rows [][]string) {
	at, last := "", ""
	for _, n := range a.numbers() {
		if math.IsNaN(n.value.Value) || n.printed {
			continue
		}
		if n.at != at {
			at, last = n.at, ""
			if at != "" {
				rows = append(rows, []string{at})
			}
		}
		text := strings.TrimSpace(fmt.Sprintf("%.6g %s", n.value.Value/n.unit, n.words))
		if n.T > 0 {
			text = fmt.Sprintf("%.6g K:\u00a0%.6g", n.T, n.value.Value/n.unit)
			text = strings.ReplaceAll(text, " ", "\u00a0")
		}
		what := n.what
		if n.T > 0 && n.words != "" {
			what += " [" + n.words + "]"
		}
		if n.T > 0 && what == last {
			rows[len(rows)-1][1] += ", " + text
			continue
		}
		last = what
		rows = append(rows, []string{what, text, n.value.Source.How.String(), n.value.Source.Doc, n.value.Note})
	}
	if len(a.Cautions) > 0 {
		rows = append(rows, []string{"Cautions"})
	}
	for _, c := range a.Cautions {
		rows = append(rows, []string{"caution", c, "", "", ""})
	}
	return rows
}

// A number is one number of an alloy as it is listed.
type number struct {
	what, at string  // property; of which row or table
	T        float64 // of a point of a curve, else 0 [K]
	value    Value
	unit     float64 // in which it is shown [SI]
	words    string
	printed  bool // stands among the published weld rows too, which are listed
}

// numbers returns every number that an alloy carries.
func (a *Alloy) numbers() []number {
	out := []number{{"density", "", 0, a.Density, 1, "kg/m3", false}, {"Poisson's ratio", "", 0, a.Poisson, 1, "", false}}
	curve := func(what, at string, c Curve, unit float64, words string) {
		for _, p := range c.Points {
			out = append(out, number{what, at, p.T, Value{Value: p.Value, Source: c.Source, Note: c.Note}, unit, words, false})
		}
	}
	add := func(what, at string, v Value, unit float64, words string) {
		out = append(out, number{what, at, 0, v, unit, words, false})
	}
	curve("elastic modulus", "", a.Modulus, gpa, "GPa")
	curve("contraction from 293 K", "", a.Contraction, 1e-5, "1e-5")
	curve("mean expansion from 293 K", "", a.Expansion, 1e-6, "1e-6/K")
	curve("yield ratio", "", a.YieldRatio, 1, "")
	curve("ultimate ratio", "", a.UltimateRatio, 1, "")
	for _, r := range a.Rows {
		at := join("Minima: "+r.words(), r.Shown)
		if r.Basis == "typical" {
			at = "Typical, shown only: " + r.words()
		}
		add("yield", at, r.Yield, mpa, "MPa")
		add("1 % proof", at, r.Proof1, mpa, "MPa")
		add("ultimate", at, r.Ultimate, mpa, "MPa")
		add("elongation", at, r.Elongation, percent, "%")
		add("compressive yield", at, r.CompressiveYield, mpa, "MPa")
	}
	for _, h := range a.Hot {
		at := "At temperature: " + h.Spec + ", " + basisWords(h.Basis)
		if h.Shown != "" {
			at = join(at, "shown only: "+strings.TrimPrefix(h.Shown, "shown only: "))
		}
		curve("yield", at, h.Yield, mpa, "MPa")
		curve("1 % proof", at, h.Proof1, mpa, "MPa")
		curve("ultimate", at, h.Ultimate, mpa, "MPa")
		curve("elongation", at, h.Elongation, percent, "%")
	}
	if a.WeldRatio.Source.Doc != "" {
		add("welded over parent strength", "Across a weld", a.WeldRatio, 1, "")
	}
	for _, z := range a.Zones {
		at := fmt.Sprintf("Across a weld: %s, %s, %.4g to %.4g mm", z.Kind, z.Product, z.LeastThickness/mm, z.MostThickness/mm)
		printed := z.Kind == classZone || z.Kind == typicalZone
		out = append(out, number{"welded yield", at, 0, z.Yield, mpa, "MPa", printed}, number{"welded ultimate", at, 0, z.Ultimate, mpa, "MPa", printed})
	}
	for _, k := range a.Toughness {
		out = append(out, number{k.Quantity, "Toughness, shown only", k.Temperature, k.Toughness, mpa, "MPa m^0.5", false})
	}
	return out
}
