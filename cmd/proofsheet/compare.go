package main

import (
	"fmt"
	"math"
	"strings"
	"text/tabwriter"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

func compareCommand() *cli.Command {
	return &cli.Command{
		Name: "compare", Usage: "two tanks side by side", ArgsUsage: "A.toml B.toml",
		Description: "Prints what the two files write differently, masses and volumes, and every check whose margin or status\n" +
			"is not the same; --all prints the others too. Exit status 1 unless both tanks are satisfied.",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "all", Usage: "print every check, also those that are alike"}},
		Action: runCompare,
	}
}

func runCompare(c *cli.Context) error {
	if c.NArg() != 2 {
		return fmt.Errorf("compare takes two files, not %d: proofsheet compare A.toml B.toml", c.NArg())
	}
	if c.Args().Get(0) == dash && c.Args().Get(1) == dash {
		return fmt.Errorf("only one of the two files can come from standard input")
	}
	var tanks [2]*tank.Tank
	var sheets [2]*report.Sheet
	for i, name := range c.Args().Slice() {
		var err error
		if tanks[i], _, err = readTank(c, name); err != nil {
			return err
		}
		if sheets[i], err = assessTank(tanks[i]); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	if err := toStdout(c, compareText(tanks, sheets, c.Bool("all"))); err != nil {
		return err
	}
	for _, s := range sheets {
		if s.Verdict != check.Satisfied {
			return errFails
		}
	}
	return nil
}

// compareText prints both tanks side by side, verdicts first and last.
func compareText(tanks [2]*tank.Tank, sheets [2]*report.Sheet, all bool) string {
	var b strings.Builder
	verdicts := func() {
		for i, s := range sheets {
			b.WriteString(report.VerdictLines(fmt.Sprintf("%c  %s: ", 'A'+i, tanks[i].File), s))
		}
	}
	verdicts()
	b.WriteString("\n")
	var files [][]string
	for _, d := range tank.Differ(tanks[0], tanks[1]) {
		files = append(files, []string{d.Key, orDash(d.A), orDash(d.B)})
	}
	if len(files) == 0 {
		files = [][]string{{"nothing differs", "", ""}}
	}
	b.WriteString(side(append([][]string{{"in the files", "A", "B"}}, files...)) + "\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "quantity\tA\tB")
	for _, key := range []string{"dry_mass", "volume", "tank.near_pressure", "proof.pressure"} {
		fmt.Fprintf(w, "%s\t%s\t%s\n", key, named(sheets[0], key), named(sheets[1], key))
	}
	w.Flush()
	b.WriteString("\n")
	rows, same := compareChecks(sheets, all)
	b.WriteString(side(rows))
	if same > 0 {
		fmt.Fprintf(&b, "%d checks are alike\n", same)
	}
	b.WriteString("\n")
	verdicts()
	return b.String()
}

// side sets rows in columns within eighty, text wrapped in its column.
func side(rows [][]string) string {
	var b strings.Builder
	widths := columns(rows, usualWidth)
	for _, r := range rows {
		b.WriteString(sideBySide(r, widths))
	}
	return b.String()
}

// compareChecks returns the rows of the checks, those of A in its order first, and how
// many are alike and left out.
func compareChecks(sheets [2]*report.Sheet, all bool) (rows [][]string, same int) {
	rows = [][]string{{"check", "margin of A", "margin of B", "status"}}
	byID := [2]map[string]check.Result{{}, {}}
	var order []string
	for i, s := range sheets {
		for _, r := range s.Checks {
			id := report.FullID(r)
			if _, seen := byID[0][id]; !seen || i == 0 {
				order = append(order, id)
			}
			byID[i][id] = r
		}
	}
	for _, id := range order {
		a, inA := byID[0][id]
		b, inB := byID[1][id]
		x, y := marginOf(a, inA), marginOf(b, inB)
		status := statusOf(a, inA)
		if other := statusOf(b, inB); other != status {
			status += " -> " + other
		} else if x == y && !all {
			same++
			continue
		}
		rows = append(rows, []string{id, glued(x), glued(y), status})
	}
	return rows, same
}

func marginOf(r check.Result, has bool) string {
	if !has || math.IsNaN(r.Margin()) {
		return "-"
	}
	return report.Margin(r)
}

func statusOf(r check.Result, has bool) string {
	if !has {
		return "no such check"
	}
	return r.Status().String()
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// named prints a named quantity of a sheet, "-" where there is none.
func named(s *report.Sheet, key string) string {
	for _, q := range s.Quantities {
		if q.Key == key && !math.IsNaN(q.Value) {
			return report.Show(check.Quantity{Value: q.Value, Unit: q.Unit}, s.Units, report.Nearest)
		}
	}
	if key == "proof.pressure" && s.Proof != nil {
		return s.Gauge(s.Proof.Pressure, report.Up)
	}
	return "-"
}
