package formula

import (
	"errors"
	"strconv"
	"strings"
)

// A Statement is one piece of a formula: sides joined by relations, or words.
type Statement struct {
	Text      string   // as it is written
	Words     string   // before the first side, with their colon
	Sides     []Expr   // none: the text is words
	Relations []string // between the sides: one less than they are
	Joint     string   // what parts it from the next: ";", "," or nothing
}

// Parse reads a formula. Known are the symbols whose numbers are at hand; they are
// taken for symbols whatever they look like.
func Parse(text string, known ...string) []Statement {
	var out []Statement
	for _, s := range split(text) {
		s.read(known)
		out = append(out, s)
	}
	return out
}

// split parts a text at semicolons and at commas with a blank after them, outside
// brackets.
func split(text string) (out []Statement) {
	depth, from := 0, 0
	add := func(to int, joint string) {
		if piece := strings.TrimSpace(text[from:to]); piece != "" {
			out = append(out, Statement{Text: piece, Joint: joint})
		}
	}
	for i, r := range text {
		switch r {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			depth--
		case ';', ',':
			if depth == 0 && (r == ';' || i+1 == len(text) || text[i+1] == ' ') {
				add(i, string(r))
				from = i + 1
			}
		}
	}
	add(len(text), "")
	return out
}

// read parts a statement into sides; one that cannot be read stays words.
func (s *Statement) read(known []string) {
	text := s.Text
	if before, after, found := strings.Cut(text, ": "); found {
		s.Words, text = before+":", after
	}
	p := parser{tokens: lex(text, known)}
	for {
		side, err := p.sum()
		if err != nil {
			*s = Statement{Text: s.Text, Joint: s.Joint}
			return
		}
		s.Sides = append(s.Sides, side)
		t := p.peek()
		if t.kind == end {
			return
		}
		if t.kind != sign || !strings.Contains("=≤≥<>", t.text) {
			*s = Statement{Text: s.Text, Joint: s.Joint}
			return
		}
		s.Relations = append(s.Relations, t.text)
		p.at++
	}
}

type parser struct {
	tokens []token
	at     int
	depth  int
}

var errSyntax = errors.New("not a formula")

func (p *parser) peek() token {
	if p.at < len(p.tokens) {
		return p.tokens[p.at]
	}
	return token{kind: end}
}

// take moves over a sign, if it is the next token.
func (p *parser) take(text string) bool {
	if t := p.peek(); t.kind == sign && t.text == text {
		p.at++
		return true
	}
	return false
}

// deepest is how far brackets may be nested.
const deepest = 40

func (p *parser) sum() (Expr, error) {
	if p.depth++; p.depth > deepest {
		return nil, errSyntax
	}
	defer func() { p.depth-- }()
	negative := p.take("−")
	e, err := p.product()
	if err != nil {
		return nil, err
	}
	if negative {
		e = Neg{e}
	}
	for {
		op := p.peek()
		if op.kind != sign || !strings.Contains("+−±", op.text) {
			return e, nil
		}
		p.at++
		right, err := p.product()
		if err != nil {
			return nil, err
		}
		e = Sum{op.text, e, right}
	}
}

// product reads factors and quotients from the left. After a quotient a further
// factor would be over or under the stroke, nobody knows: only a number under it,
// with brackets to follow, is clear.
func (p *parser) product() (Expr, error) {
	first, err := p.power()
	if err != nil {
		return nil, err
	}
	factors := []Expr{first}
	whole := func() Expr {
		if len(factors) == 1 {
			return factors[0]
		}
		return Product{factors}
	}
	closed := false // the last factor is a quotient
	for {
		t := p.peek()
		switch {
		case t.kind == sign && (t.text == "·" || t.text == "×"):
			p.at++
			f, err := p.power()
			if err != nil {
				return nil, err
			}
			factors, closed = append(factors, f), false
		case t.kind == sign && t.text == "/":
			p.at++
			under, err := p.power()
			if err != nil {
				return nil, err
			}
			_, plain := under.(Num)
			_, bracketed := under.(Group)
			factors = []Expr{Quotient{whole(), under}}
			closed = !(plain && p.bracket()) && !(bracketed && p.bracket())
		case t.kind == number, t.kind == symbol, t.kind == name, p.bracket():
			if closed {
				return nil, errSyntax
			}
			f, err := p.power()
			if err != nil {
				return nil, err
			}
			factors = append(factors, f)
		default:
			return whole(), nil
		}
	}
}

// bracket reports whether a bracket opens next.
func (p *parser) bracket() bool {
	t := p.peek()
	return t.kind == sign && (t.text == "(" || t.text == "[")
}

func (p *parser) power() (Expr, error) {
	base, err := p.atom()
	if err != nil {
		return nil, err
	}
	if t := p.peek(); t.kind == raised {
		p.at++
		v, _ := strconv.ParseFloat(t.text, 64)
		return Power{base, Num{t.text, v}}, nil
	}
	if !p.take("^") {
		return base, nil
	}
	negative := p.take("−")
	exponent, err := p.atom()
	if err != nil {
		return nil, err
	}
	if negative {
		exponent = Neg{exponent}
	}
	return Power{base, exponent}, nil
}

func (p *parser) atom() (Expr, error) {
	t := p.peek()
	p.at++
	switch {
	case t.kind == number:
		v, err := strconv.ParseFloat(t.text, 64)
		return Num{t.text, v}, err
	case t.kind == symbol:
		return Sym{t.text}, nil
	case t.kind == name:
		return p.function(t.text)
	case t.kind == sign && (t.text == "(" || t.text == "["):
		inner, err := p.sum()
		if err != nil || !p.take(closing(t.text)) {
			return nil, errSyntax
		}
		return Group{t.text, inner}, nil
	case t.kind == sign && t.text == "|":
		inner, err := p.sum()
		if err != nil || !p.take("|") {
			return nil, errSyntax
		}
		return Call{"|", []Expr{inner}}, nil
	}
	return nil, errSyntax
}

// function reads what a function is taken of.
func (p *parser) function(of string) (Expr, error) {
	if of == "sqrt" {
		of = "√"
	}
	if of == "max" || of == "min" {
		if !p.take("(") {
			return nil, errSyntax
		}
		var args []Expr
		for {
			a, err := p.sum()
			if err != nil {
				return nil, err
			}
			args = append(args, a)
			if p.take(")") {
				return Call{of, args}, nil
			}
			if !p.take(",") {
				return nil, errSyntax
			}
		}
	}
	a, err := p.atom()
	if err != nil {
		return nil, err
	}
	return Call{of, []Expr{Bare(a)}}, nil
}
