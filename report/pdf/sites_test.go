package pdf

import (
	"math"
	"slices"
	"strings"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report"
	"proofsheet/report/check"
)

// areaCheck is a check of a tube parallel to the axis of a cone, with a wall
// [m]: names and symbols as the calculation gives them.
func areaCheck(t *testing.T, wall float64) check.Result {
	t.Helper()
	w := port.Wall{Surface: port.Cone, Thickness: wall, Radius: 0.2, HalfApex: math.Pi / 4}
	p := port.Port{Name: "feed", OutsideDiameter: 0.0254, TubeWall: 0.00165, Radius: 0.060, Parallel: true,
		Fit: port.Flush, Outside: 0.04, OutsideLeg: 0.003, FullGroove: true}
	r, err := p.Area(w, port.Load{Pressure: 2e6}, port.Strengths{Wall: 80e6, Tube: 80e6, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r.Check("feed")
}

func sitesOf(tables []siteTable) []string {
	var sites []string
	for _, t := range tables {
		for _, row := range t {
			sites = append(sites, row.site)
		}
	}
	return sites
}

// TestBySite: no input of the check is lost, and each row of areas is followed
// by its sum.
func TestBySite(t *testing.T) {
	r := areaCheck(t, 0.0038)
	common, tables := bySite(r.Inputs)
	want := []string{"meridional", "transverse", "meridional whole", "meridional outboard", "meridional inboard",
		"transverse whole", "transverse outboard", "transverse inboard", "outboard", "inboard"}
	if got := sitesOf(tables); !slices.Equal(got, want) {
		t.Fatalf("sites %q, want %q", got, want)
	}
	n, sums := len(common), 0
	for _, table := range tables {
		for _, row := range table {
			n += len(row.values)
			if last := row.values[len(row.values)-1]; last.Symbol == "ΣA" {
				sums++
				n--
				total := 0.0
				for _, q := range row.values {
					if strings.HasPrefix(q.Symbol, "A_") {
						total += q.Value
					}
				}
				if math.Abs(total-last.Value) > 1e-12 {
					t.Errorf("%s: %g together, shown %g", row.site, total, last.Value)
				}
			}
		}
	}
	if n != len(r.Inputs) || sums != 6 {
		t.Errorf("%d of %d inputs, %d sums", n, len(r.Inputs), sums)
	}
	if _, tables := bySite(r.Inputs[:10]); tables != nil {
		t.Error("tables without areas")
	}
}

// TestUsed: a case that does not govern keeps the sites of its own comparison.
func TestUsed(t *testing.T) {
	r := areaCheck(t, 0.0038)
	for _, row := range []struct {
		capacity, note string
		want           []string
	}{
		{r.Capacity.Name, r.Note, []string{"meridional", "meridional outboard"}}, // the weak side of the published example
		{"area available, transverse plane, whole section", "governs: transverse plane, whole section; x", []string{"transverse", "transverse whole"}},
		{"pressure the outboard side carries", "governs: pressure-area method, outboard side; inboard words", []string{"outboard"}},
		{"least wall", "not satisfied whatever the areas: the wall is thinner", nil},
		{"limit along the wall", "not satisfied whatever the areas: the hole reaches, in the meridional plane", []string{"meridional"}},
	} {
		o := r
		o.Capacity.Name, o.Note = row.capacity, row.note
		_, tables := bySite(o.Inputs)
		if got := sitesOf(used(o, tables)); !slices.Equal(got, row.want) {
			t.Errorf("%s: %q, want %q", row.capacity, got, row.want)
		}
	}
}

// TestOneCaseInFull: of three cases the one with the least margin is set with
// every area, wherever it stands; cases that print alike are set once.
func TestOneCaseInFull(t *testing.T) {
	s := &report.Sheet{}
	for i, wall := range []float64{0.0040, 0.0038, 0.0040, 0.0042} {
		r := areaCheck(t, wall)
		r.Case = []string{"one", "two", "three", "four"}[i]
		s.Checks = append(s.Checks, r)
	}
	s.Settle()
	p, err := newPaper(s, 1, false)
	if err != nil {
		t.Fatal(err)
	}
	p.newPage()
	var heads []string
	for _, rs := range p.alike(s.Checks) {
		b := p.lay(rs, true, false)
		areas, attached := 0, false
		for _, l := range b.lines {
			attached = attached || strings.Contains(l.text, "check --json")
			if l.stops != nil && strings.Contains(l.cells[0], " ") {
				areas++
			}
		}
		if full := rs[0].Case == "two"; full != (areas == 6) || full == attached {
			t.Errorf("case %s: %d rows of areas, attachment named: %v", rs[0].Case, areas, attached)
		}
		for _, l := range b.lines {
			if l.right != "" {
				heads = append(heads, l.text)
			}
		}
	}
	if want := []string{"one, three", "two", "four"}; !slices.Equal(heads, want) {
		t.Errorf("set for %q, want %q", heads, want)
	}
}

// A list of symbols is not broken by the end of a page, and its title stays with it;
// one too long for that is broken.
func TestListsOfSymbolsStayWhole(t *testing.T) {
	b := block{head: 2, height: 2 * tall}
	for range 30 {
		b.lines = append(b.lines, line{size: small})
	}
	each := b.lines[0].height()
	some := int(listWhole/each) - 1
	list := block{lines: b.lines[:b.head+some], head: b.head}
	list.keep(b.head)
	if got, want := together(b.lines[b.head:]), float64(some)*each; math.Abs(got-want) > 1e-9 {
		t.Errorf("%g mm stay together, want %g", got, want)
	}
	if got := b.least(1000); got < float64(b.head+some)*each-1e-9 {
		t.Errorf("a check is begun on %g mm, its list ends at %g", got, float64(b.head+some)*each)
	}
	long := block{head: 2}
	for range 2 * some {
		long.lines = append(long.lines, line{size: small})
	}
	long.keep(long.head)
	if got := together(long.lines[long.head:]); math.Abs(got-each) > 1e-9 {
		t.Errorf("a list of more than half a page is held together: %g mm", got)
	}
}
