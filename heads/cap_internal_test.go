package heads

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
)

// D. Jones, "Compute Fluid Volumes in Vertical Tanks" (Chemical Processing,
// December 2003), as quoted in the formula texts of a fluids library: read. Spherical
// caps, which are the crown pieces of our heads: cap bottom D 132 in, depth 33 in, and
// inward D 113 in, depth 33 in; levels in inches, volumes in US gallons.
func TestCapsJones(t *testing.T) {
	for _, row := range []struct {
		where  string
		D, a   float64
		inward bool
		level  []float64
		want   []string
	}{
		{"cap bottom", 132, 33, false, []float64{24, 60}, []string{"583.601835", "2658.460583"}},
		{"inward cap", 113, 33, true, []float64{15, 25, 50}, []string{"112.814054", "341.705640", "1372.928689"}},
	} {
		R := row.D / 2
		ρ := (row.a*row.a + R*R) / (2 * row.a)
		c := arc{called: "crown", x0: row.a - ρ, ρ: ρ, b: math.Asin(R / ρ)}
		for i, z := range row.level {
			h := math.Min(z, row.a)
			v := math.Pi * R * R * z
			if row.inward {
				v -= c.volume(0) - c.volume(h)
			} else {
				v += c.volume(row.a-h) - math.Pi*R*R*h
			}
			checktest.Printed(t, row.where, v/231, row.want[i])
		}
	}
}

// A cap R 0.3 m, depth 0.12 m holds 8 kg of water up to 0.07893581 m: computed.
func TestCapComputed(t *testing.T) {
	c := arc{called: "crown", x0: 0.12 - 0.435, ρ: 0.435, b: math.Asin(0.3 / 0.435)}
	checktest.Close(t, "8 kg", 1000*c.volume(0.12-0.07893581), 8, 1e-6)
}
