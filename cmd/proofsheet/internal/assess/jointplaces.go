package assess

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/shell/edge"
)

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
	at := m.reachesOf(joint, st)
	walls := [2]string{joint.near, joint.far}
	var out []stationRef
	const kinds = 2*len(weights) + 1 // and the range over the operating states
	var most [kinds][classes]float64
	var where [kinds][classes]int
	for n := range where {
		where[n] = [classes]int{-1, -1, -1, -1}
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
		k := classOf(d.side, d.along <= l.width[d.side])
		measures := st.measures(i, load)
		for n := range kinds {
			v := spread.widest(i)
			if n < len(measures) {
				v = measures[n]
			}
			if v > most[n][k] {
				most[n][k], where[n][k] = v, i
			}
		}
	}
	for k := range classes {
		var seen [kinds]int
		for n := range kinds {
			i := where[n][k]
			if seen[n] = i; i < 0 || slices.Contains(seen[:n], i) || at[i].along == 0 {
				continue
			}
			name := st.whole.names[st.pressure.Stations[i].Segment]
			out = append(out, stationRef{index: i, side: k / 2, zone: k%2 == 0, where: fmt.Sprintf("%s, %.0f mm from the joint", name, at[i].along*1e3)})
		}
	}
	return append(out, m.coursesNear(joint, st, at)...)
}

// classes of places: of the near and of the far wall, in the zone and away from it.
const classes = 4

// classOf returns the class of a place on a side.
func classOf(side int, zone bool) int {
	if zone {
		return 2 * side
	}
	return 2*side + 1
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
		if v := stressAt(&all[i]).MeridionalSurface(); v > most {
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

// A reachKey is a joint of one model of the shell.
type reachKey struct {
	whole *wholeTank
	joint string
}

// reachesOf tells it for every station about a joint, remembered.
func (m *model) reachesOf(joint shellJoint, st *shellState) []reachOf {
	return once(m.reaches, reachKey{st.whole, joint.id}, func() []reachOf { return st.distances(joint) })
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
	clear := reach * math.Sqrt(max(s.R, s.Slender*owner.least)*owner.least)
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
	sides, n := st.sides(i, load)
	for _, p := range sides[:n] {
		for _, l := range [2]*edge.Stress{&p.most, &p.least} {
			for n, w := range weights {
				s := plus(times(p.pressure, w[0]), times(*l, w[1]))
				out[2*n], out[2*n+1] = max(out[2*n], s.Membrane()), max(out[2*n+1], s.Surface())
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
	sides, n := st.sides(i, load)
	return sides[:n:n]
}

// sides returns it as n of two.
func (st *shellState) sides(i int, load seamLoad) (out [2]stationStress, n int) {
	p, u := stressAt(&st.pressure.Stations[i]), stressAt(&st.pull.Stations[i])
	most, least := times(u, load.loadMost), times(u, load.loadLeast)
	if !load.twice {
		return [2]stationStress{{p, most, least}}, 1
	}
	return [2]stationStress{{plus(p, times(u, load.bendMost)), most, least}, {plus(p, times(u, load.bendLeast)), most, least}}, 2
}
