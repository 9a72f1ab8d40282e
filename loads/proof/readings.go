package proof

import (
	"math"
)

const (
	volumeUncertainty      = 1e-6   // of a volume reading [m3], practice
	volumeUncertaintyShare = 0.003  // or this share of it, the larger [-], practice
	stopShare              = 0.02   // departure that stops the test, share of the volume [-], practice
	readingsOfHold         = 10     // of a long hold at least [-], practice
	readingsApart          = 2 * 60 // and not asked more often than this [s], practice
)

// A Reading is what the people at the test should see at one step in a tank full of
// liquid.
type Reading struct {
	Step        Step
	Pressure    float64  // true pressure the reading is worked for [Pa]
	Injected    Injected // and its shares; without Wall it is the liquid alone
	Added       float64  // to the volume of the step before, from an open vent for the first; below zero it comes back [m3]
	StopBand    float64  // departure of the volume that stops the test; NaN where none is told [m3]
	Stiffness   float64  // dV/dp there [m3/Pa]
	WithoutWall float64  // volume a rigid wall would take [m3]
}

// Readings returns what to expect at every step of the plan in a tank as f. They are
// worked for the true pressure of [Plan.Strains].
//
// On the way up, above half the setting, the test stops where the volume departs by
// more than [StopBand] of it from what the earlier readings lead to expect.
//
// Source: volumes as [Full.Injected]; the band, practice.
func (p *Plan) Readings(f Full) ([]Reading, error) {
	var list []Reading
	before, was := 0.0, 0.0
	for _, s := range p.Steps {
		at := p.truly(s.Pressure)
		v, err := f.Injected(at)
		if err != nil {
			return nil, err
		}
		c, err := f.Stiffness(at)
		if err != nil { // not reached: Injected has the same range
			return nil, err
		}
		q := Reading{Step: s, Pressure: at, Injected: v, Added: v.Total - before, StopBand: math.NaN(), Stiffness: c, WithoutWall: v.Liquid + v.Air}
		if s.Pressure > was && s.Share >= departureFrom {
			q.StopBand = StopBand(v.Total)
		}
		before, was = v.Total, s.Pressure
		list = append(list, q)
	}
	return list, nil
}

// Strains returns what gauges on the outside of the plain cylinder should show at
// every step, of the wall w and the inside radius r [m]. They are worked for
// p − u_g of the step's share, the lowest that the gauge can mean.
//
// Source: as [Wall.ThickCylinderStrains].
func (p *Plan) Strains(w Wall, r float64) ([]Strains, error) {
	var list []Strains
	for _, s := range p.Steps {
		ε, err := w.ThickCylinderStrains(p.truly(s.Pressure), r)
		if err != nil {
			return nil, err
		}
		list = append(list, ε)
	}
	return list, nil
}

// truly returns the pressure that readings are worked for where the gauge shows so
// much [Pa].
func (p *Plan) truly(shown float64) float64 { return shown * (1 - p.GaugeUncertainty/p.Setting) }

// PlainFrom returns how far from the seams of the heads, from rings and from ports
// the strains of the plain cylinder hold, of the mid-surface radius r [m] [m]:
//
//	2.5 √(R t)
//
// There the bending of a junction has died down to about 4 %. Source: edge bending
// of a thin cylinder, computed.
func (w Wall) PlainFrom(r float64) float64 { return 2.5 * math.Sqrt(r*w.Thickness) }

// StopBand returns the departure of the injected volume [m3] that stops the
// test, where v [m3] has gone in: max(2 u_V, 2 % of V),
// u_V = max(1 ml, 0.3 % of V). The plan prints it, and the record judges by it.
// Practice.
func StopBand(v float64) float64 {
	u := math.Max(volumeUncertainty, volumeUncertaintyShare*v)
	return math.Max(2*u, stopShare*v)
}

// HoldReadings returns the longest time between two readings of a hold [s], from its
// length [s]: a tenth of it, and never under 2 min. Practice.
func HoldReadings(hold float64) float64 { return math.Max(readingsApart, hold/readingsOfHold) }
