package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/report"
	"proofsheet/report/sign"
)

func verifyCommand() *cli.Command {
	return &cli.Command{
		Name: "verify", Usage: "check the signatures of a sheet or record, compute it again", ArgsUsage: "SHEET.pdf",
		Description: "Each signature: digest, key, coverage, order, and that nothing but signatures was added after it. The hashes\n" +
			"of the embedded files against those printed. The whole sheet, computed and drawn again from the embedded tank\n" +
			"file, a record from tank and log, is the same byte for byte. That takes the build that made it: to any other its pages\n" +
			"are not proven, and it never holds; how far the numbers in its data agree is told for information.\n" +
			"A signature that holds says that the file has not changed, not whose it is: compare the fingerprint with one\n" +
			"that came by another way.\n\n" +
			"Exit status: 0 all of it holds, 1 something does not or another version made it, 2 the file cannot be read.",
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
	if errors.Is(err, sign.ErrNoPDF) {
		return fmt.Errorf("%s: %w; write the name of the PDF of a sheet or record", name, err)
	}
	unsigned := errors.Is(err, sign.ErrNotSigned)
	if err != nil && !unsigned {
		return fails(c, "", err)
	}
	var text strings.Builder
	listSignatures(&text, r, foldWidth(c))
	e, err := examine(r)
	text.WriteString(e.text(foldWidth(c)))
	if err == nil && unsigned {
		err = sign.ErrNotSigned
	}
	if err != nil {
		return fails(c, text.String(), err)
	}
	text.WriteString(meaning(r, e, foldWidth(c)))
	fmt.Fprintf(&text, "holds: unchanged since it was signed, and computed again byte for byte; the %s says: %s\n", e.kind, clean(e.again.line()))
	return toStdout(c, report.Fold(text.String(), foldWidth(c)))
}

// fails prints what does not hold after what does.
func fails(c *cli.Context, before string, err error) error {
	return errors.Join(errFails, toStdout(c, report.Fold(fmt.Sprintf("%sdoes not hold: %s\n", before, cleanLines(err.Error())), foldWidth(c))))
}
