package material

import "errors"

// A Query asks for the properties of one material of the tank.
type Query struct {
	Alloy, Spec, Product string
	Thickness            float64 // of the stock, nominal [m]
	Temperature          float64 // of the metal [K]
	ColdStrength         bool    // opts in to strength above the room value when cold
	Process              string  // tig, mig, or "" for not stated
}

// Properties are what the checks use of one material at one temperature.
type Properties struct {
	Yield, Proof1, Ultimate Value   // Rp0.2, Rp1.0, Rm at temperature [Pa]
	RoomYield, RoomUltimate float64 // minima at room temperature [Pa]
	Elongation              Value   // A [-]
	ElasticModulus          Value   // E at temperature [Pa]
	Poisson                 Value   // ν [-]
	Density                 Value   // ρ [kg/m3]
	Expansion               Value   // mean α from 293 K [1/K]
	Allowable               float64 // cap of an own material [Pa]; NaN: none
	Row                     string  // product, spec, thickness, basis in words
	Notes                   []string
	Brittle                 error // not nil: brittle at this temperature
	Family                  string
	Group                   string
	Softened                bool // weld zone weaker than the parent
}

// Parent returns the properties of the wall away from welds.
func (q Query) Parent() (Properties, error) { return Properties{}, errors.New("not assessed") }

// WeldZone returns the properties across a fusion weld.
func (q Query) WeldZone() (Properties, error) { return Properties{}, errors.New("not assessed") }

// An Own is a material whose values the user states.
type Own struct {
	Family         string  // ferritic, austenitic, aluminium, titanium
	Yield          float64 // [Pa]
	Ultimate       float64 // [Pa]
	ElasticModulus float64 // [Pa]
	Poisson        float64 // [-]
	Density        float64 // [kg/m3]
	Expansion      float64 // [1/K]
	Elongation     float64 // [-]
	Allowable      float64 // [Pa]
	WeldedYield    float64 // [Pa]
	WeldedUltimate float64 // [Pa]
	Source         string
}

// Parent returns the properties at T [K].
func (o Own) Parent(T float64) (Properties, error) { return Properties{}, errors.New("not assessed") }

// WeldZone returns the properties across a weld at T [K].
func (o Own) WeldZone(T float64) (Properties, error) { return Properties{}, errors.New("not assessed") }
