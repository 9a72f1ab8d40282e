package buckling

import (
	"math"

	"proofsheet/report/check"
)

const degree = math.Pi / 180

// A Cone is a conical shell; a whole cone has the small radius 0.
type Cone struct {
	HalfAngle   float64 // α, axis to wall [rad]
	SmallRadius float64 // r_1, mid-wall [m]
	LargeRadius float64 // r_2, mid-wall [m]
	Thickness   float64 // t, wall for strength [m]
	Roundness   float64 // measured deviation from the circle, share of the radius; 0: not measured [-]
}

func (c Cone) valid(m Metal) error {
	const fn = "buckling.Cone"
	for _, v := range []struct {
		what        string
		got, lo, up float64
	}{
		{"half angle [rad]", c.HalfAngle, math.SmallestNonzeroFloat64, math.Pi/2 - 1e-9},
		{"small radius [m]", c.SmallRadius, 0, c.LargeRadius * (1 - 1e-9)},
		{"large radius [m]", c.LargeRadius, math.SmallestNonzeroFloat64, math.MaxFloat64},
		{"wall [m]", c.Thickness, math.SmallestNonzeroFloat64, c.LargeRadius},
		{"deviation from the circle, share of the radius", c.Roundness, 0, roundnessLimit},
	} {
		if err := check.Within(fn, v.what, v.got, v.lo, v.up, "a conical shell"); err != nil {
			return err
		}
	}
	return m.valid()
}

// coneAngles returns an error outside the angles of SP-8019, up to most [rad].
func (c Cone) coneAngles(fn string, least, most float64) error {
	return check.Within(fn, "half angle [deg]", c.HalfAngle/degree, least, most*(1+1e-9), "cones of SP-8019")
}

// CompressionForce returns the critical axial force [N] of a cone before any
// factor, elastic:
//
//	P = γ 2π E t² cos²α/√(3(1−ν²)), γ = 0.33
//
// For 10 to 75 degrees; under 10 degrees γ_c of the cylinder with R = r_1/cos α,
// not above 1500. Both edges must be ringed.
//
// Source: NASA SP-8019 (γ and angles recalled; 0.33 is also the lowest of 133
// published tests, r_m/t 352 to 3257).
func (c Cone) CompressionForce(m Metal) (float64, error) {
	γ := 0.33
	err := c.valid(m)
	if err == nil {
		err = c.coneAngles("buckling.Cone.CompressionForce", 0, 75)
	}
	if err == nil && c.HalfAngle < 10*degree {
		γ, err = KnockdownCompression(c.SmallRadius / math.Cos(c.HalfAngle) / c.Thickness)
	}
	if err != nil {
		return math.NaN(), err
	}
	return γ * c.classical(m), nil
}

// classical returns the axial force [N] at which the perfect cone buckles.
func (c Cone) classical(m Metal) float64 {
	return 2 * math.Pi * m.Modulus * math.Pow(c.Thickness*math.Cos(c.HalfAngle), 2) / math.Sqrt(3*(1-m.Poisson*m.Poisson))
}

// BendingMoment returns the critical moment [N m] of a cone before any factor,
// elastic:
//
//	M = γ π E t² r_1 cos²α/√(3(1−ν²)), γ = 0.41
//
// It holds from 10 to 60 degrees; under 10 degrees γ_b of the cylinder with R =
// r_1/cos α.
//
// Source: NASA SP-8019 (memory).
func (c Cone) BendingMoment(m Metal) (float64, error) {
	γ := 0.41
	err := c.valid(m)
	if err == nil {
		err = c.coneAngles("buckling.Cone.BendingMoment", 0, 60)
	}
	if err == nil && c.HalfAngle < 10*degree {
		γ, err = KnockdownBending(c.SmallRadius / math.Cos(c.HalfAngle) / c.Thickness)
	}
	if err != nil {
		return math.NaN(), err
	}
	return γ * c.classical(m) * c.SmallRadius / 2, nil
}

// PressureSP8019 returns the critical pressure from outside [Pa] before any
// factor:
//
//	p = 0.92 γ E/((L_s/ρ_b)(ρ_b/t)^2.5), γ = 0.75, ρ_b = (r_1 + r_2)/(2 cos α)
//
// L_s is the slant length. It holds from 10 to 75 degrees; above a hoop stress of
// 0.3 σ_y it is lowered as [Metal.PlasticHoop].
//
// Source: NASA SP-8019 (memory); without γ it is 0.74 to 0.99 of the eigenvalue
// (computed).
func (c Cone) PressureSP8019(m Metal) (float64, error) {
	err := c.valid(m)
	if err == nil {
		err = c.coneAngles("buckling.Cone.PressureSP8019", 10, 75)
	}
	if err != nil {
		return math.NaN(), err
	}
	slant := (c.LargeRadius - c.SmallRadius) / math.Sin(c.HalfAngle)
	ρ := (c.SmallRadius + c.LargeRadius) / (2 * math.Cos(c.HalfAngle))
	p := 0.92 * 0.75 * m.Modulus / (slant / ρ * math.Pow(ρ/c.Thickness, 2.5))
	hoop := c.LargeRadius / (c.Thickness * math.Cos(c.HalfAngle)) // largest, per pressure
	return m.PlasticHoop(p*hoop) / hoop, nil
}

// Equivalent returns the cylinder by which a cone under pressure from outside
// is judged:
//
//	D_o = D_L, L_e = (L_x/2)(1 + D_s/D_L), t_e = t cos α
//
// D_L, D_s are the outside diameters of its ends, L_x its length along the axis.
// It holds to 60 degrees, above which the rule takes the cone for a flat head, and never alone: a cone of 45 degrees and more may
// collapse below it.
//
// Source: ASME VIII-1 UG-33(f) (memory).
func (c Cone) Equivalent(m Metal) (Tube, error) {
	err := c.valid(m)
	if err == nil {
		err = check.Within("buckling.Cone.Equivalent", "half angle [deg]", c.HalfAngle/degree, 0, 60*(1+1e-9), "UG-33(f); above it the rule takes the cone for a flat head: write a more pointed cone, or a flat head")
	}
	if err != nil {
		return Tube{}, err
	}
	cos := math.Cos(c.HalfAngle)
	t := c.Thickness * cos
	large, small := 2*c.LargeRadius+t, 2*c.SmallRadius+t
	axial := (c.LargeRadius - c.SmallRadius) / math.Tan(c.HalfAngle)
	return Tube{Radius: (large - t) / 2, Thickness: t, Length: axial / 2 * (1 + small/large)}, nil
}

// External returns every method for the cone under pressure from outside,
// factor the buckling factor [-]. Beyond the angle of UG-33(f) nothing is left to judge
// the cone by: what is flatter must not bear more for want of a method.
func (c Cone) External(m Metal, factor float64) []Method {
	p, err := c.PressureSP8019(m)
	sp := divided("SP-8019", p, factor, err, check.Source{Doc: "NASA SP-8019, Buckling of Thin-Walled Truncated Cones", Where: "pressure from outside", How: check.Memory}, "knock-down 0.75")
	sp.Formula = "p_a = p_cr/FS, p_cr = 0.92 γ E/((L_s/ρ_b)(ρ_b/t)^2.5), γ = 0.75, ρ_b = (r_1 + r_2)/(2 cos α)"
	sp.Required = true
	tube, err := c.Equivalent(m)
	if err != nil {
		return []Method{sp, {Name: "equivalent cylinder of UG-33(f)", Required: true, Err: err}}
	}
	ug, vessel := tube.ug28(m), tube.en13445(m)
	ug.Name, ug.Detail = "UG-33(f), closed form", "equivalent cylinder"
	vessel.Name = "EN 13445-3 on the same equivalent cylinder"
	same := []check.Quantity{check.M("D_o", "outside diameter of the equivalent cylinder", tube.OutsideDiameter()), check.M("L_e", "its length", tube.Length), check.M("t_e", "its wall, t cos α", tube.Thickness)}
	ug.Steps = append(same[:3:3], ug.Steps[min(1, len(ug.Steps)):]...)
	vessel.Steps = append(same[:3:3], vessel.Steps...)
	return []Method{sp, ug, vessel}
}

// Describe returns the cone's numbers and the shape its verdict assumes.
func (c Cone) Describe() ([]check.Quantity, string) {
	return []check.Quantity{
		check.Rad("α", "half angle", c.HalfAngle), check.M("r_1", "small mid-wall radius", c.SmallRadius),
		check.M("r_2", "large mid-wall radius", c.LargeRadius), check.M("t", "wall for strength", c.Thickness),
	}, "round within 0.5 % of the radius, both edges held"
}
