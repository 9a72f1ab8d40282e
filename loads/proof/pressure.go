package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// standardGravity is g0 [m/s2], exact.
const standardGravity = 9.80665

const (
	// DefaultGaugeShare is the uncertainty of a gauge, share of the setting
	// [-]: 0.5 % of a full scale of twice the setting. Practice.
	DefaultGaugeShare = 0.01
	// DefaultOvershootShare is what the pressure may go over the setting,
	// share of it [-]. Practice.
	DefaultOvershootShare = 0.01
)

// A Point is a place on the wall where the proof must show its factor.
type Point struct {
	Name       string  // "head.aft, apex"
	Service    float64 // highest service pressure over the cases, MEOP with every head: p_svc [Pa]
	WaterDepth float64 // least depth of the place below the highest point of the test liquid, in the attitude of the test: h_w [m]
	Deepest    float64 // largest depth, where the place is a ring lying down or the like; 0: as WaterDepth [m]
	Ratios     []Ratio // parent and weld zones at this place
}

// Inputs are the numbers that a plan is made from.
type Inputs struct {
	Method         Method
	Rules          []Rule  // every rule in force
	Points         []Point // both ends of every part at least
	MEOP           float64 // highest ullage pressure in service [Pa]
	WaterDensity   float64 // of the test liquid, at its lightest; 0 for gas [kg/m3]
	GaugeHeight    float64 // gauge above the tank's highest inside point, negative below: z_g [m]
	GaugeShare     float64 // uncertainty of the gauge, share of the setting; 0: the default [-]
	GaugeTolerance float64 // uncertainty of the gauge as given, in place of the share; 0: the share [Pa]
	OvershootShare float64 // allowed above the setting, share of it; 0: the default [-]
	Chosen         float64 // setting that the user asks for; 0: the least that reaches [Pa]
	HoldAsked      float64 // hold that the user asks for; 0: the least allowed [s]
	WorkingTime    float64 // longest time under pressure in one use; 0: not given [s]
	Near           float64 // highest ullage pressure at which people may be near; NaN: not assessed [Pa]
}

// A Shown is a point with what the proof asks of it and shows there.
type Shown struct {
	Point
	CF       float64 // temperature correction used by the rule that governs here [-]
	Factor   float64 // required pressure over service pressure [-]
	Rule     string  // the rule it comes from
	Required float64 // p_req, true value [Pa]
	Low      float64 // pressure surely reached: p_low [Pa]
	High     float64 // pressure possibly reached, for every stress check: p_high [Pa]
	OverTest float64 // p_low/p_req [-]
	OwnCF    float64 // correction the part itself would ask for [-]
	// HotShort says that a rule with one ratio for the whole tank asks for
	// less than this part's own ratio would, and the test does not make it up.
	HotShort bool
}

// A Plan is the proof test in numbers.
type Plan struct {
	In               Inputs
	Setting          float64 // what the gauge must show: p_set [Pa]
	Top              float64 // pressure surely reached at the highest point: p_top [Pa]
	GaugeUncertainty float64 // u_g [Pa]
	Overshoot        float64 // o [Pa]
	Points           []Shown // in the order of the inputs
	Governs          int     // index of the point that sets p_top
	Steps            []Step  // in their order
	Rate             float64 // not to be exceeded above half the setting [Pa/s]
	Hold             float64 // at the setting [s]
	HoldReason       string  // what the hold comes from
	Examination      float64 // at the gauge, highest with people near; 0: remote viewing only [Pa]
	ExaminationFrom  string  // what sets it
	GaugeLeast       float64 // least full scale of the dial [Pa]
	GaugeIdeal       float64 // best full scale of the dial [Pa]
	GaugeMost        float64 // largest full scale of the dial [Pa]
}

// ErrNoPoint says that a plan was asked without a place to prove.
var ErrNoPoint = errors.New("the proof plan has no point to prove")

// NewPlan makes the plan. At every point z:
//
//	p_req  = max over rules of F(CF) p_svc      true local pressure required
//	p_top  = max over z of (p_req − ρ_w g0 h_w) least pressure at the highest point
//	p_set  = p_top + u_g − ρ_w g0 z_g           what the gauge must show
//	p_low  = p_top + ρ_w g0 h_w                 demonstrated
//	p_high = p_low + 2 u_g + o                  every stress check at proof uses it
//
// with u_g [Pa] given or a share of p_set, and o [Pa] a share of it: the gauge
// shows p_set to p_set + o, and the truth lies u_g to either side. A place that
// spans depths reaches by its least h_w and is stressed by its largest. The
// weight of a test gas is left out. A setting that the user chose stands when
// it is not under p_set; an error, of any number missing or out of its sense,
// means that no plan may be issued.
//
// Source: UG-99(b) (every point, lowest ratio), read; gauge and overshoot,
// practice; the sums, computed.
func NewPlan(in Inputs) (*Plan, error) {
	if in.GaugeShare == 0 {
		in.GaugeShare = DefaultGaugeShare
	}
	if in.OvershootShare == 0 {
		in.OvershootShare = DefaultOvershootShare
	}
	if err := in.valid(); err != nil {
		return nil, err
	}
	p := &Plan{In: in}
	if err := p.require(); err != nil {
		return nil, err
	}
	if err := p.set(); err != nil {
		return nil, err
	}
	p.demonstrate()
	if err := p.hold(); err != nil {
		return nil, err
	}
	p.examine()
	p.GaugeLeast, p.GaugeIdeal, p.GaugeMost = GaugeRange(p.Setting)
	p.Rate = p.Setting * 0.1 / 60
	p.Steps = p.steps()
	return p, nil
}

// valid reports every input that cannot be used.
func (in Inputs) valid() error {
	const fn = "proof.NewPlan"
	errs := []error{
		check.Within(fn, "MEOP [Pa]", in.MEOP, 1, 1e9, "a pressure across the wall"),
		check.Within(fn, "gauge height [m]", in.GaugeHeight, -100, 100, "above the tank's highest inside point"),
		check.Within(fn, "gauge uncertainty, share of the setting", in.GaugeShare, 1e-6, 0.05, "a gauge worse than 5 % proves nothing"),
		check.Within(fn, "gauge tolerance over MEOP", in.GaugeTolerance/in.MEOP, 0, 0.05, "a gauge worse than 5 % proves nothing"),
		check.Within(fn, "overshoot, share of the setting", in.OvershootShare, 1e-6, 0.1, "over the setting"),
		check.Within(fn, "chosen proof pressure [Pa]", in.Chosen, 0, 1e9, "none, or a pressure at the gauge"),
		check.Within(fn, "hold [s]", in.HoldAsked, 0, 7*24*3600, "none, or a time"),
		check.Within(fn, "working time [s]", in.WorkingTime, 0, 7*24*3600, "not given, or a time"),
	}
	switch in.Method {
	case Hydrostatic:
		errs = append(errs, check.Within(fn, "density of the test liquid [kg/m3]", in.WaterDensity, 500, 2000, "a liquid"))
	case Pneumatic:
		errs = append(errs, check.Within(fn, "density of the test gas [kg/m3]", in.WaterDensity, 0, 0, "its weight is left out"))
	default:
		errs = append(errs, fmt.Errorf("unknown proof method %q: hydrostatic or pneumatic", in.Method))
	}
	if !math.IsNaN(in.Near) {
		errs = append(errs, check.Within(fn, "pressure with people near [Pa]", in.Near, 0, 1e9, "none, or a pressure"))
	}
	if len(in.Points) == 0 {
		errs = append(errs, ErrNoPoint)
	}
	if len(in.Rules) == 0 {
		errs = append(errs, errors.New("the proof plan has no rule"))
	}
	for _, r := range in.Rules {
		errs = append(errs, r.valid())
	}
	for _, pt := range in.Points {
		errs = append(errs,
			check.Within(fn, pt.Name+": service pressure [Pa]", pt.Service, in.MEOP, 1e9, "MEOP with the liquid's head on it"),
			check.Within(fn, pt.Name+": water depth [m]", pt.WaterDepth, 0, 100, "below the highest point of the test liquid"),
			check.Within(fn, pt.Name+": deepest water [m]", pt.deepest(), pt.WaterDepth, 100, "not above its least depth"))
	}
	return errors.Join(errs...)
}

// require finds, at every point, the largest pressure that any rule asks for.
func (p *Plan) require() error {
	lowest, err := lowestRatio(p.In.Points)
	if err != nil {
		return err
	}
	for _, pt := range p.In.Points {
		own, err := CorrectionFactor(pt.Ratios)
		if err != nil { // not reached: the lowest ratio has been had from the same ones
			return fmt.Errorf("%s: %w", pt.Name, err)
		}
		s := Shown{Point: pt, OwnCF: own}
		for _, r := range p.In.Rules {
			cf := own
			if r.OneRatio {
				cf = lowest
			}
			if req := r.Factor(cf) * pt.Service; req > s.Required {
				s.CF, s.Factor, s.Rule, s.Required = cf, r.Factor(cf), r.Rule, req
			}
		}
		p.Points = append(p.Points, s)
	}
	return nil
}

// set finds the least pressure at the top and from it what the gauge must show.
func (p *Plan) set() error {
	needed := math.Inf(-1)
	for i, s := range p.Points {
		if top := s.Required - p.waterHead(s.WaterDepth); top > needed {
			needed, p.Governs = top, i
		}
	}
	for _, s := range p.Points { // a sum rounded down must not leave a point short
		for needed+p.waterHead(s.WaterDepth) < s.Required {
			needed += math.Nextafter(s.Required, math.Inf(1)) - s.Required
		}
	}
	gaugeHead := p.waterHead(p.In.GaugeHeight)
	p.Top = needed
	p.Setting = (needed - gaugeHead) / (1 - p.In.GaugeShare)
	if p.In.GaugeTolerance > 0 {
		p.Setting = needed - gaugeHead + p.In.GaugeTolerance
	}
	if c := p.In.Chosen; c > 0 {
		if c < p.Setting {
			return fmt.Errorf("the proof pressure given, %.5g Pa at the gauge, is under the %.5g Pa that rule %q asks for at %s",
				c, p.Setting, p.Points[p.Governs].Rule, p.Points[p.Governs].Name)
		}
		p.Setting = c
		p.Top = math.Max(needed, c-p.uncertainty(c)+gaugeHead)
	}
	p.GaugeUncertainty = p.uncertainty(p.Setting)
	p.Overshoot = p.In.OvershootShare * p.Setting
	return check.Within("proof.NewPlan", "proof pressure at the gauge [Pa]", p.Setting, 1, 1e9,
		"a gauge so far above the tank shows nothing")
}

// demonstrate fills in what the test shows at every point.
func (p *Plan) demonstrate() {
	for i := range p.Points {
		s := &p.Points[i]
		s.Low = p.Top + p.waterHead(s.WaterDepth)
		s.High = p.Top + p.waterHead(s.deepest()) + 2*p.GaugeUncertainty + p.Overshoot
		s.OverTest = s.Low / s.Required
		for _, r := range p.In.Rules {
			s.HotShort = s.HotShort || r.OneRatio && r.Factor(s.OwnCF)*s.Service > s.Low
		}
	}
}

// deepest returns the largest depth of the place [m].
func (pt Point) deepest() float64 {
	if pt.Deepest == 0 {
		return pt.WaterDepth
	}
	return pt.Deepest
}

// uncertainty returns u_g [Pa] at a gauge that shows p [Pa].
func (p *Plan) uncertainty(at float64) float64 {
	if p.In.GaugeTolerance > 0 {
		return p.In.GaugeTolerance
	}
	return p.In.GaugeShare * at
}

// waterHead returns the pressure [Pa] of the test liquid h [m] down: ρ_w g0 h.
func (p *Plan) waterHead(h float64) float64 { return p.In.WaterDensity * standardGravity * h }

// OpenShown returns what the gauge shows with the full tank open at its highest point
// [Pa]: −ρ g z_g, below zero where it sits higher. Source: hydrostatics, computed.
func (p *Plan) OpenShown() float64 { return -p.waterHead(p.In.GaugeHeight) }
