package port

import (
	"math"

	"proofsheet/report/check"
)

// ExemptDistance returns how far apart the centres of openings that need no
// calculation must stand [m], d1 and d2 their finished diameters [m], the line of
// centres at θ [rad] to the generator of a cylinder or cone:
//
//	two               d1 + d2
//	three and more    (1 + 1.5 cos θ)(d1 + d2) on a cylinder or cone, 2.5 (d1 + d2) elsewhere
//
// Shown only: a tank with other factors than the code's does not inherit it.
//
// Source: ASME VIII-1 UG-36(c)(3) as summarised by a head maker (read).
func ExemptDistance(s Surface, several bool, d1, d2, θ float64) (float64, error) {
	if err := check.Within("port.ExemptDistance", "diameters [m]", math.Min(d1, d2), math.SmallestNonzeroFloat64, math.MaxFloat64, "two openings"); err != nil {
		return math.NaN(), err
	}
	switch {
	case !several:
		return d1 + d2, nil
	case s == Cylinder || s == Cone:
		return (1 + 1.5*math.Abs(math.Cos(θ))) * (d1 + d2), nil
	}
	return 2.5 * (d1 + d2), nil
}

// exempt notes where a code vessel would need no calculation; it is never a
// verdict, since the exemption rests on the code's own factors.
//
// Source: ASME VIII-1 UG-36(c)(3) (read).
func (r AreaReport) exempt() []string {
	most := 89e-3
	if r.RequiredWall > 10e-3 {
		most = 60e-3
	}
	if r.Chords.Meridional > most {
		return nil
	}
	return []string{"one isolated opening of this size would need no calculation by UG-36(c)(3); that rests on the code's factors and is not used here"}
}
