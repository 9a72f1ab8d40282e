package proof

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// A Line is the pressure-volume line of a filled tank, fitted:
//
//	V = V0 + C p + V_a0 p/(p + p0)
//
// C is the slope of wall and water alone. What was not fitted is NaN.
type Line struct {
	Zero        float64 // V0, of the log's own zero [m3]
	Slope       float64 // C [m3/Pa]
	Air         float64 // trapped, at the atmosphere: V_a0 [m3]
	SlopeU      float64 // standard uncertainty of C by the scatter of the readings [m3/Pa]
	AirU        float64 // and of V_a0 [m3]
	Scatter     float64 // root mean square of the readings about the line [m3]
	Points      int     // readings fitted [-]
	AirFitted   bool    // V_a0 is a fitted number, with readings low enough to tell it
	covariance  [][]float64
	uncertainty float64 // of one reading, for covariance [m3]
}

// airShare returns p/(p + p0), the share of its volume that air at the
// atmosphere has given up at the pressure p over it [Pa].
func airShare(p float64) float64 { return p / (p + Atmosphere) }

// lowShare is the share of the setting below which air bends the line; two
// readings there tell how much air it is, or one with three above [-]. Practice.
const (
	lowShare   = 0.4
	lowPoints  = 2
	highPoints = 3
)

// FitLine fits the line to volumes [m3] at pressures [Pa], all in one order, by
// least squares. Air is fitted, and never below zero, where at least two
// readings lie below 0.4 of the setting [Pa], or one with three above; otherwise the line is straight,
// through those above, where air of 0.26 to 0.5 % of the volume leaves 1.4 to
// 2.7 % too much slope, and the air is NaN. u is the uncertainty of one volume
// [m3]; the scatter counts in its place where larger. Fewer readings than
// numbers to fit give NaN.
//
// Source: isothermal air and a linear tank as [Full.Injected], least squares;
// computed.
func FitLine(pressures, volumes []float64, setting, u float64) Line {
	low := 0
	for _, p := range pressures {
		if p < lowShare*setting {
			low++
		}
	}
	if low >= lowPoints || low > 0 && len(pressures)-low >= highPoints {
		l := fit(pressures, volumes, u, func(p float64) []float64 { return []float64{1, p, airShare(p)} })
		if l.Air < 0 { // no air: the readings scatter
			l = fit(pressures, volumes, u, func(p float64) []float64 { return []float64{1, p} })
			l.Air, l.AirU = 0, u
		}
		l.AirFitted = !math.IsNaN(l.Air)
		return l
	}
	var ps, vs []float64
	for i, p := range pressures {
		if p >= lowShare*setting {
			ps, vs = append(ps, p), append(vs, volumes[i])
		}
	}
	return fit(ps, vs, u, func(p float64) []float64 { return []float64{1, p} })
}

// At returns the volume of the line at the pressure p [Pa], over the log's own
// zero, and its uncertainty [m3]. Air that was not fitted counts as none.
func (l Line) At(p float64) (v, u float64) {
	v = l.Zero + l.Slope*p
	if l.Air > 0 {
		v += l.Air * airShare(p)
	}
	x := []float64{1, p, airShare(p)}[:max(len(l.covariance), 1)]
	var s float64
	for i := range l.covariance {
		for j := range l.covariance {
			s += x[i] * l.covariance[i][j] * x[j]
		}
	}
	return v, math.Sqrt(math.Max(0, s)) * l.uncertainty
}

// Stiffness returns dV/dp of the fitted tank with its air at p [m3/Pa], p in
// [Pa].
func (l Line) Stiffness(p float64) float64 {
	c := l.Slope
	if l.Air > 0 {
		c += l.Air * Atmosphere / ((p + Atmosphere) * (p + Atmosphere))
	}
	return c
}

// unfitted is the line of readings too few for one.
func unfitted(points int) Line {
	nan := math.NaN()
	return Line{Zero: nan, Slope: nan, Air: nan, SlopeU: nan, AirU: nan, Scatter: nan, Points: points}
}

// fit solves the normal equations of a model that is linear in its numbers,
// with pressures counted in atmospheres to keep them well scaled.
func fit(ps, vs []float64, u float64, model func(p float64) []float64) Line {
	l := unfitted(len(ps))
	n := len(model(0))
	if len(ps) < n {
		return l
	}
	scale := []float64{1, Atmosphere, 1}
	rows := mat.NewDense(len(ps), n, nil)
	for i, p := range ps {
		for j, x := range model(p) {
			rows.Set(i, j, x/scale[j])
		}
	}
	v := mat.NewVecDense(len(vs), slices.Clone(vs))
	var right, c mat.VecDense
	var normal, inverse mat.SymDense
	normal.SymOuterK(1, rows.T())
	right.MulVec(rows.T(), v)
	var factors mat.Cholesky
	if !factors.Factorize(&normal) || !(factors.Cond() < worstCondition) || factors.InverseTo(&inverse) != nil {
		return l
	}
	c.MulVec(&inverse, &right)
	var off mat.VecDense
	off.MulVec(rows, &c)
	off.SubVec(v, &off)
	sum := mat.Dot(&off, &off)
	l.Scatter, l.uncertainty = math.Sqrt(sum/float64(len(ps))), u
	if free := len(ps) - n; free > 0 {
		l.uncertainty = math.Max(u, math.Sqrt(sum/float64(free)))
	}
	for j := range n {
		l.covariance = append(l.covariance, make([]float64, n))
		for k := range n {
			l.covariance[j][k] = inverse.At(j, k) / (scale[j] * scale[k])
		}
	}
	l.Zero, l.Slope, l.SlopeU = c.AtVec(0), c.AtVec(1)/scale[1], math.Sqrt(l.covariance[1][1])*l.uncertainty
	if n == 3 {
		l.Air, l.AirU = c.AtVec(2), math.Sqrt(l.covariance[2][2])*l.uncertainty
	}
	return l
}

// worstCondition is that of normal equations of which a float64 keeps four digits [-].
const worstCondition = 1e12
