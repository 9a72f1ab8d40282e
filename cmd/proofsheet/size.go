package main

import (
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/report"
	"proofsheet/report/check"
)

func sizeCommand() *cli.Command {
	return &cli.Command{
		Name: "size", Usage: "least thicknesses, pads and necks that pass", ArgsUsage: "TANK.toml",
		Description: "For every part and port that is not satisfied, the least added mass of walls, pads, tubes and fillets\n" +
			"from [stock] with which it is; for the others the thinnest wall that would still do. A check that cannot be\n" +
			"made is not sized away: it is listed, and its part gets no wall. Exit status 1 when nothing in the stock does\n" +
			"or a part cannot be sized.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "write", Usage: "write the tank file with every change to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "json", Usage: "write the result as data to `FILE`, - for standard output"},
		},
		Action: runSize,
	}
}

func runSize(c *cli.Context) error {
	name, err := oneFile(c)
	if err != nil {
		return err
	}
	if c.String("write") == dash && c.String("json") == dash {
		return fmt.Errorf("only one of --write and --json can go to standard output")
	}
	for _, flag := range []string{"write", "json"} {
		if c.IsSet(flag) && c.String(flag) == "" {
			return fmt.Errorf("--%s needs a name", flag)
		}
	}
	t, inputs, err := readTank(c, name)
	if err != nil {
		return err
	}
	p, err := study.Size(t)
	if err != nil {
		return inFile(t, err)
	}
	text := sizeText(p, t.Sheet.Units, foldWidth(c)) + report.Fold(elsewhere(name, c.String("write"), inputs), foldWidth(c))
	if err := deliverSize(c, p, text, inputs); err != nil {
		return err
	}
	if len(p.Open) > 0 || p.Left() {
		return errFails
	}
	return nil
}

// elsewhere names the files that a tank file looks for in its own folder, where
// its copy goes to another.
func elsewhere(name, copied string, inputs []string) string {
	from, to := filepath.Dir(name), filepath.Dir(copied)
	if copied == "" || copied == dash || from == to {
		return ""
	}
	var missing []string
	for _, file := range inputs {
		if rel, err := filepath.Rel(from, file); err == nil && file != name {
			missing = append(missing, rel)
		}
	}
	if len(missing) == 0 {
		return ""
	}
	return fmt.Sprintf("%s looks in its own folder for what it names: put %s there too\n", copied, strings.Join(missing, ", "))
}

// deliverSize writes what was asked for, then prints the table, in whose place a
// file may stand that goes to standard output.
func deliverSize(c *cli.Context, p *study.Plan, text string, inputs []string) error {
	var out outputs
	defer out.discard()
	add := func(path string, data []byte, k kind) error {
		if path == dash {
			text = string(data)
			return nil
		}
		return out.addKind(path, data, k, inputs...)
	}
	if path := c.String("write"); path != "" {
		if err := add(path, p.Text, tankFile); err != nil {
			return err
		}
	}
	if path := c.String("json"); path != "" {
		data, err := sizeJSON(p)
		if err != nil {
			return err
		}
		if err := add(path, data, dataFile); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

// sizeText prints the plan as a table.
func sizeText(p *study.Plan, units string, width int) string {
	var b strings.Builder
	stock := make([]string, len(p.Stock))
	for i, wall := range p.Stock {
		stock[i] = study.Length(wall)
	}
	origin := "everyday plate, common practice; write [stock] for your own"
	if p.Given {
		origin = "from [stock]"
	}
	fmt.Fprintf(&b, "stock: %s (%s)\n\n", strings.Join(stock, ", "), origin)
	b.WriteString(sizeTable(p.Rows, width) + "\n")
	if p.Changed() {
		fmt.Fprintf(&b, "added mass: %s\n", report.Show(check.Kg("", "", p.Added), units, report.Up))
	} else {
		b.WriteString("nothing is changed\n")
	}
	if len(p.Open) > 0 {
		fmt.Fprintf(&b, "not satisfied, with every change made: %s\n", strings.Join(p.Open, ", "))
	}
	if len(p.NotMade) > 0 {
		fmt.Fprintf(&b, "not assessed, and not to be sized: %s\n", strings.Join(p.NotMade, ", "))
	}
	b.WriteString("check the changed file again: sizing looks at one part after the other, check at the whole tank\n")
	return report.Fold(b.String(), width)
}

// sizeTable lists the parts. On a terminal [characters] that a row with its changes does
// not fit, these stand below it: folded, each would begin where no column is.
func sizeTable(rows []study.Row, width int) string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "part\twall\tstatus\tleast margin\tchange, or least stock wall that does")
	for _, r := range rows {
		margin := "-"
		if r.Check != "" {
			margin = strings.TrimSuffix(fmt.Sprintf("%+.2f %s", math.Floor(r.Margin*100)/100, r.Check), "@") // some belong to no case
		}
		for i, line := range sizeLines(r) {
			if i == 0 {
				fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\n", r.Part, study.Length(r.Wall), r.Status, margin, line)
			} else {
				fmt.Fprintf(w, "\t\t\t\t%s\n", line)
			}
		}
	}
	w.Flush()
	lines := strings.SplitAfter(strings.TrimSuffix(b.String(), "\n"), "\n")
	at := strings.Index(lines[0], "change, or")
	if width == 0 || !slices.ContainsFunc(lines, func(line string) bool { return utf8.RuneCountInString(line) > width+1 }) {
		return b.String()
	}
	var below strings.Builder
	for _, line := range lines {
		for _, part := range []string{strings.TrimSpace(line[:at]), "    " + strings.TrimSpace(line[at:])} {
			if part != "" {
				below.WriteString(part + "\n")
			}
		}
	}
	return below.String()
}

// sizeLines says what is to be done with one part.
func sizeLines(r study.Row) (out []string) {
	for _, c := range r.Changes {
		was := ""
		if c.Was != "" {
			was = ", was " + strings.Trim(c.Was, `"`)
		}
		out = append(out, fmt.Sprintf("%s = %s%s", c.Key, c.Value, was))
	}
	switch {
	case r.Why != "":
		out = append(out, r.Why)
	case len(out) == 0 && !math.IsNaN(r.Least) && r.Least < r.Wall:
		out = append(out, study.Length(r.Least)+" would do")
	case len(out) == 0:
		out = append(out, "as it is")
	}
	return out
}

// The form of a plan as data, SI.
type (
	sizeData struct {
		Format  int         `json:"format"`
		Program sizeProgram `json:"program"`
		Stock   []float64   `json:"stock"`
		Rows    []sizeRow   `json:"parts"`
		Added   float64     `json:"added_mass"`
		Open    []string    `json:"not_satisfied"`
		NotMade []string    `json:"not_assessed"`
	}
	sizeProgram struct {
		Name    string `json:"name"`
		Version string `json:"version"`
	}
	sizeRow struct {
		Part    string       `json:"part"`
		Status  string       `json:"status"`
		Check   string       `json:"check"`
		Margin  *float64     `json:"margin"`
		Wall    float64      `json:"wall"`
		Least   *float64     `json:"least_wall"`
		Changes []sizeChange `json:"changes"`
		Why     string       `json:"why"`
	}
	sizeChange struct {
		Key   string `json:"key"`
		Was   string `json:"was"`
		Value string `json:"value"`
	}
)

// sizeJSON writes the plan as data.
func sizeJSON(p *study.Plan) ([]byte, error) {
	out := sizeData{1, sizeProgram{programName, programVersion()}, p.Stock, []sizeRow{}, p.Added,
		append([]string{}, p.Open...), append([]string{}, p.NotMade...)}
	for _, r := range p.Rows {
		x := sizeRow{r.Part, r.Status.String(), r.Check, finite(r.Margin), r.Wall, finite(r.Least), []sizeChange{}, r.Why}
		for _, c := range r.Changes {
			x.Changes = append(x.Changes, sizeChange{c.Key, c.Was, c.Value})
		}
		out.Rows = append(out.Rows, x)
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(data, '\n'), err
}

// finite returns a number as JSON has it, null for one that is none.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
