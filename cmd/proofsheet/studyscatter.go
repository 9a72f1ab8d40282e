package main

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

func runScatter(ctx context.Context, c *cli.Context, j *job) error {
	t := j.tank
	s, err := study.Scatters(ctx, t, c.Int("scatter"), study.ScatterOptions{Shell: c.Bool("shell"), Exact: c.Bool("exact")}, counter(c))
	if err != nil {
		return fmt.Errorf("--scatter: %w", err)
	}
	words, err := scatterInputs(t, s)
	if err != nil {
		return fmt.Errorf("--scatter: %w", err)
	}
	made := studied{text: scatterText(s, words, c.Bool("shell"), foldWidth(c)), rows: scatterRows(s), drawn: scatterDrawn(s)}
	if j.sheet != nil {
		made.pages, made.attached = scatterPages(t, s, words, c.Bool("shell")), made.rows
	}
	if err := j.deliverStudy(c, made); err != nil {
		return err
	}
	if s.Done < s.Asked || s.Faulty > 0 {
		return errFails
	}
	return nil
}

// shownChecks is how many checks that never fail are printed.
const shownChecks = 12

// What is said of every scatter study, and of one without the numerical shell.
const (
	scatterCaution = "Only as good as its inputs: shapes and spreads are those of [scatter], inputs are taken as independent, " +
		"and a check that is not assessed has no probability."
	withoutJoints = "Joints were left out: --shell assesses them too."
)

// scatterText prints the study, within a width as of [report.Fold].
func scatterText(s *study.Scatter, inputs []string, withShell bool, width int) string {
	var b strings.Builder
	fmt.Fprintln(&b, scatterAsked(s))
	for i, how := range inputs {
		fmt.Fprintf(&b, "  [%d]  %s: %s\n", i+1, s.Inputs[i].Key, how)
	}
	b.WriteString("\n" + scatterTable(s, width))
	for _, line := range scatterFaults(s) {
		b.WriteString(line + "\n")
	}
	b.WriteString(scatterWays(s))
	if !withShell {
		b.WriteString(withoutJoints + "\n")
	}
	b.WriteString(scatterCaution + "\n")
	return report.Fold(b.String(), width)
}

// scatterAsked heads the list of inputs.
func scatterAsked(s *study.Scatter) string {
	return fmt.Sprintf("%d samples, Latin hypercube, seed %d, of", s.Done, study.Seed)
}

// scatterFaults says what of the study was not done.
func scatterFaults(s *study.Scatter) (out []string) {
	if s.Faulty > 0 {
		out = append(out, fmt.Sprintf("%d of the %d samples assessed were no tank: %s", s.Faulty, s.Assessed, s.Fault))
	}
	if s.Done < s.Asked {
		out = append(out, fmt.Sprintf("broken off: %d of %d samples", s.Done, s.Asked))
	}
	return out
}

// scatterTable prints the checks, those that never fail only as far as they may
// matter.
func scatterTable(s *study.Scatter, width int) string {
	number := map[string]int{}
	for i, in := range s.Inputs {
		number[in.Key] = i + 1
	}
	rows, rest, unmade := [][]string{{"check", "not satisfied", "95 % interval", "mean margin", "spread", "follows most"}}, 0, 0
	for i, x := range s.Checks {
		switch {
		case x.Samples == 0:
			unmade++
			continue
		case x.Fails == 0 && i >= shownChecks:
			rest++
			continue
		}
		most := "-"
		if len(x.Sensitivity) > 0 {
			most = glued(fmt.Sprintf("[%d] %+.2f", number[x.Sensitivity[0].Key], x.Sensitivity[0].Correlation))
		}
		rows = append(rows, []string{x.ID, glued(fmt.Sprintf("%d of %d", x.Fails, x.Samples)), glued(interval(x)),
			meanMargin(x), deviation(x), most})
	}
	text := side(rows, width)
	if rest > 0 {
		text += fmt.Sprintf("%d more checks never failed\n", rest)
	}
	if unmade > 0 {
		text += fmt.Sprintf("%d checks were never made\n", unmade)
	}
	return text
}

// scatterInputs says of each input that was scattered how far.
func scatterInputs(t *tank.Tank, s *study.Scatter) (out []string, err error) {
	show := func(v float64, unit string) string {
		return report.Show(check.Quantity{Value: v, Unit: unit}, t.Sheet.Units, report.Nearest)
	}
	for _, in := range s.Inputs {
		if joint := in.Joint(); joint != "" {
			c, err := assess.CouponScatter(t, joint)
			if err != nil {
				return nil, err
			}
			line := fmt.Sprintf("normal as its %d coupons in place of their limit, ultimate %s, deviation %s", c.Ultimate.N, show(c.Ultimate.Mean, "Pa"), show(c.Ultimate.Deviation, "Pa"))
			if c.Yield.N > 0 {
				line += fmt.Sprintf(", yield %s, deviation %s by the same deviate", show(c.Yield.Mean, "Pa"), show(c.Yield.Deviation, "Pa"))
			}
			out = append(out, line+"; as if mean and deviation were known")
			continue
		}
		about, err := t.Number(in.Key)
		if err != nil {
			return nil, err
		}
		unit, _ := t.KeyUnit(in.Key)
		word := "deviation"
		if in.Shape == "uniform" {
			word = "half the width"
		}
		spread := show(in.Spread, unit)
		if unit == "K" { // a difference has no zero
			spread = fmt.Sprintf("%.4g K", in.Spread)
		}
		out = append(out, fmt.Sprintf("%s about %s, %s %s", in.Shape, show(about, unit), word, spread))
	}
	return out, nil
}

// scatterWays says how the samples were decided.
func scatterWays(s *study.Scatter) string {
	if s.Design == 0 {
		return "Every sample was assessed.\n"
	}
	ways := map[study.Way]int{}
	for _, x := range s.Checks {
		ways[x.Way]++
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%d samples and %d tanks beside them were assessed.\n", s.Assessed, s.Design)
	if ways[study.ViaSurface] > 0 {
		fmt.Fprintf(&b, "In the other %d samples %d checks were decided by surfaces of order %d in the inputs, and %d that never moved. "+
			"A sample nearer to failing than three times the largest error of the surface was assessed: up to %s %% of what is asked (%s).\n"+
			"%d samples tried the surfaces, which were not fitted to them: with 95 %% confidence fewer than %s %% of all have an error "+
			"above the largest seen. A jump that no tank met, as in a table far out, is not seen: --exact sees it.\n",
			s.Done-s.Assessed, ways[study.ViaSurface], s.Order, ways[study.ViaStill], percent(s.Band), s.BandCheck, s.Trials, percent(study.Unseen(s.Trials)))
	}
	if n := ways[study.ViaPart]; n > 0 {
		have := "checks have"
		if n == 1 {
			have = "check has"
		}
		fmt.Fprintf(&b, "%d %s no surface that serves: some tanks are none or leave it unmade, its margin jumps, or too many samples "+
			"are near to failing. Counted over the first %d samples, all assessed; the interval is the wider.\n", n, have, s.Counted)
	}
	return b.String()
}

// percent prints a share, rounded up.
func percent(share float64) string {
	digits := math.Pow(10, math.Floor(math.Log10(share*100))-1)
	return fmt.Sprintf("%.2g", math.Ceil(share*100/digits)*digits)
}

// scatterRows is the study as CSV.
func scatterRows(s *study.Scatter) [][]string {
	head := []string{"check", "decided_by", "samples", "not_satisfied", "not_assessed", "probability", "low", "high", "mean_margin", "deviation"}
	for _, in := range s.Inputs {
		head = append(head, "correlation "+in.Key)
	}
	rows := [][]string{head}
	for _, x := range s.Checks {
		row := []string{x.ID, string(x.Way), strconv.Itoa(x.Samples), strconv.Itoa(x.Fails), strconv.Itoa(x.NotMade), plainNumber(x.Probability),
			plainNumber(x.Low), plainNumber(x.High), plainNumber(x.Mean), plainNumber(x.Deviation)}
		for _, in := range s.Inputs {
			r := math.NaN()
			for _, f := range x.Sensitivity {
				if f.Key == in.Key {
					r = f.Correlation
				}
			}
			row = append(row, plainNumber(r))
		}
		rows = append(rows, row)
	}
	return rows
}
