package tank

// Bolts hold a flat cover: a flat head or the cover of a port.
type Bolts struct {
	Count    int
	Size     string   // thread, as "1/4-28 UNF" or "M8"
	Circle   float64  // diameter of the bolt circle [m]
	Hole     float64  // diameter of the cover's holes [m]
	Strength *float64 // proof strength [Pa]
	Preload  *float64 // of one bolt [N]
	Scatter  float64  // of the preload, share of it [-]
	// Mean thermal expansion; nil: not stated [1/K].
	Expansion *float64
}

// Seal keeps a flat cover tight.
type Seal struct {
	Kind          string  // o-ring | gasket
	Diameter      float64 // the pressure acts within; gasket: mean of its contact face [m]
	Squeeze       float64 // o-ring: force that flattens it [N]
	Width         float64 // gasket: of its contact face [m]
	GasketFactor  float64 // gasket: m [-]
	SeatingStress float64 // gasket: y [Pa]
	Source        string  // of m and y
}

// Thread is the internal thread of a boss with the fitting in it.
type Thread struct {
	Size         string  // as "M20x1.5"
	Engagement   float64 // of full threads [m]
	SealDiameter float64 // the pressure acts within [m]
	Squeeze      float64 // force that flattens the O-ring [N]
	Preload      float64 // with which the fitting is screwed home [N]
	Scatter      float64 // of the preload, share of it [-]
	Material     string  // of the fitting, a name in Tank.Material
}

// Cover is the flat plate bolted over a port.
type Cover struct {
	Thickness      float64 // nominal [m]
	UnderTolerance float64 // [m]
	Material       string  // a name in Tank.Material
}
