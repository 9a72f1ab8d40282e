package unit

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// A rounding is which way a number is rounded for display.
type rounding int

const (
	nearest rounding = iota
	up
	down
)

// digits is how many significant digits a displayed number has: enough that a
// hand sum from the sheet gives the printed answer.
const digits = 5

// Format returns v [SI unit si], in the SI unit named as in check.Quantity, with the display
// unit of the system, "si" or "us". What is no finite number is "not known".
func Format(v float64, si, system string) string { return display(v, si, system, nearest) }

// FormatUp is Format of v [SI unit si] rounded towards plus infinity: for demands.
func FormatUp(v float64, si, system string) string { return display(v, si, system, up) }

// FormatDown is Format of v [SI unit si] rounded towards minus infinity: for capacities and margins.
func FormatDown(v float64, si, system string) string { return display(v, si, system, down) }

// Like returns v [SI unit of the kind] in the unit that text is written in, or in SI
// where text has none.
func Like(kind Kind, v float64, text string) string {
	u, ok := scale{}, false
	if m := number.FindString(strings.TrimSpace(text)); m != "" {
		u, ok = kind.find(oneSpace(strings.TrimSpace(text)[len(m):]))
	}
	if !ok {
		u, _ = kind.find(kind.SI())
	}
	return inUnit(v, kind, u, nearest)
}

func display(v float64, si, system string, r rounding) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	d := displayUnit(v, si, system)
	text := decimal(d.from(v), r)
	if d.name == "" {
		return text
	}
	return text + " " + d.name
}

func inUnit(v float64, kind Kind, u scale, r rounding) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	return decimal(displayed{u.name, u.factor, u.offset, kind == Angle && u.name == "deg"}.from(v), r) + " " + u.name
}

// displayed is a unit to show a number in.
type displayed struct {
	name   string
	factor *big.Rat
	offset *big.Rat
	turns  bool // factor is in half turns
}

// sure is how many digits of a float64 are taken at their word before a
// directed rounding: an input of 30 deg must not show as 30.001.
const sure = 13

// from returns the number to show, exactly, for v at its sure digits.
func (d displayed) from(v float64) *big.Rat {
	if d.turns {
		v /= math.Pi
	}
	x := rat(strconv.FormatFloat(v, 'g', -1, 64))
	x.Quo(x, d.factor)
	if d.offset != nil {
		x.Sub(x, d.offset)
	}
	f, _ := x.Float64()
	return rat(strconv.FormatFloat(f, 'g', sure, 64))
}

// decimal writes x with the significant digits, rounded one way, without
// exponent where it is readable so.
func decimal(x *big.Rat, r rounding) string {
	if x.Sign() == 0 {
		return "0"
	}
	f, _ := x.Float64()
	exponent := int(math.Floor(math.Log10(math.Abs(f)))) - digits + 1
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(abs(exponent))), nil)
	power := new(big.Rat).SetInt(ten)
	if exponent < 0 {
		power.Inv(power)
	}
	whole := round(new(big.Rat).Quo(x, power), r)
	value, _ := new(big.Rat).Mul(new(big.Rat).SetInt(whole), power).Float64()
	if a := math.Abs(value); a != 0 && (a < 1e-3 || a >= 1e7) {
		return tidy(strconv.FormatFloat(value, 'e', digits-1, 64))
	}
	return tidy(strconv.FormatFloat(value, 'f', max(-exponent, 0), 64))
}

// round returns the integer next to x.
func round(x *big.Rat, r rounding) *big.Int {
	q, m := new(big.Int).DivMod(x.Num(), x.Denom(), new(big.Int)) // floor, as the denominator is positive
	if m.Sign() == 0 || r == down {
		return q
	}
	if r == up || new(big.Int).Lsh(m, 1).Cmp(x.Denom()) >= 0 {
		q.Add(q, big.NewInt(1))
	}
	return q
}

// tidy drops trailing zeros behind the point.
func tidy(s string) string {
	mantissa, exponent, has := strings.Cut(s, "e")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	if mantissa == "-0" {
		mantissa = "0"
	}
	if !has || mantissa == "0" {
		return mantissa
	}
	n, _ := strconv.Atoi(exponent)
	return fmt.Sprintf("%se%d", mantissa, n)
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
