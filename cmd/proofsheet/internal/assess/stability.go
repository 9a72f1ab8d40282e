package assess

import (
	"math"

	"proofsheet/loads"
)

// A stabilityLoad is what acts on the cylinder's ring at one station, for
// stability: limit loads, no factor in them. What relieves is at its smallest
// simultaneous value, and stands beside the load it relieves, never taken off it.
type stabilityLoad struct {
	z             float64 // station [m]
	compression   float64 // resultant of loads that compress, liquid below a taper and held ends included [N]
	held          float64 // of it what held ends do to a wall warmer than when they were made fast [N]
	pull          float64 // of loads that pull and are always there [N]
	liquidPull    float64 // of liquid that stands higher than a cylinder's own [N]
	moment        float64 // [N m]
	shear         float64 // [N]
	pressureLeast float64 // ullage pressure across the wall, with sign [Pa]
	pressureMost  float64 // local pressure, liquid head included [Pa]
	liquidHead    float64 // what the liquid adds to it [Pa]
	wind          float64 // pressure of the gust on the wall [Pa]
}

// stabilityLoads returns the loads at the stations of the cylinder in one state: both
// ends, the quarters, and where forces are quoted. A load that pulls counts only
// where the case says that it is always present.
func (m *model) stabilityLoads(s *loads.State, c *loadCase) ([]stabilityLoad, error) {
	b, held := m.body(c), m.heldEnds(s, c)
	if held.err != nil {
		return nil, held.err
	}
	var out []stabilityLoad
	for _, z := range m.cylinderStations(c) {
		l, err := stabilityAt(s, c, b, z)
		if err != nil {
			return nil, err
		}
		l.held = m.heldForce(held)
		l.compression += l.held
		out = append(out, l)
	}
	return out, nil
}

// stabilityAt returns the load at one station z [m].
func stabilityAt(s *loads.State, c *loadCase, b loads.Body, z float64) (stabilityLoad, error) {
	f, err := s.FreeBody(z, b)
	l := stabilityLoad{z: z, compression: math.Max(0, -f.LoadLeast) + math.Max(0, -f.LiquidLeast),
		liquidPull: math.Max(0, f.LiquidLeast), moment: f.Moment, shear: f.Shear,
		pressureLeast: c.least, pressureMost: s.PressureWorst(z), wind: c.gust}
	if c.present {
		l.pull = math.Max(0, f.LoadLeast)
	}
	l.liquidHead = l.pressureMost - s.UllagePressure
	return l, err
}

// columnLoad returns what presses on the tank as a strut in one state [N]: the
// external load with what held ends do, largest along the cylinder, and the weight of all the liquid that
// stands forward of that section, aft of it where it is pressed forward. Pressure neither helps nor harms.
func (m *model) columnLoad(s *loads.State, c *loadCase) (external, liquid float64, err error) {
	b, held := m.body(c), m.heldEnds(s, c)
	if held.err != nil {
		return math.NaN(), math.NaN(), held.err
	}
	most := math.Inf(-1)
	for _, z := range m.cylinderStations(c) {
		f, err := s.FreeBody(z, b)
		if err != nil {
			return math.NaN(), math.NaN(), err
		}
		load := math.Max(0, -f.LoadLeast) + m.heldForce(held)
		weight := columnWeight(s, z)
		if all := load + weight; !(all <= most) { // a sum that is no number is kept, for the check to refuse
			external, liquid, most = load, weight, all
		}
	}
	return external, liquid, nil
}

// columnWeight returns the weight under the axial load factor of the liquid that bears
// on the tank as a strut at z [m]: forward of it, aft of it where it is pressed forward
// [N]. Without an axial factor the liquid weighs nothing, wherever it floats.
func columnWeight(s *loads.State, z float64) float64 {
	switch n := s.Acceleration.Axial * loads.StandardGravity; {
	case n > 0:
		return n * s.MassForward(z)
	case n < 0:
		return -n * s.MassAft(z)
	}
	return 0
}

// cylinderStations returns where the cylinder's wall is looked at [m].
func (m *model) cylinderStations(c *loadCase) []float64 {
	L := m.t.Cylinder.Length
	stations := append([]float64{0, L / 4, L / 2, 3 * L / 4, L}, m.t.Cylinder.GirthStations...)
	for _, q := range c.sections {
		if q.Station > 0 && q.Station < L {
			stations = append(stations, q.Station)
		}
	}
	return stations
}

// pressureLeast returns the smallest simultaneous pressure as a share of the
// pressure [-]: that of the ullage, since the liquid's head only raises the share.
// From outside there is no relief, and the share is 1.
func (c *loadCase) pressureLeast() float64 {
	if !(c.ullage > 0) || c.least >= c.ullage {
		return 1
	}
	return math.Max(c.least, 0) / c.ullage
}

// standsBare reports whether a case must stand without any pressure: on the
// ground and wherever somebody may be near.
func (c *loadCase) standsBare() bool { return c.ground || c.people != "clear" }
