package assess

import (
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/shell/edge"
	"proofsheet/shell/revolution"
)

// A shellState is what the numerical shell says of one state of a case: under
// pressure with the liquid in it, and for one newton per metre of pull between
// both seams, by which line loads are scaled.
type shellState struct {
	whole    *wholeTank
	pressure *revolution.Solution
	pull     *revolution.Solution
	err      error
}

// shellOf returns the numerical shell under a state, remembered.
func (m *model) shellOf(s *loads.State, c *loadCase) *shellState {
	if got, ok := m.solved[s]; ok {
		return got
	}
	if len(m.solved) >= mostSolved {
		clear(m.solved)
	}
	got := m.solveShell(s, c, shellKey{T: c.temperature})
	m.solved[s] = got
	return got
}

// mostSolved bounds how many states are remembered at a time.
const mostSolved = 64

// solveShell solves both load cases of a state.
func (m *model) solveShell(s *loads.State, c *loadCase, k shellKey) *shellState {
	w, err := m.shellAt(k)
	if err != nil {
		return &shellState{err: err}
	}
	p, err := m.underPressure(w, k, s)
	if err != nil {
		return &shellState{err: err}
	}
	return &shellState{whole: w, pressure: p, pull: w.pull}
}

// A liquidKey is all that the numerical shell under a liquid without ullage pressure
// depends on beside the tank.
type liquidKey struct {
	shellKey
	liquid       loads.Liquid
	acceleration loads.Acceleration
	slosh        float64 // amplitude [m]
}

// underPressure returns the shell under a state: what its liquid does, remembered,
// and the ullage pressure times what one unit of it does, for small displacements
// add up. An ullage pressure below nothing is solved by itself: then the worst pressure
// round a station may be from outside.
func (m *model) underPressure(w *wholeTank, k shellKey, s *loads.State) (*revolution.Solution, error) {
	if !(s.UllagePressure >= 0) {
		return w.model.Solve(m.shellPressure(w, s))
	}
	key := liquidKey{k, s.Liquid, s.Acceleration, s.SloshAmplitude()}
	liquid, ok := m.liquids[key]
	if !ok {
		if len(m.liquids) >= mostSolved {
			clear(m.liquids)
		}
		alone := *s
		alone.UllagePressure = 0
		var err error
		if liquid, err = w.model.Solve(m.shellPressure(w, &alone)); err != nil {
			return nil, err
		}
		m.liquids[key] = liquid
	}
	return liquid.Plus(s.UllagePressure/unitOfLoad, w.unit)
}

// shellPressure is the pressure of a state on the whole tank: at each station
// the worst round it. Its own weight is among the line loads.
func (m *model) shellPressure(w *wholeTank, s *loads.State) revolution.Load {
	return m.shellLoad(w, func(z float64) float64 { return m.worstAt(s, z) })
}

// shellLoad is a pressure along the whole tank, worst at z [Pa], with what it does
// to the cover of a tip that the shell leaves open.
func (m *model) shellLoad(w *wholeTank, worst func(z float64) float64) revolution.Load {
	lo, hi := m.in.Bounds()
	at := func(z float64) float64 { return worst(math.Min(math.Max(z, lo), hi)) }
	l := revolution.Load{Pressure: func(p revolution.Place) float64 { return at(p.Z) }}
	if a := w.area["aft"]; a > 0 {
		l.Forces = append(l.Forces, revolution.Force{Node: 0, Axial: -at(lo) * a})
	}
	if a := w.area["forward"]; a > 0 {
		l.Forces = append(l.Forces, revolution.Force{Node: w.ends, Axial: at(hi) * a})
	}
	return l
}

// worstAt returns the worst pressure across the wall at z [Pa]: from outside the
// dry wall is worse than the wet one.
func (m *model) worstAt(s *loads.State, z float64) float64 {
	p := s.PressureWorst(z)
	if least := s.PressureLeast(z); least < 0 && -least > math.Abs(p) {
		return least
	}
	return p
}

// solveUnits solves for one unit of ullage pressure and for a pull of 1 N/m between
// the seams.
func (m *model) solveUnits(w *wholeTank) (err error) {
	if w.unit, err = w.model.Solve(m.unitPressure(w)); err != nil {
		return err
	}
	R, _ := m.midCylinder(shellKey{})
	f := revolution.Force{Node: w.joint["forward"], Axial: 2 * math.Pi * R}
	if m.t.Support.At == "forward" {
		f = revolution.Force{Node: w.joint["aft"], Axial: -2 * math.Pi * R}
	}
	w.pull, err = w.model.Solve(revolution.Load{Forces: []revolution.Force{f}})
	return err
}

// unitPressure is one unit of ullage pressure.
func (m *model) unitPressure(w *wholeTank) revolution.Load {
	return m.shellLoad(w, func(float64) float64 { return unitOfLoad })
}

// stressAt returns the stress of a station [Pa] as the joint checks want it, raised
// where the wall is not thin beside its second principal radius r2: by 1 + t/(2 r2),
// the first order of what its curvature adds at the inside face, below r2/t 10, and
// not beyond 1.25, at r2/t 2 (practice). A tip tighter than that is not assessed.
func stressAt(s *revolution.Station) edge.Stress {
	f := 1.0
	if s.Slender < thinWall {
		f = 1 + 1/(2*math.Max(s.Slender, thickest))
	}
	return edge.Stress{
		Meridional: f * s.Membrane.Meridional, Hoop: f * s.Membrane.Hoop,
		MeridionalBending: f * (s.Inside.Meridional - s.Membrane.Meridional), HoopBending: f * (s.Inside.Hoop - s.Membrane.Hoop),
	}
}

// Radius over wall from which a wall is thin, and below which no thin shell speaks
// for it [-].
const (
	thinWall = 10.0
	thickest = 2.0
)

// times scales a stress.
func times(s edge.Stress, f float64) edge.Stress {
	return edge.Stress{Meridional: f * s.Meridional, Hoop: f * s.Hoop, MeridionalBending: f * s.MeridionalBending, HoopBending: f * s.HoopBending}
}

// plus adds two stresses.
func plus(a, b edge.Stress) edge.Stress {
	return edge.Stress{Meridional: a.Meridional + b.Meridional, Hoop: a.Hoop + b.Hoop,
		MeridionalBending: a.MeridionalBending + b.MeridionalBending, HoopBending: a.HoopBending + b.HoopBending}
}

// A seamLoad is what the wall of the cylinder carries at a joint beside the
// axisymmetric state [N/m].
type seamLoad struct {
	bendMost, bendLeast float64 // the liquid's bending, both sides
	loadMost, loadLeast float64 // line loads, both extremes
	twice               bool    // both sides are looked at
}

// seamLoadAt returns it at the joint of a head, from the free body just on the
// cylinder's side and the axisymmetric force there.
func (m *model) seamLoadAt(h *headPart, s *loads.State, c *loadCase, st *shellState) (seamLoad, error) {
	z := hair
	if h.end == "forward" {
		z = m.t.Cylinder.Length - hair
	}
	out, err := m.lineLoadAt(z, s, c, st)
	if sum := out.bendMost + out.bendLeast + out.loadMost + out.loadLeast; err == nil && math.IsNaN(sum) {
		err = fmt.Errorf("the line load at the %s seam is not known", h.end)
	}
	return out, err
}
