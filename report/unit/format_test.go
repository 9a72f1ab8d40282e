package unit

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func ExampleParse() {
	v, err := Parse(Length, "1 1/2 in")
	fmt.Println(v, err)
	_, err = Parse(Length, "3")
	fmt.Println(err)
	// Output:
	// 0.0381 <nil>
	// 3 has no unit; write "3 mm", or another of cm, m, in, ft
}

func ExampleFormat() {
	fmt.Println(Format(2.5e6, "Pa", "si"), "|", Format(2.5e6, "Pa", "us"))
	fmt.Println(FormatUp(0.00123456789, "m", "si"), "|", FormatDown(0.00123456789, "m", "si"))
	// Output:
	// 2.5 MPa | 362.59 psi
	// 1.2346 mm | 1.2345 mm
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		v          float64
		si, system string
		want       string
	}{
		{0.003, "m", "si", "3 mm"},
		{0.4, "m", "us", "15.748 in"},
		{12.5, "m", "si", "12.5 m"},
		{293.15, "K", "si", "20 degC"},
		{math.Pi / 6, "rad", "si", "30 deg"},
		{-35e3, "N", "si", "-35 kN"},
		{250e3, "N/m", "si", "250 N/mm"},
		{1.5, "1", "si", "1.5"},
		{0, "Pa", "si", "0 Pa"},
		{math.NaN(), "Pa", "si", "not known"},
		{math.Inf(1), "Pa", "si", "not known"},
		{193e9, "Pa", "si", "193 GPa"},
		{16e-6, "1/K", "si", "1.6e-5 1/K"},
		{123456, "1", "si", "123460"},
		{3, "m4", "si", "3 m4"},
	} {
		if got := Format(row.v, row.si, row.system); got != row.want {
			t.Errorf("%g %s in %s: %q, want %q", row.v, row.si, row.system, got, row.want)
		}
	}
}

// An input written with few digits is shown as written, whichever way it is
// rounded.
func TestDirectedRoundingKeepsInputs(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		text string
	}{{Length, "5.7 mm"}, {Length, "42.4 mm"}, {Angle, "30 deg"}, {Angle, "7 deg"}, {Pressure, "0.1 MPa"}, {Temperature, "20 degC"}} {
		v, err := Parse(row.kind, row.text)
		if err != nil {
			t.Fatal(err)
		}
		if up, down := FormatUp(v, row.kind.SI(), "si"), FormatDown(v, row.kind.SI(), "si"); up != row.text || down != row.text {
			t.Errorf("%q: up %q, down %q", row.text, up, down)
		}
	}
}

// Rounded up is never below, rounded down never above, and both are near.
func TestDirectedRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e-3, 1e9).Draw(t, "v") * float64(rapid.SampledFrom([]int{-1, 1}).Draw(t, "sign"))
		up, errUp := Parse(Pressure, FormatUp(v, "Pa", "si"))
		down, errDown := Parse(Pressure, FormatDown(v, "Pa", "si"))
		slack := 1e-12 * math.Abs(v)
		if errUp != nil || errDown != nil || up < v-slack || down > v+slack || up-down > 2e-4*math.Abs(v) {
			t.Fatalf("%g: up %g, down %g (%v, %v)", v, up, down, errUp, errDown)
		}
	})
}

func TestLike(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		v    float64
		text string
		want string
	}{
		{Pressure, 2.53e6, "25 bar", "25.3 bar"},
		{Pressure, 6894757.293168362, "900 psi", "1000 psi"},
		{Length, 0.3464102, "300 mm", "346.41 mm"},
		{Length, 0.3464102, "", "0.34641 m"},
		{Length, math.NaN(), "1 mm", "not known"},
	} {
		if got := Like(row.kind, row.v, row.text); got != row.want {
			t.Errorf("%g like %q: %q, want %q", row.v, row.text, got, row.want)
		}
	}
}
