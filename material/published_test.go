package material

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"proofsheet/report/check"
)

// A record is one line of testdata/published/materials.tsv, which says where
// its numbers come from and how they were obtained.
type record struct {
	thing, name, what, unit, how, values string
}

// point is one number of a record at a point of its table.
type point struct {
	at   string
	want float64 // in the unit of the record
}

func published(t *testing.T, things ...string) (out []record) {
	t.Helper()
	text, err := os.ReadFile("../testdata/published/materials.tsv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		f := strings.Split(line, "\t")
		if len(f) != 6 {
			if !strings.HasPrefix(line, "#") {
				t.Fatalf("%d cells: %q", len(f), line)
			}
			continue
		}
		for _, thing := range things {
			if f[0] == thing {
				out = append(out, record{f[0], f[1], f[2], f[3], f[4], f[5]})
			}
		}
	}
	return out
}

func (r record) points(t *testing.T) (out []point) {
	t.Helper()
	for _, pair := range strings.Fields(r.values) {
		at, value, _ := strings.Cut(pair, "=")
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			t.Fatalf("%+v: %v", r, err)
		}
		out = append(out, point{at, v})
	}
	return out
}

// page is all that is listed under a name, for looking up what a reader sees.
func page(t *testing.T, name string) string {
	t.Helper()
	_, rows, err := Listing(name)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, r := range rows {
		lines = append(lines, strings.ReplaceAll(strings.Join(r, "\t"), "\u00a0", " "))
	}
	return strings.Join(lines, "\n")
}

// TestEveryPublishedAlloyRecord: each number of each published record is
// carried, with how it was obtained, and a reader of the list sees it.
func TestEveryPublishedAlloyRecord(t *testing.T) {
	records := published(t, "alloy")
	if len(records) < 330 {
		t.Fatalf("only %d records", len(records))
	}
	for _, r := range records {
		a, ok := FindAlloy(r.name)
		if !ok {
			t.Errorf("%s is not carried", r.name)
			continue
		}
		seen := page(t, a.Name)
		switch r.what {
		case "caution":
			if !strings.Contains(seen, r.values) {
				t.Errorf("%s does not show the caution %q", r.name, r.values)
			}
			continue
		case "range of use":
			if got := fmt.Sprintf("%g=%g", a.LeastTemperature, a.MostTemperature); got != r.values {
				t.Errorf("%s is for %s K, published %s", r.name, got, r.values)
			}
			continue
		}
		for _, p := range r.points(t) {
			if n := r.find(a, p); n == nil {
				t.Errorf("%s %s (%s): %s = %g %s is not carried", r.name, r.what, r.how, p.at, p.want, r.unit)
			} else if text := fmt.Sprintf("%.6g", p.want); !strings.Contains(seen, text) || !strings.Contains(seen, n.value.Source.Doc) {
				t.Errorf("%s %s: %s from %s is not shown", r.name, r.what, text, n.value.Source.Doc)
			}
		}
	}
}

// find returns the number of the alloy that the record states at p.
func (r record) find(a *Alloy, p point) *number {
	names := map[string][]string{ // where the table calls it otherwise
		"hot ratio": {"yield ratio", "ultimate ratio"}, "welded yield ratio": {"welded over parent strength"}, "welded ultimate ratio": {"welded over parent strength"},
	}[strings.TrimSuffix(r.what, " at temperature")]
	if names == nil {
		names = []string{strings.TrimSuffix(r.what, " at temperature")}
	}
	for _, n := range a.numbers() {
		for _, name := range names {
			if n.what == name && math.Abs(n.value.Value/n.unit-p.want) <= 1e-9*math.Abs(p.want) && n.isAt(p.at) && n.value.Source.How.String() == r.how {
				return &n
			}
		}
	}
	return nil
}

// isAt reports whether the number stands at a point of the record.
func (n number) isAt(at string) bool {
	least, rest, span := strings.Cut(at, "..")
	if span {
		most, basis, _ := strings.Cut(rest, "/")
		return strings.Contains(n.at, least+" to "+most+" mm") && strings.Contains(n.at, basisWords(basis))
	}
	if at == "-" {
		return n.T == 0
	}
	T, err := strconv.ParseFloat(at, 64)
	return err == nil && math.Abs(n.T-T) < 0.005
}

// TestEveryPublishedWeldRecord: the same for strength across a weld, of metals
// that are carried and of those that are shown only.
func TestEveryPublishedWeldRecord(t *testing.T) {
	records := published(t, "weld")
	if len(records) != len(WeldRows()) {
		t.Errorf("%d records, %d rows", len(records), len(WeldRows()))
	}
	for _, r := range records {
		found := false
		for _, w := range WeldRows() {
			if w.Kind != r.what || strings.TrimSuffix(w.Metal+" "+w.Product, " any") != r.name || w.Source.How.String() != r.how {
				continue
			}
			found = true
			for _, p := range r.points(t) {
				got := map[string]float64{"most_mm": w.MostThickness / mm, "parent_yield": w.ParentYield / mpa, "parent_ultimate": w.ParentUltimate / mpa,
					"parent_elongation": w.ParentElongation / percent, "yield": w.Yield / mpa, "ultimate": w.Ultimate / mpa, "elongation": w.Elongation / percent,
					"yield_ratio": w.YieldRatio, "ultimate_ratio": w.UltimateRatio}[p.at]
				if !(math.Abs(got-p.want) <= 1e-9*p.want) {
					t.Errorf("%s %s: %s is %g, published %g", r.name, r.what, p.at, got, p.want)
				}
				if !strings.Contains(page(t, w.Metal), fmt.Sprintf("%.6g", p.want)) {
					t.Errorf("%s does not show %s = %g", w.Metal, p.at, p.want)
				}
			}
		}
		if !found {
			t.Errorf("%s, %s (%s) is not carried", r.name, r.what, r.how)
		}
	}
}

// TestZonesAreTheRows: what is used at a weld is one of the published rows, or
// says that it was recalled or is practice.
func TestZonesAreTheRows(t *testing.T) {
	for _, a := range families {
		for _, z := range a.Zones {
			if z.Kind == annealedZone || z.Yield.Source.How == check.Memory {
				continue
			}
			found := false
			for _, w := range WeldRows() {
				found = found || w.Kind == z.Kind && w.Yield == z.Yield.Value && w.Ultimate == z.Ultimate.Value
			}
			if !found {
				t.Errorf("%s: %s %s is no published row", a.Name, z.Kind, z.Product)
			}
		}
	}
}
