package assess

import (
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/shell/revolution"
)

// shellQuantities returns what the numerical shell gives in each case: of its
// states, and of the instants of a history, the extreme.
func (r *run) shellQuantities() (out []report.NamedQuantity) {
	found := make([]shellExtremes, len(r.cases))
	r.shared(len(r.cases), func(m *model, i int) { found[i] = m.shellExtremes(r.cases[i]) })
	for i, c := range r.cases {
		x := found[i]
		add := func(key string, v float64, unit string) {
			out = append(out, report.NamedQuantity{Key: key + "@" + c.name, Value: v, Unit: unit, Note: x.note})
		}
		add("shell.peak_equivalent", x.equivalent, "Pa")
		add("shell.peak_meridional", x.meridional, "Pa")
		add("shell.least_hoop_membrane", x.hoop, "Pa")
		for _, h := range r.ends() {
			d, ok := x.displacement[h.end]
			if !ok { // the end of a cylinder that a head is bolted to
				d = math.NaN()
			}
			add(h.name+".junction_displacement", d, "m")
		}
	}
	return append(out, r.buckles()...)
}

// shellExtremes are the extremes of one case.
type shellExtremes struct {
	equivalent, meridional, hoop float64            // [Pa]
	displacement                 map[string]float64 // radial, outward, of each joint [m]
	note                         string
}

// shellExtremes finds them over the whole tank.
func (m *model) shellExtremes(c *loadCase) shellExtremes {
	x := shellExtremes{equivalent: math.Inf(-1), meridional: math.Inf(-1), hoop: math.Inf(1), displacement: map[string]float64{}}
	for _, at := range c.moments() {
		for _, s := range at.states {
			st := m.shellOf(s, at)
			if st.err != nil {
				nan := math.NaN()
				return shellExtremes{nan, nan, nan, map[string]float64{"aft": nan, "forward": nan}, st.err.Error()}
			}
			for i := range st.pressure.Stations {
				q := &st.pressure.Stations[i]
				x.equivalent = max(x.equivalent, max(q.Inside.Equivalent(), q.Outside.Equivalent()))
				x.meridional = max(x.meridional, max(q.Inside.Meridional, q.Outside.Meridional))
				x.hoop = min(x.hoop, q.Membrane.Hoop)
				if i == 0 || st.pressure.Stations[i-1].Segment == q.Segment {
					continue
				}
				for _, end := range []string{"aft", "forward"} {
					if d, ok := x.displacement[end]; q.Segment == st.whole.joint[end] && (!ok || math.Abs(q.Radial) > math.Abs(d)) {
						x.displacement[end] = q.Radial
					}
				}
			}
		}
	}
	x.note = "numerical shell, linear, clear of supports, pressure and liquid; line loads not in it"
	return x
}

// meshError solves the state of the first case on elements half as long, and
// returns the greatest difference of any stress over the greatest one [-].
func (r *run) meshError() (float64, error) {
	c := r.cases[0]
	s := c.states[0]
	st := r.shellOf(s, c)
	if st.err != nil {
		return math.NaN(), st.err
	}
	e, err := st.whole.model.MeshError(st.pressure, r.shellPressure(st.whole, s))
	return e.Stress, err
}

// shellNote says how far the numerical shell can be trusted, and what stiffening
// the linear answer leaves out.
func (r *run) shellNote() string {
	e, err := r.meshError()
	if err != nil {
		return "the numerical shell has no answer: " + err.Error()
	}
	st := r.shellOf(r.cases[0].states[0], r.cases[0])
	return fmt.Sprintf("numerical shell: %d elements, residual %.1g, axial balance %.1g; with elements half as long no stress changes by more than %.2g of the largest",
		st.whole.model.Elements(), st.pressure.Residual, st.pressure.Balance, e) + r.stiffening()
}

// meridianCharts draw the stress along the wall, aft tip to forward tip, in meop
// and in the case of the governing joint, the joints marked by upright strokes.
func (r *run) meridianCharts() (out []report.Chart) {
	cases := []*loadCase{r.cases[0]}
	if c := r.governingJoint(); c != nil && c != cases[0] {
		cases = append(cases, c)
	}
	for _, c := range cases {
		s := c.states[0]
		st := r.shellOf(s, c)
		if st.err != nil {
			continue
		}
		out = append(out, st.chart(c.name))
	}
	return out
}

// governingJoint returns the case in which a joint has its least margin.
func (r *run) governingJoint() *loadCase {
	least, name := math.Inf(1), ""
	for _, k := range r.checks {
		if (k.ID == "head.aft/junction" || k.ID == "head.forward/junction") && k.Case != "proof" && k.Margin() < least {
			least, name = k.Margin(), k.Case
		}
	}
	for _, c := range r.cases {
		if c.name == name && c.instants == nil {
			return c
		}
	}
	return nil
}

// chart draws one state.
func (st *shellState) chart(name string) report.Chart {
	c := report.Chart{Name: "meridian-" + name, Title: "Stress along the meridian, numerical shell, case " + name,
		X: report.Axis{Name: "along the wall from the aft tip", Unit: "m"}, Y: report.Axis{Name: "stress", Unit: "Pa"}}
	lines := []struct {
		name string
		of   func(revolution.Station) float64 // [Pa]
	}{
		{"meridional, inside", func(s revolution.Station) float64 { return s.Inside.Meridional }},
		{"meridional, outside", func(s revolution.Station) float64 { return s.Outside.Meridional }},
		{"hoop membrane", func(s revolution.Station) float64 { return s.Membrane.Hoop }},
	}
	all := st.pressure.Stations
	arc, total := make([]float64, len(all)), 0.0
	least, most := 0.0, 0.0
	for i := range all {
		if i > 0 && all[i].Segment == all[i-1].Segment {
			total += all[i].Arc - all[i-1].Arc
		}
		arc[i] = total
	}
	for _, l := range lines {
		s := report.Series{Name: l.name, X: arc}
		for _, q := range all {
			v := l.of(q)
			s.Y = append(s.Y, v)
			least, most = min(least, v), max(most, v)
		}
		c.Series = append(c.Series, s)
	}
	joints := report.Series{Name: "joint"}
	for i := 1; i < len(all); i++ {
		if all[i].Segment != all[i-1].Segment {
			joints.X, joints.Y = append(joints.X, arc[i], arc[i], arc[i]), append(joints.Y, least, most, math.NaN())
		}
	}
	c.Series = append(c.Series, joints)
	return c
}

// proofJunctions holds every joint at the highest pressure of the test.
func (m *model) proofJunctions(t *proofTest) (out []check.Result) {
	c, s, err := m.proofState(t)
	for _, h := range m.ends() {
		if h.bolted() {
			j := m.seamJoint(h)
			out = append(out, check.NotApplicableTo(j.id, j.title+", at proof", boltedJunction))
			continue
		}
		joints := []shellJoint{m.seamJoint(h)}
		if h.in.Tip != nil {
			joints = append(joints, m.tipJoint(h))
		}
		for _, at := range joints {
			if err != nil {
				out = append(out, check.NotMade(at.id, at.title+", at proof", err))
				continue
			}
			l := m.jointLimits(h, c)
			if at.tip {
				l = m.tipLimits(h, c)
			}
			l.atProof(t)
			j := m.junction(at, s, c, l)
			j.Title, j.Others, j.Extremes = at.title+", at proof", nil, nil
			out = append(out, j.CheckProof())
		}
	}
	return out
}

// atProof drops the efficiencies where the strictest rule at proof has none.
func (l *jointLimit) atProof(t *proofTest) {
	ignore := true
	for _, r := range t.rules {
		ignore = ignore && r.IgnoreEfficiency
	}
	if ignore {
		l.girth, l.course, l.along = 1, 1, [2]float64{1, 1}
	}
}
