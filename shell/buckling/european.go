package buckling

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Class is the fabrication quality of EN 1993-1-6. C is the default; A and B
// need measured dimples.
type Class string

// quality returns Q of the class, and α_θ for pressure from outside [-].
func (c Class) quality() (q, hoop float64, err error) {
	switch c {
	case "A":
		return 40, 0.75, nil
	case "B":
		return 25, 0.65, nil
	case "C", "":
		return 16, 0.50, nil
	}
	return math.NaN(), math.NaN(), fmt.Errorf("fabrication class %q is not A, B or C", string(c))
}

// partial is γ_M1, the partial factor of EN 1993-1-6 on the resistance.
const partial = 1.1

// A European is the axial resistance by EN 1993-1-6, with its steps.
type European struct {
	Critical     float64 // σ_x,Rcr [Pa]
	Unpressured  float64 // α_x [-]
	Pressured    float64 // α_xpe, elastic with inside pressure [-]
	ElephantFoot float64 // α_xpp, plastic with inside pressure; α_x without [-]
	Reduction    float64 // α, the one that counts [-]
	Slenderness  float64 // λ [-]
	Chi          float64 // χ [-]
	Design       float64 // σ_x,Rd = χ σ_y/1.1 [Pa]
}

// EuropeanReduction returns α_x [-] of a cylinder with R/t = slender [-]:
//
//	α_x = 0.62/(1 + 1.91 (Δw/t)^1.44), Δw/t = √(R/t)/Q
//
// Q is 40, 25, 16 for class A, B, C.
//
// Source: EN 1993-1-6:2007 Annex D, as coded in open structural code (Q of
// classes A and C recalled).
func EuropeanReduction(slender float64, class Class) (float64, error) {
	q, _, err := class.quality()
	if err != nil {
		return math.NaN(), err
	}
	if err := check.Within("buckling.EuropeanReduction", "R/t", slender, 1, 5000, "shells of EN 1993-1-6"); err != nil {
		return math.NaN(), err
	}
	return 0.62 / (1 + 1.91*math.Pow(math.Sqrt(slender)/q, 1.44)), nil
}

// EuropeanPressured returns α_xpe [-], the elastic reduction factor raised by
// inside pressure, from the unpressured factor [-] and p̄ = p R/(t σ_x,Rcr) [-]
// of the smallest pressure:
//
//	α_xpe = α_x + (1 − α_x) p̄/(p̄ + 0.3/√α_x)
//
// Source: EN 1993-1-6, as EN 1993-4-1 in a published manual (read second-hand).
func EuropeanPressured(unpressured, p float64) float64 {
	p = math.Max(p, 0)
	return unpressured + (1-unpressured)*p/(p+0.3/math.Sqrt(unpressured))
}

// ElephantFoot returns α_xpp [-], the reduction factor where yielding under
// inside pressure bulges the wall:
//
//	α_xpp = (1 − (p̄_g/λ²)²)(1 − 1/(1.12 + s^1.5)) (s² + 1.21 λ²)/(s(s+1))
//
// s = R/(400 t), slender = R/t [-], slenderness λ = √(σ_y/σ_x,Rcr) [-],
// hoop = p R/(t σ_y) = p̄_g/λ² [-] of the largest local pressure. At hoop = 1
// and above it is 0. It was calibrated on steel.
//
// Source: EN 1993-1-6, as EN 1993-4-1 in a published manual (read second-hand).
func ElephantFoot(slender, slenderness, hoop float64) float64 {
	if hoop >= 1 {
		return 0
	}
	s := slender / 400
	return (1 - hoop*hoop) * (1 - 1/(1.12+math.Pow(s, 1.5))) * (s*s + 1.21*slenderness*slenderness) / (s * (s + 1))
}

// europeanChi returns χ [-] of EN 1993-1-6 for slenderness λ, squash limit λ0,
// plastic range factor β, exponent 1 and elastic reduction α.
func europeanChi(λ, λ0, β, α float64) float64 {
	λp := math.Sqrt(α / (1 - β))
	switch {
	case λp <= λ0:
		return math.Min(1, α/(λ*λ))
	case λ <= λ0:
		return 1
	case λ < λp:
		return 1 - β*(λ-λ0)/(λp-λ0)
	default:
		return α / (λ * λ)
	}
}

// EuropeanCriticalStress returns σ_x,Rcr [Pa], elastic and without knock-down:
//
//	σ_x,Rcr = 0.605 E C_x C_L t/R
//	C_x = 1.36 − 1.83/ω + 2.07/ω²         ω ≤ 1.7
//	C_x = 1                               1.7 ≤ ω ≤ 0.5 R/t
//	C_x = max(0.6, 1 + 0.2 (1 − 2 ω t/R)) longer, both ends free to warp
//
// with C_L of [Tube.LengthFactor].
//
// Source: EN 1993-1-6:2007 Annex D, as coded in open structural code.
func (c Tube) EuropeanCriticalStress(m Metal) float64 {
	ω, x := c.Omega(), 1.0
	switch {
	case ω <= 1.7:
		x = 1.36 - 1.83/ω + 2.07/(ω*ω)
	case ω > 0.5*c.slender():
		x = math.Max(0.6, 1+0.2*(1-2*ω/c.slender()))
	}
	return 0.605 * m.Modulus * x * c.LengthFactor(m) / c.slender()
}

// EuropeanCompression returns the axial resistance by EN 1993-1-6, least the
// smallest ullage pressure [Pa] and most the largest local one, liquid head
// included [Pa], both across the wall; a negative one counts as 0. The
// reduction is α_x without pressure, else the lower of α_xpe and α_xpp; λ0 =
// 0.2, β = 0.6, γ_M1 = 1.1.
//
// Source: EN 1993-1-6:2007 Annex D (read second-hand).
func (c Tube) EuropeanCompression(m Metal, class Class, least, most float64) (European, error) {
	if err := c.valid(m); err != nil {
		return European{Design: math.NaN()}, err
	}
	if _, err := EuropeanReduction(c.slender(), class); err != nil {
		return European{Design: math.NaN()}, err
	}
	return c.european(m, class, c.EuropeanCriticalStress(m), least, most)
}

// european is EuropeanCompression with the critical stress [Pa] at hand.
func (c Tube) european(m Metal, class Class, critical, least, most float64) (European, error) {
	const fn = "buckling.Tube.EuropeanCompression"
	e := European{Critical: critical, Design: math.NaN()}
	if err := number(fn, "smallest pressure [Pa]", least); err != nil {
		return e, err
	}
	if err := check.Within(fn, "largest pressure [Pa]", most, least, math.MaxFloat64, "not below the smallest"); err != nil {
		return e, err
	}
	α, err := EuropeanReduction(c.slender(), class)
	if err != nil {
		return e, err
	}
	e.Slenderness = math.Sqrt(m.Yield / critical)
	e.Unpressured, e.Pressured, e.ElephantFoot, e.Reduction = α, α, α, α
	if most > 0 {
		e.Pressured = EuropeanPressured(α, least*c.slender()/critical)
		e.ElephantFoot = ElephantFoot(c.slender(), e.Slenderness, most*c.slender()/m.Yield)
		e.Reduction = math.Min(e.Pressured, e.ElephantFoot)
	}
	e.Chi = europeanChi(e.Slenderness, 0.2, 0.6, e.Reduction)
	e.Design = e.Chi * m.Yield / partial
	return e, nil
}
