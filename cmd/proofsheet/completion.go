package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/unit"
)

// wordsQuery is what the scripts ask for in place of a shell's name.
const wordsQuery = "words"

func completionCommand() *cli.Command {
	return &cli.Command{
		Name: "completion", Usage: "print the completion script of a shell", ArgsUsage: strings.Join(shellNames(), "|"),
		Description: "Completes commands, flags, files, cases of the tank file, checks and names.\n" +
			"bash: source <(proofsheet completion bash), in ~/.bashrc.\n\n" +
			"zsh: source <(proofsheet completion zsh), in ~/.zshrc behind compinit.",
		SkipFlagParsing: true, // the words to complete hold flags
		Action:          runCompletion,
	}
}

func shellNames() []string { return []string{"bash", "zsh", "fish"} }

func runCompletion(c *cli.Context) error {
	name := c.Args().First()
	if name == wordsQuery {
		var b strings.Builder
		for _, p := range propose(c, c.Args().Slice()[1:]) {
			fmt.Fprintln(&b, p)
		}
		return toStdout(c, b.String())
	}
	if c.NArg() != 1 {
		return errors.New("completion takes one of " + strings.Join(shellNames(), ", "))
	}
	script, ok := completionScripts[name]
	if !ok {
		if near := unit.Near(name, shellNames()); near != "" {
			return fmt.Errorf("completion: no shell %q; did you mean %s?", name, near)
		}
		return fmt.Errorf("completion: no shell %q; there are %s", name, strings.Join(shellNames(), ", "))
	}
	return toStdout(c, script)
}

// filesLine asks the shell for its own completion of file names, those of one
// ending first or alone; foldersLine for folders.
const filesLine, foldersLine = ":files", ":folders"

// propose returns what may stand for the last of the words behind the program's
// name, one a line: the word, a tab and what it is; or one of the lines above.
func propose(c *cli.Context, words []string) []string {
	if len(words) == 0 {
		words = []string{""}
	}
	last := words[len(words)-1]
	if len(words) == 1 {
		return beginning(last, append(described(c.App.Commands), "--help\tthe commands", "--version\tof the program"))
	}
	command := c.App.Command(words[0])
	if command == nil {
		return nil
	}
	s := read(command, words[1:len(words)-1])
	if last == "=" && s.waits != nil { // bash parts a flag from its value there
		last = ""
	}
	switch {
	case s.waits != nil:
		return beginning(last, s.valuesOf(c, s.waits))
	case strings.HasPrefix(last, "-") && last != dash && !s.ended:
		name, _, inline := strings.Cut(last, "=")
		if f := flagOf(command, name); inline && f != nil {
			var out []string
			for _, v := range s.valuesOf(c, f) {
				out = append(out, name+"="+v)
			}
			return beginning(last, out)
		}
		return beginning(last, s.flags(command))
	}
	return beginning(last, s.arguments(c, command))
}

// beginning keeps what begins like a word, and lines to the shell.
func beginning(word string, lines []string) (out []string) {
	for _, l := range lines {
		if strings.HasPrefix(l, word) || strings.HasPrefix(l, ":") {
			out = append(out, l)
		}
	}
	return out
}

func described(commands []*cli.Command) (out []string) {
	for _, c := range commands {
		out = append(out, c.Name+"\t"+c.Usage)
	}
	return out
}

// A typed is what stands ahead of the word to complete.
type typed struct {
	files []string
	given []string // flags
	waits cli.Flag // the flag whose value comes next, or nil
	ended bool     // "--" was typed: no more flags
}

// read takes the words of a command apart as permute does.
func read(command *cli.Command, words []string) (s typed) {
	for _, w := range words {
		switch {
		case s.waits != nil && w == "=":
		case s.waits != nil:
			s.waits = nil
		case s.ended || w == dash || !strings.HasPrefix(w, "-"):
			s.files = append(s.files, w)
		case w == "--":
			s.ended = true
		default:
			name, _, inline := strings.Cut(w, "=")
			s.given = append(s.given, name)
			if f := flagOf(command, name); f != nil && !inline && placeholder(f) != "" {
				s.waits = f
			}
		}
	}
	return s
}

// flagOf returns the flag of a command by its name, hyphens before it.
func flagOf(command *cli.Command, name string) cli.Flag {
	for _, f := range command.Flags {
		if slices.Contains(f.Names(), strings.TrimLeft(name, "-")) {
			return f
		}
	}
	return nil
}

// flags proposes those not given yet; a flag that may stand twice stays.
func (s typed) flags(command *cli.Command) (out []string) {
	for _, f := range command.Flags {
		_, again := f.(*cli.StringSliceFlag)
		if name := "--" + f.Names()[0]; again || !slices.Contains(s.given, name) {
			out = append(out, name+"\t"+flagUsage(f))
		}
	}
	return append(out, "--help\tthis command")
}

// valuesOf proposes values by what the usage of the flag calls them.
func (s typed) valuesOf(c *cli.Context, f cli.Flag) []string {
	switch name := placeholder(f); {
	case name == "FILE":
		return []string{filesLine}
	case name == "FOLDER":
		return []string{foldersLine}
	case name == "SHAPE":
		return shapeNames()
	case name == "ROLE":
		return []string{"prepared", "checked", "approved"}
	case f.Names()[0] == "case":
		return s.cases(c)
	case f.Names()[0] == "vary":
		return s.numbers(c)
	case f.Names()[0] == "fluid":
		return fluid.Names()
	case f.Names()[0] == "alloy":
		return material.AlloyNames()
	}
	return nil
}

// cases returns the names of cases in the tank file that was typed, and those
// that every tank has.
func (s typed) cases(c *cli.Context) []string {
	names := []string{"meop", "proof"}
	if len(s.files) == 0 || s.files[0] == dash {
		return names
	}
	src, err := readFile(s.files[0])
	if err != nil {
		return names
	}
	var file struct {
		Case   []struct{ Name string }
		Flight map[string]any
	}
	if _, err := toml.Decode(string(src), &file); err != nil {
		return names
	}
	for _, k := range file.Case {
		names = append(names, k.Name)
	}
	if file.Flight != nil {
		names = append(names, "flight")
	}
	return names
}

// numbers returns the keys of the tank file that hold numbers, ready for a range.
func (s typed) numbers(c *cli.Context) (out []string) {
	if len(s.files) == 0 || s.files[0] == dash {
		return nil
	}
	t, _, err := readTank(c, s.files[0])
	if err != nil {
		return nil
	}
	for _, key := range t.Keys() {
		if _, err := t.Number(key); err == nil {
			out = append(out, key+"=")
		}
	}
	return out
}

// arguments proposes the next argument by what the usage of the command calls it.
func (s typed) arguments(c *cli.Context, command *cli.Command) []string {
	n := len(s.files)
	switch command.Name {
	case "help":
		return only(n, append(described(c.App.Commands), topicNames()...))
	case "completion":
		return only(n, shellNames())
	case "explain":
		return only(n, checkIDs())
	case "list":
		if n == 0 {
			return listNames()
		}
		for _, l := range listings {
			if l.name == s.files[0] {
				return only(n-1, l.names())
			}
		}
		return nil
	}
	if files := strings.Fields(command.ArgsUsage); n < len(files) {
		_, ending, _ := strings.Cut(files[n], ".")
		return []string{filesLine + " ." + ending}
	}
	return nil
}

// only returns names for the first argument, none for more.
func only(n int, names []string) []string {
	if n > 0 {
		return nil
	}
	return names
}

// checkIDs returns the ids that explain knows, those of heads for either end.
func checkIDs() (out []string) {
	for _, e := range assess.Explanations() {
		if what, ok := strings.CutPrefix(e.ID, "head.X/"); ok {
			out = append(out, "head.aft/"+what+"\t"+e.Asks, "head.forward/"+what+"\t"+e.Asks)
			continue
		}
		out = append(out, e.ID+"\t"+e.Asks)
	}
	return out
}
