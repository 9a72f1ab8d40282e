package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"
)

// manPage returns the manual of the program in the man macros of roff, made from
// the commands and topics, so that it says what they say.
func manPage(app *cli.App) string {
	var b strings.Builder
	fmt.Fprintf(&b, ".TH PROOFSHEET 1 \"\" %q \"\"\n.SH NAME\n%s \\- %s\n", "proofsheet "+programVersion(), app.Name, roff(app.Usage))
	fmt.Fprintf(&b, ".SH SYNOPSIS\n%s\n.SH DESCRIPTION\n%s\n.SH COMMANDS\n", roff(app.UsageText), roff(app.Description))
	for _, c := range app.Commands {
		fmt.Fprintf(&b, ".SS %s\n%s.\n", roff(usageOf(c)), roff(strings.ToUpper(c.Usage[:1])+c.Usage[1:]))
		for _, p := range paragraphs(c.Description) {
			fmt.Fprintf(&b, ".PP\n%s\n", roff(p))
		}
		for _, f := range c.Flags {
			fmt.Fprintf(&b, ".TP\n\\fB%s\\fR\n%s\n", roff(flagHead(f)), roff(flagUsage(f)))
		}
		fmt.Fprintf(&b, ".PP\nExample:\n.PP\n.nf\n    %s\n.fi\n", roff(examples[c.Name]))
	}
	for _, t := range topics {
		fmt.Fprintf(&b, ".SH %s\n", roff(strings.ToUpper(t.about)))
		manText(&b, t.body())
	}
	return b.String()
}

// manText writes the text of a topic: lines that begin with a blank as they are,
// all else filled.
func manText(b *strings.Builder, text string) {
	fixed := false
	for _, line := range strings.Split(text, "\n") {
		if is := strings.HasPrefix(line, " "); is != fixed && line != "" {
			b.WriteString(map[bool]string{true: ".PP\n.nf\n", false: ".fi\n.PP\n"}[is])
			fixed = is
		} else if line == "" && !fixed {
			b.WriteString(".PP\n")
		}
		if line != "" {
			fmt.Fprintf(b, "%s\n", roff(line))
		}
	}
	if fixed {
		b.WriteString(".fi\n")
	}
}

// roff writes text so that roff prints it letter by letter. A line never begins
// with a request.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "\u00a0", `\ `).Replace(text)
	if strings.HasPrefix(text, ".") {
		text = `\&` + text
	}
	return text
}
