package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// assessTank turns a tank into its sheet. Tests of flags, files and exit codes
// set a sheet of their own.
var assessTank = func(t *tank.Tank) (*report.Sheet, error) {
	return assess.Assess(t, assess.Options{Version: programVersion()})
}

// A job is a tank file read and assessed.
type job struct {
	tank   *tank.Tank
	sheet  *report.Sheet
	inputs []string // every file that was read, not to be written over
}

// load reads and assesses the tank file that is the command's only argument.
// Paths in the tank file are relative to it, and to the working folder for
// standard input.
func load(c *cli.Context) (*job, error) {
	name, err := oneFile(c)
	if err != nil {
		return nil, err
	}
	t, inputs, err := readTank(c, name)
	if err != nil {
		return nil, err
	}
	j := &job{tank: t, inputs: inputs}
	if j.sheet, err = assessTank(t); err != nil {
		return nil, inFile(t, err)
	}
	return j, nil
}

// ofTable finds the table of the tank file that the message of an error begins with.
var ofTable = regexp.MustCompile(`^([a-z]+(?:\.[a-z][a-z0-9_-]*)*): (.*)$`)

// inFile gives an error that does not say its place that of the table or key it names,
// where the file has it; else it puts the file's name before it.
func inFile(t *tank.Tank, err error) error {
	var faults tank.Faults
	if errors.As(err, &faults) {
		return faults
	}
	if m := ofTable.FindStringSubmatch(err.Error()); m != nil && t.Has(m[1]) {
		return tank.Faults{t.Fault(m[1], "%s", m[2])}
	}
	return fmt.Errorf("%s: %w", t.File, err)
}

// readTank reads the tank file of a name, "-" for standard input, and returns it
// with every file that must not be written over: what it read, and the keys of
// the signer.
func readTank(c *cli.Context, name string) (t *tank.Tank, inputs []string, err error) {
	return readTankBy(c, name, readFile)
}

// readTankBy does so with a reader of files of its own.
func readTankBy(c *cli.Context, name string, read func(path string) ([]byte, error)) (t *tank.Tank, inputs []string, err error) {
	var src []byte
	if name == dash {
		src, err = readInput(c, name)
	} else {
		src, err = read(name)
	}
	if err != nil {
		return nil, nil, err
	}
	for _, flag := range []string{"key", "certificate", "p12", "password-file"} {
		if file := c.String(flag); file != "" {
			inputs = append(inputs, file)
		}
	}
	folder := "."
	if name == dash {
		name = "stdin"
	} else {
		folder = filepath.Dir(name)
		inputs = append(inputs, name)
	}
	t, err = tank.Read(name, src, func(written string) ([]byte, error) {
		path := written
		if !filepath.IsAbs(path) {
			path = filepath.Join(folder, path)
		}
		inputs = append(inputs, path)
		data, err := read(path)
		if near := hint(path, written, err); near != "" {
			err = fmt.Errorf("%v%s", innermost(err), near) // the place in the tank file is told before it
		}
		return data, err
	})
	if err == nil {
		for _, d := range t.Doubts() {
			if err := tell(c.App.ErrWriter, fmt.Sprintf("caution: %v\n", d)); err != nil {
				return nil, nil, err
			}
		}
	}
	return t, inputs, err
}

// verdict ends a run by the verdict over all checks.
func (j *job) verdict() error {
	if j.sheet.Verdict != check.Satisfied {
		return errFails
	}
	return nil
}

// folderFor makes a folder for outputs.
func folderFor(path string) error {
	if err := os.MkdirAll(path, 0o777); err != nil {
		if info, stat := os.Stat(path); stat == nil && !info.IsDir() {
			return fmt.Errorf("%s is a file; write the name of a folder for the drawings", path)
		}
		return plain(err)
	}
	return nil
}
