package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Dome is a head that runs tangent into the cylinder: hemisphere or ellipsoid, of any thickness.
type Dome struct {
	Radius      float64 // R, mid-wall radius of the joint [m]
	Depth       float64 // b, semi-axis of the mid-surface along the tank axis; R for a hemisphere [m]
	Shell, Head Wall
	Offset      float64 // mid-line of the head outside that of the cylinder, at the joint; 0: in line [m]
	ShellFree   float64 // length of the cylinder up to its next joint, straight flange of the cylinder's wall included; +Inf: long [m]
	RingArea    float64 // of a narrow ring at the joint; 0: none [m2]
	RingModulus float64 // Young's modulus of the ring [Pa]
}

// Solve returns the edge solution of head and cylinder, that of [Cone.Solve] with α = 0, T = 0, χ = 0 and
//
//	w_h = R [p R − ν N_x − N_x R²/b²]/(E th)    gas: p R² (1 − ν/2 − R²/(2 b²))/(E th)
//	M2 − M1 = N_x e,  e the offset of the mid-lines
//
// A hemisphere of the cylinder's wall has M = 0 and H1 = −p/(8 β), an ellipsoid (R/b)² times that. It is asymptotic in sqrt(t/R)
// and knows only the bending that begins at the joint: the peak inside an ellipsoid is missed (up to 1.39 p R/t on the inside
// of a 2:1 head). R/t from 10 up, 0.3 ≤ b/R ≤ 1, offset within the thinner wall.
//
// Source: Timoshenko and Woinowsky-Krieger (recalled); compared with a numerical shell (computed).
func (d Dome) Solve(l Load) (Joint, error) {
	const fn = "edge.Dome.Solve"
	R, p := d.Radius, l.Pressure
	if err := errors.Join(
		check.Within(fn, "radius of the joint (m)", R, math.SmallestNonzeroFloat64, math.MaxFloat64, "a joint"),
		check.Within(fn, "depth over radius", d.Depth/R, 0.3, 1+1e-12, "ellipsoids up to 3.3:1 and hemispheres"),
		d.Shell.valid(fn, "cylinder", R), d.Head.valid(fn, "head", R), l.valid(fn),
		check.Within(fn, "offset over the thinner wall", math.Abs(d.Offset)/math.Min(d.Shell.Thickness, d.Head.Thickness), 0, 1, "mid-lines at a seam"),
		check.Within(fn, "ring area (m2)", d.RingArea, 0, math.MaxFloat64, "a ring"),
		check.Within(fn, "ring modulus (Pa)", d.RingModulus, 0, math.MaxFloat64, "a ring"),
	); err != nil {
		return Joint{}, err
	}
	if err := free(fn, "cylinder", d.ShellFree, R, d.Shell.Thickness); err != nil {
		return Joint{}, err
	}
	shell := newSide(d.Shell, R, 1, l.AxialShell, R*(p*R-d.Shell.Poisson*l.AxialShell)/(d.Shell.ElasticModulus*d.Shell.Thickness))
	head := newSide(d.Head, R, 1, l.Axial, R*(p*R-l.Axial*(R/d.Depth)*(R/d.Depth)-d.Head.Poisson*l.Axial)/(d.Head.ElasticModulus*d.Head.Thickness))
	j, err := solve(shell, head, meeting{moment: l.Axial * d.Offset, ring: d.RingModulus * d.RingArea / (R * R)})
	if err != nil {
		return Joint{}, err
	}
	j.stresses(l.Axial)
	return j, nil
}

// A Step is a girth seam between two cylinders of unlike walls.
type Step struct {
	Radius      float64 // R, mid-wall radius [m]
	First       Wall
	Second      Wall
	Offset      float64 // mid-line of the second outside that of the first [m]
	FirstFree   float64 // length of the first up to its next joint, +Inf: long [m]
	SecondFree  float64 // the same of the second [m]
	RingArea    float64 // of a narrow ring at the seam; 0: none [m2]
	RingModulus float64 // Young's modulus of the ring [Pa]
}

// Solve returns the edge solution of the seam: that of two cylinders, with the moment
// N_x e of the offset. The first wall is the joint's Shell, the second its Head. R/t from 10 up, offset within the thinner wall.
//
// Source: beam on elastic foundation; compared with a numerical shell (computed).
func (s Step) Solve(l Load) (Joint, error) {
	const fn = "edge.Step.Solve"
	R, p := s.Radius, l.Pressure
	if err := errors.Join(
		check.Within(fn, "radius of the seam (m)", R, math.SmallestNonzeroFloat64, math.MaxFloat64, "a seam"),
		s.First.valid(fn, "first wall's", R), s.Second.valid(fn, "second wall's", R), l.valid(fn),
		check.Within(fn, "offset over the thinner wall", math.Abs(s.Offset)/math.Min(s.First.Thickness, s.Second.Thickness), 0, 1, "mid-lines at a seam"),
		check.Within(fn, "ring area (m2)", s.RingArea, 0, math.MaxFloat64, "a ring"),
		check.Within(fn, "ring modulus (Pa)", s.RingModulus, 0, math.MaxFloat64, "a ring"),
	); err != nil {
		return Joint{}, err
	}
	if err := errors.Join(free(fn, "first wall", s.FirstFree, R, s.First.Thickness), free(fn, "second wall", s.SecondFree, R, s.Second.Thickness)); err != nil {
		return Joint{}, err
	}
	cylinder := func(w Wall, nx float64) side {
		return newSide(w, R, 1, nx, R*(p*R-w.Poisson*nx)/(w.ElasticModulus*w.Thickness))
	}
	j, err := solve(cylinder(s.First, l.AxialShell), cylinder(s.Second, l.Axial),
		meeting{moment: l.Axial * s.Offset, ring: s.RingModulus * s.RingArea / (R * R)})
	if err != nil {
		return Joint{}, err
	}
	j.stresses(l.Axial)
	return j, nil
}
