package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"os/signal"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/pdf"
)

func studyCommand() *cli.Command {
	return &cli.Command{
		Name: "study", Usage: "sweeps and scatter", ArgsUsage: "TANK.toml",
		Description: "--vary KEY=A..B/STEP, once or twice, assesses the tank at every value: mass, least margin, governing check.\n" +
			"--scatter N draws the inputs of [scatter] N times: how likely each check fails, and which input matters. Of thousands of samples most are decided by surfaces fitted to some hundred assessed tanks, never one near to failing; --exact assesses all.\n" +
			"Ctrl-C keeps what is done. An answer is only as good as its inputs.",
		Flags: []cli.Flag{
			&cli.StringSliceFlag{Name: "vary", Usage: "`KEY=A..B/STEP` or KEY=A,B,C, once or twice"},
			&cli.IntFlag{Name: "scatter", Usage: "`N` samples of [scatter]"},
			&cli.BoolFlag{Name: "shell", Usage: "with --scatter: the numerical shell in every tank assessed, some times slower"},
			&cli.BoolFlag{Name: "exact", Usage: "with --scatter: every sample is assessed, however many"},
			&cli.StringFlag{Name: "csv", Usage: "write the rows to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "svg", Usage: "write the chart to `FILE`"},
		},
		Action: runStudy,
	}
}

func runStudy(c *cli.Context) error {
	name, err := oneFile(c)
	if err != nil {
		return err
	}
	if c.IsSet("vary") == c.IsSet("scatter") {
		return fmt.Errorf("study takes either --vary or --scatter")
	}
	t, inputs, err := readTank(c, name)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if c.IsSet("scatter") {
		return runScatter(ctx, c, t, inputs)
	}
	return runVary(ctx, c, t, inputs)
}

// counter tells how far a study is, on a terminal only.
func counter(c *cli.Context) func(done, all int) {
	f, ok := c.App.ErrWriter.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	return func(done, all int) {
		fmt.Fprintf(f, "\r%d of %d", done, all)
		if done == all {
			fmt.Fprint(f, "\r\033[K")
		}
	}
}

// deliverStudy writes table and chart, then prints the text.
func deliverStudy(c *cli.Context, text string, rows [][]string, chart *report.Chart, units string, inputs []string) error {
	var out outputs
	defer out.discard()
	if path := c.String("csv"); path != "" {
		var b strings.Builder
		w := csv.NewWriter(&b)
		if err := w.WriteAll(rows); err != nil {
			return err
		}
		if path == dash {
			text = b.String()
		} else if err := out.add(path, []byte(b.String()), inputs...); err != nil {
			return err
		}
	}
	if path := c.String("svg"); path != "" {
		if chart == nil {
			return fmt.Errorf("--svg: there is nothing to draw")
		}
		data, err := pdf.ChartSVG(*chart, units)
		if err != nil {
			return err
		}
		if err := out.add(path, data, inputs...); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

func runVary(ctx context.Context, c *cli.Context, t *tank.Tank, inputs []string) error {
	var axes []study.Axis
	for _, text := range c.StringSlice("vary") {
		a, err := study.ParseAxis(t, text)
		if err != nil {
			return fmt.Errorf("--vary: %w", err)
		}
		axes = append(axes, a)
	}
	variants, err := study.Vary(ctx, t, axes, counter(c))
	if err != nil {
		return fmt.Errorf("--vary: %w", err)
	}
	if err := deliverStudy(c, varyText(t, axes, variants), varyRows(axes, variants), varyChart(axes, variants), t.Sheet.Units, inputs); err != nil {
		return err
	}
	for _, v := range variants {
		if !v.Done {
			return errFails
		}
	}
	return nil
}

// varyText prints the sweep as a table.
func varyText(t *tank.Tank, axes []study.Axis, variants []study.Variant) string {
	rows, left := [][]string{nil}, 0
	for _, a := range axes {
		rows[0] = append(rows[0], wordsOf(a.Key))
	}
	rows[0] = append(rows[0], "mass", "least margin", "not satisfied, not assessed", "check")
	for _, v := range variants {
		if !v.Done {
			left++
			continue
		}
		var row []string
		for k, a := range axes {
			row = append(row, glued(report.Show(check.Quantity{Value: v.At[k], Unit: a.Unit}, t.Sheet.Units, report.Nearest)))
		}
		if v.Fault != "" {
			rows = append(rows, append(row, "-", "-", "", v.Fault))
			continue
		}
		mass, margin := "-", "-"
		if !math.IsNaN(v.Mass) {
			mass = report.Show(check.Kg("", "", v.Mass), t.Sheet.Units, report.Up)
		}
		if !math.IsNaN(v.Margin) {
			margin = fmt.Sprintf("%+.2f", math.Floor(v.Margin*100)/100)
		}
		rows = append(rows, append(row, glued(mass), margin, glued(fmt.Sprintf("%d, %d", v.Fails, v.NotMade)), v.Check))
	}
	var b strings.Builder
	b.WriteString(report.Fold(side(rows)))
	if left > 0 {
		fmt.Fprintf(&b, "broken off: %d of %d not run\n", left, len(variants))
	}
	b.WriteString("The least margin is that of the checks made; a check that is not assessed is\nnot satisfied.\n")
	return b.String()
}

// wordsOf lets a key be broken after its table in the head of a column.
func wordsOf(key string) string {
	at := strings.LastIndex(key, ".") + 1
	return strings.TrimSpace(key[:at] + " " + key[at:])
}

// glued keeps a number and its unit on one line.
func glued(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// varyRows is the sweep as CSV, SI.
func varyRows(axes []study.Axis, variants []study.Variant) [][]string {
	var head []string
	for _, a := range axes {
		head = append(head, fmt.Sprintf("%s [%s]", a.Key, a.Unit))
	}
	rows := [][]string{append(head, "mass [kg]", "least_margin", "check", "status", "not_satisfied", "not_assessed", "fault")}
	for _, v := range variants {
		if !v.Done {
			continue
		}
		var row []string
		for _, x := range v.At {
			row = append(row, plainNumber(x))
		}
		status := v.Status.String()
		if v.Fault != "" {
			status = ""
		}
		rows = append(rows, append(row, plainNumber(v.Mass), plainNumber(v.Margin), v.Check, status, strconv.Itoa(v.Fails), strconv.Itoa(v.NotMade), v.Fault))
	}
	return rows
}

// plainNumber writes a number with all its digits, nothing for none.
func plainNumber(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// varyChart draws the least margin over the first input, one line for each value
// of the second.
func varyChart(axes []study.Axis, variants []study.Variant) *report.Chart {
	c := report.Chart{Name: "study", Title: "Least margin of the checks made", X: report.Axis{Name: axes[0].Key, Unit: axes[0].Unit},
		Y: report.Axis{Name: "least margin", Unit: "1"}, Limits: []report.Limit{{Name: "just enough", Y: 0}}}
	for _, v := range variants {
		if !v.Done || math.IsNaN(v.Margin) {
			continue
		}
		name := "least margin"
		if len(axes) == 2 {
			name = fmt.Sprintf("%s %s", axes[1].Key, report.Show(check.Quantity{Value: v.At[1], Unit: axes[1].Unit}, "si", report.Nearest))
		}
		at := -1
		for i, s := range c.Series {
			if s.Name == name {
				at = i
			}
		}
		if at < 0 {
			c.Series = append(c.Series, report.Series{Name: name})
			at = len(c.Series) - 1
		}
		c.Series[at].X, c.Series[at].Y = append(c.Series[at].X, v.At[0]), append(c.Series[at].Y, v.Margin)
	}
	if len(c.Series) == 0 {
		return nil
	}
	return &c
}
