package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/loads"
	"proofsheet/report"
	"proofsheet/report/check"
)

const sloshID, sloshTitle = "tank/slosh", "Tank: slosh within the linear first mode"

// swung returns the state with the slosh of its case, or the state itself where none
// is asked for or there is no formula for it, which [checkSlosh] then says.
func swung(s *loads.State, c *loadCase) *loads.State {
	if c.slosh == nil {
		return s
	}
	if with, err := s.Sloshing(*c.slosh); err == nil {
		return with
	}
	return s
}

// checkSlosh says whether the slosh that a case asks for is in a state's loads.
func checkSlosh(s *loads.State, c *loadCase) check.Result {
	if s.Liquid.Mass == 0 {
		return check.NotApplicableTo(sloshID, sloshTitle, "the tank is dry in this case")
	}
	F, p, bound := s.SloshForce()
	if F == 0 {
		_, err := s.Sloshing(*c.slosh)
		return check.NotMade(sloshID, sloshTitle, fmt.Errorf("slosh_amplitude is written and slosh is not in the loads of this case: %w", err))
	}
	mode, err := s.SloshMode()
	const ξ = loads.FirstSloshRoot
	T := math.Tanh(ξ * mode.Depth / mode.Radius)
	r := check.Result{ID: sloshID, Title: sloshTitle, Factor: 1, Err: err,
		Formula: "η ≤ R/(ξ T); p = ρ a_x η; F = p π R² T/ξ",
		Inputs: []check.Quantity{
			check.M("R", "inside radius", mode.Radius), check.M("h", "depth of a flat bottom with the same liquid", mode.Depth),
			check.Num("ξ", "first zero of J1′", ξ), check.Num("T", "tanh(ξ h/R)", T), check.KgPerM3("ρ", "density", mode.Density),
			{Symbol: "a_x", Name: "acceleration that presses the liquid aft", Value: mode.Acceleration, Unit: "m/s2"},
			check.M("η", "height of the slosh on the wall", *c.slosh), check.Pa("p", "pressure it adds at the level", p), check.N("F", "force across the tank", F),
		},
		Demand:   check.M("η", "height of the slosh on the wall", *c.slosh),
		Capacity: check.M("R/(ξ T)", "height at which the surface would fall freely", mode.Radius/(ξ*T)),
		Source:   check.Source{Doc: "NASA SP-106, linear potential theory", Where: "ch. 2, recalled; linear range to 0.25 R common practice", How: check.Memory},
		Note:     "Within 0.25 R, the end of the linear range. The crest on one side, the trough on the other and the force are in every pressure and line load of this case.",
	}
	if bound {
		r.Formula = "η ≤ R/(ξ T); p = ρ a_x η; F = p π R d"
		r.Inputs = append(r.Inputs, check.M("d", "whole depth of the liquid", F/(p*math.Pi*mode.Radius)))
		r.Note += " The liquid is shallower than the radius over a curved bottom: the pressure is not let fall with depth, and the force is a bound from above."
	}
	return r
}

// stillDriver is 1 where a state lacks the slosh that its case asks for, so that an
// instant of a history at which there is no formula for it is among those looked at;
// −Inf elsewhere [-].
func stillDriver(s *loads.State) float64 {
	if F, _, _ := s.SloshForce(); F == 0 && s.Liquid.Mass > 0 {
		return 1
	}
	return math.Inf(-1)
}

// slosh returns the first mode of a state whose level stands in the cylinder. A
// liquid that lies on the forward head or has no push along the axis has none here.
func (m *model) slosh(s *loads.State) (loads.Slosh, error) {
	if z := s.SurfaceZ(); !(s.Acceleration.Axial > 0 && z > 0 && z <= m.t.Cylinder.Length) {
		return loads.Slosh{}, errors.New("the level of the liquid does not stand in the cylinder, pressed aft")
	}
	return s.SloshMode()
}

// sloshQuantities returns what is known of the first mode in a case: the lowest
// frequency, the largest mass that swings, and where the case asks for slosh the
// largest force and pressure; NaN, with the reason, where there is none.
func (m *model) sloshQuantities(c *loadCase) []report.NamedQuantity {
	f, mass, why := m.firstMode(c)
	force, wall, still := sloshLoads(c)
	of := func(key string, v float64, unit, note, none string) report.NamedQuantity {
		if math.IsNaN(v) {
			note = none
		}
		return report.NamedQuantity{Key: "slosh." + key + "@" + c.name, Value: v, Unit: unit, Note: note}
	}
	return []report.NamedQuantity{
		of("frequency", f, "Hz", "lowest, of the first mode", why), of("mass", mass, "kg", "largest, that swings in the first mode", why),
		of("force", force, "N", join("largest, across the tank", still), still), of("wall_pressure", wall, "Pa", join("largest, at the level", still), still),
	}
}

// firstMode returns the lowest frequency [Hz] and the largest mass [kg] of the first
// mode over the states of a case; NaN, with the reason, where no state has one.
func (m *model) firstMode(c *loadCase) (frequency, mass float64, why string) {
	frequency, mass = math.NaN(), math.NaN()
	for _, s := range c.states {
		mode, err := m.slosh(s)
		if err != nil {
			why = err.Error()
			continue
		}
		if v, err := mode.Frequency(); err == nil && !(frequency <= v) {
			frequency = v
		}
		if v, _, err := mode.Mass(); err == nil && !(mass >= v) {
			mass = v
		}
	}
	return frequency, mass, why
}

// sloshLoads returns the largest force across the tank [N] and pressure on the wall [Pa]
// that slosh puts into the loads of a case; NaN without any, and what is missing.
func sloshLoads(c *loadCase) (force, wall float64, missing string) {
	force, wall = math.NaN(), math.NaN()
	if c.slosh == nil {
		return force, wall, "slosh_amplitude is not written: slosh is not in the loads"
	}
	for _, s := range c.states {
		F, p, _ := s.SloshForce()
		if F == 0 {
			missing = "slosh is not in every state of the case: see " + sloshID
			continue
		}
		if !(force >= F) {
			force, wall = F, p
		}
	}
	return force, wall, missing
}

// join puts two remarks into one.
func join(a, b string) string {
	if b == "" {
		return a
	}
	return a + "; " + b
}

// sloshNotes names the cases away from the ground that have a level in their cylinder
// and ask for no slosh, and says what the usual amplitude would add at the most.
func (r *run) sloshNotes() []string {
	var names []string
	var worst usualSlosh
	for _, c := range r.cases {
		if c.slosh != nil || c.ground || c.name == "meop" {
			continue
		}
		if u := r.usualSlosh(c); u.force > 0 {
			names = append(names, c.name)
			if u.force > worst.force {
				worst = u
			}
		}
	}
	if names == nil {
		return nil
	}
	const shown = 6
	which := strings.Join(names[:min(shown, len(names))], ", ")
	if len(names) > shown {
		which += fmt.Sprintf(" and %d more", len(names)-shown)
	}
	rise := 250 * r.cyl.radius
	return []string{fmt.Sprintf("Slosh is not in the loads of case %s. Swinging 0.25 R = %.4g mm high on the wall (common practice where nobody measured) it would add at most about %.3g kPa there, %.3g N across and %.3g N m about the bottom (case %s); write slosh_amplitude = \"%.4g mm\" to put it in.",
		which, rise, worst.wall/1e3, worst.force, worst.foot, worst.name, rise)}
}

// A usualSlosh is what the usual amplitude would add to a case.
type usualSlosh struct {
	name              string
	force, wall, foot float64 // across [N], on the wall [Pa], about the bottom [N m]
}

// usualSlosh finds it at the state of a case where its force is largest.
func (m *model) usualSlosh(c *loadCase) (most usualSlosh) {
	for _, s := range c.states {
		mode, err := m.slosh(s)
		if err != nil {
			continue
		}
		η := mode.UsualAmplitude()
		if F, M, err := mode.Force(η); err == nil && F > most.force {
			most = usualSlosh{c.name, F, mode.Density * mode.Acceleration * η, M}
		}
	}
	return most
}
