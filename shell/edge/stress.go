package edge

import (
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Stress is the stress at one place of a wall, tension positive. Bending is
// positive where the inside face is in tension.
type Stress struct {
	Meridional        float64 // membrane [Pa]
	Hoop              float64 // membrane [Pa]
	MeridionalBending float64 // 6 M/t² [Pa]
	HoopBending       float64 // [Pa]
}

// combine returns a·s + b·u, component by component.
func combine(a float64, s Stress, b float64, u Stress) Stress {
	return Stress{
		a*s.Meridional + b*u.Meridional, a*s.Hoop + b*u.Hoop,
		a*s.MeridionalBending + b*u.MeridionalBending, a*s.HoopBending + b*u.HoopBending,
	}
}

// Membrane returns the measure of the membrane stress [Pa], by [material.EquivalentStress].
func (s Stress) Membrane() float64 { return material.EquivalentStress(s.Meridional, s.Hoop) }

// faces returns the meridional and hoop stress [Pa] of the inside and of the outside face.
func (s Stress) faces() [2][2]float64 {
	return [2][2]float64{
		{s.Meridional + s.MeridionalBending, s.Hoop + s.HoopBending},
		{s.Meridional - s.MeridionalBending, s.Hoop - s.HoopBending},
	}
}

// Surface returns the measure of membrane and bending stress on the worse face [Pa], by
// [material.EquivalentStress].
func (s Stress) Surface() float64 {
	f := s.faces()
	return max(material.EquivalentStress(f[0][0], f[0][1]), material.EquivalentStress(f[1][0], f[1][1]))
}

// MeridionalSurface returns the larger meridional stress of the two faces, as a magnitude [Pa].
func (s Stress) MeridionalSurface() float64 {
	return math.Abs(s.Meridional) + math.Abs(s.MeridionalBending)
}

// RingStress returns the stress of a narrow ring, as a place of a junction: its hoop stress, tension positive, where the joint of radius
// R [m] moves outward by w [m] and the ring has Young's modulus E [Pa]:
//
//	σ = E w/R
//
// Poor numbers give NaN. Source: a thin ring (computed); equal to F R/A of [Step.Solve].
func RingStress(E, w, R float64) Stress {
	if !(E > 0 && R > 0) {
		return Stress{Hoop: math.NaN()}
	}
	return Stress{Hoop: E * w / R}
}

// Bent returns the stress with the bending of a misaligned girth seam added: ratio [-] times the meridional
// membrane stress, positive with tension inside, and ν times that round the seam. Hi-lo changes its side round
// a seam: try both signs of ratio, as two places. ν is Poisson's ratio [-].
func (s Stress) Bent(ratio, ν float64) Stress {
	b := ratio * s.Meridional
	s.MeridionalBending += b
	s.HoopBending += ν * b
	return s
}

// finite reports whether all four are numbers.
func (s Stress) finite() bool {
	sum := s.Meridional + s.Hoop + s.MeridionalBending + s.HoopBending
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// A Load is what acts at a joint.
type Load struct {
	Pressure   float64 // p, inside minus outside at the joint, liquid head included [Pa]
	Axial      float64 // N_x in the head at the joint, axial force per circumference, tension positive [N/m]
	AxialShell float64 // N_xc in the cylinder at the joint, tension positive; differs where a skirt or ring takes load [N/m]
}

// Gas returns the load of gas alone at pressure p [Pa] on a joint of mid-wall radius R [m]:
// N_x = p R/2 on both sides [N/m].
func Gas(p, R float64) Load { return Load{Pressure: p, Axial: p * R / 2, AxialShell: p * R / 2} }

func (l Load) valid(fn string) error {
	for _, v := range []float64{l.Pressure, l.Axial, l.AxialShell} {
		if err := check.Within(fn, "load at the joint", v, -math.MaxFloat64, math.MaxFloat64, "a number"); err != nil {
			return err
		}
	}
	return nil
}
