package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"proofsheet/report"
	"proofsheet/report/sign"
)

func identityCommand() *cli.Command {
	return &cli.Command{
		Name: "identity", Usage: "show the local signing identity, made on first use",
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("identity takes no file")
			}
			s, folder, err := localIdentity(c)
			if err != nil {
				return err
			}
			width := foldWidth(c)
			return toStdout(c, report.Fold(fmt.Sprintf("%s\nfolder       %s\n%svalid        %s to %s\n"+
				"It proves only that a sheet has not changed since this program wrote it. It is nobody's approval.\n",
				s.Certificate.Subject.CommonName, folder, fingerprintLine("fingerprint  ", s.Fingerprint(), width),
				s.Certificate.NotBefore.Format("2006-01-02"), s.Certificate.NotAfter.Format("2006-01-02")), width))
		},
	}
}

// localIdentity returns the local identity, and says so where it was made.
func localIdentity(c *cli.Context) (*sign.Signer, string, error) {
	folder, err := sign.Folder()
	if err != nil {
		return nil, "", err
	}
	s, created, err := sign.LocalIdentity(folder)
	if err != nil {
		return nil, "", err
	}
	if created {
		fmt.Fprintf(c.App.ErrWriter, "made a local signing identity in %s\n", folder)
	}
	return s, folder, nil
}
