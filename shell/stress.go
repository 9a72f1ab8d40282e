package shell

import (
	"math"

	"proofsheet/report/check"
)

// VonMises returns the equivalent stress [Pa] of two principal membrane
// stresses a and b [Pa], tension positive:
//
//	σ_e = √(a² − a b + b²)
//
// It holds for plane stress without shear; the gain of 13 per cent it shows for
// a closed cylinder is not taken on a seam. NaN gives NaN.
//
// Source: von Mises 1913, plane stress (memory).
func VonMises(a, b float64) float64 { return math.Sqrt(a*a - a*b + b*b) }

// Tresca returns the greatest difference of principal stresses [Pa] of a, b
// and a free face [Pa], tension positive:
//
//	max(|a − b|, |a|, |b|)
//
// NaN gives NaN. Source: Tresca 1864, plane stress (memory).
func Tresca(a, b float64) float64 {
	return max(math.Abs(a-b), math.Abs(a), math.Abs(b))
}

// An Elastic is the elastic behaviour of a wall.
type Elastic struct {
	Modulus float64 // E at temperature [Pa]
	Poisson float64 // ν [-]
}

// Strain returns the strain [-] along the stress a [Pa], b [Pa] acting across:
//
//	ε = (a − ν b)/E
//
// It holds below yield, for E above 0 and 0 ≤ ν ≤ 1/2.
//
// Source: Hooke's law in plane stress.
func (m Elastic) Strain(a, b float64) (float64, error) {
	if err := positive("shell.Elastic.Strain", "elastic modulus [Pa]", m.Modulus); err != nil {
		return math.NaN(), err
	}
	if err := check.Within("shell.Elastic.Strain", "Poisson ratio", m.Poisson, 0, 0.5, "an isotropic solid"); err != nil {
		return math.NaN(), err
	}
	return (a - m.Poisson*b) / m.Modulus, nil
}

// Growth is how a cylinder grows under load.
type Growth struct {
	Hoop, Axial float64 // strains [-]
	Diameter    float64 // growth of the mid-wall diameter [m]
	Length      float64 // growth of the length [m]
	Volume      float64 // growth of the volume within mid-wall [m3]
}

// Growth returns the elastic growth under hoop and axial stress [Pa]:
//
//	ΔD = D ε_θ, ΔL = L ε_x, ΔV = V (2 ε_θ + ε_x), V = π R_m² L
//
// To first order in the strains; clear of the ends. Range: [Elastic.Strain].
//
// Source: Timoshenko, Strength of Materials (memory); worked examples of a
// strength-of-materials companion, chapter 15 (read).
func (c Cylinder) Growth(hoop, axial float64, m Elastic) (Growth, error) {
	if err := c.Valid(); err != nil {
		return Growth{}, err
	}
	εh, err := m.Strain(hoop, axial)
	if err != nil {
		return Growth{}, err
	}
	εx, err := m.Strain(axial, hoop)
	if err != nil { // not reached: the other direction has asked for the same numbers
		return Growth{}, err
	}
	r := c.MidRadius()
	return Growth{
		Hoop: εh, Axial: εx, Diameter: 2 * r * εh, Length: c.Length * εx,
		Volume: math.Pi * r * r * c.Length * (2*εh + εx),
	}, nil
}
