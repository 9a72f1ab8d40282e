package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/report/unit"
)

// helpWidth is how wide a line of help may be [columns], and helpLines how many
// lines a page of it: a terminal of 80 by 24 with its prompt below.
const helpWidth, helpLines = 80, 23

func helpCommand() *cli.Command {
	return &cli.Command{
		Name: "help", Usage: "of a command, or on a topic; man: all of it as a man page", ArgsUsage: "[COMMAND|TOPIC]",
		Description: "Topics: " + strings.Join(topicNames(), ", ") + ".",
		Action:      runHelp,
	}
}

func runHelp(c *cli.Context) error {
	if c.NArg() > 1 {
		return fmt.Errorf("help takes one command or topic, not %d", c.NArg())
	}
	name := c.Args().First()
	if name == "" {
		return toStdout(c, appHelp(c.App))
	}
	if command := c.App.Command(name); command != nil {
		return toStdout(c, commandHelp(command))
	}
	if name == manTopic {
		return toStdout(c, manPage(c.App))
	}
	for _, t := range topics {
		if t.name == name {
			return toStdout(c, t.page())
		}
	}
	names := slices.Concat(commandNames(c.App), topicNames())
	if near := unit.Near(name, names); near != "" {
		return fmt.Errorf("no help on %q; did you mean %s?", name, near)
	}
	return fmt.Errorf("no help on %q; topics are %s", name, strings.Join(topicNames(), ", "))
}

func commandNames(app *cli.App) (names []string) {
	for _, c := range app.Commands {
		names = append(names, c.Name)
	}
	return names
}

// appHelp is the page of the program.
func appHelp(app *cli.App) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\nusage: %s\n\n", app.Name, app.Usage, app.UsageText)
	for _, c := range app.Commands {
		fmt.Fprintf(&b, "  %-10s  %s\n", c.Name, c.Usage)
	}
	fmt.Fprintf(&b, "\n%s\n", strings.Join(wrap(app.Description, helpWidth), "\n"))
	return b.String()
}

// commandHelp is the page of a command.
func commandHelp(c *cli.Command) string {
	var b strings.Builder
	fmt.Fprintf(&b, "proofsheet %s: %s\nusage: %s\n", c.Name, c.Usage, usageOf(c))
	for _, paragraph := range paragraphs(c.Description) {
		fmt.Fprintf(&b, "%s\n", strings.Join(wrap(paragraph, helpWidth), "\n"))
	}
	left := 0
	for _, f := range c.Flags {
		left = max(left, len([]rune(flagHead(f))))
	}
	for _, f := range c.Flags {
		lines := wrap(flagUsage(f), helpWidth-left-4)
		fmt.Fprintf(&b, "  %-*s  %s\n", left, flagHead(f), lines[0])
		for _, more := range lines[1:] {
			fmt.Fprintf(&b, "  %-*s  %s\n", left, "", more)
		}
	}
	fmt.Fprintf(&b, "example: %s\n", examples[c.Name])
	return b.String()
}

func usageOf(c *cli.Command) string {
	words := []string{"proofsheet", c.Name}
	if c.ArgsUsage != "" {
		words = append(words, c.ArgsUsage)
	}
	if len(c.Flags) > 0 {
		words = append(words, "[flags, before or after]")
	}
	return strings.Join(words, " ")
}

// paragraphs returns the paragraphs of a description, each as one line.
func paragraphs(text string) (out []string) {
	for _, p := range strings.Split(text, "\n\n") {
		if p = strings.Join(strings.Fields(p), " "); p != "" {
			out = append(out, p)
		}
	}
	return out
}

// placeholder returns what the usage of a flag calls its value: the word between
// its backquotes, or "" for a flag without a value.
func placeholder(f cli.Flag) string {
	d, ok := f.(cli.DocGenerationFlag)
	if !ok || !d.TakesValue() {
		return ""
	}
	_, rest, _ := strings.Cut(d.GetUsage(), "`")
	word, _, _ := strings.Cut(rest, "`")
	return word
}

func flagHead(f cli.Flag) string {
	head := "--" + f.Names()[0]
	if p := placeholder(f); p != "" {
		head += " " + p
	}
	return head
}

func flagUsage(f cli.Flag) string {
	d, ok := f.(cli.DocGenerationFlag)
	if !ok {
		return ""
	}
	return strings.ReplaceAll(d.GetUsage(), "`", "")
}

// examples are calls as a user would type them, one for each command.
var examples = map[string]string{
	"check":      "proofsheet check tank.toml --pdf sheet.pdf --json sheet.json",
	"proof":      "proofsheet proof tank.toml --pdf sheet.pdf",
	"size":       "proofsheet size tank.toml --write sized.toml",
	"blank":      `proofsheet blank tank.toml --dxf blanks --kerf "1 mm"`,
	"record":     "proofsheet record tank.toml log.csv --pdf record.pdf",
	"study":      "proofsheet study tank.toml --vary cylinder.thickness=2mm..5mm/0.5mm",
	"compare":    "proofsheet compare old.toml new.toml",
	"sign":       "proofsheet sign sheet.pdf --as checked --p12 her.p12",
	"verify":     "proofsheet verify sheet.pdf",
	"identity":   "proofsheet identity",
	"explain":    "proofsheet explain head.aft/junction",
	"new":        "proofsheet new tank.toml --head ellipsoid --alloy 304L",
	"list":       "proofsheet list materials 304L",
	"schema":     "proofsheet schema > tank.schema.json",
	"completion": "proofsheet completion fish > ~/.config/fish/completions/proofsheet.fish",
	"help":       "proofsheet help man > proofsheet.1",
}
