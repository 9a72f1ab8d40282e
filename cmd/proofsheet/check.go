package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

func checkCommand() *cli.Command {
	return &cli.Command{
		Name: "check", Usage: "assess every case of a tank", ArgsUsage: "TANK.toml",
		Description: "Prints the summary; TANK.toml may be - for standard input. Verdict, governing check, exit status and\n" +
			"PDF always cover every case. The PDF is sealed by the local identity, which is nobody's approval. Exit status: 0 satisfied, 1\n" +
			"not satisfied or not assessed, 2 the input or the call is wrong.",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "pdf", Usage: "write the calculation sheet to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "json", Usage: "write the sheet as data to `FILE`, - for standard output"},
			&cli.StringFlag{Name: "figures", Usage: "write the figures as SVG into `FOLDER`"},
			&cli.StringFlag{Name: "case", Usage: "list only the checks of the case `NAME`"},
			&cli.BoolFlag{Name: "quiet", Usage: "print verdict and governing check only"},
			&cli.BoolFlag{Name: "watch", Usage: "assess again at every save, print what moved, until Ctrl-C"},
		}, signerFlags()...),
		Action: runCheck,
	}
}

func runCheck(c *cli.Context) error {
	if err := checkOutputFlags(c); err != nil {
		return err
	}
	if c.Bool("watch") {
		return runWatch(c)
	}
	j, err := load(c)
	if err != nil {
		return err
	}
	var text strings.Builder
	if err := report.Text(&text, j.sheet, c.Bool("quiet"), c.String("case"), foldWidth(c)); err != nil {
		return err
	}
	return j.deliver(c, text.String())
}

// checkOutputFlags refuses flags that contradict each other, before anything
// is read.
func checkOutputFlags(c *cli.Context) error {
	if c.String("pdf") == dash && c.String("json") == dash {
		return errors.New("only one of --pdf and --json can go to standard output")
	}
	for _, name := range []string{"pdf", "json", "figures"} {
		if c.IsSet(name) && c.String(name) == "" {
			return fmt.Errorf("--%s needs a name", name)
		}
	}
	return checkSignerFlags(c)
}

// deliver writes the files that were asked for, all or none, then prints the
// text, in whose place a file may stand that goes to standard output.
func (j *job) deliver(c *cli.Context, text string) error {
	var out outputs
	defer out.discard()
	if path := c.String("json"); path != "" {
		data, err := j.sheet.JSON()
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addKind(path, data, dataFile, j.inputs...); err != nil {
			return err
		}
	}
	if path := c.String("pdf"); path != "" {
		data, err := j.document(c)
		if err != nil {
			return err
		}
		if path == dash {
			text = string(data)
		} else if err := out.addDocument(path, data, c.Bool("unsigned"), j.inputs...); err != nil {
			return err
		}
	}
	if folder := c.String("figures"); folder != "" {
		if err := j.figures(&out, folder); err != nil {
			return err
		}
	}
	if err := out.finish(c, text); err != nil {
		return err
	}
	return j.verdict()
}

// document returns the sheet as PDF, signed unless that is left out.
func (j *job) document(c *cli.Context) ([]byte, error) {
	data, err := pdf.Write(j.sheet)
	if err != nil || c.Bool("unsigned") {
		return data, err
	}
	s, role, err := chosenSigner(c)
	if err != nil {
		return nil, err
	}
	box, err := boxFor(role, j.sheet.Paper)
	if err != nil {
		return nil, err
	}
	return sign.Sign(data, s, sign.Options{Role: role, When: time.Now(), Box: box})
}

// addDocument stages a PDF and, where it is signed, checks the signature in
// the file as it lies on the disk before that is put in place.
func (o *outputs) addDocument(path string, data []byte, unsigned bool, inputs ...string) error {
	if err := noInput(path, inputs); err != nil {
		return err
	}
	if err := mayGo(path, data); err != nil {
		return err
	}
	if err := o.add(path, data, inputs...); err != nil || unsigned {
		return err
	}
	written, err := readFile(o.staged[len(o.staged)-1].temporary)
	if err != nil {
		return err
	}
	if _, err := sign.Verify(written); err != nil {
		return fmt.Errorf("%s is not written: %w", path, err)
	}
	return nil
}

// figures stages every figure of the sheet. Of two with one name the later
// gets a number.
func (j *job) figures(out *outputs, folder string) error {
	if err := folderFor(folder); err != nil {
		return err
	}
	seen := map[string]int{}
	for _, f := range pdf.Figures(j.sheet) {
		name := f.Name
		if seen[f.Name]++; seen[f.Name] > 1 {
			name = fmt.Sprintf("%s-%d", f.Name, seen[f.Name])
		}
		data, err := f.SVG()
		if err != nil {
			return err
		}
		if err := out.addKind(filepath.Join(folder, name+".svg"), data, svgFile, j.inputs...); err != nil {
			return err
		}
	}
	return nil
}
