package tank

import (
	"os"
	"path/filepath"
	"testing"
)

// Every example tank reads without fault.
func TestExampleTanksRead(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "..", "testdata", "tanks")
	files, err := filepath.Glob(filepath.Join(folder, "*.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		open := func(path string) ([]byte, error) { return os.ReadFile(filepath.Join(folder, path)) }
		if _, err := Read(filepath.Base(file), src, open); err != nil {
			t.Errorf("%s:\n%v", file, err)
		}
	}
}
