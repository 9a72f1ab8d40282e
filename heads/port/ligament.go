package port

import (
	"math"

	"proofsheet/report/check"
)

// LigamentEfficiency returns what a row of equal plain holes of width d [m] at
// the pitch p [m] leaves of the wall [-], n holes in a repeated length p:
//
//	E = (p − n d)/p
//
// d and p on the mid-line of the wall. It holds for holes that do not touch;
// otherwise it is NaN and an error.
//
// Source: ASME VIII-1 UG-53(b) and (c); Indian Boiler Regulations 215 (read).
// Test: ligament_test.go.
func LigamentEfficiency(p, d float64, n int) (float64, error) {
	const fn = "port.LigamentEfficiency"
	if err := check.Within(fn, "holes in a repeated length", float64(n), 1, math.MaxInt32, "a row of holes"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "width of all holes over the length", float64(n)*d/p, math.SmallestNonzeroFloat64, math.Nextafter(1, 0), "holes that do not touch"); err != nil {
		return math.NaN(), err
	}
	return (p - float64(n)*d) / p, nil
}

// DiagonalEfficiency returns what a row of plain holes leaves of a cylinder or
// cone under pressure [-], in terms of the efficiency along it, where the line of
// centres stands at θ [rad] to the generator, d/p' [-] the width of a hole along
// that line over the pitch on it:
//
//	E = 2 [1 + cos² θ − (d/p′) √(1 + 3 cos² θ)]/(1 + 3 cos² θ), at most 1
//
// shear in the ligament included: 1 − d/p′ along the generator, twice that round
// it. It holds for d/p′ over 0 and under 1.
//
// Source: ASME VIII-1 UG-53, diagonal ligament, recalled and rewritten in p′ and
// θ; ends computed. Test: ligament_test.go.
func DiagonalEfficiency(share, θ float64) (float64, error) {
	const fn = "port.DiagonalEfficiency"
	if err := check.Within(fn, "width of a hole over the pitch", share, math.SmallestNonzeroFloat64, math.Nextafter(1, 0), "holes that do not touch"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "angle of the line of centres [rad]", θ, 0, math.Pi, "a line of centres"); err != nil {
		return math.NaN(), err
	}
	c := math.Cos(θ) * math.Cos(θ)
	return math.Min(1, 2*(1+c-share*math.Sqrt(1+3*c))/(1+3*c)), nil
}

// ligament returns the efficiency of a wall pierced by plain holes of width d
// [m] at the distance p [m] on a line at w [rad] to the meridian [-]; of a dome
// 1 − d/p in every direction. Shown beside reinforced ports, whose own metal is
// counted by their areas; it decides nothing there.
func (w Wall) ligament(d, p, angle float64) (float64, error) {
	if w.Surface == Cylinder || w.Surface == Cone {
		return DiagonalEfficiency(d/p, angle)
	}
	return LigamentEfficiency(p, d, 1)
}

// OpenHoleStress returns the largest stress at the edge of a small open hole
// [Pa] in a wall under the hoop and meridional stresses [Pa], the hole k times
// as long along the meridian as across [-]:
//
//	max[σ_h (1 + 2k) − σ_m, σ_m (1 + 2/k) − σ_h]
//
// a round hole 3σ1 − σ2. It holds for a hole small beside √(R t), without a tube
// or pad, k over 0; elastic. A screening of fatigue, not of strength.
//
// Source: Inglis' ellipse in a flat sheet, computed; round hole in a sphere 2 and
// 3σ1 − σ2 (Jawad and Farr, example 11.2, read). Test: ligament_test.go.
func OpenHoleStress(hoop, meridional, k float64) (float64, error) {
	if err := check.Within("port.OpenHoleStress", "length over width of the hole", k, math.SmallestNonzeroFloat64, math.MaxFloat64, "an elliptical hole"); err != nil {
		return math.NaN(), err
	}
	σ := math.Max(hoop*(1+2*k)-meridional, meridional*(1+2/k)-hoop)
	if math.IsNaN(σ) {
		return σ, check.Within("port.OpenHoleStress", "stress in the wall [Pa]", σ, -math.MaxFloat64, math.MaxFloat64, "a stressed wall")
	}
	return σ, nil
}

// stressRaise returns the stress at the edge of the port's hole, were it open,
// over the wall's hoop stress from pressure [-]: of a cylinder or cone with the
// meridional stress half the hoop, of a dome equal to it.
func (r *AreaReport) stressRaise() float64 {
	meridional := 1.0
	if r.Wall.Surface == Cylinder || r.Wall.Surface == Cone {
		meridional = 0.5
	}
	m, t := r.Chords.planes()
	k, err := OpenHoleStress(1, meridional, t/m)
	if err != nil { // not reached: both planes have a sine above zero up to 60 degrees of obliquity
		return math.NaN()
	}
	return k
}
