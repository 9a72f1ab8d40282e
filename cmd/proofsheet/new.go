package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
)

func newCommand() *cli.Command {
	return &cli.Command{
		Name: "new", Usage: "write a commented starter file; never overwrites", ArgsUsage: "FILE.toml",
		Action: func(c *cli.Context) error {
			path, err := oneFile(c)
			if err != nil {
				return err
			}
			if path == dash {
				return toStdout(c, string(tank.Starter()))
			}
			if err := createNew(path, tank.Starter()); err != nil {
				return err
			}
			fmt.Fprintf(c.App.ErrWriter, "wrote %s; next: proofsheet check %[1]s\n", path)
			return nil
		},
	}
}

// createNew writes a file that must not exist, whole or not at all.
func createNew(path string, data []byte) error {
	exists := fmt.Errorf("%s exists and is not written over", path)
	if _, err := os.Lstat(path); err == nil {
		return exists
	}
	temporary, err := stage(path, data)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, cause(err))
	}
	defer os.Remove(temporary)
	// A link, unlike a rename, fails where another run was faster.
	switch err := os.Link(temporary, path); {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrExist):
		return exists
	}
	// A file system without links: only the creation can be exclusive.
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return exists
	}
	if err != nil {
		return plain(err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(path)
	}
	return err
}
