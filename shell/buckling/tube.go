package buckling

import (
	"math"

	"proofsheet/report/check"
)

// A Tube is the plain cylindrical shell that the formulas see.
type Tube struct {
	Radius    float64 // R, mid-wall [m]
	Thickness float64 // t, wall for strength [m]
	Length    float64 // L, between lines of support [m]
}

// OutsideDiameter returns D_o = 2 R + t [m].
func (c Tube) OutsideDiameter() float64 { return 2*c.Radius + c.Thickness }

// Batdorf returns Z = L² √(1−ν²)/(R t) [-] for Poisson's ratio ν [-].
func (c Tube) Batdorf(ν float64) float64 {
	return c.Length * c.Length * math.Sqrt(1-ν*ν) / (c.Radius * c.Thickness)
}

// Omega returns ω = L/√(R t) [-].
func (c Tube) Omega() float64 { return c.Length / math.Sqrt(c.Radius*c.Thickness) }

func (c Tube) slender() float64 { return c.Radius / c.Thickness }

// valid returns an error unless wall, radius and length are positive and the
// wall leaves a bore.
func (c Tube) valid(m Metal) error {
	const fn = "buckling.Tube"
	if err := positive(fn, "wall [m]", c.Thickness); err != nil {
		return err
	}
	if err := positive(fn, "length [m]", c.Length); err != nil {
		return err
	}
	if err := check.Within(fn, "R/t", c.slender(), 1, math.MaxFloat64, "a shell"); err != nil {
		return err
	}
	return m.valid()
}

func positive(fn, what string, v float64) error {
	return check.Within(fn, what, v, math.SmallestNonzeroFloat64, math.MaxFloat64, "a positive number")
}

// number returns an error for NaN and infinity.
func number(fn, what string, v float64) error {
	return check.Within(fn, what, v, -math.MaxFloat64, math.MaxFloat64, "a number")
}

// KnockdownCompression returns γ_c [-] of a cylinder in axial compression with
// R/t = slender [-]:
//
//	γ_c = 1 − 0.901 (1 − exp(−√(R/t)/16))
//
// It holds to R/t = 1500; below 25 the value at 25 is returned, the safe side.
// The tests behind it have R/t from about 80 up and L/R to 5.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 6 to 10 (read).
func KnockdownCompression(slender float64) (float64, error) {
	return knockdown("buckling.KnockdownCompression", slender, 0.901)
}

// KnockdownBending returns γ_b [-] of a cylinder in bending, R/t = slender [-]:
// as [KnockdownCompression] with 0.731 for 0.901.
//
// Source: NASA/SP-8007-2020 Rev 2, eqs 13 to 16 (read).
func KnockdownBending(slender float64) (float64, error) {
	return knockdown("buckling.KnockdownBending", slender, 0.731)
}

func knockdown(fn string, slender, share float64) (float64, error) {
	if err := check.Within(fn, "R/t", slender, 1, 1500, "the curve of SP-8007"); err != nil {
		return math.NaN(), err
	}
	return 1 - share*(1-math.Exp(-math.Sqrt(math.Max(slender, 25))/16)), nil
}

// ClassicalStress returns σ_cl = E t/(R √(3(1−ν²))) [Pa], the axial buckling
// stress of the perfect cylinder.
func (c Tube) ClassicalStress(m Metal) float64 {
	return m.Modulus * c.Thickness / (c.Radius * math.Sqrt(3*(1-m.Poisson*m.Poisson)))
}

// LengthFactor returns C_L [-], by which the classical stress falls in a shell
// of finite length whose ends are held round and free to warp:
//
//	C_L = min(1, σ_L/σ_cl)
//	σ_L = E min n²/(n²+1) { t²(n²−1+a²)²/(12(1−ν²)R²a²) + a²/(n²+a²)² }
//
// over a = m π R/L with m = 1, 2, 3 and n = 2, 3, …
//
// Source: fitted within 2 % to eigenvalues of general shells of revolution
// (computed).
func (c Tube) LengthFactor(m Metal) float64 {
	least := math.Inf(1)
	waves := int(3*math.Sqrt(c.slender())) + 10
	thin := 1 / (12 * (1 - m.Poisson*m.Poisson) * c.slender() * c.slender())
	for half := 1.0; half <= 3; half++ {
		a2 := math.Pow(half*math.Pi*c.Radius/c.Length, 2)
		for n := 2; n <= waves; n++ {
			n2 := float64(n * n)
			σ := n2 / (n2 + 1) * (thin*math.Pow(n2-1+a2, 2)/a2 + a2/math.Pow(n2+a2, 2))
			least = math.Min(least, σ)
		}
	}
	return math.Min(1, least*m.Modulus/c.ClassicalStress(m))
}
