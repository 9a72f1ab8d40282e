package shell

import (
	"math"

	"proofsheet/report/check"
)

// allowed returns S E [Pa], or a range error for a strength [Pa] or an
// efficiency [-] that cannot be.
func allowed(fn string, S, E float64) (float64, error) {
	if err := positive(fn, "allowable stress [Pa]", S); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "joint efficiency", E, math.SmallestNonzeroFloat64, 1, "a share of the wall's strength"); err != nil {
		return math.NaN(), err
	}
	return S * E, nil
}

// RequiredThicknessHoop returns the wall [m] that the pressure p [Pa] asks for
// along the longitudinal seam, S being the allowable stress [Pa] and E its
// joint efficiency [-]:
//
//	t = p R/(S E − 0.6 p)                      p ≤ 0.385 S E
//	t = R (√Z − 1), Z = (S E + p)/(S E − p)     beyond
//
// R is the inside radius [m]. At p = S E no wall is enough; there and below 0
// the error is a [*check.RangeError] and the wall is NaN.
//
// Source: ASME VIII-1 UG-27(c)(1) (read); App. 1-2, older edition (memory),
// which is Lamé's bore stress and asks for more than the newer exponential.
func (c Cylinder) RequiredThicknessHoop(p, S, E float64) (float64, error) {
	const fn = "shell.Cylinder.RequiredThicknessHoop"
	SE, err := allowed(fn, S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := positive(fn, "inside radius [m]", c.InsideRadius); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "p/(S E)", p/SE, 0, 1-1e-9, "above it no wall is enough"); err != nil {
		return math.NaN(), err
	}
	if p <= 0.385*SE {
		return p * c.InsideRadius / (SE - 0.6*p), nil
	}
	return c.InsideRadius * (math.Sqrt((SE+p)/(SE-p)) - 1), nil
}

// AllowablePressureHoop returns the pressure [Pa] that the wall may carry
// across its longitudinal seam:
//
//	p = S E t/(R + 0.6 t)                      t ≤ R/2
//	p = S E (Z − 1)/(Z + 1), Z = (R_o/R)²        beyond
//
// Source: as [Cylinder.RequiredThicknessHoop].
func (c Cylinder) AllowablePressureHoop(S, E float64) (float64, error) {
	SE, err := allowed("shell.Cylinder.AllowablePressureHoop", S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := c.Valid(); err != nil {
		return math.NaN(), err
	}
	R, t := c.InsideRadius, c.Thickness
	if t <= R/2 {
		return SE * t / (R + 0.6*t), nil
	}
	Z := (1 + t/R) * (1 + t/R)
	return SE * (Z - 1) / (Z + 1), nil
}

// RequiredThicknessGirth returns the wall [m] that the girth seam asks for
// under the axial pressure p [Pa] and a line load nx in tension [N/m]:
//
//	t = (p R + 2 N_x)/(2 S E + 0.4 p)           p ≤ 1.25 S E
//	t = R (√Z − 1), Z = 1 + p/(S E)              beyond, without line load
//
// p is the pressure that the axial force in the wall stands for, 2 N_x,p/R: the
// ullage pressure above the support of a standing tank, never the local one.
// nx is 0 or tension; a line load that relieves is left out. With nx = 0 it is
// the clause; the line load is added by the same equilibrium.
//
// Source: ASME VIII-1 UG-27(c)(2) (read; validity memory); line load and thick
// wall: equilibrium (computed), App. 1-2 (memory).
func (c Cylinder) RequiredThicknessGirth(p, nx, S, E float64) (float64, error) {
	const fn = "shell.Cylinder.RequiredThicknessGirth"
	SE, err := allowed(fn, S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := positive(fn, "inside radius [m]", c.InsideRadius); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "line load in tension [N/m]", nx, 0, math.MaxFloat64, "a load that relieves is not counted"); err != nil {
		return math.NaN(), err
	}
	most, why := math.MaxFloat64, "a pressure from inside"
	if nx > 0 {
		most, why = 1.25, "the thick-wall form holds no line load"
	}
	if err := check.Within(fn, "p/(S E)", p/SE, 0, most, why); err != nil {
		return math.NaN(), err
	}
	if p <= 1.25*SE {
		return (p*c.InsideRadius + 2*nx) / (2*SE + 0.4*p), nil
	}
	return c.InsideRadius * (math.Sqrt(1+p/SE) - 1), nil
}

// AllowablePressureGirth returns the axial pressure [Pa] that the wall may
// carry across its girth seam beside a line load nx in tension [N/m]:
//
//	p = (2 S E t − 2 N_x)/(R − 0.4 t)            t ≤ R/2
//	p = S E [(R_o/R)² − 1] − 2 N_x R_m/R²         beyond
//
// It is 0 or negative where the line load alone uses the wall up. The limit is
// taken at t = R/2, where the two differ by less than 1 per cent.
//
// Source: as [Cylinder.RequiredThicknessGirth].
func (c Cylinder) AllowablePressureGirth(nx, S, E float64) (float64, error) {
	const fn = "shell.Cylinder.AllowablePressureGirth"
	SE, err := allowed(fn, S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := c.Valid(); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "line load in tension [N/m]", nx, 0, math.MaxFloat64, "a load that relieves is not counted"); err != nil {
		return math.NaN(), err
	}
	R, t := c.InsideRadius, c.Thickness
	if t <= R/2 {
		return (2*SE*t - 2*nx) / (R - 0.4*t), nil
	}
	return SE*(t/R)*(2+t/R) - 2*nx*c.MidRadius()/(R*R), nil
}

// GirthGoverns reports whether the girth seam asks for more wall than the
// longitudinal one, p [Pa] acting across the wall, px [Pa] along it with the
// line load nx [N/m]; el and eg are the efficiencies [-]. For pressure alone
// that is E_g < (E_l − p/S)/2 or, less exactly, E_g < E_l/2.
//
// Source: comparison of UG-27(c)(1) with (c)(2) (computed).
func (c Cylinder) GirthGoverns(p, px, nx, S, el, eg float64) (bool, error) {
	long, err := c.RequiredThicknessHoop(p, S, el)
	if err != nil {
		return false, err
	}
	girth, err := c.RequiredThicknessGirth(px, nx, S, eg)
	return girth > long, err
}

// HoopThicknessOutside returns the wall [m] for the longitudinal seam from the
// outside radius ro [m]:
//
//	t = p R_o/(S E + 0.4 p), p ≤ 0.385 S E
//
// Source: ASME VIII-1 App. 1-1(a)(1) (read).
func HoopThicknessOutside(ro, p, S, E float64) (float64, error) {
	return outside("shell.HoopThicknessOutside", ro, p, S, E, 1, 0.4, 0.385)
}

// GirthThicknessOutside returns the wall [m] for the girth seam from the
// outside radius ro [m]:
//
//	t = p R_o/(2 S E + 1.4 p), p ≤ 1.25 S E
//
// Source: Moss, Pressure Vessel Design Manual, table of formulas (read); equal
// to UG-27(c)(2) with R = R_o − t.
func GirthThicknessOutside(ro, p, S, E float64) (float64, error) {
	return outside("shell.GirthThicknessOutside", ro, p, S, E, 2, 1.4, 1.25)
}

// outside is p R_o/(a S E + b p) [m] for p up to limit S E.
func outside(fn string, ro, p, S, E, a, b, limit float64) (float64, error) {
	SE, err := allowed(fn, S, E)
	if err != nil {
		return math.NaN(), err
	}
	if err := positive(fn, "outside radius [m]", ro); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "p/(S E)", p/SE, 0, limit, "thin cylinder"); err != nil {
		return math.NaN(), err
	}
	return p * ro / (a*SE + b*p), nil
}
