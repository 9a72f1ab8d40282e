package assess

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/blank"
)

// blanksOf returns the blanks of an example tank with words replaced.
func blanksOf(t *testing.T, name string, pairs ...string) map[string]blank.Blank {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("../../../../testdata/tanks", name))
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%s has no %q", name, pairs[i])
		}
		text = strings.ReplaceAll(text, pairs[i], pairs[i+1])
	}
	in, err := tank.Read(name, []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	all, err := Blanks(in, blank.Options{})
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]blank.Blank{}
	for _, b := range all {
		if _, twice := out[b.Name]; twice {
			t.Errorf("two parts are named %s", b.Name)
		}
		out[b.Name] = b
	}
	return out
}

func says(b blank.Blank) string { return strings.Join(append(b.Cautions, b.Notes...), "\n") }

// length returns a dimension by its symbol [mm].
func length(b blank.Blank, symbol string) float64 {
	for _, q := range b.Measures {
		if q.Symbol == symbol {
			return q.Value * 1e3
		}
	}
	return math.NaN()
}

// The plates are those of the nominal walls, by hand: mid-wall radius 200 + 4; rim of
// the cone (200 + 6 cos 45°)/sin 45°, tip (30 + 6 cos 45°)/sin 45°.
func TestBlanksOfTheDemonstrationTank(t *testing.T) {
	all := blanksOf(t, "demo.toml")
	for _, row := range []struct {
		part, symbol string
		want         float64 // [mm]
	}{
		{"cylinder-1", "A–B", 2 * math.Pi * 204}, {"cylinder-2", "A–D", 600},
		{"head-aft", "R", 200*math.Sqrt2 + 6}, {"head-forward", "r", 30*math.Sqrt2 + 6},
		{"tube-outlet", "W", math.Pi * 42.4},
	} {
		if got := length(all[row.part], row.symbol); math.Abs(got-row.want) > 1e-9 {
			t.Errorf("%s %s: %g mm, want %g", row.part, row.symbol, got, row.want)
		}
	}
	if !strings.Contains(all["tube-outlet"].Title, "outlet-1, outlet-2") {
		t.Errorf("the template of a group is titled %q", all["tube-outlet"].Title)
	}
}

// Every part that has no flat blank says so, and none is drawn by guess.
func TestBlanksOfOtherParts(t *testing.T) {
	seamless := blanksOf(t, "demo.toml", `long_seam = "long"`, `long_seam = "none"`, "long_seam_clock = \"180 deg\"\n", "", `segment_seam = "cone-seam"`, `segment_seam = "none"`, "segment_seam_clock = \"0 deg\"\n", "")
	tip := blanksOf(t, "demo.toml", `tip = { diameter = "60 mm", close = "plate", thickness = "14 mm" }`, `tip = { diameter = "27 mm", close = "port", port = "vent" }`,
		"[head.aft]\nshape = \"cone\"", "[head.aft]\nshape = \"cone\"", `close = "port", port = "vent" }`+"\n\n[head.forward]", `close = "neck" }`+"\n\n[head.forward]",
		`name = "vent"`+"\non = \"forward\"\naxis = \"parallel\"\nradius = \"110 mm\"", `name = "vent"`+"\non = \"forward\"\naxis = \"parallel\"")
	toricone := blanksOf(t, "demo.toml", `shape = "cone"`, "shape = \"toricone\"\nknuckle_radius = \"40 mm\"\nforming_thinning = 0.1")
	seam := blanksOf(t, "port-at-rim.toml") // both at clock 0
	dome := blanksOf(t, "kerosene.toml")
	normal := blanksOf(t, "kerosene.toml", "axis = \"parallel\"\nradius = \"0 mm\"", "axis = \"normal\"\nradius = \"40 mm\"",
		`weld = { outside_leg = "4 mm", inside_leg = "4 mm", groove = "full" }`, "weld = { groove = \"full\" }\npad = { outside_diameter = \"60 mm\", thickness = \"3 mm\", leg = \"2 mm\" }")
	for _, row := range []struct {
		name  string
		b     blank.Blank
		drawn bool
		want  string
	}{
		{"drawn tube", seamless["cylinder"], false, "drawn or extruded tube"},
		{"cone of one piece", seamless["head-aft"], false, "one piece"},
		{"tube at the tip", tip["tube-vent"], false, "closes the cone's tip"},
		{"cone with a tube at its tip", tip["head-forward"], true, "27 mm on the inside face"},
		{"plain cone of a toricone", toricone["head-aft"], true, "up to where the knuckle begins"},
		{"torisphere", dome["head-aft"], true, "common practice"},
		{"tube normal to a dome", normal["tube-outlet"], false, "fit it in place"},
		{"pad on a dome", normal["pad-outlet"], false, "cannot be laid flat"},
		{"tube on the axis", dome["tube-outlet"], false, "cut it square"},
	} {
		if row.b.Err != nil || len(row.b.Cut) > 0 != row.drawn || !strings.Contains(says(row.b), row.want) {
			t.Errorf("%s: %v, %d cuts, %s", row.name, row.b.Err, len(row.b.Cut), says(row.b))
		}
	}
	if b := seam["head-aft"]; b.Err == nil || !strings.Contains(b.Err.Error(), "crosses the seam of the cone") || len(b.Cut) > 0 {
		t.Errorf("a hole on the seam: %v", b.Err)
	}
}

func TestBlanksOfAPadOverASeam(t *testing.T) {
	all := blanksOf(t, "demo.toml", `clock = "120 deg"`, `clock = "26 deg"`, `weld = { outside_leg = "8 mm", inside_leg = "5 mm", groove = "full" }`+"\n\n[[port]]\nname = \"vent\"",
		`weld = { outside_leg = "8 mm", inside_leg = "5 mm", groove = "full" }`+"\npad = { outside_diameter = \"110 mm\", thickness = \"8 mm\", leg = \"5 mm\" }\n\n[[port]]\nname = \"vent\"")
	if b := all["head-aft"]; b.Err != nil || !strings.Contains(says(b), "the pad of port outlet-1 lies over the seam of the cone") {
		t.Errorf("%v, %s", b.Err, says(b))
	}
	if b := all["pad-outlet"]; b.Err != nil || len(b.Cut) != 2 {
		t.Errorf("the pad: %v, %d cuts", b.Err, len(b.Cut))
	}
}

// A bolted cover is drawn with its bolt holes, of a head and of a port; its edge, which
// the tank file does not give, is scribed and not cut.
func TestCoversAreDrawn(t *testing.T) {
	all := blanksOf(t, "bolted.toml")
	for name, row := range map[string]struct {
		want string
		cuts int
	}{
		"head-forward": {"16 holes of at most 12.5 mm on a circle of 250 mm", 16},
		"cover-hatch":  {"18 mm nominal under its grooves, 8 holes of at most 9 mm on a circle of 96 mm", 8},
	} {
		b, ok := all[name]
		if !ok || b.Err != nil || !strings.Contains(says(b), "a bolted cover: its outside diameter is not in the tank file") || !strings.Contains(says(b), row.want) {
			t.Errorf("%s: %v %s", name, b.Err, says(b))
		}
		if len(b.Cut) != row.cuts {
			t.Errorf("%s: %d cuts, want %d", name, len(b.Cut), row.cuts)
		}
	}
	if _, ok := all["cover-sensor"]; ok {
		t.Error("a boss has no cover")
	}
}
