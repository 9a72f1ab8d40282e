package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

const ringsID, ringsTitle = "cylinder/rings", "Cylinder: wall and rings where they meet"

// checkRings holds the wall beside a ring, which bends where the ring keeps it from
// growing, and the ring, which the wall stretches, as places of a joint: the closed form
// of a narrow ring on a plain cylinder, clear of any other joint. Nothing where there
// are no rings.
func (m *model) checkRings(s *loads.State, c *loadCase) []check.Result {
	if m.t.Cylinder.Rings == nil {
		return nil
	}
	j, err := m.ringJoint(s, c)
	if err == nil {
		j.Extremes, err = m.ringExtremes()
	}
	if err != nil {
		return []check.Result{check.NotMade(ringsID, ringsTitle, err)}
	}
	return []check.Result{inWords(j.Check())}
}

// proofRings makes the same check at proof.
func (m *model) proofRings(t *proofTest) []check.Result {
	if m.t.Cylinder.Rings == nil {
		return nil
	}
	c, s, err := m.proofState(t)
	var j edge.Junction
	if err == nil {
		j, err = m.ringJoint(s, c)
	}
	if err != nil {
		return []check.Result{check.NotMade(ringsID, ringsTitle+", at proof", err)}
	}
	j.Title = ringsTitle + ", at proof"
	return []check.Result{inWords(j.CheckProof())}
}

// ringInside returns the inside radius of the rings, nominal [m].
func (m *model) ringInside() float64 {
	if q := m.t.Cylinder.Rings; q.Side == "inside" {
		return m.cyl.radius - q.Height
	}
	return m.cyl.radius + m.cyl.nominal
}

// inWords says of what method the answer is.
func inWords(r check.Result) check.Result {
	r.Note = strings.Replace(r.Note, ", numerical shell", ", closed form of a narrow ring on a long cylinder", 1)
	return r
}

// ringSource is where the stress at a ring comes from.
var ringSource = check.Source{Doc: "beam on an elastic foundation", Where: "shell/edge, ring on a cylinder; compared with a numerical shell", How: check.Computed}

// ringJoint returns the places at a ring in one state: pressure and forces are the
// worst of the cylinder, whichever ring they act at.
func (m *model) ringJoint(s *loads.State, c *loadCase) (edge.Junction, error) {
	j := edge.Junction{ID: ringsID, Title: ringsTitle, PressureLeast: c.pressureLeast(), Present: c.present}
	j.Numerical.Source, j.Closed.Err = ringSource, errors.New("the numerical shell has no rings in it")
	in := m.t.Cylinder.Rings
	seams, a, longErr, girthErr := m.cylinderSeams(c)
	cond, condErr := m.cylinderCondition(s, c)
	bar := m.allowAt(in.Material, m.weldsOf(m.cyl), in.Width, c.temperature, c.rule, m.cyl.refused)
	if err := errors.Join(m.massErr, m.ringsFit(), longErr, girthErr, a.ZoneKnown, condErr, bar.zoneErr, m.ringGrowsAlike(c.temperature)); err != nil {
		return j, err
	}
	wall, err := a.Parent.Lower(a.Zone)
	if err != nil {
		return j, err
	}
	j.Pressure = cond.Pressure
	girth := 1.0
	if m.ringNearSeam() {
		girth = seams.Girth
	}
	for _, N := range [2]float64{cond.AxialMost, cond.AxialLeast} {
		wallP, barP, err := m.besideRing(c.temperature, cond.Pressure, N)
		if err != nil {
			return j, err
		}
		wallMost, barMost, err1 := m.besideRing(c.temperature, 0, cond.LoadMost)
		wallLeast, barLeast, err2 := m.besideRing(c.temperature, 0, cond.LoadLeast)
		if err := errors.Join(err1, err2); err != nil {
			return j, err
		}
		j.Numerical.Places = append(j.Numerical.Places,
			edge.Place{Where: "wall at a ring", Pressure: wallP, LoadMost: wallMost, LoadLeast: wallLeast, Limits: wall, Efficiency: girth},
			edge.Place{Where: "long seam at a ring", Pressure: turned(wallP), LoadMost: turned(wallMost), LoadLeast: turned(wallLeast), Limits: wall, Efficiency: seams.Long},
			edge.Place{Where: "ring", Pressure: barP, LoadMost: barMost, LoadLeast: barLeast, Limits: bar.seam, Efficiency: unsplicedRing})
	}
	return j, nil
}

// besideRing returns the stress of the wall at a ring and of the ring [Pa], its hoop
// stress across its splice, under pressure [Pa] and axial force [N/m] in the plain wall.
// The full bar restrains the wall most, what tolerance leaves of it is stretched most.
func (m *model) besideRing(T, pressure, axial float64) (wall, bar edge.Stress, err error) {
	in := m.t.Cylinder.Rings
	e, ν, err := m.elastic(m.cyl, T)
	x := m.metals.at(in.Material, "", in.Width, T)
	E := x.parent.ElasticModulus.Value
	if err = errors.Join(err, x.parentErr); err != nil {
		return wall, bar, err
	}
	R, t := m.cyl.mid(), m.cyl.least
	middle, inner := R+t/2+in.Height/2, R // of the bar: its centroid, and where its stress is counted
	if in.Side == "inside" {
		middle, inner = R-t/2-in.Height/2, R-t/2-in.Height
	}
	if !(inner > 0) {
		return wall, bar, errors.New("the rings are higher than the bore is wide")
	}
	w := edge.Wall{Thickness: t, ElasticModulus: e, Poisson: ν}
	free := m.ringFree()
	solve := func(area float64) (edge.Joint, error) { // E A/middle², as the form has it with R
		return edge.Step{Radius: R, First: w, Second: w, FirstFree: free, SecondFree: free, RingArea: area * R * R / (middle * middle), RingModulus: E}.
			Solve(edge.Load{Pressure: pressure, Axial: axial, AxialShell: axial})
	}
	full, err1 := solve(in.Width * in.Height)
	width, height := m.leastBar()
	left, err2 := solve(width * height)
	return full.Shell, turned(edge.RingStress(E, left.Displacement, inner)), errors.Join(err1, err2)
}

// ringFree returns the least length of plain wall beside a ring [m], to the next ring
// or to the seam of a head.
func (m *model) ringFree() float64 {
	at := append(append([]float64{0}, m.t.Cylinder.Rings.Stations...), m.t.Cylinder.Length)
	least := math.Inf(1)
	for i := 1; i < len(at); i++ {
		least = math.Min(least, at[i]-at[i-1])
	}
	return least
}

// ringNearSeam reports whether a seam between courses lies where the wall bends beside
// a ring: its own efficiency then counts there.
func (m *model) ringNearSeam() bool {
	for _, z := range m.t.Cylinder.Rings.Stations {
		for _, s := range m.t.Cylinder.GirthStations {
			if edge.Interact(math.Abs(z-s), m.cyl.mid(), m.cyl.least) {
				return true
			}
		}
	}
	return false
}

// ringGrowsAlike refuses rings that warm or cool by another measure than the wall.
func (m *model) ringGrowsAlike(T float64) error {
	in := m.t.Cylinder.Rings
	return m.growAlike("the rings", in.Material, in.Width, T)
}

// ringExtremes returns, place by place, the extremes of the stress at a ring over all
// operating states, their pressure in full, at its smallest and away, each line load
// there or not; remembered.
func (m *model) ringExtremes() ([][]edge.Stress, error) {
	if m.ringsSee.found {
		return m.ringsSee.extremes, m.ringsSee.err
	}
	m.ringsSee.found = true
	var out [][]edge.Stress
	for _, o := range m.operating {
		j, err := m.ringJoint(o.state, o.c)
		if err != nil {
			m.ringsSee.err = fmt.Errorf("case %s: %w", o.c.name, err)
			return nil, m.ringsSee.err
		}
		for i, p := range j.Numerical.Places {
			if i == len(out) {
				out = append(out, nil)
			}
			for _, share := range [3]float64{1, j.PressureLeast, 0} {
				for _, l := range [3]edge.Stress{{}, p.LoadMost, p.LoadLeast} {
					out[i] = extend(out[i], plus(times(p.Pressure, share), l))
				}
			}
		}
	}
	m.ringsSee.extremes = out
	return out, nil
}

// extend keeps the stresses that are greatest and least in a component or on a face.
func extend(have []edge.Stress, s edge.Stress) []edge.Stress {
	measures := [...]func(edge.Stress) float64{
		func(s edge.Stress) float64 { return s.Meridional + s.MeridionalBending },
		func(s edge.Stress) float64 { return s.Meridional - s.MeridionalBending },
		func(s edge.Stress) float64 { return s.Hoop + s.HoopBending },
		func(s edge.Stress) float64 { return s.Hoop - s.HoopBending },
	}
	if have == nil {
		have = make([]edge.Stress, 2*len(measures)) // zero is among them
	}
	for i, f := range measures {
		if f(s) > f(have[2*i]) {
			have[2*i] = s
		}
		if f(s) < f(have[2*i+1]) {
			have[2*i+1] = s
		}
	}
	return have
}

// A ringsFound is what the rings see, once it was sought.
type ringsFound struct {
	found    bool
	extremes [][]edge.Stress
	err      error
}
