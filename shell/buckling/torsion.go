package buckling

import (
	"math"

	"proofsheet/report/check"
)

// A ShearStress is a critical shear stress under torsion.
type ShearStress struct {
	Knockdown float64 // γ [-]
	Elastic   float64 // before plasticity [Pa]
	Critical  float64 // after plasticity, before any factor [Pa]
	Long      bool    // by the form for long shells
}

// TorsionStress returns the critical shear stress of a cylinder in torsion:
//
//	τ = k π² E (t/L)²/(12(1−ν²)), k = 0.85 (γ Z)^0.75, γ^0.75 = 0.67     γZ ≥ 50
//	τ = γ E (t/R)^1.5/(3√2 (1−ν²)^0.75), γ = 0.80      γZ > 78 (R/t)²(1−ν²)
//
// then [Metal.PlasticShear]. It holds for γZ from 50 up. At the
// border of the two the second, with its own γ, is the higher, as printed.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 33 to 40 (read).
func (c Tube) TorsionStress(m Metal) (ShearStress, error) {
	none := ShearStress{Elastic: math.NaN(), Critical: math.NaN()}
	if err := c.valid(m); err != nil {
		return none, err
	}
	γ := math.Pow(0.67, 4.0/3)
	γZ := γ * c.Batdorf(m.Poisson)
	if err := check.Within("buckling.Tube.TorsionStress", "γ Z", γZ, 50, math.Inf(1), "shells of medium length and more"); err != nil {
		return none, err
	}
	s := ShearStress{Knockdown: γ, Elastic: 0.85 * math.Pow(γZ, 0.75) * c.plate(m)}
	if γZ > 78*c.slender()*c.slender()*(1-m.Poisson*m.Poisson) {
		long := 0.80 * m.Modulus * math.Pow(c.slender(), -1.5) / (3 * math.Sqrt2 * math.Pow(1-m.Poisson*m.Poisson, 0.75))
		s.Knockdown, s.Elastic, s.Long = 0.80, long, true
	}
	s.Critical = m.PlasticShear(s.Elastic)
	return s, nil
}

// torsion is TorsionStress, a shell shorter than its range taken as long as
// the shortest within it: that one is no stronger. taken says so.
func (c Tube) torsion(m Metal) (s ShearStress, taken bool, err error) {
	least := 50 / math.Pow(0.67, 4.0/3) * (1 + 1e-9)
	if z := c.Batdorf(m.Poisson); z < least && z > 0 {
		c.Length *= math.Sqrt(least / z)
		taken = true
	}
	s, err = c.TorsionStress(m)
	return s, taken, err
}
