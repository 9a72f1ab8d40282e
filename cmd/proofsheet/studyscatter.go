package main

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
)

func runScatter(ctx context.Context, c *cli.Context, t *tank.Tank, inputs []string) error {
	s, err := study.Scatters(ctx, t, c.Int("scatter"), c.Bool("shell"), counter(c))
	if err != nil {
		return fmt.Errorf("--scatter: %w", err)
	}
	if err := deliverStudy(c, scatterText(s, c.Bool("shell"), foldWidth(c)), scatterRows(s), scatterChart(s), t.Sheet.Units, inputs); err != nil {
		return err
	}
	if s.Done < s.Asked || s.Faulty > 0 {
		return errFails
	}
	return nil
}

// shownChecks is how many checks that never fail are printed.
const shownChecks = 12

// scatterText prints the samples as a table, within a width as of [report.Fold].
func scatterText(s *study.Scatter, withShell bool, width int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d samples, Latin hypercube, seed %d, of\n", s.Done, study.Seed)
	number := map[string]int{}
	for i, in := range s.Inputs {
		number[in.Key] = i + 1
		fmt.Fprintf(&b, "  [%d]  %s (%s)\n", i+1, in.Key, in.Shape)
	}
	b.WriteString("\n")
	rows, rest := [][]string{{"check", "not satisfied", "95 % interval", "mean margin", "spread", "follows most"}}, 0
	for i, x := range s.Checks {
		if x.Fails == 0 && i >= shownChecks {
			rest++
			continue
		}
		most := "-"
		if len(x.Sensitivity) > 0 {
			most = glued(fmt.Sprintf("[%d] %+.2f", number[x.Sensitivity[0].Key], x.Sensitivity[0].Correlation))
		}
		rows = append(rows, []string{x.ID, glued(share(x)), glued(fmt.Sprintf("%.2g to %.2g", x.Low, x.High)),
			fmt.Sprintf("%.3f", x.Mean), fmt.Sprintf("%.3f", x.Deviation), most})
	}
	b.WriteString(side(rows, width))
	if rest > 0 {
		fmt.Fprintf(&b, "%d more checks never failed\n", rest)
	}
	if s.Faulty > 0 {
		fmt.Fprintf(&b, "%d samples were no tank: %s\n", s.Faulty, s.Fault)
	}
	if s.Done < s.Asked {
		fmt.Fprintf(&b, "broken off: %d of %d samples\n", s.Done, s.Asked)
	}
	if !withShell {
		b.WriteString("Joints were left out: --shell assesses them too.\n")
	}
	b.WriteString("Only as good as its inputs: shapes and spreads are those of [scatter], inputs are taken as independent, " +
		"and a check that is not assessed has no probability.\n")
	return report.Fold(b.String(), width)
}

// share prints how often a check was not satisfied.
func share(x study.Scattered) string {
	if x.Samples == 0 {
		return "not assessed"
	}
	return fmt.Sprintf("%d of %d", x.Fails, x.Samples)
}

func scatterRows(s *study.Scatter) [][]string {
	head := []string{"check", "samples", "not_satisfied", "not_assessed", "probability", "low", "high", "mean_margin", "deviation"}
	for _, in := range s.Inputs {
		head = append(head, "correlation "+in.Key)
	}
	rows := [][]string{head}
	for _, x := range s.Checks {
		row := []string{x.ID, strconv.Itoa(x.Samples), strconv.Itoa(x.Fails), strconv.Itoa(x.NotMade), plainNumber(x.Probability),
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

// scatterChart draws, for the checks nearest to failure, the mean margin with two
// deviations to each side.
func scatterChart(s *study.Scatter) *report.Chart {
	c := report.Chart{Name: "scatter", Title: "Margins that scatter most towards failure: mean, and two deviations to each side",
		X: report.Axis{Name: "check, in the order of the table", Unit: "1"}, Y: report.Axis{Name: "margin", Unit: "1"}, Limits: []report.Limit{{Name: "just enough", Y: 0}}}
	mean := report.Series{Name: "mean"}
	spread := report.Series{Name: "two deviations"}
	for i, x := range s.Checks {
		if i >= shownChecks || math.IsNaN(x.Mean) {
			break
		}
		n := float64(i + 1)
		mean.X, mean.Y = append(mean.X, n), append(mean.Y, x.Mean)
		spread.X = append(spread.X, n, n, n)
		spread.Y = append(spread.Y, x.Mean-2*x.Deviation, x.Mean+2*x.Deviation, math.NaN())
	}
	if mean.X == nil {
		return nil
	}
	c.Series = []report.Series{mean, spread}
	return &c
}
