package bolting

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Fitting is screwed into a boss and sealed by an O-ring.
type Fitting struct {
	ID, Title    string // "port.tap", "Port tap"
	Thread       Thread
	Engagement   float64 // L_e, of full threads [m]
	SealDiameter float64 // the pressure acts within [m]
	Squeeze      float64 // force that flattens the O-ring [N]
	Preload      float64 // F_0, with which it is screwed home [N]
	Scatter      float64 // s, of the preload [-]
	Drift        float64 // ΔF, of the preload with the temperature, of [Drift] [N]
	Outside      float64 // load from outside that pulls at the fitting, of [Outside] [N]
}

// shear is shear over tensile strength [-], von Mises.
const shear = 0.577

// Of the engagement no more counts than so many diameters, and a thread needs so
// many pitches [-]: practice; the first threads carry the most.
const (
	mostEngaged  = 1.5
	leastPitches = 4
)

var threadSource = check.Source{Doc: "FED-STD-H28, shear of screw threads", Where: "form read, constants and limits of size of ISO 965-1 and ASME B1.1 recalled, confirm", How: check.Memory}

func (f Fitting) valid(p float64) error {
	var errs []error
	if !(f.SealDiameter > 0 && f.Preload >= 0 && f.Squeeze >= 0 && f.Drift >= 0 && f.Outside >= 0) || math.IsInf(f.Preload, 0) || math.IsInf(f.SealDiameter, 0) {
		errs = append(errs, errors.New("a fitting needs its seal diameter, and preload, squeeze, drift and load from outside from zero up"))
	}
	if !(f.Scatter >= 0 && f.Scatter < 1) {
		errs = append(errs, fmt.Errorf("scatter of the preload is %.4g, must be from 0 to below 1", f.Scatter))
	}
	if math.IsNaN(p) || math.IsInf(p, 0) {
		errs = append(errs, errors.New("the pressure on the fitting is not a number"))
	}
	errs = append(errs, check.Within("bolting.Fitting", "engagement over pitch", f.Engagement/f.Thread.Pitch, leastPitches, math.Inf(1), "threads that share the load, practice"))
	return errors.Join(errs...)
}

// Thrust returns the force of the pressure p [Pa] on the fitting with the load from
// outside [N].
func (f Fitting) Thrust(p float64) float64 {
	return math.Pi/4*f.SealDiameter*f.SealDiameter*math.Max(p, 0) + f.Outside
}

// CheckThread is X/thread: thrust and largest preload together against the shear of
// the boss's and of the fitting's threads, boss and fitting their allowable stresses
// [Pa], under the pressure p [Pa]:
//
//	F = π/4 D_s² p + F_x + F_0 (1 + s) + ΔF ≤ 0.577 min(S_boss A_i, S_fitting A_e) L_e
//
// A_i and A_e of [Thread.Strip] at the limits of size; of L_e no more than 1.5 d
// counts. The wedging of flanks that a preload brings is carried by the boss's wall
// as by a thick ring and is not in it.
//
// Source: FED-STD-H28 form (read), constants recalled.
func (f Fitting) CheckThread(p, boss, fitting float64) check.Result {
	id, title := f.ID+"/thread", f.Title+": thread of the boss"
	strip, err := f.Thread.Strip()
	if err = errors.Join(err, f.valid(p)); err == nil && !(boss > 0 && fitting > 0) {
		err = errors.New("the allowable stresses of boss and fitting must be greater than zero")
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	le := math.Min(f.Engagement, mostEngaged*f.Thread.Major)
	load := check.N("F", "thrust and largest preload", f.Thrust(p)+f.Preload*(1+f.Scatter)+f.Drift)
	return result(id, title, "F = π/4 D_s² p + F_x + F_0 (1 + s) + ΔF ≤ 0.577 S A L_e, threads of the boss and of the fitting",
		append(f.inputs(p), check.M("L_e", "engagement counted, at most 1.5 d", le), check.M("A_i", "shear area of the boss's threads, per length", strip.Internal),
			check.M("A_e", "shear area of the fitting's threads, per length", strip.External), check.Pa("S_boss", "allowable stress of the boss", boss), check.Pa("S_fitting", "allowable stress of the fitting", fitting)),
		[]comparison{{"threads of the boss", load, check.N("R_i", "what the boss's threads carry", shear*boss*strip.Internal*le)},
			{"threads of the fitting", load, check.N("R_e", "what the fitting's threads carry", shear*fitting*strip.External*le)}}, threadSource,
		"the fitting's own cross-section is its maker's", "a thread that is opened often wears: gauge it")
}

// CheckSeal is X/seal of a fitting: it does not lift from its seat under the pressure
// p [Pa], by its least preload: q (π/4 D_s² p + F_x + F_q) + ΔF ≤ F_0 (1 − s), q as of
// [Joint.CheckSeal].
//
// Source: equilibrium; q recalled.
func (f Fitting) CheckSeal(p, q float64) check.Result {
	id, title := f.ID+"/seal", f.Title+": seal of the fitting"
	err := f.valid(p)
	if err == nil && !(q >= 1) {
		err = errors.New("the factor on separation is below one")
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	return result(id, title, "q (π/4 D_s² p + F_x + F_q) + ΔF ≤ F_0 (1 − s)", append(f.inputs(p), check.Num("q", "factor on separation", q)),
		[]comparison{{"the fitting stays on its seat", check.N("q (H + F_q) + ΔF", "thrust and squeeze with their factor, and drift", q*(f.Thrust(p)+f.Squeeze)+f.Drift), check.N("F_0 (1 − s)", "least preload", f.Preload*(1-f.Scatter))}},
		sealSource, "compound, gap and groove of the O-ring are not in it")
}

func (f Fitting) inputs(p float64) []check.Quantity {
	return []check.Quantity{check.Pa("p", "pressure on the fitting", p), check.M("d", "thread "+f.Thread.Name+", major diameter", f.Thread.Major), check.M("D_s", "seal diameter", f.SealDiameter),
		check.N("F_0", "preload of the fitting", f.Preload), check.Num("s", "scatter of the preload", f.Scatter), check.N("F_q", "squeeze of the O-ring", f.Squeeze), check.N("ΔF", "drift of the preload from 20 °C, unlike growth", f.Drift), check.N("F_x", "load from outside", f.Outside)}
}
