package buckling

import (
	"math"

	"proofsheet/report/check"
)

// inelastic returns F_ic [Pa], the stress at which a vessel wall of yield
// strength sy [Pa] collapses whose elastic stress is elastic [Pa]:
//
//	F_ic = F_he                       F_he/S_y ≤ 0.552
//	F_ic = 0.7 S_y (F_he/S_y)^0.4     to 2.439
//	F_ic = S_y                        above
func inelastic(elastic, sy float64) float64 {
	switch x := elastic / sy; {
	case x <= 0.552:
		return elastic
	case x < 2.439:
		return math.Min(sy, 0.7*sy*math.Pow(x, 0.4))
	case x >= 2.439:
		return sy
	}
	return math.NaN() // not reached: no metal without a modulus comes here, and none would have its yield strength
}

// PressureUG28 returns the allowable pressure from outside [Pa] by the closed
// form of UG-28, its factor 3 inside:
//
//	A = max(1.30 (t/D_o)^1.5/(L/D_o − 0.45 √(t/D_o)), 1.1 (t/D_o)²)
//	P_a = 2 F_ic/(3 D_o/t), F_ic of A E: A E to 0.552 S_y, above it
//	0.7 S_y (A E/S_y)^0.4, at most S_y
//
// The material chart is not at hand; the inelastic form stands for it. It holds
// for D_o/t from 10 up and L from 2 √(R t) up.
//
// Source: ASME VIII-1 UG-28 and VIII-2 4.4.5 (memory).
func (c Tube) PressureUG28(m Metal) (float64, error) {
	const fn = "buckling.Tube.PressureUG28"
	if err := c.valid(m); err != nil {
		return math.NaN(), err
	}
	d := c.OutsideDiameter() / c.Thickness
	if err := check.Within(fn, "D_o/t", d, 10, math.Inf(1), "thin cylinders of UG-28"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "L/√(R t)", c.Omega(), 2, math.Inf(1), "the closed form runs away below"); err != nil {
		return math.NaN(), err
	}
	return 2 * inelastic(c.ug28Strain()*m.Modulus, m.Yield) / (3 * d), nil
}

// ug28Strain returns A of UG-28.
func (c Tube) ug28Strain() float64 {
	d := c.OutsideDiameter() / c.Thickness
	medium := 1.30 * math.Pow(d, -1.5) / (c.Length/c.OutsideDiameter() - 0.45/math.Sqrt(d))
	return math.Max(medium, 1.1/(d*d))
}

// PressureDivision2 returns the allowable pressure from outside [Pa] by the
// form of VIII-2, its factor inside:
//
//	M_x = L/√(R_o t), F_he = 1.6 C_h E t/D_o, P_a = 2 F_ic t/(FS D_o)
//	C_h = 1                           M_x ≤ 1.5
//	C_h = 0.92/(M_x − 0.579)          to 13
//	C_h = 1.12 M_x^−1.058             to 2 (D_o/t)^0.94
//	C_h = 0.55 t/D_o                  longer
//	FS = 2 to F_ic = 0.55 S_y, 2.407 − 0.741 F_ic/S_y to S_y, 1.667 there
//
// Where two branches do not quite meet the lower is kept, so that a longer
// shell is never stronger. It holds for D_o/t up to 2000.
//
// Source: ASME VIII-2 4.4.5 (memory; C_h of the third line, F_he and FS read).
func (c Tube) PressureDivision2(m Metal) (float64, error) {
	if err := c.valid(m); err != nil {
		return math.NaN(), err
	}
	d := c.OutsideDiameter() / c.Thickness
	if err := check.Within("buckling.Tube.PressureDivision2", "D_o/t", d, 10, 2000, "cylinders of VIII-2"); err != nil {
		return math.NaN(), err
	}
	_, _, fic, factor := c.division2Steps(m)
	return 2 * fic / (factor * d), nil
}

// division2Steps returns M_x, C_h, F_ic and FS of VIII-2.
func (c Tube) division2Steps(m Metal) (mx, ch, fic, factor float64) {
	d := c.OutsideDiameter() / c.Thickness
	mx = c.Length / math.Sqrt(c.OutsideDiameter()/2*c.Thickness)
	ch = division2Length(mx, d)
	fic = inelastic(1.6*ch*m.Modulus/d, m.Yield)
	return mx, ch, fic, division2Factor(fic / m.Yield)
}

// division2Length returns C_h for M_x = mx and D_o/t = d.
func division2Length(mx, d float64) float64 {
	long := 2 * math.Pow(d, 0.94)
	third := func(mx float64) float64 { return math.Min(1.12*math.Pow(mx, -1.058), 0.92/(13-0.579)) }
	switch {
	case mx >= long:
		return math.Min(0.55/d, third(long))
	case mx > 13:
		return third(mx)
	case mx > 1.5:
		return 0.92 / (mx - 0.579)
	default:
		return 1
	}
}

// division2Factor returns FS for F_ic/S_y = x.
func division2Factor(x float64) float64 {
	switch {
	case x <= 0.55:
		return 2
	case x < 1:
		return math.Min(2, 2.407-0.741*x)
	default:
		return 1.667
	}
}

// A point of a collapse curve: P_m/P_y -> P_r/P_y.
type curvePoint struct{ elastic, collapse float64 }

// The curves of EN 13445-3 for cylinders and cones, and for spheres (memory).
// Beyond the last point the value stays, as in the standard; for spheres the
// last lies a little below it.
var (
	cylinderCurve = []curvePoint{
		{0, 0}, {0.25, 0.1245}, {0.5, 0.2505}, {0.75, 0.375}, {1, 0.4995}, {1.25, 0.6045}, {1.5, 0.6795}, {1.75, 0.72},
		{2, 0.7545}, {2.25, 0.78}, {2.5, 0.8025}, {2.75, 0.822}, {3, 0.8355}, {3.25, 0.849}, {3.5, 0.861}, {3.75, 0.87},
		{4, 0.879}, {4.5, 0.8955}, {5, 0.9135}, {5.5, 0.9225}, {6, 0.9345}, {6.5, 0.9465}, {7, 0.9585},
	}
	sphereCurve = []curvePoint{
		{0, 0}, {0.5, 0.09}, {1, 0.18}, {1.5, 0.255}, {2, 0.324}, {2.5, 0.386}, {3, 0.435}, {3.5, 0.479}, {4, 0.51},
		{4.5, 0.533}, {5, 0.548}, {5.5, 0.565}, {6, 0.567},
	}
)

// collapse interpolates a curve linearly at P_m/P_y = x.
func collapse(curve []curvePoint, x float64) float64 {
	for i := 1; i < len(curve); i++ {
		if a, b := curve[i-1], curve[i]; x <= b.elastic {
			return a.collapse + (b.collapse-a.collapse)*(x-a.elastic)/(b.elastic-a.elastic)
		}
	}
	return curve[len(curve)-1].collapse
}

// A Collapse is a pressure from outside by EN 13445-3, with its steps.
type Collapse struct {
	Yield     float64 // P_y, mid-wall reaches σ_e [Pa]
	Elastic   float64 // P_m, elastic buckling [Pa]
	Waves     int     // n of a cylinder, around
	Lower     float64 // P_r, lower bound of collapse [Pa]
	Allowable float64 // P_r/1.5 [Pa]
}

// steps returns the numbers of the method for the sheet.
func (r Collapse) steps() []check.Quantity {
	q := []check.Quantity{
		check.Pa("P_y", "pressure at yield", r.Yield), check.Pa("P_m", "elastic buckling pressure", r.Elastic), check.Pa("P_r", "lower bound of collapse", r.Lower),
	}
	if r.Waves > 0 {
		q = append(q, check.Num("n", "waves around", float64(r.Waves)))
	}
	return q
}

// europeanYield returns σ_e: the proof strength, divided by 1.25 in austenitic
// steel.
func (m Metal) europeanYield() float64 {
	if m.Family == "austenitic" {
		return m.Yield / 1.25
	}
	return m.Yield
}

// roundnessLimit is the deviation from the circle, share of R, to which the
// lower bound of EN 13445-3 belongs.
const roundnessLimit = 0.005

// PressureEN13445 returns the pressure from outside by EN 13445-3, its factor
// 1.5 inside, for a shell round within 0.5 % of R:
//
//	P_y = σ_e t/R, P_m = E t ε/R, P ≤ P_r/1.5, P_r/P_y from the curve over P_m/P_y
//	ε = min over n ≥ 2 of 1/(n²−1+Z²/2) { 1/((n²/Z²)+1)² + t²/(12R²(1−ν²)) (n²−1+Z²)² }
//
// with Z = π R/L; σ_e is the proof strength, in austenitic steel divided by 1.25.
//
// Source: EN 13445-3 8.5.2 (memory).
func (c Tube) PressureEN13445(m Metal) (Collapse, error) {
	if err := c.valid(m); err != nil {
		return Collapse{Allowable: math.NaN()}, err
	}
	r := Collapse{Yield: m.europeanYield() / c.slender(), Elastic: math.Inf(1)}
	z2 := math.Pow(math.Pi*c.Radius/c.Length, 2)
	bend := 1 / (12 * c.slender() * c.slender() * (1 - m.Poisson*m.Poisson))
	// the first sum falls and the second rises with n: past the least the
	// pressure only grows
	for n := 2; n < 10000; n++ {
		n2 := float64(n * n)
		ε := (1/math.Pow(n2/z2+1, 2) + bend*math.Pow(n2-1+z2, 2)) / (n2 - 1 + z2/2)
		if p := m.Modulus * ε / c.slender(); p < r.Elastic {
			r.Elastic, r.Waves = p, n
		} else if n > r.Waves+20 {
			break
		}
	}
	if err := positive("buckling.Tube.PressureEN13445", "elastic buckling pressure [Pa]", r.Elastic); err != nil {
		return Collapse{Allowable: math.NaN()}, err
	}
	r.Lower = r.Yield * collapse(cylinderCurve, r.Elastic/r.Yield)
	r.Allowable = r.Lower / 1.5
	return r, nil
}
