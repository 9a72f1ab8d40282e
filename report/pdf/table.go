package pdf

// A column of a table.
type column struct {
	title string
	width float64 // share of the table's width [-]
	right bool    // numbers stand to the right
	index bool    // symbols: x_y is set with a lowered y
}

// A cell may be set bold.
type cell struct {
	text string
	bold bool
}

func plain(texts ...string) []cell {
	cells := make([]cell, len(texts))
	for i, t := range texts {
		cells[i].text = t
	}
	return cells
}

// padding left and right of a cell's text [mm].
const padding = 1.2

// table sets rows under a head that is repeated on every page; a row is never
// broken. Rows are at least least high [mm].
func (p *paper) table(columns []column, rows [][]cell, least float64) {
	total := 0.0
	for _, c := range columns {
		total += c.width
	}
	widths := make([]float64, len(columns))
	titles := make([]cell, len(columns))
	for i, c := range columns {
		widths[i] = c.width / total * p.inner()
		titles[i] = cell{c.title, true}
	}
	if len(rows) == 0 {
		return
	}
	head, headHeight := p.cells(titles, widths)
	_, firstHeight := p.cells(rows[0], widths)
	p.need(headHeight + max(firstHeight, least))
	p.tableHead(columns, head, widths, headHeight)
	for _, row := range rows {
		lines, h := p.cells(row, widths)
		h = max(h, least)
		if p.y+h > p.floor() {
			p.newPage()
			p.tableHead(columns, head, widths, headHeight)
		}
		p.row(columns, row, lines, widths, false)
		if least > 0 {
			p.boxes(widths, h)
		}
		p.y += h
		p.hairline(p.y)
	}
	p.y += 3
}

// cells returns the lines of each cell and the height of the row [mm].
func (p *paper) cells(row []cell, widths []float64) ([][]string, float64) {
	lines := make([][]string, len(row))
	most := 1
	for i, c := range row {
		p.font(style(c.bold), small)
		lines[i] = p.wrap(c.text, widths[i]-2*padding)
		most = max(most, len(lines[i]))
	}
	return lines, float64(most)*small*leading + 1.4
}

func (p *paper) tableHead(columns []column, head [][]string, widths []float64, h float64) {
	p.doc.SetFillColor(225, 225, 225)
	p.doc.Rect(left, p.y, p.inner(), h, "F")
	p.doc.SetFillColor(0, 0, 0) // as text: else each word would carry its colour
	bold := make([]cell, len(columns))
	for i := range bold {
		bold[i].bold = true
	}
	p.row(columns, bold, head, widths, true)
	p.y += h
	p.rule(p.y, 0.25)
}

func (p *paper) row(columns []column, row []cell, lines [][]string, widths []float64, head bool) {
	x := left
	for i := range row {
		p.font(style(row[i].bold), small)
		for n, line := range lines[i] {
			p.indices = columns[i].index && !head
			y := p.y + 0.7 + (float64(n)+0.78)*small*leading
			if columns[i].right {
				p.putRight(x+widths[i]-padding, y, line)
			} else {
				p.put(x+padding, y, line)
			}
		}
		p.indices = false
		x += widths[i]
	}
}

// boxes parts the cells of a row that is to be filled in by hand.
func (p *paper) boxes(widths []float64, h float64) {
	p.doc.SetDrawColor(150, 150, 150)
	p.doc.SetLineWidth(0.1)
	x := left
	p.doc.Line(x, p.y, x, p.y+h)
	for _, w := range widths {
		x += w
		p.doc.Line(x, p.y, x, p.y+h)
	}
	p.doc.SetDrawColor(0, 0, 0)
}

func (p *paper) hairline(y float64) {
	p.doc.SetDrawColor(150, 150, 150)
	p.doc.SetLineWidth(0.1)
	p.doc.Line(left, y, p.width-right, y)
	p.doc.SetDrawColor(0, 0, 0)
}

func style(bold bool) string {
	if bold {
		return "B"
	}
	return ""
}
