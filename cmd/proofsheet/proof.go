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
		proofSetting(&b, s)
		proofSteps(&b, s)
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
func proofSetting(b *strings.Builder, s *report.Sheet) {
	p := s.Proof
	pressure := func(v float64, round report.Round) string { return s.Gauge(v, round) }
	fmt.Fprintf(b, "%s with %s, %s\n", p.Method, p.Fluid, p.Orientation)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "to set at the gauge\t%s\n", pressure(p.Pressure, report.Up))
	fmt.Fprintf(w, "never over\t%s\n", pressure(p.MostShown, report.Down))
	fmt.Fprintf(w, "relief device\t%s\n", pressure(p.Relief, report.Down))
	fmt.Fprintf(w, "full scale of the gauges\t%s to %s\n", pressure(p.GaugeLeast, report.Up), pressure(p.GaugeMost, report.Down))
	fmt.Fprintf(w, "temperature of fluid and metal\t%s\n", shown(s, check.K("", "", p.Temperature), report.Nearest))
	fmt.Fprintf(w, "raised above half\tat most %s a minute\n", pressure(60*p.Rate, report.Down))
	if p.Examination > 0 {
		fmt.Fprintf(w, "nobody near above\t%s\n", pressure(p.Examination, report.Down))
	} else {
		fmt.Fprintf(w, "nobody near\tat any pressure: examine by remote viewing\n")
	}
	fmt.Fprintf(w, "hold\t%s\n", minutes(p.Hold))
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
	fmt.Fprintln(b)
	w = tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "point\tstation z\tservice\trequired\tleast\tmost")
	for _, at := range p.Points {
		required, least := report.ShowPair(check.Pa("", "", at.Required), check.Pa("", "", at.Low), s.Units)
		station := report.Show(check.M("", "", math.Round(at.Z*1e6)/1e6), s.Units, report.Nearest)
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%s\n", at.Name, station, pressure(at.Service, report.Up), required, least, pressure(at.High, report.Up))
	}
	w.Flush()
}

// proofSteps prints the log form: the readings to expect, and blanks for those
// that were taken. In gas no volume is read.
func proofSteps(b *strings.Builder, s *report.Sheet) {
	fmt.Fprintln(b)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	liquid := s.Proof.Method != "pneumatic"
	volumes := "injected\tadds, ± stop band\t"
	if !liquid {
		volumes = ""
	}
	fmt.Fprintf(w, "step\tgauge\thold\t%shoop strain\taxial strain\tdiameter grows\tread\ttemperature\ttime\n", volumes)
	for i, step := range s.Proof.Steps {
		fmt.Fprintf(w, "%d %s\t%s\t%s\t", i+1, step.Name, s.Gauge(step.Pressure, step.GaugeRound()), minutes(step.Hold))
		if liquid {
			fmt.Fprintf(w, "%s\t%s\t", s.Reading(check.M3("", "", step.InjectedVolume)), step.Adds(s.Units))
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t______\t______\t______\n", s.Reading(check.Num("", "", step.HoopStrain)), s.Reading(check.Num("", "", step.AxialStrain)), s.Reading(check.M("", "", step.DiameterGrowth)))
	}
	w.Flush()
	if len(s.Proof.Drifts) > 0 {
		fmt.Fprint(b, "\nclosed and full, for each degree of water and wall:\n")
		w = tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
		for _, d := range s.Proof.Drifts {
			fmt.Fprintf(w, "%s\t%s\n", shown(s, check.K("", "", d.Temperature), report.Nearest), s.Reading(check.Quantity{Value: d.Drift, Unit: "Pa/K"}))
		}
		w.Flush()
	}
	fmt.Fprintln(b)
}
