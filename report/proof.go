package report

import "proofsheet/report/check"

// A Proof is the proof-test plan: what to pump, to which pressure, what to
// read, and what is stored in the tank meanwhile.
type Proof struct {
	Method      string  // "hydrostatic" or "pneumatic"
	Fluid       string  // test fluid
	Orientation string  // "upright", "inverted", "horizontal"
	Temperature float64 // of fluid and metal [K]

	Pressure    float64 // to set at the gauge [Pa]
	GaugeHeight float64 // of the gauge above the highest inside point [m]
	Relief      float64 // set pressure of the relief device during the test [Pa]; NaN: no room for one, see Notes
	Examination float64 // nobody comes near above it [Pa]; 0: remote viewing only
	GaugeLeast  float64 // least full scale of the gauge [Pa]
	GaugeMost   float64 // largest full scale of the gauge [Pa]
	Hold        float64 // proof hold [s]

	Points []ProofPoint
	Steps  []ProofStep

	Growth    float64 // growth of the shell's volume at the set pressure, wall only [m3]
	Injected  float64 // fluid injected at the set pressure [m3]
	Stiffness float64 // dV/dp, wall and fluid [m3/Pa]
	Drift     float64 // dp/dT, closed and full [Pa/K]

	StoredEnergy float64  // in the tank at the set pressure, fluid and wall [J]
	FluidEnergy  float64  // share of the fluid [J]
	WallEnergy   float64  // share of the wall [J]
	StandOff     *float64 // least distance of people, for gas only [m]; nil otherwise
	Barrier      bool     // a barrier and remote reading are asked for

	Values   []check.Quantity // further numbers of the plan, as printed
	Sequence []string         // the procedure, in order
	Cautions []string
	Notes    []string
}

// A ProofPoint is what the proof shows at one point of the tank.
type ProofPoint struct {
	Name     string  // "aft head, apex"
	Z        float64 // station [m]
	Service  float64 // highest service pressure [Pa]
	Factor   float64 // proof factor with the temperature correction [-]
	Required float64 // pressure the rule asks for here [Pa]
	Low      float64 // least pressure here during the hold [Pa]
	High     float64 // highest pressure here during the hold [Pa]
}

// A ProofStep is one line of the log form: a pressure, how long, and the
// readings to expect. A reading that is not predicted is NaN.
type ProofStep struct {
	Name           string  // "leak look", "reference", "step", "proof hold", "examination"
	Cycle          int     // 1 or 2
	Pressure       float64 // at the gauge [Pa]
	Hold           float64 // [s]
	InjectedVolume float64 // with the growth of the wall [m3]
	FluidVolume    float64 // without the growth of the wall [m3]
	HoopStrain     float64 // mid-cylinder [-]
	DiameterGrowth float64 // mid-cylinder [m]
	StopBelow      float64 // injected volume under which the test stops [m3]
	StopAbove      float64 // injected volume over which the test stops [m3]
}
