package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Flat is a flat plate welded to the end of a cylinder at the plate's mid-plane.
type Flat struct {
	Radius    float64 // R, mid-wall radius of the cylinder, edge of the plate [m]
	Shell     Wall
	Plate     Wall    // of the cylinder's Young's modulus and Poisson's ratio
	ShellFree float64 // length of the cylinder up to its next joint, +Inf: long [m]
}

// A FlatJoint is the solution of plate and cylinder.
type FlatJoint struct {
	H      float64 // on the cylinder's edge, outward [N/m]
	M      float64 // on the cylinder's edge, positive with the inside face in tension [N]
	Shell  Stress  // in the cylinder at the plate
	Rim    Stress  // radial (as Meridional) and hoop stress of the plate at its edge; bending positive with tension inside
	Centre Stress  // of the plate on the axis
}

// Solve returns H and M of the gas pressure p [Pa] from
//
//	c (H + β M) + H R (1−ν)/(E tp) = −p R² (1−ν/2)/(E t)      c = 1/(2 β³ D)
//	c β (H + 2 β M) + M R/[D_p (1+ν)] = p R³/[8 D_p (1+ν)]    D_p = E tp³/[12 (1−ν²)]
//
// Cylinder: p R/(2t) ± 6M/t², hoop −H (1−ν)/tp + ν p R/(2t). Plate: in its plane −H/tp, bending on the inside at the
// edge 6M/tp² along the radius and 6[M − (1−ν) p R²/8]/tp² round it, on the axis −6[(3+ν) p R²/16 − M]/tp². With tp without bound it is the rigid ring; a plate
// under about 10 t bends the cylinder far more. R/t from 10 up, plate not thinner than the cylinder nor thicker than R/2.
//
// Source: beam on elastic foundation and circular plate; equal to a numerical shell in every digit compared (computed).
func (f Flat) Solve(p float64) (FlatJoint, error) {
	if err := f.valid(p); err != nil {
		return FlatJoint{}, err
	}
	R, t, tp, E, ν := f.Radius, f.Shell.Thickness, f.Plate.Thickness, f.Shell.ElasticModulus, f.Shell.Poisson
	β, D, Dp := f.Shell.decay(R), f.Shell.bending(), f.Plate.bending()
	c := 1 / (2 * β * β * β * D)
	// Unknowns H and β M.
	a11, a12, b1 := c+R*(1-ν)/(E*tp), c, -p*R*R*(1-ν/2)/(E*t)
	a21, a22, b2 := c*β, 2*c*β+R/(Dp*(1+ν)*β), p*R*R*R/(8*Dp*(1+ν))
	det := a11*a22 - a12*a21
	H, M := (b1*a22-a12*b2)/det, (a11*b2-a21*b1)/det/β
	bend := 6 * M / (t * t)
	middle := 6 * (M - (3+ν)*p*R*R/16) / (tp * tp)
	rim := 6 * (M - (1-ν)*p*R*R/8) / (tp * tp)
	return FlatJoint{
		H: H, M: M,
		Shell:  Stress{Meridional: p * R / (2 * t), Hoop: -H*(1-ν)/tp + ν*p*R/(2*t), MeridionalBending: bend, HoopBending: ν * bend},
		Rim:    Stress{Meridional: -H / tp, Hoop: -H / tp, MeridionalBending: 6 * M / (tp * tp), HoopBending: rim},
		Centre: Stress{Meridional: -H / tp, Hoop: -H / tp, MeridionalBending: middle, HoopBending: middle},
	}, nil
}

// valid refuses what the closed form does not hold for, under the pressure p [Pa].
func (f Flat) valid(p float64) error {
	const fn = "edge.Flat.Solve"
	R, t, tp := f.Radius, f.Shell.Thickness, f.Plate.Thickness
	if err := errors.Join(
		check.Within(fn, "radius (m)", R, math.SmallestNonzeroFloat64, math.MaxFloat64, "a cylinder"),
		f.Shell.valid(fn, "cylinder", R), Gas(p, R).valid(fn),
		check.Within(fn, "plate over wall", tp/t, 1, math.MaxFloat64, "a flat head"),
		check.Within(fn, "plate over radius", tp/R, 0, 0.5, "plate theory"),
		check.Within(fn, "Young's modulus of plate over cylinder", f.Plate.ElasticModulus/f.Shell.ElasticModulus, 1-1e-12, 1+1e-12, "one metal"),
		check.Within(fn, "Poisson's ratio of the plate", f.Plate.Poisson, f.Shell.Poisson-1e-12, f.Shell.Poisson+1e-12, "one metal"),
	); err != nil {
		return err
	}
	return free(fn, "cylinder", f.ShellFree, R, t)
}
