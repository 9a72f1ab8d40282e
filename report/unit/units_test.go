package unit

import (
	"math"
	"strings"
	"testing"
)

// Sources: the SI Brochure, 9th edition (2019), table 8 and appendix; NIST
// Special Publication 811 (2008), appendix B.8, factors to seven digits, exact
// ones in bold there; recalled.
func TestParse(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		text string
		want float64
	}{
		{Length, "3 mm", 0.003},
		{Length, "5.7 mm", 0.0057},
		{Length, "0.1mm", 0.0001},
		{Length, "+2.5 cm", 0.025},
		{Length, "-1.2 m", -1.2},
		{Length, "1/8 in", 0.003175},
		{Length, "1 1/2 in", 0.0381},
		{Length, "-1 1/2 in", -0.0381},
		{Length, "08/010 in", 0.8 * 0.0254},
		{Length, " 12  in ", 0.3048},
		{Length, "1 ft", 0.3048},
		{Area, "1 in2", 6.4516e-4},
		{Volume, "1 gal", 3.785411784e-3},
		{Volume, "1 in3", 1.6387064e-5},
		{Volume, "250 ml", 2.5e-4},
		{Mass, "1 lb", 0.45359237},
		{Density, "1 g0", math.NaN()},
		{Density, "786 kg/m3", 786},
		{Density, "1 lb/ft3", 16.01846337396014},
		{Density, "1 lb/in3", 27679.904710203125},
		{Force, "1 lbf", 4.4482216152605},
		{Force, "-35 kN", -35000},
		{Moment, "3 kN m", 3000},
		{Moment, "1 lbf ft", 1.3558179483314004},
		{Moment, "12 lbf in", 1.3558179483314004},
		{Pressure, "25 bar", 2.5e6},
		{Pressure, "25 barg", 2.5e6},
		{Pressure, "1 psi", 6894.757293168362},
		{Pressure, "1 ksi", 6894757.293168362},
		{Pressure, "193e3 MPa", 193e9},
		{AbsolutePressure, "1.01325 bara", 101325},
		{AbsolutePressure, "14.7 psia", 14.7 * 6894.757293168362},
		{Temperature, "20 degC", 293.15},
		{Temperature, "-423 degF", 20.37222222222222},
		{Temperature, "77 K", 77},
		{Expansion, "16e-6 1/K", 16e-6},
		{Expansion, "10e-6 1/degF", 18e-6},
		{Time, "10 min", 600},
		{Time, "0.5 h", 1800},
		{Angle, "180 deg", math.Pi},
		{Angle, "0.5 rad", 0.5},
		{Acceleration, "1 g0", 9.80665},
		{Toughness, "29 MPa m^0.5", 29e6},
		{Toughness, "1 ksi in^0.5", 6894757.293168362 * math.Sqrt(0.0254)},
	} {
		got, err := Parse(row.kind, row.text)
		if math.IsNaN(row.want) {
			if err == nil {
				t.Errorf("%s %q: %g, want an error", row.kind, row.text, got)
			}
			continue
		}
		if err != nil || math.Abs(got-row.want) > 4e-16*math.Abs(row.want) {
			t.Errorf("%s %q: %.17g (%v), want %.17g", row.kind, row.text, got, err, row.want)
		}
	}
}

// A decimal in a metric unit is the nearest float64, as if written in SI.
func TestParseIsExact(t *testing.T) {
	for text, want := range map[string]float64{
		"0.3 mm": 0.0003, "5.7 mm": 0.0057, "42.4 mm": 0.0424, "1.1 mm": 0.0011, "0.7 cm": 0.007,
	} {
		if got, err := Parse(Length, text); err != nil || got != want {
			t.Errorf("%q: %.17g, want %.17g", text, got, want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		text string
		says string
	}{
		{Length, "", "is empty"},
		{Length, "3", `3 has no unit; write "3 mm"`},
		{Length, "mm", "does not begin with a number"},
		{Length, "3,5 mm", "has a comma"},
		{Length, "1,200 mm", "has a comma"},
		{Length, "1 200 mm", "holds two numbers"},
		{Length, "1_200 mm", "is not a number and a unit"},
		{Length, "3 Mm", "did you mean mm?"},
		{Length, "3 mmm", "did you mean mm?"},
		{Length, "3 kg", "is no length"},
		{Length, "3 inches", "did you mean in?"},
		{Length, "1/0 in", "divides by zero"},
		{Length, "1/8.5 in", "is not a number and a unit"},
		{Length, "--3 mm", "does not begin with a number"},
		{Length, "nan mm", "does not begin with a number"},
		{Length, "Inf mm", "does not begin with a number"},
		{Length, "1e99 mm", "out of any range"},
		{AbsolutePressure, "4e55 bar", "out of any range"},
		{Length, "1e999 mm", "out of any range"},
		{Length, "0x10 mm", "has the unknown unit x10 mm"},
		{Length, "3 xyz", "write one of mm, cm, m, in, ft"},
		{Length, strings.Repeat("1", 80) + " mm", "is too long"},
		{Pressure, "25 bara", "is an absolute pressure"},
		{Pressure, "20 bara", `at sea level "18.987 bar", and "20 bar" where nothing is outside`},
		{Pressure, "100 psia", `at sea level "85.304 psi"`},
		{Pressure, "0.5 bara", `(inside less outside), as "25 bar"`},
		{AbsolutePressure, "1 barg", `at sea level "2.0133 bara"`},
		{Pressure, "25 psia", "is an absolute pressure"},
		{Pressure, "2 mPa", "did you mean MPa?"},
		{AbsolutePressure, "1 barg", "is a gauge pressure"},
		{AbsolutePressure, "-1 bara", "below vacuum"},
		{Temperature, "-300 degC", "below absolute zero"},
		{Temperature, "20 °C", "did you mean degC?"},
		{Temperature, "20 C", "did you mean degC?"},
		{Moment, "3 Nm", "did you mean N m?"},
		{Moment, "3 ft lbf", "did you mean lbf ft?"},
		{Mass, "3 lbs", "did you mean lb?"},
		{Mass, "3 lbf", "is no mass"},
		{Density, "0.8 g/cm3", "write one of kg/m3, lb/in3, lb/ft3"},
	} {
		got, err := Parse(row.kind, row.text)
		if err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s %q: %g, %v; want an error with %q", row.kind, row.text, got, err, row.says)
		}
		if err != nil && got == got {
			t.Errorf("%s %q: %g beside an error, want NaN", row.kind, row.text, got)
		}
	}
}

// Every kind reads its own example and each of its units, and says so.
func TestEveryKind(t *testing.T) {
	for _, k := range Kinds() {
		if _, err := Parse(k, k.Example()); err != nil {
			t.Errorf("%s: example: %v", k, err)
		}
		for _, u := range k.Units() {
			one, err := Parse(k, "1 "+u)
			if err != nil || !(one > 0) {
				t.Errorf("%s: 1 %s is %g, %v", k, u, one, err)
			}
		}
		if one, err := Parse(k, "1 "+k.SI()); err != nil || one != 1 {
			t.Errorf("%s: 1 %s is %g, %v; want 1", k, k.SI(), one, err)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add(0, "1 1/2 in")
	f.Add(9, "-423 degF")
	f.Add(7, "25 bara")
	f.Add(-43, "44444444444444444444444444444444444444444444424444444425 bar")
	f.Fuzz(func(t *testing.T, kind int, text string) {
		k := Kind((kind%len(kindNames) + len(kindNames)) % len(kindNames))
		v, err := Parse(k, text)
		if (err == nil) != (v == v) || math.IsInf(v, 0) {
			t.Fatalf("%s %q: %g, %v", k, text, v, err)
		}
		if err != nil || math.Abs(v) > 0.999*largest { // rounded, it may be shown as one over the end
			return
		}
		for _, unit := range []string{text, ""} {
			shown := Like(k, v, unit)
			back, err := Parse(k, shown)
			if err != nil || math.Abs(back-v) > 1e-4*math.Max(math.Abs(v), offsetOf(k)) {
				t.Errorf("%s %q is %g, shown as %q, which is %g (%v)", k, text, v, shown, back, err)
			}
		}
	})
}

// offsetOf is the size below which a shown temperature loses digits to the
// offset of its scale.
func offsetOf(k Kind) float64 {
	if k == Temperature {
		return 300
	}
	return 0
}
