// Command proofsheet checks a welded, pressurised propellant tank that one
// TOML file describes, and prints the calculation sheet.
//
// A run goes: the tank file is read by internal/tank, assessed by
// internal/assess, printed by report, drawn by report/pdf, signed by
// report/sign and put in place by the file functions here. This package holds
// only flags, files and exit codes; it computes nothing.
//
// Exit status: 0, every check is satisfied or does not arise; 1, one is not
// satisfied or not assessed, or something to verify does not hold; 2, the input
// or the call is wrong, or a file cannot be read or written. Results go to
// standard output, everything else to standard error.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"runtime/debug"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/unit"
)

// The exit statuses.
const (
	exitHolds = 0 // every check is satisfied or does not arise
	exitFails = 1 // something does not hold; what has been printed
	exitInput = 2 // the input or the call is wrong, or a file failed
)

func main() {
	spendMemory()
	os.Exit(run(os.Args, os.Stdin, os.Stdout, os.Stderr))
}

// spendMemory lets the heap grow to five times what is in use before it is looked
// through, where the user has not said otherwise: a run is short, and a fifth of it
// went into looking.
func spendMemory() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
}

// errFails ends a run whose printed result says that something does not hold.
var errFails = errors.New("something does not hold")

// run is the whole program; args begins with the program's own name.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	app := newApp(stdin, stdout, stderr)
	args, err := permute(app, args)
	if err == nil {
		err = app.Run(args)
	}
	var faults tank.Faults
	switch {
	case err == nil:
		return exitHolds
	case errors.Is(err, errFails):
		return exitFails
	case errors.As(err, &faults): // each says its file and line
		_ = tell(stderr, err.Error()+"\n")
	default:
		_ = tell(stderr, fmt.Sprintf("proofsheet: %v\n", err))
	}
	return exitInput // also where nobody can be told why
}

// newApp returns the commands. Every place in which the command-line package
// would print a usage fault to standard output, or exit by itself, is set.
func newApp(stdin io.Reader, stdout, stderr io.Writer) *cli.App {
	app := &cli.App{
		Name:      "proofsheet",
		Usage:     "check a welded, pressurised propellant tank before metal is rolled",
		UsageText: "proofsheet COMMAND [FILE] [flags]",
		Version:   version(),
		HideHelp:  true, // help.go prints it
		Description: "Start: proofsheet new tank.toml. help TOPIC: " + strings.Join(topicNames(), ", ") + ". Exit status: " +
			"0 satisfied, 1 not satisfied or not assessed, 2 wrong input or call. No compliance with any code is claimed; local codes come first.",
		Reader: stdin, Writer: stdout, ErrWriter: stderr,
		DisableSliceFlagSeparator: true,
		ExitErrHandler:            func(*cli.Context, error) {},
		OnUsageError:              usageError,
		Action:                    noCommand,
		Commands: []*cli.Command{
			checkCommand(), proofCommand(), sizeCommand(), blankCommand(), recordCommand(), studyCommand(),
			compareCommand(), signCommand(), verifyCommand(), identityCommand(), explainCommand(),
			newCommand(), listCommand(), schemaCommand(), completionCommand(), helpCommand(),
		},
	}
	for _, c := range app.Commands {
		c.OnUsageError = usageError
		c.HideHelp = true
	}
	return app
}

// How the command-line package tells a value that a flag cannot take.
var (
	flagValue   = regexp.MustCompile(`^invalid value "(.*)" for flag -([a-z0-9-]+): `)
	switchValue = regexp.MustCompile(`^invalid boolean value "(.*)" for -([a-z0-9-]+): `)
)

func usageError(c *cli.Context, err error, _ bool) error {
	if m := flagValue.FindStringSubmatch(err.Error()); m != nil {
		return fmt.Errorf("%s: --%s: %q is no whole number; write one, as --%[2]s 500", c.Command.Name, m[2], m[1])
	}
	if m := switchValue.FindStringSubmatch(err.Error()); m != nil {
		return fmt.Errorf("%s: --%s takes no value, not %q", c.Command.Name, m[2], m[1])
	}
	return err
}

// noCommand answers a call that names no command, or none that exists.
func noCommand(c *cli.Context) error {
	name := c.Args().First()
	if name == "" {
		return errors.New("no command; proofsheet --help lists them")
	}
	if near := unit.Near(name, commandNames(c.App)); near != "" {
		return fmt.Errorf("unknown command %q; did you mean %s?", name, near)
	}
	if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
		return fmt.Errorf("%s is a file; write a command before it, as proofsheet check %[1]s", name)
	}
	return fmt.Errorf("unknown command %q; proofsheet --help lists them", name)
}

// oneFile returns the only argument of a command.
func oneFile(c *cli.Context) (string, error) {
	if c.NArg() != 1 {
		return "", fmt.Errorf("%s takes one file, not %d: proofsheet %[1]s %[3]s%s", c.Command.Name, c.NArg(), c.Command.ArgsUsage, taken(c))
	}
	return c.Args().First(), nil
}

// taken tells which flag took a tank file for its value, where no file is left.
func taken(c *cli.Context) string {
	if c.NArg() > 0 {
		return ""
	}
	for _, name := range c.LocalFlagNames() {
		if strings.HasSuffix(c.String(name), ".toml") {
			return fmt.Sprintf("; --%s took %s for the file to write", name, c.String(name))
		}
	}
	return ""
}
