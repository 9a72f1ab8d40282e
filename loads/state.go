package loads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Liquid is what the tank holds.
type Liquid struct {
	Density float64 // ρ [kg/m3]
	Mass    float64 // m [kg], 0 for a dry tank
}

// An Acceleration is what the liquid feels, in multiples of g0: the sensed
// one, gravity included, so that a tank standing on the pad has Axial 1.
type Acceleration struct {
	Axial   float64 // n_x [-], positive when it presses the liquid aft
	Lateral float64 // n_y [-], in the worst direction: its sign does not matter
}

// A State is a closed tank with its liquid at rest in it under a steady
// acceleration. Make one with [NewState].
type State struct {
	UllagePressure float64 // p_u, across the wall [Pa]
	Liquid         Liquid
	Acceleration   Acceleration

	in    Interior
	zs    []float64 // ends of the smooth pieces [m]
	most  float64   // largest inside radius [m], only with a lateral factor
	plane float64   // c: liquid fills n_x z − n_y x ≤ c [m]
	cells []cell    // of the liquid, only with a lateral factor
	fluid bool      // the liquid presses on something: mass and acceleration
	wave  *wave     // of slosh, nil at rest
}

// NewState puts the liquid into the tank and finds its free plane. With n_y ≥ 0
// toward +x, x being measured from the axis, the liquid fills
//
//	n_x z − n_y x ≤ c
//
// and c follows from its volume m/ρ, which is kept whatever the heads cut off:
//
//	m/ρ = ∫ A(z) dz, A = r² acos(u) − r² u √(1 − u²), u = (n_x z − c)/(n_y r) cut to [−1, 1]
//
// less the same area of an inward head. In a full tank the plane touches the
// point of least depth, and p_u is the pressure there. ullage is the pressure
// of the gas across the wall [Pa]. With both factors 0 the liquid is weightless
// and p = p_u everywhere.
//
// It holds for a liquid that does not move in the tank and does not compress;
// [State.Sloshing] puts slosh on top. More liquid than the tank holds is an error.
//
// Source: fluid statics, as worked under Pressure in the package comment.
func NewState(in Interior, ullage float64, l Liquid, a Acceleration) (*State, error) {
	if err := finite(ullage, l, a); err != nil {
		return nil, err
	}
	a.Lateral = math.Abs(a.Lateral)
	s := &State{
		UllagePressure: ullage, Liquid: l, Acceleration: a, in: in, zs: pieces(in),
		fluid: l.Mass > 0 && (a.Axial != 0 || a.Lateral != 0),
		plane: math.NaN(),
	}
	total, v := in.Volume(), l.Mass/l.Density
	if !(total > 0) {
		return nil, fmt.Errorf("the volume inside the tank is %.4g m3", total)
	}
	if v > total*(1+1e-9) {
		return nil, &check.RangeError{
			Func: "loads.NewState", Param: "liquid volume [m3]", Got: v, Least: 0, Most: total,
			Why: "the inside of the tank holds no more",
		}
	}
	if !s.fluid {
		return s, nil
	}
	var err error
	if a.Lateral == 0 {
		s.plane, err = flatPlane(in, math.Min(v, total), a.Axial)
	} else if s.plane, err = s.tiltedPlane(v, total); err == nil {
		s.cells = s.wetCells()
	}
	return s, err
}

// finite refuses a number with which no state can be found.
func finite(ullage float64, l Liquid, a Acceleration) error {
	for _, q := range []struct {
		name string
		v    float64
	}{
		{"ullage pressure", ullage}, {"axial load factor", a.Axial}, {"lateral load factor", a.Lateral},
	} {
		if math.IsNaN(q.v) || math.IsInf(q.v, 0) {
			return fmt.Errorf("the %s is %v, not a number that can be used", q.name, q.v)
		}
	}
	if err := check.Within("loads.NewState", "liquid mass [kg]", l.Mass, 0, math.MaxFloat64, "a mass"); err != nil {
		return err
	}
	if !(l.Density > 0) || math.IsInf(l.Density, 0) {
		return errors.New("the density of the liquid is not known")
	}
	return nil
}

// flatPlane returns c [m] of a level plane with the volume v [m3] under it.
func flatPlane(in Interior, v, n float64) (float64, error) {
	if n < 0 { // the liquid lies on the forward head
		v = math.Max(in.Volume()-v, 0)
	}
	z, err := LevelForVolume(in, v)
	return n * z, err
}

// SurfaceZ returns the station [m] where the free plane meets the tank's axis;
// with a strong lateral factor that may lie outside the tank. It is NaN in a
// dry tank, and where the plane does not cross the axis: without axial factor.
func (s *State) SurfaceZ() float64 {
	if !s.fluid || s.Acceleration.Axial == 0 {
		return math.NaN()
	}
	return s.plane / s.Acceleration.Axial
}

// Volume returns the whole inside volume [m3].
func (s *State) Volume() float64 { return s.in.Volume() }

// LiquidVolume returns m/ρ [m3].
func (s *State) LiquidVolume() float64 { return s.Liquid.Mass / s.Liquid.Density }

// UllageFraction returns the share of the volume that is gas [-].
func (s *State) UllageFraction() float64 { return 1 - s.LiquidVolume()/s.Volume() }

// PressureAt returns the pressure across the wall [Pa] at the station z [m]
// and the distance x [m] from the axis toward the side the liquid is pushed to:
//
//	p = p_u + ρ g0 (c − n_x z + n_y x), not less than p_u
//
// NaN gives NaN. Source: fluid statics, as in the package comment.
func (s *State) PressureAt(z, x float64) float64 {
	if math.IsNaN(z) || math.IsNaN(x) {
		return math.NaN()
	}
	return s.UllagePressure + s.Liquid.Density*StandardGravity*math.Max(0, s.depth(z, x))
}

// depth is how far the point lies under the free plane, times the load factor
// [m]: negative above it.
func (s *State) depth(z, x float64) float64 {
	if !s.fluid {
		return 0
	}
	return s.plane - s.Acceleration.Axial*z + s.Acceleration.Lateral*x
}

// PressureAxis returns the pressure [Pa] on the axis at z [m].
func (s *State) PressureAxis(z float64) float64 { return s.PressureAt(z, 0) }

// PressureWorst returns the highest pressure [Pa] over the ring of wall at z
// [m], at the local inside radius, slosh included.
func (s *State) PressureWorst(z float64) float64 { return s.pressureOn(z, 1) }

// pressureOn returns the pressure [Pa] on the wall at z [m] on the side to which
// the liquid is pushed (side 1) or on the other (side −1).
func (s *State) pressureOn(z, side float64) float64 {
	if !s.Sided() || !s.fluid || math.IsNaN(z) {
		return s.PressureAt(z, 0)
	}
	return s.UllagePressure + s.Liquid.Density*StandardGravity*math.Max(0, s.wallDepth(z, side))
}

// PressureLeast returns the lowest pressure [Pa] over the ring of wall at z
// [m], on the side the liquid leaves, slosh included.
func (s *State) PressureLeast(z float64) float64 { return s.pressureOn(z, -1) }

// HighestPressure returns the highest pressure [Pa] on the wall between the
// stations z1 and z2 [m], and the station [m] where it acts. The worst point of
// a dished head under lateral acceleration is not its apex. Stations outside
// the tank are cut to its ends; NaN gives NaN.
func (s *State) HighestPressure(z1, z2 float64) (p, at float64) {
	lo, hi := s.in.Bounds()
	a, b := math.Max(math.Min(z1, z2), lo), math.Min(math.Max(z1, z2), hi)
	switch {
	case math.IsNaN(z1) || math.IsNaN(z2) || a > b:
		return math.NaN(), math.NaN()
	case s.Acceleration.Lateral != 0 && s.fluid:
		_, at = largest(s.zs, a, b, func(z float64) float64 { return s.wallDepth(z, 1) })
	case s.Acceleration.Axial < 0:
		at = b
	default: // slosh of a linear amplitude falls slower than the head grows
		at = a
	}
	return s.PressureWorst(at), at
}

// MassForward returns the mass of liquid [kg] forward of the plane z [m]. It is
// NaN when the liquid is weightless: nobody knows where it floats.
func (s *State) MassForward(z float64) float64 {
	lo, hi := s.in.Bounds()
	switch {
	case math.IsNaN(z):
		return math.NaN()
	case s.Liquid.Mass == 0 || z >= hi:
		return 0
	case z <= lo:
		return s.Liquid.Mass
	case !s.fluid:
		return math.NaN()
	}
	if from, _ := s.band(s.plane); s.Acceleration.Axial > 0 && z <= from { // everything aft of z is full
		return math.Max(0, s.Liquid.Mass-s.Liquid.Density*s.in.VolumeBelow(z))
	}
	return math.Min(s.Liquid.Mass, s.Liquid.Density*s.wetVolume(s.plane, z, hi))
}

// MassAft returns the mass of liquid [kg] aft of the plane z [m].
func (s *State) MassAft(z float64) float64 { return s.Liquid.Mass - s.MassForward(z) }

// LowestPressure returns the lowest pressure [Pa] on the wall between the stations z1 and z2
// [m], on the side that the liquid leaves: under lateral acceleration the gas of a tank
// that is nearly full stands at the shoulder of a head, neither at its rim nor at its
// apex. Stations outside the tank are cut to its ends; NaN gives NaN.
func (s *State) LowestPressure(z1, z2 float64) float64 {
	lo, hi := s.in.Bounds()
	a, b := math.Max(math.Min(z1, z2), lo), math.Min(math.Max(z1, z2), hi)
	if math.IsNaN(z1) || math.IsNaN(z2) || a > b {
		return math.NaN()
	}
	least := math.Min(s.PressureLeast(a), s.PressureLeast(b))
	if s.Acceleration.Lateral == 0 || !s.fluid {
		return least
	}
	_, at := largest(s.zs, a, b, func(z float64) float64 { return -s.wallDepth(z, -1) })
	return math.Min(least, s.PressureLeast(at))
}
