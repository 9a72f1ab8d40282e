package buckling

import (
	"math"

	"proofsheet/report/check"
)

// pressureKnockdown is γ of SP-8007 under pressure from outside, √γ = 0.75.
const pressureKnockdown = 0.5625

// LateralPressure returns the critical pressure [Pa] on the side wall alone of
// a cylinder simply supported at both ends, with knock-down γ [-], and the
// number of waves around [-] at which it is least:
//
//	p = k π² D/(L² R), k = min over β of (1/β²)[(1+β²)² + 12 γ²Z²/(π⁴(1+β²)²)]
//
// with D = E t³/(12(1−ν²)) and β = n L/(π R). By Donnell's equations: n near 2
// makes it up to n²/(n²−1) too high.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 17 to 20 (read).
func (c Tube) LateralPressure(m Metal, γ float64) (p, waves float64, err error) {
	return c.donnell(m, γ, 1)
}

// HydrostaticPressure is the same with pressure on the ends too: γ [-] gives
// the pressure [Pa] and the waves [-] with β² + 1/2 for β² in the divisor.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 21 and 22 (read).
func (c Tube) HydrostaticPressure(m Metal, γ float64) (p, waves float64, err error) {
	return c.donnell(m, γ, 0.5)
}

// donnell finds the least k over b = 1 + β² of (b² + c/b²)/(b − s): its
// derivative vanishes at b⁵ − 2 s b⁴ − 3 c b + 2 c s = 0.
func (c Tube) donnell(m Metal, γ, s float64) (p, waves float64, err error) {
	if err := c.valid(m); err != nil {
		return math.NaN(), math.NaN(), err
	}
	if err := check.Within("buckling.Tube", "knock-down", γ, math.SmallestNonzeroFloat64, 1, "a share of the perfect shell"); err != nil {
		return math.NaN(), math.NaN(), err
	}
	k12 := 12 * math.Pow(γ*c.Batdorf(m.Poisson), 2) / math.Pow(math.Pi, 4)
	slope := func(b float64) float64 { return math.Pow(b, 5) - 2*s*math.Pow(b, 4) - 3*k12*b + 2*k12*s }
	low, high := 1.0, 2.0
	for slope(high) < 0 {
		low, high = high, 2*high
	}
	for range 200 {
		if mid := (low + high) / 2; slope(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	b := high
	k := (b*b + k12/(b*b)) / (b - s)
	return k * c.plate(m) * c.Thickness / c.Radius, math.Sqrt(b-1) * math.Pi * c.Radius / c.Length, nil
}

// MediumPressure returns the critical pressure from outside [Pa] of a cylinder
// of medium length:
//
//	p = 0.855 E √γ (t/R)^2.5 (R/L)/(1−ν²)^0.75, √γ = 0.75
//
// It is meant for γZ from 100 up; shorter it lies below the true value.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 23 to 25 and 28 (read).
func (c Tube) MediumPressure(m Metal) float64 {
	return 0.855 * m.Modulus * math.Sqrt(pressureKnockdown) * math.Pow(c.slender(), -2.5) * c.Radius / c.Length /
		math.Pow(1-m.Poisson*m.Poisson, 0.75)
}

// LongPressure returns the critical pressure from outside [Pa] of a long
// cylinder, which buckles as a ring:
//
//	p = γ E (t/R)³/(4(1−ν²)), γ = 0.90
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 26 to 29 (read).
func (c Tube) LongPressure(m Metal) float64 {
	return 0.90 * m.Modulus * math.Pow(c.slender(), -3) / (4 * (1 - m.Poisson*m.Poisson))
}

// PressureSP8007 returns the critical pressure from outside [Pa], after
// plasticity and before any factor: the larger of [Tube.MediumPressure] and
// [Tube.LongPressure] for γZ of 100 and more, γ = 0.5625; shorter,
// [Tube.HydrostaticPressure] with that γ times (n²−1)/n², which Donnell's
// equations leave out. It holds for R/t from 10 up.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 17 to 32 (read); that the larger of the
// two is safe was computed with general shell eigenvalues.
func (c Tube) PressureSP8007(m Metal) (float64, error) {
	const fn = "buckling.Tube.PressureSP8007"
	if err := c.valid(m); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "R/t", c.slender(), 10, math.Inf(1), "a thin shell"); err != nil {
		return math.NaN(), err
	}
	long := m.PlasticHoopLong(c.LongPressure(m)*c.slender()) / c.slender()
	medium := c.MediumPressure(m)
	if pressureKnockdown*c.Batdorf(m.Poisson) < 100 {
		p, waves, err := c.HydrostaticPressure(m, pressureKnockdown)
		if err != nil { // not reached: tube and metal are valid by now
			return math.NaN(), err
		}
		waves = math.Max(waves, 2)
		medium = p * (1 - 1/(waves*waves))
	}
	return math.Max(long, m.PlasticHoop(medium*c.slender())/c.slender()), nil
}

// EuropeanPressure returns the pressure from outside [Pa] that a cylinder with
// closed ends bears by EN 1993-1-6, γ_M1 = 1.1 taken off:
//
//	p = χ σ_y t/(1.1 R), λ = √(σ_y/σ_θ,Rcr), λ0 = 0.40, β = 0.60
//	σ_θ,Rcr = 0.92 E (1/ω)(t/R)                           ω ≤ 1.63 R/t
//	σ_θ,Rcr = E (t/R)² [0.275 + 2.03 (R/(ω t))⁴]          longer
//
// α_θ by class: 0.75, 0.65, 0.50. critical is σ_θ,Rcr R⁻¹t [Pa], the elastic
// pressure. The first form is meant for ω from 20 up and low below.
//
// Source: EN 1993-1-6:2007 Annex D, p. 78 (long form read, medium recalled).
func (c Tube) EuropeanPressure(m Metal, class Class) (critical, p float64, err error) {
	_, α, err := class.quality()
	if err == nil {
		err = c.valid(m)
	}
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	σ := EuropeanHoopStress(c, m)
	χ := europeanChi(math.Sqrt(m.Yield/σ), 0.4, 0.6, α)
	return σ / c.slender(), χ * m.Yield / partial / c.slender(), nil
}

// EuropeanHoopStress returns σ_θ,Rcr [Pa] of [Tube.EuropeanPressure], both ends
// pinned and free to move along the axis.
func EuropeanHoopStress(c Tube, m Metal) float64 {
	ω := c.Omega()
	if ω <= 1.63*c.slender() {
		return 0.92 * m.Modulus / (ω * c.slender())
	}
	return m.Modulus / math.Pow(c.slender(), 2) * (0.275 + 2.03*math.Pow(c.slender()/ω, 4))
}
