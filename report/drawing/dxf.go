package drawing

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// DXF returns the part as a drawing exchange file of release 12: outlines as
// polylines, arcs as bulges, on the layers CUT, MARK and TEXT. That release knows no
// unit: comments at the head and a text say that one unit is one millimetre. It is
// an error where a place is not finite.
//
// Source: group codes of the published reference of release 12 (recalled), read back
// by an independent reader in the tests.
func (p *Part) DXF() ([]byte, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	d := &dxf{}
	texts, least, most := p.words()
	for _, r := range append([]string{p.Title, fullSize}, p.Remarks...) {
		d.pair(999, ascii(r))
	}
	d.pair(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009")
	d.pair(9, "$EXTMIN", 10, least.X, 20, least.Y, 30, 0.0, 9, "$EXTMAX", 10, most.X, 20, most.Y, 30, 0.0, 0, "ENDSEC")
	d.pair(0, "SECTION", 2, "TABLES", 0, "TABLE", 2, "LTYPE", 70, 1,
		0, "LTYPE", 2, "CONTINUOUS", 70, 64, 3, "Solid line", 72, 65, 73, 0, 40, 0.0, 0, "ENDTAB")
	d.pair(0, "TABLE", 2, "LAYER", 70, 3)
	for i, layer := range []string{Cut, Mark, Words} {
		d.pair(0, "LAYER", 2, layer, 70, 64, 62, []int{1, 5, 3}[i], 6, "CONTINUOUS")
	}
	d.pair(0, "ENDTAB", 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES")
	for _, path := range p.Paths {
		closed := 0
		if path.Closed {
			closed = 1
		}
		d.pair(0, "POLYLINE", 8, path.Layer, 66, 1, 10, 0.0, 20, 0.0, 30, 0.0, 70, closed)
		for _, v := range path.Vertices {
			d.pair(0, "VERTEX", 8, path.Layer, 10, v.X, 20, v.Y, 30, 0.0)
			if v.Bulge != 0 {
				d.pair(42, v.Bulge)
			}
		}
		d.pair(0, "SEQEND", 8, path.Layer)
	}
	for _, t := range texts {
		d.text(t)
	}
	d.pair(0, "ENDSEC", 0, "EOF")
	return d.Bytes(), nil
}

// dxf is the file while it is written.
type dxf struct{ bytes.Buffer }

// pair writes group codes and values in turn.
func (d *dxf) pair(list ...any) {
	for i := 0; i < len(list); i += 2 {
		value := fmt.Sprint(list[i+1])
		if v, ok := list[i+1].(float64); ok {
			value = plain(v, 9)
		}
		fmt.Fprintf(d, "%3d\r\n%s\r\n", list[i], value)
	}
}

// text writes one line of words.
func (d *dxf) text(t Text) {
	x, y := t.At.X, t.At.Y
	d.pair(0, "TEXT", 8, Words, 10, x, 20, y, 30, 0.0, 40, t.Size, 1, ascii(t.Text))
	if t.Align == Centre {
		d.pair(72, 1, 11, x, 21, y, 31, 0.0)
	}
}

// plain writes v [mm or -] with so many decimals and no zeros that say nothing.
func plain(v float64, decimals int) string {
	text := strings.TrimRight(strconv.FormatFloat(v, 'f', decimals, 64), "0")
	if text == "-0." {
		return "0.0"
	}
	if strings.HasSuffix(text, ".") {
		text += "0"
	}
	return text
}

// ascii returns text as release 12 takes it: its own codes for degree, diameter and
// plus-minus, common marks by their nearest letter, "?" for the rest.
func ascii(text string) string {
	text = strings.NewReplacer("%%", "% %", "°", "%%d", "Ø", "%%c", "±", "%%p", "–", "-", "−", "-", "×", "x", "α", "alpha", "²", "2",
		"Ω", "Omega", "π", "pi").Replace(text)
	return strings.Map(func(r rune) rune {
		switch {
		case r < ' ':
			return ' '
		case r > '~':
			return '?'
		}
		return r
	}, text)
}
