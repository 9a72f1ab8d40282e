package fluid

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// lines returns the records of one thing in testdata/published/materials.tsv,
// which says where its numbers come from and how they were obtained: thing,
// name, property, unit, how, values.
func lines(t *testing.T, thing string) (out [][]string) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/materials.tsv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		if f := strings.Split(line, "\t"); f[0] == thing && len(f) == 6 {
			out = append(out, f)
		}
	}
	return out
}

// page is all that is listed under a name.
func page(t *testing.T, name string) string {
	t.Helper()
	_, rows, err := Listing(name)
	if err != nil {
		t.Fatal(err)
	}
	var text []string
	for _, r := range rows {
		text = append(text, strings.ReplaceAll(strings.Join(r, "\t"), "\u00a0", " "))
	}
	return strings.Join(text, "\n")
}

// TestEveryPublishedFluidRecord: each number of each published record is
// carried, with how it was obtained, and a reader of the list sees it.
func TestEveryPublishedFluidRecord(t *testing.T) {
	records := lines(t, "fluid")
	if len(records) < 50 {
		t.Fatalf("only %d records", len(records))
	}
	for _, r := range records {
		f, ok := Find(r[1])
		if !ok {
			t.Errorf("%s is not carried", r[1])
			continue
		}
		seen := page(t, f.Name)
		if r[2] == "caution" || r[2] == "formula" {
			if !strings.Contains(seen, r[5]) {
				t.Errorf("%s does not show %q", f.Name, r[5])
			}
			continue
		}
		for _, pair := range strings.Fields(r[5]) {
			at, value, _ := strings.Cut(pair, "=")
			want, err := strconv.ParseFloat(value, 64)
			if err != nil {
				t.Fatal(r, err)
			}
			if !f.states(r[2], at, r[4], want) {
				t.Errorf("%s %s (%s): %s %s is not carried", f.Name, r[2], r[4], pair, r[3])
			}
			if at != "uncertain_percent" && !strings.Contains(seen, fmt.Sprintf("%.6g", want)) {
				t.Errorf("%s %s: %s is not shown", f.Name, r[2], pair)
			}
		}
	}
}

// states reports whether the fluid carries a number in the unit of its record.
func (f *Fluid) states(what, at, how string, want float64) bool {
	same := func(got float64) bool { return math.Abs(got-want) <= 1e-9*math.Abs(want) }
	for name, c := range map[string]struct {
		v    Value
		unit float64 // [SI]
	}{"critical temperature": {f.critical, 1}, "boiling temperature": {f.boiling, 1}, "triple point": {f.freezing, 1}, "critical pressure": {f.criticalPressure, bar}} {
		if name == what {
			return same(c.v.Value/c.unit) && c.v.Source.How.String() == how
		}
	}
	if s := f.slope; s != nil {
		spread := 100 * (s.most - s.least) / (2 * s.typical) // the grade's, in percent
		got, named := map[string]float64{"slope": s.perKelvin, "least": s.least, "most": s.most, "uncertain_percent": spread}[at]
		if T, err := strconv.ParseFloat(at, 64); err == nil && math.Abs(T-s.at) < 0.005 {
			got, named = s.typical, true
		}
		return named && same(got) && s.source.How.String() == how
	}
	c, x, y := curve{}, 1.0, 1.0
	switch what {
	case "density":
		c = f.density
	case "vapour pressure":
		c, y = f.vapor, bar
	case "vapour density":
		c = f.vaporDensity
	case "bulk modulus":
		c, y = f.bulk, gpa
	case "volumetric expansion":
		c, y = f.expansion, 1e-6
	case "density under pressure":
		c, x = f.compressed.density, bar
	case "bulk modulus under pressure":
		c, x, y = f.compressed.bulk, bar, gpa
	}
	X, err := strconv.ParseFloat(at, 64)
	for _, p := range c.points {
		if err == nil && math.Abs(p.x/x-X) < 0.005 && same(p.y/y) && c.source.How.String() == how {
			return true
		}
	}
	return false
}

// TestEveryPublishedCompatibility: each published caution counts for the fluid
// and the metals it names, with its reason and how it is known, and is shown.
func TestEveryPublishedCompatibility(t *testing.T) {
	records := lines(t, "compatibility")
	if len(records) != 25 {
		t.Fatalf("%d records", len(records))
	}
	verdicts := map[string]string{"no": Refused, "caution": Caution, "ok": Satisfied}
	for _, r := range records {
		found := false
		for _, p := range pairings {
			if p.reason != r[5] {
				continue
			}
			found = p.verdict == verdicts[r[3]] && p.source.How.String() == r[4] || found
			for _, name := range p.fluids {
				if !strings.Contains(r[1], name) {
					t.Errorf("%q stands beside %s, published for %s", r[5], name, r[1])
				}
				if name == "HTP" {
					name = "HTP-90"
				}
				if !strings.Contains(page(t, name), p.verdict+": "+p.reason) {
					t.Errorf("%s does not show %q", name, p.reason)
				}
			}
		}
		if !found {
			t.Errorf("%s with %s: %s (%s) is not carried", r[1], r[2], r[5], r[4])
		}
	}
}
