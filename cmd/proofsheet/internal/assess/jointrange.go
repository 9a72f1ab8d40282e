package assess

import (
	"errors"
	"math"
	"runtime"

	"proofsheet/loads"
	"proofsheet/shell/edge"
)

// An operatingState is one state of a case in which the tank is used.
type operatingState struct {
	state *loads.State
	c     *loadCase
}

// operate notes the states between which a joint's stress ranges, and what they
// have between them.
func (m *model) operate(cases []*loadCase) {
	lo, hi := m.in.Bounds()
	for _, c := range cases {
		for _, at := range c.moments() {
			for _, s := range at.states {
				m.operating = append(m.operating, operatingState{s, at})
				m.twoSided = m.twoSided || s.Sided()
				m.drawn = m.drawn || s.LowestPressure(lo, hi) < 0
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
	for _, o := range m.operating { // before it is forked
		_, _ = m.shellAt(shellKey{T: o.c.temperature}) // its error is each state's
	}
	// In stretches, each on a processor; what comes later widens what came before.
	chunks := make([]*model, 1)
	if len(m.operating) >= statesEach*runtime.GOMAXPROCS(0) {
		chunks = make([]*model, runtime.GOMAXPROCS(0))
	}
	m.shared(len(chunks), func(own *model, i int) {
		part := *own
		part.ranges, part.rings = map[string]*jointRange{}, map[string]*ringRange{}
		for name := range m.ranges {
			part.ranges[name] = &jointRange{}
		}
		for end := range m.rings {
			part.rings[end] = &ringRange{}
		}
		n := len(m.operating)
		for _, o := range m.operating[i*n/len(chunks) : (i+1)*n/len(chunks)] {
			part.enterRanges(o)
		}
		chunks[i] = &part
	})
	for _, part := range chunks {
		for name, r := range m.ranges {
			r.widen(part.ranges[name])
		}
		for end, r := range m.rings {
			r.widen(part.rings[end])
		}
	}
	for _, r := range m.ranges {
		r.settle()
	}
}

// statesEach is the number of states that a fork is worth: it forgets what it solves.
const statesEach = 16

// enterRanges enters one state at every joint and ring.
func (m *model) enterRanges(o operatingState) {
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

// widen enters what other states have made of a range.
func (r *jointRange) widen(o *jointRange) {
	switch {
	case r.err != nil:
	case o.err != nil:
		r.err = o.err
	case r.least[0] == nil:
		*r = *o
	case o.least[0] == nil:
	case len(r.least[0]) != len(o.least[0]):
		r.err = errors.New("the states of the numerical shell are not of one mesh")
	default:
		for b := range bends {
			for i := range r.least[b] {
				for k := range directions {
					if x := o.least[b][i][k]; x.measure < r.least[b][i][k].measure {
						r.least[b][i][k] = x
					}
					if x := o.most[b][i][k]; x.measure > r.most[b][i][k].measure {
						r.most[b][i][k] = x
					}
				}
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
	wide        []float64                    // the widest range at each station [Pa]
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
	for i, d := range m.reachesOf(at, st) {
		if !math.IsNaN(d.along) { // elsewhere the joint is not held
			r.enterAll(i, 0, st.stresses(i, load), o.c)
		}
	}
	for _, ref := range m.placesBent(at, st) {
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
	least, most := &r.least[bend][i], &r.most[bend][i]
	for _, s := range all {
		p, with := measured(s.pressure), [2]edge.Stress{s.most, s.least}
		loads := [2][directions]float64{measured(s.most), measured(s.least)}
		for k := range directions {
			// A share of the pressure and a load add up: the least of each makes the least of both.
			low, high := shares[0], shares[0]
			for _, f := range shares[1:] {
				if f*p[k] < low*p[k] {
					low = f
				}
				if f*p[k] > high*p[k] {
					high = f
				}
			}
			lowLoad, highLoad := 0, 0
			if loads[1][k] < loads[0][k] {
				lowLoad = 1
			}
			if loads[1][k] > loads[0][k] {
				highLoad = 1
			}
			if v := low*p[k] + loads[lowLoad][k]; v < least[k].measure {
				least[k] = extreme{v, plus(times(s.pressure, low), with[lowLoad])}
			}
			if v := high*p[k] + loads[highLoad][k]; v > most[k].measure {
				most[k] = extreme{v, plus(times(s.pressure, high), with[highLoad])}
			}
		}
	}
}

// measured returns the measure of a stress in each direction [Pa].
func measured(s edge.Stress) [directions]float64 {
	a, b := s.Meridional+s.MeridionalBending, s.Hoop+s.HoopBending
	c, d := s.Meridional-s.MeridionalBending, s.Hoop-s.HoopBending
	return [directions]float64{a, b, a - b, c, d, c - d}
}

// settle finds the widest range at every station once all states are entered.
func (r *jointRange) settle() {
	r.wide = make([]float64, len(r.least[0]))
	for i := range r.wide {
		for k := range directions {
			r.wide[i] = max(r.wide[i], r.most[0][i][k].measure-r.least[0][i][k].measure)
		}
	}
}

// widest returns the widest range at a station in any direction [Pa]; 0 without
// operating states.
func (r *jointRange) widest(i int) float64 {
	if r == nil || r.err != nil || i >= len(r.wide) {
		return 0
	}
	return r.wide[i]
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
