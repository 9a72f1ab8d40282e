package tank

import (
	"fmt"
	"math"
)

// layer is one layer of the standard atmosphere.
type layer struct{ base, pressure, temperature, lapse float64 } // [m'], [Pa], [K], [K/m']

// layers hold geopotential altitude, pressure and temperature at the base of
// each layer and its lapse rate.
//
// Source: U.S. Standard Atmosphere, 1976 (NOAA/NASA/USAF), tables 4 and I,
// recalled.
var layers = []layer{
	{0, 101325, 288.15, -0.0065},
	{11000, 22632.06, 216.65, 0},
	{20000, 5474.889, 216.65, 0.001},
	{32000, 868.0187, 228.65, 0.0028},
	{47000, 110.9063, 270.65, 0},
	{51000, 66.93887, 270.65, -0.0028},
	{71000, 3.956420, 214.65, -0.002},
}

// atmosphere returns the standard pressure [Pa] at a geometric altitude z [m]
// above sea level:
//
//	H = r0 z / (r0 + z)
//	p = p_b (T_b / (T_b + L (H − H_b)))^(g0 M / (R L)),  or
//	p = p_b exp(−g0 M (H − H_b) / (R T_b)) where L = 0
//
// with r0 = 6 356 766 m and g0 M / R = 0.034 163 2 K/m. It holds from 5 km below
// sea level to 86 km; outside it is an error.
//
// Source: U.S. Standard Atmosphere, 1976, eqs. (18), (33a), (33b), recalled.
func atmosphere(z float64) (float64, error) {
	if !(z >= -5000 && z <= 86000) {
		return math.NaN(), fmt.Errorf("%.4g km is outside of the standard atmosphere used, -5 km to 86 km", z/1000)
	}
	const earth, perKelvin = 6356766, 9.80665 * 28.9644 / 8314.32
	H := earth * z / (earth + z)
	at := layers[0]
	for _, l := range layers {
		if H >= l.base {
			at = l
		}
	}
	if at.lapse == 0 {
		return at.pressure * math.Exp(-perKelvin*(H-at.base)/at.temperature), nil
	}
	warm := at.temperature + at.lapse*(H-at.base)
	return at.pressure * math.Pow(at.temperature/warm, perKelvin/at.lapse), nil
}
