package port

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// plugs is the peak response of a sphere to a force through a rigid tube:
// U = r0/√(Rm T), N T/F, M/F, meridional [-].
//
// Source: shallow spherical shell, ν = 0.3, rigid plug, computed; meets the
// point-load value 0.125 F l²/D as U goes to 0.
var plugs = [...][3]float64{{0.1, 0.2778, 0.2937}, {0.2, 0.2309, 0.1922}, {0.5, 0.1344, 0.0836}, {1.0, 0.0656, 0.0343},
	{1.5, 0.0381, 0.0184}, {2.0, 0.0248, 0.0115}, {2.5, 0.0173, 0.0078}}

// patches is the same of a cylinder, the larger of both directions: a shallow
// cylindrical shell without end, ν = 0.3, the force spread evenly over the tube's
// circle, at its middle; and what a rigid plug has over an even load on a sphere
// of the same U. Round the whole cylinder (R/T 25 to 400) the peaks are lower.
//
// Source: Fourier integrals of the shallow-shell equations, computed; test:
// thrust_test.go.
var patches = [...][3]float64{{0.1, 0.2802, 0.3931}, {0.2, 0.2381, 0.2909}, {0.5, 0.1935, 0.1783}, {1.0, 0.1723, 0.1179},
	{1.5, 0.1510, 0.0890}, {2.0, 0.1322, 0.0702}, {2.5, 0.1163, 0.0567}}

// LocalStress returns the peak membrane and bending stress [Pa] in a sphere of
// mid-surface radius rm and wall t [m] beside a rigid tube of outside radius r0
// [m] that carries the force f [N] normal to the wall:
//
//	σm = (N T/F) F/T²,  σb = 6 (M/F) F/T²,  U = r0/√(Rm T) from 0.1 to 2.5
//
// linear between the table's rows, which lies above the curve. Outside, the error
// is a [*check.RangeError] and the stresses are NaN.
//
// Source: see plugs. A screening: not compared with a published curve.
func LocalStress(rm, t, r0, f float64) (membrane, bending float64, err error) {
	return localStress("port.LocalStress", plugs[:], rm, t, r0, f)
}

// CylinderLocalStress is [LocalStress] in a cylinder, the larger of hoop and
// longitudinal: membrane and bending stress [Pa], radius, wall and tube radius in [m],
// the force in [N]. Under a load of the same size it is stressed more than a sphere of
// its radius, the more the larger the tube.
//
// Source: see patches. A screening: not compared with a published curve.
func CylinderLocalStress(rm, t, r0, f float64) (membrane, bending float64, err error) {
	return localStress("port.CylinderLocalStress", patches[:], rm, t, r0, f)
}

func localStress(fn string, table [][3]float64, rm, t, r0, f float64) (membrane, bending float64, err error) {
	u := r0 / math.Sqrt(rm*t)
	if err := check.Within(fn, "tube radius over √(R T)", u, 0.1, 2.5, "table of local stress"); err != nil {
		return math.NaN(), math.NaN(), err
	}
	i := 1
	for i < len(table)-1 && u > table[i][0] {
		i++
	}
	lo, hi := table[i-1], table[i]
	x := (u - lo[0]) / (hi[0] - lo[0])
	n, m := lo[1]+(hi[1]-lo[1])*x, lo[2]+(hi[2]-lo[2])*x
	return n * f / (t * t), 6 * m * f / (t * t), nil
}

// A localWall is what the wall is to a load through a rigid tube.
type localWall struct {
	radius  float64 // R_m of the table [m]
	stress  func(rm, t, r0, f float64) (membrane, bending float64, err error)
	general float64 // largest membrane resultant of pressure and line loads there [N/m]
	bent    float64 // what bending of the pressure adds at a face, in a knuckle [Pa]
}

// localWall returns what the wall is to a load from outside; an error where no table
// speaks for it.
func (r AreaReport) localWall() (localWall, error) {
	w, p := r.Wall, r.Port
	v := localWall{radius: w.Radius, stress: LocalStress, general: w.Radius / 2}
	switch {
	case w.Surface == Cylinder:
		v = localWall{radius: w.Radius, stress: CylinderLocalStress, general: w.Radius}
	case w.Surface == Cone && !p.inKnuckle(w):
		rm := p.Radius / math.Cos(w.HalfApex)
		v = localWall{radius: rm, stress: CylinderLocalStress, general: rm}
	case w.Surface == Torisphere && !p.inKnuckle(w):
		v = localWall{radius: w.Crown, stress: LocalStress, general: w.Crown / 2}
	case p.BesideRim(w):
		return p.rimWall(w, r.Load)
	case w.Surface == Ellipsoid: // r_2 there is the larger of its radii; N_θ from both
		rm, hoop := w.ellipsoidRadii(p.Radius)
		v = localWall{radius: rm, stress: LocalStress, general: math.Max(rm/2, hoop)}
	case w.Surface != Sphere:
		return v, fmt.Errorf("port %s: a load from outside on a %s wall is not covered here: carry the line on a bracket of its own and leave load out, or have the plate calculated with it", p.Name, strings.ToLower(w.Surface.String()))
	}
	v.general = math.Max(r.Load.Pressure*v.general, math.Max(math.Max(r.Load.Hoop, r.Load.Meridional), r.Load.mostAsked()))
	return v, nil
}

// GeneralMembrane returns the largest membrane stress of the wall at the port, by
// pressure and line loads, without what the port brings [Pa].
func (r AreaReport) GeneralMembrane() (float64, error) {
	v, err := r.localWall()
	if err != nil {
		return math.NaN(), err
	}
	return v.general / r.Wall.Thickness, nil
}

// localReadings holds a force along the tube [N] in the wall: membrane with the
// pressure's to the first limit, with bending to the second.
func (r AreaReport) localReadings(force float64, limits [2]check.Quantity) ([]reading, error) {
	t, od, φ := r.Wall.Thickness, r.Port.OutsideDiameter, r.Chords.Obliquity
	v, err := r.localWall()
	if err != nil {
		return nil, err
	}
	σm, σb, err := v.stress(v.radius, t, od/2, force*math.Cos(φ))
	if err != nil {
		return nil, err
	}
	shear := 2 * force * math.Sin(φ) / (math.Pi * od * t)
	σm += v.general/t + 2*shear // Tresca: twice the shear beside the tension
	return []reading{
		{"wall, membrane", check.Pa("σ_m", "local membrane stress", σm), limits[0]},
		{"wall, membrane and bending", check.Pa("σ_m + σ_b", "local stress at the surface", σm+σb+v.bent), limits[1]},
	}, nil
}

// ellipsoidRadii returns the larger principal radius of an oblate ellipsoid at e
// [m] from the axis, r_2 = √(A⁴ + e² (h² − A²))/h, and the hoop membrane resultant
// over the pressure, r_2 − r_2²/(2 r_1) as a magnitude, r_1 = r_2³ h²/A⁴ [m].
//
// Source: geometry and membrane equilibrium, computed.
func (w Wall) ellipsoidRadii(e float64) (r2, hoop float64) {
	a, h := w.Radius, w.Depth
	r2 = math.Sqrt(a*a*a*a+e*e*(h*h-a*a)) / h
	r1 := r2 * r2 * r2 * h * h / (a * a * a * a)
	return math.Max(r1, r2), math.Abs(r2 - r2*r2/(2*r1))
}
