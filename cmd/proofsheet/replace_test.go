package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestWrittenTwiceAndNothingElse gives every command that writes a file twice, which must
// do, and once where a file of another kind lies in the place, which must not.
func TestWrittenTwiceAndNothingElse(t *testing.T) {
	folder := t.TempDir()
	kerosene, demo := "../../testdata/tanks/kerosene.toml", "../../testdata/tanks/demo.toml"
	tank, err := os.ReadFile(kerosene)
	if err != nil {
		t.Fatal(err)
	}
	scatter := write(t, "scatter.toml", slices.Concat(tank, []byte("\n[scatter]\n\"cylinder.thickness\" = \"normal 0.1 mm\"\n")))
	others := map[string][]byte{"a tank": tank, "a log": []byte("time [s],pressure [bar]\n0,1\n"), "data of others": []byte("{\"format\": 1, \"program\": {\"name\": \"other\"}}\n"),
		"a page": []byte("<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"10mm\"/>\n"), "a word": []byte("mine"), "a list": []byte("cylinder/hoop  membrane stress\n")}
	for _, row := range []struct {
		args string
		file string // that comes of it
		name string // of its kind
	}{
		{"check " + kerosene + " --json F/a.json", "a.json", "data"},
		{"proof " + kerosene + " --json F/b.json", "b.json", "data"},
		{"record " + loggedTank + " " + sampleLogs + "good.csv --json F/c.json", "c.json", "data"},
		{"size " + kerosene + " --json F/d.json", "d.json", "data"},
		{"size " + kerosene + " --write F/e.toml", "e.toml", "tank file"},
		{"check " + kerosene + " --figures F/f", "f/section.svg", "drawing"},
		{"blank " + demo + " --svg F/g", "g/cylinder-1.svg", "drawing"},
		{"blank " + demo + " --dxf F/h", "h/cylinder-1.dxf", "drawing"},
		{"study " + kerosene + " --vary cylinder.thickness=6mm --svg F/i.svg", "i.svg", "drawing"},
		{"study " + kerosene + " --vary cylinder.thickness=6mm --csv F/j.csv", "j.csv", "table of a study"},
		{"study " + scatter + " --scatter 3 --csv F/k.csv", "k.csv", "table of a study"},
	} {
		args := strings.Fields(strings.ReplaceAll(row.args, "F/", folder+"/"))
		path := filepath.Join(folder, row.file)
		for range 2 {
			if status, _, says := call(t, "", args...); status == exitInput {
				t.Fatalf("%s: %s", row.args, says)
			}
		}
		for what, text := range others {
			if what == "a tank" && row.name == "tank file" {
				continue
			}
			if err := os.WriteFile(path, text, 0o600); err != nil {
				t.Fatal(err)
			}
			want := path + " exists, is no " + row.name + " of this program and is not written over; choose another name"
			if status, out, says := call(t, "", args...); status != exitInput || out != "" || !strings.Contains(says, want) {
				t.Errorf("%s over %s: status %d: %s", row.args, what, status, says)
			}
			if left, _ := os.ReadFile(path); !slices.Equal(left, text) {
				t.Errorf("%s: %s is lost", row.args, what)
			}
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if status, _, says := call(t, "", args...); status == exitInput {
			t.Errorf("%s over an empty file: %s", row.args, says)
		}
	}
}

// TestDocumentsOfOneKind lets each document of this program take the place of one of its own
// kind and of no other, nor of one that was changed after it had been written.
func TestDocumentsOfOneKind(t *testing.T) {
	kerosene, folder := "../../testdata/tanks/kerosene.toml", t.TempDir()
	kinds := map[string]string{
		"sheet":           "check " + kerosene + " --unsigned",
		"record":          "record " + loggedTank + " " + sampleLogs + "good.csv --unsigned",
		"study":           "study " + kerosene + " --vary cylinder.thickness=6mm",
		"set of drawings": "blank ../../testdata/tanks/demo.toml",
	}
	to := func(name, path string) (int, string) {
		status, _, says := call(t, "", append(strings.Fields(kinds[name]), "--pdf", path)...)
		return status, says
	}
	for is := range kinds {
		path := filepath.Join(folder, is+".pdf")
		for range 2 {
			if status, says := to(is, path); status == exitInput {
				t.Fatalf("%s: %s", is, says)
			}
		}
		before := contents(t, path)
		for other := range kinds {
			if other == is {
				continue
			}
			status, says := to(other, path)
			if want := "is a " + is + " and is not written over by a " + other; status != exitInput || !strings.Contains(says, want) || !slices.Equal(contents(t, path), before) {
				t.Errorf("%s over %s: status %d: %s", other, is, status, says)
			}
		}
		changed := slices.Concat(before, []byte("more\n"))
		if err := os.WriteFile(path, changed, 0o600); err != nil {
			t.Fatal(err)
		}
		if status, says := to(is, path); status != exitInput || !strings.Contains(says, "changed since") || !slices.Equal(contents(t, path), changed) {
			t.Errorf("%s changed: status %d: %s", is, status, says)
		}
	}
}
