package buckling

import (
	"math"

	"proofsheet/report/check"
)

// An AxialStress is a critical meridional stress and how it was found.
type AxialStress struct {
	Knockdown    float64 // γ [-]
	Gain         float64 // Δγ by inside pressure, of E t/R [-]
	LengthFactor float64 // C_L [-]
	Classical    float64 // σ_cl of the perfect shell [Pa]
	Elastic      float64 // before plasticity [Pa]
	Critical     float64 // after plasticity, before any factor [Pa]
	Short        bool    // by the form for short shells
}

// shortLimit is γZ = π² √3/6 where the forms for short and moderately long
// shells meet.
var shortLimit = math.Pi * math.Pi * math.Sqrt(3) / 6

// CompressionStress returns the critical stress of a cylinder in axial
// compression:
//
//	σ_c = C_L (E t/R) min(γ_c/√(3(1−ν²)) + Δγ, 1/√(3(1−ν²)))    γ_c Z ≥ 2.85
//	σ_c = k_x π² E t²/(12(1−ν²)L²), k_x = 1 + 12 γ_c² Z²/π⁴      shorter
//
// then [Metal.PlasticCompression]. gain is Δγ [-], not counted in a short shell.
// Both edges must be held round. It holds to R/t = 1500.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 1 to 12 and 48 (read), C_L computed.
func (c Tube) CompressionStress(m Metal, gain float64) (AxialStress, error) {
	γ, err := KnockdownCompression(c.slender())
	return c.axial(m, γ, gain, err)
}

// BendingStress returns the critical peak stress of a cylinder in bending: as
// [Tube.CompressionStress], gain [-], with γ_b. Where ω > 0.5 R/t, a long
// tube, it is not above the stress at which the section goes oval:
//
//	σ = 0.987 E t/(π R √(1−ν²))
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 13 to 16 (read); where a tube counts as
// long is taken from EN 1993-1-6.
func (c Tube) BendingStress(m Metal, gain float64) (AxialStress, error) {
	γ, err := KnockdownBending(c.slender())
	a, err := c.axial(m, γ, gain, err)
	if err == nil && c.Omega() > 0.5*c.slender() {
		oval := 0.987 * m.Modulus / (math.Pi * c.slender() * math.Sqrt(1-m.Poisson*m.Poisson))
		if oval < a.Elastic {
			a.Elastic = oval
			a.Critical = m.PlasticCompression(oval)
		}
	}
	return a, err
}

func (c Tube) axial(m Metal, γ, gain float64, err error) (AxialStress, error) {
	none := AxialStress{Knockdown: γ, Gain: gain, Elastic: math.NaN(), Critical: math.NaN()}
	if bad := c.valid(m); bad != nil {
		return none, bad
	}
	if err == nil {
		err = check.Within("buckling.Tube", "gain by pressure", gain, 0, 0.605, "never beyond the perfect shell")
	}
	if err != nil {
		return none, err
	}
	a := AxialStress{Knockdown: γ, Gain: gain, LengthFactor: c.LengthFactor(m), Classical: c.ClassicalStress(m)}
	perfect := 1 / math.Sqrt(3*(1-m.Poisson*m.Poisson))
	γZ := γ * c.Batdorf(m.Poisson)
	a.Short = γZ < shortLimit
	if a.Short {
		a.Gain = 0
		k := 1 + 12*γZ*γZ/math.Pow(math.Pi, 4)
		a.Elastic = a.LengthFactor * k * c.plate(m)
	} else {
		a.Elastic = a.LengthFactor * m.Modulus / c.slender() * math.Min(γ*perfect+gain, perfect)
	}
	a.Critical = m.plasticShort(a.Elastic, math.Min(1, γZ/shortLimit))
	return a, nil
}

// plate returns π² E t²/(12(1−ν²)L²) [Pa], the stress to which coefficients k
// refer.
func (c Tube) plate(m Metal) float64 {
	thin := c.Thickness / c.Length
	return math.Pi * math.Pi * m.Modulus * thin * thin / (12 * (1 - m.Poisson*m.Poisson))
}

// A GainPoint is one reading of the rise of the knock-down by inside pressure.
type GainPoint struct {
	Pressure float64 // x_p = (p/E)(R/t)² [-]
	Gain     float64 // Δγ [-]
}

// A Gain is the rise of the knock-down by inside pressure, as the user read it
// from his copy of SP-8007. Without points it is 0.
type Gain struct {
	Points []GainPoint
	Source string // the document and figure the points were read from
}

// At returns Δγ [-] at x_p = (p/E)(R/t)² [-], linear between the points. Below
// the first it is 0; beyond the last the error is a [*check.RangeError], for a
// reading is never carried on.
func (g Gain) At(x float64) (float64, error) {
	if len(g.Points) == 0 {
		return 0, check.Within("buckling.Gain", "x_p", x, -math.MaxFloat64, math.MaxFloat64, "a number")
	}
	if err := g.valid(); err != nil {
		return math.NaN(), err
	}
	last := g.Points[len(g.Points)-1]
	if err := check.Within("buckling.Gain", "x_p = (p/E)(R/t)²", x, -math.MaxFloat64, last.Pressure, "the points given"); err != nil {
		return math.NaN(), err
	}
	for i, b := range g.Points {
		if x < b.Pressure {
			if i == 0 {
				return 0, nil
			}
			a := g.Points[i-1]
			return a.Gain + (b.Gain-a.Gain)*(x-a.Pressure)/(b.Pressure-a.Pressure), nil
		}
	}
	return last.Gain, nil
}

// valid returns an error unless the points rise and have a source.
func (g Gain) valid() error {
	least := check.Within("buckling.Gain", "length of the source's name", float64(len(g.Source)), 1, math.Inf(1), "a table needs its source")
	before := GainPoint{}
	for i, p := range g.Points {
		if least != nil {
			return least
		}
		least = check.Within("buckling.Gain", "Δγ", p.Gain, before.Gain, 0.605, "rising with pressure, never beyond the perfect shell")
		if i > 0 || least == nil && !(p.Pressure > 0) {
			if !(p.Pressure > before.Pressure) {
				least = &check.RangeError{Func: "buckling.Gain", Param: "x_p of the next point", Got: p.Pressure, Least: before.Pressure, Most: math.Inf(1), Why: "points rise"}
			}
		}
		before = p
	}
	return least
}
