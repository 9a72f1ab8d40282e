package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/report/unit"
)

// helpFlags ask for help of the command they stand behind, or of the program.
var helpFlags = []string{"--help", "-h", "-help"}

// permute moves the flags of a command ahead of its arguments, because the
// command-line package takes a flag after the first argument for another
// argument. It also refuses unknown flags and missing values, so that no flag
// is ever taken for a value.
func permute(app *cli.App, args []string) ([]string, error) {
	if len(args) > 1 && slices.Contains(helpFlags, args[1]) {
		return []string{args[0], "help"}, nil
	}
	if len(args) < 2 || strings.HasPrefix(args[1], "-") {
		return args, commandFirst(app, args) // the flag of the program itself: version
	}
	command := app.Command(args[1])
	if command == nil {
		return args, nil
	}
	if command.SkipFlagParsing {
		if len(args) > 2 && slices.Contains(helpFlags, args[2]) {
			return []string{args[0], "help", args[1]}, nil
		}
		return args, nil
	}
	var flags, rest []string
	for todo := args[2:]; len(todo) > 0; todo = todo[1:] {
		arg := todo[0]
		if arg == "--" {
			rest = append(rest, todo[1:]...)
			break
		}
		if arg == "-" || !strings.HasPrefix(arg, "-") {
			rest = append(rest, arg)
			continue
		}
		name, _, inline := strings.Cut(strings.TrimLeft(arg, "-"), "=")
		takes, err := takesValue(command, arg, name)
		if err != nil {
			return nil, err
		}
		if name == "help" || name == "h" {
			return []string{args[0], "help", args[1]}, nil
		}
		flags = append(flags, arg)
		if !takes || inline {
			continue
		}
		if len(todo) < 2 || strings.HasPrefix(todo[1], "-") && todo[1] != "-" {
			return nil, fmt.Errorf("%s: --%s needs a value", command.Name, name)
		}
		todo = todo[1:]
		flags = append(flags, todo[0])
	}
	return slices.Concat(args[:2], flags, []string{"--"}, rest), nil
}

// commandFirst refuses flags ahead of the command they belong to, which the command-line
// package would take for those of the program.
func commandFirst(app *cli.App, args []string) error {
	for i, arg := range args[min(1, len(args)):] {
		if command := app.Command(arg); command != nil {
			return fmt.Errorf("the command comes first, then its flags: proofsheet %s", strings.Join(slices.Concat(args[i+1:i+2], args[i+2:], args[1:i+1]), " "))
		}
	}
	return nil
}

// takesValue reports whether a flag of the command is followed by its value.
func takesValue(command *cli.Command, arg, name string) (bool, error) {
	names := []string{"help", "h"}
	if slices.Contains(names, name) {
		return false, nil
	}
	for _, f := range command.Flags {
		if slices.Contains(f.Names(), name) {
			d, ok := f.(cli.DocGenerationFlag)
			return ok && d.TakesValue(), nil
		}
		names = append(names, f.Names()...)
	}
	if near := unit.Near(strings.ToLower(name), names); near != "" {
		return false, fmt.Errorf("%s: unknown flag %s; did you mean --%s?", command.Name, arg, near)
	}
	return false, fmt.Errorf("%s: unknown flag %s; proofsheet %[1]s --help lists them", command.Name, arg)
}
