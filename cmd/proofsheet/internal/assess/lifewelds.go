package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/shell/edge"
	"proofsheet/shell/life"
	"proofsheet/shell/revolution"
)

// lifeWelds lists every weld of the shell.
func (m *model) lifeWelds() (out []lifeWeld) {
	if m.long != nil {
		out = append(out, m.lifeSeam("long seam", m.long, true, m.everywhere(m.cyl, hoop), m.cyl))
	}
	if m.girth != nil {
		out = append(out, m.lifeSeam("girth seam", m.girth, false, m.betweenCourses(), m.cyl))
	}
	out = append(out, m.lifeRings()...)
	for _, h := range m.ends() {
		if h.seam != nil {
			out = append(out, m.lifeSeam(h.end+" seam", h.seam, false, m.atJoint(m.seamJoint(h)), m.cyl, &h.part))
		}
		if h.segment != nil {
			out = append(out, m.lifeSeam(h.end+" head seam", h.segment, true, m.everywhere(&h.part, hoop), &h.part))
		}
		if h.in.Tip != nil {
			out = append(out, m.lifeTip(h))
		}
	}
	for _, p := range m.ports {
		if p.head == nil || p.head.in.Tip == nil || p.head.in.Tip.Port != p.in.Name {
			out = append(out, m.lifePort(p))
			if p.in.Insert != nil {
				out = append(out, m.lifeInsert(p))
			}
		}
	}
	return out
}

// lifeSeam is a butt weld with its misalignment.
func (m *model) lifeSeam(where string, j *tank.Joint, along bool, stress func(*loads.State, *loadCase) (span, error), parts ...*part) lifeWeld {
	w := lifeWeld{where: where + " (" + j.Name + ")", joint: j, along: along, parts: parts, stress: stress}
	w.bend, w.local, w.err = m.misaligned(j, along, parts)
	w.class = func() (c life.Class, err error) {
		for i, p := range parts {
			got, e := life.ClassOf(j.Kind, m.familyOf(p.material), j.Root != "", j.Examination == "full")
			if err = errors.Join(err, e); i == 0 || got.FAT < c.FAT {
				c = got
			}
		}
		return c, err
	}
	return w
}

// misaligned returns the bending of a seam that is out of line, over its membrane
// stress [-]. Life is not judged by walls that nobody measured: hi_lo, and
// peaking of a seam along the wall, must be written.
func (m *model) misaligned(j *tank.Joint, along bool, parts []*part) (float64, string, error) {
	need := "hi_lo"
	if along {
		need = "hi_lo and peaking"
	}
	if j.HiLo == nil || along && j.Peaking == nil {
		return math.NaN(), "", fmt.Errorf("how far the walls are out of line is not known: write %s of joint %s, as measured or as the welder holds it", need, j.Name)
	}
	if !along && given(j.Peaking) > 0 {
		return math.NaN(), "", fmt.Errorf("joint %s: %s", j.Name, noGirthPeak)
	}
	t1, t2 := parts[0].least, parts[len(parts)-1].least
	if !along {
		k, err := edge.HiLo(t1, t2, *j.HiLo)
		return k, fmt.Sprintf("numerical shell, and hi-lo of %.3g mm", *j.HiLo*1e3), err
	}
	e, ν, err := m.elastic(parts[0], roomTemperature)
	if err != nil {
		return math.NaN(), "", err
	}
	k, err1 := edge.LongHiLo(t1, t2, *j.HiLo, ν)
	// Of any length of the straight part and unpressurised, the largest ratio.
	d := *j.Peaking
	roof, err2 := edge.Peaking(d, math.Max(3*d, t1), t1, 0, e, ν)
	oval, err3 := 0.0, error(nil)
	if ΔD := m.t.Cylinder.OutOfRound; ΔD != nil && parts[0] == m.cyl { // without the rounding by pressure
		oval, err3 = edge.OutOfRound(*ΔD, 2*m.cyl.mid(), t1, 0, e, ν)
	}
	return k + roof + oval, fmt.Sprintf("numerical shell, hi-lo of %.3g mm and peaking of %.3g mm", *j.HiLo*1e3, d*1e3), errors.Join(err1, err2, err3)
}

// everywhere returns the stress across a weld that may lie anywhere in a part: the
// extremes over all of it, both faces.
func (m *model) everywhere(p *part, along direction) func(*loads.State, *loadCase) (span, error) {
	return func(s *loads.State, c *loadCase) (span, error) {
		out, err := m.spanWhere(s, c, along, func(st *shellState, i int) bool {
			return st.whole.segments[st.pressure.Stations[i].Segment] == p
		})
		if p == m.cyl && m.t.Cylinder.Rings != nil && (along == hoop || m.ringNearSeam()) {
			beside, ringErr := m.spanAtRing(s, c, along)
			out, err = out.with(beside), errors.Join(err, ringErr)
		}
		return out, err
	}
}

// betweenCourses returns the stress across the seams between courses, at the stations on
// either side of each; where the file does not say where they are, anywhere in the cylinder.
func (m *model) betweenCourses() func(*loads.State, *loadCase) (span, error) {
	at := m.t.Cylinder.GirthStations
	if len(at) == 0 {
		return m.everywhere(m.cyl, meridional)
	}
	return func(s *loads.State, c *loadCase) (span, error) {
		out, err := m.spanWhere(s, c, meridional, func(st *shellState, i int) bool {
			return st.whole.segments[st.pressure.Stations[i].Segment] == m.cyl && beside(st.pressure.Stations, i, at)
		})
		if m.t.Cylinder.Rings != nil && m.ringNearSeam() {
			ring, ringErr := m.spanAtRing(s, c, meridional)
			out, err = out.with(ring), errors.Join(err, ringErr)
		}
		return out, err
	}
}

// beside reports whether a station is the closest on its side to one of the places z [m].
func beside(all []revolution.Station, i int, at []float64) bool {
	for _, z := range at {
		for _, k := range [2]int{i - 1, i + 1} {
			if k >= 0 && k < len(all) && (all[i].Z-z)*(all[k].Z-z) <= 0 {
				return true
			}
		}
	}
	return false
}

// atJoint returns the stress across a girth weld, on both walls.
func (m *model) atJoint(j shellJoint) func(*loads.State, *loadCase) (span, error) {
	return func(s *loads.State, c *loadCase) (span, error) {
		st := m.shellOf(s, c)
		if st.err != nil {
			return span{}, st.err
		}
		at := m.reachesOf(j, st)
		return m.spanWhere(s, c, meridional, func(_ *shellState, i int) bool { return at[i].along == 0 })
	}
}

// spanWhere returns the extremes over the stations that are taken, each with the line
// loads of its own place.
func (m *model) spanWhere(s *loads.State, c *loadCase, along direction, take func(st *shellState, i int) bool) (out span, err error) {
	st := m.shellOf(s, c)
	if err := errors.Join(m.massErr, st.err); err != nil {
		return out, err
	}
	lines, err := m.lineLoads(s, c, st)
	if err != nil {
		return out, err
	}
	found := false
	for i := range st.pressure.Stations {
		if take(st, i) {
			out, found = out.with(st.spanAt(i, lines[i], c, along)), true
		}
	}
	if !found || math.IsNaN(out.most-out.least+out.membraneMost-out.membraneLeast) {
		return out, errors.New("the numerical shell has no stress there")
	}
	return out, nil
}

// lifeTip is the weld that closes the tip of a cone. Only a port says how it is
// made; else it counts as a fillet.
func (m *model) lifeTip(h *headPart) lifeWeld {
	full, of := false, (*tank.Joint)(nil)
	if p := m.portNamed(h.in.Tip.Port); p != nil {
		full, of = p.in.Weld.GrooveFull, m.joint(p.in.Weld.Joint)
	}
	return lifeWeld{of: of, where: "tip of the " + h.end + " head", parts: []*part{&h.part}, local: "numerical shell",
		class:  func() (life.Class, error) { return life.PortClass(m.familyOf(h.material), full) },
		stress: m.atJoint(m.tipJoint(h))}
}

// lifePort is the weld of a port to its wall: the larger of the stress at a hole and
// the stress index of a port that replaces its area.
func (m *model) lifePort(p *portPart) lifeWeld {
	w := lifeWeld{where: "port " + p.in.Name, port: true, of: m.joint(p.in.Weld.Joint), parts: []*part{&p.host}, err: errors.Join(p.wallErr, p.chordsErr)}
	if w.err != nil {
		return w
	}
	domed := p.head != nil && p.head.in.Shape != "cone" && p.head.in.Shape != "toricone"
	bore := p.in.Tube.OutsideDiameter - 2*p.port.TubeWall
	k, err := life.PortIndex(domed, bore, 2*p.port.NormalRadius(p.wall), p.host.least, p.chords.Obliquity)
	switch {
	case err != nil:
		w.err = err
	case p.in.Load != nil:
		w.err = errors.New("what the piping puts on it adds a stress that is not known here")
	case p.in.Fit == "on":
		w.err = errors.New("no stress index is known here for a tube set on the wall")
	}
	w.local = fmt.Sprintf("stress index %.2f of the port and that of a hole", k)
	w.class = func() (life.Class, error) {
		return life.PortClass(m.familyOf(p.host.material), p.in.Weld.GrooveFull && p.in.Pad == nil)
	}
	w.stress = func(s *loads.State, c *loadCase) (span, error) { return m.spanAtPort(p, k, s, c) }
	return w
}

// The stress at the edge of a hole where either principal stress pulls it open.
var (
	acrossHoop       = direction{meridional: -1, hoop: 3}
	acrossMeridional = direction{meridional: 3, hoop: -1}
)

// spanAtPort returns the extremes at a port from the wall's stress along it, k the
// stress index [-]. Beside what the largest stresses of the wall make there, whichever
// they stand beside, it swings as either point of the hole's edge does.
func (m *model) spanAtPort(p *portPart, k float64, s *loads.State, c *loadCase) (span, error) {
	var at [4]span
	for i, d := range [4]direction{hoop, meridional, acrossHoop, acrossMeridional} {
		got, err := m.spanWhere(s, c, d, m.alongPort(p))
		if m.ringNearPort(p) {
			ring, ringErr := m.spanAtRing(s, c, d)
			got, err = got.with(ring), errors.Join(err, ringErr)
		}
		if err != nil {
			return span{}, err
		}
		at[i] = got
	}
	out := at[2].with(at[3])
	for _, a := range []float64{at[0].most, at[0].least, at[1].most, at[1].least} {
		for _, b := range []float64{at[0].most, at[0].least, at[1].most, at[1].least} {
			edge := life.HoleStress(a, b)
			out = out.with(span{math.Min(edge, k*a), math.Max(edge, k*a), math.Min(a, 0), math.Max(a, 0)})
		}
	}
	return out, nil
}

// alongPort takes the stations of the wall under a port's hole and weld, its pad or
// inserted plate.
func (m *model) alongPort(p *portPart) func(st *shellState, i int) bool {
	half := math.Max(p.chords.OutsideMeridional, p.chords.OutsideTransverse)/2 + p.in.Weld.OutsideLeg
	if pad := p.port.Pad; pad != nil {
		half = math.Max(half, pad.OutsideDiameter/2)
	}
	if in := p.in.Insert; in != nil {
		half = math.Max(half, in.OutsideDiameter/2)
	}
	gap := 0.1 * m.cyl.mid() // taken beside it, so that a station is always met
	return func(st *shellState, i int) bool {
		q := st.pressure.Stations[i]
		if p.head == nil {
			return st.whole.segments[q.Segment] == m.cyl && math.Abs(q.Z-p.z) <= half+gap
		}
		return st.whole.segments[q.Segment] == &p.head.part && math.Abs(q.R-given(p.in.Radius)) <= half+gap
	}
}
