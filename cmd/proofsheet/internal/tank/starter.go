package tank

import (
	"bytes"
	_ "embed"
)

//go:embed starter.toml
var starter []byte

// Starter returns a commented tank file that reads without fault.
func Starter() []byte { return bytes.Clone(starter) }
