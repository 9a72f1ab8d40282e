package assess

import (
	"math"

	"proofsheet/loads"
	"proofsheet/material"
)

// drivers returns every load that can govern a check of the tank in one case,
// each so that more is worse: pressure from inside and from outside on each part
// and at each port; at each seam the line load in tension and in compression, with
// the load and the pressure each at its most and its least, and the pull of the
// head that hangs there with the liquid, its own weight left out; the equivalent
// stress of hoop and line load, per thickness; how much of the resistance against
// buckling is used, with the metal at its warmest, and the load on the column; the
// liquid's volume, the pressure while a level stands in the cylinder, and whether slosh
// that was asked for has no formula. Moment and axial
// force are greatest at an end of the cylinder. Their number and order are the same
// in every case of one tank.
func (m *model) drivers(c *loadCase, ws driverWeights) ([]float64, error) {
	var out []float64
	for _, s := range c.states {
		out = append(m.pressureDrivers(out, s), s.LiquidVolume(), m.levelDriver(s))
		if c.slosh != nil {
			out = append(out, stillDriver(s))
		}
		for _, z := range [...]float64{0, m.t.Cylinder.Length} {
			line, err := m.lineAt(s, c, z)
			if err != nil {
				return nil, err
			}
			head := line // beyond the joint: no loads, and the liquid hangs from it
			head.pressureMost += math.Max(0, s.Acceleration.Axial) * loads.StandardGravity * s.Liquid.Mass / (2 * math.Pi * m.cyl.mid())
			head.loadMost, head.loadLeast = 0, 0
			out = append(out, head.pressureMost)
			out = append(out, line.pressureMost, line.pressureLeast, line.loadMost, -line.loadLeast,
				line.pressureMost+line.loadMost, -(line.pressureLeast + line.loadLeast), -(line.pressureLeast + ws.stability*line.loadLeast))
			for _, w := range ws.strength {
				out = append(out, line.equivalent(w.pressure, w.load), head.equivalent(w.pressure, 0))
			}
			use, column, err := m.stabilityDrivers(s, c, ws, z)
			if err != nil {
				return nil, err
			}
			out = append(out, use, column)
		}
	}
	return out, nil
}

// stabilityDrivers returns how much of the cylinder's resistance in compression a
// station z [m] asks [-], and what presses on the column there [N].
func (m *model) stabilityDrivers(s *loads.State, c *loadCase, ws driverWeights, z float64) (use, column float64, err error) {
	l, err := stabilityAt(s, c, m.body(c), z)
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	column = l.compression + math.Abs(s.Acceleration.Axial)*loads.StandardGravity*s.Liquid.Mass
	if ws.cylinder == nil || ws.cylinder.err != nil {
		return 0, column, nil // no check of it can be made at any instant
	}
	use, bad := ws.cylinder.at(c.least).Ratio(l.station(), c.standsBare())
	if bad != nil || math.IsNaN(use) || math.IsInf(use, 0) {
		use = math.MaxFloat64 // an instant that cannot be assessed is looked at
	}
	return use, column, nil
}

// pressureDrivers adds the pressures, on parts and at ports.
func (m *model) pressureDrivers(out []float64, s *loads.State) []float64 {
	lo, hi := m.in.Bounds()
	L := m.t.Cylinder.Length
	for _, e := range [][2]float64{{lo, 0}, {0, L}, {L, hi}} {
		p, _ := s.HighestPressure(e[0], e[1])
		out = append(out, p, -s.LowestPressure(e[0], e[1]))
	}
	for _, p := range m.ports {
		out = append(out, s.PressureWorst(math.Min(math.Max(p.z, lo), hi)))
	}
	return out
}

// levelDriver is the pressure on the cylinder while a level stands in it, where the
// wall's temperature changes; −Inf while none does [Pa].
func (m *model) levelDriver(s *loads.State) float64 {
	L := m.t.Cylinder.Length
	if z := s.SurfaceZ(); !(s.Liquid.Mass > 0 && z > 0 && z < L) {
		return math.Inf(-1)
	}
	p, _ := s.HighestPressure(0, L)
	return p
}

// A weight is what pressure and load are multiplied by in a check [-].
type weight struct{ pressure, load float64 }

// driverWeights are the factors with which a rule adds pressure and load.
type driverWeights struct {
	strength  []weight
	stability float64 // on loads, in stability [-]
	cylinder  *stableCylinder
}

// driverWeights returns the factors of a rule.
func (m *model) driverWeights(rule material.Rule) driverWeights {
	ws := driverWeights{strength: []weight{{1, 1}}, stability: 1}
	f, err := m.factors(rule)
	if err != nil {
		return ws // every check that needs the rule is refused
	}
	if rule == material.Flight {
		ws.strength = append(ws.strength, weight{f.ProofFactor / f.ProofLimit, f.LoadYieldFactor}, weight{f.BurstFactor, f.LoadUltimateFactor})
	}
	ws.stability = f.BucklingFactor
	return ws
}

// A line is what acts on the wall at one station.
type line struct {
	hoop                        float64 // p r of the worst side [N/m]
	pressureMost, pressureLeast float64 // of gas and liquid along the meridian [N/m]
	loadMost, loadLeast         float64 // of loads, on the two sides of the bending [N/m]
}

// lineAt returns the line loads of one state at z [m], on the cylinder's radius.
func (m *model) lineAt(s *loads.State, c *loadCase, z float64) (line, error) {
	b := m.body(c)
	most, least, loadMost, loadLeast, err := s.WallForce(z, b)
	return line{s.PressureWorst(z) * b.Radius(z), most, least, loadMost, loadLeast}, err
}

// equivalent returns the largest von Mises sum of hoop and meridian [N/m], the
// load at its most, at its least and away, each pressure with its factor wp [-]
// and each load with wl [-].
func (l line) equivalent(wp, wl float64) float64 {
	most := 0.0
	for _, x := range [...]float64{wp*l.pressureMost + wl*math.Max(l.loadMost, 0), wp*l.pressureLeast + wl*math.Min(l.loadLeast, 0)} {
		h := wp * l.hoop
		most = math.Max(most, math.Sqrt(h*h-h*x+x*x))
	}
	return most
}
