package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestMissingHistory: a file that the tank file names and that is not there is told at
// its place, with the one meant, as seen from the tank file.
func TestMissingHistory(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{"tank.toml": string(contents(t, "../../testdata/tanks/flight.toml")), "flight.csv": "time [s]\n", "notes.txt": ""} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(folder, "tank.toml")
	for history, want := range map[string]string{
		"fligth.csv": `flight.history: "fligth.csv" cannot be read: no such file or directory; did you mean flight.csv?`,
		"boost.csv":  `flight.history: "boost.csv" cannot be read: no such file or directory in ` + folder,
		"no/a.csv":   `flight.history: "no/a.csv" cannot be read: no such file or directory; there is no folder ` + filepath.Join(folder, "no"),
	} {
		text := strings.Replace(string(contents(t, "../../testdata/tanks/flight.toml")), `"flight.csv"`, `"`+history+`"`, 1)
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		if status, out, says := call(t, "", "check", path); status != exitInput || out != "" || !strings.Contains(says, want+"\n") {
			t.Errorf("%s: status %d, %s%s", history, status, out, says)
		}
	}
}
