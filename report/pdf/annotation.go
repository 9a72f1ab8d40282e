package pdf

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
)

// A name is a text that stands in a row over or under the tank, with a leader
// to a place of the section.
type name struct {
	text string
	to   report.Point
}

// split returns the names over and under the tank: ports on the side on which
// they are drawn, labels over it.
func split(c *report.Section) (over, under []name) {
	for _, t := range c.Ports {
		if crowded(c) && strings.HasPrefix(t.Part, "head.") {
			continue // the plan of the bulkhead names it
		}
		side := sideOf(t)
		n := name{t.Name + " " + degrees(t.Clock), report.Point{Z: t.Outer.Z, R: side * t.Outer.R}}
		if side > 0 {
			over = append(over, n)
		} else {
			under = append(under, n)
		}
	}
	for _, l := range c.Labels {
		over = append(over, name{l.Text, l.At})
	}
	over = append(over, seamNames(c)...)
	under = append(under, levelNames(c.Levels)...)
	byStation := func(a, b name) int { return compare(a.to.Z, b.to.Z) }
	slices.SortStableFunc(over, byStation)
	slices.SortStableFunc(under, byStation)
	return over, under
}

// namedPorts is how many ports the section can name and still be read.
const namedPorts = 10

func crowded(c *report.Section) bool { return len(c.Ports) > namedPorts }

// seamNames names the joints: those round the tank at their marks, the long seam of
// the cylinder with its clock at the middle of its longest course.
func seamNames(c *report.Section) (out []name) {
	for _, m := range c.Seams {
		out = append(out, name{"▼ " + m.Name, m.At})
	}
	for _, l := range c.Lengthwise {
		if l.Part != "cylinder" || len(c.Seams) < 2 {
			continue
		}
		at := slices.Clone(c.Seams)
		slices.SortStableFunc(at, func(a, b report.SeamMark) int { return compare(a.At.Z, b.At.Z) })
		middle, longest := report.Point{}, 0.0
		for i := range at[1:] {
			if d := at[i+1].At.Z - at[i].At.Z; d > longest {
				middle, longest = report.Point{Z: at[i].At.Z + 0.62*d, R: at[i].At.R}, d
			}
		}
		out = append(out, name{"long seam " + l.Name + " at " + degrees(l.Clock), middle})
	}
	return out
}

// levelsShown is how many levels are drawn, the first of which counts most.
const levelsShown = 6

// levelNames names the levels at their lower ends; cases whose levels coincide
// share one name.
func levelNames(levels []report.Level) []name {
	var out []name
	for _, l := range levels {
		if len(l.Points) == 0 {
			continue
		}
		end := l.Points[0]
		if last := l.Points[len(l.Points)-1]; last.R < end.R {
			end = last
		}
		same := slices.IndexFunc(out, func(n name) bool {
			return math.Hypot(n.to.Z-end.Z, n.to.R-end.R) < 1e-3
		})
		if same >= 0 {
			if n := len(strings.Split(out[same].text, ", ")); n < 4 {
				out[same].text += ", " + l.Case
			} else if n == 4 {
				out[same].text += ", …"
			}
		} else {
			out = append(out, name{"liquid: " + l.Case, end})
		}
	}
	return out
}

// wide returns about how wide a name is set [mm].
func (n name) wide() float64 { return float64(len([]rune(n.text)))*1.25 + 3 }

// rowsOf returns in how many rows names fit into a width [mm].
func rowsOf(names []name, width float64) int {
	total := 0.0
	for _, n := range names {
		total += n.wide()
	}
	return int(math.Ceil(total / width))
}

// names sets the names in rows, dealt out in turn.
func (v view) names(c *report.Section) {
	over, under := split(c)
	for side, names := range [][]name{over, under} {
		rows := rowsOf(names, v.f.Width)
		for k := range rows {
			var row []name
			for i := k; i < len(names); i += rows {
				row = append(row, names[i])
			}
			if side == 0 {
				v.row(row, 3+float64(k)*namePitch, 0.8)
			} else {
				v.row(row, v.y+v.down*v.scale+5+float64(k)*namePitch, -2.6)
			}
		}
	}
}

// row sets names on one base line, each near its place, pushed apart where they
// would overlap and back where the paper ends.
func (v view) row(names []name, y, foot float64) {
	at := make([]float64, len(names))
	edge := 0.0
	for i, n := range names {
		at[i] = math.Max(v.at(n.to).X, edge+n.wide()/2)
		edge = at[i] + n.wide()/2
	}
	edge = v.f.Width
	for i := len(names) - 1; i >= 0; i-- {
		at[i] = math.Min(at[i], edge-names[i].wide()/2)
		edge = at[i] - names[i].wide()/2
	}
	for i, n := range names {
		to := v.at(n.to)
		v.f.AddText(at[i], y, label, drawing.Centre, n.text)
		v.f.AddLine(at[i], y+foot, to.X, to.Y, drawing.Pen{Width: 0.1, Grey: 0.3})
	}
}

// sorted parts dimensions into those along the axis and those across it.
func sorted(ds []report.Dimension) (along, across []report.Dimension) {
	for _, d := range ds {
		if math.Abs(d.To.Z-d.From.Z) >= math.Abs(d.To.R-d.From.R) {
			along = append(along, d)
		} else {
			across = append(across, d)
		}
	}
	return along, across
}

func (v view) dimensions(along, across []report.Dimension, system string) {
	thin := drawing.Pen{Width: 0.1}
	base := v.y + v.down*v.scale + v.under
	for i, d := range along {
		y := base + float64(i)*rowPitch + 2
		a, b := v.at(d.From), v.at(d.To)
		if a.X > b.X {
			a, b = b, a
		}
		v.f.AddLine(a.X, a.Y, a.X, y+1, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(b.X, b.Y, b.X, y+1, drawing.Pen{Width: 0.1, Grey: 0.5})
		v.f.AddLine(a.X, y, b.X, y, thin)
		v.arrows(a.X, y, b.X, y)
		v.f.AddText((a.X+b.X)/2, y-0.7, label, drawing.Centre, dimensionText(d, system))
	}
	for i, d := range across {
		x := v.x + v.lo*v.scale - 8 - float64(i)*rowPitch
		a, b := v.at(d.From), v.at(d.To)
		if a.Y > b.Y {
			a, b = b, a
		}
		v.f.AddLine(a.X, a.Y, x-1, a.Y, thin) // black: it may run along the wall
		v.f.AddLine(b.X, b.Y, x-1, b.Y, thin)
		v.f.AddLine(x, a.Y, x, b.Y, thin)
		v.arrows(x, a.Y, x, b.Y)
		text := dimensionText(d, system)
		if letters := float64(len([]rune(text))); 1.2*letters > b.Y-a.Y { // it would run into names
			text = report.Show(d.Value, system, report.Nearest)
		}
		v.f.Texts = append(v.f.Texts, drawing.Text{At: drawing.Point{X: x - 0.7, Y: (a.Y + b.Y) / 2},
			Text: text, Size: label, Align: drawing.Centre, Turn: math.Pi / 2})
	}
}

// arrows puts heads on both ends of a dimension line, from outside where it is
// too short for them.
func (v view) arrows(x1, y1, x2, y2 float64) {
	direction := math.Atan2(y2-y1, x2-x1)
	if math.Hypot(x2-x1, y2-y1) < 5 {
		direction += math.Pi
	}
	v.f.AddArrow(x2, y2, direction, 1.8)
	v.f.AddArrow(x1, y1, direction+math.Pi, 1.8)
}

func dimensionText(d report.Dimension, system string) string {
	value := report.Show(d.Value, system, report.Nearest)
	if d.Name == "" {
		return value
	}
	return d.Name + " " + value
}

// scaleBar states the scale, with a bar that holds when the page is printed in
// another size, and under it what the ring stands for.
func (v view) scaleBar(ratio float64, system string, worst *report.Label, shaded string, many bool) {
	bar := 0.1 // [m]
	if system == "us" {
		bar = 0.127 // 5 in
	}
	for bar*v.scale < 12 {
		bar *= 2
	}
	turned := "ports turned into the plane of the cut"
	if many {
		turned = "ports turned into it (bulkheads: see plans)"
	}
	y := v.f.Height - 2
	if worst != nil {
		v.f.Arcs = append(v.f.Arcs, drawing.Arc{Centre: drawing.Point{X: 7.8, Y: y - 0.2}, Radius: 1.3, Sweep: 2 * math.Pi, Pen: drawing.Pen{Width: 0.4}})
		v.f.AddText(11, y+0.6, label, drawing.Left, clip(worst.Text+shaded, int((v.f.Width-11)/1.3)))
		y -= worstNote
	}
	v.f.AddLine(6, y, 6+bar*v.scale, y, drawing.Pen{Width: 0.5})
	v.f.AddText(8+bar*v.scale, y+0.8, label, drawing.Left, fmt.Sprintf(
		"%s   scale 1:%s on paper printed at full size; %s, ▼ weld seam; forward is to the right",
		report.Show(check.M("", "", bar), system, report.Nearest), tick(ratio), turned))
}
