package main

import (
	"bufio"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/unit"
)

func newCommand() *cli.Command {
	return &cli.Command{
		Name: "new", Usage: "write a commented starter file; never overwrites", ArgsUsage: "FILE.toml",
		Description: "The starter reads without fault. Without flags, at a terminal, the three choices are asked for.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "head", Usage: "`SHAPE` of both heads: " + strings.Join(shapeNames(), ", ")},
			&cli.StringFlag{Name: "fluid", Usage: "contents, a `NAME` of proofsheet list fluids"},
			&cli.StringFlag{Name: "alloy", Usage: "of every part, a `NAME` of proofsheet list materials"},
		},
		Action: runNew,
	}
}

func runNew(c *cli.Context) error {
	path, err := oneFile(c)
	if err != nil {
		return err
	}
	if path != dash {
		if _, err := os.Lstat(path); err == nil {
			return fmt.Errorf("%s exists and is not written over", path)
		}
	}
	s := tank.Start{Head: c.String("head"), Fluid: c.String("fluid"), Alloy: c.String("alloy")}
	if in, ok := c.App.Reader.(*os.File); ok && path != dash && s == (tank.Start{}) && term.IsTerminal(int(in.Fd())) {
		s = asked(c, bufio.NewReader(in))
	}
	if err := settle(&s); err != nil {
		return err
	}
	text := tank.StarterFor(s)
	if path == dash {
		return toStdout(c, string(text))
	}
	if err := createNew(path, text); err != nil {
		return err
	}
	fmt.Fprintf(c.App.ErrWriter, "wrote %s; next: proofsheet check %[1]s\n", path)
	return nil
}

// asked asks for the three choices; an empty answer leaves the starter's own.
func asked(c *cli.Context, in *bufio.Reader) (s tank.Start) {
	for _, q := range []struct {
		what  string
		names []string
		into  *string
	}{
		{"shape of both heads (" + strings.Join(shapeNames(), ", ") + ") [a cone aft, an ellipsoid forward]", shapeNames(), &s.Head},
		{"contents, a name of proofsheet list fluids [isopropanol]", fluid.Names(), &s.Fluid},
		{"alloy, a name of proofsheet list materials [304L]", material.AlloyNames(), &s.Alloy},
	} {
		for {
			fmt.Fprintf(c.App.ErrWriter, "%s: ", q.what)
			line, err := in.ReadString('\n')
			*q.into = strings.TrimSpace(line)
			if fault := known(q.what, *q.into, q.names); fault == nil || err != nil {
				break
			} else {
				fmt.Fprintln(c.App.ErrWriter, fault)
			}
		}
	}
	return s
}

// known refuses a name that is not in a list, with the nearest one.
func known(what, name string, names []string) error {
	for _, n := range names {
		if n == name || name == "" {
			return nil
		}
	}
	near := unit.Near(name, names)
	for _, n := range names {
		if strings.EqualFold(n, name) {
			near = n
		}
	}
	if near != "" {
		return fmt.Errorf("%s: %q is not known; did you mean %s?", what, name, near)
	}
	if like := fluid.Like(name); len(like) > 0 && slices.Contains(names, like[0]) {
		return fmt.Errorf("%s: %q is not known; did you mean %s?", what, name, strings.Join(like, " or "))
	}
	return fmt.Errorf("%s: %q is not known; write one of %s", what, name, strings.Join(names, ", "))
}

func shapeNames() (out []string) {
	for _, s := range heads.Shapes {
		out = append(out, s.Name)
	}
	return out
}

// settle checks the names, and takes temperature and pressure from the contents:
// 20 °C where the data reach, else the boiling point; the vapour pressure there
// with a tenth to spare, in steps of 5 bar, where 10 bar would not hold it.
func settle(s *tank.Start) error {
	if err := errors.Join(known("--head", s.Head, shapeNames()), known("--fluid", s.Fluid, fluid.Names()), known("--alloy", s.Alloy, material.AlloyNames())); err != nil {
		return err
	}
	f, ok := fluid.Find(s.Fluid)
	if !ok {
		return nil
	}
	const room = 293.15 // [K]
	T := room
	if _, err := f.Density(T); err != nil {
		boiling, err := f.Boiling()
		if err != nil {
			return fmt.Errorf("--fluid: %s has no density at 20 degC and no boiling point: write its tank by hand", s.Fluid)
		}
		T = boiling.Value
		if _, err := f.Density(T); err != nil {
			T = math.Floor(T)
		}
		s.Temperature = fmt.Sprintf("%.4g K", T)
	}
	if p, err := f.VaporPressure(T); err == nil && p.Value > 9e5 {
		s.MEOP = 5 * int(math.Ceil(1.1*p.Value/5e5))
	}
	return nil
}

// createNew writes a file that must not exist, whole or not at all.
func createNew(path string, data []byte) error {
	exists := fmt.Errorf("%s exists and is not written over", path)
	if _, err := os.Lstat(path); err == nil {
		return exists
	}
	temporary, err := stage(path, data)
	if err != nil {
		return unwritten(path, err)
	}
	defer os.Remove(temporary)
	// A link, unlike a rename, fails where another run was faster.
	switch err := os.Link(temporary, path); {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrExist):
		return exists
	}
	// A file system without links: only the creation can be exclusive.
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return exists
	}
	if err != nil {
		return plain(err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(path)
	}
	return err
}
