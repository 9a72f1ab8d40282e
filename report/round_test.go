package report_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

func TestNumber(t *testing.T) {
	for _, row := range []struct {
		v      float64
		digits int
		dir    report.Round
		want   string
	}{
		{92.891, 4, report.Up, "92.90"}, {92.891, 4, report.Down, "92.89"}, {92.891, 4, report.Nearest, "92.89"},
		{-92.891, 4, report.Up, "-92.89"}, {-92.891, 4, report.Down, "-92.90"},
		{9.9999, 3, report.Up, "10.0"}, {0.99, 1, report.Down, "0.9"}, {-0.99, 1, report.Up, "-0.9"}, {9.996, 4, report.Nearest, "9.996"}, {-9.9999, 3, report.Up, "-9.99"}, {9.9951, 3, report.Up, "10.0"}, {9.9999, 3, report.Down, "9.99"},
		{147, 4, report.Up, "147.0"}, {147, 4, report.Down, "147.0"}, {147.00000000000003, 4, report.Up, "147.0"},
		{147.001, 4, report.Up, "147.1"}, {146.999, 4, report.Down, "146.9"},
		{0.00123456, 3, report.Nearest, "0.00123"}, {123456, 3, report.Up, "124000"},
		{1.25e-7, 3, report.Nearest, "1.25×10⁻⁷"}, {6.02e23, 3, report.Nearest, "6.02×10²³"},
		{0, 4, report.Up, "0"}, {math.Copysign(0, -1), 4, report.Down, "0"},
		{math.NaN(), 4, report.Up, "-"}, {math.Inf(1), 4, report.Up, "-"},
	} {
		if got := report.Number(row.v, row.digits, row.dir); got != row.want {
			t.Errorf("%g, %d digits, direction %d: %s, want %s", row.v, row.digits, row.dir, got, row.want)
		}
	}
}

// FuzzNumber holds the promise of the directions: up is never below the value,
// down never above, beyond the noise of the last binary places.
func FuzzNumber(f *testing.F) {
	for _, v := range []float64{1, 92.891, 1e-9, 9.9999, 0.1, 123456789, 2.675, 5e-324} {
		f.Add(v)
	}
	f.Fuzz(func(t *testing.T, v float64) {
		if !(math.Abs(v) > 1e-4 && math.Abs(v) < 1e8) {
			return // beyond it the number is written with a power of ten
		}
		up, errUp := strconv.ParseFloat(report.Number(v, 4, report.Up), 64)
		down, errDown := strconv.ParseFloat(report.Number(v, 4, report.Down), 64)
		slack := 1e-11 * math.Abs(v)
		if errUp != nil || errDown != nil || up < v-slack || down > v+slack || up-down > 2e-3*math.Abs(v) {
			t.Errorf("%g became %g up and %g down (%v, %v)", v, up, down, errUp, errDown)
		}
	})
}

func result(demand, capacity float64) check.Result {
	return check.Result{Demand: check.Pa("σ", "stress", demand), Capacity: check.Pa("S", "allowable", capacity), Factor: 1}
}

func TestMargin(t *testing.T) {
	for _, row := range []struct {
		demand, capacity float64
		want             string
	}{
		{1, 1.319, "+0.31"}, {1, 0.996, "-0.01"}, {1, 1 - 1e-15, "-0.01"}, {1, 0.5, "-0.50"}, {1, 0.494, "-0.51"},
		{1, 1, "+0.00"}, {1, 1.0099, "+0.00"}, {1, 1.25, "+0.25"}, {1, 1.1, "+0.10"}, {1, 101.5, ">+99"},
		{0, 1, "no demand"}, {math.NaN(), 1, "-"}, {1, math.NaN(), "-"},
	} {
		if got := report.Margin(result(row.demand, row.capacity)); got != row.want {
			t.Errorf("%g of %g: %s, want %s", row.demand, row.capacity, got, row.want)
		}
	}
}

// FuzzMargin: a shortfall never shows as zero or more, and a margin never
// shows higher than it is.
func FuzzMargin(f *testing.F) {
	f.Add(1.0, 0.9999999)
	f.Add(1.0, 1.0000001)
	f.Fuzz(func(t *testing.T, demand, capacity float64) {
		r := result(demand, capacity)
		text := report.Margin(r)
		if failed := r.Status() == check.NotSatisfied; failed != (strings.HasPrefix(text, "-") && text != "-") {
			t.Errorf("%v shows the margin %s", r.Status(), text)
		}
		if v, err := strconv.ParseFloat(text, 64); err == nil && v > r.Margin()+1e-9 {
			t.Errorf("margin %g shows as %s", r.Margin(), text)
		}
	})
}

func TestShow(t *testing.T) {
	for _, row := range []struct {
		q      check.Quantity
		system string
		dir    report.Round
		want   string
	}{
		{check.Pa("", "", 2.61e6), "si", report.Nearest, "2.61 MPa"},
		{check.Pa("", "", 2.5e6), "", report.Nearest, "2.5 MPa"},
		{check.Pa("", "", 193e9), "si", report.Nearest, "193 GPa"},
		{check.Pa("", "", 6894.757293168361*500), "us", report.Nearest, "500 psi"}, // exact: lbf/in2
		{check.M("", "", 0.0057), "si", report.Nearest, "5.7 mm"},
		{check.M("", "", 0.0057), "si", report.Down, "5.700 mm"},
		{check.M("", "", 0.0254), "us", report.Nearest, "1 in"},
		{check.K("", "", 293.15), "si", report.Nearest, "20 °C"},
		{check.K("", "", 273.15), "us", report.Nearest, "32 °F"},
		{check.K("", "", 77), "si", report.Nearest, "-196.15 °C"},
		{check.Rad("", "", math.Pi/6), "si", report.Nearest, "30°"},
		{check.Num("", "", 0.85), "si", report.Nearest, "0.85"},
		{check.M3("", "", 0.16), "si", report.Nearest, "160 l"},
		{check.S("", "", 600), "si", report.Nearest, "10 min"},
		{check.Kg("", "", 0.45359237), "us", report.Nearest, "1 lb"},
		{check.N("", "", 4.4482216152605), "us", report.Nearest, "1 lbf"},
		{check.Quantity{Value: 3, Unit: "furlong"}, "si", report.Nearest, "3 furlong"},
		{check.Pa("", "", math.NaN()), "si", report.Up, "not available"},
	} {
		if got := report.Show(row.q, row.system, row.dir); got != row.want {
			t.Errorf("%g %s in %q: %s, want %s", row.q.Value, row.q.Unit, row.system, got, row.want)
		}
	}
}

// FuzzShowPair: a demand not above its capacity never shows as above it.
func FuzzShowPair(f *testing.F) {
	f.Add(3.3390436451, 1e-10)
	f.Add(9.9999, 1e-5)
	f.Add(1.25e-7, 1e-4)
	f.Fuzz(func(t *testing.T, demand, excess float64) {
		if !(demand > 1e-12 && demand < 1e12 && excess >= 0 && excess < 1) {
			return
		}
		powers := strings.NewReplacer("×10", "e", "⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4",
			"⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")
		d, c := report.ShowPair(check.Num("", "", demand), check.Num("", "", demand*(1+excess)), "si")
		shown, errD := strconv.ParseFloat(powers.Replace(d), 64)
		least, errC := strconv.ParseFloat(powers.Replace(c), 64)
		if errD != nil || errC != nil || shown > least {
			t.Errorf("%g against %g shows as %s against %s (%v, %v)", demand, demand*(1+excess), d, c, errD, errC)
		}
	})
}

// TestShowPair: both sides of a comparison stand in one unit, the demand
// rounded up and the capacity down.
func TestShowPair(t *testing.T) {
	d, c := report.ShowPair(check.Pa("", "", 99_991), check.Pa("", "", 147_009_999), "si")
	if d != "0.1000 MPa" || c != "147.0 MPa" {
		t.Errorf("%s against %s", d, c)
	}
	for _, row := range []struct {
		demand, capacity float64
		d, c             string
	}{
		{92.891e6, 92.899e6, "92.891 MPa", "92.899 MPa"}, // 92.90 against 92.89 would belie the verdict
		{92.899e6, 92.891e6, "92.90 MPa", "92.89 MPa"},
		{3.3395e6, 3.3395e6, "3.3395 MPa", "3.3395 MPa"},
		{3.3390436451e6, 3.3390436452e6, "3.339 MPa", "3.339 MPa"}, // one number but for its last places
		{3.33904351e6, 3.33904469e6, "3.339044 MPa", "3.339044 MPa"},
		{3.33912e6, 3.34e6, "3.340 MPa", "3.340 MPa"},
		{0, 3e6, "0 MPa", "3.000 MPa"},
		{3e11, math.Inf(1), "300.0 GPa", "not available"},
	} {
		d, c := report.ShowPair(check.Pa("", "", row.demand), check.Pa("", "", row.capacity), "si")
		if d != row.d || c != row.c {
			t.Errorf("%g and %g: %s against %s, want %s against %s", row.demand, row.capacity, d, c, row.d, row.c)
		}
	}
}
