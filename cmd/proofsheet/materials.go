package main

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/unit"
)

// materialsListing returns the table of alloys, or of one alloy every row of
// strength and the plain properties.
func materialsListing(name string) (heading []string, rows [][]string, err error) {
	if name != "" {
		return alloyListing(name)
	}
	for _, a := range material.Alloys() {
		rows = append(rows, []string{a.Name, a.Title, a.Family, a.Temper, fmt.Sprintf("%.0f to %.0f K", a.LeastTemperature, a.MostTemperature)})
	}
	return []string{"alloy", "title", "family", "temper", "temperature"}, rows, nil
}

// alloyListing returns what is built in for one alloy, each value with where
// it comes from.
func alloyListing(name string) (heading []string, rows [][]string, err error) {
	a, ok := material.FindAlloy(name)
	if !ok {
		if near := unit.Near(name, material.AlloyNames()); near != "" {
			return nil, nil, fmt.Errorf("list: unknown alloy %q; did you mean %s?", name, near)
		}
		return nil, nil, fmt.Errorf("list: unknown alloy %q; there are %s", name, strings.Join(material.AlloyNames(), ", "))
	}
	add := func(property, row string, v material.Value, divide float64, in string) {
		if !math.IsNaN(v.Value) {
			rows = append(rows, []string{property, row, fmt.Sprintf("%.4g %s", v.Value/divide, in), provenance(v.Source), v.Note})
		}
	}
	const mega = 1e6
	for _, s := range a.Rows {
		row := strings.Join(strings.Fields(fmt.Sprintf("%s %s %s %s %s", s.Spec, s.Product, s.Direction, thickness(s.LeastThickness, s.MostThickness), s.Basis)), " ")
		add("yield", row, s.Yield, mega, "MPa")
		add("proof 1 %", row, s.Proof1, mega, "MPa")
		add("ultimate", row, s.Ultimate, mega, "MPa")
		add("elongation", row, s.Elongation, 0.01, "%")
	}
	for _, z := range a.Zones {
		row := strings.Join(strings.Fields(fmt.Sprintf("%s %s %s", z.Kind, z.Product, thickness(z.LeastThickness, z.MostThickness))), " ")
		add("yield at a weld", row, z.Yield, mega, "MPa")
		add("ultimate at a weld", row, z.Ultimate, mega, "MPa")
	}
	add("density", "", a.Density, 1, "kg/m3")
	add("Poisson's ratio", "", a.Poisson, 1, "")
	for _, caution := range a.Cautions {
		rows = append(rows, []string{"caution", caution, "", "", ""})
	}
	return []string{"property", "row", "value", "source", "note"}, rows, nil
}

// thickness prints the range of thickness [m] of a row.
func thickness(least, most float64) string {
	switch {
	case most > 0 && !math.IsInf(most, 1):
		return fmt.Sprintf("%.4g to %.4g mm", least*1000, most*1000)
	case least > 0:
		return fmt.Sprintf("from %.4g mm", least*1000)
	default:
		return ""
	}
}

// provenance prints where a value comes from and how it was obtained.
func provenance(s check.Source) string {
	return strings.Trim(s.Doc+", "+s.Where, ", ") + " (" + s.How.String() + ")"
}
