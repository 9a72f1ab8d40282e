package proof

import (
	"math"
)

const (
	volumeUncertainty      = 1e-6  // of a volume reading [m3], practice
	volumeUncertaintyShare = 0.003 // or this share of it, the larger [-], practice
	stopShare              = 0.02  // departure that stops the test, share of the volume [-], practice
)

// A Reading is what the people at the test should see at one step.
type Reading struct {
	Step        Step
	Pressure    float64  // true pressure the reading is worked for [Pa]
	Injected    Injected // and its shares; without Wall it is the liquid alone
	Strains     Strains  // of the cylinder, clear of its junctions
	StopBand    float64  // departure of the injected volume that stops the test [m3]
	Stiffness   float64  // dV/dp there [m3/Pa]
	WithoutWall float64  // volume a rigid wall would take [m3]
}

// Readings returns what to expect at every step of the plan, in a tank as f,
// whose cylinder has the wall w and the mid-surface radius r [m]. They are
// worked for p − u_g of the step's share, the lowest that the gauge can mean.
//
// The test stops where the measured volume departs from the predicted one by
// more than
//
//	max(2 u_V, 2 % of V_inj),  u_V = max(1 ml, 0.3 % of V_inj)
//
// Source: volumes and strains as [Full.Injected] and [Wall.CylinderStrains];
// the band, practice.
func (p *Plan) Readings(f Full, w Wall, r float64) ([]Reading, error) {
	var list []Reading
	for _, s := range p.Steps {
		at := s.Pressure * (1 - p.GaugeUncertainty/p.Setting)
		v, err := f.Injected(at)
		if err != nil {
			return nil, err
		}
		c, err := f.Stiffness(at)
		if err != nil { // not reached: Injected has the same range
			return nil, err
		}
		ε, err := w.CylinderStrains(at, r)
		if err != nil {
			return nil, err
		}
		list = append(list, Reading{Step: s, Pressure: at, Injected: v, Strains: ε,
			StopBand: StopBand(v.Total), Stiffness: c, WithoutWall: v.Liquid + v.Air})
	}
	return list, nil
}

// StopBand returns the departure of the injected volume [m3] that stops the
// test, where the predicted one is v [m3]: max(2 u_V, 2 % of V). Practice.
func StopBand(v float64) float64 {
	u := math.Max(volumeUncertainty, volumeUncertaintyShare*v)
	return math.Max(2*u, stopShare*v)
}
