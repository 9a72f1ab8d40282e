package buckling

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// An EndKind is what closes the cylinder at one end.
type EndKind int

// The kinds of end. The zero value, a plain support, adds no length.
const (
	Plain  EndKind = iota // flat or inward head, or a ring: support at the seam
	Dished                // dished head bulging outward
	Conic                 // cone or toricone
)

// An End is one end of the cylinder as a support against pressure from outside.
type End struct {
	Kind      EndKind
	Depth     float64 // of the head without its straight flange [m]
	HalfAngle float64 // of a cone, axis to wall [rad]
}

// Share returns the length [m] that the end adds to the cylinder:
//
//	dished head bulging outward          0.4 of its depth
//	cone, half angle 30 degrees and more 0.4 of its depth
//	cone, flatter to the axis            its whole depth
//	flat or inward head                  0
//
// Source: computed with general shell eigenvalues on closed tanks, wall and
// head of equal thickness; the codes have a third of the depth.
func (e End) Share() (float64, error) {
	if e.Kind == Plain {
		return 0, nil
	}
	if err := positive("buckling.End", "depth of the head [m]", e.Depth); err != nil {
		return math.NaN(), err
	}
	switch {
	case e.Kind == Dished:
		return 0.4 * e.Depth, nil
	case e.Kind == Conic && e.HalfAngle >= 30*degree*(1-1e-9) && e.HalfAngle < math.Pi/2:
		return 0.4 * e.Depth, nil
	case e.Kind == Conic && e.HalfAngle > 0 && e.HalfAngle < math.Pi/2:
		return e.Depth, nil
	}
	return math.NaN(), fmt.Errorf("the end of the cylinder is of no known kind: %+v", e)
}

// A Cylinder is the tank's cylinder as the stability checks want it. Both
// edges must be held round, by a head, ring or flange.
type Cylinder struct {
	InsideRadius float64 // R_i, with the corrosion gone [m]
	Thickness    float64 // t, wall for strength [m]
	Length       float64 // between tangents, straight flanges included [m]
	Ends         [2]End
	FreeEdge     bool    // an edge is not held round: nothing is assessed
	Roundness    float64 // measured deviation from the circle, share of R; 0: not measured [-]
	Openings     []Opening
	Rings        *Rings // nil: none
}

// An Opening is a reinforced hole in the cylinder, as the checks of
// compression see it.
type Opening struct {
	Name   string
	Width  float64 // around the cylinder [m]
	Height float64 // along it [m]
}

// openings returns an error for a hole wider than a tenth of the diameter or
// higher than a fifth of the cylinder; smaller reinforced ones leave the
// resistance in compression as it is.
//
// Source: NASA/SP-8007-2020 Rev 2, 4.1.5.2, preliminary design (read).
func (c Cylinder) openings() error {
	const fn = "buckling.Cylinder"
	for _, o := range c.Openings {
		if err := check.Within(fn, o.Name+": width of the hole over the diameter", o.Width/(2*c.MidRadius()), 0, 0.1, "a hole that leaves compression as it is"); err != nil {
			return err
		}
		if err := check.Within(fn, o.Name+": height of the hole over the length", o.Height/c.Length, 0, 0.2, "a hole that leaves compression as it is"); err != nil {
			return err
		}
	}
	return nil
}

// MidRadius returns R = R_i + t/2 [m].
func (c Cylinder) MidRadius() float64 { return c.InsideRadius + c.Thickness/2 }

func (c Cylinder) outsideRadius() float64 { return c.InsideRadius + c.Thickness }

// Tube returns the cylinder between its tangents.
func (c Cylinder) Tube() Tube { return Tube{c.MidRadius(), c.Thickness, c.Length} }

// ExternalTube returns the cylinder with the length for pressure from outside:
// between tangents and the share of each end.
func (c Cylinder) ExternalTube() (Tube, error) {
	t := c.Tube()
	for _, e := range c.Ends {
		share, err := e.Share()
		if err != nil {
			return t, err
		}
		t.Length += share
	}
	return t, nil
}

func (c Cylinder) valid(m Metal) error {
	if c.FreeEdge {
		return fmt.Errorf("an edge of the shell is not held round: a ring, flange or head is needed")
	}
	if err := positive("buckling.Cylinder", "inside radius [m]", c.InsideRadius); err != nil {
		return err
	}
	return c.Tube().valid(m)
}

// External returns every method for the cylinder under pressure from outside
// on wall and ends, factor the buckling factor [-]. SP-8007 is divided by it;
// EN 1993-1-6, by it and by its own 1.1, is shown beside. With rings see [Rings].
func (c Cylinder) External(m Metal, class Class, factor float64) ([]Method, error) {
	err := c.valid(m)
	if err == nil {
		err = check.Within("buckling.Cylinder", "deviation from the circle, share of the radius", c.Roundness, 0, roundnessLimit, "the shape that the methods assume")
	}
	t, bad := c.ExternalTube()
	if err == nil {
		err = bad
	}
	if err != nil {
		return nil, err
	}
	full := t.external(m, class, factor)
	if c.Rings == nil {
		return full, nil
	}
	return c.withRings(m, class, factor, full), nil
}

// external returns every method for a tube between its supports.
func (c Tube) external(m Metal, class Class, factor float64) []Method {
	p, err := c.PressureSP8007(m)
	sp := divided("SP-8007", p, factor, err, check.Source{Doc: "NASA/SP-8007-2020 Rev 2", Where: "eqs 17 to 32", How: check.Read}, "knock-down √γ = 0.75, long tube 0.90")
	sp.Formula = "p_a = p_cr/FS, p_cr = max(0.855 E 0.75 (t/R)^2.5 (R/L)/(1−ν²)^0.75, 0.90 E (t/R)³/(4(1−ν²)))"
	sp.Steps = append(sp.Steps, check.Num("γ Z", "0.5625 times Batdorf's parameter", pressureKnockdown*c.Batdorf(m.Poisson)))
	if pressureKnockdown*c.Batdorf(m.Poisson) < 100 {
		sp.Formula = "p_a = p_cr/FS, p_cr = (1 − 1/n²) k π² D/(L² R), k = min [(1+β²)² + 12 γ²Z²/(π⁴(1+β²)²)]/(β²+1/2), γ = 0.5625, β = n L/(π R)"
	}
	_, p, err = c.EuropeanPressure(m, class)
	eu := divided("EN 1993-1-6", p, factor, err, check.Source{Doc: "EN 1993-1-6:2007 Annex D, second-hand", Where: "pressure from outside", How: check.Memory}, fmt.Sprintf("class %s, its 1.1 taken off", class.orC()))
	eu.Beside = true
	return []Method{sp, c.en13445(m), c.ug28(m), c.division2(m), eu}
}

func (c Class) orC() string {
	if c == "" {
		return "C"
	}
	return string(c)
}

// collapseFormula is the method of EN 13445-3 as printed.
const collapseFormula = "p_a = P_r/1.5, P_r/P_y by the curve over P_m/P_y; "

// en13445, ug28 and division2 wrap the vessel forms, their factors inside.
func (c Tube) en13445(m Metal) Method {
	r, err := c.PressureEN13445(m)
	return Method{
		Name: "EN 13445-3", Critical: math.NaN(), Factor: 1.5, Allowable: r.Allowable, Err: err, Detail: "lower bound of collapse, " + m.europeanWords(), Steps: r.steps(),
		Formula: collapseFormula + "P_y = σ_e t/R, P_m = E t ε/R, least over n",
		Source:  check.Source{Doc: "EN 13445-3 clause 8, recalled", Where: "cylinders", How: check.Memory},
	}
}

func (c Tube) ug28(m Metal) Method {
	p, err := c.PressureUG28(m)
	out := Method{
		Name: "UG-28, closed form", Critical: math.NaN(), Factor: 3, Allowable: p, Err: err,
		Formula: "A = max(1.30 (t/D_o)^1.5/(L/D_o − 0.45 √(t/D_o)), 1.1 (t/D_o)²), p_a = 2 F_ic t/(3 D_o), F_ic = A E to 0.552 σ_y, then 0.7 σ_y (A E/σ_y)^0.4 ≤ σ_y",
		Source:  check.Source{Doc: "ASME VIII-1 UG-28, closed form", Where: "cylinders", How: check.Memory},
	}
	if err == nil {
		a := c.ug28Strain()
		out.Steps = []check.Quantity{check.M("D_o", "outside diameter", c.OutsideDiameter()), check.Num("A", "strain of UG-28", a), check.Pa("F_ic", "stress at collapse", inelastic(a*m.Modulus, m.Yield))}
	}
	return out
}

func (c Tube) division2(m Metal) Method {
	p, err := c.PressureDivision2(m)
	out := Method{
		Name: "VIII-2 form", Critical: math.NaN(), Factor: 2, Allowable: p, Err: err, Detail: "factor 2 elastic to 1.667 at yield, knock-down 0.8",
		Formula: "F_he = 1.6 C_h E t/D_o, p_a = 2 F_ic t/(FS_2 D_o), C_h by M_x = L/√(R_o t)",
		Source:  check.Source{Doc: "ASME VIII-2 4.4.5", Where: "cylinders", How: check.Memory},
	}
	if err == nil {
		mx, ch, fic, factor := c.division2Steps(m)
		out.Factor = factor
		out.Steps = []check.Quantity{check.M("D_o", "outside diameter", c.OutsideDiameter()), check.Num("M_x", "length parameter", mx), check.Num("C_h", "length factor", ch),
			check.Pa("F_ic", "stress at collapse", fic), check.Num("FS_2", "factor of the form", factor)}
	}
	return out
}

// europeanWords says what σ_e was taken for.
func (m Metal) europeanWords() string {
	switch m.Family {
	case "austenitic":
		return "σ_e = σ_y/1.25"
	case "ferritic":
		return "σ_e = σ_y"
	default:
		return "σ_e = σ_y taken for this metal too"
	}
}
