package bolting

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// Bolts hold a cover on a circle.
type Bolts struct {
	Thread   Thread
	Count    int
	Circle   float64 // C, diameter of the bolt circle [m]
	Hole     float64 // d_h, diameter of the cover's holes [m]
	Strength float64 // S_p, proof strength, from the bolt's class or certificate [Pa]
	Preload  float64 // F_0, of one bolt; NaN: not stated [N]
	Scatter  float64 // s, by how much of itself the preload may be less or more [-]
	Growth   float64 // α_b, mean thermal expansion; NaN: not stated, the worse of what bolts have [1/K]
}

// The temperature of the metal between which the proof strength of a bolt is taken as
// stated [K].
//
// Source: ISO 898-1, recalled: properties of carbon and alloy steel fasteners from
// −50 to 150 °C.
const (
	coldestBolt = 223.15
	hottestBolt = 423.15
)

// valid returns an error for bolts whose numbers are missing or that cannot stand on
// their circle; T is the temperature of the metal [K].
func (b Bolts) valid(T float64) error {
	var errs []error
	if !(b.Strength > 0) || math.IsInf(b.Strength, 0) {
		errs = append(errs, errors.New("the proof strength of the bolts is not given: write bolts.strength"))
	}
	if !(b.Circle > 0) || b.Count < 3 {
		errs = append(errs, fmt.Errorf("%d bolts on a circle of %.4g mm: a cover needs at least three", b.Count, b.Circle/mm))
	}
	if !(b.Scatter >= 0 && b.Scatter < 1) {
		errs = append(errs, fmt.Errorf("scatter of the preload is %.4g, must be from 0 to below 1", b.Scatter))
	}
	if b.Preload <= 0 || math.IsInf(b.Preload, 0) {
		errs = append(errs, errors.New("the preload of the bolts must be greater than zero"))
	}
	errs = append(errs, check.Within("bolting.Bolts", "bolt spacing over diameter", b.spacing()/b.Thread.Major, 2, math.Inf(1), "heads of bolts side by side"),
		check.Within("bolting.Bolts", "temperature of the bolts, K", T, coldestBolt, hottestBolt, "the proof strength as stated; ISO 898-1, recalled"))
	return errors.Join(errs...)
}

// spacing returns the chord between two bolts [m].
func (b Bolts) spacing() float64 { return b.Circle * math.Sin(math.Pi/float64(b.Count)) }

// stated reports whether the preload is given.
func (b Bolts) stated() bool { return b.Preload > 0 }

// rootArea returns A_b, of all bolts [m2].
func (b Bolts) rootArea() float64 { return float64(b.Count) * b.Thread.RootArea() }

// tightenedAt is the temperature at which a joint is taken to be tightened [K].
const tightenedAt = 293.15

// Of bolts whose metal is not stated: the least and the largest mean thermal expansion
// [1/K], of ferritic and of austenitic steel with a little on either side, and the
// largest modulus of elasticity [Pa]: textbook values, practice.
const (
	leastGrowth = 10.5e-6
	mostGrowth  = 18e-6
	stiffest    = 215e9
)

// Drift returns by how much the tension of a bolt or screw may change between
// tightening at 20 °C and the temperature T [K], whichever way [N]:
//
//	ΔF = E A |α1 − α2| |T − 293.15|
//
// E its modulus [Pa], A its area [m2], α of it and of what it clamps [1/K]. The
// clamped parts are taken as rigid, which is the most it can be.
//
// Source: equilibrium, computed.
func Drift(e, area, α1, α2, T float64) float64 {
	if T == tightenedAt {
		return 0
	}
	return e * area * math.Abs(α1-α2) * math.Abs(T-tightenedAt)
}

// drift returns the larger drift of one bolt against either metal that it clamps, of
// expansions clamped [1/K], at T [K], in [N].
func (b Bolts) drift(clamped [2]float64, T float64) float64 {
	growths := []float64{b.Growth}
	if math.IsNaN(b.Growth) {
		growths = []float64{leastGrowth, mostGrowth}
	}
	most := 0.0
	for _, α := range growths {
		for _, c := range clamped {
			most = math.Max(most, Drift(stiffest, b.Thread.StressArea(), α, c, T)) // keeps NaN
		}
	}
	return most
}

// Allowable returns the stress [Pa] that a rule allows a bolt on its root area, from
// its proof strength [Pa]:
//
//	vessel, vessel-eu  S_p/4
//	flight             S_p/max(yield factor, ultimate factor)
//
// The vessel rules allow min(R_m/5, R_p0.2/4) and min(R_m/4, R_p0.2/3); the proof
// strength is below both R_p0.2 and 0.8 R_m, so that S_p/4 is never more. Under flight
// the ultimate strength is taken no larger than the proof strength.
//
// Source: ASME BPVC II-D appendix 2 and EN 13445-3, recalled; the step to the proof
// strength computed for the classes of ISO 898-1.
func Allowable(rule material.Rule, f material.Factors, proofStrength float64) (float64, error) {
	switch rule {
	case material.Vessel, material.VesselEU:
		return proofStrength / 4, nil
	case material.Flight:
		return proofStrength / math.Max(f.YieldFactor, f.UltimateFactor), nil
	}
	return math.NaN(), fmt.Errorf("no allowable stress of bolts under rule %q", rule)
}
