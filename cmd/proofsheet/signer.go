package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"proofsheet/report/sign"
)

// passwordVariable holds the password of a PKCS#12 file. There is no flag for
// it: the command line is there for everybody to read.
const passwordVariable = "PROOFSHEET_PASSWORD"

func signerFlags() []cli.Flag {
	return []cli.Flag{
		&cli.BoolFlag{Name: "unsigned", Usage: "leave the digital signature out of the PDF"},
		&cli.StringFlag{Name: "key", Usage: "sign as the preparer with the private key in `FILE` (PEM)"},
		&cli.StringFlag{Name: "certificate", Usage: "certificate of the key, its issuers after it, in `FILE` (PEM)"},
		&cli.StringFlag{Name: "p12", Usage: "sign as the preparer with key and certificate in `FILE` (PKCS#12)"},
		&cli.StringFlag{Name: "password-file", Usage: "`FILE` whose first line opens the PKCS#12 file; else " + passwordVariable + ", else a prompt"},
	}
}

// checkSignerFlags refuses combinations that would leave it open who signs.
func checkSignerFlags(c *cli.Context) error {
	own := c.String("key") != "" || c.String("certificate") != "" || c.String("p12") != ""
	switch {
	case (c.String("key") == "") != (c.String("certificate") == ""):
		return errors.New("--key and --certificate go together")
	case c.String("key") != "" && c.String("p12") != "":
		return errors.New("give either --key and --certificate or --p12")
	case own && c.Bool("unsigned"):
		return errors.New("--unsigned and a key exclude each other")
	case c.String("password-file") != "" && c.String("p12") == "":
		return errors.New("--password-file belongs to --p12")
	case (own || c.Bool("unsigned")) && c.String("pdf") == "":
		return errors.New("there is nothing to sign without --pdf")
	}
	return nil
}

// chosenSigner returns who signs, and as what: the preparer with a key of
// their own, else the local identity with its seal.
func chosenSigner(c *cli.Context) (*sign.Signer, string, error) {
	switch {
	case c.String("p12") != "":
		data, err := readFile(c.String("p12"))
		if err != nil {
			return nil, "", err
		}
		word, err := password(c)
		if err != nil {
			return nil, "", err
		}
		s, err := sign.LoadPKCS12(data, word)
		return s, sign.RolePrepared, err
	case c.String("key") != "":
		key, err := readFile(c.String("key"))
		if err != nil {
			return nil, "", err
		}
		certificate, err := readFile(c.String("certificate"))
		if err != nil {
			return nil, "", err
		}
		s, err := sign.LoadPEM(key, certificate)
		return s, sign.RolePrepared, err
	default:
		s, _, err := localIdentity(c)
		return s, sign.RoleSeal, err
	}
}

// password returns the password of the PKCS#12 file from the file that is
// named, from the environment, or from whoever sits at the terminal.
func password(c *cli.Context) (string, error) {
	if name := c.String("password-file"); name != "" {
		data, err := readFile(name)
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
