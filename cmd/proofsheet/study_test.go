package main

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
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

// TestStudyPages writes a sweep and a scatter as PDF: the same bytes wherever the tank lies, the
// exit status of the study, what must stand there; neither is a sheet that could be signed.
func TestStudyPages(t *testing.T) {
	src, err := os.ReadFile("../../testdata/tanks/drain.toml")
	if err != nil {
		t.Fatal(err)
	}
	src = append(src, "\n[scatter]\n\"cylinder.thickness\" = \"normal 0.02 mm\"\n\"contents.temperature\" = \"uniform 2 K\"\n"...)
	for _, row := range []struct {
		args string
		want []string
	}{
		{"--scatter 40", []string{"Study of a tank: scatter", "40 samples, Latin hypercube, seed", "[2] cylinder.thickness normal about 1.2 mm, deviation 0.02 mm", "40 of 40", "Every sample was assessed.",
			"What the margin of cylinder/compression@drain follows", "never made", "Only as good as its inputs", "Joints were left out"}},
		{"--vary cylinder.thickness=1.2mm,2mm --vary pressure.meop=5bar,8bar", []string{"Study of a tank: sweep", "4 tanks, one for each pair of values", "1.2 mm, 2 mm", "0.5 MPa, 0.8 MPa",
			"2 of 4 tanks are none that can be assessed", "tank.toml:17:10: pressure.relief", "Mass of the empty tank", "Check with the least margin of those made", "A check that is not assessed is not satisfied"}},
	} {
		var first []byte
		for range 2 {
			folder := t.TempDir()
			tank, path := filepath.Join(folder, "tank.toml"), filepath.Join(folder, "study.pdf")
			if err := os.WriteFile(tank, src, 0o600); err != nil {
				t.Fatal(err)
			}
			args := append([]string{"study", tank, "--pdf", path}, strings.Fields(row.args)...)
			for range 2 { // the second takes the place of the first
				if status, _, says := call(t, "", args...); status != exitHolds || !strings.Contains(says, "wrote "+path) {
					t.Fatalf("%s: status %d, %s", row.args, status, says)
				}
			}
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = data
			} else if !bytes.Equal(first, data) {
				t.Errorf("%s: other bytes in another folder", row.args)
			}
			if status, out, _ := call(t, "", "verify", path); status != exitFails || !strings.Contains(out, "this is a study of this program, which nobody signs") {
				t.Errorf("%s: verify takes it for a sheet: status %d, %s", row.args, status, out)
			}
			if status, out, _ := call(t, "", append(args[:2:2], append(strings.Fields(row.args), "--pdf", "-")...)...); status != exitHolds || out != string(data) {
				t.Errorf("%s: another document on standard output", row.args)
			}
			pages := pdfWords(t, path)
			for _, want := range append(row.want, "tank as written: not satisfied", "approves nothing and is not for signing", "embedded as study.csv") {
				if pages != "" && !strings.Contains(pages, want) {
					t.Errorf("%s: no %q in\n%s", row.args, want, pages)
				}
			}
			mine := []byte("mine")
			if err := os.WriteFile(path, mine, 0o600); err != nil {
				t.Fatal(err)
			}
			if status, _, says := call(t, "", args...); status != exitInput || !strings.Contains(says, "no document of this program") {
				t.Errorf("%s: status %d, %s", row.args, status, says)
			}
		}
	}
	for args, want := range map[string]string{"--csv - --pdf -": "only one of --csv and --pdf", "--pdf=": "--pdf needs a name"} {
		if status, _, says := call(t, "", append([]string{"study", "../../testdata/tanks/kerosene.toml", "--vary", "cylinder.thickness=5mm"}, strings.Fields(args)...)...); status != exitInput || !strings.Contains(says, want) {
			t.Errorf("%s: status %d, %s", args, status, says)
		}
	}
}

// pdfWords returns what stands in a PDF, "" where nothing is here to read it.
func pdfWords(t *testing.T, path string) string {
	t.Helper()
	reader, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Log("pdftotext is not here: the words were not read")
		return ""
	}
	out, err := exec.Command(reader, "-layout", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

// TestStudyRounding: an interval is rounded outwards, a margin down, its deviation up.
func TestStudyRounding(t *testing.T) {
	for _, row := range []struct {
		low, high, mean, deviation float64
		want                       string
	}{
		{0, 0.0076505, 0.01234, 0.00011, "0 to 0.0077, 0.012, 0.001"},
		{0.9957, 1, -0.0001, 0, "0.99 to 1, -0.001, 0.000"},
		{0.12, 0.13, 169.09, 8.5411, "0.12 to 0.13, 169.0, 8.542"},
		{0.0999, 0.0999, 1, 1, "0.099 to 0.1, 1.000, 1.000"},
	} {
		x := study.Scattered{Low: row.low, High: row.high, Mean: row.mean, Deviation: row.deviation}
		if got := interval(x) + ", " + meanMargin(x) + ", " + deviation(x); got != row.want {
			t.Errorf("%s, want %s", got, row.want)
		}
	}
}
