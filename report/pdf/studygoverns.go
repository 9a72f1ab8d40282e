package pdf

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
	"proofsheet/report/drawing"
)

// Governs show which check has the least margin over one or two inputs: a letter for
// each check, in a field for each tank.
type Governs struct {
	Across, Up string   // names of the inputs; no Up for one input
	X, Y       []string // their values; of one input Y has one, empty
	Cells      [][]Governing
}

// Governing is one field, by value across and value up.
type Governing struct {
	Check string // id@case, "" where the tank is none or was not assessed
	Fault bool   // it is none
	State check.Status
}

// How many fields can still be read across and up, and their sides [mm].
const (
	mostAcross, mostUp = 31, 24
	fieldWide          = 4.6
	fieldHigh          = 4.2
)

func (g Governs) draw(_ string, width float64) *drawing.Figure {
	across, up := Evenly(len(g.X), mostAcross), Evenly(len(g.Y), mostUp)
	letters, names := g.letters(across, up)
	if len(names) == 0 {
		return nil
	}
	const x0, values = 34.0, 16.0
	high := float64(len(up)) * fieldHigh
	keys := high + values + 12
	f := &drawing.Figure{Name: "governs", Title: "Check with the least margin of those made", Width: width,
		Height: keys + float64((len(names)+1)/2)*4 + 5}
	if len(across) < len(g.X) || len(up) < len(g.Y) {
		f.Title += fmt.Sprintf(" (%d of %d tanks; all are in the table)", len(across)*len(up), len(g.X)*len(g.Y))
	}
	f.AddText(x0, 2.5, label, drawing.Left, g.Up)
	for j, v := range up {
		y := 4 + high - float64(j+1)*fieldHigh
		f.AddText(x0-2, y+fieldHigh/2+0.9, label, drawing.Right, g.Y[v])
		for i, u := range across {
			field(f, x0+float64(i)*fieldWide, y, g.Cells[u][v], letters)
		}
	}
	for i, u := range across {
		f.Texts = append(f.Texts, drawing.Text{At: drawing.Point{X: x0 + (float64(i)+0.5)*fieldWide + 0.9, Y: 4 + high + 1.5},
			Text: clip(g.X[u], 12), Size: label, Align: drawing.Right, Turn: math.Pi / 2})
	}
	f.AddText(x0, high+values+7, label+0.2, drawing.Left, g.Across)
	for i, name := range names {
		f.AddText(x0+float64(i%2)*72, keys+float64(i/2)*4, label, drawing.Left, letters[name]+"  "+clipInside(name, 50))
	}
	f.AddText(x0, f.Height-1.5, label, drawing.Left, "grey: a check is not satisfied; crossed: none fails, one is not assessed; –: no tank, or not run; white: all are satisfied")
	return f
}

// letters gives each check a letter, in the order in which they are met.
func (g Governs) letters(across, up []int) (letters map[string]string, names []string) {
	letters = map[string]string{}
	for _, v := range up {
		for _, u := range across {
			name := g.Cells[u][v].Check
			if name == "" || letters[name] != "" {
				continue
			}
			n := len(names)
			letters[name] = strings.Repeat(string(rune('A'+n%26)), 1+n/26)
			names = append(names, name)
		}
	}
	return letters, names
}

// field draws one tank.
func field(f *drawing.Figure, x, y float64, c Governing, letters map[string]string) {
	letter := "–"
	if c.Check != "" && !c.Fault {
		letter = letters[c.Check]
		switch c.State {
		case check.NotSatisfied:
			f.Fills = append(f.Fills, drawing.Fill{Points: drawing.Rectangle(x, y, fieldWide, fieldHigh), Grey: 0.72})
		case check.NotAssessed:
			f.AddLine(x, y+fieldHigh, x+fieldWide, y, drawing.Pen{Width: 0.15, Grey: 0.4})
		}
	}
	f.AddRectangle(x, y, fieldWide, fieldHigh, drawing.Pen{Width: 0.15})
	f.AddText(x+fieldWide/2, y+fieldHigh/2+0.9, label, drawing.Centre, letter)
}

// Evenly returns at most so many of n places, evenly, the first and the last among them.
func Evenly(n, most int) []int {
	out := make([]int, min(n, most))
	for i := range out {
		out[i] = i
		if n > most {
			out[i] = i * (n - 1) / (most - 1)
		}
	}
	return out
}
