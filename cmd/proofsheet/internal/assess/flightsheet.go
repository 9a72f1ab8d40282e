package assess

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// flightSheet describes the history as a case: its extremes, and what governs
// when.
func (r *run) flightSheet(c *loadCase) report.CaseSheet {
	s := report.CaseSheet{Name: c.name, Rule: string(c.rule), People: c.people, Title: "flight history"}
	rows := r.t.Flight.States
	span := func(f func(q tank.State) float64) (least, most float64) {
		least, most = math.Inf(1), math.Inf(-1)
		for _, q := range rows {
			least, most = math.Min(least, f(q)), math.Max(most, f(q))
		}
		return least, most
	}
	add := func(symbol, name string, kind func(symbol, name string, v float64) check.Quantity, f func(q tank.State) float64) {
		least, most := span(f)
		s.Values = append(s.Values, kind(symbol, name+", least", least), kind(symbol, name+", most", most))
	}
	seconds := func(symbol, name string, v float64) check.Quantity {
		return check.Quantity{Symbol: symbol, Name: name, Value: v, Unit: "s"}
	}
	add("t", "time", seconds, func(q tank.State) float64 { return q.Time })
	add("p_u", "ullage pressure", check.Pa, func(q tank.State) float64 { return q.UllagePressure })
	add("n_x", "axial load factor", check.Num, func(q tank.State) float64 { return q.AxialLoadFactor })
	add("n_y", "lateral load factor", check.Num, func(q tank.State) float64 { return q.LateralLoadFactor })
	if rows[0].AxialForce != nil {
		add("F", "axial force at the forward head seam, tension positive", check.N, func(q tank.State) float64 { return *q.AxialForce })
	}
	if rows[0].BendingMoment != nil {
		add("M", "bending moment at the forward head seam", check.NM, func(q tank.State) float64 { return *q.BendingMoment })
	}
	if c.slosh != nil {
		s.Values = append(s.Values, check.M("η", "height of the slosh on the wall", *c.slosh))
	}
	s.Values = append(s.Values, check.K("T", "metal, hottest", c.temperature))
	s.Notes = append(s.Notes, fmt.Sprintf("%d rows of %s, straight between them; every check is made at the %d instants at which a load is greatest, and the worst counts",
		len(rows), filepath.Base(r.t.Flight.History), len(c.instants)))
	s.Notes = append(append(s.Notes, r.stabilityNote(c.name)), r.governingTimes()...)
	return s
}

// governingTimes says which checks each instant governs, in the order of time.
func (r *run) governingTimes() (out []string) {
	byTime := map[float64][]string{}
	for _, k := range r.checks {
		if k.Case == "flight" && k.Time != nil && !math.IsNaN(k.Margin()) {
			byTime[*k.Time] = append(byTime[*k.Time], k.ID)
		}
	}
	times := make([]float64, 0, len(byTime))
	for t := range byTime {
		times = append(times, t)
	}
	slices.Sort(times)
	for _, t := range times {
		out = append(out, fmt.Sprintf("governs at %s s: %s", report.Plain(t), strings.Join(byTime[t], ", ")))
	}
	return out
}

// flightCharts draws the history: pressures and load factors against time, with
// the instants that govern a check.
func (r *run) flightCharts() []report.Chart {
	var flown *loadCase
	for _, c := range r.cases {
		if c.instants != nil {
			flown = c
		}
	}
	if flown == nil {
		return nil
	}
	rows := r.t.Flight.States
	line := func(name string, f func(q tank.State) float64) report.Series {
		s := report.Series{Name: name}
		for _, q := range rows {
			s.X, s.Y = append(s.X, q.Time), append(s.Y, f(q))
		}
		return s
	}
	time := report.Axis{Name: "time", Unit: "s"}
	pressures := report.Chart{Name: "flight-pressure", Title: "Flight history: pressure, with the instants that govern a check", X: time,
		Y: report.Axis{Name: "pressure across the wall", Unit: "Pa"}, Series: []report.Series{
			line("ullage", func(q tank.State) float64 { return q.UllagePressure }), r.deepest(flown)}}
	factors := report.Chart{Name: "flight-factors", Title: "Flight history: load factors, with the instants that govern a check", X: time,
		Y: report.Axis{Name: "load factor", Unit: "1"}, Series: []report.Series{
			line("axial", func(q tank.State) float64 { return q.AxialLoadFactor }),
			line("lateral", func(q tank.State) float64 { return q.LateralLoadFactor })}}
	for _, c := range []*report.Chart{&pressures, &factors} {
		c.Series = append(c.Series, r.marks(c.Series))
	}
	return []report.Chart{pressures, factors}
}

// deepest is the highest pressure on the wall at the assessed instants [Pa].
func (r *run) deepest(c *loadCase) report.Series {
	s := report.Series{Name: "highest on the wall"}
	lo, hi := r.in.Bounds()
	for _, at := range c.instants {
		most := math.Inf(-1)
		for _, q := range at.states {
			p, _ := q.HighestPressure(lo, hi)
			most = math.Max(most, p)
		}
		s.X, s.Y = append(s.X, *at.time), append(s.Y, most)
	}
	return s
}

// marks are upright strokes at the governing instants, as high as the lines.
func (r *run) marks(lines []report.Series) report.Series {
	s := report.Series{Name: "governs"}
	least, most := 0.0, 0.0
	for _, l := range lines {
		least, most = math.Min(least, slices.Min(l.Y)), math.Max(most, slices.Max(l.Y))
	}
	seen := map[float64]bool{}
	for _, k := range r.checks {
		if k.Case != "flight" || k.Time == nil || math.IsNaN(k.Margin()) || seen[*k.Time] {
			continue
		}
		seen[*k.Time] = true
		s.X, s.Y = append(s.X, *k.Time, *k.Time, *k.Time), append(s.Y, least, most, math.NaN())
	}
	return s
}
