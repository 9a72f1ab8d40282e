package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
)

func schemaCommand() *cli.Command {
	return &cli.Command{
		Name: "schema", Usage: "print the JSON Schema of the tank file, for editors",
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("schema takes no file")
			}
			return toStdout(c, string(tank.Schema()))
		},
	}
}
