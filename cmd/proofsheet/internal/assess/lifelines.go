package assess

import (
	"errors"
	"math"

	"proofsheet/loads"
	"proofsheet/shell/revolution"
)

// lineLoads returns, for every station of the numerical shell, what the wall carries
// there beside the axisymmetric state: on the cylinder at the station's own place, since
// a moment may be greatest between the seams; on a head that at its joint, beyond which
// loads do not go. Remembered.
func (m *model) lineLoads(s *loads.State, c *loadCase, st *shellState) ([]seamLoad, error) {
	if got, ok := m.lines[s]; ok {
		return got, nil
	}
	if len(m.lines) >= mostSolved {
		clear(m.lines)
	}
	all := st.pressure.Stations
	out := make([]seamLoad, len(all))
	aft, err1 := m.seamLoadAt(m.aft, s, c, st)
	forward, err2 := m.seamLoadAt(m.fwd, s, c, st)
	if err := errors.Join(err1, err2); err != nil {
		return nil, err
	}
	for i, q := range all {
		switch {
		case q.Segment < st.whole.joint["aft"]:
			out[i] = aft
		case q.Segment >= st.whole.joint["forward"]:
			out[i] = forward
		default:
			var err error
			if out[i], err = m.lineLoadNear(all, i, s, c, st); err != nil {
				return nil, err
			}
		}
	}
	m.lines[s] = out
	return out, nil
}

// lineLoadNear returns it at a station of the cylinder, together with that of any quoted
// force between the stations beside it: no peak falls between two stations unseen.
func (m *model) lineLoadNear(all []revolution.Station, i int, s *loads.State, c *loadCase, st *shellState) (seamLoad, error) {
	out, err := m.lineLoadAt(all[i].Z, s, c, st)
	for _, q := range c.sections {
		if q.Station > all[max(i-1, 0)].Z && q.Station < all[min(i+1, len(all)-1)].Z {
			peak, peakErr := m.lineLoadAt(q.Station, s, c, st)
			err = errors.Join(err, peakErr)
			out.bendMost, out.bendLeast = math.Max(out.bendMost, peak.bendMost), math.Min(out.bendLeast, peak.bendLeast)
			out.loadMost, out.loadLeast = math.Max(out.loadMost, peak.loadMost), math.Min(out.loadLeast, peak.loadLeast)
		}
	}
	return out, err
}

// lineLoadAt returns it on a plane z of the cylinder [m], the nearest on it where the
// numerical shell lets the cylinder run on to meet a head.
func (m *model) lineLoadAt(z float64, s *loads.State, c *loadCase, st *shellState) (seamLoad, error) {
	z = math.Min(math.Max(z, hair), m.t.Cylinder.Length-hair)
	most, least, loadMost, loadLeast, err := s.WallForce(z, m.body(c))
	if err != nil {
		return seamLoad{}, err
	}
	out := seamLoad{loadMost: loadMost, loadLeast: loadLeast, twice: m.twoSided}
	if m.twoSided { // else the two methods agree on the axial force, but for rounding
		axial := m.axialAt(z, st)
		out.bendMost, out.bendLeast = math.Max(most-axial, 0), math.Min(least-axial, 0)
	}
	if !c.present { // a load may be away
		out.loadMost, out.loadLeast = math.Max(loadMost, 0), math.Min(loadLeast, 0)
	}
	return out, nil
}

// axialAt returns the axial force of the axisymmetric state in the cylinder at z [N/m],
// straight between the stations.
func (m *model) axialAt(z float64, st *shellState) float64 {
	var last *revolution.Station
	for i := range st.pressure.Stations {
		q := &st.pressure.Stations[i]
		switch {
		case st.whole.segments[q.Segment] != m.cyl:
		case q.Z >= z && last != nil && q.Z > last.Z:
			return last.NPhi + (q.NPhi-last.NPhi)*(z-last.Z)/(q.Z-last.Z)
		case q.Z >= z:
			return q.NPhi
		default:
			last = q
		}
	}
	if last == nil { // not reached: a tank has a cylinder
		return math.NaN()
	}
	return last.NPhi
}
