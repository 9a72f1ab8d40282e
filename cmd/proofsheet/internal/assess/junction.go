package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// reach is how far the disturbance of a joint goes along a wall, in √(R t) [-].
const reach = 2.5

// shellSource is the source of every number of the numerical shell.
var shellSource = check.Source{Doc: "numerical shell of revolution", Where: "shell/revolution, package comment", How: check.Computed}

// A jointLimit is what is allowed about a joint: on each wall away from welds
// and in their zone, how wide the zone is, and the efficiency of the girth weld.
type jointLimit struct {
	parent, zone [2]material.Limits // of the cylinder and of the head
	width        [2]float64         // of the zone beside the joint [m]; +Inf: everywhere
	girth        float64            // of the weld at the joint [-]
	course       float64            // of the girth seam between courses, close to it [-]
	along        [2]float64         // of the weld along each wall [-]; 1: none
	err          error
}

// jointLimits gathers them for a case.
func (m *model) jointLimits(h *headPart, c *loadCase) (l jointLimit) {
	seams, a, err := m.headSeams(h, c)
	longSeams, b, longErr, girthErr := m.cylinderSeams(c)
	l.girth, l.course, l.along = seams.Girth, 1, [2]float64{1, 1}
	if m.girth != nil {
		l.course, l.err = m.girthEfficiency(m.girth, c, 2*(m.cyl.radius+m.cyl.nominal))
	}
	if m.long != nil {
		l.along[0] = longSeams.Long
	}
	if seams.Segmented {
		l.along[1] = seams.Segment
	}
	l.parent = [2]material.Limits{b.Parent, a.Parent}
	l.zone = [2]material.Limits{b.Zone, a.Zone}
	l.err = errors.Join(l.err, m.massErr, h.refused, err, longErr, girthErr, a.ZoneKnown, b.ZoneKnown, m.alike(h, c.temperature))
	var widthErr error
	if l.width, widthErr = m.jointZones(h, c.temperature); widthErr != nil {
		l.err = errors.Join(l.err, widthErr)
	}
	return l
}

// tipLimits gathers the limits about the tip of a cone: of what closes it and
// of the cone, each by its weld, and the seams along both walls.
func (m *model) tipLimits(h *headPart, c *loadCase) (l jointLimit) {
	l.along = [2]float64{1, 1}
	l.girth, l.err = m.tipWeld(h, c)
	seams, _, err := m.headSeams(h, c)
	if seams.Segmented {
		l.along[1] = seams.Segment
	}
	l.err = errors.Join(l.err, err)
	if l.along[0], err = m.tipSeam(h, c, seams); err != nil {
		l.err = errors.Join(l.err, err)
	}
	w, err := m.shellAt(shellKey{T: c.temperature})
	if err != nil {
		l.err = errors.Join(l.err, err)
		return l
	}
	near := w.segments[0]
	if h.end == "forward" {
		near = w.segments[w.ends-1]
	}
	for i, p := range []*part{near, &h.part} {
		a := m.allow(*p, "", c)
		l.parent[i], l.zone[i] = a.parent, a.zone
		l.width[i] = math.Inf(1) // small: the zone is taken everywhere about it
		l.err = errors.Join(l.err, a.parentErr, a.zoneErr)
	}
	l.err = errors.Join(l.err, m.massErr, h.refused)
	return l
}

// jointZones returns the width of the softened zone beside a joint on the
// cylinder and on the head [m]: 0 where nothing softens, without end where a
// weld along the wall or a port softens it at every station.
func (m *model) jointZones(h *headPart, T float64) (width [2]float64, err error) {
	w := m.atSeam(h)
	for i, p := range []*part{&m.cyl, &h.part} {
		x := m.metals.at(p.material, w, p.nominal, T)
		if x.zoneErr != nil || !x.zone.Softened {
			continue
		}
		along := m.long != nil || m.girth != nil // a seam between courses may stand beside the joint
		if i == 1 {
			along = h.segment != nil
		}
		if _, ported := m.portWelds(p.name); along || ported {
			width[i] = math.Inf(1)
			continue
		}
		if width[i], err = m.widest(w, x.parent.Family, p.nominal); err != nil {
			return width, err
		}
	}
	return width, nil
}

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
	if r := m.ranges[at.id]; r != nil {
		j.Others = r.others(l, refs, load.twice)
	}
	j.Closed = m.closedJoint(at, s, c, l)
	return j
}

// alike refuses a head of another alloy than the cylinder's where they would grow
// apart: away from room temperature the stress that this gives their joint is not
// in the numerical shell. Up to a hundredth of the yield is let pass.
func (m *model) alike(h *headPart, T float64) error {
	a, b := m.metals.at(m.cyl.material, "", m.cyl.nominal, T).parent, m.metals.at(h.material, "", h.nominal, T).parent
	if m.cyl.material == h.material || T == roomTemperature {
		return nil
	}
	σ := math.Max(a.ElasticModulus.Value, b.ElasticModulus.Value) * math.Abs((a.Expansion.Value-b.Expansion.Value)*(T-roomTemperature))
	if σ <= 0.01*math.Min(a.Yield.Value, b.Yield.Value) {
		return nil
	}
	return fmt.Errorf("%s of %s and cylinder of %s do not grow alike: up to %.3g MPa at their joint at this temperature, which the numerical shell does not hold", h.name, h.material, m.cyl.material, σ/1e6)
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

// A stationRef is a station with what holds there.
type stationRef struct {
	index  int
	side   int // 0 the near wall, 1 the far one
	zone   bool
	across bool // of the girth weld
	course bool // which is one between courses
	where  string
	bend   int     // 1 and -1: with the bending of the hi-lo there, tension inside and outside
	ratio  float64 // of that bending to the meridional membrane stress, with its sign [-]
	ν      float64 // Poisson's ratio [-]
}

// placesOf picks the stations that can govern: both walls at the joint, and on
// each wall, in the zone and away from it, where membrane and where membrane
// with bending is most. On the cylinder, and at a tip on both walls, it looks as
// far as the joint reaches; on the head everywhere but about its tip.
func (m *model) placesOf(joint shellJoint, st *shellState, load seamLoad, l jointLimit) []stationRef {
	at := st.distances(joint)
	walls := [2]string{joint.near, joint.far}
	var out []stationRef
	type class struct {
		side int
		zone bool
	}
	const kinds = 2*len(weights) + 1 // and the range over the operating states
	var most [kinds]map[class]float64
	var where [kinds]map[class]int
	for k := range most {
		most[k], where[k] = map[class]float64{}, map[class]int{}
	}
	spread := m.ranges[joint.id]
	for i, d := range at {
		if math.IsNaN(d.along) {
			continue
		}
		if d.along == 0 {
			out = append(out, stationRef{index: i, side: d.side, zone: true, across: true, where: walls[d.side] + " at the joint"})
			for _, b := range st.whole.bends(joint, d.side) {
				out = append(out, stationRef{index: i, side: d.side, zone: true, across: true, where: walls[d.side] + b.words, bend: b.sign, ratio: float64(b.sign) * b.ratio, ν: b.ν})
			}
		}
		k := class{d.side, d.along <= l.width[d.side]}
		values := st.measures(i, load)
		for n, v := range append(values[:], spread.widest(i)) {
			if v > most[n][k] {
				most[n][k], where[n][k] = v, i
			}
		}
	}
	for _, k := range []class{{0, true}, {0, false}, {1, true}, {1, false}} {
		seen := map[int]bool{}
		for n := range where {
			i, ok := where[n][k]
			if !ok || seen[i] || at[i].along == 0 {
				continue
			}
			seen[i] = true
			name := st.whole.names[st.pressure.Stations[i].Segment]
			out = append(out, stationRef{index: i, side: k.side, zone: k.zone, where: fmt.Sprintf("%s, %.0f mm from the joint", name, at[i].along*1e3)})
		}
	}
	return append(out, m.coursesNear(joint, st, at)...)
}

// coursesNear picks the stations on both sides of each girth seam between courses
// that stands within the reach of a joint: the bending of the joint crosses that
// weld. A seam whose station is not said may stand where that bending is most.
func (m *model) coursesNear(joint shellJoint, st *shellState, at []reachOf) (out []stationRef) {
	if m.girth == nil || joint.tip {
		return nil
	}
	all := st.pressure.Stations
	add := func(i int) {
		out = append(out, stationRef{index: i, zone: true, across: true, course: true,
			where: fmt.Sprintf("girth seam between courses, %.0f mm from the joint", at[i].along*1e3)})
	}
	near := func(i int) bool { return at[i].side == 0 && at[i].along > 0 }
	worst, most := -1, 0.0
	for i := range all {
		if !near(i) {
			continue
		}
		if v := stressAt(all[i]).MeridionalSurface(); v > most {
			worst, most = i, v
		}
		for _, z := range m.t.Cylinder.GirthStations {
			if k := i + 1; k < len(all) && near(k) && (all[i].Z-z)*(all[k].Z-z) <= 0 {
				add(i)
				add(k)
			}
		}
	}
	if len(m.t.Cylinder.GirthStations) == 0 && worst >= 0 {
		add(worst)
	}
	return out
}

// A reachOf tells on which side of a joint a station stands and how far from it
// along the wall [m]; NaN where it belongs to no side.
type reachOf struct {
	side  int
	along float64
}

// distances tells it for every station about a joint.
func (st *shellState) distances(joint shellJoint) []reachOf {
	all, w := st.pressure.Stations, st.whole
	arc, total := make([]float64, len(all)), 0.0
	for i := range all {
		if i > 0 && all[i].Segment == all[i-1].Segment {
			total += all[i].Arc - all[i-1].Arc
		}
		arc[i] = total
	}
	node := w.nodeOf(joint)
	zero := total
	for i := range all {
		if all[i].Segment >= node {
			zero = arc[i]
			break
		}
	}
	out := make([]reachOf, len(all))
	for i, s := range all {
		far := (s.Segment >= node) == (joint.h.end == "forward") != joint.tip
		d := math.Abs(arc[i] - zero)
		out[i] = reachOf{along: math.NaN()}
		if far {
			out[i].side = 1
		}
		if st.belongs(joint, i, far, d, arc) {
			out[i].along = d
		}
	}
	return out
}

// nodeOf returns the first segment forward of a joint.
func (w *wholeTank) nodeOf(joint shellJoint) int {
	switch {
	case !joint.tip:
		return w.joint[joint.h.end]
	case joint.h.end == "aft":
		return 1
	}
	return w.ends - 1
}

// belongs reports whether station i, d along the wall from a joint [m], is held
// by its check.
func (st *shellState) belongs(joint shellJoint, i int, far bool, d float64, arc []float64) bool {
	w, s := st.whole, st.pressure.Stations[i]
	owner := w.segments[s.Segment]
	clear := reach * math.Sqrt(math.Max(s.R, s.Slender*owner.least)*owner.least)
	if owner.name == "cylinder" && joint.h.in.SeamWidth != nil {
		clear += *joint.h.in.SeamWidth / 2 // the end of the thicker wall bends too
	}
	switch {
	case joint.tip && far:
		return owner == &joint.h.part && d <= clear
	case joint.tip:
		return s.Segment == 0 && joint.h.end == "aft" || s.Segment == w.ends-1 && joint.h.end == "forward"
	case !far:
		return owner.name == "cylinder" && d <= clear
	}
	if owner != &joint.h.part {
		return false
	}
	if joint.h.in.Tip == nil {
		return true
	}
	tip := arc[0] // where the head's own wall ends at its tip
	for k, q := range st.pressure.Stations {
		if w.segments[q.Segment] == owner {
			tip = arc[k]
			if joint.h.end == "aft" {
				break
			}
		}
	}
	return math.Abs(arc[i]-tip) > clear
}

// weights are the shares of the pressure and the factors on line loads at which
// the places that may govern are looked for: together, the load by itself, and
// the load ahead, as factors put it.
var weights = [3][2]float64{{1, 1}, {0, 1}, {1, 2}}

// measures returns, at each weight, the measure of the membrane stress at a station,
// and of membrane with bending on the worse face [Pa], with the line load that makes
// it most.
func (st *shellState) measures(i int, load seamLoad) (out [2 * len(weights)]float64) {
	for _, p := range st.stresses(i, load) {
		for _, l := range [2]edge.Stress{p.most, p.least} {
			for n, w := range weights {
				s := plus(times(p.pressure, w[0]), times(l, w[1]))
				out[2*n], out[2*n+1] = math.Max(out[2*n], s.Membrane()), math.Max(out[2*n+1], s.Surface())
			}
		}
	}
	return out
}

// A stationStress is the stress at a station by origin, on one side of the
// tank.
type stationStress struct{ pressure, most, least edge.Stress }

// stresses returns the stress at a station; twice, for both sides, where the
// liquid bends the tank.
func (st *shellState) stresses(i int, load seamLoad) []stationStress {
	p, u := stressAt(st.pressure.Stations[i]), stressAt(st.pull.Stations[i])
	most, least := times(u, load.loadMost), times(u, load.loadLeast)
	if !load.twice {
		return []stationStress{{p, most, least}}
	}
	return []stationStress{{plus(p, times(u, load.bendMost)), most, least}, {plus(p, times(u, load.bendLeast)), most, least}}
}

// answer returns what the numerical shell gives at the places, from the stress
// at each station. A wall with a weld along it is also held across that.
func answer(l jointLimit, at []stationRef, stress func(ref stationRef) []stationStress) (out []edge.Place) {
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
	e1, ν1, err := m.elastic(&m.cyl, c.temperature)
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
