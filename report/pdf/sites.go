package pdf

import (
	"slices"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// A check of areas repeats the same quantities at many sites of the section:
// they are set as tables, a row a site.
//
//   - site: the words before a quantity's own name, "meridional outboard".
//   - areas: eight quantities in a row of the symbols in areaSymbols, the first
//     named as its site with "required". They teach the words of the sites.
//
// Inputs in which no areas are found are listed as those of any other check.

var areaSymbols = []string{"A", "A_1", "A_2", "A_3", "A_41", "A_42", "A_43", "A_5"}

// A siteRow is what a check holds of one site.
type siteRow struct {
	site   string
	values []check.Quantity
}

// A siteTable holds rows of which each has the symbols of the longest, or its
// last ones.
type siteTable []siteRow

// longest returns the row that names the columns.
func (t siteTable) longest() siteRow {
	return slices.MaxFunc(t, func(a, b siteRow) int { return len(a.values) - len(b.values) })
}

// areasAt returns the site whose areas begin the inputs, or "".
func areasAt(in []check.Quantity) string {
	if len(in) < len(areaSymbols) {
		return ""
	}
	site, ok := strings.CutSuffix(in[0].Name, " required")
	for i, symbol := range areaSymbols {
		ok = ok && in[i].Symbol == symbol && strings.HasPrefix(in[i].Name, site+" ")
	}
	if !ok {
		return ""
	}
	return site
}

// siteWords returns the words that sites are named with, those of planes
// first, and of each site's last word; both empty where there are no areas.
func siteWords(in []check.Quantity) (planes, sides []string) {
	for i := range in {
		if words := strings.Fields(areasAt(in[i:])); len(words) == 2 {
			planes, sides = append(planes, words[0]), append(sides, words[1])
		}
	}
	return planes, sides
}

// bySite parts the inputs of a check of areas into those of no site and tables
// of the rest, with the sum of each row of areas; no table where there are no
// areas.
func bySite(in []check.Quantity) (common []check.Quantity, tables []siteTable) {
	planes, sides := siteWords(in)
	known := slices.Concat(planes, sides)
	var rows []siteRow
	for i, q := range in {
		site, own := splitName(q.Name, known)
		if site == "" {
			common = append(common, q)
			continue
		}
		if n := len(rows); n == 0 || rows[n-1].site != site {
			rows = append(rows, siteRow{site: site})
		}
		row := &rows[len(rows)-1]
		q.Name = own
		row.values = append(row.values, q)
		if at := i + 1 - len(areaSymbols); at >= 0 && areasAt(in[at:]) == site {
			row.values = append(row.values, sum(row.values[len(row.values)-len(areaSymbols)+1:]))
		}
	}
	for _, row := range rows {
		tables = join(tables, row)
	}
	return common, tables
}

// splitName parts a name into its leading words of sites and the rest.
func splitName(name string, known []string) (site, own string) {
	words := strings.Fields(name)
	n := 0
	for n < len(words)-1 && n < 2 && slices.Contains(known, words[n]) {
		n++
	}
	return strings.Join(words[:n], " "), strings.Join(words[n:], " ")
}

// sum returns the areas there are, added up.
func sum(areas []check.Quantity) check.Quantity {
	total := 0.0
	for _, a := range areas {
		total += a.Value
	}
	return check.M2("ΣA", "A_1 to A_5 together", total)
}

// join adds a row to the table whose columns it has, or as a table of its own.
func join(tables []siteTable, row siteRow) []siteTable {
	for i, t := range tables {
		if ends(t.longest().values, row.values) || ends(row.values, t.longest().values) {
			tables[i] = append(t, row)
			return tables
		}
	}
	return append(tables, siteTable{row})
}

// ends reports whether b has the last symbols of a.
func ends(a, b []check.Quantity) bool {
	skip := len(a) - len(b)
	return skip >= 0 && slices.EqualFunc(a[skip:], b, func(p, q check.Quantity) bool { return p.Symbol == q.Symbol && p.Unit == q.Unit })
}

// used keeps of the tables the sites that the governing comparison of a check
// names: in its capacity, or at the head of its note. A comparison in a plane
// takes that plane's rows, one of a side in no plane the rows of the side.
func used(r check.Result, tables []siteTable) []siteTable {
	planes, sides := siteWords(r.Inputs)
	head, _, _ := strings.Cut(r.Note, ";")
	named := strings.FieldsFunc(r.Capacity.Name+" "+head, func(c rune) bool { return strings.ContainsRune(" ,;:", c) })
	among := func(words []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(named, w) })
	}
	var out []siteTable
	for _, t := range tables {
		var kept siteTable
		for _, row := range t {
			words := strings.Fields(row.site)
			foreign := slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(named, w) })
			if !foreign && slices.Contains(planes, words[0]) == among(planes) && (len(words) == 1 || among(sides)) {
				kept = append(kept, row)
			}
		}
		if len(kept) > 0 {
			out = append(out, kept)
		}
	}
	return out
}

// sites sets the inputs of a check of areas: all of them where it is full, for
// the case that governs, and for another case what its governing comparison used.
// It reports false for any other check. Symbols that are named at another check, as
// it says, are not named again.
func (p *paper) sites(b *block, r check.Result, as string, full bool) bool {
	common, tables := bySite(r.Inputs)
	if len(tables) == 0 {
		return false
	}
	if !full {
		tables = used(r, tables)
	}
	text := p.substituted(common)
	if as != "" {
		text = p.numbers(common) + as
	}
	p.add(b, line{text: text, indent: 8, indices: true, size: small})
	for _, t := range tables {
		p.siteTable(b, t, full && as == "")
	}
	if !full {
		p.add(b, line{text: "All areas of this case stand in the data of the sheet, “check --json”; the symbols are those of the case with the least margin.", indent: 8, size: small})
	}
	return true
}

// governs reports whether a check has the least margin of its id, the first of
// equals, or is the only one.
func (p *paper) governs(r check.Result) bool {
	if p.least == nil {
		p.least = map[string]check.Result{}
		for _, g := range p.groups() {
			if i := check.Governing(g.shown); i >= 0 {
				p.least[g.shown[i].ID] = g.shown[i]
			}
		}
	}
	l, ok := p.least[r.ID]
	return !ok || l.Case == r.Case && at(l) == at(r)
}

// groups returns the checks by id.
func (p *paper) groups() []group {
	if p.shared == nil {
		return grouped(p.sheet.Checks)
	}
	return p.shared.groups
}

const (
	siteIndent = 8.0 // [mm]
	siteName   = 25.0
	siteSize   = small - 0.5 // [pt]
)

// siteTable sets one table: symbols, units, a line for each site, and with
// names what the symbols mean.
func (p *paper) siteTable(b *block, t siteTable, names bool) {
	columns := t.longest().values
	step := min(16, (p.inner()-siteIndent-siteName)/float64(len(columns)))
	text := line{indent: siteIndent, indices: true, size: siteSize, cells: []string{""}, stops: []float64{0}}
	for i := range columns {
		text.stops = append(text.stops, siteName+float64(i+1)*step)
	}
	add := func(first string, cells []string) {
		l := text
		l.cells = append([]string{first}, cells...)
		b.lines = append(b.lines, l)
		b.height += l.size * leading
	}
	symbols, unit, meaning := make([]string, len(columns)), make([]string, len(columns)), make([]string, len(columns))
	show := make([]report.Display, len(columns))
	for i, q := range columns {
		show[i] = report.DisplayUnit(q.Unit, t.most(i), p.sheet.Units)
		symbols[i], unit[i], meaning[i] = q.Symbol, show[i].Unit, glued(q.Symbol)+string(tie)+q.Name
	}
	add("", symbols)
	add("", unit)
	for _, row := range t {
		cells := make([]string, len(columns))
		skip := len(columns) - len(row.values)
		for i, q := range row.values {
			cells[skip+i] = report.Plain(show[skip+i].Of(q.Value))
		}
		add(row.site, cells)
	}
	if names {
		p.add(b, line{text: strings.Join(meaning, ", "), indent: siteIndent, indices: true, size: small})
	}
}

// most returns the largest size in a column, counted as in the longest row [SI
// unit of the column].
func (t siteTable) most(column int) float64 {
	most := 0.0
	for _, row := range t {
		if i := column - (len(t.longest().values) - len(row.values)); i >= 0 {
			most = max(most, row.values[i].Value, -row.values[i].Value)
		}
	}
	return most
}
