package revolution

import "fmt"

// A Place is where on the wall a load is asked for.
type Place struct {
	Segment int     // from 0
	R       float64 // radius of the mid-surface [m]
	Z       float64 // along the axis [m]
}

// A Load acts on the mid-surface, per area or length of the undeformed one.
type Load struct {
	Pressure func(Place) float64 // across the wall, positive from inside [Pa]; nil: none
	Axial    func(Place) float64 // pull along the axis per area of wall, positive forward: its own weight [Pa]; nil: none
	Forces   []Force
	Dead     bool // the pressure keeps direction and area as the wall moves; linear states do not see it
}

// A Force acts on a node, evenly all round.
type Force struct {
	Node   int     // 0 is the beginning, i the joint before segment i, the last the end
	Axial  float64 // total, positive forward [N]
	Radial float64 // per length of circumference, positive outward [N/m]
	Moment float64 // per length of circumference, positive when it turns the outward normal aft at a cylinder, as β [N m/m]
}

// Uniform is the same pressure [Pa] on the whole wall.
func Uniform(pressure float64) Load {
	return Load{Pressure: func(Place) float64 { return pressure }}
}

// vector returns the work of the load on each unknown, per radian.
func (m *Model) vector(l Load) ([]float64, error) {
	f := make([]float64, m.n)
	for i := range m.elements {
		if err := m.spread(i, l, f); err != nil {
			return nil, err
		}
	}
	for i := range m.s.Segments {
		if err := m.step(i, l, f); err != nil {
			return nil, err
		}
	}
	for _, p := range l.Forces {
		if p.Node < 0 || p.Node >= len(m.nodes) {
			return nil, fmt.Errorf("a force acts at node %d of %d", p.Node, len(m.nodes)-1)
		}
		if !finite(p.Axial, p.Radial, p.Moment) {
			return nil, fmt.Errorf("a force at node %d is not finite", p.Node)
		}
		at, r := m.nodes[p.Node], m.s.node(p.Node).R
		f[at] += p.Radial * r
		f[at+1] += p.Axial / (2 * π)
		f[at+2] += p.Moment * r
	}
	return f, nil
}

// step adds the pressure on the band between two mid-lines out of line, which
// the rigid link carries to its node: without it a closed vessel would not
// balance.
func (m *Model) step(i int, l Load, f []float64) error {
	a := m.arms[i]
	if a == (arm{}) || l.Pressure == nil {
		return nil
	}
	p, at := m.s.node(i), m.nodes[i]
	q := l.Pressure(Place{Segment: i, R: p.R + a.r/2, Z: p.Z + a.z/2})
	if !finite(q) {
		return fmt.Errorf("%s: the pressure at z = %.4g m is not finite", m.s.Segments[i].Name, p.Z)
	}
	fr, fz := q*a.z*(p.R+a.r/2), -q*a.r*(p.R+a.r/2)
	f[at] += fr
	f[at+1] += fz
	f[at+2] += fr*a.z/2 - fz*a.r/2
	return nil
}

// spread adds the pressure and the pull on element i to f.
func (m *Model) spread(i int, l Load, f []float64) error {
	e, sh := &m.elements[i], &m.shapes[i]
	f = f[e.dof : e.dof+span]
	for g := range gauss {
		p := &m.points[i*gauss+g]
		at := Place{Segment: e.segment, R: p.r, Z: p.z}
		var pressure, pull float64
		if l.Pressure != nil {
			pressure = l.Pressure(at)
		}
		if l.Axial != nil {
			pull = l.Axial(at)
		}
		if !finite(pressure, pull) {
			return fmt.Errorf("%s: the load at z = %.4g m is not finite", m.s.Segments[e.segment].Name, p.z)
		}
		fr, fz := p.w*pressure*p.tz, p.w*(pull-pressure*p.tr)
		if fr == 0 && fz == 0 {
			continue
		}
		for a := range span {
			r, z := sh.value(a, &bases[g])
			f[a] += fr*r + fz*z
		}
	}
	return nil
}
