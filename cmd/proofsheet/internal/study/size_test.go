package study_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

const tanks = "../../../../testdata/tanks/"

// read returns a tank of testdata with parts of its text replaced.
func read(t testing.TB, name string, replace ...string) *tank.Tank {
	t.Helper()
	path := filepath.Join(tanks, name)
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(replace...).Replace(string(src))
	got, err := tank.Read(path, []byte(text), func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(tanks, name)) })
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func size(t testing.TB, in *tank.Tank) *study.Plan {
	t.Helper()
	p, err := study.Size(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// thin is the demonstration tank with walls and tubes that do not hold.
var thin = []string{
	`thickness = "8 mm"`, `thickness = "4 mm"`, `thickness = "12 mm"`, `thickness = "5 mm"`,
	`wall = "4 mm"`, `wall = "2 mm"`, `wall = "3.6 mm"`, `wall = "1.6 mm"`,
}

// TestSizeHolds sizes a tank that is too thin everywhere: the file that is
// written, assessed as a whole, has no check that is not satisfied.
func TestSizeHolds(t *testing.T) {
	in := read(t, "demo.toml", thin...)
	p := size(t, in)
	if len(p.Open) > 0 || !p.Changed() || !(p.Added > 0) {
		t.Fatalf("open %v, changed %t, added %g kg", p.Open, p.Changed(), p.Added)
	}
	after, err := in.Again(p.Text)
	if err != nil {
		t.Fatal(err)
	}
	s, err := assess.Assess(after, assess.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range s.Checks {
		if r.Status() == check.NotSatisfied {
			t.Errorf("%s@%s is not satisfied", r.ID, r.Case)
		}
	}
}

// TestSizeIdempotent sizes what has been sized: nothing changes.
func TestSizeIdempotent(t *testing.T) {
	in := read(t, "demo.toml", thin...)
	first := size(t, in)
	again, err := in.Again(first.Text)
	if err != nil {
		t.Fatal(err)
	}
	second := size(t, again)
	if second.Changed() || second.Added != 0 || !bytes.Equal(second.Text, first.Text) {
		t.Errorf("changed again: %+v", second.Rows)
	}
}

// TestSizeLeastWall walks the stock by hand: the wall chosen for the cylinder
// holds, the next thinner one does not.
func TestSizeLeastWall(t *testing.T) {
	in := read(t, "kerosene.toml", `thickness = "5 mm"`, `thickness = "1.5 mm"`)
	p := size(t, in)
	if len(p.Rows[0].Changes) != 1 {
		t.Fatalf("changes %+v, want one", p.Rows[0].Changes)
	}
	var at int
	for i, wall := range p.Stock {
		if fmt.Sprintf("%q", study.Length(wall)) == p.Rows[0].Changes[0].Value {
			at = i
		}
	}
	for i, want := range map[int]bool{at: true, at - 1: false} {
		thinner, err := in.With("cylinder.thickness", study.Length(p.Stock[i]))
		if err != nil {
			t.Fatal(err)
		}
		tr, err := assess.NewTrial(thinner)
		if err != nil {
			t.Fatal(err)
		}
		holds := true
		results := tr.Proof("cylinder")
		tr.Part("cylinder", func(r check.Result) bool { results = append(results, r); return true })
		for _, r := range results {
			holds = holds && r.Status() != check.NotSatisfied
		}
		if holds != want {
			t.Errorf("cylinder of %s: holds %t, want %t", study.Length(p.Stock[i]), holds, want)
		}
	}
}

// TestThinnerWallHolds writes the thinnest walls that are said to do, one at a
// time: no check fails with any of them, its neighbours' joints included.
func TestThinnerWallHolds(t *testing.T) {
	in := read(t, "demo.toml")
	tried := 0
	for _, r := range size(t, in).Rows {
		if strings.HasPrefix(r.Part, "port.") || !(r.Least < r.Wall) {
			continue
		}
		tried++
		thin, err := in.With(r.Part+".thickness", study.Length(r.Least))
		if err != nil {
			t.Fatal(err)
		}
		checks, err := assess.Checks(thin)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range checks {
			if c.Status() == check.NotSatisfied {
				t.Errorf("%s of %s: %s@%s is not satisfied", r.Part, study.Length(r.Least), c.ID, c.Case)
			}
		}
	}
	if tried == 0 {
		t.Error("no wall was tried")
	}
}

// TestSizeLeavesWhatMetalDoesNotCure has a port across the rim of its crown.
func TestSizeLeavesWhatMetalDoesNotCure(t *testing.T) {
	p := size(t, read(t, "port-at-rim.toml"))
	if len(p.Open) == 0 {
		t.Fatal("a port at the rim was sized away")
	}
	for _, r := range p.Rows {
		if r.Part == "port.feed" && (!strings.Contains(r.Why, "move it") || len(r.Changes) > 0) {
			t.Errorf("port.feed: %q, %+v", r.Why, r.Changes)
		}
	}
}

// TestSizeUnmade has checks that are not made: their part is told no wall, neither a thinner
// one that would do nor a thicker one where another check of it fails, and one that is made
// whole gets its answer.
func TestSizeUnmade(t *testing.T) {
	for _, row := range []struct {
		what    string
		replace []string
	}{
		{"as it is", nil},
		{"too thin", []string{`thickness = "5 mm"`, `thickness = "1 mm"`}},
	} {
		p := size(t, read(t, "bolted.toml", row.replace...))
		for _, r := range p.Rows {
			unmade := slices.ContainsFunc(p.NotMade, func(id string) bool { return strings.HasPrefix(id, r.Part+"/") })
			switch {
			case unmade && (len(r.Changes) > 0 || !math.IsNaN(r.Least) || r.Why == ""):
				t.Errorf("%s: %s has checks that are not made: %+v", row.what, r.Part, r)
			case !unmade && r.Status == check.Satisfied && r.Why != "":
				t.Errorf("%s: %s is made whole: %+v", row.what, r.Part, r)
			}
		}
		if cylinder := p.Rows[0]; !strings.HasPrefix(cylinder.Why, "cannot be sized: cylinder/compression is not assessed: ") || row.replace != nil && cylinder.Status != check.NotSatisfied {
			t.Errorf("%s: the cylinder tries nothing: %+v", row.what, cylinder)
		}
	}
}

// TestSizeStock takes the walls from the file, and says when none does.
func TestSizeStock(t *testing.T) {
	demo := append([]string{"[proof]", "[stock]\nthickness = [\"3 mm\", \"4.5 mm\"]\n\n[proof]"}, thin...)
	p := size(t, read(t, "demo.toml", demo...))
	if !p.Given || len(p.Stock) != 2 {
		t.Errorf("stock %v, given %t", p.Stock, p.Given)
	}
	if row := p.Rows[0]; !strings.Contains(row.Why, "nothing in the stock") {
		t.Errorf("cylinder: %+v", row)
	}
	if len(p.Open) == 0 {
		t.Error("nothing is left open")
	}
}

// TestSizeMonotone raises the pressure: the sized tank never gets lighter. Both
// are compared by the mass added to one and the same thin tank.
func TestSizeMonotone(t *testing.T) {
	if f := flag.Lookup("rapid.checks"); f.Value.String() == f.DefValue { // each draw sizes two tanks; a gate must not depend on the draw
		for name, value := range map[string]string{"rapid.checks": "6", "rapid.seed": "20260131"} {
			f := flag.Lookup(name)
			if err := f.Value.Set(value); err != nil {
				t.Fatal(err)
			}
			defer f.Value.Set(f.DefValue)
		}
	}
	compared := 0
	rapid.Check(t, func(rt *rapid.T) {
		low := rapid.IntRange(2, 15).Draw(rt, "bar")
		high := low + rapid.IntRange(1, 15).Draw(rt, "more")
		across := rapid.IntRange(250, 450).Draw(rt, "diameter")
		mass := func(bar int) float64 {
			in := read(t, "kerosene.toml", `meop = "10 bar"`, fmt.Sprintf(`meop = "%d bar"`, bar), `relief = "9 bar"`, fmt.Sprintf(`relief = "%g bar"`, 0.9*float64(bar)),
				`ullage_pressure = "10 bar"`, fmt.Sprintf(`ullage_pressure = "%d bar"`, bar), `inside_diameter = "250 mm"`, fmt.Sprintf(`inside_diameter = "%d mm"`, across),
				`thickness = "5 mm"`, `thickness = "2 mm"`, `thickness = "6 mm"`, `thickness = "2 mm"`, `wall = "4 mm"`, `wall = "1.5 mm"`,
				"[proof]", "[stock]\nthickness = [\"3 mm\", \"4 mm\", \"6 mm\", \"8 mm\", \"12 mm\"]\n\n[proof]")
			p := size(t, in)
			if len(p.Open) > 0 {
				rt.Skip("nothing in the stock does")
			}
			return p.Added
		}
		a, b := mass(low), mass(high)
		if b < a-1e-9 {
			rt.Errorf("%d bar adds %.6f kg, %d bar %.6f kg", low, a, high, b)
		}
		if b > a {
			compared++
		}
	})
	if compared == 0 {
		t.Error("no two sizes differed: the drawing tries nothing")
	}
}

// BenchmarkSize fits twelve ports of one head, in two rings, that are too thin; the
// demonstration tank's own two outlets make room for them.
func BenchmarkSize(b *testing.B) {
	in := read(b, "demo.toml",
		"name = \"outlet\"\non = \"aft\"", "name = \"outlet\"\non = \"forward\"", "clock = \"120 deg\"\ncount = 2", "clock = \"0 deg\"\ncount = 1",
		"[support]", ring("a", 95, 6, 0)+ring("b", 150, 6, 30)+"[support]")
	for b.Loop() {
		if p, err := study.Size(in); err != nil || !p.Changed() || len(p.Open) > 0 {
			b.Fatalf("%v %+v", err, p)
		}
	}
}

// ring writes ports equally spaced on the aft head.
func ring(name string, radius, count, clock int) string {
	return fmt.Sprintf(`[[port]]
name = "ring-%s"
on = "aft"
radius = "%d mm"
clock = "%d deg"
count = %d
tube = { outside_diameter = "16 mm", wall = "1.2 mm", under_tolerance = "0.15 mm", material = "plate", seam = "none" }
outside = "30 mm"
weld = { outside_leg = "3 mm", groove = "full" }

`, name, radius, clock, count)
}
