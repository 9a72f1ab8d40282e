package revolution

import (
	"math"

	"proofsheet/shell"
)

// perElement is the number of stations an element has, its end not counted.
const perElement = 4

// A Station is the state of the wall at one place. Moments are positive where
// they stretch the outside.
type Station struct {
	Segment  int     // from 0
	Arc      float64 // along the meridian from the beginning of its segment [m]
	R        float64 // radius of the mid-surface [m]
	Z        float64 // along the axis [m]
	Slender  float64 // second principal radius over wall: the theory wants 10 [-]
	Radial   float64 // displacement, positive outward [m]
	Axial    float64 // displacement, positive forward [m]
	Rotation float64 // β of the normal, positive when it turns aft at a cylinder [rad]
	NPhi     float64 // meridional force [N/m]
	NTheta   float64 // hoop force [N/m]
	MPhi     float64 // meridional moment [N m/m]
	MTheta   float64 // hoop moment [N m/m]
	Membrane Stress  // mean over the wall
	Inside   Stress  // at the inner face
	Outside  Stress  // at the outer face
}

// A Stress is a plane state, tension positive.
type Stress struct {
	Meridional float64 // [Pa]
	Hoop       float64 // [Pa]
}

// Equivalent returns the measure [Pa] that limits are set against: the largest
// of the principal stresses without sign and of von Mises, and Tresca where the
// two stresses have opposite signs.
func (s Stress) Equivalent() float64 {
	return math.Max(shell.VonMises(s.Meridional, s.Hoop), shell.Tresca(s.Meridional, s.Hoop))
}

// stations evaluates the state u, with moderate rotations if that is asked for.
func (m *Model) stations(u []float64, moderate bool) []Station {
	out := make([]Station, 0, perElement*len(m.elements)+len(m.walls))
	arc := 0.0
	for i := range m.elements {
		e := &m.elements[i]
		last := i+1 == len(m.elements) || m.elements[i+1].segment != e.segment
		if i == 0 || m.elements[i-1].segment != e.segment {
			arc = 0
		}
		n := perElement
		if last {
			n++
		}
		x := m.shapes[i].course(u[e.dof : e.dof+span])
		for k := range n {
			out = append(out, m.station(i, k, &x, moderate))
			out[len(out)-1].Arc = arc + m.arc(i, k)
		}
		arc += m.arc(i, perElement)
	}
	return out
}

// arc is the length of element i to its k-th station, by the rule of Gauss with
// two points: exact where the metric is constant, else to the fourth power of
// the element.
func (m *Model) arc(i, k int) float64 {
	c, ok := m.s.Segments[m.elements[i].segment].Curve.(Ellipse)
	Δ := (m.elements[i].τ1 - m.elements[i].τ0) * float64(k) / perElement
	if !ok || c.A == c.B {
		return m.points[i*gauss].j / (m.elements[i].τ1 - m.elements[i].τ0) * Δ
	}
	τ := m.elements[i].τ0
	return Δ / 2 * (c.at(τ+0.5*Δ*(1-1/math.Sqrt(3))).j + c.at(τ+0.5*Δ*(1+1/math.Sqrt(3))).j)
}

func (m *Model) station(i, k int, c *course, moderate bool) Station {
	e, wall := &m.elements[i], m.walls[m.elements[i].segment]
	Δ := e.τ1 - e.τ0
	τ := e.τ0 + Δ*float64(k)/perElement
	if k == perElement {
		τ = e.τ1
	}
	f := m.s.Segments[e.segment].Curve.at(τ)
	b := stationBases[k].along(f.j*Δ, f.dj*Δ*Δ)
	x := c.at(&b)
	ε := f.strains(x)
	if moderate {
		ε.s += ε.β * ε.β / 2
	}
	ns, nθ, ms, mθ := wall.resultants(ε)
	t := wall.t
	membrane, bending := Stress{ns / t, nθ / t}, Stress{6 * ms / (t * t), 6 * mθ / (t * t)}
	return Station{
		Segment: e.segment, R: f.r, Z: f.z, Slender: f.r / (math.Abs(f.tz) * t),
		Radial: x.r, Axial: x.z, Rotation: ε.β,
		NPhi: ns, NTheta: nθ, MPhi: ms, MTheta: mθ, Membrane: membrane,
		Inside:  Stress{membrane.Meridional - bending.Meridional, membrane.Hoop - bending.Hoop},
		Outside: Stress{membrane.Meridional + bending.Meridional, membrane.Hoop + bending.Hoop},
	}
}

// Joint returns the states on both sides of the joint at a node; ok is false
// where the node is an end or none.
func (s *Solution) Joint(node int) (before, after Station, ok bool) {
	for i := 1; i < len(s.Stations); i++ {
		if s.Stations[i].Segment == node && s.Stations[i-1].Segment == node-1 {
			return s.Stations[i-1], s.Stations[i], true
		}
	}
	return before, after, false
}
