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

	Toughness       *float64 // least of wall and weld zone in service [Pa m½]
	ToughnessMost   *float64 // most at the proof [Pa m½]
	ToughnessSource string   // of both
	StrainLife      *StrainLife
}

// A StrainLife is how long the plain metal lasts under a strain range Δε, to 2N reversals.
type StrainLife struct {
	Strength          float64 // fatigue strength coefficient [Pa]
	StrengthExponent  float64 // below 0 [-]
	Ductility         float64 // fatigue ductility coefficient [-]
	DuctilityExponent float64 // below StrengthExponent [-]
	Source            string
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
	Flaw        *float64 // depth of the deepest flaw that the examination may miss [m]

	PeakingLength *float64 // straight wall on each side of the peak [m]

	Coupons     string // file of coupon tests
	CouponBasis string // A | B; "" takes the basis's

	CouponRows []Coupon `key:"-"`

	// CouponDraw is the deviate by which a study draws the strength of the weld
	// from its coupons, nil: their limit [-].
	CouponDraw *float64 `key:"-"`
}

// A Coupon is one row of a coupon file.
type Coupon struct {
	Name     string
	Parent   bool     // cut from the parent, not across the weld
	Ultimate float64  // [Pa]
	Yield    *float64 // nil where it was not measured [Pa]
	Failure  string   // where it broke, as written

	Thickness   *float64 // nil where it is not written [m]
	GaugeLength *float64 // over which yield was measured, nil where it is not written [m]
	Temperature *float64 // of the test, nil where it is not written [K]

	Said map[string]string // process, filler, bead, plate, welder: what the file says of them
	Line int               // in the file
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
