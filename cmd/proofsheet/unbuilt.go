package main

import (
	"fmt"

	"github.com/urfave/cli/v2"
)

// unbuilt returns a command that says it is not built yet: a name that the
// program will have must not look like a slip of the pen, nor do nothing.
func unbuilt(name, usage, arguments string) *cli.Command {
	return &cli.Command{
		Name: name, Usage: usage + " (not built yet)", ArgsUsage: arguments, SkipFlagParsing: true,
		Action: func(*cli.Context) error {
			return fmt.Errorf("%s is not built yet: nothing was read, computed or written", name)
		},
	}
}

func studyCommand() *cli.Command { return unbuilt("study", "sweeps and scatter", "TANK.toml") }
