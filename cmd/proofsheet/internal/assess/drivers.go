package assess

import (
	"math"

	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/shell"
)

// drivers returns every load that can govern a check of the tank in one case,
// each so that more is worse: pressure from inside and from outside on each part
// and at each port; at each seam the line load in tension and in compression, with
// the load and the pressure each at its most and its least, and the pull of the
// head that hangs there with the liquid, its own weight left out; the equivalent
// stress of hoop and line load, per thickness; how much of the resistance against
// buckling is used, with the metal at its warmest, and the load on the column; the
// liquid's volume, what the change of temperature at the level asks, and whether slosh
// that was asked for has no formula. Moment and axial
// force are greatest at an end of the cylinder. Their number and order are the same
// in every case of one tank.
func (m *model) drivers(c *loadCase, ws driverWeights) ([]float64, error) {
	var out []float64
	for _, s := range c.states {
		out = append(m.pressureDrivers(out, s), s.LiquidVolume())
		if c.slosh != nil {
			out = append(out, stillDriver(s))
		}
		var ends [2]line
		for i, z := range [...]float64{0, m.t.Cylinder.Length} {
			line, err := m.lineAt(s, c, z)
			if err != nil {
				return nil, err
			}
			ends[i] = line
			head := line // beyond the joint: no loads, and the liquid hangs from it
			head.pressureMost += math.Max(0, s.Acceleration.Axial) * loads.StandardGravity * s.Liquid.Mass / (2 * math.Pi * m.cyl.mid())
			head.loadMost, head.loadLeast = 0, 0
			out = append(out, head.pressureMost)
			out = append(out, line.pressureMost, line.pressureLeast, line.loadMost, -line.loadLeast,
				line.pressureMost+line.loadMost, -(line.pressureLeast + line.loadLeast), -(line.pressureLeast + ws.stability*line.loadLeast))
			for _, w := range ws.strength {
				out = append(out, line.equivalent(w.pressure, w.load), head.equivalent(w.pressure, 0), w.pressure*line.pressureMost+w.load*math.Max(line.loadMost, 0))
			}
			use, column, err := m.stabilityDrivers(s, c, ws, z)
			if err != nil {
				return nil, err
			}
			out = append(out, use, column)
		}
		inside, elsewhere := m.levelDrivers(s, c, ws, ends)
		out = append(out, inside, elsewhere)
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
	wet := 0
	if s.Liquid.Mass > 0 {
		wet = 1
	}
	if held := ws.bandAt(c.metal).held[wet]; held.err == nil {
		l.compression += m.heldForce(held)
	} // else no instant is assessed
	column = l.compression + math.Abs(s.Acceleration.Axial)*loads.StandardGravity*s.Liquid.Mass
	if ws.cylinder == nil || ws.cylinder.err != nil {
		return 0, column, nil // no check of it can be made at any instant
	}
	use, bad := ws.cylinder.at(math.Min(c.least, 0)-c.gust).Ratio(l.station(), c.standsBare())
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

// levelDrivers are how much the change of temperature at the level asks of the wall, with
// pressure and line loads: while a level stands in the cylinder, and while there is liquid
// but none does; −Inf while that is not so [Pa]. Both senses are in it: the liquid's
// farther end from the metal as it is at that instant is taken. Of ends that hold the tank,
// the stress is the same all through a band.
func (m *model) levelDrivers(s *loads.State, c *loadCase, ws driverWeights, ends [2]line) (inside, elsewhere float64) {
	inside, elsewhere = math.Inf(-1), math.Inf(-1)
	if s.Liquid.Mass == 0 {
		return inside, elsewhere
	}
	L := m.t.Cylinder.Length
	cond := shell.Condition{}
	cond.Pressure, _ = s.HighestPressure(0, L)
	cond.AxialMost, cond.AxialLeast = math.Max(ends[0].pressureMost, ends[1].pressureMost), math.Min(ends[0].pressureLeast, ends[1].pressureLeast)
	cond.LoadMost, cond.LoadLeast = math.Max(0, math.Max(ends[0].loadMost, ends[1].loadMost)), math.Min(0, math.Min(ends[0].loadLeast, ends[1].loadLeast))
	_, step := m.farthest(c.metal)
	x := ws.bandAt(c.metal)
	cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: L}
	use := cond.Pressure
	if th, err := cyl.TemperatureStep(x.metal, x.α*step, c.ramp); err == nil {
		if σ := worstThermal(cond, cyl, th, x.metal.Poisson, x.held[1]); !math.IsNaN(σ) && !math.IsInf(σ, 0) {
			use = σ
		}
	} // without the metal's numbers no instant is assessed, and one of them is enough
	if m.levelInside(s) {
		return use, elsewhere
	}
	return inside, use
}

// A bandMetal is the cylinder's metal in one band of temperature, for the drivers.
type bandMetal struct {
	hottest float64 // [K]
	metal   shell.Elastic
	α       float64     // [1/K]
	held    [2]heldWall // what held ends do, without and with liquid
}

// bandMetals resolves them before the instants are looked at side by side.
func (m *model) bandMetals(bands []band) (out []bandMetal) {
	for _, b := range bands {
		x := m.metals.at(m.cyl.material, "", m.cyl.nominal, b.hottest).parent
		y := bandMetal{hottest: b.hottest, metal: shell.Elastic{Modulus: x.ElasticModulus.Value, Poisson: x.Poisson.Value}, α: x.Expansion.Value}
		if m.t.Support.At == "both" {
			y.held = [2]heldWall{m.heldBetween(b.coldest, b.hottest, false), m.heldBetween(b.coldest, b.hottest, true)}
		}
		out = append(out, y)
	}
	return out
}

// bandAt returns the band of a temperature of the metal [K].
func (ws driverWeights) bandAt(T float64) bandMetal {
	for _, b := range ws.bands {
		if T <= b.hottest {
			return b
		}
	}
	return ws.bands[len(ws.bands)-1] // not reached: the last band ends at the hottest
}

// A weight is what pressure and load are multiplied by in a check [-].
type weight struct{ pressure, load float64 }

// driverWeights are the factors with which a rule adds pressure and load.
type driverWeights struct {
	strength  []weight
	stability float64 // on loads, in stability [-]
	cylinder  *stableCylinder
	bands     []bandMetal
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
