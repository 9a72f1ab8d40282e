package buckling_test

// NASA/SP-8007-2020 Rev 2, Buckling of Thin-Walled Circular Cylinders. Numbers
// of the text (read); the table of knock-down factors from general notes and an
// exercise on it (read). Bounds between the forms are worked out by hand.

import (
	"errors"
	"math"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

const mm, mpa, kpa, gpa = 1e-3, 1e6, 1e3, 1e9

func must[T any](t *testing.T, v T, err error) T {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func outside(t *testing.T, where string, err error) {
	t.Helper()
	var out *check.RangeError
	if !errors.As(err, &out) {
		t.Errorf("%s: %v, want a RangeError", where, err)
	}
}

// metal returns a metal of E [GPa] and yield strength [MPa].
func metal(e, ν, yield, m float64, family string) buckling.Metal {
	return buckling.Metal{Modulus: e * gpa, Poisson: ν, Yield: yield * mpa, Exponent: m, Family: family}
}

func TestKnockdowns(t *testing.T) {
	for _, row := range []struct {
		slender       float64
		compression   string
		bending       string
		fromTheSource string
	}{
		// the notes round the first down: 0.2238
		{1000, "0.224", "0.370", "0.223"}, {500, "0.322", "0.450", "0.322"}, {300, "0.404", "0.517", "0.404"},
		{100, "0.581", "0.660", "0.581"}, {50, "0.678", "0.739", "0.678"}, {25, "0.758", "0.804", "0.758"},
		{400.0 / 3, "0.537", "0.624", ""}, {200, "0.471", "0.571", ""}, {1500, "0.179", "0.334", ""},
	} {
		c, err := buckling.KnockdownCompression(row.slender)
		checktest.Printed(t, "γ_c", must(t, c, err), row.compression)
		b, err := buckling.KnockdownBending(row.slender)
		checktest.Printed(t, "γ_b", must(t, b, err), row.bending)
		if row.fromTheSource != "" && row.slender != 1000 {
			checktest.Printed(t, "γ_c of the notes", c, row.fromTheSource)
		}
	}
	// The notes have 0.82 at R/t 10, which the formula does not give (0.838),
	// and the tests behind it begin at 80: the value at 25 stands for all below.
	at10, err := buckling.KnockdownCompression(10)
	checktest.Printed(t, "γ_c at 10", must(t, at10, err), "0.758")
	for _, slender := range []float64{0.5, math.Nextafter(1500, 1e9), math.NaN()} {
		_, err := buckling.KnockdownCompression(slender)
		outside(t, "γ_c", err)
		_, err = buckling.KnockdownBending(slender)
		outside(t, "γ_b", err)
	}
}

// At ν = 0.316 the document prints its coefficients: 0.926 of the pressure (the
// formula 0.9252) and 0.747 of the torsion stress.
func TestCoefficientsOfTheText(t *testing.T) {
	m := metal(100, 0.316, 1e3, 20, "aluminium")
	c := buckling.Tube{Radius: 1, Thickness: 0.01, Length: 3}
	p := c.MediumPressure(m) / (m.Modulus * 0.75 * math.Pow(0.01, 2.5) / 3)
	checktest.Close(t, "medium pressure", p, 0.926, 1.0e-3)
	s, err := c.TorsionStress(m)
	checktest.Printed(t, "torsion", must(t, s, err).Elastic/(m.Modulus*0.67*math.Pow(0.01, 1.25)/math.Sqrt(3)), "0.747")
}

// Without their knock-downs the forms meet at the printed borders of the range
// in which the cylinder buckles as a ring: 11.8 and 78 (R/t)²(1−ν²).
func TestBordersOfLongCylinders(t *testing.T) {
	m := metal(100, 0.3, 1e3, 20, "aluminium")
	at := func(z float64) buckling.Tube { // Z = z (R/t)²(1−ν²)
		const slender = 100
		return buckling.Tube{Radius: 1, Thickness: 1.0 / slender, Length: math.Sqrt(z * slender * math.Sqrt(1-0.09))}
	}
	c := at(11.8)
	checktest.Close(t, "pressure", c.MediumPressure(m)/0.75, c.LongPressure(m)/0.90, 8e-3)
	medium, err := at(77.9 / math.Pow(0.67, 4.0/3)).TorsionStress(m)
	must(t, medium, err)
	long, err := at(78.1 / math.Pow(0.67, 4.0/3)).TorsionStress(m)
	if must(t, long, err); !long.Long || medium.Long {
		t.Error("the border of long shells in torsion is not at 78")
	}
	// at that γZ the first form holds its γ^0.75 = 0.67 inside k, the second 0.80
	shorter, err := at(77.4).TorsionStress(m)
	checktest.Close(t, "torsion", must(t, shorter, err).Elastic/0.67, long.Elastic/0.80, 2e-3)
}

// The short and the moderately long form meet at γZ = π²√3/6 = 2.85.
func TestShortMeetsMedium(t *testing.T) {
	m := metal(70, 0.3, 1300, 20, "aluminium")
	c := buckling.Tube{Radius: 1, Thickness: 0.002}
	γ, err := buckling.KnockdownCompression(500)
	must(t, γ, err)
	length := math.Sqrt(2.849 / γ / math.Sqrt(0.91) * 0.002)
	c.Length = length * (1 - 1e-3)
	below, err := c.CompressionStress(m, 0)
	must(t, below, err)
	c.Length = length * (1 + 1e-3)
	above, err := c.CompressionStress(m, 0)
	must(t, above, err)
	if !below.Short || above.Short {
		t.Errorf("short below %t, above %t", below.Short, above.Short)
	}
	checktest.Close(t, "meeting", below.Elastic, above.Elastic, 5e-3) // k falls as 1/L² below
}

// 1.04 √Z lies below the least k of the equations: 12.5 % at Z = 100, 4 % at
// 1000, 1 % at 20000 (computed); and the hydrostatic k below the lateral one.
func TestMediumAgainstTheEquations(t *testing.T) {
	m := metal(70, 0.3, 1e3, 20, "aluminium")
	for _, row := range []struct{ z, below, tolerance float64 }{{100, 0.125, 0.005}, {1000, 0.04, 0.005}, {20000, 0.01, 0.003}} {
		c := buckling.Tube{Radius: 1, Thickness: 1e-4}
		c.Length = math.Sqrt(row.z * 1e-4 / math.Sqrt(0.91))
		p, waves, err := c.LateralPressure(m, 1)
		must(t, p, err)
		if got := 1 - c.MediumPressure(m)/0.75/p; math.Abs(got-row.below) > row.tolerance || waves < 2 {
			t.Errorf("Z %g: %g below, n %g", row.z, got, waves)
		}
		h, _, err := c.HydrostaticPressure(m, 1)
		if must(t, h, err); h >= p {
			t.Errorf("Z %g: hydrostatic %g not below lateral %g", row.z, h, p)
		}
	}
	_, _, err := buckling.Tube{Radius: 1, Thickness: 0.01, Length: 1}.LateralPressure(m, math.NaN())
	outside(t, "knock-down", err)
}
