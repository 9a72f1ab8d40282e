package buckling

import (
	"math"

	"proofsheet/report/check"
)

// A Column is the tank, or the stack it stands in, as a strut.
type Column struct {
	Radius    float64 // R, mid-wall [m]
	Thickness float64 // t, wall for strength [m]
	Length    float64 // L of the column, not of the tank alone [m]
	Factor    float64 // K: 1 pinned at both ends, 2 standing free [-]
}

func (c Column) valid(m Metal) error {
	if err := (Tube{c.Radius, c.Thickness, c.Length}).valid(m); err != nil {
		return err
	}
	return check.Within("buckling.Column", "column factor", c.Factor, 0.5, math.MaxFloat64, "0.5 is a strut with both ends built in")
}

// Euler returns the buckling load [N] of the column:
//
//	P_E = π² E I/(K L)², I = π R³ t
//
// Pressure inside a closed tube neither raises nor lowers it; the load to
// compare is the external one and the weight of the liquid, without relief.
//
// Source: Euler (memory).
func (c Column) Euler(m Metal) (float64, error) {
	if err := c.valid(m); err != nil {
		return math.NaN(), err
	}
	i := math.Pi * math.Pow(c.Radius, 3) * c.Thickness
	return math.Pi * math.Pi * m.Modulus * i / math.Pow(c.Factor*c.Length, 2), nil
}

// Johnson returns the load [N] of a stocky column whose wall buckles or yields
// at the stress local [Pa]:
//
//	P = 2 π R t σ_cc [1 − σ_cc (K L/ρ)²/(4 π² E)], ρ = R/√2
//
// It holds to half the local stress, where it touches Euler's curve; beyond the
// error is a [*check.RangeError].
//
// Source: Bruhn, Analysis and Design of Flight Vehicle Structures (memory).
func (c Column) Johnson(m Metal, local float64) (float64, error) {
	if err := c.valid(m); err != nil {
		return math.NaN(), err
	}
	if err := positive("buckling.Column.Johnson", "local stress [Pa]", local); err != nil {
		return math.NaN(), err
	}
	slender := c.Factor * c.Length * math.Sqrt2 / c.Radius
	loss := local * slender * slender / (4 * math.Pi * math.Pi * m.Modulus)
	if err := check.Within("buckling.Column.Johnson", "loss of the local stress", loss, 0, 0.5, "beyond, Euler's curve"); err != nil {
		return math.NaN(), err
	}
	return 2 * math.Pi * c.Radius * c.Thickness * local * (1 - loss), nil
}
