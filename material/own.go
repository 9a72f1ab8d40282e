package material

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// An Own is a material whose values the user states; a number not given is NaN.
type Own struct {
	Family         string  // ferritic, austenitic, aluminium, titanium
	Yield          float64 // Rp0.2 [Pa]
	Ultimate       float64 // Rm [Pa]
	ElasticModulus float64 // E [Pa]
	Poisson        float64 // ν [-]
	Density        float64 // ρ [kg/m3]
	Expansion      float64 // α [1/K]
	Elongation     float64 // A [-]
	Allowable      float64 // caps S [Pa]
	WeldedYield    float64 // across a weld [Pa]
	WeldedUltimate float64 // across a weld [Pa]
	Source         string  // where the values come from
}

// Bounds inside which the zone of an own steel is taken equal to its parent:
// above them it is cold-worked or quenched, and a weld softens it.
const (
	annealedAusteniticYield = 300e6 // [Pa]
	normalisedYield         = 460e6 // [Pa]
)

// Parent returns the stated values at T [K]; yield and ultimate are required,
// what else is not stated is NaN and leaves the checks that need it not
// assessed. They are kept from any cold up to
// 323 K and refused above, as nothing is known of their loss of strength. Own
// ferritic steel is taken as brittle below 0 °C: its toughness is not stated.
func (o Own) Parent(T float64) (Properties, error) {
	if err := o.sane(); err != nil {
		return Properties{}, err
	}
	if !(T >= 1 && T <= hotGrace) {
		return Properties{}, fmt.Errorf("own values hold up to 50 °C, the metal is at %.4g °C: its strength there is not stated", T-zeroCelsius)
	}
	v := func(x float64) Value {
		if !(x > 0) || math.IsInf(x, 0) {
			return missing
		}
		return Value{Value: x, Source: check.Source{Doc: o.Source, Where: "stated in the tank file", How: check.Read}}
	}
	p := Properties{
		Yield: v(o.Yield), Proof1: missing, Ultimate: v(o.Ultimate), RoomYield: o.Yield, RoomUltimate: o.Ultimate,
		Elongation: v(o.Elongation), ElasticModulus: v(o.ElasticModulus), Poisson: v(o.Poisson), Density: v(o.Density),
		Expansion: v(o.Expansion), Allowable: v(o.Allowable).Value, Row: "own values: " + o.Source,
		Family: o.Family, Group: "own " + o.Family,
	}
	if T > roomTemperature {
		p.Notes = append(p.Notes, "own values kept up to 50 degC")
	}
	if o.Family == Ferritic && T < zeroCelsius {
		p.Brittle = fmt.Errorf("own ferritic steel at %.4g K: no toughness is known below 0 degC", T)
	}
	return p, nil
}

// sane reports what is missing among the stated values or out of its sense.
func (o Own) sane() error {
	switch o.Family {
	case Ferritic, Austenitic, Aluminium, Titanium:
	default:
		return fmt.Errorf("family %q of an own material must be ferritic, austenitic, aluminium or titanium", o.Family)
	}
	if o.Source == "" {
		return errors.New("an own material needs its source")
	}
	for _, need := range []struct {
		name  string
		value float64
		must  bool
	}{
		{"yield", o.Yield, true}, {"ultimate", o.Ultimate, true}, {"elastic_modulus", o.ElasticModulus, false},
		{"poisson", o.Poisson, false}, {"density", o.Density, false}, {"allowable", o.Allowable, false},
		{"welded_yield", o.WeldedYield, false}, {"welded_ultimate", o.WeldedUltimate, false},
	} {
		if given := !math.IsNaN(need.value); (given || need.must) && (!(need.value > 0) || math.IsInf(need.value, 0)) {
			return fmt.Errorf("%s of an own material must be given and greater than zero", need.name)
		}
	}
	if o.Yield > o.Ultimate {
		return errors.New("yield of the own material is above its ultimate")
	}
	if o.Poisson >= 0.5 {
		return errors.New("poisson of the own material must be below 0.5")
	}
	return nil
}

// WeldZone returns the stated welded values at T [K], never above the parent.
// Without them the zone of normalised ferritic and annealed austenitic steel is
// the parent; any other is not assessed.
func (o Own) WeldZone(T float64) (Properties, error) {
	p, err := o.Parent(T)
	if err != nil {
		return p, err
	}
	if o.WeldedYield > 0 && o.WeldedUltimate > 0 {
		source := p.Yield.Source
		p.Softened = o.WeldedYield < o.Yield || o.WeldedUltimate < o.Ultimate
		p.RoomYield, p.RoomUltimate = min(o.WeldedYield, o.Yield), min(o.WeldedUltimate, o.Ultimate)
		p.Yield, p.Ultimate = Value{Value: p.RoomYield, Source: source}, Value{Value: p.RoomUltimate, Source: source}
		p.Elongation = missing
		p.Row += ", welded"
		return p, nil
	}
	soft := o.Family != Ferritic && o.Family != Austenitic ||
		o.Family == Austenitic && o.Yield > annealedAusteniticYield || o.Family == Ferritic && o.Yield > normalisedYield
	if soft || o.WeldedYield > 0 || o.WeldedUltimate > 0 {
		return Properties{}, fmt.Errorf("the weld zone of an own %s of yield %.4g MPa needs welded_yield and welded_ultimate with source", o.Family, o.Yield/mpa)
	}
	p.Notes = append(p.Notes, "weld zone taken equal to the parent (practice)")
	return p, nil
}
