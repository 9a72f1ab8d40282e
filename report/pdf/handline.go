package pdf

import (
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/formula"
)

// formulaLines adds the formula of a check to a block: what can be read as a formula
// with fractions and roots, the rest in words.
func (p *paper) formulaLines(b *block, r check.Result) {
	const indent = 4.0
	s := setter{p: p, size: body + 1}
	var steps [][]box
	for _, st := range report.Statements(r) {
		boxes := s.statement(st, p.inner()-indent)
		if st.Joint != "" {
			boxes = append(boxes, s.text(st.Joint))
		}
		steps = append(steps, boxes)
	}
	for _, line := range s.flow(steps, p.inner()-indent) {
		b.math(line, indent)
	}
}

// flow deals steps out in lines of a width [mm], side by side where they fit; a step
// that is wider than a line is broken inside.
func (s setter) flow(steps [][]box, width float64) (lines []box) {
	gap := s.space(0.9)
	var line []box
	flush := func() {
		if len(line) > 0 {
			lines = append(lines, row(line...))
		}
		line = nil
	}
	for _, step := range steps {
		w := row(step...).wide
		if len(line) > 0 && row(line...).wide+gap.wide+w > width {
			flush()
		}
		if w > width {
			lines = append(lines, broken(step, width)...)
			continue
		}
		if len(line) > 0 {
			line = append(line, gap)
		}
		line = append(line, step...)
	}
	flush()
	return lines
}

// statement returns a statement in boxes; one with a fraction wider than the room
// is set with strokes instead [mm].
func (s setter) statement(st formula.Statement, room float64) []box {
	if st.Sides == nil {
		return s.words(st.Text)
	}
	var out []box
	if st.Words != "" {
		out = append(s.words(st.Words), s.space(0.3))
	}
	for i, side := range st.Sides {
		if i > 0 {
			out = append(out, s.relation(st.Relations[i-1]))
		}
		out = append(out, s.within(side, room)...)
	}
	return out
}

// relation sets a sign between sides; a line may be broken before it.
func (s setter) relation(sign string) box {
	b := row(s.space(0.35), s.text(sign), s.space(0.35))
	b.loose = true
	return b
}

// words sets text word by word.
func (s setter) words(text string) (out []box) {
	word := ""
	flush := func() {
		if word != "" {
			out = append(out, s.text(word))
		}
		word = ""
	}
	for _, r := range text {
		if r == ' ' {
			flush()
			out = append(out, s.gap(0.3))
			continue
		}
		word += string(r)
	}
	flush()
	return out
}

// within returns a part in boxes of which none is wider than the room [mm], if need
// be with strokes in place of fractions.
func (s setter) within(e formula.Expr, room float64) []box {
	boxes := s.pieces(e)
	for _, b := range boxes {
		if b.wide > room {
			s.inline = true
			return s.flat(e)
		}
	}
	return boxes
}

// flat returns a part with its outermost fraction in the line, so that it can be
// broken inside.
func (s setter) flat(e formula.Expr) []box {
	q, ok := e.(formula.Quotient)
	if !ok {
		return s.pieces(e)
	}
	out := append(s.pieces(formula.Factor(q.Over)), s.text("/"))
	return append(out, s.pieces(piece(q.Under))...)
}

// handLines adds what the inputs of a check give, step by step.
func (p *paper) handLines(b *block, r check.Result) {
	const indent = 8.0
	room := p.inner() - indent
	s := setter{p: p, size: small}
	var steps [][]box
	for _, h := range report.Hand(r, p.sheet.Units) {
		var boxes []box
		if h.Symbol != "" {
			boxes = append(boxes, s.text(h.Symbol))
		} else {
			inline := s
			inline.inline = true
			boxes = append(boxes, inline.pieces(h.Of)...)
		}
		boxes = append(boxes, s.relation("="))
		boxes = append(boxes, s.within(h.Numbers, room)...)
		boxes = append(boxes, s.relation("="), s.text(h.Answer+";"))
		steps = append(steps, boxes)
	}
	for _, line := range s.flow(steps, room) {
		b.math(line, indent)
	}
}

// math adds a line of a formula to a block.
func (b *block) math(set box, indent float64) {
	const clear = 0.5 // over and under it [mm]
	b.lines = append(b.lines, line{math: &set, indent: indent, high: set.over + set.under + 2*clear})
	b.height += set.over + set.under + 2*clear
}
