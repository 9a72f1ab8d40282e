package life

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// asWelded is a law in metal with the stress of welding left in it: the stress ratio counts as 0.5.
type asWelded struct{ Law }

// residual is the stress ratio of an as-welded seam [-]; practice.
const residual = 0.5

func (a asWelded) Rate(ΔK, _ float64) (float64, error) { return a.Law.Rate(ΔK, residual) }

// CheckFlaw sets the cycles of service, at the stress of the wall in service, and those of the proof, at that of the wall at proof, against
// the life of the flaw, times the scatter factor:
//
//	4 (n/N + n_p/N_p) ≤ 1
//
// each N by [Flaw.Grow] from empty with the local stress and the pressure on the crack's faces, by the fastest of the laws, at R = 0.5 for what
// welding leaves. n and n_p are counts [-]. Stress above 0.8 of the zone's yield, no law, and a law without an answer leave it not assessed.
//
// Source: growth records of [Records]; as welded, practice.
func CheckFlaw(id, title string, service, atProof Wall, f Flaw, laws []Record, n, np float64) check.Result {
	r := check.Result{ID: id, Title: title, Formula: "4 (n/N + n_p/N_p) ≤ 1", Factor: ScatterFactor, Capacity: check.Num("1", "life of the flaw", 1)}
	var by Record
	best := [2]Growth{{Cycles: math.Inf(1)}, {Cycles: math.Inf(1)}}
	err := errors.New("no growth law is known of the metal")
	if len(laws) > 0 {
		err = nil
	}
	for _, law := range laws {
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
	r.Inputs = []check.Quantity{check.M("a_0", "first depth of the flaw", f.Depth), check.Num("a/c", "depth over half length, kept", f.Shape),
		check.M("t", "least wall", f.Thickness), check.Pa("σ", "local stress in service", service.Local), check.Pa("p", "pressure in service", service.Pressure),
		check.Pa("σ_p", "local stress at proof", atProof.Local), check.PaRootM("K_c", "toughness, lower bound", service.Toughness),
		check.Num("n", "cycles of service", n), check.Num("N", "life in service", best[0].Cycles), check.M("a_f", "depth at its end", best[0].Depth),
		check.Num("n_p", "cycles of the proof", np), check.Num("N_p", "life at proof", best[1].Cycles)}
	r.Note = fmt.Sprintf("fastest law: %s; ends at: %s; as welded, R = 0.5; every cycle of service at the highest stress of any", by.Alloy, best[0].End)
	if by.Note != "" {
		r.Note += "; " + by.Note
	}
	return r
}

// grow returns the life of a flaw under cycles from empty.
func (w Wall) grow(f Flaw, law Law) (Growth, error) {
	if err := check.Within("life.CheckFlaw", "local stress over the yield of the zone", w.Local/w.Yield, 0, lefm, "linear fracture mechanics"); err != nil {
		return Growth{}, err
	}
	return f.Grow(w.Local+w.Pressure, 0, asWelded{law}, w.Toughness, w.Yield)
}
