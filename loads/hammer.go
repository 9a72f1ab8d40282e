package loads

import (
	"errors"
	"fmt"
	"math"
)

// A Line is a pipe full of liquid that moves and is stopped by a valve.
type Line struct {
	Length   float64 // L, from the tank to the valve [m]
	Velocity float64 // v, of the liquid before the valve closes [m/s]
	Density  float64 // ρ [kg/m3]
	Sound    float64 // c, of a pressure wave in the line [m/s]
}

// WaveSpeed returns the speed of a pressure wave in a pipe of a thin wall
// [m/s]:
//
//	c = √(K/ρ)/√(1 + K D c1/(E t))
//
// K is the liquid's bulk modulus [Pa], ρ its density [kg/m3], D the bore [m], t
// the wall [m], E its modulus [Pa], c1 how the pipe is held along its axis: 1
// with joints that slide [-]. An infinite E gives the wave in the liquid alone, the
// safe side for the pressure but not for calling a valve slow.
//
// Source: elementary theory of water hammer; a course's two pipes (read).
func WaveSpeed(K, ρ, D, t, E, c1 float64) (float64, error) {
	for _, v := range []float64{K, ρ, D, t, E, c1} {
		if !(v > 0) {
			return math.NaN(), errors.New("no wave speed: bulk modulus, density, bore, wall, modulus and restraint must be above zero")
		}
	}
	return math.Sqrt(K/ρ) / math.Sqrt(1+K*D*c1/(E*t)), nil
}

// Hammer returns the rise of pressure at the valve [Pa] when it closes in the
// time given [s], and whether the closing is slow, longer than 2 L/c:
//
//	fast: Δp = ρ c v (Joukowsky)
//	slow: Δp = 2 ρ L v/t_c, the same at t_c = 2 L/c
//
// The slow form takes a flow that falls at a steady rate. Few valves close so:
// most of the flow is stopped at the end of the stroke, and the fast form stands
// unless a calculation of the line says otherwise. The factor is 2: the mean
// deceleration, ρ L v/t_c, is half of the peak. The rise acts on line, valve and
// outlet, not on the gas in the tank.
//
// Source: water hammer in a course and a textbook (read); Joukowsky.
func (l Line) Hammer(closing float64) (rise float64, slow bool, err error) {
	for _, q := range []struct {
		name  string
		value float64
	}{{"length [m]", l.Length}, {"density [kg/m3]", l.Density}, {"wave speed [m/s]", l.Sound}} {
		if !(q.value > 0) || math.IsInf(q.value, 0) {
			return math.NaN(), false, fmt.Errorf("no water hammer: the %s is %g, must be above zero", q.name, q.value)
		}
	}
	if !(closing >= 0) || math.IsNaN(l.Velocity) {
		return math.NaN(), false, errors.New("no water hammer: the velocity or the closing time is not a number")
	}
	v := math.Abs(l.Velocity)
	if closing > 2*l.Length/l.Sound {
		return 2 * l.Density * l.Length * v / closing, true, nil
	}
	return l.Density * l.Sound * v, false, nil
}
