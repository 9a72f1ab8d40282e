package assess

import (
	"math"
	"slices"

	"proofsheet/loads/proof"
	"proofsheet/report"
)

// recordCharts draws what was read on what was predicted.
func recordCharts(t proof.Test, l proof.Log, got *proof.Judged) []report.Chart {
	charts := []report.Chart{pressureOverTime(t, l)}
	if t.Plan.In.Method != proof.Pneumatic {
		charts = append(charts, volumeChart(t, l, got))
	}
	if len(got.Readings) > 0 {
		charts = append(charts, departureChart(got))
	}
	if len(l.Gauges) > 0 {
		charts = append(charts, strainChart(t, l))
	}
	if d := got.Decay.Span; d.To > d.From {
		charts = append(charts, decayChart(t, l, got))
	}
	return charts
}

// drawn is how many points of a log a line of a chart shows at most, about.
const drawn = 2000

// series collects two readings of rows from up to to. Of more rows than can be
// seen it keeps the least and the largest of each stretch.
func series(name string, l proof.Log, from, to int, x, y func(proof.LogRow) float64) report.Series {
	s := report.Series{Name: name}
	rows := l.Rows[from:to]
	stretch := 1
	if len(rows) > drawn {
		stretch = (2*len(rows) + drawn - 1) / drawn
	}
	for i := 0; i < len(rows); i += stretch {
		low, high := i, i
		for k := i; k < min(i+stretch, len(rows)); k++ {
			if v := y(rows[k]); v < y(rows[low]) {
				low = k
			} else if v > y(rows[high]) {
				high = k
			}
		}
		for _, k := range slices.Compact([]int{min(low, high), max(low, high)}) {
			s.X, s.Y = append(s.X, x(rows[k])), append(s.Y, y(rows[k]))
		}
	}
	return s
}

func atTime(row proof.LogRow) float64     { return row.Time }
func atPressure(row proof.LogRow) float64 { return row.Pressure }

func pressureOverTime(t proof.Test, l proof.Log) report.Chart {
	c := report.Chart{
		Name: "record-pressure", Title: "Pressure over time, on the plan's setting",
		X: report.Axis{Name: "time", Unit: "s"}, Y: report.Axis{Name: "pressure at the gauge", Unit: "Pa"},
		Series: []report.Series{series("measured", l, 0, len(l.Rows), atTime, atPressure)},
		Limits: []report.Limit{{Name: "setting", Y: t.Plan.Setting}, {Name: "setting with its overshoot", Y: t.Plan.Setting + t.Plan.Overshoot}},
	}
	if t.Plan.Examination > 0 {
		c.Limits = append(c.Limits, report.Limit{Name: "nobody near above", Y: t.Plan.Examination})
	}
	return c
}

// top returns the row of the highest pressure.
func top(l proof.Log) int {
	at := 0
	for i, row := range l.Rows {
		if row.Pressure > l.Rows[at].Pressure {
			at = i
		}
	}
	return at
}

func volumeChart(t proof.Test, l proof.Log, got *proof.Judged) report.Chart {
	zero := got.Line.Zero
	if math.IsNaN(zero) {
		zero = l.Rows[0].Volume
	}
	volume := func(row proof.LogRow) float64 { return row.Volume - zero }
	at := top(l)
	c := report.Chart{
		Name: "record-volume", Title: "Volume put in, measured on predicted",
		X: report.Axis{Name: "pressure at the gauge", Unit: "Pa"}, Y: report.Axis{Name: "volume over that at no pressure", Unit: "m3"},
		Series: []report.Series{series("measured, way up", l, 0, at+1, atPressure, volume), series("measured, afterwards", l, at, len(l.Rows), atPressure, volume)},
	}
	predicted, fitted := report.Series{Name: "predicted, bled tank"}, report.Series{Name: "fitted line with its air"}
	stiff := t.Full.Growth + t.Full.Compressibility*t.Full.Volume
	for i := range 41 {
		p := float64(i) / 40 * math.Max(t.Plan.Setting, l.Rows[at].Pressure)
		v, _ := got.Line.At(p)
		predicted.X, predicted.Y = append(predicted.X, p), append(predicted.Y, stiff*p)
		fitted.X, fitted.Y = append(fitted.X, p), append(fitted.Y, v-got.Line.Zero)
	}
	c.Series = append(c.Series, predicted, fitted)
	return c
}

// departureChart draws the readings of the way up less what the earlier ones led to
// expect, between the bands that stop the test, and less the prediction.
func departureChart(got *proof.Judged) report.Chart {
	off, under, over, far := report.Series{Name: "off the earlier line"}, report.Series{Name: "stop under"}, report.Series{Name: "stop over"}, report.Series{Name: "off the bled prediction"}
	for _, q := range got.Readings {
		for _, s := range []*report.Series{&off, &under, &over, &far} {
			s.X = append(s.X, q.Pressure)
		}
		off.Y, under.Y, over.Y, far.Y = append(off.Y, q.Volume-q.Line), append(under.Y, -q.Band), append(over.Y, q.Band), append(far.Y, q.Volume-q.Predicted)
	}
	return report.Chart{
		Name: "record-departure", Title: "Departure of the volume on the way up",
		X: report.Axis{Name: "pressure at the gauge", Unit: "Pa"}, Y: report.Axis{Name: "volume more than expected", Unit: "m3"},
		Series: []report.Series{off, far, under, over},
	}
}

func strainChart(t proof.Test, l proof.Log) report.Chart {
	c := report.Chart{
		Name: "record-strain", Title: "Strains, measured on predicted",
		X: report.Axis{Name: "pressure at the gauge", Unit: "Pa"}, Y: report.Axis{Name: "strain", Unit: "1"},
	}
	at := top(l)
	hoop, axial := false, false
	for g, gauge := range l.Gauges {
		c.Series = append(c.Series, series(gauge.Name, l, 0, len(l.Rows), atPressure, func(row proof.LogRow) float64 { return row.Strains[g] }))
		hoop, axial = hoop || gauge.Place == proof.PlainHoop, axial || gauge.Place == proof.PlainAxial
	}
	p := math.Max(t.Plan.Setting, l.Rows[at].Pressure)
	if e, err := t.Wall.ThickCylinderStrains(p, t.Radius-t.Wall.Thickness/2); err == nil {
		if hoop {
			c.Series = append(c.Series, report.Series{Name: "predicted, hoop", X: []float64{0, p}, Y: []float64{0, e.Hoop}})
		}
		if axial {
			c.Series = append(c.Series, report.Series{Name: "predicted, axial", X: []float64{0, p}, Y: []float64{0, e.Axial}})
		}
	}
	return c
}

func decayChart(t proof.Test, l proof.Log, got *proof.Judged) report.Chart {
	d := got.Decay
	rows := l.Rows[d.Span.From : d.Span.To+1]
	read, rest := report.Series{Name: "as read"}, report.Series{Name: "left unexplained"}
	for i := 0; i < len(rows); i += 1 + len(rows)/drawn {
		b := got.Balance(d.Span.From, d.Span.From+i)
		read.X, read.Y = append(read.X, rows[i].Time), append(read.Y, b.Change)
		rest.X, rest.Y = append(rest.X, rows[i].Time), append(rest.Y, b.Residual)
	}
	return report.Chart{
		Name: "record-decay", Title: "Change of pressure in the hold",
		X: report.Axis{Name: "time", Unit: "s"}, Y: report.Axis{Name: "change of pressure", Unit: "Pa"},
		Series: []report.Series{read, rest},
		Limits: []report.Limit{{Name: "allowed fall", Y: -d.Allowed}, {Name: "allowed rise", Y: d.Allowed}},
	}
}
