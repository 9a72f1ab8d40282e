package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/sign"
)

func signCommand() *cli.Command {
	return &cli.Command{
		Name: "sign", Usage: "add a signature as prepared, checked or approved", ArgsUsage: "SHEET.pdf",
		Description: "The signature is drawn in its frame on the last page and added behind what the file holds: no earlier byte is\n" +
			"changed, and earlier signatures stay good. First everything that verify asks is checked: what this build does not\n" +
			"draw byte for byte is refused. Each role signs once, in the order prepared, checked, approved, none left out\n" +
			"before another; checked asks for another person than prepared. The time is this computer's clock, in UTC.\n\n" +
			"The file is replaced whole by the signed one, or left as it was; --output leaves it alone. The key is RSA of\n" +
			"2048 bit or more or ECDSA of P-256 or longer; a PEM key is not encrypted. Never give a password as a flag.\n\n" +
			"Exit status: 0 the signature is in the file, 2 nothing was written.",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "as", Usage: "sign in the `ROLE` prepared, checked or approved"},
			&cli.StringFlag{Name: "output", Usage: "write the signed sheet to a new `FILE`, - for standard output"},
			&cli.StringFlag{Name: "reason", Usage: "print `TEXT` in the signature"},
		}, keyFlags("")...),
		Action: runSign,
	}
}

func runSign(c *cli.Context) error {
	name, err := oneFile(c)
	if err == nil {
		err = checkSignFlags(c, name)
	}
	if err != nil {
		return err
	}
	data, err := readInput(c, name)
	if err != nil {
		return err
	}
	role := c.String("as")
	sheet, err := signable(data, role)
	if err != nil {
		return fmt.Errorf("%s is not signed: %s", name, cleanLines(err.Error()))
	}
	signer, err := keySigner(c)
	if err != nil {
		return err
	}
	box, err := boxFor(role, sheet.Paper)
	if err != nil {
		return err
	}
	signed, err := sign.Sign(data, signer, sign.Options{Role: role, Reason: c.String("reason"), When: time.Now(), Box: box})
	if err != nil {
		return fmt.Errorf("%s is not signed: %w", name, err)
	}
	return deliverSigned(c, name, data, signed, sheet)
}

// checkSignFlags refuses a call that leaves open who signs what as what.
func checkSignFlags(c *cli.Context, name string) error {
	roles, as := sign.Roles()[1:], c.String("as") // the seal is the program's
	switch {
	case as == "":
		return errors.New("sign needs --as prepared, --as checked or --as approved")
	case !slices.Contains(roles, as):
		return fmt.Errorf("--as %s: there are %s", as, strings.Join(roles, ", "))
	case !ownKey(c):
		return errors.New("sign needs a key of your own: --key and --certificate, or --p12; the local identity only seals")
	case c.IsSet("output") && c.String("output") == "":
		return errors.New("--output needs a name")
	case name == dash && c.String("output") == "":
		return errors.New("a sheet from standard input needs --output")
	}
	return checkKeyFlags(c)
}

// signable checks a sheet as verify does, and that the role is free in it.
func signable(data []byte, role string) (*report.Sheet, error) {
	r, err := sign.Verify(data)
	if err != nil && !errors.Is(err, sign.ErrNotSigned) {
		return nil, err
	}
	e, err := examine(r)
	if err != nil {
		return nil, err
	}
	return e.again.sheet, inTurn(r, role)
}

// inTurn refuses a role that is signed already, and one before which another has to
// sign, who could not do so afterwards.
func inTurn(r *sign.Report, role string) error {
	if err := r.Takes(role); err != nil {
		return err
	}
	first := r.Awaits(role)
	switch {
	case first == "":
		return nil
	case r.Takes(first) != nil:
		return fmt.Errorf("nobody has signed it as %s, and after the signatures in it nobody can: write it again and sign in the order prepared, checked, approved", first)
	}
	return fmt.Errorf("nobody has signed it as %s, which comes before %s: sign it --as %[1]s first", first, role)
}

// deliverSigned puts the signed sheet in place and says who signed.
func deliverSigned(c *cli.Context, name string, before, signed []byte, sheet *report.Sheet) error {
	r, err := sign.Verify(signed)
	if err != nil {
		return err
	}
	last := len(r.Signatures) - 1
	s := r.Signatures[last]
	target := c.String("output")
	switch target {
	case dash:
		if err := toStdout(c, string(signed)); err != nil {
			return err
		}
	case "":
		target = name
		err = replace(name, before, signed)
	default:
		err = createNew(target, signed)
	}
	if err != nil {
		return err
	}
	lines := append(cautions(r, last), nameCaution(sheet, s.Role, s.Name))
	if !sign.Drawable(s.Name + s.Reason) {
		lines = append(lines, "the frame shows letters that it lacks without their marks or as “?”; the signature itself keeps the whole text")
	}
	if sheet.Verdict != check.Satisfied {
		lines = append(lines, "the sheet says: "+sheet.VerdictLine()+"; a signature does not change that")
	}
	if isRecord(r.Attachments) {
		lines = append(lines, recordCaution(r))
	}
	for _, line := range lines {
		if line != "" {
			if err := tell(c.App.ErrWriter, fmt.Sprintf("caution: %s\n", clean(line))); err != nil {
				return err
			}
		}
	}
	if target == dash {
		return nil
	}
	fmt.Fprintf(c.App.ErrWriter, "wrote %s\n", target)
	return toStdout(c, report.Fold(fmt.Sprintf("signed as %s by %s, %s by this computer's clock\n", s.Role, quoted(s.Name), s.When.UTC().Format(inUTC))+
		fingerprintLine("fingerprint  ", s.Fingerprint, foldWidth(c)), foldWidth(c)))
}

// replace puts the signed sheet in the place of the one that was read, whole or
// not at all, and only while that is still what lies there: somebody else may
// have signed it meanwhile. Between the last look and the new file nobody else
// who signs it may do the same, or one of two signatures would be lost.
func replace(name string, before, signed []byte) error {
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return plain(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		return plain(err)
	}
	const mayWrite = 0o200
	if info.Mode().Perm()&mayWrite == 0 {
		return fmt.Errorf("%s is read-only and left as it was; --output writes the signed sheet to another file", name)
	}
	var out outputs
	defer out.discard()
	if err := out.add(path, signed); err != nil {
		return fmt.Errorf("%w; it is left as it was", err)
	}
	unlock, err := lock(path)
	if err != nil {
		return err
	}
	defer unlock()
	if now, err := readFile(path); err != nil || !bytes.Equal(now, before) {
		return fmt.Errorf("%s has been changed since it was read, and is left as it is: sign it again", name)
	}
	if err := out.commit(); err != nil {
		return fmt.Errorf("%w; it is left as it was", err)
	}
	return nil
}

// lockWait is for how long a run waits for another that signs the same sheet, which takes far
// less for the little it does under its lock.
const lockWait = 2 * time.Second

// lock keeps other runs that sign a sheet out until the function that it returns is called, by
// a file beside it that only one of them can make.
func lock(path string) (unlock func(), err error) {
	name := path + ".lock"
	for start := time.Now(); ; time.Sleep(20 * time.Millisecond) {
		f, err := createFile(name, 0o600)
		if err == nil {
			f.Close() // it is empty
			return func() { os.Remove(name) }, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return nil, fmt.Errorf("%s cannot be written: %w; it is left as it was", name, cause(err))
		}
		if time.Since(start) > lockWait {
			return nil, fmt.Errorf("%s is left as it was: %s lies beside it, so another run is signing it, or was broken off while it did; if none is, remove that file and sign it again", path, name)
		}
	}
}
