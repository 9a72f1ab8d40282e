package proof

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// Atmosphere is the standard atmosphere p0 [Pa], exact.
const Atmosphere = 101325.0

// A Full is a tank full of liquid, as the pump sees it.
type Full struct {
	Volume          float64 // inside the tank: V [m3]
	Growth          float64 // of the wall: C_sh = dV/dp [m3/Pa]
	Compressibility float64 // of the liquid: κ [1/Pa]
	Expansion       float64 // of the liquid, volumetric, at pressure: β [1/K]
	WallExpansion   float64 // of the metal, linear: α_v [1/K]
	Air             float64 // trapped, volume at the atmosphere; 0 when bled: V_a0 [m3]
}

func (f Full) valid(fn string) error {
	return errors.Join(
		check.Within(fn, "volume [m3]", f.Volume, 1e-9, 1e6, "a tank"),
		check.Within(fn, "growth of the wall [m3/Pa]", f.Growth, 0, 1, "a wall yields to pressure"),
		check.Within(fn, "compressibility [1/Pa]", f.Compressibility, 1e-12, 1e-7, "a liquid"),
		check.Within(fn, "trapped air over volume", f.Air/f.Volume, 0, 0.05, "bled: more has to be let out first"),
	)
}

// Stiffness returns dV/dp of wall, liquid and trapped air [m3/Pa] at the
// pressure p over the atmosphere [Pa]:
//
//	C = κ V + C_sh + V_a0 p0/(p + p0)²
//
// p from 0 to 20 MPa. Source: isothermal air, linear wall and liquid; computed.
func (f Full) Stiffness(p float64) (float64, error) {
	const fn = "proof.Full.Stiffness"
	if err := errors.Join(f.valid(fn), pressureRange(fn, p)); err != nil {
		return math.NaN(), err
	}
	return f.Compressibility*f.Volume + f.Growth + f.Air*Atmosphere/((p+Atmosphere)*(p+Atmosphere)), nil
}

// Injected returns the liquid that the pump has pushed in [m3] at the pressure
// p [Pa], the tank being full at p = 0, and the shares of it taken by the wall,
// the liquid and the air [m3]:
//
//	V_inj = (C_sh + κ V) p + V_a0 p/(p + p0)
//
// Hose, pump and gauge line come on top; they are measured with the tank's
// valve shut. p from 0 to 20 MPa. Source: as [Full.Stiffness], its integral.
func (f Full) Injected(p float64) (Injected, error) {
	const fn = "proof.Full.Injected"
	if err := errors.Join(f.valid(fn), pressureRange(fn, p)); err != nil {
		nan := math.NaN()
		return Injected{nan, nan, nan, nan}, err
	}
	v := Injected{Wall: f.Growth * p, Liquid: f.Compressibility * f.Volume * p, Air: f.Air * p / (p + Atmosphere)}
	v.Total = v.Wall + v.Liquid + v.Air
	return v, nil
}

// Injected is a volume pumped in and where it went.
type Injected struct {
	Total  float64 // at the pump [m3]
	Wall   float64 // growth of the wall [m3]
	Liquid float64 // compression of the liquid [m3]
	Air    float64 // compression of trapped air [m3]
}

// Drift returns what the pressure of the closed, full tank does when liquid
// and wall warm together [Pa/K], at the pressure p [Pa]:
//
//	D = dp/dT = (β − 3 α_v) V / C
//
// Below zero the warming tank loses pressure. The sign turns between 5 and 9 °C
// for water in metal. Source: computed; the form in an engineering forum's
// answer on trapped water, read, has a wall that is right for a thin ring only.
func (f Full) Drift(p float64) (float64, error) {
	const fn = "proof.Full.Drift"
	c, err := f.Stiffness(p)
	err = errors.Join(err,
		check.Within(fn, "expansion of the liquid [1/K]", f.Expansion, -1e-2, 1e-2, "a liquid"),
		check.Within(fn, "expansion of the wall [1/K]", f.WallExpansion, 0, 1e-4, "a metal"))
	if err != nil {
		return math.NaN(), err
	}
	return (f.Expansion - 3*f.WallExpansion) * f.Volume / c, nil
}

// LeakFall returns the fall of pressure per volume lost [Pa/m3] at the pressure
// p [Pa]: 1/C. Source: as [Full.Stiffness].
func (f Full) LeakFall(p float64) (float64, error) {
	c, err := f.Stiffness(p)
	return 1 / c, err
}

// AdiabaticWarming returns by how much [K] a quick rise of pressure p [Pa]
// warms the liquid at temperature [K], density [kg/m3] and specific heat
// [J/(kg K)]; it cools away during the hold and looks like a leak:
//
//	ΔT = T β p / (ρ c_p)
//
// Source: isentropic compression, computed.
func (f Full) AdiabaticWarming(p, temperature, density, specificHeat float64) (float64, error) {
	const fn = "proof.Full.AdiabaticWarming"
	err := errors.Join(pressureRange(fn, p),
		check.Within(fn, "expansion of the liquid [1/K]", f.Expansion, -1e-2, 1e-2, "a liquid"),
		check.Within(fn, "temperature [K]", temperature, 50, 700, "a liquid"),
		check.Within(fn, "density [kg/m3]", density, 50, 2e4, "a liquid"),
		check.Within(fn, "specific heat [J/(kg K)]", specificHeat, 100, 2e4, "a liquid"))
	if err != nil {
		return math.NaN(), err
	}
	return temperature * f.Expansion * p / (density * specificHeat), nil
}

func pressureRange(fn string, p float64) error {
	return check.Within(fn, "pressure [Pa]", p, 0, 20e6, "liquid and wall linear in pressure")
}
