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
	if status != exitHolds || !strings.Contains(out, "8 samples, Latin hypercube") || !strings.Contains(out, "[1]  cylinder.thickness: normal about") || !strings.Contains(out, "[1] +1.00") {
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

// TestStudySurfaces draws more samples than are assessed, says how it went about
// it, and with --exact assesses them.
func TestStudySurfaces(t *testing.T) {
	src, err := os.ReadFile("../../testdata/tanks/drain.toml")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path, table := filepath.Join(folder, "scatter.toml"), filepath.Join(folder, "s.csv")
	if err := os.WriteFile(path, append(src, "\n[scatter]\n\"cylinder.thickness\" = \"normal 0.02 mm\"\n"...), 0o600); err != nil {
		t.Fatal(err)
	}
	status, out, says := call(t, "", "study", path, "--scatter", "6000", "--csv", table)
	out = strings.Join(strings.Fields(out), " ")
	for _, want := range []string{"tanks beside them were assessed", "decided by surfaces of order 3", "--exact sees it", "checks were never made"} {
		if status != exitHolds || !strings.Contains(out, want) {
			t.Errorf("status %d, no %q: %s%s", status, want, out, says)
		}
	}
	rows, err := os.ReadFile(table)
	if err != nil || !strings.HasPrefix(string(rows), "check,decided_by,samples") || !strings.Contains(string(rows), "\ncylinder/hoop@meop,surface,6000,") {
		t.Errorf("%v: %s", err, rows)
	}
	if status, out, _ := call(t, "", "study", path, "--scatter", "20", "--exact"); status != exitHolds || !strings.Contains(out, "Every sample was assessed.") {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestStudyCoupons says how far a weld scatters.
func TestStudyCoupons(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"coupons.toml", "coupons.csv"} {
		src, err := os.ReadFile("../../testdata/tanks/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if name == "coupons.toml" {
			src = append(src, "\n[scatter]\n\"joint.seam.coupons\" = \"coupons\"\n\"contents.temperature\" = \"uniform 0.5 K\"\n"...)
		}
		if err := os.WriteFile(filepath.Join(folder, name), src, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	status, out, says := call(t, "", "study", filepath.Join(folder, "coupons.toml"), "--scatter", "8")
	out = strings.Join(strings.Fields(out), " ")
	for _, want := range []string{
		"contents.temperature: uniform about -183.15 °C, half the width 0.5 K",
		"joint.seam.coupons: normal as its 8 coupons in place of their limit, ultimate 308.5 MPa, deviation 7.67184 MPa",
		"[2] +1.00",
	} {
		if status != exitHolds || !strings.Contains(out, want) {
			t.Errorf("status %d, no %q: %s%s", status, want, out, says)
		}
	}
}
