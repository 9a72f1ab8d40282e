package main

import (
	"encoding/xml"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
)

// TestStudy sweeps a wall: table, CSV and chart.
func TestStudy(t *testing.T) {
	folder := t.TempDir()
	svg, table := filepath.Join(folder, "s.svg"), filepath.Join(folder, "s.csv")
	kerosene := "../../testdata/tanks/kerosene.toml"
	status, out, says := call(t, "", "study", kerosene, "--vary", "cylinder.thickness=4mm..6mm/1mm", "--csv", table, "--svg", svg)
	if status != exitHolds || strings.Count(out, " kg") != 3 {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	rows, err := os.ReadFile(table)
	if err != nil || strings.Count(string(rows), "\n") != 4 || !strings.HasPrefix(string(rows), "cylinder.thickness [m],mass [kg]") {
		t.Errorf("%v: %s", err, rows)
	}
	figure, err := os.ReadFile(svg)
	if err != nil || xml.Unmarshal(figure, new(struct{ XMLName xml.Name })) != nil {
		t.Errorf("%v: no SVG", err)
	}
	for args, want := range map[string]string{
		"--vary cylinder.thicknes=4mm..6mm/1mm": "did you mean cylinder.thickness?",
		"--vary thickness=4mm..6mm/1mm":         "write its whole path, as cylinder.thickness",
		"--vary cylinder.thickness=4mm":         "",
		"--scatter 10":                          "has no [scatter]",
		"--vary a=1 --scatter 3":                "either --vary or --scatter",
	} {
		status, _, says := call(t, "", append([]string{"study", kerosene}, strings.Fields(args)...)...)
		if want != "" && (status != exitInput || !strings.Contains(says, want)) {
			t.Errorf("%s: status %d, %s", args, status, says)
		}
	}
}

// TestStudyScatter draws a few samples.
func TestStudyScatter(t *testing.T) {
	src, err := os.ReadFile("../../testdata/tanks/kerosene.toml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "scatter.toml")
	if err := os.WriteFile(path, append(src, "\n[scatter]\n\"cylinder.thickness\" = \"normal 0.1 mm\"\n"...), 0o600); err != nil {
		t.Fatal(err)
	}
	status, out, says := call(t, "", "study", path, "--scatter", "8")
	if status != exitHolds || !strings.Contains(out, "8 samples, Latin hypercube") || !strings.Contains(out, "[1]  cylinder.thickness (normal)") || !strings.Contains(out, "[1] +1.00") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
}

// TestStudyWidth prints a sweep in one line a variant, and narrower where a terminal is.
func TestStudyWidth(t *testing.T) {
	axes := []study.Axis{{Key: "head.forward.thickness", Unit: "m"}}
	variants := []study.Variant{{Done: true, At: []float64{0.004}, Mass: 9.5, Margin: 0.126, Check: "cylinder/thickness@meop"}}
	for width, want := range map[int]string{
		0:   "head.forward.thickness  mass      least margin  not satisfied, not assessed  check\n4 mm                    9.500 kg  +0.12         0, 0                         cylinder/thickness@meop\nThe least margin is that of the checks made; a check that is not assessed is not satisfied.\n",
		120: "head.forward.thickness  mass ",
		80:  "head.forward.   mass ",
	} {
		got := varyText(&tank.Tank{}, axes, variants, width)
		if !strings.HasPrefix(got, want) {
			t.Errorf("width %d:\n%s", width, got)
		}
		for line := range strings.Lines(got) {
			if width > 0 && len(line) > width+1 {
				t.Errorf("width %d: %q", width, line)
			}
		}
	}
}
