package shell

import (
	"math"

	"proofsheet/report/check"
)

// A Cylinder is a plain cylindrical shell.
type Cylinder struct {
	InsideRadius float64 // R, with the corrosion gone [m]
	Thickness    float64 // t, least wall: tolerance and corrosion deducted [m]
	Length       float64 // between head seams [m]
}

// MidRadius returns the mid-wall radius R_m = R + t/2 [m].
func (c Cylinder) MidRadius() float64 { return c.InsideRadius + c.Thickness/2 }

// OutsideRadius returns R + t [m].
func (c Cylinder) OutsideRadius() float64 { return c.InsideRadius + c.Thickness }

// Valid returns an error unless radius and wall are positive and finite.
func (c Cylinder) Valid() error {
	if err := positive("shell.Cylinder", "inside radius [m]", c.InsideRadius); err != nil {
		return err
	}
	return positive("shell.Cylinder", "least wall [m]", c.Thickness)
}

// positive returns a range error unless v is above 0 and finite.
func positive(fn, what string, v float64) error {
	return check.Within(fn, what, v, math.SmallestNonzeroFloat64, math.MaxFloat64, "a positive number")
}

// isThin returns a range error for a wall too thick for thin-shell stress.
func (c Cylinder) isThin(fn string) error {
	if err := c.Valid(); err != nil {
		return err
	}
	// 1e-12: a wall of exactly a tenth, written in decimals, is still thin
	return check.Within(fn, "R_m/t", c.MidRadius()/c.Thickness, 10*(1-1e-12), math.Inf(1), "thin-wall membrane theory")
}

// HoopStress returns the hoop membrane stress [Pa], tension positive, under the
// pressure across the wall p [Pa], liquid head included:
//
//	σ_θ = p R_m/t
//
// R_m is the mid-wall radius [m], t the least wall [m]. It holds from R_m/t =
// 10 up; otherwise the error is a [*check.RangeError] and the stress is NaN.
//
// Source: Timoshenko, Strength of Materials (memory); Case, Chilver and Ross,
// Strength of Materials and Structures, eq. 6.6 with efficiency 1 (read).
func (c Cylinder) HoopStress(p float64) (float64, error) {
	if err := c.isThin("shell.Cylinder.HoopStress"); err != nil {
		return math.NaN(), err
	}
	return p * c.MidRadius() / c.Thickness, nil
}

// LongitudinalStress returns the axial membrane stress [Pa], tension positive,
// under the force in the wall nx [N/m of circumference at mid-wall]:
//
//	σ_x = N_x/t
//
// N_x comes from the free body: p_u R_m/2 above the support of a standing tank,
// plus N/(2 π R_m) ± M/(π R_m²). The local pressure does not enter. It holds for
// any wall as its mean over the section; the range is that of [Cylinder.Valid].
//
// Source: equilibrium (computed).
func (c Cylinder) LongitudinalStress(nx float64) (float64, error) {
	if err := c.Valid(); err != nil {
		return math.NaN(), err
	}
	return nx / c.Thickness, nil
}

// ClosedEndForce returns the axial force in the wall [N/m at mid-wall] of a
// closed cylinder that holds gas alone at p [Pa]: p R_m/2. With liquid in the
// tank the free body takes its place.
//
// Source: equilibrium of thin-shell theory, in which the pressure acts at
// mid-wall; high by t/(2 R_m) against the inside area.
func (c Cylinder) ClosedEndForce(p float64) float64 { return p * c.MidRadius() / 2 }

// LameStress returns hoop, radial and axial stress [Pa] in the wall of a closed
// thick cylinder at radius r [m], p inside and po outside [Pa]:
//
//	σ_θ = [p R² − p_o R_o² + (p − p_o) R² R_o²/r²]/(R_o² − R²)
//	σ_r = the same with the last term negative
//	σ_x = (p R² − p_o R_o²)/(R_o² − R²)
//
// It holds for any wall, R ≤ r ≤ R_o, ends closed and far away; outside the
// wall the error is a [*check.RangeError].
//
// Source: Lamé; as in Hearn, Mechanics of Materials (memory), and solved
// exercise pages (read).
func (c Cylinder) LameStress(p, po, r float64) (hoop, radial, axial float64, err error) {
	nan := math.NaN()
	if err := c.Valid(); err != nil {
		return nan, nan, nan, err
	}
	R, Ro := c.InsideRadius, c.OutsideRadius()
	if err := check.Within("shell.Cylinder.LameStress", "radius [m]", r, R, Ro, "the wall"); err != nil {
		return nan, nan, nan, err
	}
	area := (Ro - R) * (Ro + R)
	axial = (p*R*R - po*Ro*Ro) / area
	varying := (p - po) * R * R * (Ro / r) * (Ro / r) / area
	return axial + varying, axial - varying, axial, nil
}

// BoreHoopStress returns the hoop stress at the bore [Pa], where it is highest,
// under the inside pressure p [Pa]:
//
//	σ_θ = p (Y² + 1)/(Y² − 1), Y = R_o/R
//
// Range and source: [Cylinder.LameStress].
func (c Cylinder) BoreHoopStress(p float64) (float64, error) {
	hoop, _, _, err := c.LameStress(p, 0, c.InsideRadius)
	return hoop, err
}

// YieldPressures returns the inside pressures [Pa] at which the bore of the
// closed cylinder begins to yield, σ_y being the yield strength [Pa]:
//
//	von Mises (σ_y/√3)(1 − R²/R_o²), Tresca (σ_y/2)(1 − R²/R_o²)
//
// It holds for any wall and one inside pressure alone.
//
// Source: [Cylinder.LameStress] put into the yield conditions (memory; tested
// against them).
func (c Cylinder) YieldPressures(yield float64) (vonMises, tresca float64, err error) {
	if err := c.strong("shell.Cylinder.YieldPressures", yield); err != nil {
		return math.NaN(), math.NaN(), err
	}
	Y := c.OutsideRadius() / c.InsideRadius
	share := (Y - 1) * (Y + 1) / (Y * Y)
	return yield / math.Sqrt(3) * share, yield / 2 * share, nil
}

// CollapsePressures returns the inside pressures [Pa] at which the whole wall
// of a closed cylinder of a perfectly plastic material flows, σ_y being its
// yield strength [Pa]:
//
//	von Mises (2/√3) σ_y ln(R_o/R), Tresca σ_y ln(R_o/R)
//
// It holds for any wall, without hardening and without change of shape. It is a
// reading for the proof, not an allowable.
//
// Source: Hill, The Mathematical Theory of Plasticity (memory).
func (c Cylinder) CollapsePressures(yield float64) (vonMises, tresca float64, err error) {
	if err := c.strong("shell.Cylinder.CollapsePressures", yield); err != nil {
		return math.NaN(), math.NaN(), err
	}
	ln := math.Log1p(c.Thickness / c.InsideRadius)
	return 2 / math.Sqrt(3) * yield * ln, yield * ln, nil
}

// strong checks the cylinder and a strength [Pa].
func (c Cylinder) strong(fn string, strength float64) error {
	if err := c.Valid(); err != nil {
		return err
	}
	return positive(fn, "strength [Pa]", strength)
}
