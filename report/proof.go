package report

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

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
	HoldRead    float64 // longest time between two readings of the hold [s]
	MostShown   float64 // the gauge never shows more: the set pressure and its overshoot [Pa]
	Rate        float64 // not raised faster above half the set pressure [Pa/s]

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

	PlainFrom float64 // strains of the steps are those of the cylinder from this station [m]; NaN: of none
	PlainTo   float64 // to this one [m]

	Drifts   []ProofDrift     // of the closed tank, by temperature
	Values   []check.Quantity // further numbers of the plan, as printed
	Limits   []string         // what stops, fails and passes the test
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

// A ProofStep is one stop of the test: a pressure, how long, and the readings to
// expect. A reading that is not predicted is NaN.
type ProofStep struct {
	Name           string  // "leak look", "reference", "step", "proof hold", "examination"
	Cycle          int     // 1 or 2
	Pressure       float64 // at the gauge [Pa]
	Hold           float64 // [s]
	InjectedVolume float64 // with the growth of the wall, bled [m3]
	Added          float64 // to that of the step before; below zero it comes back [m3]
	StopBand       float64 // departure from what the earlier readings lead to expect that stops the test; NaN where none is told [m3]
	FluidVolume    float64 // without the growth of the wall [m3]
	HoopStrain     float64 // on the outside of the plain cylinder [-]
	AxialStrain    float64 // there, along the axis [-]
	DiameterGrowth float64 // of the outside there [m]
}

// Unpredicted returns a step of which no reading is predicted.
func Unpredicted(name string, cycle int, pressure, hold float64) ProofStep {
	nan := math.NaN()
	return ProofStep{Name: name, Cycle: cycle, Pressure: pressure, Hold: hold, InjectedVolume: nan, Added: nan, StopBand: nan,
		FluidVolume: nan, HoopStrain: nan, AxialStrain: nan, DiameterGrowth: nan}
}

// Adds prints what a step adds to the volume and the band round it, the unit once.
func (s ProofStep) Adds(system string) string {
	adds, band := Reading(check.M3("", "", s.Added), system), Reading(check.M3("", "", s.StopBand), system)
	if math.IsNaN(s.Added) || math.IsNaN(s.StopBand) {
		return adds
	}
	number, unit, _ := strings.Cut(adds, " ")
	if strings.HasSuffix(band, " "+unit) {
		adds = number
	}
	return adds + " ± " + band
}

// A LogRow is a line of the log form, filled in at the test. Outside the steps nothing
// is to be set, and Pressure is NaN.
type LogRow struct {
	ProofStep
	Number string // of the step, in the hold with that of the reading: "8.3"; "" before and after the test
}

// LogRows returns the lines of the log form: the zero of the gauges before and after,
// one for each step, and in the hold one for each reading that the record asks for.
func (p *Proof) LogRows() []LogRow {
	nan := math.NaN()
	zero := LogRow{ProofStep: Unpredicted("vent open: zero of the gauges", 0, nan, nan)}
	rows := []LogRow{zero}
	for i, s := range p.Steps {
		n := fmt.Sprint(i + 1)
		rows = append(rows, LogRow{s, n})
		for k := 1; s.Name == "proof hold" && p.HoldRead > 0 && float64(k-1)*p.HoldRead < s.Hold*(1-1e-9); k++ {
			after := math.Min(float64(k)*p.HoldRead, s.Hold)
			rows = append(rows, LogRow{Unpredicted("hold, after "+Minutes(after), s.Cycle, s.Pressure, nan), fmt.Sprintf("%s.%d", n, k)})
		}
	}
	return append(rows, zero)
}

// Minutes prints a time [s] in minutes, half a one at the finest, rounded up.
func Minutes(v float64) string { return Plain(math.Ceil(v/30)/2) + " min" }

// A ProofDrift is how far the pressure of the closed, full tank moves with its temperature.
type ProofDrift struct {
	Temperature float64 // of water and wall [K]
	Drift       float64 // dp/dT at the set pressure [Pa/K]
}

// GaugeRound returns how the pressure of a step is rounded: down where it must not be
// passed, up where it must be reached.
func (s ProofStep) GaugeRound() Round {
	switch s.Name {
	case "examination", "leak look, from afar":
		return Down
	}
	return Up
}

// Reading prints a reading to expect at the test, with four digits; a strain with three, in
// millionths.
func (s *Sheet) Reading(q check.Quantity) string { return Reading(q, s.Units) }

// Reading is [Sheet.Reading] in "si" or "us".
func Reading(q check.Quantity, system string) string {
	const digits, strainDigits = 4, 3
	switch {
	case math.IsNaN(q.Value):
		return "–"
	case q.Unit == "1":
		return trim(Number(q.Value*1e6, strainDigits, Nearest)) + "×10⁻⁶"
	}
	d := DisplayUnit(q.Unit, q.Value, system)
	return trim(Number(d.Of(q.Value), digits, Nearest)) + " " + d.Unit
}
