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

	"proofsheet/report"
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
		} else if err := out.addKind(path, []byte(b.String()), tableFile, inputs...); err != nil {
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
		if err := out.addKind(path, data, svgFile, inputs...); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

// glued keeps a number and its unit on one line.
func glued(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// plainNumber writes a number with all its digits, nothing for none.
func plainNumber(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}
