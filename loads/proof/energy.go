package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// Stored is the energy that a full tank holds at proof.
type Stored struct {
	Liquid float64 // compressed liquid [J]
	Wall   float64 // strained wall [J]
	Air    float64 // trapped air, expanding to the atmosphere [J]
	Total  float64 // of the three [J]
}

// Energy returns what a tank full of liquid stores at the pressure p [Pa]:
//
//	E = p²/2 (κ V + C_sh) + p0 V_a0/(k − 1) [1 − (p0/P)^((k−1)/k)],  k = 1.4
//
// P = p + p0. A light wall stores more than the liquid in it. It is not p V:
// that is work of flow. p from 0 to 20 MPa. Source: work of compression
// (University of Wisconsin pressure vessel manual), read; the wall, computed.
func (f Full) Energy(p float64) (Stored, error) {
	const fn = "proof.Full.Energy"
	if err := errors.Join(f.valid(fn), pressureRange(fn, p)); err != nil {
		nan := math.NaN()
		return Stored{nan, nan, nan, nan}, err
	}
	const k = 1.4
	s := Stored{
		Liquid: p * p / 2 * f.Compressibility * f.Volume,
		Wall:   p * p / 2 * f.Growth,
		Air:    Atmosphere * f.Air / (k - 1) * (1 - math.Pow(Atmosphere/(p+Atmosphere), (k-1)/k)),
	}
	s.Total = s.Liquid + s.Wall + s.Air
	return s, nil
}

// A Gas is a volume of gas under pressure.
type Gas struct {
	Volume   float64 // of the gas: V [m3]
	Pressure float64 // over the surroundings [Pa]
	Outside  float64 // absolute pressure of the surroundings: Pa [Pa]
	Ratio    float64 // of specific heats: k [-]
}

// GasEnergy is what a gas can give, by four models.
type GasEnergy struct {
	Isentropic   float64 // sets the distance [J]
	Brode        float64 // upper bound by constant volume [J]
	Isothermal   float64 // upper bound by reversible heat [J]
	Availability float64 // isothermal less the work on the surroundings [J]
}

// Energy returns the energy stored in gas, with P = Pa + p absolute:
//
//	isentropic   P V/(k − 1) [1 − (Pa/P)^((k−1)/k)]
//	Brode        (P − Pa) V/(k − 1)
//	isothermal   P V ln(P/Pa)
//	availability P V [ln(P/Pa) − (1 − Pa/P)]
//
// The isentropic one is not an upper bound. A liquid that boils when the
// pressure falls is not covered: see [NitrousOxideFlash].
//
// Source: isentropic, ASME PCC-2 appendix II (2005 draft, 2008), read; the
// others, Crowl 2003 appendix B, read (availability: memory).
func (g Gas) Energy() (GasEnergy, error) {
	const fn = "proof.Gas.Energy"
	err := errors.Join(
		check.Within(fn, "gas volume [m3]", g.Volume, 0, 1e6, "a volume"),
		check.Within(fn, "pressure of the gas [Pa]", g.Pressure, 0, 1e9, "over the surroundings"),
		check.Within(fn, "absolute pressure outside [Pa]", g.Outside, 1e3, 2e5, "the energy formulas divide by it"),
		check.Within(fn, "ratio of specific heats", g.Ratio, 1.05, 1.67, "a gas"))
	if err != nil {
		nan := math.NaN()
		return GasEnergy{nan, nan, nan, nan}, err
	}
	P := g.Outside + g.Pressure
	x, ln := g.Outside/P, math.Log(P/g.Outside)
	k, pv := g.Ratio, P*g.Volume
	return GasEnergy{
		Isentropic:   pv / (k - 1) * (1 - math.Pow(x, (k-1)/k)),
		Brode:        g.Pressure * g.Volume / (k - 1),
		Isothermal:   pv * ln,
		Availability: pv * (ln - (1 - x)),
	}, nil
}

// nitrousFlash is the energy of saturated nitrous oxide per volume, expanding
// isentropically to the atmosphere: °C, liquid [J/m3], vapour [J/m3]. Computed
// with an equation of state of the fluid.
var nitrousFlash = []struct{ celsius, liquid, vapour float64 }{
	{0, 27.4e6, 6.3e6}, {20, 35.9e6, 13.2e6}, {30, 38.8e6, 19.8e6},
}

// NitrousOxideFlash returns the energy [J] of saturated nitrous oxide at an
// absolute temperature [K], liquid [m3] and vapour [m3] together, as it boils
// down to the atmosphere; the gas formulas cover no liquid. The values are
// those of the next warmer row of 0, 20 and 30 °C, never interpolated down. From
// 0 to 30 °C; outside, NaN and a [*check.RangeError]. Its decomposition comes
// on top and has no bound here.
//
// Source: E = m [u1 − u2 − Pa (v2 − v1)], computed.
func NitrousOxideFlash(temperature, liquid, vapour float64) (float64, error) {
	const fn = "proof.NitrousOxideFlash"
	err := errors.Join(
		check.Within(fn, "temperature [K]", temperature, zeroCelsius, zeroCelsius+30, "the equation of state was worked for these"),
		check.Within(fn, "liquid [m3]", liquid, 0, 1e6, "a volume"),
		check.Within(fn, "vapour [m3]", vapour, 0, 1e6, "a volume"))
	if err != nil {
		return math.NaN(), err
	}
	for _, row := range nitrousFlash {
		if temperature <= zeroCelsius+row.celsius {
			return row.liquid*liquid + row.vapour*vapour, nil
		}
	}
	// not reached: the table ends with the range
	return math.NaN(), fmt.Errorf("no row of the flash table covers %.2f K", temperature)
}

// tntEnergy is the energy of TNT [J/kg]; PCC-2 appendix II, read.
const tntEnergy = 4266920

// TNT returns the mass of TNT [kg] that holds the energy e [J]: e/4 266 920.
// Source: ASME PCC-2 appendix II, read.
func TNT(e float64) float64 { return e / tntEnergy }

// Scaled distances R_s [m/kg^⅓] and what they are chosen for; memory.
const (
	ScaledGlass   = 20.0 // windows
	ScaledEardrum = 12.0 // eardrums, light walls
	ScaledLung    = 6.0  // lungs, brick
	ScaledFatal   = 2.0  // fatal
)

// ScaledDistance returns the distance [m] at the scaled distance rs [m/kg^⅓]
// from gas that stores e [J]: R = R_s (2 m)^⅓, m = TNT(e). Source: as [StandOff].
func ScaledDistance(e, rs float64) float64 { return rs * math.Cbrt(2*TNT(e)) }

// StandOff returns the least distance [m] from gas that stores e [J]:
//
//	R = max(30 m, R_s (2 m)^⅓)   e ≤ 135.5 MJ
//	R = max(60 m, R_s (2 m)^⅓)   e ≤ 271 MJ
//
// with m = TNT(e) and R_s = 20. Above 271 MJ there is no plain test: NaN and a
// [*check.RangeError]. It covers the blast alone: a man was killed at 350 m by a
// fragment where it gives 325 m. For a tank full of liquid it is never a
// distance; there a barrier is, with remote reading.
//
// Source: ASME PCC-2, current form with the factor 2, by way of an excerpt,
// memory; the 2005 draft and 2008 pages, read, lack the 2 and give less.
func StandOff(e float64) (float64, error) {
	if err := check.Within("proof.StandOff", "stored energy [J]", e, 0, 271e6, "above 271 MJ no plain gas test"); err != nil {
		return math.NaN(), err
	}
	least := 30.0
	if e > 135.5e6 {
		least = 60
	}
	return math.Max(least, ScaledDistance(e, ScaledGlass)), nil
}
