package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
)

// thinDemo writes the demonstration tank with a cylinder that is too thin.
func thinDemo(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile("../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "thin.toml")
	text := strings.Replace(string(src), `thickness = "8 mm"`, `thickness = "4 mm"  # to be sized`, 1)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestSizeWrites sizes a tank into a new file: comments stay, a second sizing of
// it changes nothing.
func TestSizeWrites(t *testing.T) {
	path := thinDemo(t)
	sized := filepath.Join(filepath.Dir(path), "sized.toml")
	status, out, says := call(t, "", "size", path, "--write", sized)
	if status != exitHolds || !strings.Contains(out, `cylinder.thickness = "`) || !strings.Contains(out, "added mass: ") {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	text, err := os.ReadFile(sized)
	if err != nil || !strings.Contains(string(text), `mm"  # to be sized`) {
		t.Fatalf("%v: the comment is lost", err)
	}
	if status, out, _ = call(t, "", "size", sized); status != exitHolds || !strings.Contains(out, "nothing is changed") {
		t.Errorf("status %d: %s", status, out)
	}
	if status, _, says = call(t, "", "size", path, "--write", path); status != exitInput || !strings.Contains(says, "not written over") {
		t.Errorf("status %d: %s", status, says)
	}
}

// TestSizeElsewhere sizes into another folder a tank that names a history: what has to go with it is said.
func TestSizeElsewhere(t *testing.T) {
	status, out, says := call(t, "", "size", "../../testdata/tanks/flight.toml", "--write", filepath.Join(t.TempDir(), "sized.toml"))
	if status != exitHolds || !strings.Contains(out, "put flight.csv there too") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
	if _, out, _ = call(t, "", "size", "../../testdata/tanks/demo.toml", "--write", filepath.Join(t.TempDir(), "sized.toml")); strings.Contains(out, "there too") {
		t.Errorf("a tank that names no file: %s", out)
	}
}

// TestSizeJSON reads the result as data.
func TestSizeJSON(t *testing.T) {
	status, out, says := call(t, "", "size", thinDemo(t), "--json", "-")
	var got struct {
		Parts []struct {
			Part    string
			Changes []struct{ Key, Was, Value string }
		}
		Added float64 `json:"added_mass"` // [kg]
	}
	if err := json.Unmarshal([]byte(out), &got); status != exitHolds || err != nil {
		t.Fatalf("status %d, %v: %s", status, err, says)
	}
	if c := got.Parts[0].Changes; got.Parts[0].Part != "cylinder" || len(c) != 1 || c[0].Was != "4 mm" || !(got.Added > 0) {
		t.Errorf("%+v", got)
	}
}

// TestSizeSaysWhenNothingDoes ends with 1 for a port where no metal helps.
func TestSizeSaysWhenNothingDoes(t *testing.T) {
	status, out, _ := call(t, "", "size", "../../testdata/tanks/port-at-rim.toml")
	if status != exitFails || !strings.Contains(out, "move it until port.feed/placement is satisfied") {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestSizeCannot ends with 1 for a part of which a check is not made: it is told no wall.
func TestSizeCannot(t *testing.T) {
	status, out, _ := call(t, "", "size", "../../testdata/tanks/bolted.toml")
	if status != exitFails || !strings.Contains(out, "cannot be sized: cylinder/compression is not assessed: ") {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestSizeTable lets the changes stand below their rows on a terminal that they do not
// fit, and beside them where they do.
func TestSizeTable(t *testing.T) {
	long := study.Change{Change: tank.Change{Key: "port.fill.weld.outside_leg", Value: `"8 mm"`}, Was: `"5 mm"`}
	rows := []study.Row{{Part: "port.fill", Wall: 4e-3, Margin: -0.32, Check: "port.fill/weld@meop", Changes: []study.Change{long, long}},
		{Part: "port.vent", Wall: 4e-3, Margin: 1.5, Check: "port.vent/placement@", Least: math.NaN()}}
	change := `port.fill.weld.outside_leg = "8 mm", was 5 mm`
	for _, width := range []int{0, 80, 200} {
		got := sizeTable(rows, width)
		below := strings.Contains(got, "\n    "+change+"\n    "+change+"\nport.vent  4 mm")
		if below != (width == 80) || strings.Count(got, change) != 2 || strings.Contains(got, "@\n") || strings.Contains(got, "@ ") {
			t.Errorf("width %d:\n%s", width, got)
		}
		for line := range strings.Lines(got) {
			if width > 0 && len(line) > width+1 {
				t.Errorf("%d wide: %s", len(line)-1, line)
			}
		}
	}
}
