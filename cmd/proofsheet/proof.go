package main

import (
	"fmt"
	"math"
	"strings"
	"text/tabwriter"

	"github.com/urfave/cli/v2"

	"proofsheet/report"
	"proofsheet/report/check"
)

func proofCommand() *cli.Command {
	return &cli.Command{
		Name: "proof", Usage: "proof-test plan and log form of a tank", ArgsUsage: "TANK.toml",
		Description: "Prints the plan. PDF and JSON hold the whole sheet, the plan with its log form in it. The exit status\n" +
			"is that of check: no tank is taken to its proof on a plan alone.",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "pdf", Usage: "write the calculation sheet to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "json", Usage: "write the sheet as data to `FILE`, - for standard output"},
		}, signerFlags()...),
		Action: runProof,
	}
}

func runProof(c *cli.Context) error {
	if err := checkOutputFlags(c); err != nil {
		return err
	}
	j, err := load(c)
	if err != nil {
		return err
	}
	return j.deliver(c, proofText(j.sheet, foldWidth(c)))
}

// proofText prints the plan. It opens and closes with the verdict over the
// tank, since a plan does not say that the tank may be tested.
func proofText(s *report.Sheet, width int) string {
	var b strings.Builder
	b.WriteString(report.VerdictLines("tank: ", s, width) + "\n")
	if s.Proof == nil {
		fmt.Fprintln(&b, "no proof plan is issued")
		for _, note := range s.Notes {
			b.WriteString(report.Fold("note: "+note+"\n", width))
		}
	} else {
		proofSetting(&b, s, width)
		proofSteps(&b, s, width)
		for _, list := range []struct {
			head  string
			lines []string
		}{{"do", s.Proof.Sequence}, {"limit", s.Proof.Limits}, {"caution", s.Proof.Cautions}, {"note", s.Proof.Notes}} {
			for _, line := range list.lines {
				b.WriteString(report.Fold(list.head+": "+line+"\n", width))
			}
		}
	}
	if s.Proof != nil {
		b.WriteString("\n")
		logForm(&b, s)
		b.WriteString(report.Fold(fmt.Sprintf("log: head the file of the readings with \"# sheet: %s\"; proofsheet record judges it\n", s.Digits()), width))
	}
	b.WriteString("\n" + report.VerdictLines("tank: ", s, width))
	return b.String()
}

// shown prints a quantity, and a missing one as such.
func shown(s *report.Sheet, q check.Quantity, round report.Round) string {
	if math.IsNaN(q.Value) {
		return "not determined"
	}
	return report.Show(q, s.Units, round)
}

// minutes prints a time v [s], rounded up.
func minutes(v float64) string {
	if math.IsNaN(v) {
		return "not determined"
	}
	return fmt.Sprintf("%.0f min", math.Ceil(v/60))
}

// proofSetting prints what is set up and what is stored in the tank.
func proofSetting(b *strings.Builder, s *report.Sheet, width int) {
	p := s.Proof
	pressure := func(v float64, round report.Round) string { return s.Gauge(v, round) }
	fmt.Fprintf(b, "%s with %s, %s\n", p.Method, p.Fluid, p.Orientation)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "to set at the gauge\t%s\n", pressure(p.Pressure, report.Up))
	fmt.Fprintf(w, "never over\t%s\n", pressure(p.MostShown, report.Down))
	if math.IsNaN(p.Relief) {
		fmt.Fprintf(w, "relief device\tno room for one: no valve is shut for the hold\n")
	} else {
		fmt.Fprintf(w, "relief device\t%s\n", pressure(p.Relief, report.Down))
	}
	fmt.Fprintf(w, "full scale of the gauges\t%s to %s\n", pressure(p.GaugeLeast, report.Up), pressure(p.GaugeMost, report.Down))
	fmt.Fprintf(w, "temperature of fluid and metal\t%s\n", shown(s, check.K("", "", p.Temperature), report.Nearest))
	fmt.Fprintf(w, "raised above half\tat most %s a minute\n", pressure(60*p.Rate, report.Down))
	if p.Examination > 0 {
		fmt.Fprintf(w, "nobody near above\t%s\n", pressure(p.Examination, report.Down))
	} else {
		fmt.Fprintf(w, "nobody near\tat any pressure: examine by remote viewing\n")
	}
	fmt.Fprintf(w, "hold\t%s, read at least every %s\n", minutes(p.Hold), report.Minutes(p.HoldRead))
	fmt.Fprintf(w, "stored energy\t%s\n", shown(s, check.J("", "", p.StoredEnergy), report.Up))
	if p.StandOff != nil {
		fmt.Fprintf(w, "least distance of people\t%s\n", shown(s, check.M("", "", *p.StandOff), report.Up))
	}
	if p.Barrier {
		fmt.Fprintf(w, "barrier\trequired, with remote reading\n")
	}
	w.Flush()
	if len(p.Points) == 0 {
		return
	}
	var rows [][]string
	for _, at := range p.Points {
		required, least := report.ShowPair(check.Pa("", "", at.Required), check.Pa("", "", at.Low), s.Units)
		station := report.Show(check.M("", "", math.Round(at.Z*1e6)/1e6), s.Units, report.Nearest)
		rows = append(rows, []string{at.Name, station, pressure(at.Service, report.Up), required, least, pressure(at.High, report.Up)})
	}
	b.WriteString("\n" + besideOrUnder([]string{"point", "station z", "service", "required", "least", "most"}, rows, width))
}

// proofSteps prints the readings to expect, and the drift of the closed tank. In gas no
// volume is read. Where a line would be wider than the terminal, the name of a step
// stands over its numbers.
func proofSteps(b *strings.Builder, s *report.Sheet, width int) {
	head := []string{"step, at least", "gauge"}
	gas := s.Proof.Method == "pneumatic"
	words := "\nreadings to expect; strains, in µε = 10⁻⁶, and diameter outside on the plain cylinder\n"
	if !gas {
		head = append(head, "in, bled", "adds ± stop band")
	}
	head = append(head, "hoop µε", "axial µε", "diameter")
	strain := func(ε float64) string { return strings.TrimSuffix(s.Reading(check.Num("", "", ε)), "×10⁻⁶") }
	var rows [][]string
	for i, step := range s.Proof.Steps {
		row := []string{fmt.Sprintf("%d %s, %s", i+1, step.Name, minutes(step.Hold)), s.Gauge(step.Pressure, step.GaugeRound())}
		if !gas {
			row = append(row, s.Reading(check.M3("", "", step.InjectedVolume)), step.Adds(s.Units))
		}
		rows = append(rows, append(row, strain(step.HoopStrain), strain(step.AxialStrain), s.Reading(check.M("", "", step.DiameterGrowth))))
	}
	b.WriteString(report.Fold(words, width) + besideOrUnder(head, rows, width))
	if len(s.Proof.Drifts) > 0 {
		fmt.Fprint(b, "\nclosed and full, for each degree of water and wall:\n")
		w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
		for _, d := range s.Proof.Drifts {
			fmt.Fprintf(w, "%s\t%s\n", shown(s, check.K("", "", d.Temperature), report.Nearest), s.Reading(check.Quantity{Value: d.Drift, Unit: "Pa/K"}))
		}
		w.Flush()
	}
	fmt.Fprintln(b)
}

// besideOrUnder sets rows in columns, a row to a line; where that is wider than width,
// the first cell of each row stands over the others. A width of 0 has no end.
func besideOrUnder(head []string, rows [][]string, width int) string {
	set := func(under bool) string {
		var cells strings.Builder
		w := tabwriter.NewWriter(&cells, 0, 0, 2, ' ', 0)
		names := []string{}
		for _, row := range append([][]string{head}, rows...) {
			if under {
				names, row = append(names, row[0]), append([]string{""}, row[1:]...)
			}
			fmt.Fprintln(w, strings.Join(row, "\t"))
		}
		w.Flush()
		if !under {
			return cells.String()
		}
		var out strings.Builder
		for i, line := range strings.Split(strings.TrimRight(cells.String(), "\n"), "\n") {
			fmt.Fprintf(&out, "%s\n%s\n", names[i], line)
		}
		return out.String()
	}
	if beside := set(false); report.Fold(beside, width) == beside {
		return beside
	}
	return set(true)
}

// logForm prints a blank for every quantity that is read, at every line of the log form,
// in at most 80 characters.
func logForm(b *strings.Builder, s *report.Sheet) {
	volumes, units := "in _____ returned _____ line _____ ", " volumes ____\nvolumes are totals since the vent was closed; what was not read stays empty"
	if s.Proof.Method == "pneumatic" {
		volumes, units = "", ""
	}
	b.WriteString("log form; the unit of time ____ gauges ____ temperatures ____" + units + "\n")
	for _, r := range s.Proof.LogRows() {
		name := strings.TrimSpace(r.Number + " " + r.Name)
		if !math.IsNaN(r.Pressure) {
			name += ": " + s.Gauge(r.Pressure, r.GaugeRound())
		}
		fmt.Fprintf(b, "%s\n   time ______  gauge 1 ______  gauge 2 ______  fluid ______  metal ______\n"+
			"   %shoop _____ axial _____ ΔD _____ by ___\n", name, volumes)
	}
	b.WriteString("\n")
}
