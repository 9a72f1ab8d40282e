package revolution

import "math"

// A yielding is an elastic, perfectly plastic wall in plane stress: E, ν and the
// yield stress σ_y of von Mises.
type yielding struct{ e, ν, σy float64 }

// A plane is a pair of meridional and hoop values.
type plane [2]float64

// stress returns the stress of the elastic strain ε, brought back to the yield
// surface, the part of ε that becomes plastic, and the tangent moduli
// consistent with it: in sum and difference over √2, where elasticity and the
// yield condition are both diagonal,
//
//	ξ = ξ_e/(1 + Δγ E/(3(1 − ν))), η = η_e/(1 + Δγ E/(1 + ν)), ξ²/6 + η²/2 = σ_y²/3
//
// with Δγ from Newton's method on a falling convex function.
//
// Source: Simo and Taylor 1986, return mapping in plane stress (memory).
func (y yielding) stress(ε plane) (σ, flow plane, ss, sθ, θθ float64) {
	const h = math.Sqrt2
	a, b := y.e/(1-y.ν), y.e/(1+y.ν)
	ξe, ηe := a*(ε[0]+ε[1])/h, b*(ε[0]-ε[1])/h
	limit := y.σy * y.σy / 3
	γ := 0.0
	if ξe*ξe/6+ηe*ηe/2 > limit {
		for range 60 {
			p, q := 1+γ*a/3, 1+γ*b
			f := ξe*ξe/(6*p*p) + ηe*ηe/(2*q*q) - limit
			if math.Abs(f) <= 1e-14*limit {
				break
			}
			γ += f / (ξe*ξe*a/(9*p*p*p) + ηe*ηe*b/(q*q*q))
		}
	}
	ξ, η := ξe/(1+γ*a/3), ηe/(1+γ*b)
	σ = plane{(ξ + η) / h, (ξ - η) / h}
	dξ, dη := 1/(1/a+γ/3), 1/(1/b+γ)
	cξξ, cηη, cξη := dξ, dη, 0.0
	if γ > 0 {
		nξ, nη := dξ*ξ/3, dη*η
		d := nξ*ξ/3 + nη*η
		cξξ, cηη, cξη = dξ-nξ*nξ/d, dη-nη*nη/d, -nξ*nη/d
		flow = plane{γ * (ξ/3 + η) / h, γ * (ξ/3 - η) / h}
	}
	return σ, flow, (cξξ + cηη + 2*cξη) / 2, (cξξ - cηη) / 2, (cξξ + cηη - 2*cξη) / 2
}

// dissipation is the work of yielding per volume of the plastic strain rate ε:
// σ_y √(4/3 (ε₁² + ε₁ε₂ + ε₂²)).
func (y yielding) dissipation(ε plane) float64 {
	return y.σy * math.Sqrt(4.0/3*(ε[0]*ε[0]+ε[0]*ε[1]+ε[1]*ε[1]))
}
