package edge

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Misalignment is one cause of bending at a seam.
type Misalignment struct {
	Symbol, Name string  // for the reader: "k_e", "hi-lo of 0.5 mm"
	Ratio        float64 // bending stress over the membrane stress across the seam [-]
	Source       check.Source
}

// A Seam is a weld with its membrane stress and its misalignment.
type Seam struct {
	ID, Title  string
	Station    float64        // of the place along the tank [m]
	Across     float64        // membrane stress square to the seam: hoop at a long seam, axial at a girth seam [Pa]
	Along      float64        // membrane stress along the seam [Pa]
	Bending    float64        // other bending stress across the seam there, of a junction; sign does not count [Pa]
	Causes     []Misalignment // their bending is added up
	Poisson    float64        // ν [-]
	Efficiency float64        // of the seam [-]
	Limits     material.Limits
}

// Check sets membrane and bending stress at the seam, secondary, against the limit of [RangeLimit] in the weld zone, on both faces:
//
//	σ_b = Σ k σ_m + σ_b0    |σ_m| + |σ_b| ≤ E min(3 S, 2 Rp0.2)
//
// and the equivalent of both directions by [material.EquivalentStress], with ν σ_b along the seam, without E; the worse is shown. By flight the limit is 2 F_ty.
//
// Source: that of each cause, the weakest of them; limits: see [RangeLimit].
func (s Seam) Check() check.Result {
	r := check.Result{Rule: string(s.Limits.Rule), ID: s.ID, Title: s.Title, Factor: 1, Inputs: s.inputs(),
		Source: check.Source{Doc: "bending of misaligned seams", Where: "shell/edge, package comment", How: check.Memory}}
	limit, formula, err := RangeLimit(s.Limits)
	sum := 0.0
	for _, c := range s.Causes {
		sum += c.Ratio
		r.Note += fmt.Sprintf("%s: %s (%s, %s); ", c.Name, c.Source.Doc, c.Source.Where, c.Source.How)
	}
	r.Note += "secondary stress, weld zone"
	b := sum*math.Abs(s.Across) + math.Abs(s.Bending)
	state := Stress{Meridional: s.Across, Hoop: s.Along, MeridionalBending: b, HoopBending: s.Poisson * b}
	if r.Err = errors.Join(err, s.valid(state)); r.Err != nil {
		return r
	}
	var symbols []string
	for _, c := range s.Causes {
		symbols = append(symbols, c.Symbol)
	}
	r.Inputs = append(r.Inputs, check.Num("k", "bending over membrane stress, together", sum), check.Pa("σ_b", "bending stress across the seam", b))
	r.Formula = "k = " + strings.Join(symbols, " + ") + "; σ_b = |σ_m| k + σ_b0; "
	if e := state.Surface(); !(e/limit <= state.MeridionalSurface()/(s.Efficiency*limit)) {
		f, m, l := s.face(state)
		r.Inputs = append(r.Inputs, check.Num("f", "the worse face: 1 or −1", f), check.Pa("s_m", "across the seam there", m), check.Pa("s_l", "along the seam there", l))
		r.Formula += "s_m = σ_m + f σ_b; s_l = σ_l + f ν σ_b; max(|s_m|, |s_l|, |s_m − s_l|) ≤ " + formula
		r.Demand, r.Capacity = check.Pa("σ_eq", "equivalent stress on the worse face", e), check.Pa(formula, "limit in the weld zone", limit)
		return r
	}
	r.Formula += "|σ_m| + σ_b ≤ E " + formula
	r.Demand, r.Capacity = check.Pa("σ_m + σ_b", "membrane and bending across the seam", state.MeridionalSurface()), check.Pa("E "+formula, "limit across the weld", s.Efficiency*limit)
	return r
}

// face returns which face of a state has the larger equivalent stress, 1 or −1, and
// the stresses there across and along the seam [Pa].
func (s Seam) face(state Stress) (f, across, along float64) {
	at := state.faces()
	if material.EquivalentStress(at[1][0], at[1][1]) > material.EquivalentStress(at[0][0], at[0][1]) {
		return -1, at[1][0], at[1][1]
	}
	return 1, at[0][0], at[0][1]
}

// valid refuses a seam without a cause, with a ratio that is none, or a stress that is not known.
func (s Seam) valid(state Stress) error {
	const fn = "edge.Seam.Check"
	err := errors.Join(check.Within(fn, "joint efficiency", s.Efficiency, math.SmallestNonzeroFloat64, 1, "a share of the wall's strength"),
		check.Within(fn, "Poisson's ratio", s.Poisson, 0, 0.5, "an isotropic solid"))
	if len(s.Causes) == 0 {
		err = errors.Join(err, errors.New("no misalignment of the seam is given"))
	}
	for _, c := range s.Causes {
		err = errors.Join(err, check.Within(fn, c.Name+", bending over membrane", c.Ratio, 0, math.MaxFloat64, "a ratio"))
	}
	if !state.finite() || math.IsNaN(s.Station) {
		err = errors.Join(err, errors.New("the stress at the seam is not known"))
	}
	return err
}

// inputs lists what the check takes, in the order of its formula.
func (s Seam) inputs() []check.Quantity {
	q := []check.Quantity{check.M("z", "station of the worst place", s.Station), check.Pa("σ_m", "membrane stress across the seam", s.Across), check.Pa("σ_l", "membrane stress along the seam", s.Along)}
	for _, c := range s.Causes {
		q = append(q, check.Num(c.Symbol, c.Name+", bending over membrane stress", c.Ratio))
	}
	q = append(q, check.Pa("σ_b0", "other bending stress across the seam", math.Abs(s.Bending)), check.Num("ν", "Poisson's ratio", s.Poisson), check.Num("E", "joint efficiency", s.Efficiency))
	return append(q, limitInputs(s.Limits)...)
}
