package main

import (
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/urfave/cli/v2"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/material/weld"
	"proofsheet/report/unit"
)

// A listing returns a table, or with a name what is known of one thing in it.
type listing func(name string) (heading []string, rows [][]string, err error)

// listings are the tables that can be printed, in the order of the help.
var listings = []struct {
	name string
	rows listing
}{
	{"materials", material.Listing},
	{"fluids", fluid.Listing},
	{"joints", weld.Listing},
	{"rules", material.RuleListing},
}

func listNames() (names []string) {
	for _, l := range listings {
		names = append(names, l.name)
	}
	return names
}

func listCommand() *cli.Command {
	return &cli.Command{
		Name: "list", Usage: "what is built in, with its provenance", ArgsUsage: strings.Join(listNames(), "|") + " [NAME]",
		Action: func(c *cli.Context) error {
			what := c.Args().First()
			if what == "" || c.NArg() > 2 {
				return errors.New("list takes one of " + strings.Join(listNames(), ", ") + ", and a name if you like")
			}
			for _, l := range listings {
				if l.name != what {
					continue
				}
				heading, rows, err := l.rows(c.Args().Get(1))
				if err != nil {
					return err
				}
				return toStdout(c, table(heading, rows))
			}
			if near := unit.Near(what, listNames()); near != "" {
				return fmt.Errorf("list: no table %q; did you mean %s?", what, near)
			}
			return fmt.Errorf("list: no table %q; there are %s", what, strings.Join(listNames(), ", "))
		},
	}
}

// table aligns rows in columns.
func table(heading []string, rows [][]string) string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, row := range append([][]string{heading}, rows...) {
		fmt.Fprintln(w, strings.Join(row, "\t"))
	}
	w.Flush()
	return b.String()
}
