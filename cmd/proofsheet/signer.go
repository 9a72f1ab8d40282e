package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// passwordVariable holds the password of a PKCS#12 file. There is no flag for
// it: the command line is there for everybody to read.
const passwordVariable = "PROOFSHEET_PASSWORD"

// signerFlags are the flags of a command that writes a sheet.
func signerFlags() []cli.Flag {
	return append([]cli.Flag{
		&cli.BoolFlag{Name: "unsigned", Usage: "leave the digital signature out of the PDF"},
	}, keyFlags("as the preparer ")...)
}

// keyFlags name the key of a person who signs.
func keyFlags(as string) []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "key", Usage: "sign " + as + "with the private key in `FILE` (PEM)"},
		&cli.StringFlag{Name: "certificate", Usage: "certificate of the key, its issuers after it, in `FILE` (PEM)"},
		&cli.StringFlag{Name: "p12", Usage: "sign " + as + "with key and certificate in `FILE` (PKCS#12)"},
		&cli.StringFlag{Name: "password-file", Usage: "`FILE` whose first line opens the PKCS#12 file; else " + passwordVariable + ", else a prompt"},
	}
}

// ownKey reports whether somebody's own key is named.
func ownKey(c *cli.Context) bool {
	return c.String("key") != "" || c.String("certificate") != "" || c.String("p12") != ""
}

// checkKeyFlags refuses combinations that would leave it open who signs.
func checkKeyFlags(c *cli.Context) error {
	for _, name := range []string{"key", "certificate", "p12", "password-file"} {
		if c.IsSet(name) && c.String(name) == "" {
			return fmt.Errorf("--%s needs a name", name)
		}
	}
	switch {
	case (c.String("key") == "") != (c.String("certificate") == ""):
		return errors.New("--key and --certificate go together")
	case c.String("key") != "" && c.String("p12") != "":
		return errors.New("give either --key and --certificate or --p12")
	case c.String("password-file") != "" && c.String("p12") == "":
		return errors.New("--password-file belongs to --p12")
	}
	return nil
}

// checkSignerFlags does the same for a command that writes a sheet.
func checkSignerFlags(c *cli.Context) error {
	if err := checkKeyFlags(c); err != nil {
		return err
	}
	switch own := ownKey(c); {
	case own && c.Bool("unsigned"):
		return errors.New("--unsigned and a key exclude each other")
	case (own || c.Bool("unsigned")) && c.String("pdf") == "":
		return errors.New("there is nothing to sign without --pdf")
	}
	return nil
}

// chosenSigner returns who signs a new sheet, and as what: the preparer with a
// key of their own, else the local identity with its seal.
func chosenSigner(c *cli.Context) (*sign.Signer, string, error) {
	if ownKey(c) {
		s, err := keySigner(c)
		return s, sign.RolePrepared, err
	}
	s, _, err := localIdentity(c)
	return s, sign.RoleSeal, err
}

// keySigner returns the signer whose key is named.
func keySigner(c *cli.Context) (*sign.Signer, error) {
	if name := c.String("p12"); name != "" {
		data, err := readFile(name)
		if err != nil {
			return nil, err
		}
		word, err := password(c)
		if err != nil {
			return nil, err
		}
		return keyOf(name)(sign.LoadPKCS12(data, word))
	}
	key, err := readFile(c.String("key"))
	if err == nil {
		err = secretCaution(c, c.String("key"))
	}
	if err != nil {
		return nil, err
	}
	certificate, err := readFile(c.String("certificate"))
	if err != nil {
		return nil, err
	}
	return keyOf(c.String("key"))(sign.LoadPEM(key, certificate))
}

// secretCaution says where others may read a file that its owner alone should.
func secretCaution(c *cli.Context, name string) error {
	info, err := os.Stat(name)
	if err != nil || runtime.GOOS == "windows" || !info.Mode().IsRegular() || info.Mode().Perm()&0o077 == 0 {
		return nil // what cannot be told, pipes among it, is no reason not to sign
	}
	return tell(c.App.ErrWriter, fmt.Sprintf("caution: others may read %s (mode %04o) and sign in your name; make it 0600\n", name, info.Mode().Perm()))
}

// keyOf puts the name of the key file before what is wrong with it.
func keyOf(name string) func(*sign.Signer, error) (*sign.Signer, error) {
	return func(s *sign.Signer, err error) (*sign.Signer, error) {
		if err != nil {
			err = fmt.Errorf("%s: %w", name, err)
		}
		return s, err
	}
}

// boxFor returns where the signature of a role is drawn on a paper; nil for a
// role without a frame.
func boxFor(role, paper string) (*sign.Box, error) {
	places, err := pdf.Places(paper)
	if err != nil {
		return nil, err
	}
	for _, p := range places {
		if p.Role == role {
			return &sign.Box{X: p.Left, Y: p.Low, Width: p.Right - p.Left, Height: p.High - p.Low}, nil
		}
	}
	return nil, nil
}

// password returns the password of the PKCS#12 file from the file that is
// named, from the environment, or from whoever sits at the terminal.
func password(c *cli.Context) (string, error) {
	if name := c.String("password-file"); name != "" {
		data, err := readFile(name)
		if err == nil {
			err = secretCaution(c, name)
		}
		line, _, _ := strings.Cut(string(data), "\n")
		return strings.TrimSuffix(line, "\r"), err
	}
	if word, ok := os.LookupEnv(passwordVariable); ok {
		return word, nil
	}
	f, ok := c.App.Reader.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return "", fmt.Errorf("the PKCS#12 file needs a password: set %s or give --password-file", passwordVariable)
	}
	fmt.Fprintf(c.App.ErrWriter, "password of %s: ", c.String("p12"))
	word, err := term.ReadPassword(int(f.Fd()))
	fmt.Fprintln(c.App.ErrWriter)
	return string(word), err
}
