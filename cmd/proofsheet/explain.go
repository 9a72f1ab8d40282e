package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/report/unit"
)

func explainCommand() *cli.Command {
	return &cli.Command{
		Name: "explain", Usage: "what a check asks, formula, source, limits", ArgsUsage: "[CHECK]",
		Description: "CHECK is an id as a sheet prints it, head.aft/junction@meop, or as it is listed, head.X/junction.\n" +
			"Without one, every check is listed.",
		Action: runExplain,
	}
}

func runExplain(c *cli.Context) error {
	if c.NArg() > 1 {
		return fmt.Errorf("explain takes one check, not %d: proofsheet explain head.X/junction", c.NArg())
	}
	if c.NArg() == 0 {
		var b strings.Builder
		for _, e := range assess.Explanations() {
			fmt.Fprintf(&b, "%s\n", hanging(usualWidth, 29, e.ID, e.Asks))
		}
		return toStdout(c, b.String())
	}
	id := c.Args().First()
	e, ok := assess.Explain(id)
	if !ok {
		return unknownCheck(id)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", e.ID)
	for _, row := range [][2]string{{"asks", e.Asks}, {"formula", e.Formula}, {"source", e.Source}, {"limits", e.Limits}} {
		fmt.Fprintf(&b, "%s\n", folded(row[0], row[1]))
	}
	for i, change := range e.Change {
		head := ""
		if i == 0 {
			head = "when it fails"
		}
		fmt.Fprintf(&b, "%s\n", folded(head, "- "+change))
	}
	return toStdout(c, b.String())
}

// unknownCheck answers an id that is none, with the nearest one.
func unknownCheck(id string) error {
	var ids []string
	for _, e := range assess.Explanations() {
		ids = append(ids, e.ID)
	}
	switch like := checksLike(id, ids); {
	case len(like) == 1:
		return fmt.Errorf("unknown check %q; did you mean %s?", id, like[0])
	case len(like) > 1:
		return fmt.Errorf("unknown check %q; write one of %s", id, strings.Join(like, ", "))
	}
	part, what, _ := strings.Cut(id, "/")
	what, _, _ = strings.Cut(what, "@")
	if near := unit.Near(kindOf(part)+"/"+what, ids); near != "" {
		return fmt.Errorf("unknown check %q; did you mean %s?", id, near)
	}
	return fmt.Errorf("unknown check %q; proofsheet explain lists them", id)
}

// checksLike returns the checks that are called by one half of their name: "spacing",
// or by a part that has several, "port.vent".
func checksLike(id string, ids []string) (like []string) {
	name, _, _ := strings.Cut(id, "@")
	for _, other := range ids {
		part, what, _ := strings.Cut(other, "/")
		if name == what || name != "" && !strings.Contains(name, "/") && kindOf(name) == part {
			like = append(like, other)
		}
	}
	return like
}

// kindOf writes a part of a tank as the list of checks does.
func kindOf(part string) string {
	switch {
	case strings.HasPrefix(part, "head."):
		return "head.X"
	case strings.HasPrefix(part, "port."):
		return "port.N"
	}
	return part
}

// folded prints text beside the heading of a row, within eighty columns.
func folded(head, text string) string { return hanging(usualWidth, 15, head, text) }

// hanging prints text beside a heading, from the column left on, in lines shorter than a
// width; one of 0 breaks none.
func hanging(width, left int, head, text string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-*s", left, head)
	column := left
	for i, word := range strings.Fields(text) {
		n := len([]rune(word))
		if i > 0 && width > 0 && column+1+n >= width {
			fmt.Fprintf(&b, "\n%*s", left, "")
			column = left
		} else if i > 0 {
			b.WriteByte(' ')
			column++
		}
		b.WriteString(word)
		column += n
	}
	return b.String()
}
