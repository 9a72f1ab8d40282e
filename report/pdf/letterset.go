package pdf

import "strconv"

// A letterset is letters of one face.
type letterset [1 << 16 / 64]uint64

func (s *letterset) holds(r rune) bool { return s[r/64]&(1<<(r%64)) != 0 }
func (s *letterset) put(r rune)        { s[r/64] |= 1 << (r % 64) }

// set puts clean text on the page, as the writer of the document does: the first time
// that a letter of a face is used by the writer itself, which keeps of each face the
// letters that are used, and where text is not of the colour of fills. Else the same
// bytes are written here, in a third of the time.
func (p *paper) set(x, y float64, clean string) {
	used := &p.used[0]
	if p.style == "B" {
		used = &p.used[1]
	}
	known := true
	for _, r := range clean {
		if !used.holds(r) {
			used.put(r)
			known = false
		}
	}
	r, g, b := p.doc.GetFillColor()
	tr, tg, tb := p.doc.GetTextColor()
	if !known || r != tr || g != tg || b != tb {
		p.doc.Text(x, y, clean)
		return
	}
	k := p.doc.GetConversionRatio()
	line := append(p.line[:0], "BT "...)
	line = strconv.AppendFloat(line, x*k, 'f', 2, 64)
	line = append(line, ' ')
	line = strconv.AppendFloat(line, (p.height-y)*k, 'f', 2, 64)
	line = append(line, " Td ("...)
	for _, r := range clean { // of the Basic Multilingual Plane: others were replaced
		line = escaped(escaped(line, byte(r>>8)), byte(r))
	}
	line = append(line, ") Tj ET"...)
	p.line = line
	p.doc.RawWriteStr(string(line))
}

// escaped adds a byte of a text in brackets.
func escaped(line []byte, b byte) []byte {
	switch b {
	case '\\', '(', ')':
		return append(line, '\\', b)
	case '\r':
		return append(line, '\\', 'r')
	}
	return append(line, b)
}
