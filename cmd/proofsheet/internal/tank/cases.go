package tank

import "strings"

// Support says who carries the tank.
type Support struct {
	At                  string   // aft | forward | both
	ColumnLength        *float64 // [m]
	ColumnFactor        *float64 // [-]
	AssemblyTemperature *float64 // of the tank when both its ends were made fast [K]
}

// A Case is one load case. Exactly one of LiquidMass, Fill and Level is set.
type Case struct {
	Name                  string
	People                string // near | clear
	PeopleSource          string
	Rule                  string   // "" takes the basis's
	UllagePressure        *float64 // across the wall; nil only with Vapour [Pa]
	UllageAbsolute        *float64 // as written [Pa]
	LeastUllagePressure   *float64 // the smallest with the same loads [Pa]; nil is UllagePressure
	OutsideAbsolute       *float64 // as written, or of Altitude [Pa]
	Altitude              *float64 // as written [m]
	Vapour                bool     `key:"-"` // ullage_pressure = "vapour"
	AxialLoadFactor       float64  // what the liquid feels, positive aft [-]
	DynamicFactor         *float64 // on the step from AxialLoadFactorBefore [-]
	AxialLoadFactorBefore *float64 // [-]
	LateralLoadFactor     float64  // worst direction [-]
	LiquidMass            *float64 // [kg]
	Fill                  *float64 // share of the volume [-]
	Fullest               bool     `key:"-"` // Fill was not written: full at the warmest, less the least ullage
	Level                 *float64 // above the lowest inside point [m]
	SloshAmplitude        *float64 // of the liquid on the wall [m]; nil is at rest
	Temperature           *float64 // of the metal [K]
	TemperatureRamp       *float64 // of the wall at the liquid's level [m]; nil is a step
	AxialForce            *float64 // section force, tension positive; axial_compression is turned [N]
	AxialCompression      *float64 // as written [N]
	BendingMoment         *float64 // [N m]
	ShearForce            *float64 // [N]
	Station               *float64 // nil is the forward head seam [m]
	Loads                 []LineLoad
	Cycles                *float64 // [-]
	Ground                bool
	Kind                  string // pad | transport | lift | drain | landing | ""
	Present               bool   // the other load is always there
}

// OnGround reports whether the case is on the ground.
func (c Case) OnGround() bool { return c.Ground || c.Kind != "" }

// LineLoad is a section force and moment at a station.
type LineLoad struct {
	Station          float64  // [m]
	AxialForce       *float64 // tension positive; axial_compression is turned [N]
	AxialCompression *float64 // as written [N]
	BendingMoment    *float64 // [N m]
	ShearForce       *float64 // [N]
}

// Flight is the flight history.
type Flight struct {
	History        string // file
	People         string // near | clear
	PeopleSource   string
	Acceleration   string            // sensed | vertical | ""
	Columns        map[string]string // our name = the file's heading
	Rule           string            // "" takes the basis's
	SloshAmplitude *float64          // of the liquid on the wall, all along [m]; nil is at rest
	Cycles         *float64          // [-]

	States []State `key:"-"`
}

// State is one row of the flight history.
type State struct {
	Line              int      // in the file
	Time              float64  // [s]
	UllagePressure    float64  // across the wall [Pa]
	UllageAbsolute    *float64 // as written [Pa]
	OutsideAbsolute   *float64 // as written, or of Altitude [Pa]
	Altitude          *float64 // as written [m]
	AxialLoadFactor   float64  // what the liquid feels, positive aft [-]
	LateralLoadFactor float64  // [-]
	LiquidMass        *float64 // [kg]
	Fill              *float64 // [-]
	Level             *float64 // [m]
	Temperature       *float64 // [K]
	AxialForce        *float64 // tension positive [N]
	BendingMoment     *float64 // [N m]
}

// Proof is the proof test.
type Proof struct {
	Method         string   // hydrostatic | pneumatic
	Fluid          string   // built-in
	Orientation    string   // upright | inverted | horizontal
	Temperature    float64  // of fluid and metal [K]
	Hold           float64  // [s]
	GaugeHeight    float64  // above the tank's highest inside point [m]
	GaugeTolerance *float64 // [Pa]
	WorkingTime    *float64 // under pressure in service [s]
	Pressure       *float64 // at the gauge [Pa]
}

// Gas reports whether the test is made with gas.
func (p Proof) Gas() bool { return p.Method == "pneumatic" }

// Stock is what sizing may choose from.
type Stock struct {
	Thickness []float64 // [m]
}

// Scatter is the spread of one number of the tank file.
type Scatter struct {
	Key    string  // "cylinder.thickness"
	Shape  string  // normal | uniform | coupons
	Spread float64 // standard deviation, or half the width, in the SI unit of the key; 1 for coupons
}

// CouponShape is the word by which the weld of a joint scatters as its coupons do:
// normal, with their mean and standard deviation.
const CouponShape = "coupons"

// Joint returns the joint whose coupons scatter, "" for another input.
func (s Scatter) Joint() string {
	if s.Shape != CouponShape {
		return ""
	}
	name, _ := couponKey(s.Key)
	return name
}

// couponKey returns the joint of a key joint.NAME.coupons.
func couponKey(key string) (joint string, ok bool) {
	name, ok := strings.CutPrefix(key, "joint.")
	if !ok {
		return "", false
	}
	return strings.CutSuffix(name, ".coupons")
}
