package unit

import (
	"math/big"
	"slices"
	"strings"
)

// A Kind is what a dimensioned value measures; it decides which units may
// stand behind the number.
type Kind int

// The kinds, with the SI unit that [Parse] returns.
const (
	Length           Kind = iota // [m]
	Area                         // [m2]
	Volume                       // [m3]
	Mass                         // [kg]
	Density                      // [kg/m3]
	Force                        // [N]
	Moment                       // [N m]
	Pressure                     // across the wall, also stress and modulus [Pa]
	AbsolutePressure             // above vacuum [Pa]
	Temperature                  // above absolute zero [K]
	Expansion                    // thermal strain per kelvin [1/K]
	Time                         // [s]
	Angle                        // [rad]
	Acceleration                 // [m/s2]
	Velocity                     // [m/s]
	Toughness                    // stress intensity [Pa m½]
	Strain                       // [-]
)

var kindNames = [...]string{
	"length", "area", "volume", "mass", "density", "force", "moment",
	"pressure", "absolute pressure", "temperature", "thermal expansion",
	"time", "angle", "acceleration", "velocity", "toughness", "strain",
}

var siUnits = [...]string{
	"m", "m2", "m3", "kg", "kg/m3", "N", "N m", "Pa", "Pa", "K", "1/K", "s", "rad", "m/s2", "m/s", "Pa m^0.5", "m/m",
}

var examples = [...]string{
	"3 mm", "5 mm2", "12 l", "40 kg", "786 kg/m3", "-35 kN", "3 kN m", "25 bar",
	"1.013 bara", "20 degC", "16e-6 1/K", "10 min", "30 deg", "9.81 m/s2", "4 m/s", "29 MPa m^0.5", "850 um/m",
}

// String returns the kind in words: "length", "absolute pressure".
func (k Kind) String() string { return kindNames[k] }

// SI returns the unit of the number that [Parse] returns for the kind, as
// written in check.Quantity.
func (k Kind) SI() string { return siUnits[k] }

// Example returns a value of the kind as a tank file holds it.
func (k Kind) Example() string { return examples[k] }

// Kinds returns every kind in order.
func Kinds() []Kind {
	ks := make([]Kind, len(kindNames))
	for i := range ks {
		ks[i] = Kind(i)
	}
	return ks
}

// A scale turns a number in one unit into SI: SI = (number + offset) · factor.
// Both are exact rationals; angle is in half turns, since π is none.
type scale struct {
	name   string
	factor *big.Rat
	offset *big.Rat // nil: none
}

func of(name, factor string) scale { return scale{name: name, factor: rat(factor)} }

// rat reads an exact number, "0.0254" or "5/9"; the table below is constant,
// so a slip in it is caught by the first test that runs.
func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("unit: bad constant " + s)
	}
	return r
}

// product returns the exact product of numbers written as text.
func product(name string, factors ...string) scale {
	r := big.NewRat(1, 1)
	for _, f := range factors {
		r.Mul(r, rat(f))
	}
	return scale{name: name, factor: r}
}

// Exact definitions: the inch is 0.0254 m and the pound 0.45359237 kg
// (international yard and pound agreement, 1959); standard gravity is
// 9.80665 m/s2 (3rd General Conference on Weights and Measures, 1901); the US
// gallon is 231 in3.
const (
	inch    = "0.0254"
	pound   = "0.45359237"
	gravity = "9.80665"
	perInch = "10000/254"
	// rootInch is √0.0254 to more digits than a float64 holds: it is no fraction.
	rootInch = "0.159373774505092286"
)

var stressUnits = []scale{
	of("Pa", "1"), of("kPa", "1000"), of("MPa", "1000000"), of("GPa", "1000000000"), of("bar", "100000"),
	product("psi", pound, gravity, perInch, perInch),
	product("ksi", "1000", pound, gravity, perInch, perInch),
	product("Msi", "1000000", pound, gravity, perInch, perInch),
}

var units = map[Kind][]scale{
	Length: {of("mm", "0.001"), of("cm", "0.01"), of("m", "1"), of("in", inch), of("ft", "0.3048")},
	Area:   {of("mm2", "0.000001"), of("cm2", "0.0001"), of("m2", "1"), product("in2", inch, inch)},
	Volume: {
		of("l", "0.001"), of("ml", "0.000001"), of("m3", "1"), of("cm3", "0.000001"), of("dm3", "0.001"), product("in3", inch, inch, inch),
		product("gal", "231", inch, inch, inch),
	},
	Mass:    {of("kg", "1"), of("g", "0.001"), of("lb", pound)},
	Density: {of("kg/m3", "1"), product("lb/in3", pound, perInch, perInch, perInch), product("lb/ft3", pound, perInch, perInch, perInch, "1/1728")},
	Force:   {of("N", "1"), of("kN", "1000"), product("lbf", pound, gravity), product("kip", "1000", pound, gravity)},
	Moment: {
		of("N m", "1"), of("kN m", "1000"), product("lbf in", pound, gravity, inch),
		product("lbf ft", pound, gravity, "0.3048"),
	},
	Pressure: append(slices.Clone(stressUnits), of("barg", "100000"),
		product("psig", pound, gravity, perInch, perInch)),
	AbsolutePressure: append(slices.Clone(stressUnits), of("bara", "100000"),
		product("psia", pound, gravity, perInch, perInch)),
	Temperature: {
		of("K", "1"), {"degC", rat("1"), rat("273.15")}, {"degF", rat("5/9"), rat("459.67")},
	},
	Expansion:    {of("1/K", "1"), of("1/degF", "9/5")},
	Time:         {of("s", "1"), of("min", "60"), of("h", "3600")},
	Angle:        {of("deg", "1/180"), of("rad", "1")},
	Acceleration: {of("m/s2", "1"), of("ft/s2", "0.3048"), of("g0", gravity)},
	Velocity:     {of("m/s", "1"), of("ft/s", "0.3048")},
	Toughness: {
		of("MPa m^0.5", "1000000"), of("Pa m^0.5", "1"),
		product("ksi in^0.5", "1000", pound, gravity, perInch, perInch, rootInch),
	},
	Strain: {of("um/m", "0.000001"), of("microstrain", "0.000001"), of("mm/m", "0.001"), of("%", "0.01"), of("m/m", "1")},
}

// Units returns the units that may stand behind a number of the kind.
func (k Kind) Units() []string {
	names := make([]string, len(units[k]))
	for i, u := range units[k] {
		names[i] = u.name
	}
	return names
}

// find returns the scale of a unit of the kind.
func (k Kind) find(name string) (scale, bool) {
	i := slices.IndexFunc(units[k], func(u scale) bool { return u.name == name })
	if i < 0 {
		return scale{}, false
	}
	return units[k][i], true
}

// kindOf returns the first kind that knows the unit.
func kindOf(name string) (Kind, bool) {
	for _, k := range Kinds() {
		if _, ok := k.find(name); ok {
			return k, true
		}
	}
	return 0, false
}

// oneSpace joins the words of a unit by single blanks: "N  m" is "N m".
func oneSpace(s string) string { return strings.Join(strings.Fields(s), " ") }
