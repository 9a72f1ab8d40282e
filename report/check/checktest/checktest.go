// Package checktest holds what the source tests share: comparison with a
// printed number, whose last digit sets the tolerance.
package checktest

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Printed fails the test unless got, in the source's own unit, rounds to the
// printed number: it allows half a unit of the last printed digit.
func Printed(t testing.TB, where string, got float64, printed string) {
	t.Helper()
	want, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatalf("%s: printed value %q: %v", where, printed, err)
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(printed), "e")
	power := 0
	if exponent != "" {
		power, _ = strconv.Atoi(exponent)
	}
	if _, fraction, ok := strings.Cut(mantissa, "."); ok {
		power -= len(fraction)
	}
	half := 0.5 * math.Pow(10, float64(power))
	if !(math.Abs(got-want) <= half*(1+1e-9)) {
		t.Errorf("%s: got %.9g, printed %s (half a digit is %.2g)", where, got, printed, half)
	}
	keep(t, got, want)
}

// Refused fails the test unless the error names what is wrong.
func Refused(t testing.TB, where string, err error, want string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("%s: %v, want %q", where, err, want)
	}
}

// RefusedNumber fails the test unless the error names what is wrong and the number beside it is none.
func RefusedNumber(t testing.TB, where string, x float64, err error, want string) {
	t.Helper()
	Refused(t, where, err, want)
	if !math.IsNaN(x) {
		t.Errorf("%s: %g, want no number", where, x)
	}
}

// Close fails the test unless got is within a relative tolerance of want; the
// caller says at the row why the tolerance is what it is.
func Close(t testing.TB, where string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.12g, want %.12g within %.2g", where, got, want, relative)
	}
	keep(t, got, want)
}
