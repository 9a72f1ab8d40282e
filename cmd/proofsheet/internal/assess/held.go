package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// A heldWall is what ends that hold the tank between them do to the cylinder in one
// state: warmer than when they were made fast it is pressed, colder it is pulled.
type heldWall struct {
	push, pull                 float64 // largest axial stress, compression and tension, each 0 or more [Pa]
	assembly, coldest, warmest float64 // of the wall [K]
	err                        error
}

// heldEnds returns it; nothing where one end is free.
func (m *model) heldEnds(s *loads.State, c *loadCase) heldWall {
	if m.t.Support.At != "both" {
		return heldWall{}
	}
	return m.heldBetween(c.metal, c.temperature, s.Liquid.Mass > 0)
}

// heldBetween returns what held ends do to a wall between its coldest and its warmest
// temperature [K]; where there is liquid, the wall may be as cold or as warm as that.
// The ends do not give: no more stress can arise. With the mean α from 20 °C of the
// wall at T the strain from one temperature to another is
//
//	ε = α(T) (T − 20 °C) − α(T_a) (T_a − 20 °C), σ = E |ε|
//
// with the modulus of the stiffest temperature. Source: [shell.Elastic.RestrainedStress].
func (m *model) heldBetween(coldest, warmest float64, wet bool) heldWall {
	if wet {
		coldest, warmest = math.Min(coldest, m.t.Contents.Coldest), math.Max(warmest, m.t.Contents.Warmest)
	}
	h := heldWall{coldest: coldest, warmest: warmest, push: math.NaN(), pull: math.NaN()}
	at := m.t.Support.AssemblyTemperature
	if at == nil {
		h.err = errors.New(`both ends hold the tank, and how warm it was when they were made fast is not known: write support.assembly_temperature = "20 degC", or at = "aft" or "forward" where the other end slides`)
		return h
	}
	h.assembly = *at
	metal := shell.Elastic{}
	strain := func(T float64) float64 {
		x := m.metals.at(m.cyl.material, "", m.cyl.nominal, T)
		h.err = errors.Join(h.err, x.parentErr)
		metal.Modulus, metal.Poisson = math.Max(metal.Modulus, x.parent.ElasticModulus.Value), x.parent.Poisson.Value
		return x.parent.Expansion.Value * (T - roomTemperature)
	}
	made, cold, warm := strain(h.assembly), strain(coldest), strain(warmest)
	if h.err != nil {
		return h
	}
	push, err := metal.RestrainedStress(math.Max(warm-made, 0), 0)
	pull, other := metal.RestrainedStress(math.Min(cold-made, 0), 0)
	if err = errors.Join(err, other); err != nil || math.IsNaN(push+pull) {
		h.err = errors.Join(err, fmt.Errorf("the expansion, the modulus or Poisson's ratio of %s is not known", m.cyl.material))
		return h
	}
	h.push, h.pull = math.Abs(push), math.Abs(pull)
	return h
}

// heldForce returns the compression between held ends of the cylinder's least wall [N].
func (m *model) heldForce(h heldWall) float64 {
	return h.push * 2 * math.Pi * m.cyl.mid() * m.cyl.least
}

// inputs are what a check prints of it; nothing where one end is free.
func (h heldWall) inputs() []check.Quantity {
	if h.assembly == 0 {
		return nil
	}
	return []check.Quantity{check.K("T_a", "the tank when both ends were made fast", h.assembly),
		check.K("T_min", "wall at its coldest", h.coldest), check.K("T_max", "wall at its warmest", h.warmest)}
}
