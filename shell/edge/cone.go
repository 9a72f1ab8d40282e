package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Cone is a sharp corner between a cone and a cylinder, without a knuckle.
type Cone struct {
	Radius      float64 // R, mid-wall radius of the corner [m]
	HalfApex    float64 // α, wall to tank axis [rad]
	Shell, Cone Wall
	Small       bool    // the cone's small end; else its large end
	ShellFree   float64 // length of the cylinder up to its next joint, +Inf: long [m]
	ConeFree    float64 // length of the cone along its wall up to its next joint, +Inf: long [m]
	RingArea    float64 // of a narrow ring at the corner, beyond both walls; 0: none [m2]
	RingModulus float64 // Young's modulus of the ring [Pa]
}

// smallEnd is what the hoop at a small end is raised by [-]: there the closed form is up to 3.6 % under the
// numerical shell, on the unsafe side.
const smallEnd = 1.05

// Solve returns the edge solution of the corner, with s = −1 at a large and +1 at a small end:
//
//	b1 = [3(1−ν²)]^¼/sqrt(R t)    b2 = [3(1−ν²)]^¼/sqrt(R tc/cos α)    c = 1/(2 b³ D)
//	T = s N_x tan α                                    radial line load on the corner, outward
//	w_c = R (p R − ν N_xc)/(E t)                       cylinder
//	w_k = R (p R − ν N_x)/(E tc cos α)                 cone
//	χ = tan α (1.5 p R − f)/(E tc cos α), f = N_x − p R/2
//
// closed by radial displacement, rotation and H1 + H2 = T. In the cone N_φ = N_x/cos α − s H2 sin α;
// the hoop membrane is E w0/R + ν N/t on each side. It holds for 0 ≤ α ≤ 60 deg, R/t from 10 up and both walls
// free over 2.5 sqrt(R t); against the numerical shell the meridional stress is within 0.5 % up to 45 deg and
// 1.5 % at 60, the hoop within 0.02 p R/t at 30, 0.06 at 45 and 0.15 at 60 deg. At a small end the hoop of both walls is
// raised by 5 %, since the closed form falls up to 3.6 % short there, in tension and, under axial compression, in compression.
//
// Source: beam on elastic foundation, both walls; compared with a numerical shell (computed).
func (c Cone) Solve(l Load) (Joint, error) {
	if err := c.valid(l); err != nil {
		return Joint{}, err
	}
	sin, cos := math.Sin(c.HalfApex), math.Cos(c.HalfApex)
	R, p, tan, s := c.Radius, l.Pressure, sin/cos, -1.0
	if c.Small {
		s = 1
	}
	χ := tan * (1.5*p*R - (l.Axial - p*R/2)) / (c.Cone.ElasticModulus * c.Cone.Thickness * cos)
	shell := newSide(c.Shell, R, 1, l.AxialShell, R*(p*R-c.Shell.Poisson*l.AxialShell)/(c.Shell.ElasticModulus*c.Shell.Thickness))
	cone := newSide(c.Cone, R, cos, l.Axial/cos, R*(p*R-c.Cone.Poisson*l.Axial)/(c.Cone.ElasticModulus*c.Cone.Thickness*cos))
	j, err := solve(shell, cone, meeting{radial: s * l.Axial * tan, kink: s * χ, ring: c.RingModulus * c.RingArea / (R * R)})
	if err != nil {
		return Joint{}, err
	}
	j.stresses(l.Axial/cos - s*j.HHead*sin)
	if c.Small {
		j.Shell.Hoop, j.Head.Hoop = smallEnd*j.Shell.Hoop, smallEnd*j.Head.Hoop
	}
	return j, nil
}

func (c Cone) valid(l Load) error {
	const fn = "edge.Cone.Solve"
	if err := errors.Join(
		check.Within(fn, "radius of the corner (m)", c.Radius, math.SmallestNonzeroFloat64, math.MaxFloat64, "a corner"),
		check.Within(fn, "half apex angle (rad)", c.HalfApex, 0, math.Pi/3*(1+1e-12), "closed edge theory of a cone; beyond it the numerical shell alone"),
		c.Shell.valid(fn, "cylinder", c.Radius), c.Cone.valid(fn, "cone", c.Radius),
		check.Within(fn, "ring area (m2)", c.RingArea, 0, math.MaxFloat64, "a ring"),
		check.Within(fn, "ring modulus (Pa)", c.RingModulus, 0, math.MaxFloat64, "a ring"),
		l.valid(fn),
	); err != nil {
		return err
	}
	return errors.Join(free(fn, "cylinder", c.ShellFree, c.Radius, c.Shell.Thickness),
		free(fn, "cone", c.ConeFree, c.Radius/math.Cos(c.HalfApex), c.Cone.Thickness))
}

// LargeEndCoefficients returns Y and X [-] of a large end with equal walls under gas, at the half angle
// α [rad], radius over wall Rt = R/t [-] and Poisson's ratio ν [-]:
//
//	σ_θ = (p R/t) (1 − Y sqrt(R/t))    σ_x = (p R/t) (0.5 + X sqrt(R/t))
//
// from [Cone.Solve], in its range. Y is 0.7 to 3.4 % above the numerical shell, X within 0.2 % from 30 to 49 deg.
func LargeEndCoefficients(α, Rt, ν float64) (Y, X float64, err error) {
	w := Wall{Thickness: 1, ElasticModulus: 1, Poisson: ν}
	j, err := Cone{Radius: Rt, HalfApex: α, Shell: w, Cone: w, ShellFree: math.Inf(1), ConeFree: math.Inf(1)}.Solve(Gas(1/Rt, Rt))
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	root := math.Sqrt(Rt)
	return (1 - j.Shell.Hoop) / root, (j.Shell.MeridionalSurface() - 0.5) / root, nil
}

// LeadingTerm returns the hoop membrane and meridional surface stress over p R/t [-] of a corner with equal
// walls under gas, to the leading term of small α, at ν = 0.3, α [rad] and Rt = R/t [-]:
//
//	σ_θ = 1 ∓ 0.32 tan α sqrt(R/t)    σ_x = 0.5 + 0.58 tan α sqrt(R/t)
//
// with plus at a small end: a hand check of [Cone.Solve] up to 15 deg, within 0.12 p R/t there. Beyond 15 deg or
// R/t under 10 NaN and an error.
//
// Source: computed.
func LeadingTerm(α, Rt float64, small bool) (hoop, meridional float64, err error) {
	const fn, why = "edge.LeadingTerm", "leading term of a blunt corner"
	if err := errors.Join(check.Within(fn, "half apex angle (rad)", α, 0, math.Pi/12*(1+1e-12), why),
		check.Within(fn, "radius over wall", Rt, thinnest, math.MaxFloat64, why)); err != nil {
		return math.NaN(), math.NaN(), err
	}
	s, u := -1.0, math.Tan(α)*math.Sqrt(Rt)
	if small {
		s = 1
	}
	return 1 + s*0.32*u, 0.5 + 0.58*u, nil
}
