package tank

// A Tank is a whole tank file, read, checked and in SI. Fields are named like
// the keys. A pointer is nil where the key was left out and has no default; a
// plain number was written, or its default is listed in Defaults.
type Tank struct {
	File     string       // name of the tank file as given
	Text     []byte       // the file itself
	Attached []Attachment // files the tank file names, in the order of the keys
	Defaults []Default    // every value that was not written, in the order of the keys

	Sheet    Sheet
	Basis    Basis
	Pressure Pressure
	Contents Contents
	Material []Material // in the order of the file
	Joint    []Joint    // in the order of the file
	Cylinder Cylinder
	Head     Heads
	Port     []Port // one for each opening: count is already unrolled
	Support  Support
	Case     []Case // as written; meop and proof are made by the assessment
	Flight   *Flight
	Proof    Proof
	Stock    *Stock
	Scatter  []Scatter

	places places
	raw    map[string]any
	open   func(path string) ([]byte, error)
}

// An Attachment is a file named by the tank file.
type Attachment struct {
	Key  string // the key that names it: "flight.history"
	Name string // as written
	Data []byte
}

// A Default is a value the user did not write; the sheet prints it.
type Default struct{ Key, Value, Why string }

// Sheet is the title block.
type Sheet struct {
	Title, Number, Serial, Revision, Project string
	Date                                     string // "" is printed as undated
	Prepared, Checked, Approved              string
	Units                                    string // si | us
	Paper                                    string // a4 | letter
}

// Basis is where allowable stress and factors come from. A nil factor is the
// rule's own.
type Basis struct {
	Rule               string   // vessel | vessel-eu | flight
	YieldFactor        *float64 // on pressure against yield [-]
	UltimateFactor     *float64 // on pressure against ultimate [-]
	LoadYieldFactor    *float64 // on line loads against yield [-]
	LoadUltimateFactor *float64 // on line loads against ultimate [-]
	BucklingFactor     *float64 // on the loads of every stability check [-]
	ProofFactor        *float64 // proof pressure over MEOP [-]
	BurstFactor        *float64 // burst pressure over MEOP [-]
	ProofLimit         *float64 // membrane stress at proof over yield [-]
	Austenitic90       *bool    `key:"austenitic_90"`
	CouponBasis        string   // A | B
	Source             string   // of every override without its own

	// Sources holds the source of each override, by its key.
	Sources map[string]string `key:"-"`
}

// Pressure is what the tank is built for.
type Pressure struct {
	MEOP         float64  `key:"meop"` // highest ullage pressure ever, across the wall [Pa]
	Relief       *float64 // set pressure of the relief device [Pa]
	Accumulation float64  // share of the set pressure [-]
}

// Contents is the liquid in service.
type Contents struct {
	Fluid       string   // built-in; "" with an own density
	Density     *float64 // own [kg/m3]
	Source      string   // of the density
	Temperature *float64 // of the liquid [K]; nil where coldest and warmest are written
	Coldest     float64  // densest [K]; equals Temperature where that is written
	Warmest     float64  // lightest [K]; equals Temperature where that is written
	LeastUllage float64  // share of the tank's volume at the warmest [-]
}

// A Material is one named material: built-in (Alloy) or own (Family, Source).
type Material struct {
	Name, Alloy, Spec, Product, Certificate string
	ColdStrength                            bool

	Family         string   // own: ferritic | austenitic | aluminium | titanium
	Yield          *float64 // own, Rp0.2 at temperature [Pa]
	Ultimate       *float64 // own [Pa]
	ElasticModulus *float64 // own [Pa]
	Poisson        *float64 // own [-]
	Density        *float64 // own [kg/m3]
	Expansion      *float64 // own [1/K]
	Elongation     *float64 // own, at fracture [-]
	Allowable      *float64 // own, caps the vessel rules [Pa]
	WeldedYield    *float64 // own, in the weld's zone [Pa]
	WeldedUltimate *float64 // own, in the weld's zone [Pa]
	Source         string   // of the own values
}

// Own reports whether the material's values are the user's.
func (m Material) Own() bool { return m.Alloy == "" }

// A Joint is one named weld joint.
type Joint struct {
	Name, Kind  string
	Root        string   // how the root was seen
	Examination string   // full | spot | none
	Efficiency  *float64 // override [-]
	Source      string   // of the override
	Process     string   // tig | mig | ""
	HiLo        *float64 // offset of the walls at the seam [m]
	Peaking     *float64 // departure from the round at the seam [m]
	Coupons     string   // file of coupon tests
	CouponBasis string   // A | B; "" takes the basis's

	CouponRows []Coupon `key:"-"`
}

// A Coupon is one row of a coupon file.
type Coupon struct {
	Name     string
	Ultimate float64  // [Pa]
	Yield    *float64 // nil where it was not measured [Pa]
	Failure  string   // where it broke, as written
	Line     int      // in the file
}

// Cylinder is the parallel part. Exactly one diameter is not nil.
type Cylinder struct {
	InsideDiameter  *float64  // nominal [m]
	OutsideDiameter *float64  // nominal [m]
	Length          float64   // between head seams, straight flanges not included [m]
	Thickness       float64   // nominal [m]
	UnderTolerance  *float64  // nil only with LeastThickness [m]
	LeastThickness  *float64  // measured; replaces tolerance and thinning [m]
	Corrosion       float64   // [m]
	Material        string    // a name in Tank.Material
	LongSeam        string    // a name in Tank.Joint, or "none"
	LongSeamClock   float64   // [rad]
	GirthSeam       string    // between courses; "" where there is one course
	GirthStations   []float64 // [m]
}

// Heads are the two ends.
type Heads struct{ Aft, Forward Head }

// A Head is one end. Which shape keys are set depends on Shape.
type Head struct {
	Shape            string   // hemisphere | ellipsoid | torisphere | cone | toricone | flat
	HalfAngle        *float64 // wall to tank axis [rad]
	Depth            *float64 // inside, without straight flange [m]
	Aspect           *float64 // inside diameter over twice the depth [-]
	CrownRadius      *float64 // inside [m]
	KnuckleRadius    *float64 // inside [m]
	Thickness        float64  // nominal [m]
	UnderTolerance   *float64 // nil only with LeastThickness [m]
	LeastThickness   *float64 // measured; replaces tolerance and thinning [m]
	FormingThinning  *float64 // nil where neither needed nor written [-]
	Corrosion        float64  // [m]
	Forming          string   // rolled | pressed | spun | machined | ""
	HeatTreated      string   // after forming, from the certificate
	Material         string   // a name in Tank.Material
	Seam             string   // head to cylinder, a name in Tank.Joint; "" with Closure
	SegmentSeam      string   // a name in Tank.Joint, or "none"
	SegmentSeamClock float64  // [rad]
	StraightFlange   float64  // [m]
	Bulge            string   // outward | inward
	Align            string   // inside | middle | outside
	Tip              *Tip
	SeamThickness    *float64 // with SeamWidth [m]
	SeamWidth        *float64 // [m]
	Ring             *Ring
	CornerFactor     *float64 // flat head [-]
	Source           string   // of the corner factor
	Closure          string   // bolted | ""
	Bolts            *Bolts
	Seal             *Seal
}

// Tip is the end of a truncated cone.
type Tip struct {
	Diameter       float64  // inside, of the opening [m]
	Close          string   // plate | port | neck
	Thickness      *float64 // of the plate, nominal [m]
	UnderTolerance *float64 // of the plate [m]
	Material       string   // of the plate; default the head's
	Port           string   // a name in Tank.Port
}

// Ring stiffens a junction.
type Ring struct {
	Width     float64 // along the wall [m]
	Thickness float64 // radial [m]
}

// Bolts hold a flat head.
type Bolts struct {
	Count    int
	Size     string   // thread, as "1/4-28 UNF" or "M8"
	Circle   float64  // diameter of the bolt circle [m]
	Strength *float64 // proof strength [Pa]
	Preload  *float64 // of one bolt [N]
}

// Seal closes a bolted head.
type Seal struct {
	Kind     string  // o-ring | gasket
	Diameter float64 // the pressure acts within [m]
}

// A Port is one opening with its tube.
type Port struct {
	Name     string   // unrolled: fill-1, fill-2, …
	Group    string   // as written: fill
	On       string   // forward | aft | cylinder
	Axis     string   // parallel | normal
	Radius   *float64 // tank axis to tube axis at mid-wall, on a head [m]
	Station  *float64 // on the cylinder [m]
	Clock    float64  // [rad]
	Count    int      // of the group
	Tube     Tube
	Fit      string  // through | flush | on
	Outside  float64 // least projection beyond the wall's outer face [m]
	Inside   float64 // least projection beyond the wall's inner face [m]
	Weld     Weld
	Pad      *Pad
	Load     *PortLoad
	Position int // of the [[port]] in the file, from 0
}

// Tube is the wall of a port.
type Tube struct {
	OutsideDiameter float64 // [m]
	Wall            float64 // nominal [m]
	UnderTolerance  float64 // [m]
	Material        string  // a name in Tank.Material
	Seam            string  // "none", a name in Tank.Joint, or "" where left out
}

// Weld joins a tube to the wall. Zero is no weld of that sort.
type Weld struct {
	OutsideLeg    float64 // [m]
	InsideLeg     float64 // [m]
	OutsideThroat float64 // in place of the leg [m]
	InsideThroat  float64 // in place of the leg [m]
	Groove        float64 // depth; 0 with GrooveFull [m]
	GrooveFull    bool    // groove through the whole wall
}

// Pad is a reinforcing plate round a port. One of OutsideDiameter and Lip is set.
type Pad struct {
	OutsideDiameter *float64 // round in the flat of the wall [m]
	Lip             *float64 // width all round [m]
	Thickness       float64  // nominal [m]
	UnderTolerance  float64  // [m]
	Leg             float64  // of the weld at its edge [m]
	Material        string   // a name in Tank.Material; default the wall's
}

// PortLoad is what the piping puts on a port.
type PortLoad struct {
	Force  float64 // [N]
	Moment float64 // [N m]
}

// Support says who carries the tank.
type Support struct {
	At           string   // aft | forward | both
	ColumnLength *float64 // [m]
	ColumnFactor *float64 // [-]
}

// A Case is one load case. Exactly one of LiquidMass, Fill and Level is set.
type Case struct {
	Name              string
	People            string // near | clear
	PeopleSource      string
	Rule              string   // "" takes the basis's
	UllagePressure    *float64 // across the wall; nil only with Vapour [Pa]
	UllageAbsolute    *float64 // as written [Pa]
	OutsideAbsolute   *float64 // as written, or of Altitude [Pa]
	Altitude          *float64 // as written [m]
	Vapour            bool     `key:"-"` // ullage_pressure = "vapour"
	AxialLoadFactor   float64  // what the liquid feels, positive aft [-]
	LateralLoadFactor float64  // worst direction [-]
	LiquidMass        *float64 // [kg]
	Fill              *float64 // share of the volume [-]
	Level             *float64 // above the lowest inside point [m]
	Temperature       *float64 // of the metal [K]
	AxialForce        *float64 // section force, tension positive; axial_compression is turned [N]
	AxialCompression  *float64 // as written [N]
	BendingMoment     *float64 // [N m]
	ShearForce        *float64 // [N]
	Station           *float64 // nil is the forward head seam [m]
	Loads             []LineLoad
	Cycles            *float64 // [-]
	Ground            bool
	Kind              string // pad | transport | lift | drain | landing | ""
	Present           bool   // the other load is always there
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
	History      string // file
	People       string // near | clear
	PeopleSource string
	Acceleration string            // sensed | vertical | ""
	Columns      map[string]string // our name = the file's heading
	Rule         string            // "" takes the basis's
	Cycles       *float64          // [-]

	States []State `key:"-"`
}

// State is one row of the flight history.
type State struct {
	Line              int      // in the file
	Time              float64  // [s]
	UllagePressure    float64  // across the wall [Pa]
	OutsideAbsolute   *float64 // [Pa]
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

// Stock is what sizing may choose from.
type Stock struct {
	Thickness []float64 // [m]
}

// Scatter is the spread of one number of the tank file.
type Scatter struct {
	Key    string  // "cylinder.thickness"
	Shape  string  // normal | uniform
	Spread float64 // standard deviation, or half the width, in the SI unit of the key
}

// FindMaterial returns the named material.
func (t *Tank) FindMaterial(name string) (Material, bool) {
	for _, m := range t.Material {
		if m.Name == name {
			return m, true
		}
	}
	return Material{}, false
}

// FindJoint returns the named joint.
func (t *Tank) FindJoint(name string) (Joint, bool) {
	for _, j := range t.Joint {
		if j.Name == name {
			return j, true
		}
	}
	return Joint{}, false
}

// Files returns the tank file and every file it names.
func (t *Tank) Files() []Attachment {
	return append([]Attachment{{Name: t.File, Data: t.Text}}, t.Attached...)
}
