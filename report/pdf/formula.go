package pdf

import (
	"proofsheet/report/formula"
)

// A box is a piece of a formula set in type: how wide it is and how far it reaches
// over and under its base line [mm]. It is drawn on any writing of the document it was
// measured for.
type box struct {
	wide, over, under float64
	draw              func(p *paper, x, base float64)
	loose             bool // a line may be broken before it
	blank             bool // nothing to be seen: left out where a line is broken
}

// A setter sets formulas in one size of type.
type setter struct {
	p      *paper
	size   float64 // [pt]
	nested int     // fractions round this one
	inline bool    // fractions with a stroke in the line
}

const millimetresPoint = 25.4 / 72

// em returns the size of the type [mm].
func (s setter) em() float64 { return s.size * millimetresPoint }

// smaller returns the setter of an exponent.
func (s setter) smaller() setter {
	s.size *= scaled
	s.inline = true
	return s
}

// text sets a symbol, a number or a sign.
func (s setter) text(t string) box {
	s.p.font("", s.size)
	s.p.indices = true
	w := s.p.measure(t)
	s.p.indices = false
	return box{wide: w, over: 0.76 * s.em(), under: 0.24 * s.em(), draw: func(p *paper, x, base float64) {
		p.font("", s.size)
		p.indices = true
		p.put(x, base, t)
		p.indices = false
	}}
}

// space returns nothing of a width, in sizes of type [-].
func (s setter) space(ems float64) box {
	return box{wide: ems * s.em(), draw: func(*paper, float64, float64) {}}
}

// gap is a space at which a line may be broken.
func (s setter) gap(ems float64) box {
	b := s.space(ems)
	b.loose, b.blank = true, true
	return b
}

// row sets boxes side by side.
func row(boxes ...box) box {
	out := box{}
	for _, b := range boxes {
		out.wide += b.wide
		out.over, out.under = max(out.over, b.over), max(out.under, b.under)
	}
	out.draw = func(p *paper, x, base float64) {
		for _, b := range boxes {
			b.draw(p, x, base)
			x += b.wide
		}
	}
	return out
}

// set returns a part of a formula as one box.
func (s setter) set(e formula.Expr) box { return row(s.pieces(e)...) }

// pieces returns a part as boxes between which a line may be broken where they are
// loose.
func (s setter) pieces(e formula.Expr) []box {
	switch e := e.(type) {
	case formula.Sum:
		op := row(s.space(0.28), s.text(e.Op), s.space(0.28))
		op.loose = true
		return append(append(s.pieces(e.Left), op), s.pieces(formula.Factor(e.Right))...)
	case formula.Neg:
		return append([]box{s.text("−")}, s.pieces(formula.Factor(e.Of))...)
	case formula.Product:
		return s.product(e)
	case formula.Quotient:
		return []box{s.quotient(e)}
	case formula.Power:
		return []box{s.power(e)}
	case formula.Call:
		return s.call(e)
	case formula.Group:
		return s.group(e)
	}
	return []box{s.text(e.String())}
}

func (s setter) product(e formula.Product) (out []box) {
	joint := s.space(0.2)
	if e.Joint() != " " {
		joint = row(s.space(0.2), s.text("·"), s.space(0.2))
		joint.loose = true
	}
	for i, f := range e.Factors {
		if i > 0 {
			out = append(out, joint)
		}
		out = append(out, s.pieces(formula.Factor(f))...)
	}
	return out
}

// axis is how far over the base line a fraction's rule stands, in sizes of type [-].
const axis = 0.27

// quotient sets a fraction, or with a stroke where it stands inside others.
func (s setter) quotient(e formula.Quotient) box {
	if s.inline || s.nested > 1 {
		return row(s.set(formula.Factor(e.Over)), s.text("/"), s.set(piece(e.Under)))
	}
	in := s
	in.nested++
	if s.nested > 0 {
		in.size *= 0.88
	}
	num, den := in.set(formula.Bare(e.Over)), in.set(formula.Bare(e.Under))
	gap, rule := 0.16*s.em(), axis*s.em()
	wide := max(num.wide, den.wide) + 0.3*s.em()
	return box{
		wide: wide + 0.2*s.em(), over: rule + gap + num.under + num.over, under: den.over + den.under + gap - rule,
		draw: func(p *paper, x, base float64) {
			x += 0.1 * s.em()
			num.draw(p, x+(wide-num.wide)/2, base-rule-gap-num.under)
			den.draw(p, x+(wide-den.wide)/2, base-rule+gap+den.over)
			s.stroke(p, x, base-rule, x+wide, base-rule)
		},
	}
}

// piece returns a part as it stands under a stroke in the line.
func piece(e formula.Expr) formula.Expr {
	switch e.(type) {
	case formula.Num, formula.Sym, formula.Group, formula.Power, formula.Call:
		return e
	}
	return formula.Group{Open: "(", Of: e}
}

// stroke draws a line as thick as those of letters.
func (s setter) stroke(p *paper, x1, y1, x2, y2 float64) {
	p.doc.SetLineWidth(0.055 * s.em())
	p.doc.SetDrawColor(0, 0, 0)
	p.doc.Line(x1, y1, x2, y2)
}

func (s setter) power(e formula.Power) box {
	base := s.set(e.Foot())
	exponent := s.smaller().set(formula.Bare(e.Exponent))
	lift := max(0.34*s.em(), base.over-0.45*s.em())
	return box{
		wide: base.wide + 0.05*s.em() + exponent.wide, over: max(base.over, lift+exponent.over), under: base.under,
		draw: func(p *paper, x, y float64) {
			base.draw(p, x, y)
			exponent.draw(p, x+base.wide+0.05*s.em(), y-lift)
		},
	}
}

// call sets a function: a root and the bars of a size by lines.
func (s setter) call(e formula.Call) []box {
	switch e.Name {
	case "√":
		return []box{s.root(s.set(e.Args[0]))}
	case "|":
		return []box{s.bars(s.set(e.Args[0]))}
	case "max", "min", "exp", "ln":
		var inside []box
		for i, a := range e.Args {
			if i > 0 {
				inside = append(inside, s.text(","), s.gap(0.3))
			}
			inside = append(inside, s.pieces(a)...)
		}
		return append([]box{s.text(e.Name)}, s.bracketed("(", ")", inside)...)
	}
	return []box{row(s.text(e.Name), s.space(0.2), s.set(angle(e.Args[0])))}
}

// angle returns what a sine is taken of: in brackets where it is more than one piece.
func angle(e formula.Expr) formula.Expr {
	if _, ok := e.(formula.Value); ok {
		return e
	}
	return piece(e)
}

func (s setter) root(of box) box {
	top, foot := of.over+0.12*s.em(), of.under
	lead := 0.55 * s.em()
	return box{wide: lead + of.wide + 0.1*s.em(), over: top + 0.08*s.em(), under: foot, draw: func(p *paper, x, base float64) {
		s.stroke(p, x+0.05*s.em(), base-0.28*s.em(), x+0.15*s.em(), base-0.34*s.em())
		s.stroke(p, x+0.15*s.em(), base-0.34*s.em(), x+0.3*s.em(), base+foot)
		s.stroke(p, x+0.3*s.em(), base+foot, x+0.5*s.em(), base-top)
		s.stroke(p, x+0.5*s.em(), base-top, x+lead+of.wide+0.08*s.em(), base-top)
		of.draw(p, x+lead, base)
	}}
}

func (s setter) bars(of box) box {
	side := 0.28 * s.em()
	return box{wide: of.wide + 2*side, over: of.over, under: of.under, draw: func(p *paper, x, base float64) {
		s.stroke(p, x+side/2, base-of.over, x+side/2, base+of.under)
		of.draw(p, x+side, base)
		s.stroke(p, x+1.5*side+of.wide, base-of.over, x+1.5*side+of.wide, base+of.under)
	}}
}

func (s setter) group(e formula.Group) []box {
	return s.bracketed(e.Open, e.Closing(), s.pieces(e.Of))
}

// bracketed sets boxes in brackets as high as they are.
func (s setter) bracketed(open, closing string, inside []box) []box {
	whole := row(inside...)
	high := whole.over + whole.under
	if high <= 1.15*s.em() {
		return append(append([]box{s.text(open)}, inside...), s.text(closing))
	}
	grown := s
	grown.size = s.size * high / s.em()
	bracket := func(t string) box {
		b := grown.text(t)
		b.over, b.under = whole.over, whole.under
		draw, drop := b.draw, whole.under-0.2*high
		b.draw = func(p *paper, x, base float64) { draw(p, x, base+drop) }
		return b
	}
	return append(append([]box{bracket(open)}, inside...), bracket(closing))
}

// broken deals boxes out in lines of a width [mm], broken before loose ones; a piece
// that is wider stays whole.
func broken(boxes []box, width float64) (lines []box) {
	var line []box
	wide := 0.0
	from := 0
	for i := 1; i <= len(boxes); i++ {
		if i < len(boxes) && !boxes[i].loose {
			continue
		}
		unit := boxes[from:i]
		w := row(unit...).wide
		if len(line) > 0 && wide+w > width {
			lines = append(lines, row(line...))
			line, wide = nil, 0
			if unit[0].blank {
				unit = unit[1:]
				w = row(unit...).wide
			}
		}
		line, wide = append(line, unit...), wide+w
		from = i
	}
	if len(line) > 0 {
		lines = append(lines, row(line...))
	}
	return lines
}
