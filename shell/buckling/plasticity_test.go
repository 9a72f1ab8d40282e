package buckling_test

// Roots of σ = η σ_el worked out apart from the code, for annealed stainless
// steel (m = 5) and a heat-treated aluminium alloy (m = 20).

import (
	"math"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

var (
	steel304  = metal(193, 0.3, 205, 5, "austenitic")
	aluminium = metal(68.9, 0.33, 240, 20, "aluminium")
)

func TestPlasticRoots(t *testing.T) {
	for _, row := range []struct {
		m     buckling.Metal
		times float64 // elastic stress over yield
		want  float64
	}{
		{steel304, 0.5, 0.43}, {steel304, 1, 0.60}, {steel304, 2, 0.76},
		{aluminium, 0.5, 0.50}, {aluminium, 1, 0.84}, {aluminium, 2, 0.93},
	} {
		// the roots are worked out for another E/σ_y: one unit of the last digit
		got := row.m.PlasticCompression(row.times*row.m.Yield) / row.m.Yield
		checktest.Close(t, "root", got, row.want, 0.01/row.want)
	}
	// the parabola F_y(1 − F_y/4σ_el) is up to 26 % high for m = 5
	if high := 0.75 * 205e6 / steel304.PlasticCompression(205e6); math.Abs(high-1.26) > 0.02 {
		t.Errorf("the parabola is %g of the root", high)
	}
}

// The root satisfies its equation, never passes the elastic stress or yield,
// and grows with the elastic stress.
func TestPlasticEquation(t *testing.T) {
	m := steel304
	last := 0.0
	for _, elastic := range []float64{1e6, 60e6, 150e6, 205e6, 400e6, 2e9, 1e12} {
		σ := m.PlasticCompression(elastic)
		g := 0.002 * m.Modulus / m.Yield * math.Pow(σ/m.Yield, m.Exponent-1)
		if η := 1 / math.Sqrt((1+g)*(1+m.Exponent*g)); σ < m.Yield {
			checktest.Close(t, "root", σ, η*elastic, 1e-9)
		}
		if σ > elastic || σ > m.Yield || σ < last {
			t.Errorf("elastic %g: %g", elastic, σ)
		}
		// of the four, shear keeps most, axial compression least
		hoop, long := m.PlasticHoop(elastic), m.PlasticHoopLong(elastic)
		if !(hoop >= 0.95*σ && long >= 0.95*σ && m.PlasticShear(elastic) <= m.Yield/2) {
			t.Errorf("elastic %g: axial %g, hoop %g, long %g", elastic, σ, hoop, long)
		}
		last = σ
	}
	checktest.Close(t, "far below yield", m.PlasticCompression(1e6), 1e6, 1e-6)
	for _, bad := range []float64{0, -1, math.NaN()} {
		if !math.IsNaN(m.PlasticCompression(bad)) {
			t.Errorf("elastic stress %g gives a number", bad)
		}
	}
}

func TestHardeningExponents(t *testing.T) {
	for _, row := range []struct {
		family string
		hard   bool
		want   float64
		how    check.How
	}{
		{"aluminium", true, 20, check.Memory}, {"aluminium", false, 6, check.Memory},
		{"austenitic", true, 5, check.Memory}, {"ferritic", false, 5, check.Practice}, {"titanium", true, 5, check.Practice},
	} {
		if m, src := buckling.HardeningExponent(row.family, row.hard); m != row.want || src.How != row.how {
			t.Errorf("%s: %g, %v", row.family, m, src)
		}
	}
}

// From the built-in alloys: the weld takes the high exponent away.
func TestNewMetal(t *testing.T) {
	for _, row := range []struct {
		alloy  string
		welded bool
		want   float64
	}{{"6061-T6", false, 20}, {"6061-T6", true, 6}, {"2219-T87", false, 6}, {"304L", false, 5}} {
		p, err := material.Query{Alloy: row.alloy, Thickness: 0.005, Temperature: 293.15}.Parent()
		must(t, p, err)
		m := buckling.NewMetal(p, row.alloy, p.Yield.Value, row.welded)
		if m.Exponent != row.want || m.Modulus != p.ElasticModulus.Value || m.Family != p.Family || m.Yield != p.Yield.Value {
			t.Errorf("%s, welded %t: %+v", row.alloy, row.welded, m)
		}
	}
}
