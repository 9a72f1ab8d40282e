package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Cap is a spherical cap that meets the cylinder, or a ring on it, at an angle.
type Cap struct {
	Radius      float64 // R, mid-wall radius of the joint [m]
	HalfOpening float64 // φ0, wall normal of the cap to tank axis at the joint; sphere of radius R/sin φ0 [rad]
	Shell, Head Wall
	ShellFree   float64 // length of the cylinder up to its next joint, +Inf: long [m]
	RingArea    float64 // of a narrow ring at the joint; 0: none [m2]
	RingModulus float64 // Young's modulus of the ring [Pa]
}

// Solve returns the edge solution of an outward cap, that of [Cone.Solve] with
//
//	T = −N_x cot φ0    k = sin φ0    w_h = R (N_θ − ν N_φ)/(E th)
//	N_φ = N_x/sin φ0    N_θ = p R/sin φ0 − N_φ    χ = 0
//
// For 30 deg ≤ φ0 ≤ 90 deg, where the edge of a sphere bends as that of a cylinder: meridional within 1 % of the numerical
// shell, hoop too compressive by up to 0.035 p R/t down to 60 deg, 0.09 at 45, 0.21 at 30 (R/t 100 and 400). R/t from 10 up, cylinder free over 2.5 sqrt(R t).
//
// Source: Geckeler's form of the spherical shell; compared with a numerical shell (computed).
func (c Cap) Solve(l Load) (Joint, error) {
	const fn = "edge.Cap.Solve"
	R, p := c.Radius, l.Pressure
	if err := errors.Join(
		check.Within(fn, "radius of the joint (m)", R, math.SmallestNonzeroFloat64, math.MaxFloat64, "a joint"),
		check.Within(fn, "half opening angle (rad)", c.HalfOpening, math.Pi/6*(1-1e-12), math.Pi/2*(1+1e-12), "edge theory of a spherical cap"),
		c.Shell.valid(fn, "cylinder", R), c.Head.valid(fn, "cap", R), l.valid(fn),
		check.Within(fn, "ring area (m2)", c.RingArea, 0, math.MaxFloat64, "a ring"),
		check.Within(fn, "ring modulus (Pa)", c.RingModulus, 0, math.MaxFloat64, "a ring"),
	); err != nil {
		return Joint{}, err
	}
	if err := free(fn, "cylinder", c.ShellFree, R, c.Shell.Thickness); err != nil {
		return Joint{}, err
	}
	sin, cos := math.Sin(c.HalfOpening), math.Cos(c.HalfOpening)
	nφ := l.Axial / sin
	nθ := p*R/sin - nφ
	shell := newSide(c.Shell, R, 1, l.AxialShell, R*(p*R-c.Shell.Poisson*l.AxialShell)/(c.Shell.ElasticModulus*c.Shell.Thickness))
	head := newSide(c.Head, R, sin, nφ, R*(nθ-c.Head.Poisson*nφ)/(c.Head.ElasticModulus*c.Head.Thickness))
	j, err := solve(shell, head, meeting{radial: -l.Axial * cos / sin, ring: c.RingModulus * c.RingArea / (R * R)})
	if err != nil {
		return Joint{}, err
	}
	j.stresses(nφ + j.HHead*cos)
	return j, nil
}

// RingForce returns what the membrane of a spherical cap of mid-wall radius L [m] and half opening angle
// φ0 [rad] under the pressure p [Pa], at its rim, gives the ring that holds it: the line load [N/m], outward
// positive, and the hoop force of the ring [N], tension positive:
//
//	q = −(p L/2) cos φ0    F = q R,  R = L sin φ0
//
// Pressure on the concave side presses the ring together; on the convex side, inward set, q and F are positive:
// the ring is in tension. Cone: q = ∓(p R/2) tan α is the same with L = R/cos α and φ0 = π/2 − α. It is the load before walls
// and ring share it, an upper bound of the ring's force.
//
// Source: equilibrium (computed).
func RingForce(p, L, φ0 float64, inward bool) (q, F float64, err error) {
	const fn, why = "edge.RingForce", "a cap"
	if err := errors.Join(
		check.Within(fn, "radius of the cap (m)", L, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "half opening angle (rad)", φ0, math.SmallestNonzeroFloat64, math.Pi/2*(1+1e-12), why),
		check.Within(fn, "pressure (Pa)", p, -math.MaxFloat64, math.MaxFloat64, why),
	); err != nil {
		return math.NaN(), math.NaN(), err
	}
	q = -p * L / 2 * math.Max(0, math.Cos(φ0))
	if inward {
		q = -q
	}
	return q, q * L * math.Sin(φ0), nil
}
