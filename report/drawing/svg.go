package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// SVG returns the figure as a Scalable Vector Graphics file, one millimetre a
// unit. It is an error where a place is not finite.
func (f *Figure) SVG() ([]byte, error) {
	if !f.Finite() {
		return nil, fmt.Errorf("figure %q has a place that is not a finite number", f.Name)
	}
	var b bytes.Buffer
	w, h := two(f.Width), two(f.Height)
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" font-family="sans-serif">`+"\n", w, h, w, h)
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(f.Title))
	fmt.Fprintf(&b, `<rect width="%s" height="%s" fill="white"/>`+"\n", w, h)
	for _, p := range f.Fills {
		fmt.Fprintf(&b, `<polygon points="%s" fill="%s" stroke="none"/>`+"\n", points(p.Points), grey(p.Grey))
	}
	for _, p := range f.Polylines {
		shape := "polyline"
		if p.Closed {
			shape = "polygon"
		}
		fmt.Fprintf(&b, `<%s points="%s" fill="none"%s/>`+"\n", shape, points(p.Points), stroke(p.Pen))
	}
	for _, l := range f.Lines {
		fmt.Fprintf(&b, `<line x1="%s" y1="%s" x2="%s" y2="%s"%s/>`+"\n",
			two(l.From.X), two(l.From.Y), two(l.To.X), two(l.To.Y), stroke(l.Pen))
	}
	for _, a := range f.Arcs {
		fmt.Fprintf(&b, `<polyline points="%s" fill="none"%s/>`+"\n", points(a.Points()), stroke(a.Pen))
	}
	for _, t := range f.Texts {
		writeText(&b, t)
	}
	b.WriteString("</svg>\n")
	return b.Bytes(), nil
}

// Points returns the arc as a chain of places close enough for the eye: the
// chord is within 0.02 mm of the arc.
func (a Arc) Points() []Point {
	const sag = 0.02
	step := math.Pi / 8
	if a.Radius > sag {
		step = math.Min(step, 2*math.Acos(1-sag/a.Radius))
	}
	n := max(2, int(math.Ceil(math.Abs(a.Sweep)/step)))
	ps := make([]Point, n+1)
	for i := range ps {
		sin, cos := math.Sincos(a.Start + a.Sweep*float64(i)/float64(n))
		ps[i] = Point{a.Centre.X + a.Radius*cos, a.Centre.Y + a.Radius*sin}
	}
	return ps
}

func writeText(b *bytes.Buffer, t Text) {
	anchor := [...]string{"start", "middle", "end"}[t.Align]
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" stroke="none" text-anchor="%s"`, two(t.At.X), two(t.At.Y), two(t.Size), anchor)
	if t.Turn != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, two(-t.Turn*180/math.Pi), two(t.At.X), two(t.At.Y))
	}
	if t.Bold {
		b.WriteString(` font-weight="bold"`)
	}
	fmt.Fprintf(b, ">%s</text>\n", escape(t.Text))
}

func stroke(p Pen) string {
	text := fmt.Sprintf(` stroke="%s" stroke-width="%s" stroke-linejoin="round"`, grey(p.Grey), two(p.Width))
	if len(p.Dash) > 0 {
		parts := make([]string, len(p.Dash))
		for i, d := range p.Dash {
			parts[i] = two(d)
		}
		text += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return text
}

func points(ps []Point) string {
	parts := make([]string, len(ps))
	for i, p := range ps {
		parts[i] = two(p.X) + "," + two(p.Y)
	}
	return strings.Join(parts, " ")
}

func grey(g float64) string {
	v := int(math.Round(255 * math.Max(0, math.Min(1, g))))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// two writes v [mm] with two decimals and without a minus before zero.
func two(v float64) string {
	text := strconv.FormatFloat(v, 'f', 2, 64)
	if text == "-0.00" {
		return "0.00"
	}
	return text
}

// escape returns text safe in XML; what XML cannot hold becomes U+FFFD.
func escape(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // a bytes.Buffer never fails
	return b.String()
}
