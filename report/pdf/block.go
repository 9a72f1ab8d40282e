package pdf

// A block is a check laid out in lines that stay on one page.
type block struct {
	lines  []line
	height float64 // [mm]
	rule   bool    // a line over it
	head   int     // lines that stand together with the next: its title, formula, source and case
}

// least returns what must be left of a page for a block to be begun on it [mm]: all of
// it where it is not tall; else its head with what follows, on a page so high.
func (b block) least(page float64) float64 {
	if b.height <= tall {
		return b.height
	}
	head := 0.0
	for i, l := range b.lines[:min(b.head+2, len(b.lines))] {
		if i == b.head { // the symbols, which stay with their title
			head = max(head+l.height()*2, head+together(b.lines[i:]))
			break
		}
		head += l.height()
	}
	return min(max(head, tall/2), page)
}

type line struct {
	text    string
	indent  float64 // [mm]
	bold    bool
	indices bool
	right   string    // at the end of the line
	cells   []string  // side by side in place of the text
	stops   []float64 // where the cells after the first end, from the indent; nil: columns of equal width [mm]
	size    float64   // [pt]
	math    *box      // a formula in place of the text, high
	high    float64   // [mm]
	whole   bool      // stands on one page with those beside it that do too
}

// height returns the height of the line [mm].
func (l line) height() float64 {
	if l.math != nil {
		return l.high
	}
	return l.size * leading
}

// add wraps a line into the block.
func (p *paper) add(b *block, l line) {
	p.font(style(l.bold), l.size)
	p.indices = l.indices
	defer func() { p.indices = false }()
	room := p.inner() - l.indent
	if l.right != "" {
		room -= p.measure(l.right) + 4
	}
	for i, text := range p.wrap(l.text, room) {
		part := l
		part.text = text
		if i > 0 {
			part.right = ""
		}
		b.lines = append(b.lines, part)
		b.height += l.size * leading
	}
}

// draw sets a block at the place of the next line; one higher than a page is
// broken where the page ends.
func (p *paper) draw(b block) {
	if b.rule {
		p.hairline(p.y)
		p.y += 0.8
	}
	for i, l := range b.lines {
		p.need(together(b.lines[i:]))
		if l.math != nil {
			l.math.draw(p, left+l.indent, p.y+(l.high-l.math.over-l.math.under)/2+l.math.over)
			p.y += l.high
			continue
		}
		p.font(style(l.bold), l.size)
		p.indices = l.indices
		base := p.y + l.size*leading*0.78
		p.put(left+l.indent, base, l.text)
		for k, c := range l.cells {
			if l.stops != nil && k > 0 {
				p.putRight(left+l.indent+l.stops[k], base, c)
			} else {
				p.put(left+l.indent+float64(k)*p.cellWidth(l.indent), base, c)
			}
		}
		if l.right != "" {
			p.putRight(p.width-right, base, l.right)
		}
		p.indices = false
		p.y += l.size * leading
	}
	p.y += 0.8
}

// together returns the height of the first line with the rest of its table or of its
// list of symbols, which are not broken [mm].
func together(lines []line) float64 {
	h := lines[0].height()
	for i := 1; i < len(lines) && (lines[0].stops != nil && lines[i].stops != nil || lines[0].whole && lines[i].whole); i++ {
		h += lines[i].height()
	}
	return h
}

// listWhole is the height up to which a list of symbols is kept on one page [mm]: a
// longer one would leave too much of the page before it empty.
const listWhole = 50.0

// keep holds the lines of a list, from the first of them on, on one page.
func (b *block) keep(from int) {
	h := 0.0
	for _, l := range b.lines[from:] {
		h += l.height()
	}
	for i := from; i < len(b.lines) && h <= listWhole; i++ {
		b.lines[i].whole = true
	}
}
