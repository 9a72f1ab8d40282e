package loads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A wave is slosh put on a state: the mode of the flat-bottomed tank of the same
// liquid, its bottom at a station of the true one.
type wave struct {
	mode   Slosh
	rise   float64 // η, on the wall [m]
	bottom float64 // of the flat bottom [m]
	even   bool    // shallow over a curved bottom: the pressure is not let fall with depth
}

// leastStraight is how far the radius may change over the wave [-].
const leastStraight = 1e-9

// SloshMode returns the first mode of the liquid as that of a flat-bottomed tank
// of the same volume: h = V/(π R²), R at the level. The level must stand in a
// tank that is pressed aft, its section there an open circle.
func (s *State) SloshMode() (Slosh, error) {
	if !s.fluid || !(s.Acceleration.Axial > 0) {
		return Slosh{}, errors.New("no first mode: there is no liquid, or nothing presses it aft")
	}
	lo, hi := s.in.Bounds()
	z := s.SurfaceZ()
	if !(z > lo && z < hi) {
		return Slosh{}, errors.New("no first mode: the level does not stand in the tank")
	}
	inner, R := s.in.Radii(z)
	if inner > 0 {
		return Slosh{}, errors.New("no first mode: the level stands round an inward head")
	}
	return Slosh{Radius: R, Depth: s.LiquidVolume() / (math.Pi * R * R),
		Acceleration: s.Acceleration.Axial * StandardGravity, Density: s.Liquid.Density}, nil
}

// Sloshing returns the state with its liquid swinging in the first mode, η [m]
// high on the wall, on the side that the lateral factor tilts it to. Pressure on
// the wall, and shear and bending of the free body, then hold the slosh, at its
// worst all at once; the tilt of the level itself is not changed.
//
//	p = p_u + ρ a_x [d ± η cosh(ξ(h − d)/R)/cosh(ξ h/R)], not below p_u, d under the level at rest at that side
//
// It holds while the wave stays on a straight wall, η ≤ R/(ξ tanh(ξ h/R)) and
// η ≤ 0.25 R. A curved bottom counts as a flat one of the same volume while h is
// above R; shallower the pressure ρ a_x η is taken all the way down, which no first
// mode exceeds: its potential is largest where the surface meets the wall.
//
// Source: as [Slosh] (memory); the bound by the maximum principle (computed).
func (s *State) Sloshing(η float64) (*State, error) {
	mode, err := s.SloshMode()
	if err != nil {
		return nil, err
	}
	if err := check.Within("loads.State.Sloshing", "amplitude [m]", η, math.SmallestNonzeroFloat64, math.MaxFloat64, "a rise on the wall"); err != nil {
		return nil, err
	}
	most, err := mode.LargestAmplitude()
	if err != nil { // not reached: SloshMode gives a radius, a depth, an acceleration and a density
		return nil, err
	}
	if η > most {
		return nil, fmt.Errorf("a rise of %.4g mm is more than the surface can fall: at most R/(ξ tanh(ξ h/R)) = %.4g mm", η*1e3, most*1e3)
	}
	if η > mode.UsualAmplitude()*(1+1e-12) {
		return nil, fmt.Errorf("a rise of %.4g mm is beyond the linear first mode, which ends at 0.25 R = %.4g mm: slosh so high needs a method of its own", η*1e3, mode.UsualAmplitude()*1e3)
	}
	if err := s.straight(mode.Radius, η); err != nil {
		return nil, err
	}
	out := *s
	lo, _ := s.in.Bounds()
	z := s.SurfaceZ()
	out.wave = &wave{mode: mode, rise: η, bottom: z - mode.Depth}
	if flat := math.Abs(z-lo-mode.Depth) <= 1e-6*mode.Radius; !flat && mode.Depth <= mode.Radius {
		out.wave.even, out.wave.bottom, out.wave.mode.Depth = true, lo, z-lo
	}
	return &out, nil
}

// straight refuses a wave of height η [m] on the tilted level that leaves the
// straight wall of radius R [m].
func (s *State) straight(R, η float64) error {
	lo, hi := s.in.Bounds()
	z, reach := s.SurfaceZ(), η+R*s.Acceleration.Lateral/s.Acceleration.Axial
	for _, at := range [2]float64{z - reach, z + reach} {
		inner, outer := 0.0, math.NaN()
		if at >= lo && at <= hi {
			inner, outer = s.in.Radii(at)
		}
		if inner > 0 || !(math.Abs(outer-R) <= leastStraight*R) {
			return fmt.Errorf("the wave reaches from z = %.4g to %.4g mm and leaves the straight wall of the cylinder; there is no formula for it", (z-reach)*1e3, (z+reach)*1e3)
		}
	}
	return nil
}

// Sided reports whether pressure and bending differ round the tank: a lateral
// factor, or slosh.
func (s *State) Sided() bool { return s.Acceleration.Lateral != 0 || s.wave != nil }

// SloshAmplitude returns the height of the wave on the wall [m], 0 at rest.
func (s *State) SloshAmplitude() float64 {
	if s.wave == nil {
		return 0
	}
	return s.wave.rise
}

// SloshForce returns the lateral force [N] that the swinging liquid puts on the
// wall, and the pressure it adds where its surface meets the wall [Pa]: both 0
// without slosh. Over a shallow curved bottom the force is a bound,
// ρ a_x η π R d with the whole depth d of the liquid.
func (s *State) SloshForce() (force, pressure float64, bound bool) {
	w := s.wave
	if w == nil {
		return 0, 0, false
	}
	force, _ = w.above(w.bottom)
	return force, w.mode.Density * w.mode.Acceleration * w.rise, w.even
}

// wallDepth returns how deep the wall lies under the free surface on the side to
// which the liquid is pushed (side 1) or on the other (side −1), slosh included,
// times the load factor [m].
func (s *State) wallDepth(z, side float64) float64 {
	_, outer := s.in.Radii(z)
	d := s.depth(z, side*outer)
	if s.wave == nil {
		return d
	}
	return d + side*s.Acceleration.Axial*s.wave.rise*s.wave.decay(d/s.Acceleration.Axial)
}

// decay is the share of the surface's pressure that is left d [m] under the level [-].
func (w *wave) decay(d float64) float64 {
	if w.even || d <= 0 {
		return 1
	}
	h, k := w.mode.Depth, firstRoot/w.mode.Radius
	u := math.Max(h-d, 0) // below the flat bottom nothing more is taken off
	return math.Exp(k*(u-h)) * (1 + math.Exp(-2*k*u)) / (1 + math.Exp(-2*k*h))
}

// above returns the lateral force [N] on the wall forward of z [m] and its moment
// about z [N m], by integrals of the wall pressure, with u = z − bottom, b = R/ξ:
//
//	F = ρ a_x η π R b (sinh(h/b) − sinh(u/b))/cosh(h/b)
//	M = ρ a_x η π R [(h − u) b sinh(h/b) − b² (cosh(h/b) − cosh(u/b))]/cosh(h/b)
//
// Aft of the bottom there is no more of it, and the pressure on the bottom counts
// in the moment too.
func (w *wave) above(z float64) (force, moment float64) {
	h, b := w.mode.Depth, w.mode.Radius/firstRoot
	q := w.mode.Density * w.mode.Acceleration * w.rise * math.Pi * w.mode.Radius
	u := math.Min(math.Max(z-w.bottom, 0), h)
	if w.even {
		force, moment = q*(h-u), q*(h-u)*(h-u)/2
	} else {
		fall := math.Exp((u - h) / b) // cosh(u/b)/cosh(h/b) and sinh without overflow
		foot := 1 + math.Exp(-2*h/b)
		cosh, sinh := fall*(1+math.Exp(-2*u/b))/foot, fall*(1-math.Exp(-2*u/b))/foot
		th := math.Tanh(h / b)
		force, moment = q*b*(th-sinh), q*((h-u)*b*th-b*b*(1-cosh))
	}
	if z < w.bottom {
		moment += force*(w.bottom-z) + w.onBottom()
	}
	return force, moment
}

// onBottom returns the moment [N m] of the pressure on the bottom,
//
//	ρ a_x η π R (R/ξ)²/cosh(ξ h/R)
//
// and where no fall with depth is taken that of the same pressure all over it,
// π R³/3 of it.
func (w *wave) onBottom() float64 {
	R := w.mode.Radius
	q := w.mode.Density * w.mode.Acceleration * w.rise * math.Pi * R
	if w.even {
		return q * R * R / 3
	}
	return q * R * R / (firstRoot * firstRoot) * w.decay(w.mode.Depth)
}

// sloshBending returns moment [N m] and shear [N] that slosh adds to the wall on
// the plane z [m] from its free side, adverse. On a head that hangs from the joint
// at z = joint [m] the pressure at the joint is taken all over the part beyond the
// cut, its depth d and radius r there:
//
//	V = π p r d, M = π p (r³/3 + r d²/2)
func (s *State) sloshBending(z, joint float64, forwardFree bool) (moment, shear float64) {
	w := s.wave
	if w == nil {
		return 0, 0
	}
	force, about := w.above(z)
	switch {
	case forwardFree:
		return about, force
	case z < joint:
		lo, _ := s.in.Bounds()
		_, r := s.in.Radii(z)
		level := s.SurfaceZ()
		p := w.mode.Density * w.mode.Acceleration * w.rise * w.decay(level-joint)
		d := z - lo
		return math.Pi * p * (r*r*r/3 + r*d*d/2), math.Pi * p * r * d
	}
	all, foot := w.above(w.bottom)
	u := z - w.bottom // ∫ p (u − x) below z = all of it about z, and what lies above
	return math.Max(0, all*u-foot+about) + w.onBottom(), all - force
}
