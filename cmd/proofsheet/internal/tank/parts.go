package tank

// Cylinder is the parallel part. Exactly one diameter is not nil.
type Cylinder struct {
	InsideDiameter  *float64  // nominal [m]
	OutsideDiameter *float64  // nominal [m]
	Length          float64   // between head seams, straight flanges not included [m]
	Thickness       float64   // nominal [m]
	UnderTolerance  *float64  // nil only with LeastThickness [m]
	LeastThickness  *float64  // measured; replaces tolerance and thinning [m]
	Corrosion       float64   // [m]
	Rings           *Rings    // nil: none
	OutOfRound      *float64  // largest less smallest diameter [m]
	Material        string    // a name in Tank.Material
	LongSeam        string    // a name in Tank.Joint, or "none"
	LongSeamClock   float64   // [rad]
	GirthSeam       string    // between courses; "" where there is one course
	GirthStations   []float64 // [m]

	LongSeamAnywhere bool `key:"-"` // LongSeamClock was not written
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

	SegmentSeamAnywhere bool `key:"-"` // SegmentSeamClock was not written
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

// Rings are equal flat bars round the cylinder.
type Rings struct {
	Stations       []float64 // rising, of count too [m]
	Count          int       // as written
	Width          float64   // along the axis, nominal [m]
	Height         float64   // from the wall, nominal [m]
	UnderTolerance *float64  // of both; nil only with a fault [m]
	Side           string    // outside | inside
	Material       string    // a name in Tank.Material
}

// Ring stiffens a junction.
type Ring struct {
	Width     float64 // along the wall [m]
	Thickness float64 // radial [m]
}

// A Port is one opening with its tube.
type Port struct {
	Name     string   // unrolled: fill-1, fill-2, …
	Group    string   // as written: fill
	On       string   // forward | aft | cylinder
	Axis     string   // parallel | normal
	Radius   *float64 // tank axis to tube axis at mid-wall, on a head [m]
	Station  *float64 // on the cylinder [m]
	Offset   float64  // of the tube from the radius at Clock, towards rising clock [m]
	Clock    float64  // [rad]
	Count    int      // of the group
	Tube     Tube
	Kind     string  // tube | boss | cover
	Thread   *Thread // of a boss
	Cover    *Cover
	Bolts    *Bolts  // of a cover
	Seal     *Seal   // of a cover
	Fit      string  // through | flush | on
	Outside  float64 // least projection beyond the wall's outer face [m]
	Inside   float64 // least projection beyond the wall's inner face [m]
	Weld     Weld
	Pad      *Pad
	Insert   *Insert
	Load     *PortLoad
	Line     *Line
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
	Joint         string  // whose process and coupons speak for it; "": none
}

// Pad is a reinforcing plate round a port. One of OutsideDiameter and Lip is set.
type Pad struct {
	OutsideDiameter *float64 // round in the flat of the wall; with Length its width across the meridian [m]
	Length          *float64 // of an ellipse, along the meridian [m]
	Lip             *float64 // width all round [m]
	Thickness       float64  // nominal [m]
	UnderTolerance  float64  // [m]
	Leg             float64  // of the weld at its edge [m]
	Material        string   // a name in Tank.Material; default the wall's
}

// Line is a line behind a port with a valve at its end.
type Line struct {
	Length      float64 // from the tank to the valve [m]
	Velocity    float64 // of the liquid before the valve closes [m/s]
	ClosingTime float64 // [s]
	WaveSpeed   float64 // of sound in the liquid [m/s]
}

// Insert is a round plate, thicker than the wall, let into it round a port.
type Insert struct {
	OutsideDiameter float64 // round in the flat of the wall, to its butt weld or its taper [m]
	Thickness       float64 // nominal [m]
	UnderTolerance  float64 // [m]
	Seam            string  // its butt weld, a name in Tank.Joint
}

// PortLoad is what the piping puts on a port.
type PortLoad struct {
	Force  float64 // [N]
	Moment float64 // [N m]
}
