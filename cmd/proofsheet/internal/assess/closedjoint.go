package assess

import (
	"errors"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// closedJoint returns the closed form of a joint: both walls there.
func (m *model) closedJoint(at shellJoint, s *loads.State, c *loadCase, l jointLimit) edge.Answer {
	out := edge.Answer{Source: check.Source{Doc: "edge theory of two walls", Where: "shell/edge, package comment", How: check.Computed}}
	j, err := m.closedForm(at, s, c)
	if err != nil {
		out.Err = err
		return out
	}
	out.Places = []edge.Place{
		{Where: at.near + " at the joint", Pressure: j.Shell, Limits: l.zone[0], Efficiency: l.girth},
		{Where: at.far + " at the joint", Pressure: j.Head, Limits: l.zone[1], Efficiency: l.girth},
	}
	return out
}

// closedForm solves the edge theory of a joint.
func (m *model) closedForm(at shellJoint, s *loads.State, c *loadCase) (edge.Joint, error) {
	h := at.h
	e, ν, err := m.elastic(&h.part, c.temperature)
	if err != nil {
		return edge.Joint{}, err
	}
	wall := heads.Wall{Thickness: h.least, Corrosion: h.corrosion}
	if at.tip {
		return m.closedTip(h, s, c, wall, e, ν)
	}
	e1, ν1, err := m.elastic(m.cyl, c.temperature)
	if err != nil {
		return edge.Joint{}, err
	}
	if h.in.SeamThickness != nil {
		return edge.Joint{}, errors.New("none for a stiffened wall")
	}
	R, L := m.cyl.mid(), m.t.Cylinder.Length
	most, least, _, _, err := s.WallForce(math.Min(math.Max(at.z, hair), L-hair), m.body(c))
	if err != nil {
		return edge.Joint{}, err
	}
	shell := edge.Wall{Thickness: m.cyl.least, ElasticModulus: e1, Poisson: ν1}
	load := edge.Load{Pressure: m.worstAt(s, at.z), Axial: m.headLoading(h, s, c).Force(0, R) / (2 * math.Pi * R), AxialShell: (most + least) / 2}
	if h.in.Shape == "flat" && h.in.StraightFlange == 0 {
		f, err := edge.Flat{Radius: R, Shell: shell, Plate: edge.Wall{Thickness: h.least, ElasticModulus: e, Poisson: ν}, ShellFree: L}.Solve(load.Pressure)
		return edge.Joint{Shell: f.Shell, Head: f.Rim}, err
	}
	n := heads.Neighbour{Wall: shell, Radius: R, Free: L}
	if h.in.Ring != nil {
		n.RingArea, n.RingModulus = h.in.Ring.Width*h.in.Ring.Thickness, e1
	}
	return heads.SeamJoint(h.nominal0, wall, e, ν, n, load)
}

// closedTip solves the small end of a cone at the tube or neck at its tip.
func (m *model) closedTip(h *headPart, s *loads.State, c *loadCase, wall heads.Wall, e, ν float64) (edge.Joint, error) {
	if h.in.Tip.Close == "plate" {
		return edge.Joint{}, errors.New("none for a plate across a cone")
	}
	st := m.shellOf(s, c)
	if st.err != nil {
		return edge.Joint{}, st.err
	}
	k := 0
	if h.end == "forward" {
		k = st.whole.ends - 1
	}
	tube := st.whole.segments[k]
	R := st.whole.tube[h.end]
	e1, ν1, err := m.elastic(tube, c.temperature)
	if err != nil {
		return edge.Joint{}, err
	}
	p := m.worstAt(s, m.station(h, h.nominal0.Depth()))
	return heads.TipJoint(h.nominal0, wall, e, ν, heads.Neighbour{Wall: edge.Wall{Thickness: tube.least, ElasticModulus: e1, Poisson: ν1},
		Radius: R, Free: math.Inf(1)}, edge.Gas(p, R))
}
