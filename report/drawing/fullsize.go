package drawing

import (
	"bytes"
	"fmt"
	"math"
	"strings"
)

// fullSize says in every file what its numbers are.
const fullSize = "units: mm; scale 1:1, one unit is one millimetre"

// margin is the paper left round a part [mm].
const margin = 10.0

// SVG returns the part as a Scalable Vector Graphics file at full size, one
// millimetre a unit: the layers are groups of their names, arcs are arcs. It is
// an error where a place is not finite.
func (p *Part) SVG() ([]byte, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	texts, least, most := p.words()
	x := func(v float64) string { return plain(v-least.X+margin, 4) }
	y := func(v float64) string { return plain(most.Y-v+margin, 4) }
	w, h := plain(most.X-least.X+2*margin, 4), plain(most.Y-least.Y+2*margin, 4)
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" font-family="sans-serif">`+"\n", w, h, w, h)
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(p.Title))
	fmt.Fprintf(&b, "<desc>%s</desc>\n", escape(strings.Join(append([]string{fullSize}, p.Remarks...), "; ")))
	for _, layer := range []struct{ name, style string }{{Cut, `stroke="#000000" stroke-width="0.25"`}, {Mark, `stroke="#606060" stroke-width="0.18" stroke-dasharray="4 1.5"`}} {
		fmt.Fprintf(&b, `<g id="%s" fill="none" %s>`+"\n", layer.name, layer.style)
		for _, path := range p.Paths {
			if path.Layer == layer.name {
				fmt.Fprintf(&b, `<path d="%s"/>`+"\n", path.svg(x, y))
			}
		}
		b.WriteString("</g>\n")
	}
	fmt.Fprintf(&b, `<g id="%s">`+"\n", Words)
	for _, t := range texts {
		anchor := [...]string{"start", "middle", "end"}[t.Align]
		fmt.Fprintf(&b, `<text x="%s" y="%s" font-size="%s" text-anchor="%s">%s</text>`+"\n", x(t.At.X), y(t.At.Y), plain(t.Size, 2), anchor, escape(t.Text))
	}
	b.WriteString("</g>\n</svg>\n")
	return b.Bytes(), nil
}

// svg returns the path's outline; x and y place it on the paper.
func (p Path) svg(x, y func(float64) string) string {
	var b strings.Builder
	n := len(p.Vertices)
	for i, v := range p.Vertices {
		if i == 0 {
			fmt.Fprintf(&b, "M%s %s", x(v.X), y(v.Y))
		}
		if i == n-1 && !p.Closed {
			return b.String()
		}
		next := p.Vertices[(i+1)%n]
		switch {
		case v.Bulge == 0 && i == n-1: // Z draws it
		case v.Bulge == 0:
			fmt.Fprintf(&b, " L%s %s", x(next.X), y(next.Y))
		default:
			r, way := v.arc(next).Radius, 0 // y down: anticlockwise stays so to the eye, flag 0
			if v.Bulge < 0 {
				way = 1
			}
			fmt.Fprintf(&b, " A%s %s 0 0 %d %s %s", plain(r, 6), plain(r, 6), way, x(next.X), y(next.Y))
		}
	}
	return b.String() + " Z"
}

// scales are those of drawings that make a part smaller: paper over part.
var scales = []float64{1, 2, 2.5, 5, 10, 20, 50, 100, 200, 500}

// Room on paper round a part for labels and the two lines of its size [mm].
const (
	sideRoom, topRoom, lowRoom = 16.0, 9.0, 24.0
	labelSize                  = 2.3
)

// Scaled returns the part as a figure no wider and no higher than asked [mm], at
// the largest usual scale, which it returns as it is printed. wide and high are the
// texts on the lines of its size; a bar of 50 mm shows whether a print is true.
func (p *Part) Scaled(width, height float64, wide, high string) (*Figure, string, error) {
	if err := p.check(); err != nil {
		return nil, "", err
	}
	least, most := p.bounds()
	w, h := most.X-least.X, most.Y-least.Y
	scale := 0.0
	for _, s := range scales {
		if w/s <= width-2*sideRoom && h/s <= height-topRoom-lowRoom {
			scale = s
			break
		}
	}
	if scale == 0 {
		return nil, "", fmt.Errorf("part %q, %.4g by %.4g mm, is too large to draw", p.Name, w, h)
	}
	said := "scale 1:" + strings.TrimSuffix(plain(scale, 1), ".0")
	f := &Figure{Name: p.Name, Title: p.Title, Width: width, Height: h/scale + topRoom + lowRoom}
	left := (width - w/scale) / 2
	at := func(q Point) Point { return Point{left + (q.X-least.X)/scale, topRoom + (most.Y-q.Y)/scale} }
	for _, path := range p.Paths {
		pen := Pen{Width: 0.35}
		if path.Layer == Mark {
			pen = Pen{Width: 0.15, Grey: 0.3, Dash: []float64{3, 1}}
		}
		line := Polyline{Closed: path.Closed, Pen: pen}
		for _, q := range path.Points() {
			line.Points = append(line.Points, at(q))
		}
		f.Polylines = append(f.Polylines, line)
	}
	for _, l := range p.Labels {
		on := Label{At: at(l.At), Away: Point{l.Away.X, -l.Away.Y}, Text: l.Text}.centre(labelSize)
		half := letters(l.Text) * labelSize / 2
		on.X = math.Max(half, math.Min(width-half, on.X))
		f.AddText(on.X, on.Y+0.35*labelSize, labelSize, Centre, l.Text)
	}
	f.size(at(Point{least.X, least.Y}), at(Point{most.X, most.Y}), wide, high, said)
	return f, said, nil
}

// size adds the two lines of a part's size, from its lower left to its upper right
// corner on paper, the scale and the bar of 50 mm.
func (f *Figure) size(low, top Point, wide, high, said string) {
	pen, y, x := Pen{Width: 0.15}, low.Y+9, low.X-11
	f.AddLine(low.X, y, top.X, y, pen)
	f.AddLine(low.X, low.Y+4, low.X, y+1, pen)
	f.AddLine(top.X, low.Y+4, top.X, y+1, pen)
	f.AddArrow(low.X, y, math.Pi, 2)
	f.AddArrow(top.X, y, 0, 2)
	f.AddText((low.X+top.X)/2, y-1, 2.6, Centre, wide)
	if high != "" { // none of a round part: its diameter says it
		f.AddLine(x, low.Y, x, top.Y, pen)
		f.AddLine(x-1, low.Y, low.X-4, low.Y, pen)
		f.AddLine(x-1, top.Y, low.X-4, top.Y, pen)
		f.AddArrow(x, low.Y, math.Pi/2, 2)
		f.AddArrow(x, top.Y, -math.Pi/2, 2)
		f.Texts = append(f.Texts, Text{At: Point{x - 1, (low.Y + top.Y) / 2}, Text: high, Size: 2.6, Align: Centre, Turn: math.Pi / 2})
	}
	y += 8
	bar := Pen{Width: 0.6}
	f.AddLine(0, y, 50, y, bar)
	f.AddLine(0, y-1.5, 0, y+1.5, bar)
	f.AddLine(50, y-1.5, 50, y+1.5, bar)
	f.AddText(53, y+1, 2.6, Left, said+"; this bar is 50 mm long where the print is true")
}
