package buckling

import (
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Metal is what the wall's metal gives to stability.
type Metal struct {
	Modulus  float64 // E, lowest over the temperatures of the case [Pa]
	Poisson  float64 // ν [-]
	Yield    float64 // σ_y, 0.2 % proof strength, welded where a weld lies in the wall [Pa]
	Exponent float64 // m of the stress-strain curve, see HardeningExponent [-]
	Family   string  // austenitic, ferritic, aluminium, …
}

func (m Metal) valid() error {
	const fn = "buckling.Metal"
	for _, v := range []struct {
		what        string
		got, lo, up float64
	}{
		{"elastic modulus [Pa]", m.Modulus, math.SmallestNonzeroFloat64, math.MaxFloat64},
		{"Poisson's ratio", m.Poisson, 0, 0.5},
		{"yield strength [Pa]", m.Yield, math.SmallestNonzeroFloat64, m.Modulus / 50},
		{"exponent of the stress-strain curve", m.Exponent, 2, 60},
	} {
		if err := check.Within(fn, v.what, v.got, v.lo, v.up, "a metal"); err != nil {
			return err
		}
	}
	return nil
}

// NewMetal returns the metal of a wall from the properties at the state with
// the lowest modulus: alloy is its name, yield the 0.2 % proof strength [Pa],
// the weld zone's where welded says that a weld lies in the wall.
func NewMetal(p material.Properties, alloy string, yield float64, welded bool) Metal {
	hard := !welded && strings.HasPrefix(alloy, "6") && strings.Contains(alloy, "T6")
	m, _ := HardeningExponent(p.Family, hard)
	return Metal{Modulus: p.ElasticModulus.Value, Poisson: p.Poisson.Value, Yield: yield, Exponent: m, Family: p.Family}
}

// HardeningExponent returns the exponent m [-] of Ramberg and Osgood's curve
// when none was measured: 20 for 6061-T6 and its like away from welds, 6 for
// other aluminium, welded or annealed, 5 for annealed austenitic steel. For any
// other metal it is 5 too: below the yield strength a low exponent is the safe
// side. hard is true only for such an aluminium that no weld has softened.
//
// Source: recalled; 5 for other metals is the safe side of the same values.
func HardeningExponent(family string, hard bool) (float64, check.Source) {
	recalled := check.Source{Doc: "exponents of the stress-strain curve", Where: "recalled for the metal", How: check.Memory}
	switch {
	case family == "aluminium" && hard:
		return 20, recalled
	case family == "aluminium":
		return 6, recalled
	case family == "austenitic":
		return 5, recalled
	default:
		recalled.Where, recalled.How = "the lowest of the recalled ones, the safe side", check.Practice
		return 5, recalled
	}
}

// moduli returns secant and tangent modulus as shares of E [-] at stress σ [Pa]:
//
//	ε = σ/E + 0.002 (σ/σ_y)^m
//	E_s/E = 1/(1 + 0.002 E/σ_y (σ/σ_y)^(m−1))
//	E_t/E = 1/(1 + 0.002 m E/σ_y (σ/σ_y)^(m−1))
func (m Metal) moduli(σ float64) (secant, tangent float64) {
	plastic := 0.002 * m.Modulus / m.Yield * math.Pow(σ/m.Yield, m.Exponent-1)
	return 1 / (1 + plastic), 1 / (1 + m.Exponent*plastic)
}

// reduce returns the stress [Pa] at which σ = η(σ) σ_el, not above σ_y. It is
// the root of a function that falls with σ, found by halving.
func (m Metal) reduce(elastic float64, η func(secant, tangent float64) float64) float64 {
	at := func(σ float64) float64 { return η(m.moduli(σ)) * elastic }
	if !(elastic > 0) || m.valid() != nil {
		return math.NaN()
	}
	low, high := 0.0, math.Min(elastic, m.Yield)
	if at(high) >= high {
		return high
	}
	for range 200 {
		mid := (low + high) / 2
		if mid <= low || mid >= high {
			break
		}
		if at(mid) >= mid {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// PlasticCompression returns the critical axial stress [Pa] of a wall whose
// elastic one is elastic [Pa]: the root of σ = η σ_el, not above σ_y, with
//
//	η = √(E_s E_t)/E
//
// It is NaN where the elastic stress is not positive.
//
// Source: NASA/SP-8007-2020 Rev 2, eq. 11 (read).
func (m Metal) PlasticCompression(elastic float64) float64 {
	return m.plasticShort(elastic, 1)
}

// plasticShort is the same with the share of the moderately long shell, 1 or
// less: a very short one has η = E_t/E (eq. 12), linear between.
func (m Metal) plasticShort(elastic, share float64) float64 {
	return m.reduce(elastic, func(s, t float64) float64 { return (1-share)*t + share*math.Sqrt(s*t) })
}

// PlasticHoop returns the critical hoop stress [Pa] under pressure from outside
// of a cylinder whose elastic one is elastic [Pa]:
//
//	η = (E_s/E) √( √(E_t/E_s) (1/4 + 3/4 E_t/E_s) )
//
// Source: NASA/SP-8007-2020 Rev 2, eq. 31 (read).
func (m Metal) PlasticHoop(elastic float64) float64 {
	return m.reduce(elastic, func(s, t float64) float64 { return s * math.Sqrt(math.Sqrt(t/s)*(0.25+0.75*t/s)) })
}

// PlasticHoopLong is the same [Pa] for a long cylinder, elastic stress
// elastic [Pa]: η = (E_s/E)(1/4 + 3/4 E_t/E_s).
//
// Source: NASA/SP-8007-2020 Rev 2, eq. 32 (read).
func (m Metal) PlasticHoopLong(elastic float64) float64 {
	return m.reduce(elastic, func(s, t float64) float64 { return s * (0.25 + 0.75*t/s) })
}

// PlasticShear returns the critical shear stress [Pa] of a wall whose elastic
// one is elastic [Pa]: η = E_s/E at a normal stress of 2 τ; so 2 τ is not above
// σ_y.
//
// Source: NASA/SP-8007-2020 Rev 2, eq. 40 (read).
func (m Metal) PlasticShear(elastic float64) float64 {
	return m.reduce(2*elastic, func(s, _ float64) float64 { return s }) / 2
}
