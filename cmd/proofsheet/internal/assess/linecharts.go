package assess

import (
	"math"
	"slices"

	"proofsheet/report"
)

// linesShown is how many cases a diagram of line loads holds.
const linesShown = 3

// lineChart draws the line load along the cylinder, on the side of the bending
// that pulls and on the one that presses, in the cases with the strongest loads;
// none where no case has any.
func (r *run) lineChart() []report.Chart {
	chart := report.Chart{Name: "line-loads", Title: "Force in the cylinder's wall along the tank, tension positive",
		X: report.Axis{Name: "station z, forward from the aft seam", Unit: "m"}, Y: report.Axis{Name: "force per length of circumference", Unit: "N/m"}}
	each := make([]*diagram, len(r.cases))
	r.shared(len(r.cases), func(m *model, i int) {
		if c := r.cases[i]; c.sections != nil && c.instants == nil && m.massErr == nil {
			each[i] = m.lineSeries(c)
		}
	})
	var all []*diagram
	for _, d := range each {
		if d != nil {
			all = append(all, d)
		}
	}
	slices.SortStableFunc(all, func(a, b *diagram) int { return compareNumbers(b.strength, a.strength) })
	for _, d := range all[:min(len(all), linesShown)] {
		chart.Series = append(chart.Series, d.lines[:]...)
	}
	if chart.Series == nil {
		return nil
	}
	return []report.Chart{chart}
}

// A diagram is the line load of one case along the cylinder.
type diagram struct {
	strength float64 // largest share of loads [N/m]
	lines    [2]report.Series
}

// lineSeries returns both sides of one case, the worse of its states at each station,
// with a step kept at a quoted section; nil where one is not known.
func (m *model) lineSeries(c *loadCase) *diagram {
	d := &diagram{lines: [2]report.Series{{Name: c.name + ", pulled side"}, {Name: c.name + ", pressed side"}}}
	L := m.t.Cylinder.Length
	const parts = 40
	stations := []float64{}
	for i := range parts + 1 {
		stations = append(stations, L*float64(i)/parts)
	}
	for _, q := range c.sections {
		if q.Station > 0 && q.Station < L {
			stations = append(stations, q.Station-hair, q.Station+hair)
		}
	}
	slices.Sort(stations)
	b := m.body(c)
	for _, z := range stations {
		most, least := math.Inf(-1), math.Inf(1)
		for _, s := range c.states {
			high, low, loadMost, loadLeast, err := s.WallForce(z, b)
			if err != nil {
				return nil
			}
			most, least = math.Max(most, high+loadMost), math.Min(least, low+loadLeast)
			d.strength = math.Max(d.strength, math.Max(math.Abs(loadMost), math.Abs(loadLeast)))
		}
		d.lines[0].X, d.lines[0].Y = append(d.lines[0].X, z), append(d.lines[0].Y, most)
		d.lines[1].X, d.lines[1].Y = append(d.lines[1].X, z), append(d.lines[1].Y, least)
	}
	return d
}
