package tank

import (
	"os"
	"strings"
	"testing"
)

// TestDoubts asks about what looks like a slip, each at its line and in the words of the
// file, and about nothing in a tank without one.
func TestDoubts(t *testing.T) {
	src, err := os.ReadFile("../../../../testdata/tanks/kerosene.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ from, to, want string }{
		{"", "", ""},
		{`inside_diameter = "250 mm"`, `outside_diameter = "260 mm"`, ""},
		{`thickness = "5 mm"`, `thickness = "5 cm"`, "cylinder.thickness: 5 cm is 0.4 of the inside radius, and the checks of a thin wall end at 0.1; is the unit right?"},
		{`length = "800 mm"`, `length = "80 m"`, "cylinder.length: 80 m is 320 times the diameter; is the unit right?"},
		{`radius = "0 mm"`, "radius = \"0 mm\"\nclock = \"450 deg\"", `port.outlet.clock: 450 deg is more than a turn; the same place is "90 deg"`},
		{`radius = "0 mm"`, "radius = \"0 mm\"\nclock = \"360 deg\"", ""},
		{`long_seam = "long"`, "long_seam = \"long\"\nlong_seam_clock = \"-361 deg\"", `cylinder.long_seam_clock: -361 deg is more than a turn; the same place is "-1 deg"`},
	} {
		text := strings.Replace(string(src), row.from, row.to, 1)
		in, err := Read("a.toml", []byte(text), os.ReadFile)
		if err != nil {
			t.Fatal(err)
		}
		got := Faults(in.Doubts()).Error()
		at, what, _ := strings.Cut(got, ": ")
		if what != row.want || row.want != "" && (!strings.HasPrefix(at, "a.toml:") || strings.HasPrefix(at, "a.toml:1:")) {
			t.Errorf("%s: %q, want %q", row.to, got, row.want)
		}
	}
	thick := strings.Replace(string(src), `thickness = "6 mm"`, `thickness = "6 cm"`, 1)
	if in, err := Read("a.toml", []byte(thick), os.ReadFile); err != nil || len(in.Doubts()) != 1 || in.Doubts()[0].Key != "head.aft.thickness" {
		t.Errorf("a thick head: %v, %v", in.Doubts(), err)
	}
}

// TestExamplesRaiseNoDoubt reads every example tank.
func TestExamplesRaiseNoDoubt(t *testing.T) {
	const folder = "../../../../testdata/tanks/"
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".toml") {
			continue
		}
		src, err := os.ReadFile(folder + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		in, err := Read(f.Name(), src, func(name string) ([]byte, error) { return os.ReadFile(folder + name) })
		if err != nil {
			t.Fatal(err)
		}
		if d := in.Doubts(); len(d) > 0 {
			t.Errorf("%v", Faults(d))
		}
	}
}
