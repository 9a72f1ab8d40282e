package proof

import (
	"errors"
	"math"
	"slices"

	"proofsheet/report/check"
)

// An Outcome is the answer to one question put to a log.
type Outcome int

const (
	Inconclusive Outcome = iota // not shown either way, or not judged at all: never a pass
	Failed
	Passed
	NotRead // no reading of its kind was taken; the reason says what that leaves open
)

// String returns the word that is printed.
func (o Outcome) String() string {
	return [...]string{"inconclusive", "fail", "pass", "not read"}[o]
}

// Default uncertainties of the change of a reading within one log. Practice.
const (
	pressureChangeShare = 0.001 // share of the setting [-]
	temperatureChange   = 0.2   // [K]
	strainChange        = 20e-6 // [-]
)

// A GaugePlace says what a strain gauge is predicted to show.
type GaugePlace int

const (
	Elsewhere  GaugePlace = iota // at a port, a knuckle, a seam: straight and still, no more is predicted
	PlainHoop                    // around the plain cylinder, 2.5 √(R t) clear of its junctions
	PlainAxial                   // along it
)

// A Gauge is a strain gauge of the log.
type Gauge struct {
	Name  string
	Place GaugePlace
}

// A LogRow is one instant of a log. What was not read is NaN.
type LogRow struct {
	Time        float64   // from any zero [s]
	Pressure    float64   // shown by the gauge [Pa]
	Others      []float64 // and by further ones [Pa]
	Volume      float64   // of water in the tank over a zero of the log's own: put in less returned less what the line took; not used of a gas [m3]
	Temperature float64   // of the water or gas [K]
	Wall        float64   // temperature of the wall; NaN: as the water [K]
	Strains     []float64 // of each gauge of the log [-]
}

// A Log is what was read in the test.
type Log struct {
	Rows   []LogRow // times rise
	Gauges []Gauge
	// Uncertainties (standard) of the change of a reading within the log; 0
	// takes the default.
	PressureChange    float64 // 0: 0.1 % of the setting [Pa]
	VolumeChange      float64 // 0: 1 ml, or 0.3 % of the volume where larger [m3]
	TemperatureChange float64 // 0: 0.2 K [K]
	StrainChange      float64 // 0: 20e-6 [-]
	// Steps in which the readings are written; 0: not known. An uncertainty is
	// never less than such a step leaves, whatever the log states.
	PressureStep    float64 // [Pa]
	VolumeStep      float64 // [m3]
	TemperatureStep float64 // [K]
	StrainStep      float64 // [-]
}

// A Test is what a log is judged against.
type Test struct {
	Plan   *Plan
	Full   Full    // tank and water without air; a growth of NaN was not predicted
	Wall   Wall    // of the plain cylinder
	Radius float64 // of its mid-surface [m]
	Use    float64 // worst stress over limit at the highest pressure of the plan [-]
}

// A Measured is a number of the record beside what was predicted for it. What
// is not known is NaN.
type Measured struct {
	check.Quantity
	Predicted   float64 // or the least or most that is allowed: Bound says which [in the unit of Quantity]
	Bound       string  // "predicted", "planned", "at most", "at least"
	Band        float64 // allowed to either side of the prediction [in the unit of Quantity]
	Uncertainty float64 // expanded, k = 2 [in the unit of Quantity]
}

// A Finding is the answer to one step of the judgement.
type Finding struct {
	Title   string
	Outcome Outcome
	Reason  string // in words
	Values  []Measured
	Notes   []string
}

// A StepReading is a reading of the way up with what was predicted for it.
type StepReading struct {
	Row       int     // of the log
	Pressure  float64 // [Pa]
	Volume    float64 // over that of the fitted line at no pressure [m3]
	Predicted float64 // bled tank, at that pressure [m3]
	Line      float64 // what the earlier readings led to expect; NaN for the first ones [m3]
	Band      float64 // departure from the line that stops the test [m3]
}

// A Judged is a log with its verdict.
type Judged struct {
	Outcome  Outcome // fails where a finding does; passes where every finding does
	Findings []Finding
	Readings []StepReading
	Line     Line // through the readings before any departure
	Hold     Span // the time at the setting that was judged
	Decay    Decay
	balance  func(from, to int) Decay
}

// Balance accounts for the change of pressure between two rows of the log.
func (j *Judged) Balance(from, to int) Decay { return j.balance(from, to) }

// A Span is a stretch of the log, rows From to To; To < 0: none.
type Span struct{ From, To int }

// Judge puts the questions of the record to a log, in their order:
//
//  1. pressure: never over p_set + o, nor drawn under the atmosphere;
//  2. reached: p_set held without a break for the whole hold;
//     zero: the gauge shows zero with the tank open;
//  3. reference: readings at the reference pressure before and after;
//  4. stiffness: C within 10 % of the predicted one, air not over 0.5 % of V;
//  5. departure from the line of the earlier readings: none over the plan's band;
//  6. strains: as predicted within 10 %, straight within 5 %, still in the hold;
//  7. decay: [Test.decay];
//  8. permanent set: [Test.set].
//
// Of a test with gas no volume tells anything: 4, 5 and 8 stay open, and the
// strains stand in for what they can, [Test.strainLeft]. Such a log can fail,
// never pass.
//
// A question that cannot be answered is inconclusive, the worst answer is the
// verdict, and only a log that passes every question passes. Uncertainties that
// the log states never widen a band of the plan. An error means that the log is
// none: no rows, times that do not rise, pressure missing.
//
// Source: order of work and limits, practice; 10 % of permanent set, 49 CFR
// 180.203 and 180.205, read; the sums, computed.
func (t Test) Judge(l Log) (*Judged, error) {
	if t.Plan == nil {
		return nil, errors.New("no plan to judge the log by")
	}
	if err := l.valid(); err != nil {
		return nil, err
	}
	r := &record{t: t, l: l, set: t.Plan.Setting, out: &Judged{Hold: Span{0, -1}}}
	r.out.balance = r.balance
	r.segments()
	if r.gas() {
		r.out.Line = unfitted(0)
		r.out.Findings = []Finding{r.pressure(), r.reached(), r.zero(), r.reference(), r.strains(), r.decay(), r.strainLeft(), {Title: "volumes", Reason: gasVolumes}}
		return r.verdict(), nil
	}
	pressure, reached, zero := r.pressure(), r.reached(), r.zero()
	reference := r.reference()
	stiffness, departure := r.volumes()
	r.out.Findings = []Finding{pressure, reached, zero, reference, stiffness, departure, r.strains(), r.decay(), r.permanent()}
	return r.verdict(), nil
}

// verdict sets the worst finding over the whole.
func (r *record) verdict() *Judged {
	r.out.Outcome = Passed
	for _, f := range r.out.Findings {
		switch {
		case f.Outcome == Failed:
			r.out.Outcome = Failed
		case f.Outcome == Inconclusive && r.out.Outcome != Failed:
			r.out.Outcome = Inconclusive
		}
	}
	return r.out
}

// valid reports what makes a log no log.
func (l Log) valid() error {
	const fn = "proof.Test.Judge"
	if len(l.Rows) == 0 {
		return errors.New("the log holds no rows")
	}
	var errs []error
	last := math.Inf(-1)
	for i, r := range l.Rows {
		if !(r.Time > last) || math.IsInf(r.Time, 0) {
			errs = append(errs, errors.New("times of the log do not rise"))
		}
		last = r.Time
		errs = append(errs, check.Within(fn, "pressure of the log [Pa]", r.Pressure, -Atmosphere*(1+1e-9), 1e9, "a gauge"))
		if len(r.Strains) != len(l.Gauges) {
			errs = append(errs, errors.New("a row of the log lacks the strain of a gauge"))
		}
		if len(errs) > i+8 { // enough is said
			break
		}
	}
	for _, u := range []float64{l.PressureChange, l.VolumeChange, l.TemperatureChange, l.StrainChange, l.PressureStep, l.VolumeStep, l.TemperatureStep, l.StrainStep} {
		errs = append(errs, check.Within(fn, "uncertainty", u, 0, 1e9, "none given, or above zero"))
	}
	return errors.Join(errs...)
}

// A record is one log while it is judged.
type record struct {
	t   Test
	l   Log
	set float64 // [Pa]
	out *Judged

	reach  int // first row at the setting; the highest where it was never reached
	begun  int // row from which the way up is judged
	before int // row of the reference reading on the way up; -1: none
	after  int // row of the first one on the way down; -1: none
	second int // row of the one after a second cycle; -1: none
	points []int
	main   int // of the climbs, the one that is judged in full; -1: none

	climbed []climb
	shut    []float64 // volume last read at each row [m3]
}

// gas reports whether the test is made with gas.
func (r *record) gas() bool { return r.t.Plan.In.Method == Pneumatic }

// fluid is what fills the tank, in words.
func (r *record) fluid() string {
	if r.gas() {
		return "gas"
	}
	return "water"
}

// read reports whether a row holds a reading of how the tank answers: the volume,
// or in gas the strain of any gauge.
func (r *record) read(row LogRow) bool {
	if r.gas() {
		return slices.ContainsFunc(row.Strains, func(ε float64) bool { return !math.IsNaN(ε) })
	}
	return !math.IsNaN(row.Volume)
}

// uPressure returns the uncertainty of a change of pressure [Pa].
func (r *record) uPressure() float64 {
	return either(r.l.PressureChange, pressureChangeShare*r.set, r.l.PressureStep)
}

// uTemperature returns the uncertainty of a change of temperature [K].
func (r *record) uTemperature() float64 {
	return either(r.l.TemperatureChange, temperatureChange, r.l.TemperatureStep)
}

// uStrain returns the uncertainty of a change of strain [-].
func (r *record) uStrain() float64 {
	return either(r.l.StrainChange, strainChange, r.l.StrainStep)
}

// uVolume returns the uncertainty of a volume v read [m3].
func (r *record) uVolume(v float64) float64 {
	return either(r.l.VolumeChange, math.Max(volumeUncertainty, volumeUncertaintyShare*math.Abs(v)), r.l.VolumeStep)
}

// either returns the uncertainty of a change: the given one, else the standard one,
// and at least half a step: two rounded readings differ from the truth by up to a
// whole one, which is the expanded uncertainty then.
func either(given, standard, step float64) float64 {
	if given > 0 {
		standard = given
	}
	return math.Max(standard, step/2)
}

// number is a value of a record of which nothing was predicted.
func number(q check.Quantity, uncertainty float64) Measured {
	nan := math.NaN()
	return Measured{Quantity: q, Predicted: nan, Band: nan, Uncertainty: uncertainty}
}

// within is a value with its prediction and the band round it.
func within(q check.Quantity, predicted, band, uncertainty float64) Measured {
	return Measured{Quantity: q, Predicted: predicted, Bound: "predicted", Band: band, Uncertainty: uncertainty}
}

// atMost and atLeast are values with their limit.
func atMost(q check.Quantity, limit, uncertainty float64) Measured {
	return Measured{Quantity: q, Predicted: limit, Bound: "at most", Band: math.NaN(), Uncertainty: uncertainty}
}

func atLeast(q check.Quantity, limit, uncertainty float64) Measured {
	return Measured{Quantity: q, Predicted: limit, Bound: "at least", Band: math.NaN(), Uncertainty: uncertainty}
}
