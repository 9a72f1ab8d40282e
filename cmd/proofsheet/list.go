package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/material/weld"
	"proofsheet/report/check"
	"proofsheet/report/unit"
)

// A listing is one table that can be printed; with a name, what is known of
// one thing in it.
type listing struct {
	name  string
	rows  func(name string) (heading []string, rows [][]string, err error)
	names func() []string
}

// listings are the tables, in the order of the help.
var listings = []listing{
	{"materials", materialRows, material.ListingNames},
	{"fluids", fluid.Listing, fluid.Names},
	{"joints", weld.Listing, jointNames},
	{"rules", material.RulePage, ruleNames},
	{"keys", keyRows, keyNames},
}

func listNames() (names []string) {
	for _, l := range listings {
		names = append(names, l.name)
	}
	return names
}

func jointNames() (names []string) {
	for _, k := range weld.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

func ruleNames() []string {
	return []string{string(material.Vessel), string(material.VesselEU), string(material.Flight)}
}

// materialRows adds to what is known of an alloy the contents it may hold.
func materialRows(name string) (heading []string, rows [][]string, err error) {
	heading, rows, err = material.Listing(name)
	a, ok := material.FindAlloy(name)
	if err != nil || !ok {
		return heading, rows, err
	}
	rows = append(rows, []string{"With contents"})
	for _, f := range fluid.Names() {
		verdict, note, src := fluid.Compatibility(f, a.Name)
		if verdict == fluid.Unknown {
			note, src.Doc = "nothing published is carried", ""
		}
		text := verdict + ": " + note
		if last := rows[len(rows)-1]; len(last) > 1 && last[1] == text {
			last[0] += ", " + f
			continue
		}
		rows = append(rows, []string{f, text, how(src), src.Doc, ""})
	}
	return heading, rows, nil
}

// how names the way a source was used, "" without a source.
func how(s check.Source) string {
	if s.Doc == "" {
		return ""
	}
	return s.How.String()
}

func listCommand() *cli.Command {
	return &cli.Command{
		Name: "list", Usage: "what is built in, with its provenance", ArgsUsage: strings.Join(listNames(), "|") + " [NAME]",
		Action: func(c *cli.Context) error {
			what := c.Args().First()
			if what == "" || c.NArg() < 1 {
				return errors.New("list takes one of " + strings.Join(listNames(), ", ") + ", and a name if you like")
			}
			for _, l := range listings {
				if l.name == what {
					return l.print(c, strings.Join(c.Args().Slice()[1:], " "))
				}
			}
			if near := unit.Near(what, listNames()); near != "" {
				return fmt.Errorf("list: no table %q; did you mean %s?", what, near)
			}
			return fmt.Errorf("list: no table %q; there are %s", what, strings.Join(listNames(), ", "))
		},
	}
}

// print writes the table, or what is known of one name in it. Capitals do not
// matter where one name only differs by them.
func (l listing) print(c *cli.Context, name string) error {
	heading, rows, err := l.rows(name)
	if err == nil {
		return toStdout(c, table(heading, rows, widthOf(c.App.Writer)))
	}
	for _, n := range l.names() {
		if strings.EqualFold(n, name) {
			return fmt.Errorf("list %s: no %q; write %q", l.name, name, n)
		}
	}
	if like := fluid.Like(name); l.name == "fluids" && len(like) > 0 {
		return fmt.Errorf("list %s: no %q; did you mean %s?", l.name, name, strings.Join(like, " or "))
	}
	if near := unit.Near(name, l.names()); near != "" {
		return fmt.Errorf("list %s: no %q; did you mean %q?", l.name, name, near)
	}
	return fmt.Errorf("list %s: no %q; there are %s", l.name, name, strings.Join(l.names(), ", "))
}
