package main

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/pdf"
)

// studyCautions stand on the pages of every study.
var studyCautions = []string{
	"A tank whose study pleases still needs every check satisfied as it is written, its own calculation sheet, and its proof test. A changed tank is assessed anew, by proofsheet check.",
}

// sweepCaution stands on the pages of a sweep.
const sweepCaution = "A study is only as good as its inputs, and as the tank file, which it takes as it is."

// varyPages sets a sweep out for its pages.
func varyPages(t *tank.Tank, axes []study.Axis, variants []study.Variant) pdf.Study {
	variants = withoutFolders(t, variants)
	rows, left := varyTable(t, axes, variants)
	s := pdf.Study{Kind: "Study of a tank: sweep. No calculation sheet", Cautions: append([]string{sweepCaution, varyCaution}, studyCautions...),
		Inputs: pdf.Grid{Columns: []pdf.GridColumn{{Title: "input", Width: 2}, {Title: "in the tank file", Width: 1, Right: true}, {Title: "values", Width: 0.5, Right: true}, {Title: "", Width: 4}}}}
	each := "value"
	if len(axes) == 2 {
		each = "pair of values"
	}
	s.Asked = []string{fmt.Sprintf("%s, one for each %s, every other input as it is written: the mass of the empty tank, and the check with the least margin.", tanks(len(variants)), each)}
	table := pdf.Grid{Under: []string{varyCaution}}
	for _, a := range axes {
		written := "–"
		if v, err := t.Number(a.Key); err == nil {
			written = valueOf(t, v, a.Unit)
		}
		s.Inputs.Rows = append(s.Inputs.Rows, []string{a.Key, written, strconv.Itoa(len(a.Values)), axisValues(t, a)})
		table.Columns = append(table.Columns, pdf.GridColumn{Title: a.Key, Width: 1.2, Right: true})
	}
	table.Columns = append(table.Columns, pdf.GridColumn{Title: "mass", Width: 0.8, Right: true}, pdf.GridColumn{Title: "least margin", Width: 0.7, Right: true},
		pdf.GridColumn{Title: "not satisfied, not assessed", Width: 1, Right: true}, pdf.GridColumn{Title: "check", Width: 3.2})
	table.Rows = rows[1:]
	done := slices.DeleteFunc(slices.Clone(variants), func(v study.Variant) bool { return !v.Done })
	faulty := 0
	for i, v := range done {
		if v.Fault != "" {
			faulty++
		}
		if v.Fault != "" || v.Fails > 0 {
			table.Bold = append(table.Bold, i)
		}
	}
	s.Tables = []pdf.Grid{table}
	if left > 0 {
		s.Faults = append(s.Faults, fmt.Sprintf("BROKEN OFF: %d of %s were not run.", left, tanks(len(variants))))
	}
	if faulty > 0 {
		s.Faults = append(s.Faults, fmt.Sprintf("%d of %s are none that can be assessed; the table says why.", faulty, tanks(len(variants))))
	}
	return s
}

// withoutFolders leaves the folder of the tank file out of what is said of a tank: where the file
// lay is no part of the study.
func withoutFolders(t *tank.Tank, variants []study.Variant) []study.Variant {
	out := slices.Clone(variants)
	for i := range out {
		out[i].Fault = withoutFolder(t, out[i].Fault)
	}
	return out
}

func withoutFolder(t *tank.Tank, text string) string {
	return strings.ReplaceAll(text, t.File+":", filepath.Base(t.File)+":")
}

func tanks(n int) string {
	if n == 1 {
		return "1 tank"
	}
	return fmt.Sprintf("%d tanks", n)
}

// valueOf prints a value of a key.
func valueOf(t *tank.Tank, v float64, unit string) string {
	return report.Show(check.Quantity{Value: v, Unit: unit}, t.Sheet.Units, report.Nearest)
}

// axisValues names the values of an axis, of many the ends.
func axisValues(t *tank.Tank, a study.Axis) string {
	const most = 24
	var out []string
	for _, v := range a.Values {
		out = append(out, glued(valueOf(t, v, a.Unit)))
	}
	if n := len(out); n > most {
		return fmt.Sprintf("%s, %s to %s", out[0], out[1], out[n-1])
	}
	return strings.Join(out, ", ")
}

// scatterPages sets a scatter study out for its pages.
func scatterPages(t *tank.Tank, s *study.Scatter, inputs []string, withShell bool) pdf.Study {
	out := pdf.Study{Kind: "Study of a tank: scatter. No calculation sheet", Cautions: append([]string{scatterCaution}, studyCautions...),
		Asked:  []string{fmt.Sprintf("%s the inputs below, every other input as it is written: how often each check is not satisfied.", scatterAsked(s))},
		Inputs: pdf.Grid{Columns: []pdf.GridColumn{{Title: "no.", Width: 0.3}, {Title: "input", Width: 2}, {Title: "how it scatters", Width: 4}}},
		Ways:   strings.Split(strings.TrimSpace(scatterWays(s)), "\n")}
	for i, how := range inputs {
		out.Inputs.Rows = append(out.Inputs.Rows, []string{fmt.Sprintf("[%d]", i+1), s.Inputs[i].Key, how})
	}
	if !withShell {
		out.Asked = append(out.Asked, withoutJoints)
	}
	for _, line := range scatterFaults(s) {
		out.Faults = append(out.Faults, strings.ToUpper(line[:1])+withoutFolder(t, line[1:])+".")
	}
	out.Tables = []pdf.Grid{scatterGrid(s)}
	return out
}

// scatterGrid is the whole table, the likeliest failure first.
func scatterGrid(s *study.Scatter) pdf.Grid {
	g := pdf.Grid{Columns: []pdf.GridColumn{{Title: "check", Width: 2.9}, {Title: "decided by", Width: 1.15}, {Title: "not satisfied", Width: 1.5, Right: true},
		{Title: "not assessed", Width: 1.2, Right: true}, {Title: "probability", Width: 1.32, Right: true}, {Title: "95 % interval", Width: 1.4, Right: true},
		{Title: "mean margin", Width: 0.95, Right: true}, {Title: "deviation", Width: 1.1, Right: true}, {Title: "margin follows", Width: 1.8}},
		Under: []string{"Decided by: assessed, every sample was; surface, by its surface, and assessed where that is near to failing; constant, the same in every tank assessed; " +
			"part, counted over the first samples, all assessed.", "Margin follows: inputs by number, with the correlation of margin and input, the strongest first; – where the margin does not move. " +
			"Interval: Wilson's, of drawing alone, of as many samples as the check was made in; its ends are rounded away from one another."}}
	number := map[string]int{}
	for i, in := range s.Inputs {
		number[in.Key] = i + 1
	}
	for i, x := range s.Checks {
		var follows []string
		for _, f := range x.Sensitivity {
			follows = append(follows, glued(fmt.Sprintf("[%d] %+.2f", number[f.Key], f.Correlation)))
		}
		row := []string{x.ID, string(x.Way), fmt.Sprintf("%d of %d", x.Fails, x.Samples), strconv.Itoa(x.NotMade), "–", "–", "–", "–", "–"}
		if x.Samples == 0 {
			row[2] = "never made"
		} else {
			row[4], row[5] = fmt.Sprintf("%.3g", x.Probability), interval(x)
		}
		if !math.IsNaN(x.Mean + x.Deviation) {
			row[6], row[7] = meanMargin(x), deviation(x)
		}
		if len(follows) > 0 {
			row[8] = strings.Join(follows, ", ")
		}
		g.Rows = append(g.Rows, row)
		if x.Fails > 0 {
			g.Bold = append(g.Bold, i)
		}
	}
	return g
}

// interval prints the 95 % interval, its ends rounded away from one another.
func interval(x study.Scattered) string {
	return digitsOf(x.Low, math.Floor) + " to " + digitsOf(x.High, math.Ceil)
}

// digitsOf prints a share with two digits, rounded as told; a share that has no more
// digits stays.
func digitsOf(v float64, round func(float64) float64) string {
	if !(v > 0) || v >= 1 {
		return strconv.FormatFloat(v, 'g', 2, 64)
	}
	scale := math.Pow(10, math.Floor(math.Log10(v))-1)
	n := v / scale
	if near := math.Round(n); math.Abs(n-near) < 1e-9*near {
		n = near
	}
	return strconv.FormatFloat(round(n)*scale, 'g', 2, 64)
}

// meanMargin prints the mean of a margin, rounded down.
func meanMargin(x study.Scattered) string {
	digits := 3
	if math.Abs(x.Mean) >= 10 {
		digits = 1
	}
	scale := math.Pow10(digits)
	return strconv.FormatFloat(math.Floor(x.Mean*scale)/scale, 'f', digits, 64)
}

// deviation prints that of a margin, rounded up.
func deviation(x study.Scattered) string {
	return strconv.FormatFloat(math.Ceil(x.Deviation*1000)/1000, 'f', 3, 64)
}
