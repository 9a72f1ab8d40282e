package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

const demoTank = "../../testdata/tanks/demo.toml"

// demoWith writes the demonstration tank with words replaced and returns its name.
func demoWith(t *testing.T, pairs ...string) string {
	t.Helper()
	text, err := os.ReadFile(demoTank)
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(string(text), pairs[i]) {
			t.Fatalf("the demonstration tank has no %q", pairs[i])
		}
	}
	path := filepath.Join(t.TempDir(), "tank.toml")
	if err := os.WriteFile(path, []byte(strings.NewReplacer(pairs...).Replace(string(text))), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func files(t *testing.T, folder string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// The whole drawings of the demonstration tank, in folders made for them.
func TestBlankDraws(t *testing.T) {
	at := t.TempDir()
	dxf, svg, pdf := filepath.Join(at, "a", "dxf"), filepath.Join(at, "svg"), filepath.Join(at, "parts.pdf")
	args := []string{"blank", demoTank, "--dxf", dxf, "--svg", svg, "--pdf", pdf, "--gap", "2 mm", "--kerf", "1 mm"}
	status, out, says := call(t, "", args...)
	if want, _, _ := call(t, "", "check", demoTank, "--quiet"); status != want {
		t.Errorf("status %d, that of check is %d: %s", status, want, says)
	}
	names := []string{"cylinder-1", "cylinder-2", "head-aft", "head-forward", "tube-fill", "tube-outlet", "tube-pressurant", "tube-vent"}
	for folder, end := range map[string]string{dxf: ".dxf", svg: ".svg"} {
		got := files(t, folder)
		for i := range got {
			got[i] = strings.TrimSuffix(got[i], end)
		}
		if !slices.Equal(got, names) {
			t.Errorf("%s holds %v", folder, got)
		}
	}
	verdict, _, _ := strings.Cut(out, "\n\n")
	if !strings.HasPrefix(verdict, "tank: ") || !strings.HasSuffix(out, "\n"+verdict+"\n") {
		t.Errorf("opens with %q and does not close with it:\n%s", verdict, out)
	}
	for _, want := range []string{"kerf 1 mm", "gap of the seams 2 mm", "1279.77 mm", "hole of outlet-1: length along the generator", "71.9627 mm", "nominal walls"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in the text", want)
		}
	}
	first, err := os.ReadFile(pdf)
	if err != nil || !strings.HasPrefix(string(first), "%PDF-") {
		t.Fatalf("%v, %.8q", err, first)
	}
	call(t, "", args...)
	if second, _ := os.ReadFile(pdf); string(second) != string(first) {
		t.Error("the same tank gave other drawings")
	}
	if entries, _ := os.ReadDir(at); len(entries) != 3 {
		t.Errorf("left behind: %v", entries)
	}
}

// A hole across a seam refuses its part; the others are drawn, and no file of an
// earlier run stands for the refused one.
func TestBlankRefuses(t *testing.T) {
	path := demoWith(t, `clock = "300 deg"`, `clock = "2 deg"`)
	folder := filepath.Join(t.TempDir(), "dxf")
	status, out, says := call(t, "", "blank", path, "--dxf", folder)
	if status != exitFails || !strings.Contains(out, "REFUSED, not drawn: the hole of port fill crosses the seam of the cone") {
		t.Errorf("status %d: %s%s", status, out, says)
	}
	if got := files(t, folder); slices.Contains(got, "head-forward.dxf") || !slices.Contains(got, "head-aft.dxf") {
		t.Errorf("written: %v", got)
	}
	old := filepath.Join(folder, "head-forward.dxf")
	if err := os.WriteFile(old, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if status, _, says := call(t, "", "blank", path, "--dxf", folder); status != exitInput || !strings.Contains(says, "of an earlier run") {
		t.Errorf("an old drawing of a refused part: status %d: %s", status, says)
	}
	near := demoWith(t, `clock = "300 deg"`, `clock = "345 deg"`)
	if _, out, _ := call(t, "", "blank", near); !strings.Contains(out, "caution: the hole of port fill leaves") || strings.Contains(out, "REFUSED") {
		t.Errorf("a hole near the seam: %s", out)
	}
}

// Domes are not laid flat: a disc, a plan to drill by, and the tube's template.
func TestBlankOfADome(t *testing.T) {
	_, out, _ := call(t, "", "blank", "../../testdata/tanks/oxygen.toml")
	for _, want := range []string{"head-aft  Aft head, disc", "no holes: they are cut after forming", "head-aft-plan", "a plan, not a flat blank"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestBlankWritesAllOrNothing(t *testing.T) {
	path := demoWith(t)
	if status, _, says := call(t, "", "blank", path, "--pdf", path); status != exitInput || !strings.Contains(says, "is an input") {
		t.Errorf("over its input: status %d: %s", status, says)
	}
	folder := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(folder, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	pdf := filepath.Join(t.TempDir(), "parts.pdf")
	if status, out, says := call(t, "", "blank", path, "--pdf", pdf, "--dxf", folder); status != exitInput || out != "" || says == "" {
		t.Errorf("a file for a folder: status %d: %s%s", status, out, says)
	}
	if _, err := os.Stat(pdf); err == nil {
		t.Error("one file was written though another could not be")
	}
}

// TestMeasureLines sets a measure in its columns, and wraps what is measured where a terminal
// is too narrow for them; the value stays in the first line.
func TestMeasureLines(t *testing.T) {
	const name = "line of a port with a long name on the outside face: length"
	wide := measureLines("A–B", name, "30.1 mm", 0)
	if strings.Count(wide, "\n") != 1 || !strings.HasSuffix(wide, " 30.1 mm\n") || measureLines("A–B", name, "30.1 mm", 200) != wide {
		t.Errorf("%q", wide)
	}
	narrow := strings.Split(measureLines("A–B", name, "30.1 mm", 80), "\n")
	if len(narrow) != 3 || utf8.RuneCountInString(narrow[0]) != 80 || !strings.HasSuffix(narrow[0], " 30.1 mm") || !strings.HasPrefix(narrow[1], strings.Repeat(" ", 12)) ||
		strings.Join(strings.Fields(strings.Join(narrow, " ")), " ") != "A–B line of a port with a long name on the outside face: 30.1 mm length" {
		t.Errorf("%q", narrow)
	}
}
