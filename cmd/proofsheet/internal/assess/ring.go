package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
	"proofsheet/shell/revolution"
)

// narrow refuses a ring that does not move as one bar. The numerical shell turns
// its cross-section as a rigid whole at the joint; metal farther from the joint than
// √(R t) does not go with it, and a ring thinner than the wall bends with that wall
// over half as far. Without this a thin sheet wrapped far along the tank would stand
// for a stiff hoop at the joint. Limits by common practice, beside the reach of
// metal that ASME VIII-1 1-5 counts.
func (m *model) narrow(h *headPart) error {
	if h.in.Ring == nil {
		return nil
	}
	reach := math.Sqrt(m.cyl.mid() * m.cyl.least)
	most := 2 * reach
	if h.in.Ring.Thickness < m.cyl.least {
		most = reach
	}
	if h.in.Ring.Width > most {
		return fmt.Errorf("the ring of %s, %.4g mm wide and %.4g mm thick, does not move as one bar: up to %.4g mm wide it would; draw a longer stiffening as seam_thickness", h.name, h.in.Ring.Width*1e3, h.in.Ring.Thickness*1e3, most*1e3)
	}
	return nil
}

// A ringRange is the stress of a ring at its extremes over the operating states.
type ringRange struct {
	least, most edge.Stress
	err         error
}

// checkRing holds the ring of a stiffened joint as a place of that joint: its hoop
// stress where the joint moves outwards, E w/R, and what the turning of the joint
// adds at its edges. Its own splice is taken as a weld that nobody examined.
func (m *model) checkRing(h *headPart, s *loads.State, c *loadCase) check.Result {
	j, err := m.ringOf(h, s, c)
	if err != nil {
		return check.NotMade(j.ID, j.Title, err)
	}
	if r := m.rings[h.end]; r != nil {
		if r.err != nil {
			return check.NotMade(j.ID, j.Title, r.err)
		}
		for _, x := range [2]edge.Stress{r.least, r.most} {
			other := edge.Answer{Source: shellSource}
			for _, p := range j.Numerical.Places {
				p.Pressure, p.LoadMost, p.LoadLeast = x, edge.Stress{}, edge.Stress{}
				other.Places = append(other.Places, p)
			}
			j.Others = append(j.Others, other)
		}
	}
	return j.Check()
}

// unsplicedRing is the efficiency of the splice of a ring, of which nothing is
// stated [-]: a double butt that nobody examined.
const unsplicedRing = 0.70

// ringOf returns the ring as a joint with one place. The hoop stress stands as the
// one across the ring's splice.
func (m *model) ringOf(h *headPart, s *loads.State, c *loadCase) (edge.Junction, error) {
	j := edge.Junction{ID: h.name + "/ring", Title: h.title + ": ring at its joint to the cylinder", PressureLeast: c.pressureLeast(), Present: c.present,
		Pressure: m.worstAt(s, m.seamJoint(h).z)}
	j.Numerical.Source, j.Closed.Err = shellSource, errors.New("none was sought")
	l := m.jointLimits(h, c)
	st := m.shellOf(s, c)
	if err := errors.Join(l.err, st.err, m.narrow(h)); err != nil {
		return j, err
	}
	load, err := m.seamLoadAt(h, s, c, st)
	if err != nil {
		return j, err
	}
	e, _, err := m.elastic(m.cyl, c.temperature)
	if err != nil {
		return j, err
	}
	limits, err := l.parent[0].Lower(l.zone[0])
	if err != nil {
		return j, err
	}
	for n, x := range st.ring(h, e, load) {
		j.Numerical.Places = append(j.Numerical.Places, edge.Place{Where: [2]string{"ring", "ring, other side"}[n], Pressure: x.pressure, LoadMost: x.most, LoadLeast: x.least, Limits: limits, Efficiency: unsplicedRing})
	}
	return j, nil
}

// ring returns the stress of a head's ring, Young's modulus e [Pa], by origin.
func (st *shellState) ring(h *headPart, e float64, load seamLoad) []stationStress {
	node, i := st.whole.joint[h.end], 0
	for st.pressure.Stations[i].Segment < node {
		i++
	}
	of := func(q revolution.Station) edge.Stress {
		x := edge.RingStress(e, q.Radial, q.R)
		x.HoopBending = e * math.Abs(q.Rotation) * h.in.Ring.Width / 2 / q.R
		return turned(x)
	}
	p, u := of(st.pressure.Stations[i]), of(st.pull.Stations[i])
	most, least := times(u, load.loadMost), times(u, load.loadLeast)
	if !load.twice {
		return []stationStress{{p, most, least}}
	}
	return []stationStress{{plus(p, times(u, load.bendMost)), most, least}, {plus(p, times(u, load.bendLeast)), most, least}}
}

// enter adds one state to the range of a ring.
func (r *ringRange) enter(m *model, h *headPart, o operatingState) {
	if r.err != nil {
		return
	}
	var j edge.Junction
	if j, r.err = m.ringOf(h, o.state, o.c); r.err != nil {
		return
	}
	shares := []float64{1, o.c.pressureLeast(), 0}
	if o.c.present {
		shares = shares[:2]
	}
	for _, p := range j.Numerical.Places {
		for _, share := range shares {
			for _, l := range [2]edge.Stress{p.LoadMost, p.LoadLeast} {
				r.see(plus(times(p.Pressure, share), l))
			}
		}
	}
}

// see widens the range by one stress.
func (r *ringRange) see(x edge.Stress) {
	bend := math.Abs(x.MeridionalBending)
	if x.Meridional-bend < r.least.Meridional-math.Abs(r.least.MeridionalBending) {
		r.least = x
	}
	if x.Meridional+bend > r.most.Meridional+math.Abs(r.most.MeridionalBending) {
		r.most = x
	}
}

// widen enters what other states have made of a range.
func (r *ringRange) widen(o *ringRange) {
	if r.err == nil {
		r.err = o.err
	}
	r.see(o.least)
	r.see(o.most)
}
