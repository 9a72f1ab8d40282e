package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// A spot is the stress at a place of a seam, without its misalignment [Pa].
type spot struct {
	z      float64 // station [m]
	across float64 // membrane, square to the seam
	along  float64 // along the seam, a face of it where that is more
	bend   float64 // bending of a junction across the seam
	unit   float64 // membrane square to the seam under uniform pressure, over that pressure [-]
}

// A misalignedSeam is a seam that is out of line or out of round, with what it
// is held to.
type misalignedSeam struct {
	id, title  string
	wall       float64
	e, ν       float64 // of the metal [Pa], [-]
	causes     func(across float64) ([]edge.Misalignment, error)
	limits     material.Limits
	efficiency float64
	err        error

	around   bool // round the tank: the axial stress is across
	reversed bool // some other state has the opposite sign
	extremes *seamExtremes
	seen     *span // of the stress across it over all operating states, where that is known by itself
}

// widened gives a seam what the other operating states do to it.
func (m *model) widened(x misalignedSeam) misalignedSeam {
	x.extremes = m.seamsSee
	if x.extremes == nil { // of a state that no case is in
		x.extremes = &seamExtremes{}
	}
	x.err = errors.Join(x.err, x.extremes.err)
	x.reversed = x.extremes.pressureLeast < 0 || x.around && x.extremes.axialLeast < 0
	return x
}

// checkMisaligned makes the checks of the cylinder's seams that are out of line or
// out of round, in one state of a case.
func (m *model) checkMisaligned(s *loads.State, c *loadCase) (out []check.Result) {
	if m.long != nil && (m.long.HiLo != nil || m.long.Peaking != nil) || m.t.Cylinder.OutOfRound != nil {
		x := m.widened(m.longSeam(s, c))
		out = append(out, x.worst(m.alongCylinder(s, c)))
	}
	if j := m.girth; j != nil && (j.HiLo != nil || j.Peaking != nil) {
		x := m.widened(m.courseSeam(j, c))
		out = append(out, x.worst(m.aroundCourses(s, c)))
	}
	return out
}

// checkWholeCylinder makes every check of the cylinder in one state of a case.
func (m *model) checkWholeCylinder(s *loads.State, c *loadCase) []check.Result {
	return append(append(m.checkCylinder(s, c), m.checkMisaligned(s, c)...), m.checkRings(s, c)...)
}

// checkMisalignedHead makes the same checks of a head. The hi-lo of its seam to the
// cylinder is among the places of the joint there.
func (m *model) checkMisalignedHead(h *headPart, s *loads.State, c *loadCase) (out []check.Result) {
	if j := h.segment; j != nil && (j.HiLo != nil || j.Peaking != nil) {
		x := m.widened(m.segmentSeam(h, c))
		out = append(out, x.worst(m.alongHead(h, s, c)))
	}
	if j := h.seam; j != nil && j.Peaking != nil && *j.Peaking > 0 {
		out = append(out, check.NotMade(h.name+"/misalignment", h.title+": joint "+j.Name+" out of line", errors.New(noGirthPeak)))
	}
	return out
}

// noGirthPeak is why the peaking of a seam that goes round the tank is not assessed.
const noGirthPeak = "peaking is known for seams along the shell only: round it, a kink also pulls on the hoop stress, for which no formula is at hand; give this seam a joint of its own, without peaking where none was measured"

// longSeam is the long seam of the cylinder, with its ovality; of a seamless
// cylinder the wall itself.
func (m *model) longSeam(s *loads.State, c *loadCase) misalignedSeam {
	seams, a, longErr, _ := m.cylinderSeams(c)
	x := misalignedSeam{id: "cylinder/misalignment", title: "Cylinder: long seam out of line or out of round", efficiency: 1, limits: a.Zone, wall: m.cyl.least}
	var elasticErr error
	x.e, x.ν, elasticErr = m.elastic(m.cyl, c.temperature)
	x.err = errors.Join(m.massErr, longErr, a.ZoneKnown, elasticErr)
	if m.long != nil {
		x.efficiency = seams.Long
	} else {
		x.title = "Cylinder: out of round"
	}
	p, pErr := m.cylinderCondition(s, c)
	x.err = errors.Join(x.err, pErr)
	x.causes = func(across float64) ([]edge.Misalignment, error) {
		out, err := m.alongCauses(m.long, x, across)
		if ΔD := m.t.Cylinder.OutOfRound; ΔD != nil {
			k, oval := edge.OutOfRound(*ΔD, 2*m.cyl.mid(), x.wall, p.Pressure, x.e, x.ν)
			err = errors.Join(err, oval)
			out = append(out, edge.Misalignment{Symbol: "k_o", Name: fmt.Sprintf("out of round by %.4g mm over diameters, rounded by the pressure", *ΔD*1e3), Ratio: k, Source: ovalSource})
		}
		return out, err
	}
	return x
}

// Where the ratios come from.
var (
	hiLoSource = check.Source{Doc: "butt joint with offset mid-lines, form of BS 7910 Annex D", Where: "recalled; equal walls computed", How: check.Memory}
	peakSource = check.Source{Doc: "beam-column, form of BS 7910 Annex D", Where: "recalled; computed", How: check.Memory}
	ovalSource = check.Source{Doc: "oval ring under pressure", Where: "form recalled; computed", How: check.Memory}
)

// alongCauses lists what is out of line at a seam along the shell, nil for none,
// under the membrane stress across it [Pa].
func (m *model) alongCauses(j *tank.Joint, x misalignedSeam, across float64) (out []edge.Misalignment, err error) {
	if j == nil {
		return nil, nil
	}
	if e := j.HiLo; e != nil {
		k, fault := edge.LongHiLo(x.wall, x.wall, *e, x.ν)
		err = fault
		out = append(out, edge.Misalignment{Symbol: "k_e", Name: fmt.Sprintf("hi-lo of %.4g mm", *e*1e3), Ratio: k, Source: hiLoSource})
	}
	if d := j.Peaking; d != nil && *d > 0 {
		l := given(j.PeakingLength)
		k, fault := edge.Peaking(*d, l, x.wall, across, x.e, x.ν)
		err = errors.Join(err, fault)
		out = append(out, edge.Misalignment{Symbol: "k_p", Name: fmt.Sprintf("peaking of %.4g mm over %.4g mm on each side", *d*1e3, l*1e3), Ratio: k, Source: peakSource})
	} else if d != nil {
		out = append(out, edge.Misalignment{Symbol: "k_p", Name: "no peaking", Source: peakSource})
	}
	return out, err
}

// courseSeam is the seam between courses, held in its zone.
func (m *model) courseSeam(j *tank.Joint, c *loadCase) misalignedSeam {
	_, a, longErr, girthErr := m.cylinderSeams(c)
	x := misalignedSeam{id: "cylinder/girth-misalignment", title: "Cylinder: girth seam out of line", around: true, limits: a.Zone, wall: m.cyl.least}
	var effErr, elasticErr error
	x.efficiency, effErr = m.girthEfficiency(j, c, 2*(m.cyl.radius+m.cyl.nominal))
	x.e, x.ν, elasticErr = m.elastic(m.cyl, c.temperature)
	x.err = errors.Join(m.massErr, longErr, girthErr, a.ZoneKnown, effErr, elasticErr)
	if given(j.Peaking) > 0 {
		x.err = errors.Join(errors.New(noGirthPeak), x.err)
	}
	x.causes = func(float64) ([]edge.Misalignment, error) {
		e := given(j.HiLo)
		wall := edge.Wall{Thickness: x.wall, ElasticModulus: x.e, Poisson: x.ν}
		free := math.Inf(1) // what a joint close by adds stands beside it
		k, err := edge.GirthHiLo(edge.Step{Radius: m.cyl.mid(), First: wall, Second: wall, Offset: e, FirstFree: free, SecondFree: free}, edge.Load{Axial: 1, AxialShell: 1})
		return []edge.Misalignment{{Symbol: "k_e", Name: fmt.Sprintf("hi-lo of %.4g mm", e*1e3), Ratio: k, Source: hiLoSource}}, err
	}
	return x
}

// segmentSeam is the seam inside a head, the hoop stress across it.
func (m *model) segmentSeam(h *headPart, c *loadCase) misalignedSeam {
	seams, a, err := m.headSeams(h, c)
	x := misalignedSeam{id: h.name + "/segment-misalignment", title: h.title + ": segment seam out of line", limits: a.Zone, efficiency: seams.Segment, wall: h.least}
	var elasticErr error
	x.e, x.ν, elasticErr = m.elastic(&h.part, c.temperature)
	x.err = errors.Join(m.massErr, h.refused, err, a.ZoneKnown, elasticErr)
	x.causes = func(across float64) ([]edge.Misalignment, error) { return m.alongCauses(h.segment, x, across) }
	return x
}

// spots are places of a seam, or why they are not known.
type spots struct {
	at  []spot
	err error
}

// alongCylinder returns the stress along the cylinder: hoop from the numerical
// shell, its bending near joints with it, both extremes of the axial stress.
func (m *model) alongCylinder(s *loads.State, c *loadCase) spots {
	st := m.shellOf(s, c)
	cond, err := m.cylinderCondition(s, c)
	if err = errors.Join(st.err, err); err != nil {
		return spots{err: err}
	}
	var out spots
	t := m.cyl.least
	for i, q := range st.pressure.Stations {
		if st.whole.segments[q.Segment] != m.cyl {
			continue
		}
		bend := math.Abs(stressAt(&q).MeridionalBending)
		for _, n := range [2]float64{cond.AxialMost + cond.LoadMost, cond.AxialLeast + cond.LoadLeast} {
			for _, face := range [2]float64{bend, -bend} {
				out.at = append(out.at, spot{z: q.Z, across: q.Membrane.Hoop, along: n/t + face, bend: math.Abs(stressAt(&q).HoopBending), unit: st.whole.hoopOfUnit(i)})
			}
		}
	}
	return out
}

// aroundCourses returns the stress at the seams between courses: both extremes
// of the axial force with the bending of a joint close by; where the station is
// not said, anywhere in the cylinder.
func (m *model) aroundCourses(s *loads.State, c *loadCase) spots {
	st := m.shellOf(s, c)
	cond, err := m.cylinderCondition(s, c)
	if err = errors.Join(st.err, err); err != nil {
		return spots{err: err}
	}
	var out spots
	t, all := m.cyl.least, st.pressure.Stations
	near := func(i int) bool { // a station on either side of a seam, the closest
		for _, z := range m.t.Cylinder.GirthStations {
			for _, k := range [2]int{i - 1, i + 1} {
				if k >= 0 && k < len(all) && (all[i].Z-z)*(all[k].Z-z) <= 0 {
					return true
				}
			}
		}
		return len(m.t.Cylinder.GirthStations) == 0
	}
	for i, q := range all {
		if st.whole.segments[q.Segment] != m.cyl || !near(i) {
			continue
		}
		x := stressAt(&q)
		for _, n := range [2]float64{cond.AxialMost + cond.LoadMost, cond.AxialLeast + cond.LoadLeast} {
			for _, face := range [2]float64{x.HoopBending, -x.HoopBending} {
				out.at = append(out.at, spot{z: q.Z, across: n / t, along: x.Hoop + face, bend: math.Abs(x.MeridionalBending)})
			}
		}
	}
	if out.at == nil {
		out.err = errors.New("no station of the numerical shell stands at the seam")
	}
	return out
}

// alongHead returns the stress along the segment seam of a head, line loads at
// both extremes.
func (m *model) alongHead(h *headPart, s *loads.State, c *loadCase) spots {
	st := m.shellOf(s, c)
	if st.err != nil {
		return spots{err: st.err}
	}
	load, err := m.jointLoad(m.seamJoint(h), s, c, st)
	if err != nil {
		return spots{err: err}
	}
	var out spots
	for i, q := range st.pressure.Stations {
		if st.whole.segments[q.Segment] != &h.part {
			continue
		}
		for _, p := range st.stresses(i, load) {
			for _, l := range [2]edge.Stress{p.most, p.least} {
				x := plus(p.pressure, l)
				for _, face := range [2]float64{x.MeridionalBending, -x.MeridionalBending} {
					out.at = append(out.at, spot{z: q.Z, across: x.Hoop, along: x.Meridional + face, bend: math.Abs(x.HoopBending), unit: st.whole.hoopOfUnit(i)})
				}
			}
		}
	}
	return out
}

// worst makes the check at the place where it is closest to its limit, or past it.
func (x misalignedSeam) worst(at spots) check.Result {
	if err := errors.Join(x.err, at.err); err != nil {
		return check.NotMade(x.id, x.title, err)
	}
	var seam edge.Seam
	most := -1.0
	for _, p := range at.at {
		causes, err := x.causes(p.across)
		if err != nil {
			return check.NotMade(x.id, x.title, err)
		}
		k := 0.0
		for _, c := range causes {
			k += c.Ratio
		}
		across := p.across + math.Copysign(x.opposed(p), p.across)
		b := k*math.Abs(across) + p.bend
		state := edge.Stress{Meridional: across, Hoop: p.along, MeridionalBending: b, HoopBending: x.ν * b}
		if use := math.Max(state.MeridionalSurface()/x.efficiency, state.Surface()); !(use <= most) {
			most, seam = use, edge.Seam{ID: x.id, Title: x.title, Station: p.z, Across: across, Along: p.along, Bending: p.bend,
				Causes: causes, Poisson: x.ν, Efficiency: x.efficiency, Limits: x.limits}
		}
		if math.IsNaN(most) {
			break
		}
	}
	r := seam.Check()
	if x.reversed {
		r.Note += "; the stress across the seam is its range to the opposite stress of another case"
	}
	return r
}

// opposed returns the largest stress of the other sign across the seam in any
// operating state [Pa], by which the range is wider than from zero.
func (x misalignedSeam) opposed(p spot) float64 {
	if x.seen != nil {
		if p.across < 0 {
			return x.seen.membraneMost
		}
		return -x.seen.membraneLeast
	}
	if x.around {
		if p.across < 0 {
			return x.extremes.axialMost
		}
		return -x.extremes.axialLeast
	}
	// what the pressure alone of another state does there: near no pressure at all a ratio
	// of two states says nothing
	a, b := p.unit*x.extremes.pressureLeast, p.unit*x.extremes.pressureMost
	if p.across < 0 {
		return math.Max(0, math.Max(a, b))
	}
	return -math.Min(0, math.Min(a, b))
}

// hoopOfUnit returns the hoop membrane stress at a station under uniform pressure, over
// that pressure [-].
func (w *wholeTank) hoopOfUnit(station int) float64 {
	return stressAt(&w.unit.Stations[station]).Hoop / unitOfLoad
}

// seamExtremes are what seams see over all operating states, zero among them.
type seamExtremes struct {
	pressureLeast, pressureMost float64               // across the wall [Pa]
	axialLeast, axialMost       float64               // stress in the cylinder [Pa]
	inserts                     map[string]insertSpan // by port
	err                         error
}

// seamExtremes finds them where a seam is out of line.
func (m *model) seamExtremes() *seamExtremes {
	x := &seamExtremes{inserts: m.insertSpans()}
	lo, hi := m.in.Bounds()
	for _, o := range m.operating {
		most, _ := o.state.HighestPressure(lo, hi)
		x.pressureLeast, x.pressureMost = math.Min(x.pressureLeast, o.state.LowestPressure(lo, hi)), math.Max(x.pressureMost, most)
		cond, err := m.cylinderCondition(o.state, o.c)
		x.err = errors.Join(x.err, err)
		n := [4]float64{cond.AxialMost + cond.LoadMost, cond.AxialLeast + cond.LoadLeast, cond.LoadLeast, cond.LoadMost}
		for i, v := range n {
			if i >= 2 && o.c.present { // the pressure is always there
				continue
			}
			x.axialMost, x.axialLeast = math.Max(x.axialMost, v/m.cyl.least), math.Min(x.axialLeast, v/m.cyl.least)
		}
	}
	return x
}

// outOfLine reports whether any seam of the tank is out of line or out of round, or
// joins a plate that is thicker than its wall.
func (m *model) outOfLine() bool {
	out := m.t.Cylinder.OutOfRound != nil
	for _, p := range m.ports {
		out = out || p.in.Insert != nil
	}
	for _, j := range m.t.Joint {
		out = out || j.HiLo != nil || j.Peaking != nil
	}
	return out
}
