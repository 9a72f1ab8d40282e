package proof

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// PlugVelocity returns the velocity [m/s] of a plug of m [kg] that lets go and is pushed by gas of p [Pa] over its
// surroundings on the area A [m2] over the travel s [m]:
//
//	v = √(2 p A s/m)
//
// An upper estimate for that travel: the pressure does not fall, nothing rubs. Gas that goes on pushing after it makes
// the plug faster; no distance follows from it.
//
// Source: work of a steady pressure, computed. A published form for a spring (Sofronas 2012, read) has half
// the work and is no bound.
func PlugVelocity(p, A, s, m float64) (float64, error) {
	const fn, why = "proof.PlugVelocity", "a plug pushed by gas"
	if err := errors.Join(
		check.Within(fn, "pressure [Pa]", p, 0, 1e9, why),
		check.Within(fn, "area [m2]", A, 0, 10, why),
		check.Within(fn, "travel [m]", s, 0, 10, why),
		check.Within(fn, "mass [kg]", m, 1e-3, 1e4, why),
	); err != nil {
		return math.NaN(), err
	}
	return math.Sqrt(2 * p * A * s / m), nil
}

// kingery are the fits of the pressure by ln Z between two scaled distances.
var kingery = []struct {
	most  float64 // Z [m/kg^⅓]
	terms [5]float64
}{
	{23.8, [5]float64{7.5938, -3.0523, 0.40977, 0.0261, -0.01267}},
	{198.5, [5]float64{6.0536, -1.4066, 0, 0, 0}},
}

// IncidentPressure returns the pressure [Pa] over that of the air in the blast of m [kg] of TNT on the ground, at
// the distance d [m]:
//
//	p = exp(A + B ln Z + C ln² Z + D ln³ Z + E ln⁴ Z) kPa,  Z = d/m^⅓
//
// Z from 2.9 to 198.5 m/kg^⅓. A vessel is not TNT: close to it the blast is weaker.
//
// Source: Swisdak 1994, fit of Kingery and Bulmash; constants recalled, held to a published point (read).
func IncidentPressure(d, m float64) (float64, error) {
	Z := d / math.Cbrt(m)
	if err := check.Within("proof.IncidentPressure", "scaled distance (m/kg^⅓)", Z, 2.9, 198.5, "two ranges of the fit"); err != nil {
		return math.NaN(), err
	}
	for _, k := range kingery {
		if Z <= k.most {
			sum, x := 0.0, math.Log(Z)
			for i := len(k.terms) - 1; i >= 0; i-- {
				sum = sum*x + k.terms[i]
			}
			return 1e3 * math.Exp(sum), nil
		}
	}
	// not reached: the last range ends with the fit
	return math.NaN(), errors.New("no range of the fit covers it")
}
