package revolution

import (
	"fmt"
	"math"
)

// A Segment is one part of the wall with one thickness and one material.
// Segments follow each other; where one begins, the one before it ends.
type Segment struct {
	Name      string  // as results report it
	Curve     Curve   // of its mid-surface
	Thickness float64 // wall t [m]
	Modulus   float64 // E [Pa]
	Poisson   float64 // ν [-]
	Yield     float64 // σ_y; only LimitLoad asks for it [Pa]

	// Linked says that the segment may begin off the end of the one before, by
	// not more than the sum of the two walls: mid-lines out of line, a rigid
	// link between them. Without it such a gap is a fault.
	Linked bool
}

// A Ring is a stiffening ring at a node, its section not deforming.
type Ring struct {
	Node    int     // the joint it stands at
	Area    float64 // of its section [m2]
	Radial  float64 // second moment of its section about its own axis parallel to the tank's: it bends in its plane [m4]
	Axial   float64 // second moment about its own radial axis: it twists with the wall and bends out of its plane [m4]
	Torsion float64 // torsion constant; axisymmetric states do not use it [m4]
	Modulus float64 // E [Pa]
	Poisson float64 // ν [-]
	Yield   float64 // σ_y; only LimitLoad asks for it [Pa]
	Offset  Point   // of its centroid from the node [m]
}

// A Support holds the wall at a node.
type Support struct {
	Node     int  // 0 is the beginning, i the joint before segment i, the last the end
	Axial    bool // no displacement along the axis
	Radial   bool // none across it
	Rotation bool // no rotation of the meridian
	Waves    bool // it holds waves around the axis as well, and allows none of their displacement around it; without it only the axisymmetric state is held
}

// A Mesh says how fine the mesh is.
type Mesh struct {
	Elements int // over the whole meridian, graded to √(R t) at the joints; 0: as many as the walls ask for

	halved int // how often every element is then halved
}

// A Structure is what a Model is made from.
type Structure struct {
	Segments []Segment
	Rings    []Ring
	Supports []Support // at least one holds the wall along the axis
	Mesh     Mesh
}

// faults returns the first reason why no model can be made from it.
func (s Structure) fault() error {
	if len(s.Segments) == 0 {
		return fmt.Errorf("a meridian without segments")
	}
	for i, g := range s.Segments {
		if err := g.fault(); err != nil {
			return fmt.Errorf("%s: %w", g.Name, err)
		}
		if i == 0 {
			continue
		}
		if err := s.joined(i); err != nil {
			return fmt.Errorf("%s to %s: %w", s.Segments[i-1].Name, g.Name, err)
		}
	}
	return s.heldAndRinged()
}

func (g Segment) fault() error {
	switch {
	case g.Curve == nil:
		return fmt.Errorf("no curve")
	case !(g.Thickness > 0) || math.IsInf(g.Thickness, 0):
		return fmt.Errorf("its wall is %.4g m, must be above 0", g.Thickness)
	case !(g.Modulus > 0) || math.IsInf(g.Modulus, 0):
		return fmt.Errorf("its elastic modulus is %.4g Pa, must be above 0", g.Modulus)
	case !(g.Poisson >= 0 && g.Poisson < 0.5):
		return fmt.Errorf("its Poisson ratio is %.4g, must be from 0 to below 0.5", g.Poisson)
	}
	return g.Curve.fault()
}

// joined checks the joint before segment i.
func (s Structure) joined(i int) error {
	a, b := s.Segments[i-1], s.Segments[i]
	end, start := a.Curve.at(1), b.Curve.at(0)
	gap := math.Hypot(end.r-start.r, end.z-start.z)
	most := rounding * (math.Abs(end.r) + end.j + start.j)
	if b.Linked {
		most += a.Thickness + b.Thickness
	}
	switch {
	case !(gap <= most) && b.Linked:
		return fmt.Errorf("the mid-lines stand %.4g m apart, more than the two walls together", gap)
	case !(gap <= most):
		return fmt.Errorf("the meridian has a gap of %.4g m", gap)
	case end.r <= rounding*a.Curve.at(0.5).r:
		return fmt.Errorf("the meridian meets the axis in between")
	case end.tr*start.tr+end.tz*start.tz < -1+1e-6:
		return fmt.Errorf("the meridian turns back on itself")
	}
	return nil
}

func (s Structure) heldAndRinged() error {
	held := false
	for _, p := range s.Supports {
		if p.Node < 0 || p.Node > len(s.Segments) {
			return fmt.Errorf("a support stands at node %d of %d", p.Node, len(s.Segments))
		}
		held = held || p.Axial
	}
	if !held {
		return fmt.Errorf("no support holds the wall along the axis")
	}
	for _, g := range s.Rings {
		switch {
		case g.Node < 0 || g.Node > len(s.Segments):
			return fmt.Errorf("a ring stands at node %d of %d", g.Node, len(s.Segments))
		case !(g.Area >= 0 && g.Radial >= 0 && g.Axial >= 0 && g.Torsion >= 0) || !finite(g.Area, g.Radial, g.Axial, g.Torsion, g.Offset.R, g.Offset.Z):
			return fmt.Errorf("a ring's section must be finite and not below 0")
		case !(g.Modulus > 0 && g.Poisson >= 0 && g.Poisson < 0.5) || math.IsInf(g.Modulus, 0):
			return fmt.Errorf("a ring's material is out of range")
		case !(s.node(g.Node).R+g.Offset.R > 0):
			return fmt.Errorf("a ring's centroid does not lie off the axis")
		}
	}
	return nil
}

// node returns the place of a node: the end of the segment before it.
func (s Structure) node(i int) Point {
	if i == 0 {
		f := s.Segments[0].Curve.at(0)
		return Point{R: f.r, Z: f.z}
	}
	f := s.Segments[i-1].Curve.at(1)
	return Point{R: f.r, Z: f.z}
}
