package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/heads/blank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
	"proofsheet/report/pdf"
	"proofsheet/report/unit"
)

func blankCommand() *cli.Command {
	return &cli.Command{
		Name: "blank", Usage: "flat blanks and hole templates", ArgsUsage: "TANK.toml",
		Description: "Lists every flat part of the tank from its nominal walls: sheets of the cylinder, cone sectors with their\n" +
			"holes at true outline, discs of formed heads, pads, and templates for tube ends; each with dimensions by\n" +
			"which the cut part can be checked. DXF (release 12) and SVG are at full size, one file a part. A part that\n" +
			"cannot be laid out is refused with its reason and not written. The exit status is that of check, and 1 where\n" +
			"a part is refused: no metal is cut on a drawing alone.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "dxf", Usage: "write each part as DXF into `FOLDER`"},
			&cli.StringFlag{Name: "svg", Usage: "write each part as SVG, full size, into `FOLDER`"},
			&cli.StringFlag{Name: "pdf", Usage: "write the drawings with their check dimensions to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "gap", Value: "0 mm", Usage: "root `GAP` of the seams, half off each edge"},
			&cli.StringFlag{Name: "kerf", Value: "0 mm", Usage: "`WIDTH` of the cut, half outside of the part"},
			&cli.StringFlag{Name: "clearance", Value: "0 mm", Usage: "`WIDTH` left all round between a tube and its hole"},
		},
		Action: runBlank,
	}
}

func runBlank(c *cli.Context) error {
	o, err := blankOptions(c)
	if err != nil {
		return err
	}
	j, err := load(c)
	if err != nil {
		return err
	}
	blanks, err := assess.Blanks(j.tank, o)
	if err != nil {
		return err
	}
	if err := j.deliverBlanks(c, blankHead(c), blanks); err != nil {
		return err
	}
	for _, b := range blanks {
		if b.Err != nil {
			return errFails
		}
	}
	return j.verdict()
}

// deliverBlanks writes the files that were asked for, all or none, then prints the
// text, or the PDF in its place.
func (j *job) deliverBlanks(c *cli.Context, head []string, blanks []blank.Blank) error {
	text := blankText(j.sheet, head, blanks, foldWidth(c))
	var out outputs
	defer out.discard()
	for _, kind := range []string{"dxf", "svg"} {
		if folder := c.String(kind); folder != "" {
			if err := j.flatFiles(&out, folder, kind, head, blanks); err != nil {
				return err
			}
		}
	}
	if path := c.String("pdf"); path != "" {
		data, err := j.flatPages(head, blanks)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addDocument(path, data, true, j.inputs...); err != nil {
			return err
		}
	}
	return out.finish(c, text)
}

// blankOptions reads the allowances, and refuses empty names of files.
func blankOptions(c *cli.Context) (o blank.Options, err error) {
	for _, name := range []string{"dxf", "svg", "pdf"} {
		if c.IsSet(name) && c.String(name) == "" {
			return o, fmt.Errorf("--%s needs a name", name)
		}
	}
	var errs []error
	read := func(name string) float64 {
		v, err := unit.Parse(unit.Length, c.String(name))
		if err != nil {
			errs = append(errs, fmt.Errorf("--%s %w", name, err))
		}
		return v
	}
	o = blank.Options{Gap: read("gap"), Kerf: read("kerf"), Clearance: read("clearance")}
	if err := errors.Join(errs...); err != nil {
		return o, err
	}
	return o, o.Valid()
}

// blankHead says what all parts have in common.
func blankHead(c *cli.Context) []string {
	return []string{
		fmt.Sprintf("gap of the seams %s, half off each edge; kerf %s, its middle is the line on the layer CUT; clearance of tubes %s all round",
			c.String("gap"), c.String("kerf"), c.String("clearance")),
		"from nominal walls, on the mid-surface; dimensions are those of the part as cut, kerf taken off; no allowance for trimming, shrinkage or the preparation of edges",
		"drawings check no strength: see the verdict; cut a paper template and lay it on before cutting metal",
	}
}

// flatFiles stages every part that is drawn as a file of a kind.
func (j *job) flatFiles(out *outputs, folder, kind string, head []string, blanks []blank.Blank) error {
	if err := folderFor(folder); err != nil {
		return err
	}
	for _, b := range blanks {
		path := filepath.Join(folder, b.Name+"."+kind)
		if b.Err != nil || len(b.Cut)+len(b.Mark) == 0 {
			if _, err := os.Stat(path); err == nil {
				return fmt.Errorf("%s is of an earlier run, and its part is not drawn now: remove it, nobody may cut by it", path)
			}
			continue
		}
		part := flatPart(j.sheet, b, head)
		write, is := part.DXF, dxfFile
		if kind == "svg" {
			write, is = part.SVG, svgFile
		}
		data, err := write()
		if err != nil {
			return err
		}
		if err := out.addKind(path, data, is, j.inputs...); err != nil {
			return err
		}
	}
	return nil
}

// flatPart returns a blank as a part in millimetres.
func flatPart(s *report.Sheet, b blank.Blank, head []string) drawing.Part {
	const mm = 1e3
	p := drawing.Part{Name: b.Name, Title: b.Title, Remarks: flatRemarks(s, b, head)}
	add := func(layer string, paths []blank.Path) {
		for _, path := range paths {
			to := drawing.Path{Layer: layer, Closed: path.Closed}
			for _, v := range path.Vertices {
				to.Vertices = append(to.Vertices, drawing.Vertex{X: v.X * mm, Y: v.Y * mm, Bulge: v.Bulge})
			}
			p.Paths = append(p.Paths, to)
		}
	}
	add(drawing.Cut, b.Cut)
	add(drawing.Mark, b.Mark)
	for _, l := range b.Labels {
		p.Labels = append(p.Labels, drawing.Label{At: drawing.Point{X: l.At.X * mm, Y: l.At.Y * mm},
			Away: drawing.Point{X: l.Away.X, Y: l.Away.Y}, Text: l.Text})
	}
	return p
}

// flatRemarks are the lines that go with a part wherever it is drawn.
func flatRemarks(s *report.Sheet, b blank.Blank, head []string) []string {
	plate := "template"
	if b.Thickness > 0 {
		plate = "plate " + report.Show(check.M("", "", b.Thickness), s.Units, report.Nearest) + " nominal"
	}
	of := "tank"
	for _, part := range [][2]string{{"", s.Block.Title}, {"sheet ", s.Block.Number}, {"revision ", s.Block.Revision}, {"serial ", s.Block.Serial}} {
		if part[1] != "" {
			of += ", " + part[0] + part[1]
		}
	}
	return []string{plate + "; " + b.Seen, head[0], fmt.Sprintf("%s: %s; input SHA-256 %s", of, s.Verdict, s.Digits())}
}

// flatPages returns the drawings as PDF.
func (j *job) flatPages(head []string, blanks []blank.Blank) ([]byte, error) {
	var pages []pdf.PartPage
	for _, b := range blanks {
		page := pdf.PartPage{Part: flatPart(j.sheet, b, head), Title: b.Title, Notes: b.Notes, Cautions: b.Cautions,
			Absent: len(b.Cut)+len(b.Mark) == 0}
		if b.Err != nil {
			page.Refused = oneLine(b.Err)
		}
		for _, q := range b.Measures {
			v := report.Show(q, j.sheet.Units, report.Nearest)
			switch {
			case q.Symbol == "W" || q.Symbol == "D" || strings.HasPrefix(q.Symbol, "D_"):
				page.Wide = first(page.Wide, v)
			case q.Symbol == "H":
				page.High = v
			}
			page.Facts = append(page.Facts, [3]string{q.Symbol, q.Name, v})
		}
		pages = append(pages, page)
	}
	return pdf.WriteParts(j.sheet, append([]string{"tank: " + j.sheet.VerdictLine()}, head...), pages)
}

func first(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func oneLine(err error) string { return strings.ReplaceAll(err.Error(), "\n", "; ") }

// blankText lists the parts. It opens and closes with the verdict over the tank,
// since a drawing does not say that the tank may be built.
func blankText(s *report.Sheet, head []string, blanks []blank.Blank, width int) string {
	var b strings.Builder
	b.WriteString(report.VerdictLines("tank: ", s, width) + "\n" + report.Fold(strings.Join(head, "\n")+"\n", width))
	for _, part := range blanks {
		var lines strings.Builder
		fmt.Fprintf(&lines, "\n%s  %s\n", part.Name, part.Title)
		if part.Err != nil {
			fmt.Fprintf(&lines, "  REFUSED, not drawn: %s\n", oneLine(part.Err))
		} else if part.Seen != "" {
			fmt.Fprintf(&lines, "  %s\n", flatRemarks(s, part, head)[0])
		}
		b.WriteString(report.Fold(lines.String(), width))
		for _, q := range part.Measures {
			b.WriteString(measureLines(q.Symbol, q.Name, report.Show(q, s.Units, report.Nearest), width))
		}
		for _, line := range part.Cautions {
			b.WriteString(report.Fold("  caution: "+line+"\n", width))
		}
		for _, line := range part.Notes {
			b.WriteString(report.Fold("  note: "+line+"\n", width))
		}
	}
	b.WriteString("\n" + report.VerdictLines("tank: ", s, width))
	return b.String()
}

// The columns of a measure [characters]: its symbol, what it is, and its value.
const symbolColumn, nameColumn, valueColumn = 9, 62, 14

// measureLines sets a measure in its columns. On a terminal [characters] that is too narrow
// for them it is what is measured that is wrapped, with the value in the first line.
func measureLines(symbol, name, value string, width int) string {
	column := nameColumn
	if room := width - len("    ") - symbolColumn - valueColumn; width > 0 && room < column {
		column = room
	}
	lines := wrap(name, column)
	var b strings.Builder
	fmt.Fprintf(&b, "  %-*s %-*s %*s\n", symbolColumn, symbol, column, lines[0], valueColumn, value)
	for _, more := range lines[1:] {
		fmt.Fprintf(&b, "  %*s %s\n", symbolColumn, "", more)
	}
	return b.String()
}
