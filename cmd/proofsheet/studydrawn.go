package main

import (
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
)

// mostLines is how many values of a second input are drawn.
const mostLines = 8

// varyDrawn draws the least margin over the first input, one line for each value of the
// second, then the check of that margin, then the mass. It is nil where nothing has a margin.
func varyDrawn(t *tank.Tank, axes []study.Axis, variants []study.Variant) (out []pdf.Drawing) {
	margin := varyLines(t, axes, variants, "least margin", func(v study.Variant) float64 { return v.Margin })
	margin.Name, margin.Title = "study", "Least margin of the checks made"+margin.Title
	margin.Y, margin.Limits = report.Axis{Name: "least margin", Unit: "1"}, []report.Limit{{Name: "just enough", Y: 0}}
	mass := varyLines(t, axes, variants, "mass", func(v study.Variant) float64 { return v.Mass })
	mass.Name, mass.Title, mass.Y = "mass", "Mass of the empty tank"+mass.Title, report.Axis{Name: "mass", Unit: "kg"}
	if len(margin.Series) > 0 {
		out = append(out, pdf.Lines(margin), varyGoverns(t, axes, variants))
	}
	if len(mass.Series) > 0 {
		out = append(out, pdf.Lines(mass))
	}
	return out
}

// varyLines returns the lines of a number over the first input; a value that is not known
// breaks its line. The title says how many lines there are where some are left out.
func varyLines(t *tank.Tank, axes []study.Axis, variants []study.Variant, name string, of func(study.Variant) float64) report.Chart {
	c := report.Chart{X: report.Axis{Name: axes[0].Key, Unit: axes[0].Unit}}
	each := len(variants) / len(axes[0].Values)
	var all []report.Series
	for line := range each {
		s, known := report.Series{Name: name}, false
		if len(axes) == 2 {
			s.Name = axes[1].Key + " " + valueOf(t, axes[1].Values[line], axes[1].Unit)
		}
		for i, x := range axes[0].Values {
			y := math.NaN()
			if v := variants[i*each+line]; v.Done {
				y = of(v)
			}
			known = known || !math.IsNaN(y)
			s.X, s.Y = append(s.X, x), append(s.Y, y)
		}
		if known {
			all = append(all, s)
		}
	}
	for _, i := range pdf.Evenly(len(all), mostLines) {
		c.Series = append(c.Series, all[i])
	}
	if n := len(c.Series); n < each && n > 0 {
		c.Title = fmt.Sprintf(" (%d of %d values of %s)", n, each, axes[1].Key)
	}
	return c
}

// varyGoverns shows which check has the least margin where.
func varyGoverns(t *tank.Tank, axes []study.Axis, variants []study.Variant) pdf.Governs {
	g := pdf.Governs{Across: axes[0].Key, Y: []string{""}}
	for _, x := range axes[0].Values {
		g.X = append(g.X, valueOf(t, x, axes[0].Unit))
	}
	if len(axes) == 2 {
		g.Up, g.Y = axes[1].Key, nil
		for _, y := range axes[1].Values {
			g.Y = append(g.Y, valueOf(t, y, axes[1].Unit))
		}
	}
	for i := range g.X {
		var column []pdf.Governing
		for k := range g.Y {
			v := variants[i*len(g.Y)+k]
			column = append(column, pdf.Governing{Check: v.Check, Fault: v.Fault != "" || !v.Done, State: v.Status})
		}
		g.Cells = append(g.Cells, column)
	}
	return g
}

// scatterDrawn draws, for the checks nearest to failure, the mean margin with two deviations
// to each side, and what the nearest of them follows. It is nil where no margin is known.
func scatterDrawn(s *study.Scatter) (out []pdf.Drawing) {
	spreads := pdf.Spreads{Title: "Margins that scatter most towards failure: mean, and two deviations to each side"}
	var follows pdf.Follows
	for _, x := range s.Checks {
		if math.IsNaN(x.Mean+x.Deviation) || len(spreads.Rows) >= shownChecks {
			continue
		}
		spreads.Rows = append(spreads.Rows, pdf.SpreadRow{Check: x.ID, Mean: x.Mean, Deviation: x.Deviation, Fails: fmt.Sprintf("%d of %d", x.Fails, x.Samples)})
		if follows.Rows != nil || len(x.Sensitivity) == 0 {
			continue
		}
		follows.Title = "What the margin of " + x.ID + " follows"
		for _, f := range x.Sensitivity {
			follows.Rows = append(follows.Rows, pdf.FollowRow{Input: f.Key, Correlation: f.Correlation})
		}
	}
	if len(spreads.Rows) == 0 {
		return nil
	}
	return append(out, spreads, follows)
}
