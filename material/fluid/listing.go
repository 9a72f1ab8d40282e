package fluid

import (
	"fmt"
	"slices"
	"strings"
)

// Listing returns the heading and the rows of the table of fluids; with a name
// everything that is known of that fluid, the points of a curve in one row. A
// row of one cell heads those that follow.
func Listing(name string) (heading []string, rows [][]string, err error) {
	if name == "" {
		return all()
	}
	f, ok := Find(name)
	if !ok {
		return nil, nil, fmt.Errorf("unknown fluid %q; one of %s", name, strings.Join(Names(), ", "))
	}
	heading = []string{"property", "value", "how", "source", "note"}
	title := f.Name + ": " + f.Title
	if f.Formula != "" {
		title += ", " + f.Formula
	}
	rows = append(append([][]string{{title}}, f.constants()...), f.curves()...)
	if len(f.Cautions) > 0 {
		rows = append(rows, []string{"Cautions"})
	}
	for _, c := range f.Cautions {
		rows = append(rows, []string{"caution", c, "", "", ""})
	}
	return heading, append(append(rows, []string{"In a tank of"}), f.cautions()...), nil
}

// constants lists the temperatures of change and the grade.
func (f *Fluid) constants() (rows [][]string) {
	for _, c := range []struct {
		what string
		v    Value
		unit float64 // in which it is shown [SI]
		name string
	}{
		{"freezes or triple point", f.freezing, 1, "K"}, {"boils at 1.01325 bar", f.boiling, 1, "K"},
		{"critical temperature", f.critical, 1, "K"}, {"critical pressure, absolute", f.criticalPressure, bar, "bar"},
	} {
		if c.v.Source.Doc == "" {
			rows = append(rows, []string{c.what, "not carried", "", "", ""})
			continue
		}
		rows = append(rows, []string{c.what, fmt.Sprintf("%.6g %s%s", c.v.Value/c.unit, c.name, celsiusWords(c.v.Value, c.name)), c.v.Source.How.String(), c.v.Source.Doc, c.v.Note})
	}
	s := f.slope
	if s == nil {
		return rows
	}
	add := func(what, text string) {
		rows = append(rows, []string{what, text, s.source.How.String(), s.source.Doc, s.note})
	}
	for _, d := range []struct {
		what    string
		density float64 // [kg/m3]
	}{{"density, least of the grade", s.least}, {"density, typical", s.typical}, {"density, most of the grade", s.most}} {
		add(d.what, fmt.Sprintf("%.6g kg/m3 at %.6g K%s", d.density, s.at, celsiusWords(s.at, "K")))
	}
	add("density over temperature", fmt.Sprintf("%.4g kg/m3 per kelvin, used from %.6g to %.6g K", s.perKelvin, s.at-slopeReach, s.at+slopeReach))
	return rows
}

// celsiusWords adds the temperature T [K] in °C.
func celsiusWords(T float64, unit string) string {
	if unit != "K" {
		return ""
	}
	return fmt.Sprintf(" (%.2f °C)", T-zeroCelsius)
}

// curves lists every curve, its points in one row.
func (f *Fluid) curves() (rows [][]string) {
	add := func(what, at string, c curve, x, y float64) { // units in which x and y are shown [SI]
		if len(c.points) == 0 {
			return
		}
		var points []string
		for _, p := range c.points {
			points = append(points, fmt.Sprintf("%.6g\u00a0%s:\u00a0%.6g", p.x/x, at, p.y/y))
		}
		rows = append(rows, []string{what, strings.Join(points, ", "), c.source.How.String(), c.source.Doc, c.note})
	}
	add("density [kg/m3]", "K", f.density, 1, 1)
	add("vapour pressure, absolute [bar]", "K", f.vapor, 1, bar)
	add("vapour density [kg/m3]", "K", f.vaporDensity, 1, 1)
	add("bulk modulus [GPa]", "K", f.bulk, 1, gpa)
	add("volumetric expansion [1e-6/K]", "K", f.expansion, 1, 1e-6)
	add("slope of compressibility [1e-12/(Pa K)]", "K", f.softening, 1, 1e-12)
	if c := f.compressed; c != nil {
		rows = append(rows, []string{fmt.Sprintf("Under absolute pressure at %.6g K%s", c.at, celsiusWords(c.at, "K"))})
		add("density [kg/m3]", "bar", c.density, bar, 1)
		add("bulk modulus [GPa]", "bar", c.bulk, bar, gpa)
	}
	return rows
}

// all is the list of fluids, each with one density.
func all() (heading []string, rows [][]string, err error) {
	heading = []string{"fluid", "name", "density kg/m3", "at K", "boils K", "critical K", "how", "source"}
	constant := func(v Value) string {
		if v.Source.Doc == "" {
			return "-"
		}
		return fmt.Sprintf("%.2f", v.Value)
	}
	for _, f := range Fluids() {
		T := 20 + zeroCelsius
		if f.Kind == "cryogenic_saturated" {
			T = f.boiling.Value
		}
		v, err := f.Density(T)
		if err != nil { // not reached: every fluid of the tables has a density at 20 °C or where it boils
			return nil, nil, err
		}
		rows = append(rows, []string{f.Name, f.Title, fmt.Sprintf("%.1f", v.Value), fmt.Sprintf("%.2f", T), constant(f.boiling), constant(f.critical), v.Source.How.String(), v.Source.Doc})
	}
	rows = append(rows, []string{"Shares are percent by mass. Between two listed shares any other may be named: ethanol-85, HTP-92."})
	return heading, rows, nil
}

// cautions are the rows on metals in touch with the fluid.
func (f *Fluid) cautions() (rows [][]string) {
	for _, p := range pairings {
		if slices.ContainsFunc(p.fluids, func(n string) bool { return n == f.Name || strings.HasPrefix(f.Name, n+"-") }) {
			rows = append(rows, []string{strings.Join(p.metals, ", "), p.verdict + ": " + p.reason, p.source.How.String(), p.source.Doc, ""})
		}
	}
	if len(rows) == 0 {
		rows = append(rows, []string{"any metal", Unknown + ": nothing published is carried", "", "", ""})
	}
	return rows
}
