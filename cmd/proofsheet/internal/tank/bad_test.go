package tank

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/bad/*.want; review the difference")

const badFolder = "../../../../testdata/bad"

// openBad opens a file beside the wrong tank files.
func openBad(path string) ([]byte, error) { return os.ReadFile(filepath.Join(badFolder, path)) }

// Every wrong tank file is refused with exactly the lines beside it, each with
// its position.
func TestWrongFiles(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(badFolder, "*.toml"))
	if err != nil || len(files) < 30 {
		t.Fatalf("%d wrong tank files, want at least 30 (%v)", len(files), err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			_, err = Read(name, src, openBad)
			var faults Faults
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("read without fault: %v", err)
			}
			got := faults.Error() + "\n"
			want := strings.TrimSuffix(file, ".toml") + ".want"
			if *update {
				if err := os.WriteFile(want, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			expected, err := os.ReadFile(want)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(expected) {
				t.Errorf("got\n%swant\n%s", got, expected)
			}
		})
	}
}
