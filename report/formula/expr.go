package formula

import "strings"

// An Expr is a part of a formula.
type Expr interface {
	// String returns the part in one line.
	String() string
}

// A Num is a number as it is written.
type Num struct {
	Text  string
	Value float64 // [-]
}

// A Sym is a symbol with its index.
type Sym struct{ Name string }

// A Value stands in place of a symbol: its number with a unit, in words.
type Value struct{ Text string }

// A Sum is two parts joined by "+", "−" or "±".
type Sum struct {
	Op          string
	Left, Right Expr
}

// A Neg is a part with its sign turned.
type Neg struct{ Of Expr }

// A Product is factors side by side.
type Product struct{ Factors []Expr }

// A Quotient is one part over another.
type Quotient struct{ Over, Under Expr }

// A Power is a part raised to another.
type Power struct{ Base, Exponent Expr }

// A Call is a function of parts; one without brackets in the text takes one factor.
type Call struct {
	Name string // "max", "sin", "√", "|" for the size of a number
	Args []Expr
}

// A Group is a part in brackets, "(" or "[".
type Group struct {
	Open string
	Of   Expr
}

func (e Num) String() string   { return e.Text }
func (e Sym) String() string   { return e.Name }
func (e Value) String() string { return e.Text }
func (e Sum) String() string   { return e.Left.String() + " " + e.Op + " " + Factor(e.Right).String() }
func (e Neg) String() string   { return "−" + bound(e.Of) }

// String joins factors by blanks, and by dots where a number with a unit stands
// among them.
func (e Product) String() string {
	parts := make([]string, len(e.Factors))
	for i, f := range e.Factors {
		parts[i] = Factor(f).String()
	}
	return strings.Join(parts, e.Joint())
}

// Joint returns what stands between the factors of a product.
func (e Product) Joint() string {
	for _, f := range e.Factors {
		if holdsValue(f) {
			return " · "
		}
	}
	return " "
}

func (e Quotient) String() string { return Factor(e.Over).String() + "/" + bound(e.Under) }

func (e Power) String() string {
	base := e.Foot().String()
	if n, ok := e.Exponent.(Num); ok {
		if raised, ok := raise(n.Text); ok {
			return base + raised
		}
	}
	return base + "^" + bound(e.Exponent)
}

// Foot returns what is raised, in brackets where it is more than one piece.
func (e Power) Foot() Expr {
	switch b := e.Base.(type) {
	case Num, Sym, Group:
		return e.Base
	case Call:
		if b.enclosed() {
			return e.Base
		}
	}
	return Group{"(", e.Base}
}

// enclosed reports whether a function is set round what it is taken of.
func (e Call) enclosed() bool {
	switch e.Name {
	case "√", "|", "max", "min", "exp", "ln":
		return true
	}
	return false
}

func (e Call) String() string {
	parts := make([]string, len(e.Args))
	for i, a := range e.Args {
		parts[i] = a.String()
	}
	inside := strings.Join(parts, ", ")
	switch {
	case e.Name == "|":
		return "|" + inside + "|"
	case e.enclosed():
		return e.Name + "(" + inside + ")"
	}
	return e.Name + " " + bound(e.Args[0])
}

func (e Group) String() string { return e.Open + e.Of.String() + closing(e.Open) }

// Closing returns the bracket that ends a group.
func (e Group) Closing() string { return closing(e.Open) }

func closing(open string) string {
	if open == "[" {
		return "]"
	}
	return ")"
}

// Factor returns a part as it stands in a product: a sum and a number below zero
// in brackets.
func Factor(e Expr) Expr {
	switch v := e.(type) {
	case Sum, Neg:
		return Group{"(", e}
	case Value:
		if strings.HasPrefix(v.Text, "-") || strings.HasPrefix(v.Text, "−") {
			return Group{"(", e}
		}
	}
	return e
}

// Bare returns a part without the brackets round the whole of it.
func Bare(e Expr) Expr {
	if g, ok := e.(Group); ok {
		return g.Of
	}
	return e
}

// bound returns a part in brackets unless it is one piece.
func bound(e Expr) string {
	switch e.(type) {
	case Num, Sym, Group, Power, Call:
		return e.String()
	}
	return "(" + e.String() + ")"
}

// holdsValue reports whether a number stands in place of a symbol of a factor.
func holdsValue(e Expr) bool {
	switch e := e.(type) {
	case Value:
		return true
	case Power:
		return holdsValue(e.Base)
	case Quotient:
		return holdsValue(e.Over) || holdsValue(e.Under)
	case Product:
		return e.Joint() != " "
	case Call:
		for _, a := range e.Args {
			if holdsValue(a) {
				return true
			}
		}
	case Group:
		return holdsValue(e.Of)
	case Neg:
		return holdsValue(e.Of)
	case Sum:
		return holdsValue(e.Left) || holdsValue(e.Right)
	}
	return false
}

const raisedDigits = "⁰¹²³⁴⁵⁶⁷⁸⁹"

// raise returns a whole number in raised digits.
func raise(text string) (string, bool) {
	var b strings.Builder
	for _, r := range text {
		if r < '0' || r > '9' {
			return "", false
		}
		b.WriteRune([]rune(raisedDigits)[r-'0'])
	}
	return b.String(), text != ""
}

// Symbols returns the names of the symbols in a part, each once, in order.
func Symbols(e Expr) []string {
	var out []string
	seen := map[string]bool{}
	Substitute(e, func(name string) (Expr, bool) {
		if !seen[name] {
			seen[name] = true
			out = append(out, name)
		}
		return nil, false
	})
	return out
}

// Substitute returns a part with symbols replaced by what of returns for them; a
// symbol for which it reports false stays.
func Substitute(e Expr, of func(name string) (Expr, bool)) Expr {
	each := func(es []Expr) []Expr {
		out := make([]Expr, len(es))
		for i, x := range es {
			out[i] = Substitute(x, of)
		}
		return out
	}
	switch e := e.(type) {
	case Sym:
		if v, ok := of(e.Name); ok {
			return v
		}
	case Sum:
		return Sum{e.Op, Substitute(e.Left, of), Substitute(e.Right, of)}
	case Neg:
		return Neg{Substitute(e.Of, of)}
	case Product:
		return Product{each(e.Factors)}
	case Quotient:
		return Quotient{Substitute(e.Over, of), Substitute(e.Under, of)}
	case Power:
		return Power{Substitute(e.Base, of), Substitute(e.Exponent, of)}
	case Call:
		return Call{e.Name, each(e.Args)}
	case Group:
		return Group{e.Open, Substitute(e.Of, of)}
	}
	return e
}
