package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"os/signal"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

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
			&cli.StringFlag{Name: "pdf", Usage: "write charts and the whole table to `FILE`, - for standard output"},
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
	if err := checkStudyFlags(c); err != nil {
		return err
	}
	j := &job{}
	if j.tank, j.inputs, err = readTank(c, name); err != nil {
		return err
	}
	if c.IsSet("pdf") { // its verdict stands on the pages
		if j.sheet, err = assessTank(j.tank); err != nil {
			return inFile(j.tank, err)
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if c.IsSet("scatter") {
		return runScatter(ctx, c, j)
	}
	return runVary(ctx, c, j)
}

// checkStudyFlags refuses flags that contradict each other, before anything is read.
func checkStudyFlags(c *cli.Context) error {
	for _, name := range []string{"csv", "svg", "pdf"} {
		if c.IsSet(name) && c.String(name) == "" {
			return fmt.Errorf("--%s needs a name", name)
		}
	}
	if c.String("csv") == dash && c.String("pdf") == dash {
		return errors.New("only one of --csv and --pdf can go to standard output")
	}
	return nil
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

// A studied is a study that was made, in words, rows, figures and as pages.
type studied struct {
	text  string
	rows  [][]string
	drawn []pdf.Drawing // the first is that of --svg; nil where there is nothing to draw

	pages    pdf.Study  // without rows and figures
	attached [][]string // the rows without where the tank file lay
}

// deliverStudy writes the files that were asked for, all or none, then prints the text, in
// whose place a file may stand that goes to standard output.
func (j *job) deliverStudy(c *cli.Context, s studied) error {
	var out outputs
	defer out.discard()
	text := s.text
	if path := c.String("csv"); path != "" {
		data, err := separated(s.rows)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addKind(path, data, tableFile, j.inputs...); err != nil {
			return err
		}
	}
	if path := c.String("svg"); path != "" {
		if len(s.drawn) == 0 {
			return fmt.Errorf("--svg: there is nothing to draw")
		}
		data, err := pdf.DrawingSVG(s.drawn[0], j.tank.Sheet.Units)
		if err != nil {
			return fmt.Errorf("--svg: %w", err)
		}
		if err := out.addKind(path, data, svgFile, j.inputs...); err != nil {
			return err
		}
	}
	if path := c.String("pdf"); path != "" {
		data, err := j.studyDocument(s)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addDocument(path, data, true, j.inputs...); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

// studyDocument returns the study as PDF.
func (j *job) studyDocument(s studied) (data []byte, err error) {
	if s.pages.Rows, err = separated(s.attached); err != nil {
		return nil, err
	}
	s.pages.Drawn = s.drawn
	return pdf.WriteStudy(j.sheet, &s.pages)
}

// separated returns rows as comma-separated values.
func separated(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	err := csv.NewWriter(&b).WriteAll(rows)
	return b.Bytes(), err
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
