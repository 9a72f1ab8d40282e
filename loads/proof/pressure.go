package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// standardGravity is g0 [m/s2], exact.
const standardGravity = 9.80665

// A Ratio is one material's property at the test temperature over the same at
// the service temperature; a weld zone is a material of its own.
type Ratio struct {
	Material string  // "plate", "plate, weld zone"
	Value    float64 // test over service [-]
}

// A Point is a place on the wall where the proof must show its factor.
type Point struct {
	Name       string  // "head.aft, apex"
	Service    float64 // highest service pressure over the cases, heads included: p_svc [Pa]
	WaterDepth float64 // depth below the highest point of the test liquid, in the attitude of the test: h_w [m]
	Ratios     []Ratio // parent and weld zones at this place
}

// Inputs are the numbers that a plan is made from.
type Inputs struct {
	Method           Method
	Rules            []Rule  // every rule in force
	Points           []Point // both ends of every part at least
	MEOP             float64 // highest ullage pressure in service [Pa]
	WaterDensity     float64 // of the test liquid, at its lightest; 0 for gas [kg/m3]
	GaugeHeight      float64 // gauge above the tank's highest inside point, negative below: z_g [m]
	GaugeUncertainty float64 // share of the gauge reading; 0: the default [-]
	Overshoot        float64 // allowed above the setting, share of it; 0: the default [-]
	Chosen           float64 // setting that the user asks for; 0: the least that reaches [Pa]
	Hold             float64 // hold that the user asks for; 0: the least allowed [s]
	WorkingTime      float64 // longest time under pressure in one use; 0: not given [s]
	Near             float64 // highest pressure at which people may be near; NaN: not assessed [Pa]
}

// A Shown is a point with what the proof asks of it and shows there.
type Shown struct {
	Point
	CF       float64 // temperature correction of the rule that governs here [-]
	Factor   float64 // required pressure over service pressure [-]
	Rule     string  // the rule it comes from
	Required float64 // p_req [Pa]
	Low      float64 // pressure surely reached: p_low [Pa]
	High     float64 // pressure possibly reached, for every stress check: p_high [Pa]
	OverTest float64 // p_low/p_req [-]
	OwnCF    float64 // correction the part itself would ask for [-]
}

// A Plan is the proof test in numbers.
type Plan struct {
	Inputs
	Setting          float64 // what the gauge must show: p_set [Pa]
	Top              float64 // least pressure at the highest point: p_top [Pa]
	GaugeUncertainty float64 // u_g [Pa]
	Overshoot        float64 // o [Pa]
	Points           []Shown // in the order of the inputs
	Governs          int     // index of the point that sets p_top
	Steps            []Step
	Hold             float64 // at the setting [s]
	HoldReason       string  // what the hold comes from
	Examination      float64 // at the gauge, highest with people near; 0: remote viewing only [Pa]
	ExaminationFrom  string  // what sets it
	GaugeLeast       float64 // least full scale of the dial [Pa]
	GaugeIdeal       float64 // best full scale of the dial [Pa]
	GaugeMost        float64 // largest full scale of the dial [Pa]
	Notes            []string
}

// ErrNoPoint says that a plan was asked without a place to prove.
var ErrNoPoint = errors.New("the proof plan has no point to prove")

// NewPlan makes the plan; an error means that no plan may be issued.
func NewPlan(in Inputs) (*Plan, error) {
	return nil, fmt.Errorf("%w: %d rules", ErrNoPoint, len(in.Rules))
}

// Water pressure of a column h [m] of density rho [kg/m3]: rho g0 h [Pa].
func head(rho, h float64) float64 { return rho * standardGravity * h }

// worst returns NaN-safe larger of two numbers: NaN if either is.
func worst(a, b float64) float64 { return math.Max(a, b) }

// CheckReach sets the pressure surely reached against the required one.
func (p *Plan) CheckReach() check.Result {
	return check.NotMade("proof/reach", "Proof reaches its factor at every point", ErrNoPoint)
}
