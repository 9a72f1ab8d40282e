package life

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"proofsheet/report/check"
)

// residual is the stress ratio that an as-welded seam counts with: the stress of welding is left in it [-]; practice.
const residual = 0.5

// CheckFlaw sets the cycles of service, at the stress of the wall in service, and those of the proof, at that of the wall at proof, against
// the life of the flaw, times the scatter factor:
//
//	4 (n/N + n_p/N_p) ≤ 1
//
// each N by [Flaw.Grow], ended by the local stress and driven by its range, compression too, both with the pressure on the crack's faces: what
// welding leaves holds the crack open throughout. By the fastest of the laws, for the same reason at R = 0.5 where the law knows it, else only
// one that is an upper bound. A flaw that is over its end at the start is not satisfied: its K against the toughness, or the stress against what the
// wall under it bears, is shown. n and n_p are counts [-]. Stress above 0.8 of the zone's yield, no law, and a law without an answer leave it not assessed.
//
// Source: growth records of [Records]; as welded, practice.
func CheckFlaw(id, title string, service, atProof Wall, f Flaw, laws []Record, n, np float64) check.Result {
	r := check.Result{ID: id, Title: title, Formula: "4 (n/N + n_p/N_p) ≤ 1", Factor: ScatterFactor, Capacity: check.Num("1", "life of the flaw", 1)}
	var by Record
	best := [2]Growth{{Cycles: math.Inf(1)}, {Cycles: math.Inf(1)}}
	for _, w := range []Wall{service, atProof} {
		if over, is := w.over(f); is {
			over.ID, over.Title = id, title
			return over
		}
	}
	err := errors.New("no growth law of the metal is known that holds in an as-welded seam")
	if slices.ContainsFunc(laws, func(law Record) bool { return law.Welded }) {
		err = nil
	}
	for _, law := range laws {
		if !law.Welded {
			continue
		}
		for i, w := range []Wall{service, atProof} {
			g, e := w.grow(f, law.Law)
			if err = errors.Join(err, e); e == nil && g.Cycles < best[i].Cycles {
				best[i] = g
				if i == 0 {
					by = law
				}
			}
		}
	}
	if err != nil {
		r.Err = err
		return r
	}
	r.Source = by.Source
	r.Demand = check.Num("n/N + n_p/N_p", "usage of a flaw in "+service.Where, n/best[0].Cycles+np/best[1].Cycles)
	r.Inputs = flawInputs(service, atProof, f, best, n, np)
	r.Note = fmt.Sprintf("fastest law: %s; ends at: %s; as welded: %s; every cycle of service from the highest stress of any to the lowest of any", by.Alloy, best[0].End, ratio(by.Law))
	if by.Note != "" {
		r.Note += "; " + by.Note
	}
	return r
}

// ratio says how a law takes the stress of welding.
func ratio(l Law) string {
	if _, knows := l.(Forman); knows {
		return "at R = 0.5"
	}
	return "the upper bound of the family at any R"
}

// flawInputs lists what the check rests on.
func flawInputs(service, atProof Wall, f Flaw, best [2]Growth, n, np float64) []check.Quantity {
	return []check.Quantity{check.M("a_0", "first depth of the flaw", f.Depth), check.Num("a/c", "depth over half length, kept", f.Shape),
		check.M("t", "least wall", f.Thickness), check.Pa("σ", "largest local stress in service", service.Local), check.Pa("Δσ", "its range", service.Range), check.Pa("p", "pressure in service", service.Pressure),
		check.Pa("σ_p", "largest local stress at proof", atProof.Local), check.Pa("Δσ_p", "its range, to the least in service", atProof.Range), check.PaRootM("K_c", "toughness, lower bound", service.Toughness),
		check.Num("n", "cycles of service", n), check.Num("N", "life in service", best[0].Cycles), check.M("a_f", "depth at its end", best[0].Depth),
		check.Num("n_p", "cycles of the proof", np), check.Num("N_p", "life at proof", best[1].Cycles)}
}

// over shows a flaw under which the wall breaks at the first cycle.
func (w Wall) over(f Flaw) (r check.Result, is bool) {
	σ := w.Local + w.Pressure
	_, outside := f.end(σ, w.Toughness, w.Yield)
	k, err1 := f.crack(f.Depth).Worst(σ)
	s, err2 := Ligament(f.Depth, f.Depth/f.Shape, f.Radius, f.Thickness, w.Yield)
	if errors.Join(outside, w.linear(), err1, err2) != nil {
		return r, false
	}
	r = check.Result{Factor: 1, Inputs: []check.Quantity{check.M("a_0", "first depth of the flaw", f.Depth), check.Num("a/c", "depth over half length", f.Shape),
		check.M("t", "least wall", f.Thickness), check.Pa("σ", "largest local stress", w.Local), check.Pa("p", "pressure on the faces of the flaw", w.Pressure)}}
	switch {
	case k > w.Toughness:
		r.Formula, r.Source = "(F/√Q) (σ + p) √(π a_0) ≤ K_c", check.Source{Doc: "Newman and Raju", Where: "surface crack", How: check.Memory}
		r.Demand, r.Capacity = check.PaRootM("K", "stress intensity of the flaw at the start, "+w.Where, k), check.PaRootM("K_c", "toughness, lower bound", w.Toughness)
	case σ > s:
		r.Formula, r.Source = "σ + p ≤ R_p0.2,w (1 − a_0/t)/(1 − a_0/(t M))", check.Source{Doc: "Kiefner and others, ASTM STP 536", Where: "net section", How: check.Memory}
		r.Demand, r.Capacity = check.Pa("σ + p", "stress over the flaw, "+w.Where, σ), check.Pa("σ_n", "stress at which the wall left under it yields", s)
		r.Inputs = append(r.Inputs, check.Pa("R_p0.2,w", "yield strength of the zone", w.Yield))
	default:
		return r, false
	}
	r.Note = "the flaw is over its end before the first cycle"
	return r, true
}

// linear refuses a wall for which linear fracture mechanics do not speak.
func (w Wall) linear() error {
	return check.Within("life.CheckFlaw", "local stress over the yield of the zone", w.Local/w.Yield, 0, lefm, "linear fracture mechanics")
}

// grow returns the life of a flaw under the cycles of a wall.
func (w Wall) grow(f Flaw, law Law) (Growth, error) {
	if err := errors.Join(w.linear(),
		check.Within("life.CheckFlaw", "stress range over the largest stress", w.Range/w.Local, 1-1e-9, math.MaxFloat64, "cycles from empty")); err != nil {
		return Growth{}, err
	}
	return f.grow(w.Local+w.Pressure, w.Range+w.Pressure, residual, law, w.Toughness, w.Yield)
}
