package shell

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// RequiredThicknessHoopEU returns the wall [m] for the longitudinal seam by the
// European method, f being the allowable stress [Pa] and z the joint
// coefficient [-]:
//
//	e = p D_i/(2 f z − p), e/D_e ≤ 0.16
//
// Outside the range the error is a [*check.RangeError] and the wall is NaN.
//
// Source: EN 13445-3, 7.4.2 (memory).
func (c Cylinder) RequiredThicknessHoopEU(p, f, z float64) (float64, error) {
	return requiredEU("shell.Cylinder.RequiredThicknessHoopEU", c.InsideRadius, p, 0, f, z, 2)
}

// RequiredThicknessGirthEU returns the wall [m] for the girth seam: the
// European pressure rule puts no z on it, so that this is equilibrium on the
// mean diameter with the coefficient of the girth seam,
//
//	e = (p D_i + 4 N_x)/(4 f z − p), e/D_e ≤ 0.16
//
// p and nx as in [Cylinder.RequiredThicknessGirth].
//
// Source: equilibrium (computed), with the allowable stress of EN 13445-3
// (memory).
func (c Cylinder) RequiredThicknessGirthEU(p, nx, f, z float64) (float64, error) {
	return requiredEU("shell.Cylinder.RequiredThicknessGirthEU", c.InsideRadius, p, nx, f, z, 4)
}

// requiredEU is (p D_i + 4 N_x)/(k f z − p) [m] from the inside radius R [m].
func requiredEU(fn string, R, p, nx, f, z, k float64) (float64, error) {
	fz, err := allowed(fn, f, z)
	if err != nil {
		return math.NaN(), err
	}
	err = errors.Join(positive(fn, "inside radius [m]", R),
		check.Within(fn, "line load in tension [N/m]", nx, 0, math.MaxFloat64, "a load that relieves is not counted"),
		check.Within(fn, "p/(f z)", p/fz, 0, k*(1-1e-9), "above it no wall is enough"))
	if err != nil {
		return math.NaN(), err
	}
	e := (p*2*R + 4*nx) / (k*fz - p)
	if err := check.Within(fn, "e/De", e/(2*(R+e)), 0, 0.16, "range of the European shell formulas"); err != nil {
		return math.NaN(), err
	}
	return e, nil
}

// AllowablePressureHoopEU returns the pressure [Pa] that the wall may carry
// across its longitudinal seam, D_m being the mean diameter [m]:
//
//	p = 2 f z e/D_m, e/D_e ≤ 0.16
//
// Source: EN 13445-3, 7.4.2 (memory).
func (c Cylinder) AllowablePressureHoopEU(f, z float64) (float64, error) {
	return c.allowableEU("shell.Cylinder.AllowablePressureHoopEU", 0, f, z, 2)
}

// AllowablePressureGirthEU returns the axial pressure [Pa] that the wall may
// carry across its girth seam beside a line load nx in tension [N/m]:
//
//	p = 4 (f z e − N_x)/D_m, e/D_e ≤ 0.16
//
// Source: as [Cylinder.RequiredThicknessGirthEU].
func (c Cylinder) AllowablePressureGirthEU(nx, f, z float64) (float64, error) {
	return c.allowableEU("shell.Cylinder.AllowablePressureGirthEU", nx, f, z, 4)
}

func (c Cylinder) allowableEU(fn string, nx, f, z, k float64) (float64, error) {
	fz, err := allowed(fn, f, z)
	if err != nil {
		return math.NaN(), err
	}
	err = errors.Join(c.Valid(),
		check.Within(fn, "line load in tension [N/m]", nx, 0, math.MaxFloat64, "a load that relieves is not counted"),
		check.Within(fn, "e/De", c.Thickness/(2*c.OutsideRadius()), 0, 0.16, "range of the European shell formulas"))
	if err != nil {
		return math.NaN(), err
	}
	return k * (fz*c.Thickness - nx) / (2 * c.MidRadius()), nil
}
