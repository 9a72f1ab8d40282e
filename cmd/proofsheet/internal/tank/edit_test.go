package tank

import (
	"os"
	"strings"
	"testing"
)

// TestEdit writes values into the demonstration tank: nothing but the line of
// the key may change.
func TestEdit(t *testing.T) {
	demo := read(t, "../../../../testdata/tanks/demo.toml")
	for _, c := range []struct {
		key, value, line string
	}{
		{"cylinder.thickness", `"9 mm"`, `thickness = "9 mm"`},
		{"port.fill.tube.wall", `"5 mm"`, `wall = "5 mm"`},
		{"port.fill.weld.outside_throat", `"5 mm"`, `groove = "full", outside_throat = "5 mm" }`},
		{"port.fill.pad", `{ outside_diameter = "60 mm", thickness = "6 mm" }`, `pad = { outside_diameter = "60 mm", thickness = "6 mm" }`},
		{"cylinder.corrosion", `"0.5 mm"`, `corrosion = "0.5 mm"`},
		{"proof.hold", `"20 min"`, `hold = "20 min"`},
		{"cylinder.girth_stations", `["500 mm", "700 mm"]`, `girth_stations = ["500 mm", "700 mm"]`},
	} {
		got, err := demo.Edit([]Change{{c.key, c.value}})
		if err != nil {
			t.Errorf("%s: %v", c.key, err)
			continue
		}
		was, is := strings.Split(string(demo.Text), "\n"), strings.Split(string(got), "\n")
		differ := 0
		for len(was) > 0 && len(is) > 0 {
			switch {
			case was[0] == is[0]:
				was, is = was[1:], is[1:]
			case len(is) > len(was):
				differ++
				if !strings.Contains(is[0], c.line) {
					t.Errorf("%s: line %q, want %q in it", c.key, is[0], c.line)
				}
				is = is[1:]
			default:
				differ++
				if !strings.Contains(is[0], c.line) {
					t.Errorf("%s: line %q, want %q in it", c.key, is[0], c.line)
				}
				was, is = was[1:], is[1:]
			}
		}
		if differ != 1 {
			t.Errorf("%s: %d lines differ, want 1", c.key, differ)
		}
	}
}

// TestEditRefuses asks for what a file cannot take without more than one value
// changing.
func TestEditRefuses(t *testing.T) {
	demo := read(t, "../../../../testdata/tanks/demo.toml")
	for key, value := range map[string]string{
		"cylinder.thickness": `9 mm`,                  // no TOML
		"stock.thickness":    `["2 mm"]`,              // no such table
		"port.none.tube":     `{ wall = "3 mm" }`,     // no such port
		"nothing":            `"3 mm"`,                // no table
		"cylinder.length":    "\"1 m\"\nmaterial = 1", // two values
	} {
		if _, err := demo.Edit([]Change{{key, value}}); err == nil {
			t.Errorf("%s = %s is taken", key, value)
		}
	}
}

func read(t *testing.T, name string) *Tank {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	tank, err := Read(name, src, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	return tank
}
