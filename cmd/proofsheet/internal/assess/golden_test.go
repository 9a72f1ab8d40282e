package assess_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

var update = flag.Bool("update", false, "rewrite the golden sheets")

// folder of the example tanks.
const tanks = "../../../../testdata/tanks"

// read returns an example tank.
func read(t testing.TB, name string) *tank.Tank {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(tanks, name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return parse(t, name+".toml", string(src))
}

// parse returns the tank of a text.
func parse(t testing.TB, name, src string) *tank.Tank {
	t.Helper()
	got, err := tank.Read(name, []byte(src), func(path string) ([]byte, error) { return os.ReadFile(filepath.Join(tanks, path)) })
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// sheet assesses a tank.
func sheet(t testing.TB, in *tank.Tank) *report.Sheet {
	t.Helper()
	s, err := assess.Assess(in, assess.Options{Version: "test"})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestGolden holds the text sheet of every example tank. A difference is an
// engineering change.
func TestGolden(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(tanks, "*.toml"))
	if err != nil || len(files) < 4 {
		t.Fatalf("%d example tanks, want at least 4: %v", len(files), err)
	}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".toml")
		t.Run(name, func(t *testing.T) {
			var got bytes.Buffer
			if err := report.Text(&got, sheet(t, read(t, name)), false, "", 0); err != nil {
				t.Fatal(err)
			}
			golden := filepath.Join(tanks, name+".golden.txt")
			if *update {
				if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("the sheet differs from %s; got:\n%s", golden, got.String())
			}
		})
	}
}

// TestFoldedTextSaysTheSame holds that the text of a sheet has one line for each check where
// no terminal shows it, and on one of eighty columns the same words in the same order.
func TestFoldedTextSaysTheSame(t *testing.T) {
	for _, name := range []string{"demo", "drain"} {
		s := sheet(t, read(t, name))
		var lines, folded bytes.Buffer
		if err := errors.Join(report.Text(&lines, s, false, "", 0), report.Text(&folded, s, false, "", 80)); err != nil {
			t.Fatal(err)
		}
		if a, b := strings.Join(strings.Fields(lines.String()), " "), strings.Join(strings.Fields(folded.String()), " "); a != b {
			t.Errorf("%s: folded it reads\n%s\nunfolded\n%s", name, b, a)
		}
		for line := range strings.Lines(folded.String()) {
			if utf8.RuneCountInString(line) > 81 {
				t.Errorf("%s: folded line %q", name, line)
			}
		}
		for _, r := range s.Checks {
			if r.Status() == check.NotApplicable {
				continue
			}
			what := report.Remark(r)
			if r.Status() != check.NotAssessed {
				what = r.Demand.Name + " "
			}
			n := 0
			for line := range strings.Lines(lines.String()) {
				if strings.HasPrefix(line, r.Status().String()+" ") && strings.Contains(line, "  "+report.FullID(r)+" ") && strings.Contains(line, "  "+what) {
					n++
				}
			}
			if n < 1 {
				t.Errorf("%s: no line has both %s and %q", name, report.FullID(r), what)
			}
		}
	}
}
