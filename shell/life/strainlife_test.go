package life_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// course is the metal of a rocket course's worked problem, read: σ_f' 340 MPa, E 96 GPa, b −0.10, ε_f' 0.35, c −0.60.
var course = life.StrainLife{Strength: 340 * MPa, ElasticModulus: 96e9, StrengthExponent: -0.10, Ductility: 0.35, DuctilityExponent: -0.60}

// The worked problem, read: reversals, cycles and, with a scatter of 4, cycles allowed. Its 1529, 765 and 191 are whole numbers.
func TestStrainLifeCourse(t *testing.T) {
	for _, row := range []struct {
		Δε               float64
		n, over4, double string
	}{{0.012, "765", "191", "1529"}, {0.008, "1951", "488", ""}, {0.016, "416", "104", ""}, {0.020, "266", "66", ""}} {
		n := value(t)(course.Cycles(row.Δε))
		checktest.Printed(t, "N", n, row.n)
		checktest.Printed(t, "N/4", n/life.ScatterFactor, row.over4)
		if row.double != "" {
			checktest.Printed(t, "2N", 2*n, row.double)
		}
	}
}

func TestStrainLifeEdges(t *testing.T) {
	s := course
	s.Strength, s.ElasticModulus = 3*s.Strength, 3*s.ElasticModulus
	checktest.Close(t, "change of units", value(t)(s.Cycles(0.012)), value(t)(course.Cycles(0.012)), 1e-12)
	// One cycle is two reversals: Δε/2 = (σ_f'/E) 2^b + ε_f' 2^c.
	one := 2 * (340.0/96000*math.Pow(2, -0.1) + 0.35*math.Pow(2, -0.6))
	checktest.Close(t, "one cycle", value(t)(course.Cycles(one*(1-1e-9))), 1, 1e-6)
	for _, Δε := range []float64{one * 1.001, 0, 1e-9, math.NaN(), -0.01} {
		v, err := course.Cycles(Δε)
		refused(t, "strain range", v, err)
	}
	for name, change := range map[string]func(*life.StrainLife){
		"strength": func(s *life.StrainLife) { s.Strength = math.NaN() }, "modulus": func(s *life.StrainLife) { s.ElasticModulus = 0 },
		"b above 0": func(s *life.StrainLife) { s.StrengthExponent = 0.1 }, "c above b": func(s *life.StrainLife) { s.DuctilityExponent = -0.05 },
		"ductility": func(s *life.StrainLife) { s.Ductility = 0 },
	} {
		s := course
		change(&s)
		v, err := s.Cycles(0.012)
		refused(t, name, v, err)
	}
}
