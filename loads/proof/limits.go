package proof

import (
	"errors"
	"math"
)

// Limits are the numbers by which [Test.Judge] judges a log of a full tank, as the people at
// the test need them beforehand.
type Limits struct {
	MostShown float64 // the gauge never shows more [Pa]
	Stiffness float64 // predicted dV/dp at the setting [m3/Pa]
	Share     float64 // a measured stiffness, or strain, further off asks for an explanation [-]
	Air       float64 // most trapped air, at the atmosphere [m3]
	HalfLeast float64 // volume at half the setting under which the tank is stiffer than Share allows [m3]
	HalfMost  float64 // and over which Share and Air together do not explain it [m3]
	AirAgain  float64 // of what trapped air took by half the setting, the most that it takes again at the next step [-]
	Fall      float64 // over the planned hold, what temperature does not explain and its uncertainty [Pa]
	Lost      float64 // liquid lost that such a fall stands for [m3]
	LeakFall  float64 // of the pressure per volume lost [Pa/m3]
	Drift     float64 // dp/dT at the setting [Pa/K]
	Warmth    float64 // standard uncertainty of a change of the water's temperature with which a still tank just passes [K]
	Assumed   float64 // that is taken where a log states none [K]
	Growth    float64 // of the wall between the reference pressure and the setting [m3]
	SetPass   float64 // permanent growth that passes [m3]
	SetReject float64 // and over which the tank is rejected [m3]
	Straight  float64 // departure of a strain from its line that fails, share of the strain [-]
	Creep     float64 // of a strain in the hold that fails [-]
}

// Limits returns them for a tank as f, bled. At half the setting the volume tells
// stiffness and air by one number,
//
//	(1 − share) V_inj ≤ V ≤ (1 + share) V_inj + V_a0 p/(p + p0)
//
// and the record tells them apart. A tank that loses nothing passes where
//
//	2 √[(D u_dT)² + u_dp²] ≤ A,  u_dp = 0.1 % of the setting
//
// The air takes p/(p + p0) of its volume: more of it
// from half the setting to the next step than over any step after.
//
// Source: as [Test.Judge].
func (p *Plan) Limits(f Full) (Limits, error) {
	nan := math.NaN()
	l := Limits{MostShown: p.Setting + p.Overshoot, Share: stiffnessShare, Fall: decayShare * p.Setting, Straight: straightShare, Creep: creepMost,
		Stiffness: nan, Air: nan, HalfLeast: nan, HalfMost: nan, AirAgain: nan, Lost: nan, LeakFall: nan, Drift: nan, Warmth: nan, Assumed: nan, Growth: nan, SetPass: nan, SetReject: nan}
	at := p.Setting - p.GaugeUncertainty
	c, err1 := f.Stiffness(at)
	drift, err2 := f.Drift(at)
	if err := errors.Join(err1, err2); err != nil {
		return l, err
	}
	l.Stiffness, l.LeakFall, l.Drift, l.Lost, l.Air = c, 1/c, drift, l.Fall*c, airMost*f.Volume
	u := pressureChangeShare * p.Setting
	l.Warmth, l.Assumed = math.Sqrt(l.Fall*l.Fall/4-u*u)/math.Abs(drift), temperatureChange
	half, next := p.truly(StepShares()[0]*p.Setting), p.truly(StepShares()[1]*p.Setting)
	v, err := f.Injected(half)
	if err != nil { // not reached: the setting has the same range
		return l, err
	}
	l.HalfLeast, l.HalfMost = (1-stiffnessShare)*v.Total, (1+stiffnessShare)*v.Total+l.Air*airShare(half)
	l.AirAgain = airShare(next)/airShare(half) - 1
	l.Growth = f.Growth * p.Setting * (1 - referenceShare)
	l.SetPass, l.SetReject = setPass*l.Growth, setReject*l.Growth
	return l, nil
}

// AtTemperature returns the drift dp/dT [Pa/K] of the tank at the setting with its water at T [K], the growth of the wall
// as it is. Source: as [Full.Drift] and [WaterAt].
func (p *Plan) AtTemperature(f Full, T float64) (float64, error) {
	w, err := WaterAt(T, p.Setting)
	if err != nil {
		return math.NaN(), err
	}
	f.Compressibility, f.Expansion = w.Compressibility, w.Expansion
	return f.Drift(p.Setting - p.GaugeUncertainty)
}
