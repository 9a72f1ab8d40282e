package loads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Support says which end of the tank is held and carries it.
type Support string

const (
	Aft     Support = "aft"     // stands on its aft joint
	Forward Support = "forward" // hangs from its forward joint
	Both    Support = "both"    // either may carry any share
)

// A PointMass is structural mass of the tank, lumped at a station.
type PointMass struct {
	Z    float64 // station [m]
	Mass float64 // [kg]
}

// A Section is what the stack carries at a station, as quoted: all inertia
// forward of it (hung from forward: aft of it) included, without pressure
// thrust and without the liquid of this tank.
type Section struct {
	Station float64 // z [m]
	Force   float64 // axial force, tension positive [N]
	Moment  float64 // bending moment, either sense [N m]
	Shear   float64 // shear force, either sense [N]; NaN where it is not given
}

// A Body is the tank as a free body: what is needed beside pressure and liquid
// to find the force in its wall.
type Body struct {
	Radius         func(z float64) float64 // mid-wall radius [m]
	PressureRadius func(z float64) float64 // radius the gas pressure acts on [m]; nil: Radius, adverse for tension. The inside radius is adverse for relief.
	HalfAngle      func(z float64) float64 // wall to axis [rad]; nil: 0, a cylinder
	Masses         []PointMass             // of this tank
	Sections       []Section               // quoted; nil: the tank carries only itself
	Support        Support                 // which joint holds the tank
	AftJoint       float64                 // z where the skirt or flange joins aft [m]; the head's apex for a boss
	ForwardJoint   float64                 // z where it joins forward [m]
}

// Forces are the parts of the force in the wall on one cut, tension positive.
// Ullage and Liquid together are what pressure does; the loads exclude both.
type Forces struct {
	Ullage                  float64 // p_u π r² [N]
	LiquidMost, LiquidLeast float64 // what the liquid's weight and head add [N]; they differ only when both joints hold
	LoadMost, LoadLeast     float64 // axial force of masses and quoted loads [N]
	Moment                  float64 // bending moment, magnitude [N m]
	Shear                   float64 // shear force, magnitude [N]
	ShearMissing            bool    // a lateral factor acts and a section came without its shear force
}

// FreeBody returns the parts of the force in the wall on the plane z [m]:
//
//	A = p_u π r² + W,  W = ∫ (p − p_u) dA over the cut − n_x g0 m_liq,fwd
//	aft of a joint that carries the tank, or of the stack: W + n_x g0 m_liq
//
// and, from loads, F(z) = F_s − n_x g0 m(z…z_s), M(z) = |M_s| + |V_s (z − z_s)|
// + n_y g0 Σ m_i |z_i − z| over the structure between z and z_s, plus the
// liquid on the free side of z, slosh included. Without sections the tank carries itself alone.
// Between two quoted sections both are used and the extremes kept. Heads beyond
// the joints carry no load of the stack. A plane on a joint counts as between
// the joints; for the head beside it take a plane a hair beyond.
//
// Where an inward head stands in the tank, the plane is moved to its crown for
// the liquid: no pressure pulls along the plain cylinder between.
//
// Source: statics, worked in doc.go.
func (s *State) FreeBody(z float64, b Body) (Forces, error) {
	lo, hi := s.in.Bounds()
	if err := check.Within("loads.State.FreeBody", "station of the cut [m]", z, lo, hi, "the inside of the tank"); err != nil {
		return Forces{}, err
	}
	if b.Radius == nil || !(b.AftJoint < b.ForwardJoint) {
		return Forces{}, errors.New("the mid-wall radius or the joints of the tank are not given")
	}
	at, err := s.clearOfInwardHead(z)
	if err != nil {
		return Forces{}, err
	}
	pr := b.Radius(z)
	if b.PressureRadius != nil {
		pr = b.PressureRadius(z)
	}
	n := s.Acceleration.Axial * StandardGravity
	f := Forces{Ullage: s.UllagePressure * math.Pi * pr * pr}
	w, all := s.liquidPull(at), n*s.Liquid.Mass
	f.LiquidMost, f.LiquidLeast = w, w
	switch {
	case z < b.AftJoint: // the head hangs from the joint, liquid and all
		f.LiquidMost, f.LiquidLeast = w+all, w+all
		f.LoadMost = n * b.massBetween(lo-atEnd, z)
		f.LoadLeast = f.LoadMost
		f.Moment, f.Shear = s.ownBending(z, b, false)
	case z > b.ForwardJoint:
		f.LoadMost = -n * b.massBetween(z, hi+atEnd)
		f.LoadLeast = f.LoadMost
		f.Moment, f.Shear = s.ownBending(z, b, true)
	default:
		err = s.stack(&f, z, w, b)
	}
	return f, err
}

// liquidPull returns W [N] on the plane z [m].
func (s *State) liquidPull(z float64) float64 {
	if !s.fluid {
		return 0
	}
	w := s.headForce(z)
	if n := s.Acceleration.Axial * StandardGravity; n != 0 {
		w -= n * s.MassForward(z)
	}
	return w
}

// stack adds what the wall between the joints carries, w [N] being W.
func (s *State) stack(f *Forces, z, w float64, b Body) error {
	var carried []bool // forward side free (true): the aft joint holds
	switch b.Support {
	case Aft:
		carried = []bool{true}
	case Forward:
		carried = []bool{false}
	case Both:
		carried = []bool{true, false}
	default:
		return fmt.Errorf("the tank is held %q, must be aft, forward or both", string(b.Support))
	}
	f.LiquidMost, f.LiquidLeast = math.Inf(-1), math.Inf(1)
	f.LoadMost, f.LoadLeast = math.Inf(-1), math.Inf(1)
	for _, forwardFree := range carried {
		liquid := w
		if !forwardFree {
			liquid += s.Acceleration.Axial * StandardGravity * s.Liquid.Mass
		}
		f.LiquidMost, f.LiquidLeast = max(f.LiquidMost, liquid), min(f.LiquidLeast, liquid)
		for _, q := range b.near(z, s.in, forwardFree) {
			s.fromSection(f, z, b, q, forwardFree)
		}
	}
	f.ShearMissing = f.ShearMissing && s.Acceleration.Lateral > 0
	return nil
}

// fromSection widens f by what the section q says of the plane z [m].
func (s *State) fromSection(f *Forces, z float64, b Body, q Section, forwardFree bool) {
	n, y := s.Acceleration.Axial*StandardGravity, s.Acceleration.Lateral*StandardGravity
	force := q.Force - n*b.massBetween(z, q.Station)
	if q.Station < z {
		force = q.Force + n*b.massBetween(q.Station, z)
	}
	f.LoadMost, f.LoadLeast = max(f.LoadMost, force), min(f.LoadLeast, force)
	shear := q.Shear
	if math.IsNaN(shear) {
		shear, f.ShearMissing = 0, true
	}
	moment := math.Abs(q.Moment) + math.Abs(shear*(z-q.Station))
	shear = math.Abs(shear)
	if y > 0 {
		a, c := min(z, q.Station), max(z, q.Station)
		moment += y * b.momentBetween(a, c, z)
		shear += y * b.massBetween(a, c)
	}
	m, v := s.liquidBending(z, b.AftJoint, forwardFree)
	moment, shear = moment+m, shear+v
	f.Moment, f.Shear = max(f.Moment, moment), max(f.Shear, shear)
}

// ownBending returns moment [N m] and shear [N] on the plane z [m] from the
// tank's own structure and liquid on its free side.
func (s *State) ownBending(z float64, b Body, forwardFree bool) (moment, shear float64) {
	y := s.Acceleration.Lateral * StandardGravity
	if !s.Sided() {
		return 0, 0
	}
	lo, hi := s.in.Bounds()
	from, to := lo-atEnd, z
	if forwardFree {
		from, to = z, hi+atEnd
	}
	m, v := s.liquidBending(z, b.AftJoint, forwardFree)
	return y*b.momentBetween(from, to, z) + m, y*b.massBetween(from, to) + v
}

// liquidBending returns moment [N m] and shear [N] on the plane z [m] from the
// liquid on its free side under the lateral factor, and from slosh. The liquid's
// shift to one side is held by its pressure on the cut, exactly so in a cylinder.
// The aft head hangs from aftJoint [m].
func (s *State) liquidBending(z, aftJoint float64, forwardFree bool) (moment, shear float64) {
	moment, shear = s.sloshBending(z, aftJoint, forwardFree)
	if !s.fluid || s.Acceleration.Lateral == 0 {
		return moment, shear
	}
	lo, hi := s.in.Bounds()
	from, to, mass := lo, z, s.MassAft(z)
	if forwardFree {
		from, to, mass = z, hi, s.MassForward(z)
	}
	y := s.Acceleration.Lateral * StandardGravity
	return moment + y*s.Liquid.Density*math.Abs(s.wetMoment(from, to, z)), shear + y*mass
}

// beyond is how far past its aftmost mass a free tank ends [m]: anything above 0.
const beyond = 1.0

// atEnd is within what of an end of the inside a mass belongs to the head there [m]:
// what closes a tip does, what stands off the crown does not.
const atEnd = 1e-9

// near returns the quoted sections nearest to z [m] on either side; without
// any, the free end of the tank, where nothing is carried.
func (b Body) near(z float64, in Interior, forwardFree bool) []Section {
	if len(b.Sections) == 0 {
		lo, hi := in.Bounds()
		if forwardFree {
			return []Section{{Station: max(hi, b.farthest(1))}}
		}
		return []Section{{Station: min(lo, b.farthest(-1)) - beyond}} // a mass at that end hangs on it
	}
	below, above := math.Inf(-1), math.Inf(1)
	for _, q := range b.Sections {
		if q.Station <= z {
			below = max(below, q.Station)
		}
		if q.Station >= z {
			above = min(above, q.Station)
		}
	}
	var out []Section
	for _, q := range b.Sections {
		if q.Station == below || q.Station == above {
			out = append(out, q)
		}
	}
	return out
}

// farthest returns the station [m] of the foremost mass (way 1) or of the
// aftmost (way −1).
func (b Body) farthest(way float64) float64 {
	at := math.Inf(int(-way))
	for _, m := range b.Masses {
		if way*m.Z > way*at {
			at = m.Z
		}
	}
	return at
}

// massBetween returns the structure's mass [kg] with z1 < z ≤ z2 [m].
func (b Body) massBetween(z1, z2 float64) float64 {
	sum := 0.0
	for _, m := range b.Masses {
		if m.Z > z1 && m.Z <= z2 {
			sum += m.Mass
		}
	}
	return sum
}

// momentBetween returns Σ m |z − about| [kg m] with z1 < z ≤ z2 [m].
func (b Body) momentBetween(z1, z2, about float64) float64 {
	sum := 0.0
	for _, m := range b.Masses {
		if m.Z > z1 && m.Z <= z2 {
			sum += m.Mass * math.Abs(m.Z-about)
		}
	}
	return sum
}
