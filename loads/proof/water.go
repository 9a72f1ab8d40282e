package proof

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// Kelvin of 0 °C [K], exact.
const zeroCelsius = 273.15

// Coefficients of Kell 1975 in powers of t [°C]. Density [kg/m3] over
// 1 + kellDensityDenominator t; compressibility in 1e-11/Pa over
// 1 + kellCompressibilityDenominator t.
var (
	kellDensity                    = []float64{999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12}
	kellDensityDenominator         = 16.879850e-3
	kellCompressibility            = []float64{50.88496, 0.6163813, 1.459187e-3, 20.08438e-6, -58.47727e-9, 410.4110e-12}
	kellCompressibilityDenominator = 19.67348e-3
)

// WaterSource says where the properties of water come from.
func WaterSource() check.Source {
	return check.Source{Doc: "Kell, J. Chem. Eng. Data 20 (1975): density and compressibility of water",
		Where: "recalled; confirm", How: check.Memory}
}

// Water is what water does in a closed tank, at one temperature and pressure.
type Water struct {
	Density         float64 // at 1 atm [kg/m3]
	Expansion       float64 // volumetric, at the pressure: β [1/K]
	Compressibility float64 // isothermal, at 1 atm: κ [1/Pa]
}

// WaterAt returns the properties of liquid water at an absolute temperature
// [K] and a pressure over the atmosphere [Pa]:
//
//	β(T,p) = β(T,0) − p dκ/dT,  β(T,0) = −(dρ/dT)/ρ
//
// β changes sign near 4 °C, and so does what a warming tank does near 6 to 9
// °C. κ stays at its value at 1 atm, which makes a full tank 0.3 % per MPa too
// soft. 0 to 100 °C and 0 to 20 MPa; outside, NaN and a [*check.RangeError].
//
// Source: [WaterSource] for ρ and κ; the derivatives are worked from them.
func WaterAt(temperature, pressure float64) (Water, error) {
	const fn = "proof.WaterAt"
	err := errors.Join(
		check.Within(fn, "water temperature [K]", temperature, zeroCelsius, zeroCelsius+100, "liquid at 1 atm"),
		check.Within(fn, "pressure on the water [Pa]", pressure, 0, 20e6, "expansion linear in pressure"))
	if err != nil {
		nan := math.NaN()
		return Water{nan, nan, nan}, err
	}
	t := temperature - zeroCelsius
	ρ, dρ := quotient(kellDensity, kellDensityDenominator, t)
	κ, dκ := quotient(kellCompressibility, kellCompressibilityDenominator, t)
	return Water{Density: ρ, Expansion: -dρ/ρ - pressure*dκ*1e-11, Compressibility: κ * 1e-11}, nil
}

// quotient returns the polynomial with coefficients c over 1 + d t, and its
// derivative by t, both in the unit of c.
func quotient(c []float64, d, t float64) (value, slope float64) {
	var sum, dsum float64
	for i := len(c) - 1; i >= 0; i-- {
		dsum = dsum*t + sum
		sum = sum*t + c[i]
	}
	value = sum / (1 + d*t)
	return value, (dsum - value*d) / (1 + d*t)
}
