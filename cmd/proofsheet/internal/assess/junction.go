package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// reach is how far the disturbance of a joint goes along a wall, in √(R t) [-].
const reach = 2.5

// shellSource is the source of every number of the numerical shell.
var shellSource = check.Source{Doc: "numerical shell of revolution", Where: "shell/revolution, package comment", How: check.Computed}

// A shellJoint is a joint of two walls in the whole tank.
type shellJoint struct {
	h         *headPart
	tip       bool // at the head's tip, else at its seam
	id, title string
	near, far string  // the walls: "cylinder" and "head"; at a tip what closes it, and "cone"
	z         float64 // [m]
}

// seamJoint is the joint of a head to the cylinder.
func (m *model) seamJoint(h *headPart) shellJoint {
	j := shellJoint{h: h, id: h.name + "/junction", title: h.title + ": stress at and near its joint to the cylinder", near: "cylinder", far: "head"}
	if h.end == "forward" {
		j.z = m.t.Cylinder.Length
	}
	return j
}

// tipJoint is the joint of a truncated cone to what closes it.
func (m *model) tipJoint(h *headPart) shellJoint {
	return shellJoint{h: h, tip: true, id: h.name + "/tip-junction", title: h.title + ": stress at and near its tip",
		near: map[string]string{"plate": "plate", "port": "tube", "neck": "neck"}[h.in.Tip.Close], far: "cone", z: m.station(h, h.nominal0.Depth())}
}

// boltedJunction says why no stress is looked for where a head is bolted on.
const boltedJunction = "the head is bolted on: no wall goes through; bolts, seal and flange are judged by themselves"

// checkJunctions makes the checks of the joints of a head in one state of a
// case: the numerical shell governs, the closed form stands beside it.
func (m *model) checkJunctions(h *headPart, s *loads.State, c *loadCase) []check.Result {
	if h.bolted() {
		j := m.seamJoint(h)
		return []check.Result{check.NotApplicableTo(j.id, j.title, boltedJunction)}
	}
	out := []check.Result{m.junction(m.seamJoint(h), s, c, m.jointLimits(h, c)).Check()}
	if h.in.Tip != nil {
		j := m.tipJoint(h)
		out = append(out, m.junction(j, s, c, m.tipLimits(h, c)).Check())
	}
	return out
}

// junction gathers what a joint carries in one state, against limits.
func (m *model) junction(at shellJoint, s *loads.State, c *loadCase, l jointLimit) edge.Junction {
	j := edge.Junction{ID: at.id, Title: at.title, Sharp: at.tip || sharp(at.h), PressureLeast: c.pressureLeast(), Present: c.present, Pressure: m.worstAt(s, at.z)}
	j.Numerical.Source, j.Closed.Err = shellSource, errors.New("none was sought")
	st := m.shellOf(s, c)
	j.Numerical.Err = errors.Join(l.err, st.err)
	if !at.tip {
		j.Numerical.Err = errors.Join(j.Numerical.Err, m.narrow(at.h))
	}
	if j.Numerical.Err != nil {
		return j
	}
	load, err := m.jointLoad(at, s, c, st)
	if err != nil {
		j.Numerical.Err = err
		return j
	}
	if j.Slender = m.slender(at, st); !(j.Slender >= thickest) {
		j.Numerical.Err = fmt.Errorf("radius over wall is %.2g: under %g it is no shell", j.Slender, thickest)
		return j
	}
	refs := m.placesOf(at, st, load, l)
	j.Numerical.Places = answer(l, refs, func(ref stationRef) []stationStress { return ref.bent(st.stresses(ref.index, load)) })
	switch r := m.ranges[at.id]; {
	case r == nil:
	case r.err != nil:
		j.Others = []edge.Answer{{Source: shellSource, Err: r.err}}
	default:
		j.Extremes = r.extremes(l, refs, load.twice)
	}
	j.Closed = m.closedJoint(at, s, c, l)
	return j
}

// alike refuses a head of another alloy than the cylinder's where they would grow
// apart: away from room temperature the stress that this gives their joint is not
// in the numerical shell. Up to a hundredth of the yield is let pass.
func (m *model) alike(h *headPart, T float64) error {
	return m.growAlike(h.name, h.material, h.nominal, T)
}

// growAlike refuses a metal that grows by another measure than the cylinder's with what
// is welded to it, by its name, material and wall [m].
func (m *model) growAlike(name, of string, wall, T float64) error {
	a, b := m.metals.at(m.cyl.material, "", m.cyl.nominal, T).parent, m.metals.at(of, "", wall, T).parent
	if m.cyl.material == of || T == roomTemperature {
		return nil
	}
	σ := math.Max(a.ElasticModulus.Value, b.ElasticModulus.Value) * math.Abs((a.Expansion.Value-b.Expansion.Value)*(T-roomTemperature))
	if σ <= 0.01*math.Min(a.Yield.Value, b.Yield.Value) {
		return nil
	}
	return fmt.Errorf("%s of %s and cylinder of %s do not grow alike: up to %.3g MPa at their joint at this temperature, which the numerical shell does not hold", name, of, m.cyl.material, σ/1e6)
}

// slender returns the mid-wall radius at a joint over the thinner wall there [-].
func (m *model) slender(at shellJoint, st *shellState) float64 {
	if !at.tip {
		return m.cyl.mid() / math.Min(m.cyl.least, at.h.least)
	}
	node := st.whole.nodeOf(at)
	for _, s := range st.pressure.Stations {
		if s.Segment == node {
			return s.R / math.Min(st.whole.segments[node-1].least, st.whole.segments[node].least)
		}
	}
	return math.NaN()
}

// jointLoad returns what line loads add at a joint; at a tip nothing.
func (m *model) jointLoad(at shellJoint, s *loads.State, c *loadCase, st *shellState) (seamLoad, error) {
	if at.tip {
		if p := m.portNamed(at.h.in.Tip.Port); at.h.in.Tip.Close == "port" && p != nil && p.in.Load != nil {
			return seamLoad{}, fmt.Errorf("the load of port %s on the tip is not in the numerical shell", p.in.Name)
		}
		return seamLoad{}, nil
	}
	return m.seamLoadAt(at.h, s, c, st)
}

// answer returns what the numerical shell gives at the places, from the stress
// at each station. A wall with a weld along it is also held across that.
func answer(l jointLimit, at []stationRef, stress func(ref stationRef) []stationStress) []edge.Place {
	out := make([]edge.Place, 0, 2*len(at))
	for _, ref := range at {
		limits := l.parent[ref.side]
		if ref.zone {
			limits = l.zone[ref.side]
		}
		e := 1.0
		switch {
		case ref.course:
			e = l.course
		case ref.across:
			e = l.girth
		}
		for n, s := range stress(ref) {
			where := ref.where
			if n == 1 {
				where += ", other side"
			}
			out = append(out, edge.Place{Where: where, Pressure: s.pressure, LoadMost: s.most, LoadLeast: s.least, Limits: limits, Efficiency: e})
			if along := l.along[ref.side]; along < 1 { // the hoop stress crosses that weld: both stresses change places
				out = append(out, edge.Place{Where: where + ", across the weld along the wall", Pressure: turned(s.pressure), LoadMost: turned(s.most),
					LoadLeast: turned(s.least), Limits: l.zone[ref.side], Efficiency: along})
			}
		}
	}
	return out
}

// turned returns a stress with both directions exchanged.
func turned(s edge.Stress) edge.Stress {
	return edge.Stress{Meridional: s.Hoop, Hoop: s.Meridional, MeridionalBending: s.HoopBending, HoopBending: s.MeridionalBending}
}
