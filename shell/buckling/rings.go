package buckling

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// Rings are equal flat bars bent round the cylinder and welded to it all round,
// against pressure from outside. They give no credit in compression or bending.
type Rings struct {
	Stations []float64 // from the tangent of the aft head, rising [m]
	Width    float64   // b, along the axis [m]
	Height   float64   // d, from the wall [m]
	Inside   bool      // stand on the inner face
	Modulus  float64   // E of the bar, at the lowest [Pa]
	Yield    float64   // σ_y of the bar, welded where it is softened [Pa]
	Err      error     // why they cannot be counted, or nil
}

// Limits of what counts as a ring [-]: common practice.
const (
	tallestRing = 0.2 // height over the radius: a thin ring
	widestRing  = 1.0 // width over √(R t): a line of support
)

// ringKnockdown is the share of the elastic pressure that a cylinder with rings is
// held to reach [-], that of SP-8007 for its plain ones.
const ringKnockdown = 0.75

// Slenderness returns the largest height over width [-] of a flat bar that reaches
// its yield strength before it trips sideways:
//
//	d/b ≤ 0.375 √(E/σ_y)
//
// Source: ASME VIII-2 4.4.15, stiffener of flat bar (memory).
func (r Rings) Slenderness() float64 { return 0.375 * math.Sqrt(r.Modulus/r.Yield) }

// valid refuses rings that cannot be counted on a cylinder.
func (r Rings) valid(c Cylinder) error {
	const fn = "buckling.Rings"
	if r.Err != nil {
		return r.Err
	}
	for _, q := range []struct {
		what string
		got  float64
	}{{"width [m]", r.Width}, {"height [m]", r.Height}, {"elastic modulus [Pa]", r.Modulus}, {"yield strength [Pa]", r.Yield}} {
		if err := positive(fn, q.what, q.got); err != nil {
			return err
		}
	}
	R := c.MidRadius()
	if err := check.Within(fn, "height over radius", r.Height/R, 0, tallestRing, "a thin ring"); err != nil {
		return err
	}
	if err := check.Within(fn, "width over √(R t)", r.Width/math.Sqrt(R*c.Thickness), 0, widestRing, "a line of support; wider it is a thicker wall"); err != nil {
		return err
	}
	if err := check.Within(fn, "height over width", r.Height/r.Width, 0, r.Slenderness(), "a flat bar that does not trip sideways, 0.375 √(E/σ_y)"); err != nil {
		return err
	}
	last := 0.0
	for _, z := range r.Stations {
		if !(z > last && z < c.Length) {
			return fmt.Errorf("the stations of the rings must rise within the cylinder, %.4g m does not", z)
		}
		last = z
	}
	if len(r.Stations) == 0 {
		return fmt.Errorf("there is no ring")
	}
	return nil
}

// Bay returns the longest length [m] between lines of support, from ring to ring or
// from a ring to an end with the share of that end, and the longest length [m] that
// one ring carries, half of it on each side.
func (c Cylinder) Bay() (bay, carried float64, err error) {
	a, errA := c.Ends[0].Share()
	b, errB := c.Ends[1].Share()
	if errA != nil || errB != nil {
		return math.NaN(), math.NaN(), fmt.Errorf("the ends of the cylinder: %v %v", errA, errB)
	}
	at := append(append([]float64{-a}, c.Rings.Stations...), c.Length+b)
	for i := 1; i < len(at); i++ {
		bay = math.Max(bay, at[i]-at[i-1])
		if i > 1 {
			carried = math.Max(carried, (at[i]-at[i-2])/2)
		}
	}
	return bay, carried, nil
}

// A RingSection is one ring with the strip of wall that works with it.
type RingSection struct {
	Strip   float64 // L_e of the wall, along it [m]
	Inertia float64 // I_e, about the common axis parallel to the tank's [m4]
	Area    float64 // A_s of the bar alone [m2]
	Radius  float64 // R_n, of the common centroid, not below the wall's mid [m]
	Reach   float64 // from that centroid to the farther face [m]
}

// Section returns the section [m2, m4] of a ring and the strip of wall
//
//	L_e = min(1.10 √(D_o t), L_s), less by √(1 + x²/2) + x, x = n² t/(2 R)
//
// that works with it in n waves [-]; n 0 leaves the last factor out. spacing L_s is
// the length that the ring carries [m].
//
// Source: ASME VIII-1 UG-29 (memory); the factor by Bryant's strip as vessel codes
// have it (memory).
func (c Cylinder) Section(spacing float64, n int) RingSection {
	r, t := c.Rings, c.Tube()
	x := float64(n*n) * t.Thickness / (2 * t.Radius)
	s := RingSection{Area: r.Width * r.Height}
	s.Strip = math.Min(1.10*math.Sqrt(t.OutsideDiameter()*t.Thickness), spacing) / (math.Sqrt(1+x*x/2) + x)
	wall := s.Strip * t.Thickness
	apart := (t.Thickness + r.Height) / 2
	y := s.Area * apart / (s.Area + wall) // of the common centroid from the wall's mid
	s.Inertia = s.Strip*math.Pow(t.Thickness, 3)/12 + wall*y*y + r.Width*math.Pow(r.Height, 3)/12 + s.Area*math.Pow(apart-y, 2)
	s.Reach = math.Max(t.Thickness/2+y, t.Thickness/2+r.Height-y)
	s.Radius = t.Radius
	if !r.Inside {
		s.Radius += y
	}
	return s
}

// RingOverall returns the elastic pressure from outside [Pa] at which a cylinder
// gives way between its ends, rings and all, in n waves around [-]:
//
//	p_g = (E t/R) λ⁴/[(n² − 1 + λ²/2)(n² + λ²)²] + (n² − 1) E I_e/(R_n³ L_s), λ = π R/L_c
//
// least over n from 2 up. The first part is that of the wall as a membrane, the
// second the ring with its strip on the length L_s that it carries; E is the lower of
// wall and bar. L_c is the length between the heads with their shares.
//
// Source: Bryant's two-term form (memory).
func (c Cylinder) RingOverall(m Metal) (p float64, waves int, err error) {
	if err := errors.Join(c.Rings.valid(c), m.valid()); err != nil {
		return math.NaN(), 0, err
	}
	p = math.Inf(1)
	for n := 2; n <= 40; n++ {
		q, err := c.bryant(m, n)
		if err != nil {
			return math.NaN(), 0, err
		}
		if q < p {
			p, waves = q, n
		}
	}
	return p, waves, nil
}

// bryant is p_g in n waves [Pa].
func (c Cylinder) bryant(m Metal, n int) (float64, error) {
	whole, err := c.ExternalTube()
	if err != nil {
		return math.NaN(), err
	}
	_, carried, err := c.Bay()
	s := c.Section(carried, n)
	n2, λ2 := float64(n*n), math.Pow(math.Pi*whole.Radius/whole.Length, 2)
	wall := m.Modulus / whole.slender() * λ2 * λ2 / ((n2 - 1 + λ2/2) * math.Pow(n2+λ2, 2))
	return wall + (n2-1)*math.Min(m.Modulus, c.Rings.Modulus)*s.Inertia/(math.Pow(s.Radius, 3)*carried), err
}

// RingYield returns the pressure from outside [Pa] at which the farther face of a
// ring that is out of round by 0.5 % of R yields, least over n = 2 to 6 waves, or to
// those of [Cylinder.RingOverall] where they are more:
//
//	x R_o/t + E e 0.005 (n² − 1) x/[R (p_g − x)] = σ_y
//
// x being the pressure, e the reach of the section, σ_y the lower of wall and bar; the
// hoop stress of the plain wall stands for the ring's, the safe side.
//
// Source: form of EN 13445-3 8.5.3 (memory).
func (c Cylinder) RingYield(m Metal) (p float64, waves int, err error) {
	_, most, err := c.RingOverall(m)
	if err != nil {
		return math.NaN(), 0, err
	}
	_, carried, err := c.Bay()
	if err != nil { // not reached: RingOverall has asked for the ends
		return math.NaN(), 0, err
	}
	t, σ := c.Tube(), math.Min(m.Yield, c.Rings.Yield)
	p = math.Inf(1)
	for n := 2; n <= max(6, most); n++ {
		g, err := c.bryant(m, n)
		if err != nil { // not reached: RingOverall has asked for it
			return math.NaN(), 0, err
		}
		a := c.outsideRadius() / t.Thickness
		b := math.Max(m.Modulus, c.Rings.Modulus) * c.Section(carried, n).Reach * roundnessLimit * float64(n*n-1) / t.Radius
		half := (a*g + b + σ) / 2 // a x² − 2 half x + σ g = 0, the smaller root
		if x := σ * g / (half + math.Sqrt(half*half-a*σ*g)); x < p {
			p, waves = x, n
		}
	}
	return p, waves, nil
}

// RingUG29 returns the allowable pressure from outside [Pa] for which the ring with
// its strip has the inertia that UG-29 requires, its factor inside:
//
//	I' = D_o² L_s (t + A_s/L_s) A/10.9, A E = F_ic^-1(2 B), B = 3/4 p D_o/(t + A_s/L_s)
//
// turned round: A = 10.9 I'/(D_o² L_s (t + A_s/L_s)), F_ic of A E as in
// [Tube.PressureUG28], p = F_ic (t + A_s/L_s)/(1.5 D_o). E and σ_y are the lower of
// wall and bar.
//
// Source: ASME VIII-1 UG-29, the elastic and inelastic form for its chart (memory).
func (c Cylinder) RingUG29(m Metal) (float64, error) {
	if err := errors.Join(c.Rings.valid(c), m.valid()); err != nil {
		return math.NaN(), err
	}
	_, carried, err := c.Bay()
	if err != nil {
		return math.NaN(), err
	}
	p, _, _ := c.ug29(m, carried)
	return p, nil
}

// ug29 returns the pressure [Pa], the strain A [-] and F_ic [Pa].
func (c Cylinder) ug29(m Metal, carried float64) (p, strain, stress float64) {
	s, t := c.Section(carried, 0), c.Tube()
	d, wall := t.OutsideDiameter(), t.Thickness+s.Area/carried
	strain = 10.9 * s.Inertia / (d * d * carried * wall)
	stress = inelastic(strain*math.Min(m.Modulus, c.Rings.Modulus), math.Min(m.Yield, c.Rings.Yield))
	return stress * wall / (1.5 * d), strain, stress
}
