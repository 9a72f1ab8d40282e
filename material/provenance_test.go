package material

import (
	"math"
	"testing"

	"proofsheet/report/check"
)

// TestProvenance: no number that an alloy carries lacks source or how.
func TestProvenance(t *testing.T) {
	counted := 0
	for _, a := range families {
		for _, n := range a.numbers() {
			if math.IsNaN(n.value.Value) {
				if n.value.Note == "" {
					t.Errorf("%s %s %s is missing and does not say why", a.Name, n.what, n.at)
				}
				continue
			}
			counted++
			if n.value.Source.Doc == "" || n.value.Source.How == check.Unstated {
				t.Errorf("%s %s %s: source %+v", a.Name, n.what, n.at, n.value.Source)
			}
		}
		for _, c := range []Curve{a.Modulus, a.Expansion, a.Contraction, a.YieldRatio, a.UltimateRatio} {
			for i := 1; i < len(c.Points); i++ {
				if !(c.Points[i].T > c.Points[i-1].T) {
					t.Errorf("%s: points out of order at %g K", a.Name, c.Points[i].T)
				}
			}
		}
	}
	if counted < 800 {
		t.Errorf("only %d numbers are carried", counted)
	}
	for _, w := range WeldRows() {
		if w.Source.Doc == "" || w.Source.How == check.Unstated || !(w.Yield > 0) || !(w.Ultimate >= w.Yield) || w.Yield > w.ParentYield {
			t.Errorf("weld row %+v", w)
		}
	}
	for r, texts := range ruleTexts {
		for _, text := range texts {
			if text.part == "" || text.text == "" || text.source.Doc == "" || text.source.How == check.Unstated {
				t.Errorf("rule %s: %+v", r, text)
			}
		}
	}
	for r, s := range ruleSources {
		if s.Doc == "" || s.How == check.Unstated || proofSources[r].How == check.Unstated || limitSources[r].How == check.Unstated {
			t.Errorf("rule %s has no source", r)
		}
	}
}

// TestListings: every alloy and rule can be listed, and no row is ragged.
func TestListings(t *testing.T) {
	for _, name := range append([]string{""}, AlloyNames()...) {
		head, rows, err := Listing(name)
		if err != nil || len(rows) == 0 {
			t.Errorf("%q: %v, %d rows", name, err, len(rows))
		}
		for _, r := range rows {
			if len(r) != len(head) && len(r) != 1 { // one cell heads the rows below it
				t.Errorf("%q: ragged row %q", name, r)
			}
		}
	}
	for _, name := range []string{"", "vessel", "vessel-eu", "flight"} {
		if _, rows, err := RuleListing(name); err != nil || len(rows) == 0 {
			t.Errorf("%q: %v", name, err)
		}
	}
	if _, _, err := Listing("nothing"); err == nil {
		t.Error("an unknown alloy was listed")
	}
	if _, _, err := RuleListing("nothing"); err == nil {
		t.Error("an unknown rule was listed")
	}
}

// TestCurveEdges: one step inside and outside a curve, and NaN.
func TestCurveEdges(t *testing.T) {
	c := kelvin(2, check.Source{Doc: "test"}, "", 100, 1, 200, 3)
	for T, want := range map[float64]float64{100: 2, 150: 4, 200: 6} {
		if got, err := c.At(T); err != nil || got != want {
			t.Errorf("%g: %g, %v", T, got, err)
		}
	}
	for _, T := range []float64{math.Nextafter(100, 0), math.Nextafter(200, 300), math.NaN()} {
		if got, err := c.At(T); err == nil || !math.IsNaN(got) {
			t.Errorf("%g: %g", T, got)
		}
	}
}

// TestFindAlloy: by name, and by a designation that says the temper and belongs
// to one alloy.
func TestFindAlloy(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range AlloyNames() {
		if a, ok := FindAlloy(name); !ok || a.Name != name || seen[name] {
			t.Errorf("%s is not found or is there twice", name)
		}
		seen[name] = true
	}
	for name, want := range map[string]string{"1.4301": "304", "EN 1.4404": "316L", "1.4541": "321", "UNS S32205": "2205"} {
		if a, ok := FindAlloy(name); !ok || a.Name != want {
			t.Errorf("%s is not %s", name, want)
		}
	}
	for _, name := range []string{"", "UNS S30400", "EN AW-6061", "6061", "ASTM A666"} {
		if a, ok := FindAlloy(name); ok {
			t.Errorf("%q is taken for %s", name, a.Name)
		}
	}
}
