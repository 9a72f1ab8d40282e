package material

import "proofsheet/report/check"

// A Value is a number with its provenance. A missing one is NaN, and its Note
// says why.
type Value struct {
	Value  float64      // in the SI unit of its property [see field]
	Source check.Source // document, place, how obtained
	Note   string       // what the reader must know beside it
}

// A Point is one point of a property's curve over temperature.
type Point struct {
	T     float64 // [K]
	Value float64 // in the SI unit of the property [see Curve]
}

// A Curve is a property over temperature, interpolated linearly between its
// points and never beyond them.
type Curve struct {
	Points []Point
	Source check.Source
	Note   string
}

// A Strength is one row of minima: a product, to a specification, in a range
// of thickness.
type Strength struct {
	Product, Spec                 string
	LeastThickness, MostThickness float64 // [m]
	Direction                     string  // of the test piece
	Basis                         string  // spec_min, A, S, or typical, which is never used
	Yield                         Value   // Rp0.2 [Pa]
	Proof1                        Value   // Rp1.0 [Pa]
	Ultimate                      Value   // Rm [Pa]
	Elongation                    Value   // A [-]
	Hardened                      bool    // quenched and tempered: a weld needs coupons
	CompressiveYield              Value   // Rc0.2 [Pa]
	Shown                         string  // not empty: shown only, never used, and why
}

// A HotTable holds absolute minima at temperature.
type HotTable struct {
	Spec, Basis             string
	Shown                   string // not empty: shown only, never used, and why
	Yield, Proof1, Ultimate Curve  // [Pa]
	Elongation              Curve  // [-]
}

// A Zone is one published row of strength across a fusion weld.
type Zone struct {
	Kind                          string  // haz, minimum, annealed, class, typical
	Product                       string  // product or filler it is for
	LeastThickness, MostThickness float64 // [m]
	Yield, Ultimate               Value   // [Pa]
}

// A Toughness is a fracture toughness, shown only.
type Toughness struct {
	Temperature float64 // [K]
	Quantity    string  // K_Ic, K_Jc
	Toughness   Value   // [Pa m^0.5]
}

// An Alloy is one alloy in one temper.
type Alloy struct {
	Name, Title      string
	Designations     []string
	Family           string // austenitic, duplex, ferritic, aluminium, titanium
	Group            string // finer, in words
	Temper           string
	ColdBrittle      bool    // body-centred cubic
	LeastTemperature float64 // lowest use [K]
	MostTemperature  float64 // highest use [K]
	Density          Value   // [kg/m3]
	Poisson          Value   // [-]
	Modulus          Curve   // E [Pa]
	ModulusLike      string  // alloy whose E(T)/E(293 K) serves outside Modulus
	Contraction      Curve   // ΔL/L from 293 K [-]
	Expansion        Curve   // mean from 293 K [1/K]
	Rows             []Strength
	YieldRatio       Curve // Rp0.2(T)/Rp0.2(293 K) [-]
	UltimateRatio    Curve // Rm(T)/Rm(293 K) [-]
	Hot              []HotTable
	Zones            []Zone
	WeldRatio        Value // strength of a weld over that of the parent [-]; no source: not stated
	Toughness        []Toughness
	Cautions         []string
}

// Alloys returns every alloy, by family.
func Alloys() []Alloy {
	all := make([]Alloy, len(families))
	for i, a := range families {
		all[i] = *a
	}
	return all
}

// FindAlloy returns the alloy of that name. A designation serves too where it
// belongs to one alloy only and says the temper, which it does not for
// aluminium.
func FindAlloy(name string) (*Alloy, bool) {
	var found []*Alloy
	for _, a := range families {
		if a.Name == name {
			return a, true
		}
		for _, d := range a.Designations {
			if a.Family != Aluminium && (d == name || d == "EN "+name || d == "UNS "+name) {
				found = append(found, a)
			}
		}
	}
	if len(found) != 1 {
		return nil, false
	}
	return found[0], true
}

// AlloyNames returns the names of all alloys, by family.
func AlloyNames() []string {
	names := make([]string, len(families))
	for i, a := range families {
		names[i] = a.Name
	}
	return names
}
