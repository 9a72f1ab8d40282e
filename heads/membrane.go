package heads

import (
	"errors"
	"math"
)

// Membrane returns the membrane forces per length [N/m], tension positive, of a
// shell of revolution at pt, under the pressure p [Pa] there, positive on the
// concave side, where the horizontal cut carries the axial force V [N], tension
// positive:
//
//	N_φ = V/(2 π r sin φ)    N_θ = r2 (p − N_φ/r1)
//
// For a gas V = p π r². On the axis, where V vanishes with the radius, N_φ is
// p r2/2. It holds for a thin wall clear of edges; a flat head has no membrane
// and is an error, as is any argument that is not a number.
//
// Source: equilibrium of the part cut off and of the element; Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells (recalled), worked in doc.go.
func Membrane(pt Point, p, V float64) (Nphi, Ntheta float64, err error) {
	bad := math.NaN()
	switch {
	case math.IsInf(pt.R2, 1):
		return bad, bad, errors.New("a flat head carries pressure by bending, not as a membrane")
	case math.IsNaN(p+V+pt.R+pt.Phi+pt.R1+pt.R2) || math.IsInf(p+V+pt.R, 0):
		return bad, bad, errors.New("membrane force: a number is missing")
	case !(pt.R >= 0 && pt.R1 > 0 && pt.R2 >= 0):
		return bad, bad, errors.New("membrane force: the principal radii must be positive")
	}
	if pt.R == 0 {
		if V != 0 {
			return bad, bad, errors.New("membrane force: an axial force on the axis itself has no circumference to act on")
		}
		Nphi = p * pt.R2 / 2
	} else {
		Nphi = V / (2 * math.Pi * pt.R * math.Sin(pt.Phi))
	}
	return Nphi, pt.R2 * (p - Nphi/pt.R1), nil
}
