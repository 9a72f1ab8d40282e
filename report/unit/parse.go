package unit

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// number is what may stand before a unit: a decimal with or without exponent,
// or a shop fraction with or without whole part.
var number = regexp.MustCompile(`^([+-]?)(?:(\d+)[ \t]+)?(?:(\d+)/(\d+)|((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?))`)

// longest is the length beyond which a text is not read as a value [-]: no
// drawing holds one, and exact arithmetic on it would take time.
const longest = 60

// Parse returns the value of text [SI unit of the kind]. The text is a
// number and a unit, "3 mm" or "1 1/2 in"; the conversion is exact and rounded
// once, to the nearest float64. A bare number, a unit of another kind, an
// unknown unit, a decimal comma and anything not finite are errors that say
// what to write.
func Parse(kind Kind, text string) (float64, error) {
	trimmed := strings.TrimSpace(text)
	if trimmed == "" {
		return math.NaN(), fmt.Errorf("is empty; write a %s with its unit, as %q", kind, kind.Example())
	}
	if len(trimmed) > longest {
		return math.NaN(), fmt.Errorf("is too long for a value; write a number and a unit, as %q", kind.Example())
	}
	value, rest, err := readNumber(kind, trimmed)
	if err != nil {
		return math.NaN(), err
	}
	name := oneSpace(rest)
	if name == "" {
		return math.NaN(), errors.New(NoUnit(kind, trimmed))
	}
	u, ok := kind.find(name)
	if !ok {
		return math.NaN(), unknownUnit(kind, trimmed, name)
	}
	return u.toSI(kind, value, trimmed)
}

// largest is the greatest value of any kind, in its SI unit.
const largest = 1e50

// toSI converts exactly and refuses what has no finite or physical value.
func (u scale) toSI(kind Kind, value *big.Rat, text string) (float64, error) {
	if u.offset != nil {
		value.Add(value, u.offset)
	}
	v, _ := value.Mul(value, u.factor).Float64()
	if kind == Angle && u.name == "deg" {
		v *= math.Pi
	}
	switch {
	case math.IsInf(v, 0) || math.IsNaN(v):
		return math.NaN(), fmt.Errorf("%q is not a finite number", text)
	case math.Abs(v) > largest: // below the number's own end, so that in every unit it can be read back
		return math.NaN(), fmt.Errorf("%q is out of any range a tank can have", text)
	case kind == Temperature && v < 0:
		return math.NaN(), fmt.Errorf("%q is below absolute zero", text)
	case kind == AbsolutePressure && v < 0:
		return math.NaN(), fmt.Errorf("%q is below vacuum; an absolute pressure cannot be negative", text)
	}
	return v, nil
}

// readNumber splits the number from what follows it.
func readNumber(kind Kind, text string) (*big.Rat, string, error) {
	m := number.FindStringSubmatch(text)
	if m == nil {
		return nil, "", fmt.Errorf("%q does not begin with a number; write a number and a unit, as %q", text, kind.Example())
	}
	sign, decimal := m[1], m[5]
	whole, over, under := plain(m[2]), plain(m[3]), plain(m[4])
	rest := text[len(m[0]):]
	if whole != "" && decimal != "" && strings.HasPrefix(rest, "/") { // "16 1/K": the unit begins with a digit
		whole, decimal, rest = "", whole, decimal+rest
	}
	switch {
	case whole != "" && decimal != "":
		return nil, "", fmt.Errorf("%q holds two numbers; write one, without blanks between its digits", text)
	case strings.HasPrefix(strings.TrimLeft(rest, " \t"), ","):
		return nil, "", fmt.Errorf("%q has a comma; write a decimal point and no thousands marks, as %q", text, kind.Example())
	case rest != "" && strings.ContainsAny(rest[:1], "0123456789.+-/_'") && !strings.HasPrefix(rest, "1/"):
		return nil, "", fmt.Errorf("%q is not a number and a unit; write it as %q", text, kind.Example())
	}
	value := new(big.Rat)
	if decimal != "" {
		if f, err := strconv.ParseFloat(decimal, 64); err != nil || f > 1e60 {
			return nil, "", fmt.Errorf("%q is out of any range a tank can have", text)
		}
		value.SetString(decimal)
	} else {
		if under == "0" {
			return nil, "", fmt.Errorf("%q divides by zero", text)
		}
		value.SetString(over + "/" + under)
		if whole != "" {
			value.Add(value, rat(whole))
		}
	}
	if sign == "-" {
		value.Neg(value)
	}
	return value, rest, nil
}

// plain drops leading zeros, which math/big would take for an octal mark.
func plain(digits string) string {
	if t := strings.TrimLeft(digits, "0"); t != "" || digits == "" {
		return t
	}
	return "0"
}

// NoUnit says that a number stands without a unit, and what to write.
func NoUnit(kind Kind, number string) string {
	_, first, _ := strings.Cut(kind.Example(), " ")
	var others []string
	for _, u := range kind.Units() {
		if u != first {
			others = append(others, u)
		}
	}
	if len(others) == 1 {
		return fmt.Sprintf("%s has no unit; write %q, or in %s", number, number+" "+first, others[0])
	}
	return fmt.Sprintf("%s has no unit; write %q, or another of %s", number, number+" "+first, strings.Join(others, ", "))
}

// meant maps spellings to the unit of the same size that the tank file asks for.
var meant = map[string]string{
	"°C": "degC", "C": "degC", "celsius": "degC", "°F": "degF", "F": "degF", "fahrenheit": "degF", "°": "deg",
	"degrees": "deg", "degree": "deg", "Nm": "N m", "N·m": "N m", "N*m": "N m", "kNm": "kN m", "kN·m": "kN m",
	"ft lbf": "lbf ft", "in lbf": "lbf in", "lbf-ft": "lbf ft", "lbf-in": "lbf in", "ft-lbf": "lbf ft",
	"in-lbf": "lbf in", "lbs": "lb", "L": "l", "litre": "l", "liter": "l", "litres": "l", "liters": "l",
	`"`: "in", "'": "ft", "inch": "in", "inches": "in", "kg/m^3": "kg/m3", "kg/m³": "kg/m3", "m³": "m3",
	"sec": "s", "minutes": "min", "minute": "min", "hours": "h", "hour": "h", "hr": "h", "N/mm2": "MPa",
	"N/mm²": "MPa", "K⁻¹": "1/K", "/K": "1/K", "1/°C": "1/K", "1/degC": "1/K",
	"mPa": "MPa",
}

// unknownUnit says what is wrong with a unit: known elsewhere, a near miss, or
// neither, with the list to choose from.
func unknownUnit(kind Kind, text, name string) error {
	_, known := kindOf(name)
	switch {
	case kind == Pressure && (name == "bara" || name == "psia"):
		return fmt.Errorf("%q is an absolute pressure; write the pressure across the wall (inside less outside), %s", text, atSeaLevel(AbsolutePressure, kind, text, -1))
	case kind == AbsolutePressure && (name == "barg" || name == "psig"):
		return fmt.Errorf("%q is a gauge pressure; write an absolute one, %s", text, atSeaLevel(Pressure, kind, text, 1))
	case known:
		return fmt.Errorf("%q is no %s; write one of the units %s", text, kind, strings.Join(kind.Units(), ", "))
	}
	if near := nearUnit(kind, name); near != "" {
		return fmt.Errorf("%q has the unknown unit %s; did you mean %s?", text, name, near)
	}
	return fmt.Errorf("%q has the unknown unit %s; write one of %s", text, name, strings.Join(kind.Units(), ", "))
}

// seaLevel is the pressure of the standard atmosphere there [Pa].
const seaLevel = 101325.0

// atSeaLevel says what a text of one kind of pressure is in the other where the standard
// atmosphere is outside, added to it or, with −1, taken from it; then also what it comes to
// where nothing is outside, since a tank that flies sees more across its wall than on the pad.
func atSeaLevel(is, kind Kind, text string, sign float64) string {
	units := map[string]string{"bara": "bar", "psia": "psi", "barg": "bara", "psig": "psia"}
	v, err := Parse(is, text)
	name := units[oneSpace(number.ReplaceAllString(text, ""))]
	if v += sign * seaLevel; err != nil || v < 0 || name == "" {
		return fmt.Sprintf("as %q", kind.Example())
	}
	says := fmt.Sprintf("at sea level %q", Like(kind, v, "1 "+name))
	if sign < 0 {
		says += fmt.Sprintf(", and %q where nothing is outside", Like(kind, v+seaLevel, "1 "+name))
	}
	return says
}

// nearUnit returns the unit of the kind that was probably meant, or "".
func nearUnit(kind Kind, name string) string {
	if m, ok := meant[name]; ok {
		if _, ok := kind.find(m); ok {
			return m
		}
	}
	for _, u := range kind.Units() {
		if strings.EqualFold(u, strings.ReplaceAll(name, ".", "")) {
			return u
		}
	}
	return Near(name, kind.Units())
}
