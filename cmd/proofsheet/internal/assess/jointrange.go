package assess

import (
	"errors"
	"math"

	"proofsheet/loads"
	"proofsheet/shell/edge"
)

// An operatingState is one state of a case in which the tank is used.
type operatingState struct {
	state *loads.State
	c     *loadCase
}

// operate notes the states between which a joint's stress ranges.
func (m *model) operate(cases []*loadCase) {
	for _, c := range cases {
		for _, at := range c.moments() {
			for _, s := range at.states {
				m.operating = append(m.operating, operatingState{s, at})
				m.twoSided = m.twoSided || s.Sided()
			}
		}
	}
}

// lookAtRanges finds, once, the extremes of every joint, ring and misaligned seam
// over the states noted.
func (m *model) lookAtRanges() {
	if m.ranges != nil {
		return
	}
	if m.outOfLine() {
		m.seamsSee = m.seamExtremes()
	}
	m.ranges, m.rings = map[string]*jointRange{}, map[string]*ringRange{}
	if len(m.operating) < 2 {
		return
	}
	for _, h := range m.ends() {
		if h.bolted() {
			continue
		}
		m.ranges[h.name+"/junction"] = &jointRange{}
		if h.in.Ring != nil {
			m.rings[h.end] = &ringRange{}
		}
		if h.in.Tip != nil {
			m.ranges[h.name+"/tip-junction"] = &jointRange{}
		}
	}
	for _, o := range m.operating {
		st := m.shellOf(o.state, o.c)
		for _, h := range m.ends() {
			if h.bolted() {
				continue
			}
			m.ranges[h.name+"/junction"].add(m, m.seamJoint(h), o, st)
			if r := m.rings[h.end]; r != nil {
				r.enter(m, h, o)
			}
			if h.in.Tip != nil {
				m.ranges[h.name+"/tip-junction"].add(m, m.tipJoint(h), o, st)
			}
		}
	}
}

// directions is the number of linear measures of a plane stress on both faces of
// which a range is the largest: on each face both stresses and their difference.
// Principal stress and Tresca are the largest of these; von Mises of two
// stresses of one sign never exceeds the larger one.
const directions = 6

// A jointRange holds, at every station, the states that are extreme in some
// direction, least and most: no other state makes a larger range.
type jointRange struct {
	least, most [bends][][directions]extreme // without the bending of a hi-lo, and with it to either side
	err         error
}

// An extreme is a stress with its measure in one direction [Pa].
type extreme struct {
	measure float64
	stress  edge.Stress
}

// add enters one state.
func (r *jointRange) add(m *model, at shellJoint, o operatingState, st *shellState) {
	if r.err != nil {
		return
	}
	if r.err = st.err; r.err != nil {
		return
	}
	load, err := m.jointLoad(at, o.state, o.c, st)
	if r.err = err; err != nil {
		return
	}
	if r.least[0] == nil {
		for b := range bends {
			r.least[b], r.most[b] = make([][directions]extreme, len(st.pressure.Stations)), make([][directions]extreme, len(st.pressure.Stations))
		}
	}
	if len(st.pressure.Stations) != len(r.least[0]) {
		r.err = errors.New("the states of the numerical shell are not of one mesh")
		return
	}
	for i := range st.pressure.Stations {
		r.enterAll(i, 0, st.stresses(i, load), o.c)
	}
	for _, ref := range st.placesBent(at) {
		r.enterAll(ref.index, 1+(1-ref.bend)/2, ref.bent(st.stresses(ref.index, load)), o.c)
	}
}

// bends is the number of ways in which a station at a joint may bend: as it is,
// and with a hi-lo to either side.
const bends = 3

// enterAll enters what a station sees in one state: the pressure or the smallest
// that may stand beside each line load. No stress at all is always among the
// states of a joint, and is where every extreme begins.
func (r *jointRange) enterAll(i, bend int, all []stationStress, c *loadCase) {
	shares := []float64{1, c.pressureLeast(), 0}
	if c.present {
		shares = shares[:2]
	}
	for _, s := range all {
		for _, share := range shares {
			for _, l := range [2]edge.Stress{s.most, s.least} {
				r.enter(i, bend, plus(times(s.pressure, share), l))
			}
		}
	}
}

// widest returns the widest range at a station in any direction [Pa]; 0 without
// operating states.
func (r *jointRange) widest(i int) (most float64) {
	if r == nil || r.err != nil || r.least[0] == nil {
		return 0
	}
	for k := range directions {
		most = math.Max(most, r.most[0][i][k].measure-r.least[0][i][k].measure)
	}
	return most
}

// enter compares one stress at a station with the extremes so far.
func (r *jointRange) enter(i, bend int, s edge.Stress) {
	least, most := &r.least[bend][i], &r.most[bend][i]
	in, out := [2]float64{s.Meridional + s.MeridionalBending, s.Hoop + s.HoopBending}, [2]float64{s.Meridional - s.MeridionalBending, s.Hoop - s.HoopBending}
	for k, v := range [directions]float64{in[0], in[1], in[0] - in[1], out[0], out[1], out[0] - out[1]} {
		if v < least[k].measure {
			least[k] = extreme{v, s}
		}
		if v > most[k].measure {
			most[k] = extreme{v, s}
		}
	}
}

// extremes returns them at the places of a joint, in the order of [answer].
func (r *jointRange) extremes(l jointLimit, at []stationRef, twice bool) (out [][]edge.Stress) {
	sides := 1
	if twice {
		sides = 2
	}
	for _, ref := range at {
		bend := 0
		if ref.bend != 0 {
			bend = 1 + (1-ref.bend)/2
		}
		there := make([]edge.Stress, 0, 4*directions)
		for k := range directions {
			there = append(there, r.least[bend][ref.index][k].stress, r.most[bend][ref.index][k].stress)
		}
		along := l.along[ref.side] < 1
		if along {
			for _, s := range there {
				there = append(there, turned(s))
			}
		}
		for range sides {
			out = append(out, there[:2*directions:2*directions])
			if along {
				out = append(out, there[2*directions:])
			}
		}
	}
	return out
}
