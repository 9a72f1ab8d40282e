package assess

import (
	"errors"
	"math"

	"proofsheet/loads"
)

// slosh returns the first slosh mode of a state as that of a flat-bottomed tank of
// the same volume of liquid. A liquid that lies on the forward head, has no level
// in the cylinder or no push along the axis has none here.
func (m *model) slosh(s *loads.State) (loads.Slosh, error) {
	z := s.SurfaceZ()
	if !(s.Acceleration.Axial > 0 && z > 0 && z <= m.t.Cylinder.Length) {
		return loads.Slosh{}, errors.New("the level of the liquid does not stand in the cylinder, pressed aft")
	}
	R := m.cyl.radius
	return loads.Slosh{Radius: R, Depth: s.LiquidVolume() / (math.Pi * R * R),
		Acceleration: s.Acceleration.Axial * loads.StandardGravity, Density: s.Liquid.Density}, nil
}

// sloshFrequency returns the lowest frequency of the first mode over the states of
// a case [Hz]; NaN, with the reason, where no state has one.
func (m *model) sloshFrequency(c *loadCase) (float64, string) {
	least, why := math.Inf(1), ""
	for _, s := range c.states {
		mode, err := m.slosh(s)
		if err != nil {
			why = err.Error()
			continue
		}
		if f, err := mode.Frequency(); err != nil {
			why = err.Error()
		} else if f < least {
			least = f
		}
	}
	if math.IsInf(least, 1) {
		return math.NaN(), why
	}
	return least, "lowest, of the first mode"
}
