package edge

import (
	"errors"
	"fmt"
	"math"
)

// A side is one wall of a joint as edge theory sees it.
type side struct {
	wall  Wall
	R     float64 // mid-wall radius of the joint [m]
	cos   float64 // part of a radial edge load that bends the wall: cos α, sin φ0 [-]
	free  float64 // radial displacement of membrane theory, outward [m]
	β, c  float64 // decay [1/m], 1/(2 β³ D) [m²/N]
	axial float64 // membrane force along the wall, of membrane theory [N/m]
}

// newSide makes the side of a wall whose normal leans so that cos of the radial edge load
// bends it; r2 = R/cos.
func newSide(w Wall, R, cos, axial, free float64) side {
	β := w.decay(R / cos)
	return side{wall: w, R: R, cos: cos, β: β, c: 1 / (2 * β * β * β * w.bending()), axial: axial, free: free}
}

// A Joint is the solution of two walls that meet at one radius. H are radial edge loads, outward; M
// are edge moments, positive where the inside face is in tension.
type Joint struct {
	Displacement float64 // w0, radial, outward [m]
	HShell       float64 // H1, on the cylinder [N/m]
	HHead        float64 // H2, on the head [N/m]
	HRing        float64 // on a ring at the joint; 0 without [N/m]
	MShell       float64 // M1, on the cylinder [N]
	MHead        float64 // M2, on the head [N]
	Shell        Stress  // in the cylinder at the joint
	Head         Stress  // in the head at the joint

	shell, head side
}

// A meeting is what holds the two sides together.
type meeting struct {
	radial float64 // T, outward line load on the joint [N/m]
	kink   float64 // rotation of membrane theory to be closed, s χ [rad]
	moment float64 // M2 − M1, of an offset of the mid-lines [N]
	ring   float64 // radial stiffness E A/R² of a ring [N/m²]
}

// solve closes the gaps of displacement and rotation between both sides:
//
//	w_1 + c1 (H1 + b1 M1) = w_2 + c2 k (H2 k + b2 M2)           k = cos α
//	−c1 b1 (H1 + 2 b1 M1) − c2 b2 (H2 k + 2 b2 M2) = −s χ
//	H1 + H2 + K w0 = T          M2 = M1 + m
func solve(a, b side, m meeting) (Joint, error) {
	r, g, k, K := b.c/a.c, b.β/a.β, b.cos, m.ring*a.c
	// Unknowns H1, H2, b1 M1, all forces per length.
	x, err := cramer([3][4]float64{
		{1, -r * k * k, 1 - r*k*g, (b.free-a.free)/a.c + r*k*b.β*m.moment},
		{-1, -r * g * k, -2 - 2*r*g*g, -m.kink/(a.c*a.β) + 2*r*g*b.β*m.moment},
		{1 + K, 1, K, m.radial - m.ring*a.free},
	})
	if err != nil {
		return Joint{}, err
	}
	j := Joint{HShell: x[0], HHead: x[1], MShell: x[2] / a.β, shell: a, head: b}
	j.MHead = j.MShell + m.moment
	j.Displacement = a.free + a.c*(x[0]+x[2])
	j.HRing = m.radial - j.HShell - j.HHead
	return j, nil
}

// cramer solves three equations in three unknowns.
func cramer(e [3][4]float64) (x [3]float64, err error) {
	det := func(col int) float64 {
		var m [3][3]float64
		for i := range 3 {
			for k := range 3 {
				m[i][k] = e[i][k]
				if k == col {
					m[i][k] = e[i][3]
				}
			}
		}
		return m[0][0]*(m[1][1]*m[2][2]-m[1][2]*m[2][1]) - m[0][1]*(m[1][0]*m[2][2]-m[1][2]*m[2][0]) +
			m[0][2]*(m[1][0]*m[2][1]-m[1][1]*m[2][0])
	}
	d := det(-1)
	if d == 0 || math.IsNaN(d) || math.IsInf(d, 0) {
		return x, errors.New("the edge equations have no solution")
	}
	for i := range x {
		if x[i] = det(i) / d; math.IsNaN(x[i]) || math.IsInf(x[i], 0) {
			return x, fmt.Errorf("edge load %d is not a number", i+1)
		}
	}
	return x, nil
}

// stresses fills in the stresses at the joint; along is the membrane force along the head
// there, edge load included [N/m].
func (j *Joint) stresses(along float64) {
	at := func(s side, n, M float64) Stress {
		t := s.wall.Thickness
		bend := 6 * M / (t * t)
		return Stress{
			Meridional: n / t, Hoop: s.wall.ElasticModulus*j.Displacement/s.R + s.wall.Poisson*n/t,
			MeridionalBending: bend, HoopBending: s.wall.Poisson * bend,
		}
	}
	j.Shell = at(j.shell, j.shell.axial, j.MShell)
	j.Head = at(j.head, along, j.MHead)
}

// ShellAt returns the stress in the cylinder at the distance x [m] ≥ 0 from the joint:
//
//	w = w_1 + c e^(−y) [H cos y + b M (cos y − sin y)]    y = b x
//	M(x) = e^(−y) [(H/b) sin y + M (cos y + sin y)]
//
// NaN for x below zero. Source: beam on elastic foundation (Timoshenko and Woinowsky-Krieger, recalled).
func (j Joint) ShellAt(x float64) Stress {
	s, t := j.shell, j.shell.wall.Thickness
	if !(x >= 0) {
		n := math.NaN()
		return Stress{n, n, n, n}
	}
	y := s.β * x
	e, sin, cos := math.Exp(-y), math.Sin(y), math.Cos(y)
	w := s.free + s.c*e*(j.HShell*cos+s.β*j.MShell*(cos-sin))
	bend := 6 / (t * t) * e * (j.HShell/s.β*sin + j.MShell*(cos+sin))
	return Stress{
		Meridional: s.axial / t, Hoop: s.wall.ElasticModulus*w/s.R + s.wall.Poisson*s.axial/t,
		MeridionalBending: bend, HoopBending: s.wall.Poisson * bend,
	}
}

// PeakShell returns the largest meridional stress of a face of the cylinder, near the joint or at
// it, as a magnitude [Pa]; it lies where tan y = H/(H + 2 b M), or at the joint.
func (j Joint) PeakShell() float64 {
	return math.Abs(j.Shell.Meridional) + peak(j.shell, j.HShell, j.MShell)
}

// PeakHead returns the same of the head [Pa], with the membrane stress at the joint. It knows
// nothing of bending that begins elsewhere in the head, at a knuckle or inside an ellipsoid.
func (j Joint) PeakHead() float64 {
	return math.Abs(j.Head.Meridional) + peak(j.head, j.HHead*j.head.cos, j.MHead)
}

// peak returns the largest bending stress [Pa] of a side under the edge loads H and M.
func peak(s side, H, M float64) float64 {
	y := math.Atan2(H, H+2*s.β*M)
	if y <= 0 {
		y += math.Pi
	}
	most := math.Max(math.Abs(M), math.Exp(-y)*math.Abs(H/s.β*math.Sin(y)+M*(math.Cos(y)+math.Sin(y))))
	return 6 * most / (s.wall.Thickness * s.wall.Thickness)
}
