package formula

import (
	"fmt"
	"math"
)

// Eval returns the value of a part [SI], symbols being given in SI. It is an error,
// and the value NaN, where a symbol is unknown, a function is, a sign is open (±), or
// a number was put in place of a symbol.
func Eval(e Expr, of func(name string) (float64, bool)) (float64, error) {
	switch e := e.(type) {
	case Num:
		return e.Value, nil
	case Sym:
		if v, ok := of(e.Name); ok {
			return v, nil
		}
		if v, ok := Constants[e.Name]; ok {
			return v, nil
		}
		return math.NaN(), fmt.Errorf("no value of %s", e.Name)
	case Group:
		return Eval(e.Of, of)
	case Neg:
		v, err := Eval(e.Of, of)
		return -v, err
	case Product:
		product := 1.0
		for _, f := range e.Factors {
			v, err := Eval(f, of)
			if err != nil {
				return math.NaN(), err
			}
			product *= v
		}
		return product, nil
	case Sum:
		return two(e.Left, e.Right, of, map[string]func(a, b float64) float64{
			"+": func(a, b float64) float64 { return a + b }, "−": func(a, b float64) float64 { return a - b }}[e.Op])
	case Quotient:
		return two(e.Over, e.Under, of, func(a, b float64) float64 { return a / b })
	case Power:
		return two(e.Base, e.Exponent, of, math.Pow)
	case Call:
		return call(e, of)
	}
	return math.NaN(), fmt.Errorf("%s has no value", e)
}

// Constants are the symbols that need not be given [SI]: the ratio of a circle and
// the standard gravity.
var Constants = map[string]float64{"π": math.Pi, "g0": 9.80665}

// two applies an operation to two parts; none is an error.
func two(a, b Expr, of func(string) (float64, bool), op func(a, b float64) float64) (float64, error) {
	if op == nil {
		return math.NaN(), fmt.Errorf("the sign is open")
	}
	x, err := Eval(a, of)
	if err != nil {
		return math.NaN(), err
	}
	y, err := Eval(b, of)
	if err != nil {
		return math.NaN(), err
	}
	return op(x, y), nil
}

var single = map[string]func(float64) float64{
	"√": math.Sqrt, "|": math.Abs, "exp": math.Exp, "ln": math.Log, "sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
}

func call(e Call, of func(string) (float64, bool)) (float64, error) {
	values := make([]float64, len(e.Args))
	for i, a := range e.Args {
		v, err := Eval(a, of)
		if err != nil {
			return math.NaN(), err
		}
		values[i] = v
	}
	if f, ok := single[e.Name]; ok && len(values) == 1 {
		return f(values[0]), nil
	}
	pick := map[string]func(a, b float64) float64{"max": math.Max, "min": math.Min}[e.Name]
	if pick == nil || len(values) < 2 {
		return math.NaN(), fmt.Errorf("%s of %d parts", e.Name, len(values))
	}
	out := values[0]
	for _, v := range values[1:] {
		out = pick(out, v)
	}
	return out, nil
}
