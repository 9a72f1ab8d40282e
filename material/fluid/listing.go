package fluid

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// Listing returns the heading and the rows of the table of fluids; with a name
// the density and vapour pressure of that fluid point by point, and its
// cautions.
func Listing(name string) (heading []string, rows [][]string, err error) {
	if name == "" {
		return all()
	}
	f, ok := Find(name)
	if !ok {
		return nil, nil, fmt.Errorf("unknown fluid %q; one of %s", name, strings.Join(Names(), ", "))
	}
	heading = []string{"property", "temperature", "value", "source", "how"}
	add := func(what string, T, v float64, unit string, s check.Source) {
		rows = append(rows, []string{what, fmt.Sprintf("%.2f K", T), fmt.Sprintf("%.6g %s", v, unit), s.Doc, s.How.String()})
	}
	if s := f.slope; s != nil {
		add("density, least", s.at, s.least, "kg/m3", s.source)
		add("density, typical", s.at, s.typical, "kg/m3", s.source)
		add("density, most", s.at, s.most, "kg/m3", s.source)
		add("density per kelvin", s.at, s.perKelvin, "kg/(m3 K)", s.source)
	}
	for _, c := range []struct {
		what, unit string
		curve      curve
	}{
		{"density", "kg/m3", f.density}, {"vapour pressure, absolute", "Pa", f.vapor}, {"vapour density", "kg/m3", f.vaporDensity},
		{"bulk modulus", "Pa", f.bulk}, {"volumetric expansion", "1/K", f.expansion},
	} {
		for _, p := range c.curve.points {
			add(c.what, p.x, p.y, c.unit, c.curve.source)
		}
	}
	for _, c := range f.Cautions {
		rows = append(rows, []string{"caution", "", c, "", ""})
	}
	return heading, append(rows, cautions(name)...), nil
}

// all is the list of fluids, each with one density.
func all() (heading []string, rows [][]string, err error) {
	heading = []string{"fluid", "name", "at", "density", "source", "how"}
	for _, f := range Fluids() {
		T := 20 + zeroCelsius
		if f.Kind == "cryogenic_saturated" {
			T = f.boiling.Value
		}
		v, err := f.Density(T)
		if err != nil {
			return nil, nil, err
		}
		rows = append(rows, []string{f.Name, f.Title, fmt.Sprintf("%.2f K", T), fmt.Sprintf("%.1f kg/m3", v.Value), v.Source.Doc, v.Source.How.String()})
	}
	return heading, rows, nil
}

// cautions are the rows on metals in touch with a fluid.
func cautions(name string) (rows [][]string) {
	for _, p := range pairings {
		if slices.ContainsFunc(p.fluids, func(f string) bool { return f == name || strings.HasPrefix(name, f+"-") }) {
			rows = append(rows, []string{"with " + strings.Join(p.metals, ", "), "", p.verdict + ": " + p.reason, p.source.Doc, p.source.How.String()})
		}
	}
	return rows
}
