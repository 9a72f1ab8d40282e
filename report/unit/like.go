package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Like returns v [SI unit of the kind] in the unit that text is written in, or in SI
// where text has none, to the nearest with five significant digits: for messages
// about a tank file. Demands and capacities are rounded by report.Number alone.
// What is no finite number is "not known".
func Like(kind Kind, v float64, text string) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	u, ok := scale{}, false
	if m := number.FindString(strings.TrimSpace(text)); m != "" {
		u, ok = kind.find(oneSpace(strings.TrimSpace(text)[len(m):]))
	}
	if !ok {
		u, _ = kind.find(kind.SI())
	}
	return short(u.fromSI(kind, v)) + " " + u.name
}

// fromSI is the inverse of toSI: the number in the unit.
func (u scale) fromSI(kind Kind, v float64) float64 {
	if kind == Angle && u.name == "deg" { // the factor is in half turns
		v /= math.Pi
	}
	x := rat(strconv.FormatFloat(v, 'g', -1, 64))
	x.Quo(x, u.factor)
	if u.offset != nil {
		x.Sub(x, u.offset)
	}
	f, _ := x.Float64()
	return f
}

// digits is how many significant digits a number of a message has.
const digits = 5

// short writes x [in any unit] without zeros that say nothing, and without
// exponent where it is readable so.
func short(x float64) string {
	trim := func(s string) string { return strings.TrimRight(strings.TrimRight(s, "0"), ".") }
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(x, 'e', digits-1, 64), "e")
	n, _ := strconv.Atoi(exponent)
	switch {
	case x == 0:
		return "0"
	case n < -3 || n >= 7:
		return fmt.Sprintf("%se%d", trim(mantissa), n)
	}
	return trim(rat(mantissa + "e" + exponent).FloatString(digits - 1 + 3)) // digits of the least that stands so
}
