package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Step is one stage of the pressure's way up and down.
type Step struct {
	Cycle    int     // 1 or 2; 0 before the first
	Name     string  // as printed
	Share    float64 // of the setting [-]
	Pressure float64 // to be shown by the gauge [Pa]
	Hold     float64 // at least [s]
	People   bool    // whether somebody may be near
}

const (
	leakLookShare  = 0.10    // first look for leaks, share of the setting [-]
	leakLookMost   = 0.17e6  // and never above it [Pa]
	referenceShare = 0.05    // where permanent set is read, share of the setting [-]
	settle         = 2 * 60  // until pressure and strain settle [s]
	leastHold      = 10 * 60 // proof hold [s], practice
	hydroDivisor   = 1.3     // setting over examination pressure in water [-], UG-99
	gasDivisor     = 1.1     // and in gas [-], UG-100
	reliefRoom     = 1.02    // least relief setting over the proof setting [-], practice
	reliefShare    = 1.05    // largest in water [-], practice
	reliefGasShare = 0.10    // largest above the setting in gas, share of it [-]
	reliefGasMost  = 0.345e6 // and never more than this above it [Pa]
)

// StepShares returns the shares of the setting [-] at which the pressure stops
// on its way up: half, then tenths.
//
// Source: EN 13480-5:2002, 9.3.2.2.2 (water); 46 CFR 54.10-15 and UG-100
// (gas), read.
func StepShares() []float64 { return []float64{0.5, 0.6, 0.7, 0.8, 0.9, 1.0} }

// steps lists the whole test: a look for leaks, a reference reading, two
// cycles, and the examination, before which nobody approaches.
func (p *Plan) steps() []Step {
	at := func(cycle int, name string, share, hold float64) Step {
		return Step{Cycle: cycle, Name: name, Share: share, Pressure: share * p.Setting, Hold: hold}
	}
	look := math.Min(leakLookShare, leakLookMost/p.Setting)
	list := []Step{
		at(0, "leak look, from afar", look, settle),
		at(0, "reference reading", referenceShare, settle),
	}
	for cycle := 1; cycle <= 2; cycle++ {
		for _, share := range StepShares() {
			list = append(list, at(cycle, "step", share, settle))
		}
		if cycle == 1 {
			last := &list[len(list)-1]
			last.Name, last.Hold = "proof hold", p.Hold
			if p.Examination > 0 {
				exam := at(1, "examination", p.Examination/p.Setting, settle)
				exam.People = true
				list = append(list, exam)
			}
		}
		list = append(list, at(cycle, "reference reading, permanent set", referenceShare, settle))
	}
	return list
}

// hold sets the time at the setting [s]:
//
//	hold = max(10 min, 2 × longest working time, what each rule asks)
//
// Source: event rules (2023) 6.23-6.25 for the working time, read; 10 min,
// practice; 30 min of the European rule set, memory.
func (p *Plan) hold() error {
	p.Hold, p.HoldReason = leastHold, "10 min, practice"
	if w := 2 * p.In.WorkingTime; w > p.Hold {
		p.Hold, p.HoldReason = w, "twice the longest working time"
	}
	for _, r := range p.In.Rules {
		if r.LeastHold > p.Hold {
			p.Hold, p.HoldReason = r.LeastHold, "rule "+r.Rule
		}
	}
	asked := p.In.HoldAsked
	if asked > 0 && asked < p.Hold {
		return fmt.Errorf("the hold given, %.0f s, is shorter than the %.0f s asked for (%s)", asked, p.Hold, p.HoldReason)
	}
	if asked > p.Hold {
		p.Hold, p.HoldReason = asked, "as given"
	}
	return nil
}

// examine sets the highest gauge pressure with somebody near after a passed
// hold:
//
//	p_exam = min(p_set/1.3, MEOP, p_near)    water;  p_set/1.1 in gas
//
// The divisor alone is not safe where the proof factor is 1.5. Where the gauge
// stands above the tank, its water column comes off MEOP and p_near, which are
// meant at the top of the tank. Without p_near nobody comes near.
//
// Source: UG-99, UG-100, read; MEOP and p_near, practice.
func (p *Plan) examine() {
	divisor, name := hydroDivisor, "proof pressure/1.3"
	if p.In.Method == Pneumatic {
		divisor, name = gasDivisor, "proof pressure/1.1"
	}
	above := math.Max(0, p.waterHead(p.In.GaugeHeight))
	p.Examination, p.ExaminationFrom = p.Setting/divisor, name
	if m := p.In.MEOP - above; m < p.Examination {
		p.Examination, p.ExaminationFrom = m, "MEOP"
	}
	switch near := p.In.Near - above; {
	case !(near > 0): // NaN too
		p.Examination, p.ExaminationFrom = 0, "no pressure is shown safe for people near: remote viewing only"
	case near < p.Examination:
		p.Examination, p.ExaminationFrom = near, "highest pressure with people near"
	}
	p.Examination = math.Max(0, p.Examination)
}

// GaugeRange returns the least, the best and the largest full scale of the
// gauge's dial [Pa] for a setting [Pa]: 1.5, 2 and 4 times.
//
// Source: UG-102, recalled by way of a welding-practice article.
func GaugeRange(setting float64) (least, ideal, most float64) {
	return 1.5 * setting, 2 * setting, 4 * setting
}

// ErrNoRoomForRelief says that no relief valve fits between the proof pressure
// and the limit of the wall.
var ErrNoRoomForRelief = errors.New("no room for a relief valve between the proof pressure and the limit: " +
	"use a hand pump and an attended bleed, shut no valve for the hold, or add metal")

// Relief returns the highest setting [Pa] of the valve that protects the tank
// in the test, on the tank's side of every valve shut for the hold, from the
// worst use [-] of the wall at the setting, stress over limit at proof:
//
//	p_r = min(1.05 p_set, p_set/use)          water
//	p_r = p_set + min(0.345 MPa, 0.10 p_set)  gas, and not above p_set/use
//
// Below 1.02 p_set the error is [ErrNoRoomForRelief] and the value NaN. The
// use lies above 0; at 1 and over there is never room.
//
// Source: water, practice; gas, B31.3 345.5.2, read in an article that quotes it.
func (p *Plan) Relief(use float64) (float64, error) {
	if err := check.Within("proof.Plan.Relief", "stress over limit at proof", use, 1e-6, math.MaxFloat64, "a share above zero"); err != nil {
		return math.NaN(), err
	}
	most := reliefShare * p.Setting
	if p.In.Method == Pneumatic {
		most = p.Setting + math.Min(reliefGasMost, reliefGasShare*p.Setting)
	}
	set := math.Min(most, p.Setting/use)
	if set < reliefRoom*p.Setting {
		return math.NaN(), fmt.Errorf("%w (stress over limit is %.3f)", ErrNoRoomForRelief, use)
	}
	return set, nil
}
