package bolting

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// A Joint is a cover with its bolts and its seal, as part ID, titled Title.
type Joint struct {
	ID, Title   string // "port.hatch", "Port hatch"
	Bolts       Bolts
	Seal        Seal
	Temperature float64    // of the metal [K]
	Clamped     [2]float64 // mean thermal expansion of the cover and of what it is bolted to [1/K]
	Outside     float64    // load from outside that pulls at the cover, of [Outside] [N]
}

// Separation is how many times the operating load the least preload must hold
// [-]: practice for joints that keep a fluid in; recalled from NSTS 08307, confirm.
const Separation = 1.4

var (
	boltSource  = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "appendix 2, bolt loads read; allowable of bolts from II-D appendix 2 recalled, confirm", How: check.Memory}
	sealSource  = check.Source{Doc: "derived: equilibrium of the cover", Where: "factor on separation recalled from NSTS 08307, confirm", How: check.Memory}
	proofSource = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "appendix 2, bolt loads read; share of the proof strength by the proof's own rule", How: check.Memory}
)

// valid returns an error for a joint that is not described.
func (j Joint) valid(p float64) error {
	errs := []error{j.Bolts.valid(j.Temperature), j.Seal.valid()}
	if math.IsNaN(p) || math.IsInf(p, 0) {
		errs = append(errs, errors.New("the pressure on the cover is not a number"))
	}
	if g, _ := j.Seal.Line(); !(g < j.Bolts.Circle-j.Bolts.Thread.Major) {
		errs = append(errs, fmt.Errorf("the seal on %.4g mm reaches to the bolts on their circle of %.4g mm", g/mm, j.Bolts.Circle/mm))
	}
	if !(j.Outside >= 0) || math.IsInf(j.Outside, 0) {
		errs = append(errs, errors.New("the load from outside must be a number from zero up"))
	}
	if j.Bolts.stated() && !(j.drift() >= 0) {
		errs = append(errs, errors.New("the thermal expansion of the cover, or of what it is bolted to, is not known: by how much the preload drifts with the temperature cannot be said"))
	}
	return errors.Join(errs...)
}

// Outside returns what a force and a moment from outside, magnitudes [N], [N m], pull
// together at a circle of diameter d [m]: F + 4 M/d, a moment as a force with the same
// peak round the circle [N].
//
// Source: equilibrium of a thin ring, computed.
func Outside(force, moment, d float64) float64 { return force + 4*moment/d }

// operating returns what all bolts carry in operation, the load from outside in it [N].
func (j Joint) operating(p float64) float64 { return j.Seal.Operating(p) + j.Outside }

// drift returns the drift of the preload of one bolt at the joint's temperature [N].
func (j Joint) drift() float64 { return j.Bolts.drift(j.Clamped, j.Temperature) }

// tightest returns the most that all bolts pull without thrust [N].
func (j Joint) tightest() float64 {
	b := j.Bolts
	return float64(b.Count) * (b.Preload*(1+b.Scatter) + j.drift())
}

// A comparison is one demand against its capacity.
type comparison struct {
	what             string
	demand, capacity check.Quantity
}

// worst returns the comparison of the largest demand over capacity, or the first that
// is not a number, so that none hides.
func worst(all []comparison) comparison {
	use := func(c comparison) float64 { return c.demand.Value / c.capacity.Value }
	w := all[0]
	for _, c := range all {
		if math.IsNaN(use(c)) {
			return c
		}
		if use(c) > use(w) {
			w = c
		}
	}
	return w
}

// result prints the worst of all comparisons, every number among the inputs.
func result(id, title, formula string, in []check.Quantity, all []comparison, src check.Source, notes ...string) check.Result {
	w := worst(all)
	for _, c := range all {
		in = append(in, c.demand, c.capacity)
	}
	return check.Result{ID: id, Title: title, Formula: formula, Inputs: in, Demand: w.demand, Capacity: w.capacity, Factor: 1, Source: src,
		Note: strings.Join(append([]string{"governs: " + w.what}, notes...), "; ")}
}

// inputs lists what bolts and seal are made of, and the pressure p [Pa].
func (j Joint) inputs(p float64) []check.Quantity {
	b := j.Bolts
	in := []check.Quantity{check.Pa("p", "pressure on the cover", p), check.Num("n", "number of bolts "+b.Thread.Name, float64(b.Count)), check.M("C", "bolt circle", b.Circle),
		check.M2("A_r", "root area of one bolt", b.Thread.RootArea()), check.M2("A_t", "stress area of one bolt", b.Thread.StressArea()),
		check.Pa("S_p", "proof strength of the bolts, as given", b.Strength)}
	if b.stated() {
		in = append(in, check.N("F_0", "preload of one bolt", b.Preload), check.Num("s", "scatter of the preload", b.Scatter), check.K("T", "temperature of the metal", j.Temperature), check.N("ΔF", "drift of one bolt's preload from 20 °C, unlike growth", j.drift()))
	}
	return append(append(in, j.Seal.inputs()...), check.N("F_x", "load from outside, among W_m1 and H", j.Outside))
}

// pulled is the most that one bolt may see, its preload with all of the thrust on top,
// against its proof strength.
func (j Joint) pulled(p float64) comparison {
	b := j.Bolts
	return comparison{"one bolt with its largest preload and its share of the thrust", check.N("F_0 (1 + s) + ΔF + H/n", "largest tension of one bolt", (j.tightest()+j.Seal.Thrust(p)+j.Outside)/float64(b.Count)),
		check.N("S_p A_t", "proof load of one bolt", b.Strength*b.Thread.StressArea())}
}

// CheckBolts is X/bolts: all bolts in operation under the pressure p [Pa] and when
// the seal is seated, against their allowable stress s [Pa] ([Allowable]) on the root
// area, and one bolt with its largest preload against its proof strength:
//
//	W_m1 ≤ n A_r S_b,  W_m2 ≤ n A_r S_a,  F_0 (1 + s) + ΔF + H/n ≤ S_p A_t
//
// ΔF of [Drift]. S_a and S_b are the same here: the proof strength is taken as stated in the range of
// temperature in which it holds, and outside it nothing is assessed. The whole thrust is
// put on top of the preload, which is the most a soft seal can do.
//
// Source: ASME VIII-1 appendix 2 (read); allowable recalled.
func (j Joint) CheckBolts(p, s float64) check.Result {
	return j.bolts(p, s, j.Title+": bolts", check.Pa("S_b", "allowable stress of the bolts, operating and seating", s), boltSource)
}

// CheckBoltsAtProof is the same at the highest pressure of a test p [Pa], the root
// area held to the share k [-] of the proof strength.
func (j Joint) CheckBoltsAtProof(p, k float64) check.Result {
	return j.bolts(p, k*j.Bolts.Strength, j.Title+": bolts at proof", check.Num("k", "share of the proof strength in the test", k), proofSource)
}

func (j Joint) bolts(p, s float64, title string, limit check.Quantity, src check.Source) check.Result {
	id := j.ID + "/bolts"
	if err := j.valid(p); err != nil {
		return check.NotMade(id, title, err)
	}
	carried := j.Bolts.rootArea() * s
	all := []comparison{
		{"in operation", check.N("W_m1", "bolt load in operation", j.operating(p)), check.N("n A_r S_b", "what the bolts carry in operation", carried)},
		{"when the seal is seated", check.N("W_m2", "bolt load that seats the seal", j.Seal.Seat()), check.N("n A_r S_a", "what the bolts carry at seating", carried)},
	}
	in := append(j.inputs(p), limit)
	note := "no preload is written: the tension of a tightened bolt is not held"
	if j.Bolts.stated() {
		all, note = append(all, j.pulled(p)), "the whole thrust is put on top of the preload"
		in = append(in, check.N("H", "thrust of the pressure, and the load from outside", j.Seal.Thrust(p)+j.Outside))
	}
	return result(id, title, "W_m1 = π/4 G² p + 2 b π G m p (O-ring: + F_q) ≤ n A_r S_b; W_m2 = π b G y (O-ring: F_q) ≤ n A_r S_a; F_0 (1 + s) + ΔF + H/n ≤ S_p A_t",
		in, all, src, note, "bending of bolts is not in it, and of loads from outside what the port's own load says")
}

// CheckSeal is X/seal: the joint does not open under the pressure p [Pa] and the seal
// is seated, by the least preload of all bolts:
//
//	q W_m1 + n ΔF ≤ n F_0 (1 − s),  W_m2 ≤ n F_0 (1 − s)
//
// ΔF is the drift of the preload with the temperature ([Drift]), q is [Separation]; it is 1 at proof. Without a preload nothing is assessed.
//
// Source: equilibrium; q recalled.
func (j Joint) CheckSeal(p, q float64) check.Result {
	id, title := j.ID+"/seal", j.Title+": seal"
	err := j.valid(p)
	if err == nil && !j.Bolts.stated() {
		err = errors.New("no preload of the bolts is given: write bolts.preload")
	}
	if err == nil && !(q >= 1) {
		err = errors.New("the factor on separation is below one")
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	n := float64(j.Bolts.Count)
	kept := n * j.Bolts.Preload * (1 - j.Bolts.Scatter)
	all := []comparison{
		{"the joint stays closed under pressure", check.N("q W_m1 + n ΔF", "load in operation with its factor, and drift", q*j.operating(p)+n*j.drift()), check.N("n F_0 (1 − s)", "least preload of all bolts", kept)},
		{"the seal is seated", check.N("W_m2", "load that seats the seal", j.Seal.Seat()), check.N("n F_0 (1 − s)", "least preload of all bolts", kept)},
	}
	note := "crushing of the gasket and its relaxation are not in it: tighten again by its maker's word"
	if !j.Seal.Gasket {
		note = "compound, gap and groove of the O-ring are not in it"
	}
	return result(id, title, "q (π/4 G² p + 2 b π G m p, O-ring: + F_q) + n ΔF ≤ n F_0 (1 − s); W_m2 ≤ n F_0 (1 − s)",
		append(j.inputs(p), check.Num("q", "factor on separation", q)), all, sealSource, note)
}
