package unit

import (
	"fmt"
	"math"
	"testing"
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

func ExampleLike() {
	fmt.Println(Like(Pressure, 2.53e6, "25 bar"), "|", Like(Length, 0.4, "1 1/2 in"))
	// Output: 25.3 bar | 15.748 in
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
		{Pressure, 0, "25 bar", "0 bar"},
		{Pressure, 123456e3, "1 Pa", "1.2346e8 Pa"},
		{Pressure, 1234560, "1 Pa", "1234600 Pa"},
		{Length, 0.3464102, "300 mm", "346.41 mm"},
		{Length, 0.3464102, "", "0.34641 m"},
		{Length, -0.001234567, "", "-0.0012346 m"},
		{Length, math.NaN(), "1 mm", "not known"},
		{Length, math.Inf(1), "1 mm", "not known"},
		{Temperature, 293.15, "5 degC", "20 degC"},
		{Temperature, 273.15, "5 degF", "32 degF"},
		{Angle, math.Pi / 6, "7 deg", "30 deg"},
		{Expansion, 16e-6, "1 1/K", "1.6e-5 1/K"},
	} {
		if got := Like(row.kind, row.v, row.text); got != row.want {
			t.Errorf("%g like %q: %q, want %q", row.v, row.text, got, row.want)
		}
	}
}

// A tank file's own numbers come back as written.
func TestLikeKeepsInputs(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		text string
	}{{Length, "5.7 mm"}, {Length, "42.4 mm"}, {Angle, "30 deg"}, {Angle, "7 deg"}, {Pressure, "0.1 MPa"}, {Temperature, "20 degC"}} {
		v, err := Parse(row.kind, row.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := Like(row.kind, v, row.text); got != row.text {
			t.Errorf("%q came back as %q", row.text, got)
		}
	}
}
