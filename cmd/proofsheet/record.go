package main

import (
	"errors"
	"fmt"
	"time"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// judgeLog judges the log of a proof test by the plan of its tank. Tests of verifying
// set a judge of their own.
var judgeLog = func(t *tank.Tank, l *tank.Log) (*report.Sheet, *report.Record, error) {
	return assess.Record(t, l, assess.Options{Version: programVersion()})
}

func recordCommand() *cli.Command {
	return &cli.Command{
		Name: "record", Usage: "judge the log of a proof test by the plan", ArgsUsage: "TANK.toml LOG.csv",
		Description: "The log is a table of comma-separated values: proofsheet help log. Its headings are time, pressure, volume, and\n" +
			"where they were read returned, line, temperature (of the water), wall_temperature and strain-NAME, each with its\n" +
			"unit and, if known, the standard uncertainty of a change: \"temperature [degC] ± 0.02 K\". Either file may be \"-\",\n" +
			"standard input.\n\n" +
			"Exit status: 0 the test passes its record, 1 it fails or is inconclusive, 2 the input or the call is wrong.",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "pdf", Usage: "write the record to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "json", Usage: "write the record as data to `FILE`, - for standard output"},
		}, signerFlags()...),
		Action: runRecord,
	}
}

func runRecord(c *cli.Context) error {
	if err := checkOutputFlags(c); err != nil {
		return err
	}
	if c.NArg() != 2 {
		return fmt.Errorf("record takes two files, not %d: proofsheet record %s", c.NArg(), c.Command.ArgsUsage)
	}
	if log := c.Args().Get(1); tank.IsTankName(log) {
		return fmt.Errorf("%s is a tank file, the log is a table of comma-separated values: proofsheet record %s", log, c.Command.ArgsUsage)
	}
	if c.Args().Get(0) == dash && c.Args().Get(1) == dash {
		return errors.New("only one of tank and log can come from standard input")
	}
	t, inputs, err := readTank(c, c.Args().Get(0))
	if err != nil {
		return err
	}
	l, err := readLog(c, c.Args().Get(1), t.Proof.Gas())
	if err != nil {
		return err
	}
	s, r, err := judgeLog(t, l)
	if err != nil {
		return inFile(t, err)
	}
	if err := deliverRecord(c, s, r, append(inputs, c.Args().Get(1))); err != nil {
		return err
	}
	if r.Verdict != "satisfied" {
		return errFails
	}
	return nil
}

// readLog reads the log of a name, "-" for standard input, of a test with gas or
// with water.
func readLog(c *cli.Context, name string, gas bool) (*tank.Log, error) {
	data, err := readInput(c, name)
	if err != nil {
		return nil, err
	}
	if name == dash {
		name = "stdin.csv"
	}
	return tank.ReadLog(name, data, gas)
}

// deliverRecord writes the files that were asked for, all or none, then prints
// the record, in whose place a file may stand that goes to standard output.
func deliverRecord(c *cli.Context, s *report.Sheet, r *report.Record, inputs []string) error {
	var out outputs
	defer out.discard()
	text := report.RecordText(s, r, foldWidth(c))
	if path := c.String("json"); path != "" {
		data, err := report.RecordJSON(s, r)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addKind(path, data, dataFile, inputs...); err != nil {
			return err
		}
	}
	if path := c.String("pdf"); path != "" {
		data, err := recordDocument(c, s, r)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addDocument(path, data, c.Bool("unsigned"), inputs...); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

// recordDocument returns the record as PDF, signed unless that is left out.
func recordDocument(c *cli.Context, s *report.Sheet, r *report.Record) ([]byte, error) {
	data, err := pdf.WriteRecord(s, r)
	if err != nil || c.Bool("unsigned") {
		return data, err
	}
	signer, role, err := chosenSigner(c)
	if err != nil {
		return nil, err
	}
	box, err := boxFor(role, s.Paper)
	if err != nil {
		return nil, err
	}
	return sign.Sign(data, signer, sign.Options{Role: role, When: time.Now(), Box: box})
}
