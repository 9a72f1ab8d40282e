package loads

import "math"

// Wind returns shear force [N] and bending moment [N m] at the station z [m] of a
// column of one diameter that stands free up to top [m], in a wind square to it:
//
//	V = q C_d D (top − z),  M = q C_d D (top − z)²/2,  q = ρ_air v²/2
//
// v is the gust [m/s], D the outside diameter [m], C_d the drag coefficient: 1.2
// for a cylinder below its critical flow, the safe side, down to 0.7 above it
// [-]. ρ_air is 1.225 kg/m3, the standard atmosphere at sea level. Vortices shed
// at 0.2 v/D may shake the column; that is not in it. NaN where z lies above the top.
//
// Source: statics; drag coefficients are common practice.
func Wind(v, drag, D, z, top float64) (shear, moment float64) {
	b := top - z
	if !(b >= 0 && drag > 0 && D > 0) {
		return math.NaN(), math.NaN()
	}
	w := 0.5 * airDensity * v * v * drag * D
	return w * b, w * b * b / 2
}

// airDensity of the standard atmosphere at sea level [kg/m3].
const airDensity = 1.225
