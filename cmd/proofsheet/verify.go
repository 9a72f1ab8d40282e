package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

func verifyCommand() *cli.Command {
	return &cli.Command{
		Name: "verify", Usage: "check signatures and embedded files of a sheet, and compute it again", ArgsUsage: "SHEET.pdf",
		Description: "A signature that holds says that the file has not changed, not whose it is: compare the fingerprint\n" +
			"with one that came by another way. The sheet is computed again from the embedded tank file and drawn again;\n" +
			"it holds only where that gives the same bytes, which asks for the same version of the program.",
		Action: runVerify,
	}
}

func runVerify(c *cli.Context) error {
	name, err := oneFile(c)
	if err != nil {
		return err
	}
	data, err := readInput(c, name)
	if err != nil {
		return err
	}
	r, err := sign.Verify(data)
	if err != nil {
		return fails(c, "", err)
	}
	var text strings.Builder
	listSignatures(&text, r)
	for _, a := range r.Attachments {
		fmt.Fprintf(&text, "embedded     %s, SHA-256 %x\n", a.Name, sha256.Sum256(a.Data))
	}
	sheet, err := recompute(r)
	if err != nil {
		return fails(c, text.String(), err)
	}
	fmt.Fprintf(&text, "recomputed   every page and number, by version %s\n", programVersion())
	fmt.Fprintf(&text, "holds: unchanged since it was signed; the sheet says: %s\n", sheet.VerdictLine())
	return toStdout(c, text.String())
}

// fails prints what does not hold after what does.
func fails(c *cli.Context, before string, err error) error {
	return errors.Join(errFails, toStdout(c, fmt.Sprintf("%sdoes not hold: %v\n", before, err)))
}

// listSignatures prints who signed, as what and when.
func listSignatures(b *strings.Builder, r *sign.Report) {
	by := map[string]string{}
	for _, s := range r.Signatures {
		fmt.Fprintf(b, "signed       as %s by %s, %s by the signer's clock\n", s.Role, clean(s.Name), s.When.UTC().Format("2006-01-02 15:04:05 UTC"))
		if s.Reason != "" {
			fmt.Fprintf(b, "  reason     %s\n", clean(s.Reason))
		}
		fmt.Fprintf(b, "  by         %s\n", clean(s.Certificate.Subject.String()))
		fmt.Fprintf(b, "  fingerprint %s\n", s.Fingerprint)
		if s.SelfMade {
			fmt.Fprintln(b, "  the certificate is self-made: only the fingerprint tells whose it is")
		}
		if s.Role == sign.RoleSeal {
			fmt.Fprintln(b, "  a seal is nobody's approval")
		} else if other, again := by[s.Fingerprint]; again {
			fmt.Fprintf(b, "  caution: the same certificate signed as %s; a second person should\n", other)
		}
		by[s.Fingerprint] = s.Role
	}
}

// clean keeps control characters of a file off the terminal.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x20 || r >= 0x7F && r < 0xA0 {
			return '?'
		}
		return r
	}, s)
}

// dataName is the embedded file that holds the sheet as data.
const dataName = "sheet.json"

// recompute assesses the embedded tank again and draws the sheet again.
func recompute(r *sign.Report) (*report.Sheet, error) {
	if len(r.Attachments) == 0 {
		return nil, errors.New("no tank file is embedded")
	}
	first := r.Attachments[0]
	t, err := tank.Read(first.Name, first.Data, embedded(r.Attachments[1:]))
	if err != nil {
		return nil, fmt.Errorf("the embedded tank file is not read by version %s:\n%w", programVersion(), err)
	}
	sheet, err := assessTank(t)
	if err != nil {
		return nil, fmt.Errorf("the embedded tank file is not assessed by version %s: %w", programVersion(), err)
	}
	drawn, err := pdf.Write(sheet)
	if err != nil {
		return nil, err
	}
	if !bytes.Equal(drawn, r.Base) {
		return nil, differs(r, sheet)
	}
	return sheet, nil
}

// embedded opens embedded files by the paths of the tank file. They are kept
// without their folders, in the order in which they are opened, so that of two
// with one name the one not yet opened is meant.
func embedded(files []sign.Attachment) func(path string) ([]byte, error) {
	opened := make([]bool, len(files))
	return func(path string) ([]byte, error) {
		found := -1
		for i, a := range files {
			if a.Name == filepath.Base(path) && (found < 0 || opened[found] && !opened[i]) {
				found = i
			}
		}
		if found < 0 {
			return nil, fs.ErrNotExist
		}
		opened[found] = true
		return files[found].Data, nil
	}
}

// differs says in what the recomputed sheet is another one.
func differs(r *sign.Report, sheet *report.Sheet) error {
	var was, is map[string]any
	data, err := sheet.JSON()
	if err != nil {
		return err
	}
	for _, a := range r.Attachments {
		if a.Name == dataName {
			err = json.Unmarshal(a.Data, &was)
		}
	}
	if err = errors.Join(err, json.Unmarshal(data, &is)); err != nil || was == nil {
		return errors.New("the sheet drawn again is another one, and its embedded data cannot be read")
	}
	by := ""
	if p, ok := was["program"].(map[string]any); ok {
		by = clean(fmt.Sprint(p["version"]))
	}
	if at := difference("", was, is); at != "" {
		return fmt.Errorf("the sheet computed again by version %s is another one (it says version %s made it): %s", programVersion(), by, at)
	}
	return fmt.Errorf("the numbers computed again are the same, but the pages are not those that version %s draws (it says version %s made it)", programVersion(), by)
}
