package report

import (
	"math"
	"strconv"
	"strings"

	"proofsheet/report/check"
)

// A Round is the direction in which a number is rounded for display.
type Round int

const (
	Nearest Round = iota // inputs
	Up                   // demands: towards +∞
	Down                 // capacities: towards −∞
)

// noise is the relative difference up to which a number counts as equal to a
// rounded one [-]: conversions leave a few units of the last binary place, and
// 25 bar is not to be shown as 25.01.
const noise = 1e-12

// Number returns v [in any unit] with the given count of significant digits,
// rounded as asked. Zero is "0", a number that is not finite "-".
func Number(v float64, digits int, dir Round) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "-"
	}
	if v == 0 {
		return "0"
	}
	return layout(rounded(v, digits, dir))
}

// rounded returns v, finite and not zero, as an integer mantissa of so many digits
// and the power of ten of its last one. It is the one place where a number of the
// sheet is rounded with a direction.
func rounded(v float64, digits int, dir Round) (mantissa int64, power int) {
	mantissa, exponent := scientific(v, digits)
	power = exponent - digits + 1
	mantissa += direction(v, parse(mantissa, power), dir)
	full := int64(math.Pow10(digits))
	switch size := max(mantissa, -mantissa); {
	case size == full: // 999.6 went up to 1000: one digit too many
		mantissa, power = mantissa/10, power+1
	case size < full/10: // 10.0 stepped down to 9.9: one digit short
		mantissa, power = full-1, power-1
		if v < 0 {
			mantissa = -mantissa
		}
	}
	return mantissa, power
}

// scientific returns v rounded to the nearest of digits significant digits, as
// an integer mantissa and the power of ten of its first digit.
func scientific(v float64, digits int) (mantissa int64, exponent int) {
	text := strconv.FormatFloat(v, 'e', digits-1, 64)
	head, tail, _ := strings.Cut(text, "e")
	mantissa, _ = strconv.ParseInt(strings.Replace(head, ".", "", 1), 10, 64)
	exponent, _ = strconv.Atoi(tail)
	return mantissa, exponent
}

// parse returns mantissa·10^power [in the unit of the mantissa].
func parse(mantissa int64, power int) float64 {
	v, _ := strconv.ParseFloat(strconv.FormatInt(mantissa, 10)+"e"+strconv.Itoa(power), 64)
	return v
}

// direction returns the step, in units of the last digit, which takes shown to
// the asked side of v [both in one unit].
func direction(v, shown float64, dir Round) int64 {
	slack := noise * math.Abs(v)
	switch {
	case dir == Up && shown < v-slack:
		return 1
	case dir == Down && shown > v+slack:
		return -1
	default:
		return 0
	}
}

// layout writes mantissa·10^power plainly where that stays short, else with a
// power of ten.
func layout(mantissa int64, power int) string {
	sign := ""
	if mantissa < 0 {
		sign, mantissa = "-", -mantissa
	}
	digits := strconv.FormatInt(mantissa, 10)
	first := len(digits) - 1 + power // power of ten of the first digit
	switch {
	case first < -4 || first > 8:
		body := digits[:1]
		if len(digits) > 1 {
			body += "." + digits[1:]
		}
		return sign + body + "×10" + superscript(first)
	case power >= 0:
		return sign + digits + strings.Repeat("0", power)
	case first >= 0:
		return sign + digits[:first+1] + "." + digits[first+1:]
	default:
		return sign + "0." + strings.Repeat("0", -first-1) + digits
	}
}

// superscript returns n in raised digits.
func superscript(n int) string {
	return strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
		"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹").Replace(strconv.Itoa(n))
}

// Plain returns v [in any unit] to the nearest with up to six significant
// digits and no zeros that say nothing.
func Plain(v float64) string { return trim(Number(v, 6, Nearest)) }

// trim drops the zeros after a decimal point that say nothing.
func trim(text string) string {
	body, power, scientific := strings.Cut(text, "×")
	if strings.Contains(body, ".") {
		body = strings.TrimRight(strings.TrimRight(body, "0"), ".")
	}
	if scientific {
		return body + "×" + power
	}
	return body
}

// Margin returns the margin of a check as it is printed: with its sign, two
// decimals, rounded down, so that a shortfall never shows as zero. It is "-"
// where there is none and "no demand" where nothing is asked of the part.
func Margin(r check.Result) string {
	m := r.Margin()
	switch {
	case math.IsNaN(m):
		return "-"
	case math.IsInf(m, 1):
		return "no demand"
	case m >= 100:
		return ">+99"
	}
	hundredths := math.Floor(m*100 + 100*noise)
	if r.Status() == check.NotSatisfied && hundredths > -1 {
		hundredths = -1
	}
	text := strconv.FormatFloat(math.Abs(hundredths)/100, 'f', 2, 64)
	if hundredths < 0 {
		return "-" + text
	}
	return "+" + text
}
