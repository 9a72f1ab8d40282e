package life

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// A Cycle is one kind of cycle in the tank's life.
type Cycle struct {
	Name  string  // "burnout", "proof"
	Range float64 // stress range at the detail, bending and misalignment in it [Pa]
	Count float64 // in the whole life [-]
}

// A Detail is a place at which fatigue is asked for, with all its cycles.
type Detail struct {
	Where  string // "long seam (long)"
	Class  Class
	Plain  *StrainLife // plain metal at the edge of a hole, judged by its strain in place of a class; else nil
	Yield  float64     // of the zone, the lowest over the cycles [Pa]
	Local  string      // what of the stress there is beside the membrane, for the reader
	Cycles []Cycle
	Err    error // why its stress or class is not known, or nil
}

// Usage returns the sum of Miner, without the scatter factor [-]:
//
//	D = Σ n_i/N_i
//
// A cycle of no range or that never comes adds nothing. A range above twice the yield of the zone is an error: the
// weld yields back and forth, and the curves are not for that. Plain metal is judged by its strain and may.
//
// Source: Miner; limit of EN 13445-3 clause 18 (recalled).
func (d Detail) Usage() (float64, error) {
	if err := errors.Join(d.Err, check.Within("life.Detail.Usage", "yield strength of the zone (Pa)", d.Yield, 1, math.MaxFloat64, "a metal")); err != nil {
		return math.NaN(), err
	}
	if len(d.Cycles) == 0 {
		return math.NaN(), errors.New("no cycle is known")
	}
	sum := 0.0
	for _, c := range d.Cycles {
		most := 2.0
		if d.Plain != nil {
			most = math.MaxFloat64
		}
		if err := errors.Join(
			check.Within("life.Detail.Usage", "cycles of "+c.Name, c.Count, 0, 1e9, "a number of times"),
			check.Within("life.Detail.Usage", "stress range of "+c.Name+" over the yield of the zone", c.Range/d.Yield, 0, most, "elastic cycles"),
		); err != nil {
			return math.NaN(), err
		}
		if c.Range == 0 || c.Count == 0 {
			continue
		}
		n, err := d.failure(c.Range)
		if err != nil {
			return math.NaN(), err
		}
		sum += c.Count / n
	}
	return sum, nil
}

// failure returns the cycles to failure at a stress range [Pa].
func (d Detail) failure(Δσ float64) (float64, error) {
	if d.Plain != nil {
		return d.Plain.CyclesAt(Δσ)
	}
	return d.Class.Cycles(Δσ)
}

// CheckLife sets the largest usage of all details, times the scatter factor, against 1. One detail that cannot be
// assessed leaves the whole not assessed, unless another has failed already.
//
// Source: as [Class.Cycles] and [Detail.Usage].
func CheckLife(id, title string, details []Detail) check.Result {
	r := check.Result{ID: id, Title: title, Factor: ScatterFactor, Capacity: check.Num("1", "life", 1)}
	if len(details) == 0 {
		return check.NotMade(id, title, errors.New("no weld is known"))
	}
	worst, all := -1, make([]float64, len(details))
	var errs []error
	for i, d := range details {
		var err error
		if all[i], err = d.Usage(); err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", d.Where, err))
			continue
		}
		if worst < 0 || all[i] > all[worst] {
			worst = i
		}
	}
	if len(errs) > 0 && !(worst >= 0 && ScatterFactor*all[worst] > 1) {
		return check.NotMade(id, title, errors.Join(errs...))
	}
	d := details[worst]
	r.Formula, r.Source = d.basis()
	r.Demand = check.Num("Σ n/N", "usage of "+d.Where, all[worst])
	r.Inputs = d.inputs()
	r.Note = d.words() + d.local() + "; " + others(details, all, worst) + d.meanStress()
	if len(errs) > 0 {
		r.Note += "; not assessed: " + strings.ReplaceAll(errors.Join(errs...).Error(), "\n", "; ")
	}
	return r
}

func (d Detail) local() string {
	if d.Local == "" {
		return ""
	}
	return ", " + d.Local
}

// words says what the detail is.
func (d Detail) words() string {
	if d.Plain != nil {
		return "plain metal by its local strain, data of the tank file: " + d.Plain.Source + "; that says nothing about the toe of the weld"
	}
	return d.Class.Detail
}

// meanStress says what becomes of the stress about which a cycle swings: the classes are of welds, which hold as much
// residual stress as they can; the constants of plain metal are of tests that swing about zero.
func (d Detail) meanStress() string {
	if d.Plain != nil {
		return "the curve is for strain that swings evenly about zero: a tension beside the swing shortens a long life and is not in it"
	}
	return "no credit for mean stress"
}

// basis returns formula and source of what the detail is judged by.
func (d Detail) basis() (string, check.Source) {
	if d.Plain != nil {
		return "4 Σ n/N ≤ 1; Δε/2 = (σ_f'/E) (2 N)^b + ε_f' (2 N)^c; Δσ Δε = Δσ_e²/E", strainSource
	}
	return "4 Σ n/N(Δσ, FAT) ≤ 1", fatSource
}

// inputs lists class, ranges and cycles.
func (d Detail) inputs() []check.Quantity {
	in := []check.Quantity{check.Pa("FAT", "class: "+d.Class.Detail, d.Class.FAT), check.Pa("R_p0.2,w", "yield strength of the zone; the range is at most twice that", d.Yield)}
	if d.Plain != nil {
		in = d.Plain.inputs()
	}
	for _, c := range d.Cycles {
		if c.Range == 0 || c.Count == 0 {
			continue
		}
		n, _ := d.failure(c.Range)
		if d.Plain != nil {
			Δε, _ := d.Plain.Range(c.Range)
			in = append(in, check.Pa("Δσ_e", c.Name+": stress range by elastic theory", c.Range), check.Num("Δε", c.Name+": local strain range", Δε))
		} else {
			in = append(in, check.Pa("Δσ", c.Name+": stress range", c.Range))
		}
		in = append(in, check.Num("n", c.Name+": cycles", c.Count), check.Num("N", c.Name+": cycles to failure", n))
	}
	return in
}

// others says what the other details use.
func others(details []Detail, all []float64, worst int) string {
	var b strings.Builder
	for i, d := range details {
		if i != worst && !math.IsNaN(all[i]) {
			fmt.Fprintf(&b, "%s uses %.2g; ", d.Where, all[i])
		}
	}
	return b.String()
}
