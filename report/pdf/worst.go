package pdf

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// worstShown is how many of the least margins stand on page 1.
const worstShown = 5

// worstMargins returns of checks, worst first, those made with the least margins, one
// of an id.
func worstMargins(worst []check.Result) (out []check.Result) {
	seen := map[string]bool{}
	for _, r := range worst {
		if len(out) == worstShown {
			break
		}
		made := r.Status() == check.Satisfied || r.Status() == check.NotSatisfied
		if made && !seen[r.ID] {
			seen[r.ID] = true
			out = append(out, r)
		}
	}
	return out
}

// notAssessed names what was not assessed, each id once.
func notAssessed(rs []check.Result) string {
	var ids []string
	for _, r := range rs {
		if r.Status() == check.NotAssessed && !slices.Contains(ids, r.ID) {
			ids = append(ids, r.ID)
		}
	}
	if len(ids) == 0 {
		return "Every check that arises was made."
	}
	return strings.Join(ids, ", ")
}

// matter are the ends of keys whose value, taken for one that was left out, bears on
// a verdict.
var matter = []string{"corrosion", "people", "examination", "accumulation", "least_ullage", "temperature", "efficiency", "process", "cycles", "rule", "gauge_tolerance"}

// taken names the values taken for keys left out that bear on a verdict, keys of one
// end and value together.
func (p *paper) taken() string {
	var heads []string
	where := map[string][]string{}
	for _, d := range p.sheet.Defaults {
		at := strings.LastIndex(d.Name, ".")
		key := d.Name[at+1:]
		if !slices.Contains(matter, key) {
			continue
		}
		head := key + " " + d.Value
		if where[head] == nil {
			heads = append(heads, head)
		}
		where[head] = append(where[head], d.Name[:max(at, 0)])
	}
	for i, head := range heads {
		places := where[head]
		if n := len(places) - 4; n > 0 {
			places = append(places[:4:4], fmt.Sprintf("%d more", n))
		}
		heads[i] = head + " (" + strings.Join(places, ", ") + ")"
	}
	return strings.Join(heads, "; ")
}

// worstRow is the height of a row of the table of page 1 [mm].
const worstRow = small*leading + 0.4

// openWidth is the width of the list of what was not assessed [mm].
func (p *paper) openWidth() float64 { return 0.34 * p.inner() }

// openLines wraps what was not assessed, no more lines than fit beside the table.
func (p *paper) openLines() []string {
	p.font("", tiny)
	lines := p.wrap(p.shared.unmade, p.openWidth())
	most := worstShown + 3
	if len(lines) > most {
		lines = append(lines[:most-1], "… and more: see the overview.")
	}
	return lines
}

// worstHeight returns the height of the table of the worst margins and of the list
// beside it [mm].
func (p *paper) worstHeight() float64 {
	rows := max(float64(len(p.shared.least))*worstRow, float64(len(p.openLines()))*tiny*leading)
	return 7 + max(rows, worstRow) + 2
}

// against compares a demand with a capacity, as they are printed.
func against(r check.Result, demand, capacity string) string {
	text := demand + " against " + capacity
	if r.Factor != 1 {
		text += ", factor " + factor(r)
	}
	return text
}

// worst sets the least margins, and beside them what has none.
func (p *paper) worst(h float64) {
	p.need(h)
	wide := p.inner() - p.openWidth() - 6
	x := left + wide + 6
	p.font("B", body+1)
	p.put(left, p.y+4, "Least margins")
	p.put(x, p.y+4, "Not assessed")
	y := p.y + 6.5
	for i, r := range p.shared.least {
		base := y + (float64(i)+0.75)*worstRow
		p.font("B", small)
		p.putRight(left+9, base, report.Margin(r))
		p.put(left+11, base, p.fit(report.FullID(r)+at(r), 0.46*wide))
		p.font("", small)
		d, c := report.ShowPair(r.Demand, r.Capacity, p.sheet.Units)
		p.putRight(left+wide, base, p.fit(against(r, d, c), 0.5*wide-11))
	}
	p.font("", tiny)
	for i, l := range p.openLines() {
		p.put(x, y+(float64(i)+0.75)*tiny*leading, l)
	}
	p.y += h
}
