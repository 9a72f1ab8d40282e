package report

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"proofsheet/report/check"
	"proofsheet/report/formula"
)

// A HandLine is one step of a check with numbers: what is worked out, the same with
// the printed numbers in place of the symbols, and the printed answer.
type HandLine struct {
	Of      formula.Expr // what the formula has
	Numbers formula.Expr // the same with numbers
	Symbol  string       // what the answer is called; "" for a side without a name
	Answer  string       // with its unit
}

// String returns the line as it can be redone: "σ_p = 2.5 MPa · 200 mm/(8 mm) = 62.5 MPa".
func (h HandLine) String() string {
	text := h.Numbers.String() + " = " + h.Answer
	if h.Symbol != "" {
		return h.Symbol + " = " + text
	}
	return h.Of.String() + " = " + text
}

// Hand returns the steps of a check's formula that the printed inputs redo: each side
// that is more than a symbol, all of whose symbols are inputs, and whose value, from
// the numbers as they are printed, is the printed answer up to one unit of its last
// digit. Where six digits of the inputs are not enough for that, more are printed.
// A side that the inputs do not redo has no line, so that none is ever wrong: it is
// one of several branches, or rests on a solution that is no closed expression.
func Hand(r check.Result, system string) []HandLine {
	if s := r.Status(); s != check.Satisfied && s != check.NotSatisfied {
		return nil
	}
	h := hand{r: r, system: system}
	h.demand, h.capacity = ShowPair(r.Demand, r.Capacity, system)
	var out []HandLine
	for _, s := range Statements(r) {
		for i, side := range s.Sides {
			if line, ok := h.step(s, i, side); ok {
				out = append(out, line)
			}
		}
	}
	return out
}

// Statements returns the formula of a check, its inputs and answers being known
// symbols.
func Statements(r check.Result) []formula.Statement {
	var simple []string
	add := func(symbol, without string) {
		if symbol != "" && !strings.ContainsAny(symbol, without) {
			simple = append(simple, symbol)
		}
	}
	add(r.Demand.Symbol, "+−()= /")
	if strings.Contains(r.Capacity.Symbol, "_") {
		add(r.Capacity.Symbol, "+−()= /")
	}
	for _, q := range r.Inputs {
		add(q.Symbol, "+−()=")
	}
	return formula.Parse(r.Formula, simple...)
}

// hand works out the sides of one check.
type hand struct {
	r                check.Result
	system           string
	demand, capacity string // as printed
}

// An answer is what a side may come to.
type answer struct {
	q      check.Quantity
	shown  string
	digits int // least count of digits that are shown, zeros at the end included
}

// worthwhile reports whether there is something to work out: more than one number
// with its sign.
func worthwhile(e formula.Expr) bool {
	switch e := formula.Bare(e).(type) {
	case formula.Sym, formula.Num, formula.Neg, formula.Value:
		return false
	case formula.Call:
		return len(e.Args) > 1 || e.Name != "|" || worthwhile(e.Args[0])
	}
	return true
}

// stepDigits is how many digits an intermediate result has.
const stepDigits = 5

// step works one side out, if the inputs redo one of its answers.
func (h hand) step(s formula.Statement, at int, side formula.Expr) (HandLine, bool) {
	if !worthwhile(side) {
		return HandLine{}, false
	}
	symbol, demanded := sideOf(s, at)
	for _, a := range h.answers(symbol, demanded) {
		if a.q.Value == 0 || a.q.Unit == "K" {
			continue
		}
		for digits := 6; digits <= 10; digits += 2 {
			for _, last := range []bool{false, true} {
				if numbers, ok := h.numbers(side, digits, last, a); ok {
					return HandLine{Of: side, Numbers: numbers, Symbol: symbol, Answer: a.shown}, true
				}
			}
		}
	}
	return HandLine{}, false
}

// sideOf returns the symbol that a side is equal to, and whether it stands where
// the demand does: before ≤ or after ≥.
func sideOf(s formula.Statement, at int) (symbol string, demanded bool) {
	from, to := at, at
	for from > 0 && s.Relations[from-1] == "=" {
		from--
	}
	for to < len(s.Relations) && s.Relations[to] == "=" {
		to++
	}
	for i := from; i <= to; i++ {
		if v, ok := s.Sides[i].(formula.Sym); ok {
			symbol = v.Name
			break
		}
	}
	before := from > 0 && strings.Contains("≥>", s.Relations[from-1])
	after := to < len(s.Relations) && strings.Contains("≤<", s.Relations[to])
	return symbol, before || after
}

// answers returns what a side may come to: an input, the demand or the capacity of
// its symbol; one without a symbol is the demand or the capacity by its place.
func (h hand) answers(symbol string, demanded bool) (out []answer) {
	d, c := answer{h.r.Demand, h.demand, shownDigits}, answer{h.r.Capacity, h.capacity, shownDigits}
	if symbol == "" {
		if demanded {
			return []answer{d}
		}
		return []answer{c}
	}
	if symbol == h.r.Demand.Symbol || demanded {
		out = append(out, d)
	}
	if symbol == h.r.Capacity.Symbol {
		out = append(out, c)
	}
	if len(out) == 0 && !slices.ContainsFunc(h.r.Inputs, func(q check.Quantity) bool { return q.Symbol == symbol }) {
		out = append(out, d, c) // a name of the source for what the check calls otherwise
	}
	for _, q := range h.r.Inputs {
		if q.Symbol == symbol {
			out = append(out, answer{q, DisplayUnit(q.Unit, q.Value, h.system).digits(q.Value, stepDigits), stepDigits})
		}
	}
	return out
}

// numbers puts printed numbers in place of the symbols of a side, of two inputs with
// one symbol the first or the last, and reports whether they give the answer.
func (h hand) numbers(side formula.Expr, digits int, last bool, a answer) (formula.Expr, bool) {
	v, err := formula.Eval(side, func(name string) (float64, bool) {
		q, ok := h.input(name, last)
		return DisplayUnit(q.Unit, q.Value, h.system).printed(q.Value, digits), ok
	})
	if err != nil || !a.meets(v, h.system) {
		return nil, false
	}
	return formula.Substitute(side, func(name string) (formula.Expr, bool) {
		q, ok := h.input(name, last)
		if !ok && name == "g0" {
			q, ok = check.Quantity{Value: formula.Constants[name], Unit: "m/s2"}, true
		}
		return formula.Value{Text: DisplayUnit(q.Unit, q.Value, h.system).digits(q.Value, digits)}, ok
	}), true
}

// input returns the first or the last input of a symbol; a temperature is none, since
// its degrees cannot be multiplied.
func (h hand) input(symbol string, last bool) (out check.Quantity, found bool) {
	for _, q := range h.r.Inputs {
		if q.Symbol == symbol && q.Unit != "K" {
			out, found = q, true
			if !last {
				return out, true
			}
		}
	}
	return out, found
}

// meets reports whether a value [SI] is the printed answer, up to one unit of its
// last digit.
func (a answer) meets(v float64, system string) bool {
	number, unit, _ := strings.Cut(a.shown, " ")
	printed, digits := readShown(strings.TrimRight(number, "°"))
	if !(printed != 0) {
		return false
	}
	size := divide(a.q.Unit, unit, system)
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(printed)))-float64(max(digits, a.digits)-1))
	return math.Abs(v/size-printed) <= step*(1+1e-9)
}

var plainPower = strings.NewReplacer("×10", "e", "⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5",
	"⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")

// readShown returns a printed number and how many of its digits count; the zeros
// at the end of a whole number may only hold its place.
func readShown(text string) (v float64, digits int) {
	text = plainPower.Replace(text)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN(), 0
	}
	body, _, _ := strings.Cut(strings.TrimLeft(text, "-"), "e")
	whole, decimals, point := strings.Cut(body, ".")
	all := strings.TrimLeft(whole+decimals, "0")
	if !point {
		all = strings.TrimRight(all, "0")
	}
	return v, len(all)
}

// divide returns the SI value of a display unit.
func divide(si, unit, system string) float64 {
	if system != "us" {
		system = "si"
	}
	for _, r := range ladders[system][si] {
		if r.Unit == unit {
			return r.Divide
		}
	}
	if si == "rad" {
		return math.Pi / 180
	}
	return 1
}

// printed returns v [SI] as its digits say it, back in SI.
func (d Display) printed(v float64, digits int) float64 {
	shown, _ := strconv.ParseFloat(strconv.FormatFloat(d.Of(v), 'e', digits-1, 64), 64)
	return shown*d.Divide + d.Offset
}

// digits returns v [SI] with so many digits and this unit.
func (d Display) digits(v float64, digits int) string {
	return d.with(trim(Number(d.Of(v), digits, Nearest)))
}
